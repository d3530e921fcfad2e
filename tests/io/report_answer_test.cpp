// What a report begins with: what can hurt now, the answer in one sentence, what to do first with its cautions.
#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/io/report/first_actions.hpp>

using namespace weldloop;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

namespace {

std::string sentence_of(const test::assessed_station& s)
{
    return answer_sentence(s.found, first_actions(s.is, s.found, s.remedies, s.answers), s.answers);
}
circuit_answer answer_of(const test::assessed_station& s)
{
    return circuit_answer_of(s.found, s.answers);
}
test::assessed_station small_with(std::string_view old_piece, std::string_view new_piece)
{
    return test::assessed(station_from_toml(test::with(test::small_station, old_piece, new_piece), "small.toml"));
}
/// A healthy assessment whose parts and findings are set by the test.
test::assessed_station healthy()
{
    test::assessed_station s = test::trailer_stand();
    s.remedies.clear();
    return s;
}

}  // namespace

TEST(ReportAnswer, SaysThatNothingIsWrongOnlyWhereNothingIs)
{
    test::assessed_station s = healthy();
    EXPECT_EQ(answer_of(s), circuit_answer::nothing_against);
    EXPECT_THAT(sentence_of(s), StartsWith("Nothing speaks against the circuit as it is described"));
    EXPECT_THAT(sentence_of(s), HasSubstr("the part nearest to its limit is "));
    EXPECT_THAT(sentence_of(s), HasSubstr("; nothing has to be done first."));

    for (const auto& [word, answer] : {std::pair{verdict::close_to_limit, circuit_answer::in_poor_case},
                                       std::pair{verdict::may_exceed, circuit_answer::in_poor_case},
                                       std::pair{verdict::over_limit, circuit_answer::not_good},
                                       std::pair{verdict::spots_melting, circuit_answer::stop_job},
                                       std::pair{verdict::open_circuit, circuit_answer::stop_job}}) {
        s = healthy();
        s.found.parts[2].verdict = word;
        EXPECT_EQ(answer_of(s), answer) << to_text(word);
        EXPECT_THAT(sentence_of(s), HasSubstr("; the worst part is electrode holder (No. 3), " +
                                              std::string(to_text(word)) + ": handle typically "));
        EXPECT_THAT(sentence_of(s), HasSubstr("no single step that was tried helps"));
    }
    for (const auto& [severity, answer] : {std::pair{finding_severity::notice, circuit_answer::in_poor_case},
                                           std::pair{finding_severity::warning, circuit_answer::not_good},
                                           std::pair{finding_severity::stop_job, circuit_answer::stop_job}}) {
        s = healthy();
        s.found.findings = {{finding_id::drop_above_allowed, severity, "The loop takes 4.5 V. That is much."}};
        EXPECT_EQ(answer_of(s), answer);
        // nothing is wrong with a part: the finding is named, a point inside a number ends no sentence
        EXPECT_THAT(sentence_of(s), HasSubstr(": The loop takes 4.5 V; "));
        EXPECT_THAT(sentence_of(s), Not(HasSubstr("part is")));
    }
}

TEST(ReportAnswer, IsOneSentenceOfEveryStation)
{
    for (const test::assessed_station& s : test::all_stations()) {
        const std::string said = sentence_of(s);
        EXPECT_TRUE(said.ends_with(".")) << said;
        EXPECT_EQ(said.find(". "), std::string::npos == said.find("No. ") ? std::string::npos : said.find("No. ") + 2)
            << said;
        const auto actions = first_actions(s.is, s.found, s.remedies, s.answers);
        if (!actions.empty()) {
            EXPECT_THAT(said, HasSubstr("; do first: " + what_line(actions.front().does)));
        }
    }
}

TEST(ReportAnswer, NamesAnOpenCircuitAndALoopThatEnds)
{
    const test::assessed_station open = test::open_bench(), ends = test::ending_stand();
    EXPECT_EQ(answer_of(open), circuit_answer::carries_nothing);
    EXPECT_THAT(sentence_of(open), StartsWith("The circuit is open and carries no current; the worst part is work "
                                              "clamp 3 (No. 3), open circuit: no metal touches metal"));
    EXPECT_EQ(answer_of(ends), circuit_answer::carries_nothing);
    EXPECT_THAT(sentence_of(ends), StartsWith("Stop the job: the circuit typically finds no settled state; the worst"));
    EXPECT_THAT(weld_answer(open.found, {}), HasSubstr("no settled current"));
    EXPECT_THAT(weld_answer(healthy().found, {}), HasSubstr("typically notices nothing"));
}

