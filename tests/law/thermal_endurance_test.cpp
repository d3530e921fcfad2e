// Arrhenius ageing. No worked example of IEC 60216 could be read; a public one (three points that are said to give
// 105 degC) disagrees with its own points by 40 K, and is checked as such. The rest are identities of the definitions.
#include <weldloop/core/literals.hpp>
#include <weldloop/law/thermal_endurance.hpp>

#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

const thermal_endurance rubber_like{85_degC, in_si<temperature_difference>(10.0)};

double hours(duration t)
{
    return t.value() / 3600.0;
}

// source: IEC 60216-1, definitions (from memory): 20 000 h at the index, half of it one interval above
TEST(ThermalEndurance, IsWhatIndexAndIntervalSay)
{
    for (const double interval : {3.0, 6.0, 10.0, 14.0})
        for (const double index : {60.0, 85.0, 120.0, 180.0}) {
            const thermal_endurance e{temperature::celsius(index), in_si<temperature_difference>(interval)};
            EXPECT_NEAR_REL(hours(endurance_time(e, e.index)), 20000.0, 1e-12);
            EXPECT_NEAR_REL(hours(endurance_time(e, e.index + e.halving_interval)), 10000.0, 1e-12);
        }
}

// Two halvings lie at equal steps of 1/T, the second a little more than an interval above the first.
TEST(ThermalEndurance, TwoHalvings)
{
    const double ti = 85.0 + 273.15, first = 1.0 / ti - 1.0 / (ti + 10.0);
    const temperature second = temperature::kelvin(1.0 / (1.0 / ti - 2.0 * first));
    EXPECT_NEAR_REL(hours(endurance_time(rubber_like, second)), 5000.0, 1e-12);
    EXPECT_GT(second, 105_degC);
    EXPECT_LT(second, 105.7_degC);
    const temperature doubled = temperature::kelvin(1.0 / (1.0 / ti + first));
    EXPECT_NEAR_REL(hours(endurance_time(rubber_like, doubled)), 40000.0, 1e-12);
}

// source: the gas constant, 8.314 J/(mol K) (CODATA 2018); B R is the activation energy of two times at two
// temperatures
TEST(ThermalEndurance, SlopeIsAnActivationEnergy)
{
    const double energy = endurance_slope(rubber_like).value() * 8.314462618;
    EXPECT_NEAR(energy, 8.314462618 * std::log(2.0) / (1.0 / 358.15 - 1.0 / 368.15), 1e-6);
    EXPECT_NEAR(energy / 1000.0, 76.0, 0.1);
}

// source: a public page on IEC 60216-3 prints 480 h at 220, 1800 h at 200 and 7200 h at 180 degC. Through its outer
// points the line gives 1824 h at 200 degC; and an index of 166 degC, where the page prints 105 degC from constants
// that give 58 h at 220 degC: its points agree with the law, its result does not agree with its points.
TEST(ThermalEndurance, ThroughThePointsOfAPublicExample)
{
    const double slope = std::log(7200.0 / 480.0) / (1.0 / 453.15 - 1.0 / 493.15);
    const double index = 1.0 / (1.0 / 453.15 - std::log(20000.0 / 7200.0) / slope * -1.0);
    const double interval = index * index * std::log(2.0) / (slope - index * std::log(2.0));
    const thermal_endurance e{temperature::kelvin(index), in_si<temperature_difference>(interval)};
    EXPECT_NEAR_REL(hours(endurance_time(e, 180_degC)), 7200.0, 1e-9);
    EXPECT_NEAR_REL(hours(endurance_time(e, 220_degC)), 480.0, 1e-9);
    EXPECT_NEAR_REL(hours(endurance_time(e, 200_degC)), 1800.0, 0.03);
    EXPECT_NEAR(e.index.in_celsius(), 166.0, 1.0);
}

TEST(ThermalEndurance, EquivalentTemperatureOfACourse)
{
    const std::array even{heated_time{70_degC, 3_h}, heated_time{70_degC, 5_h}};
    EXPECT_NEAR(equivalent_temperature(rubber_like, even).in_celsius(), 70.0, 1e-9);
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> degC(20.0, 130.0), h(0.1, 1000.0);
    for (int n = 0; n < 300; ++n) {
        std::vector<heated_time> course;
        double coldest = 1e9, hottest = -1e9, mean = 0.0, whole = 0.0;
        for (int i = 0; i < 4; ++i) {
            const double at = degC(random), time = h(random);
            course.push_back({temperature::celsius(at), in_si<duration>(3600.0 * time)});
            coldest = std::min(coldest, at);
            hottest = std::max(hottest, at);
            mean += at * time;
            whole += time;
        }
        const temperature same = equivalent_temperature(rubber_like, course);
        EXPECT_GE(same.in_celsius(), mean / whole - 1e-9) << "hot hours count more than they last";
        EXPECT_LE(same.in_celsius(), hottest + 1e-9);
        EXPECT_GE(same.in_celsius(), coldest - 1e-9);
        const std::array steady{heated_time{same, in_si<duration>(3600.0 * whole)}};
        EXPECT_NEAR_REL(endurance_used(rubber_like, steady), endurance_used(rubber_like, course), 1e-9);
    }
}

TEST(ThermalEndurance, ShareIsASum)
{
    const std::array first{heated_time{85_degC, 5000_h}};
    const std::array both{heated_time{85_degC, 5000_h}, heated_time{95_degC, 5000_h}};
    EXPECT_NEAR_REL(endurance_used(rubber_like, first), 0.25, 1e-12);
    EXPECT_NEAR_REL(endurance_used(rubber_like, both), 0.75, 1e-12);
    EXPECT_EQ(endurance_used(rubber_like, {}), 0.0);
}

TEST(ThermalEndurance, RefusesWhatCannotBe)
{
    const auto interval = [](double k) { return thermal_endurance{85_degC, in_si<temperature_difference>(k)}; };
    EXPECT_THROW((void)endurance_slope(interval(0.0)), out_of_range_error);
    EXPECT_THROW((void)endurance_slope(interval(-10.0)), out_of_range_error);
    EXPECT_THROW((void)endurance_slope(interval(51.0)), out_of_range_error);
    EXPECT_THROW((void)endurance_slope(interval(std::numeric_limits<double>::quiet_NaN())), not_finite_error);
    EXPECT_THROW((void)endurance_time(rubber_like, temperature::kelvin(0.0)), out_of_range_error);
    EXPECT_THROW((void)endurance_time(rubber_like, temperature::kelvin(20.0)), error) << "beyond any time";
    const std::array back{heated_time{85_degC, in_si<duration>(-1.0)}};
    EXPECT_THROW((void)endurance_used(rubber_like, back), out_of_range_error);
    EXPECT_THROW((void)equivalent_temperature(rubber_like, {}), out_of_range_error);
}

}  // namespace
