// Thermal life of a lead's covering as intervals.
#include <weldloop/core/literals.hpp>
#include <weldloop/life/covering_ageing.hpp>
#include <weldloop/part/welding_cable.hpp>

#include <array>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

constexpr double hours_of_a_year = 8766.0;

double years_until(double share_of_an_hour)
{
    return 1.0 / share_of_an_hour / hours_of_a_year;
}

// source: Alghamdi and Desuqi, Heliyon 6 (2020) e03120, abstract (read): cross-linked polyethylene is expected to last
// 40 to 60 years at 90 degC, and two kinds tested at 7 to 30 years for 95 to 105 degC. The interval must hold them;
// nothing is fitted to them.
TEST(CoveringAgeing, TheIntervalHoldsAPublishedEstimate)
{
    const covering_age at90 = covering_age_at(xlpe, 90_degC, 1_h);
    EXPECT_LT(years_until(at90.poor), 40.0);
    EXPECT_GT(years_until(at90.good), 60.0);
    const covering_age at95 = covering_age_at(xlpe, 95_degC, 1_h), at105 = covering_age_at(xlpe, 105_degC, 1_h);
    EXPECT_GT(years_until(at95.good), 30.0);
    EXPECT_LT(years_until(at95.poor), 30.0);
    EXPECT_GT(years_until(at105.good), 7.0);
    EXPECT_LT(years_until(at105.poor), 7.0);
}

// What no covering stands even for seconds is asked of the hottest moment, not of the mean.
TEST(CoveringAgeing, TheHottestMomentDamages)
{
    ASSERT_TRUE(flexible_rubber.short_time);
    const temperature limit = *flexible_rubber.short_time;
    covering_age below, past;
    detail::add_age(below, flexible_rubber, 60_degC, limit, 1_h);
    EXPECT_FALSE(below.past_short_time);
    detail::add_age(past, flexible_rubber, 60_degC, limit + in_si<temperature_difference>(1.0), 1_h);
    EXPECT_TRUE(past.past_short_time);
}

// By the definitions: a poor covering has its index at its limit, a typical one 15 K above.
TEST(CoveringAgeing, AtTheLimitAPoorCoveringLastsTwentyThousandHours)
{
    for (const covering& c : all_coverings) {
        EXPECT_NEAR_REL(covering_age_at(c, *c.highest, 20000_h).poor, 1.0, 1e-12) << c.name;
        EXPECT_NEAR_REL(covering_age_at(c, *c.highest + index_above_limit[1], 20000_h).typical, 1.0, 1e-12);
        EXPECT_NEAR_REL(covering_age_at(c, *c.highest + index_above_limit[2], 20000_h).good, 1.0, 1e-12);
    }
}

TEST(CoveringAgeing, ThePoorCaseIsThePoorOneEverywhere)
{
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> degC(-20.0, 200.0);
    for (int n = 0; n < 2000; ++n) {
        const double at = degC(random);
        for (const covering& c : all_coverings) {
            const covering_age a = covering_age_at(c, temperature::celsius(at), 100_h);
            EXPECT_GT(a.poor, a.typical) << c.name << " at " << at;
            EXPECT_GT(a.typical, a.good) << c.name << " at " << at;
            EXPECT_GT(covering_age_at(c, temperature::celsius(at + 1.0), 100_h).poor, a.poor);
            EXPECT_GT(covering_age_at(c, temperature::celsius(at + 1.0), 100_h).good, a.good);
        }
    }
}

TEST(CoveringAgeing, ShiftsAddUp)
{
    const cable lead = welding_cable(square_mm(50), 20_m);
    const shift heavy{.work = {.current = 300_A, .duty = duty_cycle::of(6_min, 10_min)}, .time = 3_h},
        light{.work = {.current = 120_A, .duty = duty_cycle::of(3_min, 10_min)}, .time = 5_h};
    const std::array both{heavy, light};
    const std::array first{heavy}, second{light};
    const covering_age day = covering_life_of(lead, both), a = covering_life_of(lead, first),
                       b = covering_life_of(lead, second);
    EXPECT_NEAR_REL(day.poor, a.poor + b.poor, 1e-12);
    EXPECT_NEAR_REL(day.typical, a.typical + b.typical, 1e-12);
    EXPECT_NEAR_REL(covering_life_of(lead, both, 220).good, 220 * day.good, 1e-12);
    EXPECT_GT(a.poor, b.poor);
    EXPECT_EQ(day.hottest, a.hottest);
    EXPECT_FALSE(day.past_short_time);
    EXPECT_TRUE(day.basis.has(source_kind::judgement));
    EXPECT_TRUE(day.basis.has(source_kind::memory));
}