TEST(ReportAnswer, GoesByTheReadingsWhereTheyNameAPart)
{
    test::assessed_station s = test::trailer_readings();
    EXPECT_EQ(answer_of(s), circuit_answer::not_as_described);
    EXPECT_THAT(sentence_of(s), StartsWith("By what was found on the spot the circuit is not as described: work "
                                           "terminal is at fault, >99 %, likeliest half parted or hardly pressed"));
    const std::vector<first_action> actions = first_actions(s.is, s.found, s.remedies, s.answers);
    ASSERT_FALSE(actions.empty());
    EXPECT_TRUE(actions.front().by_readings);
    EXPECT_EQ(actions.front().does.what, s.answers.fault->parts.front().remedy.what);
    EXPECT_EQ(actions.front().cautions.front(), reading_cautions.back());
    EXPECT_THAT(weld_answer(s.found, s.answers), testing::EndsWith("That is of the circuit as it is described."));
    // readings that name nothing
    s.answers.fault->none = 0.5;
    EXPECT_EQ(answer_of(s), circuit_answer::nothing_against);
    s.answers.fault->none = 0.49;
    s.answers.fault->parts.front().probability = 0.4;
    EXPECT_THAT(sentence_of(s), HasSubstr("work terminal is the first suspect, 40 %"));
}

TEST(ReportAnswer, DoesFirstWhatGoesTogether)
{
    for (const test::assessed_station& s : test::all_stations()) {
        const std::vector<first_action> actions = first_actions(s.is, s.found, s.remedies, s.answers);
        EXPECT_LE(actions.size(), most_first_actions);
        for (const first_action& a : actions) {
            EXPECT_FALSE(a.does.is_remark || a.does.is_summary) << a.does.what;
            for (const first_action& b : actions)
                EXPECT_THAT(a.does.makes_moot, Not(Contains(b.does.what))) << a.does.what;
        }
    }
    // the best comes first, and what it spares is not said
    const test::assessed_station s = test::gate_shop();
    const std::vector<first_action> actions = first_actions(s.is, s.found, s.remedies, {});
    ASSERT_EQ(actions.size(), 3U);
    EXPECT_EQ(actions[0].does.what, s.remedies[0].what);
    EXPECT_THAT(s.remedies[1].makes_moot, Contains(s.remedies[0].what));
    EXPECT_NE(actions[1].does.what, s.remedies[1].what);
}

// What is told of the worst part and what is to be done first belong together.
TEST(ReportAnswer, DoesFirstWhatIsAboutTheWorstPart)
{
    // a step to another part stands before it in the list
    test::assessed_station s = healthy();
    part_result& worst = s.found.parts.front();
    worst.verdict = verdict::over_limit;
    remedy other{
        .what = "clean another", .part = s.found.parts.back().name, .clears_parts = {s.found.parts.back().name}};
    other.effort = remedy_effort::clean;
    remedy own{.what = "replace " + worst.name, .part = worst.name, .clears_parts = {worst.name}};
    s.remedies = {other, own};
    EXPECT_EQ(first_actions(s.is, s.found, s.remedies, s.answers).front().does.what, own.what);
    EXPECT_THAT(sentence_of(s), Not(HasSubstr("no single step")));
    // where no step clears it, that is said
    s.remedies = {other};
    EXPECT_THAT(sentence_of(s), HasSubstr("; no single step clears that; do first: "));
    // what stops the job comes before all
    other.clears_findings = {finding_id::stray_current};
    s.remedies = {own, other};
    s.found.findings = {{finding_id::stray_current, finding_severity::stop_job, "It strays."}};
    EXPECT_EQ(first_actions(s.is, s.found, s.remedies, s.answers).front().does.what, other.what);
}

TEST(ReportAnswer, PutsTheCautionsOfAStepBesideIt)
{
    const test::assessed_station s = test::gate_shop();
    const auto cautions = [&](remedy r) { return detail::cautions_of(r, s.is, s.found); };
    remedy r{.what = "do it", .part = "gate on table"};
    r.effort = remedy_effort::clean;
    EXPECT_THAT(cautions(r), Contains(caution_switch_off));
    EXPECT_THAT(cautions(r), Contains(caution_melting));
    EXPECT_THAT(cautions(r), Contains(caution_burns));
    EXPECT_THAT(cautions(r), Not(Contains(caution_no_splice)));
    r.part = "work lead";
    r.effort = remedy_effort::re_terminate;
    EXPECT_THAT(cautions(r), Contains(caution_hot_covering));
    EXPECT_THAT(cautions(r), Contains(caution_no_splice));
    EXPECT_THAT(cautions(r), Not(Contains(caution_melting)));
    r.effort = remedy_effort::weld_less;
    EXPECT_THAT(cautions(r), Not(Contains(caution_switch_off)));
    // the coat of the very part
    const test::assessed_station zinc =
        small_with("onto = \"mild steel\"", "onto = \"mild steel\"\nsurface = \"galvanized\"");
    r = {.what = "clean it", .part = "work clamp 3"};
    r.effort = remedy_effort::clean;
    EXPECT_THAT(detail::cautions_of(r, zinc.is, zinc.found), Contains(caution_zinc));
    r.part = "cable 1";
    EXPECT_THAT(detail::cautions_of(r, zinc.is, zinc.found), Not(Contains(caution_zinc)));
    const test::assessed_station open = test::open_bench();
    r = {.what = "clean it", .part = "work clamp 3", .restores_circuit = true};
    EXPECT_THAT(detail::cautions_of(r, open.is, open.found), Contains(caution_open));
    EXPECT_THAT(detail::cautions_of(r, open.is, open.found), Contains(caution_paint));
    // of a stray way: an earth stays, and an electrician looks
    const test::assessed_station ways = test::gate_two_clamps();
    r = {.what = "take it out", .part = "chain"};
    EXPECT_THAT(detail::cautions_of(r, ways.is, ways.found), Contains(caution_no_earth));
    EXPECT_THAT(detail::cautions_of(r, ways.is, ways.found), Contains(caution_after_stray));
}

