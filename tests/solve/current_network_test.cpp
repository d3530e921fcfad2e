// current_network against worked networks, nodal analysis by dense elimination, and bisection.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <map>
#include <memory>
#include <numeric>
#include <random>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/solve/current_network.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using solve::current_network;
using solve::divided_currents;
using solve::division;
using solve::drop_at_current;
using solve::drop_of_current;
using solve::plain_resistance;

constexpr double rounding_of_volts = 1e-12;  // of the largest drop in a loop

// A branch of a circuit on paper.
struct link {
    std::size_t from, to;
    double ohms;
    double emf = 0.0;
};
struct load {
    std::size_t into, out_of;
    double amps;
};

// A solved circuit on paper: currents, and potentials against a node.
struct solved_circuit {
    division what = division::undecided;
    std::vector<double> amps = {};
    std::vector<link> links = {};

    // Potential of a node over another, along the branches that are named, each by its place and the sense it is
    // passed.
    [[nodiscard]] double rise(std::size_t branch) const
    {
        return links[branch].emf - links[branch].ohms * amps[branch];
    }
};

solved_circuit solved(std::size_t nodes, const std::vector<link>& links, const std::vector<load>& loads = {})
{
    std::vector<std::unique_ptr<plain_resistance>> laws;
    current_network n(nodes);
    for (const link& l : links) {
        laws.push_back(std::make_unique<plain_resistance>(l.ohms));
        n.add_branch(l.from, l.to, *laws.back(), l.emf);
    }
    for (const load& l : loads) n.inject(l.into, l.out_of, l.amps);
    if (!n.prepare()) return {.what = division::unconnected};
    const divided_currents d = n.divide();
    EXPECT_LE(d.what == division::found ? d.residual : 0.0, rounding_of_volts);
    return {d.what, d.amps, links};
}

double power_lost(const solved_circuit& c, std::size_t from, std::size_t to)
{
    double sum = 0.0;
    for (std::size_t b = from; b < to; ++b) sum += c.amps[b] * c.amps[b] * c.links[b].ohms;
    return sum;
}

