#pragma once
/// @file
/// Heat of a lone cylinder by the printed formulas in the plainest way, sharing no code with the library.

#include <cmath>

namespace weldloop::test {

/// Convection and radiation of a lone cylinder [W/m], every formula as it is printed: U.S. Standard Atmosphere 1976 eq.
/// 51 and 53, Einstein's oscillator, Churchill and Chu, Churchill and Bernstein, grey radiation.
inline double lone_cylinder(double d, double air, double surface, double wind, double pressure, double emissivity)
{
    constexpr double pi = 3.14159265358979323846;
    const double t = (surface + air) / 2, rise = surface - air;
    const double density = pressure / (287.05 * t), viscosity = 1.458e-6 * std::pow(t, 1.5) / (t + 110.4);
    const double conductivity = 2.64638e-3 * std::pow(t, 1.5) / (t + 245.4 * std::pow(10.0, -12.0 / t));
    const auto vibration = [t](double characteristic) {
        const double x = characteristic / t;
        return x * x * std::exp(x) / std::pow(std::expm1(x), 2);
    };
    const double cp =
        287.05 * (3.5 * (0.781 + 0.2095) + 2.5 * 0.0093 + 0.781 * vibration(3393.5) + 0.2095 * vibration(2273.6));
    const double nu = viscosity / density, alpha = conductivity / (density * cp), prandtl = nu / alpha;
    const double rayleigh = 9.80665 / t * std::fabs(rise) * std::pow(d, 3) / (nu * alpha);
    double nusselt = std::pow(
        0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6) / std::pow(1 + std::pow(0.559 / prandtl, 9.0 / 16), 8.0 / 27), 2);
    if (wind > 0) {
        const double reynolds = wind * d / nu;
        const double forced = 0.3 + 0.62 * std::sqrt(reynolds) * std::cbrt(prandtl) /
                                        std::pow(1 + std::pow(0.4 / prandtl, 2.0 / 3), 0.25) *
                                        std::pow(1 + std::pow(reynolds / 282000, 5.0 / 8), 0.8);
        nusselt = std::pow(std::pow(nusselt, 4) + std::pow(forced, 4), 0.25);
    }
    return pi * nusselt * conductivity * rise +
           pi * d * emissivity * 5.670374419e-8 * (std::pow(surface, 4) - std::pow(air, 4));
}

}  // namespace weldloop::test
