#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/load_line.hpp>

#include <limits>
#include <map>
#include <string>
#include <vector>

#include "support/printed_formula.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using weldloop::test::printed_value;
using weldloop::test::reference_table;
using weldloop::test::text_between;

// source: IEC 60974-1, 11.2: the lines of covered electrode, tungsten and wire as quoted in a welding handbook p. 341
// (one source), submerged arc and every end of a line from memory. The lines are evaluated as printed. Skipped: plasma
// cutting, which is no welding process (from memory).
TEST(ConventionalLoad, FollowsTheTypeTestLines)
{
    const std::map<std::string, std::vector<process>> processes{
        {"MMA/SMAW", {process::smaw}},
        {"TIG and plasma arc welding", {process::gtaw}},
        {"MIG/MAG and flux-cored", {process::gmaw, process::fcaw}},
        {"submerged arc", {process::saw}}};
    std::size_t used = 0;
    int skipped = 0;
    for (const auto& row : reference_table("welding-load-voltage-iec60974-1.csv").rows()) {
        const auto found = processes.find(row.text("process"));
        if (found == processes.end()) {
            EXPECT_EQ(row.text("process"), "plasma cutting") << row.where();
            ++skipped;
            continue;
        }
        const std::string& range = row.text("range_and_limit");
        const double end = std::stod(text_between(range, "up to ", " A")),
                     level = std::stod(text_between(range, "(", " V constant above)"));
        for (const process p : found->second) {
            const auto ours = [&](double amps) { return conventional_load_voltage(p, in_si<current>(amps)).value(); };
            for (const double amps : {1.0, 90.0, 180.0, 240.0, end})
                EXPECT_NEAR(ours(amps), printed_value(row.text("formula_V_A"), {{"I2", amps}}), 1e-12) << row.where();
            EXPECT_NEAR(ours(end), level, 1e-12) << row.where();
            EXPECT_NEAR(ours(1.5 * end), level, 1e-12) << row.where();
            EXPECT_EQ(load_line_source(p).kind == source_kind::memory, row.text("verified") == "memory") << row.where();
            ++used;
        }
    }
    EXPECT_EQ(used, all_processes.size());
    EXPECT_EQ(skipped, 1);
}

TEST(ConventionalLoad, RefusesWhatCannotBe)
{
    EXPECT_THROW(static_cast<void>(conventional_load_voltage(process::smaw, 0_A)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(conventional_load_voltage(process::smaw,
                                                             in_si<current>(std::numeric_limits<double>::quiet_NaN()))),
                 not_finite_error);
}

}  // namespace
