#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/waveform.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double pi = std::numbers::pi;

}  // namespace

TEST(Waveform, DirectCurrentIsItself)
{
    for (double amps : {220.0, 0.0, -140.0}) {
        const waveform w = waveform::dc(in_si<current>(amps));
        EXPECT_EQ(w.rms().value(), std::fabs(amps));
        EXPECT_EQ(w.mean_absolute().value(), std::fabs(amps));
        EXPECT_EQ(w.mean().value(), amps);
        EXPECT_EQ(w.peak().value(), std::fabs(amps));
        EXPECT_EQ(w.harmonic(1).value(), 0.0);
        EXPECT_EQ(w.frequency().value(), 0.0);
        EXPECT_TRUE(w.is_dc());
    }
}

TEST(Waveform, SineByItsClosedForms)
{
    const waveform w = waveform::sine(200_A, 50_Hz);
    EXPECT_EQ(w.rms(), 200_A);
    EXPECT_NEAR_REL(w.peak().value(), 200 * std::sqrt(2.0), 1e-15);
    EXPECT_NEAR_REL(w.mean_absolute().value(), 200 * 2 * std::sqrt(2.0) / pi, 1e-15);
    EXPECT_EQ(w.mean().value(), 0.0);
    EXPECT_EQ(w.harmonic(1), w.peak());
    EXPECT_EQ(w.harmonic(2).value(), 0.0);
    EXPECT_NEAR_REL(w.frequency().value(), 50, 1e-15);
    EXPECT_EQ(w.shortest_edge(), w.period());
}

TEST(Waveform, PulseWithSteps)
{
    const waveform w = waveform::pulse({.base = 60_A, .peak = 380_A, .base_time = 6_ms, .peak_time = 2_ms});
    EXPECT_NEAR_REL(w.rms().value(), std::sqrt((60.0 * 60 * 6 + 380.0 * 380 * 2) / 8), 1e-14);
    EXPECT_NEAR_REL(w.mean().value(), (60.0 * 6 + 380.0 * 2) / 8, 1e-14);
    EXPECT_EQ(w.mean(), w.mean_absolute());
    EXPECT_EQ(w.peak(), 380_A);
    EXPECT_NEAR_REL(w.frequency().value(), 125, 1e-14);
    EXPECT_EQ(w.shortest_edge().value(), 0.0);
    // a rectangle of share d: 2 A sin(pi n d)/(pi n)
    for (int n = 1; n < 60; ++n)
        EXPECT_NEAR(w.harmonic(n).value(), std::fabs(2 * 320 * std::sin(pi * n * 0.25) / (pi * n)), 1e-11) << n;
}

TEST(Waveform, PulseWithEqualCurrentsIsDirectCurrent)
{
    const waveform w = waveform::pulse({.base = 100_A, .peak = 100_A, .base_time = 1_ms, .peak_time = 1_ms});
    EXPECT_NEAR_REL(w.rms().value(), 100, 1e-15);
    EXPECT_NEAR(w.harmonic(1).value(), 0.0, 1e-12);
    EXPECT_EQ(w.shortest_edge(), w.period());
    const waveform nothing = waveform::pulse({.base = 0_A, .peak = 0_A, .base_time = 1_ms, .peak_time = 1_ms});
    EXPECT_EQ(nothing.rms().value(), 0.0);
}

TEST(Waveform, RampsAreTrapezia)
{
    // symmetrical trapezium from 0 to A: plateau share q, each ramp share r; rms^2 = A^2 (q + 2r/3)
    const waveform w =
        waveform::pulse({.base = 0_A, .peak = 300_A, .base_time = 4_ms, .peak_time = 3_ms, .rise = 1_ms, .fall = 1_ms});
    const double T = 9;
    EXPECT_NEAR_REL(w.rms().value(), 300 * std::sqrt((3 + 2.0 / 3) / T), 1e-14);
    EXPECT_NEAR_REL(w.mean().value(), 300 * 4 / T, 1e-14);
    EXPECT_NEAR_REL(w.shortest_edge().value(), 1e-3, 1e-15);
    // a trapezium is a rectangle averaged over the ramp: sinc times sinc
    for (int n = 1; n < 60; ++n) {
        const double width = pi * n * 4 / T, ramp = pi * n * 1 / T;
        EXPECT_NEAR(w.harmonic(n).value(), std::fabs(2 * 300 * 4 / T * std::sin(width) / width * std::sin(ramp) / ramp),
                    1e-11)
            << n;
    }
}

