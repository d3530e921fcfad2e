// steady_state_of: chains with an exact solution, and sources whose heat follows temperature up to where no state is.
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/steady_state.hpp>

#include "support/heat_of_rise.hpp"

using namespace weldloop::solve;
using weldloop::test::heat_of_rise;

namespace {

// A node with a source and a sink of 1 W/K, beside one that only follows it.
struct heated_node {
    heat_network net;
    explicit heated_node(const heat_law& law, double bound = heat_network::unbounded)
    {
        const std::size_t idle = net.add_node(5.0), hot = net.add_node(100.0, bound);
        net.link(idle, hot, 0.5);
        net.sink(hot, 1.0, 0.0);
        net.add_source({.in = hot, .law = &law, .to = hot});
        net.close();
    }
    [[nodiscard]] steady_state from(double start, double on = 1.0) const
    {
        return steady_state_of(net, on, std::vector<double>(2, start));
    }
    [[nodiscard]] steady_state near_to(const std::vector<double>& state) const
    {
        return steady_state_of(net, 1.0, state, begins::near_state);
    }
};

// The root of falling f between two rises.
double root(const std::function<double(double)>& f, double low, double high)
{
    for (int i = 0; i < 200; ++i) {
        const double middle = 0.5 * (low + high);
        (f(middle) > 0.0 ? low : high) = middle;
    }
    return low;
}

}  // namespace

TEST(SteadyState, AChainExactly)
{
    // 3 W into the first, 2 W into the third; links 2, 1, 0.5 W/K; a sink of 4 W/K at -10 K from the last:
    // 5 W / 4 W/K - 10 K = -8.75 K, then 5 W over 0.5, 3 W over 1 and over 2 W/K
    heat_network net;
    for (int i = 0; i < 4; ++i) net.add_node(10.0 * (i + 1));
    net.link(0, 1, 2.0);
    net.link(1, 2, 1.0);
    net.link(2, 3, 0.5);
    net.sink(3, 4.0, -10.0);
    net.constant(0, 3.0);
    net.linear_source(2, 5.0, 0.0);
    net.close();
    const steady_state s = steady_state_of(net, 0.4, std::vector<double>(4, 0.0));
    ASSERT_EQ(s.what, outcome::solved);
    EXPECT_NEAR(s.rise[3], -8.75, 1e-9);
    EXPECT_NEAR(s.rise[2], 1.25, 1e-9);
    EXPECT_NEAR(s.rise[1], 4.25, 1e-9);
    EXPECT_NEAR(s.rise[0], 5.75, 1e-9);
    EXPECT_NEAR(s.sums.made, 5.0, 1e-9);
    EXPECT_NEAR(s.sums.lost, 5.0, 1e-9);
}

TEST(SteadyState, NothingMovesWhereNothingHeats)
{
    heat_network net;
    net.add_node(1.0);
    net.sink(0, 1.0, 0.0);
    net.close();
    const steady_state s = steady_state_of(net, 1.0, std::vector<double>{0.0});
    EXPECT_EQ(s.what, outcome::solved);
    EXPECT_EQ(s.rise[0], 0.0);
}

// a exp(x/b) against 1 W/K x touches it at x = b for a = b/e, and has no state above.
TEST(SteadyState, JustBelowAndJustAboveRunAway)
{
    const double b = 50.0, most = b / std::numbers::e;
    for (const double share : {0.9, 0.999, 0.99999}) {
        const auto watts = [&](double x) { return share * most * std::exp(x / b); };
        const heat_of_rise law(watts);
        const steady_state s = heated_node(law, 10.0 * b).from(0.0);
        ASSERT_EQ(s.what, outcome::solved) << share;
        const double lower = root([&](double x) { return watts(x) - x; }, 0.0, b);
        EXPECT_NEAR(s.rise[1], lower, 1e-6) << share;  // residual 1e-12 over a slope of sqrt(2e-5) W/K at the last
        EXPECT_NEAR(s.rise[0], s.rise[1], 1e-6);
    }
    for (const double share : {1.00001, 1.001, 1.5}) {
        const heat_of_rise law([&](double x) { return share * most * std::exp(x / b); });
        const steady_state s = heated_node(law, 10.0 * b).from(0.0);
        EXPECT_EQ(s.what, outcome::bounded) << share;
        EXPECT_EQ(s.bounded_at, 1u) << share;
    }
}

TEST(SteadyState, WithCurrentForAShareOfTheTime)
{
    const heat_of_rise law([](double x) { return 20.0 * std::exp(x / 50.0); });
    EXPECT_EQ(heated_node(law, 500.0).from(0.0, 1.0).what, outcome::bounded);  // 20 above 50/e
    const steady_state s = heated_node(law, 500.0).from(0.0, 0.5);
    ASSERT_EQ(s.what, outcome::solved);
    EXPECT_NEAR(s.rise[1], root([](double x) { return 10.0 * std::exp(x / 50.0) - x; }, 0.0, 50.0), 1e-8);
}

// by hand: 110 W for 0.4 of the time are 44 W; 1 W/K all the time and 3 W/K for 0.4 of it are 2.2 W/K: 20 K, and all
// 44 W leave, 20 W of them by the first
TEST(SteadyState, WhatCoolsOnlyWhileOnCoolsForThatShare)
{
    heat_network net;
    net.add_node(10.0);
    net.sink(0, 1.0, 0.0);
    net.sink(0, 3.0, 0.0, while_current::on);
    net.linear_source(0, 110.0, 0.0);
    net.close();
    const steady_state s = steady_state_of(net, 0.4, std::vector<double>{0.0});
    ASSERT_EQ(s.what, outcome::solved);
    EXPECT_NEAR(s.rise[0], 20.0, 1e-9);
    EXPECT_NEAR(s.sums.made, 44.0, 1e-9);
    EXPECT_NEAR(s.sums.lost, 44.0, 1e-9);
}

