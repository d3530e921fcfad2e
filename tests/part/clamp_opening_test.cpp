// A clamp's spring and its jaws' opening: worked examples put into a clamp, consistency with the laws, limits, bad
// input.
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/clamp_opening.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

namespace {

wl::clamp_spring torsion()
{
    wl::clamp_spring s;
    s.turns = 6.0;
    s.stress = 0.5;
    s.opening = 8_mm;
    return s;
}

wl::clamp_spring compression()
{
    wl::clamp_spring s;
    s.wire = wl::music_wire;
    s.wire_diameter = 3_mm;
    s.coil_diameter = 22_mm;
    s.coils = 1;
    s.arm = 60_mm;
    s.turns = 9.0;
    s.opening = 8_mm;
    s.stress = 0.45;
    s.compression = wl::compression_between_arms{.arm = 40_mm, .free_length = 70_mm, .guided = true};
    return s;
}

double newton(const wl::clamp_spring& s, wl::length opening)
{
    return wl::clamp_force_at(s, opening).value();
}

}  // namespace

// The force at the stated opening is the one whose stress is the stated stress: two ways to the same number.
TEST(ClampOpening, TheStatedStressGivesTheForceAtTheStatedOpening)
{
    for (const wl::clamp_spring& s : {torsion(), compression()})
        EXPECT_NEAR_REL(static_cast<double>(wl::clamp_spring_stress(s, wl::clamp_force_at(s, s.opening))),
                        static_cast<double>(s.stress), 1e-12);
    for (const double amps : {100.0, 200.0, 350.0, 600.0, 1000.0}) {
        const wl::work_clamp c = wl::spring_clamp(amps * 1_A);
        EXPECT_NEAR_REL(newton(*c.spring, c.spring->opening), c.force.value(), 1e-9) << amps;
    }
}

// Shigley example 10-8 as a clamp: music wire 0.072 in, one body of 4.25 turns with legs of 1 in; it reaches 0.78 of
// its strength 0.258 turns from free. A clamp whose jaws meet with that spring free opens by just that angle.
TEST(ClampOpening, OpensAsFarAsShigleysTorsionSpring)
{
    wl::clamp_spring s;
    s.wire = wl::music_wire;
    s.wire_diameter = 0.072_in;
    s.coil_diameter = (19.0 / 32.0) * 1_in - 0.072_in;
    s.coils = 1;
    s.arm = 2_in;
    s.turns = 4.25;
    s.legs = 2_in;
    s.stress = 0.0;
    s.opening = 0_mm;
    const wl::clamp_travel found = wl::clamp_travel_of(s);
    EXPECT_EQ(found.bound, wl::opening_bound::set);
    const double turns = 2.0 * std::asin((found.widest / (2.0 * s.arm)).value()) / (2.0 * std::numbers::pi);
    EXPECT_NEAR_REL(turns, 0.258,
                    0.01);  // E of this diameter is 196.5 GPa where the example has 28.5 Mpsi: one in 1000
    EXPECT_NEAR(found.when_closed.value(), 0.0, 1e-9);
    // the moment there is the example's 7.546 lbf in, over the arm of 2 in
    EXPECT_NEAR_REL(wl::number_in(wl::clamp_force_at(s, found.widest), "lbf"), 7.546 / 2.0, 5e-3);
}

// By hand, Wahl's stress (Shigley, Mechanical Engineering Design, equations 10-5 and 10-7) told as the tension that
// yields as soon by the energy of distortion, sqrt(3) times the shear: 20 N at 60 mm are 30 N at 40 mm; C = 22/3, Kw
// = 1.202285, 8 Kw F D/(pi d^3) = 74.839 MPa, times sqrt(3) 129.625 MPa.
TEST(ClampOpening, StressOfACompressionSpringIsItsShearToldAsTension)
{
    const wl::clamp_spring s = compression();
    const double strength = wl::tensile_strength(s.wire, s.wire_diameter).value();
    EXPECT_NEAR_REL(static_cast<double>(wl::clamp_spring_stress(s, 20_N)) * strength, 129.625e6, 1e-5);
}

// A compression spring alone under the jaws (both arms alike): Bhandari example 10.6, 72.4448 N/mm.
TEST(ClampOpening, StiffensAsItsCompressionSpring)
{
    wl::clamp_spring s = compression();
    s.compression->arm = s.arm;
    const double rate = wl::compression_rate(wl::shear_modulus(s.wire, s.wire_diameter), s.wire_diameter,
                                             s.coil_diameter, wl::active_turns(s.turns, s.compression->ends))
                            .value();
    EXPECT_NEAR_REL((newton(s, 12_mm) - newton(s, 8_mm)) / 4e-3, rate, 1e-9);
    // by the lever twice: half the spring's arm is a quarter of the stiffness at the jaws
    wl::clamp_spring half = s;
    half.compression->arm = 0.5 * s.arm;
    EXPECT_NEAR_REL((newton(half, 12_mm) - newton(half, 8_mm)) / 4e-3, 0.25 * rate, 1e-9);
    half.coils = 2;
    EXPECT_NEAR_REL((newton(half, 12_mm) - newton(half, 8_mm)) / 4e-3, 0.5 * rate, 1e-9);
}

