// What questions of ratings and drops refuse.
#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/supply.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/arc_voltage.hpp>
#include <weldloop/rating/joint/termination_acceptance.hpp>
#include <weldloop/rating/lead/drop.hpp>
#include <weldloop/rating/remedy_finder.hpp>
#include <weldloop/rating/usual_size.hpp>

#include "law/contact_fixture.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr double huge = 1.7e308, infinite = std::numeric_limits<double>::infinity();
}  // namespace

TEST(RatingRefusals, OfferedRatingsAndSizes)
{
    EXPECT_REFUSES_BAD_NUMBERS(offered_rating_from(in_si<current>(x)));
    EXPECT_EQ(offered_rating_from(current{}), 100_A);
    EXPECT_EQ(offered_rating_from(in_si<current>(huge)), 1000_A);
    EXPECT_REFUSES_BAD_NUMBERS(smallest_size_above(in_si<area>(x), size_family::metric));
    EXPECT_EQ(smallest_size_above(area{}, size_family::metric), square_mm(10));
}

TEST(RatingRefusals, WhatIsLeftForTheArc)
{
    station s;
    s.path = {arc{}};
    s.job.process = process::smaw;
    s.job.current = 150_A;
    for (const double x : {std::numeric_limits<double>::quiet_NaN(), infinite, -infinite}) {
        const voltage bad = in_si<voltage>(x);
        EXPECT_THROW((void)arc_share_of(s, {bad, 1_V, 1_V}), not_finite_error) << x;
        EXPECT_THROW((void)arc_share_of(s, {1_V, bad, 1_V}), not_finite_error) << x;
        EXPECT_THROW((void)arc_share_of(s, {1_V, 1_V, bad}), not_finite_error) << x;
    }
    EXPECT_REFUSES_BAD_NUMBERS(arc_share_of(s, exactly(1_V), in_si<voltage>(x)));
    // a loop that another supply drives gains volts
    EXPECT_GT(arc_share_of(s, exactly(-1_V)).arc.typical, arc_share_of(s, exactly(1_V)).arc.typical);
    supply flat;
    flat.setting = 20_V;
    EXPECT_REFUSES_BAD_NUMBERS(terminal_voltage_of(flat, {process::gmaw, 150_A}, in_si<voltage>(x)));
}

TEST(RatingRefusals, AnswersBeyondTheNumbersThereAre)
{
    EXPECT_THROW((void)drop_of(welding_cable(square_mm(50), in_si<length>(1e30)), in_si<current>(1e300), 60_degC),
                 error);
    EXPECT_THROW((void)stud_acceptance_of(10_mm, in_si<voltage>(1e305), 1_A), error);
}
