#pragma once
/// @file
/// One spot on a body that is not wide in all directions: a thin sheet, and the end of a bar. What stands here is the
/// resistance of one body; the other side of the contact adds its own.

#include <cmath>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// A spot on a sheet.
inline constexpr source sheet_spreading_law{
    "images of a point source in both faces of a sheet, and the spot's own rho/(4a)",
    {},
    "rho/(4a) + (rho/(2 pi t)) ln(e^gamma D/(4 t)), gamma Euler's constant",
    source_kind::derived};
/// A spot on the end of a bar.
inline constexpr source bar_end_series{
    "Negus and Yovanovich, Constriction resistance of circular flux tubes", "1984",
    "isothermal spot: 1 - 1.40978 e + 0.34406 e^3 + 0.0430 e^5 + 0.0227 e^7 (confirmed by a field solution)",
    source_kind::memory};

/// Resistance from a round spot on one face of a wide sheet to a ring around it [ohm]:
/// rho/(4a) + (rho/(2 pi t)) ln(e^gamma D/(4 t)), the squeeze into the spot and the flow outwards in the sheet.
///
/// Within 0.7 % of a field solution for t of 2 a and more, 0.1 % from 10 a. A sheet thinner than twice the spot's
/// radius is refused, and so is a ring nearer than two thicknesses, where current is not yet spread over the thickness.
/// @param rho resistivity [ohm m], above 0 @param radius a of the spot [m], above 0
/// @param thickness t [m], 2 a or more @param reach D, radius of the ring where the current leaves [m], 2 t or more
/// @throws not_finite_error, out_of_range_error @see sheet_spreading_law
[[nodiscard]] inline resistance sheet_resistance(resistivity rho, length radius, length thickness, length reach)
{
    constexpr double least_thickness = 2.0, least_reach = 2.0;
    require_positive(rho, "resistivity");
    require_positive(radius, "spot radius");
    require_finite(thickness, "sheet thickness");
    require_finite(reach, "reach of the sheet");
    if (thickness < least_thickness * radius)
        throw out_of_range_error("sheet thickness", si_text(thickness), "twice the spot's radius or more");
    if (reach < least_reach * thickness)
        throw out_of_range_error("reach of the sheet", si_text(reach), "twice its thickness or more");
    const double flow = std::log((reach / thickness).value() / 4.0) + std::numbers::egamma;
    const resistance squeeze = rho / (4.0 * radius), spread = rho / (2.0 * std::numbers::pi * thickness) * flow;
    return require_finite(resistance(squeeze + spread), "resistance of a sheet");
}

/// What a round spot in the middle of a round bar's end adds to the resistance of the bar [ohm]:
/// rho/(4a) (1 - 1.40978 e + 0.34406 e^3 + 0.0430 e^5 + 0.0227 e^7), e = a/b.
///
/// Nothing where the spot covers the whole end (below 3 thousandths of rho/(4a), where the series ends). Within 0.2 %
/// of rho/(4a) of a field solution for all e up to 0.8. For a small spot in a bar 150 times as wide it is 1 % below
/// that of a body without end.
/// @param rho resistivity [ohm m], above 0 @param radius a of the spot [m], above 0
/// @param bar_radius b [m], a or more
/// @throws not_finite_error, out_of_range_error @see bar_end_series
[[nodiscard]] inline resistance bar_end_resistance(resistivity rho, length radius, length bar_radius)
{
    require_positive(rho, "resistivity");
    require_positive(radius, "spot radius");
    require_finite(bar_radius, "radius of the bar");
    if (bar_radius < radius)
        throw out_of_range_error("radius of the bar", si_text(bar_radius), "that of the spot or more");
    const double e = (radius / bar_radius).value(), e2 = e * e;
    const double left = 1.0 - e * (1.40978 - e2 * (0.34406 + e2 * (0.0430 + e2 * 0.0227)));
    return require_finite(resistance(rho / (4.0 * radius) * (left > 0.0 ? left : 0.0)), "resistance of a bar's end");
}

}  // namespace weldloop
