#pragma once
/// @file
/// A workpiece as a body: its faces, its heat, and how current and heat spread in it round a contact.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/part/workpiece.hpp>

namespace weldloop {

/// A piece as one body.
inline constexpr source workpiece_body{
    "workpiece: one body of its mass, cooled from both faces of a plate of its mass and thickness unless an area is "
    "stated, emissivity of shop steel, convection as from a body 0.1 m across; heat reaches its mean temperature from "
    "a "
    "patch of 10 mm radius through a disc of its area",
    "2026",
    "disc with an even sink: draw-down to the mean of a bounded disc, checked by a march of rings in a test; the "
    "reduction to one body is judgement",
    source_kind::judgement};
/// Current in a piece.
inline constexpr source workpiece_spreading{
    "current spreads from each contact of 10 mm radius over a disc of the workpiece's area: rho ln(R/r)/(2 pi t)",
    "2026", "exact for a disc fed at its middle and left at its rim; where contacts really sit is not known: judgement",
    source_kind::judgement};

namespace detail {

/// Radius of the disc that stands for a piece over that of a contact's patch, at least a hundredth above 1.
[[nodiscard]] inline double radius_over_patch(const workpiece& w)
{
    constexpr double least = 1.01;
    const double face = (w.mass / w.metal.density / w.thickness).value();
    return std::max(least, std::sqrt(face / std::numbers::pi) / work_patch_radius.value());
}

inline void require_workpiece(const workpiece& w)
{
    require_positive(w.mass, "mass of the workpiece");
    require_positive(w.thickness, "thickness of the workpiece");
    if (w.cooling_area) require_positive(*w.cooling_area, "cooling area of the workpiece");
    if (w.stays) require_positive(*w.stays, "stay of the workpiece");
    constexpr double one_in_a_thousand_hours = 1e-3, one_a_second = 3600.0;
    if (w.pieces_per_hour) require_within(*w.pieces_per_hour, one_in_a_thousand_hours, one_a_second, "pieces per hour");
    if (w.bar_length) require_positive(*w.bar_length, "length of the workpiece");
    if (w.from_weld) require_positive(*w.from_weld, "distance from the weld");
}

}  // namespace detail

/// Surface and heat of a workpiece. @param w mass and thickness above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_body workpiece_body_of(const workpiece& w)
{
    detail::require_workpiece(w);
    constexpr double both_faces = 2.0;
    return {.surface = w.cooling_area ? *w.cooling_area : both_faces * w.mass / w.metal.density / w.thickness,
            .diameter = work_width,
            .emissivity = work_emissivity,
            .capacity = w.mass * w.metal.specific_heat};
}

/// From the patch under a contact to the mean temperature of the piece [W/K]: 2 pi k t/(ln(R/r)/(1 - x^2)^2 -
/// (3 - x^2)/(4 (1 - x^2))), x = r/R, what a disc gives that loses its heat evenly.
/// @param w mass and thickness above 0; a piece hardly wider than the patch counts as one a hundredth wider
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductance patch_to_piece(const workpiece& w)
{
    detail::require_workpiece(w);
    const double over = detail::radius_over_patch(w), x = 1.0 / (over * over), rest = 1.0 - x;
    const double way = std::log(over) / (rest * rest) - (3.0 - x) / (4.0 * rest);
    return w.metal.thermal_conductivity * w.thickness * (2.0 * std::numbers::pi / way);
}

/// Resistance at 20 degC of the piece between a contact and the rest of it [ohm]: rho ln(R/r)/(2 pi t).
/// @param w mass and thickness above 0 @throws not_finite_error, out_of_range_error @see workpiece_spreading
[[nodiscard]] inline resistance spreading_resistance_of(const workpiece& w)
{
    detail::require_workpiece(w);
    return w.metal.resistivity / w.thickness * (std::log(detail::radius_over_patch(w)) / (2.0 * std::numbers::pi));
}

}  // namespace weldloop
