// Helical springs: worked examples of textbooks, inverse pairs, limits, bad input.
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/spring.hpp>
#include <weldloop/material/spring_wire.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr wl::pressure ksi = 1e3 * wl::unit_of<wl::pressure>("psi").in_si() * 1_Pa;
constexpr double per_turn = 2.0 * std::numbers::pi;  // radian

/// The row of the worked examples with an id.
reference_table::row example(const std::string& id)
{
    const reference_table table("springs-worked-examples.csv");
    for (const auto& row : table.rows())
        if (row.text("id") == id) return row;
    throw std::runtime_error("no example " + id);
}

void expect_published(double value, const std::string& id)
{
    const reference_table::row row = example(id);
    EXPECT_NEAR_REL(value, row.number("published_value"), row.number("tolerance_suggested_pct") / 100.0) << id;
    EXPECT_NEAR_REL(value, row.number("recomputed_value"), 2e-4) << id;  // printed to four or five digits
}

}  // namespace

// Shigley example 10-1: music wire d 0.037 in, outside diameter 7/16 in, 12.5 turns with closed ends.
TEST(CompressionSpring, GivesShigleysExample)
{
    const wl::length d = 0.037_in, coil = 0.4375_in - 0.037_in;
    const wl::pressure strength = 201.0 * ksi * std::pow(0.037, -0.145);
    expect_published((strength / ksi).value(), "SPX-SH-10.1-SUT");
    // the wire's table in MPa and mm is the same law rounded anew
    EXPECT_NEAR_REL(wl::tensile_strength(wl::music_wire, d).value(), strength.value(), 3e-3);
    EXPECT_NEAR_REL(wl::bergstrasser_factor(wl::spring_index(coil, d)),
                    example("SPX-SH-10.1-KB").number("published_value"), 1e-3);
    const wl::force at_yield = wl::compression_load(0.45 * strength, d, coil);
    EXPECT_NEAR_REL(wl::number_in(at_yield, "lbf"), example("SPX-SH-10.1-F").number("published_value"), 4e-3);
    const double turns = wl::active_turns(12.5, wl::coil_ends::squared);
    EXPECT_DOUBLE_EQ(turns, 10.5);
    const wl::spring_rate rate = wl::compression_rate(11.85e3 * ksi, d, coil, turns);
    expect_published(wl::number_in(rate * 1_in, "lbf"), "SPX-SH-10.1-K");
    expect_published(wl::number_in(wl::solid_length(d, 12.5, wl::coil_ends::squared), "in"), "SPX-SH-10.1-LS");
}

// Shigley example 10-8: music wire d 0.072 in, outside diameter 19/32 in, 4.25 turns, legs of 1 in.
TEST(TorsionSpring, GivesShigleysExample)
{
    const wl::length d = 0.072_in, coil = (19.0 / 32.0) * 1_in - d;
    const wl::pressure strength = 201.0 * ksi * std::pow(0.072, -0.145);
    const wl::torque at_yield = wl::torsion_moment(0.78 * strength, d, coil);
    EXPECT_NEAR_REL(wl::number_in(at_yield, "lbf in"), example("SPX-SH-10.8-M").number("published_value"), 2e-3);
    const double turns = wl::torsion_active_turns(4.25, 2_in, coil);
    EXPECT_NEAR_REL(turns, example("SPX-SH-10.8-NA").number("published_value"), 1e-3);
    const wl::angular_rate rate = wl::torsion_rate(28.5e3 * ksi, d, coil, turns);
    const double pound_inch_per_turn =
        rate.value() * per_turn / wl::number_in(wl::in_si<wl::torque>(1.0), "Nm") * wl::number_in(1_Nm, "lbf in");
    EXPECT_NEAR_REL(pound_inch_per_turn, example("SPX-SH-10.8-K").number("published_value"), 2e-3);
    EXPECT_NEAR_REL(at_yield.value() / rate.value() / per_turn, example("SPX-SH-10.8-TH").number("published_value"),
                    4e-3);
}

// Public examination question on the older constants: the law itself, with constants the library does not use.
TEST(SpringWireLaw, GivesTheExaminationQuestion)
{
    expect_published(1610.0 * std::pow(10.0, -0.193), "SPX-FE-A229");
    const wl::strength_range older{1_mm, 20_mm, 1610_MPa, 0.193};
    wl::spring_wire wire = wl::oil_tempered_wire;
    wire.strengths = {&older, 1};
    expect_published(wl::number_in(wl::tensile_strength(wire, 10_mm), "MPa"), "SPX-FE-A229");
}

TEST(SpringFactors, WahlAndBergstrasserAgree)
{
    for (double index = 4.0; index <= 12.0; index += 0.25) {
        EXPECT_TRUE(wl::usual_spring_index(index));
        EXPECT_NEAR_REL(wl::bergstrasser_factor(index), wl::wahl_factor(index), index < 8.0 ? 0.014 : 0.01) << index;
        EXPECT_GT(wl::bergstrasser_factor(index), wl::direct_shear_factor(index)) << index;
        EXPECT_GT(wl::inner_bending_factor(index), 1.0);
        EXPECT_LT(wl::outer_bending_factor(index), 1.0);
    }
    EXPECT_FALSE(wl::usual_spring_index(3.99));
    EXPECT_FALSE(wl::usual_spring_index(12.01));
}

