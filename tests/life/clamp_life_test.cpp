// What is said of a clamp's life against the forecasts it rests on, and against the trade.
#include <array>
#include <cstdio>
#include <optional>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/life/clamp_life_body.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/weldloop.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

// the gate shop: 300 A, 60 %, lightly rusted tube still warm from the last bead
clamp_use on_rust(const work_clamp& clamp, current amps = 300_A)
{
    clamp_use u{
        .joint = {.clamp = clamp, .onto = mild_steel, .surface = surface_state::light_rust, .name = "work clamp"},
        .lead = welding_cable(square_mm(70), 10_m),
        .load = {.current = amps, .duty = duty_cycle::of(6_min, 10_min)},
        .where = {.air = 25_degC}};
    u.service.openings = 20.0;
    u.service.interpass = 120_degC;
    return u;
}

bool in_order(const clamp_hours& h)
{
    const auto later = [](const std::optional<duration>& a, const std::optional<duration>& b) {
        return !b || (a && *a <= *b);
    };
    return later(h.poor, h.typical) && later(h.typical, h.mild);
}

}  // namespace

TEST(ClampLife, IsThatOfTheForecast)
{
    const clamp_use u = on_rust(stamped_spring_clamp(300_A));
    const clamp_life life = clamp_life_of(u);
    const grip_forecast f = grip_over_time(u);
    ASSERT_TRUE(f.quarter_lost && life.quarter_lost.poor && life.quarter_lost.typical);
    EXPECT_EQ(*life.quarter_lost.poor, f.quarter_lost->low);
    EXPECT_EQ(*life.quarter_lost.typical, f.quarter_lost->typical);
    EXPECT_EQ(life.quarter_lost.mild.has_value(), f.quarter_lost->high < f.horizon);
    EXPECT_TRUE(in_order(life.quarter_lost));
    EXPECT_TRUE(in_order(life.cable_not_held));
    ASSERT_TRUE(life.look_again && life.cable_not_held.typical && life.cable_needs);
    EXPECT_EQ(*life.look_again, *life.quarter_lost.poor);
    // 5 m of 70 mm2 and a coupling, m g/(2 mu): (0.83 x 5 + 0.4) x 9.80665/0.30 N
    EXPECT_NEAR_REL(life.cable_needs->value(), (0.83 * 5.0 + 0.4) * 9.80665 / 0.30, 1e-9);
    for (std::size_t i = 1; i < f.points.size(); ++i)
        if (f.points[i].at < *life.cable_not_held.typical) {
            EXPECT_GE(f.points[i].force, *life.cable_needs);
        }
    EXPECT_NEAR(static_cast<double>(life.causes.force) + static_cast<double>(life.causes.film) +
                    static_cast<double>(life.causes.heat) + static_cast<double>(life.causes.disturbance),
                1.0, 1e-9);
    EXPECT_FALSE(life.keeps_poor());
    // what lies past the horizon is not known
    clamp_use soon = u;
    soon.horizon = 0.5 * (f.quarter_lost->low + f.quarter_lost->typical);
    ASSERT_LT(soon.horizon, f.quarter_lost->typical);
    const clamp_hours until_then = clamp_life_of(soon).quarter_lost;
    EXPECT_TRUE(until_then.poor);
    EXPECT_FALSE(until_then.typical);
    EXPECT_FALSE(until_then.mild);
}

// by hand: from 400 N at 10 h to 300 N at 160 h a force of 375 N is passed after a quarter of the four octaves, at 20
// h; from 410 N when new a force of 405 N half way to the 10 h
TEST(ClampLife, AForceFallsWithTheLogarithmOfTime)
{
    const std::vector<grip_point> points{
        {.at = 0_h, .force = 410_N}, {.at = 10_h, .force = 400_N}, {.at = 160_h, .force = 300_N}};
    const std::optional<duration> at = detail::falls_below(points, 375_N);
    ASSERT_TRUE(at.has_value());
    EXPECT_NEAR_REL(at->value(), 20.0 * 3600.0, 1e-9);
    const std::optional<duration> soon = detail::falls_below(points, 405_N);
    ASSERT_TRUE(soon.has_value());
    EXPECT_NEAR_REL(soon->value(), 5.0 * 3600.0, 1e-9);
    EXPECT_FALSE(detail::falls_below(points, 300_N).has_value());
    EXPECT_EQ(detail::falls_below(points, 420_N), 0_h);
}