// A state is bounded only where it lies beyond, by however little.
TEST(SteadyState, ABoundByTheState)
{
    const heat_of_rise law([](double) { return 100.0; });
    EXPECT_EQ(heated_node(law, 100.5).from(0.0).what, outcome::solved);
    EXPECT_EQ(heated_node(law, 99.5).from(0.0).what, outcome::bounded);
}

// x -> w(x) jumps between two rises for ever; the state between them is the only one.
TEST(SteadyState, WhereANaiveIterationJumps)
{
    const auto watts = [](double x) { return 200.0 / (1.0 + std::pow(std::fmax(x, 0.0) / 60.0, 8.0)); };
    double naive = 0.0, before = 0.0;
    for (int i = 0; i < 1001; ++i) {
        before = naive;
        naive = watts(naive);
    }
    ASSERT_GT(std::fabs(naive - before), 100.0);
    const heat_of_rise law(watts);
    const steady_state s = heated_node(law).from(0.0);
    ASSERT_EQ(s.what, outcome::solved);
    EXPECT_NEAR(s.rise[1], root([&](double x) { return watts(x) - x; }, 0.0, 200.0), 1e-8);
}

// Heat that steps up half way: states near 21 K and near 200 K, an unstable one near 100 K.
TEST(SteadyState, FromTheColdTheLowerOfTwo)
{
    const auto watts = [](double x) { return 20.0 + 180.0 / (1.0 + std::exp(-(x - 100.0) / 10.0)); };
    const auto surplus = [&](double x) { return watts(x) - x; };
    const heat_of_rise law(watts);
    const heated_node node(law);
    const steady_state cold = node.from(0.0), hot = node.from(180.0), below = node.from(80.0);
    ASSERT_EQ(cold.what, outcome::solved);
    ASSERT_EQ(hot.what, outcome::solved);
    ASSERT_EQ(below.what, outcome::solved);
    EXPECT_NEAR(cold.rise[1], root(surplus, 0.0, 60.0), 1e-8);
    EXPECT_NEAR(below.rise[1], cold.rise[1], 1e-8);
    EXPECT_NEAR(hot.rise[1], root(surplus, 150.0, 300.0), 1e-8);
}

// A state a thousandth away, up to a hundred-thousandth of the heat before the fold; past it there is none.
TEST(SteadyState, FromAStateNearBy)
{
    const double b = 50.0, most = b / std::numbers::e;
    const auto watts = [&](double share) { return [=](double x) { return share * most * std::exp(x / b); }; };
    const auto from_below = [&](double share) {
        const heat_of_rise below(watts(0.999 * share)), law(watts(share));
        const steady_state near = heated_node(below, 10.0 * b).from(0.0);
        EXPECT_EQ(near.what, outcome::solved) << share;
        return heated_node(law, 10.0 * b).near_to(near.rise);
    };
    for (const double share : {0.5, 0.99, 0.9999, 0.99999}) {
        const heat_of_rise law(watts(share));
        const steady_state cold = heated_node(law, 10.0 * b).from(0.0), s = from_below(share);
        ASSERT_EQ(s.what, outcome::solved) << share;
        EXPECT_NEAR(s.rise[1], cold.rise[1], 1e-6) << share;
        EXPECT_LT(s.steps, cold.steps) << share;
    }
    for (const double share : {1.00001, 1.0009}) EXPECT_EQ(from_below(share).what, outcome::bounded) << share;
}

// Taken for a state near by, what lies just below an unstable one still cools to the lower state, and what lies just
// above it warms to the upper.
TEST(SteadyState, NoStateNearBy)
{
    const auto watts = [](double x) { return 20.0 + 180.0 / (1.0 + std::exp(-(x - 100.0) / 10.0)); };
    const heat_of_rise law(watts);
    const heated_node node(law);
    const double lower = node.from(0.0).rise[1], upper = node.from(180.0).rise[1];
    const double unstable = root([&](double x) { return x - watts(x); }, 60.0, 110.0);
    ASSERT_LT(lower, unstable);
    for (const double off : {20.0, 5.0, 1.0}) {
        const steady_state below = node.near_to({unstable - off, unstable - off}),
                           above = node.near_to({unstable + off, unstable + off});
        ASSERT_EQ(below.what, outcome::solved) << off;
        ASSERT_EQ(above.what, outcome::solved) << off;
        EXPECT_NEAR(below.rise[1], lower, 1e-8) << off;
        EXPECT_NEAR(above.rise[1], upper, 1e-8) << off;
    }
}

TEST(SteadyState, BoundedWorkWhereThereIsNoState)
{
    heat_network net;
    net.add_node(1.0);
    net.sink(0, 1.0, 0.0);
    net.linear_source(0, 1.0, 1.1);  // outgrows its sink, and nothing bounds it
    net.close();
    const steady_state s = steady_state_of(net, 1.0, std::vector<double>{0.0});
    EXPECT_EQ(s.what, outcome::not_settled);
    EXPECT_LE(s.steps, 600);
}
