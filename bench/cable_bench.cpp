// Leads: resistance, continuous rating and duty rating, each beside the same arithmetic on plain numbers; the peak
// under duty also beside marching in time.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <stdexcept>
#include <thread>
#include <utility>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/heat_modes.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

#include "plain_lead.hpp"

namespace {

using namespace weldloop;
using plain::air, plain::alpha, plain::pi, plain::reference;

constexpr std::size_t cases = 64;                                    // all leads fit the first cache
constexpr double copper_heat = 8890.0 * 386.0, rubber_heat = 2.0e6;  // J/(m3 K)
constexpr double on_time = 180.0, rest = 120.0;                      // s

std::vector<cable> leads()
{
    std::mt19937_64 engine(2);
    std::uniform_real_distribution<double> mm2(10, 185);
    std::vector<cable> out;
    for (std::size_t i = 0; i < cases; ++i) out.push_back(welding_cable(square_mm(mm2(engine)), in_si<length>(20.0)));
    return out;
}

std::vector<plain::lead> plain_leads()
{
    return plain::leads_of(leads());
}

// the same peak by the classical Runge-Kutta rule, a fifth of a second a step as the fastest mode wants, until the
// period repeats within 0.01 K
double marched_peak(const plain::lead& c, double amps)
{
    using five = std::array<double, 5>;
    const double iec = plain::standard_factor(c.outer);
    const plain_points lead(c);
    five x;
    x.fill(air);
    double last = 0;
    constexpr double step = 0.2;
    for (int period = 0; period < 200; ++period) {
        double top = x[0];
        for (int n = 0; n < static_cast<int>((on_time + rest) / step); ++n) {
            const double i = n < static_cast<int>(on_time / step) ? amps : 0;
            const auto slope = [&](const five& t) {
                five out;
                for (std::size_t p = 0; p < 5; ++p) {
                    double in = p == 0   ? i * i * plain::resistance(c, t[0])
                                : p == 4 ? -plain::loss(c.outer, iec, t[4])
                                         : 0;
                    for (std::size_t q = 0; q < 5; ++q) in -= lead.g * plain::nodes.flow[p][q] * t[q];
                    out[p] = in / (lead.root[p] * lead.root[p]);
                }
                return out;
            };
            const auto moved = [&](double h, const five& k) {
                five out = x;
                for (std::size_t p = 0; p < 5; ++p) out[p] += h * k[p];
                return out;
            };
            const five k1 = slope(x), k2 = slope(moved(step / 2, k1)), k3 = slope(moved(step / 2, k2)),
                       k4 = slope(moved(step, k3));
            for (std::size_t p = 0; p < 5; ++p) x[p] += step * (k1[p] + 2 * k2[p] + 2 * k3[p] + k4[p]) / 6;
            top = std::max(top, x[0]);
        }
        if (std::fabs(top - last) < 0.01) return top;
        last = top;
    }
    return last;
}

duty_cycle work()
{
    return duty_cycle::of(in_si<duration>(on_time), in_si<duration>(on_time + rest));
}

void require_same(double ours, double plain, double share)
{
    if (!(std::fabs(ours / plain - 1) < share)) throw std::logic_error("the twins do not agree");
}

void resistance_of_leads(benchmark::State& state)
{
    const std::vector<cable> all = leads();
    require_same(resistance_per_length_of(all[0], temperature::kelvin(350)).value(),
                 plain::resistance(plain_leads()[0], 350), 1e-12);
    double kelvin = 300;
    for (auto _ : state) {
        kelvin = kelvin < 350 ? kelvin + 0.1 : 300;
        resistance_per_length sum{};
        for (const cable& c : all) sum += resistance_per_length_of(c, temperature::kelvin(kelvin));
        benchmark::DoNotOptimize(sum);
        benchmark::ClobberMemory();
    }
}

void resistance_of_leads_plain(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    double kelvin = 300;
    for (auto _ : state) {
        kelvin = kelvin < 350 ? kelvin + 0.1 : 300;
        double sum = 0;
        for (const plain::lead& c : all) sum += plain::resistance(c, kelvin);
        benchmark::DoNotOptimize(sum);
        benchmark::ClobberMemory();
    }
}

double continuous_amps(const cable& c)
{
    return ampacity_of(c, {}).amps.value();
}

void continuous_rating(benchmark::State& state)
{
    const std::vector<cable> all = leads();
    require_same(continuous_amps(all[0]), plain::continuous(plain_leads()[0]), 1e-9);
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(continuous_amps(all[i++ % cases]));
}

void continuous_rating_plain(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(plain::continuous(all[i++ % cases]));
}

void duty_rating(benchmark::State& state)
{
    const std::vector<cable> all = leads();
    require_same(ampacity_of(all[0], {}, work()).amps.value(), plain_duty(plain_leads()[0]), 1e-9);
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(ampacity_of(all[i++ % cases], {}, work()).amps);
}

void duty_rating_plain(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(plain_duty(all[i++ % cases]));
}

// the conductor's peak alone, as the search for a rating asks for it
void duty_peak(benchmark::State& state)
{
    const std::vector<cable> all = leads();
    std::size_t i = 0;
    for (auto _ : state) {
        const cable& c = all[i++ % cases];
        const std::array programme{
            heating_segment{in_si<current>(5e6 * c.size.area().value()), in_si<duration>(on_time)},
            heating_segment{current{}, in_si<duration>(rest)}};
        benchmark::DoNotOptimize(detail::settled(detail::conductor_numbers(detail::conductor_of(c)),
                                                 detail::surface_kernel(detail::surface_of(c, {})), programme)
                                     .conductor_peak());
    }
}

// all that a heating tells: means, the surface, what the numbers rest on
void duty_heating(benchmark::State& state)
{
    const std::vector<cable> all = leads();
    std::size_t i = 0;
    for (auto _ : state) {
        const cable& c = all[i++ % cases];
        benchmark::DoNotOptimize(
            heating_of(c, {}, {.current = in_si<current>(5e6 * c.size.area().value()), .duty = work()}).conductor_peak);
    }
}

void duty_peak_plain(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) {
        const plain::lead& c = all[i++ % cases];
        benchmark::DoNotOptimize(plain_peak(c, 5e6 * c.area));
    }
}

