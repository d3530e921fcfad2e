#pragma once
/// @file
/// How a clamp's places swing about their period mean while the current comes and goes: read off the settled period of
/// its network.
/// Source: the period of the clamp's balance of heat, derived.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <memory>
#include <utility>
#include <vector>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/solve/curve_table.hpp>
#include <weldloop/solve/periodic_state.hpp>

namespace weldloop::detail {

/// A settled period as the places of a clamp go through it, in its own network or in a loop's.
struct clamp_period {
    /// Where the march through the period stood, for what is averaged over it.
    struct moment {
        double weight = 0.0;             // share of the period it stands for
        double jaw = 0.0, spring = 0.0;  // K over their means
    };
    clamp_bound bound = clamp_bound::none;   // what keeps it from being; then the rest is nothing
    place_values mean{}, on_mean{}, peak{};  // K over the air: of the period, of the time with current, highest
    std::vector<moment> moments;             // none of steady current
};

/// @param found solved @param node of each place in its network
[[nodiscard]] inline clamp_period clamp_period_of(const solve::periodic_state& found,
                                                  const std::array<solve::heat_network::index, clamp_places>& node)
{
    clamp_period out;
    for (std::size_t k = 0; k < clamp_places; ++k) {
        out.mean[k] = found.mean[node[k]];
        out.on_mean[k] = found.on_mean[node[k]];
        out.peak[k] = found.peak[node[k]];
    }
    if (!found.march) return out;
    double whole = 0.0;
    for (const solve::detail::march_step& k : *found.march) whole += k.time;
    // Hermite's cubic through the ends of each step at Gauss and Legendre's places: what grows steeply with temperature
    // is not averaged well by the stages themselves
    constexpr std::array<double, 3> place{0.1127016653792583, 0.5, 0.8872983346207417},
        weight{5.0 / 18, 8.0 / 18, 5.0 / 18};
    std::array<double, 2> slope{};  // at the start of the step, jaw and spring
    const std::array<std::size_t, 2> at{node[jaw_place], node[spring_place]};
    const std::array<double, 2> mean{out.mean[jaw_place], out.mean[spring_place]};
    double on = -1.0;
    for (const solve::detail::march_step& k : *found.march) {
        std::array<std::array<double, 3>, 2> over{};
        for (std::size_t p = 0; p < at.size(); ++p) {
            const double from = k.from[at[p]], way = k.stage[2][at[p]] - from,
                         end = k.time * solve::detail::marcher::slope_at_end(k, at[p]),
                         start = k.on == on ? k.time * slope[p] : 2.0 * way - end;  // after a switching: a parabola
            for (std::size_t g = 0; g < place.size(); ++g) {
                const double u = place[g], v = 1.0 - u;
                over[p][g] = from - mean[p] + u * u * (1.0 + 2.0 * v) * way + u * v * (v * start - u * end);
            }
            slope[p] = end / k.time;
        }
        on = k.on;
        for (std::size_t g = 0; g < place.size(); ++g)
            out.moments.push_back({weight[g] * k.time / whole, over[0][g], over[1][g]});
    }
    return out;
}

/// What a rate that follows temperature stays between.
struct rate_bounds {
    double least = 0.0, most = std::numeric_limits<double>::infinity();
};

/// The swing of a clamp in one condition, as the states of other conditions follow it: multiplied by the swing that the
/// clamp_solver gives each place of a state.
class clamp_swing {
public:
    clamp_swing() = default;  ///< of steady current

    /// @param solver of the clamp @param condition in which it has the period @param duty of it
    /// @param own the period itself, if it is that of the clamp's own network
    clamp_swing(const clamp_solver& solver, const clamp_condition& condition, const duty_cycle& duty,
                const clamp_period& period, std::shared_ptr<const solve::periodic_state> own = nullptr)
        : moments_(period.moments)
    {
        if (period.moments.empty() && period.bound == clamp_bound::none) return;
        followed_.bound = period.bound;
        if (period.bound != clamp_bound::none) return;
        clamp_solver::state start;
        start.steady = period.mean;
        const clamp_solver::state steady = solver.solve(condition, &start);
        followed_.bound = steady.bound;
        if (steady.bound != clamp_bound::none) return;
        followed_.contact_heat = steady.contact_heat;
        for (std::size_t k = 0; k < clamp_places; ++k) {
            followed_.swing.mean_over_steady[k] = period.mean[k] - steady.steady[k];
            followed_.swing.on_over_mean[k] = period.on_mean[k] - period.mean[k];
            followed_.swing.peak_over_mean[k] = period.peak[k] - period.mean[k];
        }
        for (clamp_period::moment& m : moments_) {
            m.jaw = thermal(m.jaw, solver.air() + period.mean[jaw_place]);
            m.spring = thermal(m.spring, solver.air() + period.mean[spring_place]);
            coldest_jaw_ = std::min(coldest_jaw_, m.jaw);
            hottest_jaw_ = std::max(hottest_jaw_, m.jaw);
        }
        followed_.conductance = solver.conductance_at(condition);
        followed_.programme = clamp_solver::programme_of(duty);
        if (own) followed_.own = solver.settled_of(condition, std::move(own));
        // where the contact alone makes the swing, its heat tells it so far within 0.1 K at jaws and spring; within 0.3
        // K where the cable connection's own heat is felt
        constexpr double told_by_heat = 0.13, told_by_heat_soft = 0.02;
        if (solver.heats_spring()) return;
        followed_.trusted = told_by_heat;
        followed_.trusted_soft = told_by_heat_soft;
    }

