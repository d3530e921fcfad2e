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
    std::vector<plain::lead> out;
    for (const cable& c : leads())
        out.push_back({c.size.area().value(), c.metal.resistivity.value(), c.stranding_increment,
                       c.conductor_diameter.value(), c.overall_diameter.value(), limit_of(c).in_kelvin()});
    return out;
}

// by regula falsi that halves the end which stays
template <class F>
double plain_root(const F& f, double low, double high)
{
    double at_low = f(low), at_high = f(high), last = low;
    for (int step = 0; step < 200; ++step) {
        const double x = high - at_high * (high - low) / (at_high - at_low), at = f(x);
        if (at == 0 || std::fabs(x - last) < 1e-13 * std::fabs(x)) return x;
        last = x;
        if ((at < 0) == (at_high < 0)) {
            at_low *= 0.5;
        } else {
            low = high;
            at_low = at_high;
        }
        high = x;
        at_high = at;
    }
    throw std::runtime_error("no root");
}

// Conductor and covering at the five points, x above the air in the coordinates sqrt(heat) x. The rotations that find
// the modes are plain numbers in the library too and are taken from there.
struct plain_points {
    std::array<double, 5> root{};
    double g = 0, r20 = 0;

    explicit plain_points(const plain::lead& c) : g(plain::conductance(c)), r20(plain::resistance(c, reference))
    {
        const double around = rubber_heat * pi / 4 * (c.outer * c.outer - c.inner * c.inner);
        const double log_ratio = std::log(c.outer / c.inner);
        std::array<double, 5> share{};
        double sum = 0;
        for (std::size_t i = 0; i < 5; ++i)
            sum += share[i] = detail::lobatto_weights[i] * std::exp(2 * log_ratio * detail::lobatto_places[i]);
        for (std::size_t i = 0; i < 5; ++i)
            root[i] = std::sqrt((i == 0 ? copper_heat * c.area : 0) + around * share[i] / sum);
    }

    [[nodiscard]] detail::symmetric_modes modes(double amps, double slope) const
    {
        detail::point_matrix a{};
        for (std::size_t i = 0; i < 5; ++i)
            for (std::size_t j = 0; j < 5; ++j) a[i][j] = -g * detail::covering_stiffness[i][j] / (root[i] * root[j]);
        a[0][0] += amps * amps * r20 * alpha / (root[0] * root[0]);
        a[4][4] -= slope / (root[4] * root[4]);
        return detail::symmetric_modes(a);
    }
};

