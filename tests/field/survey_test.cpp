// Ranks, shopping and cleaning of a survey, and what has become of each joint between two.
#include <optional>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/field/survey.hpp>
#include <weldloop/field/survey_trend.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::ElementsAre;

namespace {

surveyed_station station_of(const std::string& file)
{
    surveyed_station s;
    s.file = file;
    return s;
}

surveyed_station of(const std::string& file, verdict v, double exceeds, double used)
{
    surveyed_station s = station_of(file);
    s.found.name = file;
    s.found.parts = {{.name = "lead", .verdict = verdict::within_limit},
                     {.name = "lug", .used = used, .exceeds = exceeds, .verdict = v}};
    return s;
}

remedy step(const std::string& what, remedy_effort effort, bool clears)
{
    remedy r{.what = what};
    r.effort = effort;
    r.clears_verdict = clears;
    return r;
}

std::vector<std::string> files(const std::vector<surveyed_station>& all, const std::vector<std::size_t>& places)
{
    std::vector<std::string> out;
    for (const std::size_t i : places) out.push_back(all[i].file);
    return out;
}

part_result part(const std::string& name, verdict v, double millivolts)
{
    part_result p{.name = name, .verdict = v};
    p.drop = exactly(in_si<voltage>(1e-3 * millivolts));
    p.peak_temperature = 40_degC;
    p.places = {{}};
    return p;
}

}  // namespace

TEST(Survey, RanksTheWorstFirst)
{
    std::vector<surveyed_station> all{
        of("fine", verdict::within_limit, 0.0, 0.9),      of("may", verdict::may_exceed, 0.3, 0.7),
        of("unread", verdict::within_limit, 0.0, 0.0),    of("over", verdict::over_limit, 0.9, 1.2),
        of("may more", verdict::may_exceed, 0.4, 0.6),    of("over more used", verdict::over_limit, 0.9, 1.3),
        of("fine twin", verdict::within_limit, 0.0, 0.9), of("stopped", verdict::within_limit, 0.0, 0.1),
        of("open", verdict::open_circuit, 0.0, 0.0),      of("numbers only", verdict::not_judged, 0.0, 0.2)};
    all[2].fault = "there is no such file";
    all[2].found = {};
    all[7].found.findings = {{.severity = finding_severity::stop_job, .text = "a cut covering"}};
    all[8].found.conducts = false;
    const survey found = survey_of(all);
    EXPECT_THAT(files(all, found.ranked), ElementsAre("open", "stopped", "over more used", "over", "may more", "may",
                                                      "fine", "fine twin", "numbers only"));
    EXPECT_THAT(files(all, found.not_read), ElementsAre("unread"));
}

TEST(Survey, TellsBuyingFromCleaning)
{
    std::vector<surveyed_station> all{of("fine", verdict::within_limit, 0.0, 0.1),
                                      of("over", verdict::over_limit, 1.0, 2.0)};
    all[0].remedies = {step("brush the palm", remedy_effort::clean, false)};
    all[1].remedies = {step("buy a larger lead", remedy_effort::replace, true),
                       step("crimp a new lug", remedy_effort::re_terminate, true),
                       step("buy a better coupling", remedy_effort::replace, false),
                       step("tighten the nut", remedy_effort::tighten, true),
                       step("rest longer", remedy_effort::weld_less, true)};
    all[1].remedies.push_back(step("all of it", remedy_effort::clean, true));
    all[1].remedies.back().is_summary = true;
    all[1].remedies.push_back(step("nothing cures the gun", remedy_effort::replace, true));
    all[1].remedies.back().is_remark = true;
    const survey found = survey_of(all);
    const auto words = [](const std::vector<survey_step>& steps) {
        std::vector<std::string> out;
        for (const survey_step& s : steps) out.push_back(s.what);
        return out;
    };
    EXPECT_THAT(words(found.to_buy), ElementsAre("buy a larger lead", "crimp a new lug"));
    EXPECT_THAT(words(found.to_do), ElementsAre("tighten the nut", "brush the palm"));  // of the worst station first
    EXPECT_EQ(found.to_do[0].entry, 1U);
    EXPECT_TRUE(found.to_do[0].cures);
    EXPECT_FALSE(found.to_do[1].cures);
}