// Every quantity of the table, from the inputs its rows state.
std::map<std::string, double> worked()
{
    std::map<std::string, double> out;
    {  // nodes A 0, C 1, D 2, E 3, B 4, return 5; 0.1 ohm per 1000 m
        const solved_circuit c =
            solved(6, {{5, 0, 0.0, 200.0}, {0, 1, 0.05}, {1, 2, 0.07}, {2, 3, 0.03}, {3, 4, 0.025}, {5, 4, 0.0, 200.0}},
                   {{5, 1, 50.0}, {5, 2, 100.0}, {5, 3, 150.0}});
        out["CE-01 current supplied at A"] = c.amps[0];
        out["CE-01 current supplied at B"] = c.amps[5];
        out["CE-01 current in section CD"] = c.amps[2];
        out["CE-01 voltage at C"] = 200.0 + c.rise(1);
        out["CE-01 voltage at D"] = 200.0 + c.rise(1) + c.rise(2);
        out["CE-01 voltage at E"] = 200.0 - c.rise(4);
    }
    {  // loads at nodes 1 to 5 between A 0 and B 6, return 7; 0.1 ohm over 800 m
        constexpr double per_m = 0.1 / 800.0;
        const solved_circuit c = solved(8,
                                        {{7, 0, 0.0, 248.0},
                                         {0, 1, 100.0 * per_m},
                                         {1, 2, 150.0 * per_m},
                                         {2, 3, 250.0 * per_m},
                                         {3, 4, 100.0 * per_m},
                                         {4, 5, 100.0 * per_m},
                                         {5, 6, 100.0 * per_m},
                                         {7, 6, 0.0, 245.0}},
                                        {{7, 1, 20.0}, {7, 2, 80.0}, {7, 3, 50.0}, {7, 4, 70.0}, {7, 5, 40.0}});
        out["CE-06 current supplied at A"] = c.amps[0];
        out["CE-06 current supplied at B"] = c.amps[7];
        out["CE-06 loss"] = power_lost(c, 1, 7);
    }
    {  // A 0, B 1, C 2, D 3, return 4; 0.2 ohm/km out and back
        const solved_circuit c =
            solved(5, {{0, 1, 0.024}, {1, 2, 0.032}, {2, 3, 0.036}, {3, 0, 0.028}, {4, 0, 0.0, 240.0}},
                   {{4, 1, 100.0}, {4, 2, 70.0}, {4, 3, 50.0}});
        out["CE-07 voltage at B"] = 240.0 + c.rise(0);
        out["CE-07 voltage at C"] = 240.0 + c.rise(0) + c.rise(1);
        out["CE-07 voltage at D"] = 240.0 - c.rise(3);
    }
    {  // A 0, B 1, C 2, return 3; 0.03 ohm/km out and back
        const solved_circuit c =
            solved(4, {{0, 1, 0.03}, {1, 2, 0.018}, {2, 0, 0.042}, {3, 0, 0.0, 400.0}}, {{3, 1, 150.0}, {3, 2, 200.0}});
        out["CE-08 voltage at B"] = 400.0 + c.rise(0);
        out["CE-08 voltage at C"] = 400.0 - c.rise(2);
        out["CE-08 current in BC"] = c.amps[1];
    }
    // A 0, B 1, C 2, D 3, E 4, return 5
    const std::vector<link> ring{{0, 1, 0.1},   {1, 2, 0.05},  {2, 3, 0.01},
                                 {3, 4, 0.025}, {4, 0, 0.075}, {5, 0, 0.0, 220.0}};
    const std::vector<load> on_ring{{5, 1, 10.0}, {5, 2, 20.0}, {5, 3, 30.0}, {5, 4, 10.0}};
    const std::array<std::string, 5> sections{"AB", "BC", "CD", "DE", "EA"};
    {
        const solved_circuit c = solved(6, ring, on_ring);
        for (std::size_t i = 0; i < sections.size(); ++i) out["CE-09 current " + sections[i]] = c.amps[i];
    }
    {
        std::vector<link> bridged = ring;
        bridged.push_back({4, 2, 0.05});
        const solved_circuit c = solved(6, bridged, on_ring);
        for (std::size_t i = 0; i < sections.size(); ++i) out["CE-10 current " + sections[i]] = c.amps[i];
        out["CE-10 current EC link"] = c.amps[6];
        out["CE-10 voltage at B"] = 220.0 + c.rise(0);
        out["CE-10 voltage at C"] = 220.0 + c.rise(0) + c.rise(1);
        out["CE-10 voltage at D"] = 220.0 - c.rise(4) - c.rise(3);
        out["CE-10 voltage at E"] = 220.0 - c.rise(4);
    }
    {  // the two loop equations are those of two sources that oppose each other over a third branch, as in CE-25
        const std::vector<link> two{{1, 0, 0.5, 4.0}, {0, 1, 2.0, 12.0}};
        std::vector<link> three = two;
        three.push_back({0, 1, 5.0});
        const solved_circuit c = solved(2, three), off = solved(2, two);
        out["CE-21 I1"] = out["CE-25 current of 4 V source"] = c.amps[0];
        out["CE-21 I2"] = out["CE-25 current of 12 V source"] = c.amps[1];
        out["CE-21 current in R3"] = out["CE-25 load current"] = c.amps[2];
        out["CE-25 circulating current, load off"] = off.amps[0];
    }
    {
        const solved_circuit c =
            solved(4, {{0, 1, 2.0}, {1, 3, 11.0}, {0, 2, 14.0}, {2, 3, 3.0}, {1, 2, 32.0}}, {{0, 3, 8.0}});
        out["CE-22 current in 2 ohm"] = c.amps[0];
        out["CE-22 current in 11 ohm"] = c.amps[1];
        out["CE-22 current in 14 ohm"] = c.amps[2];
        out["CE-22 current in 3 ohm"] = c.amps[3];
        out["CE-22 current in 32 ohm"] = c.amps[4];
    }
    out["CE-23 current in 18 ohm"] = out["CE-23 current in 18 ohm, nodal"] =
        solved(2, {{1, 0, 3.0, 8.0}, {1, 0, 2.0, -3.0}, {0, 1, 18.0}}).amps[2];
    {
        const solved_circuit c = solved(2, {{1, 0, 2.0, 4.0}, {1, 0, 1.0, 2.0}, {0, 1, 4.0}});
        out["CE-24 load current"] = c.amps[2];
        out["CE-24 load power"] = power_lost(c, 2, 3);
    }
    constexpr double micro = 1e6;
    out["CE-26 galvanometer current"] =
        micro *
        solved(4, {{3, 0, 0.0, 5.0}, {0, 1, 200.0}, {1, 3, 100.0}, {0, 2, 2005.0}, {2, 3, 1000.0}, {1, 2, 100.0}})
            .amps[5];
    out["CE-27 cross-arm current"] =
        solved(4, {{3, 0, 1.0, 10.0}, {0, 1, 6.0}, {1, 3, 3.0}, {0, 2, 4.0}, {2, 3, 2.0}, {1, 2, 5.0}}).amps[5];
    // a battery of 1 V with 1 ohm: what it sees beside its own
    out["CE-28 bridge resistance"] =
        1.0 / solved(4, {{3, 0, 1.0, 1.0}, {0, 1, 1.0}, {1, 3, 3.0}, {0, 2, 4.0}, {2, 3, 12.0}, {1, 2, 4.0}}).amps[0] -
        1.0;
    {  // all of 1 ohm; meshes 1 and 3 share a branch each with mesh 2
        const solved_circuit c =
            solved(4, {{0, 1, 1.0, 5.0}, {1, 0, 1.0}, {1, 3, 1.0}, {3, 2, 1.0}, {2, 0, 1.0}, {2, 0, 1.0, -2.0}});
        out["CE-29 mesh current 1"] = c.amps[0];
        out["CE-29 mesh current 2"] = c.amps[2];
        out["CE-29 mesh current 3"] = c.amps[5];
    }
    return out;
}

