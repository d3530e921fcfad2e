#pragma once
/// @file
/// How much of a lead behind a burnt termination has to go.

#include <cmath>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// What the trade does without calculation.
inline constexpr source cut_back_practice{"cut a burnt lead back 6 to 10 inches",
                                          {},
                                          "heard in shops; no document is known to give a reason",
                                          source_kind::common_practice};
/// @name What the trade cuts back
/// @{
inline constexpr length cut_back_practice_least = in_si<length>(0.1524);  ///< 6 in
inline constexpr length cut_back_practice_most = in_si<length>(0.254);    ///< 10 in
/// @}

/// The law behind cut_back_of().
inline constexpr source cut_back_law{"long fin with the current's own heat, rise exp(-x/decay length)",
                                     {},
                                     "derived from section 3.6 of Incropera and DeWitt (fin_equations)",
                                     source_kind::derived};

/// A termination that got hot.
struct hot_end {
    temperature at;     ///< T_end, of the termination
    temperature limit;  ///< T_limit that copper and covering stand
};

/// How far the heat of a hot termination has reached.
struct cut_back {
    weldloop::length length;        ///< [m] of conductor that was hotter than the limit, from the termination
    weldloop::length decay_length;  ///< [m] over which the excess falls to 1/e
    temperature far;                ///< of the conductor far from the termination
    bool none_needed = false;       ///< the termination was never hotter than the limit
    weldloop::basis basis;          ///< sources, and ranges left
};

/// Length of lead behind a hot termination that got hotter than a limit:
/// x = delta ln((T_end - T_far)/(T_limit - T_far)), delta by decay_length_of(), T_far by heating_of() with the same
/// current without a break.
///
/// Cut there, and then on until copper is bright and flexible: strands tell more than any formula, for heat is one
/// cause of damage and acid or salt another. It is the farthest reach, that of an end that stayed hot until nothing
/// changed (an hour for a large lead); a short flash reaches less far.
///
/// delta is taken at the limit, and holds as if the heat that leaves were proportional to the rise. Against the fin
/// whose loss is not made linear, leads of 1 AWG to 4/0 without current, limit 85 degC: 2.4 % short from 120 degC, 0.5
/// % long from 200, 2.6 % long from 300 (tests/rating). Degenerate cases: an end at or below the limit needs no cut
/// (length 0, `none_needed`); a lead that is hotter than the limit all along has no such length.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param end of the termination, with the
/// limit; the lead's own unless stated (second form) @param through I [A] that flowed without a break, 0 or above
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error
/// where the lead is at the limit or above far from the end too, and where the current's heat grows faster than what
/// leaves
[[nodiscard]] inline cut_back cut_back_of(const cable& lead, const surroundings& where, const hot_end& end,
                                          current through = in_si<current>(0.0))
{
    require_not_negative(through, "current");
    const cable_heating steady = heating_of(lead, where, {.current = through});
    cut_back out;
    out.far = steady.conductor_period_mean;
    if (out.far >= end.limit)
        throw no_solution_error("cut-back length",
                                "the whole lead: it is at " + to_text(out.far, "degC") + " far from its end",
                                "a lead below the limit of " + to_text(end.limit, "degC"));
    out.basis.add(cut_back_law).add(steady.basis);
    out.decay_length = decay_length_of(lead, where, end.limit, through);
    out.none_needed = end.at <= end.limit;
    if (!out.none_needed)
        out.length = out.decay_length * std::log(static_cast<double>((end.at - out.far) / (end.limit - out.far)));
    return out;
}

/// The same with the lead's own limit.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param end T_end, of the termination
/// @throws missing_data_error, not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline cut_back cut_back_of(const cable& lead, const surroundings& where, temperature end)
{
    return cut_back_of(lead, where, {end, limit_of(lead)});
}

}  // namespace weldloop
