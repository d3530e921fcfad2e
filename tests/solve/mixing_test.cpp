// Anderson's mixing against fixed points known in closed form: straight maps whose answer follows from their matrix,
// and the cosine's (OEIS A003957, 0.739085133215160641655...).
#include <weldloop/solve/mixing.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace {
using weldloop::solve::anderson_mixing;

// x_i = a_i x_(other i) + b_i: the answers of strong feedback, one of them beyond what repeating would bear.
struct straight_map {
    std::vector<double> by, start;
    [[nodiscard]] std::vector<double> operator()(const std::vector<double>& x) const
    {
        std::vector<double> out(x.size());
        for (std::size_t i = 0; i < x.size(); ++i) out[i] = by[i] * x[i] + start[i];
        return out;
    }
    [[nodiscard]] double fixed(std::size_t i) const { return start[i] / (1.0 - by[i]); }
};

double furthest(const straight_map& g, const std::vector<double>& x)
{
    double out = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) out = std::max(out, std::fabs(x[i] - g.fixed(i)));
    return out;
}

TEST(Mixing, FindsTheFixedPointOfAStraightMapInOneStepMoreThanItHasDirections)
{
    const straight_map g{{0.95, -0.9, 1.6}, {3.0, 10.0, -2.0}};
    std::vector<double> x(3, 0.0);
    anderson_mixing mixing;
    for (int k = 0; k < 4; ++k) {
        EXPECT_GT(furthest(g, x), 1e-3) << k;
        mixing.step(x, g(x), 1.0);
    }
    EXPECT_LT(furthest(g, x), 1e-9);
}

TEST(Mixing, AShareOfTheRestFindsTheSamePoint)
{
    const straight_map g{{0.95, -0.9, 1.6}, {3.0, 10.0, -2.0}};
    std::vector<double> x(3, 0.0);
    anderson_mixing mixing;
    mixing.step(x, g(x), 0.25);
    EXPECT_NEAR(x[0], 0.25 * 3.0, 1e-15);  // the first step knows nothing but its rest
    for (int k = 0; k < 3; ++k) mixing.step(x, g(x), 0.25);
    EXPECT_LT(furthest(g, x), 1e-9);
}

TEST(Mixing, FindsAFixedPointOfMoreDirectionsThanItKeeps)
{
    straight_map g;
    for (int i = 0; i < 12; ++i) {
        g.by.push_back(0.95 - 0.15 * i);
        g.start.push_back(1.0 + i);
    }
    std::vector<double> x(g.by.size(), 0.0);
    anderson_mixing mixing;
    int steps = 0;
    while (furthest(g, x) > 1e-6 && ++steps < 100) mixing.step(x, g(x), 1.0);
    EXPECT_LT(steps, 100);  // repeating g takes 0.95^k = 1e-6/20, 328 steps
    EXPECT_GT(steps, 5);
}

TEST(Mixing, FindsTheCosinesFixedPointInFewerStepsThanRepeating)
{
    std::vector<double> x(1, 0.0);
    anderson_mixing mixing;
    for (int k = 0; k < 7; ++k) mixing.step(x, std::array{std::cos(x[0])}, 1.0);
    EXPECT_NEAR(x[0], 0.739085133215160641655, 1e-12);  // repeating is 1e-2 off by then
}

TEST(Mixing, AtRestStaysWhereItIs)
{
    std::vector<double> x{2.0, 3.0};
    anderson_mixing mixing;
    for (int k = 0; k < 6; ++k) mixing.step(x, std::array{2.0, 3.0}, 1.0);
    EXPECT_EQ(x, (std::vector<double>{2.0, 3.0}));
}

TEST(Mixing, RestartedItKnowsNothingOfTheStepsBefore)
{
    const straight_map g{{0.5, -0.3}, {1.0, 1.0}}, other{{-0.9, 0.2}, {5.0, 1.0}};
    std::vector<double> x(2, 0.0), fresh(2, 0.0);
    anderson_mixing used, mixing;
    for (int k = 0; k < 3; ++k) used.step(x, g(x), 1.0);
    used.restart();
    x = fresh;
    for (int k = 0; k < 2; ++k) {
        used.step(x, other(x), 1.0);
        mixing.step(fresh, other(fresh), 1.0);
        EXPECT_EQ(x, fresh);
    }
}

}  // namespace
