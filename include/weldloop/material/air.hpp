#pragma once
/// @file
/// Air: pressure at an altitude, and the properties that convection needs at a film temperature.

#include <array>
#include <cmath>
#include <numbers>

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
    weldloop::density density;                            ///< [kg/m3] above 0, ideal gas
    dynamic_viscosity viscosity;                          ///< [Pa s] above 0
    weldloop::specific_heat specific_heat;                ///< [J/(kg K)] above 0, at constant pressure
    weldloop::thermal_conductivity thermal_conductivity;  ///< [W/(m K)] above 0

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

/// Constants of the air model.
struct air_constants {
    static constexpr double gas = 287.05;                                            // J/(kg K), dry air
    static constexpr double sutherland_factor = 1.458e-6;                            // kg/(s m K^0.5)
    static constexpr double sutherland_temperature = 110.4;                          // K
    static constexpr double conductivity_factor = 2.64638e-3;                        // W/(m K^1.5)
    static constexpr double conductivity_temperature = 245.4;                        // K
    static constexpr double conductivity_exponent = 12.0 * std::numbers::ln10;       // K: 245.4 x 10^(-12/T)
    static constexpr double nitrogen = 0.781, oxygen = 0.2095, argon = 0.0093;       // by volume, standard atmosphere
    static constexpr double nitrogen_vibration = 3393.5, oxygen_vibration = 2273.6;  // K, characteristic temperatures
    static constexpr double diatomic = 3.5, monatomic = 2.5;  // heat over gas constant without vibration
    static constexpr double without_vibration = diatomic * (nitrogen + oxygen) + monatomic * argon;
};

/// The air model on plain numbers: any temperature above zero, in and out of its range.
struct air_numbers {
    double density, viscosity, specific_heat, conductivity;  // SI
};

/// The same with the share of itself by which each number grows per kelvin.
struct growing_air : air_numbers {
    double viscosity_growth, specific_heat_growth, conductivity_growth;  // 1/K; that of the density is -1/T
};

/// A vibration's heat over the gas constant, Einstein's function of x, and its slope times the temperature.
[[nodiscard]] inline std::array<double, 2> vibration_heat(double x)
{
    const double still = std::exp(-x), excited = x > 1.0 ? 1.0 - still : -std::expm1(-x);  // no digits lost
    const double heat = x * x * still / (excited * excited);
    return {heat, heat * (x * (1.0 + still) / excited - 2.0)};
}

// Always inlined: who leaves the growths alone then does not pay for them.
[[nodiscard, gnu::always_inline]] inline growing_air growing_air_at(double kelvin, double pascal)
{
    using air = air_constants;
    const double t15 = kelvin * std::sqrt(kelvin), per_kelvin = 1.0 / kelvin;
    const double viscous = kelvin + air::sutherland_temperature;
    const double held = air::conductivity_temperature * std::exp(-air::conductivity_exponent * per_kelvin);
    const double conducting = kelvin + held;
    const auto [nitrogen, nitrogen_slope] = vibration_heat(air::nitrogen_vibration * per_kelvin);
    const auto [oxygen, oxygen_slope] = vibration_heat(air::oxygen_vibration * per_kelvin);
    const double heat = air::without_vibration + air::nitrogen * nitrogen + air::oxygen * oxygen;
    growing_air out;
    out.density = pascal / (air::gas * kelvin);
    out.viscosity = air::sutherland_factor * t15 / viscous;
    out.specific_heat = air::gas * heat;
    out.conductivity = air::conductivity_factor * t15 / conducting;
    out.viscosity_growth = 1.5 * per_kelvin - 1.0 / viscous;
    out.specific_heat_growth = (air::nitrogen * nitrogen_slope + air::oxygen * oxygen_slope) * per_kelvin / heat;
    out.conductivity_growth =
        1.5 * per_kelvin - (1.0 + held * air::conductivity_exponent * per_kelvin * per_kelvin) / conducting;
    return out;
}

[[nodiscard]] inline air_numbers air_numbers_at(double kelvin, double pascal)
{
    return growing_air_at(kelvin, pascal);
}

/// @name Where air_ceiling_at() holds
/// @{
inline constexpr double ceiling_lowest = 170.0, ceiling_highest = 450.0;  // K
inline constexpr double ceiling_prandtl = 0.746;  // the model's falls from 0.745 at 170 K to 0.682 at 450 K
/// @}

/// Air without its exponentials, for proofs that a law stays below another: viscosity exact, conductivity and specific
/// heat not below the model's from 170 to 450 K (up to 1.5 % above).
[[nodiscard]] inline air_numbers air_ceiling_at(double kelvin, double pascal)
{
    using air = air_constants;
    constexpr double heat_at_highest = 3.5483;  // over the gas constant; it rises with the temperature
    const double t15 = kelvin * std::sqrt(kelvin);
    const double least_held = air::conductivity_temperature * (1.0 - air::conductivity_exponent / kelvin);
    return {pascal / (air::gas * kelvin), air::sutherland_factor * t15 / (kelvin + air::sutherland_temperature),
            air::gas * heat_at_highest, air::conductivity_factor * t15 / (kelvin + least_held)};
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
