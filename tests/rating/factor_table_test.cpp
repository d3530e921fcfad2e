// Rating factors: the square root against every published factor, the model's own beside it.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/factor_table.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

TEST(FactorTable, SquareRootMeetsThePublishedFactors)
{
    // source: ampacity-ambient-factors.csv, families with a base of the square-root law; one cell of BS 7671:1992
    // limits the credit below the base (1.02 against 1.044)
    double worst_model = 0.0;
    std::size_t rows = 0;
    for (const auto& row : reference_table("ampacity-ambient-factors.csv").rows()) {
        cable lead = welding_cable(square_mm(50), 10_m);
        lead.limit = temperature::celsius(row.number("conductor_max_C"));
        const std::array air{temperature::celsius(row.number("ambient_C"))};
        const factor_table t = factor_table_of(lead, {.air = temperature::celsius(row.number("base_ambient_C"))},
                                               duty_cycle::continuous(), air);
        ASSERT_EQ(t.ambient.size(), 1U) << row.where();
        const bool limited = row.text("family") == "rubber 85 C fixed wiring" && row.number("ambient_C") == 25;
        EXPECT_NEAR(t.ambient[0].by_square_root, row.number("factor"), limited ? 0.03 : 0.012) << row.where();
        const double off = std::fabs(t.ambient[0].by_model - row.number("factor"));
        if (off > worst_model)
            RecordProperty("worst_row", row.where() + " " + row.text("family") + " " + row.text("ambient_C"));
        worst_model = std::max(worst_model, off);
        // the model falls faster with warm air and gains more in cool air: the heat given off bends
        const bool warmer = row.number("ambient_C") > row.number("base_ambient_C");
        if (warmer) {
            EXPECT_LE(t.ambient[0].by_model, t.ambient[0].by_square_root + 1e-3) << row.where();
        }
        ++rows;
    }
    EXPECT_GE(rows, 100U);
    EXPECT_LT(worst_model, 0.16);  // air of 10 degC with a base of 40 and a limit of 60
    RecordProperty("worst_model", std::to_string(worst_model));
    RecordProperty("rows", std::to_string(rows));
}

TEST(FactorTable, WeldingCableFactorsByTheModel)
{
    // source: BS 638-4 rating factors, base 25 degC, 85 degC
    for (const double mm2 : {16.0, 50.0, 185.0})
        for (const auto& row : reference_table("ampacity-ambient-factors.csv").rows()) {
            if (row.text("family") != "welding cable 85 C") continue;
            const std::array air{temperature::celsius(row.number("ambient_C"))};
            const factor_table t =
                factor_table_of(welding_cable(square_mm(mm2), 10_m), {}, duty_cycle::of(3_min, 5_min), air);
            EXPECT_NEAR(t.ambient[0].by_model, row.number("factor"), 0.02) << row.where();
        }
}

TEST(FactorTable, IsConsistent)
{
    for (const duty_cycle& duty : {duty_cycle::continuous(), duty_cycle::of(3_min, 5_min), duty_cycle::of(0.2)}) {
        const cable lead = welding_cable(aught(2), 10_m);
        const factor_table t = factor_table_of(lead, {}, duty);
        double last = 10.0;
        for (const ambient_row& r : t.ambient) {
            EXPECT_LT(r.by_model, last);
            last = r.by_model;
            EXPECT_NEAR_REL(r.amps.value(), r.by_model * t.rated.value(), 1e-12);
            if (r.air == 25_degC) {
                EXPECT_NEAR(r.by_model, 1.0, 1e-9);
                EXPECT_EQ(r.by_square_root, 1.0);
            }
        }
        ASSERT_EQ(t.grouping.size(), all_lays.size());
        EXPECT_EQ(t.grouping.front().lay, lay::alone);
        for (const grouping_row& r : t.grouping) {
            EXPECT_LE(r.by_model, 1.0 + 1e-9);
            EXPECT_GT(r.by_model, r.lay == lay::coiled || r.lay == lay::bundled ? 0.2 : 0.7);
        }
        EXPECT_TRUE(t.basis.has(range_flag::arrangement_judgement));
    }
    // rows at the limit or above are left blank, as tables do
    cable cool = welding_cable(aught(2), 10_m);
    cool.limit = 50_degC;
    EXPECT_EQ(factor_table_of(cool, {}).ambient.back().air, 45_degC);
}

TEST(FactorTable, RefusesBadInput)
{
    cable lead = welding_cable(aught(2), 10_m);
    EXPECT_THROW((void)factor_table_of(lead, {.air = 90_degC}), out_of_range_error);
    EXPECT_THROW((void)factor_table_of(lead, {.wind = in_si<speed>(std::numeric_limits<double>::quiet_NaN())}),
                 not_finite_error);
    EXPECT_THROW((void)factor_table_of(lead, {.air = 30_degC, .altitude = in_si<length>(1e6)}), out_of_range_error);
    lead.overall_diameter = length{};
    EXPECT_THROW((void)factor_table_of(lead, {}), missing_data_error);
}
