// How hot the square-root rule of the guide tables really makes a lead.
#include <limits>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/square_root_excess.hpp>

using namespace weldloop;
using namespace weldloop::literals;

TEST(SquareRootExcess, VanishesWhereTheRuleIsExact)
{
    for (const double mm2 : {16.0, 70.0, 185.0}) {
        const cable lead = welding_cable(square_mm(mm2), 10_m);
        EXPECT_NEAR(excess_of_square_root_rule(lead, {}, duty_cycle::continuous()).over_limit.value(), 0.0, 1e-6);
        EXPECT_LT(excess_of_square_root_rule(lead, {}, duty_cycle::of(600_ms, 1_s)).over_limit.value(), 0.2);
    }
}

TEST(SquareRootExcess, GrowsWithPeriodAndRestAndFallsWithSize)
{
    for (const double mm2 : {16.0, 35.0, 70.0, 120.0, 185.0}) {
        const cable lead = welding_cable(square_mm(mm2), 10_m);
        double last = 0.0;
        for (const duration& period : {1_min, 5_min, 10_min}) {
            const square_root_excess e = excess_of_square_root_rule(lead, {}, duty_cycle::of(0.6 * period, period));
            EXPECT_GT(e.over_limit.value(), last);
            EXPECT_GT(e.by_rule, e.by_peak);
            EXPECT_NEAR((e.conductor_peak - limit_of(lead) - e.over_limit).value(), 0.0, 1e-9);
            last = e.over_limit.value();
            RecordProperty("K_at_60_of_" + std::to_string(static_cast<int>(number_in(period, "min"))) + "_min_" +
                               std::to_string(static_cast<int>(mm2)),
                           std::to_string(last));
        }
        EXPECT_GT(excess_of_square_root_rule(lead, {}, duty_cycle::of(2_min, 10_min)).over_limit.value(), last);
    }
    const auto at = [](double mm2) {
        return excess_of_square_root_rule(welding_cable(square_mm(mm2), 10_m), {}, duty_cycle::of(6_min, 10_min))
            .over_limit.value();
    };
    EXPECT_GT(at(16), at(70));
    EXPECT_GT(at(70), at(185));
    // the numbers of the comment
    EXPECT_NEAR(at(16), 23.0, 1.0);
    EXPECT_NEAR(at(185), 7.0, 1.0);
}

TEST(SquareRootExcess, RefusesBadInput)
{
    cable lead = welding_cable(aught(2), 10_m);
    EXPECT_THROW((void)excess_of_square_root_rule(lead, {.air = 90_degC}, duty_cycle::of(0.6)), out_of_range_error);
    EXPECT_THROW((void)excess_of_square_root_rule(
                     lead, {.wind = in_si<speed>(std::numeric_limits<double>::quiet_NaN())}, duty_cycle::of(0.6)),
                 not_finite_error);
    lead.conductor_diameter = length{};
    EXPECT_THROW((void)excess_of_square_root_rule(lead, {}, duty_cycle::of(0.6)), missing_data_error);
}
