#pragma once
/// @file
/// Elastic moduli of spring wire when hot: the reversible loss of a warm spring's force.
///
/// What a spring loses for good is another matter: stress_relaxation.hpp.

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/spring.hpp>

namespace weldloop {

/// Moduli when hot.
inline constexpr source hot_modulus{
    "spring makers' association data: 2 % per 55 K, 20 to 200 degC", {}, {}, source_kind::handbook};

/// Loss of modulus per kelvin, relative to 20 degC: 2 % per 55 K. @see hot_modulus
inline constexpr per_kelvin modulus_slope = in_si<per_kelvin>(3.6e-4);

/// Young's or shear modulus at a temperature, E(T) = E20 (1 - a (T - 20 degC)) [Pa].
///
/// The loss is reversible: it comes back on cooling and is kept apart from relaxation. Published for 20 to 200 degC;
/// beyond, an extrapolation.
/// @param at_20 modulus at 20 degC [Pa], above 0 @param t up to 1500 degC, where steel melts
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure modulus_at(pressure at_20, temperature t)
{
    detail::require_modulus(at_20, "modulus");
    require_within(t.in_celsius(), -temperature::celsius_zero_in_kelvin, 1500.0, "spring temperature in degC");
    return at_20 * (1.0 - (modulus_slope * (t - reference_temperature)).value());
}

/// Share of its force at 20 degC that an unrelaxed spring has at a temperature: modulus_at() over E20.
/// @param t up to 1500 degC @throws out_of_range_error
[[nodiscard]] inline double hot_force_ratio(temperature t)
{
    const pressure unit = in_si<pressure>(1.0);
    return (modulus_at(unit, t) / unit).value();
}

}  // namespace weldloop