// Nothing that is worth doing is left out: what is moved or unhooked, what spares the circuit until it is mended; of
// what is bought for one part, the best.
TEST(Survey, LeavesNoStepOut)
{
    std::vector<surveyed_station> all{of("over", verdict::over_limit, 1.0, 2.0)};
    remedy larger = step("replace work lead by 2/0 AWG", remedy_effort::replace, true), largest = larger;
    larger.part = largest.part = "work lead";
    largest.what = "replace work lead by 4/0 AWG";
    all[0].remedies = {step("take hoist chain out of the welding circuit", remedy_effort::move, false),
                       larger,
                       largest,
                       step("rest longer", remedy_effort::weld_less, true),
                       step("set the supply higher", remedy_effort::raise_volts, true),
                       step("weld with less current", remedy_effort::weld_less, false)};
    const survey found = survey_of(all);
    ASSERT_EQ(found.to_move.size(), 1U);
    EXPECT_EQ(found.to_move[0].what, "take hoist chain out of the welding circuit");
    ASSERT_EQ(found.to_buy.size(), 1U);
    EXPECT_EQ(found.to_buy[0].what, "replace work lead by 2/0 AWG");
    ASSERT_EQ(found.until_then.size(), 2U);
    EXPECT_EQ(found.until_then[1].what, "set the supply higher");
}

// What was read counts beside what was described: a part likelier at fault than not is as bad as a limit exceeded.
TEST(Survey, HearsWhatWasRead)
{
    std::vector<surveyed_station> all{of("may", verdict::may_exceed, 0.3, 0.7),
                                      of("read", verdict::within_limit, 0.0, 0.1),
                                      of("sound", verdict::within_limit, 0.0, 0.2)};
    suspected_part lug{.name = "lug", .probability = 0.9};
    lug.remedy = step("crimp a new lug", remedy_effort::re_terminate, false);
    all[1].answers.fault = fault_search{.parts = {lug}, .none = 0.49};
    all[2].answers.fault = fault_search{.parts = {lug}, .none = 0.5};
    const survey found = survey_of(all);
    EXPECT_THAT(files(all, found.ranked), ElementsAre("read", "may", "sound"));
    ASSERT_EQ(found.to_mend.size(), 1U);
    EXPECT_EQ(found.to_mend[0].entry, 1U);
    EXPECT_EQ(found.to_mend[0].what, "crimp a new lug");
}

// A week of five shifts of eight hours.
TEST(Survey, LooksAWeekAhead)
{
    std::vector<surveyed_station> all{of("a", verdict::within_limit, 0.0, 0.1),
                                      of("b", verdict::within_limit, 0.0, 0.1)};
    all[0].answers.life.emplace();
    all[0].answers.life->clamps = {{.name = "clamp", .look_again = 40_h}, {.name = "late clamp", .look_again = 40.1_h}};
    joint_drift soon{.name = "lug"}, sooner{.name = "lug"}, late{.name = "late lug"}, never{.name = "never"};
    soon.poor.yields = 30_h;
    sooner.poor.yields = 20_h;
    late.poor.yields = 41_h;
    all[0].answers.life->joints.joints = {soon, sooner, late, never};
    all[1].answers.life.emplace();
    all[1].answers.life->clamps = {{.name = "other clamp", .look_again = 0_h}};
    const survey found = survey_of(all);
    ASSERT_EQ(found.to_look_at.size(), 3U);
    EXPECT_EQ(found.to_look_at[0].part, "other clamp");
    EXPECT_EQ(found.to_look_at[0].entry, 1U);
    EXPECT_EQ(found.to_look_at[1].part, "lug");
    EXPECT_EQ(found.to_look_at[1].by, 20_h);
    EXPECT_EQ(found.to_look_at[2].part, "clamp");
    // a shorter shift makes a shorter week
    all[0].answers.life->service.joints.shift = 4_h;
    EXPECT_EQ(survey_of(all).to_look_at.size(), 2U);
}

