#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>
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

// ---- which of two surfaces is better

namespace {

using namespace weldloop;

double better(surface_state a, surface_state b)
{
    return static_cast<double>(probability_better(a, b));
}

}  // namespace

// judgement and common practice, no published order: clean < oxidized < spatter-covered < light rust < pierced paint <
// heavy rust < unbroken paint, each step with the probability its bands give it; the numbers are those of an adaptive
// quadrature over the two log-normal halves by scipy 1.10.1 (quad, norm.sf). Neighbours are often the other way round,
// and the report must not hide it.
TEST(SurfaceOrder, ProbabilityOfEachStep)
{
    struct step {
        surface_state better, worse;
        double probability;
    };
    for (const step& s : {step{surface_state::clean, surface_state::oxidized, 0.78585},
                          step{surface_state::oxidized, surface_state::spatter_covered, 0.71019},
                          step{surface_state::spatter_covered, surface_state::light_rust, 0.56642},
                          step{surface_state::light_rust, surface_state::painted_pierced, 0.74976},
                          step{surface_state::painted_pierced, surface_state::heavy_rust, 0.70081},
                          step{surface_state::heavy_rust, surface_state::painted_unbroken, 1.0}}) {
        const double p = better(s.better, s.worse);
        std::cout << to_text(s.better) << " before " << to_text(s.worse) << ": " << p << '\n';
        EXPECT_NEAR(p, s.probability, 1e-5) << to_text(s.better);
        EXPECT_GT(p, 0.5);
        EXPECT_NEAR(p + better(s.worse, s.better), 1.0, 1e-5);
    }
    EXPECT_GT(better(surface_state::clean, surface_state::heavy_rust), 0.99);
    EXPECT_NEAR(better(surface_state::clean, surface_state::light_rust), 0.93853, 1e-5);
    EXPECT_NEAR(better(surface_state::clean, surface_state::spatter_covered), 0.90969, 1e-5);  // bare before spattered
    EXPECT_EQ(better(surface_state::painted_unbroken, surface_state::painted_unbroken), 0.5);
    EXPECT_EQ(better(surface_state::painted_unbroken, surface_state::heavy_rust), 0.0);
}

// relation: against drawn pairs (seeded); one half for alike factors; 1 or 0 without scatter
TEST(SurfaceOrder, AgainstDrawnPairs)
{
    const band<double> a{0.3, 1.0, 2.0}, b{0.5, 2.0, 8.0};
    std::mt19937_64 engine(61);
    std::normal_distribution<double> normal;
    const auto draw = [&](const band<double>& x) {
        const double z = normal(engine) / 1.6448536269514722;
        return x.typical * std::pow(z < 0 ? x.typical / x.low : x.high / x.typical, z);
    };
    int smaller = 0;
    constexpr int pairs = 1'000'000;
    for (int i = 0; i < pairs; ++i) smaller += draw(a) < draw(b);
    EXPECT_NEAR(static_cast<double>(probability_smaller(a, b)), static_cast<double>(smaller) / pairs, 0.002);
    EXPECT_NEAR(static_cast<double>(probability_smaller(a, a)), 0.5, 1e-12);
    // one of two is the smaller, halves without scatter and equal medians among them, where what is equal counts half
    for (const double low : {1.0, 0.99, 0.3})
        for (const double high : {1.0, 1.01, 4.0})
            for (const double other_low : {1.0, 0.999, 0.5})
                for (const double other_high : {1.0, 1.001, 2.0})
                    for (const double median : {1.0, 1.0000001, 1.2}) {
                        const band<double> one{low, 1.0, high}, other{median * other_low, median, median * other_high};
                        EXPECT_NEAR(static_cast<double>(probability_smaller(one, other)) +
                                        static_cast<double>(probability_smaller(other, one)),
                                    1.0, 1e-12);
                        EXPECT_GE(static_cast<double>(probability_smaller(one, other)), 0.0);
                    }
    // by hand: two alike; and half of the first equal to the second, which counts half, the other half larger
    EXPECT_NEAR(static_cast<double>(probability_smaller({1.0, 1.0, 2.0}, {1.0, 1.0, 2.0})), 0.5, 1e-12);
    EXPECT_NEAR(static_cast<double>(probability_smaller({1.0, 1.0, 2.0}, {1.0, 1.0, 1.0})), 0.25, 1e-12);
    EXPECT_EQ(static_cast<double>(probability_smaller(exactly(1.0), exactly(2.0))), 1.0);
    EXPECT_EQ(static_cast<double>(probability_smaller(exactly(2.0), exactly(1.0))), 0.0);
    EXPECT_EQ(static_cast<double>(probability_smaller(exactly(2.0), exactly(2.0))), 0.5);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(probability_smaller(band<double>{x, 1.0, 2.0}, a));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(probability_smaller(a, band<double>{x, 1.0, 2.0}));
}
