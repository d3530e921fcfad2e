#include <weldloop/circuit/duty_trace.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station bench(const duty_cycle& duty)
{
    station s{.name = "bench", .job = {.process = process::smaw, .current = 250_A, .duty = duty}};
    s.path = {welding_cable(aught(1), 10_m).named("feeder"), arc{},
              work_connection{.clamp = spring_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("lug", aught(1)), welding_cable(aught(1), 10_m).named("lead")};
    return s;
}

TEST(DutyTrace, PeaksWhereTheCurrentStopsAndCloses)
{
    const station s = bench(duty_cycle::of(6_min, 10_min));
    const loop_state solved = solve_loop(s);
    for (const std::size_t part : {0U, 2U, 3U, 4U}) {
        const auto trace = duty_trace_of(s, solved, part, 1001);
        EXPECT_NEAR((trace.front().second - trace.back().second).value(), 0.0, 1e-4) << part;
        const auto top = std::max_element(trace.begin(), trace.end(),
                                          [](const auto& a, const auto& b) { return a.second < b.second; });
        // one sample; a clamp's cable connection, warmed by its lug, goes on for some seconds
        EXPECT_GE(top->first.value(), 359.4) << part;
        EXPECT_LE(top->first.value(), part == 2U ? 375.0 : 360.601) << part;
        EXPECT_NEAR((top->second - solved.parts[part].peak).value(), 0.0, 0.05) << part;
        for (const auto& [at, here] : trace) EXPECT_GE(here, s.where.air);
    }
}

// The mean of a joint's trace is the mean the loop's heat balance found.
TEST(DutyTrace, AveragesToTheMeanOfTheLoop)
{
    const station s = bench(duty_cycle::of(3_min, 10_min));
    const loop_state solved = solve_loop(s);
    for (const std::size_t part : {2U, 3U}) {
        const auto trace = duty_trace_of(s, solved, part, 4001);
        double sum = 0.0;
        for (std::size_t i = 0; i + 1 < trace.size(); ++i)
            sum += 0.5 * (trace[i].second.in_kelvin() + trace[i + 1].second.in_kelvin());
        EXPECT_NEAR(sum / static_cast<double>(trace.size() - 1), solved.parts[part].mean.in_kelvin(), 0.05)
            << part;  // the trace is straight between the moments of the solution
    }
}

TEST(DutyTrace, IsLevelWithoutRest)
{
    const station s = bench(duty_cycle::continuous());
    const auto trace = duty_trace_of(s, solve_loop(s), 4);
    for (const auto& point : trace) EXPECT_EQ(point.second, trace.front().second);
}

TEST(DutyTrace, RefusesWhatCannotBe)
{
    const station s = bench(duty_cycle::continuous());
    const loop_state solved = solve_loop(s);
    EXPECT_THROW(static_cast<void>(duty_trace_of(s, solved, 9)), bad_station_error);
    EXPECT_THROW(static_cast<void>(duty_trace_of(s, loop_state{}, 0)), bad_station_error);
    EXPECT_THROW(static_cast<void>(duty_trace_of(s, solved, 0, 1)), out_of_range_error);
}

}  // namespace
