#pragma once
/// @file
/// How a clamp's places swing about their period mean while the current comes and goes: read off the settled period of
/// its network.

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/solve/periodic_state.hpp>

namespace weldloop::detail {

/// The swing of jaws and spring about their period mean in one condition. In another it is this times the `swing` of
/// the clamp_solver's state.
class clamp_ripple {
public:
    clamp_ripple() = default;  ///< of steady current

    /// @param found settled, of a current that comes and goes
    clamp_ripple(const clamp_solver& solver, const solve::periodic_state& found)
    {
        if (!found.march) return;
        double period = 0.0;
        for (const solve::detail::march_step& k : *found.march) period += k.time;
        for (const solve::detail::march_step& k : *found.march)
            for (std::size_t stage = 0; stage < k.stage.size(); ++stage) {
                moment m{solve::detail::marcher::weight[stage] * k.time / period, {}};
                for (std::size_t p = 0; p < places; ++p) {
                    const auto node = solver.node_of(watched[p]);
                    m.over_mean[p] = k.stage[stage][node] - found.mean[node];
                }
                moments_.push_back(m);
            }
    }

    /// By how much a steady temperature would have to lie above the mean for a rate that grows by exp(sensitivity x
    /// kelvin) to be what it is in the mean over the period [K].
    /// @param sensitivity [1/K] @param swing of the state
    [[nodiscard]] double jaw_excess(double sensitivity, double swing) const { return excess(0, sensitivity, swing); }
    /// The same of the spring.
    [[nodiscard]] double spring_excess(double sensitivity, double swing) const { return excess(1, sensitivity, swing); }

private:
    static constexpr std::size_t places = 2;
    static constexpr std::array<std::size_t, places> watched{jaw_place, spring_place};

    // A stage of the march through the period.
    struct moment {
        double weight;                         // share of the period it stands for
        std::array<double, places> over_mean;  // K
    };

    [[nodiscard]] double excess(std::size_t place, double sensitivity, double swing) const
    {
        const double by = sensitivity * swing;
        if (!(by > 0.0)) return 0.0;
        double sum = 0.0;
        for (const moment& m : moments_) sum += m.weight * std::expm1(by * m.over_mean[place]);
        return std::log1p(sum) / sensitivity;
    }

    std::vector<moment> moments_;
};

/// Lets a solver's clamp swing as it does in one condition, its swing being that of this condition from then on. A
/// clamp that has no settled period there has no state afterwards.
/// @return the swing, for the places it watches
inline clamp_ripple let_swing(clamp_solver& solver, const clamp_condition& condition, const duty_cycle& duty)
{
    if (duty.is_continuous()) return {};
    const solve::periodic_state found = solver.settled_period(condition, duty);
    clamp_solver::period p;
    p.bound = solver.bound_of(found.what, found.bounded_at);
    if (p.bound == clamp_bound::none) {
        const clamp_solver::state steady = solver.solve(condition);
        p.contact_heat = steady.contact_heat;
        for (std::size_t k = 0; k < clamp_places; ++k) {
            const auto node = solver.node_of(k);
            p.mean_over_steady[k] = found.mean[node] - steady.steady[k];
            p.on_over_mean[k] = found.on_mean[node] - found.mean[node];
            p.peak_over_mean[k] = found.peak[node] - found.mean[node];
        }
    }
    solver.follow(p);
    return {solver, found};
}

}  // namespace weldloop::detail