void duty_peak_marched(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    require_same(marched_peak(all[0], 5e6 * all[0].area), air + plain_peak(all[0], 5e6 * all[0].area), 1e-3);
    std::size_t i = 0;
    for (auto _ : state) {
        const plain::lead& c = all[i++ % cases];
        benchmark::DoNotOptimize(marched_peak(c, 5e6 * c.area));
    }
}

// a million continuous ratings (lead and air vary) shared out between threads; the time on one over the time on two is
// the scaling
void sweep_of_ratings(benchmark::State& state)
{
    constexpr std::size_t ratings = 1'000'000;
    const std::vector<cable> all = leads();
    const auto count = static_cast<std::size_t>(state.range(0));
    for (auto _ : state) {
        std::vector<double> sums(count);
        std::vector<std::thread> threads;
        for (std::size_t t = 0; t < count; ++t)
            threads.emplace_back([&, t] {
                double sum = 0;
                for (std::size_t i = t * ratings / count; i < (t + 1) * ratings / count; ++i) {
                    const surroundings where{.air = temperature::celsius(10.0 + static_cast<double>(i % 40))};
                    sum += ampacity_of(all[i % cases], where).amps.value();
                }
                sums[t] = sum;
            });
        for (std::thread& t : threads) t.join();
        benchmark::DoNotOptimize(sums.data());
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(ratings));
}

BENCHMARK(resistance_of_leads);
BENCHMARK(resistance_of_leads_plain);
BENCHMARK(continuous_rating);
BENCHMARK(continuous_rating_plain);
BENCHMARK(duty_rating);
BENCHMARK(duty_rating_plain);
BENCHMARK(duty_peak);
BENCHMARK(duty_peak_plain);
BENCHMARK(duty_heating);
BENCHMARK(duty_peak_marched);
BENCHMARK(sweep_of_ratings)->Arg(1)->Arg(2)->Iterations(1)->UseRealTime()->Unit(benchmark::kSecond);

}  // namespace
