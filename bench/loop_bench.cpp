// A loop solved for its settled period, beside the same network marched from the cold in small steps until its period
// repeats.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/circuit/loop.hpp>

#include "gate_bench.hpp"

namespace {

using namespace weldloop;

double hottest(const std::vector<double>& rises)
{
    return *std::max_element(rises.begin(), rises.end());
}

void loop_solved(benchmark::State& state)
{
    const station s = bench::gate_bench();
    for (auto _ : state) benchmark::DoNotOptimize(solve_loop(s));
}
BENCHMARK(loop_solved)->Unit(benchmark::kMicrosecond);

// The settled period of the network alone, and its hottest rise for comparison with the march.
void loop_period(benchmark::State& state)
{
    const station s = bench::gate_bench();
    detail::loop_network net(s, checked_arc_index(s));
    static_cast<void>(net.set(scatter::typical));
    const solve::on_off programme{s.job.duty.on().value(), s.job.duty.rest().value()};
    double peak = 0.0;
    for (auto _ : state) peak = hottest(periodic_state_of(net.network(), programme, net.cold()).peak);
    state.counters["peak_K"] = peak;
}
BENCHMARK(loop_period)->Unit(benchmark::kMicrosecond);

// Backward Euler's method with Newton's for every step; ends where a period moves nothing by more than 1 mK.
void loop_period_marched(benchmark::State& state)
{
    constexpr double settled = 1e-3, newton = 1e-6;  // K
    const double step = static_cast<double>(state.range(0));
    const station s = bench::gate_bench();
    detail::loop_network net(s, checked_arc_index(s));
    static_cast<void>(net.set(scatter::typical));
    const solve::heat_network& network = net.network();
    const double on = s.job.duty.on().value(), period = on + s.job.duty.rest().value();
    double peak = 0.0;
    for (auto _ : state) {
        std::vector<double> now = net.cold(), next, start, change(now.size());
        solve::sparse_lu matrix = network.pattern();
        double moved = 1.0;
        while (moved > settled) {
            start = now;
            peak = 0.0;
            for (double t = 0.5 * step; t < period; t += step) {
                next = now;
                for (double most = 1.0; most > newton;) {
                    network.evaluate(next, t < on ? 1.0 : 0.0, change, &matrix);
                    for (std::size_t i = 0; i < now.size(); ++i) {
                        change[i] -= network.capacity()[i] / step * (next[i] - now[i]);
                        matrix.values()[i] += network.capacity()[i] / step;
                    }
                    static_cast<void>(matrix.eliminate());
                    matrix.solve(change);
                    most = 0.0;
                    for (std::size_t i = 0; i < now.size(); ++i) {
                        next[i] += change[i];
                        most = std::max(most, std::fabs(change[i]));
                    }
                }
                now = next;
                peak = std::max(peak, hottest(now));
            }
            moved = 0.0;
            for (std::size_t i = 0; i < now.size(); ++i) moved = std::max(moved, std::fabs(now[i] - start[i]));
        }
    }
    state.counters["peak_K"] = peak;
}
BENCHMARK(loop_period_marched)->Arg(10)->Arg(2)->Unit(benchmark::kMicrosecond);

}  // namespace
