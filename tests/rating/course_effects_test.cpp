// What alternating and pulsed current meets in a station's loop: impedance, levels, edges, unequal halves, steel.
#include <weldloop/circuit/course_levels.hpp>
#include <weldloop/circuit/loop_inductance.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/current_rise.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/steel_beside.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/course_effects.hpp>
#include <weldloop/rating/remedies.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

// a tungsten stand for gate hinges
station hinge_stand(supply_kind kind = supply_kind::constant_current)
{
    station s{.name = "hinge stand",
              .job = {.process = process::gtaw, .current = 150_A, .duty = duty_cycle::of(0.4)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", square_mm(50)),
              welding_cable(square_mm(50), 8_m).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "work clamp"},
              welding_cable(square_mm(50), 8_m).named("work lead"),
              crimped_lug("return lug", square_mm(50))};
    s.supply = supply{.kind = kind, .highest_output = 50_V};
    s.supply->no_load.peak = 80_V;
    return s;
}
void sine(station& s, current effective, frequency f)
{
    s.job.course = waveform::sine(effective, f);
    s.job.current = effective;
    s.supply->no_load = {};
    s.supply->no_load.rms = 70_V;
    s.supply->no_load.kind = output_current::alternating;
}
void pulses(station& s, const pulse_train& p)
{
    s.job.course = waveform::pulse(p);
    s.job.current = s.job.course->rms();
}
void coil_the_work_lead(station& s, int turns, steel_beside steel = steel_beside::none)
{
    cable coil = welding_cable(square_mm(50), 25_m).named("work lead");
    coil.lay = lay::coiled;
    coil.coil_turns = turns;
    coil.steel = steel;
    s.path[5] = coil;
}
std::set<std::string> said_of(const assessment& a)
{
    std::set<std::string> out;
    for (const weld_statement& w : a.weld) out.emplace(to_text(w.id));
    return out;
}
bool has(const assessment& a, finding_id id)
{
    return std::any_of(a.findings.begin(), a.findings.end(), [id](const loop_finding& f) { return f.id == id; });
}
const std::string& words_of(const assessment& a, finding_id id)
{
    return std::find_if(a.findings.begin(), a.findings.end(), [id](const loop_finding& f) { return f.id == id; })->text;
}

// definitions: X = 2 pi f L, U = X I, at right angles to what is ohmic
TEST(CourseEffects, ImpedanceOfASine)
{
    station s = hinge_stand();
    coil_the_work_lead(s, 12);
    sine(s, 150_A, 60_Hz);
    const assessment a = assess(s);
    ASSERT_TRUE(a.course && a.operating && a.operating->is_found());
    const course_effects& c = *a.course;
    const double henry = lead_inductance_of(s).total.value();
    EXPECT_EQ(c.frequency, 60_Hz);
    EXPECT_NEAR_REL(c.inductance.typical.value(), henry, 1e-12);
    EXPECT_NEAR_REL(c.reactance.typical.value(), 2.0 * std::numbers::pi * 60.0 * henry, 1e-12);
    EXPECT_NEAR_REL(c.fundamental.value(), 150.0, 1e-12);
    const double volts = 2.0 * std::numbers::pi * 60.0 * henry * 150.0;
    EXPECT_NEAR_REL(c.inductive.typical.value(), volts, 1e-12);
    ASSERT_TRUE(c.share && c.added);
    EXPECT_NEAR_REL(c.share->typical, volts / 70.0, 1e-12);
    const double ohmic = (a.operating->arc_voltage + a.operating->loop_drop).value();
    EXPECT_NEAR(c.added->typical.value(), std::sqrt(ohmic * ohmic + volts * volts) - ohmic, 1e-9);
    EXPECT_NEAR_REL(c.resistance.value(), a.total_drop.typical.value() / 150.0, 1e-9);
    // IEC 60287-1-1: ys = xs^4/(192 + 0.8 xs^4)
    const cable& lead = std::get<cable>(s.path[1]);
    const double xs = iec_skin_argument(resistance_per_length_of(lead, 20_degC), 60_Hz);
    EXPECT_NEAR_REL(c.skin_ratio - 1.0, std::pow(xs, 4) / (192.0 + 0.8 * std::pow(xs, 4)), 0.02);
    EXPECT_TRUE(c.alternates);
    EXPECT_TRUE(c.levels.empty());
    EXPECT_FALSE(c.edge);
    // nothing of it for direct current
    s.job.course.reset();
    EXPECT_FALSE(assess(s).course);
}

