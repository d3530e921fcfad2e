#include <cmath>
#include <cstddef>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/spot_temperature.hpp>
#include <weldloop/material/metals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

// An independent solution: a hemispherical spot between two metals of constant resistivity, in each shells of area
// 2 pi r^2 from r = 1 outwards to a body at a fixed temperature. Finite differences over the shells, heat by Joule's
// law and by conduction with k = L T/rho at each face, iterated. Nothing of the closed form goes in.
struct shell_solution {
    std::vector<double> potential, temperature;  // at the nodes, first body to second
    double drop, into_first, into_second;        // V, W per unit of the scaled current
};

shell_solution solve_shells(double rho1, double rho2, double t1, double t2, double drop)
{
    constexpr int shells = 1500;  // in each metal
    constexpr int nodes = 2 * shells + 1;
    // r = 1/(1 - s), s evenly from 0 to just below 1, so that each shell has the same resistance rho ds/(2 pi)
    const double end = 1.0 - 1e-3;
    const double ds = end / shells;
    std::vector<double> r(nodes - 1);  // resistance between neighbours
    for (int i = 0; i < nodes - 1; ++i) r[static_cast<std::size_t>(i)] = (i < shells ? rho1 : rho2) * ds;
    double whole = 0.0;
    for (const double x : r) whole += x;
    const double amps = drop / whole;
    std::vector<double> t(nodes, 0.5 * (t1 + t2));
    t.front() = t1;
    t.back() = t2;
    std::vector<double> c(nodes), d(nodes);
    for (int round = 0; round < 300; ++round) {
        // conductance of heat between neighbours: L T/resistance
        const auto g = [&](int i) {
            const auto at = static_cast<std::size_t>(i);
            return lorenz_number * 0.5 * (t[at] + t[at + 1]) / r[at];
        };
        // Thomas: -g(i-1) T(i-1) + (g(i-1) + g(i)) T(i) - g(i) T(i+1) = half the heat of both neighbours
        c[0] = 0.0;
        d[0] = t1;
        for (int i = 1; i < nodes - 1; ++i) {
            const auto at = static_cast<std::size_t>(i);
            const double gl = g(i - 1), gr = g(i);
            const double heat = 0.5 * amps * amps * (r[at - 1] + r[at]);
            const double m = gl + gr - gl * c[at - 1];
            c[at] = gr / m;
            d[at] = (heat + gl * d[at - 1]) / m;
        }
        double change = 0.0;
        for (int i = nodes - 2; i > 0; --i) {
            const auto at = static_cast<std::size_t>(i);
            const double next = d[at] + c[at] * t[at + 1];
            change = std::max(change, std::abs(next - t[at]));
            t[at] = next;
        }
        if (change < 1e-9) break;
    }
    shell_solution out{{0.0}, t, drop, 0.0, 0.0};
    for (const double x : r) out.potential.push_back(out.potential.back() + amps * x);
    const std::size_t last = nodes - 1;
    out.into_first = lorenz_number * 0.5 * (t[0] + t[1]) * (t[1] - t[0]) / r[0] + 0.5 * amps * amps * r[0];
    out.into_second = lorenz_number * 0.5 * (t[last] + t[last - 1]) * (t[last - 1] - t[last]) / r[last - 1] +
                      0.5 * amps * amps * r[last - 1];
    out.into_first /= amps;
    out.into_second /= amps;
    return out;
}

}  // namespace

// independent solution: finite differences over the shells of a spot between two metals, bodies of unlike temperature
TEST(SpotTemperature, AgreesWithFiniteDifferences)
{
    for (const auto& [t1, t2, drop] : {std::array{293.15, 293.15, 0.2}, std::array{400.0, 300.0, 0.1},
                                       std::array{300.0, 500.0, 0.05}, std::array{293.15, 313.15, 0.5}}) {
        const double rho1 = annealed_copper.resistivity.value(), rho2 = mild_steel.resistivity.value();
        const shell_solution by_steps = solve_shells(rho1, rho2, t1, t2, drop);
        const temperature first = temperature::kelvin(t1), second = temperature::kelvin(t2);
        const voltage v = in_si<voltage>(drop);
        double hottest = 0.0;
        for (std::size_t i = 0; i < by_steps.temperature.size(); ++i) {
            const voltage at = std::min(v, in_si<voltage>(by_steps.potential[i]));
            EXPECT_NEAR_REL(contact_temperature_at(at, v, first, second).in_kelvin(), by_steps.temperature[i], 1e-5);
            hottest = std::max(hottest, by_steps.temperature[i]);
        }
        EXPECT_NEAR_REL(hottest_point_of(v, first, second).hottest.in_kelvin(), hottest, 1e-5);
        const std::size_t interface = by_steps.temperature.size() / 2;
        EXPECT_NEAR_REL(interface_potential(v, {annealed_copper, mild_steel}).value(), by_steps.potential[interface],
                        1e-9);
        EXPECT_NEAR_REL(interface_temperature(v, {annealed_copper, mild_steel}, first, second).in_kelvin(),
                        by_steps.temperature[interface], 1e-5);
        // per ampere, so G = 1/V
        const side_heat heat = heat_into_sides(v, in_si<conductance>(1.0 / drop), first, second);
        EXPECT_NEAR(heat.first.value(), by_steps.into_first, 1e-4 * drop);
        EXPECT_NEAR(heat.second.value(), by_steps.into_second, 1e-4 * drop);
    }
}

