// Relaxation against the published values, row by row; the state form and its properties.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <random>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/stress_relaxation.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

double percent(wl::fraction f)
{
    return 100.0 * static_cast<double>(f);
}

double loss_percent(const wl::spring_wire& wire, double stress, double celsius, double hours,
                    wl::spring_making making = wl::spring_making::plain)
{
    return percent(
        wl::relaxation_state(wire, stress).advance(wl::temperature::celsius(celsius), hours * 1_h).lost(making));
}

// The two published temperature laws, applied to the 5 % of normal wire at 20 degC, 0.7 and 1000 h.
double linear_law(double celsius)
{
    return 5.0 * celsius / 20.0;
}  // AERB/SS/CSE-1
double equivalent_time_law(double celsius)  // EN 1992-1-1 10.3.2.1 with the time law of CEB-FIP 1990
{
    return 5.0 * std::pow(std::pow(1.14, celsius - 20.0), 0.12);
}

}  // namespace

// Every row of the published data with numbers is printed beside the law; rows at 20 degC are asserted here.
TEST(StressRelaxation, MeetsThePublishedValuesAt20Celsius)
{
    int asserted = 0;
    const reference_table table("springs-relaxation-data.csv");
    for (const auto& row : table.rows()) {
        const std::string& id = row.text("id");
        if (!row.has("stress_loss_pct") || !row.has("initial_stress_over_Sut") || !row.has("temperature_C")) {
            std::printf("%-18s not comparable: stress, temperature or loss not stated\n", id.c_str());
            continue;
        }
        const double stress = row.number("initial_stress_over_Sut"), celsius = row.number("temperature_C"),
                     hours = row.number("time_h");
        const bool low_class = id.find("-L-") != std::string::npos;
        const double published = row.number("stress_loss_pct");
        const double ours = loss_percent(wl::music_wire, stress, celsius, hours,
                                         low_class ? wl::spring_making::preset : wl::spring_making::plain);
        std::printf("%-18s mu %.1f %5.0f degC %7.0f h  published %6.2f %%  law %6.2f %%", id.c_str(), stress, celsius,
                    hours, published, ours);
        if (published > 0.0) std::printf("  %+5.1f %%", 100.0 * (ours / published - 1.0));
        std::printf("\n");
        RecordProperty(id, "published " + std::to_string(published) + " %, law " + std::to_string(ours) + " %" +
                               (published > 0.0 ? ", error " + std::to_string(100.0 * (ours / published - 1.0)) + " %"
                                                : std::string()));
        if (celsius != 20.0) continue;
        ++asserted;
        if (published == 0.0)
            EXPECT_LT(ours, 1.5) << id;  // codes give zero at 0.5 by convention
        else if (hours > 1000.0)
            // 30 years, 10 % low: a state form with one slope over the parameter makes the loss grow as t^(c T/ln 10) =
            // t^0.111 at 20 degC where the code has t^0.12; a steeper slope would leave the temperature laws above
            EXPECT_NEAR_REL(ours, published, 0.10) << id;
        else
            EXPECT_NEAR_REL(ours, published, 0.05) << id;
    }
    EXPECT_EQ(asserted, 12);
}

TEST(StressRelaxation, LiesBetweenThePublishedTemperatureLaws)
{
    for (const double celsius : {30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0}) {
        const double ours = loss_percent(wl::music_wire, 0.7, celsius, 1000.0);
        RecordProperty("at " + std::to_string(celsius) + " degC",
                       "linear " + std::to_string(linear_law(celsius)) + " %, equivalent time " +
                           std::to_string(equivalent_time_law(celsius)) + " %, law " + std::to_string(ours) + " %");
        std::printf("%5.0f degC: T/20 rule %5.1f %%, equivalent time %5.1f %%, law %5.1f %%\n", celsius,
                    linear_law(celsius), equivalent_time_law(celsius), ours);
        EXPECT_GE(ours, equivalent_time_law(celsius)) << celsius;
        EXPECT_LE(ours, linear_law(celsius)) << celsius;
    }
    // the rows of the data that state the linear law
    const reference_table table("springs-relaxation-data.csv");
    for (const auto& row : table.rows()) {
        if (row.text("id").rfind("RX-T20-", 0) != 0) continue;
        EXPECT_DOUBLE_EQ(row.number("stress_loss_pct"), linear_law(row.number("temperature_C"))) << row.where();
    }
}

