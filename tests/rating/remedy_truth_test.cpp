// What a list of remedies says is so when the station is built with it.
#include <gtest/gtest.h>

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/strap.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/part/work_magnet.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>
#include <weldloop/rating/remedy_finder.hpp>
#include <weldloop/rating/station_life.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

namespace {
using namespace weldloop;
using namespace weldloop::literals;

// A gate on a table under spatter, with a lead too thin for the current and a clamp that has lost grip.
station trestles(current amps)
{
    station s{.name = "trestles",
              .job = {.process = process::gmaw, .current = amps, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 25_degC}};
    s.path = {welding_cable(square_mm(50), 8_m).named("feeder"),
              wire_gun("gun", 3_m),
              arc{},
              contact{.metals = {mild_steel, mild_steel},
                      .force = 120_N,
                      .surface = surface_state::spatter_covered,
                      .name = "gate on table"},
              work_connection{.clamp = spring_clamp(200_A),
                              .onto = mild_steel,
                              .surface = surface_state::light_rust,
                              .name = "clamp",
                              .grip_lost = 0.4},
              crimped_lug("lug", awg(2)).with_missing_strands(0.4).tightened_to(1_Nm),
              welding_cable(awg(2), 12_m).named("work lead")};
    return s;
}

const remedy* find(const std::vector<remedy>& all, const std::string& words)
{
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const remedy& r) { return r.what.find(words) != std::string::npos; });
    return at == all.end() ? nullptr : &*at;
}
const part_result& part(const assessment& a, const std::string& name)
{
    return *std::find_if(a.parts.begin(), a.parts.end(), [&](const part_result& p) { return p.name == name; });
}
double number_behind(const std::string& text, const std::string& words)
{
    const std::size_t at = text.find(words);
    return at == std::string::npos ? 0.0 : std::strtod(text.c_str() + at + words.size(), nullptr);
}

TEST(RemedyTruth, WeldingLessLeavesNothingThatStopsTheJob)
{
    int looked_at = 0, stopped = 0;
    for (const double amps : {200.0, 240.0, 290.0, 340.0, 420.0}) {
        const station s = trestles(in_si<current>(amps));
        const assessment before = assess(s);
        stopped += before.findings.empty() || before.findings.front().severity != finding_severity::stop_job ? 0 : 1;
        for (const remedy& r : remedies_for(s)) {
            if (r.effort != remedy_effort::weld_less) continue;
            ++looked_at;
            station less = s;
            if (const double on = number_behind(r.what, "weld at most "); on > 0.0)
                less.job.duty = duty_cycle::of(on * 1_min, 10_min);
            const double lower = number_behind(r.what, "weld with at most ");
            if (lower > 0.0) less.job.current = in_si<current>(lower);
            const assessment after = assess(less);
            for (const loop_finding& f : after.findings)
                EXPECT_NE(f.severity, finding_severity::stop_job) << amps << ": " << r.what << ": " << f.text;
            // what stays over a limit is named
            for (const part_result& p : after.parts)
                if (gravity_of(p.verdict) >= gravity_of(verdict::over_limit)) {
                    const std::size_t left = r.what.find("; it does not bring ");
                    ASSERT_NE(left, std::string::npos) << r.what << ": " << p.name;
                    EXPECT_NE(r.what.find(p.name, left), std::string::npos) << r.what << ": " << p.name;
                }
        }
    }
    EXPECT_GE(looked_at, 3);
    EXPECT_GE(stopped, 2);
}

// Less current is offered in twentieths of the job's, set on the dial in fives: rounded down, so that never more
// amperes are offered than the share that was to be tried, from 50 A on whole fives.
TEST(RemedyTruth, TheDialIsSetNoHigherThanTheShare)
{
    int offered = 0, between_marks = 0;
    for (double amps = 203.0; amps < 450.0; amps += 21.0)
        for (const remedy& r : remedies_for(trestles(in_si<current>(amps)))) {
            const double lower = number_behind(r.what, "weld with at most ");
            if (!(lower > 0.0)) continue;
            ++offered;
            EXPECT_EQ(std::fmod(lower, 5.0), 0.0) << amps << ": " << r.what;
            // the nearest twentieth at or above: within a mark of the dial
            const double share = std::ceil(lower / amps * 20.0 - 1e-9) / 20.0;
            EXPECT_LE(share, 0.95 + 1e-9) << amps << ": " << r.what;
            EXPECT_LT(share * amps - lower, 5.0) << amps << ": " << r.what;
            between_marks += share * amps - lower > 0.5 ? 1 : 0;
        }
    EXPECT_GE(offered, 3);
    EXPECT_GE(between_marks, 2);  // else rounding shows nothing
}

