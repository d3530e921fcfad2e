#pragma once
/// @file
/// The square-root rule of the guide tables for air that is not at their base temperature.

#include <cmath>

#include <weldloop/core/error.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// Where the rule is met.
inline constexpr source ambient_factor_rule{"BS 638-4 rating factors, IEC 60364-5-52 table B.52.14, NFPA 70 table 310.15(B)(1)", "1996 to 2023", "factors for air temperature; they follow sqrt((Tc - Ta)/(Tc - Tb)) within 0.012", source_kind::standard};

/// Factor on a rated current for another air temperature, f = sqrt((Tc - Ta)/(Tc - Tb)).
///
/// It takes the heat given off as proportional to the rise, as the published factors do (within 0.012). A surface gives
/// off less than in proportion when the rise is small: ampacity_of() falls faster with warm air, by up to 0.04 at 45 degC
/// in a lead of 85 degC.
/// @param limit Tc of the conductor @param base Tb, air of the rating, below the limit @param air Ta, below the limit
/// @return 1 at the base, above it in cooler air
/// @throws out_of_range_error for air at or above the limit
[[nodiscard]] inline double ambient_factor(temperature limit, temperature base, temperature air)
{
    if (base >= limit) throw out_of_range_error("base air temperature", to_text(base, "degC"), "below the limit of " + to_text(limit, "degC"));
    if (air >= limit) throw out_of_range_error("air temperature", to_text(air, "degC"), "below the limit of " + to_text(limit, "degC"));
    return std::sqrt(((limit - air) / (limit - base)).value());
}

}  // namespace weldloop
