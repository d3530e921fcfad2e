#pragma once
/// @file
/// Worked examples of springs, by id, for the tests of compression and torsion springs.

#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace weldloop::test {

inline constexpr pressure ksi = 1e3 * unit_of<pressure>("psi").in_si() * in_si<pressure>(1.0);

/// The row of a table with an id.
inline reference_table::row example(const std::string& file, const std::string& id)
{
    const reference_table table(file);
    for (const auto& row : table.rows())
        if (row.text("id") == id) return row;
    throw std::runtime_error("no example " + id);
}

/// Shigley, examples 10-1 and 10-8: recalled values with the tolerance of their printed digits, and the same examples
/// recomputed apart from the library.
inline void expect_shigley(double value, const std::string& id)
{
    const reference_table::row row = example("springs-worked-examples.csv", id);
    const double published = row.number("published_value");
    ::testing::Test::RecordProperty(id + " error", std::to_string(100.0 * (value / published - 1.0)) + " %");
    EXPECT_NEAR_REL(value, published, row.number("tolerance_suggested_pct") / 100.0) << id;
    EXPECT_NEAR_REL(value, row.number("recomputed_value"), 2e-4) << id;  // printed to four or five digits
}

/// Bhandari, examples 10.1 to 10.21, read: within half of the last printed digit, or rounded as printed.
inline void expect_bhandari(double value, const std::string& id)
{
    const reference_table::row row = example("springs-worked-examples-metric.csv", id);
    const double published = row.number("published_value");
    ::testing::Test::RecordProperty(id + " error", std::to_string(100.0 * (value / published - 1.0)) + " %");
    EXPECT_NEAR(value, published, row.number("printed_to")) << id;
}

}  // namespace weldloop::test
