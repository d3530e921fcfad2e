// What is found of ways beside the path: stray current, what it would be with a return open, a second supply.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/way_findings.hpp>
#include <weldloop/weldloop.hpp>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <gmock/gmock.h>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using testing::HasSubstr;
using testing::Not;

path_part clamp_on_the_gate(surface_state surface = surface_state::clean)
{
    return work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .surface = surface, .name = "gate clamp"};
}

// A gate under one clamp with its lead; a hoist's chain and the earth wire of its frame beside them.
station hoisted_gate()
{
    station s{.name = "gate",
              .job = {.process = process::gmaw, .current = 230_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 30_degC}};
    s.path = {welding_cable(aught(1), 8_m).named("feeder lead"),
              arc{},
              workpiece{.metal = mild_steel, .mass = 30_kg, .thickness = 3_mm, .name = "gate"},
              clamp_on_the_gate(),
              welding_cable(awg(1), 9_m).named("work lead"),
              junction{"return stud"},
              crimped_lug("return lug", awg(1))};
    s.ways = {{.name = "hoist chain",
               .from = "gate",
               .to = "return stud",
               .kind = way_kind::stray,
               .path = {measured_part{.name = "chain", .drop = {1_V, 2_V, 5_V}, .at = 20_A},
                        welding_cable(square_mm(10), 20_m).named("earth wire")}}};
    return s;
}

std::vector<loop_finding> all_of(const assessment& a, const std::string& id)
{
    std::vector<loop_finding> out;
    std::copy_if(a.findings.begin(), a.findings.end(), std::back_inserter(out),
                 [&](const loop_finding& f) { return to_text(f.id) == id; });
    return out;
}
loop_finding only(const assessment& a, const std::string& id)
{
    const std::vector<loop_finding> found = all_of(a, id);
    EXPECT_EQ(found.size(), 1u) << id;
    return found.empty() ? loop_finding{} : found.front();
}
const part_result& part(const assessment& a, const std::string& name)
{
    return *std::find_if(a.parts.begin(), a.parts.end(), [&](const part_result& p) { return p.name == name; });
}

TEST(WayFindings, WithoutWaysThereAreNone)
{
    station s = hoisted_gate();
    s.ways.clear();
    const assessment a = assess(s);
    EXPECT_TRUE(a.ways.empty());
    for (const char* id : {"stray_way", "stray_current", "stray_when_return_opens", "return_by_stray_ways_only",
                           "way_spans_arc", "shared_work", "between_holders", "sharing_unstable"})
        EXPECT_TRUE(all_of(a, id).empty()) << id;
}

// source: the numbers of the assessment itself
TEST(WayFindings, StrayCurrentStopsTheJob)
{
    const station s = hoisted_gate();
    const assessment a = assess(s);
    ASSERT_EQ(a.ways.size(), 1u);
    const way_result& chain = a.ways[0];
    EXPECT_GT(chain.current.typical.value(), 0.5);
    EXPECT_LT(chain.current.low, chain.current.typical);
    EXPECT_GT(chain.current.high, chain.current.typical);
    EXPECT_NEAR_REL(static_cast<double>(chain.share), chain.current.typical.value() / 230.0, 1e-12);
    const loop_finding f = only(a, "stray_current");
    EXPECT_EQ(f.severity, finding_severity::stop_job);
    EXPECT_THAT(f.text, HasSubstr("hoist chain typically carries " + to_text(chain.current.typical, "A")));
    EXPECT_THAT(f.text, HasSubstr("in a poor case " + to_text(chain.current.high, "A")));
    EXPECT_TRUE(all_of(a, "stray_way").empty());
    // the gravest stand first
    for (std::size_t i = 1; i < a.findings.size(); ++i) EXPECT_GE(a.findings[i - 1].severity, a.findings[i].severity);
    // parts of the way know it and its current
    EXPECT_EQ(part(a, "earth wire").way, "hoist chain");
    EXPECT_EQ(part(a, "earth wire").current.typical, chain.current.typical);
    EXPECT_EQ(part(a, "work lead").way, "");
}

