#pragma once
/// @file
/// How hot the work gets beside a weld that runs by: the limits of a thin and of a thick plate, after Rosenthal.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/arc_heat.hpp>

namespace weldloop {

/// Sources that move through a plate without end, with constant properties and nothing lost from its faces.
inline constexpr source rosenthal_plates{
    "Rosenthal, moving line and point sources; peaks in the limit of a fast source, cooling by Adams", "1941; 1958",
    "as in any textbook of welding heat flow", source_kind::handbook};
/// Where a plate is thick and where it is thin.
inline constexpr source relative_plate_thickness{
    "public teaching page on the cooling rate after Rosenthal and Adams: thick above 0.9, thin below 0.6", "undated",
    "theory", source_kind::handbook};
/// Cooling time by regulation, its constants those of hot steel: 1.86 times that of conduction with 45 W/(m K).
inline constexpr source cooling_time_rule{"EN 1011-2, as quoted in an open program", "2001", "annex D",
                                          source_kind::standard};

/// Relative thickness tau = d sqrt(rho c (T - T0)/H) [1]: heat flows in three directions above 0.9, in two below 0.6.
/// @param thickness d [m], above 0 @param stored rho c [J/(m3 K)], above 0 @param rise T - T0 [K], above 0
/// @param heat H [J/m], above 0
/// @throws not_finite_error, out_of_range_error @see relative_plate_thickness
[[nodiscard]] inline double relative_thickness(length thickness, volumetric_heat stored, temperature_difference rise,
                                               heat_per_weld_length heat)
{
    require_positive(thickness, "thickness");
    require_positive(stored, "heat per volume");
    require_positive(rise, "rise");
    require_positive(heat, "heat input");
    return require_finite(std::sqrt(stored.value() * rise.value() / heat.value()) * thickness.value(),
                          "relative thickness");
}

/// A plate with a weld along it.
struct welded_plate {
    heat_per_weld_length heat = {};                      ///< H [J/m] that enters the work, above 0
    volumetric_heat stored = {};                         ///< rho c [J/(m3 K)], above 0
    length thickness = {};                               ///< d [m], above 0
    temperature start = {};                              ///< of the plate before the weld
    temperature melting = temperature::celsius(1500.0);  ///< above start
};

namespace detail {

inline constexpr double thin_below = 0.6, thick_above = 0.9;  // see relative_plate_thickness

inline void require_plate(const welded_plate& w)
{
    require_positive(w.heat, "heat input");
    require_positive(w.stored, "heat per volume");
    require_positive(w.thickness, "thickness");
    require_positive(w.melting - w.start, "melting above the plate's temperature");
}
inline temperature_difference solid_and(const welded_plate& w, temperature_difference rise, const char* regime,
                                        bool fits, length away)
{
    if (!fits) throw out_of_range_error("distance from the weld", si_text(away), regime);
    if (rise > w.melting - w.start)
        throw out_of_range_error("distance from the weld", si_text(away), "outside the molten metal");
    return rise;
}

}  // namespace detail

/// Highest rise beside a weld in a thin plate, H/(rho c d y sqrt(2 pi e)) [K]. No loss from the faces: an upper bound
/// far from the weld. @param w the plate @param away y [m] from the weld's middle, above 0
/// @throws not_finite_error, out_of_range_error in molten metal, or nearer than where the plate counts as thin
/// (relative thickness at the peak above 0.9)
[[nodiscard]] inline temperature_difference thin_plate_peak_rise(const welded_plate& w, length away)
{
    detail::require_plate(w);
    require_positive(away, "distance from the weld");
    const double constant = std::sqrt(2.0 * std::numbers::pi * std::numbers::e);
    const temperature_difference rise = w.heat / (w.stored * w.thickness * away) / constant;
    return detail::solid_and(w, rise, "where the plate is not thick",
                             relative_thickness(w.thickness, w.stored, rise, w.heat) <= detail::thick_above, away);
}

/// The same counted from the edge of the molten metal: 1/(Tp - T0) = sqrt(2 pi e) rho c d Y/H + 1/(Tm - T0) [K].
/// @param w the plate @param beyond_fusion Y [m] from the fusion line, 0 or above
/// @throws not_finite_error, out_of_range_error where the plate is thick (as above)
[[nodiscard]] inline temperature_difference thin_plate_peak_beyond_fusion(const welded_plate& w, length beyond_fusion)
{
    detail::require_plate(w);
    require_not_negative(beyond_fusion, "distance from the fusion line");
    const double constant = std::sqrt(2.0 * std::numbers::pi * std::numbers::e);
    const double over =
        constant * (w.stored * w.thickness * beyond_fusion / w.heat).value() + 1.0 / (w.melting - w.start).value();
    const auto rise = in_si<temperature_difference>(1.0 / over);
    return detail::solid_and(w, rise, "where the plate is not thick",
                             relative_thickness(w.thickness, w.stored, rise, w.heat) <= detail::thick_above,
                             beyond_fusion);
}

/// Highest rise beside a weld on a thick plate, 2H/(pi e rho c r^2) [K]. @param w the plate @param away r [m] from the
/// weld, above 0 @throws not_finite_error, out_of_range_error in molten metal, or farther than where the plate counts
/// as thick (relative thickness at the peak below 0.6)
[[nodiscard]] inline temperature_difference thick_plate_peak_rise(const welded_plate& w, length away)
{
    detail::require_plate(w);
    require_positive(away, "distance from the weld");
    const temperature_difference rise =
        w.heat / (w.stored * away * away) * (2.0 / (std::numbers::pi * std::numbers::e));
    return detail::solid_and(w, rise, "where the plate is not thin",
                             relative_thickness(w.thickness, w.stored, rise, w.heat) >= detail::thin_below, away);
}

namespace detail {

// 1/(Tc - T0)^n - 1/(Th - T0)^n, from 800 to 500 degC.
[[nodiscard]] inline double between_800_and_500(temperature start, int power)
{
    const temperature hot = temperature::celsius(800.0), cold = temperature::celsius(500.0);
    require_positive(cold - start, "500 degC above the plate's temperature");
    return std::pow((cold - start).value(), -power) - std::pow((hot - start).value(), -power);
}

}  // namespace detail

/// Time from 800 to 500 degC in a thick plate by conduction, H/(2 pi k) (1/(500 - T0) - 1/(800 - T0)) [s].
/// @param heat H [J/m] in the work, above 0 @param k [W/(m K)] of the metal, above 0 @param start T0, below 500 degC
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration thick_plate_cooling_time(heat_per_weld_length heat, thermal_conductivity k,
                                                       temperature start)
{
    require_positive(heat, "heat input");
    require_positive(k, "thermal conductivity");
    return require_finite(
        in_si<duration>(heat.value() / (2.0 * std::numbers::pi * k.value()) * detail::between_800_and_500(start, 1)),
        "cooling time");
}

/// Time from 800 to 500 degC of unalloyed and low-alloy steel as EN 1011-2 has it: the longer of
/// (6700 - 5 T0) Q (1/(500 - T0) - 1/(800 - T0)) and (4300 - 4.3 T0) 1e5 (Q/d)^2 (1/(500 - T0)^2 - 1/(800 - T0)^2),
/// Q in kJ/mm, d in mm, T0 in degC; bead on plate.
/// @param heat Q [J/m], above 0, the conventional factor in it @param thickness d [m], above 0
/// @param start T0, 0 to 250 degC @throws not_finite_error, out_of_range_error @see cooling_time_rule
[[nodiscard]] inline duration steel_cooling_time(heat_per_weld_length heat, length thickness, temperature start)
{
    require_positive(heat, "heat input");
    require_positive(thickness, "thickness");
    const double celsius = require_within(start.in_celsius(), 0.0, 250.0, "preheat of the cooling-time rule in degC");
    constexpr double metre_in_mm = 1e3, j_per_m_in_kj_per_mm = 1e-6;
    const double q = heat.value() * j_per_m_in_kj_per_mm, d = thickness.value() * metre_in_mm;
    const double thick = (6700.0 - 5.0 * celsius) * q * detail::between_800_and_500(start, 1),
                 thin = (4300.0 - 4.3 * celsius) * 1e5 * q * q / (d * d) * detail::between_800_and_500(start, 2);
    return require_finite(in_si<duration>(std::max(thick, thin)), "cooling time");
}

}  // namespace weldloop
