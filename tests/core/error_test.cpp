// Errors keep their ids, and the checks refuse what they say they refuse.
#include <limits>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/require.hpp>

namespace wl = weldloop;
using namespace weldloop::literals;

// Programs test these numbers: they never change.
TEST(Error, IdsAreStable)
{
    EXPECT_EQ(static_cast<int>(wl::error_id::not_finite), 101);
    EXPECT_EQ(static_cast<int>(wl::error_id::out_of_range), 102);
    EXPECT_EQ(static_cast<int>(wl::error_id::bad_text), 103);
    EXPECT_EQ(static_cast<int>(wl::error_id::missing_data), 104);
    EXPECT_EQ(static_cast<int>(wl::error_id::no_solution), 105);
    EXPECT_EQ(static_cast<int>(wl::error_id::bad_station), 106);
    EXPECT_EQ(static_cast<int>(wl::error_id::station_file), 107);
    EXPECT_EQ(wl::not_finite_error("a", "b").id(), wl::error_id::not_finite);
    EXPECT_EQ(wl::out_of_range_error("a", "b", "c").id(), wl::error_id::out_of_range);
    EXPECT_EQ(wl::bad_text_error("a", 0, "c").id(), wl::error_id::bad_text);
    EXPECT_EQ(wl::missing_data_error("a", "b", "c").id(), wl::error_id::missing_data);
    EXPECT_EQ(wl::no_solution_error("a", "b", "c").id(), wl::error_id::no_solution);
    EXPECT_EQ(wl::bad_station_error("a", "b", "c").id(), wl::error_id::bad_station);
}

TEST(Error, SaysWhatWhichAndWhatIsAllowed)
{
    const wl::out_of_range_error e("current", "-5 A", "above zero");
    EXPECT_STREQ(e.what(), "weldloop 102: current is -5 A; allowed: above zero");
    EXPECT_EQ(e.argument(), "current");
    EXPECT_EQ(e.value(), "-5 A");
    EXPECT_EQ(e.allowed(), "above zero");
    const wl::bad_text_error t("260 V", 4, "A");
    EXPECT_EQ(t.position(), 4U);
    EXPECT_STREQ(t.what(), "weldloop 103: text is \"260 V\" (fault at character 5); allowed: A");
}

TEST(Error, AllAreCaughtByTheirBase)
{
    try {
        throw wl::no_solution_error("temperature", "without a solution", "a solution");
    } catch (const wl::error& e) {
        EXPECT_EQ(e.id(), wl::error_id::no_solution);
    }
    EXPECT_THROW(throw wl::bad_station_error("a", "b", "c"), std::runtime_error);
}

TEST(Require, GivesBackWhatItAllows)
{
    const wl::current i = 5_A;
    EXPECT_EQ(&wl::require_positive(i, "current"), &i);
    EXPECT_EQ(wl::require_not_negative(0_A, "current"), 0_A);
    EXPECT_EQ(wl::require_within(5_A, 5_A, 5_A, "current"), 5_A);
    EXPECT_EQ(wl::require_within(0.0, 0.0, 1.0, "number"), 0.0);
    EXPECT_EQ(wl::require_finite(-1.0 * 5_A, "current").value(), -5.0);
}

TEST(Require, RefusesTheRest)
{
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                             -std::numeric_limits<double>::infinity()}) {
        const wl::current i = wl::in_si<wl::current>(bad);
        EXPECT_THROW((void)wl::require_finite(i, "current"), wl::not_finite_error);
        EXPECT_THROW((void)wl::require_positive(i, "current"), wl::not_finite_error);
        EXPECT_THROW((void)wl::require_not_negative(i, "current"), wl::not_finite_error);
        EXPECT_THROW((void)wl::require_within(i, 0_A, 1_A, "current"), wl::not_finite_error);
        EXPECT_THROW((void)wl::require_within(bad, 0.0, 1.0, "number"), wl::not_finite_error);
    }
    EXPECT_THROW((void)wl::require_positive(0_A, "current"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::require_not_negative(-1.0 * 1_A, "current"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::require_within(2_A, 0_A, 1_A, "current"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::require_within(-0.1, 0.0, 1.0, "number"), wl::out_of_range_error);
}

TEST(Require, NamesValueUnitAndRange)
{
    try {
        (void)wl::require_within(50_ft, 0_m, 10_m, "lead length");
        ADD_FAILURE();
    } catch (const wl::error& e) {
        EXPECT_EQ(e.argument(), "lead length");
        EXPECT_EQ(e.value(), "15.24 m");
        EXPECT_EQ(e.allowed(), "0 m to 10 m");
    }
}