// 302 stainless helical spring: measured 2.1 %, predicted 2.6 % from tensile wire data, after 1000 h (abstract of
// ADA302507; stress and temperature not stated). Reported, not fitted.
TEST(StressRelaxation, ReportsTheStainlessHelicalSpring)
{
    for (const double stress : {0.4, 0.5, 0.6, 0.7}) {
        const double ours = loss_percent(wl::stainless_wire, stress, 20.0, 1000.0);
        std::printf("stainless, mu %.1f, 20 degC, 1000 h: %.2f %% (published spring: 2.1 %% measured, 2.6 %% "
                    "predicted, at a stress not stated)\n",
                    stress, ours);
        RecordProperty("stainless spring at " + std::to_string(stress),
                       std::to_string(ours) + " %; measured 2.1 %, predicted 2.6 %, at a stress not stated");
    }
    // reported, and no more: the flag says that no published law stands behind these numbers
    int seen = 0;
    const reference_table table("springs-relaxation-data.csv");
    for (const auto& row : table.rows())
        if (row.text("id").rfind("RX-ADA302507-", 0) == 0) {
            EXPECT_FALSE(row.has("initial_stress_over_Sut"));  // once it is known, this test has something to assert
            ++seen;
        }
    EXPECT_EQ(seen, 2);
    EXPECT_TRUE(
        wl::relaxation_of(wl::stainless_wire, 0.6, 20_degC, 1000_h).basis.has(wl::range_flag::relaxation_range));
}

// Worked out apart from the library, see the head of the table.
TEST(StressRelaxation, EqualsTheLawWorkedOutApart)
{
    const reference_table table("spring-relaxation-law.csv");
    for (const auto& row : table.rows()) {
        const auto making = row.text("class") == "plain" ? wl::spring_making::plain : wl::spring_making::preset;
        EXPECT_NEAR(loss_percent(wl::hard_drawn_wire, row.number("stress_over_strength"), row.number("temperature_C"),
                                 row.number("time_h"), making),
                    row.number("loss_pct"), 1e-6)
            << row.where();
    }
    EXPECT_EQ(table.rows().size(), 150U);
}

TEST(StressRelaxation, TakesAPlainNumberAndGivesTheStateOfOneStep)
{
    const double lost = static_cast<double>(wl::stress_relaxation(wl::music_wire, 0.6, 60_degC, 1000_h));
    EXPECT_DOUBLE_EQ(100.0 * lost, loss_percent(wl::music_wire, 0.6, 60.0, 1000.0));
    EXPECT_EQ(wl::relaxation_of(wl::music_wire, 0.6, 60_degC, 1000_h).lost, wl::fraction(lost));
}

TEST(RelaxationState, OneStepEqualsMany)
{
    for (const double celsius : {-30.0, 20.0, 60.0, 120.0, 200.0}) {
        wl::relaxation_state one(wl::music_wire, 0.65), many(wl::music_wire, 0.65);
        one.advance(wl::temperature::celsius(celsius), 1000_h);
        for (int i = 0; i < 10000; ++i) many.advance(wl::temperature::celsius(celsius), 0.1_h);
        EXPECT_NEAR_REL(many.exponent(), one.exponent(), 1e-9) << celsius;
    }
    // uneven pieces of a history of two temperatures
    std::mt19937 random(7);
    std::uniform_real_distribution<double> piece(0.0, 1.0);
    wl::relaxation_state whole(wl::music_wire, 0.65), cut(wl::music_wire, 0.65);
    for (const double celsius : {40.0, 95.0, 25.0, 80.0}) {
        whole.advance(wl::temperature::celsius(celsius), 100_h);
        double left = 100.0;
        while (left > 0.0) {
            const double take = std::min(left, 10.0 * piece(random));
            cut.advance(wl::temperature::celsius(celsius), take * 1_h);
            left -= take;
        }
    }
    EXPECT_NEAR_REL(cut.exponent(), whole.exponent(), 1e-9);
}

