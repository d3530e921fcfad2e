#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/periodic_heating.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double pi = 3.14159265358979323846;

struct size {
    double mm2, inner_mm, outer_mm, increment;
};
constexpr size sizes[] = {{10, 4.7, 8.7, 0.11}, {50, 10.45, 15.0, 0.12}, {185, 19.6, 26.0, 0.137}};

length mm(double v)
{
    return in_si<length>(v * 1e-3);
}

two_stores stores_of_size(const size& s)
{
    return two_stores_of(annealed_copper, in_si<area>(s.mm2 * 1e-6), s.increment, flexible_rubber, mm(s.inner_mm),
                         mm(s.outer_mm));
}

cable_surface surface_of_size(const size& s, temperature air = 25_degC)
{
    return {.diameter = mm(s.outer_mm), .air = air};
}

struct marched {
    double conductor_peak, conductor_mean, conductor_on_mean, surface_peak, surface_mean;  // degC
};

/// Marches d(state)/dt through whole periods with the classical Runge-Kutta rule; reads the last period.
template <class State, class Slope>
marched march(State x, Slope&& slope, double on, double period, int periods, int steps_per_period,
              std::size_t surface_index)
{
    const auto add = [](const State& a, double h, const State& b) {
        State out = a;
        for (std::size_t i = 0; i < out.size(); ++i) out[i] += h * b[i];
        return out;
    };
    // a step never straddles the switching
    const int on_steps =
        on < period ? std::max(1, static_cast<int>(std::lround(steps_per_period * on / period))) : steps_per_period;
    const int off_steps = on < period ? std::max(1, steps_per_period - on_steps) : 0;
    marched out{};
    for (int p = 0; p < periods; ++p) {
        out = {-1e9, 0, 0, -1e9, 0};
        for (int i = 0; i < on_steps + off_steps; ++i) {
            const bool is_on = i < on_steps;
            const double h = is_on ? on / on_steps : (period - on) / off_steps;
            const State k1 = slope(x, is_on), k2 = slope(add(x, h / 2, k1), is_on),
                        k3 = slope(add(x, h / 2, k2), is_on), k4 = slope(add(x, h, k3), is_on);
            const State before = x;
            for (std::size_t j = 0; j < x.size(); ++j) x[j] += h / 6 * (k1[j] + 2 * k2[j] + 2 * k3[j] + k4[j]);
            const double tc = 0.5 * (before[0] + x[0]), ts = 0.5 * (before[surface_index] + x[surface_index]);
            out.conductor_peak = std::max({out.conductor_peak, before[0], x[0]});
            out.surface_peak = std::max({out.surface_peak, before[surface_index], x[surface_index]});
            out.conductor_mean += h / period * tc;
            out.surface_mean += h / period * ts;
            if (is_on) out.conductor_on_mean += h / on * tc;
        }
    }
    return out;
}

/// The two equations of the doc comment, the surface law left non-linear.
marched march_two_stores(const size& s, double amps, double on, double period, int periods, int steps)
{
    const two_stores st = stores_of_size(s);
    const cable_surface surface = surface_of_size(s);
    const auto slope = [&](const std::array<double, 2>& x, bool is_on) {
        const double i = is_on ? amps : 0.0;
        const double joule = i * i * st.resistance.value() * (1 + 0.00393 * (x[0] - 20));
        const double through = st.between.value() * (x[0] - x[1]);
        return std::array<double, 2>{(joule - through) / st.inner.value(),
                                     (through - surface_loss(surface, temperature::celsius(x[1])).value()) /
                                         st.outer.value()};
    };
    const periodic_heating start =
        periodic_heating_of(st, surface, in_si<current>(amps), in_si<duration>(on), in_si<duration>(period));
    return march(std::array<double, 2>{start.conductor_lowest.in_celsius(), start.surface_mean.in_celsius()}, slope, on,
                 period, periods, steps, 1);
}

