// periodic_state_of: linear networks against their closed form, and periods up to where none settles.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <numbers>
#include <span>
#include <stdexcept>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/steady_state.hpp>

#include "support/heat_of_rise.hpp"

using namespace weldloop::solve;
using weldloop::test::heat_of_rise;

namespace {

// A node of a sink of 1 W/K, with heat of a law or straight.
struct one_node {
    heat_network net;
    one_node(double seconds, double watts, double bound = heat_network::unbounded)
    {
        net.sink(net.add_node(seconds, bound), 1.0, 0.0);
        net.linear_source(0, watts, 0.0);
        net.close();
    }
    one_node(double seconds, const heat_law& law, double bound = heat_network::unbounded)
    {
        net.sink(net.add_node(seconds, bound), 1.0, 0.0);
        net.add_source({.in = 0, .law = &law, .to = 0});
        net.close();
    }
};

periodic_state solved(const heat_network& net, const on_off& programme, const periodic_state* near = nullptr)
{
    return periodic_state_of(net, programme, std::vector<double>(net.size(), 0.0), {.near = near});
}

// A mode that tends to `full` with a time constant while current flows, and to nothing in the rest.
struct mode {
    double full, seconds;

    [[nodiscard]] double start(const on_off& p) const
    {
        return full * (std::exp(-p.rest / seconds) - std::exp(-(p.on + p.rest) / seconds)) /
               -std::expm1(-(p.on + p.rest) / seconds);
    }
    [[nodiscard]] double at(const on_off& p, double t) const
    {
        const double top = full + (start(p) - full) * std::exp(-std::min(t, p.on) / seconds);
        return t <= p.on ? top : top * std::exp(-(t - p.on) / seconds);
    }
    [[nodiscard]] double mean(const on_off& p) const { return full * p.on / (p.on + p.rest); }
};

// Of a straight network of rises below 100 K, as the comment of periodic_state_of promises: where current begins and
// ends, and on the way, where things change fast.
constexpr double allowed_K = 0.1;
constexpr double on_the_way_K = 0.3 + 0.01 * 80.0;

void expect_closed_and_balanced(const periodic_state& s)
{
    ASSERT_EQ(s.what, outcome::solved);
    for (std::size_t i = 0; i < s.mean.size(); ++i) EXPECT_NEAR(s.trace.front()[i], s.trace.back()[i], 1e-4);
    EXPECT_LT(std::fabs(s.imbalance), 1e-9);
}

// Two nodes of equal capacity C and sink g, joined by k; heat w while on into the first: their half sum tends to w/2g
// with C/g, their half difference to w/2(g + 2k) with C/(g + 2k).
struct two_nodes {
    heat_network net;
    mode sum, difference;
    two_nodes(double capacity, double sink, double between, double watts)
        : sum{0.5 * watts / sink, capacity / sink}, difference{0.5 * watts / (sink + 2.0 * between),
                                                               capacity / (sink + 2.0 * between)}
    {
        for (std::size_t i = 0; i < 2; ++i) net.sink(net.add_node(capacity), sink, 0.0);
        net.link(0, 1, between);
        net.linear_source(0, watts, 0.0);
        net.close();
    }
};

// Two nodes of any capacities, sinks and link, heat into the first, by the exponential of their 2 x 2 matrix.
using pair_of = std::array<double, 2>;
struct square {
    std::array<double, 4> a;  // by rows

