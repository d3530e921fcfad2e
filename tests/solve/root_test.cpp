// Roots between two ends, without a slope and with it.
#include <cmath>
#include <limits>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/solve/root.hpp>

#include "support/near.hpp"

using weldloop::detail::rising_root;
using weldloop::detail::root_between;
using weldloop::detail::value_and_slope;

TEST(Root, IsFoundToTwelveDigits)
{
    EXPECT_NEAR_REL(root_between([](double x) { return x * x - 2.0; }, 0.0, 2.0, "x"), std::sqrt(2.0), 1e-12);
    EXPECT_NEAR_REL(root_between([](double x) { return std::cos(x) - x; }, 0.0, 1.0, "x"), 0.7390851332151607, 1e-12);
    EXPECT_NEAR_REL(root_between([](double x) { return 1e-30 - 1e-33 * x; }, 1.0, 1e6, "x"), 1000.0, 1e-12);
    EXPECT_EQ(root_between([](double x) { return x; }, 0.0, 1.0, "x"), 0.0);  // at an end
    EXPECT_EQ(root_between([](double x) { return x - 1.0; }, 0.0, 1.0, "x"), 1.0);
    // a jump across zero is bracketed too
    EXPECT_NEAR_REL(root_between([](double x) { return x < 3.0 ? -1.0 : 1.0; }, 0.0, 10.0, "x"), 3.0, 1e-12);
}

TEST(Root, RefusesWhatHasNone)
{
    const auto nothing = [](double x) { return x * x + 1.0; };
    EXPECT_THROW((void)root_between(nothing, -1.0, 1.0, "x"), weldloop::no_solution_error);
    EXPECT_THROW((void)root_between([](double) { return std::numeric_limits<double>::quiet_NaN(); }, 0.0, 1.0, "x"),
                 weldloop::no_solution_error);
    EXPECT_THROW((void)root_between([](double x) { return x - 0.5; }, 1.0, 0.0, "x"), weldloop::no_solution_error);
    try {
        (void)root_between(nothing, -1.0, 1.0, "temperature");
        ADD_FAILURE();
    } catch (const weldloop::error& e) {
        EXPECT_EQ(e.argument(), "temperature");
        EXPECT_EQ(e.allowed(), "a solution between -1 and 1");
    }
}

TEST(RisingRoot, IsFoundToThirteenDigits)
{
    const auto square = [](double x) { return value_and_slope{x * x - 2.0, 2.0 * x}; };
    for (const double first : {0.5, 1.4, 2.0, 2.5, -1.0, std::numeric_limits<double>::quiet_NaN()})
        EXPECT_NEAR_REL(rising_root(square, 0.0, 2.0, first, "x"), std::sqrt(2.0), 1e-13);
    const auto transcendental = [](double x) { return value_and_slope{x - std::cos(x), 1.0 + std::sin(x)}; };
    EXPECT_NEAR_REL(rising_root(transcendental, 0.0, 1.0, 0.9, "x"), 0.7390851332151607, 1e-13);
    // a flat power, where Newton's steps shrink by a third only
    const auto power = [](double x) { return value_and_slope{std::pow(x, 3) - 1e-12, 3.0 * x * x}; };
    EXPECT_NEAR_REL(rising_root(power, 0.0, 1e3, 1e3, "x"), 1e-4, 1e-12);
}

TEST(RisingRoot, AsksASmoothFunctionThriceFromANearGuess)
{
    int calls = 0;
    const auto counted = [&calls](double x) {
        ++calls;
        return value_and_slope{x * std::sqrt(std::sqrt(x)) - 100.0, 1.25 * std::sqrt(std::sqrt(x))};
    };
    EXPECT_NEAR_REL(rising_root(counted, 0.0, 100.0, 41.0, "rise"), std::pow(100.0, 0.8), 1e-14);
    EXPECT_LE(calls, 3);
}

TEST(RisingRoot, IsFoundAtTheEnds)
{
    const auto line = [](double x) { return value_and_slope{x, 1.0}; };
    EXPECT_EQ(rising_root(line, 0.0, 1.0, 0.3, "x"), 0.0);
    EXPECT_EQ(rising_root(line, -1.0, 0.0, -0.3, "x"), 0.0);
    // an end that the first step leads beyond
    const auto cube = [](double x) { return value_and_slope{x * x * x - 1.0, 3.0 * x * x}; };
    EXPECT_EQ(rising_root(cube, 0.0, 1.0, 0.1, "x"), 1.0);
}

TEST(RisingRoot, IsFoundWhereTheSlopeHasAStepOrIsRough)
{
    std::mt19937_64 random(4);
    std::uniform_real_distribution<double> place(0.1, 9.9), slope(0.01, 100.0), roughness(0.7, 1.5);
    for (int i = 0; i < 200; ++i) {
        const double root = place(random), below = slope(random), above = slope(random), first = place(random);
        const auto bent = [&](double x) {
            const double s = x < root ? below : above;
            return value_and_slope{s * (x - root), s};
        };
        EXPECT_NEAR_REL(rising_root(bent, 0.0, 10.0, first, "x"), root, 1e-13);
        const double share = roughness(random);
        const auto misled = [&](double x) {
            return value_and_slope{std::expm1(0.1 * (x - root)), share * 0.1 * std::exp(0.1 * (x - root))};
        };
        EXPECT_NEAR_REL(rising_root(misled, 0.0, 10.0, first, "x"), root, 2e-13);
        const auto jump = [&](double x) { return value_and_slope{x < root ? -1.0 : 1.0, 0.0}; };
        EXPECT_NEAR_REL(rising_root(jump, 0.0, 10.0, first, "x"), root, 1e-12);
    }
}

TEST(RisingRoot, RefusesWhatHasNone)
{
    using weldloop::no_solution_error;
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    const auto above = [](double x) { return value_and_slope{std::exp(x), std::exp(x)}; };
    const auto below = [](double x) { return value_and_slope{-std::exp(-x), std::exp(-x)}; };
    const auto gap = [](double) { return value_and_slope{nan, 1.0}; };
    const auto line = [](double x) { return value_and_slope{x, 1.0}; };
    for (const double first : {-1.0, 0.0, 0.999, nan}) {
        EXPECT_THROW((void)rising_root(above, -1.0, 1.0, first, "x"), no_solution_error);
        EXPECT_THROW((void)rising_root(below, -1.0, 1.0, first, "x"), no_solution_error);
        EXPECT_THROW((void)rising_root(gap, -1.0, 1.0, first, "x"), no_solution_error);
    }
    EXPECT_THROW((void)rising_root(line, 1.0, -1.0, 0.0, "x"), no_solution_error);  // empty interval
    EXPECT_THROW((void)rising_root(line, 1.0, 1.0, 1.0, "x"), no_solution_error);
    EXPECT_THROW((void)rising_root(line, nan, 1.0, 0.5, "x"), no_solution_error);
    try {
        (void)rising_root(above, -1.0, 1.0, 0.0, "temperature");
        ADD_FAILURE();
    } catch (const weldloop::error& e) {
        EXPECT_EQ(e.argument(), "temperature");
        EXPECT_EQ(e.allowed(), "a solution between -1 and 1");
    }
    // a jump at zero: no share of zero is small enough
    const auto jump = [](double x) { return value_and_slope{x < 0.0 ? -1.0 : 1.0, 0.0}; };
    EXPECT_THROW((void)rising_root(jump, -1.0, 1.5, 1.0, "x"), no_solution_error);
}
