// What a clamp's spring and springy jaws lose together.
#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/clamp_spring_state.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

namespace {

const wl::clamp_spring spring{.stress = 0.6};

wl::clamp_spring_state with_jaws(double share, const wl::copper_spring_alloy& alloy = wl::brass_spring)
{
    return wl::clamp_spring_state(spring, wl::springy_jaw{.alloy = alloy, .share = share});
}

double lost(wl::clamp_spring_state s, wl::temperature wire = 60_degC, wl::temperature jaw = 80_degC)
{
    return static_cast<double>(s.advance(wire, jaw, 500_h).result().lost);
}

}  // namespace

TEST(ClampSpringState, RigidJawsLeaveTheSpringAlone)
{
    const wl::relaxation alone = wl::relaxation_of(spring.wire, spring.stress, 60_degC, 500_h);
    EXPECT_EQ(lost(with_jaws(0.0)), static_cast<double>(alone.lost));
    const wl::relaxation none = wl::clamp_spring_state(spring).advance(60_degC, 200_degC, 500_h).result();
    EXPECT_EQ(none.lost, alone.lost);
    EXPECT_EQ(none.bracket, alone.bracket);
    EXPECT_FALSE(none.basis.has(wl::range_flag::relaxation_range));
}

// Brass jaws at 80 degC lose more than the spring at 60 degC; beryllium copper less; all of them are flagged.
TEST(ClampSpringState, CopperAlloyJawsLoseSpringToo)
{
    double last = lost(with_jaws(0.0));
    for (const double share : {0.1, 0.3, 0.6, 1.0}) {
        EXPECT_GT(lost(with_jaws(share)), last) << share;
        last = lost(with_jaws(share));
    }
    EXPECT_NEAR_REL(last, static_cast<double>(wl::copper_relaxation(wl::brass_spring, 80_degC, 500_h).lost), 1e-12);
    EXPECT_LT(lost(with_jaws(0.3, wl::beryllium_copper_spring)), lost(with_jaws(0.0)));
    EXPECT_GT(lost(with_jaws(0.3), 60_degC, 120_degC), lost(with_jaws(0.3)));
    const wl::relaxation found = with_jaws(0.3).advance(60_degC, 80_degC, 500_h).result();
    EXPECT_TRUE(found.basis.has(wl::range_flag::relaxation_range));
    EXPECT_TRUE(found.basis.has(wl::source_kind::memory));
    EXPECT_LE(found.bracket.low, found.bracket.typical);
    EXPECT_LE(found.bracket.typical, found.bracket.high);
}

TEST(ClampSpringState, EitherMayBeDestroyed)
{
    wl::clamp_spring_state by_wire = with_jaws(0.2), by_jaw = with_jaws(0.2);
    by_wire.advance(260_degC, 100_degC, 1_h);
    by_jaw.advance(100_degC, 301_degC, 1_h);
    for (const wl::clamp_spring_state& s : {by_wire, by_jaw}) {
        EXPECT_TRUE(s.destroyed());
        EXPECT_TRUE(s.result().destroyed);
        EXPECT_EQ(static_cast<double>(s.result().lost), 1.0);
    }
    EXPECT_FALSE(with_jaws(0.0).advance(100_degC, 301_degC, 1_h).destroyed());
}

TEST(ClampSpringState, TakesAPublishedLawForItsWire)
{
    const wl::code_relaxation_law code{};
    EXPECT_EQ(wl::clamp_spring_state(spring, {}, code).advance(60_degC, 60_degC, 500_h).result().lost,
              wl::code_relaxation_state(spring.wire, spring.stress, code).advance(60_degC, 500_h).lost());
}

TEST(ClampSpringState, RefusesWhatCannotBe)
{
    EXPECT_THROW(with_jaws(0.2).advance(20_degC, 20_degC, -1.0 * 1_h), wl::out_of_range_error);
    EXPECT_THROW(with_jaws(1.2), wl::out_of_range_error);
    EXPECT_THROW(wl::clamp_spring_state(spring, {}, wl::code_relaxation_law{.yield_ratio = 2.0}),
                 wl::out_of_range_error);
}
