// The march in time against the classical Runge-Kutta rule on the equations of its doc comment, and against its limits.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/heating_march.hpp>
#include <weldloop/law/periodic_heating.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

struct lead_size {
    double mm2, inner_mm, outer_mm, increment;
};
constexpr lead_size lead_sizes[] = {{10, 4.7, 8.7, 0.11}, {50, 10.45, 15.0, 0.12}, {185, 19.6, 26.0, 0.137}};

covered_conductor conductor_for(const lead_size& s)
{
    return covered_conductor_of({annealed_copper, in_si<area>(s.mm2 * 1e-6), s.increment},
                                {flexible_rubber, in_si<length>(s.inner_mm * 1e-3), in_si<length>(s.outer_mm * 1e-3)});
}

cable_surface surface_for(const lead_size& s)
{
    return {.diameter = in_si<length>(s.outer_mm * 1e-3)};
}

/// The five temperatures [degC] by the classical Runge-Kutta rule on the equations, the surface law left as it is.
using five = std::array<double, 5>;
five by_runge_kutta(const lead_size& s, double amps, double time, five x, int steps)
{
    const covered_conductor lead = conductor_for(s);
    const detail::conductor_numbers numbers(lead);
    const cable_surface surface = surface_for(s);
    const auto slope = [&](const five& at) {
        five out{};
        for (std::size_t i = 0; i < 5; ++i) {
            double in = i == 0 ? amps * amps * lead.resistance.value() * (1 + 0.00393 * (at[0] - 20)) : 0.0;
            if (i == 4) in -= surface_loss(surface, temperature::celsius(at[4])).value();
            for (std::size_t j = 0; j < 5; ++j)
                in -= lead.conductance.value() * detail::covering_stiffness[i][j] * at[j];
            out[i] = in / (numbers.root_heat[i] * numbers.root_heat[i]);
        }
        return out;
    };
    const auto add = [](const five& a, double h, const five& b) {
        five out = a;
        for (std::size_t i = 0; i < 5; ++i) out[i] += h * b[i];
        return out;
    };
    const double h = time / steps;
    for (int i = 0; i < steps; ++i) {
        const auto k1 = slope(x), k2 = slope(add(x, h / 2, k1)), k3 = slope(add(x, h / 2, k2)),
                   k4 = slope(add(x, h, k3));
        for (std::size_t j = 0; j < 5; ++j) x[j] += h / 6 * (k1[j] + 2 * k2[j] + 2 * k3[j] + k4[j]);
    }
    return x;
}

conductor_profile celsius_pair(double conductor, double surface)
{
    const auto at = [&](double u) { return temperature::celsius(conductor + u * (surface - conductor)); };
    return {at(0), {at(0.2), at(0.5), at(0.8)}, at(1)};
}

five five_of(double conductor, double surface)
{
    const conductor_profile p = celsius_pair(conductor, surface);
    return {p.conductor.in_celsius(), p.within[0].in_celsius(), p.within[1].in_celsius(), p.within[2].in_celsius(),
            p.surface.in_celsius()};
}

}  // namespace

TEST(HeatingMarch, FollowsTheEquations)
{
    double worst = 0.0;
    for (const lead_size& s : lead_sizes) {
        const double full = 22.0 * std::pow(s.mm2, 0.65);  // A, near the continuous rating
        for (const double load : {0.0, 0.6, 1.0, 1.8, 4.0})
            for (const double time : {2.0, 60.0, 300.0, 1800.0})
                for (const std::array<double, 2> start :
                     {std::array{25.0, 25.0}, std::array{85.0, 70.0}, std::array{30.0, 75.0}}) {
                    if (load == 4.0 && time > 100.0) continue;
                    const auto expected = by_runge_kutta(s, load * full, time, five_of(start[0], start[1]),
                                                         static_cast<int>(std::max(200.0, 20.0 * time)));
                    const conductor_profile found = profile_after(conductor_for(s), surface_for(s),
                                                                  {in_si<current>(load * full), in_si<duration>(time)},
                                                                  celsius_pair(start[0], start[1]));
                    const double rise = std::max(std::fabs(expected[0] - 25.0), 60.0);
                    for (const double off :
                         {found.conductor.in_celsius() - expected[0], found.surface.in_celsius() - expected[4]}) {
                        EXPECT_LE(std::fabs(off), 1e-4 * rise)
                            << s.mm2 << " mm2, load " << load << ", " << time << " s, from " << start[0];
                        worst = std::max(worst, std::fabs(off));
                    }
                }
    }
    RecordProperty("worst_K", std::to_string(worst));
}

