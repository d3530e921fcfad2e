// The multipliers of the codes as printed, and what follows from them.
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/rating/lead/supply_conductor.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

double share_of(supplied_welder w, double duty_percent)
{
    return supply_current_of(w, 1_A, duty_percent / 100).multiplier;
}

/// What one more welder of 100 A adds to a feeder that has `before` of them.
double added(welder_group group, std::size_t before)
{
    const std::vector<current> with(before + 1, 100_A);
    const double all = group_supply_current(group, with).value();
    return before == 0 ? all : all - group_supply_current(group, std::span<const current>(with.data(), before)).value();
}

}  // namespace

// source: NFPA 70 table 630.11(A) (one or two sources by row), table 630.31(A) (from memory; each the square root of
// its duty, rounded, as are the arc rows), 630.11(B) and 630.31(B) = C22.1 rules 42-006 and 42-014 (two sources),
// varying operation (one source)
TEST(SupplyConductor, TablesAreAsPublished)
{
    const std::map<std::string, supplied_welder> by_duty{{"arc_nonmotor_generator", supplied_welder::arc_welder},
                                                         {"arc_motor_generator", supplied_welder::motor_generator},
                                                         {"resistance_welder", supplied_welder::resistance_welder}};
    int duty_rows = 0, recalled = 0, group_rows = 0, varying = 0;
    for (const auto& row : reference_table("welding-nec-630-multipliers.csv").rows()) {
        const std::string& item = row.text("item");
        const double multiplier = row.number("multiplier");
        if (const auto found = by_duty.find(item); found != by_duty.end()) {
            const double percent = row.number("duty_cycle_percent");
            const supply_current s = supply_current_of(found->second, 40_A, percent / 100);
            EXPECT_EQ(s.multiplier, multiplier) << row.where();
            EXPECT_EQ(s.row_percent, percent) << row.where();
            EXPECT_NEAR_REL(s.amps.value(), 40 * multiplier, 1e-14) << row.where();
            EXPECT_EQ(s.recalled, row.text("verified") == "memory") << row.where();
            // the guide rule of equal heating, to the two digits the code prints
            const double root =
                equal_heating_current(1_A, duty_cycle::of(percent / 100), duty_cycle::continuous()).value();
            EXPECT_NEAR(root, row.number("sqrt_of_duty"), 0.00051) << row.where();
            if (found->second == supplied_welder::motor_generator)
                EXPECT_GE(multiplier, root - 1e-12) << row.where();
            else if (percent == 60)  // the row prints 0.78 where the root is 0.7746: rounded up
                EXPECT_NEAR(multiplier, std::ceil(100 * root) / 100, 1e-12) << row.where();
            else
                EXPECT_NEAR(multiplier, root, 0.0051) << row.where();
            ++duty_rows;
            recalled += s.recalled ? 1 : 0;
        } else if (item.starts_with("resistance, varying")) {
            const supplied_welder w = item.find("manual") != std::string::npos ? supplied_welder::varying_manual_welder
                                                                               : supplied_welder::varying_seam_welder;
            for (const double percent : {1.0, 50.0, 100.0}) EXPECT_EQ(share_of(w, percent), multiplier) << row.where();
            ++varying;
        } else {
            const bool is_arc = item.starts_with("arc group");
            const welder_group group = is_arc ? welder_group::arc_welders : welder_group::resistance_welders;
            const std::vector<std::size_t> places = item.ends_with("1st and 2nd largest")
                                                        ? std::vector<std::size_t>{0, 1}
                                                    : item.ends_with("3rd largest")  ? std::vector<std::size_t>{2}
                                                    : item.ends_with("4th largest")  ? std::vector<std::size_t>{3}
                                                    : item.ends_with("each further") ? std::vector<std::size_t>{4, 5, 9}
                                                    : item.ends_with(": largest")    ? std::vector<std::size_t>{0}
                                                    : item.ends_with("each other")   ? std::vector<std::size_t>{1, 2, 7}
                                                                                     : std::vector<std::size_t>{};
            ASSERT_FALSE(places.empty()) << row.where();
            for (const std::size_t place : places)
                EXPECT_NEAR(added(group, place), 100 * multiplier, 1e-10) << row.where() << ", place " << place;
            ++group_rows;
        }
    }
    EXPECT_EQ(duty_rows, 27);
    EXPECT_EQ(recalled, 9);
    EXPECT_EQ(group_rows, 6);
    EXPECT_EQ(varying, 2);
}

