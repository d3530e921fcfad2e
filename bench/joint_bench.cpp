// Contacts: conductance with its scatter, hottest spot, and whole behaviour under current, each beside a twin on plain
// numbers that does the same arithmetic and the same argument checks.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <random>
#include <stdexcept>
#include <string_view>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

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

// ---- the twin: SI numbers throughout ----

struct plain_metal {
    int id;  // place in the library's table
    double resistivity, slope, hardness, softening, melting;
};

struct plain_contact {
    plain_metal first, second;
    double force;
    int state;        // of the surface
    double exponent;  // of the shape
    double points;
};

using plain_band = std::array<double, 3>;

// The constants of the force law by pair, found by number where the library finds them by name.
struct plain_row {
    int first, second;
    double low, high;
};
std::vector<plain_row> plain_table()
{
    const auto id = [](std::string_view name) {
        for (std::size_t i = 0; i < all_metals.size(); ++i)
            if (all_metals[i].name == name) return static_cast<int>(i);
        return -1;
    };
    std::vector<plain_row> out;
    for (const auto& row : detail::published_constants)
        out.push_back({id(row.first), id(row.second), row.low, row.high});
    return out;
}
const std::vector<plain_row> constants = plain_table();

const plain_row* find_row(int a, int b)
{
    for (const plain_row& row : constants)
        if ((row.first == a && row.second == b) || (row.first == b && row.second == a)) return &row;
    return nullptr;
}

// The multipliers by state, as a table.
std::array<plain_band, all_surface_states.size()> plain_multipliers()
{
    std::array<plain_band, all_surface_states.size()> out{};
    for (std::size_t i = 0; i < out.size(); ++i)
        if (const auto m = resistance_multiplier(all_surface_states[i])) out[i] = {m->low, m->typical, m->high};
    return out;
}
const std::array<plain_band, all_surface_states.size()> multipliers = plain_multipliers();

std::vector<plain_contact> plain_contacts()
{
    const auto plain = [](const metal& m) {
        const auto id = std::find(all_metals.begin(), all_metals.end(), m) - all_metals.begin();
        return plain_metal{static_cast<int>(id), m.resistivity.value(),   m.temperature_coefficient.value(),
                           m.hardness.value(),   m.softening.in_kelvin(), m.melting.in_kelvin()};
    };
    std::vector<plain_contact> out;
    for (const contact& c : contacts())
        out.push_back({plain(c.metals.first), plain(c.metals.second), c.force.value(), static_cast<int>(c.surface), 0.7,
                       static_cast<double>(c.points)});
    return out;
}

[[noreturn, gnu::noinline, gnu::cold]] void refuse_not_finite()
{
    throw std::invalid_argument("not finite");
}
[[noreturn, gnu::noinline, gnu::cold]] void refuse_outside()
{
    throw std::out_of_range("outside");
}
double finite(double x)
{
    if (!std::isfinite(x)) refuse_not_finite();
    return x;
}
double not_negative(double x)
{
    if (finite(x) < 0.0) refuse_outside();
    return x;
}
double positive(double x)
{
    if (!(finite(x) > 0.0)) refuse_outside();
    return x;
}
double within(double x, double low, double high)
{
    if (finite(x) < low || x > high) refuse_outside();
    return x;
}

double plain_combined(double a, double b, double direction)
{
    if (a == 1.0) return b;
    if (b == 1.0) return a;
    return std::exp(direction * std::hypot(std::log(a), std::log(b)));
}

plain_band plain_conductance(const plain_contact& c)
{
    const plain_row* const row = find_row(c.first.id, c.second.id);
    if (row == nullptr) refuse_outside();
    not_negative(c.force);
    const double points = within(c.points, 1.0, 1000.0);
    const plain_band& s = multipliers[static_cast<std::size_t>(c.state)];
    if (s[1] == 0.0 || c.force == 0.0) return {};
    const double typical = row->low == row->high ? row->low : std::sqrt(row->low * row->high);
    const double each = finite(std::pow(0.102 * not_negative(c.force / points), within(c.exponent, 0.1, 1.5)) /
                               (1e-6 * within(1.0, std::numeric_limits<double>::min(), 1e308)));
    const double g = points * each;
    const double middle = typical * s[1];
    const double low = middle * plain_combined(row->low / typical, s[0] / s[1], -1.0);
    const double high = middle * plain_combined(row->high / typical, s[2] / s[1], 1.0);
    return {g / high, g / middle, g / low};
}

