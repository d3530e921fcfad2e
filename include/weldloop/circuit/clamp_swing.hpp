#pragma once
/// @file
/// How a clamp's places swing about their period mean while the current comes and goes: read off the settled period of
/// its network.
/// Source: the period of the clamp's balance of heat, derived.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
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
    const auto over_mean = [&](const std::vector<double>& x, std::size_t place) {
        return x[node[place]] - out.mean[place];
    };
    for (const solve::detail::march_step& k : *found.march)
        for (std::size_t s = 0; s < k.stage.size(); ++s)
            out.moments.push_back({solve::detail::marcher::weight[s] * k.time / whole, over_mean(k.stage[s], jaw_place),
                                   over_mean(k.stage[s], spring_place)});
    return out;
}

/// Tells a period how its swing follows the heat of the contact where the current heats the spring by itself, from the
/// settled period of a better contact in the clamp's own network.
/// @param followed of the condition @param solver of the clamp @param duty of the period
inline void tell_by_contact(clamp_solver::period& followed, const clamp_solver& solver,
                            const clamp_condition& condition, const duty_cycle& duty)
{
    constexpr double better = 1.3;         // by which a contact's heat differs enough
    constexpr double least_change = 1e-3;  // of the heat: less, as of a level drop, says nothing
    constexpr double least_swing = 1e-2;   // K: neither does less
    const clamp_condition less{condition.force_share, condition.contact_factor / better};
    const clamp_solver::state steady = solver.solve(condition), better_steady = solver.solve(less);
    const double heat = better_steady.contact_heat / steady.contact_heat;
    const solve::periodic_state of_better = solver.settled_period(less, duty),
                                own = solver.settled_period(condition, duty, &of_better);
    if (of_better.what != solve::outcome::solved || own.what != solve::outcome::solved || !(heat < 1.0 - least_change))
        return;
    const auto share = [heat](double before, double after) {
        return before > least_swing ? std::clamp((after / before - 1.0) / (heat - 1.0), 0.0, 1.0) : 1.0;
    };
    for (std::size_t k = 0; k < clamp_places; ++k) {
        const std::size_t at = solver.nodes()[k];
        followed.on_by_contact[k] = share(own.on_mean[at] - own.mean[at], of_better.on_mean[at] - of_better.mean[at]);
        followed.peak_by_contact[k] = share(own.peak[at] - own.mean[at], of_better.peak[at] - of_better.mean[at]);
        followed.mean_by_square[k] =
            ((of_better.mean[at] - better_steady.steady[k]) - (own.mean[at] - steady.steady[k])) / (heat * heat - 1.0);
    }
}

/// The swing of a clamp in one condition, as the states of other conditions follow it: multiplied by the swing that the
/// clamp_solver gives each place of a state.
class clamp_swing {
public:
    clamp_swing() = default;  ///< of steady current

    /// @param solver of the clamp @param condition in which it has the period @param duty of it
    clamp_swing(const clamp_solver& solver, const clamp_condition& condition, const duty_cycle& duty,
                const clamp_period& period)
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
            followed_.mean_over_steady[k] = period.mean[k] - steady.steady[k];
            followed_.on_over_mean[k] = period.on_mean[k] - period.mean[k];
            followed_.peak_over_mean[k] = period.peak[k] - period.mean[k];
        }
        for (clamp_period::moment& m : moments_) {
            m.jaw = thermal(m.jaw, solver.air() + period.mean[jaw_place]);
            m.spring = thermal(m.spring, solver.air() + period.mean[spring_place]);
        }
        followed_.mean_by_square = followed_.mean_over_steady;
        if (solver.heats_spring()) tell_by_contact(followed_, solver, condition, duty);
    }

    /// What a solver is to follow.
    [[nodiscard]] const clamp_solver::period& followed() const { return followed_; }

    /// By how much a steady temperature would have to lie above the mean for a rate exp(-c/T) to be what it is in the
    /// mean over the period [K].
    /// @param sensitivity c/T2 [1/K] @param swing of the state @param kelvin T, the mean of the place
    [[nodiscard]] double jaw_excess(double sensitivity, double swing, double kelvin) const
    {
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
        static constexpr double step = 0.005;  // 1/K
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
        return straight / (1.0 - straight / kelvin);
    }
    // What exp(-c/T) makes of a departure: exp(c/T2 times this).
    [[nodiscard]] static double thermal(double departure, double kelvin)
    {
        return departure / (1.0 + departure / kelvin);
    }

    clamp_solver::period followed_ = {};
    std::vector<clamp_period::moment> moments_;
    growth_table jaw_known_, spring_known_;
};

/// The swing of a clamp by itself in one condition. A clamp that has no settled period there has no state if it follows
/// this.
/// @param near its settled period in a condition that was no worse, or one without a march; out: that of this condition
[[nodiscard]] inline clamp_swing swing_of(const clamp_solver& solver, const clamp_condition& condition,
                                          const duty_cycle& duty, solve::periodic_state& near)
{
    if (duty.is_continuous()) return {};
    near = solver.settled_period(condition, duty, near.march ? &near : nullptr);
    clamp_period period;
    period.bound = solver.bound_of(near.what, near.bounded_at);
    if (period.bound == clamp_bound::none) period = clamp_period_of(near, solver.nodes());
    return {solver, condition, duty, period};
}

/// Lets a solver's clamp swing as it does by itself in one condition, its swing being that of this condition from then
/// on.
/// @return the swing
inline clamp_swing let_swing(clamp_solver& solver, const clamp_condition& condition, const duty_cycle& duty)
{
    solve::periodic_state found;
    clamp_swing out = swing_of(solver, condition, duty, found);
    solver.follow(out.followed());
    return out;
}

}  // namespace weldloop::detail
