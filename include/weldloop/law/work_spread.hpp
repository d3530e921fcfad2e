#pragma once
/// @file
/// How much hotter or colder than its mean a piece of work is at some distance from the weld that heats it.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/solve/bessel.hpp>

namespace weldloop {

/// Heat from a weld in the middle of a piece without heat at its edges, from the cold.
inline constexpr source conduction_from_the_middle{
    "heat conduction in a bar and in a disc with insulated edges and an even loss, from the cold: Fourier and "
    "Fourier-Bessel series",
    {},
    "as in any textbook of heat conduction",
    source_kind::derived};

/// A rise by a watt of the weld in the mean over the stay [K/W]; over a piece's mean it may be negative: colder.
struct rise_by_watt {
    double mean = 0.0;      ///< [K/W] in the mean over the piece's stay, any
    double end = 0.0;       ///< [K/W] at the end of it, any
    double arc_ends = 0.0;  ///< [K/W] when the arc goes out for the last time in it
};

/// A piece that is heated for a stay, by an arc that burns from its beginning on and again in every period.
struct heated_stay {
    weldloop::metal metal;          ///< of the piece
    heat_capacity capacity = {};    ///< [J/K] above 0
    thermal_conductance loss = {};  ///< [W/K] from all of its surface, 0 or above
    duration stay = {};             ///< [s] above 0
    duration on = {};               ///< [s] the arc burns in each period, above 0
    duration period = {};           ///< [s] at least `on`
};

namespace detail {

// Of a mode that begins at none and dies away at a rate, what the arc's bursts leave by a watt in the mean over the
// stay, times its capacity [s].
class mode_over_stay {
public:
    explicit mode_over_stay(const heated_stay& s)
        : stay_(s.stay.value()), on_(std::min(s.on.value(), stay_)), period_(s.period.value())
    {
        constexpr double rounding = 1e-9;  // of a period: a burst that begins as the stay ends is none
        bursts_ = std::floor(std::max(0.0, stay_ - on_) / period_ + rounding) + 1.0;
        const double next = bursts_ * period_;
        rest_ = std::max(0.0, stay_ - next) < rounding * period_ ? 0.0 : stay_ - next;
        burning_ = bursts_ * on_ + rest_;
    }
    // @param rate [1/s], 0 or above
    [[nodiscard]] rise_by_watt at(double rate) const
    {
        constexpr double small = 1e-5;  // of the stay: below it by a series, to 1e-10 as the differences above it
        if (rate * stay_ < small) return nearly_kept(rate);
        const double one = -std::expm1(-rate * on_) / rate;
        const double all = one * std::expm1(-rate * period_ * bursts_) / std::expm1(-rate * period_);
        const double at_last_full = all * std::exp(-rate * (stay_ - (bursts_ - 1.0) * period_ - on_));
        const double left = at_last_full - (rest_ > 0.0 ? std::expm1(-rate * rest_) / rate : 0.0);
        const double when_out = rest_ > 0.0 ? left : all;
        return {(burning_ - left) / (rate * burning_), left / share(), when_out / share()};
    }
    [[nodiscard]] double share() const { return burning_ / stay_; }  // of the stay in which the arc burns
    [[nodiscard]] bool burns_at_end() const { return rest_ > 0.0 || on_ >= period_ || on_ >= stay_; }

private:
    // The same where little has died away: of each moment of burning, the time u before some end by its mean, and u^2.
    [[nodiscard]] rise_by_watt nearly_kept(double rate) const
    {
        const double n = bursts_, gaps = 0.5 * n * (n - 1.0);
        const double squares = gaps * (2.0 * n - 1.0) / 3.0;    // of 0 to n - 1
        const double last = stay_ - (n - 1.0) * period_ - on_;  // from the end of the last full burst
        // over all full bursts, counted from a moment so long after the last of them
        const auto first = [&](double after) { return on_ * (n * (after + 0.5 * on_) + gaps * period_); };
        const double second = on_ * (n * (last * (last + on_) + on_ * on_ / 3.0) + gaps * period_ * (2.0 * last + on_) +
                                     squares * period_ * period_);
        const double all_first = first(last) + 0.5 * rest_ * rest_, all_second = second + rest_ * rest_ * rest_ / 3.0;
        const double end = burning_ - rate * all_first;
        const double when_out = rest_ > 0.0 ? end : burning_ - rate * first(0.0);
        return {(all_first - 0.5 * rate * all_second) / burning_, end / share(), when_out / share()};
    }

