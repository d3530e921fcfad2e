#include <limits>
#include <optional>
#include <random>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/strand_report.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

conductor_size size_named(const std::string& text)
{
    return text.find("/0") != std::string::npos ? aught(std::stoi(text)) : awg(std::stoi(text));
}

const conductor_build two_aught = conductor_build_of(aught(2), strand_class::rope_k);

cable damaged_lead(double missing, length over)
{
    cable c = welding_cable(aught(2), 20_m);
    c.missing_strands = missing;
    c.damaged_length = over;
    return c;
}

lug lug_with(double missing)
{
    return crimped_lug("lug", aught(2)).with_missing_strands(missing);
}

}  // namespace

// source: FAA AC 43.13-1B, table 11-13 (one source, read)
TEST(StrandLimits, AreThoseOfTheTable)
{
    int rows = 0;
    for (const auto& row : reference_table("contacts-strand-damage.csv").rows()) {
        if (row.text("source") != "FAA AC 43.13-1B") continue;
        std::istringstream sizes(row.text("wire_sizes_awg"));
        std::string first, to, last;
        sizes >> first >> to >> last;
        const strand_metal made_of =
            row.text("material") == "aluminium" ? strand_metal::of_aluminium : strand_metal::of_copper;
        for (const std::string& size : {first, last.empty() ? first : last}) {
            const int strands = row.has("strands_low") ? static_cast<int>(row.number("strands_low")) : 133;
            const auto limit = strand_limit_of(size_named(size), strands, made_of);
            ASSERT_TRUE(limit) << row.where();
            EXPECT_EQ(limit->most_nicked, row.number("max_nicked")) << row.where();
            EXPECT_EQ(limit->most_broken, row.number("max_broken")) << row.where();
            EXPECT_FALSE(limit->between_sizes) << row.where();
            EXPECT_FALSE(limit->other_stranding) << row.where();
        }
        ++rows;
    }
    EXPECT_EQ(rows, 8);
}

TEST(StrandLimits, BetweenTheRowsTheStricterAndOutsideNone)
{
    const auto three = strand_limit_of(awg(3), 532, strand_metal::of_copper);
    ASSERT_TRUE(three);
    EXPECT_TRUE(three->between_sizes);
    EXPECT_TRUE(three->other_stranding);
    EXPECT_EQ(three->most_broken, 6);
    const auto nine = strand_limit_of(awg(9), 37, strand_metal::of_copper);
    ASSERT_TRUE(nine);
    EXPECT_EQ(nine->most_broken, 0);
    EXPECT_FALSE(strand_limit_of(kcmil(250), 2499, strand_metal::of_copper));
    EXPECT_FALSE(strand_limit_of(awg(26), 19, strand_metal::of_copper));
    EXPECT_FALSE(strand_limit_of(aught(4), 2109, strand_metal::of_aluminium));
    EXPECT_FALSE(strand_limit_of(aught(2), 1323, strand_metal::of_copper)->other_stranding);
    EXPECT_TRUE(strand_limit_of(awg(4), 420, strand_metal::of_copper)->other_stranding);
}

TEST(StrandReport, SoundLeadAddsNothing)
{
    const strand_report r = strand_report_of(damaged_lead(0.0, 0_m), lug_with(0.0), two_aught);
    EXPECT_EQ(r.along_missing.value(), 0.0);
    EXPECT_EQ(r.along_oxide.value(), 0.0);
    EXPECT_EQ(r.crimp_missing.high.value(), 0.0);
    EXPECT_EQ(r.crimp_oxide.high.value(), 0.0);
    EXPECT_EQ(static_cast<double>(r.crimp_share), 0.0);
    EXPECT_EQ(r.verdict, strand_verdict::within_published_count);
    EXPECT_NEAR_REL(r.lead.value(), resistance_of(welding_cable(aught(2), 20_m), 20_degC).value(), 1e-14);
}

// a fifth of the strands cut over 5 cm before the lug: the barrel has 1.95 times its resistance, the length is nothing
TEST(StrandReport, TheCrimpAddsNearlyAll)
{
    const strand_report r = strand_report_of(damaged_lead(0.2, 5_cm), lug_with(0.2), two_aught);
    const resistance_per_length sound = resistance_per_length_of(welding_cable(aught(2), 20_m), 20_degC);
    EXPECT_NEAR_REL(r.along_missing.value(), (sound * 5_cm).value() * 0.25, 1e-10);
    EXPECT_NEAR_REL(r.crimp_missing.typical.value(), r.crimp.typical.value() * (1 / 0.512 - 1), 1e-12);
    EXPECT_GT(static_cast<double>(r.crimp_share), 0.6);
    EXPECT_EQ(r.broken, 265);
    EXPECT_EQ(r.verdict, strand_verdict::above_published_count);
    EXPECT_EQ(to_text(r.verdict), "above the published count");
}

