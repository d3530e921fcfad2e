// The report as text: within its width, nothing but ASCII, an open circuit in words, and no promise.
#include <chrono>
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/text_layout.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using testing::Not;

namespace {

std::string report_of(const test::assessed_station& s, report_detail detail = report_detail::brief)
{
    return report_text(s.is, s.found, s.remedies, {.answers = s.answers, .detail = detail});
}

std::vector<std::string> lines_of(const std::string& text)
{
    std::vector<std::string> out;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) out.push_back(line);
    return out;
}

}  // namespace

TEST(ReportText, KeepsToItsWidthAndToAscii)
{
    for (const test::assessed_station& s : test::all_stations())
        for (const report_detail detail : {report_detail::brief, report_detail::whole})
            for (const std::string& line : lines_of(report_of(s, detail))) {
                EXPECT_LE(line.size(), text_report_width) << line;
                for (const char c : line) EXPECT_TRUE(c >= ' ' && c <= '~') << line;
                EXPECT_FALSE(line.ends_with(" ")) << "\"" << line << "\"";
            }
}

TEST(ReportText, AlignsItsColumns)
{
    const test::assessed_station s = test::gate_shop();
    std::size_t rows = 0;
    for (const std::string& line : lines_of(report_of(s))) {
        for (const part_result& p : s.found.parts) {
            const std::string start = detail::right_in(std::to_string(number_of(p)), 3) + "  " + p.name + "  ";
            if (!line.starts_with(start)) continue;
            ++rows;
            EXPECT_EQ(line.substr(98, 2), "  ") << line;
            EXPECT_EQ(line.substr(100), short_text(p.verdict)) << line;
        }
    }
    EXPECT_EQ(rows, s.found.parts.size());
}

TEST(ReportText, SaysWhatCounts)
{
    const test::assessed_station s = test::gate_shop();
    const std::string text = report_of(s, report_detail::whole);
    for (const part_result& p : s.found.parts) EXPECT_THAT(text, HasSubstr(p.name));
    EXPECT_THAT(text, HasSubstr("Loop takes"));
    EXPECT_THAT(text, HasSubstr("allowed: 4 V"));
    EXPECT_THAT(text, HasSubstr("Arc gets"));
    EXPECT_THAT(text, HasSubstr("All that would help, most first"));
    EXPECT_THAT(text, HasSubstr("Part by part"));
    EXPECT_THAT(text, HasSubstr("Grip of work clamp"));
    EXPECT_THAT(text, HasSubstr("All cautions"));
    EXPECT_THAT(text, HasSubstr("Numbers that rest on judgement, on memory or on common practice"));
    EXPECT_THAT(text, HasSubstr("(judgement)"));
    EXPECT_THAT(text, HasSubstr("(from memory)"));
}

TEST(ReportText, SaysOpenInWords)
{
    const std::string text = report_of(test::open_bench());
    EXPECT_THAT(text, HasSubstr("Loop takes    open"));
    EXPECT_THAT(text, HasSubstr("Arc gets      nothing"));
    EXPECT_THAT(text, HasSubstr("open circuit"));
    EXPECT_THAT(text, HasSubstr("No drops and no temperatures: The circuit is open at"));
    EXPECT_THAT(text, Not(HasSubstr("inf")));
    EXPECT_THAT(text, Not(HasSubstr("nan")));
}

TEST(ReportText, PromisesNothing)
{
    for (const test::assessed_station& s : test::all_stations())
        EXPECT_EQ(test::forbidden_word_in(report_of(s, report_detail::whole)), "");
    EXPECT_NE(test::forbidden_word_in("It is Safe."), "");
    EXPECT_EQ(test::forbidden_word_in("unsafe, safeguard"), "");
}

