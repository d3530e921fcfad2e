#pragma once
/// @file
/// A magnetic work connection as a heat network: its pad as a lug of its cable, the magnet's housing beside it.

#include <cmath>
#include <cstddef>
#include <numbers>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/magnet_behaviour.hpp>
#include <weldloop/circuit/part_in_path.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/part/work_connection.hpp>
#include <weldloop/part/work_magnet.hpp>

namespace weldloop {

/// What a magnet's housing is like.
inline constexpr source magnet_housing_judgement{
    "work magnet: steel housing of 25 N rated pull per square centimetre of face, half as high as wide, painted; "
    "warmed by "
    "its pad through 0.1 mm of air and not cooled by the work; pad and cable connection like a bolted lug of its cable",
    "2026",
    {},
    source_kind::judgement};

namespace detail {
// see magnet_housing_judgement
inline constexpr pressure rated_pull_of_face = in_si<pressure>(25e4);
inline constexpr double housing_height_over_width = 0.5, housing_emissivity = 0.8;
}  // namespace detail

/// The heat network of a magnet on its work. The pad takes its share of the pull; the pull falls with the square of the
/// remanence as the housing warms, (1 - b (T - 20 degC))^2, and is lost for good beyond the highest temperature of the
/// grade. `magnet::magnet`, a stated temperature, is not used: it is what the network finds.
/// @param m the magnet, pull above 0 @param cable size of its cable, 16 to 185 mm2 @param where air around
/// @param work_thickness of what it sits on [m], above 0
/// @throws out_of_range_error, not_finite_error; bad_station_error on a metal that holds no magnet
/// @see magnet_housing_judgement, magnet_pad_judgement, magnet_force()
[[nodiscard]] inline clamp_network clamp_network_of(const work_magnet& m, const conductor_size& cable,
                                                    const surroundings& where,
                                                    length work_thickness = usual_work_thickness)
{
    if (!holds_a_magnet(m.work))
        throw bad_station_error("magnet on " + std::string(m.work.name), "no pull", "a magnet on mild steel");
    require_positive(m.rated, "pull of the magnet");
    work_magnet cold = m;
    cold.magnet = reference_temperature;
    const contact pad = pad_contact_of(cold);
    const work_clamp lug_like =
        m.lug_beside ? without_cable_connection(bolted_work_lug(cable)) : bolted_work_lug(cable);
    clamp_network out = clamp_network_of(
        work_connection{.clamp = lug_like, .onto = m.work, .surface = m.surface, .work_thickness = work_thickness},
        where);

    const area face = m.rated / detail::rated_pull_of_face;
    const length width = in_si<length>(std::sqrt(4.0 / std::numbers::pi * face.value()));
    const length height = detail::housing_height_over_width * width;
    thermal_body& housing = out.bodies[static_cast<std::size_t>(clamp_node::body)];
    housing = {.surface = face + std::numbers::pi * width * height,
               .diameter = width,
               .emissivity = detail::housing_emissivity,
               .capacity = mild_steel.density * face * height * mild_steel.specific_heat};
    out.jaw_entry = out.jaw_body * out.body_entry / (out.jaw_body + out.body_entry);
    out.body_entry = {};
    out.jaw_body = gap_heat_conductance(air_at(where.air).thermal_conductivity, lug_like.jaw_area, pressed_gap_height);

    out.jaws = contact_conductance_of(pad);
    out.jaw_metals = pad.metals;
    out.force_exponent = force_law_exponent(pad.shape);
    out.force = pad.force;
    out.grip = {.slope = m.grade.remanence_slope, .power = 2};
    out.gripping = clamp_node::body;
    out.grip_limit = m.grade.highest;
    out.basis.add(contact_basis_of(pad)).add(magnet_pad_judgement).add(magnet_housing_judgement);
    out.basis.add(magnet_gap_judgement).add(*m.grade.from);
    return out;
}

}  // namespace weldloop