TEST(WayFindings, AStrayWayWithoutCurrentIsAFindingToo)
{
    station s = hoisted_gate();
    s.ways[0].path.push_back(work_connection{
        .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::painted_unbroken, .name = "hook"});
    const assessment a = assess(s);
    const loop_finding f = only(a, "stray_way");
    EXPECT_EQ(f.severity, finding_severity::warning);
    EXPECT_THAT(f.text, HasSubstr("it carries no current as things stand"));
    EXPECT_TRUE(all_of(a, "stray_current").empty());
    EXPECT_TRUE(all_of(a, "stray_when_return_opens").empty());  // nor would it
    EXPECT_FALSE(a.ways[0].conducts);
    EXPECT_EQ(a.ways[0].current.high.value(), 0.0);
}

// source: the loop solved with the second clamp's way open: what the text says is what that station gives
TEST(WayFindings, WhatItWouldCarryWithAReturnOpen)
{
    station s = hoisted_gate();
    s.ways.push_back({.name = "second clamp",
                      .from = "gate",
                      .to = "return stud",
                      .path = {work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "other clamp"},
                               welding_cable(awg(4), 30_m).named("second work lead")}});
    const assessment a = assess(s);
    station without_first = s;
    without_first.path[3] = clamp_on_the_gate(surface_state::painted_unbroken);
    const double with_first_open = solve_loop(without_first).ways[0].current.value();
    station without_second = s;
    without_second.ways.pop_back();
    const double with_second_open = solve_loop(without_second).ways[0].current.value();
    ASSERT_GT(with_first_open, with_second_open);
    const loop_finding f = only(a, "stray_when_return_opens");
    EXPECT_EQ(f.severity, finding_severity::warning);
    EXPECT_THAT(f.text,
                HasSubstr("With the way over gate clamp and work lead open, hoist chain would typically carry " +
                          to_text(in_si<current>(with_first_open), "A") + "."));
}

// source: the loop solved with each of the ways back open by itself
TEST(WayFindings, TheWorstOfManyOpenings)
{
    station s = hoisted_gate();
    s.job.current = 150_A;
    for (const double metres : {6.0, 11.0, 17.0, 24.0})
        s.ways.push_back(
            {.name = "clamp by " + std::to_string(static_cast<int>(metres)),
             .from = "gate",
             .to = "return stud",
             .path = {work_connection{.clamp = screw_clamp(300_A),
                                      .onto = mild_steel,
                                      .surface = metres < 7.0 ? surface_state::oxidized : surface_state::clean,
                                      .name = "clamp " + std::to_string(static_cast<int>(metres))},
                      welding_cable(awg(2), in_si<length>(metres))
                          .named("lead " + std::to_string(static_cast<int>(metres)))}});
    current most{};
    std::string by;
    const auto try_opening = [&](station opened, const std::string& names) {
        const loop_state state = solve_loop(opened);
        ASSERT_TRUE(state.is_solved());
        if (!(state.ways[0].current > most)) return;
        most = state.ways[0].current;
        by = names;
    };
    station without_trunk = s;
    without_trunk.path[3] = clamp_on_the_gate(surface_state::painted_unbroken);
    try_opening(without_trunk, "gate clamp and work lead");
    for (std::size_t w = 1; w < s.ways.size(); ++w) {
        station without = s;
        const std::string metres = s.ways[w].name.substr(s.ways[w].name.rfind(' ') + 1);
        without.ways.erase(without.ways.begin() + static_cast<std::ptrdiff_t>(w));
        try_opening(without, "clamp " + metres + " and lead " + metres);
    }
    const loop_finding f = only(assess(s), "stray_when_return_opens");
    EXPECT_THAT(f.text, HasSubstr("With the way over " + by + " open, hoist chain would typically carry " +
                                  to_text(most, "A") + "."));
}