TEST(ReportText, GoesFromWhatIsActedOnToWhatIsLookedUp)
{
    const test::assessed_station s = test::gate_two_clamps();
    station_answers answers = answers_of(s.is, s.found);
    const std::string text =
        report_text(s.is, s.found, s.remedies, {.answers = answers, .detail = report_detail::whole});
    std::size_t at = 0;
    for (const char* title :
         {"\nThis can hurt now\n---", "\nIn short\n---", "\nDo first\n---", "\nNo.  part", "\nLoop takes",
          "\nWhat else stands out\n---", "\nWays beside the path\n---", "\nGrip of gate clamp\n---",
          "\nHow long it lasts\n---", "\nAll that would help, most first\n---", "\nAll cautions\n---",
          "\nPart by part\n---", "\nSurfaces\n---", "\nSources\n---"}) {
        const std::size_t here = text.find(title, at);
        ASSERT_NE(here, std::string::npos) << title;
        at = here;
    }
    // what can hurt stands before anything is judged, what cannot behind the table
    for (const loop_finding& f : s.found.findings) {
        const std::size_t here = text.find("[" + std::string(to_text(f.id)) + "]");
        ASSERT_NE(here, std::string::npos) << to_text(f.id);
        EXPECT_EQ(here < text.find("\nIn short\n"), detail::can_hurt(f)) << to_text(f.id);
    }
}

TEST(ReportText, KeepsWhatIsLookedUpForWhoAsks)
{
    const test::assessed_station s = test::gate_shop();
    const std::string brief = report_of(s), whole = report_of(s, report_detail::whole);
    for (const char* title : {"Part by part\n---", "Surfaces\n---", "Sources\n---", "rest on judgement, on memory"}) {
        EXPECT_THAT(brief, Not(HasSubstr(title)));
        EXPECT_THAT(whole, HasSubstr(title));
    }
    EXPECT_LT(2 * brief.size(), whole.size());
    EXPECT_THAT(brief, HasSubstr("what rests on judgement stand in the whole report"));
    for (const std::string& caution : s.found.cautions)
        EXPECT_THAT(brief, HasSubstr("! " + in_shown_units(caution, {}).substr(0, 40)))
            << "no caution waits to be asked for";
}

