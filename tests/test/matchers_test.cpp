// What the matchers for users' tests let through and refuse, and what they say; how types are printed.
#include <limits>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/rating/finding_id.hpp>
#include <weldloop/rating/verdict.hpp>
#include <weldloop/test/matchers.hpp>
#include <weldloop/test/print.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using test::inside, test::near_quantity, test::near_temperature, test::within_percent;
using testing::Each, testing::Not, testing::PrintToString;

namespace {

template <class Matcher, class Value>
std::string explained(const Matcher& m, const Value& x)
{
    const testing::Matcher<const Value&> matcher = m;
    testing::StringMatchResultListener why;
    EXPECT_FALSE(matcher.MatchAndExplain(x, &why));
    std::ostringstream out;
    matcher.DescribeTo(&out);
    return out.str() + "; " + why.str();
}

const voltage no_number = in_si<voltage>(std::numeric_limits<double>::quiet_NaN());

}  // namespace

TEST(Matchers, HoldAQuantityAgainstAToleranceWithItsUnit)
{
    EXPECT_THAT(1.245_V, near_quantity(1.25_V, 10_mV));
    EXPECT_THAT(1.255_V, near_quantity(1.25_V, 10_mV));
    EXPECT_THAT(1.3_V, Not(near_quantity(1.25_V, 10_mV)));
    EXPECT_THAT(-1.25_V, near_quantity(-1.25_V, 0_V));
    EXPECT_THAT(no_number, Not(near_quantity(1.25_V, 10_mV)));
    EXPECT_EQ(explained(near_quantity(1.25_V, 10_mV), 1.5_V), "is within 0.01 V of 1.25 V; which differs by 0.25 V");
    EXPECT_EQ(explained(near_quantity(2_m, 1_mm), 1_m), "is within 0.001 m of 2 m; which differs by -1 m");
    EXPECT_THAT((std::vector<current>{199_A, 201_A}), Each(near_quantity(200_A, 1_A)));
    EXPECT_THROW(static_cast<void>(near_quantity(1_V, -1_mV)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(near_quantity(no_number, 1_mV)), not_finite_error);
}

TEST(Matchers, HoldATemperatureAgainstADifference)
{
    EXPECT_THAT(85_degC, near_temperature(84.5_degC, in_si<temperature_difference>(0.51)));
    EXPECT_THAT(185_degF, near_temperature(85_degC, in_si<temperature_difference>(1e-9)));  // 185 degF is 85 degC
    EXPECT_EQ(explained(near_temperature(60_degC, in_si<temperature_difference>(2.0)), 70_degC),
              "is within 2 K of 60 degC; which differs by 10 K");
}

TEST(Matchers, HoldAQuantityAgainstAPercentage)
{
    EXPECT_THAT(101_A, within_percent(100_A, 1.0 + 1e-9));
    EXPECT_THAT(-99.5_A, within_percent(-100_A, 1.0));
    EXPECT_EQ(explained(within_percent(100_A, 1.0), 98_A), "is within 1 % of 100 A; which differs by -2 A");
    EXPECT_THROW(static_cast<void>(within_percent(0_A, 1.0)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(within_percent(1_A, -1.0)), out_of_range_error);
}

TEST(Matchers, HoldAValueAgainstABand)
{
    const band<voltage> drop{0.2_V, 0.25_V, 0.4_V};
    EXPECT_THAT(0.2_V, inside(drop));
    EXPECT_THAT(0.4_V, inside(drop));
    EXPECT_THAT(0.5_V, Not(inside(drop)));
    EXPECT_THAT(no_number, Not(inside(drop)));
    EXPECT_THAT(60_degC, inside(band<temperature>{50_degC, 60_degC, 90_degC}));
    EXPECT_EQ(explained(inside(drop), 0.5_V), "is between 0.2 V and 0.4 V; which is not below its high point");
    EXPECT_THROW(static_cast<void>(inside(band<voltage>{0.4_V, 0.25_V, 0.2_V})), out_of_range_error);
}

TEST(Printing, NamesUnitsAndWords)
{
    EXPECT_EQ(PrintToString(1.25_V), "1.25 V");
    EXPECT_EQ(PrintToString(1_in), "0.0254 m");
    EXPECT_EQ(PrintToString(85.25_degC), "85.25 degC");
    EXPECT_EQ(PrintToString(band<voltage>{0.2_V, 0.25_V, 0.4_V}), "0.2 V / 0.25 V / 0.4 V");
    EXPECT_EQ(PrintToString(band<double>{0.5, 1, 2}), "0.5 / 1 / 2");
    EXPECT_EQ(PrintToString(verdict::over_limit), "over limit");
    EXPECT_EQ(PrintToString(finding_id::spots_melt), "spots_melt");
    EXPECT_EQ(PrintToString(aught(2)), "2/0 AWG");
    EXPECT_EQ(PrintToString(duty_cycle::of(6_min, 10_min)), "60 % of 10 min");
    EXPECT_EQ(PrintToString(fraction(0.6)), "60 %");
    EXPECT_EQ(PrintToString(std::optional<current>(200_A)), "(200 A)");
    EXPECT_EQ(PrintToString(std::vector<current>{1_A, 2_A}), "{ 1 A, 2 A }");
}