    double stay_, on_, period_, bursts_ = 0.0, rest_ = 0.0, burning_ = 0.0;
};

// Of stays and pieces that no number fits the sums overflow.
inline const rise_by_watt& require_finite_rise(const rise_by_watt& r)
{
    for (const double x : {r.mean, r.end, r.arc_ends}) require_finite(x, "rise by a watt");
    return r;
}

inline void require_stay(const heated_stay& s)
{
    require_positive(s.capacity, "heat capacity");
    require_not_negative(s.loss, "loss");
    require_positive(s.stay, "stay of the workpiece");
    require_positive(s.on, "time the arc burns");
    require_positive(s.period, "duty period");
    if (s.on > s.period)
        throw out_of_range_error("time the arc burns", si_text(s.on),
                                 "at most the duty period of " + si_text(s.period));
}
[[nodiscard]] inline double diffusivity_of(const metal& m)
{
    return (m.thermal_conductivity / m.heat_per_volume()).value();
}

// A sum over modes that is known where all are settled. Quick modes are settled while the arc burns and gone when it
// does not: what each departs by dies away with its number.
class settled_sum {
public:
    // @param settled [K/W]
    settled_sum(const heated_stay& s, double settled)
        : mode_(s), burning_(1.0 / mode_.share()), at_end_(mode_.burns_at_end() ? burning_ : 0.0),
          loss_(s.loss.value() / s.capacity.value()), rise_{settled, at_end_ * settled, burning_ * settled}
    {
    }
    // @param even rate of a mode without loss [1/s] @param shape its share [K/J]
    void add(double even, double shape)
    {
        const rise_by_watt there = mode_.at(even + loss_);
        rise_.mean += shape * (there.mean - 1.0 / even);
        rise_.end += shape * (there.end - at_end_ / even);
        rise_.arc_ends += shape * (there.arc_ends - burning_ / even);
    }
    [[nodiscard]] const rise_by_watt& rise() const { return require_finite_rise(rise_); }

private:
    mode_over_stay mode_;
    double burning_, at_end_, loss_;
    rise_by_watt rise_;
};

// Zero of J1, n from 1: by McMahon, whose first is 7e-5 off and whose fourth 2e-8, the first ones by a step of Newton's
// from there.
[[nodiscard]] inline double zero_of_j1(int n)
{
    constexpr int near = 3;
    const double b = (n + 0.25) * std::numbers::pi, e = 1.0 / (8.0 * b);
    const double alpha = b - 3.0 * e + 12.0 * e * e * e - 1179.0 * 32.0 * e * e * e * e * e / 5.0;
    if (n > near) return alpha;
    const double there = solve::bessel_j(1.0, alpha);
    return alpha - there / (solve::bessel_j(0.0, alpha) - there / alpha);
}

}  // namespace detail

/// Along a bar or tube welded across its middle, T - T_mean by a watt: sum over j of 2 cos(2 pi j x/L)/(C lambda_j)
/// times what is there of the mode, lambda_j = a (2 pi j/L)^2 + G/C; the settled sum without loss is
/// L^2/(2 a C) (1/6 - x/L + (x/L)^2) and counts as such.
/// @param s capacity C, loss G and stay @param bar its length L [m], above 0 @param away x [m] along it from the weld,
/// 0 or above; beyond the end it counts as the end
/// @throws not_finite_error, out_of_range_error. Accuracy: 1e-6 of the settled rise at the weld, L^2/(12 a C), for a
/// stay of 1e-3 L^2/a or longer
[[nodiscard]] inline rise_by_watt bar_over_mean(const heated_stay& s, length bar, length away)
{
    detail::require_stay(s);
    require_positive(bar, "length of the workpiece");
    require_not_negative(away, "distance from the weld");
    const double x = std::min(away / bar, decltype(away / bar)(0.5)).value(), C = s.capacity.value();
    const double by_length = detail::diffusivity_of(s.metal) / (bar.value() * bar.value());
    detail::settled_sum out(s, (1.0 / 6.0 - x + x * x) / (2.0 * by_length * C));
    constexpr int modes = 300;
    for (int j = 1; j <= modes; ++j) {
        const double turn = 2.0 * std::numbers::pi * j;
        out.add(by_length * turn * turn, 2.0 * std::cos(turn * x) / C);
    }
    return out.rise();
}

/// In a disc welded in its middle, T - T_mean by a watt: with the zeros alpha_n of J1 the sum of J0(alpha_n r/R)/
/// J0(alpha_n)^2/(C lambda_n) times what is there of the mode, lambda_n = a (alpha_n/R)^2 + G/C; the settled sum
/// without loss is (ln(R/r) + r^2/(2 R^2) - 3/4)/(2 pi k d) and counts as such.
/// @param s capacity C, loss G and stay @param thickness d [m], above 0 @param rim R [m], above 0
/// @param away r [m] from the middle, above 0; beyond the rim it counts as the rim
/// @throws not_finite_error, out_of_range_error. Accuracy: 5e-5 of 1/(2 pi k d) for a stay of 0.02 R^2/a or longer
[[nodiscard]] inline rise_by_watt disc_over_mean(const heated_stay& s, length thickness, length rim, length away)
{
    detail::require_stay(s);
    require_positive(thickness, "thickness");
    require_positive(rim, "radius of the workpiece");
    require_positive(away, "distance from the weld");
    const double over = std::min(away.value() / rim.value(), 1.0), C = s.capacity.value();
    constexpr double mean_of_disc = 0.75;
    detail::settled_sum out(s, (0.5 * over * over - std::log(over) - mean_of_disc) /
                                   (2.0 * std::numbers::pi * (s.metal.thermal_conductivity * thickness).value()));
    constexpr int modes = 60;
    for (int n = 1; n <= modes; ++n) {
        const double alpha = detail::zero_of_j1(n), k = alpha / rim.value(), at_rim = solve::bessel_j(0.0, alpha);
        out.add(detail::diffusivity_of(s.metal) * k * k, solve::bessel_j(0.0, alpha * over) / (at_rim * at_rim * C));
    }
    return out.rise();
}

/// A body heated over a stay, losing heat to the air: what its mean and its end are.
struct stay_heating {
    thermal_conductance exchange = {};  ///< [W/K] over the mean, that takes away what the piece leaves with
    double end_over_mean = 2.0;         ///< ratio of the rise at the end of the stay to that in the mean
    rise_by_watt rise = {};             ///< of the body [K/W]
};
/// The body itself: with x = G stay/C under even heat end/mean = x (1 - e^-x)/(x - 1 + e^-x), 2 for a short stay, 1 for
/// a long one; heat that comes early in each period lowers it. What pieces carry away over the mean is C/stay times
/// that.
/// @param s capacity C, loss G, stay and arc @throws not_finite_error, out_of_range_error. Accuracy: 1e-10, for a stay
/// of 1e-5 of C/G; better elsewhere
[[nodiscard]] inline stay_heating heating_over_stay(const heated_stay& s)
{
    detail::require_stay(s);
    const double C = s.capacity.value();
    const rise_by_watt body = detail::mode_over_stay(s).at(s.loss.value() / C);
    const double ratio = require_finite(body.end / body.mean, "end over mean");
    return {require_finite(thermal_conductance(ratio * s.capacity / s.stay), "conductance of the stay"), ratio,
            detail::require_finite_rise({body.mean / C, body.end / C, body.arc_ends / C})};
}

}  // namespace weldloop