TEST(RelaxationState, RisesWithTimeTemperatureAndStress)
{
    std::mt19937 random(1);
    std::uniform_real_distribution<double> celsius(-20.0, 250.0), stress(0.0, 1.0), log_hours(-3.0, 5.5),
        more(0.0, 1.0);
    for (int i = 0; i < 2000; ++i) {
        const double t = celsius(random), mu = stress(random), h = std::pow(10.0, log_hours(random));
        const double t2 = t + (250.0 - t) * more(random), mu2 = mu + (1.0 - mu) * more(random),
                     h2 = h * (1.0 + more(random));
        for (const auto making : {wl::spring_making::plain, wl::spring_making::preset}) {
            const double lost = loss_percent(wl::hard_drawn_wire, mu, t, h, making);
            EXPECT_GE(lost, 0.0);
            EXPECT_LE(lost, 100.0);
            EXPECT_LE(lost, loss_percent(wl::hard_drawn_wire, mu, t2, h, making));
            EXPECT_LE(lost, loss_percent(wl::hard_drawn_wire, mu2, t, h, making));
            EXPECT_LE(lost, loss_percent(wl::hard_drawn_wire, mu, t, h2, making));
        }
    }
}

TEST(RelaxationState, CoolingFreezesTheLoss)
{
    wl::relaxation_state state(wl::music_wire, 0.6);
    const double hot = percent(state.advance(120_degC, 100_h).lost());
    const double after = percent(state.advance(20_degC, 10000_h).lost());
    EXPECT_GE(after, hot);
    EXPECT_LT(after - hot, 1e-3 * hot);
    state.advance(wl::temperature::kelvin(0.0), 1000_h).advance(wl::temperature::kelvin(1e-300), 1000_h);
    EXPECT_DOUBLE_EQ(percent(state.lost()), after);
}

// The order of temperatures matters through the state alone: hot first leaves nothing for the cold time to add, but
// both orders reach at least what the hot stretch does alone, and no more than both at the hot temperature.
TEST(RelaxationState, OrderMattersOnlyThroughTheState)
{
    const auto run = [](wl::temperature first, wl::temperature second) {
        return percent(wl::relaxation_state(wl::music_wire, 0.6).advance(first, 100_h).advance(second, 100_h).lost());
    };
    const double hot_alone = percent(wl::stress_relaxation(wl::music_wire, 0.6, 90_degC, 100_h));
    const double hot_twice = percent(wl::stress_relaxation(wl::music_wire, 0.6, 90_degC, 200_h));
    for (const double lost : {run(90_degC, 60_degC), run(60_degC, 90_degC)}) {
        EXPECT_GE(lost, hot_alone);
        EXPECT_LE(lost, hot_twice);
    }
    // two springs in the same state go on alike, however they came there
    wl::relaxation_state a(wl::music_wire, 0.6), b(wl::music_wire, 0.6);
    a.advance(90_degC, 100_h);
    const double parameter = (90.0 + 273.15) * 22.0;  // T (20 + log10 100)
    b.advance(60_degC, std::pow(10.0, parameter / (60.0 + 273.15) - 20.0) * 1_h);
    EXPECT_NEAR_REL(b.exponent(), a.exponent(), 1e-12);
    EXPECT_NEAR_REL(b.advance(70_degC, 500_h).exponent(), a.advance(70_degC, 500_h).exponent(), 1e-12);
}

TEST(RelaxationState, ANewSpringHasLostNothing)
{
    const wl::relaxation_state state(wl::music_wire, 0.7);
    EXPECT_EQ(percent(state.lost()), 0.0);
    EXPECT_EQ(percent(state.result().bracket.high), 0.0);
    EXPECT_FALSE(state.extrapolated());
    EXPECT_EQ(percent(wl::stress_relaxation(wl::music_wire, 0.7, 80_degC, 0_h)), 0.0);
    EXPECT_LT(percent(wl::stress_relaxation(wl::music_wire, 0.7, 80_degC, wl::in_si<wl::duration>(1e-12))), 0.5);
}

