#pragma once
/// @file
/// The heat of the loop: chains of joints and leads, iterated to the periodic steady state. Solver adapter on plain
/// doubles; solve_loop() in loop.hpp is its only user.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/heat_chain.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/loop_element.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/law/fin.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop::detail {

inline constexpr std::size_t nothing = static_cast<std::size_t>(-1);

struct loop_load {
    const surroundings* where;
    scatter level;
    current through;
    double amps, duty;
    weldloop::load load;
};

// A piece of a lead in its chain. A lead is cut where its temperature changes, so that each piece has a loss of its
// own.
struct lead_at {
    const loop_element* element;
    double length = 0.0;                      // m
    double mean_rise = 0.0, peak_rise = 0.0;  // K over the air, period mean; the peak is along the piece
};

// A joint in its chain; element == nullptr: the free end of a lead.
struct joint_at {
    const loop_element* element;
    double rise = 0.0;         // K over the air, period mean
    double heat_on = 0.0;      // W that reach the body while current flows
    double conductance = 0.0;  // W/K the body feels
    joint_point point = {};
};

// What lies between two neighbours of a chain: a lead, a neck of metal, or nothing but their touching faces.
struct link_at {
    std::size_t lead = nothing;  // index into the chain's leads
    double neck = 0.0;           // W/K
};

struct chain_at {
    std::vector<joint_at> joints;
    std::vector<lead_at> leads;
    std::vector<link_at> links;
};

[[nodiscard]] inline temperature over_air(const loop_load& l, double rise)
{
    // a body cannot be below absolute zero; the iteration may overshoot on its way
    return temperature::kelvin(std::max(1.0, l.where->air.in_kelvin() + rise));
}

// Above its melting point a conductor's resistance is not raised further: the number only has to say "far too hot".
[[nodiscard]] inline double resistance_per_metre(const cable& c, temperature t)
{
    return resistance_of(c, std::min(t, c.metal.melting)).value() / c.length.value();
}

[[nodiscard]] inline double slope_per_metre(const cable& c)
{
    const temperature warm = reference_temperature + in_si<temperature_difference>(1.0);
    return (resistance_of(c, warm) - resistance_of(c, reference_temperature)).value() / c.length.value();
}

// The rise of a lead far from its ends: heat made equals heat lost.
[[nodiscard]] inline double far_rise_of(const cable& c, double cooled, const loop_load& l)
{
    constexpr double hottest = 20000.0;  // K: every conductor has long melted; that is all such a number says
    const double squared = l.duty * l.amps * l.amps;
    const auto surplus = [&](double rise) {
        const temperature t = over_air(l, rise);
        return cooled * rise + steady_loss_of(c, *l.where, t).value() - squared * resistance_per_metre(c, t);
    };
    if (surplus(0.0) >= 0.0) return 0.0;
    return surplus(hottest) <= 0.0 ? hottest : root_between(surplus, 0.0, hottest, "lead temperature");
}

// The lead as a fin at the present iterate: loss by the secant at its mean rise, the heating's slope inside the loss.
[[nodiscard]] inline heated_fin fin_at(const lead_at& at, const loop_load& l)
{
    constexpr double probe = 1.0;           // K, where a lead is hardly warmer than the air
    constexpr double implicit_share = 0.8;  // of the loss; a steeper heating is taken at the present mean instead
    const cable& c = *at.element->lead;
    const double rise = std::max(at.mean_rise, probe);
    const double loss =
        at.element->cooled_conductance.value() + steady_loss_of(c, *l.where, over_air(l, rise)).value() / rise;
    const double squared = l.duty * l.amps * l.amps;
    const double slope = squared * slope_per_metre(c);
    const bool implicit = slope < implicit_share * loss && over_air(l, at.mean_rise) < c.metal.melting;
    const temperature heated_at = implicit ? l.where->air : over_air(l, at.mean_rise);
    const auto axial = c.metal.thermal_conductivity * c.size.area();
    return {axial, in_si<thermal_conductivity>(implicit ? loss - slope : loss),
            in_si<power_per_length>(squared * resistance_per_metre(c, heated_at)), in_si<length>(at.length)};
}

// Lengths to cut a lead into: one and two decay lengths at either end, where its temperature changes, and the middle.
[[nodiscard]] inline std::vector<double> pieces_of(const loop_element& e, double far_rise, const loop_load& l)
{
    const double whole = e.lead->length.value();
    const double decay = fin_at({&e, whole, far_rise, far_rise}, l).decay_length().value();
    constexpr double cut_off = 8.0;  // decay lengths; a shorter lead is cut evenly instead
    if (whole > cut_off * decay) return {decay, 2.0 * decay, whole - 6.0 * decay, 2.0 * decay, decay};
    const int count = std::max(1, static_cast<int>(std::ceil(whole / decay)));
    return std::vector<double>(static_cast<std::size_t>(count), whole / count);
}