TEST(HeatingMarch, LongShotTendsToTheSteadyState)
{
    for (const lead_size& s : lead_sizes) {
        const current amps = in_si<current>(22.0 * std::pow(s.mm2, 0.65));
        const periodic_heating steady =
            periodic_heating_of(conductor_for(s), surface_for(s), {amps, in_si<duration>(600), in_si<duration>(600)});
        for (const duration& time : {in_si<duration>(1e6), in_si<duration>(1e15)}) {
            const conductor_profile end =
                profile_after(conductor_for(s), surface_for(s), {amps, time}, celsius_pair(25, 25));
            EXPECT_NEAR(end.conductor.in_kelvin(), steady.conductor_mean.in_kelvin(), 1e-6);
            EXPECT_NEAR(end.surface.in_kelvin(), steady.surface_mean.in_kelvin(), 1e-6);
        }
    }
}

TEST(HeatingMarch, RepeatedItAgreesWithThePeriodicSolution)
{
    // the periodic solution takes one tangent for a piece, which reads up to 0.15 % of the rise high at this duty
    for (const lead_size& s : lead_sizes) {
        const current amps = in_si<current>(25.0 * std::pow(s.mm2, 0.65));
        const periodic_heating settled =
            periodic_heating_of(conductor_for(s), surface_for(s), {amps, in_si<duration>(180), in_si<duration>(300)});
        conductor_profile at = celsius_pair(25, 25);
        conductor_profile peak = at;
        for (int period = 0; period < 60; ++period) {
            peak = profile_after(conductor_for(s), surface_for(s), {amps, in_si<duration>(180)}, at);
            at = profile_after(conductor_for(s), surface_for(s), {current{}, in_si<duration>(120)}, peak);
        }
        const double rise = (peak.conductor - 25_degC).value();
        EXPECT_NEAR((settled.conductor_peak - peak.conductor).value(), 0.0, 0.002 * rise);
        EXPECT_GE(settled.conductor_peak.in_kelvin(), peak.conductor.in_kelvin() - 0.01);
    }
}

TEST(HeatingMarch, TwoTimesAreOneTime)
{
    std::mt19937_64 engine(11);
    std::uniform_real_distribution<double> pick(0.0, 1.0);
    for (int i = 0; i < 200; ++i) {
        const lead_size& s = lead_sizes[static_cast<std::size_t>(3.0 * pick(engine)) % 3];
        const current amps = in_si<current>(40.0 * pick(engine) * std::pow(s.mm2, 0.65));
        const duration a = in_si<duration>(600 * pick(engine)), b = in_si<duration>(600 * pick(engine));
        const conductor_profile start = celsius_pair(25 + 60 * pick(engine), 25 + 60 * pick(engine));
        const conductor_profile once = profile_after(conductor_for(s), surface_for(s), {amps, a + b}, start);
        const conductor_profile twice =
            profile_after(conductor_for(s), surface_for(s), {amps, b},
                          profile_after(conductor_for(s), surface_for(s), {amps, a}, start));
        EXPECT_NEAR((once.conductor - twice.conductor).value(), 0.0, 1e-4 * (60 + (once.conductor - 25_degC).value()));
        // more current is never cooler
        EXPECT_GE(profile_after(conductor_for(s), surface_for(s), {1.05 * amps, a + b}, start).conductor.in_kelvin() +
                      0.01,
                  once.conductor.in_kelvin());
    }
}

TEST(HeatingMarch, FindsTheTimeOfATemperature)
{
    for (const lead_size& s : lead_sizes) {
        const current amps = in_si<current>(35.0 * std::pow(s.mm2, 0.65));
        const std::optional<duration> t =
            time_to_conductor(conductor_for(s), surface_for(s), amps, {celsius_pair(25, 25), 85_degC});
        ASSERT_TRUE(t);
        EXPECT_NEAR(
            profile_after(conductor_for(s), surface_for(s), {amps, *t}, celsius_pair(25, 25)).conductor.in_celsius(),
            85.0, 0.01);
        // downwards too
        const std::optional<duration> down =
            time_to_conductor(conductor_for(s), surface_for(s), current{}, {celsius_pair(85, 75), 40_degC});
        ASSERT_TRUE(down);
        EXPECT_NEAR(profile_after(conductor_for(s), surface_for(s), {current{}, *down}, celsius_pair(85, 75))
                        .conductor.in_celsius(),
                    40.0, 0.01);
    }
    // a hot covering lifts the conductor for a while: the turning point counts
    const lead_size& s = lead_sizes[1];
    EXPECT_TRUE(time_to_conductor(conductor_for(s), surface_for(s), current{}, {celsius_pair(30, 80), 40_degC}));
    EXPECT_FALSE(time_to_conductor(conductor_for(s), surface_for(s), current{}, {celsius_pair(30, 80), 79_degC}));
    // never: below the air, or above the steady state
    EXPECT_FALSE(time_to_conductor(conductor_for(s), surface_for(s), current{}, {celsius_pair(85, 75), 24_degC}));
    EXPECT_FALSE(time_to_conductor(conductor_for(s), surface_for(s), 10_A, {celsius_pair(25, 25), 85_degC}));
    EXPECT_EQ(time_to_conductor(conductor_for(s), surface_for(s), 10_A, {celsius_pair(85, 75), 85_degC})->value(), 0.0);
}

