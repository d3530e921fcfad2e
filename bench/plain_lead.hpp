#pragma once
// Leads on plain numbers: resistance and continuous rating as one would write them for speed alone. Nothing of the
// library is called.
#include <cmath>
#include <cstddef>
#include <limits>
#include <stdexcept>

namespace plain {

constexpr double pi = 3.14159265358979323846;
constexpr double air = 298.15;        // K
constexpr double reference = 293.15;  // K
constexpr double alpha = 0.00393;     // 1/K
constexpr double rubber_conductivity = 0.2;
constexpr double radiating = 0.9 * 5.670374419e-8;  // W/(m2 K4)
constexpr double sea_level = 101325.0, gas = 287.05;

struct lead {
    double area, resistivity, increment, inner, outer, limit;  // m2, ohm m at 20 degC, share, m, m, K
};

inline double resistance(const lead& c, double kelvin)
{
    return c.resistivity * (1 + alpha * (kelvin - reference)) * (1 + c.increment) / c.area;
}

struct conductor_of_any {                              // metal; a lead's is copper
    double area, resistivity, increment, coefficient;  // m2, ohm m at 20 degC, share, 1/K
};

[[noreturn, gnu::noinline, gnu::cold]] inline void refuse(const char* what)
{
    throw std::out_of_range(what);
}

// The same of any metal, with what the library refuses, and as it has it far below the linear range.
[[gnu::noinline, gnu::cold]] inline double doubtful_resistance(const conductor_of_any& c, double found)
{
    constexpr double most = std::numeric_limits<double>::max();
    if (!(c.resistivity > 0 && c.resistivity <= most)) refuse("resistivity");
    if (!(c.area > 0 && c.area <= most)) refuse("area");
    if (!(c.increment >= 0 && c.increment <= 1)) refuse("increment");
    if (!(found <= most)) refuse("resistance");
    return found;
}
inline double checked_resistance(const conductor_of_any& c, double kelvin)
{
    const double grown = 1 + c.coefficient * (kelvin - reference);
    const double found = c.resistivity * (grown > 0.01 ? grown : 0.01) * (1 + c.increment) / c.area;
    if (c.area > 0 && c.increment >= 0 && c.increment <= 1 && found > 0 && found <= std::numeric_limits<double>::max())
        [[likely]]
        return found;
    return doubtful_resistance(c, found);
}

inline double conductance(const lead& c)
{
    return 2 * pi * rubber_conductivity / std::log(c.outer / c.inner);
}

// W/(m K^(5/4)) of the standard's law
inline double standard_factor(double d)
{
    return pi * d * (0.21 / std::pow(d, 0.60) + 3.94);
}

// W/m radiated over pi, and its slope
inline double radiated(double d, double surface, double around)
{
    return d * radiating * (surface * surface + around * around) * (surface + around) * (surface - around);
}
inline double radiated_slope(double d, double surface)
{
    return d * radiating * 4 * surface * surface * surface;
}

// W/m over pi that the standard's law, which holds in air at 30 degC, leaves to convection
constexpr double base = 303.15;
inline double left(double d, double factor, double rise)
{
    return factor / pi * rise * std::sqrt(std::sqrt(std::fabs(rise))) - radiated(d, base + rise, base);
}

// the standard's law with the radiation of the air around [W/m]
inline double standard(double d, double factor, double surface)
{
    return pi * (left(d, factor, surface - air) + radiated(d, surface, air));
}

// Churchill and Chu with radiation
inline double first_principles(double d, double surface)
{
    const double rise = surface - air;
    const double t = 0.5 * (surface + air), t15 = t * std::sqrt(t);
    const double density = sea_level / (gas * t), viscosity = 1.458e-6 * t15 / (t + 110.4);
    const double conductivity = 2.64638e-3 * t15 / (t + 245.4 * std::exp(-12.0 * 2.302585092994045684 / t));
    const auto vibration = [t](double theta) {
        const double x = theta / t, still = std::exp(-x);
        return x * x * still / ((1 - still) * (1 - still));
    };
    const double cp =
        gas * (3.5 * (0.781 + 0.2095) + 2.5 * 0.0093 + 0.781 * vibration(3393.5) + 0.2095 * vibration(2273.6));
    const double nu = viscosity / density, diffusivity = conductivity / (density * cp), pr = nu / diffusivity;
    const double ra = 9.80665 / t * std::fabs(rise) * d * d * d / (nu * diffusivity);
    const double half = std::sqrt(0.559 / pr);
    const double root =
        0.60 + 0.387 * std::cbrt(std::sqrt(ra)) / std::pow(1 + half * std::sqrt(std::sqrt(std::sqrt(half))), 8.0 / 27);
    return (pi * root * root * conductivity + pi * d * radiating * (surface + air) * (surface * surface + air * air)) *
           rise;
}

// Whether the standard's law surely lies above first principles: from 170 to 450 K of the film, with the heat of air at
// 450 K, a conductivity without its exponential and the smallest factor of the Prandtl number.
inline bool standard_is_surely_larger(double d, double factor, double surface)
{
    const double t = 0.5 * (surface + air), rise = std::fabs(surface - air);
    if (t < 170 || t > 450 || rise == 0) return false;
    const double to_air = left(d, factor, surface - air) / (surface - air);
    if (to_air <= 0) return false;
    const double root_t = std::sqrt(t);
    const double conductivity = 2.64638e-3 * t * t * root_t / (t * t + 245.4 * (t - 27.63102111592855));
    const double moved = (std::sqrt(to_air) - 0.60 * std::sqrt(conductivity)) * (1.1998 / 0.387);
    if (moved <= 0) return false;
    const double density = sea_level / (gas * t), cube = moved * moved * moved;
    return cube * cube > 9.80665 / t * rise * d * d * d * density * density * (gas * 3.5483) * conductivity *
                             conductivity * (t + 110.4) / (1.458e-6 * t * root_t);
}

inline double loss(double d, double factor, double surface)
{
    const double by_standard = standard(d, factor, surface);
    if (standard_is_surely_larger(d, factor, surface)) return by_standard;
    const double first = first_principles(d, surface);
    return std::fabs(by_standard) > std::fabs(first) ? by_standard : first;
}

// current [A] that holds the conductor at its limit
inline double continuous(const lead& c)
{
    const double factor = standard_factor(c.outer), g = conductance(c), rise = c.limit - air;
    // Newton's rule on the standard's law; its root is the answer where that law is the larger there
    double x = rise / (1 + factor * std::sqrt(std::sqrt(0.7 * rise)) / g), change = 0, before = 0;
    do {
        const double per_kelvin = factor * std::sqrt(std::sqrt(x));
        const double radiation = pi * (radiated(c.outer, air + x, air) - radiated(c.outer, base + x, base));
        const double steeper = pi * (radiated_slope(c.outer, air + x) - radiated_slope(c.outer, base + x));
        before = std::fabs(change);
        change = (per_kelvin * x + radiation - g * (rise - x)) / (1.25 * per_kelvin + steeper + g);
        x -= change;
    } while (change * change > 1e-11 * before);  // what is left is less than 2e-14 of the temperature
    if (!standard_is_surely_larger(c.outer, factor, air + x) &&
        first_principles(c.outer, air + x) > standard(c.outer, factor, air + x)) {
        // secants on first principles
        double x0 = x, f0 = first_principles(c.outer, air + x0) - g * (rise - x0);
        x -= f0 / (2 * g);
        for (int step = 0; step < 50 && std::fabs(x - x0) > 1e-11; ++step) {
            const double f = first_principles(c.outer, air + x) - g * (rise - x), next = x - f * (x - x0) / (f - f0);
            x0 = x;
            f0 = f;
            x = next;
        }
    }
    return std::sqrt(g * (rise - x) / resistance(c, c.limit));
}

}  // namespace plain
