// The smallest strap that carries a current.
#include <weldloop/core/literals.hpp>
#include <weldloop/rating/lead/strap_sizing.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// The balance by hand at the temperature found: heat made by body and both ends, heat lost by body_loss().
TEST(StrapSizing, SteadyHeatIsMadeAndLostAlike)
{
    for (const double mm2 : {35.0, 95.0}) {
        const strap s{.length = 300_mm, .section = in_si<area>(mm2 * 1e-6), .make = strap_make::solid};
        const auto hot = strap_heating_of(s, {.current = 250_A}, {.air = 25_degC});
        ASSERT_TRUE(hot);
        const double ohms = annealed_copper.resistivity_at(hot->peak).value() * 0.3 / (mm2 * 1e-6) +
                            2.0 / bolted_face_conductance_of(end_of(s)).low.value();
        EXPECT_NEAR_REL(250.0 * 250.0 * ohms, body_loss(body_of(s), hot->peak, {.air = 25_degC}).value(), 1e-3);
        EXPECT_NEAR_REL(hot->drop.value(), 250.0 * ohms, 1e-3);
    }
}

// One store of heat in short periods has the heat of its mean power: the peak nears that of sqrt(duty) times the
// current.
TEST(StrapSizing, ShortPeriodsHaveTheHeatOfTheEffectiveCurrent)
{
    const strap s{.length = 200_mm, .section = 70_mm2};
    const double steady = (strap_heating_of(s, {.current = std::sqrt(0.4) * 400_A}, {})->peak - 20_degC).value();
    const double pulsed =
        (strap_heating_of(s, {.current = 400_A, .duty = duty_cycle::of(4_s, 10_s)}, {})->peak - 20_degC).value();
    const double slow =
        (strap_heating_of(s, {.current = 400_A, .duty = duty_cycle::of(4_min, 10_min)}, {})->peak - 20_degC).value();
    EXPECT_NEAR_REL(pulsed, steady, 0.02);
    EXPECT_GT(slow, 1.1 * steady);
    EXPECT_LT(slow, (strap_heating_of(s, {.current = 400_A}, {})->peak - 20_degC).value());
}

TEST(StrapSizing, IsTheSmallestThatDoes)
{
    for (const double amps : {100.0, 200.0, 350.0, 500.0})
        for (const strap_make make : {strap_make::solid, strap_make::braid}) {
            strap_request r{.like = {.length = 250_mm, .make = make},
                            .work = {.current = in_si<current>(amps), .duty = duty_cycle::of(6_min, 10_min)},
                            .where = {.air = 30_degC}};
            const strap_choice c = smallest_strap(r);
            EXPECT_LE(c.heating.peak, 90_degC);
            EXPECT_NEAR(c.heat_margin.value(), (90_degC - c.heating.peak).value(), 1e-9);
            const auto* const at = std::find(strap_sections.begin(), strap_sections.end(), c.strap.section);
            ASSERT_NE(at, strap_sections.end());
            if (at != strap_sections.begin()) {
                strap smaller = c.strap;
                smaller.section = *(at - 1);
                const auto hot = strap_heating_of(smaller, r.work, r.where);
                EXPECT_TRUE(!hot || hot->peak > 90_degC) << amps;
            }
            r.allowed_drop = 0.5 * c.heating.drop;
            try {
                const strap_choice stiffer = smallest_strap(r);
                EXPECT_GT(stiffer.strap.section, c.strap.section);
                EXPECT_LE(stiffer.heating.drop, *r.allowed_drop);
            } catch (const no_solution_error&) {  // its ends alone take more
                EXPECT_GT(2.0 * amps / bolted_face_conductance_of(end_of(c.strap)).low.value(),
                          0.8 * r.allowed_drop->value());
            }
        }
}

TEST(StrapSizing, MoreOfWhatHeatsWantsMoreMetal)
{
    strap_request r{.like = {.length = 250_mm}, .work = {.current = 300_A}, .where = {.air = 30_degC}};
    const area usual = smallest_strap(r).strap.section;
    r.like.metal = aluminium;
    EXPECT_GT(smallest_strap(r).strap.section, usual);
    r.like.metal = annealed_copper;
    r.where.air = 60_degC;
    EXPECT_GT(smallest_strap(r).strap.section, usual);
    r.where.air = 30_degC;
    r.like.surface = surface_state::light_rust;
    EXPECT_GE(smallest_strap(r).strap.section, usual);
    r.like.surface = surface_state::clean;
    r.where.wind = in_si<speed>(5.0);
    EXPECT_LE(smallest_strap(r).strap.section, usual);
}

// However short the period: a strap that hardly cools within it has the temperature of the mean heat, here by halving.
TEST(StrapSizing, ShortPeriodsSettleAtTheMeanHeat)
{
    for (const double mm2 : {50.0, 300.0, 1000.0})
        for (const double period : {1e-3, 0.2, 1.0}) {
            const strap s{.length = 300_mm, .section = in_si<area>(mm2 * 1e-6)};
            const load work{.current = in_si<current>(4.0 * mm2),
                            .duty = duty_cycle::of(in_si<duration>(0.6 * period), in_si<duration>(period))};
            const surroundings where{.air = 25_degC};
            const std::optional<strap_heating> found = strap_heating_of(s, work, where);
            ASSERT_TRUE(found);
            const double ends = 2.0 / bolted_face_conductance_of(end_of(s)).low.value(), amps = work.current.value();
            double low = 298.15, high = 800.0;
            while (high - low > 1e-6) {
                const temperature middle = temperature::kelvin(0.5 * (low + high));
                const double made = 0.6 * amps * amps * (body_resistance_of(s, middle).value() + ends);
                (made > body_loss(body_of(s), middle, where).value() ? low : high) = middle.in_kelvin();
            }
            EXPECT_NEAR(found->mean_under_arc.in_kelvin(), low, 0.02) << mm2 << ' ' << period;
            EXPECT_NEAR(found->peak.in_kelvin(), low, 0.05) << mm2 << ' ' << period;
        }
}

TEST(StrapSizing, RefusesWhatCannotBe)
{
    strap_request r{.work = {.current = 200_A}};
    r.where.air = 90_degC;
    EXPECT_THROW((void)smallest_strap(r), out_of_range_error);
    r.where.air = 20_degC;
    r.work.current = 0_A;
    EXPECT_THROW((void)smallest_strap(r), out_of_range_error);
    r.work.current = in_si<current>(std::numeric_limits<double>::quiet_NaN());
    EXPECT_THROW((void)smallest_strap(r), not_finite_error);
    r.work.current = 100_kA;
    EXPECT_THROW((void)smallest_strap(r), no_solution_error);
    EXPECT_FALSE(strap_heating_of(strap{.section = 10_mm2}, {.current = 20_kA}, {})) << "it melts";
    r.work.current = 200_A;
    r.allowed_drop = 0_V;
    EXPECT_THROW((void)smallest_strap(r), out_of_range_error);
}

}  // namespace
