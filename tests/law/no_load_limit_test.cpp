#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/no_load_limit.hpp>

#include <cmath>
#include <limits>
#include <map>
#include <string>

#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

// source: arc-voltage.csv AV-40 to AV-48, EN 60974-1 as quoted (one source; ordinary work two)
TEST(NoLoadLimit, AsQuoted)
{
    const std::map<std::string, shock_hazard> hazards{
        {"ordinary", shock_hazard::ordinary},
        {"increased shock risk", shock_hazard::increased},
        {"torch held by machine, protected operator", shock_hazard::machine_held}};
    int met = 0;
    for (const auto& row : reference_table("arc-voltage.csv").rows()) {
        if (row.text("topic") != "no-load limit") continue;
        ++met;
        const std::string& what = row.text("quantity");
        const shock_hazard h = hazards.at(row.text("relation_or_conditions"));
        const no_load_limit limit =
            no_load_limit_for(h, what.starts_with("dc") ? output_current::direct : output_current::alternating);
        EXPECT_EQ(what == "ac rms" ? limit.rms.value() : limit.peak, in_si<voltage>(row.number("published_value")))
            << row.where();
        EXPECT_EQ(limit.from->kind, source_kind::standard);
        EXPECT_EQ(limit.rms.has_value(), what.starts_with("ac")) << row.where();
    }
    EXPECT_EQ(met, 9);
}

TEST(NoLoadLimit, PeakAndEffectiveValueBothHold)
{
    const auto of = [](std::optional<voltage> peak, std::optional<voltage> rms, shock_hazard h) {
        return standing_of({.kind = output_current::alternating, .peak = peak, .rms = rms}, h);
    };
    EXPECT_EQ(of(113_V, 80_V, shock_hazard::ordinary), no_load_standing::not_above);
    EXPECT_EQ(of(113.1_V, 80_V, shock_hazard::ordinary), no_load_standing::above_limit);
    EXPECT_EQ(of(113_V, 80.1_V, shock_hazard::ordinary), no_load_standing::above_limit);
    EXPECT_EQ(of({}, 80.1_V, shock_hazard::ordinary), no_load_standing::above_limit);
    EXPECT_EQ(of({}, 49_V, shock_hazard::increased), no_load_standing::above_limit);
    EXPECT_EQ(of(69_V, {}, shock_hazard::increased), no_load_standing::above_limit);
    EXPECT_EQ(of({}, {}, shock_hazard::ordinary), no_load_standing::not_known);
    const auto direct = [](voltage peak, shock_hazard h) { return standing_of({.peak = peak}, h); };
    EXPECT_EQ(direct(113_V, shock_hazard::increased), no_load_standing::not_above);
    EXPECT_EQ(direct(114_V, shock_hazard::increased), no_load_standing::above_limit);
    EXPECT_EQ(direct(114_V, shock_hazard::machine_held), no_load_standing::not_above);
}

// an effective value is never above the peak: by itself it can condemn, and cannot pass
TEST(NoLoadLimit, AnEffectiveValueAboveThePeaksLimitIsAboveIt)
{
    const auto direct = [](voltage rms) {
        return standing_of({.kind = output_current::direct, .rms = rms}, shock_hazard::ordinary);
    };
    EXPECT_EQ(direct(114_V), no_load_standing::above_limit);
    EXPECT_EQ(direct(113_V), no_load_standing::not_known);
    EXPECT_EQ(direct(90_V), no_load_standing::not_known);
}

TEST(NoLoadLimit, RefusesWhatCannotBe)
{
    EXPECT_THROW(static_cast<void>(standing_of({.peak = 0_V}, shock_hazard::ordinary)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(standing_of({.kind = output_current::alternating, .peak = 60_V, .rms = 70_V},
                                               shock_hazard::ordinary)),
                 out_of_range_error);
    EXPECT_THROW(static_cast<void>(standing_of({.peak = in_si<voltage>(std::numeric_limits<double>::quiet_NaN())},
                                               shock_hazard::ordinary)),
                 not_finite_error);
}

}  // namespace
