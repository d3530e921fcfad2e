#pragma once
/// @file
/// The state of a heat network that repeats with its programme of current: one nonlinear problem for mean and swing.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/steady_state.hpp>

namespace weldloop::solve {

/// Current on and off, repeated.
struct on_off {
    double on = 1.0;    ///< [s] above 0
    double rest = 0.0;  ///< [s] 0: steady current
};

/// A settled period.
struct periodic_state {
    outcome what = outcome::not_settled;             ///< how the search ended; the rest holds for `solved`
    std::size_t bounded_at = heat_network::nowhere;  ///< the node that passed its bound
    std::vector<double> mean;                        ///< rise of every node over the period [K]
    std::vector<double> on_mean;                     ///< over the time with current
    std::vector<double> peak;                        ///< highest in the period
    std::vector<double> source_on;           ///< heat of every source in the mean over the time with current [W]
    heat_network::totals sums;               ///< heat made and lost in the mean over the period [W]
    double imbalance = 0.0;                  ///< made less lost less stored, of the heat made
    std::vector<double> times;               ///< [s] of the trace, from the start of the current
    std::vector<std::vector<double>> trace;  ///< rises at these times
    int sweeps = 0;                          ///< periods marched
    int steps = 0;                           ///< of the last of them
};

namespace detail {

/// What is remembered of a step from sweep to sweep: its matrix, where it began and what its stages came to.
struct known_step {
    sparse_lu matrix;
    std::vector<double> from;
    std::array<std::vector<double>, 3> stage;
};

/// Marches a network in time by a diagonally implicit Runge-Kutta method of third order in three stages, stiffly
/// accurate and L-stable (Alexander 1977), its stages by simplified Newton's method.
class marcher {
public:
    explicit marcher(const heat_network& n)
        : n_(&n), size_(n.size()), matrix_(n.pattern()), base_(size_), gain_(size_), change_(size_)
    {
        for (std::vector<double>& s : stage_) s.resize(size_);
        for (std::vector<double>& s : slope_) s.resize(size_);
    }

    /// One step from a state; the state at its end is stage(2). False where Newton's method did not settle.
    /// @param known the same step of the sweep before, to begin with and to be renewed, or null
    [[nodiscard]] bool step(std::span<const double> from, double on, double time, double newton, known_step* known)
    {
        const std::span<const double> capacity = n_->capacity();
        const bool again = known != nullptr && !known->from.empty();
        sparse_lu& matrix = known != nullptr ? known->matrix : matrix_;
        if (!again) {
            matrix = n_->pattern();
            n_->evaluate(from, on, gain_, &matrix);
            for (std::size_t i = 0; i < size_; ++i) matrix.values()[i] += capacity[i] / (gamma * time);
            static_cast<void>(matrix.eliminate());
        }
        for (std::size_t s = 0; s < 3; ++s) {
            for (std::size_t i = 0; i < size_; ++i) {
                double b = from[i];
                for (std::size_t j = 0; j < s; ++j) b += time * below[s][j] * slope_[j][i];
                base_[i] = b;
            }
            if (again) {  // as far from where it began as the last time
                for (std::size_t i = 0; i < size_; ++i) stage_[s][i] = known->stage[s][i] + (from[i] - known->from[i]);
            } else if (s == 0) {  // one linear implicit step
                change_ = gain_;
                matrix.solve(change_);
                for (std::size_t i = 0; i < size_; ++i) stage_[0][i] = from[i] + change_[i];
            } else {
                for (std::size_t i = 0; i < size_; ++i) stage_[s][i] = base_[i] + gamma * time * slope_[s - 1][i];
            }
            if (!newton_stage(matrix, s, on, time, newton)) return false;
            for (std::size_t i = 0; i < size_; ++i) slope_[s][i] = (stage_[s][i] - base_[i]) / (gamma * time);
        }
        if (known != nullptr) {
            known->from.assign(from.begin(), from.end());
            known->stage = stage_;
        }
        return true;
    }

    [[nodiscard]] const std::vector<double>& stage(std::size_t s) const { return stage_[s]; }

    /// How far the result of the last step is from that of the second-order method on the same stages [K].
    [[nodiscard]] double error(double time) const
    {
        double most = 0.0;
        for (std::size_t i = 0; i < size_; ++i) {
            double e = 0.0;
            for (std::size_t s = 0; s < 3; ++s) e += (weight[s] - second[s]) * slope_[s][i];
            most = std::max(most, std::fabs(time * e));
        }
        return most;
    }

