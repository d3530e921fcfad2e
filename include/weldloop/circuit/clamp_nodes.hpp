#pragma once
/// @file
/// A work clamp put into a heat network: its places, the work's patch under its jaws, its contacts. Solver adapter on
/// plain doubles; the loop and the forecast of grip both take the clamp from here.
/// Source: balance of heat in every place, derived; contacts by contact_source.hpp, bodies by thermal_body.hpp.

#include <algorithm>
#include <array>
#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

#include <weldloop/circuit/air_layer.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/contact_source.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/squared_source.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/solve/curve_table.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop::detail {

/// A clamp's share of a heat network. Owns the laws that the network borrows from it.
struct clamp_in_network {
    using index = solve::heat_network::index;

    /// A contact of the clamp; its cold conductance is 1 S until it is set.
    struct contact_at {
        std::unique_ptr<contact_source> law;
        std::size_t source = 0;  ///< its place among the network's sources
    };

    std::array<index, clamp_nodes> nodes = {};        ///< by clamp_node
    index face = solve::heat_network::nowhere;        ///< patch of the work under the jaws
    index grip_place = solve::heat_network::nowhere;  ///< whose warmth the jaws' force follows; nowhere: steady force
    contact_at jaws = {}, termination = {};
    std::unique_ptr<air_layer> beside = {};           ///< what passes beside their contact; null for nothing
    std::unique_ptr<contact_crossing> crossing = {};  ///< what the jaws let pass into the patch
    std::vector<std::pair<part_place, index>> places = {};
    double work_rise = 0.0;          ///< K, of the work far from the jaws
    squared_resistance spring = {};  ///< what the clamp's current heats in the spring; the caller's to put in

    [[nodiscard]] index at(clamp_node node) const { return nodes[static_cast<std::size_t>(node)]; }
};

/// Beyond which a place of a clamp is no more what it was.
[[nodiscard]] inline temperature bound_of(const clamp_network& clamp, clamp_node node)
{
    if (node == clamp_node::jaw) return std::min(clamp.jaw_metals.first.melting, clamp.jaw_metals.second.melting);
    return node == clamp.gripping ? clamp.grip_limit : clamp.body_melting;
}

/// Puts a clamp on its work into a network, the ends of its branches first. What lies behind the cable connection is
/// the caller's.
/// @param net not closed @param clamp on its work @param amps through it @param air reference of the rises [K]
/// @param table_of the curve_table of a thermal_body's loss, kept by the caller as long as the network
template <class TableOf>
[[nodiscard]] clamp_in_network put_clamp(solve::heat_network& net, const clamp_network& clamp, double amps, double air,
                                         const TableOf& table_of)
{
    using index = clamp_in_network::index;
    const auto rise_of = [air](temperature t) { return t.in_kelvin() - air; };
    clamp_in_network out;
    out.work_rise = rise_of(clamp.work.work);
    out.face = net.add_node(std::max(clamp.work.patch, least_piece_capacity).value(),
                            rise_of(clamp.jaw_metals.second.melting));
    net.sink(out.face, clamp.work.sink.value(), out.work_rise);

    for (const clamp_node node :
         {clamp_node::handle, clamp_node::spring, clamp_node::jaw, clamp_node::body, clamp_node::entry}) {
        const auto k = static_cast<std::size_t>(node);
        const thermal_body& body = clamp.bodies[k];
        out.nodes[k] =
            net.add_node(std::max(body.capacity, least_piece_capacity).value(), rise_of(bound_of(clamp, node)));
        net.surface(out.nodes[k], body.surface.value(), table_of(body));
    }
    const index jaw = out.at(clamp_node::jaw), body = out.at(clamp_node::body), entry = out.at(clamp_node::entry),
                spring = out.at(clamp_node::spring), handle = out.at(clamp_node::handle);
    net.link(jaw, body, clamp.jaw_body.value());
    net.link(body, spring, clamp.body_spring.value());
    net.link(handle, spring, clamp.handle_spring.value());
    net.link(body, handle, clamp.body_handle.value());
    net.link(body, entry, clamp.body_entry.value());
    net.link(jaw, entry, clamp.jaw_entry.value());

    if (clamp.grip.slope.value() > 0.0) out.grip_place = out.at(clamp.gripping);
    const auto put_contact = [&](clamp_in_network::contact_at& c, const metal_pair& metals, const force_follows& grip,
                                 solve::heat_network::source s) {
        c.law = std::make_unique<contact_source>(1.0, metals, amps, air, 1, grip);
        s.law = c.law.get();
        net.add_source(s);
        c.source = net.sources().size() - 1;
    };
    constexpr double each_side = 0.5;
    put_contact(out.jaws, clamp.jaw_metals, {clamp.grip.slope.value(), clamp.grip.power, clamp.force_exponent},
                {.in = jaw,
                 .follows = out.grip_place,
                 .to = jaw,
                 .share = each_side,
                 .also_to = out.face,
                 .also_share = each_side});
    out.crossing = std::make_unique<contact_crossing>(*out.jaws.law, air, clamp.work.faces.value());
    net.link_by_first(jaw, out.face, *out.crossing, out.grip_place);
    if (clamp.work.beside.value() > 0.0) {
        out.beside = std::make_unique<air_layer>(
            joint_gap{.filling = {},
                      .faces = clamp.work.beside,
                      .height = jaw_tooth_height,
                      .first_emissivity = clamp.bodies[static_cast<std::size_t>(clamp_node::jaw)].emissivity,
                      .second_emissivity = work_emissivity},
            air);
        net.link(jaw, out.face, *out.beside);
    }
    const double arms = static_cast<double>(clamp.arms_share);
    put_contact(out.termination, clamp.termination_metals, {},
                {.in = entry, .to = body, .share = arms, .also_to = entry, .also_share = 1.0 - arms});
    if (const double path = clamp.spring_path.value(); path > 0.0) {
        const double alpha = mild_steel.temperature_coefficient.value();
        out.spring = {.at_zero = path * (1.0 + alpha * (air - reference_temperature.in_kelvin())),
                      .by_kelvin = path * alpha,
                      .cold = path,
                      .yields = static_cast<double>(clamp.spring_yields)};
    }

    const auto has = [&](clamp_node node) {
        return clamp.bodies[static_cast<std::size_t>(node)].surface.value() > 0.0;
    };
    out.places = {{part_place::jaws, jaw}, {part_place::arms, body}};
    if (has(clamp_node::spring)) out.places.emplace_back(part_place::spring, spring);
    if (has(clamp_node::handle)) out.places.emplace_back(part_place::handle, handle);
    out.places.emplace_back(part_place::cable_connection, entry);
    out.places.emplace_back(part_place::work, out.face);
    return out;
}

}  // namespace weldloop::detail