TEST(RelaxationResult, BracketsThePlainAndThePresetSpring)
{
    const wl::relaxation found = wl::relaxation_of(wl::music_wire, 0.7, 60_degC, 1000_h);
    EXPECT_FALSE(found.basis.has(wl::range_flag::relaxation_range));
    EXPECT_DOUBLE_EQ(percent(found.bracket.high), loss_percent(wl::music_wire, 0.7, 60.0, 1000.0));
    EXPECT_DOUBLE_EQ(percent(found.bracket.low),
                     loss_percent(wl::music_wire, 0.7, 60.0, 1000.0, wl::spring_making::preset));
    EXPECT_LT(found.bracket.low, found.bracket.typical);
    EXPECT_LT(found.bracket.typical, found.bracket.high);
}

TEST(RelaxationResult, FlagsAndWidensOutsideTheFittedRange)
{
    struct case_of {
        double stress, celsius, hours;
        bool flagged;
    };
    for (const case_of& c :
         {case_of{0.7, 20, 1000, false}, case_of{0.6, 100, 1, false}, case_of{0.8, 100, 262800, false},
          case_of{0.7, 101, 1000, true}, case_of{0.59, 60, 1000, true}, case_of{0.81, 60, 1000, true},
          case_of{0.7, 19, 1000, true}, case_of{0.7, 60, 0.9, true}, case_of{0.7, 60, 270000, true}}) {
        const wl::relaxation found =
            wl::relaxation_of(wl::music_wire, c.stress, wl::temperature::celsius(c.celsius), c.hours * 1_h);
        EXPECT_EQ(found.basis.has(wl::range_flag::relaxation_range), c.flagged)
            << c.stress << ' ' << c.celsius << ' ' << c.hours;
    }
    // a factor 3 either way in the exponent
    const wl::relaxation hot = wl::relaxation_of(wl::music_wire, 0.7, 150_degC, 1000_h);
    const wl::relaxation_state state = wl::relaxation_state(wl::music_wire, 0.7).advance(150_degC, 1000_h);
    const double plain = state.exponent(), preset = state.exponent(wl::spring_making::preset);
    EXPECT_NEAR_REL(-std::log1p(-static_cast<double>(hot.bracket.high)), 3.0 * std::max(plain, preset), 1e-12);
    EXPECT_NEAR_REL(-std::log1p(-static_cast<double>(hot.bracket.low)), std::min(plain, preset) / std::sqrt(3.0),
                    1e-12);
    // within the first hour both open by the decades that are missing: the lower at once, the upper over six
    const wl::relaxation early = wl::relaxation_of(wl::music_wire, 0.7, 60_degC, 0.1 * 1_h);
    const wl::relaxation_state at_first = wl::relaxation_state(wl::music_wire, 0.7).advance(60_degC, 0.1 * 1_h);
    EXPECT_NEAR_REL(-std::log1p(-static_cast<double>(early.bracket.low)),
                    std::min(at_first.exponent(), at_first.exponent(wl::spring_making::preset)) / 3.0, 1e-12);
    EXPECT_NEAR_REL(
        -std::log1p(-static_cast<double>(early.bracket.high)),
        std::max(at_first.exponent(), at_first.exponent(wl::spring_making::preset)) * std::pow(3.0, 1.0 / 6.0), 1e-12);
    // a wire without a published law is always flagged, and its judgement named
    const wl::relaxation alloy = wl::relaxation_of(wl::chrome_silicon_wire, 0.7, 60_degC, 1000_h);
    EXPECT_TRUE(alloy.basis.has(wl::range_flag::relaxation_range));
    EXPECT_TRUE(alloy.basis.has(wl::source_kind::judgement));
}

