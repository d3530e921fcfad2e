// A loop under alternating or pulsed current: its leads take more, by the skin effect, and nothing else does.
#include <gtest/gtest.h>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/waveform_heating.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

station bench()
{
    station s{.name = "frame bench", .job = {.process = process::gtaw, .current = 300_A}};
    s.path = {welding_cable(square_mm(120), 15_m).named("lead"), arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("lug", square_mm(120)), welding_cable(square_mm(120), 15_m).named("return")};
    return s;
}

}  // namespace

// the same loop with leads of the resistance that the course gives them, direct current through it
TEST(LoopWaveform, LeadsTakeTheSkinEffect)
{
    station ac = bench(), dc = bench();
    const waveform course = waveform::square_ac(
        {.positive = 300_A, .negative = 300_A, .frequency = in_si<frequency>(150.0), .positive_share = 0.4});
    ac.job.course = course;
    double ratio = 0.0;
    for (path_part& p : dc.path)
        if (auto* lead = std::get_if<cable>(&p)) {
            ratio = waveform_ratio_of(*lead, course);
            *lead = lead_under(*lead, course);
        }
    ASSERT_GT(ratio, 1.01);
    const loop_state a = solve_loop(ac), d = solve_loop(dc), plain = solve_loop(bench());
    ASSERT_TRUE(a.is_solved() && d.is_solved());
    EXPECT_NEAR_REL(a.total_drop.value(), d.total_drop.value(), 1e-9);
    EXPECT_GT(a.parts[0].drop.value(), plain.parts[0].drop.value() * ratio);  // and a little by being hotter
    EXPECT_NEAR_REL(a.parts[2].drop.value(), plain.parts[2].drop.value(), 0.01);
}

// scaled to another size, a course has the same effect: only its shape counts
TEST(LoopWaveform, OnlyItsShapeCounts)
{
    station small = bench(), large = bench();
    small.job.course = waveform::sine(1_A, 50_Hz);
    large.job.course = waveform::sine(1000_A, 50_Hz);
    EXPECT_NEAR_REL(solve_loop(small).total_drop.value(), solve_loop(large).total_drop.value(), 1e-9);
    station direct = bench();
    direct.job.course = waveform::dc(300_A);
    EXPECT_EQ(solve_loop(direct).total_drop, solve_loop(bench()).total_drop);
}
