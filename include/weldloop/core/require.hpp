#pragma once
/// @file
/// The checks every public function makes of its arguments.

#include <cmath>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

/// @name Argument checks
/// Each returns its argument, so that a check can stand where the value is used.
/// @throws not_finite_error for NaN or infinity, out_of_range_error for a value outside the stated range
/// @{

/// Refuses NaN and infinity.
template <class Q>
const Q& require_finite(const Q& q, std::string_view argument)
{
    if (!std::isfinite(q.value())) throw not_finite_error(std::string(argument), si_text(q));
    return q;
}

/// Zero is refused too.
template <class Q>
const Q& require_positive(const Q& q, std::string_view argument)
{
    require_finite(q, argument);
    if (!(q.value() > 0.0)) throw out_of_range_error(std::string(argument), si_text(q), "above zero");
    return q;
}

/// Zero is allowed.
template <class Q>
const Q& require_not_negative(const Q& q, std::string_view argument)
{
    require_finite(q, argument);
    if (q.value() < 0.0) throw out_of_range_error(std::string(argument), si_text(q), "zero or above");
    return q;
}

/// Both ends are allowed.
template <class Q>
const Q& require_within(const Q& q, const Q& low, const Q& high, std::string_view argument)
{
    require_finite(q, argument);
    if (q < low || q > high)
        throw out_of_range_error(std::string(argument), si_text(q), si_text(low) + " to " + si_text(high));
    return q;
}

/// The same for a plain number, such as a Rayleigh number or a count.
inline double require_within(double x, double low, double high, std::string_view argument)
{
    if (!std::isfinite(x)) throw not_finite_error(std::string(argument), number_text(x));
    if (x < low || x > high)
        throw out_of_range_error(std::string(argument), number_text(x), number_text(low) + " to " + number_text(high));
    return x;
}
/// @}

}  // namespace weldloop
