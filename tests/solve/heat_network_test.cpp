// heat_network: every kind of element against its own formula, and the matrix against differences of the gains.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/heat_network.hpp>

using weldloop::solve::asked;
using weldloop::solve::curve_table;
using weldloop::solve::heat_law;
using weldloop::solve::heat_network;
using weldloop::solve::sloped_by_two;
using weldloop::solve::sparse_lu;
using weldloop::solve::while_current;

namespace {

// 2 + 0.1 a + 0.03 b + 0.002 a b: every slope its own
class bent final : public heat_law {
public:
    [[nodiscard]] sloped_by_two at(double a, double b, asked what) const override
    {
        sloped_by_two out{value(a, b), 0.0, 0.0};
        if (what == asked::slopes) out = {out.value, 0.1 + 0.002 * b, 0.03 + 0.002 * a};
        return out;
    }
    static double value(double a, double b) { return 2.0 + 0.1 * a + 0.03 * b + 0.002 * a * b; }
};
const bent law;
const curve_table table([](double x) { return 1.0 + 0.05 * x; });

// Four nodes with small links from each to each, so that the matrix has every place, and what `more` adds.
struct built {
    heat_network net;
    explicit built(const std::function<void(heat_network&)>& more, bool links = true)
    {
        for (const double c : {10.0, 20.0, 30.0, 40.0}) net.add_node(c);
        if (links)
            for (std::size_t i = 0; i < 4; ++i)
                for (std::size_t j = 0; j < i; ++j) net.link(i, j, 0.01);
        more(net);
        net.close();
    }
    [[nodiscard]] std::vector<double> gain(const std::vector<double>& x, double on) const
    {
        std::vector<double> out(4);
        net.evaluate(x, on, out, nullptr);
        return out;
    }
};

const std::vector<double> state{30.0, 12.0, 55.0, 7.0};

// What the elements alone give, without these links.
std::vector<double> alone(const std::function<void(heat_network&)>& more, double on)
{
    return built(more, false).gain(state, on);
}

struct kind {
    std::string name;
    std::function<void(heat_network&)> add;
    std::size_t free_column = heat_network::nowhere;  // a place followed without a slope
};
const std::vector<kind>& kinds()
{
    static const std::vector<kind> all{
        {"link", [](heat_network& n) { n.link(2, 1, 1.5); }},
        {"link by mean", [](heat_network& n) { n.link(2, 1, law); }},
        {"link by its first", [](heat_network& n) { n.link_by_first(2, 1, law); }},
        {"link that follows a third", [](heat_network& n) { n.link_by_first(2, 1, law, 3); }, 3},
        {"sink", [](heat_network& n) { n.sink(1, 0.7, 4.0); }},
        {"sink while on", [](heat_network& n) { n.sink(1, 0.7, 4.0, while_current::on); }},
        {"surface", [](heat_network& n) { n.surface(2, 1.3, table); }},
        {"constant", [](heat_network& n) { n.constant(3, 5.0); }},
        {"linear source", [](heat_network& n) { n.linear_source(0, 8.0, 0.2); }},
        {"source", [](heat_network& n) { n.add_source({.in = 1, .law = &law, .to = 1}); }},
        {"source of a mean to both",
         [](heat_network& n) {
             n.add_source({.in = 1, .with = 2, .law = &law, .to = 1, .share = 0.6, .also_to = 2, .also_share = 0.4});
         }},
        {"source that follows elsewhere",
         [](heat_network& n) {
             n.add_source({.in = 1, .follows = 2, .law = &law, .to = 0, .share = 0.3, .also_to = 1, .also_share = 0.7});
         }},
    };
    return all;
}

}  // namespace

TEST(HeatNetwork, EveryElementByItsFormula)
{
    const double a = state[2], b = state[1], on = 0.25;
    const auto expect = [&](std::size_t which, const std::vector<double>& watts) {
        const std::vector<double> found = alone(kinds()[which].add, on);
        for (std::size_t i = 0; i < 4; ++i) EXPECT_NEAR(found[i], watts[i], 1e-12) << kinds()[which].name << i;
    };
    double w = 1.5 * (a - b);
    expect(0, {0, w, -w, 0});
    w = bent::value(0.5 * (a + b), 0.0) * (a - b);
    expect(1, {0, w, -w, 0});
    w = bent::value(a, 0.0) * (a - b);
    expect(2, {0, w, -w, 0});
    w = bent::value(a, state[3]) * (a - b);
    expect(3, {0, w, -w, 0});
    expect(4, {0, -0.7 * (b - 4.0), 0, 0});
    expect(5, {0, -0.25 * 0.7 * (b - 4.0), 0, 0});
    expect(6, {0, 0, -1.3 * table.at(a).value, 0});
    expect(7, {0, 0, 0, 5.0});
    expect(8, {0.25 * (8.0 + 0.2 * state[0]), 0, 0, 0});
    expect(9, {0, 0.25 * bent::value(b, 0.0), 0, 0});
    w = 0.25 * bent::value(0.5 * (a + b), 0.0);
    expect(10, {0, 0.6 * w, 0.4 * w, 0});
    w = 0.25 * bent::value(b, a);
    expect(11, {0.3 * w, 0.7 * w, 0, 0});
}

