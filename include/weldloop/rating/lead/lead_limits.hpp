#pragma once
/// @file
/// The other questions of a lead: how much duty, how long, how warm the air, and what sets the end.
/// Source: longest_on_time(), ampacity_of() and conductor_resistance() turned round.

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/drop.hpp>
#include <weldloop/rating/lead/sizing.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

/// The most duty a lead stands.
struct duty_answer {
    duty_cycle duty = duty_cycle::continuous();  ///< the longest on-time within the period asked for
    bool unbound = false;                        ///< the lead carries the current without a break: nothing binds
    cable_heating heating;                       ///< at that duty
    temperature_difference heat_margin;          ///< [K] limit less peak: 0 where heat binds
    weldloop::basis basis;                       ///< sources, and ranges left
};

/// The longest lead that loses no more than an allowed voltage.
struct length_answer {
    weldloop::length length;             ///< [m] one way
    lead_limit bound_by;                 ///< `drop`, always: heat does not depend on the length and must be kept anyway
    voltage drop;                        ///< [V] over that length when hot, the allowed one
    temperature conductor_mean;          ///< at which the drop was taken
    temperature_difference heat_margin;  ///< [K] limit less peak, 0 or above
    current current_margin;              ///< [A] rated less asked, 0 or above
    weldloop::basis basis;               ///< sources, and ranges left
};

/// The warmest air a lead may work in.
struct air_answer {
    temperature air;      ///< highest, at which the conductor's peak is the limit
    lead_limit bound_by;  ///< `heat`
    temperature_difference
        air_margin;            ///< [K] that air less the air of the surroundings asked about; below 0: too warm
    temperature surface_peak;  ///< of the covering in that air
    weldloop::basis basis;     ///< sources, and ranges left
};

/// The largest duty within a period at which the settled peak of a lead stays at or below its limit,
/// by longest_on_time().
///
/// Accuracy: of the on-time about twice that of the rated current, 5 to 10 %. Where the lead carries the current
/// without a break the duty is continuous (`unbound`) and the margin is what is left of the limit.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param through I [A], above 0
/// @param period [s], above 0; 10 min for power sources, 5 min in cable guides
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error, also for air at or
/// above the limit; no_solution_error where even a millionth of the period is too long
[[nodiscard]] inline duty_answer largest_duty(const cable& lead, const surroundings& where, current through,
                                              duration period = duty_cycle::default_period())
{
    if (where.air >= limit_of(lead))
        throw out_of_range_error("air temperature", to_text(where.air, "degC"),
                                 "below the lead's limit of " + to_text(limit_of(lead), "degC"));
    const duration on = longest_on_time(lead, where, through, period);
    duty_answer out;
    out.unbound = on >= period;
    out.duty = duty_cycle::of(std::min(on, period), period);
    out.heating = heating_of(lead, where, {.current = through, .duty = out.duty});
    out.heat_margin = std::max(limit_of(lead) - out.heating.conductor_peak, temperature_difference{});
    out.basis = out.heating.basis;
    return out;
}