// source: where it is the only way left it takes all 230 A; an earth wire of 10 mm2 does not bear them for long
TEST(WayFindings, TheOnlyReturnOpen)
{
    const assessment a = assess(hoisted_gate());
    const loop_finding f = only(a, "stray_when_return_opens");
    EXPECT_EQ(f.severity, finding_severity::warning);
    EXPECT_THAT(f.text, HasSubstr("230 A"));
    EXPECT_THAT(f.text, HasSubstr("With the way over gate clamp and work lead open"));
    // by hand: k of copper from 70 to 160 degC in thermoplastic is 115 A s^1/2/mm2 (IEC 60364-5-54, from memory):
    // (115 x 10/230)^2 = 25.0 s
    EXPECT_THAT(f.text, HasSubstr("after 25 s"));
}

TEST(WayFindings, ReturnByStrayWaysOnly)
{
    station s = hoisted_gate();
    s.job.current = 60_A;
    s.path[3] = clamp_on_the_gate(surface_state::painted_unbroken);
    const assessment a = assess(s);
    ASSERT_TRUE(a.conducts);
    EXPECT_EQ(only(a, "return_by_stray_ways_only").severity, finding_severity::stop_job);
    EXPECT_EQ(only(a, "stray_current").severity, finding_severity::stop_job);
    EXPECT_NEAR_REL(a.ways[0].current.typical.value(), 60.0, 1e-9);
    EXPECT_EQ(part(a, "gate clamp").verdict, verdict::open_circuit);
    // with a return that conducts it is not said
    EXPECT_TRUE(all_of(assess(hoisted_gate()), "return_by_stray_ways_only").empty());
}

TEST(WayFindings, AWayPastTheArc)
{
    station s = hoisted_gate();
    s.path.insert(s.path.begin() + 1, junction{"feed stud"});
    s.ways.push_back({.name = "spanner",
                      .from = "feed stud",
                      .to = "gate",
                      .path = {measured_part{.name = "spanner metal", .drop = exactly(0.1_V), .at = 100_A}}});
    const assessment a = assess(s);
    const loop_finding f = only(a, "way_spans_arc");
    EXPECT_EQ(f.severity, finding_severity::stop_job);
    EXPECT_THAT(f.text, HasSubstr("spanner joins what lies before the arc"));
    EXPECT_TRUE(a.ways[1].spans_arc);
    EXPECT_TRUE(a.conducts);
    // a stray one is not called a stray current besides
    s.ways[1].kind = way_kind::stray;
    const assessment stray = assess(s);
    EXPECT_EQ(all_of(stray, "way_spans_arc").size(), 1u);
    EXPECT_EQ(all_of(stray, "stray_current").size(), 1u);  // the chain's
    EXPECT_TRUE(all_of(stray, "stray_way").empty());
}

TEST(WayFindings, ASecondSupply)
{
    station s = hoisted_gate();
    s.supply = weldloop::supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    s.others = {{.name = "second welder", .from = "gate", .to = "return stud", .current = 150_A, .no_load = 80_V}};
    const assessment a = assess(s);
    const loop_finding shared = only(a, "shared_work"), holders = only(a, "between_holders"),
                       longer = only(a, "other_duty_is_longer");
    EXPECT_EQ(shared.severity, finding_severity::notice);
    EXPECT_THAT(shared.text, HasSubstr("second welder"));
    EXPECT_THAT(shared.text, HasSubstr("150 A"));
    EXPECT_EQ(holders.severity, finding_severity::warning);
    EXPECT_THAT(holders.text, HasSubstr("107 V or more"));  // 27 + 80
    EXPECT_EQ(longer.severity, finding_severity::notice);
    // both currents are in the lead they share, all of both with the chain open
    EXPECT_TRUE(part(a, "work lead").with_stray_open);
    EXPECT_NEAR_REL(part(a, "work lead").current.typical.value(), 380.0, 1e-9);
    s.others[0].no_load.reset();
    s.others[0].duty = duty_cycle::of(0.2);
    const assessment unknown = assess(s);
    EXPECT_THAT(only(unknown, "between_holders").text, Not(HasSubstr(" or more")));
    EXPECT_TRUE(all_of(unknown, "other_duty_is_longer").empty());
}