    [[nodiscard]] pair_of times(const pair_of& x) const
    {
        return {a[0] * x[0] + a[1] * x[1], a[2] * x[0] + a[3] * x[1]};
    }
    [[nodiscard]] pair_of over(const pair_of& b) const
    {
        const double d = a[0] * a[3] - a[1] * a[2];
        return {(a[3] * b[0] - a[1] * b[1]) / d, (a[0] * b[1] - a[2] * b[0]) / d};
    }
    [[nodiscard]] square exponential(double t) const
    {
        const double half = 0.5 * (a[0] + a[3]);
        const double root = std::sqrt(0.25 * (a[0] - a[3]) * (a[0] - a[3]) + a[1] * a[2]);
        const double fast = half - root, slow = (a[0] * a[3] - a[1] * a[2]) / fast;
        const double e = std::exp(fast * t), f = std::exp(slow * t), by = 1.0 / (fast - slow);
        return {{by * (e * (a[0] - slow) - f * (a[0] - fast)), by * (e - f) * a[1], by * (e - f) * a[2],
                 by * (e * (a[3] - slow) - f * (a[3] - fast))}};
    }
};
struct unlike_nodes {
    heat_network net;
    square rates;
    pair_of full;
    unlike_nodes(pair_of capacity, pair_of sink, double between, double watts)
        : rates{{-(sink[0] + between) / capacity[0], between / capacity[0], between / capacity[1],
                 -(sink[1] + between) / capacity[1]}},
          full(rates.over({-watts / capacity[0], 0.0}))
    {
        for (std::size_t i = 0; i < 2; ++i) net.sink(net.add_node(capacity[i]), sink[i], 0.0);
        net.link(0, 1, between);
        net.linear_source(0, watts, 0.0);
        net.close();
    }
    [[nodiscard]] pair_of start(const on_off& p) const
    {
        const pair_of gone = rates.exponential(p.on).times(full);
        const pair_of end = rates.exponential(p.rest).times({full[0] - gone[0], full[1] - gone[1]});
        square kept = rates.exponential(p.on + p.rest);
        for (double& w : kept.a) w = -w;
        kept.a[0] += 1.0;
        kept.a[3] += 1.0;
        return kept.over(end);
    }
    [[nodiscard]] pair_of top(const on_off& p) const
    {
        const pair_of from = start(p), left = rates.exponential(p.on).times({from[0] - full[0], from[1] - full[1]});
        return {full[0] + left[0], full[1] + left[1]};
    }
};

// March of a node that cools by the law C x' = -f(x) from 80 K, in equal steps.
double marched(const heat_network& net, double whole, int steps)
{
    detail::marcher march(net);
    std::vector<double> x{80.0};
    for (int i = 0; i < steps; ++i) {
        detail::march_step k;
        k.time = whole / steps;
        k.on = 1.0;
        march.straighten(k, x);
        EXPECT_TRUE(march.first_step(k, x, 1e-11));
        x = k.stage[2];
    }
    return x[0];
}

}  // namespace

TEST(PeriodicState, OneNodeInClosedForm)
{
    for (const double period : {1.0, 30.0, 600.0, 2e4, 1e6})
        for (const double share : {0.1, 0.6, 0.95}) {
            const on_off p{share * period, (1.0 - share) * period};
            const mode exact{80.0, 1000.0};
            const one_node n(exact.seconds, exact.full);
            const periodic_state s = solved(n.net, p);
            expect_closed_and_balanced(s);
            // a straight balance is kept in the mean, whatever the steps
            EXPECT_NEAR(s.mean[0], exact.mean(p), 1e-3) << period << ' ' << share;
            for (std::size_t k = 0; k < s.times.size(); ++k)
                EXPECT_NEAR(s.trace[k][0], exact.at(p, s.times[k]), on_the_way_K) << period << ' ' << s.times[k];
            EXPECT_NEAR(s.trace.front()[0], exact.start(p), allowed_K) << period << ' ' << share;
            EXPECT_NEAR(s.peak[0], exact.at(p, p.on), allowed_K) << period << ' ' << share;
        }
}

TEST(PeriodicState, TwoNodesInClosedForm)
{
    const two_nodes n(500.0, 0.5, 2.0, 60.0);
    for (const double period : {1.0, 60.0, 600.0, 2e4, 1e6}) {
        const on_off p{0.6 * period, 0.4 * period};
        const periodic_state s = solved(n.net, p);
        expect_closed_and_balanced(s);
        for (std::size_t i = 0; i < 2; ++i) {
            const double sign = i == 0 ? 1.0 : -1.0;
            EXPECT_NEAR(s.mean[i], n.sum.mean(p) + sign * n.difference.mean(p), 1e-3) << period;
            for (std::size_t k = 0; k < s.times.size(); ++k) {
                const bool end = k == 0 || std::fabs(s.times[k] - p.on) < 1e-9 * p.on;
                EXPECT_NEAR(s.trace[k][i], n.sum.at(p, s.times[k]) + sign * n.difference.at(p, s.times[k]),
                            end ? allowed_K : on_the_way_K)
                    << period << ' ' << s.times[k];
            }
        }
    }
}

