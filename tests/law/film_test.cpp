#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/constriction.hpp>
#include <weldloop/law/film.hpp>
#include <weldloop/material/metals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
}

// source: tests/reference/contacts-films.csv, paint: 25 um at 5 MV/m stands 125 V, above the 113 V d.c. a welding
// supply may show
TEST(Film, NoLoadVoltageDoesNotBreakSoundPaint)
{
    EXPECT_NEAR_REL(breakdown_voltage(25_um, paint_breakdown_field.low).value(), 125.0, 1e-12);
    EXPECT_FALSE(breaks_through(113_V, 25_um, paint_breakdown_field.low));
    EXPECT_TRUE(breaks_through(125_V, 25_um, paint_breakdown_field.low));
    EXPECT_TRUE(breaks_through(113_V, 20_um, paint_breakdown_field.low));  // a thin coat of the weakest paint
    EXPECT_FALSE(breaks_through(0_V, 1_nm, paint_breakdown_field.low));
    for (const auto& row : test::reference_table("contacts-films.csv").rows()) {
        const std::string what = row.text("film") + ", " + row.text("quantity");
        if (what == "paint, dielectric strength") {
            EXPECT_EQ(paint_breakdown_field.low.value(), row.number("low"));
            EXPECT_EQ(paint_breakdown_field.typical.value(), row.number("typical"));
            EXPECT_EQ(paint_breakdown_field.high.value(), row.number("high"));
        }
        if (what == "shop primer, thickness") {
            EXPECT_NEAR_REL(primer_thickness.low.value(), row.number("low") * 1e-6, 1e-14);
            EXPECT_NEAR_REL(primer_thickness.typical.value(), row.number("typical") * 1e-6, 1e-14);
            EXPECT_NEAR_REL(primer_thickness.high.value(), row.number("high") * 1e-6, 1e-14);
        }
    }
}

// source: tests/reference/contacts-films.csv, "Cu2O 0.43 ohm m x 10 to 100 nm = 4e-9 to 4e-8"
TEST(Film, ThicknessTimesResistivity)
{
    EXPECT_NEAR_REL(film_resistivity_of(in_si<resistivity>(0.43), 10_nm).value(), 4.3e-9, 1e-12);
    EXPECT_NEAR_REL(film_resistivity_of(in_si<resistivity>(0.43), 100_nm).value(), 4.3e-8, 1e-12);
    EXPECT_EQ(film_resistivity_of(in_si<resistivity>(0.43), 0_nm).value(), 0.0);
}

// property: resistance rises with film thickness and falls with area
TEST(Film, RisesWithThickness)
{
    test::random_numbers random(5);
    for (int i = 0; i < test::random_cases; ++i) {
        const resistivity rho = in_si<resistivity>(random.log_between(1e-6, 1e10));
        const length t = in_si<length>(random.log_between(1e-9, 1e-3));
        const area a = in_si<area>(random.log_between(1e-12, 1e-2));
        const resistance r = film_resistance(film_resistivity_of(rho, t), a);
        EXPECT_GT(film_resistance(film_resistivity_of(rho, 1.5 * t), a), r);
        EXPECT_LT(film_resistance(film_resistivity_of(rho, t), 1.5 * a), r);
    }
}

// property over random contacts of n filmed spots, each constriction and film in series, R = rho/(2 n a) + sigma/(n pi
// a^2) (Holm): rises with the thickness of the film, falls with force and with the number of spots that share it
TEST(Film, FilmedSpotsRiseWithThicknessAndFallWithForce)
{
    test::random_numbers random(6);
    const auto contact_of = [](int n, force pressing, resistivity rho, length thickness) {
        const length a = spot_radius(pressing / static_cast<double>(n), annealed_copper.hardness);
        const area covered = bearing_area(pressing / static_cast<double>(n), annealed_copper.hardness);
        return (constriction_resistance(annealed_copper.resistivity, a) +
                film_resistance(film_resistivity_of(rho, thickness), covered)) /
               static_cast<double>(n);
    };
    for (int i = 0; i < test::random_cases; ++i) {
        const int n = random.count(1, 50);
        const force pressing = in_si<force>(random.log_between(1, 1e4));
        const resistivity rho = in_si<resistivity>(random.log_between(1e-5, 1e2));
        const length t = in_si<length>(random.log_between(2e-9, 1e-6));
        const resistance r = contact_of(n, pressing, rho, t);
        EXPECT_GT(contact_of(n, pressing, rho, 1.2 * t), r);
        EXPECT_LT(contact_of(n, 1.2 * pressing, rho, t), r);
        EXPECT_LT(contact_of(n + 1, pressing, rho, t),
                  r);  // the film's part stays, the constriction falls as 1/sqrt(n)
        EXPECT_GT(r, contact_of(n, pressing, rho, 0_nm));
    }
}

// source: the same table: 10 nm of insulating oxide frits near 1 V; paint against the 113 V d.c. and 80 V of a supply
TEST(Film, UnderTheOpenCircuitVoltage)
{
    EXPECT_EQ(film_at_no_load(113_V, primer_thickness.typical, paint_breakdown_field), film_under_voltage::stands);
    EXPECT_EQ(film_at_no_load(113_V, primer_thickness.low, paint_breakdown_field), film_under_voltage::may_break);
    EXPECT_EQ(film_at_no_load(80_V, primer_thickness.low, paint_breakdown_field), film_under_voltage::may_break);
    EXPECT_EQ(film_at_no_load(80_V, 10_nm, oxide_breakdown_field), film_under_voltage::breaks);
    EXPECT_EQ(film_at_no_load(1_V, 10_nm, oxide_breakdown_field), film_under_voltage::may_break);
    EXPECT_NEAR_REL(breakdown_voltage(10_nm, oxide_breakdown_field.typical).value(), 1.0, 1e-12);
    for (const auto& row : test::reference_table("contacts-films.csv").rows()) {
        if (row.text("quantity") != "breakdown field") continue;
        EXPECT_EQ(oxide_breakdown_field.low.value(), row.number("low"));
        EXPECT_EQ(oxide_breakdown_field.typical.value(), row.number("typical"));
        EXPECT_EQ(oxide_breakdown_field.high.value(), row.number("high"));
    }
    EXPECT_REFUSES_BAD_NUMBERS(film_at_no_load(in_si<voltage>(x), 1_um, paint_breakdown_field));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(film_at_no_load(1_V, in_si<length>(x), paint_breakdown_field));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(film_at_no_load(1_V, 1_um, exactly(in_si<electric_field>(x))));
}

TEST(Film, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(film_resistivity_of(in_si<resistivity>(x), 1_nm));
    EXPECT_REFUSES_BAD_NUMBERS(film_resistivity_of(in_si<resistivity>(1), in_si<length>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(film_resistance(in_si<film_resistivity>(x), 1_mm2));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(film_resistance(in_si<film_resistivity>(1), in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(breakdown_voltage(in_si<length>(x), paint_breakdown_field.low));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(breakdown_voltage(1_um, in_si<electric_field>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(breaks_through(in_si<voltage>(x), 1_um, paint_breakdown_field.low));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(breaks_through(1_V, in_si<length>(x), paint_breakdown_field.low));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(breaks_through(1_V, 1_um, in_si<electric_field>(x)));
    EXPECT_THROW((void)film_resistance(in_si<film_resistivity>(1e300), in_si<area>(1e-300)), not_finite_error);
}
