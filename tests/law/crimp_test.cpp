#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/crimp.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;
using test::random_numbers;

conductor_size gauge(const std::string& text)
{
    const std::size_t slash = text.find('/');
    return slash == std::string::npos ? awg(std::stoi(text)) : aught(std::stoi(text));
}

}  // namespace

// source: tests/reference/contacts-crimp-mil.csv, MIL-T-7928E; rows from 2 AWG on are recalled, and the library says so
TEST(Crimp, LimitsOfTheTable)
{
    std::size_t at = 0;
    int read = 0;
    for (const auto& row : test::reference_table("contacts-crimp-mil.csv").rows()) {
        ASSERT_LT(at, crimp_limits.size());
        const crimp_limit_row& mine = crimp_limits[at++];
        EXPECT_EQ(mine.size, gauge(row.text("awg"))) << row.where();
        EXPECT_EQ(mine.test_current.value(), row.number("test_current_A")) << row.where();
        EXPECT_NEAR_REL(mine.highest_drop.value() * 1e3, row.number("max_voltage_drop_mV"), 1e-12) << row.where();
        EXPECT_NEAR_REL(mine.pull_out.value(), row.number("min_tensile_N"), 2e-3) << row.where();
        EXPECT_EQ(mine.recalled, row.text("verified") == "memory") << row.where();
        const crimp_limit limit = crimp_limit_of(mine.size.area());
        EXPECT_NEAR(limit.resistance.value() * 1e6, row.number("max_resistance_microohm_derived"), 0.051)
            << row.where();
        if (!mine.recalled) {
            EXPECT_EQ(limit.from, &crimp_limits_read) << row.where();
            ++read;
        } else {
            EXPECT_EQ(limit.from, &crimp_limits_recalled) << row.where();
        }
    }
    EXPECT_EQ(at, crimp_limits.size());
    EXPECT_EQ(read, 12);
}

// relation: between sizes the limit is a straight line of the logarithms, so it lies between its neighbours
TEST(Crimp, LimitsBetweenTheSizes)
{
    random_numbers random(10);
    for (int i = 0; i < test::random_cases; ++i) {
        const double a = random.log_between(0.13, 300);
        const crimp_limit limit = crimp_limit_of(in_si<area>(a * 1e-6));
        EXPECT_GT(limit.resistance.value(), 0.0);
        EXPECT_EQ(limit.from == &crimp_limit_beyond, a > aught(4).area().value() * 1e6);
        if (a > 14.0) {
            EXPECT_LT(crimp_limit_of(in_si<area>(1.01e-6 * std::min(a, 297.0))).resistance,
                      crimp_limit_of(in_si<area>(1e-6 * std::min(a, 297.0))).resistance);
        }
    }
    const double middle = std::sqrt(awg(6).area().value() * awg(4).area().value());
    const double expected =
        std::sqrt(crimp_limit_of(awg(6).area()).resistance.value() * crimp_limit_of(awg(4).area()).resistance.value());
    EXPECT_NEAR_REL(crimp_limit_of(in_si<area>(middle)).resistance.value(), expected, 1e-12);
    EXPECT_EQ(crimp_limit_of(awg(3).area()).from, &crimp_limits_recalled);  // one neighbour is recalled
}

// judgement: the limit is the 95 % point of a sound crimp
TEST(Crimp, BandHasTheLimitOnTop)
{
    for (const crimp_limit_row& row : crimp_limits) {
        const band<resistance> r = crimp_resistance(row.size.area());
        EXPECT_NEAR_REL(r.high.value(), (row.highest_drop / row.test_current).value(), 1e-9);
        EXPECT_LT(r.low, r.typical);
        EXPECT_LT(r.typical, r.high);
    }
}

// judgement, worked by hand: a fifth missing, 1/0.8^3 = 1.953; a 50 mm2 cable in a 70 mm2 barrel, (70/50)^3 = 2.744
TEST(Crimp, UnderfilledBarrels)
{
    EXPECT_NEAR_REL(underfilled_factor(barrel_shortfall(50_mm2, 50_mm2, 0.2)), 1.953125, 1e-12);
    EXPECT_NEAR_REL(underfilled_factor(barrel_shortfall(50_mm2, 70_mm2)), 2.744, 1e-12);
    EXPECT_NEAR_REL(underfilled_factor(barrel_shortfall(70_mm2, 50_mm2)), 2.744, 1e-12);
    EXPECT_NEAR_REL(underfilled_factor(barrel_shortfall(70_mm2, 50_mm2, 0.2)), 2.744 * 1.953125, 1e-12);
    EXPECT_EQ(underfilled_factor(0.0), 1.0);
    double last = 0.0;
    for (double s = 0.0; s < 1.0; s += 0.01) {
        EXPECT_GT(underfilled_factor(s), last);
        last = underfilled_factor(s);
    }
}

TEST(Crimp, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(crimp_limit_of(in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(crimp_resistance(in_si<area>(x)));
    EXPECT_THROW((void)crimp_limit_of(0.1_mm2), out_of_range_error);
    EXPECT_THROW((void)crimp_limit_of(301_mm2), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(barrel_shortfall(in_si<area>(x), 50_mm2));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(barrel_shortfall(50_mm2, in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(barrel_shortfall(50_mm2, 50_mm2, x));
    EXPECT_REFUSES_BAD_NUMBERS(underfilled_factor(x));
    EXPECT_THROW((void)underfilled_factor(1.0), out_of_range_error);
}
