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
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/root.hpp>
#include <weldloop/rating/ampacity.hpp>

namespace {

using namespace weldloop;

constexpr std::size_t cases = 64;  // all leads fit the first cache
constexpr double pi = 3.14159265358979323846;
constexpr double air = 298.15;        // K
constexpr double reference = 293.15;  // K
constexpr double alpha = 0.00393;     // 1/K
constexpr double copper_heat = 8890.0 * 386.0, rubber_heat = 2.0e6, rubber_conductivity = 0.2;
constexpr double on_time = 180.0, rest = 120.0;  // s

std::vector<cable> leads()
{
    std::mt19937_64 engine(2);
    std::uniform_real_distribution<double> mm2(10, 185);
    std::vector<cable> out;
    for (std::size_t i = 0; i < cases; ++i) out.push_back(welding_cable(square_mm(mm2(engine)), in_si<length>(20.0)));
    return out;
}

struct plain_lead {
    double area, resistivity, increment, inner, outer, limit;  // m2, ohm m at 20 degC, share, m, m, K
};

std::vector<plain_lead> plain_leads()
{
    std::vector<plain_lead> out;
    for (const cable& c : leads())
        out.push_back({c.size.area().value(), c.metal.resistivity.value(), c.stranding_increment,
                       c.conductor_diameter.value(), c.overall_diameter.value(), c.limit.in_kelvin()});
    return out;
}

double plain_resistance(const plain_lead& c, double kelvin)
{
    return c.resistivity * (1 + alpha * (kelvin - reference)) * (1 + c.increment) / c.area;
}

// the default surface alone in still air
double plain_loss(double d, double iec, double surface)
{
    const double rise = surface - air;
    if (rise == 0) return 0;
    const double t = 0.5 * (surface + air), t15 = t * std::sqrt(t);
    const double density = 101325.0 / (287.05 * t), viscosity = 1.458e-6 * t15 / (t + 110.4);
    const double conductivity = 2.64638e-3 * t15 / (t + 245.4 * std::pow(10.0, -12.0 / t));
    const auto vibration = [t](double theta) {
        const double x = theta / t, less = -std::expm1(-x);
        return x * x * std::exp(-x) / (less * less);
    };
    const double cp =
        287.05 * (3.5 * (0.781 + 0.2095) + 2.5 * 0.0093 + 0.781 * vibration(3393.5) + 0.2095 * vibration(2273.6));
    const double nu = viscosity / density, diffusivity = conductivity / (density * cp), pr = nu / diffusivity;
    const double ra = 9.80665 / t * std::fabs(rise) * d * d * d / (nu * diffusivity);
    const double root = 0.60 + 0.387 * std::pow(ra, 1.0 / 6) / std::pow(1 + std::pow(0.559 / pr, 9.0 / 16), 8.0 / 27);
    const double first = (pi * root * root * conductivity +
                          pi * d * 0.9 * 5.670374419e-8 * (surface + air) * (surface * surface + air * air)) *
                         rise;
    const double standard = pi * d * iec * rise * std::sqrt(std::sqrt(std::fabs(rise)));
    return std::fabs(standard) > std::fabs(first) ? standard : first;
}

double plain_iec(double d)
{
    return 0.21 / std::pow(d, 0.60) + 3.94;
}

double plain_conductance(const plain_lead& c)
{
    return 2 * pi * rubber_conductivity / std::log(c.outer / c.inner);
}

// of the covering that counts with the conductor: Van Wormer's, reduced as a flat layer's that has not warmed through
double plain_share(const plain_lead& c)
{
    const double y = 2 * std::log(c.outer / c.inner), whole = 1 / y - 1 / std::expm1(y),
                 thickness = 0.5 * (c.outer - c.inner);
    const double fourier = rubber_conductivity / rubber_heat * on_time / (thickness * thickness);
    if (fourier > 10) return whole;
    double sum = 0;
    for (int n = 1; n < 40; n += 2) {
        const double n2 = n * n, term = std::exp(-0.25 * pi * pi * n2 * fourier) / (n2 * n2);
        sum += term;
        if (term < 1e-12) break;
    }
    const double taken_up = 1 - (1 - sum * 96 / (pi * pi * pi * pi)) / (3 * fourier);
    const double share = detail::root_between(
        [&](double p) {
            const double lag = (1 - p) / fourier;
            return p + (1 - p) * (1 + lag * std::expm1(-1 / lag)) - taken_up;
        },
        0.0, 0.5, "share");
    return whole * std::min(share / (1 - std::sqrt(1.0 / 3)), 1.0);
}

double plain_continuous(const plain_lead& c)
{
    const double iec = plain_iec(c.outer), g = plain_conductance(c);
    const double surface = detail::root_between(
        [&](double t) { return plain_loss(c.outer, iec, t) - g * (c.limit - t); }, air, c.limit, "surface temperature");
    return std::sqrt(g * (c.limit - surface) / plain_resistance(c, c.limit));
}

// one piece of the period: x' = m x + f in both stores, x above the air
struct plain_piece {
    double amps, time, at, loss, slope, mean;
    std::array<double, 4> m;
    std::array<double, 2> f, start;
    double r1, r2;

