#pragma once
/// @file
/// A lead in time: a single long weld, cooling down, and the time it can stand a current.
/// Source: exponential_steps, see profile_after().

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/heating_march.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

namespace detail {

/// One metre of a lead where it is hottest: at its damage if there is any, by itself.
[[nodiscard]] inline covered_conductor hottest_conductor_of(const cable& lead)
{
    return conductor_of(lead, is_damaged(lead) ? static_cast<double>(lead.missing_strands) : 0.0);
}

/// Conductor and covering when nothing changes: the temperature is straight over the logarithm of the radius.
[[nodiscard]] inline conductor_profile settled_profile(const temperature& conductor, const temperature& surface)
{
    const auto at = [&](std::size_t i) { return conductor + lobatto_places[i] * (surface - conductor); };
    return {conductor, {at(1), at(2), at(3)}, surface};
}

}  // namespace detail

/// What a lead is at after lying without current for a day: the air's temperature, higher in the sun.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline conductor_profile lead_at_rest(const cable& lead, const surroundings& where)
{
    const cable_heating cold = heating_of(lead, where, {.current = current{}});
    return detail::settled_profile(cold.conductor_peak, cold.surface_peak);
}

/// What a lead is at when its conductor has been held at a temperature until nothing changed.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param conductor its temperature
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error
[[nodiscard]] inline conductor_profile lead_held_at(const cable& lead, const surroundings& where, temperature conductor)
{
    return detail::settled_profile(conductor, steady_surface_of(lead, where, conductor));
}

/// Temperatures of a lead after a current has flowed for a time, far from its ends, by profile_after().
///
/// Where strands are missing the numbers are those of the damage by itself, which the rest of the conductor would help
/// to cool: cautious. Against a covering of 200 rings, 16 to 185 mm2, shots of 10 s to an hour and cooling: conductor
/// and surface within 0.05 K (tests/circuit).
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param through I [A] and time [s], both 0
/// or above @param start lead_at_rest(), lead_held_at() or what an earlier call returned
/// @return conductor and surface, where the lead is hottest
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error for
/// currents so large that numbers overflow
[[nodiscard]] inline conductor_profile temperature_after(const cable& lead, const surroundings& where,
                                                         const heating_segment& through, const conductor_profile& start)
{
    detail::require_dimensions(lead);
    require_not_negative(through.current, "current");
    require_not_negative(through.duration, "time");
    return profile_after(detail::hottest_conductor_of(lead), detail::surface_of(lead, where), through, start);
}

/// The same from a lead at rest.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param through I [A] and time [s], both 0
/// or above
/// @throws missing_data_error, not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline conductor_profile temperature_after(const cable& lead, const surroundings& where,
                                                         const heating_segment& through)
{
    return temperature_after(lead, where, through, lead_at_rest(lead, where));
}

/// How long a lead may carry a current before its conductor is at the lead's limit: the longest single weld.
///
/// The time at which temperature_after() is the limit.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param through I [A], 0 or above
/// @param start lead_at_rest(), lead_held_at() or what temperature_after() returned
/// @return [s], 0 for a start at the limit or above; none where the limit is never reached
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error for
/// currents so large that numbers overflow
[[nodiscard]] inline std::optional<duration> time_to_limit(const cable& lead, const surroundings& where,
                                                           current through, const conductor_profile& start)
{
    detail::require_dimensions(lead);
    require_not_negative(through, "current");
    if (start.conductor >= limit_of(lead)) return duration{};
    return time_to_conductor(detail::hottest_conductor_of(lead), detail::surface_of(lead, where), through,
                             {start, limit_of(lead)});
}

/// The same from a lead at rest.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param through I [A], 0 or above
/// @throws missing_data_error, not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline std::optional<duration> time_to_limit(const cable& lead, const surroundings& where,
                                                           current through)
{
    return time_to_limit(lead, where, through, lead_at_rest(lead, where));
}

/// How long a lead without current takes to cool from one conductor temperature to another; at the start covering and
/// conductor are as they settle with the conductor held at `from`.
///
/// A lead that comes from a short burst has a cooler covering and cools faster.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param from at the start
/// @param to at the end, at most `from` and above what the lead has at rest
/// @return [s]; 0 where both are the same
/// @throws missing_data_error for a lead without diameters; not_finite_error; out_of_range_error where `to` lies above
/// `from`; no_solution_error where the lead never gets as cold as `to`
[[nodiscard]] inline duration cool_down_time(const cable& lead, const surroundings& where, temperature from,
                                             temperature to)
{
    detail::require_dimensions(lead);
    if (to > from)
        throw out_of_range_error("temperature to cool to", to_text(to, "degC"), "at most " + to_text(from, "degC"));
    const std::optional<duration> time =
        time_to_conductor(detail::hottest_conductor_of(lead), detail::surface_of(lead, where), current{},
                          {lead_held_at(lead, where, from), to});
    if (!time)
        throw no_solution_error("time to cool", "without end: the lead does not get to " + to_text(to, "degC"),
                                "a temperature above " + to_text(lead_at_rest(lead, where).conductor, "degC"));
    return *time;
}

/// Time in which a small departure of a lead from a steady state dies away to 1/e, with the conductor about a
/// temperature; see time_constant_of() of a covered conductor. Hotter leads have the shorter one.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param conductor its temperature
/// @return [s]
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error
[[nodiscard]] inline duration time_constant_of(const cable& lead, const surroundings& where, temperature conductor)
{
    detail::require_dimensions(lead);
    return time_constant_of(detail::hottest_conductor_of(lead), detail::surface_of(lead, where),
                            steady_surface_of(lead, where, conductor));
}

/// The longest time under current within a period that keeps the settled peak of the conductor at or below the lead's
/// limit, by heating_of().
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param through I [A], above 0
/// @param period [s], above 0
/// @return [s]; the whole period where the lead carries the current without a break
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error
/// where even a millionth of the period is too long
[[nodiscard]] inline duration longest_on_time(const cable& lead, const surroundings& where, current through,
                                              duration period)
{
    require_positive(through, "current");
    require_positive(period, "duty period");
    const auto above_limit = [&](double share) {
        const duty_cycle duty = share < 1.0 ? duty_cycle::of(share * period, period) : duty_cycle::of(period, period);
        return (heating_of(lead, where, {.current = through, .duty = duty}).conductor_peak - limit_of(lead)).value();
    };
    constexpr double briefest = 1e-6;  // of the period
    if (above_limit(1.0) <= 0.0) return period;
    if (const double excess = above_limit(briefest); excess > 0.0)
        throw no_solution_error("longest on-time",
                                "none: " + number_text(excess) + " K above the limit at a millionth of the period",
                                "a smaller current, cooler air or a higher limit");
    const double logarithm =
        detail::root_between([&](double x) { return above_limit(std::exp(x)); }, std::log(briefest), 0.0, "on-time");
    return std::min(std::exp(logarithm), 1.0) * period;
}

}  // namespace weldloop
