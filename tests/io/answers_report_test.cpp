// How long a station lasts and where its fault is, in every form of its report.
#include <algorithm>
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"
#include "support/near.hpp"

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/rating/work_cautions.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using nlohmann::json;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

namespace {

std::string in_one_line(std::string text)
{
    std::string out;
    for (const char c : text)
        if (const char d = c == '\n' ? ' ' : c; d != ' ' || out.empty() || out.back() != ' ') out.push_back(d);
    return out;
}
std::string text_of(const test::assessed_station& s)
{
    return in_one_line(report_text(s.is, s.found, s.remedies, {.answers = s.answers}));
}
json json_of(const test::assessed_station& s)
{
    return json::parse(report_json(s.is, s.found, s.remedies, {.answers = s.answers}));
}

/// A joint that yields, or not.
joint_drift joint(std::string name, std::optional<duration> poor, std::optional<duration> typical, double used)
{
    joint_drift j{.name = std::move(name), .contact = "crimp"};
    j.poor = {.yields = poor, .resistance_ratio = 2.0, .softening_used = used, .causes = {0.7, 0.295, 0.005}};
    j.typical = {.yields = typical};
    return j;
}

}  // namespace

TEST(StationLife, ReadsClampsOffTheForecastOfTheAssessment)
{
    const test::assessed_station s = test::gate_shop();
    const station_life life = station_life_of(s.is, s.found);
    ASSERT_EQ(life.clamps.size(), 1U);
    const clamp_prospect& c = life.clamps.front();
    const auto part = std::find_if(s.found.parts.begin(), s.found.parts.end(),
                                   [](const part_result& p) { return p.grip.has_value(); });
    ASSERT_NE(part, s.found.parts.end());
    const grip_forecast& f = *part->grip;
    EXPECT_EQ(c.name, "work clamp");
    EXPECT_EQ(c.place, part->place);
    EXPECT_EQ(c.lead, "work lead");
    EXPECT_EQ(c.keeps_poor, f.outlook_poor == grip_outlook::holds && !c.cable_not_held.poor);
    ASSERT_EQ(c.quarter_lost.poor.has_value(), f.quarter_lost.has_value());
    if (f.quarter_lost) {
        EXPECT_EQ(*c.quarter_lost.poor, f.quarter_lost->low);
    }
    // never later than the first thing that happens in the poor case
    EXPECT_EQ(c.look_again.has_value(), !c.keeps_poor);
    for (const auto& t : {c.quarter_lost.poor, c.cable_not_held.poor})
        if (t) {
            EXPECT_LE(*c.look_again, *t);
        }
    EXPECT_EQ(c.cures_sought, !c.keeps_poor);
    // a lead of 3 AWG, 26.7 mm2, is in the range of the pull test
    ASSERT_TRUE(c.cable_needs);
    EXPECT_GT(c.cable_needs->value(), 0.0);
    EXPECT_EQ(life.service.horizon, usual_forecast);
    EXPECT_EQ(life.joints.horizon, usual_forecast);
}

TEST(StationLife, HoldsACureByTheRuleOfTheClampItself)
{
    const test::assessed_station s = test::gate_shop();
    const clamp_prospect c = station_life_of(s.is, s.found).clamps.front();
    ASSERT_TRUE(c.cures_sought);
    for (const clamp_cure& cure : c.cures) {
        // what is listed typically keeps it: made so, the station says the same
        station cured = s.is;
        auto& w = std::get<work_connection>(part_at(cured, c.place));
        if (cure.kind == clamp_cure_kind::clean_surface)
            w.surface = surface_state::clean;
        else {
            w.clamp = screw_clamp(w.clamp.rated_current);
            w.grip_lost = 0.0;
        }
        const clamp_prospect then = station_life_of(cured, assess(cured)).clamps.front();
        EXPECT_TRUE(then.keeps_typically) << to_text(cure.kind);
        EXPECT_EQ(then.keeps_poor, cure.keeps_poor) << to_text(cure.kind);
    }
}

TEST(StationLife, IsEmptyOfClampsWithoutASettledState)
{
    for (const test::assessed_station& s : {test::open_bench(), test::ending_stand()}) {
        const station_life life = station_life_of(s.is, s.found);
        EXPECT_TRUE(life.clamps.empty());
        EXPECT_TRUE(life.joints.joints.empty());
        EXPECT_THAT(joint_drift_lines(life.joints), ElementsAre(HasSubstr("no settled state")));
    }
}