TEST(PeriodicState, AStiffPair)
{
    const unlike_nodes n({1.0, 1e5}, {0.6, 0.6}, 0.4, 50.0);  // 1 s and 1e5 s
    for (const double period : {0.5, 60.0, 600.0, 1e5, 1e6}) {
        const on_off p{0.4 * period, 0.6 * period};
        const periodic_state s = solved(n.net, p);
        expect_closed_and_balanced(s);
        const pair_of start = n.start(p), top = n.top(p);
        for (std::size_t i = 0; i < 2; ++i) {
            EXPECT_NEAR(s.mean[i], 0.4 * n.full[i], 1e-3) << period;
            EXPECT_NEAR(s.trace.front()[i], start[i], allowed_K) << period;
            EXPECT_NEAR(s.peak[i], std::max(top[i], start[i]), allowed_K) << period;
        }
    }
}

TEST(PeriodicState, AStepIsOfThirdOrder)
{
    const heat_of_rise law([](double x) { return 60.0 / (1.0 + x / 40.0) - 0.004 * x * x; });
    const one_node n(100.0, law);
    const double exact = marched(n.net, 200.0, 2048);
    double before = marched(n.net, 200.0, 8) - exact;
    for (const int steps : {16, 32, 64}) {
        const double now = marched(n.net, 200.0, steps) - exact;
        EXPECT_NEAR(std::log2(before / now), 3.0, 0.25) << steps;  // the order comes within its next term
        before = now;
    }
}

TEST(PeriodicState, AStepForgetsWhatIsFast)
{
    const one_node n(1.0, 0.0);  // L-stable: what a step of z time constants leaves falls as 1/z
    const double left = marched(n.net, 1e4, 1);
    EXPECT_LT(std::fabs(left), 80.0 * 5.0 / 1e4);
    EXPECT_NEAR(marched(n.net, 1e6, 1), left / 100.0, 1e-2 * std::fabs(left) / 100.0);
}

TEST(PeriodicState, MeanAndPeakOverTheirTimes)
{
    const on_off p{600.0, 400.0};
    const one_node n(300.0, 80.0);
    const mode exact{80.0, 300.0};
    const periodic_state s = solved(n.net, p);
    // integral of the top: full - (full - start) (1 - exp(-on/tau)) tau/on
    const double on_mean = 80.0 - (80.0 - exact.start(p)) * -std::expm1(-2.0) * 0.5;
    EXPECT_NEAR(s.on_mean[0], on_mean, allowed_K);
    EXPECT_NEAR(s.sums.made, 0.6 * 80.0, 1e-9);
    EXPECT_NEAR(s.sums.lost, 0.6 * 80.0, 1e-5);
    EXPECT_EQ(s.times.front(), 0.0);
    EXPECT_NEAR(s.times.back(), 1000.0, 1e-9);
    EXPECT_NEAR(*std::min_element(s.times.begin(), s.times.end(),
                                  [](double a, double b) { return std::fabs(a - 600.0) < std::fabs(b - 600.0); }),
                600.0, 1e-9);  // a step ends where the current does
}

TEST(PeriodicState, HeatOfASourceWhileOn)
{
    const heat_of_rise law([](double x) { return 50.0 - 0.1 * x; });
    const one_node n(300.0, law);
    const periodic_state s = solved(n.net, {600.0, 400.0});
    ASSERT_EQ(s.what, outcome::solved);
    ASSERT_EQ(s.source_on.size(), 1u);
    EXPECT_NEAR(s.source_on[0], 50.0 - 0.1 * s.on_mean[0], 1e-9);
    EXPECT_NEAR(s.sums.made, 0.6 * s.source_on[0], 1e-9);
}

