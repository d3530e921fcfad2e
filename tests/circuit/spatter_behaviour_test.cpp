#include <gtest/gtest.h>

#include <weldloop/circuit/spatter_behaviour.hpp>
#include <weldloop/core/literals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// relation: two ways to the same joint, both by judgement: few scaled steel points, and the multiplier of a
// spatter-covered surface. From 100 N to 2 kN their medians agree within a factor of 1.6 and each lies in the other's
// band.
TEST(SpatterBehaviour, BallsAgreeWithTheMultiplier)
{
    for (const double newtons : {100.0, 250.0, 500.0, 1000.0, 2000.0}) {
        const force f = in_si<force>(newtons);
        const band<conductance> balls = spatter_conductance_of(annealed_copper, f);
        const band<conductance> multiplied = contact_conductance_of(
            {.metals = {annealed_copper, mild_steel}, .force = f, .surface = surface_state::spatter_covered});
        const double ratio = (balls.typical / multiplied.typical).value();
        EXPECT_GT(ratio, 1.0 / 1.6) << newtons;
        EXPECT_LT(ratio, 1.6) << newtons;
        EXPECT_GT(balls.typical, multiplied.low);
        EXPECT_LT(balls.typical, multiplied.high);
        EXPECT_GT(multiplied.typical, balls.low);
        EXPECT_LT(multiplied.typical, balls.high);
    }
    EXPECT_NEAR_REL(1.0 / spatter_conductance_of(annealed_copper, 500_N).typical.value(), 752e-6, 0.01);
}

// common practice, no source: a bare part is better than a table with spatter; more balls are better
TEST(SpatterBehaviour, WorseThanTheBarePart)
{
    const joint_behaviour bare =
        behaviour_of({.metals = {annealed_copper, mild_steel}, .force = 300_N}, 200_A, 30_degC);
    const joint_behaviour spatter = spatter_behaviour_of(annealed_copper, 300_N, 200_A, 30_degC);
    EXPECT_GT(spatter.drop.typical, bare.drop.typical);
    EXPECT_GT(spatter.hottest_spot.typical, bare.hottest_spot.typical);
    EXPECT_TRUE(spatter.basis.has(source_kind::judgement));
    EXPECT_GT(contact_conductance_of(spatter_contact_of(brass, 300_N, 10)).typical,
              contact_conductance_of(spatter_contact_of(brass, 300_N, 2)).typical);
}

// limiting case and bad input
TEST(SpatterBehaviour, OpenWithoutForce)
{
    EXPECT_EQ(spatter_conductance_of(brass, 0_N), band<conductance>{});
    EXPECT_FALSE(spatter_behaviour_of(brass, 0_N, 200_A, 20_degC).conducts);
    EXPECT_REFUSES_BAD_NUMBERS(spatter_conductance_of(brass, in_si<force>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(spatter_behaviour_of(brass, 100_N, in_si<current>(x), 20_degC));
    EXPECT_THROW((void)contact_conductance_of(spatter_contact_of(brass, 100_N, 0)), out_of_range_error);
}
