// Ratios as checked types.
#include <limits>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/text.hpp>

namespace wl = weldloop;

namespace {
template <class Ratio>
double through(double value)
{
    return static_cast<double>(Ratio(value));
}

template <class Ratio>
std::string message_of(double value)
{
    try {
        (void)Ratio(value);
    } catch (const wl::error& e) {
        return e.what();
    }
    return "none";
}
}  // namespace

TEST(Fractions, TakeAPlainNumberAndGiveItBack)
{
    EXPECT_EQ(through<wl::fraction>(0.0), 0.0);
    EXPECT_EQ(through<wl::fraction>(1.0), 1.0);
    EXPECT_EQ(through<wl::duty_fraction>(1.0), 1.0);
    EXPECT_EQ(through<wl::emissivity>(0.0), 0.0);
    EXPECT_EQ(through<wl::strand_loss>(0.0), 0.0);
    EXPECT_EQ(through<wl::stress_fraction>(1.0), 1.0);
    EXPECT_EQ(through<wl::likelihood>(0.5), 0.5);
    static_assert(static_cast<double>(wl::fraction(0.25)) == 0.25);
    static_assert(sizeof(wl::fraction) == sizeof(double));
}

TEST(Fractions, KeepTheirEnds)
{
    EXPECT_THROW((void)wl::duty_fraction(0.0), wl::out_of_range_error);  // no current at all is no duty
    EXPECT_THROW((void)wl::strand_loss(1.0), wl::out_of_range_error);    // all strands gone is an open lead
    EXPECT_THROW((void)wl::fraction(-1e-12), wl::out_of_range_error);
    EXPECT_THROW((void)wl::fraction(1.0 + 1e-12), wl::out_of_range_error);
    EXPECT_THROW((void)wl::duty_fraction(60.0), wl::out_of_range_error);  // 60 for 60 %
    EXPECT_THROW((void)wl::emissivity(9.0), wl::out_of_range_error);
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                             -std::numeric_limits<double>::infinity()}) {
        EXPECT_THROW((void)wl::fraction(bad), wl::not_finite_error);
        EXPECT_THROW((void)wl::stress_fraction(bad), wl::not_finite_error);
    }
}

TEST(Fractions, SayWhatTheyAllow)
{
    EXPECT_EQ(message_of<wl::duty_fraction>(60.0),
              "weldloop 102: duty fraction is 60; allowed: above 0 to 1, as a plain ratio");
    EXPECT_EQ(message_of<wl::strand_loss>(1.0),
              "weldloop 102: missing strands is 1; allowed: from 0 to below 1, as a plain ratio");
    EXPECT_EQ(message_of<wl::emissivity>(std::numeric_limits<double>::quiet_NaN()),
              "weldloop 101: emissivity is not a number; allowed: a finite number");
}

TEST(Fractions, CompareAndPrint)
{
    EXPECT_LT(wl::fraction(0.2), wl::fraction(0.3));
    EXPECT_EQ(wl::fraction(0.2), 0.2);
    EXPECT_EQ(wl::to_text(wl::fraction(0.623)), "62.3 %");
    EXPECT_EQ(wl::to_text(wl::fraction(0.0)), "0 %");
    EXPECT_EQ(static_cast<double>(wl::duty_fraction{}), 1.0);
    EXPECT_EQ(static_cast<double>(wl::fraction{}), 0.0);
}
