// Compression springs: worked examples of two textbooks, inverse pairs, limits, bad input.
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include "law/spring_examples.hpp"

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/compression_spring.hpp>
#include <weldloop/material/spring_wire.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::expect_bhandari;
using weldloop::test::expect_shigley;
using weldloop::test::ksi;

// Shigley example 10-1: music wire d 0.037 in, outside diameter 7/16 in, 12.5 turns with closed ends. It uses
// Bergstrasser's factor.
TEST(CompressionSpring, GivesShigleysExample)
{
    const wl::length d = 0.037_in, coil = 0.4375_in - 0.037_in;
    const wl::pressure strength = 201.0 * ksi * std::pow(0.037, -0.145);
    expect_shigley((strength / ksi).value(), "SPX-SH-10.1-SUT");
    // the wire's table in MPa and mm is the same law rounded anew
    EXPECT_NEAR_REL(wl::tensile_strength(wl::music_wire, d).value(), strength.value(), 3e-3);
    // printed with the coil diameter rounded to 0.400 in
    EXPECT_NEAR_REL(wl::coil_factor(wl::spring_index(coil, d), wl::coil_correction::bergstrasser),
                    weldloop::test::example("springs-worked-examples.csv", "SPX-SH-10.1-KB").number("published_value"),
                    1e-3);
    const wl::force at_yield = wl::compression_load(0.45 * strength, d, coil, wl::coil_correction::bergstrasser);
    // the recomputed value rounds the diameter of the coil to 0.400 in
    EXPECT_NEAR_REL(wl::number_in(at_yield, "lbf"),
                    weldloop::test::example("springs-worked-examples.csv", "SPX-SH-10.1-F").number("published_value"),
                    4e-3);
    const double turns = wl::active_turns(12.5, wl::coil_ends::squared);
    EXPECT_DOUBLE_EQ(turns, 10.5);
    const wl::spring_rate rate = wl::compression_rate(11.85e3 * ksi, d, coil, turns);
    expect_shigley(wl::number_in(rate * 1_in, "lbf"), "SPX-SH-10.1-K");
    expect_shigley(wl::number_in(wl::solid_length(d, 12.5, wl::coil_ends::squared), "in"), "SPX-SH-10.1-LS");
}

// Bhandari example 10.1: the wire that bears 1250 N at C 6 and half of 1090 N/mm2, by Wahl's factor; then turns and
// lengths of a spring of 7 mm wire. The free length has a gap of 1 mm between its ten turns when pressed.
TEST(CompressionSpring, GivesBhandarisFirstExample)
{
    const wl::pressure allowed = 0.5 * 1090_MPa;
    // at a given index the stress goes as 1/d^2
    const wl::pressure at_1_mm = wl::compression_stress(1250_N, 1_mm, 6_mm);
    expect_bhandari(std::sqrt((at_1_mm / allowed).value()), "BH-10.1-d");
    const double one_turn = (1250_N / wl::compression_rate(81370_MPa, 7_mm, 42_mm, 1.0) / 1_mm).value();
    const double turns = std::ceil(30.0 / one_turn);
    expect_bhandari(turns, "BH-10.1-N");
    const double total =
        weldloop::test::example("springs-worked-examples-metric.csv", "BH-10.1-Nt").number("published_value");
    EXPECT_DOUBLE_EQ(wl::active_turns(total, wl::coil_ends::squared_ground), turns);
    const wl::length solid = wl::solid_length(7_mm, total, wl::coil_ends::squared_ground);
    const wl::length free = solid + 9_mm + 1250_N / wl::compression_rate(81370_MPa, 7_mm, 42_mm, turns);
    expect_bhandari(wl::number_in(free, "mm"), "BH-10.1-L0");
    // and back: pressed by that deflection it pushes with 1250 N
    EXPECT_NEAR_REL(
        wl::compression_force(wl::compression_rate(81370_MPa, 7_mm, 42_mm, turns), free, solid, solid + 9_mm).value(),
        1250.0, 1e-12);
}

TEST(CompressionSpring, GivesBhandarisRates)
{
    const wl::spring_rate asked = 150_N / 5_mm;
    expect_bhandari((wl::compression_rate(81370_MPa, 4_mm, 24_mm, 1.0) / asked).value(), "BH-10.4-N");
    expect_bhandari(1e-3 * wl::compression_rate(81370_MPa, 20_mm, 120_mm, 13.0).value(), "BH-10.6-k");
}

TEST(CompressionSpring, LoadAndStressAreInverse)
{
    for (const wl::coil_correction k :
         {wl::coil_correction::wahl, wl::coil_correction::bergstrasser, wl::coil_correction::direct_shear})
        EXPECT_NEAR_REL(wl::compression_load(wl::compression_stress(37_N, 2_mm, 14_mm, k), 2_mm, 14_mm, k).value(),
                        37.0, 1e-14);
}

// From the definition, apart from the code: k = G d^4/(8 D^3 Na).
TEST(CompressionSpring, RateScalesAsItsDefinition)
{
    EXPECT_NEAR_REL(wl::compression_rate(80_GPa, 2_mm, 16_mm, 8.0).value(),
                    80e9 * std::pow(2e-3, 4) / (8.0 * std::pow(16e-3, 3) * 8.0), 1e-13);
}

