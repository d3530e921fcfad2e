#pragma once
/// @file
/// Literals: 240_A, 50_ft, 95_degF, 10_Nm. Bring them in with `using namespace weldloop::literals;`.

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {
/// Literal suffixes of SI and US customary units.
inline namespace literals {

/// @cond INTERNAL
#define WELDLOOP_LITERAL(suffix, type, unit)                                                                           \
    [[nodiscard]] constexpr type operator""_##suffix(long double v)                                                    \
    {                                                                                                                  \
        constexpr double in_si_unit = detail::unit_table[detail::unit_index(unit, detail::kind_of<type>)].in_si;       \
        return in_si<type>(static_cast<double>(v) * in_si_unit);                                                       \
    }                                                                                                                  \
    [[nodiscard]] constexpr type operator""_##suffix(unsigned long long v)                                             \
    {                                                                                                                  \
        return operator""_##suffix(static_cast<long double>(v));                                                       \
    }
WELDLOOP_LITERAL(m, length, "m")
WELDLOOP_LITERAL(mm, length, "mm")
WELDLOOP_LITERAL(cm, length, "cm")
WELDLOOP_LITERAL(um, length, "um")
WELDLOOP_LITERAL(nm, length, "nm")
WELDLOOP_LITERAL(km, length, "km")
WELDLOOP_LITERAL(in, length, "in")
WELDLOOP_LITERAL(ft, length, "ft")
WELDLOOP_LITERAL(mil, length, "mil")
WELDLOOP_LITERAL(m2, area, "m2")
WELDLOOP_LITERAL(cm2, area, "cm2")
WELDLOOP_LITERAL(mm2, area, "mm2")
WELDLOOP_LITERAL(kcmil, area, "kcmil")
WELDLOOP_LITERAL(kg, mass, "kg")
WELDLOOP_LITERAL(g, mass, "g")
WELDLOOP_LITERAL(lb, mass, "lb")
WELDLOOP_LITERAL(s, duration, "s")
WELDLOOP_LITERAL(ms, duration, "ms")
WELDLOOP_LITERAL(min, duration, "min")
WELDLOOP_LITERAL(h, duration, "h")
WELDLOOP_LITERAL(Hz, frequency, "Hz")
WELDLOOP_LITERAL(m_per_s, speed, "m/s")
WELDLOOP_LITERAL(N, force, "N")
WELDLOOP_LITERAL(kN, force, "kN")
WELDLOOP_LITERAL(lbf, force, "lbf")
WELDLOOP_LITERAL(Pa, pressure, "Pa")
WELDLOOP_LITERAL(kPa, pressure, "kPa")
WELDLOOP_LITERAL(MPa, pressure, "MPa")
WELDLOOP_LITERAL(GPa, pressure, "GPa")
WELDLOOP_LITERAL(Nm, torque, "Nm")
WELDLOOP_LITERAL(lbf_ft, torque, "lbf ft")
WELDLOOP_LITERAL(lbf_in, torque, "lbf in")
WELDLOOP_LITERAL(J, energy, "J")
WELDLOOP_LITERAL(W, power, "W")
WELDLOOP_LITERAL(kW, power, "kW")
WELDLOOP_LITERAL(A, current, "A")
WELDLOOP_LITERAL(mA, current, "mA")
WELDLOOP_LITERAL(kA, current, "kA")
WELDLOOP_LITERAL(V, voltage, "V")
WELDLOOP_LITERAL(mV, voltage, "mV")
WELDLOOP_LITERAL(uV, voltage, "uV")
WELDLOOP_LITERAL(ohm, resistance, "ohm")
WELDLOOP_LITERAL(mohm, resistance, "mohm")
WELDLOOP_LITERAL(uohm, resistance, "uohm")
WELDLOOP_LITERAL(K, temperature_difference, "K")
#undef WELDLOOP_LITERAL

#define WELDLOOP_TEMPERATURE_LITERAL(suffix, factory)                                                                  \
    [[nodiscard]] constexpr temperature operator""_##suffix(long double v)                                             \
    {                                                                                                                  \
        return temperature::factory(static_cast<double>(v));                                                           \
    }                                                                                                                  \
    [[nodiscard]] constexpr temperature operator""_##suffix(unsigned long long v)                                      \
    {                                                                                                                  \
        return temperature::factory(static_cast<double>(v));                                                           \
    }
WELDLOOP_TEMPERATURE_LITERAL(degC, celsius)
WELDLOOP_TEMPERATURE_LITERAL(degF, fahrenheit)
#undef WELDLOOP_TEMPERATURE_LITERAL
/// @endcond

}  // namespace literals
}  // namespace weldloop
