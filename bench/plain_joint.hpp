#pragma once
// Contacts on plain numbers: conductance with its scatter, hottest spot, and the whole behaviour under current, with
// the same checks of arguments. Nothing of the library is called; its tables of constants are handed over as numbers.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <vector>

namespace plain {

struct joint_metal {
    int id;  // place in the library's table
    double resistivity, slope, hardness, softening, melting;
};

struct joint {
    joint_metal first, second;
    double force;
    int state;        // of the surface
    double exponent;  // of the shape
    double points;
};

using band = std::array<double, 3>;

inline std::vector<band> multipliers;  // of the resistance by surface state; by plain_cases.hpp

// The constants of the force law by pair, found by number where the library finds them by name.
struct force_row {
    int first, second;
    double low, high;
};
inline std::vector<force_row> constants;  // by plain_cases.hpp

inline const force_row* find_row(int a, int b)
{
    for (const force_row& row : constants)
        if ((row.first == a && row.second == b) || (row.first == b && row.second == a)) return &row;
    return nullptr;
}

[[noreturn, gnu::noinline, gnu::cold]] inline void refuse_not_finite()
{
    throw std::invalid_argument("not finite");
}
[[noreturn, gnu::noinline, gnu::cold]] inline void refuse_outside()
{
    throw std::out_of_range("outside");
}
inline double finite(double x)
{
    if (!std::isfinite(x)) refuse_not_finite();
    return x;
}
inline double not_negative(double x)
{
    if (finite(x) < 0.0) refuse_outside();
    return x;
}
inline double positive(double x)
{
    if (!(finite(x) > 0.0)) refuse_outside();
    return x;
}
inline double within(double x, double low, double high)
{
    if (finite(x) < low || x > high) refuse_outside();
    return x;
}

[[gnu::noinline]] inline double both(double a, double b, double direction)
{
    return std::exp(direction * std::hypot(std::log(a), std::log(b)));
}
inline double combined(double a_end, double a, double b_end, double b, double direction)
{
    if (a_end == a) return b_end / b;
    if (b_end == b) return a_end / a;
    return both(a_end / a, b_end / b, direction);
}

inline band conductance_of(const joint& c)
{
    const force_row* const row = find_row(c.first.id, c.second.id);
    if (row == nullptr) refuse_outside();
    not_negative(c.force);
    const double points = within(c.points, 1.0, 1000.0);
    const band& s = multipliers[static_cast<std::size_t>(c.state)];
    if (s[1] == 0.0 || c.force == 0.0) return {};
    const double typical = row->low == row->high ? row->low : std::sqrt(row->low * row->high);
    const double each = finite(std::pow(0.102 * (c.force / points), c.exponent) / 1e-6);
    const double g = points * each;
    const double middle = typical * s[1];
    const double low = middle * combined(row->low, typical, s[0], s[1], -1.0);
    const double high = middle * combined(row->high, typical, s[2], s[1], 1.0);
    return {g / high, g / middle, g / low};
}

inline double drop_to(double kelvin, double bulk)
{
    if (bulk >= kelvin) return 0.0;
    return 2.0 * std::sqrt(2.44e-8 * (kelvin - bulk) * (kelvin + bulk));
}

inline double resistivity_at(const joint_metal& m, double kelvin)
{
    const double factor = 1.0 + m.slope * (kelvin - 293.15);
    return m.resistivity * (factor > 0.01 ? factor : 0.01);
}

struct drop_law {
    double softening, melting, growth, scale, cold_softening;

    drop_law(const joint_metal& a, const joint_metal& b, double bulk)
        : softening(std::min(drop_to(a.softening, bulk), drop_to(b.softening, bulk))),
          melting(std::min(drop_to(a.melting, bulk), drop_to(b.melting, bulk)))
    {
        positive(a.resistivity);
        positive(b.resistivity);
        const double alpha =
            (a.resistivity * a.slope + b.resistivity * b.slope) / (resistivity_at(a, bulk) + resistivity_at(b, bulk));
        growth = bulk > 0.0 ? std::clamp(2.0 / 3.0 * alpha * bulk, 0.0, 1.0) : 0.0;
        scale = growth > 0.0 ? 2.0 * std::sqrt(2.44e-8) * bulk : 1.0;
        cold_softening = softening / hot(softening);
    }

