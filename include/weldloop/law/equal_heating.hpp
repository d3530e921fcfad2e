#pragma once
/// @file
/// The square-root rules of the guide tables: currents that heat equally on average, and air that is not at the base of
/// a table. ampacity_of() allows less than the first; against the second it takes up to 0.01 more off in air from the
/// base of 25 up to 45 degC, 0.02 up to 60, agrees within 0.004 from there down to 0 degC, and gives less credit below.

#include <cmath>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// Where the rule stands.
inline constexpr source square_root_duty_rule{
    "BS 638-4 and EN 50525-2-81 families, IEC 60974-1 practice", "1996 and later",
    "rating note I = I100 sqrt(100/F); rating plate 160 A at 60 % = 124 A at 100 %", source_kind::standard};

/// Where the rule is met.
inline constexpr source ambient_factor_rule{
    "BS 638-4 rating factors, IEC 60364-5-52 table B.52.14, NFPA 70 table 310.15(B)(1)", "1996 to 2023",
    "factors for air temperature; they follow sqrt((Tc - Ta)/(Tc - Tb)) within 0.012", source_kind::standard};

/// The current that heats a conductor as much on average at another duty, I2 = I1 sqrt(D1/D2).
///
/// This is the limit of a period much shorter than the conductor's time constant. The peak is higher than the average,
/// so the rule allows more than ampacity_of(): at 60 % of 5 min 10 % (16 mm2) to 3 % (185 mm2) more, at 20 % of 5 min
/// 24 % to 7 % more. Guide tables print the rule.
/// @param through I1 [A], 0 or above @param from duty D1 at which it flows @param to duty D2 wanted
/// @return I2 [A]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current equal_heating_current(current through, duty_cycle from, duty_cycle to)
{
    require_not_negative(through, "current");
    return require_finite(
        current(through * std::sqrt(static_cast<double>(from.share()) / static_cast<double>(to.share()))),
        "current of equal heating");
}

/// Factor on a rated current for another air temperature, f = sqrt((Tc - Ta)/(Tc - Tb)).
///
/// It takes the heat given off as proportional to the rise, as the published factors do (within 0.012). A surface gives
/// off less than in proportion when the rise is small: ampacity_of() falls faster with warm air, by up to 0.04 at 45
/// degC in a lead of 85 degC.
/// @param limit Tc of the conductor @param base Tb, air of the rating, below the limit @param air Ta, below the limit
/// @return 1 at the base, above it in cooler air
/// @throws out_of_range_error for air at or above the limit
[[nodiscard]] inline double ambient_factor(temperature limit, temperature base, temperature air)
{
    if (base >= limit)
        throw out_of_range_error("base air temperature", to_text(base, "degC"),
                                 "below the limit of " + to_text(limit, "degC"));
    if (air >= limit)
        throw out_of_range_error("air temperature", to_text(air, "degC"),
                                 "below the limit of " + to_text(limit, "degC"));
    return std::sqrt(((limit - air) / (limit - base)).value());
}

}  // namespace weldloop