TEST(CompressionSpring, TurnsFollowTheEnds)
{
    EXPECT_DOUBLE_EQ(wl::active_turns(10, wl::coil_ends::plain), 10);
    EXPECT_DOUBLE_EQ(wl::active_turns(10, wl::coil_ends::plain_ground), 9);
    EXPECT_DOUBLE_EQ(wl::active_turns(10, wl::coil_ends::squared_ground), 8);
    EXPECT_NEAR_REL(wl::solid_length(2_mm, 10, wl::coil_ends::squared_ground).value(), 20e-3, 1e-14);
    EXPECT_NEAR_REL(wl::solid_length(2_mm, 10, wl::coil_ends::plain).value(), 22e-3, 1e-14);
}

TEST(CompressionSpring, PushesFromFreeToSolid)
{
    const wl::spring_rate k = wl::in_si<wl::spring_rate>(5000.0);
    EXPECT_EQ(wl::compression_force(k, 60_mm, 20_mm, 60_mm).value(), 0.0);
    EXPECT_NEAR_REL(wl::compression_force(k, 60_mm, 20_mm, 20_mm).value(), 200.0, 1e-13);
    EXPECT_THROW((void)wl::compression_force(k, 60_mm, 20_mm, 19_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_force(k, 60_mm, 20_mm, 61_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_force(k, 20_mm, 20_mm, 20_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_force(0.0 * k, 60_mm, 20_mm, 30_mm), wl::out_of_range_error);
}

TEST(CompressionSpring, RefusesWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    EXPECT_THROW((void)wl::active_turns(2.0, wl::coil_ends::squared), wl::out_of_range_error);
    EXPECT_THROW((void)wl::active_turns(nan, wl::coil_ends::plain), wl::not_finite_error);
    EXPECT_THROW((void)wl::solid_length(2_mm, 0.0, wl::coil_ends::plain), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_rate(0_GPa, 2_mm, 16_mm, 8.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_rate(80_GPa, 2_mm, 16_mm, 0.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_stress(-1.0 * 1_N, 2_mm, 16_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::compression_load(wl::in_si<wl::pressure>(inf), 2_mm, 16_mm), wl::not_finite_error);
}

// ---- buckling

namespace {
constexpr wl::pressure e = 30e3 * ksi, g = 11.5e3 * ksi;  // steel, as the textbook rounds it
}

// Shigley equation 10-13: for steel, L0 < 2.63 D/a (memory), with the ends' factors of table 10-2 (read on a public
// page).
TEST(SpringBuckling, OfSteelBeginsAt263CoilDiameters)
{
    for (const auto& [ends, factor] :
         {std::pair{wl::spring_ends_held::both_flat, 0.5}, std::pair{wl::spring_ends_held::flat_and_pivoted, 0.707},
          std::pair{wl::spring_ends_held::both_pivoted, 1.0}, std::pair{wl::spring_ends_held::flat_and_free, 2.0}})
        EXPECT_NEAR_REL(wl::longest_stable_spring(10_mm, e, g, ends).value(), 2.63 * 10e-3 / factor, 0.005);
}

// At its longest stable length a spring would buckle at C1 of its length, that is far beyond solid; a longer one
// sooner, and a very long one like a column, at C1 C2/(2 l^2) of its length.
TEST(SpringBuckling, ComesSoonerForASlenderSpring)
{
    const wl::length longest = wl::longest_stable_spring(10_mm, e, g, wl::spring_ends_held::both_pivoted);
    EXPECT_FALSE(wl::buckling_deflection({longest, 10_mm, e, g, wl::spring_ends_held::both_pivoted}));
    double last = 0.5 * 30.0 / 18.5;  // C1
    for (const double times : {1.0001, 1.2, 1.5, 2.0, 4.0, 8.0}) {
        const auto at = wl::buckling_deflection({times * longest, 10_mm, e, g, wl::spring_ends_held::both_pivoted});
        ASSERT_TRUE(at);
        const double share = (*at / (times * longest)).value();
        EXPECT_LT(share, last);
        last = share;
    }
    const auto column = wl::buckling_deflection({100.0 * longest, 10_mm, e, g, wl::spring_ends_held::both_pivoted});
    EXPECT_NEAR_REL((*column / (100.0 * longest)).value(), 0.5 * 30.0 / 18.5 / (2.0 * 100.0 * 100.0), 1e-4);
}

TEST(SpringBuckling, RefusesWhatCannotBe)
{
    const wl::spring_ends_held flat = wl::spring_ends_held::both_flat;
    EXPECT_THROW((void)wl::longest_stable_spring(0_mm, e, g, flat), wl::out_of_range_error);
    EXPECT_THROW((void)wl::longest_stable_spring(10_mm, g, e, flat), wl::out_of_range_error);
    EXPECT_THROW((void)wl::buckling_deflection({0_mm, 10_mm, e, g, flat}), wl::out_of_range_error);
    EXPECT_THROW((void)wl::buckling_deflection(
                     {wl::in_si<wl::length>(std::numeric_limits<double>::quiet_NaN()), 10_mm, e, g, flat}),
                 wl::not_finite_error);
}