double plain_drop_to(double kelvin, double bulk)
{
    if (bulk >= kelvin) return 0.0;
    return 2.0 * std::sqrt(2.44e-8 * (kelvin - bulk) * (kelvin + bulk));
}

double plain_resistivity(const plain_metal& m, double kelvin)
{
    const double factor = 1.0 + m.slope * (kelvin - 293.15);
    return m.resistivity * (factor > 0.01 ? factor : 0.01);
}

struct plain_law {
    double softening, melting, growth, scale, cold_softening;

    plain_law(const plain_metal& a, const plain_metal& b, double bulk)
        : softening(std::min(plain_drop_to(a.softening, bulk), plain_drop_to(b.softening, bulk))),
          melting(std::min(plain_drop_to(a.melting, bulk), plain_drop_to(b.melting, bulk)))
    {
        positive(a.resistivity);
        positive(b.resistivity);
        const double alpha = (a.resistivity * a.slope + b.resistivity * b.slope) /
                             (plain_resistivity(a, bulk) + plain_resistivity(b, bulk));
        growth = bulk > 0.0 ? std::clamp(2.0 / 3.0 * alpha * bulk, 0.0, 1.0) : 0.0;
        scale = growth > 0.0 ? 2.0 * std::sqrt(2.44e-8) * bulk : 1.0;
        cold_softening = softening / hot(softening);
    }

    double hot(double v) const
    {
        const double z = v / scale;
        return 1.0 + growth * (std::sqrt(1.0 + z * z) - 1.0);
    }

    double drop(double x) const
    {
        if (x <= cold_softening) {
            const double w = x * growth / scale;
            const double root = std::sqrt(growth * growth + w * w * (1.0 - 2.0 * growth));
            return std::min(x * (1.0 - growth + root) / (1.0 - w * w), softening);
        }
        if (!(softening < melting)) return melting;
        const double y = x * hot(softening);
        double v = 2.0 * melting / (1.0 + std::sqrt(1.0 + 4.0 * ((melting - softening) / y) * (melting / y)));
        if (!(growth > 0.0)) return v;
        const double span = melting - softening;
        double low = std::clamp(v, softening, melting), high = melting;
        v = low;
        for (int i = 0; i < 60; ++i) {
            const double z = v / scale, s = std::sqrt(1.0 + z * z);
            const double f = 1.0 + growth * (s - 1.0);
            const double ratio = v / x / f;
            const double surplus = ratio * ratio - (melting - v) / span;
            const double slope = 2.0 * ratio * (1.0 - growth * (1.0 - 1.0 / s)) / (x * f * f) + 1.0 / span;
            (surplus < 0.0 ? low : high) = v;
            double next = v - surplus / slope;
            if (!(next >= low && next <= high)) next = 0.5 * (low + high);
            const bool done = std::abs(next - v) <= 1e-15 * v;
            v = next;
            if (done) break;
        }
        return v;
    }
};

double plain_spot(double v, double bulk, double melting)
{
    return std::min(positive(std::sqrt(bulk * bulk + not_negative(v) * v / (4.0 * 2.44e-8))), melting);
}

double plain_growth(const plain_contact& c, double bulk)
{
    positive(c.first.resistivity);
    positive(c.second.resistivity);
    return (plain_resistivity(c.first, bulk) + plain_resistivity(c.second, bulk)) /
           (c.first.resistivity + c.second.resistivity);
}

plain_band plain_temperature_of(const plain_contact& c, double amps, double bulk)
{
    const plain_band g = plain_conductance(c);
    not_negative(amps);
    const double melting = std::min(c.first.melting, c.second.melting);
    if (!(g[1] > 0.0)) return {bulk, bulk, bulk};
    const plain_law law(c.first, c.second, bulk);
    const double grown = plain_growth(c, bulk);
    plain_band out{};
    for (std::size_t k = 0; k < 3; ++k)
        out[k] = plain_spot(amps > 0.0 ? law.drop(amps * grown / g[2 - k]) : 0.0, bulk, melting);
    return out;
}