/// The covering as layers instead of two stores.
marched march_layers(const size& s, std::size_t layers, double amps, double on, double period, int periods, int steps)
{
    const double d = s.inner_mm * 1e-3, k = flexible_rubber.thermal_conductivity.value(),
                 c = flexible_rubber.heat_per_volume.value();
    const double step = (s.outer_mm - s.inner_mm) * 0.5e-3 / static_cast<double>(layers);
    const double metal = annealed_copper.heat_per_volume().value() * s.mm2 * 1e-6;
    const double r20 = stores_of_size(s).resistance.value();
    const cable_surface surface = surface_of_size(s);
    const auto radius = [&](double i) { return d / 2 + step * i; };
    // node 0 is the conductor, node i the middle of layer i, node layers + 1 the massless surface, kept as the last
    // entry
    std::vector<double> conductance(layers + 1), heat(layers + 2);
    heat[0] = metal;
    for (std::size_t i = 1; i <= layers; ++i) {
        const double n = static_cast<double>(i);
        heat[i] = c * pi * (radius(n) * radius(n) - radius(n - 1) * radius(n - 1));
    }
    heat[layers + 1] = 0.0;
    for (std::size_t i = 0; i <= layers; ++i) {
        const double a = i == 0 ? radius(0) : radius(static_cast<double>(i) - 0.5);
        const double b = i == layers ? radius(static_cast<double>(layers)) : radius(static_cast<double>(i) + 0.5);
        conductance[i] = 2 * pi * k / std::log(b / a);
    }
    // the outermost quarter layer is given to the surface node, so that it has a small store of its own
    heat[layers + 1] = heat[layers] / 2;
    heat[layers] /= 2;
    const auto slope = [&](const std::vector<double>& x, bool is_on) {
        std::vector<double> dx(x.size());
        const double i = is_on ? amps : 0.0;
        double in = i * i * r20 * (1 + 0.00393 * (x[0] - 20));
        for (std::size_t n = 0; n < x.size(); ++n) {
            const double out = n <= layers ? conductance[n] * (x[n] - x[n + 1])
                                           : surface_loss(surface, temperature::celsius(x[n])).value();
            dx[n] = (in - out) / heat[n];
            in = out;
        }
        return dx;
    };
    const periodic_heating start = periodic_heating_of(stores_of_size(s), surface, in_si<current>(amps),
                                                       in_si<duration>(on), in_si<duration>(period));
    std::vector<double> x(layers + 2);
    for (std::size_t n = 0; n < x.size(); ++n)
        x[n] = start.conductor_lowest.in_celsius() +
               (start.surface_mean.in_celsius() - start.conductor_lowest.in_celsius()) * static_cast<double>(n) /
                   static_cast<double>(layers + 1);
    return march(x, slope, on, period, periods, steps, layers + 1);
}

/// The current that brings the conductor's peak to 85 degC.
double amps_for_a_warm_lead(const size& s, double on, double period)
{
    double low = 0.0, high = 50 * s.mm2;
    for (int i = 0; i < 50; ++i) {
        const double middle = 0.5 * (low + high);
        const periodic_heating h = periodic_heating_of(stores_of_size(s), surface_of_size(s), in_si<current>(middle),
                                                       in_si<duration>(on), in_si<duration>(period));
        (h.conductor_peak < 85_degC ? low : high) = middle;
    }
    return low;
}

/// What the current does to a store alone, by hand.
double one_store_peak_ratio(double on, double period, double tau)
{
    return -std::expm1(-on / tau) / -std::expm1(-period / tau);
}

}  // namespace

// The stated difference from marching the same equations with the surface law left non-linear.
TEST(PeriodicHeating, AgreesWithMarchingTheNonLinearEquations)
{
    struct programme {
        double on, period, share_of_rise;
    };
    for (const size& s : sizes)
        for (const auto& [on, period, share] : {programme{180, 300, 0.0015}, programme{360, 600, 0.0015},
                                                programme{60, 300, 0.003}, programme{120, 600, 0.006}}) {
            const double amps = amps_for_a_warm_lead(s, on, period);
            const periodic_heating exact =
                periodic_heating_of(stores_of_size(s), surface_of_size(s), in_si<current>(amps), in_si<duration>(on),
                                    in_si<duration>(period));
            const marched m = march_two_stores(s, amps, on, period, 40, 600);
            const double allowed = share * (m.conductor_peak - 25);
            EXPECT_NEAR(exact.conductor_peak.in_celsius(), m.conductor_peak, allowed) << s.mm2;
            EXPECT_NEAR(exact.surface_peak.in_celsius(), m.surface_peak, allowed) << s.mm2;
            EXPECT_NEAR(exact.conductor_mean.in_celsius(), m.conductor_mean, allowed) << s.mm2;
            EXPECT_NEAR(exact.conductor_on_mean.in_celsius(), m.conductor_on_mean, allowed) << s.mm2;
            EXPECT_NEAR(exact.surface_mean.in_celsius(), m.surface_mean, allowed) << s.mm2;
        }
}

