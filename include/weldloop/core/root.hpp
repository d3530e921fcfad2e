#pragma once
/// @file
/// The one adapter around the bracketed root finder (Boost.Math TOMS 748). Solvers run on plain doubles; quantities
/// go in and come out at the callers.

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

/// The x between low and high where f changes sign.
/// @param f continuous on [low, high] @param what name of the unknown, for the error
/// @throws no_solution_error if f has the same sign at both ends or is not finite there, for an empty interval, and if
///         the bounded work does not narrow the bracket down
template <class F>
[[nodiscard]] double root_between(const F& f, double low, double high, std::string_view what)
{
    const auto unsolved = [&](const char* found) {
        return no_solution_error(std::string(what), found,
                                 "a solution between " + number_text(low, 6) + " and " + number_text(high, 6));
    };
    const double at_low = f(low);
    const double at_high = f(high);
    if (at_low == 0.0) return low;
    if (at_high == 0.0) return high;
    if (!(low < high) || !std::isfinite(at_low) || !std::isfinite(at_high) || (at_low < 0.0) == (at_high < 0.0))
        throw unsolved("without a solution");
    const double root = bracketed_root(borrowed_function(f), low, high, at_low, at_high);
    if (!std::isfinite(root)) throw unsolved("not found in the bounded number of steps");
    return root;
}

}  // namespace weldloop::detail