TEST(SurveyTrend, KnowsPartsByTheirNames)
{
    surveyed_station before = station_of("1"), after = station_of("2");
    before.found.parts = {part("lead", verdict::within_limit, 500), part("lug", verdict::within_limit, 10),
                          part("clamp", verdict::over_limit, 90),   part("old holder", verdict::within_limit, 5),
                          part("plug", verdict::within_limit, 100), part("stud", verdict::within_limit, 100),
                          part("palm", verdict::not_judged, 10)};
    after.found.parts = {part("clamp", verdict::within_limit, 89), part("lug", verdict::may_exceed, 9),
                         part("lead", verdict::within_limit, 500), part("new holder", verdict::within_limit, 5),
                         part("plug", verdict::within_limit, 111), part("stud", verdict::within_limit, 89),
                         part("palm", verdict::within_limit, 10.9)};
    before.found.total_drop = exactly(4_V);
    after.found.total_drop = exactly(5_V);
    before.answers.observations = {reading{.across = "lug", .volts = 9_mV, .current = 100_A},
                                   reading{.across = "lug", .volts = 20_mV, .current = 200_A},
                                   reading{.across = "lead", .volts = 1_V, .current = 200_A, .to = "lug"}};
    after.answers.observations = {four_wire_observation{.part = "lug", .ohms = 150_uohm}};
    const station_trend t = trend_of(before, after);
    std::vector<std::string> names;
    std::vector<part_fate> changes;
    for (const part_trend& p : t.parts) {
        names.push_back(p.name);
        changes.push_back(p.change);
    }
    EXPECT_THAT(names, ElementsAre("clamp", "lug", "lead", "new holder", "plug", "stud", "palm", "old holder"));
    using enum part_fate;
    EXPECT_THAT(changes, ElementsAre(better, worse, alike, added, worse, better, alike, gone));
    EXPECT_EQ(t.drop_before, 4_V);
    EXPECT_EQ(t.drop_after, 5_V);
    EXPECT_FALSE(t.parts[3].before);
    EXPECT_FALSE(t.parts[7].after);
    ASSERT_TRUE(t.parts[1].read_ratio);  // 20 mV at 200 A was the last: 100 micro-ohm
    EXPECT_NEAR(*t.parts[1].read_ratio, 1.5, 1e-12);
    EXPECT_FALSE(t.parts[2].read_ratio);  // a span says nothing of a part
}