// Chains end at the arc, at plates and at contacts between bodies that are no part of a lead.
[[nodiscard]] inline std::vector<chain_at> chains_of(const std::vector<loop_element>& elements, const loop_load& l)
{
    std::vector<chain_at> chains;
    bool open_chain = false, after_lead = false;
    const auto close = [&] {
        if (open_chain && after_lead) chains.back().joints.push_back({nullptr});
        open_chain = after_lead = false;
    };
    const auto put_node = [&](const loop_element* e) {
        if (!open_chain) chains.emplace_back();
        open_chain = true;
        chains.back().joints.push_back({e});
        after_lead = false;
    };
    const auto put_joint = [&](const loop_element& e) {
        if (open_chain && !after_lead) chains.back().links.push_back({});
        put_node(&e);
    };
    const auto put_lead = [&](const loop_element& e) {
        if (!open_chain || after_lead) put_node(nullptr);
        const double far_rise = far_rise_of(*e.lead, e.cooled_conductance.value(), l);
        bool first_piece = true;
        for (const double piece : pieces_of(e, far_rise, l)) {
            if (!first_piece) put_node(nullptr);
            first_piece = false;
            chains.back().links.push_back({chains.back().leads.size(), 0.0});
            chains.back().leads.push_back({&e, piece, far_rise, far_rise});
        }
        after_lead = true;
    };
    const auto put_neck = [&](const loop_element& e) {
        put_node(nullptr);
        chains.back().links.push_back({nothing, e.neck.value()});
    };
    // a head on a neck: head, neck, covered end of its lead, in either direction of the current
    const auto put_head_and_lead = [&](const loop_element& e) {
        if (e.joint_first) {
            put_joint(e);
            chains.back().links.push_back({nothing, e.neck.value()});
            put_node(nullptr);
            put_lead(e);
        } else {
            put_lead(e);
            put_neck(e);
            put_node(&e);
        }
    };
    for (const loop_element& e : elements) {
        if (e.ends_chain) {
            close();
            continue;
        }
        if (e.joint && e.lead)
            put_head_and_lead(e);
        else if (e.lead)
            put_lead(e);
        else if (e.joint)
            put_joint(e);
    }
    close();
    return chains;
}

// Heat and sinks of one joint at the present iterate.
[[nodiscard]] inline chain_node node_of(joint_at& j, const loop_load& l)
{
    chain_node node;
    if (j.element == nullptr) return node;
    const joint_circuit& joint = *j.element->joint;
    const temperature body = over_air(l, j.rise);
    j.point = joint_point_of(joint, l.level, l.through, body);
    double heat_on =
        l.amps * (j.point.drop.value() - (1.0 - joint.heat_kept) * pick(joint.constant_drop, l.level).value());
    node.sink = l.duty * joint.flow_cooling.value() +
                body_coefficient(joint.body, body, *l.where).value() * joint.body.surface.value();
    if (const auto& work = j.element->work) {
        const work_pull pull = work_pull_of(*work, j.point.first_drop, l.through, body);
        heat_on -= pull.taken;
        node.sink += pull.conductance;
        node.sink_flow += pull.conductance * (work->work - l.where->air).value();
    }
    j.heat_on = heat_on;
    node.power = l.duty * heat_on;
    return node;
}

[[nodiscard]] inline chain_link touching(const joint_at& a, const joint_at& b, const loop_load& l)
{
    // heat crosses the bolted or plugged faces by their metal spots; the better face governs, it is the one they share
    const conductance face = std::max(a.element->joint->outer, b.element->joint->outer);
    const double g = spot_heat_conductance(face, over_air(l, 0.5 * (a.rise + b.rise))).value();
    return {g, g, 0.0};
}

