#include <weldloop/core/literals.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/law/loop_heat_input.hpp>

#include <limits>
#include <string>

#include "law/worked_example.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::inputs_of;
using weldloop::test::reference_table;

// source: arc-heat-input-examples.csv; the other rows of it are held in arc_heat_test.cpp
TEST(LoopHeatInput, WorkedExamples)
{
    int met = 0;
    for (const auto& row : reference_table("arc-heat-input-examples.csv").rows()) {
        const std::string& id = row.text("id");
        const auto meets = [&](double ours) {
            ++met;
            EXPECT_NEAR_REL(ours, row.number("recomputed_value"), 0.01 * row.number("tolerance_pct")) << row.where();
        };
        if (id == "HI-17") {
            const loop_heat_input h = heat_input_of({.process = process::gmaw,
                                                     .at_supply = 28_V,
                                                     .loop_drop = 4_V,
                                                     .current = 200_A,
                                                     .travel = in_si<speed>(5e-3)});
            meets((h.without_loss / h.with_loss).value());
            EXPECT_NEAR(h.overstated, 1.0 / 6.0, 1e-12);  // "the record is 1/6 too high"
            EXPECT_EQ(h.factor, 0.8);
        } else if (id == "HI-14") {
            const loop_heat_input h = heat_input_of({.process = process::gmaw,
                                                     .at_supply = 28_V,
                                                     .loop_drop = 0_V,
                                                     .current = 280_A,
                                                     .travel = in_si<speed>(7e-3)});
            meets(h.with_loss.value() * 1e-6);
            EXPECT_EQ(h.with_loss, h.without_loss);
        } else if (id == "HI-05") {
            auto in = inputs_of(row.text("inputs"));
            const mass_rate fed = melting_rate(in_si<speed>(in.at("wfs") / 60.0), in_si<density>(in.at("rho")),
                                               in_si<length>(in.at("d") * 1e-3));
            const power melted = fed * in_si<specific_heat>(in.at("c")) * in_si<temperature_difference>(in.at("dT"));
            meets(100.0 *
                  wire_melting_efficiency(melted, in_si<voltage>(in.at("U")) * in_si<current>(in.at("I")), 2.0 / 3.0));
        }
    }
    EXPECT_EQ(met, 3);
}

TEST(LoopHeatInput, RulesDifferByTheFactor)
{
    recorded_weld w{.process = process::gtaw,
                    .at_supply = 14_V,
                    .loop_drop = 2_V,
                    .current = 120_A,
                    .travel = in_si<speed>(1.5e-3)};
    const loop_heat_input with = heat_input_of(w);
    w.rule = heat_input_rule::no_factor;
    const loop_heat_input without = heat_input_of(w);
    EXPECT_NEAR_REL(with.without_loss.value() * 1e-6, 0.576, 1e-9);  // HI-13 of the same table
    EXPECT_NEAR_REL(with.without_loss.value(), 0.6 * without.without_loss.value(), 1e-12);
    EXPECT_EQ(without.factor, 1.0);
    EXPECT_NE(to_text(heat_input_rule::with_factor).find("EN 1011-1"), std::string_view::npos);
}

TEST(LoopHeatInput, RefusesWhatCannotBe)
{
    recorded_weld w{
        .process = process::smaw, .at_supply = 24_V, .loop_drop = 24_V, .current = 120_A, .travel = in_si<speed>(3e-3)};
    EXPECT_THROW(static_cast<void>(heat_input_of(w)), out_of_range_error);
    w.loop_drop = in_si<voltage>(-1.0);
    EXPECT_THROW(static_cast<void>(heat_input_of(w)), out_of_range_error);
    w.loop_drop = in_si<voltage>(std::numeric_limits<double>::quiet_NaN());
    EXPECT_THROW(static_cast<void>(heat_input_of(w)), not_finite_error);
    EXPECT_THROW(static_cast<void>(wire_melting_efficiency(1_W, 10_W, 0.0)), out_of_range_error);
}

}  // namespace
