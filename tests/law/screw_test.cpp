#include <numbers>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/screw.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;
using test::random_numbers;

constexpr screw_thread tr16x4{.diameter = 16_mm, .pitch = 4_mm};

screw_thread with_pitch(double x)
{
    return {.diameter = 16_mm, .pitch = in_si<length>(x)};
}
screw_thread with_diameter(double x)
{
    return {.diameter = in_si<length>(x), .pitch = 4_mm};
}
screw_thread with_collar(double x)
{
    return {.diameter = 16_mm, .pitch = 4_mm, .collar_diameter = in_si<length>(x)};
}
screw_thread with_angle(double x)
{
    return {.diameter = 16_mm, .pitch = 4_mm, .half_angle = in_si<plane_angle>(x)};
}

}  // namespace

// properties, over random threads: force and torque invert, efficiency is the work ratio, friction costs force
TEST(Screw, TorqueAndForceInvert)
{
    random_numbers random(9);
    for (int i = 0; i < test::random_cases; ++i) {
        const length d = in_si<length>(random.between(0.006, 0.05));
        const screw_thread s{.diameter = d,
                             .pitch = random.between(0.05, 0.3) * d,
                             .starts = random.count(1, 2),
                             .friction = random.between(0.02, 0.4),
                             .collar_friction = random.between(0.0, 0.4),
                             .collar_diameter = random.between(0.0, 2.0) * d};
        const torque t = in_si<torque>(random.log_between(0.1, 100));
        const force f = screw_force(t, s);
        EXPECT_NEAR_REL(screw_torque(f, s).value(), t.value(), 1e-13);
        const double lead = s.starts * s.pitch.value();
        EXPECT_NEAR_REL(static_cast<double>(screw_efficiency(s)),
                        f.value() * lead / (2.0 * std::numbers::pi * t.value()), 1e-12);
        EXPECT_LT(lowering_torque(f, s), t);
        screw_thread rougher = s;
        rougher.friction = static_cast<double>(s.friction) + 0.05;
        EXPECT_LT(screw_force(t, rougher), f);
    }
}

// limiting case: without friction all work goes into the load, and nothing holds it
TEST(Screw, WithoutFriction)
{
    const screw_thread s{.diameter = 16_mm, .pitch = 4_mm, .friction = 0.0, .collar_friction = 0.0};
    EXPECT_NEAR_REL(static_cast<double>(screw_efficiency(s)), 1.0, 1e-14);
    EXPECT_FALSE(holds_itself(s));
    EXPECT_LT(lowering_torque(1_kN, s).value(), 0.0);
    EXPECT_TRUE(holds_itself(tr16x4));
    EXPECT_GT(lowering_torque(1_kN, tr16x4).value(), 0.0);
    EXPECT_EQ(screw_force(0_Nm, tr16x4).value(), 0.0);
    EXPECT_EQ(screw_torque(0_N, tr16x4).value(), 0.0);
}

TEST(Screw, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(screw_force(in_si<torque>(x), tr16x4));
    EXPECT_REFUSES_BAD_NUMBERS(screw_torque(in_si<force>(x), tr16x4));
    EXPECT_REFUSES_BAD_NUMBERS(lowering_torque(in_si<force>(x), tr16x4));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(screw_force(1_Nm, with_pitch(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(screw_force(1_Nm, with_diameter(x)));
    EXPECT_REFUSES_BAD_NUMBERS(screw_force(1_Nm, with_collar(x)));
    EXPECT_REFUSES_BAD_NUMBERS(screw_force(1_Nm, with_angle(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(mean_diameter_of(with_pitch(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(screw_efficiency(with_pitch(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(holds_itself(with_pitch(x)));
    EXPECT_THROW((void)screw_force(1_Nm, with_diameter(0.004)), out_of_range_error);
    EXPECT_THROW((void)screw_force(1_Nm, {.diameter = 16_mm, .pitch = 4_mm, .starts = 0}), out_of_range_error);
    // friction that locks the thread both ways: pi dm below f l
    EXPECT_THROW((void)screw_force(1_Nm, {.diameter = 16_mm, .pitch = 8_mm, .starts = 4, .friction = 1.4}),
                 out_of_range_error);
    EXPECT_THROW((void)screw_thread({.diameter = 16_mm, .pitch = 4_mm, .friction = -0.1}), out_of_range_error);
}
