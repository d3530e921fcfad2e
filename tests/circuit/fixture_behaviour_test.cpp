// Joints of fixtures: rotary ground, strap, splice, stud.
#include <cmath>
#include <utility>

#include <gtest/gtest.h>

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/rotary_ground_behaviour.hpp>
#include <weldloop/circuit/splice_behaviour.hpp>
#include <weldloop/circuit/strap_behaviour.hpp>
#include <weldloop/circuit/stud_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/rating/joint/termination_acceptance.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// relations: brushes share the current and keep its drop; heat is drop times current; copper fingers are another law
TEST(RotaryGroundBehaviour, BrushesAndFingers)
{
    rotary_ground r{};
    const joint_behaviour at_200 = behaviour_of(r, 200_A, 40_degC), at_400 = behaviour_of(r, 400_A, 40_degC);
    EXPECT_EQ(at_200.drop, at_400.drop);
    EXPECT_NEAR_REL(at_400.loss.typical.value(), 400 * 0.25, 1e-12);
    EXPECT_NEAR_REL(at_400.resistance.typical.value(), 0.25 / 400, 1e-12);
    EXPECT_EQ(behaviour_of(r, 0_A, 40_degC).drop, band<voltage>{});
    EXPECT_GT(behaviour_of(r, 0_A, 40_degC).resistance.typical.value(), 0.0);
    EXPECT_FALSE(brushes_overloaded(r, 300_A));
    EXPECT_TRUE(brushes_overloaded(r, 330_A));
    EXPECT_EQ(joint_of(r, 200_A).constant_drop, at_200.drop);
    EXPECT_TRUE(at_200.basis.has(source_kind::memory));

    rotary_ground lifted = r;
    lifted.force = 0_N;
    EXPECT_FALSE(behaviour_of(lifted, 200_A, 40_degC).conducts);
    EXPECT_THROW((void)joint_of(lifted, 200_A), no_solution_error);

    rotary_ground fingers = r;
    fingers.brush.reset();
    const joint_behaviour sliding = behaviour_of(fingers, 200_A, 40_degC);
    EXPECT_LT(sliding.drop.typical, at_200.drop.typical);
    EXPECT_LT(sliding.drop.typical, behaviour_of(fingers, 400_A, 40_degC).drop.typical);
    EXPECT_EQ(joint_of(fingers, 200_A).count, 1U);
    EXPECT_FALSE(brushes_overloaded(fingers, 5000_A));

    r.count = 0;
    EXPECT_THROW((void)behaviour_of(r, 200_A, 40_degC), out_of_range_error);
    EXPECT_THROW((void)brushes_overloaded(r, 200_A), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(rotary_ground{}, in_si<current>(x), 40_degC));
}