// relation: a film is the limit of a third metal, very thin and very bad: a resistance without conduction of heat along
// the potential. Half its heat leaves to either side, so the metal of each side ends at L T dT/dphi = Vf/2; integrated
// here by small steps.
TEST(SpotTemperature, FilmByIntegration)
{
    for (const double in_film : {0.0, 0.05, 0.15, 0.2}) {
        const double drop = 0.2, t0 = 293.15, side = 0.5 * (drop - in_film);
        constexpr int steps = 200000;
        double t = t0;
        for (int i = 0; i < steps; ++i) {  // from the body inwards; flux = Vf/2 + what is made farther in
            const double phi = side * (i + 0.5) / steps;
            t += side / steps * (0.5 * in_film + side - phi) / (lorenz_number * t);
        }
        EXPECT_NEAR_REL(filmed_spot_temperature(in_si<voltage>(drop), in_si<voltage>(in_film), 20_degC).in_kelvin(), t,
                        2e-5);
    }
    EXPECT_EQ(filmed_spot_temperature(0.2_V, 0.2_V, 20_degC), 20_degC);
}

// relations over random contacts: the symmetric pair gives the known law; the film-free value bounds the others; heat
// into both sides is what the current makes; the profile ends at its bodies
TEST(SpotTemperature, Relations)
{
    random_numbers random(31);
    for (int i = 0; i < random_cases; ++i) {
        const voltage drop = in_si<voltage>(random.log_between(1e-4, 1.0));
        const temperature t1 = temperature::kelvin(random.between(230, 900)),
                          t2 = temperature::kelvin(random.between(230, 900));
        EXPECT_NEAR_REL(hottest_point_of(drop, t1, t1).hottest.in_kelvin(), hot_spot_temperature(drop, t1).in_kelvin(),
                        1e-12);
        const hottest_point top = hottest_point_of(drop, t1, t2);
        EXPECT_GE(top.hottest, std::max(t1, t2));
        EXPECT_LE(top.hottest.in_kelvin(), hot_spot_temperature(drop, std::max(t1, t2)).in_kelvin() * (1 + 1e-12));
        EXPECT_NEAR_REL(contact_temperature_at(0_V, drop, t1, t2).in_kelvin(), t1.in_kelvin(), 1e-12);
        EXPECT_NEAR_REL(contact_temperature_at(drop, drop, t1, t2).in_kelvin(), t2.in_kelvin(), 1e-12);
        const voltage film = random.between(0, 1) * drop;
        EXPECT_LE(filmed_spot_temperature(drop, film, t1).in_kelvin(), hot_spot_temperature(drop, t1).in_kelvin());
        EXPECT_GE(filmed_spot_temperature(drop, film, t1).in_kelvin(), t1.in_kelvin());
        for (const metal& m : all_metals)
            EXPECT_LE(interface_temperature(drop, {m, mild_steel}, t1, t2).in_kelvin(),
                      top.hottest.in_kelvin() * (1 + 1e-12));
        const conductance g = in_si<conductance>(random.log_between(1, 1e5));
        const side_heat heat = heat_into_sides(drop, g, t1, t2);
        const double made = (g * drop * drop).value();
        EXPECT_NEAR((heat.first + heat.second).value(), made,
                    1e-12 * (made + std::abs(heat.first.value()) + std::abs(heat.second.value())));
    }
}

// limiting cases: no drop, and a drop too small to lift its middle above the hotter body
TEST(SpotTemperature, Limits)
{
    EXPECT_EQ(hottest_point_of(0_V, 20_degC, 20_degC).hottest, 20_degC);
    EXPECT_EQ(hottest_point_of(0_V, 20_degC, 80_degC).hottest, 80_degC);
    const hottest_point at_second = hottest_point_of(0.01_V, 20_degC, 200_degC);
    EXPECT_EQ(at_second.at, 0.01_V);
    EXPECT_EQ(at_second.hottest, 200_degC);
    // without current the metal of the spots conducts by its Lorenz number
    const side_heat heat =
        heat_into_sides(0_V, in_si<conductance>(5000), temperature::kelvin(300), temperature::kelvin(360));
    EXPECT_NEAR_REL(heat.first.value(), lorenz_number * 330 * 5000 * 60, 1e-12);
    EXPECT_EQ(heat.first, -heat.second);
    // a jaw of copper on steel: the interface is much cooler than the steel beside it
    EXPECT_NEAR(interface_temperature(0.2_V, {annealed_copper, mild_steel}, 20_degC, 20_degC).in_celsius(), 220, 1);
    EXPECT_NEAR(hot_spot_temperature(0.2_V, 20_degC).in_celsius(), 431, 1);
}

TEST(SpotTemperature, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(contact_temperature_at(in_si<voltage>(x), 0.1_V, 20_degC, 20_degC));
    EXPECT_THROW((void)contact_temperature_at(0.2_V, 0.1_V, 20_degC, 20_degC), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(contact_temperature_at(0_V, in_si<voltage>(x), 20_degC, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(interface_potential(in_si<voltage>(x), {brass, brass}));
    metal nothing = brass;
    nothing.resistivity = in_si<resistivity>(0);
    EXPECT_THROW((void)interface_potential(0.1_V, {brass, nothing}), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(hottest_point_of(in_si<voltage>(x), 20_degC, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(filmed_spot_temperature(in_si<voltage>(x), 0_V, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(filmed_spot_temperature(0.1_V, in_si<voltage>(x), 20_degC));
    EXPECT_THROW((void)filmed_spot_temperature(0.1_V, 0.11_V, 20_degC), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(heat_into_sides(in_si<voltage>(x), in_si<conductance>(1), 20_degC, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(heat_into_sides(0.1_V, in_si<conductance>(x), 20_degC, 20_degC));
}
