#pragma once
/// @file
/// The one table of unit names: which quantity each measures and its size in the coherent SI unit. Text output
/// (text.hpp) and text input (parse.hpp) both read it.

#include <array>
#include <cstddef>
#include <numbers>
#include <string>
#include <string_view>
#include <type_traits>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// The quantities that have unit names.
enum class quantity_kind {
    of_length,
    of_area,
    of_mass,
    of_duration,
    of_frequency,
    of_speed,
    of_force,
    of_pressure,
    of_torque,
    of_energy,
    of_power,
    of_current,
    of_voltage,
    of_resistance,
    of_conductance,
    of_resistivity,
    of_inductance,
    of_temperature_difference,
    of_per_kelvin,
    of_heat_capacity,
    of_specific_heat,
    of_volumetric_heat,
    of_thermal_conductivity,
    of_thermal_conductance,
    of_heat_transfer_coefficient,
    of_heat_flux,
    of_power_per_length,
    of_resistance_per_length,
    of_mass_per_length,
    of_density,
    of_film_resistivity,
    of_per_length,
    of_volume,
    other
};

namespace detail {

template <class Q>
inline constexpr quantity_kind kind_of = quantity_kind::other;
/// @cond INTERNAL
#define WELDLOOP_KIND(name)                                                                                            \
    template <>                                                                                                        \
    inline constexpr quantity_kind kind_of<name> = quantity_kind::of_##name
WELDLOOP_KIND(length);
WELDLOOP_KIND(area);
WELDLOOP_KIND(mass);
WELDLOOP_KIND(duration);
WELDLOOP_KIND(frequency);
WELDLOOP_KIND(speed);
WELDLOOP_KIND(force);
WELDLOOP_KIND(pressure);
WELDLOOP_KIND(torque);
WELDLOOP_KIND(energy);
WELDLOOP_KIND(power);
WELDLOOP_KIND(current);
WELDLOOP_KIND(voltage);
WELDLOOP_KIND(resistance);
WELDLOOP_KIND(conductance);
WELDLOOP_KIND(resistivity);
WELDLOOP_KIND(inductance);
WELDLOOP_KIND(temperature_difference);
WELDLOOP_KIND(per_kelvin);
WELDLOOP_KIND(heat_capacity);
WELDLOOP_KIND(specific_heat);
WELDLOOP_KIND(volumetric_heat);
WELDLOOP_KIND(thermal_conductivity);
WELDLOOP_KIND(thermal_conductance);
WELDLOOP_KIND(heat_transfer_coefficient);
WELDLOOP_KIND(heat_flux);
WELDLOOP_KIND(power_per_length);
WELDLOOP_KIND(resistance_per_length);
WELDLOOP_KIND(mass_per_length);
WELDLOOP_KIND(density);
WELDLOOP_KIND(film_resistivity);
WELDLOOP_KIND(per_length);
WELDLOOP_KIND(volume);
#undef WELDLOOP_KIND
/// @endcond

struct unit_row {
    std::string_view name;
    quantity_kind kind;
    double in_si;  // one of this unit, in the coherent SI unit
};

inline constexpr double seconds_per_hour = 3600.0;
inline constexpr double metres_per_inch = 0.0254;          // exact, international inch (1959)
inline constexpr double kilograms_per_pound = 0.45359237;  // exact, international pound (1959)
inline constexpr double standard_gravity = 9.80665;        // exact, CGPM 1901
inline constexpr double newtons_per_pound_force = kilograms_per_pound * standard_gravity;
// a circular mil is the area of a circle of one mil diameter
inline constexpr double square_metres_per_cmil =
    std::numbers::pi / 4.0 * (metres_per_inch * 1e-3) * (metres_per_inch * 1e-3);

// The first name of a kind is the coherent SI unit, used where a value must be named without a wish of the caller.
inline constexpr std::array unit_table{
    unit_row{"m", quantity_kind::of_length, 1.0},
    unit_row{"mm", quantity_kind::of_length, 1e-3},
    unit_row{"cm", quantity_kind::of_length, 1e-2},
    unit_row{"um", quantity_kind::of_length, 1e-6},
    unit_row{"nm", quantity_kind::of_length, 1e-9},
    unit_row{"km", quantity_kind::of_length, 1e3},
    unit_row{"in", quantity_kind::of_length, metres_per_inch},
    unit_row{"ft", quantity_kind::of_length, 12 * metres_per_inch},
    unit_row{"yd", quantity_kind::of_length, 36 * metres_per_inch},
    unit_row{"mil", quantity_kind::of_length, 1e-3 * metres_per_inch},
    unit_row{"m2", quantity_kind::of_area, 1.0},
    unit_row{"mm2", quantity_kind::of_area, 1e-6},
    unit_row{"cm2", quantity_kind::of_area, 1e-4},
    unit_row{"in2", quantity_kind::of_area, metres_per_inch* metres_per_inch},
    unit_row{"cmil", quantity_kind::of_area, square_metres_per_cmil},
    unit_row{"kcmil", quantity_kind::of_area, 1e3 * square_metres_per_cmil},
    unit_row{"m3", quantity_kind::of_volume, 1.0},
    unit_row{"kg", quantity_kind::of_mass, 1.0},
    unit_row{"g", quantity_kind::of_mass, 1e-3},
    unit_row{"lb", quantity_kind::of_mass, kilograms_per_pound},
    unit_row{"s", quantity_kind::of_duration, 1.0},
    unit_row{"ms", quantity_kind::of_duration, 1e-3},
    unit_row{"min", quantity_kind::of_duration, 60.0},
    unit_row{"h", quantity_kind::of_duration, seconds_per_hour},
    unit_row{"Hz", quantity_kind::of_frequency, 1.0},
    unit_row{"kHz", quantity_kind::of_frequency, 1e3},
    unit_row{"m/s", quantity_kind::of_speed, 1.0},
    unit_row{"m/min", quantity_kind::of_speed, 1.0 / 60.0},
    unit_row{"ft/min", quantity_kind::of_speed, 12 * metres_per_inch / 60.0},
    unit_row{"in/min", quantity_kind::of_speed, metres_per_inch / 60.0},
    unit_row{"N", quantity_kind::of_force, 1.0},
    unit_row{"kN", quantity_kind::of_force, 1e3},
    unit_row{"lbf", quantity_kind::of_force, newtons_per_pound_force},
    unit_row{"Pa", quantity_kind::of_pressure, 1.0},
    unit_row{"kPa", quantity_kind::of_pressure, 1e3},
    unit_row{"MPa", quantity_kind::of_pressure, 1e6},
    unit_row{"GPa", quantity_kind::of_pressure, 1e9},
    unit_row{"psi", quantity_kind::of_pressure, newtons_per_pound_force / (metres_per_inch * metres_per_inch)},
    unit_row{"Nm", quantity_kind::of_torque, 1.0},
    unit_row{"N m", quantity_kind::of_torque, 1.0},
    unit_row{"lbf ft", quantity_kind::of_torque, newtons_per_pound_force * 12 * metres_per_inch},
    unit_row{"lbf in", quantity_kind::of_torque, newtons_per_pound_force* metres_per_inch},
    unit_row{"J", quantity_kind::of_energy, 1.0},
    unit_row{"kJ", quantity_kind::of_energy, 1e3},
    unit_row{"W", quantity_kind::of_power, 1.0},
    unit_row{"mW", quantity_kind::of_power, 1e-3},
    unit_row{"kW", quantity_kind::of_power, 1e3},
    unit_row{"A", quantity_kind::of_current, 1.0},
    unit_row{"mA", quantity_kind::of_current, 1e-3},
    unit_row{"kA", quantity_kind::of_current, 1e3},
    unit_row{"V", quantity_kind::of_voltage, 1.0},
    unit_row{"mV", quantity_kind::of_voltage, 1e-3},
    unit_row{"uV", quantity_kind::of_voltage, 1e-6},
    unit_row{"ohm", quantity_kind::of_resistance, 1.0},
    unit_row{"mohm", quantity_kind::of_resistance, 1e-3},
    unit_row{"uohm", quantity_kind::of_resistance, 1e-6},
    unit_row{"S", quantity_kind::of_conductance, 1.0},
    unit_row{"kS", quantity_kind::of_conductance, 1e3},
    unit_row{"ohm m", quantity_kind::of_resistivity, 1.0},
    unit_row{"uohm m", quantity_kind::of_resistivity, 1e-6},
    unit_row{"nohm m", quantity_kind::of_resistivity, 1e-9},
    unit_row{"H", quantity_kind::of_inductance, 1.0},
    unit_row{"mH", quantity_kind::of_inductance, 1e-3},
    unit_row{"uH", quantity_kind::of_inductance, 1e-6},
    unit_row{"K", quantity_kind::of_temperature_difference, 1.0},
    unit_row{"1/K", quantity_kind::of_per_kelvin, 1.0},
    unit_row{"J/K", quantity_kind::of_heat_capacity, 1.0},
    unit_row{"J/(kg K)", quantity_kind::of_specific_heat, 1.0},
    unit_row{"J/(m3 K)", quantity_kind::of_volumetric_heat, 1.0},
    unit_row{"W/(m K)", quantity_kind::of_thermal_conductivity, 1.0},
    unit_row{"W/K", quantity_kind::of_thermal_conductance, 1.0},
    unit_row{"W/(m2 K)", quantity_kind::of_heat_transfer_coefficient, 1.0},
    unit_row{"W/m2", quantity_kind::of_heat_flux, 1.0},
    unit_row{"W/m", quantity_kind::of_power_per_length, 1.0},
    unit_row{"ohm/m", quantity_kind::of_resistance_per_length, 1.0},
    unit_row{"ohm/km", quantity_kind::of_resistance_per_length, 1e-3},
    unit_row{"ohm/kft", quantity_kind::of_resistance_per_length, 1.0 / (12e3 * metres_per_inch)},
    unit_row{"kg/m", quantity_kind::of_mass_per_length, 1.0},
    unit_row{"kg/m3", quantity_kind::of_density, 1.0},
    unit_row{"ohm m2", quantity_kind::of_film_resistivity, 1.0},
    unit_row{"1/m", quantity_kind::of_per_length, 1.0},
};

// Place of a unit in the table, or the size of the table. An index, because g++ with the null-pointer sanitizer takes
// no comparison of pointers for a constant expression.
[[nodiscard]] constexpr std::size_t unit_index(std::string_view name, quantity_kind kind)
{
    std::size_t at = 0;
    while (at < unit_table.size() && !(unit_table[at].kind == kind && unit_table[at].name == name)) ++at;
    return at;
}

[[nodiscard]] constexpr const unit_row* find_unit(std::string_view name, quantity_kind kind)
{
    const std::size_t at = unit_index(name, kind);
    return at < unit_table.size() ? &unit_table[at] : nullptr;
}

[[nodiscard]] constexpr const unit_row* coherent_unit(quantity_kind kind)
{
    for (const unit_row& row : unit_table)
        if (row.kind == kind) return &row;
    return nullptr;
}

}  // namespace detail

/// A quantity in its coherent SI unit as text, for messages: "0.0254 m".
/// @param q any @param digits significant digits, 1 to 17
template <class Q>
[[nodiscard]] std::string si_text(const Q& q, int digits = 4)
{
    const detail::unit_row* unit = detail::coherent_unit(detail::kind_of<Q>);
    std::string out = number_text(q.value(), digits);
    if (unit != nullptr) out.append(" ").append(unit->name);
    return out;
}

}  // namespace weldloop