TEST(Waveform, SquareWaveWithBalance)
{
    const waveform w =
        waveform::square_ac({.positive = 120_A, .negative = 240_A, .frequency = 120_Hz, .positive_share = 0.3});
    EXPECT_NEAR_REL(w.rms().value(), std::sqrt(0.3 * 120 * 120 + 0.7 * 240 * 240), 1e-14);
    EXPECT_NEAR_REL(w.mean_absolute().value(), 0.3 * 120 + 0.7 * 240, 1e-14);
    EXPECT_NEAR_REL(w.mean().value(), 0.3 * 120 - 0.7 * 240, 1e-13);
    EXPECT_EQ(w.peak(), 240_A);
    const waveform even = waveform::square_ac({.positive = 200_A, .negative = 200_A, .frequency = 60_Hz});
    EXPECT_NEAR(even.mean().value(), 0.0, 1e-12);
    for (int n = 1; n < 40; ++n) EXPECT_NEAR(even.harmonic(n).value(), n % 2 ? 4 * 200 / (pi * n) : 0.0, 1e-11) << n;
}

TEST(Waveform, ReversalTakesATriangleOutOfEachHalf)
{
    const waveform w =
        waveform::square_ac({.positive = 200_A, .negative = 200_A, .frequency = 100_Hz, .reversal = 1_ms});
    EXPECT_NEAR_REL(w.rms().value(), 200 * std::sqrt(1 - 0.2 * 2.0 / 3), 1e-14);
    EXPECT_NEAR_REL(w.mean_absolute().value(), 200 * (1 - 0.2 * 0.5), 1e-14);
    EXPECT_EQ(w.peak(), 200_A);
    EXPECT_NEAR_REL(w.shortest_edge().value(), 1e-3, 1e-15);
}

// mean^2 and half the squares of the amplitudes add up to rms^2; means and peak keep their order
TEST(Waveform, HarmonicsHoldAllOfTheHeat)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int n = 0; n < 60; ++n) {
        // no steps, so that the sum converges fast
        std::vector<current_piece> pieces;
        double amps = 800 * unit(random) - 400;
        const double first = amps;
        const int count = 1 + static_cast<int>(6 * unit(random));
        for (int i = 0; i < count; ++i) {
            const double next = i + 1 == count ? first : 800 * unit(random) - 400;
            pieces.push_back(
                {in_si<duration>(1e-3 * (0.1 + unit(random))), in_si<current>(amps), in_si<current>(next)});
            amps = next;
        }
        const waveform w = waveform::of_pieces(pieces);
        double sum = w.mean().value() * w.mean().value();
        for (int k = 1; k <= 2000; ++k) sum += 0.5 * w.harmonic(k).value() * w.harmonic(k).value();
        EXPECT_NEAR_REL(std::sqrt(sum), w.rms().value(), 1e-6);
        EXPECT_LE(std::fabs(w.mean().value()), w.mean_absolute().value() * (1 + 1e-14));
        EXPECT_LE(w.mean_absolute().value(), w.rms().value() * (1 + 1e-14));
        EXPECT_LE(w.rms().value(), w.peak().value() * (1 + 1e-14));
    }
}

TEST(Waveform, ScalesWithCurrentAndShiftsWithNothing)
{
    const waveform one = waveform::of_pieces({{1_ms, 10_A, 50_A}, {2_ms, 50_A, -20_A}, {1_ms, 0_A, 10_A}});
    const waveform shifted = waveform::of_pieces({{2_ms, 50_A, -20_A}, {1_ms, 0_A, 10_A}, {1_ms, 10_A, 50_A}});
    const waveform doubled = waveform::of_pieces({{2_ms, 20_A, 100_A}, {4_ms, 100_A, -40_A}, {2_ms, 0_A, 20_A}});
    EXPECT_NEAR_REL(shifted.rms().value(), one.rms().value(), 1e-14);
    EXPECT_NEAR_REL(doubled.rms().value(), 2 * one.rms().value(), 1e-14);
    EXPECT_NEAR_REL(doubled.mean_absolute().value(), 2 * one.mean_absolute().value(), 1e-14);
    for (int n = 1; n < 20; ++n) {
        EXPECT_NEAR(shifted.harmonic(n).value(), one.harmonic(n).value(), 1e-12);
        EXPECT_NEAR(doubled.harmonic(n).value(), 2 * one.harmonic(n).value(), 1e-12);
    }
    const waveform huge = waveform::of_pieces({{1_ms, in_si<current>(1e200), in_si<current>(-1e200)}});
    EXPECT_NEAR_REL(huge.rms().value(), 1e200 / std::sqrt(3.0), 1e-14);
}

