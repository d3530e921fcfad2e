#include <weldloop/core/literals.hpp>
#include <weldloop/law/arc_line.hpp>

#include <limits>
#include <string>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

// source: arc-voltage.csv AV-10 (a public teaching page: 10 to 40 V), and recalled rows AV-20 to AV-24 beside it
TEST(ArcLine, UsualArcsLieWherePublishedOnesDo)
{
    for (const process p : all_processes)
        for (const current& i : {100_A, 200_A, 300_A}) {
            const voltage u = arc_voltage_at(usual_arc_line(p), usual_arc_length(p), i);
            EXPECT_GE(u, 10_V) << to_text(p);
            EXPECT_LE(u, 40_V) << to_text(p);
        }
    int gradients = 0;
    for (const auto& row : reference_table("arc-voltage.csv").rows()) {
        if (row.text("id") == "AV-23") {
            EXPECT_EQ(row.text("relation_or_conditions"), "arc equation U = 15.7 + 0.022 I + 0.636 L(mm)");
            EXPECT_NEAR(arc_voltage_at(usual_arc_line(process::gmaw), 4_mm, 250_A).value(), 15.7 + 5.5 + 4 * 0.636,
                        1e-9);
            continue;
        }
        const bool is_tungsten = row.text("id") == "AV-20", is_rutile = row.text("id") == "AV-24";
        if (!is_tungsten && !is_rutile && row.text("id") != "AV-22") continue;
        ++gradients;
        const std::string& span = row.text("published_value");
        const process p = is_tungsten ? process::gtaw : is_rutile ? process::smaw : process::gmaw;
        const band<arc_gradient> ours = usual_arc_gradient(p);
        EXPECT_NEAR(ours.low.value() * 1e-3, std::stod(span), 1e-12) << row.where();
        EXPECT_NEAR(ours.high.value() * 1e-3, std::stod(span.substr(span.find("to") + 2)), 1e-12) << row.where();
        EXPECT_GT(ours.typical, ours.low);
        EXPECT_LT(ours.typical, ours.high);
    }
    EXPECT_EQ(gradients, 3);
}

TEST(ArcLine, AllButTheRecalledEquationMeetTheirLoadVoltage)
{
    for (const process p : {process::smaw, process::fcaw, process::gtaw, process::saw})
        EXPECT_NEAR(arc_voltage_at(usual_arc_line(p), usual_arc_length(p), 180_A).value(),
                    conventional_load_voltage(p, 180_A).value(), 1e-12)
            << to_text(p);
}

TEST(ArcLine, LengthAndVoltageAreInverse)
{
    const arc_line line = usual_arc_line(process::smaw);
    EXPECT_NEAR(arc_length_at(line, arc_voltage_at(line, 2.5_mm, 140_A), 140_A).value(), 2.5e-3, 1e-15);
    EXPECT_LT(arc_length_at(line, 12_V, 140_A), 0_mm);
}

TEST(ArcLine, BasisSaysWhatIsRecalled)
{
    for (const process p : all_processes)
        EXPECT_TRUE(usual_arc_line_basis(p).has(source_kind::judgement)) << to_text(p);
    EXPECT_TRUE(usual_arc_line_basis(process::gmaw).has(source_kind::memory));
    EXPECT_TRUE(usual_arc_line_basis(process::smaw).has(source_kind::standard));
}

TEST(ArcLine, RefusesWhatCannotBe)
{
    const arc_line line = usual_arc_line(process::gtaw);
    const auto refused = [](auto&& ask) { EXPECT_THROW(static_cast<void>(ask()), out_of_range_error); };
    refused([&] { return arc_voltage_at(line, in_si<length>(-0.001), 100_A); });
    refused([&] { return arc_voltage_at(line, 2_mm, in_si<current>(-1.0)); });
    refused([&] { return arc_voltage_at({}, 2_mm, 100_A); });
    refused([&] { return arc_length_at({.at_no_length = 10_V}, 12_V, 100_A); });
    refused([] { return arc_line_through({5_mm, 30_V}, {5_mm, 34_V}); });
    refused([] { return arc_line_through({5_mm, 34_V}, {7_mm, 30_V}); });
    EXPECT_THROW(static_cast<void>(arc_length_at(line, in_si<voltage>(std::numeric_limits<double>::infinity()), 1_A)),
                 not_finite_error);
}

}  // namespace