TEST(StationLife, ListsTheJointsThatYieldPoorCaseFirst)
{
    drift_forecast f{.horizon = 2000_h};
    f.joints = {joint("return lug", duration{}, 430_h, 3.0), joint("clamp lug", 0.5_h, std::nullopt, 1.1),
                joint("output lug", std::nullopt, std::nullopt, 0.2)};
    EXPECT_THAT(
        joint_drift_lines(f),
        ElementsAre("return lug, crimp: it yields in a poor case from the start, typically after 430 h, in a mild "
                    "case not within 2000 h; driven in the poor case by film 70 %, loosening 30 %.",
                    HasSubstr("clamp lug, crimp: it yields in a poor case within the first hour, typically not "
                              "within 2000 h")));
    // a case that ends is not said to last
    f.poor = {.outcome = loop_outcome::ends, .at = 120_h};
    EXPECT_THAT(joint_drift_lines(f),
                Contains("In the poor case the loop finds no settled state any more after 120 h of "
                         "shift, and is not followed further."));
    f.joints = {joint("output lug", std::nullopt, std::nullopt, 0.25), joint("clamp lug", std::nullopt, {}, 0.2)};
    EXPECT_THAT(joint_drift_lines(f), Contains(HasSubstr("No other joint yields as far as the cases were followed")));
    f.poor = {};
    EXPECT_THAT(joint_drift_lines(f),
                ElementsAre("No other joint yields within 2000 h of shift, neither typically nor in a poor case; the "
                            "nearest is output lug, crimp, in the poor case at 25 % of the softening drop of its "
                            "metals."));
    f.joints.assign(15, joint("lug", 1_h, 1_h, 1.0));
    const auto many = joint_drift_lines(f);
    ASSERT_EQ(many.size(), most_joints_named + 1);
    EXPECT_EQ(many.back(), "And 3 more that yield within 2000 h.");
}

TEST(StationLife, SaysOfAClampWhatIsTrueInThePoorCase)
{
    clamp_prospect c{.name = "clamp", .lead = "work lead"};
    c.quarter_lost = {.poor = 30_h, .typical = 250_h};
    c.cable_needs = 12.3_N;
    c.cable_not_held = {.poor = 400_h};
    c.causes = {.force = 0.75, .film = 0.25};
    c.untouched = in_si<resistance>(200e-6);
    c.moved = in_si<resistance>(300e-6);
    c.keeps_poor = false;
    c.cures_sought = true;
    c.look_again = 30_h;
    const auto lines = clamp_prospect_lines(c, 2000_h);
    EXPECT_THAT(lines,
                ElementsAre("A quarter of the grip it has now is lost: in a poor case after 30 h, typically after "
                            "250 h, in a mild case not within 2000 h.",
                            "It no longer holds 5 m of work lead with a coupling, which takes 13 N at each jaw: in "
                            "a poor case after 400 h, typically not within 2000 h, in a mild case not within 2000 "
                            "h.",
                            "What raised its resistance, typically: lost force 75 %, film 25 %.",
                            "Left untouched it still reads 200 uohm at the end, typically; moved, knocked or clamped "
                            "anew 300 uohm.",
                            HasSubstr("Neither bright metal under the jaws nor a screw clamp"),
                            HasSubstr("Look at it again within 30 h of shift")));
    c.moved = in_si<resistance>(201e-6);  // where the two do not differ only one is worth a sentence
    EXPECT_THAT(clamp_prospect_lines(c, 2000_h), Not(Contains(HasSubstr("untouched"))));
    // a poor case that ends without losing a quarter has not kept its grip
    clamp_prospect ends{.name = "clamp", .cable_needs = 12.3_N, .poor_ends = 80_h, .keeps_poor = false};
    ends.look_again = 80_h;
    EXPECT_THAT(clamp_prospect_lines(ends, 2000_h), Not(Contains(HasSubstr("not lost"))));
    EXPECT_THAT(clamp_prospect_lines(ends, 2000_h), Not(Contains(HasSubstr("It holds"))));
    EXPECT_THAT(clamp_prospect_lines(ends, 2000_h), Contains(HasSubstr("comes to an end after 80 h")));
    EXPECT_THAT(clamp_prospect_lines(ends, 2000_h), Contains(HasSubstr("not looked for while stray ways")));
    ends.look_again = duration{};
    EXPECT_THAT(clamp_prospect_lines(ends, 2000_h), Contains(HasSubstr("Look at it before the next weld")));
}

