#pragma once
/// @file
/// How grip_threshold.hpp is answered.

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/clamp_swing.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/life/grip_map_result.hpp>
#include <weldloop/life/grip_threshold.hpp>
#include <weldloop/life/grip_time_body.hpp>

namespace weldloop {

namespace detail {

// The largest x between two ends for which something still holds, by halving in the logarithm; `low` must hold.
template <class Holds>
[[nodiscard]] double largest_that_holds(double low, double high, const Holds& holds)
{
    constexpr double narrow = 1e-7;
    if (holds(high)) return high;
    while (high > low * (1.0 + narrow)) {
        const double middle = std::sqrt(low * high);
        (holds(middle) ? low : high) = middle;
    }
    return low;
}

}  // namespace detail

[[nodiscard]] inline grip_threshold grip_threshold_of(const clamp_place& place, const grip_moment& moment)
{
    const work_connection& joint = place.joint;
    const cable& lead = place.lead;
    const duty_cycle& duty = place.duty;
    const surroundings& where = place.where;
    const double force_left = static_cast<double>(moment.force_left);
    if (!(force_left > 0.0)) throw out_of_range_error("force left", "0", "above zero: without force nothing conducts");
    require_within(moment.contact_factor, 1e-6, 1e6, "factor of contact resistance");
    const clamp_network network = clamp_network_of(joint, where);
    const clamp_condition condition{force_left, moment.contact_factor};
    struct moment_state {
        detail::clamp_solver solver;
        detail::clamp_solver::state heat;
        bool lead_melts;
        [[nodiscard]] bool holds() const { return heat.bound == clamp_bound::none && !heat.spots_melt && !lead_melts; }
    };
    const auto state_at = [&](double amps) -> moment_state {
        const load work{.current = in_si<current>(amps), .duty = duty};
        const clamp_outside behind = lead_outside(lead, where, work);
        detail::clamp_solver solver(network, behind, work, moment.level);
        if (!solver.conducts())
            throw bad_station_error("work clamp", "an open circuit", "a clamp whose jaws touch metal");
        static_cast<void>(detail::let_swing(solver, condition, duty));
        return {solver, solver.solve(condition), behind.far >= conductor_melting_of(lead.metal)};
    };
    const double low = lowest_clamp_current.value();
    if (!state_at(low).holds())
        throw no_solution_error("largest current", "without a steady state at 1 A",
                                "a clamp colder than its spring's tempering limit");
    grip_threshold out;
    const double found = detail::largest_that_holds(low, highest_clamp_current.value(),
                                                    [&](double amps) { return state_at(amps).holds(); });
    const moment_state end = state_at(found);
    const detail::clamp_solver::state& last = end.heat;
    constexpr double above = 1.0 + 1e-6;
    constexpr double at_fold = 0.97;  // of its heat that the contact makes again; 1 at the fold itself
    out.largest = in_si<current>(found);
    out.jaw = where.air + in_si<temperature_difference>(last.rise[detail::jaw_place]);
    out.spring = where.air + in_si<temperature_difference>(last.rise[detail::spring_place]);
    if (found < highest_clamp_current.value()) {
        const moment_state next = state_at(found * above);
        out.bound = next.lead_melts                                  ? grip_bound::lead
                    : end.solver.returned(last, condition) > at_fold ? grip_bound::fold
                    : next.heat.bound == clamp_bound::none           ? grip_bound::spots
                    : next.heat.bound == clamp_bound::melting        ? grip_bound::melting
                                                                     : grip_bound::tempering;
    }
    out.basis.add(network.basis).add(lead_fin_judgement);
    return out;
}

namespace detail {

/// The life of a clamp without film at a load, typical case.
[[nodiscard]] inline grip_life life_of(const work_connection& joint, const clamp_network& network,
                                       const clamp_outside& behind, const load& work, const surroundings& where,
                                       double contact_factor, duration horizon)
{
    const clamp_solver solver(network, behind, work, scatter::typical);
    if (!solver.conducts()) throw bad_station_error("work clamp", "an open circuit", "a clamp whose jaws touch metal");
    if (behind.far >= annealed_copper.melting) return {0.0, 0.0};
    const grip_ageing ageing(joint, where, {}, grip_case::typical, 0.0);
    return direct_clamp(solver, ageing, work.duty, contact_factor, true).life(horizon.value());
}

[[nodiscard]] inline bool meets(const grip_life& life, grip_demand demand, duration horizon)
{
    const grip_outlook outlook = life.within(horizon.value());
    return demand == grip_demand::stays_stable ? outlook != grip_outlook::unstable : outlook == grip_outlook::holds;
}

}  // namespace detail

[[nodiscard]] inline current largest_clamp_current(const clamp_place& place, duration horizon, grip_demand demand)
{
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");
    const clamp_network network = clamp_network_of(place.joint, place.where);
    const auto holds = [&](double amps) {
        const load work{.current = in_si<current>(amps), .duty = place.duty};
        return detail::meets(detail::life_of(place.joint, network, lead_outside(place.lead, place.where, work), work,
                                             place.where, 1.0, horizon),
                             demand, horizon);
    };
    if (!holds(lowest_clamp_current.value())) return {};
    return in_si<current>(
        detail::largest_that_holds(lowest_clamp_current.value(), highest_clamp_current.value(), holds));
}

[[nodiscard]] inline fraction largest_clamp_duty(const clamp_place& place, current through, duration horizon,
                                                 grip_demand demand)
{
    const duration period = place.duty.period();
    require_positive(through, "current");
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");
    const clamp_network network = clamp_network_of(place.joint, place.where);
    const auto holds = [&](double share) {
        const load work{.current = through, .duty = duty_cycle::of(std::min(share, 1.0) * period, period)};
        return detail::meets(detail::life_of(place.joint, network, lead_outside(place.lead, place.where, work), work,
                                             place.where, 1.0, horizon),
                             demand, horizon);
    };
    constexpr double least = 0.01;
    if (!holds(least)) return 0.0;
    return std::min(1.0, detail::largest_that_holds(least, 1.0, holds));
}

[[nodiscard]] inline std::vector<grip_derating>
grip_derating_of(const clamp_place& place, std::span<const double> shares, duration horizon, grip_demand demand)
{
    std::vector<grip_derating> out;
    for (const double share : shares) {
        const double on = static_cast<double>(duty_fraction(share));
        clamp_place at = place;
        at.duty = duty_cycle::of(on * place.duty.period(), place.duty.period());
        out.push_back({on, largest_clamp_current(at, horizon, demand)});
    }
    return out;
}

}  // namespace weldloop