// Each cure keeps the grip when it is done, and so do the bearings; a little more does not.
TEST(ClampLife, WhatWouldKeepItDoes)
{
    const clamp_use u = on_rust(stamped_spring_clamp(300_A));
    const clamp_life life = clamp_life_of(u);
    const auto left = [&](const clamp_use& changed) { return static_cast<double>(grip_over_time(changed).grip_left); };
    EXPECT_FALSE(life.cures.empty());
    for (const clamp_cure& c : life.cures) {
        std::printf("%s %s %.0f A %.0f degC: %.0f %% left, poor %.0f %%%s\n", std::string(to_text(c.kind)).c_str(),
                    c.clamp.c_str(), c.amps ? c.amps->value() : 0.0, c.work ? c.work->in_celsius() : 0.0,
                    100.0 * static_cast<double>(c.grip_left), 100.0 * static_cast<double>(c.grip_left_poor),
                    c.keeps_poor ? ", kept" : "");
        EXPECT_GT(static_cast<double>(c.grip_left), 0.75);
        EXPECT_EQ(c.keeps_poor, static_cast<double>(c.grip_left_poor) > 0.75) << c.clamp;
        clamp_use changed = u;
        if (c.amps) changed.load.current = *c.amps;
        if (c.work) changed.service.interpass = *c.work;
        if (c.kind == clamp_cure_kind::clean_surface) changed.joint.surface = surface_state::clean;
        if (c.clamp.empty()) {
            EXPECT_EQ(left(changed), static_cast<double>(c.grip_left));
        }
    }
    for (std::size_t i = 1; i < life.cures.size(); ++i)
        EXPECT_LE(static_cast<int>(life.cures[i - 1].kind), static_cast<int>(life.cures[i].kind));
    ASSERT_TRUE(life.largest_current.typical);
    clamp_use more = u;
    more.load.current = 1.02 * *life.largest_current.typical;
    EXPECT_LT(left(more), 0.75);
    more.load.current = *life.largest_current.typical;
    EXPECT_GT(left(more), 0.75);
    EXPECT_LT(*life.largest_current.typical, 300_A);
    ASSERT_TRUE(life.largest_duty.typical);
    EXPECT_LT(static_cast<double>(*life.largest_duty.typical), 0.6);
    if (life.largest_current.poor) {
        EXPECT_LE(*life.largest_current.poor, *life.largest_current.typical);
    }
    // common practice, no source: what is bought instead is the next size or kind
    EXPECT_FALSE(life.buy.empty());
    EXPECT_NE(life.buy, life.name);
}

// A clamp that keeps its grip needs nothing, is the one to buy, and need not be looked at within the horizon.
TEST(ClampLife, AClampThatHoldsSaysSo)
{
    clamp_use u = on_rust(cast_spring_clamp(500_A), 150_A);
    u.joint.surface = surface_state::clean;
    u.service.interpass.reset();
    const clamp_life life = clamp_life_of(u);
    EXPECT_TRUE(life.keeps_poor());
    EXPECT_FALSE(life.quarter_lost.poor || life.quarter_lost.typical || life.quarter_lost.mild);
    EXPECT_FALSE(life.cable_not_held.poor || life.look_again);
    EXPECT_TRUE(life.cures.empty());
    EXPECT_EQ(life.buy, life.name);
    ASSERT_TRUE(life.largest_current.poor && life.largest_duty.poor && life.hottest_work.poor);
    EXPECT_GT(*life.largest_current.poor, 150_A);
    EXPECT_EQ(static_cast<double>(*life.largest_duty.poor), 1.0);
}

// As it stands now: half of the grip gone leaves less to hold the cable with.
TEST(ClampLife, GripGoneBeforeCounts)
{
    clamp_use u = on_rust(stamped_spring_clamp(300_A));
    const clamp_life fresh = clamp_life_of(u);
    u.joint.grip_lost = 0.4;
    const clamp_life used = clamp_life_of(u);
    ASSERT_TRUE(used.cable_not_held.poor && fresh.cable_not_held.poor);
    EXPECT_EQ(used.cable_not_held.poor->value(), 0.0);
    EXPECT_GT(fresh.cable_not_held.typical->value(), 0.0);
}

TEST(ClampLife, KindsSideBySide)
{
    const std::vector<work_clamp> kinds{stamped_spring_clamp(300_A), cast_spring_clamp(300_A), screw_clamp(300_A),
                                        bolted_work_lug(square_mm(70))};
    const std::vector<clamp_life_row> rows = compare_clamp_lives(kinds, on_rust(kinds.front()));
    ASSERT_EQ(rows.size(), kinds.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        EXPECT_EQ(rows[i].name, kinds[i].name);
        EXPECT_TRUE(in_order(rows[i].quarter_lost));
        EXPECT_TRUE(in_order(rows[i].cable_not_held));
        EXPECT_LE(rows[i].grip_left_poor, rows[i].grip_left);
    }
    EXPECT_TRUE(rows[0].quarter_lost.typical);
    EXPECT_FALSE(rows[1].quarter_lost.typical);
    EXPECT_LT(rows[0].grip_left, rows[1].grip_left);
}

TEST(ClampLife, RefusesWhatAForecastRefuses)
{
    clamp_use u = on_rust(stamped_spring_clamp(300_A));
    u.horizon = 0_h;
    EXPECT_THROW((void)clamp_life_of(u), out_of_range_error);
    u.horizon = 2000_h;
    u.load.current = 0_A;
    EXPECT_THROW((void)clamp_life_of(u), out_of_range_error);
    u.load.current = 100_A;
    u.joint.surface = surface_state::painted_unbroken;
    EXPECT_THROW((void)clamp_life_of(u), bad_station_error);
}
