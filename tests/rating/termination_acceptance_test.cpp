#include <cmath>
#include <cstddef>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/rating/joint/termination_acceptance.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;

conductor_size size_of(const std::string& text)
{
    const auto slash = text.find('/');
    return slash == std::string::npos ? awg(std::stoi(text)) : aught(std::stoi(text.substr(0, slash)));
}

}  // namespace

// source: tests/reference/contacts-pullout-ul486.csv, every row: the table itself, and the acceptance just at it and
// just below
TEST(TerminationAcceptance, CommercialPullOut)
{
    const auto table = test::reference_table("contacts-pullout-ul486.csv");
    EXPECT_EQ(table.rows().size(), commercial_pull_out.size());
    for (const auto& row : table.rows()) {
        const conductor_size size = size_of(row.text("awg"));
        const force least = row.number("min_pullout_lbf") * 1_lbf;
        const termination_acceptance at = pull_out_acceptance_of(size, least, pull_out_claim::commercial);
        EXPECT_NEAR_REL(at.used, 1.0, 1e-9) << row.where();
        EXPECT_EQ(at.limit_recalled, row.text("verified") == "memory") << row.where();
        EXPECT_TRUE(pull_out_acceptance_of(size, 1.001 * least, pull_out_claim::commercial).accepted);
        EXPECT_FALSE(pull_out_acceptance_of(size, 0.999 * least, pull_out_claim::commercial).accepted);
        EXPECT_NEAR(least.value(), row.number("min_pullout_N"), 0.06);
    }
}

// source: tests/reference/contacts-crimp-mil.csv, pull-out column; and the note that the military values are 1.4 to 3
// times the commercial ones
TEST(TerminationAcceptance, MilitaryPullOut)
{
    for (const auto& row : test::reference_table("contacts-crimp-mil.csv").rows()) {
        const conductor_size size = size_of(row.text("awg"));
        const force least = row.number("min_tensile_lbf") * 1_lbf;
        const termination_acceptance at = pull_out_acceptance_of(size, least, pull_out_claim::military);
        EXPECT_NEAR_REL(at.used, 1.0, 1e-9) << row.where();
        EXPECT_EQ(at.limit_recalled, row.text("verified") == "memory") << row.where();
    }
    for (const pull_out_row& row : commercial_pull_out) {
        const double ratio = pull_out_acceptance_of(row.size, row.least, pull_out_claim::military).used;
        EXPECT_GE(ratio, 1.39);
        EXPECT_LE(ratio, 3.5);
    }
    // between two sizes the larger counts
    EXPECT_EQ(pull_out_acceptance_of(square_mm(20), 1_kN, pull_out_claim::military).used,
              pull_out_acceptance_of(awg(4), 1_kN, pull_out_claim::military).used);
    EXPECT_THROW((void)pull_out_acceptance_of(square_mm(185), 1_kN, pull_out_claim::commercial), missing_data_error);
    EXPECT_FALSE(pull_out_acceptance_of(awg(4), 0_N, pull_out_claim::military).accepted);
}

