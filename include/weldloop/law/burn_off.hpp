#pragma once
/// @file
/// How fast a wire electrode melts, by its current and by the length of it that is heated before the arc.

#include <cmath>
#include <numbers>
#include <optional>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

using melting_by_current = decltype(speed{} / current{});                         ///< m/(A s)
using melting_by_heating = decltype(speed{} / length{} / current{} / current{});  ///< 1/(A2 s)
using mass_rate = decltype(mass{} / duration{});                                  ///< kg/s
using mass_rate_by_current = decltype(mass_rate{} / current{});                   ///< kg/(A s)
using mass_rate_by_square = decltype(mass_rate_by_current{} / current{});         ///< kg/(A2 s)

/// @name Sources of burn-off
/// @{
/// The constants; the form alone was read in an open program.
inline constexpr source burn_off_recalled{
    "Norrish, Advanced Welding Processes: steel 1.2 mm in an argon mixture a 0.3 mm/(A s), b 5e-5 1/(A2 s); aluminium "
    "1.2 mm in argon a 0.75 mm/(A s), b near 0; authors differ for steel by 0.25 to 0.33 and 4e-5 to 6e-5",
    "1990s", "MR = a I + b L I^2", source_kind::memory};
/// To other diameters.
inline constexpr source burn_off_by_diameter{
    "a as the area (heat of the arc melts the same volume), b as its square (resistance heats as I^2/A^2)",
    {},
    "scaled from 1.2 mm",
    source_kind::derived};
/// A regression in its mass.
inline constexpr source submerged_arc_regression{
    "open program for tandem submerged arc, equation credited there to a handbook of a supplier; wire and extension "
    "are not stated",
    "2025", "melting rate of the lead wire (direct) and of the trail wire (alternating)", source_kind::paper};
/// @}

/// Constants of MR = a I + b L I^2, electrode positive.
struct burn_off {
    melting_by_current by_arc;        ///< a [m/(A s)], above 0: what the arc melts
    melting_by_heating by_extension;  ///< b [1/(A2 s)], 0 or above: what the extension's own heat melts
};

namespace detail {
inline void require_burn_off(const burn_off& c)
{
    if (!(c.by_arc.value() > 0.0 && c.by_arc.value() <= greatest_number))
        throw out_of_range_error("burn-off by the arc", number_text(c.by_arc.value()) + " m/(A s)", "above zero");
    if (!(c.by_extension.value() >= 0.0 && c.by_extension.value() <= greatest_number))
        throw out_of_range_error("burn-off by the extension", number_text(c.by_extension.value()) + " 1/(A2 s)",
                                 "zero or above");
}
}  // namespace detail

/// Speed at which the wire melts off, which is the feed that keeps an arc at rest, MR = a I + b L I^2 [m/s].
/// @param c a, b @param i I [A], 0 or above @param extension L [m], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline speed melting_speed(const burn_off& c, current i, length extension)
{
    detail::require_burn_off(c);
    require_not_negative(i, "arc current");
    require_not_negative(extension, "wire extension");
    return require_finite(speed(c.by_arc * i + c.by_extension * extension * i * i), "melting speed");
}

/// Current that melts a wire off as fast as it is fed [A], the positive root of melting_speed().
/// @param c a, b @param feed [m/s], 0 or above @param extension L [m], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current current_for_feed(const burn_off& c, speed feed, length extension)
{
    detail::require_burn_off(c);
    const double v = require_not_negative(feed, "wire feed").value();
    const double a = c.by_arc.value(),
                 bl = c.by_extension.value() * require_not_negative(extension, "wire extension").value();
    // 2 v/(a + sqrt(a^2 + 4 b L v)): no digits lost where the extension heats little
    return require_finite(in_si<current>(2.0 * v / (a + std::sqrt(a * a + 4.0 * bl * v))), "current of the feed");
}