// ---- the worse of "as stated" and "stray open"

// A copper strap that nobody means takes half of what the work lead would.
station relieved_gate()
{
    station s = hoisted_gate();
    s.ways[0].name = "crane rail";
    s.ways[0].path = {measured_part{.name = "rail", .drop = exactly(0.2_V), .at = 100_A}};
    return s;
}

// source: the same station without the way
TEST(WayFindings, PartsAreJudgedWithoutTheirStrayRelief)
{
    const station s = relieved_gate();
    station alone = s;
    alone.ways.clear();
    const assessment a = assess(s), without = assess(alone);
    const part_result &lead = part(a, "work lead"), &bare = part(without, "work lead");
    EXPECT_TRUE(lead.with_stray_open);
    EXPECT_NEAR_REL(lead.current.typical.value(), 230.0, 1e-9);
    EXPECT_NEAR(lead.peak.typical.in_celsius(), bare.peak.typical.in_celsius(), 0.01);
    EXPECT_NEAR_REL(lead.drop.typical.value(), bare.drop.typical.value(), 1e-5);
    EXPECT_EQ(lead.verdict, bare.verdict);
    EXPECT_NEAR_REL(a.total_drop.typical.value(), without.total_drop.typical.value(), 1e-5);
    EXPECT_NEAR_REL(a.arc_voltage.typical.value(), without.arc_voltage.typical.value(), 1e-5);
    // the way itself as it stands
    EXPECT_GT(a.ways[0].current.typical.value(), 100.0);
    EXPECT_FALSE(part(a, "rail").with_stray_open);
    EXPECT_EQ(part(a, "rail").current.typical, a.ways[0].current.typical);
}

// source: at five milliamperes nothing warms by a thousandth of a kelvin, with the way or without
TEST(WayFindings, NothingIsWorseByWhatNobodyCouldRead)
{
    station s = relieved_gate();
    s.job.current = in_si<current>(5e-3);
    const assessment a = assess(s);
    for (const part_result& r : a.parts) EXPECT_FALSE(r.with_stray_open) << r.name;
    ASSERT_LT(part(a, "work lead").current.typical.value(), 4e-3) << "the way takes its share";
}

// source: the same station without the way; a limit between both drops
TEST(WayFindings, TheLoopsFindingsAreThoseOfTheWorse)
{
    station s = relieved_gate();
    const double relieved = solve_loop(s).total_drop.value();
    station alone = s;
    alone.ways.clear();
    const double full = solve_loop(alone).total_drop.value();
    ASSERT_GT(full, 1.1 * relieved);
    s.allowed_drop = in_si<voltage>(0.5 * (relieved + full));
    const assessment a = assess(s);
    const loop_finding f = only(a, "drop_above_allowed");
    EXPECT_THAT(f.text,
                HasSubstr("With every stray way open: The loop typically takes " + to_text(a.total_drop.typical, "V")));
    // below both it is said once, of the drop that is printed
    s.allowed_drop = in_si<voltage>(0.5 * relieved);
    const assessment low = assess(s);
    EXPECT_THAT(only(low, "drop_above_allowed").text, HasSubstr(to_text(low.total_drop.typical, "V")));
    // above both not at all
    s.allowed_drop = in_si<voltage>(10.0 * full);
    EXPECT_TRUE(all_of(assess(s), "drop_above_allowed").empty());
}

