// The published laws of relaxation at 20 degC against the values the codes print, and against each other.
#include <cmath>
#include <limits>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/code_relaxation.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using law = wl::relaxation_time_law;
using weldloop::test::reference_table;

namespace {

double percent(law which, double stress, double hours, wl::spring_making making = wl::spring_making::plain)
{
    return 100.0 * static_cast<double>(wl::code_relaxation(which, stress, hours * 1_h, {making}));
}

constexpr law every_law[] = {law::model_code, law::eurocode, law::logarithmic};

}  // namespace

// IRC:18-2000 table 4A and CEB-FIP 1990 2.3.4.5: the rows the model-code law is made of, in its own words.
TEST(CodeRelaxation, PrintsTheTableItIsMadeOf)
{
    int seen = 0;
    const reference_table table("springs-relaxation-data.csv");
    for (const auto& row : table.rows()) {
        const std::string& id = row.text("id");
        if (id.rfind("RX-IRC-", 0) != 0 && id.rfind("RX-MC90-", 0) != 0) continue;
        const auto making = id.rfind("RX-IRC-L", 0) == 0 ? wl::spring_making::preset : wl::spring_making::plain;
        EXPECT_NEAR(percent(law::model_code, row.number("initial_stress_over_Sut"), row.number("time_h"), making),
                    row.number("stress_loss_pct"), 0.006)  // printed to two decimals
            << row.where();
        ++seen;
    }
    EXPECT_EQ(seen, 11);
}

// Two codes for the same steel: the formula of EN 1992-1-1 against the table of IRC:18-2000. Within 7 % for normal
// wire. For low-relaxation wire the European class is the better wire and loses a third to a half of the table:
// reported, and asserted to be lower, but by no more than that.
TEST(CodeRelaxation, TheFormulaComparesWithTheTable)
{
    int seen = 0;
    const reference_table table("springs-relaxation-data.csv");
    for (const auto& row : table.rows()) {
        const std::string& id = row.text("id");
        if (id.rfind("RX-IRC-", 0) != 0 || row.number("stress_loss_pct") == 0.0) continue;
        const bool low = id.rfind("RX-IRC-L", 0) == 0;
        const double formula = percent(law::eurocode, row.number("initial_stress_over_Sut"), 1000.0,
                                       low ? wl::spring_making::preset : wl::spring_making::plain);
        const double published = row.number("stress_loss_pct");
        RecordProperty(id, "table " + std::to_string(published) + " %, formula " + std::to_string(formula) + " %");
        if (low) {
            EXPECT_LT(formula, published) << row.where();
            EXPECT_GT(formula, 0.3 * published) << row.where();
        } else {
            EXPECT_NEAR_REL(formula, published, 0.07) << row.where();
        }
        ++seen;
    }
    EXPECT_EQ(seen, 6);
}

// Magura, Sozen and Siess (memory) with yield at 0.85 of strength against IRC:18-2000: 1.6 to 1.9 times the code's loss
// at 1000 h. The two were made for wires forty years apart, so this is reported; what is asserted is the band it was
// found in.
TEST(CodeRelaxation, TheLogarithmicLawLosesMore)
{
    for (const auto& [stress, published] : {std::pair{0.6, 2.5}, std::pair{0.7, 5.0}, std::pair{0.8, 9.0}}) {
        const double ours = percent(law::logarithmic, stress, 1000.0);
        RecordProperty("logarithmic at " + std::to_string(stress), std::to_string(ours / published) + " of the code");
        EXPECT_GT(ours, 1.3 * published);
        EXPECT_LT(ours, 2.0 * published);
    }
    // in its own words: 3 decades, (0.7 - 0.55)/10 of stress at S0/fy = 0.7
    EXPECT_NEAR(percent(law::logarithmic, 0.7 * 0.85, 1000.0), 4.5, 1e-9);
    EXPECT_NEAR(percent(law::logarithmic, 0.7 * 0.85, 1000.0, wl::spring_making::preset), 1.0, 1e-9);
    EXPECT_EQ(percent(law::logarithmic, 0.54 * 0.85, 1e5), 0.0);
    EXPECT_EQ(percent(law::logarithmic, 0.8, 0.5), 0.0);
}

TEST(CodeRelaxation, RisesWithTimeAndStressAndStaysBelowOne)
{
    std::mt19937 random(11);
    std::uniform_real_distribution<double> stress(0.0, 1.0), decade(-3.0, 9.0), more(0.0, 1.0);
    for (int i = 0; i < 2000; ++i) {
        const double mu = stress(random), mu2 = mu + (1.0 - mu) * more(random), d = decade(random),
                     d2 = d + 3.0 * more(random);
        for (const law which : every_law)
            for (const auto making : {wl::spring_making::plain, wl::spring_making::preset}) {
                const double lost = percent(which, mu, std::pow(10.0, d), making);
                EXPECT_GE(lost, 0.0);
                EXPECT_LE(lost, percent(which, mu, std::pow(10.0, d2), making));
                // the European formula's time exponent falls with stress: the rise with stress holds up to 1000 h, the
                // time its class is stated at, and beyond it for hours that its range covers at working stress
                if (which != law::eurocode || d < 3.0) {
                    EXPECT_LE(lost, percent(which, mu2, std::pow(10.0, d), making));
                }
            }
    }
}

TEST(CodeRelaxation, SaysWhatItCovers)
{
    EXPECT_TRUE(wl::code_relaxation_covers(law::model_code, 0.5, 1_h));
    EXPECT_FALSE(wl::code_relaxation_covers(law::model_code, 0.49, 1_h));
    EXPECT_FALSE(wl::code_relaxation_covers(law::model_code, 0.7, 0.9_h));
    EXPECT_TRUE(wl::code_relaxation_covers(law::eurocode, 0.8, 500000_h));
    EXPECT_FALSE(wl::code_relaxation_covers(law::eurocode, 0.8, 500001_h));
    EXPECT_FALSE(wl::code_relaxation_covers(law::logarithmic, 0.46, 10_h));
    EXPECT_TRUE(wl::code_relaxation_covers(law::logarithmic, 0.7, 10_h));
    for (const law which : every_law) {
        EXPECT_FALSE(wl::sources_of(which).flags().size() > 0U);
        EXPECT_FALSE(to_text(which).empty());
        EXPECT_EQ(percent(which, 0.7, 0.0), 0.0);
    }
    // what rests on memory says so
    EXPECT_FALSE(wl::sources_of(law::model_code).has(wl::source_kind::memory));
    EXPECT_TRUE(wl::sources_of(law::eurocode).has(wl::source_kind::memory));
    EXPECT_TRUE(wl::sources_of(law::logarithmic).has(wl::source_kind::memory));
}

TEST(CodeRelaxation, RefusesWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const law which : every_law) {
        EXPECT_THROW((void)wl::code_relaxation(which, 0.7, -1.0 * 1_h), wl::out_of_range_error);
        EXPECT_THROW((void)wl::code_relaxation(which, 0.7, wl::in_si<wl::duration>(nan)), wl::not_finite_error);
        EXPECT_THROW((void)wl::code_relaxation(which, 1.2, 1_h), wl::out_of_range_error);
        EXPECT_THROW((void)wl::code_relaxation(which, 0.7, 1_h, {wl::spring_making::plain, 0.0}),
                     wl::out_of_range_error);
        EXPECT_THROW((void)wl::code_relaxation(which, 0.7, 1_h, {wl::spring_making::plain, nan}), wl::not_finite_error);
    }
}
