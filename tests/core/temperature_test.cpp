// The temperature point.
#include <limits>
#include <random>
#include <type_traits>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/temperature.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

// By an independent program, see the head of the table.
TEST(Temperature, ConvertsAsAnIndependentProgram)
{
    const weldloop::test::reference_table table("temperature-points.csv");
    for (const auto& row : table.rows()) {
        const double value = row.number("value");
        const wl::temperature t =
            row.text("scale") == "degC" ? wl::temperature::celsius(value) : wl::temperature::fahrenheit(value);
        EXPECT_NEAR_REL(t.in_kelvin(), row.number("kelvin"), 1e-14) << row.where();
    }
}

TEST(Temperature, RoundTrips)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> celsius(-273.0, 3000.0);
    for (int i = 0; i < 10000; ++i) {
        const double c = celsius(random);
        EXPECT_NEAR(wl::temperature::celsius(c).in_celsius(), c, 1e-12 * 3273.0);
        const double f = 1.8 * c + 32.0;
        EXPECT_NEAR(wl::temperature::fahrenheit(f).in_fahrenheit(), f, 1e-12 * 5900.0);
        EXPECT_NEAR(wl::temperature::fahrenheit(f).in_celsius(), c, 1e-12 * 3273.0);
        EXPECT_EQ(wl::temperature::kelvin(c + 273.15).in_kelvin(), c + 273.15);
    }
}

TEST(Temperature, Sixty_EightFahrenheitIsTwentyCelsiusWithinRounding)
{
    EXPECT_NEAR((68_degF - 20_degC).value(), 0.0, 1e-12);
    EXPECT_EQ(wl::reference_temperature, 20_degC);
    EXPECT_EQ(wl::temperature{}, 20_degC);
}

TEST(Temperature, DifferencesAreQuantities)
{
    EXPECT_NEAR((85_degC - 25_degC).value(), 60.0, 1e-12);
    EXPECT_NEAR((25_degC + 60_K).in_celsius(), 85.0, 1e-12);
    EXPECT_NEAR((60_K + 25_degC).in_celsius(), 85.0, 1e-12);
    EXPECT_NEAR((25_degC - 60_K).in_celsius(), -35.0, 1e-12);
    EXPECT_LT(-1.0 * (85_degC - 25_degC).value(), 0.0);
    EXPECT_NEAR((20_degC).above_absolute_zero().value(), 293.15, 1e-12);
    EXPECT_LT(20_degC, 69_degF);
    static_assert(std::is_same_v<decltype(85_degC - 25_degC), wl::temperature_difference>);
}

TEST(Temperature, IsAConstantExpression)
{
    static_assert(wl::temperature::celsius(20).in_kelvin() == 293.15);
    static_assert((20_degC + 10_K).in_celsius() > 29.9);
    static_assert(sizeof(wl::temperature) == sizeof(double));
    SUCCEED();
}

TEST(Temperature, BelowAbsoluteZeroIsRefused)
{
    EXPECT_EQ(wl::temperature::celsius(-273.15).in_kelvin(), 0.0);
    EXPECT_NEAR(wl::temperature::fahrenheit(-459.67).in_kelvin(), 0.0, 1e-12);
    EXPECT_EQ(wl::temperature::kelvin(-0.0).in_kelvin(), 0.0);
    EXPECT_THROW((void)wl::temperature::kelvin(-1e-9), wl::out_of_range_error);
    EXPECT_THROW((void)wl::temperature::celsius(-273.16), wl::out_of_range_error);
    EXPECT_THROW((void)wl::temperature::fahrenheit(-460), wl::out_of_range_error);
    EXPECT_THROW((void)(20_degC - 300_K), wl::out_of_range_error);
}

TEST(Temperature, NanAndInfinityAreRefused)
{
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                             -std::numeric_limits<double>::infinity()}) {
        EXPECT_THROW((void)wl::temperature::kelvin(bad), wl::not_finite_error);
        EXPECT_THROW((void)wl::temperature::celsius(bad), wl::not_finite_error);
        EXPECT_THROW((void)wl::temperature::fahrenheit(bad), wl::not_finite_error);
        EXPECT_THROW((void)(20_degC + wl::in_si<wl::temperature_difference>(bad)), wl::not_finite_error);
    }
}