// source: tests/reference/circuit-examples.csv, companions of textbooks named there; CE-30 contradicts its companion
// and is no check. The recomputed column holds six digits.
TEST(CurrentNetwork, WorkedNetworks)
{
    const std::map<std::string, double> all = worked();
    const test::reference_table table("circuit-examples.csv");
    std::size_t published = 0;
    for (const auto& row : table.rows()) {
        const auto found = all.find(row.text("id") + " " + row.text("quantity"));
        ASSERT_NE(found, all.end()) << row.where();
        constexpr double six_digits = 1e-5, volts_cancel = 1e-12;
        const double recomputed = row.number("recomputed_value");
        if (recomputed == 0.0)
            EXPECT_NEAR(found->second, 0.0, volts_cancel) << row.where();
        else
            EXPECT_NEAR_REL(found->second, recomputed, six_digits) << row.where();
        if (!row.has("published_value")) continue;
        ++published;
        if (row.text("id") == "CE-10") {
            // printed 9.75 is 0.78 V over 0.08 ohm, both rounded to two figures on the way
            constexpr double rounded = 0.78 / 0.08;
            EXPECT_EQ(row.number("published_value"), rounded);
            EXPECT_NEAR_REL(found->second, rounded, 0.005 / 0.78 + 0.0005 / 0.08);
        } else {
            EXPECT_NEAR(found->second, row.number("published_value"), 0.0005) << row.where();  // three decimals
        }
    }
    EXPECT_EQ(published, 3u);
    EXPECT_EQ(table.rows().size(), all.size());
}

// Potentials by elimination of the full nodal matrix: nothing of loops or trees is in it. Branches have resistance.
std::vector<double> by_nodes(std::size_t nodes, const std::vector<link>& links, const std::vector<load>& loads)
{
    std::vector<std::vector<double>> m(nodes, std::vector<double>(nodes, 0.0));
    std::vector<double> v(nodes, 0.0);
    for (const link& l : links) {
        const double g = 1.0 / l.ohms;
        m[l.from][l.from] += g;
        m[l.to][l.to] += g;
        m[l.from][l.to] -= g;
        m[l.to][l.from] -= g;
        v[l.from] -= g * l.emf;
        v[l.to] += g * l.emf;
    }
    for (const load& l : loads) {
        v[l.into] += l.amps;
        v[l.out_of] -= l.amps;
    }
    m[0].assign(nodes, 0.0);  // node 0 is the zero
    m[0][0] = 1.0;
    v[0] = 0.0;
    for (std::size_t k = 0; k < nodes; ++k)
        for (std::size_t i = 0; i < nodes; ++i) {
            if (i == k) continue;
            const double f = m[i][k] / m[k][k];
            for (std::size_t j = k; j < nodes; ++j) m[i][j] -= f * m[k][j];
            v[i] -= f * v[k];
        }
    for (std::size_t k = 0; k < nodes; ++k) v[k] /= m[k][k];
    std::vector<double> amps;
    for (const link& l : links) amps.push_back((v[l.from] - v[l.to] + l.emf) / l.ohms);
    return amps;
}