// relation: more stress, more heat or more time never lets a bound say less, and none of them moves it by a step: where
// the fitted range ends the bounds open gradually
TEST(RelaxationResult, BoundsRiseWithoutAStep)
{
    const auto exponents = [](double stress, double celsius, double log_hours) {
        const wl::relaxation r = wl::relaxation_of(wl::music_wire, stress, wl::temperature::celsius(celsius),
                                                   wl::in_si<wl::duration>(3600.0 * std::pow(10.0, log_hours)));
        constexpr double all_but_gone = 20.0;  // a loss nearer to one has no exponent that could be read off it
        return std::array{std::min(all_but_gone, -std::log1p(-static_cast<double>(r.bracket.low))),
                          std::min(all_but_gone, -std::log1p(-static_cast<double>(r.bracket.high)))};
    };
    const auto rises = [](const std::array<double, 2>& from, const std::array<double, 2>& to) {
        for (std::size_t i = 0; i < 2; ++i) {
            EXPECT_GE(to[i], from[i]);
            EXPECT_LT(to[i], 1.02 * from[i]);
        }
    };
    constexpr int steps = 2000;
    for (const double stress : {0.3, 0.55, 0.7, 0.9})
        for (const double celsius : {-30.0, 10.0, 60.0, 115.0, 200.0})
            for (const double log_hours : {-3.0, -0.5, 2.0, 5.0, 5.6}) {
                SCOPED_TRACE(testing::Message() << stress << ' ' << celsius << ' ' << log_hours);
                auto a = exponents(0.2, celsius, log_hours), b = exponents(stress, -40.0, log_hours),
                     c = exponents(stress, celsius, -4.0);
                for (int i = 1; i <= steps; ++i) {
                    const double part = static_cast<double>(i) / steps;
                    const auto a2 = exponents(0.2 + 0.8 * part, celsius, log_hours),
                               b2 = exponents(stress, -40.0 + 285.0 * part, log_hours),
                               c2 = exponents(stress, celsius, -4.0 + 10.0 * part);
                    rises(a, a2);
                    rises(b, b2);
                    rises(c, c2);
                    if (HasFailure()) return;
                    a = a2;
                    b = b2;
                    c = c2;
                }
            }
}

// Of a spring held at one temperature, and of one that is taken from 60 to 150 degC: what may be lost never comes back,
// at neither end of the bracket, not at the end of the first hour and not where the range is left.
TEST(RelaxationResult, BoundsNeverRecover)
{
    for (const double later : {60.0, 99.0, 150.0}) {
        wl::relaxation_state state(wl::music_wire, 0.65);
        wl::relaxation last = state.result();
        for (int i = 0; i < 4000; ++i) {
            state.advance(wl::temperature::celsius(i < 2000 ? 60.0 : later), 0.02_h * std::pow(1.003, i));
            const wl::relaxation now = state.result();
            EXPECT_GE(now.bracket.low, last.bracket.low) << i;
            EXPECT_GE(now.bracket.typical, last.bracket.typical) << i;
            EXPECT_GE(now.bracket.high, last.bracket.high) << i;
            EXPECT_LE(now.bracket.low, now.bracket.typical) << i;
            EXPECT_LE(now.bracket.typical, now.bracket.high) << i;
            last = now;
        }
    }
}

// Published for prestressing steel in general (ENV 1992-1-1 table 4.8, from memory; so this reports, and asserts the
// rise alone): shares of the 1000 h loss by time. They start lower than the code's power law that this law was fitted
// to.
TEST(StressRelaxation, ReportsTheOlderCodesSharesByTime)
{
    double last = 0.0;
    const reference_table table("springs-relaxation-data.csv");
    for (const auto& row : table.rows()) {
        if (row.text("id").rfind("RX-ENV1992-", 0) != 0) continue;
        const double share = loss_percent(wl::music_wire, 0.7, 20.0, row.number("time_h")) /
                             loss_percent(wl::music_wire, 0.7, 20.0, 1000.0);
        RecordProperty(row.text("id"), row.text("note") + "; law " + std::to_string(100.0 * share) + " %");
        EXPECT_GT(share, last) << row.where();
        last = share;
    }
    EXPECT_NEAR(last, 1.0, 1e-12);
}

