// The inverses of a lead's rating: each answer put back in must bring the lead to what binds.
#include <cstddef>
#include <limits>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/lead_limits.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

struct random_case {
    cable lead;
    surroundings where;
    load work;
};

random_case drawn(std::mt19937_64& engine)
{
    std::uniform_real_distribution<double> pick(0.0, 1.0);
    random_case out{welding_cable(square_mm(10.0 + 175.0 * pick(engine)), 20_m), {}, {100_A}};
    out.where.air = temperature::celsius(10.0 + 35.0 * pick(engine));
    out.where.wind = in_si<speed>(pick(engine) < 0.5 ? 0.0 : 3.0 * pick(engine));
    out.where.lay = all_lays[static_cast<std::size_t>(8.0 * pick(engine)) % all_lays.size()];
    if (pick(engine) < 0.3) {
        out.lead.missing_strands = 0.5 * pick(engine);
        out.lead.damaged_length = 200_mm;
    }
    out.work.duty = duty_cycle::of((0.2 + 0.8 * pick(engine)) * 5_min, 5_min);
    return out;
}

}  // namespace

TEST(LeadLimits, LargestDutyBringsTheLeadToItsLimit)
{
    std::mt19937_64 engine(21);
    for (int i = 0; i < 60; ++i) {
        random_case c = drawn(engine);
        const ampacity rated = ampacity_of(c.lead, c.where, c.work.duty);
        const duty_answer found = largest_duty(c.lead, c.where, rated.amps, c.work.duty.period());
        EXPECT_NEAR(static_cast<double>(found.duty.share()), static_cast<double>(c.work.duty.share()), 1e-6);
        EXPECT_FALSE(found.unbound);
        EXPECT_NEAR(found.heat_margin.value(), 0.0, 1e-5);
    }
    const cable lead = welding_cable(aught(2), 20_m);
    const duty_answer easy = largest_duty(lead, {}, 100_A);
    EXPECT_TRUE(easy.unbound);
    EXPECT_TRUE(easy.duty.is_continuous());
    EXPECT_GT(easy.heat_margin.value(), 20.0);
    EXPECT_EQ(largest_duty(lead, {}, 500_A).duty.period(), 10_min);
}

TEST(LeadLimits, LongestLeadLosesTheAllowedVoltage)
{
    std::mt19937_64 engine(22);
    for (int i = 0; i < 60; ++i) {
        random_case c = drawn(engine);
        c.work.current = 0.9 * ampacity_of(c.lead, c.where, c.work.duty).amps;
        const length_answer found = longest_lead(c.lead, c.work, c.where, 4_V);
        cable as_long = c.lead;
        as_long.length = found.length;
        const cable_heating hot = heating_of(as_long, c.where, c.work);
        EXPECT_NEAR_REL(drop_of(as_long, c.work.current, hot.conductor_mean).value(), 4.0, 1e-9);
        EXPECT_NEAR_REL(found.drop.value(), 4.0, 1e-9);
        EXPECT_EQ(found.bound_by, lead_limit::drop);
        EXPECT_GT(found.heat_margin.value(), 0.0);
        EXPECT_NEAR_REL(found.heat_margin.value(),
                        (limit_of(c.lead) - heating_of(c.lead, c.where, c.work).conductor_peak).value(), 1e-9);
        EXPECT_NEAR_REL(found.current_margin.value(), c.work.current.value() / 9.0, 1e-6);
    }
    // source: 10.37 ohm circular mil per foot (trade article on cable sizes): a cold lead carries U cmil/(10.37 I) ft,
    // of nominal resistance, which is what the article's figure is
    const cable lead = welding_cable(aught(2), 20_m, resistance_choice::nominal);
    EXPECT_NEAR_REL(number_in(longest_lead(lead, {1_A}, {.air = 20_degC}, 40_mV).length, "ft"),
                    0.04 * number_in(lead.size.area(), "cmil") / 10.37 / 1.06, 0.005);
    EXPECT_NEAR_REL(longest_lead(lead, {200_A}, {}, 8_V).length.value(),
                    2.0 * longest_lead(lead, {200_A}, {}, 4_V).length.value(), 1e-9);
}