TEST(ReportText, SaysByWhatAndWhenItWasMade)
{
    const test::assessed_station s = test::trailer_stand();
    using namespace std::chrono_literals;
    report_request asked{.date = 2026y / 11 / 26};
    const std::string dated = report_text(s.is, s.found, s.remedies, asked);
    EXPECT_THAT(dated, HasSubstr("Made          2026-11-26, weldloop " + version_text() + "\n"));
    EXPECT_EQ(dated, report_text(s.is, s.found, s.remedies, asked));
    EXPECT_THAT(report_of(s), HasSubstr("Made          weldloop " + version_text() + "\n"));
    EXPECT_EQ(made_line({.date = 2027y / 2 / 3}), "2027-02-03, weldloop " + version_text());
    EXPECT_THROW(static_cast<void>(made_line({.date = 2026y / 2 / 30})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(made_line({.date = 999y / 2 / 3})), out_of_range_error);
}

TEST(ReportText, OfALoopThatEndsSaysWhyAndHasNoNumbers)
{
    const test::assessed_station s = test::ending_stand();
    ASSERT_EQ(s.found.outcome, loop_outcome::ends);
    const std::string text = report_of(s);
    EXPECT_THAT(text, HasSubstr("Loop takes    no steady state"));
    EXPECT_THAT(text, HasSubstr("Arc gets      nothing"));
    EXPECT_THAT(text, HasSubstr("[no_steady_state]"));
    EXPECT_THAT(text, HasSubstr("No drops and no temperatures: The loop has no steady state"));
    for (const std::string& line : lines_of(text))
        for (const part_result& p : s.found.parts)
            if (line.starts_with(detail::right_in(std::to_string(number_of(p)), 3) + "  " + p.name + "  ")) {
                EXPECT_EQ(line.find_first_of("0123456789", 5), std::string::npos) << line;
            }
}

TEST(ReportText, CountsCasesInItsColumns)
{
    EXPECT_EQ(cases_number(likelihood(0.123)), "12");
    EXPECT_EQ(cases_number(likelihood(0.002)), "<1");
    EXPECT_EQ(cases_number(likelihood(0.999)), ">99");
    EXPECT_EQ(cases_number(part_result{}), "-");
}

TEST(ReportText, GivesTimesOfGripWithTheirBand)
{
    grip_forecast g;
    g.horizon = 2000_h;
    g.points = {{0_h, 300_N, 100_uohm, temperature::celsius(60)}, {2000_h, 200_N, 200_uohm, temperature::celsius(80)}};
    g.grip_left = 0.7;
    g.grip_left_low = 0.5;
    g.quarter_lost = band<duration>{400_h, 1500_h, 2000_h};
    g.inspect_by = 400_h;
    g.outlook = g.outlook_poor = grip_outlook::declines;
    EXPECT_EQ(
        grip_lines(g),
        (std::vector<std::string>{
            "Grip left after 2000 h of shift: typically 70 %, in a poor case 50 %.",
            "A quarter of the grip is lost: in a poor case after 400 h, typically after 1500 h, in a kind case "
            "not within 2000 h.",
            "Inspect within 400 h of shift, the early end of that band, which is the poor case.",
            "What it comes to, typically and in a poor case: it declines, losing a quarter or more of what it has "
            "now."}));
    g.inspect_by = g.quarter_lost->low = 987.6_h;  // never later than it is
    EXPECT_EQ(grip_lines(g).at(2),
              "Inspect within 980 h of shift, the early end of that band, which is the poor case.");
    EXPECT_EQ(detail::cut_to_two_digits(1200.0), 1200.0);
    EXPECT_NEAR(detail::cut_to_two_digits(0.0478), 0.047, 1e-12);
    g.quarter_lost.reset();
    g.inspect_by.reset();
    g.grip_left = 0.9;
    g.grip_left_low = 0.85;
    g.outlook = g.outlook_poor = grip_outlook::holds;
    EXPECT_THAT(grip_lines(g), testing::Contains("A quarter of the grip when new is not lost within 2000 h, neither "
                                                 "typically nor in a poor case."));
    EXPECT_TRUE(grip_lines({}).empty());
}

TEST(ReportText, SaysOfTheGripWhatIsGoneAlready)
{
    grip_forecast g;
    g.horizon = 2000_h;
    g.points = {{0_h, 210_N, 100_uohm, temperature::celsius(60)}, {2000_h, 200_N, 110_uohm, temperature::celsius(62)}};
    g.grip_left = 0.9;
    g.grip_left_low = 0.8;
    for (const double lost : {0.25, 0.3, 0.6}) {
        for (const std::string& line : grip_lines(g, lost)) EXPECT_THAT(line, Not(HasSubstr("not lost")));
        EXPECT_THAT(grip_lines(g, lost),
                    testing::Contains(HasSubstr("More than a quarter of its grip when new is gone")));
    }
    EXPECT_EQ(
        grip_lines(g, 0.3).front(),
        "30 % of its grip when new is gone already, 70 % is left now; after 2000 h of shift typically 63 % of when "
        "new, in a poor case 56 %.");
    // a tenth gone: 0.9 x 0.8 lies below three quarters, 0.9 x 0.9 does not
    EXPECT_EQ(grip_lines(g, 0.1).at(1), "By then a quarter of the grip when new is lost in a poor case, typically not: "
                                        "inspect it well before.");
    g.grip_left = 0.82;
    EXPECT_THAT(grip_lines(g, 0.1).at(1), HasSubstr("and typically too"));
    g.quarter_lost = band<duration>{400_h, 2000_h, 2000_h};
    g.inspect_by = 400_h;
    EXPECT_EQ(grip_lines(g, 0.3).at(2),
              "A quarter of what is left now is lost: in a poor case after 400 h, typically not "
              "within 2000 h, in a kind case not within 2000 h.");
    EXPECT_THAT(grip_lines(g, 0.3), Not(testing::Contains(HasSubstr("Inspect within"))));
    EXPECT_THAT(grip_lines(g, 0.1), testing::Contains(HasSubstr("Inspect within 400 h")));
}

TEST(ReportText, SaysOfTheGripWhatAPoorCaseComesTo)
{
    grip_forecast g;
    g.horizon = 2000_h;
    g.points = {{0_h, 300_N, 100_uohm, temperature::celsius(60)}, {2000_h, 290_N, 110_uohm, temperature::celsius(62)}};
    g.poor_points = {{0_h, 300_N, 400_uohm, temperature::celsius(90)},
                     {700_h, 60_N, 0_uohm, temperature::celsius(300)}};
    g.grip_left = 0.95;
    g.grip_left_low = 0.2;
    g.outlook_poor = grip_outlook::unstable;
    const std::vector<std::string> lines = grip_lines(g);
    // unstable in a poor case: no sentence may promise that a quarter stays
    for (const std::string& line : lines) EXPECT_THAT(line, Not(HasSubstr("not lost")));
    EXPECT_THAT(lines.front(), HasSubstr("in a poor case 20 %, which ends after 700 h"));
    EXPECT_EQ(lines.back(),
              "What it comes to: typically it holds, losing less than a quarter of what it has now; in a "
              "poor case it is unstable: its spots melt, its spring is destroyed or its grip goes, by 700 h.");
    g.poor_points.back().at = 0_h;
    EXPECT_THAT(grip_lines(g).back(), HasSubstr("from the start"));
    g.poor_points.back().at = 2000_h;
    EXPECT_THAT(grip_lines(g).back(), HasSubstr("in a poor case it is unstable: its spots melt."));
    g.outlook = grip_outlook::unstable;
    g.spring_destroyed = true;
    EXPECT_THAT(grip_lines(g).back(), HasSubstr("typically it is unstable: its spring gets hotter than the tempering"));
    g.spring_destroyed = false;
    g.end = grip_end::ran_away;
    EXPECT_THAT(grip_lines(g).back(), HasSubstr("typically it is unstable: heat and loss of grip feed each other"));
}

TEST(ReportText, TellsWhatARemedyRegains)
{
    constexpr auto solved = loop_outcome::solved;
    remedy r{"tighten it", "lug 3", 0.42_V, 35_K, false, remedy_effort::tighten};
    EXPECT_EQ(gain_line(r, solved), "gains 0.42 V, cools the part by 35 K; effort: tighten");
    EXPECT_EQ(what_line(r), "lug 3: tighten it");
    r.what = "tighten lug 3";
    EXPECT_EQ(what_line(r), "tighten lug 3");
    const remedy closing{"", "", 0_V, 0_K, true, remedy_effort::clean};
    EXPECT_EQ(gain_line(closing, loop_outcome::open_circuit), "closes the circuit; effort: clean");
    EXPECT_EQ(gain_line(closing, loop_outcome::ends), "gives the loop a steady state; effort: clean");
    EXPECT_EQ(gain_line({"", "", 0_V, 0_K, false}, solved), "gains less than a meter shows, 10 mV; effort: replace");
}

TEST(ReportText, TellsWhatARemedyChanges)
{
    remedy r;
    EXPECT_EQ(remedy_effect(r), "");
    r.verdict_before = verdict::over_limit;
    EXPECT_EQ(remedy_effect(r), "the part is then out of the path (now over limit)");
    r.verdict_after = verdict::within_limit;
    r.clears_findings = {finding_id::spots_melt};
    r.makes_moot = {"tighten the bolt", "clean the palm"};
    EXPECT_EQ(remedy_effect(r), "verdict then: within limit (now over limit); clears the finding spots_melt; spares: "
                                "tighten the bolt; clean the palm");
    r.verdict_after = verdict::over_limit;
    r.clears_findings = {finding_id::spots_melt, finding_id::stray_way};
    r.makes_moot.clear();
    EXPECT_EQ(remedy_effect(r), "verdict then: over limit, as now; clears the findings spots_melt, stray_way");
    test::assessed_station s = test::trailer_stand();
    r.what = "clean it";
    s.remedies = {r};
    EXPECT_THAT(report_of(s), HasSubstr("verdict then: over limit, as now; clears the findings spots_melt, stray_way"));
}
