#pragma once
/// @file
/// Random numbers and bad numbers for the tests of joints.

#include <array>
#include <cmath>
#include <exception>
#include <limits>
#include <random>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>

namespace weldloop::test {

/// Seeded, so that a failure repeats.
class random_numbers {
public:
    explicit random_numbers(unsigned seed) : engine_(seed) {}

    /// Spread evenly over the logarithm.
    double log_between(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
    int count(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }

private:
    std::mt19937_64 engine_;
};

inline constexpr int random_cases = 2000;

inline constexpr std::array not_finite{std::numeric_limits<double>::quiet_NaN(),
                                       std::numeric_limits<double>::infinity(),
                                       -std::numeric_limits<double>::infinity()};

/// Which error a call with a bad number ends in: "E" as the name of the type, or what it did instead.
template <class E, class Call>
::testing::AssertionResult ends_in(const Call& call, double x)
{
    try {
        call(x);
    } catch (const E&) {
        return ::testing::AssertionSuccess();
    } catch (const std::exception& other) {
        return ::testing::AssertionFailure() << "with x = " << x << " another error: " << other.what();
    }
    return ::testing::AssertionFailure() << "x = " << x << " was accepted";
}

/// Whether a call refuses NaN and both infinities as not finite, -1 as out of range, and zero too where it must.
template <class Call>
::testing::AssertionResult refuses_bad_numbers(const Call& call, bool zero_too)
{
    for (const double x : not_finite)
        if (const auto result = ends_in<not_finite_error>(call, x); !result) return result;
    if (const auto result = ends_in<out_of_range_error>(call, -1.0); !result) return result;
    return zero_too ? ends_in<out_of_range_error>(call, 0.0) : ::testing::AssertionSuccess();
}

}  // namespace weldloop::test

/// `call` is an expression in x that must refuse x = NaN and both infinities as not finite, and -1 as out of range.
#define EXPECT_REFUSES_BAD_NUMBERS(call)                                                                               \
    EXPECT_TRUE(::weldloop::test::refuses_bad_numbers([&](double x) { (void)(call); }, false)) << #call

/// The same, and zero is out of range too.
#define EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(call)                                                                      \
    EXPECT_TRUE(::weldloop::test::refuses_bad_numbers([&](double x) { (void)(call); }, true)) << #call
