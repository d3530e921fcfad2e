#pragma once
/// @file
/// Comparison of plain numbers by relative error.

#include <cmath>
#include <string>

#include <gtest/gtest.h>

namespace weldloop::test {

/// Error of `actual` relative to `expected`; absolute where `expected` is zero.
inline double relative_error(double actual, double expected)
{
    const double difference = std::abs(actual - expected);
    return expected == 0.0 ? difference : difference / std::abs(expected);
}

inline ::testing::AssertionResult near_rel(const char* actual_text, const char* expected_text, const char* rel_text,
                                           double actual, double expected, double rel)
{
    const double error = relative_error(actual, expected);
    if (error <= rel) return ::testing::AssertionSuccess();  // false for NaN, as it must be
    return ::testing::AssertionFailure() << actual_text << " is " << ::testing::PrintToString(actual) << "\n"
                                         << expected_text << " is " << ::testing::PrintToString(expected) << "\n"
                                         << "relative error " << error << ", allowed " << rel << " (" << rel_text
                                         << ")";
}

}  // namespace weldloop::test

/// `actual` differs from `expected` by no more than the share `rel` of `expected`. NaN never passes.
#define EXPECT_NEAR_REL(actual, expected, rel) EXPECT_PRED_FORMAT3(::weldloop::test::near_rel, actual, expected, rel)
