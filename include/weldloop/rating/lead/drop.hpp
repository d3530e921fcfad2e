#pragma once
/// @file
/// Voltage lost along a lead.
/// Source: Ohm's law; resistance by conductor_resistance().

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// Voltage along one lead, U = I R(T), with the lead's damage.
///
/// Out and back count twice. Direct current; the temperature is the mean over length and arc-on time, as
/// cable_heating::conductor_mean. Guide tables are met to their printed digits.
/// @param lead its length, metal, size, increment and damage count @param through I [A], 0 or above
/// @param conductor_mean T
/// @return [V]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage drop_of(const cable& lead, current through, temperature conductor_mean)
{
    return require_finite(voltage(require_not_negative(through, "current") * resistance_of(lead, conductor_mean)),
                          "drop of the lead");
}

}  // namespace weldloop