TEST(AnswersReport, FindsTheCulpritOfTheDemoInEveryForm)
{
    const test::assessed_station s = test::trailer_readings();
    ASSERT_TRUE(s.answers.fault);
    const suspected_part& first = s.answers.fault->parts.front();
    EXPECT_EQ(first.name, "work terminal");
    EXPECT_GT(static_cast<double>(first.probability), 0.9);
    const std::string text = text_of(s);
    EXPECT_THAT(
        text, HasSubstr("By what was found on the spot the circuit is not as described: work terminal is at fault, "));
    EXPECT_THAT(text, HasSubstr("What to do first, supply off and locked: "));
    EXPECT_THAT(text, HasSubstr("1 work clamp to work terminal: 0.57 V at 122 A"));
    EXPECT_THAT(text, HasSubstr("only trained persons, with insulated leads"));
    EXPECT_THAT(text, HasSubstr("supply off and locked against switching on"));
    EXPECT_THAT(text, HasSubstr("How long it lasts"));
    EXPECT_THAT(text, HasSubstr("30 openings, 5 knocks, 2 drags, on the work 80 % of it, cleaned every 40 h, screws "
                                "tightened every 500 h"));
    EXPECT_THAT(text, HasSubstr("3 starts from cold a shift, air damp, moved"));
    const std::string page = report_page(s.is, s.found, s.remedies, {.answers = s.answers});
    for (const std::string& line : fault_lines(*s.answers.fault)) EXPECT_THAT(page, HasSubstr(markup_escaped(line)));
    for (const std::string& line : clamp_prospect_lines(s.answers.life->clamps.front(), s.found.service.horizon))
        EXPECT_THAT(page, HasSubstr(markup_escaped(line)));
    for (const std::string& line : joint_drift_lines(s.answers.life->joints))
        EXPECT_THAT(page, HasSubstr(markup_escaped(line)));
    for (const std::string_view caution : reading_cautions) EXPECT_THAT(page, HasSubstr(markup_escaped(caution)));

    const json fault = json_of(s).at("fault");
    EXPECT_EQ(fault.at("parts").at(0).at("name"), "work terminal");
    EXPECT_NEAR_REL(fault.at("parts").at(0).at("probability").get<double>(), static_cast<double>(first.probability),
                    1e-6);
    EXPECT_EQ(fault.at("parts").at(0).at("condition"), first.condition);
    EXPECT_EQ(fault.at("parts").at(0).at("condition_id"), to_text(first.condition_id));
    ASSERT_TRUE(first.remedy.id);
    EXPECT_EQ(fault.at("parts").at(0).at("remedy_ids").at(0), to_text(*first.remedy.id));
    EXPECT_EQ(fault.at("parts").at(0).at("remedy_ids").size(), first.second_cure ? 2U : 1U);
    EXPECT_TRUE(fault.at("none").is_number());
    EXPECT_EQ(fault.at("readings").size(), 6U);
    const json life = json_of(s).at("life");
    EXPECT_EQ(life.at("clamps").at(0).at("name"), "work clamp");
    // a number is that of the part of the same name among the parts
    for (const char* list : {"clamps", "joints"}) {
        ASSERT_FALSE(life.at(list).empty()) << list;
        for (const json& one : life.at(list)) {
            const json parts = json_of(s).at("parts");
            const auto named = std::find_if(parts.begin(), parts.end(),
                                            [&](const json& p) { return p.at("number") == one.at("number"); });
            ASSERT_NE(named, parts.end()) << one;
            EXPECT_EQ(named->at("name"), one.at("name"));
        }
    }
    EXPECT_EQ(json_of(s).at("life").at("service").at("look_ahead_h"), 4000);
}

// One reading far above all that a lug wears into: every form stops the job there before anything else is said.
TEST(AnswersReport, StopsTheJobForAPartThatMayBeFailing)
{
    described_station d = read_described_station(test::example_file("trailer_readings.toml"));
    d.observations = {reading{.across = "clamp lug", .volts = 0.35_V, .current = 123_A}};
    const test::assessed_station s = test::answered(d);
    ASSERT_TRUE(s.answers.fault);
    const suspected_part* const failing = s.answers.fault->failing_part();
    ASSERT_NE(failing, nullptr);
    EXPECT_EQ(failing->name, "clamp lug");
    const std::vector<std::string> lines = fault_lines(*s.answers.fault);
    EXPECT_THAT(lines.front(), StartsWith("Stop the job: clamp lug may be failing, "));
    EXPECT_THAT(lines.front(), HasSubstr("supply off and locked, take clamp lug out of use"));
    EXPECT_THAT(lines, Not(Contains(HasSubstr("nothing is at fault: most"))));
    EXPECT_THAT(lines, Not(Contains(HasSubstr("Most likely nothing is at fault"))));
    EXPECT_EQ(circuit_answer_of(s.found, s.answers), circuit_answer::stop_job);
    const std::vector<first_action> actions = first_actions(s.is, s.found, s.remedies, s.answers);
    ASSERT_FALSE(actions.empty());
    EXPECT_TRUE(actions.front().by_readings);
    EXPECT_THAT(actions.front().does.what, StartsWith("take clamp lug out of use"));
    EXPECT_EQ(actions.front().cautions.front(), touch_cautions[0]);
    for (const std::string_view caution : {caution_melting, caution_fire, caution_burns, caution_open})
        EXPECT_THAT(actions.front().cautions, Contains(caution));
    const std::string said = "Stop the job: by what was found on the spot clamp lug may be failing, ";
    EXPECT_THAT(text_of(s), HasSubstr(said));
    EXPECT_THAT(report_page(s.is, s.found, s.remedies, {.answers = s.answers}), HasSubstr(said));
    const json all = json_of(s);
    EXPECT_EQ(all.at("fault").at("stops_job"), "clamp lug");
    EXPECT_EQ(all.at("fault").at("parts").at(0).at("remedy_ids").at(0), "out_of_use");
    EXPECT_GT(all.at("fault").at("parts").at(0).at("failing").get<double>(), 0.4);
    EXPECT_EQ(all.at("answer").at("says"), to_text(circuit_answer::stop_job));
    // not where a span says that the part has not so many volts
    d.observations.push_back(reading{.across = "clamp lug", .volts = 0.505_V, .current = 123_A, .to = "work lead"});
    const test::assessed_station spanned = test::answered(d);
    EXPECT_EQ(spanned.answers.fault->failing_part(), nullptr);
    EXPECT_TRUE(json_of(spanned).at("fault").at("stops_job").is_null());
    // what the arc heats is said to be left out
    d.observations = {heat_observation{.part = "electrode holder", .hottest = 70_degC}};
    const test::assessed_station heated = test::answered(d);
    EXPECT_THAT(fault_lines(*heated.answers.fault),
                Contains(HasSubstr("Reading 1: the temperature of electrode holder is not "
                                   "judged: the arc heats it")));
    EXPECT_EQ(json_of(heated).at("fault").at("not_judged").at(0).at("reading"), 1);
}