// source: tests/reference/contacts-terminal-limits.csv, MIL-DTL-83454A: 7.5 mV at 25, 30, 35, 43 A; 300, 250, 214, 174
// micro-ohm
TEST(TerminationAcceptance, StudTerminals)
{
    bool found = false;
    for (const auto& row : test::reference_table("contacts-terminal-limits.csv").rows()) {
        if (row.text("item") != "stud terminal voltage drop") continue;
        for (const stud_terminal_row& stud : stud_terminal_limits)
            EXPECT_NEAR_REL(stud.highest_drop.value() * 1e3, row.number("value"), 1e-12);
        found = true;
    }
    EXPECT_TRUE(found);
    const double limits[] = {300e-6, 250e-6, 214e-6, 174e-6};
    for (std::size_t i = 0; i < stud_terminal_limits.size(); ++i) {
        const stud_terminal_row& stud = stud_terminal_limits[i];
        EXPECT_NEAR((stud.highest_drop / stud.test_current).value(), limits[i], 1e-6);
        EXPECT_TRUE(stud_acceptance_of(stud.diameter, stud.highest_drop, stud.test_current).accepted);
        EXPECT_FALSE(stud_acceptance_of(stud.diameter, 1.01 * stud.highest_drop, stud.test_current).accepted);
    }
    EXPECT_NEAR_REL(stud_acceptance_of(10_mm, 1_mV, 100_A).used, 1e-5 / (7.5e-3 / 43), 1e-9);
    EXPECT_THROW((void)stud_acceptance_of(3_mm, 1_mV, 1_A), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(stud_acceptance_of(in_si<length>(x), 1_mV, 1_A));
    EXPECT_REFUSES_BAD_NUMBERS(stud_acceptance_of(10_mm, in_si<voltage>(x), 1_A));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(stud_acceptance_of(10_mm, 1_mV, in_si<current>(x)));
}

// source: tests/reference/contacts-strand-damage.csv, the copper rows of AC 43.13-1B (the aluminium row:
// strand_report_test.cpp). The IPC rows are recalled and far looser at welding sizes, the shield row is of signal
// cables, the last one says what counts as a nick: the library holds none of them.
TEST(TerminationAcceptance, BrokenStrands)
{
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("contacts-strand-damage.csv").rows()) {
        if (row.text("source") != "FAA AC 43.13-1B" || row.text("material") == "aluminium") continue;
        const std::string sizes = row.text("wire_sizes_awg");
        const auto to = sizes.find(" to ");
        const int allowed = static_cast<int>(row.number("max_broken"));
        const broken_strand_row& mine = broken_strand_limits.at(checked);
        EXPECT_EQ(mine.nicked, static_cast<int>(row.number("max_nicked")));
        EXPECT_EQ(mine.strands_low, static_cast<int>(row.number("strands_low")));
        EXPECT_EQ(mine.strands_high, static_cast<int>(row.number("strands_high")));
        EXPECT_NEAR(100.0 * mine.broken / mine.strands_low, row.number("broken_percent_of_strands_derived"), 0.006);
        for (const std::string& one : {sizes.substr(0, to), to == std::string::npos ? sizes : sizes.substr(to + 4)}) {
            EXPECT_TRUE(broken_strand_acceptance_of(size_of(one), allowed).accepted) << sizes;
            EXPECT_FALSE(broken_strand_acceptance_of(size_of(one), allowed + 1).accepted) << sizes;
            EXPECT_GT(broken_strand_acceptance_of(size_of(one), allowed + 1).used, 1.0);
        }
        ++checked;
    }
    EXPECT_EQ(checked, broken_strand_limits.size());
    EXPECT_FALSE(broken_strand_acceptance_of(square_mm(6), 1).accepted);  // between 10 and 8 AWG: none broken
    EXPECT_THROW((void)broken_strand_acceptance_of(square_mm(120), 0), missing_data_error);
    EXPECT_THROW((void)broken_strand_acceptance_of(awg(26), 0), missing_data_error);
    EXPECT_THROW((void)broken_strand_acceptance_of(awg(4), -1), out_of_range_error);
}

// source: tests/reference/contacts-degradation.csv, field criterion for similar joints, 50 % above the lowest
TEST(TerminationAcceptance, SimilarJoints)
{
    for (const auto& row : test::reference_table("contacts-degradation.csv").rows())
        if (row.text("item") == "field criterion for similar joints") {
            EXPECT_NEAR_REL(100.0 * similar_joints_margin, row.number("value"), 1e-12);
        }
    EXPECT_TRUE(similar_joint_acceptance_of(14.9_uohm, 10_uohm).accepted);
    EXPECT_FALSE(similar_joint_acceptance_of(15.1_uohm, 10_uohm).accepted);
    EXPECT_REFUSES_BAD_NUMBERS(similar_joint_acceptance_of(in_si<resistance>(x), 10_uohm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(similar_joint_acceptance_of(10_uohm, in_si<resistance>(x)));
}

// A pull of just the least value holds; the least number below it does not.
TEST(TerminationAcceptance, TheLeastPullItselfHolds)
{
    for (const pull_out_row& row : commercial_pull_out) {
        EXPECT_TRUE(pull_out_acceptance_of(row.size, row.least, pull_out_claim::commercial).accepted)
            << to_text(row.size);
        const force below = in_si<force>(std::nextafter(row.least.value(), 0.0));
        EXPECT_FALSE(pull_out_acceptance_of(row.size, below, pull_out_claim::commercial).accepted) << to_text(row.size);
    }
}
