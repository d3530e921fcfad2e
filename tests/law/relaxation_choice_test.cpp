// Laws of relaxation chosen by their user, side by side over the same history.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/relaxation_choice.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using time_law = wl::relaxation_time_law;
using rule = wl::relaxation_heat_rule;

namespace {

double percent(wl::fraction f)
{
    return 100.0 * static_cast<double>(f);
}

double lost_by(const wl::relaxation_choice& choice, double stress, double celsius, double hours)
{
    return percent(wl::chosen_relaxation(choice, wl::music_wire, stress)
                       .advance(wl::temperature::celsius(celsius), hours * 1_h)
                       .lost());
}

std::vector<wl::relaxation_choice> every_choice()
{
    std::vector<wl::relaxation_choice> out{{}};
    for (const time_law t : {time_law::model_code, time_law::eurocode, time_law::logarithmic})
        for (const rule r : {rule::equivalent_time, rule::activation_energy, rule::linear})
            out.emplace_back(wl::code_relaxation_law{t, r});
    return out;
}

}  // namespace

TEST(RelaxationChoice, WithoutACodeLawIsTheStateForm)
{
    const wl::relaxation a = wl::chosen_relaxation({}, wl::music_wire, 0.65).advance(80_degC, 300_h).result();
    const wl::relaxation b = wl::relaxation_of(wl::music_wire, 0.65, 80_degC, 300_h);
    EXPECT_EQ(a.lost, b.lost);
    EXPECT_EQ(a.bracket, b.bracket);
    EXPECT_EQ(to_text(wl::relaxation_choice{}), "time-temperature parameter");
}

// What the codes say at 0.7, 1000 h beside the state form: it lies between the two published temperature laws from 30
// to 100 degC (the linear rule beyond 60 and the equivalent time beyond 90 degC are extrapolations of their own).
TEST(RelaxationChoice, TheStateFormLiesBetweenTheCodes)
{
    const wl::code_relaxation_law steep{time_law::model_code, rule::linear},
        flat{time_law::model_code, rule::equivalent_time};
    for (const double celsius : {30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0}) {
        const double ours = lost_by({}, 0.7, celsius, 1000.0);
        std::string told;
        for (const wl::relaxation_choice& c : every_choice())
            told.append(to_text(c)).append(" ").append(std::to_string(lost_by(c, 0.7, celsius, 1000.0))).append(" %; ");
        RecordProperty("at " + std::to_string(celsius), told);
        EXPECT_GE(ours, lost_by(flat, 0.7, celsius, 1000.0));
        EXPECT_LE(ours, lost_by(steep, 0.7, celsius, 1000.0));
    }
}

TEST(RelaxationChoice, EveryLawIsMonotoneAndFreezesOnCooling)
{
    for (const wl::relaxation_choice& c : every_choice()) {
        wl::chosen_relaxation spring(c, wl::music_wire, 0.7);
        double last = 0.0;
        for (const double celsius : {30.0, 60.0, 40.0, 90.0, 90.0, 25.0}) {
            const double now = percent(spring.advance(wl::temperature::celsius(celsius), 200_h).lost());
            EXPECT_GE(now, last) << to_text(c);
            last = now;
        }
        // a night at -20 degC: what the heat did dwarfs it, the rules that count cold hours as hours at 20 degC
        // included
        const double after = percent(spring.advance(wl::temperature::celsius(-20.0), 12_h).lost());
        EXPECT_GE(after, last) << to_text(c);
        EXPECT_LT(after, last * 1.005) << to_text(c);
    }
}

TEST(RelaxationChoice, OneStepEqualsManyWhereTheTemperatureStays)
{
    for (const wl::relaxation_choice& c : every_choice()) {
        wl::chosen_relaxation one(c, wl::music_wire, 0.7), many(c, wl::music_wire, 0.7);
        one.advance(75_degC, 500_h);
        for (int i = 0; i < 5000; ++i) many.advance(75_degC, 0.1_h);
        EXPECT_NEAR_REL(percent(many.lost()), percent(one.lost()), 1e-9) << to_text(c);
    }
}

TEST(RelaxationChoice, FlagsAndWidensOutsideItsRange)
{
    const wl::code_relaxation_law code{time_law::model_code, rule::equivalent_time};
    const auto at = [&](const wl::spring_wire& wire, double stress, double celsius) {
        return wl::code_relaxation_state(wire, stress, code).advance(wl::temperature::celsius(celsius), 10_h).result();
    };
    const wl::relaxation inside = at(wl::music_wire, 0.7, 60.0);
    EXPECT_FALSE(inside.basis.has(wl::range_flag::relaxation_range));
    EXPECT_EQ(inside.bracket.high, inside.lost);
    EXPECT_LT(inside.bracket.low, inside.bracket.typical);
    const wl::relaxation hot = at(wl::music_wire, 0.7, 120.0);
    EXPECT_TRUE(hot.basis.has(wl::range_flag::relaxation_range));
    EXPECT_NEAR_REL(-std::log1p(-static_cast<double>(hot.bracket.high)),
                    -3.0 * std::log1p(-static_cast<double>(hot.lost)), 1e-9);
    EXPECT_TRUE(at(wl::music_wire, 0.4, 60.0).basis.has(wl::range_flag::relaxation_range));
    EXPECT_TRUE(at(wl::stainless_wire, 0.7, 60.0).basis.has(wl::range_flag::relaxation_range));
    EXPECT_TRUE(inside.basis.has(wl::source_kind::standard));
}

TEST(RelaxationChoice, ADestroyedSpringIsAResult)
{
    for (const wl::relaxation_choice& c : every_choice()) {
        wl::chosen_relaxation spring(c, wl::hard_drawn_wire, 0.6);
        spring.advance(251_degC, 1_h).advance(20_degC, 1_h);
        EXPECT_TRUE(spring.destroyed());
        EXPECT_EQ(percent(spring.lost()), 100.0);
        EXPECT_TRUE(spring.result().destroyed);
        EXPECT_TRUE(spring.result().basis.has(wl::range_flag::spring_destroyed));
        EXPECT_EQ(percent(spring.result().bracket.low), 100.0);
    }
}

TEST(RelaxationChoice, RefusesWhatCannotBe)
{
    for (const double ratio : {0.0, 1.1})
        EXPECT_THROW(wl::chosen_relaxation(wl::code_relaxation_law{time_law::logarithmic, rule::linear, ratio},
                                           wl::music_wire, 0.7),
                     wl::out_of_range_error);
    for (const wl::relaxation_choice& c : every_choice())
        EXPECT_THROW(wl::chosen_relaxation(c, wl::music_wire, 0.7).advance(20_degC, -1.0 * 1_h),
                     wl::out_of_range_error);
}