// a square wave's first harmonic has 4/pi of its size as amplitude
TEST(CourseEffects, TheFirstHarmonicOfASquareWave)
{
    station s = hinge_stand();
    s.job.course = waveform::square_ac({.positive = 150_A, .negative = 150_A, .frequency = 100_Hz});
    const assessment a = assess(s);
    ASSERT_TRUE(a.course);
    EXPECT_NEAR_REL(a.course->fundamental.value(), 150.0 * 4.0 / std::numbers::pi / std::numbers::sqrt2, 1e-9);
    EXPECT_EQ(a.course->mean, 0_A);
    ASSERT_TRUE(a.course->edge);
    EXPECT_EQ(a.course->edge->end, edge_end::reached);
}

// each level by itself: 10 V + 0.04 V/A I (load voltage at the usual length) and the loop
TEST(CourseEffects, LevelsOfPulsesMeetTheSupplyEachByItself)
{
    station s = hinge_stand();
    pulses(s, {.base = 60_A, .peak = 240_A, .base_time = 6_ms, .peak_time = 4_ms});
    const assessment a = assess(s);
    ASSERT_TRUE(a.course && a.operating);
    EXPECT_EQ(a.operating->outcome, operating_outcome::not_steady);
    const auto& levels = a.course->levels;
    ASSERT_EQ(levels.size(), 2U);
    const double ohm = a.total_drop.typical.value() / s.job.current.value();
    for (const level_point& l : levels) {
        const double amps = l.asked.value();
        EXPECT_TRUE(amps == 60.0 || amps == 240.0);
        EXPECT_NEAR(l.time.value(), amps == 60.0 ? 6e-3 : 4e-3, 1e-15);
        ASSERT_EQ(l.outcome, operating_outcome::found);
        EXPECT_TRUE(l.is_held);
        EXPECT_NEAR_REL(l.current.value(), amps, 1e-9);
        EXPECT_NEAR_REL(l.arc_voltage.value(), 10.0 + 0.04 * amps, 1e-9);
        EXPECT_NEAR_REL(l.terminals.value(), 10.0 + 0.04 * amps + ohm * amps, 1e-9);
    }
    EXPECT_FALSE(has(a, finding_id::level_not_held));
    // one whose current rises as its voltage falls is set to each level and holds it
    s.supply->rise = in_si<conductance>(2.0);
    EXPECT_EQ(assess(s).course->levels.front().current, levels.front().current);
    s.supply->rise = {};
    // 20 V hold 60 A through this loop, and less than 240 A
    s.supply->highest_output = 20_V;
    s.supply->no_load.peak.reset();
    const assessment weak = assess(s);
    ASSERT_TRUE(weak.course);
    for (const level_point& l : weak.course->levels) {
        EXPECT_EQ(l.is_held, l.asked == 60_A);
        if (l.asked == 60_A) continue;
        EXPECT_NEAR_REL(l.terminals.value(), 20.0, 1e-6);
        EXPECT_NEAR_REL(l.current.value(), (20.0 - 10.0) / (0.04 + weak.course->resistance.value()), 1e-6);
    }
    ASSERT_TRUE(has(weak, finding_id::level_not_held));
    EXPECT_NE(words_of(weak, finding_id::level_not_held).find("240 A for 4 ms"), std::string::npos);
    EXPECT_EQ(weak.course->edge->end, edge_end::too_few_volts);
    // a measured line that ends before the peak, and one on which no arc is held
    s.supply = supply{.kind = supply_kind::measured};
    s.supply->points = {{20_A, 60_V}, {200_A, 45_V}};
    const assessment ends = assess(s);
    EXPECT_TRUE(has(ends, finding_id::level_not_held));
    EXPECT_NE(words_of(ends, finding_id::level_not_held).find("does not go there"), std::string::npos);
    EXPECT_EQ(ends.course->edge->end, edge_end::not_known);
    s.supply->points = {{20_A, 15_V}, {300_A, 14_V}};
    const assessment low = assess(s);
    ASSERT_TRUE(has(low, finding_id::level_not_held));
    EXPECT_NE(words_of(low, finding_id::level_not_held).find("240 A"), std::string::npos);
    EXPECT_NE(words_of(low, finding_id::level_not_held).find("ask for"), std::string::npos);
}