TEST(LeadLimits, HighestAirBringsTheLeadToItsLimit)
{
    std::mt19937_64 engine(23);
    for (int i = 0; i < 60; ++i) {
        random_case c = drawn(engine);
        c.work.current = ampacity_of(c.lead, c.where, c.work.duty).amps;
        const air_answer found = highest_air(c.lead, c.work, c.where);
        EXPECT_NEAR((found.air - c.where.air).value(), 0.0, 1e-6);
        EXPECT_NEAR(found.air_margin.value(), 0.0, 1e-6);
        EXPECT_EQ(found.bound_by, lead_limit::heat);
        c.work.current = 0.8 * c.work.current;
        EXPECT_GT(highest_air(c.lead, c.work, c.where).air_margin.value(), 5.0);
        c.work.current = 1.4 * c.work.current;
        EXPECT_LT(highest_air(c.lead, c.work, c.where).air_margin.value(), 0.0);
    }
    const cable lead = welding_cable(aught(2), 20_m);
    EXPECT_LE(highest_air(lead, {in_si<current>(1e-3)}, {}).air, limit_of(lead));
}

TEST(LeadLimits, SayWhereNoneExists)
{
    const cable lead = welding_cable(aught(2), 20_m);
    EXPECT_THROW((void)largest_duty(lead, {}, in_si<current>(1e7)), no_solution_error);
    EXPECT_THROW((void)largest_duty(lead, {.air = 85_degC}, 100_A), out_of_range_error);
    try {
        (void)longest_lead(lead, {900_A}, {}, 4_V);
        ADD_FAILURE() << "900 A is too much for the lead";
    } catch (const no_solution_error& e) {
        EXPECT_NE(e.value().find("heat binds"), std::string::npos) << e.what();
    }
    cable worn = lead;
    worn.missing_strands = 0.5;
    worn.damaged_length = 1_m;
    EXPECT_THROW((void)longest_lead(worn, {200_A}, {}, 1_mV), no_solution_error);
    EXPECT_THROW((void)highest_air(lead, {5000_A}, {}), no_solution_error);
}

TEST(LeadLimits, RefuseBadInput)
{
    cable lead = welding_cable(aught(2), 20_m);
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        EXPECT_THROW((void)largest_duty(lead, {}, in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)largest_duty(lead, {}, 300_A, in_si<duration>(bad)), not_finite_error);
        EXPECT_THROW((void)longest_lead(lead, {in_si<current>(bad)}, {}, 4_V), not_finite_error);
        EXPECT_THROW((void)longest_lead(lead, {100_A}, {}, in_si<voltage>(bad)), not_finite_error);
        EXPECT_THROW((void)highest_air(lead, {in_si<current>(bad)}, {}), not_finite_error);
        EXPECT_THROW((void)highest_air(lead, {100_A}, {.wind = in_si<speed>(bad)}), not_finite_error);
    }
    EXPECT_THROW((void)largest_duty(lead, {}, 0_A), out_of_range_error);
    EXPECT_THROW((void)largest_duty(lead, {}, 300_A, 0_min), out_of_range_error);
    EXPECT_THROW((void)longest_lead(lead, {0_A}, {}, 4_V), out_of_range_error);
    EXPECT_THROW((void)longest_lead(lead, {100_A}, {}, 0_V), out_of_range_error);
    EXPECT_THROW((void)highest_air(lead, {0_A}, {}), out_of_range_error);
    lead.overall_diameter = length{};
    EXPECT_THROW((void)largest_duty(lead, {}, 300_A), missing_data_error);
    EXPECT_THROW((void)longest_lead(lead, {100_A}, {}, 4_V), missing_data_error);
    EXPECT_THROW((void)highest_air(lead, {100_A}, {}), missing_data_error);
}
