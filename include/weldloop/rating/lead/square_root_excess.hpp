#pragma once
/// @file
/// How hot a lead gets that is loaded by the square-root rule of the guide tables.

#include <algorithm>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

namespace weldloop {

/// What the square-root rule does to a lead.
struct square_root_excess {
    current by_rule;                    ///< [A] equal_heating_current() of the continuous rating
    current by_peak;                    ///< [A] that keeps the peak at the limit, ampacity_of()
    temperature conductor_peak;         ///< at `by_rule`, settled
    temperature_difference over_limit;  ///< [K] conductor_peak less the lead's limit, 0 or above
    weldloop::basis basis;              ///< sources, and ranges left
};

/// How much hotter than its limit a lead gets that carries the current of the square-root rule,
/// I = I_continuous sqrt(period/on-time).
///
/// The rule holds the mean heat of the period; the conductor swings about the mean, and its peak lies above the limit:
/// nothing for a continuous current or a very short period, 7 K (185 mm2) to 23 K (16 mm2) at 60 % of 10 min, about
/// half of it at 60 % of 5 min, more at less duty. The guide tables count on the covering standing such peaks.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param duty time under current
/// @throws as ampacity_of(): missing_data_error, not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline square_root_excess excess_of_square_root_rule(const cable& lead, const surroundings& where,
                                                                   duty_cycle duty)
{
    const ampacity rated = ampacity_of(lead, where, duty);
    const cable_heating hot = heating_of(lead, where, {.current = rated.by_square_root, .duty = duty});
    square_root_excess out;
    out.by_rule = rated.by_square_root;
    out.by_peak = rated.amps;
    out.conductor_peak = std::max(hot.conductor_peak, limit_of(lead));  // equal but for rounding without a break
    out.over_limit = out.conductor_peak - limit_of(lead);
    out.basis = rated.basis;
    out.basis.add(hot.basis).add(square_root_duty_rule);
    return out;
}

}  // namespace weldloop
