#pragma once
/// @file
/// How grip.hpp is answered.

#include <algorithm>
#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_neighbours.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/life/grip_ageing.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_march.hpp>
#include <weldloop/life/grip_service.hpp>

namespace weldloop {

namespace detail {

/// A clamp whose grip is asked for, with what lies behind it at each point of the scatter.
struct grip_question {
    work_connection joint;
    surroundings where;
    weldloop::load load;
    grip_service service;
    band<clamp_outside> outside;  // by the scatter of resistances
    duration horizon;
    std::optional<clamp_outside> piece = {};      // the workpiece under it; empty: a plate without end
    std::optional<band<clamp_swing>> swing = {};  // when new, among its neighbours; empty: that of the clamp by itself
};

/// Temperature of a spring when a forecast begins [K]; 0 without a spring.
/// @param solver of the case @param swing when the forecast begins, or null: that of the clamp by itself
[[nodiscard]] inline double first_spring_kelvin(const work_connection& w, const clamp_solver& solver,
                                                const duty_cycle& duty, const clamp_swing* swing = nullptr)
{
    // only a spring that has relaxed before has a past at it, see lost_before_judgement
    if (!w.clamp.spring || !(static_cast<double>(w.grip_lost) > 0.0)) return 0.0;
    const grip_ageing as_law(w, {}, {}, grip_case::typical, 0.0);
    return ageing_clamp(solver, as_law, duty, 1.0, swing).at(as_law.start(), {}, nullptr).felt.spring;
}

/// @param near the settled period of the typical case, or null; out: that of this case where it was sought
[[nodiscard]] inline grip_march march_case(const grip_question& q, const clamp_network& network, grip_case which,
                                           std::shared_ptr<const solve::periodic_state>& near)
{
    const clamp_solver solver(network, pick(q.outside, scatter_of(which)), q.load, scatter_of(which));
    const clamp_condition when_new{1.0 - static_cast<double>(q.joint.grip_lost), 1.0};
    using reached = clamp_solver::reached;
    const reached from = which == grip_case::kind ? reached::cold : reached::near;  // what is near must be no worse
    const clamp_swing swing =
        q.swing ? pick(*q.swing, scatter_of(which)) : swing_of(solver, when_new, q.load.duty, near, from);
    const grip_ageing ageing(q.joint, q.where, q.service, which,
                             first_spring_kelvin(q.joint, solver, q.load.duty, &swing));
    const ageing_clamp clamp(solver, ageing, q.load.duty, 1.0, &swing);
    return grip_marcher(clamp, network, q.service, q.horizon)();
}
/// One case alone.
[[nodiscard]] inline grip_march march_case(const grip_question& q, const clamp_network& network, grip_case which)
{
    std::shared_ptr<const solve::periodic_state> none;
    return march_case(q, network, which, none);
}

// Whether a spring left the range that the bounds of its law were fitted in.
[[nodiscard]] inline bool left_fitted_range(const work_connection& w, double hottest_kelvin)
{
    if (!w.clamp.spring) return false;
    const clamp_spring& s = *w.clamp.spring;
    return !s.wire.relaxation_published ||
           !within_range(static_cast<double>(s.stress), fitted_stress_low, fitted_stress_high) ||
           hottest_kelvin > temperature::celsius(fitted_celsius_high).in_kelvin() * (1.0 + range_rounding);
}

[[nodiscard]] constexpr grip_outlook outlook_of(const grip_march& m)
{
    if ((m.end == grip_end::horizon || m.end == grip_end::settled) && !m.spots_melt)
        return m.quarter_at ? grip_outlook::declines : grip_outlook::holds;
    return grip_outlook::unstable;
}

[[nodiscard]] inline clamp_network network_of(const grip_question& q)
{
    work_connection w = q.joint;
    if (q.service.interpass) w.preheat = q.service.interpass;
    clamp_network out = clamp_network_of(w, q.where);
    if (q.piece && !w.preheat) {
        out.work.sink = q.piece->conductance;
        out.work.work = q.piece->far;
    }
    return out;
}

[[nodiscard]] inline grip_forecast forecast_grip(const grip_question& q)
{
    const clamp_network network = network_of(q);
    std::shared_ptr<const solve::periodic_state> period;
    grip_march typical = march_case(q, network, grip_case::typical, period);
    std::shared_ptr<const solve::periodic_state> lent = period;
    grip_march kind = march_case(q, network, grip_case::kind, lent);
    grip_march harsh = march_case(q, network, grip_case::harsh, period);

    grip_forecast out;
    out.horizon = q.horizon;
    out.grip_left = std::clamp(typical.left, 0.0, 1.0);
    out.grip_left_low = std::clamp(std::min(harsh.left, typical.left), 0.0, 1.0);
    out.outlook = outlook_of(typical);
    out.outlook_poor = outlook_of(harsh);
    out.runs_away = typical.end != grip_end::horizon && typical.end != grip_end::settled;
    out.spots_melt = typical.spots_melt;
    if (out.spots_melt) out.basis.add(range_flag::spots_melting);
    out.spring_destroyed = typical.spring_destroyed;
    out.end = typical.end;
    out.causes = typical.causes;
    out.jaws_soften = temperature::kelvin(typical.hottest_jaw) >= q.joint.clamp.jaw.softening;
    out.clock_hours = clock_hours(q.horizon, q.service);
    out.arc_hours = arc_hours(q.horizon, q.load.duty);
    const auto or_end = [&](const std::optional<double>& t) { return t ? in_si<duration>(*t) : q.horizon; };
    if (harsh.quarter_at) {
        const duration low = or_end(harsh.quarter_at), middle = std::max(low, or_end(typical.quarter_at));
        out.quarter_lost = band<duration>{low, middle, std::max(middle, or_end(kind.quarter_at))};
        out.inspect_by = out.quarter_lost->low;
    }

    if (typical.untouched_ohm) out.untouched_resistance = in_si<resistance>(*typical.untouched_ohm);
    constexpr double film_that_counts = 1.01;  // of the contact's resistance
    if (q.joint.clamp.spring) {
        out.basis.add(larson_miller).add(*q.joint.clamp.spring->wire.relaxation_source);
        if (left_fitted_range(q.joint, std::max(typical.hottest_spring, harsh.hottest_spring)))
            out.basis.add(range_flag::relaxation_range).add(relaxation_widening);
        if (typical.spring_destroyed || harsh.spring_destroyed)
            out.basis.add(range_flag::spring_destroyed).add(*q.joint.clamp.spring->wire.tempering_source);
    } else
        out.basis.add(bolt_relaxation_judgement);
    if (std::max(typical.film_factor, harsh.film_factor) > film_that_counts)
        out.basis.add(clamp_film_judgement).add(copper_oxide_growth).add(range_flag::relative_trend);
    if (q.service.openings > 0.0) out.basis.add(reclamping_judgement);
    if (q.service.openings > 0.0) out.basis.add(wiping_measured);
    if (q.service.knocks > 0.0) out.basis.add(knock_judgement);
    if (q.service.drags > 0.0) out.basis.add(knock_judgement).add(dragging_judgement);
    if (static_cast<double>(q.service.on_work) < 1.0) out.basis.add(loaded_time_rule);
    if (q.service.widest_opening && q.joint.clamp.spring) out.basis.add(clamp_travel_of(*q.joint.clamp.spring).basis);
    out.basis.add(unloading_measured).add(unloading_judgement);
    if (q.service.clean_every) out.basis.add(cleaning_judgement);
    if (q.joint.clamp.spring && static_cast<double>(q.joint.grip_lost) > 0.0) out.basis.add(lost_before_judgement);
    out.basis.add(quarter_grip_judgement);
    out.points = std::move(typical.points);
    out.poor_points = std::move(harsh.points);
    out.kind_points = std::move(kind.points);
    return out;
}

}  // namespace detail

[[nodiscard]] inline grip_forecast grip_over_time(const work_connection& joint, const cable& lead, const load& work,
                                                  const surroundings& where, duration horizon,
                                                  const grip_service& service)
{
    require_positive(work.current, "welding current");
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");
    detail::require_service(service, horizon);
    const joint_circuit circuit = joint_of(joint);
    if (!(circuit.contacts[0].cold.typical.value() > 0.0))
        throw bad_station_error("work clamp", "an open circuit", "a clamp whose jaws touch metal");
    const clamp_outside behind = lead_outside(lead, where, work);
    grip_forecast out = detail::forecast_grip({joint, where, work, service, {behind, behind, behind}, horizon});
    out.basis.add(circuit.basis).add(work_patch).add(pressed_gap).add(fin_equations).add(lead_fin_judgement);
    return out;
}

[[nodiscard]] inline grip_forecast grip_over_time(const clamp_use& use)
{
    return grip_over_time(use.joint, use.lead, use.load, use.where, use.horizon, use.service);
}

namespace detail {

/// The forecast of a clamp in a solved loop, from the state and the period it has there. What the rest of the loop
/// takes in the mean follows the cable connection as a straight line; its swing grows and falls with the clamp's own.
/// @param usual the clamp in the loop solved at the median of all joints @param poor at their 95 % points
[[nodiscard]] inline grip_forecast forecast_in_loop(const station& s, std::size_t index, const clamp_in_loop& usual,
                                                    const clamp_in_loop& poor, duration horizon,
                                                    const grip_service& service)
{
    grip_question q{std::get<work_connection>(part_as_placed(s, index)),
                    s.where,
                    {.current = usual.through, .duty = s.job.duty},
                    service,
                    {usual.outside, usual.outside, poor.outside},
                    horizon,
                    usual.piece};
    if (!service.interpass) {  // else the work is hotter than the loop knows
        const clamp_network network = network_of(q);
        const auto swing_of = [&](const clamp_in_loop& c) {
            const clamp_solver solver(network, c.outside, q.load, c.level);
            return clamp_swing(solver, {1.0 - static_cast<double>(q.joint.grip_lost), 1.0}, q.load.duty, c.period);
        };
        const clamp_swing usually = swing_of(usual);
        q.swing = {usually, usually, swing_of(poor)};
    }
    return forecast_grip(q);
}

}  // namespace detail

[[nodiscard]] inline std::optional<grip_forecast> grip_in_station(const station& s, std::size_t index, duration horizon,
                                                                  const grip_service& service)
{
    if (index >= parts_in(s))
        throw out_of_range_error("path index", std::to_string(index), "below " + std::to_string(parts_in(s)));
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");
    detail::require_service(service, horizon);
    detail::loop_solver solver(s);
    if (!std::holds_alternative<work_connection>(part_at(s, index))) return std::nullopt;
    const auto in_loop = [&](scatter level) -> std::optional<detail::clamp_in_loop> {
        solve::periodic_state found;
        if (!solver.solve(level, &found).is_solved()) return std::nullopt;
        return detail::clamp_in(solver.network(), found, index, static_cast<double>(s.job.duty.share()), level);
    };
    const auto usual = in_loop(scatter::typical);
    if (!usual) return std::nullopt;
    return detail::forecast_in_loop(s, index, *usual, in_loop(scatter::high).value_or(*usual), horizon, service);
}

}  // namespace weldloop
