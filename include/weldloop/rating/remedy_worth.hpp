#pragma once
/// @file
/// From what on a step is worth a line.

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Where the thresholds come from.
inline constexpr source remedy_worth_practice{
    "10 mV is the last digit of a meter that reads to 20 V: less is no gain that anybody could read",
    {},
    {},
    source_kind::common_practice};

/// A step that clears nothing is listed if it regains at least this much voltage, or cools its part by least_cooling;
/// less voltage is not told as a gain. @see remedy_worth_practice
inline constexpr voltage least_regain = in_si<voltage>(0.010);

/// See least_regain.
inline constexpr temperature_difference least_cooling = in_si<temperature_difference>(3.0);

}  // namespace weldloop
