#pragma once
/// @file
/// The checks every public function makes of its arguments.

#include <cmath>
#include <limits>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

namespace detail {
inline constexpr double greatest_number = std::numeric_limits<double>::max();

// What a failed check says stands apart from the check, so that a check that holds costs two comparisons in place.
template <class Q>
[[noreturn, gnu::noinline, gnu::cold]] void refuse_value(const Q& q, std::string_view argument, const char* allowed)
{
    if (!std::isfinite(q.value())) throw not_finite_error(std::string(argument), si_text(q));
    throw out_of_range_error(std::string(argument), si_text(q), allowed);
}
template <class Q>
[[noreturn, gnu::noinline, gnu::cold]] void refuse_outside(const Q& q, const Q& low, const Q& high,
                                                           std::string_view argument)
{
    if (!std::isfinite(q.value())) throw not_finite_error(std::string(argument), si_text(q));
    throw out_of_range_error(std::string(argument), si_text(q), si_text(low) + " to " + si_text(high));
}
[[noreturn, gnu::noinline, gnu::cold]] inline void refuse_number(double x, std::string_view argument,
                                                                 const char* allowed)
{
    if (!std::isfinite(x)) throw not_finite_error(std::string(argument), number_text(x));
    throw out_of_range_error(std::string(argument), number_text(x), allowed);
}
[[noreturn, gnu::noinline, gnu::cold]] inline void refuse_number_outside(double x, double low, double high,
                                                                         std::string_view argument)
{
    if (!std::isfinite(x)) throw not_finite_error(std::string(argument), number_text(x));
    throw out_of_range_error(std::string(argument), number_text(x), number_text(low) + " to " + number_text(high));
}
}  // namespace detail

/// @name Argument checks
/// Each returns its argument, so that a check can stand where the value is used.
/// @throws not_finite_error for NaN or infinity, out_of_range_error for a value outside the stated range
/// @{

/// Refuses NaN and infinity. @param q any @param argument what it is called in the error
template <class Q>
const Q& require_finite(const Q& q, std::string_view argument)
{
    if (!(std::fabs(q.value()) <= detail::greatest_number)) [[unlikely]]
        detail::refuse_value(q, argument, "a number");
    return q;
}

/// The same for a plain number, such as a Rayleigh number. @param x [its unit], any @param argument as above
inline double require_finite(double x, std::string_view argument)
{
    if (!(std::fabs(x) <= detail::greatest_number)) [[unlikely]]
        detail::refuse_number(x, argument, "a number");
    return x;
}

/// Zero is refused too. @param q above zero, or it is refused @param argument as above
template <class Q>
const Q& require_positive(const Q& q, std::string_view argument)
{
    if (!(q.value() > 0.0 && q.value() <= detail::greatest_number)) [[unlikely]]
        detail::refuse_value(q, argument, "above zero");
    return q;
}

/// The same for a plain number, such as a resistance in ohms inside a solver.
/// @param x [its unit], above zero, or it is refused @param argument as above
inline double require_positive(double x, std::string_view argument)
{
    if (!(x > 0.0 && x <= detail::greatest_number)) detail::refuse_number(x, argument, "above zero");
    return x;
}

/// Zero is allowed. @param q zero or more, or it is refused @param argument as above
template <class Q>
const Q& require_not_negative(const Q& q, std::string_view argument)
{
    if (!(q.value() >= 0.0 && q.value() <= detail::greatest_number)) [[unlikely]]
        detail::refuse_value(q, argument, "zero or above");
    return q;
}

/// The same for a plain number. @param x [its unit], zero or more, or it is refused @param argument as above
inline double require_not_negative(double x, std::string_view argument)
{
    if (!(x >= 0.0 && x <= detail::greatest_number)) detail::refuse_number(x, argument, "zero or above");
    return x;
}

/// Both ends are allowed. @param q within the ends, or it is refused @param low any but infinity
/// @param high any but infinity
/// @param argument as above
template <class Q>
const Q& require_within(const Q& q, const Q& low, const Q& high, std::string_view argument)
{
    if (!(q >= low && q <= high)) [[unlikely]]
        detail::refuse_outside(q, low, high, argument);
    return q;
}

/// The same for a plain number, such as a Rayleigh number or a count.
/// @param x [its unit], within the ends @param low [its unit], any but infinity
/// @param high [its unit], any but infinity
/// @param argument as above
inline double require_within(double x, double low, double high, std::string_view argument)
{
    if (!(x >= low && x <= high)) [[unlikely]]
        detail::refuse_number_outside(x, low, high, argument);
    return x;
}
/// @}

}  // namespace weldloop