TEST(ClampOpening, EndsWhereItsBoundSays)
{
    const wl::clamp_travel by_set = wl::clamp_travel_of(torsion());
    EXPECT_EQ(by_set.bound, wl::opening_bound::set);
    EXPECT_NEAR_REL(
        static_cast<double>(wl::clamp_spring_stress(torsion(), wl::clamp_force_at(torsion(), by_set.widest))),
        wl::hard_drawn_wire.set.bending, 1e-9);

    wl::clamp_spring s = compression();
    const wl::clamp_travel shear = wl::clamp_travel_of(s);
    EXPECT_EQ(shear.bound, wl::opening_bound::set);
    EXPECT_NEAR_REL(static_cast<double>(wl::clamp_spring_stress(s, wl::clamp_force_at(s, shear.widest))),
                    std::numbers::sqrt3 * wl::music_wire.set.shear, 1e-9);

    // with its set removed it bears more, until its turns touch
    s.compression->set_removed = true;
    s.compression->free_length = 50_mm;
    const wl::clamp_travel solid = wl::clamp_travel_of(s);
    EXPECT_EQ(solid.bound, wl::opening_bound::solid);
    const double at_solid =
        wl::compression_rate(wl::shear_modulus(s.wire, s.wire_diameter), s.wire_diameter, s.coil_diameter, 7.0)
            .value() *
        (50e-3 - 9.0 * 3e-3);
    EXPECT_NEAR_REL(newton(s, solid.widest), at_solid * 40.0 / 60.0, 1e-9);

    // a slender one that nothing guides buckles first
    s = compression();
    s.compression->free_length = 95_mm;
    s.compression->guided = false;
    s.stress = 0.2;
    const wl::clamp_travel slender = wl::clamp_travel_of(s);
    EXPECT_EQ(slender.bound, wl::opening_bound::buckling);
    s.compression->held = wl::spring_ends_held::both_flat;
    EXPECT_NE(wl::clamp_travel_of(s).bound, wl::opening_bound::buckling);

    // a soft spring lets the arms open to one line
    wl::clamp_spring soft = torsion();
    soft.turns = 200.0;
    soft.stress = 0.05;
    const wl::clamp_travel straight = wl::clamp_travel_of(soft);
    EXPECT_EQ(straight.bound, wl::opening_bound::straight);
    EXPECT_NEAR_REL(straight.widest.value(), 2.0 * soft.arm.value(), 1e-12);
}

TEST(ClampOpening, APresetSpringPressesWhenClosed)
{
    const wl::clamp_travel preset = wl::clamp_travel_of(torsion());
    EXPECT_GT(preset.when_closed.value(), 0.0);
    EXPECT_EQ(preset.slack_below.value(), 0.0);
    EXPECT_NEAR_REL(preset.when_closed.value(), newton(torsion(), 0_mm), 1e-12);

    wl::clamp_spring loose = torsion();
    loose.stress = 0.05;
    const wl::clamp_travel slack = wl::clamp_travel_of(loose);
    EXPECT_EQ(slack.when_closed.value(), 0.0);
    EXPECT_GT(slack.slack_below.value(), 0.0);
    EXPECT_EQ(newton(loose, 0.5 * slack.slack_below), 0.0);
    EXPECT_GT(newton(loose, 1.01 * slack.slack_below), 0.0);
}

// A clamp that is opened wider presses harder, and every generic clamp bears its own plate.
TEST(ClampOpening, RisesWithTheOpening)
{
    double last = 0.0;
    for (double mm = 0.0; mm <= 40.0; mm += 1.0) {
        const double now = newton(torsion(), mm * 1_mm);
        EXPECT_GT(now, last);
        last = now;
    }
    for (const double amps : {100.0, 200.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0}) {
        const wl::clamp_spring s = *wl::spring_clamp(amps * 1_A).spring;
        const wl::clamp_travel found = wl::clamp_travel_of(s);
        RecordProperty(std::to_string(amps) + " A", wl::to_text(found.when_closed, "N", 3) + " when closed, widest " +
                                                        wl::to_text(found.widest, "mm", 3) + ", " +
                                                        std::string(to_text(found.bound)));
        EXPECT_GT(found.widest, s.opening) << amps;
        EXPECT_GT(found.when_closed.value(), 0.0) << amps;
    }
}

TEST(ClampOpening, RefusesWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW((void)newton(torsion(), -1.0 * 1_mm), wl::out_of_range_error);
    EXPECT_THROW((void)newton(torsion(), 101_mm), wl::out_of_range_error);
    EXPECT_THROW((void)newton(torsion(), wl::in_si<wl::length>(nan)), wl::not_finite_error);
    const auto refused = [](const wl::clamp_spring& s) {
        EXPECT_THROW((void)wl::clamp_travel_of(s), wl::out_of_range_error);
        EXPECT_THROW((void)wl::clamp_force_at(s, 5_mm), wl::out_of_range_error);
    };
    wl::clamp_spring s = torsion();
    s.coils = 0;
    refused(s);
    s = torsion();
    s.legs = -1.0 * 1_mm;
    refused(s);
    s = torsion();
    s.turns = 0.0;
    refused(s);
    s = compression();
    s.turns = 2.0;
    refused(s);
    s = compression();
    s.compression->free_length = 27_mm;  // its solid length
    refused(s);
    s = compression();
    s.compression->free_length = 30_mm;  // pressed solid before it comes to its stress
    refused(s);
    s = compression();
    s.compression->arm = 0_mm;
    refused(s);
    EXPECT_THROW((void)wl::clamp_spring_stress(s, 100_N), wl::out_of_range_error);
    EXPECT_THROW((void)wl::clamp_spring_stress(torsion(), 100_kN), wl::out_of_range_error);
}
