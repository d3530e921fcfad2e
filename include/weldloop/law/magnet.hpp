#pragma once
/// @file
/// Pull of a permanent magnet: what heat and a gap take from it.

#include <array>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// Magnet materials.
inline constexpr source magnet_materials{"permanent-magnet handbooks",
                                         {},
                                         "reversible coefficient of remanence and highest service temperature",
                                         source_kind::memory};
/// Pull over a gap.
inline constexpr source magnet_gap_judgement{
    "pull of a pot magnet over a gap, F0/(1 + g/0.5 mm)^2; the pull itself goes as the square of the remanence",
    "2026",
    {},
    source_kind::judgement};

/// A magnet material.
struct magnet_grade {
    std::string_view name;       ///< as printed
    per_kelvin remanence_slope;  ///< [1/K] reversible loss of remanence per kelvin over 20 degC, 0 or above
    temperature highest;         ///< beyond it pull is lost for good
    const source* from;          ///< where both come from
};

/// Neodymium-iron-boron of the common grade.
inline constexpr magnet_grade neodymium_magnet{"neodymium-iron-boron", in_si<per_kelvin>(1.2e-3),
                                               temperature::celsius(80), &magnet_materials};
/// Samarium-cobalt.
inline constexpr magnet_grade samarium_cobalt_magnet{"samarium-cobalt", in_si<per_kelvin>(0.4e-3),
                                                     temperature::celsius(300), &magnet_materials};
/// Hard ferrite.
inline constexpr magnet_grade ferrite_magnet{"hard ferrite", in_si<per_kelvin>(2.0e-3), temperature::celsius(250),
                                             &magnet_materials};
/// Aluminium-nickel-cobalt.
inline constexpr magnet_grade alnico_magnet{"aluminium-nickel-cobalt", in_si<per_kelvin>(0.2e-3),
                                            temperature::celsius(450), &magnet_materials};
/// Every grade.
inline constexpr std::array all_magnet_grades{neodymium_magnet, samarium_cobalt_magnet, ferrite_magnet, alnico_magnet};

/// Gap at which the pull has fallen to a quarter [m]; see magnet_gap_judgement.
inline constexpr length magnet_half_gap = in_si<length>(0.5e-3);

/// Pull of a magnet.
struct magnet_pull {
    weldloop::force force;  ///< [N] now
    bool damaged;           ///< hotter than its grade stands: part of the pull stays lost when it cools
};

/// Pull of a magnet at a temperature over a gap of scale, paint or dirt [N]:
/// F0 (1 - b (T - 20 degC))^2/(1 + g/0.5 mm)^2, b the reversible slope. Zero where the slope has eaten all.
///
/// Beyond the highest temperature of the grade the number is what the reversible slope would leave: an upper bound.
/// @param rated F0 on clean thick steel at 20 degC [N], 0 or above @param grade its material
/// @param t temperature of the magnet @param gap g [m], 0 or above
/// @throws not_finite_error, out_of_range_error @see magnet_materials, magnet_gap_judgement
[[nodiscard]] inline magnet_pull magnet_force(weldloop::force rated, const magnet_grade& grade, temperature t,
                                              length gap = {})
{
    require_not_negative(rated, "pull of the magnet");
    require_not_negative(gap, "gap");
    const double slope = require_not_negative(grade.remanence_slope, "slope of remanence").value();
    const double left = 1.0 - slope * (t - reference_temperature).value();
    const double opened = 1.0 + (gap / magnet_half_gap).value();
    const double share = left > 0.0 ? left / opened : 0.0;
    return {require_finite(in_si<weldloop::force>(rated.value() * share * share), "pull left"), t > grade.highest};
}

}  // namespace weldloop