// closed form: i = U/R + (i0 - U/R) exp(-t R/L) on resistance, arc slope and the volts over the arc's own
TEST(CourseEffects, AnEdgeTakesWhatTheVoltsAtHandNeed)
{
    station s = hinge_stand();
    coil_the_work_lead(s, 12);
    pulses(s, {.base = 40_A, .peak = 200_A, .base_time = 5_ms, .peak_time = 5_ms});
    const assessment a = assess(s);
    ASSERT_TRUE(a.course && a.course->edge);
    const course_edge& e = *a.course->edge;
    EXPECT_EQ(e.end, edge_end::reached);
    EXPECT_EQ(e.from, 40_A);
    EXPECT_EQ(e.to, 200_A);
    const switched_circuit same{.driving = 50_V - 10_V,
                                .resistance = a.course->resistance + in_si<resistance>(0.04),
                                .inductance = a.course->inductance.typical,
                                .before = 40_A};
    EXPECT_NEAR_REL(current_after(same, e.takes.typical).value(), 40.0 + 0.95 * 160.0, 1e-9);
    EXPECT_NEAR_REL(e.lost.typical, e.takes.typical.value() / 5e-3, 1e-9);
    // a ramp that the course has is not lost
    pulses(s, {.base = 40_A, .peak = 200_A, .base_time = 5_ms, .peak_time = 5_ms, .rise = 0.1_ms, .fall = 0.1_ms});
    const assessment ramped = assess(s);
    EXPECT_NEAR(ramped.course->edge->lost.typical, (ramped.course->edge->takes.typical.value() - 1e-4) / 5e-3, 1e-9);
    // a level that is over first
    pulses(s, {.base = 40_A, .peak = 200_A, .base_time = 5_ms, .peak_time = 0.05_ms});
    const assessment late = assess(s);
    EXPECT_EQ(late.course->edge->end, edge_end::too_late);
    EXPECT_EQ(late.course->edge->lost.typical, 1.0);
    EXPECT_TRUE(said_of(late).contains("blunt_pulses"));
}

// A reversal falls to zero with supply and arc together, then rises against the arc: longer than the rise alone.
TEST(CourseEffects, AReversalTakesFallAndRise)
{
    station s = hinge_stand();
    coil_the_work_lead(s, 12);
    s.job.course = waveform::square_ac({.positive = 150_A, .negative = 150_A, .frequency = 100_Hz});
    const assessment a = assess(s);
    ASSERT_TRUE(a.course && a.course->edge && a.operating->is_found());
    const double l = a.course->inductance.typical.value(), r = a.course->resistance.value() + 0.04,
                 amps = a.operating->current.value();
    // L/R ln of the volts to spare at the beginning over those at the end
    const double fall = l / r * std::log((60.0 + r * amps) / 60.0);
    const double rise = l / r * std::log(40.0 / (40.0 - r * 0.95 * amps));
    EXPECT_NEAR_REL(a.course->edge->takes.typical.value(), fall + rise, 1e-9);
}

// Halves of one size and unequal length: one working point, and a mean that flows one way.
TEST(CourseEffects, UnequalHalvesHaveAMean)
{
    station s = hinge_stand();
    s.job.course =
        waveform::square_ac({.positive = 150_A, .negative = 150_A, .frequency = 80_Hz, .positive_share = 0.3});
    const assessment a = assess(s);
    ASSERT_TRUE(a.course && a.operating);
    EXPECT_TRUE(a.operating->is_found());
    EXPECT_NEAR_REL(a.operating->current.value(), 150.0, 1e-6);
    EXPECT_NEAR_REL(a.course->mean.value(), -0.4 * 150.0, 1e-9);
    EXPECT_TRUE(a.course->levels.empty());
    // and of two sizes a point each
    s.job.course =
        waveform::square_ac({.positive = 90_A, .negative = 180_A, .frequency = 80_Hz, .positive_share = 0.3});
    s.job.current = s.job.course->rms();
    const assessment two = assess(s);
    EXPECT_EQ(two.operating->outcome, operating_outcome::not_steady);
    ASSERT_EQ(two.course->levels.size(), 2U);
    EXPECT_NEAR_REL(two.course->mean.value(), 0.3 * 90.0 - 0.7 * 180.0, 1e-9);
}