// What lies between mean and peak is held by the two: the use over a marched period, by the law itself.
TEST(CoveringAgeing, ThePeriodLiesBetweenMeanAndPeak)
{
    const cable lead = welding_cable(square_mm(25), 20_m);
    const shift s{.work = {.current = 220_A, .duty = duty_cycle::of(5_min, 10_min)}, .time = 1_h};
    const std::array day{s};
    const cable_heating hot = heating_of(lead, s.where, s.work);
    EXPECT_GT(hot.ripple_up.value(), 5.0);
    const covering_age one = covering_life_of(lead, day);
    const covering_age mean = covering_age_at(lead.covering, hot.conductor_period_mean, s.time),
                       peak = covering_age_at(lead.covering, hot.conductor_peak, s.time);
    EXPECT_NEAR_REL(one.poor, peak.poor, 1e-12);
    EXPECT_NEAR_REL(one.good, mean.good, 1e-9);
    EXPECT_GT(one.typical, mean.typical);
    EXPECT_LT(one.typical, peak.typical);
}

// One bad day at a hot end beside a lug: hours that count as years.
TEST(CoveringAgeing, AHotEndAgesFast)
{
    const covering_age bad = covering_age_at(flexible_rubber, 140_degC, 8_h);
    const covering_age usual = covering_age_at(flexible_rubber, 70_degC, 8_h);
    EXPECT_GT(bad.typical / usual.typical, 50.0);
    EXPECT_NE(to_text(bad).find("in a poor case, typically "), std::string::npos);
    EXPECT_NE(to_text(bad).find("from memory"), std::string::npos);
    EXPECT_NE(to_text(bad).find("damage comes before age, typically"), std::string::npos);
    const covering_age burnt = covering_age_at(flexible_rubber, 230_degC, 1_min);
    EXPECT_TRUE(burnt.past_short_time);
    EXPECT_EQ(to_text(burnt).find('%'), std::string::npos) << "no share of a life that is over";
}

// Strands missing over a stretch make a hot place, and it is that place that counts.
TEST(CoveringAgeing, DamagedStrandsAgeTheCoveringThere)
{
    cable lead = welding_cable(square_mm(50), 20_m);
    const std::array day{shift{.work = {.current = 250_A}, .time = 8_h}};
    const covering_age whole = covering_life_of(lead, day);
    lead.missing_strands = 0.4;
    lead.damaged_length = 300_mm;
    const covering_age damaged = covering_life_of(lead, day);
    EXPECT_GT(damaged.good, whole.good);
    EXPECT_GT(damaged.typical, whole.typical);
}

TEST(CoveringAgeing, RefusesWhatCannotBe)
{
    cable lead = welding_cable(square_mm(50), 20_m);
    const std::array none{shift{.work = {.current = 100_A}}};
    EXPECT_THROW((void)covering_life_of(lead, none), out_of_range_error);
    const std::array day{shift{.work = {.current = 100_A}, .time = 8_h}};
    EXPECT_THROW((void)covering_life_of(lead, day, -1.0), out_of_range_error);
    EXPECT_THROW((void)covering_life_of(lead, day, std::numeric_limits<double>::infinity()), not_finite_error);
    lead.covering.highest = {};
    lead.limit = 90_degC;
    EXPECT_THROW((void)covering_life_of(lead, day), missing_data_error);
    EXPECT_THROW((void)covering_age_at(pvc, 70_degC, in_si<duration>(-1.0)), out_of_range_error);
    EXPECT_EQ(covering_life_of(welding_cable(square_mm(50), 20_m), {}).poor, 0.0);
}

}  // namespace
