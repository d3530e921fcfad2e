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
/// How far below (or above) 1 the product of two such ratios lies, both at or below 1 (or both at or above it).
inline double combined_ratio(double a, double b, double direction)
{
    if (a == 1.0) return b;
    if (b == 1.0) return a;
    return std::exp(direction * std::hypot(std::log(a), std::log(b)));
}

// The product of bands that are known to be in order and above zero.
inline band<double> product(const band<double>& a, const band<double>& b)
{
    const double typical = a.typical * b.typical;
    return {typical * combined_ratio(a.low / a.typical, b.low / b.typical, -1.0), typical,
            typical * combined_ratio(a.high / a.typical, b.high / b.typical, 1.0)};
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
// A log-normal factor whose two halves have a spread of their own: the logarithm at a standard normal deviate and back.
struct split_log_normal {
    double median, below, above;  // logarithm of the median; standard deviations of the logarithm

    explicit split_log_normal(const band<double>& x)
        : median(std::log(x.typical)), below(-std::log1p((x.low - x.typical) / x.typical) / band_deviations),
          above(std::log1p((x.high - x.typical) / x.typical) / band_deviations)
    {
    }
    double at(double deviate) const { return median + deviate * (deviate < 0.0 ? below : above); }
    // Probability that the logarithm is above a value.
    double beyond(double logarithm) const
    {
        const double away = logarithm - median, spread = away < 0.0 ? below : above;
        if (spread == 0.0) return away < 0.0 ? 1.0 : away > 0.0 ? 0.0 : 0.5;
        return 0.5 * std::erfc(away / (spread * std::numbers::sqrt2));
    }
};
}  // namespace detail

/// Probability that the first of two independent factors is the smaller one.
///
/// Each is a log-normal factor with the 5, 50 and 95 % points of its band, either half with its own spread. Factors
/// without scatter and alike give one half. The sum over the deviates of the first is exact to 1e-6.
/// @param first factor, above zero, in order @param second the other factor, above zero, in order
/// @throws not_finite_error, out_of_range_error @see independent_scatter
[[nodiscard]] inline likelihood probability_smaller(const band<double>& first, const band<double>& second)
{
    const detail::split_log_normal a(require_factor(first, "factor")), b(require_factor(second, "factor"));
    constexpr int steps = 4000;
    constexpr double reach = 8.0;  // deviates on either side
    double sum = 0.0, weight = 0.0;
    for (int i = 0; i < steps; ++i) {
        const double deviate = reach * (2.0 * (i + 0.5) / steps - 1.0);
        const double bell = std::exp(-0.5 * deviate * deviate);
        sum += bell * b.beyond(a.at(deviate));
        weight += bell;
    }
    return std::clamp(sum / weight, 0.0, 1.0);
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
