// A clamp's grip: 2000 h of one clamp beside a raw-double twin that takes small steps, and the map of 50 by 50 on one
// and two threads. Read the ratios: grip_march_* over grip_twin_*.
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <thread>
#include <vector>

#include <benchmark/benchmark.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/life/grip_map.hpp>
#include <weldloop/life/grip_threshold.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace {

using namespace weldloop;
using namespace weldloop::literals;

const surroundings shop{.air = 30_degC};
const load continuous{.current = 240_A, .duty = duty_cycle::continuous()};
const load on_and_off{.current = 300_A, .duty = duty_cycle::of(6_min, 10_min)};
constexpr double hours = 2000.0;

work_connection clamp_on_steel(surface_state state = surface_state::oxidized)
{
    return {.clamp = spring_clamp(300_A), .onto = mild_steel, .surface = state};
}

const cable& lead()
{
    static const cable made = welding_cable(square_mm(70), 10_m);
    return made;
}

// The same laws on plain doubles, every temperature followed in time by Euler's steps of a fixed length.
class raw_twin {
public:
    explicit raw_twin(const clamp_network& n, const clamp_outside& o, double amps, double stress)
        : amps_(amps), air_(n.where.air.in_kelvin()), jaws_(n.jaws.typical.value()), lead_(o.conductance.value()),
          far_(o.far.in_kelvin()), sink_(n.work.sink.value()), faces_(n.work.faces.value()),
          end_(n.termination.typical.value()), arms_(static_cast<double>(n.arms_share)),
          reference_(std::sqrt(0.04966 * 0.02448) * std::exp(6.405 * (stress - 0.7)))
    {
        for (std::size_t i = 0; i < clamp_nodes; ++i)
            bodies_[i] = {n.bodies[i].surface.value(), n.bodies[i].diameter.value(),
                          static_cast<double>(n.bodies[i].emissivity), n.bodies[i].capacity.value()};
        g_ = {n.jaw_body.value(),   n.body_spring.value(), n.body_handle.value(),
              n.body_entry.value(), n.jaw_entry.value(),   n.handle_spring.value()};
    }

    // Force left, cold.
    double march(double seconds, double step) const
    {
        std::array<double, clamp_nodes> t{};
        t.fill(air_);
        double parameter = air_ * (20.0 + std::log10(1.0 / 3600.0)), film = 0.0;
        for (double at = 1.0; at < seconds; at += step) {
            const double held = std::exp(-reference_ * std::exp(9.85e-4 * (parameter - 6742.45)));
            const double force = held * (1.0 - 3.6e-4 * (t[2] - 293.15));
            const double jaws = jaws_ * std::pow(force, 0.7) * (1.0 - std::sqrt(film) / 5000.0);
            const double volts =
                drop(jaws, t[0], {6.16e-8, 0.0017, 573.15, 1175.15}, {1.43e-7, 0.0039, 773.15, 1753.15});
            const double end =
                drop(end_, t[4], {1.72414e-8, 0.00393, 463.15, 1357.15}, {6.16e-8, 0.0017, 573.15, 1175.15});
            std::array<double, clamp_nodes> flow{};
            for (std::size_t i = 0; i < clamp_nodes; ++i) flow[i] -= loss(bodies_[i], t[i]);
            constexpr std::array<std::array<std::size_t, 2>, 6> ends{{{0, 1}, {1, 2}, {1, 3}, {1, 4}, {0, 4}, {3, 2}}};
            for (std::size_t k = 0; k < ends.size(); ++k) {
                const auto [i, j] = ends[k];
                flow[i] -= g_[k] * (t[i] - t[j]);
                flow[j] += g_[k] * (t[i] - t[j]);
            }
            flow[4] -= lead_ * (t[4] - far_);
            const double crossing = 2.44e-8 * t[0] * amps_ / volts + conductivity(t[0]) * faces_ / 1e-4;
            flow[0] -= crossing * sink_ / (crossing + sink_) * (t[0] - air_);
            flow[0] += amps_ * volts * (1.0 - 0.5 * sink_ / (crossing + sink_));
            flow[1] += arms_ * amps_ * end;
            flow[4] += (1.0 - arms_) * amps_ * end;
            for (std::size_t i = 0; i < clamp_nodes; ++i) t[i] += step * flow[i] / bodies_[i].capacity;
            parameter += step * t[2] / (2.302585093 * 3600.0) * std::pow(10.0, 20.0 - parameter / t[2]);
            const double nm = std::sqrt(film);
            const double parabolic = 0.225 * std::exp(-0.82 / 8.617e-5 * (1.0 / t[0] - 1.0 / 373.15));
            const double logarithmic = 2.0 * nm * 0.9 / 2.302585093 * std::pow(10.0, -((nm - 2.2) / 0.9 + 3.0));
            film += step / 3600.0 * std::max(parabolic, logarithmic);
        }
        return std::exp(-reference_ * std::exp(9.85e-4 * (parameter - 6742.45)));
    }

private:
    struct body {
        double surface, diameter, emissivity, capacity;
    };
    struct conductor {
        double rho, alpha, softening, melting;
        double at(double t) const { return rho * (1.0 + alpha * (t - 293.15)); }
    };

    static double conductivity(double t)
    {
        return 2.64638e-3 * t * std::sqrt(t) / (t + 245.4 * std::pow(10.0, -12.0 / t));
    }