TEST(StrandReport, OxideActsAtTheCrimpAndHardlyAlongTheLength)
{
    const strand_report r = strand_report_of(damaged_lead(0.1, 1_m), lug_with(0.1), two_aught,
                                             {.exposed = surface_state::oxidized, .oxide = 100_nm});
    EXPECT_NEAR_REL(r.along_oxide.value(), r.lead.value() / 20 / 0.9 * (4 * 100e-9 / (1.64 * two_aught.strand.value())),
                    2e-3);
    EXPECT_LT(r.along_oxide.value(), 0.002 * r.lead.value() / 20);
    EXPECT_NEAR_REL(r.crimp_oxide.typical.value(), (r.crimp.typical + r.crimp_missing.typical).value(), 1e-12);
    EXPECT_GT(r.crimp_oxide.typical, 20.0 * r.along_oxide);
    EXPECT_TRUE(r.basis.has(source_kind::judgement));
}

TEST(StrandReport, CountsAgainstTheTable)
{
    const auto verdict = [](double missing, int nicked) {
        return strand_report_of(damaged_lead(missing, 1_m), lug_with(0.0), two_aught, {.nicked = nicked}).verdict;
    };
    EXPECT_EQ(verdict(6.0 / 1323, 0), strand_verdict::within_published_count);
    EXPECT_EQ(verdict(7.0 / 1323, 0), strand_verdict::above_published_count);
    EXPECT_EQ(verdict(0.0, 6), strand_verdict::within_published_count);
    EXPECT_EQ(verdict(0.0, 7), strand_verdict::above_published_count);
    const conductor_build big = conductor_build_of(kcmil(250), strand_class::rope_k);
    EXPECT_EQ(strand_report_of(welding_cable(kcmil(250), 5_m), crimped_lug("", kcmil(250)), big).verdict,
              strand_verdict::no_published_count);
}

TEST(StrandReport, GrowsWithDamage)
{
    std::mt19937 random(13);
    std::uniform_real_distribution<double> unit(0.01, 0.9);
    for (int n = 0; n < 100; ++n) {
        const double s = unit(random), other = s * unit(random);
        const length over = in_si<length>(10 * unit(random));
        const strand_report more = strand_report_of(damaged_lead(s, over), lug_with(s), two_aught);
        const strand_report less = strand_report_of(damaged_lead(other, over), lug_with(other), two_aught);
        EXPECT_GT(more.along_missing, less.along_missing);
        EXPECT_GT(more.crimp_missing.typical, less.crimp_missing.typical);
        EXPECT_LE(more.crimp_missing.low, more.crimp_missing.typical);
        EXPECT_LE(more.crimp_missing.typical, more.crimp_missing.high);
        cable whole = damaged_lead(s, over);
        EXPECT_NEAR_REL((more.lead + more.along_missing).value(), resistance_of(whole, 20_degC).value(), 1e-12);
    }
    // zinc makes a better contact than bare steel in the table: what is added is below zero and its band stays in order
    const strand_report coated =
        strand_report_of(damaged_lead(0.1, 1_m), lug_with(0.1), two_aught, {.exposed = surface_state::galvanized});
    EXPECT_LT(coated.crimp_oxide.low, coated.crimp_oxide.high);
    EXPECT_LE(static_cast<double>(coated.crimp_share), 1.0);
}

TEST(StrandReport, RefusesWhatCannotBe)
{
    const cable lead = damaged_lead(0.1, 1_m);
    const lug end = lug_with(0.1);
    for (double bad : {nan_value, infinite}) {
        EXPECT_THROW((void)strand_report_of(lead, end, two_aught, {.oxide = in_si<length>(bad)}), not_finite_error);
        cable c = lead;
        c.length = in_si<length>(bad);
        EXPECT_THROW((void)strand_report_of(c, end, two_aught), not_finite_error);
        c = lead;
        c.damaged_length = in_si<length>(bad);
        EXPECT_THROW((void)strand_report_of(c, end, two_aught), not_finite_error);
        conductor_build b = two_aught;
        b.strand = in_si<length>(bad);
        EXPECT_THROW((void)strand_report_of(lead, end, b, {.oxide = 100_nm}), not_finite_error);
    }
    conductor_build none = two_aught;
    none.strands = 0;
    EXPECT_THROW((void)strand_report_of(lead, end, none), out_of_range_error);
    EXPECT_THROW((void)strand_report_of(lead, end, two_aught, {.nicked = -1}), out_of_range_error);
    EXPECT_THROW((void)strand_report_of(lead, end, two_aught, {.nicked = 1324}), out_of_range_error);
    EXPECT_THROW((void)strand_report_of(lead, end, two_aught, {.oxide = -1.0 * 1_nm}), out_of_range_error);
    EXPECT_THROW((void)strand_report_of(lead, end, two_aught, {.oxide = 1_mm}), out_of_range_error);
    EXPECT_THROW((void)strand_report_of(lead, end, two_aught, {.exposed = surface_state::painted_unbroken}),
                 out_of_range_error);
    cable too_long = lead;
    too_long.damaged_length = 21_m;
    EXPECT_THROW((void)strand_report_of(too_long, end, two_aught), out_of_range_error);
    lug huge = end;
    huge.size = huge.stamped = square_mm(400);
    EXPECT_THROW((void)strand_report_of(lead, huge, two_aught), out_of_range_error);
    EXPECT_THROW((void)strand_limit_of(aught(2), 0, strand_metal::of_copper), out_of_range_error);
}
