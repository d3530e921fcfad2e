// Leads: resistance, continuous rating and duty rating, each beside the same arithmetic on plain numbers; the peak
// under duty also beside marching in time.
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <stdexcept>
#include <thread>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

#include "plain_cases.hpp"
#include "plain_duty.hpp"
#include "plain_lead.hpp"

namespace {

using namespace weldloop;

constexpr std::size_t cases = 64;                // all leads fit the first cache
constexpr double on_time = 180.0, rest = 120.0;  // s

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
    require_same(ampacity_of(all[0], {}, work()).amps.value(),
                 plain::on_off_lead(plain_leads()[0], on_time, rest).rated(), 1e-9);
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(ampacity_of(all[i++ % cases], {}, work()).amps);
}

void duty_rating_plain(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(plain::on_off_lead(all[i++ % cases], on_time, rest).rated());
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
        benchmark::DoNotOptimize(plain::on_off_lead(c, on_time, rest).peak(5e6 * c.area));
    }
}

void duty_peak_marched(benchmark::State& state)
{
    const std::vector<plain::lead> all = plain_leads();
    plain::on_off_lead first(all[0], on_time, rest);
    require_same(first.marched_peak(5e6 * all[0].area), first.peak(5e6 * all[0].area), 1e-2);
    std::size_t i = 0;
    for (auto _ : state) {
        const plain::lead& c = all[i++ % cases];
        benchmark::DoNotOptimize(plain::on_off_lead(c, on_time, rest).marched_peak(5e6 * c.area));
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
