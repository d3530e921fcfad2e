#pragma once
/// @file
/// Bessel functions of the standard library, and Boost's for a library that lacks them (libc++).

#include <version>

#if defined(__cpp_lib_math_special_functions) || defined(__STDCPP_MATH_SPEC_FUNCS__)
#include <cmath>
#else
#include <boost/math/special_functions/bessel.hpp>
#endif

namespace weldloop::solve {

/// J_order(x), cylindrical, of the first kind. @param order number, 0 or more @param x [1], 0 or more @return [1]
[[nodiscard]] inline double bessel_j(double order, double x)
{
#if defined(__cpp_lib_math_special_functions) || defined(__STDCPP_MATH_SPEC_FUNCS__)
    return std::cyl_bessel_j(order, x);
#else
    return boost::math::cyl_bessel_j(order, x);
#endif
}

/// K_order(x), modified, of the second kind [1].
/// @param order number, 0 or more @param x [1], above 0, at most 700: beyond, it underflows
[[nodiscard]] inline double bessel_k(double order, double x)
{
#if defined(__cpp_lib_math_special_functions) || defined(__STDCPP_MATH_SPEC_FUNCS__)
    return std::cyl_bessel_k(order, x);
#else
    return boost::math::cyl_bessel_k(order, x);
#endif
}

}  // namespace weldloop::solve
