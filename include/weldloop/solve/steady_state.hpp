#pragma once
/// @file
/// The steady state a heat network reaches from the cold, or what keeps it from having one.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/core/require.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop::solve {

/// How a search for a state ended.
enum class outcome {
    solved,       ///< the state is there
    bounded,      ///< on its way some node passed its bound
    not_settled,  ///< neither within the bounded work
};

/// A steady state.
struct steady_state {
    outcome what = outcome::not_settled;             ///< how the search ended
    std::vector<double> rise;                        ///< [K] solved: of every node; else as far as it was followed
    std::size_t bounded_at = heat_network::nowhere;  ///< the node that passed its bound
    heat_network::totals sums;                       ///< heat made and lost [W]
    int steps = 0;                                   ///< taken
};

/// What a search for a steady state begins at.
enum class begins {
    cold,        ///< far off: the network warms from there
    near_state,  ///< the steady state of nearly the same network
};

namespace detail {
// The sum of two lists. In a function of its own a compiler sees that they are apart.
inline void add(const std::vector<double>& one, const std::vector<double>& other, std::vector<double>& sum)
{
    const double* __restrict const a = one.data(), * __restrict const b = other.data();
    double* __restrict const to = sum.data();
    for (std::size_t i = 0, n = sum.size(); i < n; ++i) to[i] = a[i] + b[i];
}
}  // namespace detail

/// Follows a network from a start as it would warm up, in implicit steps of time that grow as it settles, to Newton's
/// steps at its end. What is found is the state the warming leads to; a bound is met only in a small step, so that no
/// overshoot of a long one is taken for it. From a state near by Newton's steps are tried at once, as long as they are
/// short and make the residual smaller; where they do not, the network warms from there.
///
/// Certificate: residual below 1e-12 of the heat made, and positive pivots of the undamped balance there.
/// @param network closed @param on share of the time with current, 0 to 1, which scales what only current does
/// @param start rises to begin with [K], any: those of the coldest boundary for a state reached from the cold
/// @param at what these are @throws not_finite_error, out_of_range_error
[[nodiscard]] inline steady_state steady_state_of(const heat_network& network, double on, std::span<const double> start,
                                                  begins at = begins::cold)
{
    constexpr int most_steps = 600;
    constexpr double longest_step = 60.0;  // K
    constexpr double small_step = 0.02;    // K: at a bound
    constexpr double first_step = 10.0;    // K
    constexpr double residual = 1e-12;     // of the heat made
    constexpr double forever = 1e15;       // s
    constexpr double most_growth = 1.3;    // of the residual in one step
    constexpr double less = 0.25, more = 3.0;
    constexpr double short_step = 10.0;   // K, Newton's near a state
    constexpr double clearly_less = 0.5;  // of the residual, in such a step

    require_within(on, 0.0, 1.0, "share of the time with current");
    network.require_state(start, "rises to begin with");
    const std::size_t n = network.size();
    const std::span<const double> capacity = network.capacity(), bound = network.bound();
    steady_state out;
    out.rise.assign(start.begin(), start.end());
    std::vector<double> gain(n), next(n), next_gain(n), step(n);
    sparse_lu matrix = network.pattern(), slopes = matrix;
    const auto norm = [](const std::vector<double>& g) {
        double sum = 0.0;
        for (const double w : g) sum += std::fabs(w);
        return sum;
    };
    network.evaluate(out.rise, on, gain, &slopes);
    double now = norm(gain);
    const auto fastest = [&] {
        double most = 0.0;
        for (std::size_t i = 0; i < n; ++i) most = std::max(most, std::fabs(gain[i]) / capacity[i]);
        return most;
    };
    if (fastest() == 0.0) {
        out.what = outcome::solved;
        out.sums = network.totals_at(out.rise, on);
        return out;
    }
    bool is_near = at == begins::near_state;
    double time = is_near ? forever : first_step / fastest();
    const auto warm = [&] {  // from the start
        is_near = false;
        out.rise.assign(start.begin(), start.end());
        network.evaluate(out.rise, on, gain, &slopes);
        now = norm(gain);
        time = first_step / fastest();
    };
    while (out.steps < most_steps) {
        ++out.steps;
        matrix = slopes;
        for (std::size_t i = 0; i < n; ++i) matrix.values()[i] += capacity[i] / time;
        const bool stable = matrix.eliminate();
        step = gain;
        matrix.solve(step);
        double longest = 0.0;
        for (const double d : step) longest = longest < std::fabs(d) ? std::fabs(d) : longest;
        if (is_near && !(stable && longest <= short_step)) {
            warm();
            continue;
        }
        if (!stable || !std::isfinite(longest)) {
            time *= less;
            continue;
        }
        if (longest > longest_step) {
            time *= std::max(0.02, 0.7 * longest_step / longest);
            continue;
        }
        detail::add(out.rise, step, next);
        std::size_t passed = heat_network::nowhere;
        for (std::size_t i = 0; i < n; ++i)
            if (next[i] > bound[i]) passed = i;
        if (is_near && passed != heat_network::nowhere) {
            warm();
            continue;
        }
        if (passed != heat_network::nowhere) {
            if (longest <= small_step) {
                out.what = outcome::bounded;
                out.bounded_at = passed;
                return out;
            }
            time *= less;
            continue;
        }
        network.evaluate(next, on, next_gain, &matrix);
        const double then = norm(next_gain);
        if (is_near && then > clearly_less * now && longest > small_step) {
            warm();
            continue;
        }
        if (then > most_growth * now && longest > small_step &&
            then > 1e-6 * (network.totals_at(next, on).made + 1e-300)) {
            time *= less;
            continue;
        }
        out.rise.swap(next);
        gain.swap(next_gain);
        std::swap(slopes, matrix);
        if (time >= forever) {
            out.sums = network.totals_at(out.rise, on);
            // else rounding leaves no smaller residual
            if (then <= residual * (std::fabs(out.sums.made) + std::fabs(out.sums.lost)) ||
                longest <= 1e-11 * (1.0 + std::fabs(*std::max_element(out.rise.begin(), out.rise.end())))) {
                out.what = outcome::solved;
                return out;
            }
        }
        time = std::min(forever, time * std::clamp(2.0 * now / std::max(then, 1e-300), more, 1e4));
        now = then;
    }
    return out;
}

}  // namespace weldloop::solve