// Iterates one chain until no temperature moves. Returns whether it settled.
[[nodiscard]] inline bool settle(chain_at& chain, const loop_load& l)
{
    constexpr int most_rounds = 400;
    constexpr double small_step = 1e-7;  // K
    std::vector<chain_node> nodes(chain.joints.size());
    std::vector<chain_link> links(chain.links.size());
    double damping = 1.0, last_change = 1e300;
    for (int round = 0; round < most_rounds; ++round) {
        std::vector<heated_fin> fins;
        fins.reserve(chain.leads.size());
        for (const lead_at& at : chain.leads) fins.push_back(fin_at(at, l));
        for (std::size_t i = 0; i < nodes.size(); ++i) nodes[i] = node_of(chain.joints[i], l);
        for (std::size_t i = 0; i < links.size(); ++i) {
            const auto [lead, neck] = chain.links[i];
            if (lead != nothing)
                links[i] = {fins[lead].own_end().value(), fins[lead].other_end().value(),
                            fins[lead].far_rise().value()};
            else if (neck > 0.0)
                links[i] = {neck, neck, 0.0};
            else
                links[i] = touching(chain.joints[i], chain.joints[i + 1], l);
        }
        const std::vector<double> rises = solve_chain(nodes, links);
        double change = 0.0;
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            const double step = rises[i] - chain.joints[i].rise;
            change = std::max(change, std::fabs(step));
            chain.joints[i].rise += damping * step;
            chain.joints[i].conductance = total_conductance(nodes, links, i);
        }
        for (std::size_t i = 0; i < links.size(); ++i) {
            const std::size_t lead = chain.links[i].lead;
            if (lead == nothing) continue;
            const auto one = in_si<temperature_difference>(rises[i]),
                       other = in_si<temperature_difference>(rises[i + 1]);
            const double mean = fins[lead].mean_rise(one, other).value();
            change = std::max(change, std::fabs(mean - chain.leads[lead].mean_rise));
            chain.leads[lead].mean_rise += damping * (mean - chain.leads[lead].mean_rise);
            chain.leads[lead].peak_rise = fins[lead].highest_rise(one, other).value();
        }
        if (change < small_step) return true;
        if (change > last_change) damping = std::max(0.05, 0.7 * damping);
        last_change = change;
    }
    return false;
}

// How far a lump rises over its period mean by the end of the on-time, as a share of its steady on-rise.
[[nodiscard]] inline double ripple_share(double conductance, double capacity, const duty_cycle& duty)
{
    if (duty.is_continuous()) return 0.0;
    const double tau = capacity / conductance;
    const double on = duty.on().value(), period = duty.period().value();
    const double peak = tau > 0.0 ? std::expm1(-on / tau) / std::expm1(-period / tau) : 1.0;
    return peak - on / period;
}

struct lead_ripple {
    temperature_difference on_over_mean, peak_over_mean;
};

// The ripple of a lead about its period mean, taken from the same lead without ends. Cooled by water along its way it
// follows the current within seconds: then the mean of the on-time is its peak.
[[nodiscard]] inline lead_ripple ripple_of(const loop_element& e, double mean_rise, const loop_load& l)
{
    if (e.cooled_conductance.value() > 0.0) {
        const auto over = in_si<temperature_difference>(mean_rise * (1.0 / l.duty - 1.0));
        return {over, over};
    }
    const cable_heating alone = heating_of(*e.lead, *l.where, l.load);
    return {alone.conductor_mean - alone.conductor_period_mean, alone.conductor_peak - alone.conductor_period_mean};
}

// A lead from all its pieces.
inline void write_lead(part_state& out, const loop_element& e, const std::vector<lead_at>& pieces, const loop_load& l)
{
    const cable& c = *e.lead;
    double mean_rise = 0.0, peak_rise = 0.0;
    for (const lead_at& at : pieces) {
        if (at.element != &e) continue;
        mean_rise += at.mean_rise * at.length / c.length.value();
        peak_rise = std::max(peak_rise, at.peak_rise);
    }
    const lead_ripple ripple = ripple_of(e, mean_rise, l);
    const voltage drop = l.through * resistance_of(c, over_air(l, mean_rise) + ripple.on_over_mean);
    out.drop += drop;
    out.loss += l.through * drop;
    out.mean = over_air(l, mean_rise);
    const temperature peak = over_air(l, peak_rise) + ripple.peak_over_mean;
    out.metal_melts = out.metal_melts || peak > c.metal.melting;
    out.peak = std::min(std::max(out.peak, peak), c.metal.melting);
    out.hottest_spot = std::max(out.hottest_spot, out.peak);
}