TEST(SupplyConductor, TakesTheNextHigherDuty)
{
    EXPECT_EQ(share_of(supplied_welder::arc_welder, 50.1), 0.78);
    EXPECT_EQ(share_of(supplied_welder::arc_welder, 7.0), 0.45);  // 20 or less
    EXPECT_EQ(share_of(supplied_welder::resistance_welder, 1.0), 0.22);
    EXPECT_EQ(share_of(supplied_welder::resistance_welder, 7.0), 0.27);
    for (const supplied_welder w : all_supplied_welders) {
        double last = 0.0;
        for (double percent = 0.5; percent <= multipliers_of(w).back().duty_percent; percent += 0.5) {
            EXPECT_GE(share_of(w, percent), last) << to_text(w) << " at " << percent;
            last = share_of(w, percent);
        }
        EXPECT_FALSE(to_text(w).empty());
    }
}

TEST(SupplyConductor, OrderOfTheGroupDoesNotMatter)
{
    const std::array one_way{30_A, 80_A, 55_A, 20_A, 10_A}, other_way{10_A, 20_A, 30_A, 55_A, 80_A};
    const double by_hand = 80 + 55 + 0.85 * 30 + 0.70 * 20 + 0.60 * 10;
    EXPECT_NEAR(group_supply_current(welder_group::arc_welders, one_way).value(), by_hand, 1e-12);
    EXPECT_NEAR(group_supply_current(welder_group::arc_welders, other_way).value(), by_hand, 1e-12);
    EXPECT_NEAR(group_supply_current(welder_group::resistance_welders, one_way).value(),
                80 + 0.60 * (55 + 30 + 20 + 10), 1e-12);
    const std::array single{0_A};
    EXPECT_EQ(group_supply_current(welder_group::arc_welders, single).value(), 0.0);
}

TEST(SupplyConductor, RefusesWhatCannotBe)
{
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        EXPECT_THROW((void)supply_current_of(supplied_welder::arc_welder, in_si<current>(bad), 0.6), not_finite_error);
        EXPECT_THROW((void)supply_current_of(supplied_welder::arc_welder, 40_A, bad), not_finite_error);
        const std::array amps{40_A, in_si<current>(bad)};
        EXPECT_THROW((void)group_supply_current(welder_group::arc_welders, amps), not_finite_error);
    }
    EXPECT_THROW((void)supply_current_of(supplied_welder::arc_welder, 0_A, 0.6), out_of_range_error);
    EXPECT_THROW((void)supply_current_of(supplied_welder::arc_welder, 40_A, 60.0), out_of_range_error);
    EXPECT_THROW((void)supply_current_of(supplied_welder::arc_welder, 40_A, 0.0), out_of_range_error);
    EXPECT_THROW((void)supply_current_of(supplied_welder::resistance_welder, 40_A, 0.51), out_of_range_error);
    EXPECT_THROW((void)group_supply_current(welder_group::arc_welders, {}), out_of_range_error);
    const std::array negative{-1.0 * 40_A};
    const std::array huge{in_si<current>(1e308), in_si<current>(1e308)};
    EXPECT_THROW((void)group_supply_current(welder_group::arc_welders, negative), out_of_range_error);
    EXPECT_THROW((void)group_supply_current(welder_group::arc_welders, huge), not_finite_error);
}
