#include <gtest/gtest.h>

#include <weldloop/circuit/magnet_behaviour.hpp>
#include <weldloop/core/literals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// common practice, no source: a magnet is worse hot, worse on scale, and nothing on stainless or aluminium
TEST(MagnetBehaviour, ConductsThroughItsPad)
{
    const work_magnet cold{};
    EXPECT_NEAR_REL(pad_contact_of(cold).force.value(), 100.0, 1e-12);
    work_magnet hot = cold, scaled = cold;
    hot.magnet = 150_degC;
    scaled.gap = 0.1_mm;
    const joint_behaviour usual = behaviour_of(cold, 150_A, 30_degC);
    EXPECT_TRUE(usual.conducts);
    EXPECT_GT(behaviour_of(hot, 150_A, 30_degC).drop.typical, usual.drop.typical);
    EXPECT_GT(behaviour_of(scaled, 150_A, 30_degC).drop.typical, usual.drop.typical);
    EXPECT_TRUE(usual.basis.has(source_kind::judgement));
    for (const metal& other : {stainless_steel, aluminium, annealed_copper}) {
        work_magnet slips = cold;
        slips.work = other;
        EXPECT_FALSE(behaviour_of(slips, 150_A, 30_degC).conducts) << other.name;
    }
    work_magnet odd = cold;
    odd.rated = in_si<force>(-1);
    EXPECT_THROW((void)behaviour_of(odd, 150_A, 30_degC), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(cold, in_si<current>(x), 30_degC));
}