// With the largest make the part is typically within its limits: then nothing keeps it hot.
TEST(RemedyTruth, ThePoorCaseOfTheLargestMakeIsNoHeat)
{
    int scatter_only = 0, hot = 0;
    for (const double amps : {250.0, 270.0, 290.0, 310.0, 340.0, 400.0}) {
        const station s = trestles(in_si<current>(amps));
        const auto all = remedies_for(s);
        const remedy* r = find(all, "No larger make of gun, up to 95 mm2");
        if (r == nullptr) continue;
        const std::string& said = r->what;
        station large = s;
        auto& gun = std::get<wire_gun>(large.path[1]);
        gun.lead = resized(gun.lead, square_mm(95));
        const verdict then = part(assess(large), "gun").verdict;
        const bool over = gravity_of(then) >= gravity_of(verdict::over_limit);
        (over ? hot : scatter_only) += 1;
        EXPECT_EQ(said.find("typically still over a limit") != std::string::npos, over) << amps << ": " << said;
        EXPECT_EQ(said.find("typically within its limits") != std::string::npos, !over) << amps << ": " << said;
    }
    EXPECT_GE(scatter_only, 1);
    EXPECT_GE(hot, 1);
}

// Two parts cannot both stand in the place of one.
TEST(RemedyTruth, StepsThatDoTogetherGoTogether)
{
    for (const double amps : {240.0, 290.0, 340.0})
        for (const remedy& r : remedies_for(trestles(in_si<current>(amps)))) {
            const std::size_t at = r.what.find("these do together: ");
            if (at == std::string::npos) continue;
            int replaced = 0;
            for (const char* words : {"replace clamp: its spring", "change clamp for a screw", "change clamp for one"})
                replaced += r.what.find(words, at) != std::string::npos ? 1 : 0;
            EXPECT_LE(replaced, 1) << r.what;
        }
}

TEST(RemedyTruth, TheSumSaysWhatItIsTheSumOf)
{
    const auto all = remedies_for(trestles(340_A));
    const auto sum = std::find_if(all.begin(), all.end(), [](const remedy& r) { return r.is_summary; });
    ASSERT_NE(sum, all.end());
    EXPECT_EQ(sum->what, "all cleaning and tightening together (3 steps): gate on table, clamp, lug");
    // bolts alone
    station bolts{.name = "bolts",
                  .job = {.process = process::smaw, .current = 300_A, .duty = duty_cycle::of(0.35)},
                  .where = {.air = 25_degC}};
    bolts.path = {crimped_lug("one", square_mm(70)).tightened_to(1_Nm),
                  welding_cable(square_mm(70), 4_m).named("lead"),
                  electrode_holder("holder", 600_A),
                  arc{},
                  work_connection{.clamp = bolted_work_lug(square_mm(95)), .onto = mild_steel, .name = "return"},
                  welding_cable(square_mm(70), 4_m).named("work lead"),
                  crimped_lug("other", square_mm(70)).tightened_to(1_Nm)};
    const auto tight = remedies_for(bolts);
    const auto both = std::find_if(tight.begin(), tight.end(), [](const remedy& r) { return r.is_summary; });
    ASSERT_NE(both, tight.end());
    EXPECT_EQ(both->what, "all tightening together (2 steps): one, other");
    EXPECT_EQ(both->effort, remedy_effort::tighten);
}

// A magnet holds by what lies flat on the work: the layer under it is cleared, whatever that gains in volts.
TEST(RemedyTruth, TheLayerUnderAMagnetIsCleared)
{
    for (const surface_state state :
         {surface_state::clean, surface_state::light_rust, surface_state::painted_pierced}) {
        station s = trestles(120_A);
        s.path = {
            welding_cable(square_mm(70), 8_m).named("feeder"), electrode_holder("holder", 300_A), arc{},
            work_magnet{.name = "magnet", .rated = 600_N, .surface = state, .gap = 0.3_mm, .cable = square_mm(70)},
            welding_cable(square_mm(70), 12_m).named("work lead")};
        s.job.process = process::smaw;
        const auto all = remedies_for(s);
        const remedy* r = find(all, "clear the seat of magnet to bright metal");
        ASSERT_NE(r, nullptr) << to_text(state);
        EXPECT_NE(r->what.find("0.3 mm under it"), std::string::npos) << r->what;
        EXPECT_EQ(r->effort, remedy_effort::clean);
        EXPECT_EQ(find(all, "clean the faces of magnet"), nullptr);
    }
}

// What hangs on a clamp is the cable in it, not the next one somewhere in the path.
TEST(RemedyTruth, AClampOnAStrapHoldsNoCable)
{
    station s = trestles(150_A);
    const station_life hung = station_life_of(s, assess(s));
    ASSERT_EQ(hung.clamps.size(), 1U);
    EXPECT_EQ(hung.clamps.front().lead, "work lead");
    s.path[5] = strap{.name = "strap", .length = 0.4_m, .section = 50_mm2};
    const station_life life = station_life_of(s, assess(s));
    ASSERT_EQ(life.clamps.size(), 1U);
    EXPECT_TRUE(life.clamps.front().lead.empty());
    EXPECT_FALSE(life.clamps.front().cable_needs);
}

// The weakest of supplies: what is left with the largest leads is said, and nobody is told to buy them.
TEST(RemedyTruth, NobodyIsToldToBuyWhatDoesNotHelp)
{
    station s = trestles(140_A);
    s.job.process = process::smaw;
    s.path[1] = electrode_holder("holder", 300_A);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 20_V};
    const auto all = remedies_for(s);
    const remedy* r = find(all, "No larger leads by themselves");
    ASSERT_NE(r, nullptr);
    EXPECT_EQ(r->what.find("would have to"), std::string::npos) << r->what;
    EXPECT_NE(r->what.find("leave this: "), std::string::npos) << r->what;
}

}  // namespace