    double loss(const body& b, double t) const
    {
        if (b.surface == 0.0) return 0.0;
        const double rise = t - air_, shown = std::fabs(rise) < 1.0 ? std::copysign(1.0, rise) : rise;
        const double film = air_ + 0.5 * shown, hot = air_ + shown, k = conductivity(film);
        const double density = 101325.0 / (287.05 * film);
        const double viscosity = 1.458e-6 * film * std::sqrt(film) / (film + 110.4);
        const double nu = viscosity / density, diffusivity = k / (density * 1006.0), prandtl = nu / diffusivity;
        const double rayleigh =
            9.80665 / film * std::fabs(shown) * b.diameter * b.diameter * b.diameter / (nu * diffusivity);
        const double root = 0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) /
                                       std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
        const double h =
            root * root * k / b.diameter + b.emissivity * 5.670374419e-8 * (hot + air_) * (hot * hot + air_ * air_);
        return h * b.surface * rise;
    }

    double drop(double cold, double t, const conductor& one, const conductor& other) const
    {
        const double now = one.at(t) + other.at(t), x = amps_ / cold * now / (one.rho + other.rho);
        const auto reach = [t](double spot) { return 2.0 * std::sqrt(2.44e-8 * (spot * spot - t * t)); };
        const double soft = std::min(reach(one.softening), reach(other.softening)),
                     melt = std::min(reach(one.melting), reach(other.melting));
        const double c = 2.0 / 3.0 * (one.rho * one.alpha + other.rho * other.alpha) / now * t;
        const double scale = 2.0 * std::sqrt(2.44e-8) * t;
        double v = std::min(x, 0.99 * melt);
        for (int i = 0; i < 8; ++i) {
            const double hot = 1.0 + c * (std::sqrt(1.0 + v * v / (scale * scale)) - 1.0), y = x * hot;
            v = y <= soft ? y : 2.0 * melt / (1.0 + std::sqrt(1.0 + 4.0 * (melt - soft) * melt / (y * y)));
        }
        return v;
    }

    double amps_, air_, jaws_, lead_, far_, sink_, faces_, end_, arms_, reference_;
    std::array<body, clamp_nodes> bodies_{};
    std::array<double, 6> g_{};
};

void grip_forecast_of_2000_h(benchmark::State& state)
{
    const work_connection w = clamp_on_steel();
    for (auto _ : state) benchmark::DoNotOptimize(grip_over_time(w, lead(), on_and_off, shop, 2000_h));
}
BENCHMARK(grip_forecast_of_2000_h)->Unit(benchmark::kMicrosecond);

void grip_march_of_2000_h(benchmark::State& state)
{
    const work_connection w = clamp_on_steel();
    const clamp_network n = clamp_network_of(w, shop);
    const clamp_outside o = lead_outside(lead(), shop, continuous);
    const detail::grip_question q{w, shop, continuous, {}, {o, o, o}, 2000_h};
    detail::grip_march m;
    for (auto _ : state) {
        m = detail::march_case(q, n, detail::grip_case::typical);
        benchmark::DoNotOptimize(m.points.data());
    }
    state.counters["left"] = m.left;
}
BENCHMARK(grip_march_of_2000_h)->Unit(benchmark::kMicrosecond);

void grip_twin_of_2000_h(benchmark::State& state)
{
    const work_connection w = clamp_on_steel();
    const raw_twin twin(clamp_network_of(w, shop), lead_outside(lead(), shop, continuous), continuous.current.value(),
                        static_cast<double>(w.clamp.spring->stress));
    constexpr double step = 10.0;  // s: half the time constant of the jaws; 20 s are unstable
    double left = 0.0;
    for (auto _ : state) {
        left = twin.march(hours * 3600.0, step);
        benchmark::DoNotOptimize(&left);
    }
    state.counters["left"] = left;
}
BENCHMARK(grip_twin_of_2000_h)->Unit(benchmark::kMicrosecond)->Iterations(1);

void grip_threshold_direct(benchmark::State& state)
{
    const work_connection w = clamp_on_steel();
    for (auto _ : state) benchmark::DoNotOptimize(largest_clamp_current({w, lead(), on_and_off.duty, shop}, 2000_h));
}
BENCHMARK(grip_threshold_direct)->Unit(benchmark::kMicrosecond);

void grip_map_50_by_50(benchmark::State& state)
{
    const work_connection w = clamp_on_steel(surface_state::clean);
    constexpr std::size_t side = 50;
    std::vector<current> currents;
    std::vector<double> factors;
    for (std::size_t i = 0; i < side; ++i) {
        currents.push_back(in_si<current>(50.0 + 25.0 * static_cast<double>(i)));
        factors.push_back(0.3 * std::pow(100.0, static_cast<double>(i) / (side - 1)));
    }
    const auto threads = static_cast<std::size_t>(state.range(0));
    for (auto _ : state) {
        std::vector<grip_map> parts(threads);
        std::vector<std::thread> running;
        for (std::size_t k = 0; k < threads; ++k)
            running.emplace_back([&, k] {
                // every threads-th column, for columns of high current cost more
                std::vector<current> own;
                for (std::size_t i = k; i < side; i += threads) own.push_back(currents[i]);
                parts[k] = grip_map_of({w, lead(), on_and_off.duty, shop}, own, factors, 2000_h);
            });
        for (std::thread& t : running) t.join();
        benchmark::DoNotOptimize(parts);
    }
}
BENCHMARK(grip_map_50_by_50)->Arg(1)->Arg(2)->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace
