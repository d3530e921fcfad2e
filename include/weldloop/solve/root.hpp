#pragma once
/// @file
/// Roots between two ends: the one adapter around the bracketed root finder (Boost.Math TOMS 748), and Newton's rule
/// kept inside a bracket for functions that know their slope. Plain doubles; quantities go in and come out at the
/// callers.

#include <cmath>
#include <cstdint>
#include <limits>
#include <string>
#include <string_view>

#include <boost/math/tools/toms748_solve.hpp>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>

namespace weldloop::detail {

inline constexpr int root_binary_digits = 44;           // relative width of the final bracket, about 6e-14
inline constexpr std::uintmax_t root_most_steps = 200;  // bounded work; a smooth bracketed function takes 5 to 12
inline constexpr double root_agreement = 1.0 / (std::uint64_t{1} << root_binary_digits);  // the same as a share

// A borrowed function of one number. The root finder is instantiated for this type alone: a copy for every caller's
// lambda costs seconds of compile time and gains nothing, since a call of f dwarfs the indirection.
class borrowed_function {
public:
    template <class F>
    explicit borrowed_function(F& f)
        : object_(&f), call_([](const void* object, double x) -> double { return (*static_cast<const F*>(object))(x); })
    {
    }
    double operator()(double x) const { return call_(object_, x); }

private:
    const void* object_;
    double (*call_)(const void*, double);
};

// NaN if the bounded work did not narrow the bracket down.
[[nodiscard]] inline double bracketed_root(const borrowed_function& f, double low, double high, double at_low,
                                           double at_high)
{
    std::uintmax_t steps = root_most_steps;
    const auto bracket = boost::math::tools::toms748_solve(
        f, low, high, at_low, at_high, boost::math::tools::eps_tolerance<double>(root_binary_digits), steps);
    return steps < root_most_steps ? 0.5 * (bracket.first + bracket.second) : std::numeric_limits<double>::quiet_NaN();
}

[[noreturn, gnu::noinline, gnu::cold]] inline void refuse_root(std::string_view what, const char* found, double low,
                                                               double high)
{
    throw no_solution_error(std::string(what), found,
                            "a solution between " + number_text(low, 6) + " and " + number_text(high, 6));
}

/// The x between low and high where f changes sign.
/// @param f continuous on [low, high] @param what name of the unknown, for the error
/// @throws no_solution_error if f has the same sign at both ends or is not finite there, for an empty interval, and if
///         the bounded work does not narrow the bracket down
template <class F>
[[nodiscard]] double root_between(const F& f, double low, double high, std::string_view what)
{
    const double at_low = f(low);
    const double at_high = f(high);
    if (at_low == 0.0) return low;
    if (at_high == 0.0) return high;
    if (!(low < high) || !std::isfinite(at_low) || !std::isfinite(at_high) || (at_low < 0.0) == (at_high < 0.0))
        refuse_root(what, "without a solution", low, high);
    const double root = bracketed_root(borrowed_function(f), low, high, at_low, at_high);
    if (!std::isfinite(root)) refuse_root(what, "not found in the bounded number of steps", low, high);
    return root;
}

/// A function's value and its slope at one place.
struct value_and_slope {
    double value, slope;
};

/// The x between low and high where a rising function is zero, by Newton's rule kept inside what is left of the
/// interval.
///
/// The ends are asked only where a step leads out of the interval or does not halve the one before. Ends when a step,
/// or what steps that shrink as Newton's do leave to the next one, is below root_agreement of x; a smooth function
/// from a near guess takes 3 calls. Where the slope has a step the rule still finds the root, in a few calls more.
/// @param f called with x, returns a value_and_slope; continuous and rising on [low, high]; a slope that is wrong by a
/// factor costs calls, and as many times the agreement
/// @param first guess; one outside the interval, or NaN, is replaced by the middle @param what name of the unknown
/// @throws no_solution_error for an empty interval, for a function that has no sign change or is not a number where it
///         is asked, and if the bounded work does not find the root
template <class F>
[[nodiscard]] double rising_root(const F& f, double low, double high, double first, std::string_view what)
{
    const double lowest = low, highest = high;
    if (!(low < high)) refuse_root(what, "without a solution", lowest, highest);
    bool low_was_asked = false, high_was_asked = false;
    double x = first > low && first < high ? first : 0.5 * (low + high);
    double step_before = 0.0;  // of Newton's rule; 0 where the last was another
    for (std::uintmax_t step = 0; step < root_most_steps; ++step) {
        const value_and_slope at = f(x);
        if (at.value == 0.0) return x;
        const bool below = at.value < 0.0;
        (below ? low : high) = x;

        const double change = -at.value / at.slope, size = std::fabs(change), next = x + change;
        if (next >= low && next <= high && (step_before == 0.0 || size <= 0.5 * step_before)) {
            const double close = root_agreement * std::fabs(next);
            if (size <= close || size * size <= close * step_before) return next;
            x = next;
            step_before = size;
            continue;
        }
        if (std::isnan(at.value) || x == (below ? highest : lowest))
            refuse_root(what, "without a solution", lowest, highest);
        step_before = 0.0;
        bool& was_asked = below ? high_was_asked : low_was_asked;
        if (!was_asked && (below ? high == highest : low == lowest)) {
            was_asked = true;
            x = below ? highest : lowest;
            continue;
        }
        x = 0.5 * (low + high);
        if (high - low <= root_agreement * std::fabs(x)) return x;
    }
    refuse_root(what, "not found in the bounded number of steps", lowest, highest);
}

}  // namespace weldloop::detail