    static constexpr double gamma = 0.43586652150845899942;
    static constexpr std::array<double, 3> weight{-(6 * gamma * gamma - 16 * gamma + 1) / 4,
                                                  (6 * gamma * gamma - 20 * gamma + 5) / 4, gamma};

private:
    static constexpr std::array<std::array<double, 2>, 3> below{
        {{0.0, 0.0}, {(1 - gamma) / 2, 0.0}, {weight[0], weight[1]}}};
    static constexpr std::array<double, 3> second{1.0 - (1 - 2 * gamma) / (1 - gamma), (1 - 2 * gamma) / (1 - gamma),
                                                  0.0};

    [[nodiscard]] bool newton_stage(const sparse_lu& matrix, std::size_t s, double on, double time, double tolerance)
    {
        constexpr int most_rounds = 12;
        const std::span<const double> capacity = n_->capacity();
        double before = 1e300;
        for (int round = 0; round < most_rounds; ++round) {
            n_->evaluate(stage_[s], on, gain_, nullptr);
            double most = 0.0;
            for (std::size_t i = 0; i < size_; ++i)
                change_[i] = gain_[i] - capacity[i] * (stage_[s][i] - base_[i]) / (gamma * time);
            matrix.solve(change_);
            for (std::size_t i = 0; i < size_; ++i) {
                stage_[s][i] += change_[i];
                most = std::max(most, std::fabs(change_[i]));
            }
            if (most <= tolerance) return true;
            if (!(most < 0.7 * before) || !std::isfinite(most)) break;
            before = most;
        }
        return newton_afresh(s, on, time, tolerance);
    }

    // With the slopes of every round, and steps that make the imbalance smaller: for stages over which the slopes turn,
    // as where a drop falls with its metal's warmth.
    [[nodiscard]] bool newton_afresh(std::size_t s, double on, double time, double tolerance)
    {
        constexpr int most_rounds = 60, most_halvings = 12;
        constexpr double longest = 40.0;  // K
        const std::span<const double> capacity = n_->capacity();
        std::vector<double> tried(size_);
        stage_[s] = base_;
        const auto imbalance = [&](const std::vector<double>& x, sparse_lu* matrix) {
            n_->evaluate(x, on, gain_, matrix);
            double sum = 0.0;
            for (std::size_t i = 0; i < size_; ++i) {
                gain_[i] -= capacity[i] * (x[i] - base_[i]) / (gamma * time);
                sum += std::fabs(gain_[i]);
            }
            return sum;
        };
        for (int round = 0; round < most_rounds; ++round) {
            own_ = n_->pattern();
            const double now = imbalance(stage_[s], &own_);
            for (std::size_t i = 0; i < size_; ++i) own_.values()[i] += capacity[i] / (gamma * time);
            if (!own_.eliminate()) return false;
            change_ = gain_;
            own_.solve(change_);
            double most = 0.0;
            for (const double d : change_) most = std::max(most, std::fabs(d));
            if (!std::isfinite(most)) return false;
            double share = most > longest ? longest / most : 1.0;
            for (int k = 0; k < most_halvings; ++k) {
                for (std::size_t i = 0; i < size_; ++i) tried[i] = stage_[s][i] + share * change_[i];
                if (imbalance(tried, nullptr) < now) break;
                share *= 0.5;
            }
            stage_[s] = tried;
            if (share * most <= tolerance) return true;
        }
        return false;
    }

    const heat_network* n_;
    std::size_t size_;
    sparse_lu matrix_, own_;
    std::vector<double> base_, gain_, change_;
    std::array<std::vector<double>, 3> stage_, slope_;
};

class period_finder {
public:
    period_finder(const heat_network& n, const on_off& programme)
        : n_(&n), programme_(programme), size_(n.size()), marcher_(n),
          share_(programme.on / (programme.on + programme.rest))
    {
    }

