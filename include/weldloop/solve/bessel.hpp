#pragma once
/// @file
/// Bessel functions of the standard library, and Boost's for a library that lacks them (libc++).

#include <version>

#if defined(__cpp_lib_math_special_functions) || defined(__STDCPP_MATH_SPEC_FUNCS__)
#include <cmath>
#else
#include <boost/math/special_functions/bessel.hpp>
#endif

#include <weldloop/core/require.hpp>

namespace weldloop::solve {

namespace detail {
// Orders between, of small arguments, come as no number from libstdc++.
inline void require_bessel_order(double order)
{
    if (order != 1.0) require_within(order, 0.0, 0.0, "order of a Bessel function, which is not 1");
}
}  // namespace detail

/// J_order(x), cylindrical, of the first kind [1]. @param order number, 0 to 1: either, nothing between
/// @param x [1], 0 to 10000, as the time it takes grows with it @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double bessel_j(double order, double x)
{
    constexpr double largest = 1e4, first_term_is_all = 1e-150;
    detail::require_bessel_order(order);
    require_within(x, 0.0, largest, "argument of a Bessel function");
    if (x < first_term_is_all) return order == 0.0 ? 1.0 : 0.5 * x;  // libstdc++ has no number for the least of all
#if defined(__cpp_lib_math_special_functions) || defined(__STDCPP_MATH_SPEC_FUNCS__)
    return std::cyl_bessel_j(order, x);
#else
    return boost::math::cyl_bessel_j(order, x);
#endif
}

/// K_order(x), modified, of the second kind [1].
/// @param order number, 0 to 1: either, nothing between
/// @param x [1], 1e-300 to 700: on either side it leaves the numbers there are
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double bessel_k(double order, double x)
{
    constexpr double least = 1e-300, most = 700.0;
    detail::require_bessel_order(order);
    require_within(x, least, most, "argument of a Bessel function");
#if defined(__cpp_lib_math_special_functions) || defined(__STDCPP_MATH_SPEC_FUNCS__)
    return std::cyl_bessel_k(order, x);
#else
    return boost::math::cyl_bessel_k(order, x);
#endif
}

}  // namespace weldloop::solve