    /// What a solver is to follow.
    [[nodiscard]] const clamp_solver::period& followed() const { return followed_; }

    /// Lets the contact's heat alone tell the swing further where that heat makes it: for a rough answer.
    /// @param change of the logarithm of the jaws' conductance
    void trust_heat(double change)
    {
        if (followed_.trusted > 0.0) followed_.trusted = followed_.trusted_soft = change;
    }

    /// By how much a steady temperature would have to lie above the mean for a rate exp(-c/T) to be what it is in the
    /// mean over the period [K].
    /// @param sensitivity c/T2 [1/K] @param swing of the state @param kelvin T, the mean of the place
    /// @param bounds of the rate, over that at the mean
    [[nodiscard]] double jaw_excess(double sensitivity, double swing, double kelvin,
                                    const rate_bounds& bounds = {}) const
    {
        const double by = sensitivity * swing, slowest = std::exp(by * coldest_jaw_),
                     fastest = std::exp(by * hottest_jaw_);
        const bool is_met = bounds.least > slowest || bounds.most < fastest;
        if (by > 0.0 && is_met && bounds.least < std::min(fastest, bounds.most)) {
            double sum = 0.0;
            for (const clamp_period::moment& m : moments_)
                sum += m.weight * std::clamp(std::exp(by * m.jaw), bounds.least, bounds.most);
            return above_mean(std::log(sum) / sensitivity, kelvin);
        }
        return excess(&clamp_period::moment::jaw, jaw_known_, sensitivity, swing, kelvin);
    }
    /// The same of the spring.
    [[nodiscard]] double spring_excess(double sensitivity, double swing, double kelvin) const
    {
        return excess(&clamp_period::moment::spring, spring_known_, sensitivity, swing, kelvin);
    }

private:
    // A smooth number that follows what a rate grows with [1/K], as a table.
    class growth_table {
    public:
        template <class Law>
        [[nodiscard]] double at(double by, const Law& law) const
        {
            const double place = by * (1.0 / step);
            if (!(place < cells)) return law(by);
            return cubics_.value_at(place, [&law](double p) { return law(step * p); });
        }

    private:
        static constexpr double step = 0.01;  // 1/K
        static constexpr std::size_t cells = 64;
        solve::lazy_cubics<cells> cubics_;
    };

    [[nodiscard]] double excess(double clamp_period::moment::*place, const growth_table& known, double sensitivity,
                                double swing, double kelvin) const
    {
        const double by = sensitivity * swing;
        if (!(by > 0.0) || moments_.empty()) return 0.0;
        const double straight = known.at(by, [this, place](double b) {
            double sum = 0.0;
            for (const clamp_period::moment& m : moments_) sum += m.weight * std::expm1(b * m.*place);
            return std::log1p(sum);
        }) / sensitivity;
        return above_mean(straight, kelvin);
    }
    // The departure that thermal() has made straight.
    [[nodiscard]] static double above_mean(double straight, double kelvin)
    {
        return straight / (1.0 - straight / kelvin);
    }
    // What exp(-c/T) makes of a departure: exp(c/T2 times this).
    [[nodiscard]] static double thermal(double departure, double kelvin)
    {
        return departure / (1.0 + departure / kelvin);
    }

    clamp_solver::period followed_ = {};
    std::vector<clamp_period::moment> moments_;
    double coldest_jaw_ = 0.0, hottest_jaw_ = 0.0;  // K over the mean, as thermal() makes them
    growth_table jaw_known_, spring_known_;
};

/// The swing of a clamp by itself in one condition. A clamp that has no settled period there has no state if it follows
/// this.
/// @param near its settled period in a condition that was no worse, or null; out: that of this condition
/// @param from as for settled_period()
[[nodiscard]] inline clamp_swing swing_of(const clamp_solver& solver, const clamp_condition& condition,
                                          const duty_cycle& duty, std::shared_ptr<const solve::periodic_state>& near,
                                          clamp_solver::reached from = clamp_solver::reached::near)
{
    if (duty.is_continuous() || !(solver.conductance_at(condition) > 0.0)) return {};
    near = std::make_shared<const solve::periodic_state>(
        solver.settled_period(condition, duty, near && near->march ? near.get() : nullptr, from));
    clamp_period period;
    period.bound = solver.bound_of(near->what, near->bounded_at);
    if (period.bound == clamp_bound::none) period = clamp_period_of(*near, solver.nodes());
    return {solver, condition, duty, period, near};
}

/// Lets a solver's clamp swing as it does by itself in one condition, its swing being that of this condition from then
/// on.
/// @return the swing
inline clamp_swing let_swing(clamp_solver& solver, const clamp_condition& condition, const duty_cycle& duty)
{
    std::shared_ptr<const solve::periodic_state> found;
    clamp_swing out = swing_of(solver, condition, duty, found);
    solver.follow(out.followed());
    return out;
}

}  // namespace weldloop::detail
