#include <gtest/gtest.h>

#include <weldloop/circuit/set_screw_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/bare_copper.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// relation: the force law on the settled force; trends: ferrule, torque and strands help
TEST(SetScrewBehaviour, FollowsItsForce)
{
    const set_screw usual{};
    const band<conductance> g = set_screw_conductance_of(usual);
    EXPECT_LT(g.low, g.typical);
    EXPECT_LT(g.typical, g.high);
    // 10 N m on M8 dry: 6.25 kN, 5 kN of it left: 374.97 / (0.102 x 5000)^0.7 = 4.77 micro-ohm
    EXPECT_NEAR_REL(1.0 / g.typical.value(), 4.77e-6, 0.002);
    set_screw strands = usual, loose = usual, missing = usual, open = usual;
    strands.ferrule = false;
    loose.tightening = 1_Nm;
    missing.missing_strands = 0.2;
    open.tightening = 0_Nm;
    EXPECT_LT(set_screw_conductance_of(strands).typical, g.typical);
    EXPECT_LT(set_screw_conductance_of(loose).typical, g.typical);
    EXPECT_NEAR_REL((g.typical / set_screw_conductance_of(missing).typical).value(), 1.0 / (0.8 * 0.8 * 0.8), 1e-12);
    EXPECT_EQ(set_screw_conductance_of(open), band<conductance>{});
    EXPECT_FALSE(behaviour_of(open, 100_A, 20_degC).conducts);
    EXPECT_TRUE(behaviour_of(usual, 100_A, 20_degC).basis.has(source_kind::judgement));
    // source: IEC 60999-1 (recalled): 15 mV at the test current of the section, here 125 A for 35 mm2, holds a sound
    // one; no pass by it alone
    EXPECT_LT(behaviour_of(usual, 125_A, 20_degC).drop.high, 15_mV);
}

TEST(SetScrewBehaviour, RefusesWhatCannotBe)
{
    set_screw odd{};
    odd.tightening = in_si<torque>(-1);
    EXPECT_THROW((void)set_screw_conductance_of(odd), out_of_range_error);
    odd = {};
    odd.screw_diameter = 0_mm;
    EXPECT_THROW((void)set_screw_conductance_of(odd), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(set_screw{}, in_si<current>(x), 20_degC));
}

// relation: bare copper has the resistance of its cable; more than 5 mm is live metal to be covered (judgement)
TEST(BareCopper, IsCableWithoutCover)
{
    const bare_copper shown = bare_copper_of(square_mm(50), 10_mm, annealed_copper, 20_degC);
    EXPECT_NEAR_REL(shown.resistance.value(), annealed_copper.resistivity.value() * 0.010 / 50e-6, 1e-12);
    EXPECT_TRUE(shown.too_long);
    EXPECT_TRUE(shown.basis.has(source_kind::judgement));
    EXPECT_FALSE(bare_copper_of(square_mm(50), 2_mm, annealed_copper, 20_degC).too_long);
    EXPECT_EQ(bare_copper_of(square_mm(50), 0_mm, annealed_copper, 20_degC).resistance.value(), 0.0);
    EXPECT_REFUSES_BAD_NUMBERS(bare_copper_of(square_mm(50), in_si<length>(x), annealed_copper, 20_degC));
}