TEST(PeriodicState, SteadyCurrentIsTheSteadyState)
{
    const heat_of_rise law([](double x) { return 20.0 + 0.1 * x; });
    const one_node n(300.0, law);
    const periodic_state s = solved(n.net, {600.0, 0.0});
    ASSERT_EQ(s.what, outcome::solved);
    for (const double x : {s.mean[0], s.on_mean[0], s.peak[0], s.trace.front()[0], s.trace.back()[0]})
        EXPECT_NEAR(x, 20.0 / 0.9, 1e-9);
    EXPECT_NEAR(s.source_on[0], 20.0 / 0.9, 1e-9);
}

// Mean 48 K, top by the closed form; a bound between them ends the period, one above the top does not.
TEST(PeriodicState, ABoundPassedOnlyAtTheEndOfTheCurrent)
{
    const on_off p{600.0, 400.0};
    const mode exact{80.0, 600.0};
    const double top = exact.at(p, p.on);
    ASSERT_GT(top, exact.mean(p) + 5.0);
    for (const double bound : {exact.mean(p) + 1.0, top - 2.0 * allowed_K}) {
        const one_node n(600.0, 80.0, bound);
        const periodic_state s = solved(n.net, p);
        EXPECT_EQ(s.what, outcome::bounded) << bound;
        EXPECT_EQ(s.bounded_at, 0u);
    }
    EXPECT_EQ(solved(one_node(600.0, 80.0, top + 2.0 * allowed_K).net, p).what, outcome::solved);
}

// Fast periods see the mean alone: 2 w exp(x/b) half of the time has no state from b/e = w on; slow ones see the
// current, and have none from half of it on.
TEST(PeriodicState, NearTheFold)
{
    const double b = 50.0, most = b / std::numbers::e;
    const auto found = [&](double share, double seconds) {
        const heat_of_rise law([&](double x) { return 2.0 * share * most * std::exp(x / b); });
        return solved(one_node(1000.0, law, 10.0 * b).net, {0.5 * seconds, 0.5 * seconds});
    };
    for (const double share : {0.9, 0.99, 0.999}) expect_closed_and_balanced(found(share, 0.1));
    for (const double share : {1.001, 1.1}) EXPECT_EQ(found(share, 0.1).what, outcome::bounded) << share;
    expect_closed_and_balanced(found(0.49, 1e6));
    EXPECT_EQ(found(0.52, 1e6).what, outcome::bounded);
}

// Heat that falls steeply where the swing passes.
TEST(PeriodicState, WhereHeatFallsSteeply)
{
    const heat_of_rise law([](double x) { return 200.0 / (1.0 + std::pow(std::fmax(x, 0.0) / 60.0, 8.0)); });
    for (const double period : {10.0, 600.0, 1e5}) {
        const periodic_state s = solved(one_node(300.0, law).net, {0.6 * period, 0.4 * period});
        expect_closed_and_balanced(s);
        EXPECT_GT(s.peak[0], s.mean[0]);
        EXPECT_LE(s.sweeps, 30);
    }
}

// Watts that yield by 3 W/K to the rise, known to nobody but the follower: four times the sink while current flows.
class yielding final : public state_follower {
public:
    void follow(std::span<const double> rise) override { watts = 100.0 - 3.0 * rise[0]; }
    [[nodiscard]] std::size_t numbers() const override { return 1; }
    void add_numbers(std::span<const double>, double share, std::span<double> out) const override
    {
        out[0] += share * watts;
    }
    double watts = 40.0;
};

// source: by hand; towards 25 K at 75 s with current, towards nothing at 300 s without. Corrections that know of the
// sink alone are twice as long as they should be and turn back ever farther.
TEST(PeriodicState, ComesToRestWhereHeatYieldsToWhatItWarms)
{
    const on_off p{60.0, 40.0};
    yielding follower;
    const heat_of_rise law([&](double) { return follower.watts; });
    one_node n(300.0, law);
    const periodic_state constant = solved(n.net, p);
    n.net.set_follower(&follower);
    const periodic_state s = solved(n.net, p, &constant);
    ASSERT_EQ(s.what, outcome::solved);
    expect_closed_and_balanced(s);
    const double warming = std::exp(-p.on / 75.0), cooling = std::exp(-p.rest / 300.0);
    const double start = 25.0 * (1.0 - warming) * cooling / (1.0 - warming * cooling);
    EXPECT_NEAR(s.trace.front()[0], start, allowed_K);
    EXPECT_NEAR(s.peak[0], start / cooling, allowed_K);
    EXPECT_NEAR(s.followed_on[0], 100.0 - 3.0 * s.on_mean[0], 1e-6);
    EXPECT_LE(s.sweeps, 15);
}