struct drawn_circuit {
    std::size_t nodes;
    std::vector<link> links;
    std::vector<load> loads;
};
drawn_circuit drawn(std::mt19937& random)
{
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    const auto upto = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n)(random); };
    drawn_circuit out{.nodes = 2 + upto(6), .links = {}, .loads = {}};
    const auto ohms = [&] { return std::pow(10.0, between(-4.0, 0.0)); };
    for (std::size_t n = 1; n < out.nodes; ++n) out.links.push_back({upto(n - 1), n, ohms(), 0.0});
    for (std::size_t more = 1 + upto(6); more-- > 0;) {
        const std::size_t a = upto(out.nodes - 1), b = (a + 1 + upto(out.nodes - 2)) % out.nodes;
        out.links.push_back({a, b, ohms(), upto(2) == 0 ? between(-3.0, 3.0) : 0.0});
    }
    for (std::size_t more = 1 + upto(1); more-- > 0;) {
        const std::size_t a = upto(out.nodes - 1);
        out.loads.push_back({a, (a + 1) % out.nodes, between(20.0, 600.0)});
    }
    return out;
}
double largest_of(const std::vector<double>& amps)
{
    double out = 0.0;
    for (const double a : amps) out = std::max(out, std::fabs(a));
    return out;
}

// source: nodal analysis above; what is lost between resistances of 0.1 milliohm and 1 ohm is four digits of sixteen
TEST(CurrentNetwork, RandomNetworksAsByNodalAnalysis)
{
    std::mt19937 random(11);
    for (int i = 0; i < 500; ++i) {
        const drawn_circuit c = drawn(random);
        const solved_circuit found = solved(c.nodes, c.links, c.loads);
        ASSERT_EQ(found.what, division::found) << i;
        const std::vector<double> expected = by_nodes(c.nodes, c.links, c.loads);
        std::vector<double> balance(c.nodes, 0.0);
        for (std::size_t b = 0; b < c.links.size(); ++b) {
            EXPECT_NEAR(found.amps[b], expected[b], 1e-10 * largest_of(expected)) << i;
            balance[c.links[b].from] -= found.amps[b];
            balance[c.links[b].to] += found.amps[b];
        }
        for (const load& l : c.loads) {
            balance[l.into] += l.amps;
            balance[l.out_of] -= l.amps;
        }
        EXPECT_LE(largest_of(balance), 1e-12 * largest_of(found.amps)) << i;
    }
}