// The split of the covering between two stores against a ladder of layers: the documented differences.
TEST(PeriodicHeating, TwoStoresAgreeWithManyLayers)
{
    struct programme {
        double on, period, low;  // s, s, share of the rise that the peak may read low
    };
    for (const size& s : sizes)
        for (const auto& [on, period, low] :
             {programme{180, 300, 0.004}, programme{360, 600, 0.004}, programme{120, 600, 0.013},
              programme{60, 600, 0.035}, programme{30, 600, 0.055}, programme{10, 600, 0.08}}) {
            const double amps = amps_for_a_warm_lead(s, on, period);
            const two_stores burst =
                two_stores_of(annealed_copper, in_si<area>(s.mm2 * 1e-6), s.increment, flexible_rubber, mm(s.inner_mm),
                              mm(s.outer_mm), in_si<duration>(on));
            const periodic_heating two = periodic_heating_of(burst, surface_of_size(s), in_si<current>(amps),
                                                             in_si<duration>(on), in_si<duration>(period));
            const marched ladder = march_layers(s, 10, amps, on, period, 8, static_cast<int>(period / 0.06));
            const double rise = ladder.conductor_peak - 25;
            const double error = (two.conductor_peak.in_celsius() - ladder.conductor_peak) / rise;
            EXPECT_GT(error, -low) << s.mm2 << ": " << on << " of " << period;
            EXPECT_LT(error, 0.001) << s.mm2 << ": " << on << " of " << period;
            EXPECT_NEAR(two.conductor_mean.in_celsius(), ladder.conductor_mean, 0.01 * rise) << s.mm2 << ": " << on;
        }
}

TEST(PeriodicHeating, HeatInIsHeatOut)
{
    std::mt19937 random(11);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 500; ++n) {
        const size& s = sizes[static_cast<std::size_t>(n) % 3];
        cable_surface surface = surface_of_size(s, temperature::celsius(-20 + 60 * unit(random)));
        surface.wind = in_si<speed>(n % 4 == 0 ? 5 * unit(random) : 0.0);
        surface.sun = in_si<heat_flux>(n % 5 == 0 ? 900 * unit(random) : 0.0);
        std::vector<heating_segment> programme;
        const int count = 1 + n % 6;
        for (int i = 0; i < count; ++i)
            programme.push_back({in_si<current>(s.mm2 * 6 * unit(random) * (i % 2 == 0 ? 1.0 : 0.0)),
                                 in_si<duration>(std::pow(10.0, -1 + 4 * unit(random)))});
        const periodic_heating h = periodic_heating_of(stores_of_size(s), surface, programme);
        EXPECT_NEAR(h.heat_in.value(), h.heat_out.value(),
                    1e-9 * (1 + h.heat_in.value() + absorbed_sun(surface).value()));
        EXPECT_LE(h.conductor_lowest, h.conductor_mean);
        EXPECT_LE(h.conductor_mean, h.conductor_peak);
        EXPECT_LE(h.surface_mean, h.surface_peak);
        EXPECT_GE(h.conductor_lowest + 1e-9 * 1_K, surface.air);
        // steady conduction through the covering holds on average: no heat is stored over a period
        EXPECT_NEAR_REL(stores_of_size(s).between.value() * (h.conductor_mean - h.surface_mean).value() + 1.0,
                        h.heat_in.value() + 1.0, 1e-9);
    }
}

TEST(PeriodicHeating, OneSegmentIsSteady)
{
    for (const size& s : sizes) {
        const current i = in_si<current>(4 * s.mm2);
        const periodic_heating h = periodic_heating_of(stores_of_size(s), surface_of_size(s), i, 600_s, 600_s);
        EXPECT_NEAR((h.conductor_peak - h.conductor_lowest).value(), 0.0, 1e-9);
        EXPECT_NEAR((h.surface_peak - h.surface_mean).value(), 0.0, 1e-9);
        EXPECT_NEAR_REL(surface_loss(surface_of_size(s), h.surface_mean).value(), h.heat_in.value(), 1e-9);
        const double joule = i.value() * i.value() * stores_of_size(s).resistance.value() *
                             (1 + 0.00393 * (h.conductor_mean.in_celsius() - 20));
        EXPECT_NEAR_REL(joule, h.heat_in.value(), 1e-9);
    }
}