    double hot(double v) const
    {
        const double z = v / scale;
        return 1.0 + growth * (std::sqrt(1.0 + z * z) - 1.0);
    }

    double drop(double x) const
    {
        if (x <= cold_softening) {
            const double w = x * growth / scale;
            const double root = std::sqrt(growth * growth + w * w * (1.0 - 2.0 * growth));
            return std::min(x * (1.0 - growth + root) / (1.0 - w * w), softening);
        }
        if (!(softening < melting)) return melting;
        const double y = x * hot(softening);
        double v = 2.0 * melting / (1.0 + std::sqrt(1.0 + 4.0 * ((melting - softening) / y) * (melting / y)));
        if (!(growth > 0.0)) return v;
        const double span = melting - softening;
        double low = std::clamp(v, softening, melting), high = melting;
        v = low;
        for (int i = 0; i < 60; ++i) {
            const double z = v / scale, s = std::sqrt(1.0 + z * z);
            const double f = 1.0 + growth * (s - 1.0);
            const double ratio = v / x / f;
            const double surplus = ratio * ratio - (melting - v) / span;
            const double slope = 2.0 * ratio * (1.0 - growth * (1.0 - 1.0 / s)) / (x * f * f) + 1.0 / span;
            (surplus < 0.0 ? low : high) = v;
            double next = v - surplus / slope;
            if (!(next >= low && next <= high)) next = 0.5 * (low + high);
            const bool done = std::abs(next - v) <= 1e-15 * v;
            v = next;
            if (done) break;
        }
        return v;
    }
};

inline double spot_at(double v, double bulk, double melting)
{
    return std::min(positive(std::sqrt(bulk * bulk + not_negative(v) * v / (4.0 * 2.44e-8))), melting);
}

inline double growth_of(const joint& c, double bulk)
{
    positive(c.first.resistivity);
    positive(c.second.resistivity);
    return (resistivity_at(c.first, bulk) + resistivity_at(c.second, bulk)) /
           (c.first.resistivity + c.second.resistivity);
}

inline band hottest_of(const joint& c, double amps, double bulk)
{
    const band g = conductance_of(c);
    not_negative(amps);
    const double melting = std::min(c.first.melting, c.second.melting);
    if (!(g[1] > 0.0)) return {bulk, bulk, bulk};
    const drop_law law(c.first, c.second, bulk);
    const double grown = growth_of(c, bulk);
    band out{};
    for (std::size_t k = 0; k < 3; ++k)
        out[k] = spot_at(amps > 0.0 ? law.drop(amps * grown / g[2 - k]) : 0.0, bulk, melting);
    return out;
}

struct joint_behaviour {
    band drop, resistance, loss, hottest;
    bool conducts, may_be_open, melt, may_melt;
};

inline joint_behaviour behaviour_of(const joint& c, double amps, double bulk)
{
    const band g = conductance_of(c);
    not_negative(g[0]);
    not_negative(g[1] - g[0]);
    not_negative(g[2] - g[1]);
    not_negative(amps);
    const drop_law law(c.first, c.second, bulk);
    const double grown = growth_of(c, bulk);
    const double melting = std::min(c.first.melting, c.second.melting);
    joint_behaviour out{};
    out.conducts = g[1] > 0.0;
    out.may_be_open = !(g[0] > 0.0);
    for (std::size_t k = 0; k < 3; ++k) {
        const double v = law.drop(amps * grown / g[2 - k]);
        out.drop[k] = v;
        out.resistance[k] = finite(v / amps);
        out.loss[k] = v * amps;
        out.hottest[k] = spot_at(v, bulk, melting);
    }
    out.melt = out.drop[1] >= 0.95 * law.melting;
    out.may_melt = out.drop[2] >= 0.95 * law.melting;
    return out;
}

}  // namespace plain
