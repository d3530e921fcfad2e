// Contacts: conductance with its scatter, and behaviour under current, each beside the same arithmetic on plain
// numbers.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

namespace {

using namespace weldloop;

constexpr std::size_t cases = 1024;

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

struct plain_contact {
    double force, low, typical, high;  // N; multipliers of the surface
};

std::vector<plain_contact> plain_contacts()
{
    std::vector<plain_contact> out;
    for (const contact& c : contacts()) {
        const band<double> m = *resistance_multiplier(c.surface);
        out.push_back({c.force.value(), m.low, m.typical, m.high});
    }
    return out;
}

std::array<double, 3> plain_conductance(const plain_contact& c)
{
    const double g = std::pow(0.102 * c.force, 0.7) / 1e-6 / 3100.0;
    return {g / c.high, g / c.typical, g / c.low};
}

double plain_melting_drop(double kelvin, double bulk)
{
    return 2.0 * std::sqrt(2.44e-8 * (kelvin - bulk) * (kelvin + bulk));
}

struct plain_behaviour {
    std::array<double, 3> drop, resistance, loss, hottest;
    bool melt, may_melt;
};

plain_behaviour plain_behaviour_of(const plain_contact& c, double amps, double bulk)
{
    const double softening = std::min(plain_melting_drop(463.15, bulk), plain_melting_drop(773.15, bulk));
    const double melting = std::min(plain_melting_drop(1357.15, bulk), plain_melting_drop(1753.15, bulk));
    const double grown =
        (17.24e-9 * (1 + 0.00393 * (bulk - 293.15)) + 143e-9 * (1 + 0.0039 * (bulk - 293.15))) / 160.24e-9;
    const std::array<double, 3> g = plain_conductance(c);
    plain_behaviour out{};
    for (std::size_t k = 0; k < 3; ++k) {
        const double x = amps * grown / g[2 - k];
        const double v =
            x <= softening ? x
                           : 2.0 * melting / (1.0 + std::sqrt(1.0 + 4.0 * ((melting - softening) / x) * (melting / x)));
        out.drop[k] = v;
        out.resistance[k] = v / amps;
        out.loss[k] = v * amps;
        out.hottest[k] = std::min(std::sqrt(bulk * bulk + v * v / (4.0 * 2.44e-8)), 1357.15);
    }
    out.melt = out.drop[1] >= 0.95 * melting;
    out.may_melt = out.drop[2] >= 0.95 * melting;
    return out;
}

void contact_conductance(benchmark::State& state)
{
    const auto all = contacts();
    for (auto _ : state)
        for (const contact& c : all) benchmark::DoNotOptimize(contact_conductance_of(c));
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(cases));
}

void contact_conductance_plain(benchmark::State& state)
{
    const auto all = plain_contacts();
    for (auto _ : state)
        for (const plain_contact& c : all) benchmark::DoNotOptimize(plain_conductance(c));
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(cases));
}

void contact_behaviour(benchmark::State& state)
{
    const auto all = contacts();
    for (auto _ : state)
        for (const contact& c : all) benchmark::DoNotOptimize(behaviour_of(c, 200_A, 40_degC));
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(cases));
}

void contact_behaviour_plain(benchmark::State& state)
{
    const auto all = plain_contacts();
    for (auto _ : state)
        for (const plain_contact& c : all) benchmark::DoNotOptimize(plain_behaviour_of(c, 200.0, 313.15));
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(cases));
}

BENCHMARK(contact_conductance);
BENCHMARK(contact_conductance_plain);
BENCHMARK(contact_behaviour);
BENCHMARK(contact_behaviour_plain);

}  // namespace