TEST(PeriodicState, FromANearStateAsFromTheCold)
{
    const on_off p{360.0, 240.0};
    const auto heated = [](double watts) {
        return heat_of_rise([watts](double x) { return watts / (1.0 + x / 200.0); });
    };
    const heat_of_rise usual = heated(60.0), poor = heated(90.0);
    const one_node first(400.0, usual), second(400.0, poor);
    const periodic_state near = solved(first.net, p), cold = solved(second.net, p),
                         followed = solved(second.net, p, &near);
    ASSERT_EQ(near.what, outcome::solved);
    expect_closed_and_balanced(cold);
    expect_closed_and_balanced(followed);
    ASSERT_GT(cold.peak[0], near.peak[0] + 5.0);
    EXPECT_LE(followed.sweeps, cold.sweeps);            // or there is no use in it
    EXPECT_NEAR(followed.mean[0], cold.mean[0], 0.01);  // steps of their own
    EXPECT_NEAR(followed.peak[0], cold.peak[0], allowed_K);
    const periodic_state same = solved(first.net, p, &near);  // steps alike
    EXPECT_NEAR(same.peak[0], near.peak[0], 1e-3);
    EXPECT_NEAR(same.mean[0], near.mean[0], 1e-3);
}

// The mean of a swing through curved heat is not the steady state of the heat spread evenly: a state sought from itself
// must not be moved by what they are apart.
TEST(PeriodicState, FromItselfInOneSweep)
{
    const on_off p{360.0, 240.0};
    const heat_of_rise law([](double x) { return 90.0 / (1.0 + x / 50.0); });
    const one_node n(400.0, law);
    const periodic_state first = solved(n.net, p), again = solved(n.net, p, &first);
    expect_closed_and_balanced(first);
    expect_closed_and_balanced(again);
    ASSERT_GT(std::fabs(first.mean[0] - first.steady[0]), 0.1);
    EXPECT_EQ(again.sweeps, 1);
    EXPECT_NEAR(again.peak[0], first.peak[0], 1e-4);
}

// Asked for rises alone the search goes the same way and leaves the rest out.
TEST(PeriodicState, RisesAloneAreThoseOfTheWhole)
{
    const on_off p{360.0, 240.0};
    const heat_of_rise law([](double x) { return 90.0 / (1.0 + x / 50.0); });
    const one_node n(400.0, law);
    constexpr double settled = 5e-3;
    const std::vector<double> cold{0.0};
    const periodic_state all = periodic_state_of(n.net, p, cold, {.settled = settled}),
                         rises = periodic_state_of(n.net, p, cold,
                                                   {.settled = settled, .parts = period_search::wanted::rises});
    ASSERT_EQ(rises.what, outcome::solved);
    EXPECT_EQ(rises.sweeps, all.sweeps);
    EXPECT_EQ(rises.mean, all.mean);
    EXPECT_EQ(rises.on_mean, all.on_mean);
    EXPECT_EQ(rises.peak, all.peak);
    EXPECT_EQ(rises.trace.front(), all.trace.front());
    EXPECT_GT(all.sums.made, 0.0);
    EXPECT_TRUE(rises.source_on.empty());
}

