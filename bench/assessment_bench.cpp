// The whole loop: solved once, assessed with its scatter, its remedies weighed, and a year of a clamp's grip.
#include <benchmark/benchmark.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>

namespace {

using namespace weldloop;

station gate_bench()
{
    station s{.name = "gate bench",
              .job = {.process = process::gmaw, .current = 240_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 32_degC}};
    s.path = {
        crimped_lug("output lug", aught(2)),
        welding_cable(aught(2), 50_ft).named("feeder"),
        wire_gun("gun", 10_ft),
        arc{},
        contact{.metals = {mild_steel, mild_steel},
                .force = 120_N,
                .surface = surface_state::spatter_covered,
                .name = "gate on table"},
        plate{.metal = mild_steel, .length = 4_ft, .width = 3_ft, .thickness = 0.5_in, .name = "table"},
        work_connection{
            .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::oxidized, .name = "clamp"},
        crimped_lug("clamp lug", awg(1)).with_missing_strands(0.2),
        welding_cable(awg(1), 30_ft).named("work lead"),
        crimped_lug("return lug", awg(1))};
    return s;
}

void loop_solved(benchmark::State& state)
{
    const station s = gate_bench();
    for (auto _ : state) benchmark::DoNotOptimize(solve_loop(s));
}
BENCHMARK(loop_solved)->Unit(benchmark::kMicrosecond);

void loop_assessed(benchmark::State& state)
{
    const station s = gate_bench();
    for (auto _ : state) benchmark::DoNotOptimize(assess(s));
}
BENCHMARK(loop_assessed)->Unit(benchmark::kMicrosecond);

void loop_remedies(benchmark::State& state)
{
    const station s = gate_bench();
    for (auto _ : state) benchmark::DoNotOptimize(remedies_for(s));
}
BENCHMARK(loop_remedies)->Unit(benchmark::kMicrosecond);

void grip_of_a_year(benchmark::State& state)
{
    const work_connection w{
        .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::spatter_covered};
    const cable lead = welding_cable(aught(1), 20_ft);
    const load work{.current = 240_A, .duty = duty_cycle::of(6_min, 10_min)};
    for (auto _ : state) benchmark::DoNotOptimize(grip_over_time(w, lead, work, {.air = 30_degC}, 2000_h));
}
BENCHMARK(grip_of_a_year)->Unit(benchmark::kMicrosecond);

}  // namespace
