#pragma once
/// @file
/// How a clamp's places swing about their period mean while the current comes and goes: the linear network in its
/// periodic state, by its modes.

#include <array>
#include <cmath>
#include <cstddef>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/law/heat_modes.hpp>

namespace weldloop::detail {

/// The swing of jaws and spring about their period mean in one state.
struct clamp_swing {
    static constexpr std::size_t places = 2, half = 6, moments = 2 * half;  // half of the moments while current flows

    std::array<double, places> peak{};                            // K, end of the on-time
    std::array<std::array<double, moments>, places> at_moment{};  // K
    std::array<double, moments> weight{};                         // share of the period a moment stands for

    /// How far the jaws are above their mean at the end of the on-time [K].
    [[nodiscard]] double jaw_peak() const { return peak[0]; }
    /// By how much a steady temperature would have to lie above the mean for a rate that grows by exp(sensitivity x
    /// kelvin) to be what it is in the mean over the period [K].
    /// @param sensitivity [1/K]
    [[nodiscard]] double jaw_excess(double sensitivity) const { return excess(0, sensitivity); }
    /// The same of the spring.
    [[nodiscard]] double spring_excess(double sensitivity) const { return excess(1, sensitivity); }

private:
    [[nodiscard]] double excess(std::size_t place, double sensitivity) const
    {
        if (!(sensitivity > 0.0)) return 0.0;
        double sum = 0.0;
        for (std::size_t i = 0; i < moments; ++i) sum += weight[i] * std::expm1(sensitivity * at_moment[place][i]);
        return std::log1p(sum) / sensitivity;
    }
};

/// What a watt made in each place in the mean over the period, all of it in the on-time, does to jaws and spring. The
/// conductances are those of one state: over a clamp's life they change by a tenth or two, and the swing, which its
/// capacities set, by less. The lead and the work keep their temperatures.
class clamp_ripple {
public:
    clamp_ripple() = default;

    clamp_ripple(const clamp_solver& solver, const clamp_solver::state& s, const duty_cycle& duty)
    {
        if (duty.is_continuous()) return;
        static_assert(clamp_nodes <= covering_points, "the modes are those of a matrix of this size");
        const node_matrix slope = solver.slopes_at(s);
        const node_values capacity = solver.capacities();
        node_values root{};
        point_matrix a{};
        for (std::size_t i = 0; i < clamp_nodes; ++i) root[i] = std::sqrt(capacity[i]);
        for (std::size_t i = 0; i < clamp_nodes; ++i)
            for (std::size_t j = 0; j < clamp_nodes; ++j) a[i][j] = -slope[i][j] / (root[i] * root[j]);
        const symmetric_modes modes(a);
        const double on = duty.on().value(), period = duty.period().value(), rest = period - on;
        for (std::size_t k = 0; k < clamp_nodes; ++k) {
            const double rate = modes.rate[k];
            if (!(rate < 0.0)) continue;  // a network that loses no heat has no periodic state; it is never asked
            // of a drive that is 1 in the mean over the period
            const double level = -period / on / rate, mean = -1.0 / rate;
            const double at_end = level * std::expm1(rate * on) / std::expm1(rate * period);
            const double at_start = at_end * std::exp(rate * rest);
            const double on_mean = level + (at_start - level) * std::expm1(rate * on) / (rate * on) - mean;
            on_excess_ += modes.vector[jaw_place][k] * modes.vector[jaw_place][k] / capacity[jaw_place] * on_mean;
            std::array<double, clamp_swing::moments> moment{};
            for (std::size_t g = 0; g < clamp_swing::half; ++g) {
                moment[g] = level + (at_start - level) * std::exp(rate * on * abscissa[g]) - mean;
                moment[clamp_swing::half + g] = at_end * std::exp(rate * rest * abscissa[g]) - mean;
            }
            for (std::size_t p = 0; p < clamp_swing::places; ++p)
                for (std::size_t source = 0; source < clamp_nodes; ++source) {
                    const double share =
                        modes.vector[watched[p]][k] * modes.vector[source][k] / (root[watched[p]] * root[source]);
                    peak_[p][source] += share * (at_end - mean);
                    for (std::size_t m = 0; m < clamp_swing::moments; ++m) by_watt_[p][m][source] += share * moment[m];
                }
        }
        for (std::size_t g = 0; g < clamp_swing::half; ++g) {
            weight_[g] = weight[g] * on / period;
            weight_[clamp_swing::half + g] = weight[g] * rest / period;
        }
    }

    /// @param heat made in each place, period mean [W]
    [[nodiscard]] clamp_swing of(const node_values& heat) const
    {
        clamp_swing out;
        out.weight = weight_;
        for (std::size_t p = 0; p < clamp_swing::places; ++p)
            for (std::size_t source = 0; source < clamp_nodes; ++source) {
                out.peak[p] += peak_[p][source] * heat[source];
                for (std::size_t m = 0; m < clamp_swing::moments; ++m)
                    out.at_moment[p][m] += by_watt_[p][m][source] * heat[source];
            }
        return out;
    }

    /// How far the jaws are above their mean in the mean over the on-time, for a watt made in them [K/W].
    [[nodiscard]] double jaw_on_excess() const { return on_excess_; }
    /// Root mean square of the jaws' swing for a watt made in them [K/W].
    [[nodiscard]] double jaw_deviation() const
    {
        double sum = 0.0;
        for (std::size_t m = 0; m < clamp_swing::moments; ++m)
            sum += weight_[m] * by_watt_[0][m][jaw_place] * by_watt_[0][m][jaw_place];
        return std::sqrt(sum);
    }

private:
    static constexpr std::array<std::size_t, clamp_swing::places> watched{jaw_place, spring_place};
    // Gauss and Legendre over the first sixth, where the jaws hurry after a switching, and over the rest
    static constexpr double first_part = 1.0 / 6.0;
    static constexpr std::array<double, 3> gauss_point{0.1127016653792583, 0.5, 0.8872983346207417};
    static constexpr std::array<double, 3> gauss_weight{5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0};
    static constexpr std::array<double, clamp_swing::half> abscissa{first_part * gauss_point[0],
                                                                    first_part* gauss_point[1],
                                                                    first_part* gauss_point[2],
                                                                    first_part + (1.0 - first_part) * gauss_point[0],
                                                                    first_part + (1.0 - first_part) * gauss_point[1],
                                                                    first_part + (1.0 - first_part) * gauss_point[2]};
    static constexpr std::array<double, clamp_swing::half> weight{
        first_part * gauss_weight[0],         first_part* gauss_weight[1],
        first_part* gauss_weight[2],          (1.0 - first_part) * gauss_weight[0],
        (1.0 - first_part) * gauss_weight[1], (1.0 - first_part) * gauss_weight[2]};

    std::array<node_values, clamp_swing::places> peak_{};
    std::array<std::array<node_values, clamp_swing::moments>, clamp_swing::places> by_watt_{};
    std::array<double, clamp_swing::moments> weight_{};
    double on_excess_ = 0.0;
};

/// Lets a solver's jaws swing as they do in one condition, its swing being that of this condition from then on.
/// @return the swing, for the places it watches
inline clamp_ripple let_swing(clamp_solver& solver, const clamp_condition& condition, const duty_cycle& duty)
{
    if (duty.is_continuous()) return {};
    const clamp_ripple out(solver, solver.solve(condition), duty);
    solver.follow_swing(out.jaw_on_excess(), out.jaw_deviation());
    return out;
}

}  // namespace weldloop::detail
