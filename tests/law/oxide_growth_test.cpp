#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/film.hpp>
#include <weldloop/law/oxide_growth.hpp>
#include <weldloop/material/surface_film.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
}

// source: tests/reference/contacts-oxide-growth.csv, the four rows with a thickness (from memory; the law was fitted to
// them, so this is its residual and no proof)
TEST(OxideGrowth, ResidualOnItsPoints)
{
    int checked = 0;
    for (const auto& row : test::reference_table("contacts-oxide-growth.csv").rows()) {
        if (!row.has("time_h")) continue;
        const length x =
            copper_oxide_thickness(temperature::celsius(row.number("temperature_C")), row.number("time_h") * 1_h);
        EXPECT_NEAR_REL(x.value() * 1e9, row.number("thickness_nm"), 0.16) << row.where();
        ++checked;
    }
    EXPECT_EQ(checked, 4);
}

// source: the same table, the three rows of copper single crystals (abstract, read): regimes, 40 to 180 degC. The law's
// range ends where the rows do; it turns from the logarithm to the root within the row of cubic growth or below it.
TEST(OxideGrowth, RangeOfTheRegimes)
{
    int checked = 0;
    for (const auto& row : test::reference_table("contacts-oxide-growth.csv").rows()) {
        if (row.text("condition") != "copper single crystals") continue;
        const std::string range = row.text("temperature_C");
        EXPECT_NEAR(hottest_oxide_growth.in_celsius(), std::stod(range.substr(range.find("to ") + 3)), 1e-9);
        ++checked;
    }
    EXPECT_EQ(checked, 3);
    const auto doubled = [](double hours) {  // thickness after four times the time: the root doubles it
        const temperature t = 100_degC;
        return (copper_oxide_thickness(t, 4.0 * hours * 1_h) / copper_oxide_thickness(t, hours * 1_h)).value();
    };
    EXPECT_NEAR_REL(copper_oxide_thickness(100_degC, 2778.0 * 1_h).value(), 25e-9, 0.01);  // above 25 nm: parabolic
    EXPECT_NEAR(doubled(2778.0), 2.0, 1e-9);
    EXPECT_LT((copper_oxide_thickness(40_degC, 4e3 * 1_h) / copper_oxide_thickness(40_degC, 1e3 * 1_h)).value(),
              1.6);  // below 5 nm: slower than any root
}

// source: the same table's notes, and contacts-degradation.csv: kp 0.225 nm2/h at 100 degC; the rate doubles every
// 9.6 K near 90 degC, which agrees with the rule of thumb of 10 K
TEST(OxideGrowth, RateDoublesByTenKelvin)
{
    const auto squared = [](double celsius) {
        const double x = copper_oxide_thickness(temperature::celsius(celsius), 1e5 * 1_h).value() * 1e9;
        return x * x;
    };
    EXPECT_NEAR_REL(squared(100), 0.225 * 1e5, 1e-9);
    EXPECT_NEAR(squared(94.8) / squared(85.2), 2.0, 0.03);
}

// properties: grows with time and temperature; growing on in pieces at one temperature is growing once
TEST(OxideGrowth, GrowsInPiecesAsInOne)
{
    test::random_numbers random(51);
    for (int i = 0; i < test::random_cases; ++i) {
        const temperature t = temperature::celsius(random.between(0, 180));
        const duration first = random.log_between(10, 1e5) * 1_h, second = random.log_between(1, 1e5) * 1_h;
        const length once = copper_oxide_thickness(t, first + second), begun = copper_oxide_thickness(t, first);
        const length grown = copper_oxide_grown(begun, t, second);
        EXPECT_GE(once, begun);
        EXPECT_GE(grown, begun);
        EXPECT_GE(copper_oxide_thickness(t + 10_K > hottest_oxide_growth ? t : t + 10_K, first), begun);
        // at the change from one law to the other the pieces may lag by a little of the logarithmic growth
        EXPECT_NEAR(grown.value(), once.value(), 0.9e-9);
    }
    EXPECT_EQ(copper_oxide_thickness(20_degC, 0_s).value(), 0.0);
    EXPECT_EQ(copper_oxide_grown(5_nm, 90_degC, 0_s), 5_nm);
    EXPECT_NEAR_REL(copper_oxide_grown(0_nm, 20_degC, 1000.0 * 1_h).value(), 2.2e-9, 1e-9);
}

// relation: the resistance of the film follows from its thickness, 0.43 ohm m of cuprous oxide
TEST(OxideGrowth, FilmResistanceFromThickness)
{
    const length x = copper_oxide_thickness(100_degC, 1e3 * 1_h);
    const film_resistivity sigma = film_resistivity_of(cuprous_oxide_resistivity.typical, x);
    EXPECT_NEAR_REL(sigma.value(), 0.43 * 15e-9, 0.01);
    EXPECT_GT(film_resistance(film_resistivity_of(cuprous_oxide_resistivity.typical, 2.0 * x), 1_mm2),
              film_resistance(sigma, 1_mm2));
}

// relation: small steps of the square's growth are small steps of the thickness, and where one law governs throughout
// they end at what it gives for the time; where both are alike the larger of two speeds runs ahead of the larger
// thickness
TEST(OxideGrowth, GrowthOfTheSquareIntegratesToTheThickness)
{
    const auto grown = [](temperature t, double hours) {
        double square = 0.0;
        const int steps = 40000;
        const double dt = hours * 3600.0 / steps;
        for (int i = 0; i < steps; ++i)
            square += dt * copper_oxide_square_growth(in_si<length>(std::sqrt(square)), t).value();
        return std::sqrt(square);
    };
    EXPECT_NEAR_REL(grown(150_degC, 1000.0), copper_oxide_thickness(150_degC, 1000.0 * 1_h).value(), 1e-3);
    const auto in_steps = [](temperature t, double hours) {
        length x = {};
        for (int i = 0; i < 4000; ++i) x = copper_oxide_grown(x, t, hours / 4000.0 * 1_h);
        return x.value();
    };
    EXPECT_NEAR_REL(grown(60_degC, 2000.0), in_steps(60_degC, 2000.0), 0.01);
    EXPECT_NEAR_REL(grown(20_degC, 1e5), in_steps(20_degC, 1e5), 0.01);
    const double ahead = grown(20_degC, 1e5) / copper_oxide_thickness(20_degC, 1e5 * 1_h).value();
    EXPECT_GT(ahead, 1.0);
    EXPECT_LT(ahead, 1.2);
    EXPECT_GT(copper_oxide_square_growth(5_nm, 100_degC), copper_oxide_square_growth(5_nm, 90_degC));
}

TEST(OxideGrowth, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(copper_oxide_square_growth(in_si<length>(x), 20_degC));
    EXPECT_THROW((void)copper_oxide_square_growth(1_nm, 181_degC), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(copper_oxide_thickness(20_degC, in_si<duration>(x)));
    EXPECT_THROW((void)copper_oxide_thickness(181_degC, 1_h), out_of_range_error);
    EXPECT_THROW((void)copper_oxide_thickness(temperature::kelvin(0), 1_h), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(copper_oxide_grown(in_si<length>(x), 20_degC, 1_h));
    EXPECT_REFUSES_BAD_NUMBERS(copper_oxide_grown(1_nm, 20_degC, in_si<duration>(x)));
    EXPECT_THROW((void)copper_oxide_grown(1_nm, 181_degC, 1_h), out_of_range_error);
}
