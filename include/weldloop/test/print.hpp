#pragma once
/// @file
/// How GoogleTest prints the library's types in a failed check: quantities with their unit, temperatures in degC, bands
/// by their points, and whatever has words of its own (verdicts, ids, sizes, duty cycles, ratios) by those.
///
/// Include it in every unit of a test program that prints them, or in none: units that disagree would give one template
/// two meanings.

#include <concepts>
#include <ostream>
#include <string>
#include <string_view>
#include <type_traits>

#include <boost/units/quantity.hpp>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

namespace detail {

/// Digits that tell two values apart which a check found different by more than rounding.
inline constexpr int printed_in_tests = 10;

template <class T>
concept has_words_of_its_own = requires(const T& x)
{
    {
        to_text(x)
        } -> std::convertible_to<std::string_view>;
};

}  // namespace detail

/// Prints what has words: "over limit", "2/0 AWG", "60 % of 10 min". @param x to print @param out where to
template <detail::has_words_of_its_own T>
void PrintTo(const T& x, std::ostream* out)
{
    *out << to_text(x);
}

/// Prints a temperature, "85.25 degC". @param t to print @param out where to
inline void PrintTo(temperature t, std::ostream* out)
{
    *out << to_text(t, "degC", detail::printed_in_tests);
}

}  // namespace weldloop

namespace boost::units {

/// Prints a quantity in its coherent SI unit, "0.0254 m"; found there by the compiler, where the type stands.
/// @param q to print, any @param out where to
template <class Unit>
void PrintTo(const quantity<Unit, double>& q, std::ostream* out)
{
    *out << weldloop::si_text(q, weldloop::detail::printed_in_tests);
}

}  // namespace boost::units

namespace weldloop {

/// Prints the three points of a band, "0.2 V / 0.25 V / 0.4 V". @param b to print, any @param out where to
template <class Q>
void PrintTo(const band<Q>& b, std::ostream* out)
{
    const auto put = [out](const Q& x) {
        if constexpr (std::is_arithmetic_v<Q>)
            *out << x;
        else
            PrintTo(x, out);
    };
    put(b.low);
    *out << " / ";
    put(b.typical);
    *out << " / ";
    put(b.high);
}

}  // namespace weldloop