/// Burn-off constants of a wire where nothing better is known: mild steel and aluminium, electrode positive, recalled
/// for 1.2 mm and scaled by area. @param wire its metal @param diameter [m], above 0
/// @return empty for a metal without constants @throws not_finite_error, out_of_range_error
/// @see burn_off_recalled, burn_off_by_diameter
[[nodiscard]] inline std::optional<burn_off> usual_burn_off(const metal& wire, length diameter)
{
    constexpr length known = in_si<length>(0.0012);
    const double area_ratio = std::pow((known / require_positive(diameter, "wire diameter")).value(), 2);
    const auto scaled = [&](double a, double b) {
        return burn_off{require_positive(in_si<melting_by_current>(a * area_ratio), "melting by the arc"),
                        require_finite(in_si<melting_by_heating>(b * area_ratio * area_ratio), "melting by heating")};
    };
    if (wire == mild_steel) return scaled(0.3e-3, 5e-5);
    if (wire == aluminium) return scaled(0.75e-3, 0.0);
    return std::nullopt;
}

/// Length of wire in a mass, 1/(rho pi d^2/4) [m/kg]. @param material density [kg/m3], above 0 @param diameter [m],
/// above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline auto wire_length_per_mass(density material, length diameter)
{
    require_positive(material, "density of the wire");
    require_positive(diameter, "wire diameter");
    const auto out = 1.0 / (material * (std::numbers::pi / 4.0) * diameter * diameter);
    return require_finite(out, "length of wire per mass");
}

/// Mass that melts in a time [kg/s]. @param melts [m/s], 0 or above @param material [kg/m3], above 0 @param diameter
/// [m], above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline mass_rate melting_rate(speed melts, density material, length diameter)
{
    require_not_negative(melts, "melting speed");
    // a wire whose mass per length vanishes has no length per mass
    return require_finite(
        mass_rate(melts / require_positive(wire_length_per_mass(material, diameter), "length of wire per mass")),
        "melting rate");
}

/// A regression of the melting rate in the current alone, m = c2 I^2 + c1 I + c0: for the wire and extension it was
/// fitted to, and where it is above 0.
struct melting_regression {
    mass_rate_by_square by_square;    ///< c2 [kg/(A2 s)], any
    mass_rate_by_current by_current;  ///< c1 [kg/(A s)], any
    mass_rate constant;               ///< c0 [kg/s], any
};

namespace detail {
[[nodiscard]] constexpr melting_regression regression_in_kg_per_hour(double square, double linear, double constant)
{
    constexpr double seconds = 3600.0;  // of an hour
    return {in_si<mass_rate_by_square>(square / seconds), in_si<mass_rate_by_current>(linear / seconds),
            in_si<mass_rate>(constant / seconds)};
}
}  // namespace detail

/// @name Submerged arc, two wires behind one another; see submerged_arc_regression
/// @{
/// Lead wire, direct current: 1e-6 I^2 + 0.0131 I - 0.998 kg/h.
inline constexpr melting_regression submerged_lead_wire = detail::regression_in_kg_per_hour(1e-6, 0.0131, -0.998);
/// Trail wire, alternating current: 8e-6 I^2 + 0.0103 I - 0.4557 kg/h.
inline constexpr melting_regression submerged_trail_wire = detail::regression_in_kg_per_hour(8e-6, 0.0103, -0.4557);
/// @}

/// Melting rate by a regression [kg/s]. @param r the regression @param i [A], 0 or above
/// @throws not_finite_error, out_of_range_error, also where the regression falls below zero: it is left there
[[nodiscard]] inline mass_rate melting_rate(const melting_regression& r, current i)
{
    require_not_negative(i, "arc current");
    const mass_rate out = r.by_square * i * i + r.by_current * i + r.constant;
    if (!(out.value() >= 0.0))
        throw out_of_range_error("arc current", si_text(i), "so large that the regression gives a melting rate");
    return require_finite(out, "melting rate");
}

}  // namespace weldloop
