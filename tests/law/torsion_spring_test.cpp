// Torsion springs: worked examples of two textbooks, inverse pairs, limits, bad input.
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include "law/spring_examples.hpp"

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/torsion_spring.hpp>
#include <weldloop/material/spring_wire.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::expect_bhandari;
using weldloop::test::expect_shigley;
using weldloop::test::ksi;

namespace {
constexpr double per_turn = 2.0 * std::numbers::pi;  // radian
}

// Shigley example 10-8: music wire d 0.072 in, outside diameter 19/32 in, 4.25 turns, legs of 1 in.
TEST(TorsionSpring, GivesShigleysExample)
{
    const wl::length d = 0.072_in, coil = (19.0 / 32.0) * 1_in - d;
    const wl::pressure strength = 201.0 * ksi * std::pow(0.072, -0.145);
    const wl::torque at_yield = wl::torsion_moment(0.78 * strength, d, coil);
    const auto published = [](const char* id) {
        return weldloop::test::example("springs-worked-examples.csv", id).number("published_value");
    };
    EXPECT_NEAR_REL(wl::number_in(at_yield, "lbf in"), published("SPX-SH-10.8-M"), 2e-3);
    const double turns = wl::torsion_active_turns(4.25, 2_in, coil);
    expect_shigley(turns, "SPX-SH-10.8-NA");
    const wl::angular_rate rate = wl::torsion_rate(28.5e3 * ksi, d, coil, turns);
    const double pound_inch_per_turn =
        rate.value() * per_turn / wl::number_in(wl::in_si<wl::torque>(1.0), "Nm") * wl::number_in(1_Nm, "lbf in");
    EXPECT_NEAR_REL(pound_inch_per_turn, published("SPX-SH-10.8-K"), 2e-3);
    EXPECT_NEAR_REL(at_yield.value() / rate.value() / per_turn, published("SPX-SH-10.8-TH"), 4e-3);
}

// Bhandari example 10.21: of the wires of IS 4454 grade 4 the thinnest that stays below 0.3 of its strength, and its
// turns without the friction of the coils.
TEST(TorsionSpring, GivesBhandarisExample)
{
    const wl::torque moment = 0.25_Nm;
    double thinnest = 0.0;
    const weldloop::test::reference_table table("springs-wire-tensile-tables.csv");
    for (const auto& row : table.rows()) {
        if (row.text("wire") != "patented cold-drawn, grade 4" || thinnest > 0.0) continue;
        const double d_mm = row.number("d_mm");
        const double stress = wl::number_in(wl::torsion_stress(moment, d_mm * 1_mm, 18_mm), "MPa");
        if (stress < 0.6 * row.number("Sut_min_MPa") / 2.0) thinnest = d_mm;
    }
    expect_bhandari(thinnest, "BH-10.21-d");
    const double with_friction = wl::torsion_rate(207000_MPa, 1.6_mm, 18_mm, 1.0).value() / 3e-3;
    const double without = with_friction * 10.8 * per_turn / 64.0;
    expect_bhandari(std::ceil(without), "BH-10.21-N");
}

TEST(TorsionSpring, MomentAndStressAreInverse)
{
    EXPECT_NEAR_REL(wl::torsion_moment(wl::torsion_stress(3_Nm, 4_mm, 24_mm), 4_mm, 24_mm).value(), 3.0, 1e-14);
}

// From the definition, apart from the code: k = E d^4/(10.8 D Na) per turn.
TEST(TorsionSpring, RateScalesAsItsDefinition)
{
    const wl::angular_rate t = wl::torsion_rate(193_GPa, 5_mm, 30_mm, 5.0);
    EXPECT_NEAR_REL(t.value() * per_turn, 193e9 * std::pow(5e-3, 4) / (10.8 * 30e-3 * 5.0), 1e-13);
    // 6 % softer than the bar without friction between its coils, 64/(2 pi)
    EXPECT_NEAR(193e9 * std::pow(5e-3, 4) / (64.0 * 30e-3 * 5.0) / t.value(), 1.06, 0.001);
}

// The wire keeps its length: turns times diameter stay, and a body of touching turns grows by what it is wound.
TEST(TorsionSpring, ShrinksOntoItsPinWhenWound)
{
    for (const double wound : {0.0, 0.1, 0.5, 2.0}) {
        const wl::length coil = wl::wound_coil_diameter(20_mm, 4.25, wound);
        EXPECT_NEAR_REL(coil.value() * (4.25 + wound), 20e-3 * 4.25, 1e-14);
        EXPECT_NEAR_REL(wl::wound_body_length(2_mm, 4.25, wound).value(), 2e-3 * (5.25 + wound), 1e-14);
    }
    EXPECT_THROW((void)wl::wound_coil_diameter(20_mm, 0.0, 0.1), wl::out_of_range_error);
    EXPECT_THROW((void)wl::wound_coil_diameter(20_mm, 4.0, -0.1), wl::out_of_range_error);
    EXPECT_THROW((void)wl::wound_body_length(0_mm, 4.0, 0.1), wl::out_of_range_error);
}

TEST(TorsionSpring, RefusesWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW((void)wl::torsion_active_turns(4.0, -1.0 * 1_mm, 20_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::torsion_rate(193_GPa, 5_mm, 4_mm, 5.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::torsion_rate(193_GPa, 5_mm, 30_mm, 1e-313), wl::not_finite_error);  // above 0, and no rate
    EXPECT_THROW((void)wl::torsion_stress(wl::in_si<wl::torque>(nan), 5_mm, 30_mm), wl::not_finite_error);
    EXPECT_THROW((void)wl::torsion_moment(-1.0 * 1_MPa, 5_mm, 30_mm), wl::out_of_range_error);
}