/// The greatest length of a lead whose drop when hot stays within an allowed one, L = U/(I R'), one way.
///
/// Heat does not depend on the length far from the ends; a lead that is too small for the current is refused. Damage
/// keeps its own length and takes its share of the drop.
/// @param lead with its diameters; its own length matters only for its damage, which must fit in it
/// @param work current [A], above 0, and duty @param where air, wind, lay, altitude, sun
/// @param allowed_drop [V] along this lead, above 0; half of what out and back may lose together
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error
/// where the conductor gets hotter than its limit whatever the length, or where the damage alone loses more
[[nodiscard]] inline length_answer longest_lead(const cable& lead, const load& work, const surroundings& where,
                                                voltage allowed_drop)
{
    require_positive(work.current, "current");
    require_positive(allowed_drop, "allowed drop");
    const ampacity rated = ampacity_of(lead, where, work.duty);
    const cable_heating hot = heating_of(lead, where, work);
    if (work.current > rated.amps && hot.over_limit)
        throw no_solution_error("lead length",
                                "none: heat binds, the conductor gets to " + to_text(hot.conductor_peak, "degC"),
                                "at most " + to_text(rated.amps, "A") + " for " + to_text(limit_of(lead), "degC"));
    length_answer out;
    out.bound_by = lead_limit::drop;
    // the drop grows evenly with the length; the conductor's mean too changes with it where there is damage
    const auto drop_over = [&](double metres, temperature* mean) {
        cable tried = lead;
        tried.length = in_si<weldloop::length>(metres);
        tried.damaged_length = detail::is_damaged(lead) ? lead.damaged_length : weldloop::length{};
        const temperature t =
            detail::is_damaged(lead) ? heating_of(tried, where, work).conductor_mean : hot.conductor_mean;
        if (mean != nullptr) *mean = t;
        return drop_of(tried, work.current, t);
    };
    const double least = detail::is_damaged(lead) ? lead.damaged_length.value() : 0.0;
    const double per_metre =
        (work.current * resistance_per_length_of(lead, hot.conductor_mean)).value();  // V/m where strands are whole
    double metres = allowed_drop.value() / per_metre;
    if (least > 0.0) {
        if (drop_over(least, nullptr) > allowed_drop)
            throw no_solution_error("lead length",
                                    "none: its damage alone loses " + to_text(drop_over(least, nullptr), "V"),
                                    "more than " + to_text(allowed_drop, "V") + " allowed, or a sound lead");
        // whole strands at the temperature of the air would carry it farthest
        const double most =
            least + allowed_drop.value() / (work.current * resistance_per_length_of(lead, where.air)).value();
        metres = detail::root_between([&](double x) { return (drop_over(x, nullptr) - allowed_drop).value(); }, least,
                                      most, "lead length");
    }
    out.length = in_si<weldloop::length>(metres);
    out.drop = drop_over(metres, &out.conductor_mean);
    out.heat_margin = std::max(limit_of(lead) - hot.conductor_peak, temperature_difference{});
    out.current_margin = std::max(rated.amps - work.current, current{});
    out.basis = hot.basis;
    return out;
}

/// The warmest air in which the settled peak of a lead under a load stays at or below its limit.
///
/// Root of heating_of() for the air, between -100 degC and the limit.
/// @param lead with its diameters @param work current [A], above 0, and duty
/// @param where wind, lay, altitude, sun; its air is only what the margin is measured from
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error
/// where the lead gets too hot even in air of -100 degC
[[nodiscard]] inline air_answer highest_air(const cable& lead, const load& work, const surroundings& where)
{
    require_positive(work.current, "current");
    const auto in_air = [&](double kelvin) {
        surroundings there = where;
        there.air = temperature::kelvin(kelvin);
        return heating_of(lead, there, work);
    };
    const auto above_limit = [&](double kelvin) { return (in_air(kelvin).conductor_peak - limit_of(lead)).value(); };
    const double coldest = coldest_air.in_kelvin();
    const double hottest = std::min(limit_of(lead), hottest_air).in_kelvin();
    if (limit_of(lead) <= coldest_air || above_limit(coldest) > 0.0)
        throw no_solution_error("air temperature", "below " + to_text(coldest_air, "degC") + ": heat binds in any air",
                                "a smaller current or duty, a larger lead or a higher limit");
    air_answer out;
    out.bound_by = lead_limit::heat;
    // below the hottest air a lead is rated for, only a lead with a limit above that is still too cool
    out.air = above_limit(hottest) <= 0.0
                  ? temperature::kelvin(hottest)
                  : temperature::kelvin(detail::root_between(above_limit, coldest, hottest, "air temperature"));
    out.air_margin = out.air - where.air;
    const cable_heating there = in_air(out.air.in_kelvin());
    out.surface_peak = there.surface_peak;
    out.basis = there.basis;
    return out;
}

}  // namespace weldloop
