// The characters of numbers, the same bytes on every standard library.
#include <cmath>
#include <limits>
#include <locale>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/number_chars.hpp>

namespace wl = weldloop;
using wl::detail::notation;
using wl::detail::number_at_front;
using wl::detail::number_chars;

TEST(NumberChars, WritesAsPrintfDoesInTheCLocale)
{
    // ISO/IEC 9899, 7.21.6.1: at least two digits of exponent, ties to even in the exact binary value
    EXPECT_EQ(number_chars(12.5, notation::fixed, 2), "12.50");
    EXPECT_EQ(number_chars(0.125, notation::fixed, 2), "0.12");
    EXPECT_EQ(number_chars(0.375, notation::fixed, 2), "0.38");
    EXPECT_EQ(number_chars(2.675, notation::fixed, 2), "2.67");
    EXPECT_EQ(number_chars(-0.001, notation::fixed, 2), "-0.00");
    EXPECT_EQ(number_chars(12.5, notation::scientific, 1), "1.2e+01");
    EXPECT_EQ(number_chars(6.02214e-230, notation::scientific, 4), "6.0221e-230");
    EXPECT_EQ(number_chars(std::numeric_limits<double>::denorm_min(), notation::scientific, 1), "4.9e-324");
    const std::string longest = number_chars(std::numeric_limits<double>::max(), notation::fixed, 17);
    EXPECT_EQ(longest.size(), 309U + 1U + 17U);
    EXPECT_EQ(longest.substr(0, 18), "179769313486231570");
}

TEST(NumberChars, ReadsTheLongestDecimalNumberAndNoFurther)
{
    const auto used = [](std::string_view text) { return number_at_front(text).used; };
    EXPECT_EQ(used("2.5 V"), 3U);
    EXPECT_EQ(used("12A"), 2U);  // A is a unit, not a digit
    EXPECT_EQ(used("5."), 2U);
    EXPECT_EQ(used(".5m"), 2U);
    EXPECT_EQ(used("-4e-3x"), 5U);
    EXPECT_EQ(used("4e"), 1U);
    EXPECT_EQ(used("4e+"), 1U);
    EXPECT_EQ(used("4E+2"), 4U);
    EXPECT_EQ(used("0x10"), 1U);
    EXPECT_EQ(used("1,5"), 1U);
    for (const std::string_view none : {"", "-", "+1", ".", "-.e3", "inf", "nan", "A", " 1", "--1"})
        EXPECT_EQ(used(none), 0U) << none;
}

TEST(NumberChars, ReadsExactlyAndSaysWhatNoDoubleHolds)
{
    EXPECT_EQ(number_at_front("0.1").value, 0.1);
    EXPECT_EQ(number_at_front("-10").value, -10.0);
    EXPECT_EQ(number_at_front("9007199254740993").value, 9007199254740992.0);  // halfway: to even
    EXPECT_EQ(number_at_front("1.7976931348623157e308").value, std::numeric_limits<double>::max());
    EXPECT_EQ(number_at_front("5e-324").value, std::numeric_limits<double>::denorm_min());
    EXPECT_EQ(number_at_front("0e999").value, 0.0);
    for (const std::string_view beyond : {"1e999", "-1e999", "1e-999"}) {
        EXPECT_FALSE(number_at_front(beyond).value) << beyond;
        EXPECT_EQ(number_at_front(beyond).used, beyond.size());
    }
}

namespace {
struct comma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};
}  // namespace

TEST(NumberChars, DoNotKnowTheGlobalLocale)
{
    const std::locale before = std::locale::global(std::locale(std::locale(), new comma));
    const std::string text = number_chars(1234567.25, notation::fixed, 2);
    const auto value = number_at_front("1234.5").value;
    std::locale::global(before);
    EXPECT_EQ(text, "1234567.25");
    EXPECT_EQ(value, 1234.5);
}
