#pragma once
/// @file
/// A quantity that scatters, by its 5, 50 and 95 % points.

#include <utility>

namespace weldloop {

namespace detail {
/// Standard deviations from the median of a normal distribution to its 5 and 95 % points, exact to rounding.
inline constexpr double band_deviations = 1.6448536269514722;
}  // namespace detail

/// The 5, 50 and 95 % points of something that scatters from joint to joint. `low` is the small value, whatever is
/// good or bad for the user.
template <class Q>
struct band {
    Q low{};      ///< any, the 5 % point
    Q typical{};  ///< any, the median
    Q high{};     ///< any, the 95 % point

    /// All three points alike.
    friend bool operator==(const band&, const band&) = default;
};

/// A band without scatter. @param value any
template <class Q>
[[nodiscard]] constexpr band<Q> exactly(const Q& value)
{
    return {value, value, value};
}

/// The band of f(x) for a monotone f: a falling f swaps the ends, so that `low` stays the small one.
/// @param x any @param f what is asked of each point
template <class Q, class F>
[[nodiscard]] constexpr auto mapped(const band<Q>& x, F&& f)
{
    auto a = f(x.low);
    auto b = f(x.typical);
    auto c = f(x.high);
    if (c < a) std::swap(a, c);
    return band<decltype(b)>{a, b, c};
}

}  // namespace weldloop