TEST(HeatingMarch, TimeConstantIsThatOfASmallDeparture)
{
    // exact by hand: with a covering that conducts without limit, (C1 + C2)/slope; here the departure itself
    for (const lead_size& s : lead_sizes) {
        const current amps = in_si<current>(15.0 * std::pow(s.mm2, 0.65));
        covered_conductor without_gain = conductor_for(s);
        without_gain.temperature_coefficient = per_kelvin{};
        const conductor_profile steady =
            profile_after(without_gain, surface_for(s), {amps, in_si<duration>(1e7)}, celsius_pair(25, 25));
        const duration tau = time_constant_of(without_gain, surface_for(s), steady.surface);
        const conductor_profile off{steady.conductor + 0.5_K,
                                    {steady.within[0] + 0.5_K, steady.within[1] + 0.5_K, steady.within[2] + 0.5_K},
                                    steady.surface + 0.5_K};
        const double first =
            (profile_after(without_gain, surface_for(s), {amps, tau}, off).conductor - steady.conductor).value();
        const double second =
            (profile_after(without_gain, surface_for(s), {amps, 2.0 * tau}, off).conductor - steady.conductor).value();
        EXPECT_NEAR(second / first, std::exp(-1.0), 0.01) << s.mm2;
    }
}

TEST(HeatingMarch, OverloadStaysFinite)
{
    const lead_size& s = lead_sizes[0];
    for (const double amps : {1e4, 1e6, 1e9})
        for (const double time : {1e-3, 1.0, 1e4}) {
            const conductor_profile end = profile_after(
                conductor_for(s), surface_for(s), {in_si<current>(amps), in_si<duration>(time)}, celsius_pair(25, 25));
            EXPECT_TRUE(std::isfinite(end.conductor.in_kelvin()));
            EXPECT_TRUE(std::isfinite(end.surface.in_kelvin()));
        }
    EXPECT_THROW(
        (void)profile_after(conductor_for(s), surface_for(s), {in_si<current>(1e200), 1_s}, celsius_pair(25, 25)),
        no_solution_error);
}

TEST(HeatingMarch, RefusesBadInput)
{
    const lead_size& s = lead_sizes[1];
    const covered_conductor lead = conductor_for(s);
    const cable_surface surface = surface_for(s);
    const double nan = std::numeric_limits<double>::quiet_NaN(), infinite = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, infinite}) {
        EXPECT_THROW((void)profile_after(lead, surface, {in_si<current>(bad), 1_s}, {}), not_finite_error);
        EXPECT_THROW((void)profile_after(lead, surface, {1_A, in_si<duration>(bad)}, {}), not_finite_error);
    }
    EXPECT_THROW((void)profile_after(lead, surface, {in_si<current>(-1), 1_s}, {}), out_of_range_error);
    EXPECT_THROW((void)profile_after(lead, surface, {1_A, in_si<duration>(-1)}, {}), out_of_range_error);
    EXPECT_THROW((void)time_to_conductor(lead, surface, in_si<current>(nan), {{}, 50_degC}), not_finite_error);
    EXPECT_THROW((void)time_to_conductor(lead, surface, in_si<current>(-1), {{}, 50_degC}), out_of_range_error);
    covered_conductor none = lead;
    none.covering = heat_capacity_per_length{};
    EXPECT_THROW((void)profile_after(none, surface, {1_A, 1_s}, {}), out_of_range_error);
    EXPECT_THROW((void)time_constant_of(none, surface, 50_degC), out_of_range_error);
    cable_surface flat = surface;
    flat.diameter = length{};
    EXPECT_THROW((void)profile_after(lead, flat, {1_A, 1_s}, {}), out_of_range_error);
    const conductor_profile start = celsius_pair(33, 31);
    EXPECT_EQ(profile_after(lead, surface, {100_A, duration{}}, start).conductor, start.conductor);
}