TEST(AnswersReport, NamesReadingsThatContradictEachOther)
{
    described_station d = read_described_station(test::example_file("trailer_readings.toml"));
    // the span takes no more than its lead alone should, and one lug in it a twelfth of that
    d.observations = {reading{.across = "clamp lug", .volts = 0.5_V, .current = 123_A, .to = "work lead"},
                      reading{.across = "clamp lug", .volts = 0.04_V, .current = 123_A}};
    const assessment found = assess(d.station, d.service);
    const station_answers a = answers_of(d.station, found, d.observations);
    ASSERT_TRUE(a.fault);
    ASSERT_FALSE(a.fault->doubtful.empty());
    const auto lines = fault_lines(*a.fault);
    EXPECT_THAT(lines, Contains(HasSubstr("is in doubt")));
    EXPECT_THAT(lines, Contains(HasSubstr("contradicts that across clamp lug to work lead")));
    EXPECT_THAT(lines, Not(Contains(HasSubstr("the readings fit the station"))));
    const json fault = json::parse(report_json(d.station, found, {}, {.answers = a})).at("fault");
    EXPECT_EQ(fault.at("doubtful").at(0).at("reading"), a.fault->doubtful.front().which + 1);
}

TEST(AnswersReport, SaysWhenNothingIsAtFaultAndWhenNothingCanBeSaid)
{
    described_station d = read_described_station(test::example_file("trailer_readings.toml"));
    d.observations = {reading{.across = "work lead", .volts = 0.497_V, .current = 123_A}};
    const assessment found = assess(d.station, d.service);
    const station_answers sound = answers_of(d.station, found, d.observations);
    ASSERT_TRUE(sound.fault);
    EXPECT_GT(static_cast<double>(sound.fault->none), 0.5);
    EXPECT_THAT(fault_lines(*sound.fault).front(), HasSubstr("Most likely nothing is at fault"));
    EXPECT_THAT(fault_lines(*sound.fault), Not(Contains(HasSubstr("At fault: "))));
    EXPECT_THAT(fault_lines(*sound.fault), Not(Contains(HasSubstr("What to do first"))));
    EXPECT_THAT(fault_lines(*sound.fault).front(), HasSubstr("the readings fit the station as it is described"));

    const test::assessed_station open = test::open_bench();
    const station_answers none =
        answers_of(open.is, open.found, {heat_observation{.part = "cable 1", .hottest = temperature::celsius(50)}});
    EXPECT_FALSE(none.fault);
    EXPECT_TRUE(none.as_described_unsettled);
    EXPECT_THAT(in_one_line(report_text(open.is, open.found, open.remedies, {.answers = none})),
                HasSubstr("No part can be named by the readings"));
    EXPECT_EQ(
        json::parse(report_json(open.is, open.found, open.remedies, {.answers = none})).at("fault").at("is_located"),
        false);
    // without observations nothing of it stands in a report
    const test::assessed_station plain = test::trailer_stand();
    EXPECT_FALSE(json_of(plain).contains("fault"));
    EXPECT_FALSE(json_of(plain).contains("life"));
    EXPECT_THAT(text_of(plain), Not(HasSubstr("Where the fault is")));
}