TEST(Waveform, RefusesWhatCannotBe)
{
    const pulse_train pulse{.base = 50_A, .peak = 300_A, .base_time = 5_ms, .peak_time = 2_ms};
    const square_wave square{.positive = 100_A, .negative = 200_A, .frequency = 100_Hz};
    const auto pulse_with = [&](auto member, auto value) {
        pulse_train p = pulse;
        p.*member = value;
        return waveform::pulse(p);
    };
    const auto square_with = [&](auto member, auto value) {
        square_wave w = square;
        w.*member = value;
        return waveform::square_ac(w);
    };
    for (double bad : {nan_value, infinite}) {
        EXPECT_THROW((void)waveform::dc(in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)waveform::sine(in_si<current>(bad), 50_Hz), not_finite_error);
        EXPECT_THROW((void)waveform::sine(1_A, in_si<frequency>(bad)), not_finite_error);
        EXPECT_THROW((void)waveform::of_pieces({{in_si<duration>(bad), 1_A, 1_A}}), not_finite_error);
        EXPECT_THROW((void)waveform::of_pieces({{1_s, in_si<current>(bad), 1_A}}), not_finite_error);
        EXPECT_THROW((void)waveform::of_pieces({{1_s, 1_A, in_si<current>(bad)}}), not_finite_error);
        EXPECT_THROW((void)pulse_with(&pulse_train::base, in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)pulse_with(&pulse_train::peak, in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)pulse_with(&pulse_train::base_time, in_si<duration>(bad)), not_finite_error);
        EXPECT_THROW((void)pulse_with(&pulse_train::peak_time, in_si<duration>(bad)), not_finite_error);
        EXPECT_THROW((void)pulse_with(&pulse_train::rise, in_si<duration>(bad)), not_finite_error);
        EXPECT_THROW((void)pulse_with(&pulse_train::fall, in_si<duration>(bad)), not_finite_error);
        EXPECT_THROW((void)square_with(&square_wave::positive, in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)square_with(&square_wave::negative, in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)square_with(&square_wave::frequency, in_si<frequency>(bad)), not_finite_error);
        EXPECT_THROW((void)square_with(&square_wave::reversal, in_si<duration>(bad)), not_finite_error);
        EXPECT_THROW((void)square_with(&square_wave::positive_share, bad), not_finite_error);
    }
    EXPECT_THROW((void)waveform::of_pieces({}), out_of_range_error);
    EXPECT_THROW((void)waveform::of_pieces({{0_s, 1_A, 1_A}}), out_of_range_error);
    EXPECT_THROW((void)waveform::of_pieces({{in_si<duration>(1e308), 1_A, 1_A}, {in_si<duration>(1e308), 1_A, 1_A}}),
                 not_finite_error);
    EXPECT_THROW((void)waveform::sine(-1.0 * 1_A, 50_Hz), out_of_range_error);
    EXPECT_THROW((void)waveform::sine(1_A, 0_Hz), out_of_range_error);
    EXPECT_THROW((void)waveform::sine(1_A, in_si<frequency>(1e-320)), not_finite_error);
    EXPECT_THROW((void)waveform::sine(in_si<current>(1.7e308), 50_Hz), not_finite_error);
    EXPECT_THROW((void)pulse_with(&pulse_train::peak, 40_A), out_of_range_error);
    EXPECT_THROW((void)pulse_with(&pulse_train::base_time, 0_s), out_of_range_error);
    EXPECT_THROW((void)pulse_with(&pulse_train::peak_time, 0_s), out_of_range_error);
    EXPECT_THROW((void)pulse_with(&pulse_train::rise, -1.0 * 1_s), out_of_range_error);
    EXPECT_THROW((void)square_with(&square_wave::positive, 0_A), out_of_range_error);
    EXPECT_THROW((void)square_with(&square_wave::negative, 0_A), out_of_range_error);
    EXPECT_THROW((void)square_with(&square_wave::frequency, 0_Hz), out_of_range_error);
    EXPECT_THROW((void)square_with(&square_wave::positive_share, 0.0), out_of_range_error);
    EXPECT_THROW((void)square_with(&square_wave::positive_share, 1.0), out_of_range_error);
    EXPECT_THROW((void)square_with(&square_wave::reversal, 5_ms), out_of_range_error);
    const waveform w = waveform::square_ac(square);
    EXPECT_THROW((void)w.harmonic(0), out_of_range_error);
    EXPECT_THROW((void)w.harmonic(waveform::most_harmonics + 1), out_of_range_error);
}
