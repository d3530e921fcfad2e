// The rise of a current through coiled leads, also against a circuit simulator: tests/oracle/current_rise.
#include <weldloop/core/literals.hpp>
#include <weldloop/law/current_rise.hpp>
#include <weldloop/law/inductance.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <limits>
#include <string>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

// source: ngspice, transient of a step on resistance and the inductances of leads laid out and of a coil, turn by turn
// with their couplings (run.sh makes them from Neumann's integral by itself)
TEST(CurrentRise, AgainstACircuitSimulatorInTime)
{
    std::ifstream in(std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "current_rise" /
                         "outputs.csv",
                     std::ios::binary);
    const reference_table table("outputs.csv", std::string{std::istreambuf_iterator<char>(in), {}});
    int rows = 0;
    double worst = 0.0;
    for (const auto& row : table.rows()) {
        const length radius = in_si<length>(row.number("radius_m"));
        const inductance coil = coil_inductance({.turns = static_cast<int>(row.number("turns")),
                                                 .diameter = in_si<length>(row.number("diameter_m")),
                                                 .pitch = in_si<length>(row.number("pitch_m"))},
                                                radius);
        const inductance laid =
            pair_inductance(in_si<length>(row.number("apart_m")), radius, radius) * in_si<length>(row.number("laid_m"));
        const switched_circuit c{.driving = in_si<voltage>(row.number("volts")),
                                 .resistance = in_si<resistance>(row.number("ohm")),
                                 .inductance = coil + laid};
        const double ours = current_after(c, in_si<duration>(row.number("after_s"))).value();
        EXPECT_NEAR_REL(ours, row.number("amps"), 0.01) << row.where();
        worst = std::max(worst, std::fabs(ours / row.number("amps") - 1.0));
        ++rows;
    }
    EXPECT_EQ(rows, 18);
    std::cout << "largest error of the current: " << 100.0 * worst << " %\n";
}

// source: ngspice, a current ramp through the same, and an edge from a base current against an arc's level voltage and
// slope (0.02 V/A); tests/oracle/current_ramp
TEST(CurrentRise, RampsAndEdgesAgainstACircuitSimulator)
{
    std::ifstream in(std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "current_ramp" /
                         "outputs.csv",
                     std::ios::binary);
    const reference_table table("outputs.csv", std::string{std::istreambuf_iterator<char>(in), {}});
    int ramps = 0, edges = 0;
    double worst = 0.0;
    for (const auto& row : table.rows()) {
        const length radius = in_si<length>(row.number("radius_m"));
        const inductance leads =
            coil_inductance({.turns = static_cast<int>(row.number("turns")),
                             .diameter = in_si<length>(row.number("diameter_m")),
                             .pitch = in_si<length>(row.number("pitch_m"))},
                            radius) +
            pair_inductance(in_si<length>(row.number("apart_m")), radius, radius) * in_si<length>(row.number("laid_m"));
        const double ohm = row.number("ohm"), first = row.number("first"), second = row.number("second"),
                     third = row.number("third");
        if (row.text("what") == "ramp") {
            ++ramps;
            const double place = row.number("at"), amps = third + std::min(1.0, place) * (second - third);
            const current_rate rate = in_si<current_rate>(place < 1.0 ? first : 0.0);
            const voltage given = in_si<voltage>(row.number("value"));
            // what is left of these volts is the resistance's, and what is missing the ramp's
            const voltage left = left_while_rising(given, leads, rate);
            EXPECT_NEAR_REL(left.value(), ohm * amps, 0.01) << row.where();
            if (place > 1.0) continue;
            const double inductive = given.value() - ohm * amps;
            const duration lasts = in_si<duration>((second - third) / first);
            const double ours = ramp_voltage(leads, in_si<current>(second - third), lasts).value();
            EXPECT_NEAR_REL(ours, inductive, 0.01) << row.where();
            worst = std::max(worst, std::fabs(ours / inductive - 1.0));
        } else {
            ++edges;
            const auto spare = [&](double i) { return first - second - (ohm + 0.02) * i; };
            const auto takes = rise_time(leads, in_si<current>(third), in_si<current>(third + 0.95 * 200.0), spare);
            ASSERT_TRUE(takes) << row.where();
            EXPECT_NEAR_REL(takes->value(), row.number("value"), 0.01) << row.where();
            worst = std::max(worst, std::fabs(takes->value() / row.number("value") - 1.0));
        }
    }
    EXPECT_EQ(ramps, 9);
    EXPECT_EQ(edges, 3);
    std::cout << "largest error of inductive volts and edges: " << 100.0 * worst << " %\n";
}

