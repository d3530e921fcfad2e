#pragma once
/// @file
/// The map of a clamp over current and surface: where it holds, declines, or is unstable; and kinds of clamp side by
/// side.
/// Source: that of hours_to_loss() and grip_over_time().

#include <optional>
#include <span>
#include <string>
#include <vector>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/life/clamp_place.hpp>
#include <weldloop/life/clamp_use.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_map_result.hpp>
#include <weldloop/part/work_clamp.hpp>

namespace weldloop {

/// The map of a clamp over current and surface factor, on the steady states its spring passes through
/// (hours_to_loss()); typical case, no film. More current or a worse surface never makes a clamp last longer: of each
/// column only the rows are sought from which on it declines and is unstable. Parts of a map
/// may be made at the same time by several threads and put side by side: a column starts from the one before, so that a
/// cell in some ten thousand, where two outlooks meet within 5 mK, may then fall the other way: where a column turns
/// from one outlook to the next moves by less than 1e-5 of the surface factor.
/// @param place the clamp, its lead, duty and air; its surface is replaced by the factors
/// @param currents [A], each above 0, rising @param surface_factors contact resistance over that of clean metal, each
/// 1e-6 to 1e6, rising @param horizon hours of shift [s], above 0 to 30 years
/// @throws not_finite_error, out_of_range_error also for columns or rows that do not rise
[[nodiscard]] grip_map grip_map_of(const clamp_place& place, std::span<const current> currents,
                                   std::span<const double> surface_factors, duration horizon);

/// One clamp of a comparison.
struct grip_row {
    std::string name = {};                            ///< of the clamp
    clamp_kind kind = clamp_kind::spring;             ///< how it grips
    fraction grip_left = 1.0;                         ///< at the end, typical, cold
    fraction grip_left_low = 1.0;                     ///< the same for the pessimistic case
    grip_outlook outlook = grip_outlook::holds;       ///< typical
    grip_outlook outlook_poor = grip_outlook::holds;  ///< pessimistic
    weldloop::resistance resistance = {};             ///< [ohm] at the end, typical; 0 if open
    temperature hottest = {};                 ///< of the jaws at the end of the on-time, over the whole forecast
    std::optional<duration> inspect_by = {};  ///< early end of the band in which a quarter of the grip is gone
};

/// Clamps side by side in the same place, under the same load, in the order given.
/// @param clamps to compare @param use the place, its own clamp left out
/// @throws as grip_over_time()
[[nodiscard]] std::vector<grip_row> compare_grip(std::span<const work_clamp> clamps, const clamp_use& use);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/grip_map_body.hpp>
#endif