// only the surface law's tangents are cut differently
TEST(PeriodicHeating, CuttingASegmentChangesLittle)
{
    const two_stores st = stores_of_size(sizes[1]);
    const cable_surface surface = surface_of_size(sizes[1]);
    const heating_segment whole[] = {{300_A, 180_s}, {0_A, 120_s}};
    const heating_segment cut[] = {{300_A, 50_s}, {300_A, 130_s}, {0_A, 1_s}, {0_A, 119_s}};
    const heating_segment turned[] = {{0_A, 60_s}, {300_A, 180_s}, {0_A, 60_s}};
    const periodic_heating a = periodic_heating_of(st, surface, whole);
    for (const auto& programme : {std::span<const heating_segment>(cut), std::span<const heating_segment>(turned)}) {
        const periodic_heating b = periodic_heating_of(st, surface, programme);
        EXPECT_NEAR((a.conductor_peak - b.conductor_peak).value(), 0.0, 0.02);
        EXPECT_NEAR((a.conductor_lowest - b.conductor_lowest).value(), 0.0, 0.02);
        EXPECT_NEAR((a.conductor_on_mean - b.conductor_on_mean).value(), 0.0, 0.02);
        EXPECT_NEAR((a.surface_peak - b.surface_peak).value(), 0.0, 0.02);
    }
}

TEST(PeriodicHeating, SurfacePeaksAfterTheCurrentHasStopped)
{
    const two_stores st = stores_of_size(sizes[1]);
    const cable_surface surface = surface_of_size(sizes[1]);
    const current i = 500_A;
    const periodic_heating h = periodic_heating_of(st, surface, i, 60_s, 300_s);
    // the surface at the end of the on-time, from a programme that is cut there and a march through it
    const marched m = march_two_stores(sizes[1], 500, 60, 300, 20, 3000);
    EXPECT_NEAR(h.surface_peak.in_celsius(), m.surface_peak, 0.1);
    EXPECT_LT(h.surface_peak, h.conductor_peak);
    EXPECT_GT(h.surface_peak, h.surface_mean + 1_K);
}

TEST(PeriodicHeating, ShortPeriodsFeelOnlyTheMeanSquare)
{
    for (const size& s : sizes) {
        const double amps = 4 * s.mm2;
        const periodic_heating steady =
            periodic_heating_of(stores_of_size(s), surface_of_size(s), in_si<current>(amps), 1_s, 1_s);
        const periodic_heating pulsed = periodic_heating_of(stores_of_size(s), surface_of_size(s),
                                                            in_si<current>(amps / std::sqrt(0.3)), 3_ms, 10_ms);
        EXPECT_NEAR((steady.conductor_peak - pulsed.conductor_peak).value(), 0.0, 0.002);
        EXPECT_NEAR((steady.surface_peak - pulsed.surface_peak).value(), 0.0, 0.002);
    }
}

// source: first-order periodic law of the drives textbooks (one source) and two canonical values computed from it. A
// store with a huge conductance to a small surface store behaves as one time constant: checked on ratios of rises.
TEST(PeriodicHeating, TendsToTheFirstOrderLaw)
{
    for (const auto& row : reference_table("heat-duty-cycle.csv").rows()) {
        if (row.text("id") == "DC-CALC-1") {
            EXPECT_NEAR_REL(one_store_peak_ratio(6, 10, 20), row.number("recomputed_value"), 3e-5);
        }
        if (row.text("id") == "DC-CALC-3") {
            EXPECT_NEAR_REL(one_store_peak_ratio(2, 10, 30), row.number("recomputed_value"), 3e-5);
        }
    }
    // no temperature coefficient, thin well-conducting covering, small rise: linear and of one time constant
    two_stores st = stores_of_size(sizes[1]);
    st.temperature_coefficient = per_kelvin{};
    st.between = st.between * 1e4;
    st.outer = st.outer * 1e-4;
    cable_surface surface = surface_of_size(sizes[1]);
    surface.wind = 20_m_per_s;  // makes the coefficient nearly independent of the rise
    surface.model = surface_model::churchill_chu;
    const current i = 100_A;
    const periodic_heating steady = periodic_heating_of(st, surface, i, 1_s, 1_s);
    const double rise = (steady.conductor_mean - surface.air).value();
    const double tau = st.inner.value() * rise / steady.heat_in.value();
    const periodic_heating h =
        periodic_heating_of(st, surface, i, in_si<duration>(0.3 * tau), in_si<duration>(0.5 * tau));
    EXPECT_NEAR_REL((h.conductor_peak - surface.air).value() / rise, one_store_peak_ratio(0.3, 0.5, 1.0), 0.003);
}