    [[nodiscard]] std::array<double, 2> speed(const std::array<double, 2>& x) const
    {
        return {m[0] * x[0] + m[1] * x[1] + f[0], m[2] * x[0] + m[3] * x[1] + f[1]};
    }
    [[nodiscard]] std::array<double, 2> after(const std::array<double, 2>& x) const
    {
        const std::array<double, 2> v = speed(x);
        const double p1 = std::expm1(r1 * time) / r1, p2 = std::expm1(r2 * time) / r2, k = (p1 - p2) / (r1 - r2);
        return {x[0] + (p1 + k * (m[0] - r1)) * v[0] + k * m[1] * v[1],
                x[1] + k * m[2] * v[0] + (p1 + k * (m[3] - r1)) * v[1]};
    }
    [[nodiscard]] double surface_mean() const
    {
        const std::array<double, 2> v = speed(start);
        const auto twice = [&](double r) { return (std::expm1(r * time) - r * time) / (r * r); };
        const double i1 = twice(r1), k = (i1 - twice(r2)) / (r1 - r2);
        return start[1] + (k * m[2] * v[0] + (i1 + k * (m[3] - r1)) * v[1]) / time;
    }
};

// settled peak of the conductor above the air for a current that is on and off
double plain_peak(const plain_lead& c, double amps)
{
    const double iec = plain_iec(c.outer), g = plain_conductance(c);
    const double share = plain_share(c);
    const double around = rubber_heat * pi / 4 * (c.outer * c.outer - c.inner * c.inner);
    const double c1 = copper_heat * c.area + share * around, c2 = (1 - share) * around;
    const auto slope_at = [&](double t) {
        const double step = 0.02 + 0.05 * std::fabs(t - air);
        return (plain_loss(c.outer, iec, t + step) - plain_loss(c.outer, iec, t - step)) / (2 * step);
    };
    std::array<plain_piece, 64> pieces;
    std::size_t count = 0;
    std::size_t on_pieces = 0;
    const double first = 0.25 * (c1 + c2) * (1 / g + 1 / slope_at(air + 20));
    for (const double time : {on_time, rest}) {
        double left = time, length = first;
        const double i = count == 0 ? amps : 0;
        for (int k = 1; k < 8 && left > 2 * length; ++k) {
            pieces[count].amps = i;
            pieces[count++].time = length;
            left -= length;
            length *= 2;
        }
        pieces[count].amps = i;
        pieces[count++].time = left;
        if (i > 0) on_pieces = count;
    }
    double top = 0;
    const auto solve = [&] {
        for (std::size_t n = 0; n < count; ++n) {
            plain_piece& p = pieces[n];
            const double gain = p.amps * p.amps * plain_resistance(c, reference) * alpha;
            p.m = {(gain - g) / c1, g / c1, g / c2, -(g + p.slope) / c2};
            p.f = {p.amps * p.amps * plain_resistance(c, air) / c1, (p.slope * (p.at - air) - p.loss) / c2};
            const double half = 0.5 * (p.m[0] - p.m[3]), radius = std::sqrt(half * half + p.m[1] * p.m[2]);
            p.r2 = 0.5 * (p.m[0] + p.m[3]) - radius;
            p.r1 = (p.m[0] * p.m[3] - p.m[1] * p.m[2]) / p.r2;
        }
        const auto whole = [&](std::array<double, 2> x) {
            for (std::size_t n = 0; n < count; ++n) x = pieces[n].after(x);
            return x;
        };
        const auto w = whole({0, 0}), ex = whole({1, 0}), ez = whole({0, 1});
        const double a11 = 1 - (ex[0] - w[0]), a12 = -(ez[0] - w[0]), a21 = -(ex[1] - w[1]), a22 = 1 - (ez[1] - w[1]);
        const double determinant = a11 * a22 - a12 * a21;
        if (!(a11 > 0 && a22 > 0 && determinant > 0)) throw std::runtime_error("not settled");
        std::array<double, 2> x{(a22 * w[0] - a12 * w[1]) / determinant, (a11 * w[1] - a21 * w[0]) / determinant};
        for (std::size_t n = 0; n < count; ++n) {
            pieces[n].start = x;
            pieces[n].mean = air + pieces[n].surface_mean();
            x = pieces[n].after(x);
            if (n + 1 == on_pieces) top = x[0];
        }
    };
    double at = air + 20;
    for (int step = 0; step < 50; ++step) {
        const double given_off = plain_loss(c.outer, iec, at), line = given_off / (at - air);
        for (std::size_t n = 0; n < count; ++n) {
            pieces[n].at = at;
            pieces[n].loss = given_off;
            pieces[n].slope = line;
        }
        solve();
        double mean = 0;
        for (std::size_t n = 0; n < count; ++n) mean += pieces[n].time / (on_time + rest) * pieces[n].mean;
        if (std::fabs(mean - at) <= 1e-2 * (1 + at - air)) break;
        at += (mean - at) * line / slope_at(at);
    }
    for (int step = 0; step < 50; ++step) {
        double change = 0, rise = 0;
        for (std::size_t n = 0; n < count; ++n) {
            plain_piece& p = pieces[n];
            change = std::max(change, std::fabs(p.mean - p.at));
            rise = std::max(rise, std::fabs(p.at - air));
        }
        if (change <= 1e-10 * (1 + rise)) return top;
        for (std::size_t n = 0; n < count; ++n) {
            plain_piece& p = pieces[n];
            p.at = p.mean;
            p.loss = plain_loss(c.outer, iec, p.at);
            p.slope = slope_at(p.at);
        }
        solve();
    }
    throw std::runtime_error("not settled");
}

double plain_duty(const plain_lead& c)
{
    const double continuous = plain_continuous(c);
    return detail::root_between([&](double amps) { return plain_peak(c, amps) - (c.limit - air); }, 0.9 * continuous,
                                1.01 * continuous / std::sqrt(on_time / (on_time + rest)), "rated current");
}

// the same peak by the classical Runge-Kutta rule, one second a step, until the period repeats within 0.01 K
double marched_peak(const plain_lead& c, double amps)
{
    const double iec = plain_iec(c.outer), g = plain_conductance(c);
    const double share = plain_share(c);
    const double around = rubber_heat * pi / 4 * (c.outer * c.outer - c.inner * c.inner);
    const double c1 = copper_heat * c.area + share * around, c2 = (1 - share) * around;
    double x = air, z = air, last = 0;
    for (int period = 0; period < 200; ++period) {
        double top = x;
        for (int second = 0; second < static_cast<int>(on_time + rest); ++second) {
            const double i = second < static_cast<int>(on_time) ? amps : 0;
            const auto slope = [&](double tx, double tz) {
                return std::array<double, 2>{(i * i * plain_resistance(c, tx) - g * (tx - tz)) / c1,
                                             (g * (tx - tz) - plain_loss(c.outer, iec, tz)) / c2};
            };
            const auto k1 = slope(x, z), k2 = slope(x + k1[0] / 2, z + k1[1] / 2),
                       k3 = slope(x + k2[0] / 2, z + k2[1] / 2), k4 = slope(x + k3[0], z + k3[1]);
            x += (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]) / 6;
            z += (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]) / 6;
            top = std::max(top, x);
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
                 plain_resistance(plain_leads()[0], 350), 1e-12);
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
    const std::vector<plain_lead> all = plain_leads();
    double kelvin = 300;
    for (auto _ : state) {
        kelvin = kelvin < 350 ? kelvin + 0.1 : 300;
        double sum = 0;
        for (const plain_lead& c : all) sum += plain_resistance(c, kelvin);
        benchmark::DoNotOptimize(sum);
        benchmark::ClobberMemory();
    }
}