TEST(RelaxationResult, ADestroyedSpringIsAResult)
{
    const wl::relaxation at = wl::relaxation_of(wl::music_wire, 0.6, 250_degC, 1_h);
    EXPECT_FALSE(at.destroyed);
    const wl::relaxation above = wl::relaxation_of(wl::music_wire, 0.6, 250.1_degC, wl::in_si<wl::duration>(1.0));
    EXPECT_TRUE(above.destroyed);
    EXPECT_TRUE(above.basis.has(wl::range_flag::spring_destroyed));
    EXPECT_EQ(percent(above.lost), 100.0);
    EXPECT_EQ(percent(above.bracket.low), 100.0);
    // nothing undoes it
    wl::relaxation_state state(wl::music_wire, 0.6);
    state.advance(300_degC, 1_h).advance(20_degC, 1000_h);
    EXPECT_TRUE(state.destroyed());
    EXPECT_EQ(percent(state.lost()), 100.0);
    // no time spent there, no harm
    EXPECT_FALSE(wl::relaxation_of(wl::music_wire, 0.6, 400_degC, 0_h).destroyed);
}

TEST(RelaxationResult, WiresForHigherTemperaturesLoseLess)
{
    double last = 101.0;
    for (const wl::spring_wire& wire : {wl::music_wire, wl::chrome_silicon_wire, wl::stainless_wire}) {
        const double lost = loss_percent(wire, 0.6, 120.0, 1000.0);
        std::printf("%-20s 0.6, 120 degC, 1000 h: %.1f %%\n", std::string(wire.name).c_str(), lost);
        EXPECT_LT(lost, last);
        last = lost;
        // at room temperature all lose alike, and at its own highest service temperature each loses what music wire
        // does at 121 degC
        EXPECT_NEAR_REL(loss_percent(wire, 0.6, wire.max_service.in_celsius(), 1000.0),
                        loss_percent(wl::music_wire, 0.6, 121.0, 1000.0), 1e-9);
        EXPECT_NEAR_REL(loss_percent(wire, 0.6, 20.0, 1000.0), loss_percent(wl::music_wire, 0.6, 20.0, 1000.0), 1e-9);
    }
}

TEST(StressRelaxation, RefusesWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW((void)wl::stress_relaxation(wl::music_wire, 1.1, 20_degC, 1_h), wl::out_of_range_error);
    EXPECT_THROW((void)wl::stress_relaxation(wl::music_wire, -0.1, 20_degC, 1_h), wl::out_of_range_error);
    EXPECT_THROW((void)wl::stress_relaxation(wl::music_wire, nan, 20_degC, 1_h), wl::not_finite_error);
    EXPECT_THROW((void)wl::stress_relaxation(wl::music_wire, 0.5, 20_degC, -1.0 * 1_h), wl::out_of_range_error);
    EXPECT_THROW((void)wl::stress_relaxation(wl::music_wire, 0.5, 20_degC, wl::in_si<wl::duration>(nan)),
                 wl::not_finite_error);
    EXPECT_THROW((void)wl::stress_relaxation(wl::music_wire, 0.5, 20_degC,
                                             wl::in_si<wl::duration>(std::numeric_limits<double>::infinity())),
                 wl::not_finite_error);
}

TEST(StressRelaxation, StaysFiniteForAnyFiniteInput)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> log_kelvin(-300.0, 308.0), log_seconds(-307.0, 308.0), stress(0.0, 1.0);
    for (int i = 0; i < 5000; ++i) {
        wl::relaxation_state state(wl::all_spring_wires[static_cast<std::size_t>(i) % wl::all_spring_wires.size()],
                                   stress(random));
        double last = 0.0;
        for (int step = 0; step < 5; ++step) {
            const double kelvin = step % 2 == 0 ? 500.0 * stress(random) : std::pow(10.0, log_kelvin(random));
            state.advance(wl::temperature::kelvin(kelvin),
                          wl::in_si<wl::duration>(std::pow(10.0, log_seconds(random))));
            const wl::relaxation found = state.result();
            for (const wl::fraction f : {found.lost, found.bracket.low, found.bracket.typical, found.bracket.high}) {
                EXPECT_TRUE(std::isfinite(static_cast<double>(f)));
            }
            EXPECT_LE(found.bracket.low, found.bracket.typical);
            EXPECT_LE(found.bracket.typical, found.bracket.high);
            EXPECT_GE(percent(found.lost), last);
            last = percent(found.lost);
        }
    }
}
