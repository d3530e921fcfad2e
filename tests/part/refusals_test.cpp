// What parts refuse where it is given to them, not where it is used.
#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/clamp_opening.hpp>
#include <weldloop/part/clamp_spring_state.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "law/contact_fixture.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

template <class Q>
spring_clamp_dimensions with(Q spring_clamp_dimensions::*member, Q value)
{
    spring_clamp_dimensions out = stamped_spring_clamp_dimensions(300_A);
    out.*member = value;
    return out;
}
}  // namespace

TEST(PartRefusals, TorqueOfALug)
{
    EXPECT_REFUSES_BAD_NUMBERS(lug{}.tightened_to(in_si<torque>(x)));
    EXPECT_EQ(lug{}.tightened_to(torque{}).bolt_torque, torque{});
}

TEST(PartRefusals, RatingOfAHolder)
{
    EXPECT_REFUSES_BAD_NUMBERS(usual_holder_cable(in_si<current>(x)));
    EXPECT_EQ(usual_holder_cable(current{}), square_mm(25));
    EXPECT_EQ(usual_holder_cable(2000_A), square_mm(120));
    EXPECT_THROW((void)usual_holder_cable(2001_A), out_of_range_error);
}

TEST(PartRefusals, DimensionsOfASpringClamp)
{
    using d = spring_clamp_dimensions;
    EXPECT_REFUSES_BAD_NUMBERS(clamp_of(with(&d::rated_current, in_si<current>(x))));
    EXPECT_REFUSES_BAD_NUMBERS(clamp_of(with(&d::jaw_area, in_si<area>(x))));
    EXPECT_REFUSES_BAD_NUMBERS(clamp_of(with(&d::shunt, in_si<area>(x))));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clamp_of(with(&d::across, in_si<length>(x))));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clamp_of(with(&d::shunt_length, in_si<length>(x))));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clamp_of(with(&d::turns, x)));
    for (const int jaws : {-1, 0, 3}) EXPECT_THROW((void)clamp_of(with(&d::live_jaws, jaws)), out_of_range_error);
    // what follows from them is a number too
    EXPECT_THROW((void)clamp_of(with(&d::outline, in_si<length>(1.7e308))), error);
    EXPECT_THROW((void)clamp_of(with(&d::section, in_si<area>(1e-320))), error);
}

TEST(PartRefusals, ForceOfAClampThatWasNeverOne)
{
    work_clamp bad = spring_clamp(300_A);
    bad.force = in_si<force>(no_number);
    EXPECT_THROW((void)bad.pressing_with(100_N), not_finite_error);
    bad.force = in_si<force>(1e-320);
    EXPECT_THROW((void)bad.pressing_with(100_N), error);
}

TEST(PartRefusals, ASpringThatIsBeyondAllNumbers)
{
    clamp_spring s;
    s.arm = in_si<length>(1e-160);
    s.opening = {};
    EXPECT_THROW((void)clamp_force_at(s, in_si<length>(1e-160)), error);
}

TEST(PartRefusals, AWireWhoseRelaxationCannotBe)
{
    clamp_spring s;
    s.wire.rise_scale = no_number;
    EXPECT_THROW((void)clamp_spring_state(s), not_finite_error);
    s = {};
    s.wire.normal.parameter_slope = in_si<per_kelvin>(infinite);
    EXPECT_THROW((void)clamp_spring_state(s), not_finite_error);
}