    [[nodiscard]] periodic_state operator()(std::span<const double> cold, const periodic_state* near)
    {
        constexpr int most_sweeps = 80;
        int choose_until = 1;                            // sweeps that choose their steps anew
        constexpr double settled = 1e-4;                 // K from period to period
        constexpr double rough = 1e-3;                   // K, Newton's method of the first sweeps
        constexpr double forcing = 3e-5, finest = 1e-9;  // Newton\'s method of the others: by the departure before; K
        constexpr double lost = 800.0;                   // K beyond a bound: nothing comes back from there
        periodic_state out;
        std::vector<double> start;
        if (near != nullptr && !near->trace.empty()) {
            start = near->trace.front();
        } else {
            const steady_state mean = steady_state_of(*n_, share_, cold);
            if (mean.what != outcome::solved) {
                out.what = mean.what;
                out.bounded_at = mean.bounded_at;
                return out;
            }
            start = mean.rise;
        }
        std::vector<double> defect(size_), slow(size_), fast(size_);
        double newton = rough;
        for (out.sweeps = 1; out.sweeps <= most_sweeps; ++out.sweeps) {
            const bool choose = out.sweeps <= choose_until;
            if (choose) grid_.clear();
            if (!choose && known_.empty()) known_.resize(grid_.size());
            if (!sweep(start, choose, choose ? rough : newton, out)) {
                if (choose) return out;  // not settled
                choose_until = out.sweeps + 1;
                known_.clear();
                continue;
            }
            double most = 0.0, beyond = -1e300;
            const std::vector<double>& end = out.trace.back();
            for (std::size_t i = 0; i < size_; ++i) {
                defect[i] = end[i] - start[i];
                most = std::max(most, std::fabs(defect[i]));
                if (out.peak[i] - n_->bound()[i] > beyond) {
                    beyond = out.peak[i] - n_->bound()[i];
                    out.bounded_at = i;
                }
            }
            newton = std::clamp(forcing * most, finest, rough);
            if (beyond > lost) break;
            if (most <= settled && !choose) {
                out.what = beyond > 0.0 ? outcome::bounded : outcome::solved;
                sum_up(start, out);
                return out;
            }
            if (!corrected(out.mean, defect, slow, fast)) {
                start = end;
                continue;
            }
            for (std::size_t i = 0; i < size_; ++i) start[i] += slow[i] + defect[i] - 0.5 * fast[i];
        }
        out.what = n_->bound()[out.bounded_at] < out.peak[out.bounded_at] ? outcome::bounded : outcome::not_settled;
        return out;
    }

private:
    // What a departure at the start of the period must be, for the period to end as far from it as it does: one over
    // (1 - exp(-z)), z the rates of the mean balance times the period, by 1/z + 1 - 3/(z + 6) (within 9 % everywhere,
    // exact at both ends).
    [[nodiscard]] bool corrected(const std::vector<double>& mean, const std::vector<double>& defect,
                                 std::vector<double>& slow, std::vector<double>& fast)
    {
        constexpr double pole = 6.0;
        const double period = programme_.on + programme_.rest;
        const std::span<const double> capacity = n_->capacity();
        sparse_lu matrix = n_->pattern();
        std::vector<double> gain(size_);
        n_->evaluate(mean, share_, gain, &matrix);
        sparse_lu shifted = matrix;
        if (!matrix.eliminate()) return false;
        for (std::size_t i = 0; i < size_; ++i) {
            shifted.values()[i] += pole * capacity[i] / period;
            slow[i] = capacity[i] * defect[i] / period;
            fast[i] = pole * slow[i];
        }
        static_cast<void>(shifted.eliminate());
        matrix.solve(slow);
        shifted.solve(fast);
        return true;
    }

    struct grid_step {
        double time, on;
    };

    // Marches one period, and sums up.
    [[nodiscard]] bool sweep(const std::vector<double>& start, bool choose, double newton, periodic_state& out)
    {
        const double period = programme_.on + programme_.rest;
        out.mean.assign(size_, 0.0);
        out.on_mean.assign(size_, 0.0);
        out.peak = start;
        out.times.assign(1, 0.0);
        out.trace.assign(1, start);
        out.steps = 0;
        const auto take = [&](const grid_step& g) {
            for (std::size_t s = 0; s < 3; ++s) {
                const std::vector<double>& x = marcher_.stage(s);
                const double share = marcher::weight[s] * g.time / period;
                for (std::size_t i = 0; i < size_; ++i) {
                    out.mean[i] += share * x[i];
                    out.peak[i] = std::max(out.peak[i], x[i]);
                }
                if (g.on > 0.0)
                    for (std::size_t i = 0; i < size_; ++i) out.on_mean[i] += share * period / programme_.on * x[i];
            }
            out.times.push_back(out.times.back() + g.time);
            out.trace.push_back(marcher_.stage(2));
            ++out.steps;
        };
        if (choose) {
            if (!chosen(start, programme_.on, 1.0, newton, take)) return false;
            if (programme_.rest > 0.0 &&
                !chosen(std::vector<double>(out.trace.back()), programme_.rest, 0.0, newton, take))
                return false;
        } else {
            for (const grid_step& g : grid_) {
                if (!marcher_.step(out.trace.back(), g.on, g.time, newton,
                                   &known_[static_cast<std::size_t>(&g - grid_.data())]))
                    return false;
                take(g);
            }
        }
        return true;
    }