// source: without the relief a lead of 4 AWG at 600 A does not settle
TEST(WayFindings, ALoopThatOnlyAStrayWayKeepsFromMelting)
{
    station s = relieved_gate();
    s.path[4] = welding_cable(awg(4), 9_m).named("work lead");
    s.job.current = 600_A;
    s.job.duty = duty_cycle::continuous();
    s.path[0] = welding_cable(aught(4), 8_m).named("feeder lead");
    station alone = s;
    alone.ways.clear();
    ASSERT_TRUE(solve_loop(s).is_solved());
    ASSERT_EQ(solve_loop(alone).outcome, loop_outcome::ends);
    const assessment a = assess(s);
    const loop_finding f = only(a, "no_steady_state");
    EXPECT_EQ(f.severity, finding_severity::stop_job);
    EXPECT_THAT(f.text, HasSubstr("With every stray way open"));
    EXPECT_TRUE(part(a, "work lead").with_stray_open);
}

// source: twins past their softening drop; which of them carries the current cannot be said
TEST(WayFindings, UnstableSharing)
{
    station s = hoisted_gate();
    const auto rests = [](const char* called) {
        return contact{
            .metals = {mild_steel, mild_steel}, .force = 20_N, .surface = surface_state::light_rust, .name = called};
    };
    s.path = {
        welding_cable(square_mm(120), 2_m).named("feeder"), arc{}, junction{"post"}, rests("one"), junction{"stud"},
        welding_cable(square_mm(120), 2_m).named("tail")};
    s.ways = {{.name = "beside", .from = "post", .to = "stud", .path = {rests("other")}}};
    s.job.current = 300_A;
    s.job.duty = duty_cycle::continuous();
    const assessment a = assess(s);
    EXPECT_FALSE(a.conducts);
    EXPECT_EQ(a.outcome, loop_outcome::unstable);
    EXPECT_EQ(only(a, "sharing_unstable").severity, finding_severity::stop_job);
    EXPECT_EQ(a.ways[0].current.high.value(), 0.0);
}

// source: the way is there and current flows in it until it melts; 29 CFR 1910.254(c)(2)(iii): it is no way for current
TEST(WayFindings, AStrayWayThatMeltsIsTakenOutAndNeverMadeFit)
{
    station s = relieved_gate();
    s.job.current = 500_A;
    for (path_part& p : s.path)
        if (auto* w = std::get_if<work_connection>(&p)) w->surface = surface_state::painted_unbroken;
    s.ways[0].path = {welding_cable(square_mm(10), 20_m).named("earth wire")};
    const assessment a = assess(s);
    ASSERT_EQ(a.outcome, loop_outcome::ends);
    EXPECT_EQ(only(a, "stray_current").severity, finding_severity::stop_job);
    EXPECT_THAT(only(a, "stray_current").text, HasSubstr("cannot be said"));
    EXPECT_EQ(only(a, "return_by_stray_ways_only").severity, finding_severity::stop_job);
    bool taken_out = false;
    for (const remedy& r : remedies_for(s)) {
        EXPECT_THAT(r.what, testing::Not(HasSubstr("replace earth wire"))) << r.what;
        taken_out = taken_out || r.what.find("out of the welding circuit") != std::string::npos;
    }
    EXPECT_TRUE(taken_out);
}

// source: IEC 60364-5-54, t = (k S/I)^2 with k = 115 from 70 to 160 degC: 10 mm2 at 60 A 367 s, 364 to 370 by the
// rounding of k (the copper of this library: 364); at 40 A 827 s, longer than a conductor stays without cooling
TEST(WayFindings, SayHowLongALeadLastsUpToTenMinutes)
{
    station s = relieved_gate();
    s.ways[0].path = {welding_cable(square_mm(10), 20_m).named("earth wire")};
    EXPECT_THAT(detail::lasts(s, 0, 60_A), HasSubstr(" 364 s"));
    EXPECT_EQ(detail::lasts(s, 0, 40_A), "");
}

}  // namespace