// source: a network does not know in which order it is written down, nor which end of a branch is called its first
TEST(CurrentNetwork, OrderAndSenseOfBranchesHaveNoEffect)
{
    std::mt19937 random(12);
    for (int i = 0; i < 200; ++i) {
        const drawn_circuit c = drawn(random);
        const solved_circuit before = solved(c.nodes, c.links, c.loads);
        std::vector<std::size_t> order(c.links.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::shuffle(order.begin(), order.end(), random);
        std::vector<link> links;
        for (const std::size_t b : order) {
            link l = c.links[b];
            std::swap(l.from, l.to);
            l.emf = -l.emf;
            links.push_back(l);
        }
        std::vector<load> loads(c.loads.rbegin(), c.loads.rend());
        const solved_circuit after = solved(c.nodes, links, loads);
        ASSERT_EQ(after.what, division::found);
        for (std::size_t k = 0; k < order.size(); ++k)
            EXPECT_NEAR(after.amps[k], -before.amps[order[k]], 1e-11 * largest_of(before.amps)) << i;
    }
}

TEST(CurrentNetwork, AGivenCurrentWithoutAWayIsUnconnected)
{
    EXPECT_EQ(solved(4, {{0, 1, 1.0}, {2, 3, 1.0}}, {{0, 3, 10.0}}).what, division::unconnected);
    // none is given across the gap
    const solved_circuit apart = solved(4, {{0, 1, 1.0}, {2, 3, 1.0}, {2, 3, 3.0}}, {{0, 1, 10.0}, {2, 3, 8.0}});
    ASSERT_EQ(apart.what, division::found);
    EXPECT_DOUBLE_EQ(apart.amps[0], 10.0);
    EXPECT_DOUBLE_EQ(apart.amps[1], 6.0);
    EXPECT_DOUBLE_EQ(apart.amps[2], 2.0);
}

TEST(CurrentNetwork, ALoopWithoutResistanceIsUndecided)
{
    // two bars without resistance side by side: nothing says which carries how much
    EXPECT_EQ(solved(2, {{0, 1, 0.0, 1.0}, {0, 1, 0.0}}, {{0, 1, 10.0}}).what, division::undecided);
    // one beside a resistance takes all
    const solved_circuit shorted = solved(2, {{0, 1, 2.0}, {0, 1, 0.0}}, {{0, 1, 10.0}});
    ASSERT_EQ(shorted.what, division::found);
    EXPECT_NEAR(shorted.amps[0], 0.0, 1e-12);
    EXPECT_NEAR(shorted.amps[1], 10.0, 1e-12);
}

// A clean contact by its characteristic, which levels off below the melting drop.
class contact_branch final : public drop_of_current {
public:
    contact_branch(const metal_pair& metals, double cold_ohms)
        : law_(joint_limits_of(metals, 40_degC)), cold_ohms_(cold_ohms)
    {
    }
    [[nodiscard]] drop_at_current at(double amps) const override
    {
        constexpr double step = 1e-6;
        const double x = std::fabs(amps) * cold_ohms_;
        if (!(x > 0.0)) return {0.0, cold_ohms_};
        const double volts = law_.drop(x);
        return {std::copysign(volts, amps), (law_.drop(x * (1.0 + step)) - volts) / (step * std::fabs(amps))};
    }

private:
    detail::spot_characteristic law_;
    double cold_ohms_;
};
// A drop that does not follow the current once it has risen.
class levelled_drop final : public drop_of_current {
public:
    levelled_drop(double volts, double reached_at) : volts_(volts), reached_at_(reached_at) {}
    [[nodiscard]] drop_at_current at(double amps) const override
    {
        if (std::fabs(amps) >= reached_at_) return {std::copysign(volts_, amps), 0.0};
        return {volts_ / reached_at_ * amps, volts_ / reached_at_};
    }

private:
    double volts_, reached_at_;
};

// The current of the first of two branches in parallel, by halving.
double by_halving(const drop_of_current& one, const drop_of_current& other, double amps)
{
    double low = 0.0, high = amps;
    for (int i = 0; i < 200; ++i) {
        const double middle = 0.5 * (low + high);
        (one.at(middle).volts < other.at(amps - middle).volts ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

// source: halving; drops of both contacts rise, so that there is one crossing
TEST(CurrentNetwork, TwoContactsInParallel)
{
    const std::array<metal_pair, 3> pairs{metal_pair{mild_steel, mild_steel},
                                          metal_pair{annealed_copper, annealed_copper}, metal_pair{brass, mild_steel}};
    int past_softening = 0;
    for (const metal_pair& metals : pairs)
        for (const double one_ohms : {2e-5, 3e-4, 2e-3, 5e-2})
            for (const double other_ohms : {5e-5, 1e-3, 2.0})
                for (const double amps : {20.0, 150.0, 600.0}) {
                    const contact_branch one(metals, one_ohms), other(metals, other_ohms);
                    current_network n(2);
                    n.add_branch(0, 1, one);
                    n.add_branch(1, 0, other);
                    n.inject(0, 1, amps);
                    ASSERT_TRUE(n.prepare());
                    const divided_currents d = n.divide();
                    ASSERT_EQ(d.what, division::found);
                    EXPECT_LE(d.residual, rounding_of_volts);
                    EXPECT_DOUBLE_EQ(d.amps[0] - d.amps[1], amps);
                    const double volts = one.at(d.amps[0]).volts;
                    if (volts > joint_limits_of(metals, 40_degC).softening.value()) ++past_softening;
                    // the flatter the drops, the less a residual of volts says of the current
                    const double slope = one.at(d.amps[0]).slope + other.at(d.amps[1]).slope;
                    EXPECT_NEAR(d.amps[0], by_halving(one, other, amps),
                                1e-12 * amps + 4.0 * rounding_of_volts * volts / slope);
                }
    EXPECT_GT(past_softening, 10);
}

// source: halving, and by hand: 0.2 V over 5 milliohm are 40 A
TEST(CurrentNetwork, ALevelDropBesideAResistance)
{
    const levelled_drop ring(0.2, 3.0);
    const plain_resistance lead(0.005);
    for (const double amps : {1.0, 30.0, 42.9, 43.1, 300.0}) {
        current_network n(2);
        n.add_branch(0, 1, ring);
        n.add_branch(0, 1, lead);
        n.inject(0, 1, amps);
        ASSERT_TRUE(n.prepare());
        const divided_currents d = n.divide();
        ASSERT_EQ(d.what, division::found) << amps;
        EXPECT_NEAR(d.amps[0], by_halving(ring, lead, amps), 1e-10 * amps);
        if (amps > 43.0) {
            EXPECT_NEAR(d.amps[1], 40.0, 1e-10 * amps);
        }
    }
}

// source: by hand: of two level drops in parallel the lower carries what is left when it has lifted the other as far
TEST(CurrentNetwork, TwoLevelDropsInParallel)
{
    const levelled_drop low(0.15, 3.0), high(0.20, 3.0);
    current_network n(2);
    n.add_branch(0, 1, low);
    n.add_branch(0, 1, high);
    n.inject(0, 1, 300.0);
    ASSERT_TRUE(n.prepare());
    const divided_currents d = n.divide();
    ASSERT_EQ(d.what, division::found);
    EXPECT_NEAR(d.amps[1], 3.0 * 0.15 / 0.20, 1e-9);
    EXPECT_NEAR(d.amps[0], 300.0 - 3.0 * 0.15 / 0.20, 1e-9);
}

// source: nothing but the start of the search differs
TEST(CurrentNetwork, TheStartHasNoEffect)
{
    const contact_branch worn({mild_steel, mild_steel}, 0.05), clean({mild_steel, mild_steel}, 2e-3);
    const plain_resistance lead(0.01), other_lead(0.004);
    current_network n(3);
    n.add_branch(0, 1, worn);
    n.add_branch(1, 2, lead);
    n.add_branch(0, 2, clean);
    n.add_branch(1, 0, other_lead, 0.3);
    n.inject(0, 2, 250.0);
    ASSERT_TRUE(n.prepare());
    const divided_currents cold = n.divide();
    ASSERT_EQ(cold.what, division::found);
    for (const double away : {-5000.0, -100.0, 0.0, 1e-3, 400.0, 1e5}) {
        std::vector<double> loops(n.loops().size(), away);
        const divided_currents d = n.divide(n.branch_currents(loops));
        ASSERT_EQ(d.what, division::found) << away;
        for (std::size_t b = 0; b < n.branches(); ++b) EXPECT_NEAR(d.amps[b], cold.amps[b], 1e-9 * 250.0) << away;
    }
}

// by hand, Kirchhoff's second law: two branches from one node to another, with 5 V and 3 V across them and 1 V that
// drives along the first: round the loop 5 - 1 - 3 = 1 V; and of a third that points back, with -3 V, the same
TEST(CurrentNetwork, VoltsRoundALoopByHand)
{
    const plain_resistance one(1.0), other(2.0);
    current_network alike(2), back(2);
    alike.add_branch(0, 1, one, 1.0);
    alike.add_branch(0, 1, other);
    back.add_branch(0, 1, one, 1.0);
    back.add_branch(1, 0, other);
    ASSERT_TRUE(alike.prepare());
    ASSERT_TRUE(back.prepare());
    const std::vector<double> across{5.0, 3.0}, turned{5.0, -3.0};
    ASSERT_EQ(alike.round_loops(across).size(), 1U);
    EXPECT_DOUBLE_EQ(std::fabs(alike.round_loops(across)[0]), 1.0);
    ASSERT_EQ(back.round_loops(turned).size(), 1U);
    EXPECT_DOUBLE_EQ(std::fabs(back.round_loops(turned)[0]), 1.0);
    const std::vector<double> balanced{5.0, 4.0};
    EXPECT_DOUBLE_EQ(alike.round_loops(balanced)[0], 0.0);
}

TEST(CurrentNetwork, LoopCurrentsAndBranchCurrentsAreInverse)
{
    std::mt19937 random(13);
    std::vector<std::unique_ptr<plain_resistance>> laws;
    const drawn_circuit c = drawn(random);
    current_network n(c.nodes);
    for (const link& l : c.links) {
        laws.push_back(std::make_unique<plain_resistance>(l.ohms));
        n.add_branch(l.from, l.to, *laws.back(), l.emf);
    }
    for (const load& l : c.loads) n.inject(l.into, l.out_of, l.amps);
    ASSERT_TRUE(n.prepare());
    ASSERT_EQ(n.loops().size(), c.links.size() - c.nodes + 1);
    std::vector<double> loops(n.loops().size());
    std::iota(loops.begin(), loops.end(), 3.0);
    const std::vector<double> back = n.loop_currents(n.branch_currents(loops));
    for (std::size_t l = 0; l < loops.size(); ++l) EXPECT_NEAR(back[l], loops[l], 1e-9);
}

}  // namespace

// source: by hand. Twenty branches between two nodes share a current as their conductances; what leads there and away,
// one of them without any resistance, carries all of it. Few nodes stand against many loops.
TEST(CurrentNetwork, ManyBranchesBesideEachOther)
{
    std::vector<std::unique_ptr<plain_resistance>> laws;
    current_network n(4);
    const auto add = [&](std::size_t from, std::size_t to, double ohms) {
        laws.push_back(std::make_unique<plain_resistance>(ohms));
        return n.add_branch(from, to, *laws.back());
    };
    add(0, 1, 0.02);
    add(2, 3, 0.0);
    double siemens = 0.0;
    for (int k = 0; k < 20; ++k) {
        const double ohms = 1e-6 * std::pow(2.0, k);
        siemens += 1.0 / ohms;
        if (k % 2 == 0)
            add(1, 2, ohms);
        else
            add(2, 1, ohms);
    }
    n.inject(0, 3, 300.0);
    ASSERT_TRUE(n.prepare());
    const divided_currents found = n.divide();
    ASSERT_EQ(found.what, division::found);
    EXPECT_LE(found.residual, rounding_of_volts);
    EXPECT_NEAR_REL(found.amps[0], 300.0, 1e-12);
    EXPECT_NEAR_REL(found.amps[1], 300.0, 1e-12);
    for (int k = 0; k < 20; ++k) {
        const double ohms = 1e-6 * std::pow(2.0, k), sense = k % 2 == 0 ? 1.0 : -1.0;
        EXPECT_NEAR_REL(found.amps[2 + static_cast<std::size_t>(k)], sense * 300.0 / ohms / siemens, 1e-11) << k;
    }
}

// source: the sums round the loops themselves; less closely asked for, they are less closely met, and no further off
TEST(CurrentNetwork, AsCloselyAsIsAskedFor)
{
    class rooted final : public drop_of_current {
    public:
        explicit rooted(double volts) : volts_(volts) {}
        [[nodiscard]] drop_at_current at(double amps) const override
        {
            const double root = std::sqrt(1.0 + std::fabs(amps));
            return {std::copysign(volts_ * (root - 1.0), amps), 0.5 * volts_ / root};
        }

    private:
        double volts_;
    };
    std::vector<std::unique_ptr<rooted>> laws;
    current_network n(2);
    for (int k = 0; k < 9; ++k) {
        laws.push_back(std::make_unique<rooted>(0.1 + 0.07 * k));
        n.add_branch(0, 1, *laws.back());
    }
    n.inject(0, 1, 250.0);
    ASSERT_TRUE(n.prepare());
    const divided_currents finely = n.divide(), roughly = n.divide({}, 1e-6);
    ASSERT_EQ(finely.what, division::found);
    ASSERT_EQ(roughly.what, division::found);
    EXPECT_LE(finely.residual, 1e-13);
    EXPECT_LE(roughly.residual, 1e-6);
    const double volts = laws[0]->at(finely.amps[0]).volts;
    double sum = 0.0;
    for (std::size_t k = 0; k < laws.size(); ++k) {
        EXPECT_NEAR_REL(laws[k]->at(finely.amps[k]).volts, volts, rounding_of_volts) << k;
        EXPECT_NEAR_REL(roughly.amps[k], finely.amps[k], 1e-5) << k;
        sum += finely.amps[k];
    }
    EXPECT_NEAR_REL(sum, 250.0, 1e-12);
}