TEST(SpringFactors, TendToOneForAStraightBar)
{
    EXPECT_NEAR_REL(wl::wahl_factor(1000.0), 1.0, 2e-3);
    EXPECT_NEAR_REL(wl::bergstrasser_factor(1000.0), 1.0, 2e-3);
    EXPECT_NEAR_REL(wl::direct_shear_factor(1000.0), 1.0, 1e-3);
    EXPECT_NEAR_REL(wl::inner_bending_factor(1000.0), 1.0, 1e-3);
    EXPECT_NEAR_REL(wl::outer_bending_factor(1000.0), 1.0, 1e-3);
}

TEST(Springs, LoadAndStressAreInverse)
{
    EXPECT_NEAR_REL(wl::compression_load(wl::compression_stress(37_N, 2_mm, 14_mm), 2_mm, 14_mm).value(), 37.0, 1e-14);
    EXPECT_NEAR_REL(wl::torsion_moment(wl::torsion_stress(3_Nm, 4_mm, 24_mm), 4_mm, 24_mm).value(), 3.0, 1e-14);
}

// From the definitions, apart from the code: k = G d^4/(8 D^3 Na); k = E d^4/(10.8 D Na) per turn.
TEST(Springs, RatesScaleAsTheirDefinitions)
{
    const wl::spring_rate k = wl::compression_rate(80_GPa, 2_mm, 16_mm, 8.0);
    EXPECT_NEAR_REL(k.value(), 80e9 * std::pow(2e-3, 4) / (8.0 * std::pow(16e-3, 3) * 8.0), 1e-13);
    const wl::angular_rate t = wl::torsion_rate(193_GPa, 5_mm, 30_mm, 5.0);
    EXPECT_NEAR_REL(t.value() * per_turn, 193e9 * std::pow(5e-3, 4) / (10.8 * 30e-3 * 5.0), 1e-13);
    // 6 % softer than the bar without friction between its coils, 64/(2 pi)
    EXPECT_NEAR(193e9 * std::pow(5e-3, 4) / (64.0 * 30e-3 * 5.0) / t.value(), 1.06, 0.001);
}

// Spring makers' data: 2 % per 55 K.
TEST(HotSpring, LosesTwoPercentPer55Kelvin)
{
    EXPECT_NEAR(wl::hot_force_ratio(75_degC), 0.98, 2.5e-4);
    EXPECT_DOUBLE_EQ(wl::hot_force_ratio(20_degC), 1.0);
    EXPECT_NEAR_REL(wl::number_in(wl::modulus_at(200_GPa, 200_degC), "GPa"), 200.0 * (1.0 - 3.6e-4 * 180.0), 1e-13);
    EXPECT_GT(wl::modulus_at(200_GPa, wl::temperature::celsius(-40)), 200_GPa);
    EXPECT_GT(wl::hot_force_ratio(1500_degC), 0.0);
    EXPECT_GT(wl::hot_force_ratio(wl::temperature::kelvin(0)), 1.0);
}

TEST(Springs, TurnsFollowTheEnds)
{
    EXPECT_DOUBLE_EQ(wl::active_turns(10, wl::coil_ends::plain), 10);
    EXPECT_DOUBLE_EQ(wl::active_turns(10, wl::coil_ends::plain_ground), 9);
    EXPECT_DOUBLE_EQ(wl::active_turns(10, wl::coil_ends::squared_ground), 8);
    EXPECT_NEAR_REL(wl::solid_length(2_mm, 10, wl::coil_ends::squared_ground).value(), 20e-3, 1e-14);
    EXPECT_NEAR_REL(wl::solid_length(2_mm, 10, wl::coil_ends::plain).value(), 22e-3, 1e-14);
}

TEST(Springs, RefuseWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    const auto m = [](double v) { return wl::in_si<wl::length>(v); };
    EXPECT_THROW((void)wl::spring_index(2_mm, 2_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::spring_index(2_mm, 0_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::spring_index(m(nan), 2_mm), wl::not_finite_error);
    EXPECT_THROW((void)wl::spring_index(5_m, 2_mm), wl::out_of_range_error);
    for (auto* factor : {&wl::wahl_factor, &wl::bergstrasser_factor, &wl::direct_shear_factor,
                         &wl::inner_bending_factor, &wl::outer_bending_factor}) {
        EXPECT_THROW((void)factor(1.0), wl::out_of_range_error);
        EXPECT_THROW((void)factor(-3.0), wl::out_of_range_error);
        EXPECT_THROW((void)factor(nan), wl::not_finite_error);
        EXPECT_THROW((void)factor(inf), wl::not_finite_error);
    }
    EXPECT_THROW((void)wl::active_turns(2.0, wl::coil_ends::squared), wl::out_of_range_error);
    EXPECT_THROW((void)wl::active_turns(nan, wl::coil_ends::plain), wl::not_finite_error);
    EXPECT_THROW((void)wl::solid_length(2_mm, 0.0, wl::coil_ends::plain), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_rate(0_GPa, 2_mm, 16_mm, 8.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_rate(80_GPa, 2_mm, 16_mm, 0.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_stress(-1.0 * 1_N, 2_mm, 16_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_load(wl::in_si<wl::pressure>(inf), 2_mm, 16_mm), wl::not_finite_error);
    EXPECT_THROW((void)wl::torsion_active_turns(4.0, -1.0 * 1_mm, 20_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::torsion_rate(193_GPa, 5_mm, 4_mm, 5.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::torsion_stress(wl::in_si<wl::torque>(nan), 5_mm, 30_mm), wl::not_finite_error);
    EXPECT_THROW((void)wl::torsion_moment(-1.0 * 1_MPa, 5_mm, 30_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::modulus_at(0_GPa, 20_degC), wl::out_of_range_error);
    EXPECT_THROW((void)wl::modulus_at(200_GPa, 1501_degC), wl::out_of_range_error);
}
