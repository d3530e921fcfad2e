#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/bolt_relaxation.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// judgement, said so by its source: what the words of the source say, and that force only falls
TEST(BoltRelaxation, SaysWhatItsSourceSays)
{
    EXPECT_EQ(bolt_relaxation_judgement.kind, source_kind::judgement);
    EXPECT_EQ(bolt_force_left(0_s), exactly(1.0));
    EXPECT_NEAR_REL(bolt_force_left(1_h).typical, 1.0 - 0.10 - 0.02 * std::log10(2.0), 1e-12);
    EXPECT_NEAR_REL(bolt_force_left(999_h).typical, 1.0 - 0.10 - 0.06, 1e-12);
    EXPECT_NEAR_REL(bolt_force_left(999_h).low, 1.0 - 0.20 - 0.12, 1e-12);
    EXPECT_NEAR_REL(1.0 - bolt_force_left(999_h, {.pressed = bolted_pair::with_aluminium}).typical, 2.0 * 0.16, 1e-12);
    EXPECT_NEAR_REL(
        1.0 - bolt_force_left(999_h, {.pressed = bolted_pair::with_aluminium, .follower = bolt_follower::spring_washer})
                  .typical,
        0.16, 1e-12);
    EXPECT_GT(bolt_force_left(999_h, {.faces = bolted_faces::bedded}).typical, bolt_force_left(999_h).typical);
    double last = 1.0;
    for (double seconds = 1.0; seconds < 1e9; seconds *= 2.0) {
        const band<double> now = bolt_force_left(in_si<duration>(seconds), {.pressed = bolted_pair::with_aluminium});
        EXPECT_LE(now.typical, last);
        EXPECT_LE(now.low, now.typical);
        EXPECT_LE(now.typical, now.high);
        EXPECT_GE(now.low, 0.0);
        last = now.typical;
    }
    EXPECT_REFUSES_BAD_NUMBERS(bolt_force_left(in_si<duration>(x)));
}

// The same law by temperature: faster in proportion to 1/(Ts - T), whatever the temperatures before; monotone in time
// and temperature, no step, and at the softening temperature nothing is left.
TEST(BoltRelaxation, HotJointsSettleFaster)
{
    const bolted_joint copper;
    EXPECT_EQ(bolt_force_left(999_h, 20_degC, copper), bolt_force_left(999_h));
    EXPECT_NEAR_REL(settling_pace(90_degC, copper.softening), 170.0 / 100.0, 1e-12);
    EXPECT_NEAR_REL(bolt_force_left(999_h, 90_degC, copper).typical, 1.0 - 0.10 - 0.02 * 1.7 * 3.0, 1e-12);
    // the slope d/dT of 0.06 x 170/(190 - T) is at most 1/170 x 0.9^2/0.06 K where the force reaches zero
    double last = bolt_force_left(999_h, 0_degC, copper).typical;
    for (double celsius = 0.01; celsius <= 200.0; celsius += 0.01) {
        const double now = bolt_force_left(999_h, temperature::celsius(celsius), copper).typical;
        EXPECT_LE(now, last) << celsius;
        EXPECT_GT(now, last - 0.01 * 1.05 * 0.81 / (0.06 * 170.0)) << celsius;
        last = now;
    }
    for (const bolt_follower f : {bolt_follower::bolt, bolt_follower::spring_washer, bolt_follower::screw_frame}) {
        // softening takes as long as annealing does: an hour for a stiff bolt, not a second
        EXPECT_GT(bolt_force_left(1_s, 427_degC, {.follower = f}).low, 0.99);
        EXPECT_EQ(bolt_force_left(1_h, 190_degC, {.follower = f}).typical > 0.0, f != bolt_follower::bolt);
        EXPECT_LT(bolt_force_left(2000_h, 427_degC, {.follower = f}).typical, 1e-12);
        EXPECT_EQ(bolt_force_left(0_s, 427_degC, {.follower = f}), exactly(1.0));
    }
    EXPECT_NEAR_REL(1.0 - bolt_force_left(999_h, 20_degC, {.follower = bolt_follower::screw_frame}).typical, 0.2 * 0.16,
                    1e-12);
}

// A stretch cut in pieces is the same stretch, a cold night changes next to nothing, and the rate is the slope.
TEST(BoltRelaxation, AnyHistoryOfTemperature)
{
    const double hot = settling_pace(140_degC, 190_degC);
    double pieces = 0.0;
    for (int i = 0; i < 100; ++i) pieces = settled_decades(pieces, hot, 10_h);
    EXPECT_NEAR_REL(pieces, settled_decades(0.0, hot, 1000_h), 1e-12);
    EXPECT_NEAR_REL(settled_decades(pieces, 1.0, 1000_h), pieces, 0.05);
    const double before = settled_decades(1.0, hot, 5_h), after = settled_decades(1.0, hot, 5_h + 1_s);
    EXPECT_NEAR_REL(after - before, settling_rate(0.5 * (before + after), hot), 1e-6);
    EXPECT_THROW((void)settling_pace(90_degC, 20_degC), out_of_range_error);
    EXPECT_THROW((void)settled_decades(0.0, 0.0, 1_h), out_of_range_error);
    EXPECT_THROW((void)settled_decades(-1.0, 1.0, 1_h), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(settled_decades(0.0, 1.0, in_si<duration>(x)));
    EXPECT_THROW((void)settling_rate(0.0, 0.0), out_of_range_error);
    EXPECT_THROW((void)settling_rate(0.0, 2.0 * softened_pace), out_of_range_error);
    EXPECT_THROW((void)settling_rate(std::nan(""), 1.0), not_finite_error);
    EXPECT_REFUSES_BAD_NUMBERS(bolt_force_left(in_si<duration>(x), 20_degC, {}));
}
