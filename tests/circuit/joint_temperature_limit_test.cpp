#include <cstddef>
#include <map>
#include <string>
#include <utility>

#include <gtest/gtest.h>

#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/work_clamp_standard.hpp>

#include "support/reference_table.hpp"

namespace {

using namespace weldloop;

using cell = std::pair<joint_kind, joint_finish>;

const std::map<std::string, cell> read_rows{
    {"contact, bare copper or copper alloy", {joint_kind::contact, joint_finish::bare}},
    {"contact, silver- or nickel-coated", {joint_kind::contact, joint_finish::silvered}},
    {"contact, tin-coated", {joint_kind::contact, joint_finish::tinned}},
    {"bolted connection, bare copper, copper alloy or aluminium alloy", {joint_kind::bolted, joint_finish::bare}},
    {"bolted connection, silver- or nickel-coated", {joint_kind::bolted, joint_finish::silvered}},
    {"bolted connection, tin-coated", {joint_kind::bolted, joint_finish::tinned}},
    {"terminal for external conductor, bare", {joint_kind::terminal, joint_finish::bare}},
    {"terminal for external conductor, silver, nickel or tin", {joint_kind::terminal, joint_finish::tinned}},
    {"accessible part touched in normal operation", {joint_kind::accessible_touched, joint_finish::bare}},
    {"accessible part not touched in normal operation", {joint_kind::accessible_not_touched, joint_finish::bare}},
};

}  // namespace

// source: tests/reference/contacts-temperature-limits.csv, every row: IEC 60694 table 3 as read; the recalled rows
// against the recalled list; the two rises of the clamp standard
TEST(JointTemperatureLimit, EveryRowOfTheTable)
{
    std::size_t read = 0, recalled = 0, clamp = 0;
    for (const auto& row : test::reference_table("contacts-temperature-limits.csv").rows()) {
        const std::string part = row.text("part");
        if (const auto at = read_rows.find(part); at != read_rows.end()) {
            const auto& limit = joint_temperature_limit(at->second.first, at->second.second);
            EXPECT_NEAR(limit.highest.in_celsius(), row.number("max_temperature_C"), 1e-9) << part;
            EXPECT_EQ(limit.rise.value(), row.number("max_rise_K")) << part;
            EXPECT_EQ(limit.from->kind, source_kind::standard);
            EXPECT_NEAR((limit.highest - limit.rise).in_celsius(), row.number("ambient_basis_C"), 1e-9);
            ++read;
            continue;
        }
        if (part.starts_with("welding return clamp")) {
            EXPECT_EQ((part.ends_with("surface") ? grip_rise_limit : cable_connection_rise_limit).value(),
                      row.number("max_rise_K"));
            ++clamp;
            continue;
        }
        EXPECT_EQ(row.text("verified"), "memory") << part;
        for (const recalled_joint_limit& limit : recalled_joint_limits)
            if (limit.what == part) {
                EXPECT_NEAR(limit.highest.in_celsius(), 40.0 + row.number("max_rise_K"), 1e-9) << part;
                EXPECT_EQ(limit.from->kind, source_kind::memory);
                ++recalled;
            }
    }
    EXPECT_EQ(read + clamp + recalled, test::reference_table("contacts-temperature-limits.csv").rows().size());
    EXPECT_EQ(read, read_rows.size());
    EXPECT_EQ(clamp, 2U);
    EXPECT_EQ(recalled, recalled_joint_limits.size());
}

// property: a better finish never has the lower limit; a bolted joint may be hotter than one that slides
TEST(JointTemperatureLimit, BetterFinishMayBeHotter)
{
    for (const joint_kind kind : {joint_kind::contact, joint_kind::bolted, joint_kind::terminal}) {
        EXPECT_LT(joint_temperature_limit(kind, joint_finish::bare).highest,
                  joint_temperature_limit(kind, joint_finish::tinned).highest);
        EXPECT_LE(joint_temperature_limit(kind, joint_finish::tinned).highest,
                  joint_temperature_limit(kind, joint_finish::silvered).highest);
    }
    for (const joint_finish f : {joint_finish::bare, joint_finish::tinned, joint_finish::silvered})
        EXPECT_LT(joint_temperature_limit(joint_kind::contact, f).highest,
                  joint_temperature_limit(joint_kind::bolted, f).highest);
}
