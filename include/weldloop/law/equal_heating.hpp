#pragma once
/// @file
/// The square-root rule of the guide tables: currents that heat equally on average.

#include <cmath>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Where the rule stands.
inline constexpr source square_root_duty_rule{"BS 638-4 and EN 50525-2-81 families, IEC 60974-1 practice", "1996 and later", "rating note I = I100 sqrt(100/F); rating plate 160 A at 60 % = 124 A at 100 %", source_kind::standard};

/// The current that heats a conductor as much on average at another duty, I2 = I1 sqrt(D1/D2).
///
/// This is the limit of a period much shorter than the conductor's time constant. The peak is higher than the average, so
/// the rule allows more than ampacity_of(): at 60 % of 5 min 10 % (16 mm2) to 3 % (185 mm2) more, at 20 % of 5 min 24 % to
/// 7 % more. Guide tables print the rule.
/// @param through I1 [A], 0 or above @param from duty D1 at which it flows @param to duty D2 wanted
/// @return I2 [A]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current equal_heating_current(current through, duty_cycle from, duty_cycle to)
{
    require_not_negative(through, "current");
    return through * std::sqrt(static_cast<double>(from.share()) / static_cast<double>(to.share()));
}

}  // namespace weldloop
