#pragma once
/// @file
/// Air: pressure at an altitude, and the properties that convection needs at a film temperature.

#include <cmath>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// @name Sources of the air model
/// @{
/// Viscosity, conductivity, pressure.
inline constexpr source us_standard_atmosphere{"U.S. Standard Atmosphere", "1976",
                                               "viscosity eq. 51, conductivity eq. 53, pressure up to 11 km (constants "
                                               "from memory; compared with printed air tables)",
                                               source_kind::memory};
/// Specific heat.
inline constexpr source air_specific_heat{
    "heat of two diatomic gases and argon, vibration by Planck and Einstein's oscillator",
    {},
    "0.4 % below printed air tables from 250 to 600 K",
    source_kind::derived};
/// @}

using dynamic_viscosity = decltype(pressure{} * duration{});  ///< pascal second
using diffusivity = decltype(area{} / duration{});            ///< m2/s, of momentum (kinematic viscosity) or of heat

/// Air at one temperature and pressure.
struct air_properties {
    temperature at;                                       ///< temperature they hold for, the film's
    weldloop::density density;                            ///< [kg/m3], ideal gas
    dynamic_viscosity viscosity;                          ///< [Pa s]
    weldloop::specific_heat specific_heat;                ///< [J/(kg K)] at constant pressure
    weldloop::thermal_conductivity thermal_conductivity;  ///< [W/(m K)]

    /// Viscosity over density [m2/s].
    [[nodiscard]] diffusivity kinematic_viscosity() const { return viscosity / density; }
    /// Conductivity over heat per volume [m2/s].
    [[nodiscard]] diffusivity thermal_diffusivity() const { return thermal_conductivity / (density * specific_heat); }
    /// Prandtl number, plain.
    [[nodiscard]] double prandtl() const { return (kinematic_viscosity() / thermal_diffusivity()).value(); }
};

/// Standard pressure at sea level, exact by definition of the standard atmosphere.
inline constexpr pressure sea_level_pressure = in_si<pressure>(101325.0);

/// @name Range of the air model
/// @{
inline constexpr temperature air_coldest = temperature::kelvin(100.0);   ///< lowest film temperature
inline constexpr temperature air_hottest = temperature::kelvin(1900.0);  ///< highest film temperature
inline constexpr length lowest_altitude = in_si<length>(-500.0);         ///< the lowest land lies 430 m below the sea
inline constexpr length highest_altitude = in_si<length>(11000.0);       ///< top of the layer the formula describes
/// @}

namespace detail {

/// The air model on plain numbers: any temperature above zero, in and out of its range.
struct air_numbers {
    double density, viscosity, specific_heat, conductivity;  // SI
};

[[nodiscard]] inline air_numbers air_numbers_at(double kelvin, double pascal)
{
    constexpr double gas_constant = 287.05;                                   // J/(kg K), dry air
    constexpr double sutherland_factor = 1.458e-6;                            // kg/(s m K^0.5)
    constexpr double sutherland_temperature = 110.4;                          // K
    constexpr double conductivity_factor = 2.64638e-3;                        // W/(m K^1.5)
    constexpr double conductivity_temperature = 245.4;                        // K
    constexpr double conductivity_decades = 12.0;                             // K: 245.4 x 10^(-12/T)
    constexpr double nitrogen = 0.781, oxygen = 0.2095, argon = 0.0093;       // by volume, standard atmosphere
    constexpr double nitrogen_vibration = 3393.5, oxygen_vibration = 2273.6;  // K, characteristic temperatures
    constexpr double diatomic = 3.5, monatomic = 2.5;                         // cp over gas constant without vibration

    const double t15 = kelvin * std::sqrt(kelvin);
    const auto vibration = [kelvin](double characteristic) {
        const double x = characteristic / kelvin;
        const double less = -std::expm1(-x);
        return x * x * std::exp(-x) / (less * less);
    };
    const double cp = gas_constant * (diatomic * (nitrogen + oxygen) + monatomic * argon +
                                      nitrogen * vibration(nitrogen_vibration) + oxygen * vibration(oxygen_vibration));
    return {pascal / (gas_constant * kelvin), sutherland_factor * t15 / (kelvin + sutherland_temperature), cp,
            conductivity_factor * t15 /
                (kelvin + conductivity_temperature * std::pow(10.0, -conductivity_decades / kelvin))};
}

[[nodiscard]] inline double standard_pressure(double metres)
{
    if (metres == 0.0) return sea_level_pressure.value();
    return sea_level_pressure.value() * std::pow(1.0 - 2.25577e-5 * metres, 5.25588);
}

}  // namespace detail

/// Pressure of the standard atmosphere at an altitude, p = 101325 Pa (1 - 2.25577e-5 z/m)^5.25588.
/// @param altitude z above sea level [m], -500 to 11000
/// @return pressure [Pa]; within 0.1 % of the standard's table. Weather moves it by 3 %
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure pressure_at_altitude(length altitude)
{
    require_within(altitude, lowest_altitude, highest_altitude, "altitude");
    return in_si<pressure>(detail::standard_pressure(altitude.value()));
}

/// Properties of dry air at a temperature and pressure.
///
/// mu = 1.458e-6 T^1.5/(T + 110.4 K); k = 2.64638e-3 T^1.5/(T + 245.4 x 10^(-12/T)); rho = p/(287.05 T);
/// cp from the rotation and vibration of its molecules. Compared with printed tables from 250 to 600 K: mu within
/// 1.4 %, k within 0.8 % (of one table; printed tables differ by 2.8 % among each other), cp within 0.4 %.
/// @param film temperature, 100 to 1900 K @param p pressure [Pa], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline air_properties air_at(temperature film, pressure p = sea_level_pressure)
{
    require_positive(p, "air pressure");
    if (film < air_coldest || film > air_hottest)
        throw out_of_range_error("film temperature", to_text(film, "K", 4), "100 K to 1900 K");
    const detail::air_numbers n = detail::air_numbers_at(film.in_kelvin(), p.value());
    return {film, in_si<density>(n.density), in_si<dynamic_viscosity>(n.viscosity),
            in_si<specific_heat>(n.specific_heat), in_si<thermal_conductivity>(n.conductivity)};
}

}  // namespace weldloop
