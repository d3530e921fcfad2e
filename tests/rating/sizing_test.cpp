#include <limits>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/sizing.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {
constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

bool suffices(const conductor_size& size, const lead_request& r)
{
    cable lead = welding_cable(size, r.length);
    lead.limit = r.limit;
    const cable_heating hot = heating_of(lead, r.where, {.current = r.current, .duty = r.duty});
    return hot.conductor_peak <= r.limit &&
           (r.both_leads ? 2.0 : 1.0) * drop_of(lead, r.current, hot.conductor_mean) <= r.allowed_drop;
}
}  // namespace

// source: Ohm's law with the resistance of standard copper by hand: 75 ft of 2/0 class K at 50 degC, 260 A
TEST(Drop, ByHand)
{
    const cable lead = welding_cable(aught(2), 75_ft);
    const double by_hand = 260 * 1.06 * 10.371 * 75 / 133077 * (1 + 0.00393 * 30);
    EXPECT_NEAR_REL(drop_of(lead, 260_A, 50_degC).value(), by_hand, 2e-4);
    EXPECT_EQ(drop_of(lead, 0_A, 50_degC), 0_V);
    EXPECT_EQ(drop_of(lead, 520_A, 50_degC), 2.0 * drop_of(lead, 260_A, 50_degC));
}

TEST(Drop, DamageCosts)
{
    cable lead = welding_cable(aught(2), 20_m);
    const voltage sound = drop_of(lead, 260_A, 50_degC);
    lead.missing_strands = 0.5;
    lead.damaged_length = 2_m;
    EXPECT_NEAR_REL(drop_of(lead, 260_A, 50_degC).value(), 1.1 * sound.value(), 1e-12);
}

TEST(Drop, RefusesWhatCannotBe)
{
    const cable lead = welding_cable(aught(2), 20_m);
    EXPECT_THROW((void)drop_of(lead, in_si<current>(nan_value), 50_degC), not_finite_error);
    EXPECT_THROW((void)drop_of(lead, in_si<current>(infinite), 50_degC), not_finite_error);
    EXPECT_THROW((void)drop_of(lead, -1.0 * 1_A, 50_degC), out_of_range_error);
    cable broken = lead;
    broken.length = 0_m;
    EXPECT_THROW((void)drop_of(broken, 1_A, 50_degC), out_of_range_error);
}

TEST(Sizing, TheSmallestOfItsFamilyThatSuffices)
{
    std::mt19937 random(31);
    std::uniform_real_distribution<double> unit(0, 1);
    int found = 0, by_heat = 0, by_drop = 0;
    for (int n = 0; n < 200; ++n) {
        const lead_request r{.length = in_si<length>(3 + 60 * unit(random)),
                             .current = in_si<current>(50 + 450 * unit(random)),
                             .duty = duty_cycle::of(in_si<duration>(60 + 540 * unit(random)), 600_s),
                             .where = {.air = temperature::celsius(10 + 35 * unit(random))},
                             .allowed_drop = in_si<voltage>(1.5 + 4 * unit(random)),
                             .both_leads = n % 2 == 0,
                             .family = n % 3 == 0 ? size_family::metric : size_family::american,
                             .limit = n % 5 == 0 ? 75_degC : 85_degC};
        try {
            const lead_choice c = smallest_lead(r);
            ++found;
            (c.governed_by == lead_limit::heat ? by_heat : by_drop) += 1;
            EXPECT_TRUE(suffices(c.cable.size, r));
            EXPECT_GE(c.current_margin.value(), -1e-6);
            EXPECT_GE(c.drop_margin.value(), 0.0);
            EXPECT_EQ(c.rated.amps - r.current, c.current_margin);
            EXPECT_EQ(c.cable.limit, r.limit);
            EXPECT_EQ(c.cable.length, r.length);
            EXPECT_LE(c.heating.conductor_peak, r.limit);
            const auto sizes = sizes_of(r.family);
            for (const conductor_size& smaller : sizes)
                if (smaller < c.cable.size) {
                    EXPECT_FALSE(suffices(smaller, r)) << to_text(smaller);
                }
        } catch (const no_solution_error&) {
            EXPECT_FALSE(suffices(sizes_of(r.family).back(), r));
        }
    }
    EXPECT_GT(found, 100);
    EXPECT_GT(by_heat, 5);
    EXPECT_GT(by_drop, 50);
}

TEST(Sizing, SaysWhatGoverns)
{
    const lead_request near{.length = 3_m, .current = 300_A, .allowed_drop = 4_V};
    EXPECT_EQ(smallest_lead(near).governed_by, lead_limit::heat);
    const lead_request far{.length = 60_m, .current = 100_A, .allowed_drop = 2_V};
    EXPECT_EQ(smallest_lead(far).governed_by, lead_limit::drop);
    // the smallest size is ample: the nearer limit
    EXPECT_EQ(to_text(smallest_lead({.length = 1_m, .current = 20_A, .allowed_drop = 4_V}).cable.size), "8 AWG");
    EXPECT_EQ(to_text(lead_limit::heat), "heat");
    EXPECT_EQ(to_text(lead_limit::drop), "drop");
}

TEST(Sizing, BothLeadsShareTheDrop)
{
    lead_request r{.length = 23_m,
                   .current = 260_A,
                   .duty = duty_cycle::of(6_min, 10_min),
                   .where = {.air = 35_degC},
                   .allowed_drop = 2_V};
    const lead_choice one = smallest_lead(r);
    r.both_leads = true;
    const lead_choice both = smallest_lead(r);
    EXPECT_GT(both.cable.size, one.cable.size);
    EXPECT_NEAR_REL(both.drop.value(), 2 * drop_of(both.cable, 260_A, both.heating.conductor_mean).value(), 1e-12);
    r.family = size_family::metric;
    EXPECT_EQ(smallest_lead(r).cable.size.scale(), size_scale::square_mm);
}

TEST(Sizing, RefusesWhenNoSizeSuffices)
{
    try {
        (void)smallest_lead({.length = 500_m, .current = 500_A, .allowed_drop = 1_V});
        FAIL();
    } catch (const no_solution_error& e) {
        EXPECT_NE(e.value().find("500 kcmil"), std::string::npos) << e.what();
    }
    try {
        (void)smallest_lead({.length = 5_m, .current = 50_kA, .allowed_drop = 100_V, .family = size_family::metric});
        FAIL();
    } catch (const no_solution_error& e) {
        EXPECT_NE(e.value().find("240 mm2"), std::string::npos) << e.what();
    }
}

TEST(Sizing, RefusesWhatCannotBe)
{
    const lead_request good{.length = 20_m, .current = 200_A, .allowed_drop = 4_V};
    EXPECT_NO_THROW((void)smallest_lead(good));
    for (double bad : {nan_value, infinite, 0.0, -1.0}) {
        lead_request r = good;
        r.length = in_si<length>(bad);
        EXPECT_THROW((void)smallest_lead(r), error);
        r = good;
        r.current = in_si<current>(bad);
        EXPECT_THROW((void)smallest_lead(r), error);
        r = good;
        r.allowed_drop = in_si<voltage>(bad);
        EXPECT_THROW((void)smallest_lead(r), error);
    }
    lead_request r = good;
    r.where.air = 85_degC;
    EXPECT_THROW((void)smallest_lead(r), out_of_range_error);
    r = good;
    r.where.wind = in_si<speed>(nan_value);
    EXPECT_THROW((void)smallest_lead(r), not_finite_error);
}
