#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;

const lug sound = crimped_lug("lug", aught(2));

lug with_torque(double x)
{
    return sound.tightened_to(in_si<torque>(x));
}
lug with_bolt(double x)
{
    lug out = sound;
    out.bolt_diameter = in_si<length>(x);
    return out;
}

}  // namespace

// source: MIL-T-7928E, 4 AWG: 5 mV at 135 A, the 95 % point of a sound crimp (read; judgement that it is that point)
TEST(LugBehaviour, ASoundCrimpReachesItsLimitAtMost)
{
    const band<conductance> g = crimp_conductance_of(crimped_lug("lug", awg(4)));
    EXPECT_NEAR_REL(1.0 / g.low.value(), 5e-3 / 135, 1e-9);
    EXPECT_NEAR_REL(1.0 / g.typical.value(), 0.4 * 5e-3 / 135, 1e-9);
    EXPECT_NEAR_REL(1.0 / g.high.value(), 0.2 * 5e-3 / 135, 1e-9);
}

// judgement: 1/(1-s)^3; common practice: missing strands heat the termination
TEST(LugBehaviour, MissingStrandsHeatTheTermination)
{
    const lug frayed = sound.with_missing_strands(0.2);
    const double ratio = (crimp_conductance_of(sound).typical / crimp_conductance_of(frayed).typical).value();
    EXPECT_NEAR_REL(ratio, 1.0 / (0.8 * 0.8 * 0.8), 1e-12);
    power last = 0_W;
    for (double s = 0.0; s < 0.95; s += 0.05) {
        const joint_behaviour b = crimp_behaviour_of(sound.with_missing_strands(s), 250_A, 40_degC);
        EXPECT_GT(b.loss.typical, last);
        last = b.loss.typical;
    }
    EXPECT_EQ(palm_conductance_of(frayed), palm_conductance_of(sound));
}

// judgement: a barrel of another size, larger or smaller, is worse than the right one
TEST(LugBehaviour, WrongBarrelIsWorse)
{
    for (const conductor_size other : {awg(1), aught(1), aught(3), aught(4)}) {
        lug wrong = sound;
        wrong.stamped = other;
        EXPECT_LT(crimp_conductance_of(wrong).typical, crimp_conductance_of(sound).typical);
    }
}

// worked by hand: M10 at 40 N m, K 0.17: 23.53 kN; copper-brass K = sqrt(370 x 380) = 375, m = 0.6: 3.52 micro-ohm
TEST(LugBehaviour, PalmByTheForceLaw)
{
    const band<conductance> g = palm_conductance_of(sound);
    const double newtons = 40.0 / (0.17 * 0.010);
    EXPECT_NEAR_REL(1.0 / g.typical.value(), 1e-6 * std::sqrt(370.0 * 380.0) / std::pow(0.102 * newtons, 0.6), 1e-12);
    EXPECT_NEAR(1e6 / g.typical.value(), 3.52, 0.01);
    EXPECT_LT(g.low, g.typical);
    EXPECT_LT(g.typical, g.high);
}

// properties: more torque is better; none is open, and so is unbroken paint under the palm
TEST(LugBehaviour, LoosePalm)
{
    conductance last = in_si<conductance>(0);
    for (double t = 0.1; t < 60; t *= 1.5) {
        EXPECT_GT(palm_conductance_of(with_torque(t)).typical, last);
        last = palm_conductance_of(with_torque(t)).typical;
    }
    lug painted = sound;
    painted.palm = surface_state::painted_unbroken;
    for (const lug& open : {with_torque(0), painted}) {
        EXPECT_EQ(palm_conductance_of(open), band<conductance>{});
        EXPECT_EQ(lug_conductance_of(open), band<conductance>{});
        EXPECT_FALSE(behaviour_of(open, 200_A, 40_degC).conducts);
        EXPECT_TRUE(crimp_behaviour_of(open, 200_A, 40_degC).conducts);
    }
}

// relation: crimp and palm in series
TEST(LugBehaviour, WholeLug)
{
    const band<conductance> c = crimp_conductance_of(sound), p = palm_conductance_of(sound),
                            g = lug_conductance_of(sound);
    EXPECT_NEAR_REL(1.0 / g.typical.value(), 1.0 / c.typical.value() + 1.0 / p.typical.value(), 1e-12);
    const joint_behaviour b = behaviour_of(sound, 250_A, 20_degC);
    EXPECT_GE(b.drop.typical.value(), 250.0 / g.typical.value());
    EXPECT_NEAR_REL(b.drop.typical.value(), 250.0 / g.typical.value(), 0.001);  // its spots are hardly warm
    EXPECT_NEAR_REL(b.loss.typical.value(), 250.0 * b.drop.typical.value(), 1e-12);
    EXPECT_TRUE(b.basis.has(source_kind::memory));  // the crimp limit of 2/0 is recalled
}

// source: MIL-T-7928E, 8 AWG: 5 mV at 73 A is the limit itself
TEST(LugBehaviour, CrimpAcceptance)
{
    const crimp_acceptance good = crimp_acceptance_of(awg(8), 4_mV, 73_A);
    EXPECT_TRUE(good.within_limit);
    EXPECT_FALSE(good.limit_recalled);
    EXPECT_NEAR_REL(good.used, 0.8, 1e-9);
    EXPECT_NEAR_REL(good.limit.value(), 5e-3 / 73, 1e-9);
    EXPECT_NEAR_REL(good.reading.value(), 4e-3 / 73, 1e-12);
    EXPECT_FALSE(crimp_acceptance_of(awg(8), 5.1_mV, 73_A).within_limit);
    EXPECT_TRUE(crimp_acceptance_of(aught(2), 1_mV, 283_A).limit_recalled);
    EXPECT_TRUE(crimp_acceptance_of(square_mm(185), 1_mV, 283_A).limit_recalled);
    EXPECT_EQ(crimp_acceptance_of(awg(8), 0_V, 73_A).used, 0.0);
    // at the limit it is within it
    EXPECT_TRUE(crimp_acceptance_of(awg(8), in_si<voltage>(good.limit.value()), 1_A).within_limit);
}

TEST(LugBehaviour, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(palm_conductance_of(with_torque(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(palm_conductance_of(with_bolt(x)));
    EXPECT_REFUSES_BAD_NUMBERS(lug_conductance_of(with_torque(x)));
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(with_torque(x), 1_A, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(sound, in_si<current>(x), 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(crimp_behaviour_of(sound, in_si<current>(x), 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(palm_behaviour_of(sound, in_si<current>(x), 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(sound_crimp_conductance_of(in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(both_crimps_conductance_of(in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(sound_crimp_behaviour_of(in_si<area>(x), 1_A, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(crimp_basis_of(in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(crimp_acceptance_of(awg(4), in_si<voltage>(x), 1_A));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(crimp_acceptance_of(awg(4), 1_mV, in_si<current>(x)));
    EXPECT_THROW((void)crimp_conductance_of(crimped_lug("lug", kcmil(700))), out_of_range_error);
}