TEST(PeriodicHeating, MonotoneInCurrentAndDuty)
{
    for (const size& s : sizes) {
        temperature last = 0_degC;
        for (double a = 0; a < 40; a += 0.7) {
            const periodic_heating h =
                periodic_heating_of(stores_of_size(s), surface_of_size(s), in_si<current>(a * s.mm2), 180_s, 300_s);
            EXPECT_GT(h.conductor_peak, last);
            last = h.conductor_peak;
        }
        last = 0_degC;
        for (double on = 10; on <= 300; on += 10) {
            const periodic_heating h = periodic_heating_of(stores_of_size(s), surface_of_size(s),
                                                           in_si<current>(5 * s.mm2), in_si<duration>(on), 300_s);
            EXPECT_GT(h.conductor_peak, last);
            last = h.conductor_peak;
        }
    }
}

TEST(PeriodicHeating, OverloadsStayFinite)
{
    for (const size& s : sizes)
        for (double amps : {1e3, 1e4, 1e5, 1e6})
            for (double on : {0.01, 60.0, 300.0}) {
                const periodic_heating h = periodic_heating_of(stores_of_size(s), surface_of_size(s),
                                                               in_si<current>(amps), in_si<duration>(on), 300_s);
                EXPECT_TRUE(std::isfinite(h.conductor_peak.in_kelvin()));
                EXPECT_TRUE(std::isfinite(h.surface_peak.in_kelvin()));
                EXPECT_EQ(h.melts, h.conductor_peak > annealed_copper.melting);
            }
    EXPECT_TRUE(periodic_heating_of(stores_of_size(sizes[1]), surface_of_size(sizes[1]), 5_kA, 300_s, 300_s).melts);
    EXPECT_FALSE(periodic_heating_of(stores_of_size(sizes[1]), surface_of_size(sizes[1]), 300_A, 300_s, 300_s).melts);
}

TEST(PeriodicHeating, TraceGoesThroughThePeriod)
{
    const heating_segment programme[] = {{300_A, 180_s}, {0_A, 120_s}};
    const two_stores st = stores_of_size(sizes[1]);
    const cable_surface surface = surface_of_size(sizes[1]);
    const periodic_heating h = periodic_heating_of(st, surface, programme);
    const std::vector<temperature> trace = conductor_trace_of(st, surface, programme, 301);
    ASSERT_EQ(trace.size(), 301U);
    EXPECT_NEAR((trace.front() - trace.back()).value(), 0.0, 1e-8);
    EXPECT_NEAR((*std::max_element(trace.begin(), trace.end()) - h.conductor_peak).value(), 0.0, 0.01);
    EXPECT_NEAR((*std::min_element(trace.begin(), trace.end()) - h.conductor_lowest).value(), 0.0, 0.01);
    for (std::size_t i = 1; i <= 180; ++i) EXPECT_GT(trace[i], trace[i - 1]);
    for (std::size_t i = 181; i <= 300; ++i) EXPECT_LT(trace[i], trace[i - 1]);
    double mean = 0.0;
    for (std::size_t i = 0; i < 300; ++i) mean += (0.5 * (trace[i].in_kelvin() + trace[i + 1].in_kelvin())) / 300;
    EXPECT_NEAR(mean, h.conductor_mean.in_kelvin(), 0.01);
    EXPECT_THROW((void)conductor_trace_of(st, surface, programme, 1), out_of_range_error);
    EXPECT_THROW((void)conductor_trace_of(st, surface, programme, 10001), out_of_range_error);
    EXPECT_THROW((void)conductor_trace_of(st, surface, {}, 10), out_of_range_error);
}