    // Heat over the settled period, from the stages of the last sweep.
    void sum_up(const std::vector<double>& start, periodic_state& out) const
    {
        const double period = programme_.on + programme_.rest;
        std::vector<double> scratch(size_);
        out.source_on.assign(n_->sources().size(), 0.0);
        out.sums = {};
        for (std::size_t k = 0; k < grid_.size(); ++k)
            for (std::size_t s = 0; s < 3; ++s) {
                const double share = marcher::weight[s] * grid_[k].time / period;
                heat_network::totals sums;
                n_->evaluate(known_[k].stage[s], grid_[k].on, scratch, nullptr, &sums);
                out.sums.made += share * sums.made;
                out.sums.lost += share * sums.lost;
                if (grid_[k].on > 0.0)
                    for (std::size_t q = 0; q < out.source_on.size(); ++q)
                        out.source_on[q] += share * period / programme_.on *
                                            n_->heat_of(n_->sources()[q], known_[k].stage[s], false).value;
            }
        double stored = 0.0;
        for (std::size_t i = 0; i < size_; ++i) stored += n_->capacity()[i] * (out.trace.back()[i] - start[i]) / period;
        out.imbalance = (out.sums.made - out.sums.lost - stored) / std::max(1e-300, std::fabs(out.sums.made));
    }

    // A segment in steps that keep the error of each near a bound, remembered for the sweeps that follow.
    template <class Take>
    [[nodiscard]] bool chosen(std::vector<double> x, double whole, double on, double newton, const Take& take)
    {
        constexpr double first_share = 1e-3, smallest = 1e-9;  // of the segment
        constexpr double allowed = 0.3;                        // K
        constexpr double of_rise = 4e-3;                       // of the hottest rise
        constexpr double safety = 0.8, most_growth = 3.0, most_shrinking = 0.2;
        double hottest = 0.0;
        for (const double r : x) hottest = std::max(hottest, std::fabs(r));
        const double tolerance = allowed + of_rise * hottest;
        double at = 0.0, time = first_share * whole;
        while (at < whole) {
            if (at + 1.0001 * time > whole) time = whole - at;
            if (!marcher_.step(x, on, time, newton, nullptr)) {
                time *= most_shrinking;
                if (time < smallest * whole) return false;
                continue;
            }
            const double error = marcher_.error(time);
            const double wanted =
                std::clamp(safety * std::cbrt(tolerance / std::max(error, 1e-12)), most_shrinking, most_growth);
            if (error > 1.5 * tolerance && time > smallest * whole) {
                time *= std::min(wanted, 0.7);
                continue;
            }
            grid_.push_back({time, on});
            take(grid_.back());
            x = marcher_.stage(2);
            at += time;
            if (at >= whole * (1.0 - 1e-12)) break;
            time *= wanted;
        }
        return true;
    }

    const heat_network* n_;
    on_off programme_;
    std::size_t size_;
    marcher marcher_;
    double share_;
    std::vector<grid_step> grid_;
    std::vector<known_step> known_;
};

}  // namespace detail

/// The settled period of a network.
///
/// Steady current: the steady state. Else the state at the start of the current is sought that the period brings back:
/// the whole network is marched through a period, the departure at its end corrected by the mean balance, until nothing
/// moves (1e-4 K). Whether a state exists is judged on the period: a node that passes its bound at the end of an
/// on-time ends it, whatever its mean. Heat made, lost and stored agree to the rounding of the march.
/// @param network closed @param programme of the current @param cold rises of the coldest boundary
/// @param near a settled state of nearly the same network, to begin with, or null
[[nodiscard]] inline periodic_state periodic_state_of(const heat_network& network, const on_off& programme,
                                                      std::span<const double> cold,
                                                      const periodic_state* near = nullptr)
{
    if (programme.rest > 0.0) return detail::period_finder(network, programme)(cold, near);
    const steady_state s = steady_state_of(
        network, 1.0, near != nullptr && !near->trace.empty() ? std::span<const double>(near->trace.front()) : cold);
    if (s.what != outcome::solved && near != nullptr) return periodic_state_of(network, programme, cold);
    periodic_state out;
    out.what = s.what;
    out.bounded_at = s.bounded_at;
    if (s.what != outcome::solved) return out;
    out.mean = out.on_mean = out.peak = s.rise;
    for (const heat_network::source& k : network.sources())
        out.source_on.push_back(network.heat_of(k, s.rise, false).value);
    out.sums = s.sums;
    out.imbalance = (s.sums.made - s.sums.lost) / std::max(1e-300, std::fabs(s.sums.made));
    out.times = {0.0, programme.on};
    out.trace = {s.rise, s.rise};
    out.steps = s.steps;
    return out;
}

}  // namespace weldloop::solve
