// Numbers as text.
#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>
#include <string>
#include <tuple>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>

#include "support/near.hpp"

namespace wl = weldloop;

namespace {
double read_back(const std::string& text)
{
    char* end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    EXPECT_EQ(end, text.c_str() + text.size()) << text;
    return value;
}
}  // namespace

TEST(NumberText, KeepsThreeDigitsAndCutsZeros)
{
    EXPECT_EQ(wl::number_text(1.9449), "1.94");
    EXPECT_EQ(wl::number_text(2.0), "2");
    EXPECT_EQ(wl::number_text(2.5), "2.5");
    EXPECT_EQ(wl::number_text(0.0401), "0.0401");
    EXPECT_EQ(wl::number_text(99.96), "100");
    EXPECT_EQ(wl::number_text(0.00099996), "0.001");
    EXPECT_EQ(wl::number_text(-12.34), "-12.3");
}

TEST(NumberText, NeverRoundsDigitsBeforeThePoint)
{
    EXPECT_EQ(wl::number_text(12345.6), "12346");
    EXPECT_EQ(wl::number_text(999.7), "1000");
    EXPECT_EQ(wl::number_text(1e6, 1), "1000000");
    EXPECT_EQ(wl::number_text(123456789.0), "123456789");
}

TEST(NumberText, WritesTheTinyAndTheHugeWithAnExponent)
{
    EXPECT_EQ(wl::number_text(1e-4), "0.0001");
    EXPECT_EQ(wl::number_text(9.99e-5), "9.99e-05");
    EXPECT_EQ(wl::number_text(1e-9), "1e-09");
    EXPECT_EQ(wl::number_text(1.5e-9), "1.5e-09");
    EXPECT_EQ(wl::number_text(1e9), "1e+09");
    EXPECT_EQ(wl::number_text(-6.02214e23), "-6.02e+23");
    EXPECT_EQ(wl::number_text(1.0e-300, 1), "1e-300");
    EXPECT_EQ(wl::number_text(std::numeric_limits<double>::denorm_min(), 2), "4.9e-324");
    EXPECT_EQ(wl::number_text(std::numeric_limits<double>::max(), 3), "1.8e+308");  // 1.80e+308, its zero cut
}

TEST(NumberText, HasOneZero)
{
    EXPECT_EQ(wl::number_text(0.0), "0");
    EXPECT_EQ(wl::number_text(-0.0), "0");
}

TEST(NumberText, SaysInWordsWhatIsNoNumber)
{
    EXPECT_EQ(wl::number_text(std::numeric_limits<double>::quiet_NaN()), "not a number");
    EXPECT_EQ(wl::number_text(-std::numeric_limits<double>::quiet_NaN()), "not a number");
    EXPECT_EQ(wl::number_text(std::numeric_limits<double>::infinity()), "infinite");
    EXPECT_EQ(wl::number_text(-std::numeric_limits<double>::infinity()), "minus infinite");
}

TEST(NumberText, RefusesDigitsNoNumberHas)
{
    for (const int digits : {0, -1, 18, 1000})
        EXPECT_THROW((void)wl::number_text(1.0, digits), wl::out_of_range_error) << digits;
    EXPECT_EQ(wl::number_text(0.1, 17), "0.10000000000000001");
}

// Any number, any digits: what is read back differs by at most half a unit of the last digit.
TEST(NumberText, ReadsBackToTheDigitsAskedFor)
{
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> log_magnitude(-300.0, 300.0), usual(-5.0, 10.0);
    std::uniform_int_distribution<int> digits(1, 17);
    for (int i = 0; i < 20000; ++i) {
        const double value =
            std::pow(10.0, i % 2 == 0 ? usual(random) : log_magnitude(random)) * (i % 3 == 0 ? -1.0 : 1.0);
        const int n = digits(random);
        const std::string text = wl::number_text(value, n);
        EXPECT_NEAR_REL(read_back(text), value, 0.5 * std::pow(10.0, 1 - n) + 2e-16) << text;
        if (n == 17) {
            EXPECT_EQ(read_back(text), value) << text;
        }
    }
}
