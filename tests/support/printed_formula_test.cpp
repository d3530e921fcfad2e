#include <cmath>
#include <numbers>
#include <stdexcept>

#include <gtest/gtest.h>

#include "support/near.hpp"
#include "support/printed_formula.hpp"

using weldloop::test::printed_value;
using weldloop::test::text_between;

TEST(PrintedFormula, FollowsTheOrderOfOperations)
{
    EXPECT_DOUBLE_EQ(printed_value("2+3*4"), 14.0);
    EXPECT_DOUBLE_EQ(printed_value("12/3/2 - 1"), 1.0);
    EXPECT_DOUBLE_EQ(printed_value("-2^2"), -4.0);
    EXPECT_DOUBLE_EQ(printed_value("2^-1"), 0.5);
    EXPECT_DOUBLE_EQ(printed_value("10^(-12/4)"), 1e-3);
    EXPECT_DOUBLE_EQ(printed_value("1.458e-6*2"), 2.916e-6);
    EXPECT_DOUBLE_EQ(printed_value("y = 2*(x + 1)", {{"x", 3.0}}), 8.0);
    EXPECT_DOUBLE_EQ(printed_value("8 pi f 1e-7 k / R", {{"f", 50.0}, {"k", 1.0}, {"R", 2.0}}),
                     8.0 * std::numbers::pi * 50.0 * 1e-7 / 2.0);
    EXPECT_DOUBLE_EQ(printed_value("x^4/(192+0.8 x^4)", {{"x", 2.0}}), 16.0 / 204.8);
    EXPECT_DOUBLE_EQ(printed_value("sqrt(1-exp(-2)) + ln(3)"), std::sqrt(1.0 - std::exp(-2.0)) + std::log(3.0));
}

TEST(PrintedFormula, RefusesWhatItCannotRead)
{
    for (const char* bad : {"", "2+", "(2", "2)", "x", "2 & 3", "sqrt 2", "sqrt(2", "y ="})
        EXPECT_THROW((void)printed_value(bad), std::runtime_error) << bad;
}

TEST(PrintedFormula, CutsTexts)
{
    EXPECT_EQ(text_between("up to 600 A (44 V)", "up to ", " A"), "600");
    EXPECT_EQ(text_between("a = b", "= ", ""), "b");
    EXPECT_THROW((void)text_between("a = b", "; ", ""), std::runtime_error);
    EXPECT_THROW((void)text_between("a = b", "a", ";"), std::runtime_error);
}
