#pragma once
/// @file
/// Quantities that scatter independently of each other: their products, and which of two is smaller.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Logarithms of independent factors add by their squares.
inline constexpr source independent_scatter{
    "product of independent log-normal factors: the logarithmic distances from the median add as squares",
    {},
    "exact for log-normal factors; each side of a skewed band is taken by itself",
    source_kind::derived};

namespace detail {
// Where both scatter; kept apart, so that where one does not the rest is a few instructions in place.
[[gnu::noinline]] inline double both_ratios(double a, double b, double direction)
{
    return std::exp(direction * std::hypot(std::log(a), std::log(b)));
}

/// How far below (or above) 1 the product of two ratios of an end to a middle lies, both at or below 1 (or both at or
/// above it).
inline double combined_ratio(double a_end, double a_middle, double b_end, double b_middle, double direction)
{
    if (a_end == a_middle) return b_end / b_middle;
    if (b_end == b_middle) return a_end / a_middle;
    return both_ratios(a_end / a_middle, b_end / b_middle, direction);
}

// The product of bands that are known to be in order and above zero.
inline band<double> product(const band<double>& a, const band<double>& b)
{
    const double typical = a.typical * b.typical;
    return {typical * combined_ratio(a.low, a.typical, b.low, b.typical, -1.0), typical,
            typical * combined_ratio(a.high, a.typical, b.high, b.typical, 1.0)};
}
}  // namespace detail

/// Refuses a band of factors that is not above zero or not in order.
/// @param x factors, above 0 and in order @param argument what they are called in the error
/// @throws not_finite_error, out_of_range_error
inline const band<double>& require_factor(const band<double>& x, std::string_view argument)
{
    require_within(x.low, 0.0, std::numeric_limits<double>::max(), argument);
    require_within(x.typical, x.low, std::numeric_limits<double>::max(), argument);
    require_within(x.high, x.typical, std::numeric_limits<double>::max(), argument);
    if (!(x.low > 0.0)) throw out_of_range_error(std::string(argument), number_text(x.low), "above zero");
    return x;
}

/// The band of the product of two independent factors: medians multiply, and on either side
/// ln(end/median) = sqrt(ln(a end/a median)^2 + ln(b end/b median)^2).
/// A factor without scatter multiplies the other as it stands. Multiplying the ends themselves would make a band
/// that only one joint in four hundred leaves on either side.
/// @param a factor, above zero, in order low <= typical <= high @param b the other factor, as `a`: above zero
/// @throws not_finite_error, out_of_range_error @see independent_scatter
[[nodiscard]] inline band<double> product_of(const band<double>& a, const band<double>& b)
{
    const band<double> out = detail::product(require_factor(a, "factor"), require_factor(b, "factor"));
    require_positive(out.low, "product of factors");
    require_finite(out.high, "product of factors");
    return out;
}

namespace detail {
// A log-normal factor whose two halves have a spread of their own.
struct split_log_normal {
    double median, below, above;  // logarithm of the median; standard deviations of the logarithm

    explicit split_log_normal(const band<double>& x)
        : median(std::log(x.typical)), below(-std::log1p((x.low - x.typical) / x.typical) / band_deviations),
          above(std::log1p((x.high - x.typical) / x.typical) / band_deviations)
    {
    }
};

// Probability that two independent normal deviates lie beyond a straight line at a distance from zero, in the angle
// between two directions measured from the line's normal, -pi/2 to pi/2: (1/2 pi) times the integral of
// exp(-distance^2/ (2 cos^2)), by the double exponential rule, whose places crowd where the line goes out of reach:
// 1e-11.
[[nodiscard]] inline double beyond_line(double distance, double from, double to)
{
    const double half = 0.5 * (to - from), middle = 0.5 * (to + from);
    if (distance == 0.0) return half / std::numbers::pi;
    constexpr int places = 100;  // on either side of the middle
    constexpr double reach = 3.2;
    double sum = 0.0, weights = 0.0;
    for (int k = -places; k <= places; ++k) {
        const double t = reach * k / places, u = 0.5 * std::numbers::pi * std::sinh(t), across = std::cosh(u);
        const double weight = std::cosh(t) / (across * across);
        const double over = distance / std::cos(middle + half * std::tanh(u));
        sum += weight * std::exp(-0.5 * over * over);
        weights += weight;
    }
    return half / std::numbers::pi * sum / weights;
}

// Of one factor over another whose median is `apart` larger, 0 or more, in logarithms: the probability that it is the
// larger one all the same. Quarter by quarter of the two deviates, in which both logarithms are straight; what is equal
// counts half.
[[nodiscard]] inline double larger_all_the_same(const split_log_normal& a, const split_log_normal& b, double apart)
{
    const auto equal = [apart](double one, double other) { return apart == 0.0 && one == 0.0 && other == 0.0; };
    constexpr double half_of_a_quarter = 0.125;
    const auto ahead = [&](double up, double against) {  // both work against each other
        if (equal(up, against)) return half_of_a_quarter;
        if (up == 0.0) return 0.0;
        return beyond_line(apart / std::hypot(up, against), std::atan2(against, up), 0.5 * std::numbers::pi);
    };
    const auto together = [&](double up, double down) {
        if (equal(up, down)) return half_of_a_quarter;
        const double size = std::hypot(up, down), turn = std::atan2(down, up);
        return size == 0.0 ? 0.0 : beyond_line(apart / size, turn - 0.5 * std::numbers::pi, turn);
    };
    const double neither = equal(a.below, b.above) ? half_of_a_quarter : 0.0;
    return together(a.above, b.below) + ahead(a.above, b.above) + ahead(b.below, a.below) + neither;
}
}  // namespace detail

/// Probability that the first of two independent factors is the smaller one.
///
/// Each is a log-normal factor with the 5, 50 and 95 % points of its band, either half with its own spread. What is
/// equal counts half: factors without scatter and alike give one half. Exact to 1e-10.
/// @param first factor, above zero, in order @param second the other factor, above zero, in order
/// @throws not_finite_error, out_of_range_error @see independent_scatter
[[nodiscard]] inline likelihood probability_smaller(const band<double>& first, const band<double>& second)
{
    const detail::split_log_normal a(require_factor(first, "factor")), b(require_factor(second, "factor"));
    const double apart = b.median - a.median;
    return std::clamp(apart >= 0.0 ? 1.0 - detail::larger_all_the_same(a, b, apart)
                                   : detail::larger_all_the_same(b, a, -apart),
                      0.0, 1.0);
}

/// Probability that a joint with the first surface has less resistance than one with the second, between the same
/// metals at the same force, from the bands of both states (judgement, so this is too).
///
/// Clean is better than light rust in 94 of 100 pairs, better than light oxide in 79; unbroken paint loses against
/// everything, and against itself nobody wins: one half.
/// @param first one state @param second the other
/// @see probability_smaller(), surface_state_judgement
[[nodiscard]] inline likelihood probability_better(surface_state first, surface_state second)
{
    const auto one = resistance_multiplier(first), other = resistance_multiplier(second);
    if (!one || !other) return !one && !other ? 0.5 : one ? 1.0 : 0.0;
    return probability_smaller(*one, *other);
}

}  // namespace weldloop
