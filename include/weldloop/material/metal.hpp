#pragma once
/// @file
/// Metals of the welding loop: electrical, thermal and mechanical constants, each group with its source.

#include <array>
#include <optional>
#include <string_view>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// A metal. Constants are for 20 degC unless the member says otherwise.
struct metal {
    std::string_view name;                                ///< as printed and as written in station files
    weldloop::resistivity resistivity;                    ///< [ohm m] above 0, at 20 degC
    per_kelvin temperature_coefficient;                   ///< [1/K] any, of resistivity, referred to 20 degC
    weldloop::density density;                            ///< [kg/m3] above 0
    weldloop::specific_heat specific_heat;                ///< [J/(kg K)] above 0
    weldloop::thermal_conductivity thermal_conductivity;  ///< [W/(m K)] above 0
    pressure hardness_low;                                ///< [Pa] above 0, indentation hardness, soft end of its range
    pressure hardness;                                    ///< [Pa] above 0, indentation hardness, typical
    pressure hardness_high;                               ///< [Pa] above 0, indentation hardness, hard end of its range
    temperature softening;                                ///< contact spots begin to yield
    temperature melting;                                  ///< solidus: contact spots begin to melt
    const source* electrical_source;                      ///< resistivity and coefficient
    const source* thermal_source;                         ///< density, specific heat, conductivity
    const source* contact_source;                         ///< hardness, softening, melting
    temperature core_melting = {};                        ///< of what a thin coat covers, where the other constants of
                                                          ///< contact are the coat's; 0 K: there is no coat

    /// Resistivity at a temperature, rho20 (1 + alpha20 (T - 20 degC)). Linear law: within 1.5 % of the tables for
    /// copper from -50 to 300 degC; beyond, and for steel above 200 degC, it is an extrapolation.
    /// Never below zero: far below the linear range of the metal it returns a hundredth of the value at 20 degC.
    [[nodiscard]] constexpr weldloop::resistivity resistivity_at(temperature t) const
    {
        const double factor = 1.0 + (temperature_coefficient * (t - reference_temperature)).value();
        return resistivity * (factor > 0.01 ? factor : 0.01);
    }

    /// Heat stored per volume [J/(m3 K)].
    [[nodiscard]] constexpr volumetric_heat heat_per_volume() const { return density * specific_heat; }

    /// By name.
    friend constexpr bool operator==(const metal& a, const metal& b) { return a.name == b.name; }
};

/// Where a conductor of a metal melts: its core, where a coat melts before it. @param m the metal
[[nodiscard]] constexpr temperature conductor_melting_of(const metal& m)
{
    return m.core_melting > temperature{} ? m.core_melting : m.melting;
}

/// Where the coat of a conductor melts, strands then stick together; none where there is no coat. @param m the metal
[[nodiscard]] constexpr std::optional<temperature> coat_melting_of(const metal& m)
{
    return m.core_melting > temperature{} ? std::optional(m.melting) : std::nullopt;
}

/// The two metals that meet in a contact.
struct metal_pair {
    metal first;   ///< the jaw, lug or upper part
    metal second;  ///< the work, stud or lower part
};

}  // namespace weldloop