// A caution is said in full once; each action that calls for one still has its line.
TEST(ReportAnswer, SaysACautionInFullOnce)
{
    const test::assessed_station s = test::gate_shop();
    const std::vector<first_action> actions = first_actions(s.is, s.found, s.remedies, s.answers);
    const auto lines = caution_lines(actions);
    ASSERT_EQ(lines.size(), actions.size());
    std::set<std::string> whole;
    for (std::size_t i = 0; i < actions.size(); ++i) {
        EXPECT_EQ(lines[i].empty(), actions[i].cautions.empty());
        for (const std::string& c : actions[i].cautions) {
            const bool is_first = whole.insert(c).second;
            if (is_first)
                EXPECT_THAT(lines[i], Contains(c));
            else
                EXPECT_THAT(lines[i], Contains(HasSubstr(std::string(short_caution(c))))) << c;
        }
    }
    ASSERT_FALSE(whole.empty());
    std::size_t printed = 0;
    for (const auto& l : lines)
        printed += static_cast<std::size_t>(
            std::count_if(l.begin(), l.end(), [&](const auto& c) { return whole.contains(c); }));
    EXPECT_EQ(printed, whole.size());
    EXPECT_THAT(lines.back().front(), StartsWith("As said under 1: switch off"));
}

TEST(ReportAnswer, EveryCautionBesideAStepIsOneOfAll)
{
    for (const test::assessed_station& s : test::all_stations()) {
        for (const first_action& a : first_actions(s.is, s.found, s.remedies, s.answers))
            for (const std::string& c : a.cautions)
                if (c != reading_cautions.back()) {
                    EXPECT_THAT(all_cautions_of(s.found, s.answers), Contains(c)) << s.is.name;
                }
        for (const present_danger& d : present_dangers(s.found))
            for (const std::string& c : d.cautions) EXPECT_THAT(s.found.cautions, Contains(c)) << s.is.name;
    }
}

TEST(ReportAnswer, PutsBeforeAllWhatCanHurtNow)
{
    const auto ids_of = [](const test::assessed_station& s) {
        std::vector<finding_id> out;
        for (const present_danger& d : present_dangers(s.found)) out.push_back(d.finding.id);
        return out;
    };
    EXPECT_THAT(ids_of(small_with("length = \"50 ft\"", "length = \"50 ft\"\ncovering_state = \"cut\"")),
                Contains(finding_id::covering_damaged));
    EXPECT_THAT(ids_of(small_with("[surroundings]",
                                  "[supply]\nkind = \"constant current\"\nhighest_output = \"20 V\"\n[surroundings]")),
                Contains(finding_id::supply_cannot_hold_arc));
    EXPECT_THAT(ids_of(test::gate_two_clamps()), Contains(finding_id::stray_current));
    EXPECT_THAT(ids_of(test::open_bench()), Contains(finding_id::open_circuit));
    EXPECT_THAT(ids_of(test::ending_stand()), Contains(finding_id::no_steady_state));
    EXPECT_THAT(ids_of(test::gate_shop()), Contains(finding_id::spots_melt));
    EXPECT_THAT(ids_of(test::gate_shop()), Not(Contains(finding_id::drop_above_allowed)));
    EXPECT_THAT(ids_of(test::trailer_stand()), IsEmpty());
    assessment high;
    high.findings = {{finding_id::no_load_above_limit, finding_severity::stop_job, "It is."}};
    ASSERT_EQ(present_dangers(high).size(), 1U);
    EXPECT_THAT(present_dangers(high).front().cautions, Contains(caution_live_readings));
    // said once, where it is needed first
    high.findings = {{finding_id::stray_current, finding_severity::stop_job, "One."},
                     {finding_id::stray_way, finding_severity::warning, "Two."}};
    EXPECT_THAT(present_dangers(high).front().cautions, Not(IsEmpty()));
    EXPECT_THAT(present_dangers(high).back().cautions, IsEmpty());
}