struct plain_behaviour {
    plain_band drop, resistance, loss, hottest;
    bool conducts, may_be_open, melt, may_melt;
};

plain_behaviour plain_behaviour_of(const plain_contact& c, double amps, double bulk)
{
    const plain_band g = plain_conductance(c);
    not_negative(g[0]);
    not_negative(g[1] - g[0]);
    not_negative(g[2] - g[1]);
    not_negative(amps);
    const plain_law law(c.first, c.second, bulk);
    const double grown = plain_growth(c, bulk);
    const double melting = std::min(c.first.melting, c.second.melting);
    plain_behaviour out{};
    out.conducts = g[1] > 0.0;
    out.may_be_open = !(g[0] > 0.0);
    for (std::size_t k = 0; k < 3; ++k) {
        const double v = law.drop(amps * grown / g[2 - k]);
        out.drop[k] = v;
        out.resistance[k] = finite(v / amps);
        out.loss[k] = v * amps;
        out.hottest[k] = plain_spot(v, bulk, melting);
    }
    out.melt = out.drop[1] >= 0.95 * law.melting;
    out.may_melt = out.drop[2] >= 0.95 * law.melting;
    return out;
}

// ---- the benchmarks ----

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

plain_band in_si_numbers(const plain_band& b)
{
    return b;
}
plain_band in_si_numbers(const band<conductance>& b)
{
    return {b.low.value(), b.typical.value(), b.high.value()};
}
plain_band in_si_numbers(const band<temperature>& b)
{
    return {b.low.in_kelvin(), b.typical.in_kelvin(), b.high.in_kelvin()};
}
plain_band in_si_numbers(const joint_behaviour& b)
{
    return {b.loss.low.value(), b.loss.typical.value(), b.loss.high.value()};
}
plain_band in_si_numbers(const plain_behaviour& b)
{
    return b.loss;
}

// Whether the twin computes the same: a quotient of different sums would say nothing.
template <class Cases, class Call, class PlainCases, class PlainCall>
bool alike(const Cases& all, const Call& call, const PlainCases& plain_all, const PlainCall& plain_call)
{
    constexpr double rounding = 1e-12;
    for (std::size_t i = 0; i < cases; ++i) {
        const plain_band ours = in_si_numbers(call(all[i])), twins = in_si_numbers(plain_call(plain_all[i]));
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
const auto plain_band_of = [](const plain_contact& c) { return plain_conductance(c); };
const auto hottest_of = [](const contact& c) { return hottest_spot_of(c, 200_A, 40_degC); };
const auto plain_hottest_of = [](const plain_contact& c) { return plain_temperature_of(c, 200.0, 313.15); };
const auto whole_of = [](const contact& c) { return behaviour_of(c, 200_A, 40_degC); };
const auto plain_whole_of = [](const plain_contact& c) { return plain_behaviour_of(c, 200.0, 313.15); };

void contact_band(benchmark::State& state)
{
    over_all(state, contacts(), band_of);
}
void contact_band_plain(benchmark::State& state)
{
    over_all(state, plain_contacts(), plain_band_of);
}
void contact_band_ratio(benchmark::State& state)
{
    beside(state, contacts(), band_of, plain_contacts(), plain_band_of);
}
void joint_temperature(benchmark::State& state)
{
    over_all(state, contacts(), hottest_of);
}
void joint_temperature_plain(benchmark::State& state)
{
    over_all(state, plain_contacts(), plain_hottest_of);
}
void joint_temperature_ratio(benchmark::State& state)
{
    beside(state, contacts(), hottest_of, plain_contacts(), plain_hottest_of);
}
// with every number of the result and its list of sources, which the twin has not
void whole_behaviour(benchmark::State& state)
{
    over_all(state, contacts(), whole_of);
}
void whole_behaviour_plain(benchmark::State& state)
{
    over_all(state, plain_contacts(), plain_whole_of);
}
void whole_behaviour_ratio(benchmark::State& state)
{
    beside(state, contacts(), whole_of, plain_contacts(), plain_whole_of);
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