// settled peak of the conductor above the air for a current that is on and off
double plain_peak(const plain::lead& c, double amps)
{
    using five = std::array<double, 5>;
    const double iec = plain::standard_factor(c.outer);
    const plain_points lead(c);
    const double heat = amps * amps * plain::resistance(c, air), gain = amps * amps * lead.r20 * alpha;
    const auto slope_at = [&](double t) {
        const double step = 0.02 + 0.05 * std::fabs(t - air);
        return (plain::loss(c.outer, iec, t + step) - plain::loss(c.outer, iec, t - step)) / (2 * step);
    };
    struct piece {
        std::size_t part;
        double time, at, loss, mean;
        five once, twice;
    };
    std::array<piece, 64> pieces;
    std::size_t count = 0, on_pieces = 0;
    const double whole = copper_heat * c.area + rubber_heat * pi / 4 * (c.outer * c.outer - c.inner * c.inner);
    const double first = whole * (1 / lead.g + 1 / slope_at(air + 20)) / 16;
    for (std::size_t part = 0; part < 2; ++part) {
        double left = part == 0 ? on_time : rest, length = first;
        for (int k = 1; k < 16 && left > 1.5 * length; ++k) {
            pieces[count].part = part;
            pieces[count++].time = length;
            left -= length;
            length *= 1.5;
        }
        pieces[count].part = part;
        pieces[count++].time = left;
        if (part == 0) on_pieces = count;
    }
    const double share = on_time / (on_time + rest);
    const auto surplus = [&](double t) {
        const double through = plain::loss(c.outer, iec, t);
        return through - share * (heat + gain * (t + through / lead.g - air));
    };
    double rise = 20;
    while (surplus(air + rise) < 0) rise *= 2;
    const double start = plain_root(surplus, air, air + rise);
    const double slope = slope_at(start);
    const std::array<detail::symmetric_modes, 2> modes{lead.modes(amps, slope), lead.modes(0, slope)};

    detail::point_matrix map{};  // of the period less one
    for (std::size_t part = 0; part < 2; ++part) {
        detail::point_matrix grows{}, next = map;
        for (std::size_t i = 0; i < 5; ++i)
            for (std::size_t j = 0; j < 5; ++j)
                for (std::size_t k = 0; k < 5; ++k)
                    grows[i][j] += modes[part].vector[i][k] *
                                   std::expm1(modes[part].rate[k] * (part == 0 ? on_time : rest)) *
                                   modes[part].vector[j][k];
        for (std::size_t i = 0; i < 5; ++i)
            for (std::size_t j = 0; j < 5; ++j) {
                next[i][j] += grows[i][j];
                for (std::size_t k = 0; k < 5; ++k) next[i][j] += grows[i][k] * map[k][j];
            }
        map = next;
    }
    for (std::size_t n = 0; n < count; ++n) {
        piece& p = pieces[n];
        const detail::mode_times times(modes[p.part], p.time);
        p.once = times.by_speed;
        p.twice = times.by_twice;
        p.mean = start;
    }
    // inverse of one minus the map, by elimination with pivots on an extended matrix
    std::array<std::array<double, 10>, 5> m{};
    for (std::size_t i = 0; i < 5; ++i) {
        for (std::size_t j = 0; j < 5; ++j) m[i][j] = -map[i][j];
        m[i][5 + i] = 1;
    }
    for (std::size_t i = 0; i < 5; ++i) {
        std::size_t best = i;
        for (std::size_t r = i + 1; r < 5; ++r)
            if (std::fabs(m[r][i]) > std::fabs(m[best][i])) best = r;
        std::swap(m[i], m[best]);
        if (m[i][i] == 0) throw std::runtime_error("not settled");
        for (std::size_t r = 0; r < 5; ++r) {
            if (r == i) continue;
            const double f = m[r][i] / m[i][i];
            for (std::size_t k = i; k < 10; ++k) m[r][k] -= f * m[i][k];
        }
    }
    double top = 0;
    const auto follow = [&](const five& from) {
        five z = modes[0].to_modes(from);
        for (std::size_t n = 0; n < count; ++n) {
            piece& p = pieces[n];
            if (n == on_pieces) z = modes[1].to_modes(modes[0].from_modes(z));
            const double offset = (slope * (p.at - air) - p.loss) / lead.root[4];
            double sum = 0;
            for (std::size_t k = 0; k < 5; ++k) {
                const double drive = modes[p.part].vector[0][k] * (p.part == 0 ? heat / lead.root[0] : 0) +
                                     modes[p.part].vector[4][k] * offset;
                const double speed = modes[p.part].rate[k] * z[k] + drive;
                sum += modes[p.part].vector[4][k] * (z[k] * p.time + speed * p.twice[k]);
                z[k] += speed * p.once[k];
            }
            p.mean = air + sum / p.time / lead.root[4];
            if (n + 1 == on_pieces) {
                top = 0;
                for (std::size_t k = 0; k < 5; ++k) top += modes[0].vector[0][k] * z[k];
            }
        }
        return modes[1].from_modes(z);
    };
    for (int step = 0; step < 40; ++step) {
        for (std::size_t n = 0; n < count; ++n) {
            pieces[n].at = pieces[n].mean;
            pieces[n].loss = plain::loss(c.outer, iec, pieces[n].at);
        }
        const five w = follow({});
        five x{};
        for (std::size_t i = 0; i < 5; ++i)
            for (std::size_t j = 0; j < 5; ++j) x[i] += m[i][5 + j] * w[j] / m[i][i];
        (void)follow(x);
        double change = 0, most = 0;
        for (std::size_t n = 0; n < count; ++n) {
            change = std::max(change, std::fabs(pieces[n].mean - pieces[n].at));
            most = std::max(most, std::fabs(pieces[n].at - air));
        }
        if (change <= 1e-10 * (1 + most) + 1e-12 * top / lead.root[0]) return top / lead.root[0];
    }
    throw std::runtime_error("not settled");
}

// the rated current; the library's answer also holds the surface's peak at it, which takes one more solution
double plain_duty(const plain::lead& c)
{
    const double continuous = plain::continuous(c);
    const double rated = plain_root([&](double amps) { return plain_peak(c, amps) - (c.limit - air); },
                                    0.9 * continuous, 1.01 * continuous / std::sqrt(on_time / (on_time + rest)));
    benchmark::DoNotOptimize(plain_peak(c, rated));
    return rated;
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
                    for (std::size_t q = 0; q < 5; ++q) in -= lead.g * detail::covering_stiffness[p][q] * t[q];
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
