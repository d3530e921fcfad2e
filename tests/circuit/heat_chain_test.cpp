#include <weldloop/circuit/heat_chain.hpp>

#include <cmath>
#include <random>

#include "support/near.hpp"

namespace {
using namespace weldloop::detail;

TEST(HeatChain, TwoLumpsByHand)
{
    // 10 W into a lump of 1 W/K, joined by 2 W/K to a lump of 3 W/K: a = 10 (3 + 2)/(1 x 5 + 2 x 3), b = 2 a/5
    const auto rise = solve_chain({{10, 1, 0}, {0, 3, 0}}, {{2, 2, 0}});
    EXPECT_NEAR_REL(rise[0], 50.0 / 11.0, 1e-8);
    EXPECT_NEAR_REL(rise[1], 20.0 / 11.0, 1e-8);
}

TEST(HeatChain, HeatIsConserved)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> power(0, 50), sink(0.05, 2), own(0.05, 3), share(0, 1), far(-10, 80);
    for (int n = 1; n <= 12; ++n) {
        std::vector<chain_node> nodes;
        std::vector<chain_link> links;
        for (int i = 0; i < n; ++i) nodes.push_back({power(random), sink(random), power(random) - 25});
        for (int i = 0; i + 1 < n; ++i) {
            const double o = own(random);
            links.push_back({o, o * share(random), far(random)});
        }
        const auto rise = solve_chain(nodes, links);
        double in = 0, out = 0, scale = 1;
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            in += nodes[i].power + nodes[i].sink_flow;
            out += nodes[i].sink * rise[i];
            scale += std::fabs(nodes[i].power) + std::fabs(nodes[i].sink * rise[i]);
        }
        for (std::size_t i = 0; i < links.size(); ++i) {
            out += links[i].own * (rise[i] - links[i].far) - links[i].cross * (rise[i + 1] - links[i].far);
            out += links[i].own * (rise[i + 1] - links[i].far) - links[i].cross * (rise[i] - links[i].far);
        }
        EXPECT_NEAR(in, out, 1e-7 * scale) << n << " lumps";
    }
}

TEST(HeatChain, WithoutLossItIsAbsurdlyHotButFinite)
{
    const auto rise = solve_chain({{1, 0, 0}}, {});
    EXPECT_TRUE(std::isfinite(rise[0]));
    EXPECT_GT(rise[0], 1e6);
}

}  // namespace