double continuous_amps(const cable& c)
{
    return std::sqrt((steady_loss_of(c, {}, c.limit) / resistance_per_length_of(c, c.limit)).value());
}

void continuous_rating(benchmark::State& state)
{
    const std::vector<cable> all = leads();
    require_same(continuous_amps(all[0]), plain_continuous(plain_leads()[0]), 1e-9);
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(continuous_amps(all[i++ % cases]));
}

void continuous_rating_plain(benchmark::State& state)
{
    const std::vector<plain_lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(plain_continuous(all[i++ % cases]));
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
    const std::vector<plain_lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) benchmark::DoNotOptimize(plain_duty(all[i++ % cases]));
}

void duty_peak(benchmark::State& state)
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
    const std::vector<plain_lead> all = plain_leads();
    std::size_t i = 0;
    for (auto _ : state) {
        const plain_lead& c = all[i++ % cases];
        benchmark::DoNotOptimize(plain_peak(c, 5e6 * c.area));
    }
}

void duty_peak_marched(benchmark::State& state)
{
    const std::vector<plain_lead> all = plain_leads();
    require_same(marched_peak(all[0], 5e6 * all[0].area), air + plain_peak(all[0], 5e6 * all[0].area), 1e-3);
    std::size_t i = 0;
    for (auto _ : state) {
        const plain_lead& c = all[i++ % cases];
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
BENCHMARK(duty_peak_marched);
BENCHMARK(sweep_of_ratings)->Arg(1)->Arg(2)->Iterations(1)->UseRealTime()->Unit(benchmark::kSecond);

}  // namespace
