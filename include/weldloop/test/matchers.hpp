#pragma once
/// @file
/// Matchers for tests of programs that use the library: EXPECT_THAT(drop, near_quantity(1.25_V, 10_mV)). They need
/// GoogleTest's headers (1.12 or later) and nothing else of it; what fails is printed with its unit.

#include <ostream>
#include <string>
#include <type_traits>
#include <utility>

#include <boost/units/quantity.hpp>
#include <gtest/gtest-matchers.h>

#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/test/print.hpp>

namespace weldloop::detail {

template <class Q>
[[nodiscard]] std::string printed(const Q& x)
{
    if constexpr (std::is_same_v<Q, temperature>)
        return to_text(x, "degC", printed_in_tests);
    else
        return si_text(x, printed_in_tests);
}

/// A value no farther from another than a tolerance; NaN is far from everything.
template <class Q, class Difference>
class nearness {
public:
    using is_gtest_matcher = void;

    nearness(const Q& expected, const Difference& tolerance, std::string limit)
        : expected_(expected), tolerance_(tolerance), limit_(std::move(limit))
    {
    }
    bool MatchAndExplain(const Q& actual, std::ostream* why) const
    {
        const Difference off = actual - expected_;
        if (why != nullptr) *why << "which differs by " << printed(off);
        return off <= tolerance_ && -off <= tolerance_;
    }
    void DescribeTo(std::ostream* out) const { *out << "is within " << limit_ << " of " << printed(expected_); }
    void DescribeNegationTo(std::ostream* out) const
    {
        *out << "is farther than " << limit_ << " from " << printed(expected_);
    }

private:
    Q expected_;
    Difference tolerance_;
    std::string limit_;
};

/// A value between the ends of a band; NaN is outside.
template <class Q>
class insideness {
public:
    using is_gtest_matcher = void;

    explicit insideness(const band<Q>& b) : band_(b) {}
    bool MatchAndExplain(const Q& actual, std::ostream* why) const
    {
        const bool above = actual >= band_.low, below = actual <= band_.high;
        if (why != nullptr && !above) *why << "which is not above its low point";
        if (why != nullptr && !below) *why << "which is not below its high point";
        return above && below;
    }
    void DescribeTo(std::ostream* out) const
    {
        *out << "is between " << printed(band_.low) << " and " << printed(band_.high);
    }
    void DescribeNegationTo(std::ostream* out) const
    {
        *out << "is not between " << printed(band_.low) << " and " << printed(band_.high);
    }

private:
    band<Q> band_;
};

}  // namespace weldloop::detail

namespace weldloop::test {

/// Matches a quantity that differs from another by no more than a tolerance with its unit.
/// @param expected the value wanted, any @param tolerance 0 or more, of the same kind
/// @throws not_finite_error, out_of_range_error for what no value could be held against
template <class Unit>
[[nodiscard]] auto near_quantity(const boost::units::quantity<Unit, double>& expected,
                                 const std::type_identity_t<boost::units::quantity<Unit, double>>& tolerance)
{
    using Q = boost::units::quantity<Unit, double>;
    require_finite(expected, "expected value");
    require_not_negative(tolerance, "tolerance");
    return detail::nearness<Q, Q>(expected, tolerance, detail::printed(tolerance));
}

/// The same of a temperature. @param expected the temperature wanted @param tolerance 0 K or more
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline auto near_temperature(temperature expected, temperature_difference tolerance)
{
    require_not_negative(tolerance, "tolerance");
    return detail::nearness<temperature, temperature_difference>(expected, tolerance, detail::printed(tolerance));
}

/// Matches a quantity that differs from another by no more than a percentage of it.
/// @param expected the value wanted, any but zero @param percent 0 or more [%]
/// @throws not_finite_error, out_of_range_error; also for an expected zero, of which there is no percentage
template <class Unit>
[[nodiscard]] auto within_percent(const boost::units::quantity<Unit, double>& expected, double percent)
{
    using Q = boost::units::quantity<Unit, double>;
    require_finite(expected, "expected value");
    if (expected == Q{})
        throw out_of_range_error("expected value", detail::printed(expected), "other than zero, or near_quantity()");
    constexpr double most = 1e6;  // nobody means more
    require_within(percent, 0.0, most, "percent");
    return detail::nearness<Q, Q>(expected, (expected < Q{} ? -expected : expected) * (percent / 100.0),
                                  number_text(percent, detail::printed_in_tests) + " %");
}

/// Matches a quantity or temperature between the 5 and 95 % points of a band, ends included.
/// @param b the band, low not above high @throws out_of_range_error for a band the wrong way round, or of NaN
template <class Q>
[[nodiscard]] auto inside(const band<Q>& b)
{
    if (!(b.low <= b.high))
        throw out_of_range_error("band", detail::printed(b.low) + " to " + detail::printed(b.high), "low end first");
    return detail::insideness<Q>(b);
}

}  // namespace weldloop::test