// What was read, felt or seen counts beside what is calculated; the worse of the two is said.
TEST(SurveyTrend, HearsReadingsSpansHeatAndLooks)
{
    surveyed_station before = station_of("1"), after = station_of("2");
    for (surveyed_station* s : {&before, &after})
        for (const char* name : {"lug", "stud", "palm", "splice", "gun", "plug", "cured", "warm", "same", "cool"})
            s->found.parts.push_back(part(name, verdict::within_limit, 10));
    after.found.parts[6] = part("cured", verdict::within_limit, 5);
    before.answers.observations = {reading{.across = "lug", .volts = 10_mV, .current = 100_A},
                                   tightness_observation{.part = "stud", .share = 1.0},
                                   surface_observation{.part = "palm", .seen = surface_state::clean},
                                   strand_observation{.part = "splice", .missing = 0.0},
                                   arc_observation{.part = "gun", .seen = arc_look::steady},
                                   reading{.across = "plug", .volts = 12_mV, .current = 100_A},
                                   reading{.across = "cured", .volts = 10_mV, .current = 100_A},
                                   heat_observation{.part = "warm", .hottest = 50_degC},
                                   heat_observation{.part = "same", .hottest = 50_degC},
                                   heat_observation{.part = "cool", .hottest = 50_degC},
                                   reading{.across = "lug", .volts = 1_V, .current = 100_A, .to = "palm"},
                                   reading{.across = "lug", .volts = 1_V, .current = 100_A, .to = "stud"}};
    after.answers.observations = {reading{.across = "lug", .volts = 11.5_mV, .current = 100_A},
                                  tightness_observation{.part = "stud", .share = 0.5},
                                  surface_observation{.part = "palm", .seen = surface_state::light_rust},
                                  strand_observation{.part = "splice", .missing = 0.1},
                                  arc_observation{.part = "gun", .seen = arc_look::unsteady},
                                  reading{.across = "plug", .volts = 10_mV, .current = 100_A},
                                  reading{.across = "cured", .volts = 20_mV, .current = 100_A},
                                  heat_observation{.part = "warm", .hottest = 60_degC},
                                  heat_observation{.part = "same", .hottest = 54_degC},  // 4 K at either: 5.7 K
                                  heat_observation{.part = "cool", .hottest = 43_degC},  // 7 K, the other way
                                  reading{.across = "lug", .volts = 1.2_V, .current = 100_A, .to = "palm"}};
    const station_trend t = trend_of(before, after);
    std::vector<part_fate> changes;
    for (const part_trend& p : t.parts) changes.push_back(p.change);
    using enum part_fate;
    EXPECT_THAT(changes, ElementsAre(worse, worse, differs, worse, worse, better, worse, differs, alike, differs));
    EXPECT_TRUE(t.parts[0].by_readings);
    EXPECT_TRUE(t.parts[6].by_readings);
    EXPECT_FALSE(t.parts[8].by_readings);
    EXPECT_EQ(t.parts[7].before->hottest, 50_degC);
    EXPECT_EQ(t.parts[7].after->hottest, 60_degC);
    EXPECT_EQ(t.parts[2].after->looks.size(), 1U);
    ASSERT_EQ(t.spans.size(), 2U);
    EXPECT_EQ(t.spans[0].from, "lug");
    EXPECT_EQ(t.spans[0].to, "palm");
    ASSERT_TRUE(t.spans[0].ratio);
    EXPECT_NEAR(*t.spans[0].ratio, 1.2, 1e-12);
    EXPECT_TRUE(t.spans[1].before);
    EXPECT_FALSE(t.spans[1].after);
    EXPECT_FALSE(t.spans[1].ratio);
}

TEST(SurveyTrend, KnowsHowManyPartsAreThere)
{
    surveyed_station before = station_of("1"), after = station_of("2");
    before.found.name = "bench";
    after.found.name = "stand";
    before.found.parts = {part("lug", verdict::within_limit, 10), part("lead", verdict::within_limit, 10),
                          part("clamp", verdict::within_limit, 10), part("arc", verdict::not_judged, 0)};
    after.found.parts = {part("lug", verdict::within_limit, 10), part("whip", verdict::within_limit, 10),
                         part("clamp", verdict::within_limit, 10), part("arc", verdict::not_judged, 0)};
    before.found.parts[3].kind = after.found.parts[3].kind = part_kind::arc;
    after.found.parts[2].kind = part_kind::lug;  // the same name for another thing
    const station_trend t = trend_of(before, after);
    EXPECT_EQ(t.known_again, 1U);
    EXPECT_EQ(t.most_parts, 3U);
    EXPECT_TRUE(t.names_differ);
    EXPECT_EQ(t.parts[2].change, part_fate::added);
    EXPECT_EQ(trend_of(before, before).known_again, 3U);
    EXPECT_FALSE(trend_of(before, before).names_differ);
}

TEST(SurveyTrend, WithoutAStateThereAreNoVolts)
{
    surveyed_station before = station_of("1"), after = station_of("2");
    before.found.parts = {part("lug", verdict::within_limit, 10)};
    after.found.parts = {part("lug", verdict::open_circuit, 0)};
    after.found.conducts = false;
    const station_trend t = trend_of(before, after);
    EXPECT_EQ(t.parts[0].change, part_fate::worse);
    EXPECT_TRUE(t.parts[0].before->drop);
    EXPECT_FALSE(t.parts[0].after->drop);
    EXPECT_FALSE(t.parts[0].after->peak);
    EXPECT_FALSE(t.drop_after);
    EXPECT_EQ(trend_of(after, before).parts[0].change, part_fate::better);
}
