#include <weldloop/core/literals.hpp>
#include <weldloop/law/fin.hpp>

#include <cmath>
#include <limits>
#include <random>
#include <utility>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

constexpr double pi = 3.14159265358979323846;

heated_fin fin(double axial, double loss, double heating, double length_m)
{
    return {thermal_conductivity::from_value(1.0) * area::from_value(axial), in_si<thermal_conductivity>(loss),
            in_si<power_per_length>(heating), in_si<length>(length_m)};
}

temperature_difference k(double v)
{
    return in_si<temperature_difference>(v);
}

// source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 6th-7th edition, example 3.9: rod of 5 mm, base
// 100 degC, air 25 degC, h = 100 W/(m2 K); copper k = 398 gives 8.3 W (statement read in a public course notebook),
// aluminium alloy k = 180 gives 5.6 W (answer from memory). Printed to two digits.
TEST(HeatedFin, MeetsTheLongRodExample)
{
    const double d = 0.005, perimeter_h = 100.0 * pi * d, section = pi / 4 * d * d;
    const heated_fin copper = fin(398 * section, perimeter_h, 0.0, 3.0);
    EXPECT_NEAR(copper.into_end(k(75), k(0)).value(), 8.3, 0.05);
    EXPECT_NEAR(1.0 / copper.decay_length().value(), 14.18, 0.01);  // printed with the example
    const heated_fin aluminium = fin(180 * section, perimeter_h, 0.0, 3.0);
    EXPECT_NEAR(aluminium.into_end(k(75), k(0)).value(), 5.6, 0.05);
}

// The equation solved again by finite differences.
std::vector<double> profile(double axial, double loss, double heating, double length_m, double one, double other,
                            int cells)
{
    const double dx = length_m / cells, a = axial / (dx * dx);
    const auto n = static_cast<std::size_t>(cells + 1);
    std::vector<double> diagonal(n, 2 * a + loss), right(n, heating), rise(n);
    rise.front() = one;
    rise.back() = other;
    right[1] += a * one;
    right[n - 2] += a * other;
    for (std::size_t i = 2; i + 1 < n; ++i) {
        const double factor = a / diagonal[i - 1];
        diagonal[i] -= factor * a;
        right[i] += factor * right[i - 1];
    }
    for (std::size_t i = n - 2; i >= 1; --i) rise[i] = (right[i] + (i + 2 < n ? a * rise[i + 1] : 0.0)) / diagonal[i];
    return rise;
}

TEST(HeatedFin, AgreesWithFiniteDifferences)
{
    std::mt19937 random(7);
    std::uniform_real_distribution<double> end(-20, 120), heat(0, 60), loss(0.2, 2.0), axial(0.004, 0.03),
        length_m(0.1, 4.0);
    for (int i = 0; i < 60; ++i) {
        const double a = axial(random), g = loss(random), q = heat(random), l = length_m(random), one = end(random),
                     other = end(random);
        const heated_fin f = fin(a, g, q, l);
        const int cells = 4000;
        const std::vector<double> rise = profile(a, g, q, l, one, other, cells);
        double mean = 0.0, highest = rise.front();
        for (std::size_t j = 0; j < rise.size(); ++j) {
            mean += rise[j] * (j == 0 || j + 1 == rise.size() ? 0.5 : 1.0) / cells;
            highest = std::fmax(highest, rise[j]);
        }
        EXPECT_NEAR(f.mean_rise(k(one), k(other)).value(), mean, 0.01);
        EXPECT_NEAR(f.highest_rise(k(one), k(other)).value(), highest, 0.01);
        // heat into both ends and heat made leave along the surface
        const double into = (f.into_end(k(one), k(other)) + f.into_end(k(other), k(one))).value();
        EXPECT_NEAR(into + q * l, g * l * f.mean_rise(k(one), k(other)).value(),
                    1e-9 * (std::fabs(into) + q * l + 1.0));
    }
}

TEST(HeatedFin, HasItsLimits)
{
    const heated_fin f = fin(0.02, 0.5, 25.0, 50.0);  // 250 decay lengths: the ends know nothing of each other
    EXPECT_NEAR(f.far_rise().value(), 50.0, 1e-12);
    EXPECT_LT(f.other_end().value(), 1e-100);
    EXPECT_NEAR_REL(f.own_end().value(), std::sqrt(0.02 * 0.5), 1e-12);
    const heated_fin bar = fin(0.02, 1e-9, 0.0, 0.1);  // no loss: a plain conductor k A/L
    EXPECT_NEAR_REL(bar.own_end().value(), 0.2, 1e-6);
    EXPECT_NEAR_REL(bar.other_end().value(), 0.2, 1e-6);
}