TEST(PeriodicHeating, WithoutCurrentOnlyTheSunHeats)
{
    cable_surface surface = surface_of_size(sizes[1], 30_degC);
    const periodic_heating shade = periodic_heating_of(stores_of_size(sizes[1]), surface, 0_A, 180_s, 300_s);
    EXPECT_NEAR((shade.conductor_peak - 30_degC).value(), 0.0, 1e-9);
    surface.sun = in_si<heat_flux>(900);
    const periodic_heating sun = periodic_heating_of(stores_of_size(sizes[1]), surface, 0_A, 180_s, 300_s);
    EXPECT_NEAR_REL(surface_loss(surface, sun.surface_mean).value(), absorbed_sun(surface).value(), 1e-9);
    EXPECT_NEAR((sun.conductor_mean - sun.surface_mean).value(), 0.0, 1e-6);
    EXPECT_GT(sun.surface_mean, 38_degC);
}

TEST(CoveringHeat, Formulas)
{
    EXPECT_NEAR_REL(covering_conductance(flexible_rubber.thermal_conductivity, 10_mm, 16_mm).value(),
                    2 * pi * 0.2 / std::log(1.6), 1e-14);
    EXPECT_NEAR_REL(van_wormer_share(10_mm, 16_mm), 1 / (2 * std::log(1.6)) - 1 / (1.6 * 1.6 - 1), 1e-12);
    EXPECT_NEAR(van_wormer_share(10_mm, 10.0001 * 1_mm), 0.5, 1e-5);
    EXPECT_NEAR_REL(van_wormer_share(10_mm, 10.00501 * 1_mm), van_wormer_share(10_mm, 10.00499 * 1_mm),
                    1e-6);  // series meets formula
    EXPECT_NEAR_REL(covering_heat_capacity(flexible_rubber.heat_per_volume, 10_mm, 16_mm).value(),
                    2e6 * pi / 4 * (256 - 100) * 1e-6, 1e-12);
    for (double bad : {nan_value, infinite, 0.0, -1.0}) {
        EXPECT_THROW((void)covering_conductance(in_si<thermal_conductivity>(bad), 10_mm, 16_mm), error);
        EXPECT_THROW((void)covering_conductance(flexible_rubber.thermal_conductivity, in_si<length>(bad), 16_mm),
                     error);
        EXPECT_THROW((void)covering_conductance(flexible_rubber.thermal_conductivity, 10_mm, in_si<length>(bad)),
                     error);
        EXPECT_THROW((void)van_wormer_share(in_si<length>(bad), 16_mm), error);
        EXPECT_THROW((void)van_wormer_share(10_mm, in_si<length>(bad)), error);
        EXPECT_THROW((void)covering_heat_capacity(in_si<volumetric_heat>(bad), 10_mm, 16_mm), error);
        EXPECT_THROW((void)covering_heat_capacity(flexible_rubber.heat_per_volume, in_si<length>(bad), 16_mm), error);
    }
    EXPECT_THROW((void)covering_conductance(flexible_rubber.thermal_conductivity, 16_mm, 16_mm), out_of_range_error);
    EXPECT_THROW((void)van_wormer_share(16_mm, 10_mm), out_of_range_error);
    EXPECT_THROW((void)covering_heat_capacity(flexible_rubber.heat_per_volume, 16_mm, 16_mm), out_of_range_error);
}