// relations: two ends and a body in series; a longer strap, a loose bolt, a dirty face and fewer bolts are worse
TEST(StrapBehaviour, EndsAndBody)
{
    const strap s{};
    const joint_behaviour b = behaviour_of(s, 250_A, 20_degC), end = behaviour_of(end_of(s), 250_A, 20_degC);
    const resistance body = 1.10 * annealed_copper.resistivity * 200_mm / 50_mm2;
    EXPECT_NEAR_REL(body_resistance_of(s, 20_degC).value(), body.value(), 1e-12);
    EXPECT_NEAR_REL(b.drop.typical.value(), (2.0 * end.drop.typical + body * 250_A).value(), 1e-12);
    EXPECT_NEAR_REL(b.loss.typical.value(), 250.0 * b.drop.typical.value(), 1e-12);
    strap longer = s, loose = s, dirty = s, more = s, solid = s, open = s;
    longer.length = 400_mm;
    loose.tightening = 2_Nm;
    dirty.surface = surface_state::light_rust;
    more.bolts = 4;
    solid.make = strap_make::solid;
    open.tightening = 0_Nm;
    const auto drop = [](const strap& x) { return behaviour_of(x, 250_A, 20_degC).drop.typical; };
    EXPECT_GT(drop(longer), b.drop.typical);
    EXPECT_GT(drop(loose), b.drop.typical);
    EXPECT_GT(drop(dirty), b.drop.typical);
    EXPECT_LT(drop(more), b.drop.typical);
    EXPECT_LT(drop(solid), b.drop.typical);
    EXPECT_FALSE(behaviour_of(open, 250_A, 20_degC).conducts);
    strap odd = s;
    odd.section = 0_mm2;
    EXPECT_THROW((void)behaviour_of(odd, 250_A, 20_degC), out_of_range_error);
    odd = s;
    odd.bolts = 0;
    EXPECT_THROW((void)behaviour_of(odd, 250_A, 20_degC), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(s, in_si<current>(x), 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(with_body(b, in_si<resistance>(x), 250_A));
}

// relation: a splice is two crimps; of unlike cables the smaller is the worse end
TEST(SpliceBehaviour, TwoCrimps)
{
    const cable_splice s{};
    EXPECT_NEAR_REL(1.0 / splice_conductance_of(s).typical.value(), 2.0 * crimp_resistance(50_mm2).typical.value(),
                    1e-12);
    cable_splice unlike = s, missing = s;
    unlike.second = square_mm(35);
    missing.missing_strands = 0.3;
    EXPECT_LT(splice_conductance_of(unlike).typical, splice_conductance_of(s).typical);
    EXPECT_GT(behaviour_of(missing, 250_A, 40_degC).drop.typical, behaviour_of(s, 250_A, 40_degC).drop.typical);
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(s, in_si<current>(x), 40_degC));
}

// by hand: a sound crimp has typically 0.4 of its limit, a barrel of 50 mm2 on a cable of 35 mm2 lacks 0.3 of its
// strands, which counts with the third power: 0.4/0.7^3 = 1.1662. That end is judged, whichever way round the sleeve
// is.
TEST(SpliceBehaviour, TheWorseCrimpIsJudged)
{
    cable_splice s{};
    s.second = square_mm(35);
    for (int turned = 0; turned < 2; ++turned) {
        const part_sheet sheet = sheet_of(s);
        ASSERT_TRUE(sheet.crimp);
        EXPECT_NEAR((sheet.crimp->held.typical / sheet.crimp->highest).value(), 1.1662, 1e-4) << turned;
        std::swap(s.first, s.second);
    }
}

// by hand: the nut factor of a dry thread reaches from 0.20 to 0.30, that of an oiled one from 0.15 to 0.18; as the
// force goes with its inverse and conductance with the power m of the force, and spreads of factors add as squares of
// logarithms, ln(typical/low)^2 of the two differ by m^2 (ln(1.5)^2 - ln(1.2)^2) = 0.131160 m^2
TEST(BoltedFace, TheLooseBoltIsTheWorseJoint)
{
    bolted_face dry{.metals = palm_metals, .bolt_diameter = 10_mm, .tightening = 30_Nm, .thread = thread_state::dry};
    bolted_face oiled = dry;
    oiled.thread = thread_state::oiled;
    const auto square = [](const bolted_face& f) {
        const band<conductance> g = bolted_face_conductance_of(f);
        return std::pow(std::log((g.typical / g.low).value()), 2.0);
    };
    const double m = force_law_exponent(contact_shape::busbar);
    EXPECT_NEAR_REL(square(dry) - square(oiled), 0.131160 * m * m, 1e-4);
}

// source: MIL-DTL-83454A, 174 micro-ohm for a 1/4 inch stud: a clean M6 stud at the published torque of its thread is
// accepted over its whole band, a finger-tight one on light rust is not
TEST(StudBehaviour, AcceptedWhenTightAndClean)
{
    stud_terminal s{};
    s.diameter = 0.250_in;
    s.tightening = 8_Nm;
    const joint_behaviour good = behaviour_of(s, 43_A, 20_degC);
    EXPECT_TRUE(stud_acceptance_of(s.diameter, good.drop.high, 43_A).accepted);
    stud_terminal bad = s;
    bad.tightening = 0.2_Nm;
    bad.surface = surface_state::light_rust;
    EXPECT_FALSE(stud_acceptance_of(s.diameter, behaviour_of(bad, 43_A, 20_degC).drop.typical, 43_A).accepted);
    // each further lug under the nut adds a face
    stud_terminal stacked = s;
    stacked.lugs = 3;
    EXPECT_LT(stud_conductance_of(stacked).typical, stud_conductance_of(s).typical);
    EXPECT_GT(behaviour_of(stacked, 43_A, 20_degC).drop.typical, good.drop.typical);
    EXPECT_EQ(good.conducts, true);
    bad.lugs = 0;
    EXPECT_THROW((void)stud_conductance_of(bad), out_of_range_error);
    EXPECT_THROW((void)behaviour_of(bad, 43_A, 20_degC), out_of_range_error);
}