TEST(HeatedFin, RefusesWhatCannotBe)
{
    EXPECT_THROW(fin(0.0, 1, 1, 1), out_of_range_error);
    EXPECT_THROW(fin(1, -1, 1, 1), out_of_range_error);
    EXPECT_THROW(fin(1, 1, std::nan(""), 1), not_finite_error);
    EXPECT_THROW(fin(1, 1, 1, std::numeric_limits<double>::infinity()), not_finite_error);
    const heated_fin good = fin(1, 1, 1, 1);
    EXPECT_THROW((void)good.into_end(k(std::nan("")), k(0)), not_finite_error);
    EXPECT_THROW((void)good.into_end(k(0), k(std::nan(""))), not_finite_error);
    EXPECT_THROW((void)good.into_end(k(0), k(std::numeric_limits<double>::infinity())), not_finite_error);
    EXPECT_THROW((void)good.mean_rise(k(0), k(std::nan(""))), not_finite_error);
    EXPECT_THROW((void)good.highest_rise(k(0), k(std::numeric_limits<double>::infinity())), not_finite_error);
}

// The disc round a spot against the plate solved outwards by finite differences.
TEST(DiscFin, AgreesWithFiniteDifferences)
{
    const double conductivity = 50, thickness = 0.010, h = 12, r0 = 0.010, outer = 2.5;
    const int cells = 40000;
    const double dr = (outer - r0) / cells;
    // flux form, from the rim inwards: conductance seen looking outwards from each ring
    double outwards = 0.0;
    for (int i = cells - 1; i >= 0; --i) {
        const double middle = r0 + (i + 0.5) * dr;
        const double sideways = 2 * h * 2 * pi * middle * dr;
        const double along = conductivity * thickness * 2 * pi * middle / dr;
        outwards =
            1.0 / (0.5 / along + 1.0 / (sideways + 1.0 / (0.5 / along + (outwards > 0 ? 1.0 / outwards : 1e300))));
    }
    const auto g = disc_fin_conductance(in_si<thermal_conductivity>(conductivity), in_si<length>(thickness),
                                        in_si<length>(r0), in_si<heat_transfer_coefficient>(h));
    EXPECT_NEAR_REL(g.value(), outwards, 0.002);
}

// x K1(x) / K0(x) for small x is 1 / (-ln(x/2) - gamma) to x^2 ln x. source: Abramowitz and Stegun, Handbook of
// Mathematical Functions, 9.6.9 and 9.6.13; gamma 0.5772156649015329 and ln 2 from its table 1.1. By hand:
// ln 2 - gamma + 9 ln 10 = 20.839197352604823 for x = 1e-9, with 7 ln 10 16.234027166616730 for 1e-7.
TEST(DiscFin, MeetsTheLimitOfSmallSpots)
{
    const double k_t = 50.0 * 0.01;  // W/K
    for (const auto& [x, logarithm] : {std::pair(1e-9, 20.839197352604823), std::pair(1e-7, 16.234027166616730)}) {
        const double h = 0.5 * k_t;  // so that m is 1/m and x the radius in metres
        const auto g = disc_fin_conductance(in_si<thermal_conductivity>(50.0), 10_mm, in_si<length>(x),
                                            in_si<heat_transfer_coefficient>(h));
        EXPECT_NEAR_REL(g.value(), 2.0 * pi * k_t / logarithm, 1e-9) << x;
    }
    // a spot that no double tells from a point has no conductance of its own
    EXPECT_THROW((void)disc_fin_conductance(in_si<thermal_conductivity>(1.0), 1_mm, in_si<length>(1e-320),
                                            in_si<heat_transfer_coefficient>(1e-3)),
                 out_of_range_error);
}

// source: Abramowitz and Stegun 9.6.24, K_n(x) = integral from 0 of exp(-x cosh t) cosh(n t) dt, here by Simpson's
// rule.
double bessel_k_by_integral(int n, double x)
{
    constexpr int steps = 4000;
    constexpr double longest = 10.0;
    const double dt = longest / steps;
    double sum = 0.0;
    for (int i = 0; i <= steps; ++i) {
        const double t = i * dt;
        sum += (i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0) * std::exp(-x * std::cosh(t)) * std::cosh(n * t);
    }
    return sum * dt / 3.0;
}

TEST(DiscFin, MeetsTheRatioOfBesselFunctions)
{
    const double k_t = 50.0 * 0.01;  // W/K
    for (const double x : {0.1, 1.0, 6.0, 20.0, 100.0}) {
        const auto g = disc_fin_conductance(in_si<thermal_conductivity>(50.0), 10_mm, in_si<length>(x),
                                            in_si<heat_transfer_coefficient>(0.5 * k_t));
        const double ratio = bessel_k_by_integral(1, x) / bessel_k_by_integral(0, x);
        EXPECT_NEAR_REL(g.value(), 2.0 * pi * k_t * x * ratio, 1e-8) << x;
    }
}

TEST(DiscFin, StaysFiniteForHugeSpots)
{
    const auto g = disc_fin_conductance(in_si<thermal_conductivity>(1.0), 1_mm, in_si<length>(100.0),
                                        in_si<heat_transfer_coefficient>(10));
    EXPECT_TRUE(std::isfinite(g.value()));
    EXPECT_THROW(
        (void)disc_fin_conductance(in_si<thermal_conductivity>(1.0), 0_mm, 1_mm, in_si<heat_transfer_coefficient>(10)),
        out_of_range_error);
}

}  // namespace