TEST(CoveringHeat, ShortBurstsFindLessOfTheCovering)
{
    const auto share = [](duration burst) {
        return burst_share(10_mm, 16_mm, flexible_rubber.thermal_conductivity, flexible_rubber.heat_per_volume, burst);
    };
    double last = -1.0;
    for (double t = 0.01; t < 1e5; t *= 1.5) {
        const double here = share(in_si<duration>(t));
        EXPECT_GE(here, last) << t;
        last = here;
    }
    EXPECT_DOUBLE_EQ(share(1_h), van_wormer_share(10_mm, 16_mm));
    EXPECT_LT(share(10_ms), 0.01);
    EXPECT_EQ(share(1e-9 * 1_s), 0.0);
    // the series for a thick layer meets the one for a thin
    EXPECT_NEAR_REL(detail::stored_share_of_layer(0.02), detail::stored_share_of_layer(0.0199999), 1e-4);
    // a flat layer by finite differences: inner face warmed evenly, outer face closed
    constexpr std::size_t nodes = 200;
    std::vector<double> x(nodes, 0.0);
    const double h = 1.0 / nodes, dt = 0.4 * h * h;
    double t = 0.0;
    while (t < 0.3) {
        std::vector<double> next = x;
        t += dt;
        for (std::size_t i = 0; i < nodes; ++i) {
            const double before = i == 0 ? 2 * (t - dt) - x[0] : x[i - 1];
            const double after = i + 1 == nodes ? x[i] : x[i + 1];
            next[i] += dt / (h * h) * (before - 2 * x[i] + after);
        }
        x = next;
    }
    double stored = 0.0;
    for (double v : x) stored += v * h / t;
    EXPECT_NEAR_REL(detail::stored_share_of_layer(t), stored, 0.002);
    for (double bad : {nan_value, infinite, 0.0, -1.0}) {
        const auto k = flexible_rubber.thermal_conductivity;
        const auto c = flexible_rubber.heat_per_volume;
        EXPECT_THROW((void)share(in_si<duration>(bad)), error);
        EXPECT_THROW((void)burst_share(in_si<length>(bad), 16_mm, k, c, 1_s), error);
        EXPECT_THROW((void)burst_share(10_mm, in_si<length>(bad), k, c, 1_s), error);
        EXPECT_THROW((void)burst_share(10_mm, 16_mm, in_si<thermal_conductivity>(bad), c, 1_s), error);
        EXPECT_THROW((void)burst_share(10_mm, 16_mm, k, in_si<volumetric_heat>(bad), 1_s), error);
    }
}

TEST(PeriodicHeating, RefusesWhatCannotBe)
{
    const two_stores good = stores_of_size(sizes[1]);
    const cable_surface surface = surface_of_size(sizes[1]);
    EXPECT_THROW((void)periodic_heating_of(good, surface, std::span<const heating_segment>{}), out_of_range_error);
    EXPECT_THROW((void)periodic_heating_of(good, surface, std::vector<heating_segment>(17, {1_A, 1_s})),
                 out_of_range_error);
    EXPECT_THROW((void)periodic_heating_of(good, surface, 1_A, 10_s, 9_s), out_of_range_error);
    for (double bad : {nan_value, infinite, -1.0}) {
        EXPECT_THROW((void)periodic_heating_of(good, surface, in_si<current>(bad), 10_s, 20_s), error);
        EXPECT_THROW((void)periodic_heating_of(good, surface, 1_A, in_si<duration>(bad), 20_s), error);
        EXPECT_THROW((void)periodic_heating_of(good, surface, 1_A, 10_s, in_si<duration>(bad)), error);
        EXPECT_THROW((void)two_stores_of(annealed_copper, in_si<area>(bad), 0.1, flexible_rubber, 10_mm, 16_mm), error);
        EXPECT_THROW((void)two_stores_of(annealed_copper, 50_mm2, bad, flexible_rubber, 10_mm, 16_mm), error);
        const heating_segment programme[] = {{in_si<current>(bad), 1_s}};
        EXPECT_THROW((void)periodic_heating_of(good, surface, programme), error);
        const heating_segment length_of[] = {{1_A, in_si<duration>(bad)}};
        EXPECT_THROW((void)periodic_heating_of(good, surface, length_of), error);
        two_stores st = good;
        st.resistance = in_si<resistance_per_length>(bad);
        EXPECT_THROW((void)periodic_heating_of(st, surface, 1_A, 10_s, 20_s), error);
        st = good;
        st.inner = in_si<heat_capacity_per_length>(bad);
        EXPECT_THROW((void)periodic_heating_of(st, surface, 1_A, 10_s, 20_s), error);
        st = good;
        st.outer = in_si<heat_capacity_per_length>(bad);
        EXPECT_THROW((void)periodic_heating_of(st, surface, 1_A, 10_s, 20_s), error);
        st = good;
        st.between = in_si<thermal_conductivity>(bad);
        EXPECT_THROW((void)periodic_heating_of(st, surface, 1_A, 10_s, 20_s), error);
    }
    two_stores st = good;
    st.temperature_coefficient = in_si<per_kelvin>(nan_value);
    EXPECT_THROW((void)periodic_heating_of(st, surface, 1_A, 10_s, 20_s), not_finite_error);
}