// Heat that steps up half way has two states; a hot one near by lends its swing to the one that is reached from the
// cold.
TEST(PeriodicState, ReachedFromTheColdBesideAHotOne)
{
    const on_off p{60.0, 40.0};
    const auto heated = [](double more) {
        return heat_of_rise(
            [more](double x) { return (20.0 + more + 180.0 / (1.0 + std::exp(-(x - 100.0) / 10.0))) / 0.6; });
    };
    const heat_of_rise usual = heated(0.0), hotter = heated(100.0);
    const one_node n(1000.0, usual), above(1000.0, hotter);
    const periodic_state cold = solved(n.net, p), hot = solved(above.net, p), from_hot = solved(n.net, p, &hot);
    const periodic_state s = periodic_state_of(n.net, p, std::vector<double>(1, 0.0),
                                               {.near = &hot, .reached_from = period_search::start::cold});
    ASSERT_GT(from_hot.mean[0], 150.0);
    ASSERT_LT(cold.mean[0], 50.0);
    expect_closed_and_balanced(s);
    EXPECT_NEAR(s.mean[0], cold.mean[0], 0.01);
    EXPECT_NEAR(s.peak[0], cold.peak[0], allowed_K);
}

TEST(PeriodicState, ANearStateHidesNoRunAway)
{
    const on_off p{0.05, 0.05};
    const double b = 50.0, most = b / std::numbers::e;
    const heat_of_rise below([&](double x) { return 1.8 * most * std::exp(x / b); }),
        above([&](double x) { return 2.2 * most * std::exp(x / b); });
    const one_node first(1000.0, below, 10.0 * b), second(1000.0, above, 10.0 * b);
    const periodic_state near = solved(first.net, p);
    ASSERT_EQ(near.what, outcome::solved);
    EXPECT_EQ(solved(second.net, p, &near).what, outcome::bounded);
}

// Hotter than the bound of what is sought, the near state is left for the cold.
TEST(PeriodicState, ANearStateBeyondTheBound)
{
    const on_off p{360.0, 240.0};
    const one_node hot(400.0, 80.0), cool(400.0, 20.0, 40.0);
    const periodic_state near = solved(hot.net, p), s = solved(cool.net, p, &near);
    ASSERT_GT(near.mean[0], 40.0);
    expect_closed_and_balanced(s);
    EXPECT_NEAR(s.mean[0], 12.0, 1e-3);
}

// A body that exchanges heat with nothing has no temperature: no state, and no number that is none.
TEST(PeriodicState, ABodyByItselfIsSaid)
{
    heat_network net;
    net.sink(net.add_node(10.0), 1.0, 0.0);
    net.linear_source(0, 5.0, 0.0);
    static_cast<void>(net.add_node(1.0));
    net.close();
    EXPECT_EQ(solved(net, {60.0, 40.0}).what, outcome::not_settled);
}

// A law that steps holds a body at its step, where no march gets on: it ends, and says so. Counted are calls of the
// law.
TEST(PeriodicState, ALawWithAStepEndsInBoundedWork)
{
    constexpr long bounded_work = 5'000'000;
    for (const double cooler : {0.0, 10.0, 40.0}) {
        long calls = 0;
        const heat_of_rise stepped([&](double x) {
            if (++calls > bounded_work) throw std::runtime_error("goes on and on");
            return x < 60.0 ? 100.0 : cooler;
        });
        const one_node body(10.0, stepped);
        const periodic_state s = solved(body.net, {1000.0, 1000.0});
        EXPECT_TRUE(s.what == outcome::not_settled || s.what == outcome::solved) << cooler;
        if (s.what == outcome::solved) {
            EXPECT_NEAR(s.peak[0], 60.0, 1.0) << cooler;
        }
    }
}

// What has no settled period is marched no further than where that is sure: the law is rough beyond, and a march
// through it took a hundred times as many calls.
TEST(PeriodicState, ARunAwayIsNotFollowed)
{
    constexpr long bounded_work = 20'000;
    constexpr double b = 50.0, most = b / std::numbers::e, bound = 10.0 * b, rough_from = 5000.0, band = 3.0;
    long calls = 0;
    const heat_of_rise law([&](double x) {
        ++calls;
        if (x > rough_from) return std::fmod(x, 2.0 * band) < band ? 20'000.0 : 8'000.0;
        return std::fmin(20'000.0, 2.0 * 0.52 * most * std::exp(x / b));
    });
    const periodic_state s = solved(one_node(1000.0, law, bound).net, {0.5e6, 0.5e6});
    EXPECT_EQ(s.what, outcome::bounded);
    EXPECT_EQ(s.bounded_at, 0u);
    EXPECT_LT(calls, bounded_work);
}