// 15 uH at 500 A/ms takes 7.5 V: the definition of inductance
TEST(CurrentRise, WhatInductanceTakes)
{
    const current_rate rise = 500_A / 1_ms;
    const inductance l = in_si<inductance>(15e-6);
    EXPECT_NEAR_REL((27_V - left_while_rising(27_V, l, rise)).value(), 7.5, 1e-12);
    EXPECT_LT(left_while_rising(5_V, l, rise), 0_V);
    EXPECT_NEAR_REL(fastest_rise(7.5_V, l).value(), 5e5, 1e-12);
}

// The time of a rise is the inverse of the closed form, and for a curved output that of a finer sum.
TEST(CurrentRise, HowLongARiseTakes)
{
    const inductance l = in_si<inductance>(40e-6);
    const auto ohmic = [](double i) { return 20.0 - 0.02 * i; };
    for (const double to : {100.5, 300.0, 950.0}) {
        const auto takes = rise_time(l, 100_A, in_si<current>(to), ohmic);
        ASSERT_TRUE(takes);
        EXPECT_NEAR_REL(takes->value(), 2e-3 * std::log(900.0 / (1000.0 - to)), 1e-9) << to;
    }
    EXPECT_NEAR_REL(rise_time(l, 0_A, 200_A, [](double) { return 16.0; })->value(), 40e-6 * 200.0 / 16.0, 1e-12);
    const auto bent = [](double i) { return 60.0 * std::sqrt(1.0 - i * i / 9e4) - 15.0; };  // ends at 290 A
    double sum = 0.0;
    constexpr int parts = 200000;
    for (int k = 0; k < parts; ++k) sum += 40e-6 * (250.0 / parts) / bent(250.0 * (k + 0.5) / parts);
    EXPECT_NEAR_REL(rise_time(l, 0_A, 250_A, bent)->value(), sum, 1e-4);
    EXPECT_FALSE(rise_time(l, 0_A, 295_A, bent));
    EXPECT_FALSE(rise_time(l, 100_A, 1000_A, ohmic));
    EXPECT_EQ(*rise_time(in_si<inductance>(0.0), 0_A, 200_A, ohmic), 0_s);
    EXPECT_EQ(*rise_time(l, 200_A, 200_A, ohmic), 0_s);
    EXPECT_THROW(static_cast<void>(rise_time(l, 200_A, 100_A, ohmic)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(rise_time(in_si<inductance>(-1e-6), 0_A, 100_A, ohmic)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(rise_time(l, 0_A, 100_A, [](double) { return std::nan(""); })), not_finite_error);
}

TEST(CurrentRise, Limits)
{
    const switched_circuit c{
        .driving = 20_V, .resistance = 20_mohm, .inductance = in_si<inductance>(40e-6), .before = 100_A};
    EXPECT_EQ(current_after(c, 0_s), 100_A);
    EXPECT_NEAR(current_after(c, 1_s).value(), 1000.0, 1e-9);
    EXPECT_NEAR_REL(current_after(c, 2_ms).value(), 1000.0 - 900.0 * std::exp(-1.0), 1e-12);
    EXPECT_EQ(current_after({.driving = 20_V, .resistance = 20_mohm, .inductance = {}}, 0_s), 1000_A);
    EXPECT_THROW(static_cast<void>(current_after(c, in_si<duration>(-1.0))), out_of_range_error);
    EXPECT_THROW(static_cast<void>(current_after({.driving = 20_V, .resistance = {}, .inductance = {}}, 1_s)),
                 out_of_range_error);
    EXPECT_THROW(static_cast<void>(fastest_rise(20_V, in_si<inductance>(0.0))), out_of_range_error);
    EXPECT_THROW(static_cast<void>(left_while_rising(20_V, c.inductance,
                                                     in_si<current_rate>(std::numeric_limits<double>::quiet_NaN()))),
                 out_of_range_error);
}

}  // namespace
