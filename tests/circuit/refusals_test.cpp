// What the behaviour of parts refuses: numbers that cannot be, and answers beyond the numbers there are.
#include <limits>

#include <gtest/gtest.h>

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/measured_body.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/circuit/rotary_ground_behaviour.hpp>
#include <weldloop/circuit/spatter_behaviour.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "law/contact_fixture.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr double huge = 1.7e308, no_number = std::numeric_limits<double>::quiet_NaN();

work_connection joint_with(const work_clamp& c)
{
    return {.clamp = c, .onto = mild_steel};
}
}  // namespace

TEST(CircuitRefusals, MembersOfAWorkClamp)
{
    const auto with = [](auto member, auto value) {
        work_clamp out = spring_clamp(300_A);
        out.*member = value;
        return joint_of(joint_with(out));
    };
    EXPECT_REFUSES_BAD_NUMBERS(with(&work_clamp::rated_current, in_si<current>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(with(&work_clamp::jaw_area, in_si<area>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(with(&work_clamp::termination, exactly(in_si<conductance>(x))));
    EXPECT_THROW((void)with(&work_clamp::body_mass, in_si<mass>(huge)), error);
    work_clamp bad = spring_clamp(300_A);
    bad.jaw_area = in_si<area>(no_number);
    EXPECT_THROW((void)work_of(joint_with(bad), {}), not_finite_error);
    bad = spring_clamp(300_A);
    bad.live_jaws = 5;
    EXPECT_THROW((void)work_of(joint_with(bad), {}), out_of_range_error);
}

TEST(CircuitRefusals, CurrentOfAnArcLine)
{
    station s;
    s.path = {arc{}};
    EXPECT_REFUSES_BAD_NUMBERS(arc_line_reaches(s, in_si<current>(x)));
}

TEST(CircuitRefusals, Bodies)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(measured_body(in_si<area>(x), {}));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(measured_body(1_m2, in_si<mass>(x)));
    EXPECT_THROW((void)measured_body(1_m2, in_si<mass>(huge)), error);
    EXPECT_THROW((void)body_loss({.surface = in_si<area>(huge)}, 500_degC, {}), error);
    EXPECT_THROW((void)body_loss({.surface = in_si<area>(no_number)}, 500_degC, {}), error);
    EXPECT_THROW((void)patch_capacity(mild_steel, in_si<length>(huge)), error);
}

TEST(CircuitRefusals, BallsOfSpatter)
{
    EXPECT_REFUSES_BAD_NUMBERS(spatter_contact_of(brass, in_si<force>(x), 3));
    for (const int balls : {-1, 0, 1001})
        EXPECT_THROW((void)spatter_contact_of(brass, 100_N, balls), out_of_range_error) << balls;
}

TEST(CircuitRefusals, SumsOfJoints)
{
    const contact touching{.metals = {brass, mild_steel}, .force = 300_N};
    const joint_behaviour one = behaviour_of(touching, in_si<current>(1e160), 20_degC);
    joint_behaviour most = one;
    most.loss = exactly(in_si<power>(huge));
    EXPECT_THROW((void)in_series(most, most), error);
    most = one;
    most.resistance = exactly(in_si<resistance>(huge));
    EXPECT_THROW((void)with_body(most, in_si<resistance>(huge), 1_A), error);
    EXPECT_THROW((void)behaviour_of(rotary_ground{.brush = brush_kind::carbon}, in_si<current>(huge), 20_degC), error);
    EXPECT_THROW((void)crimp_acceptance_of(square_mm(50), in_si<voltage>(1e305), 1_A), error);
}

TEST(CircuitRefusals, VoltsInPhase)
{
    EXPECT_REFUSES_BAD_NUMBERS(in_phase_of(in_si<voltage>(x), 1_V));
    EXPECT_REFUSES_BAD_NUMBERS(in_phase_of(1_V, in_si<voltage>(x)));
    // where the squares are no numbers any more
    EXPECT_DOUBLE_EQ(in_phase_of(in_si<voltage>(5e200), in_si<voltage>(3e200)).value(), 4e200);
    EXPECT_DOUBLE_EQ(in_phase_of(in_si<voltage>(5e-200), in_si<voltage>(3e-200)).value(), 4e-200);
    EXPECT_EQ(in_phase_of(3_V, 5_V), voltage{});
}
