#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/law/scatter.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// relation: the product of two log-normal factors, against a million drawn ones (seeded; 1 % is its sampling error)
TEST(Scatter, ProductOfLogNormalFactors)
{
    const band<double> a{2.0 / 3.0, 2.0, 6.0}, b{5.0 / 1.5, 5.0, 7.5};
    const double ninety_five = 1.6448536269514722;
    std::mt19937_64 engine(11);
    std::normal_distribution<double> normal;
    std::vector<double> drawn(1'000'000);
    for (double& x : drawn) {
        const double one = normal(engine), other = normal(engine);
        x = 10.0 * std::exp((std::log(3.0) * one + std::log(1.5) * other) / ninety_five);
    }
    std::sort(drawn.begin(), drawn.end());
    const band<double> found = product_of(a, b);
    EXPECT_NEAR_REL(found.low, drawn[50'000], 0.01);
    EXPECT_NEAR_REL(found.typical, drawn[500'000], 0.01);
    EXPECT_NEAR_REL(found.high, drawn[950'000], 0.01);
}

TEST(Scatter, AFactorWithoutScatterOnlyScales)
{
    const band<double> a{0.3, 1.0, 2.0};
    EXPECT_EQ(product_of(a, exactly(3100.0)), (band<double>{930.0, 3100.0, 6200.0}));
    EXPECT_EQ(product_of(exactly(3100.0), a), (band<double>{930.0, 3100.0, 6200.0}));
    EXPECT_EQ(product_of(exactly(2.0), exactly(3.0)), exactly(6.0));
}

// properties: symmetric; wider than either factor, narrower than both ends multiplied
TEST(Scatter, LiesBetweenOneFactorAndBothEnds)
{
    test::random_numbers random(12);
    const auto any = [&] {
        const double middle = random.log_between(1e-3, 1e3);
        return band<double>{middle / random.log_between(1.0, 100), middle, middle * random.log_between(1.0, 100)};
    };
    for (int i = 0; i < test::random_cases; ++i) {
        const band<double> a = any(), b = any(), p = product_of(a, b), q = product_of(b, a);
        EXPECT_EQ(p, q);
        EXPECT_LE(p.high, a.high * b.high * (1 + 1e-12));
        EXPECT_GE(p.high / p.typical, std::max(a.high / a.typical, b.high / b.typical) * (1 - 1e-12));
        EXPECT_GE(p.low, a.low * b.low * (1 - 1e-12));
        EXPECT_LE(p.low / p.typical, std::min(a.low / a.typical, b.low / b.typical) * (1 + 1e-12));
    }
}

TEST(Scatter, RefusesWhatCannotBe)
{
    const band<double> fine{0.5, 1.0, 2.0};
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(product_of({x, 1.0, 2.0}, fine));
    EXPECT_REFUSES_BAD_NUMBERS(product_of(fine, {0.5, x, 2.0}));
    EXPECT_REFUSES_BAD_NUMBERS(product_of(fine, {0.5, 1.0, x}));
    EXPECT_THROW((void)product_of({2.0, 1.0, 3.0}, fine), out_of_range_error);
    EXPECT_THROW((void)product_of({1.0, 3.0, 2.0}, fine), out_of_range_error);
}
