// The code that docs/pages/embedding.md shows, compiled and run; tests/house/quoted_code_test.cpp holds the page to it.
#include <filesystem>
#include <fstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/test/matchers.hpp>  // includes print.hpp
#include <weldloop/test/value_table.hpp>

namespace wl = weldloop;
using namespace wl::literals;
using namespace weldloop::test;

TEST(QuotedCode, NumbersOfRunTime)
{
    using namespace weldloop;
    const double amps = 260.0;
    const auto weld = 3 * 1_min;  // a duration; whole numbers and floats are factors, 7_V / 2 is 3.5 V
    const auto set = amps * 1_A;  // a number of run time gets its unit by a factor
    const auto typed = parse<current>("260 A");
    EXPECT_THAT(weld, near_quantity(180_s, 1_ms));
    EXPECT_THAT(7_V / 2, near_quantity(3.5_V, 1_mV));
    EXPECT_THAT(set, near_quantity(260_A, 1_mA));
    EXPECT_THAT(typed, near_quantity(260_A, 1_mA));
}

TEST(QuotedCode, Matchers)
{
    const wl::voltage drop = 1.255_V, read = 1.2_V;
    const wl::temperature peak = 84_degC;
    wl::part_result part;
    part.drop = {1.1_V, 1.25_V, 1.5_V};
    part.verdict = wl::verdict::within_limit;
    const auto drop_of = [](const value_table::row& row) { return row.number("current_A") * 1_A * 1_mohm; };
    const std::filesystem::path before = std::filesystem::current_path(),
                                folder = std::filesystem::path(testing::TempDir()) / "weldloop_quoted_code";
    std::filesystem::create_directories(folder);
    std::filesystem::current_path(folder);
    std::ofstream("drops.csv") << "# a lead of 1 milliohm\ncurrent_A,drop_mV\n100,100\n250,250\n";

    EXPECT_THAT(drop, near_quantity(1.25_V, 10_mV));  // the tolerance has a unit, and must measure the same
    EXPECT_THAT(drop, within_percent(1.25_V, 2.0));
    EXPECT_THAT(peak, near_temperature(85_degC, 2_K));
    EXPECT_THAT(read, inside(part.drop));                // between the 5 and 95 % points of a band
    EXPECT_EQ(part.verdict, wl::verdict::within_limit);  // prints "over limit", not a number

    const value_table worked = value_table::from_file("drops.csv");  // RFC 4180; '#' begins a line for the source
    for (const value_table::row& row : worked.rows())
        EXPECT_THAT(drop_of(row), near_quantity(row.quantity<wl::voltage>("drop_mV", "mV"), 1_mV)) << row.where();

    EXPECT_EQ(worked.rows().size(), 2U);
    std::filesystem::current_path(before);
}
