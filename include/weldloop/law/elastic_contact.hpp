#pragma once
/// @file
/// The area that bears a force where a rounded summit presses on a flat body: elastic while the pressure is low,
/// plastic once it reaches the hardness. The worn summits of a polished or much used contact stay elastic; a fresh
/// tooth does not.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/constriction.hpp>
#include <weldloop/material/elastic_metal.hpp>

namespace weldloop {

/// Elastic contact of a sphere and a flat body.
inline constexpr source hertz_contact{"Hertz, J. reine angew. Math. 92, 156-171", "1882",
                                      "a^3 = 3 F r/(4 E*), 1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2 (checked against the "
                                      "integral of a half space in a test)",
                                      source_kind::memory};
/// Where elastic contact ends.
inline constexpr source first_yield_of_summit{
    "Tabor, The Hardness of Metals", "1951",
    "yield begins under a summit at a mean pressure of 1.1 Y, the hardness is 2.8 Y: at 0.39 of the hardness",
    source_kind::memory};

/// Mean pressure over the hardness at which a summit begins to yield; see first_yield_of_summit.
inline constexpr double first_yield_share = 1.1 / 2.8;

/// How a summit bears.
enum class bearing_regime {
    elastic,  ///< springs back: mean pressure below 0.39 of the hardness
    mixed,    ///< yields inside, not yet everywhere
    plastic,  ///< has yielded: the mean pressure is the hardness
};

/// How a summit bears a force.
struct summit_bearing {
    length radius;           ///< a of the spot [m]
    area bearing;            ///< pi a^2 [m2]
    pressure mean_pressure;  ///< F/(pi a^2) [Pa], at most the hardness
    bearing_regime regime;   ///< elastic, mixed or plastic
    weldloop::basis basis;   ///< sources
};

/// Modulus E* of two bodies pressed together, 1/E* = (1 - nu1^2)/E1 + (1 - nu2^2)/E2 [Pa].
/// @param one the one body, E above 0, nu 0 to 0.5 @param other the other
/// @throws not_finite_error, out_of_range_error @see hertz_contact
[[nodiscard]] inline pressure contact_modulus(const elastic_metal& one, const elastic_metal& other)
{
    constexpr double incompressible = 0.5;
    const auto compliance = [](const elastic_metal& m) {
        const double nu = require_within(m.poisson, 0.0, incompressible, "Poisson's ratio");
        return (1.0 - nu * nu) / require_positive(m.youngs, "Young's modulus").value();
    };
    return require_finite(in_si<pressure>(1.0 / (compliance(one) + compliance(other))), "contact modulus");
}

/// Radius of the elastic spot of a sphere on a flat body, (3 F r/(4 E*))^(1/3) [m]. It goes as F^(1/3), so that the
/// constriction of an elastic spot falls more slowly with force than that of a plastic one.
/// @param pressing F [N], 0 or above: without force no spot @param summit r, radius of its curvature [m], above 0
/// @param modulus E* [Pa], above 0; see contact_modulus()
/// @throws not_finite_error, out_of_range_error @see hertz_contact
[[nodiscard]] inline length elastic_spot_radius(weldloop::force pressing, length summit, pressure modulus)
{
    const double cube = 0.75 * require_not_negative(pressing, "contact force").value() *
                        require_positive(summit, "radius of the summit").value() /
                        require_positive(modulus, "contact modulus").value();
    return require_finite(in_si<length>(std::cbrt(cube)), "spot radius");
}

/// How one rounded summit on a flat body bears a force: the elastic spot as long as its mean pressure stays below the
/// hardness of the softer body, the plastic spot sqrt(F/(pi H)) from there on.
///
/// Continuous and rising with the force. Without force: no spot, elastic. The range of Hertz's law is that of spots
/// small against the summit; a spot beyond a third of its radius is outside it and is plastic for every metal of the
/// table.
/// @param pressing F [N], 0 or above @param summit r, radius of its curvature [m], above 0 @param metals that meet,
/// with elastic constants and hardness above 0
/// @throws not_finite_error, out_of_range_error; missing_data_error for a metal without elastic constants
/// @par Accuracy
/// elastic and plastic ends: that of the constants. In the mixed regime the metal has begun to yield and the true spot
/// is larger: at the change the radius is up to about a fifth too small (cavity model, from memory)
/// @see hertz_contact, first_yield_of_summit, holm_constriction
[[nodiscard]] inline summit_bearing summit_bearing_of(weldloop::force pressing, length summit, const metal_pair& metals)
{
    const elastic_metal &one = elasticity_of(metals.first), &other = elasticity_of(metals.second);
    const pressure softer = std::min(require_positive(metals.first.hardness, "hardness"),
                                     require_positive(metals.second.hardness, "hardness"));
    const length elastic = elastic_spot_radius(pressing, summit, contact_modulus(one, other));
    const length plastic = spot_radius(pressing, softer);
    summit_bearing out{std::max(elastic, plastic), {}, {}, bearing_regime::elastic, {}};
    out.basis.add(hertz_contact).add(first_yield_of_summit).add(holm_constriction).add(*one.from).add(*other.from);
    out.bearing = std::numbers::pi * out.radius * out.radius;
    if (!(out.radius.value() > 0.0)) return out;
    out.mean_pressure = require_finite(pressure(pressing / out.bearing), "mean pressure");
    if (plastic >= elastic)
        out.regime = bearing_regime::plastic;
    else if (out.mean_pressure >= first_yield_share * softer)
        out.regime = bearing_regime::mixed;
    return out;
}

}  // namespace weldloop