TEST(CourseEffects, SteelMultipliesTheInductanceOfItsLeadAlone)
{
    station s = hinge_stand();
    coil_the_work_lead(s, 10);
    const station_inductance bare = lead_inductance_of(s);
    EXPECT_EQ(bare.by_steel, in_si<inductance>(0.0));
    EXPECT_EQ(bare.range.low, bare.range.high);
    for (const steel_beside where : {steel_beside::under_coil, steel_beside::within_coil}) {
        coil_the_work_lead(s, 10, where);
        const station_inductance with = lead_inductance_of(s);
        const band<double> factor = steel_factor(where);
        EXPECT_NEAR_REL(with.range.low.value(), (bare.straight + factor.low * bare.coiled).value(), 1e-12);
        EXPECT_NEAR_REL(with.total.value(), (bare.straight + factor.typical * bare.coiled).value(), 1e-12);
        EXPECT_NEAR_REL(with.range.high.value(), (bare.straight + factor.high * bare.coiled).value(), 1e-12);
        EXPECT_LT(with.range.low, with.range.high);
    }
    // mirror image: a coil on a plate has at most twice its inductance
    EXPECT_EQ(steel_factor(steel_beside::under_coil).high, 2.0);
    for (const steel_beside where : all_steel_beside) {
        const band<double> f = steel_factor(where);
        EXPECT_TRUE(1.0 <= f.low && f.low <= f.typical && f.typical <= f.high) << to_text(where);
    }
    std::get<cable>(s.path[5]).steel = steel_beside::round_lead;
    EXPECT_THROW(static_cast<void>(lead_inductance_of(s)), out_of_range_error);
    std::get<cable>(s.path[5]) = welding_cable(square_mm(50), 8_m).named("work lead");
    std::get<cable>(s.path[5]).steel = steel_beside::round_lead;
    const station_inductance through = lead_inductance_of(s);
    EXPECT_NEAR_REL(through.by_steel.value(), 2.0 * 0.5 * through.straight.value(), 1e-12);
    std::get<cable>(s.path[5]).steel = steel_beside::under_coil;
    EXPECT_THROW(static_cast<void>(lead_inductance_of(s)), out_of_range_error);
}

// judged thresholds: a sound stand has no statement, one with its spare lead round a steel post has
TEST(CourseEffects, ACoilRoundSteelChokesAlternatingCurrentAndBluntsPulses)
{
    station s = hinge_stand();
    sine(s, 150_A, 50_Hz);
    EXPECT_EQ(said_of(assess(s)), std::set<std::string>{});
    coil_the_work_lead(s, 6);
    EXPECT_EQ(said_of(assess(s)), std::set<std::string>{});
    coil_the_work_lead(s, 6, steel_beside::within_coil);
    const assessment choked = assess(s);
    EXPECT_EQ(said_of(choked), (std::set<std::string>{"choked_current"}));
    EXPECT_NE(choked.weld.front().text.find("judged"), std::string::npos);
    EXPECT_GE(choked.course->share->typical, 0.10);
    EXPECT_TRUE(std::find(choked.sources.begin(), choked.sources.end(), course_thresholds) != choked.sources.end());
    EXPECT_TRUE(std::find(choked.sources.begin(), choked.sources.end(), steel_beside_judgement) !=
                choked.sources.end());

    station pulsed = hinge_stand();
    pulses(pulsed, {.base = 40_A, .peak = 200_A, .base_time = 3_ms, .peak_time = 3_ms});
    EXPECT_EQ(said_of(assess(pulsed)), std::set<std::string>{});
    coil_the_work_lead(pulsed, 6, steel_beside::within_coil);
    EXPECT_EQ(said_of(assess(pulsed)), (std::set<std::string>{"blunt_pulses"}));
    // laid out straight a lead lies no more round the post: what is offered can be solved
    for (const remedy& r : remedies_for(pulsed)) EXPECT_FALSE(r.what.empty());
}

TEST(CourseLevels, OfACourse)
{
    EXPECT_TRUE(levels_of(waveform::dc(100_A)).empty());
    EXPECT_TRUE(levels_of(waveform::sine(100_A, 50_Hz)).empty());
    const auto at = levels_of(waveform::pulse(
        {.base = 50_A, .peak = 200_A, .base_time = 2_ms, .peak_time = 3_ms, .rise = 0.5_ms, .fall = 0.25_ms}));
    ASSERT_EQ(at.size(), 2U);
    EXPECT_EQ(at[0].current, 200_A);
    EXPECT_EQ(at[0].before, 50_A);
    EXPECT_EQ(at[0].ramp, 0.5_ms);
    EXPECT_EQ(at[1].current, 50_A);
    EXPECT_EQ(at[1].before, 200_A);
    EXPECT_EQ(at[1].ramp, 0.25_ms);
    EXPECT_TRUE(has_one_working_point(waveform::dc(100_A)));
    EXPECT_TRUE(has_one_working_point(waveform::sine(100_A, 50_Hz)));
    EXPECT_FALSE(
        has_one_working_point(waveform::pulse({.base = 50_A, .peak = 200_A, .base_time = 2_ms, .peak_time = 3_ms})));
    // ramps of one direction alone have neither levels nor one point
    const waveform saw = waveform::of_pieces(
        {{.duration = 1_ms, .from = 50_A, .to = 150_A}, {.duration = 1_ms, .from = 150_A, .to = 50_A}});
    EXPECT_TRUE(levels_of(saw).empty());
    EXPECT_FALSE(has_one_working_point(saw));
}

}  // namespace
