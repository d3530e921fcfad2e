#pragma once
/// @file
/// Two flat bars that overlap: how the current passes from one to the other, and what the interface adds.

#include <algorithm>
#include <cmath>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/force_law.hpp>

namespace weldloop {

/// The ladder along an overlap.
inline constexpr source lap_joint_ladder{
    "two bars as a ladder of resistances with the interface as its rungs, each bar's thickness added to the rungs",
    "2026",
    "perfect interface: (rho/b)(l/(2t) + 0.50), as a two-dimensional solution gives; bad interface: a third of each "
    "bar's thickness; between them fitted at one point of a field solution and tested at others",
    source_kind::derived};

/// One of two bars that overlap.
struct lap_bar {
    weldloop::resistivity resistivity;  ///< [ohm m], above 0
    length thickness;                   ///< [m], above 0
};

/// Resistance of an interface pressed evenly, times its area, by the force law with the exponent of lapped flat faces,
/// (1e-6 K/0.102)/p [ohm m2]. K = 100, 10 MPa: 9.8e-11 ohm m2. Busbar practice (from memory) wants 7 to 10 MPa and
/// gains little beyond 15.
/// @param constant K [micro-ohm kgf], above 0 @param pressing p, mean pressure [Pa], above 0
/// @throws not_finite_error, out_of_range_error @see force_law_form
[[nodiscard]] inline film_resistivity interface_resistivity(double constant, pressure pressing)
{
    require_positive(pressing, "pressure");
    constexpr double evenly = 1.0;  // exponent at which force and area cancel to a pressure
    const resistance of_one_newton = force_law_resistance(constant, evenly, in_si<force>(1.0));
    return require_finite(in_si<film_resistivity>(of_one_newton.value() / pressing.value()), "interface resistivity");
}

/// How two bars overlap.
struct lap_overlap {
    weldloop::length width;                ///< b [m], above 0
    weldloop::length length;               ///< l along the current [m], at least twice the thicker bar
    film_resistivity interface_film = {};  ///< c [ohm m2], 0 or above; see interface_resistivity()
};

/// Resistance of the overlap of two bars, from where it begins in one to where it ends in the other [ohm].
///
/// With r = rho/(b t) of each bar [ohm/m] and k^2 = (r1 + r2) b/s:
/// R = r1 r2 l/(r1 + r2) + ((r1^2 + r2^2) cosh kl + 2 r1 r2)/((r1 + r2) k sinh kl).
/// The rungs s [ohm m2] are the interface, and in each bar the way through its thickness:
/// s = c + (rho1 t1 + rho2 t2) B/2, with B = 1/2 + (1/6) q/(1 + q) and q = 2 c/(rho1 t1 + rho2 t2). Alike bars without
/// interface: (rho/b)(l/(2t) + 0.50). A perfect interface is allowed; holes are not in it.
///
/// Within 0.3 % of a field solution for alike bars overlapping 3 thicknesses or more, whatever the interface, and 2 %
/// at 2 thicknesses; bars whose rho differ by 3: 1.2 %, by 10: 5 %, always too high.
/// @param one the one bar @param other the other @param lap width and length of the overlap, and what is between
/// @throws not_finite_error, out_of_range_error @see lap_joint_ladder
[[nodiscard]] inline resistance lap_joint_resistance(const lap_bar& one, const lap_bar& other, const lap_overlap& lap)
{
    const auto& [width, overlap, interface_film] = lap;
    constexpr double least_overlap = 2.0;
    require_positive(width, "width");
    require_finite(overlap, "overlap");
    require_positive(one.resistivity, "resistivity");
    require_positive(other.resistivity, "resistivity");
    const length thicker =
        std::max(require_positive(one.thickness, "thickness"), require_positive(other.thickness, "thickness"));
    if (overlap < least_overlap * thicker)
        throw out_of_range_error("overlap", si_text(overlap), "twice the thicker bar or more");
    const double c = require_not_negative(interface_film, "interface resistivity").value();
    const double through =
        0.5 * (one.resistivity * one.thickness + other.resistivity * other.thickness).value();  // mean rho t
    const double q = c / through;
    const double share = 0.5 + (1.0 / 6.0) * (std::isfinite(q) ? q / (1.0 + q) : 1.0);
    const double b = width.value(), l = overlap.value();
    const double r1 = one.resistivity.value() / (b * one.thickness.value());
    const double r2 = other.resistivity.value() / (b * other.thickness.value());
    const double k = std::sqrt((r1 + r2) * b / (c + share * through));
    const double ladder = (r1 * r1 + r2 * r2) / std::tanh(k * l) + 2.0 * r1 * r2 / std::sinh(k * l);
    return require_finite(in_si<resistance>((r1 * r2 * l + ladder / k) / (r1 + r2)), "resistance of an overlap");
}

}  // namespace weldloop
