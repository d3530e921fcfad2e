#pragma once
/// @file
/// Radiation of a grey surface to large surroundings.

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// The radiation constant and the law of grey surfaces.
inline constexpr source stefan_boltzmann_law{
    "SI Brochure", "9th edition 2019", "defining constants: sigma = 2 pi^5 k^4 / (15 h^3 c^2)", source_kind::derived};

/// Radiation constant sigma [W/(m2 K4)], all printed digits of the exact value.
inline constexpr double stefan_boltzmann = 5.670374419e-8;

/// Net heat radiated by a grey surface to large surroundings, q = eps sigma (Ts^4 - Tw^4).
/// @param eps emissivity of the surface @param surface Ts @param surroundings Tw of the walls around
/// @return heat flux [W/m2], negative where the walls are hotter; exact for a surface that does not see itself
/// @throws not_finite_error for temperatures so high that no number holds it
[[nodiscard]] constexpr heat_flux radiated(emissivity eps, temperature surface, temperature surroundings)
{
    const double s = surface.in_kelvin(), w = surroundings.in_kelvin();
    const auto out =
        in_si<heat_flux>(static_cast<double>(eps) * stefan_boltzmann * (s * s + w * w) * (s + w) * (s - w));
    if (!(out.value() - out.value() == 0.0)) detail::refuse_value(out, "radiated heat", "a number");
    return out;
}

/// The same as a coefficient, h_r = eps sigma (Ts + Tw)(Ts^2 + Tw^2), which stays finite where Ts = Tw.
/// @param eps emissivity of the surface @param surface Ts @param surroundings Tw of the walls around
/// @return coefficient [W/(m2 K)] @throws as above
[[nodiscard]] constexpr heat_transfer_coefficient radiation_coefficient(emissivity eps, temperature surface,
                                                                        temperature surroundings)
{
    const double s = surface.in_kelvin(), w = surroundings.in_kelvin();
    const auto out =
        in_si<heat_transfer_coefficient>(static_cast<double>(eps) * stefan_boltzmann * (s + w) * (s * s + w * w));
    if (!(out.value() <= detail::greatest_number)) detail::refuse_value(out, "radiation coefficient", "a number");
    return out;
}

}  // namespace weldloop
