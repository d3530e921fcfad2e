#pragma once
/// @file
/// What Boost.Units leaves out between quantities: whole numbers as factors, and a sentence from the compiler, not a
/// list of candidates, for the commonest mistakes.
///
/// The operators stand in Boost's namespace, because that is where the compiler looks for operators of its quantities;
/// each takes quantities in SI units only, where Boost has none that fits.

#include <concepts>

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/base.hpp>

namespace boost::units {

namespace weldloop_detail {

template <class N>
concept exact_in_double = (std::integral<N> || std::same_as<N, float>)&&!std::same_as<N, bool>;

template <class Kind>
using si_quantity = quantity<unit<Kind, si::system>, double>;

/// Never made: what a deleted operator would return is what the compiler prints.
struct two_kinds_of_quantity_have_no_sum {};
struct two_kinds_of_quantity_have_no_difference {};
struct two_kinds_of_quantity_cannot_be_compared {};

}  // namespace weldloop_detail

/// @name Whole numbers and floats as factors: 3 * 1_min
/// @{
template <weldloop_detail::exact_in_double N, class Unit>
[[nodiscard]] constexpr quantity<Unit, double> operator*(N factor, const quantity<Unit, double>& q)
{
    return quantity<Unit, double>::from_value(static_cast<double>(factor) * q.value());
}
template <weldloop_detail::exact_in_double N, class Unit>
[[nodiscard]] constexpr quantity<Unit, double> operator*(const quantity<Unit, double>& q, N factor)
{
    return factor * q;
}
template <weldloop_detail::exact_in_double N, class Unit>
[[nodiscard]] constexpr quantity<Unit, double> operator/(const quantity<Unit, double>& q, N divisor)
{
    return quantity<Unit, double>::from_value(q.value() / static_cast<double>(divisor));
}
template <weldloop_detail::exact_in_double N, class Unit>
[[nodiscard]] constexpr auto operator/(N factor, const quantity<Unit, double>& q)
{
    return static_cast<double>(factor) / q;
}
/// @}

/// @name Deleted: amperes and volts have no sum
/// @{
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_have_no_sum operator+(const weldloop_detail::si_quantity<A>&,
                                                             const weldloop_detail::si_quantity<B>&) = delete;
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_have_no_difference operator-(const weldloop_detail::si_quantity<A>&,
                                                                    const weldloop_detail::si_quantity<B>&) = delete;
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_cannot_be_compared operator<(const weldloop_detail::si_quantity<A>&,
                                                                    const weldloop_detail::si_quantity<B>&) = delete;
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_cannot_be_compared operator>(const weldloop_detail::si_quantity<A>&,
                                                                    const weldloop_detail::si_quantity<B>&) = delete;
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_cannot_be_compared operator<=(const weldloop_detail::si_quantity<A>&,
                                                                     const weldloop_detail::si_quantity<B>&) = delete;
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_cannot_be_compared operator>=(const weldloop_detail::si_quantity<A>&,
                                                                     const weldloop_detail::si_quantity<B>&) = delete;
template <class A, class B>
    requires(!std::same_as<A, B>)
weldloop_detail::two_kinds_of_quantity_cannot_be_compared operator==(const weldloop_detail::si_quantity<A>&,
                                                                     const weldloop_detail::si_quantity<B>&) = delete;
/// @}

}  // namespace boost::units
