// Contacts: conductance with its scatter, hottest spot, and whole behaviour under current, each beside its twin on
// plain numbers (plain_joint.hpp).
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

#include "plain_cases.hpp"
#include "plain_joint.hpp"

namespace {

using namespace weldloop;

constexpr std::size_t cases = 128;  // few enough to stay in the near cache: the arithmetic is compared

std::vector<contact> contacts()
{
    std::mt19937_64 engine(1);
    std::uniform_real_distribution<double> newtons(50, 2000);
    std::uniform_int_distribution<std::size_t> states(0, all_surface_states.size() - 2);  // none is open
    std::vector<contact> out;
    for (std::size_t i = 0; i < cases; ++i)
        out.push_back({.metals = {annealed_copper, mild_steel},
                       .force = in_si<force>(newtons(engine)),
                       .surface = all_surface_states[states(engine)]});
    return out;
}

template <class Cases, class Call>
void over_all(benchmark::State& state, const Cases& all, const Call& call)
{
    for (auto _ : state)
        for (const auto& c : all) benchmark::DoNotOptimize(call(c));
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(cases));
}

template <class Cases, class Call>
double seconds_of(const Cases& all, const Call& call)
{
    constexpr int passes = 10;  // long against the reading of the clock, short against a disturbance
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < passes; ++i)
        for (const auto& c : all) benchmark::DoNotOptimize(call(c));
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

plain::band in_si_numbers(const plain::band& b)
{
    return b;
}
plain::band in_si_numbers(const band<conductance>& b)
{
    return {b.low.value(), b.typical.value(), b.high.value()};
}
plain::band in_si_numbers(const band<temperature>& b)
{
    return {b.low.in_kelvin(), b.typical.in_kelvin(), b.high.in_kelvin()};
}
plain::band in_si_numbers(const joint_behaviour& b)
{
    return {b.loss.low.value(), b.loss.typical.value(), b.loss.high.value()};
}
plain::band in_si_numbers(const plain::joint_behaviour& b)
{
    return b.loss;
}

// Whether the twin computes the same: a quotient of different sums would say nothing.
template <class Cases, class Call, class PlainCases, class PlainCall>
bool alike(const Cases& all, const Call& call, const PlainCases& plain_all, const PlainCall& plain_call)
{
    constexpr double rounding = 1e-12;
    for (std::size_t i = 0; i < cases; ++i) {
        const plain::band ours = in_si_numbers(call(all[i])), twins = in_si_numbers(plain_call(plain_all[i]));
        for (std::size_t k = 0; k < ours.size(); ++k)
            if (!(std::abs(ours[k] - twins[k]) <= rounding * std::abs(twins[k]))) return false;
    }
    return true;
}

// Library and twin by turns, either first as often as the other; `ratio` is the median of the quotients of neighbouring
// turns. What disturbs the machine for longer than a turn hits both, what is shorter spoils a quotient, not the median.
template <class Cases, class Call, class PlainCases, class PlainCall>
void beside(benchmark::State& state, const Cases& all, const Call& call, const PlainCases& plain_all,
            const PlainCall& plain_call)
{
    if (!alike(all, call, plain_all, plain_call)) return state.SkipWithError("the twin computes something else");
    std::vector<double> quotients;
    bool library_first = true;
    for (auto _ : state) {
        const double before = library_first ? seconds_of(all, call) : 0.0;
        const double plain = seconds_of(plain_all, plain_call);
        quotients.push_back((library_first ? before : seconds_of(all, call)) / plain);
        library_first = !library_first;
    }
    const auto middle = quotients.begin() + static_cast<std::ptrdiff_t>(quotients.size() / 2);
    std::nth_element(quotients.begin(), middle, quotients.end());
    state.counters["ratio"] = *middle;
}

const auto band_of = [](const contact& c) { return contact_conductance_of(c); };
const auto plain_band_of = [](const plain::joint& c) { return plain::conductance_of(c); };
const auto hottest_of = [](const contact& c) { return hottest_spot_of(c, 200_A, 40_degC); };
const auto plain_hottest_of = [](const plain::joint& c) { return plain::hottest_of(c, 200.0, 313.15); };
const auto whole_of = [](const contact& c) { return behaviour_of(c, 200_A, 40_degC); };
const auto plain_whole_of = [](const plain::joint& c) { return plain::behaviour_of(c, 200.0, 313.15); };

void contact_band(benchmark::State& state)
{
    over_all(state, contacts(), band_of);
}
void contact_band_plain(benchmark::State& state)
{
    over_all(state, plain::joints_of(contacts()), plain_band_of);
}
void contact_band_ratio(benchmark::State& state)
{
    beside(state, contacts(), band_of, plain::joints_of(contacts()), plain_band_of);
}
void joint_temperature(benchmark::State& state)
{
    over_all(state, contacts(), hottest_of);
}
void joint_temperature_plain(benchmark::State& state)
{
    over_all(state, plain::joints_of(contacts()), plain_hottest_of);
}
void joint_temperature_ratio(benchmark::State& state)
{
    beside(state, contacts(), hottest_of, plain::joints_of(contacts()), plain_hottest_of);
}
// with every number of the result and its list of sources, which the twin has not
void whole_behaviour(benchmark::State& state)
{
    over_all(state, contacts(), whole_of);
}
void whole_behaviour_plain(benchmark::State& state)
{
    over_all(state, plain::joints_of(contacts()), plain_whole_of);
}
void whole_behaviour_ratio(benchmark::State& state)
{
    beside(state, contacts(), whole_of, plain::joints_of(contacts()), plain_whole_of);
}

BENCHMARK(contact_band);
BENCHMARK(contact_band_plain);
BENCHMARK(contact_band_ratio);
BENCHMARK(joint_temperature);
BENCHMARK(joint_temperature_plain);
BENCHMARK(joint_temperature_ratio);
BENCHMARK(whole_behaviour);
BENCHMARK(whole_behaviour_plain);
BENCHMARK(whole_behaviour_ratio);

}  // namespace
