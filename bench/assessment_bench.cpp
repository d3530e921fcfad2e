// The whole loop: assessed with its scatter, its remedies weighed, and a year of a clamp's grip.
#include <benchmark/benchmark.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>

#include "gate_bench.hpp"

namespace {

using namespace weldloop;
using bench::gate_bench;

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