inline void write_joint(part_state& out, const joint_at& j, const loop_load& l)
{
    const joint_circuit& joint = *j.element->joint;
    const double on_rise = j.heat_on / j.conductance;
    const double ripple = on_rise * ripple_share(j.conductance, joint.body.capacity.value(), l.load.duty);
    out.time_constant = joint.body.capacity / in_si<thermal_conductance>(j.conductance);
    out.on_rise = in_si<temperature_difference>(on_rise);
    out.drop += j.point.drop;
    out.work_drop = j.element->work ? j.point.first_drop : voltage{};
    out.loss += l.through * j.point.drop;
    temperature melting = temperature::kelvin(1e4);
    for (std::size_t i = 0; i < joint.count; ++i)
        melting = std::min({melting, joint.contacts[i].metals.first.melting, joint.contacts[i].metals.second.melting});
    const temperature peak = over_air(l, j.rise + ripple);
    if (j.element->lead) {  // a head on its neck: the part's own peak is that of its covered lead
        out.hottest_spot = std::max({out.hottest_spot, std::min(peak, melting), j.point.hottest_spot});
        out.metal_melts = out.metal_melts || peak > melting;
        out.has_spots = true;
        return;
    }
    out.mean = std::min(over_air(l, j.rise), melting);
    out.metal_melts = out.metal_melts || peak > melting;
    out.peak = std::min(std::max(out.peak, peak), melting);
    out.spots_melt = j.point.spots_melt;
    out.has_spots = joint.count > 0;
    out.hottest_spot =
        std::max({out.hottest_spot, out.peak, joint_point_of(joint, l.level, l.through, out.peak).hottest_spot});
}

// A contact between two bodies that are no part of a lead: each side is a sink of its own.
inline void write_bare_contact(part_state& out, const loop_element& e, const loop_load& l)
{
    const joint_circuit& joint = *e.joint;
    double rise = 0.0;
    joint_point point = {};
    constexpr int rounds = 60;  // the drop follows the bulk weakly: a few rounds do
    for (int i = 0; i < rounds; ++i) {
        point = joint_point_of(joint, l.level, l.through, over_air(l, rise));
        const double next = l.duty * 0.5 * l.amps * point.drop.value() / e.work->sink.value();
        if (std::fabs(next - rise) < 1e-9) break;
        rise = next;
    }
    const metal_pair& metals = joint.contacts[0].metals;
    const temperature melting = std::min(metals.first.melting, metals.second.melting);
    out.drop = out.work_drop = point.drop;
    out.loss = l.through * point.drop;
    out.mean = std::min(over_air(l, rise), melting);
    // a small patch follows the arc's on-time at once
    const temperature peak = over_air(l, rise / l.duty);
    out.metal_melts = peak > melting;
    out.peak = std::min(peak, melting);
    out.has_spots = true;
    out.spots_melt = point.spots_melt;
    out.hottest_spot = std::max(out.peak, point.hottest_spot);
}

inline void write_plate(part_state& out, const loop_element& e, const loop_load& l)
{
    const plate& p = *e.flat;
    constexpr double both_faces = 2.0;
    double rise = 0.0;
    voltage drop = {};
    constexpr int rounds = 100;
    for (int i = 0; i < rounds; ++i) {
        const temperature t = over_air(l, rise);
        drop = l.through * p.metal.resistivity_at(t) * p.length / (p.width * p.thickness);
        const thermal_body face{.surface = both_faces * p.length * p.width,
                                .diameter = p.width,
                                .emissivity = work_emissivity,
                                .capacity = {}};
        const double next =
            l.duty * l.amps * drop.value() / (body_coefficient(face, t, *l.where) * face.surface).value();
        if (std::fabs(next - rise) < 1e-9) break;
        rise += 0.7 * (next - rise);
    }
    out.drop = drop;
    out.loss = l.through * drop;
    out.mean = std::min(over_air(l, rise), p.metal.melting);
    out.metal_melts = over_air(l, rise) > p.metal.melting;
    out.peak = out.hottest_spot = out.mean;
}

// Solves the heat of a stretch of the loop whose parts all conduct.
inline void solve_heat(const std::vector<loop_element>& elements, const surroundings& where, const load& work,
                       scatter level, loop_state& out)
{
    const loop_load l{&where, level, work.current, work.current.value(), static_cast<double>(work.duty.share()), work};
    const auto place_of = [&](const loop_element* e) { return static_cast<std::size_t>(e - elements.data()); };
    for (std::size_t i = 0; i < elements.size(); ++i) {
        const loop_element& e = elements[i];
        if (e.flat)
            write_plate(out.parts[i], e, l);
        else if (e.ends_chain && e.joint)
            write_bare_contact(out.parts[i], e, l);
        out.parts[i].extension_drop = pick(e.extension, level);
        out.parts[i].drop += out.parts[i].extension_drop;
    }
    for (chain_at& chain : chains_of(elements, l)) {
        out.settled = settle(chain, l) && out.settled;
        for (const lead_at& at : chain.leads) {
            const bool first_piece = &at == chain.leads.data() || (&at - 1)->element != at.element;
            if (first_piece) write_lead(out.parts[place_of(at.element)], *at.element, chain.leads, l);
        }
        for (const joint_at& j : chain.joints)
            if (j.element != nullptr) write_joint(out.parts[place_of(j.element)], j, l);
    }
}

}  // namespace weldloop::detail