TEST(HeatNetwork, MatrixIsTheSlopeOfTheGains)
{
    for (const kind& k : kinds())
        for (const double on : {0.0, 0.6, 1.0}) {
            built b(k.add);
            std::vector<double> gain(4);
            sparse_lu matrix = b.net.pattern();
            matrix.values()[0] = 1e9;  // what stood there before is gone
            b.net.evaluate(state, on, gain, &matrix);
            for (std::size_t j = 0; j < 4; ++j) {
                if (j == k.free_column) continue;
                const double step = 1e-4;
                std::vector<double> up = state, down = state;
                up[j] += step;
                down[j] -= step;
                const std::vector<double> more = b.gain(up, on), less = b.gain(down, on);
                for (std::size_t i = 0; i < 4; ++i) {
                    const double slope = -(more[i] - less[i]) / (2.0 * step);
                    // table: 1e-6 beyond its points; differences: rounding of 100 W over 1e-4 K
                    EXPECT_NEAR(matrix.values()[matrix.slot(i, j)], slope, 1e-6)
                        << k.name << " on " << on << " row " << i << " column " << j;
                }
            }
        }
}

TEST(HeatNetwork, SumsAreWhatIsGained)
{
    for (const kind& k : kinds())
        for (const double on : {0.0, 0.4}) {
            built b(k.add);
            std::vector<double> gain(4);
            b.net.evaluate(state, on, gain, nullptr);
            const heat_network::totals sums = b.net.totals_at(state, on);
            EXPECT_NEAR(gain[0] + gain[1] + gain[2] + gain[3], sums.made - sums.lost, 1e-11) << k.name;
        }
    heat_network::totals sums = built(kinds()[7].add).net.totals_at(state, 0.0);
    EXPECT_EQ(sums.made, 5.0);
    EXPECT_EQ(sums.lost, 0.0);
    sums = built(kinds()[4].add).net.totals_at(state, 0.0);
    EXPECT_EQ(sums.made, 0.0);
    EXPECT_NEAR(sums.lost, 0.7 * 8.0, 1e-12);
}

TEST(HeatNetwork, HeatsOfSourcesOneByOne)
{
    built b([](heat_network& n) {
        n.add_source({.in = 1, .law = &law, .to = 1, .share = 0.5});
        n.add_source({.in = 2, .follows = 3, .law = &law, .to = 3});
    });
    std::vector<double> heats(2);
    const heat_network::totals sums = b.net.curved_totals(state, 0.5, heats);
    EXPECT_DOUBLE_EQ(heats[0], bent::value(state[1], 0.0));  // while current flows, all of it
    EXPECT_DOUBLE_EQ(heats[1], bent::value(state[2], state[3]));
    EXPECT_DOUBLE_EQ(sums.made, 0.5 * (0.5 * heats[0] + heats[1]));
}

// The balance about a state in the form the march solves: matrix x - heat at zero - curvature is minus the gain, at the
// state itself and anywhere else.
TEST(HeatNetwork, CurvatureMakesTheStraightNetworkWhole)
{
    for (const kind& k : kinds())
        for (const double on : {0.0, 1.0}) {
            built b(k.add);
            sparse_lu matrix = b.net.pattern();
            std::vector<double> slopes;
            b.net.straighten(state, on, slopes, matrix);
            const std::vector<double> x{31.0, 20.0, 40.0, 9.0}, shift{0.5, -3.0, 8.0, 2.0};
            std::vector<double> moved(4), right(4);
            for (std::size_t i = 0; i < 4; ++i) moved[i] = x[i] + shift[i];
            b.net.heat_at_zero(on, right);
            b.net.add_curvature({x, shift}, on, slopes, right);
            const std::vector<double> gain = b.gain(moved, on);
            for (std::size_t i = 0; i < 4; ++i) {
                double left = 0.0;
                for (std::size_t j = 0; j < 4; ++j) left += matrix.values()[matrix.slot(i, j)] * moved[j];
                EXPECT_NEAR(right[i] - left, gain[i], 1e-11) << k.name << " on " << on << " row " << i;
            }
        }
}

TEST(HeatNetwork, KnowsWhichNodesAreCurved)
{
    built b([](heat_network& n) {
        n.surface(2, 1.0, table);
        n.add_source({.in = 0, .law = &law, .to = 3});
    });
    EXPECT_EQ(b.net.curved_nodes(), (std::vector<std::size_t>{0, 2}));
}

TEST(HeatNetwork, NothingOfNoSize)
{
    built none([](heat_network& n) {
        n.link(0, 2, 0.0);
        n.sink(0, 0.0, 5.0);
        n.surface(0, 0.0, table);
    });
    EXPECT_EQ(none.net.pattern().pairs(), 6u);  // the small links alone
    EXPECT_TRUE(none.net.curved_nodes().empty());
}
