#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/life/magnet_grip.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

const surroundings shop{.air = 30_degC};
const cable lead = welding_cable(square_mm(50), 10_m);
const duty_cycle duty = duty_cycle::of(6_min, 10_min);

magnet_grip at(const work_magnet& m, current amps)
{
    return magnet_grip_of(m, lead, {.current = amps, .duty = duty}, shop);
}

}  // namespace

// Without current the magnet has the air's temperature and the pull of magnet_force() there.
TEST(MagnetGrip, ColdItIsTheLawOfThePull)
{
    for (const magnet_grade& grade : all_magnet_grades) {
        const work_magnet m{.grade = grade};
        const magnet_grip g = at(m, in_si<current>(1e-3));
        EXPECT_NEAR((g.magnet.typical - shop.air).value(), 0.0, 0.01);
        const double there = magnet_force(m.rated, grade, shop.air).force / m.rated;
        EXPECT_NEAR_REL(g.pull_left.typical, there, 1e-5) << grade.name;
        EXPECT_FALSE(g.demagnetised);
    }
}

// Warm, the pull left is that of the law at the temperature found, and the resistance that of the pad under it.
TEST(MagnetGrip, WarmItFollowsTheMagnet)
{
    const work_magnet m{.grade = ferrite_magnet, .surface = surface_state::oxidized};
    const magnet_grip g = at(m, 200_A);
    EXPECT_GT(g.magnet.typical, shop.air);
    EXPECT_GT(g.pad.typical, g.magnet.typical);
    EXPECT_LE(g.magnet.low, g.magnet.typical);
    EXPECT_LE(g.magnet.typical, g.magnet.high);
    EXPECT_LE(g.pull_left.low, g.pull_left.typical);
    EXPECT_LE(g.resistance.typical, g.resistance.high);
    EXPECT_NEAR_REL(g.pull_left.typical, (magnet_force(m.rated, m.grade, g.magnet.typical).force / m.rated).value(),
                    1e-9);
    EXPECT_TRUE(g.basis.has(source_kind::judgement));
}

// common practice, no source: a strong magnet of the common grade is the first to be spoiled by heat; dirt under it
// makes it hotter
TEST(MagnetGrip, GradesAndDirtDiffer)
{
    const auto largest = [](const magnet_grade& grade, surface_state state) {
        return largest_magnet_current({.grade = grade, .surface = state}, lead, duty, shop);
    };
    EXPECT_LT(largest(neodymium_magnet, surface_state::oxidized), largest(ferrite_magnet, surface_state::oxidized));
    EXPECT_LT(largest(neodymium_magnet, surface_state::light_rust), largest(neodymium_magnet, surface_state::clean));
    const work_magnet m{.grade = neodymium_magnet, .surface = surface_state::oxidized};
    const current most = largest_magnet_current(m, lead, duty, shop);
    const magnet_grip last = at(m, 0.9999 * most);
    EXPECT_FALSE(last.demagnetised);
    EXPECT_NEAR((last.magnet_peak.typical - neodymium_magnet.highest).value(), 0.0, 0.1);
    EXPECT_LT(last.magnet.typical, last.magnet_peak.typical);
    EXPECT_TRUE(at(m, 1.0001 * most).demagnetised);
    EXPECT_GT(at({.surface = surface_state::light_rust}, 150_A).magnet.typical,
              at({.surface = surface_state::clean}, 150_A).magnet.typical);
}

TEST(MagnetGrip, TooHotThePullIsLost)
{
    const work_magnet m{.grade = neodymium_magnet, .surface = surface_state::heavy_rust};
    const magnet_grip g =
        magnet_grip_of(m, lead, {.current = 500_A, .duty = duty_cycle::continuous()}, {.air = 70_degC});
    EXPECT_TRUE(g.demagnetised);
    EXPECT_TRUE(g.may_be_demagnetised);
    EXPECT_EQ(g.pull_left.typical, 0.0);
    EXPECT_EQ(g.resistance.typical.value(), 0.0);
}

TEST(MagnetGrip, RefusesWhatCannotBe)
{
    EXPECT_THROW(static_cast<void>(at({.work = stainless_steel}, 100_A)), bad_station_error);
    EXPECT_THROW(static_cast<void>(at({.surface = surface_state::painted_unbroken}, 100_A)), bad_station_error);
    EXPECT_THROW(static_cast<void>(at({}, 0_A)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(at({.rated = 0_N}, 100_A)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(at({.rated = in_si<force>(std::numeric_limits<double>::quiet_NaN())}, 100_A)),
                 not_finite_error);
    EXPECT_THROW(static_cast<void>(largest_magnet_current({.work = aluminium}, lead, duty, shop)), bad_station_error);
    EXPECT_EQ(largest_magnet_current({.grade = neodymium_magnet}, lead, duty, {.air = 90_degC}).value(), 0.0);
}
