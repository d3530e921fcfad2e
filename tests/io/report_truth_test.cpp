// What a report says holds together: ways beside the path, times that nobody could keep, an arc whose line is not
// known.
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/draw/budget_drawing.hpp>
#include <weldloop/io/draw/loop_column.hpp>
#include <weldloop/io/draw/loop_drawing.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

TEST(ReportTruth, RowsToldWithStrayWaysOpenAreMarked)
{
    const test::assessed_station s = test::gate_two_clamps();
    const std::string text = report_text(s.is, s.found, s.remedies), page = report_page(s.is, s.found, s.remedies);
    int marked = 0;
    for (const part_result& p : s.found.parts) {
        const std::string number = std::to_string(number_of(p)) + (p.with_stray_open ? "* " : "  ");
        EXPECT_THAT(text, HasSubstr(number + plain_ascii(p.name).substr(0, 18))) << p.name;
        marked += p.with_stray_open ? 1 : 0;
    }
    ASSERT_GE(marked, 1);
    for (const std::string& form : {text, page}) EXPECT_THAT(form, HasSubstr("*: told with every stray way open"));
    // without a stray way nothing is marked
    const test::assessed_station plain = test::gate_shop();
    EXPECT_THAT(report_text(plain.is, plain.found, plain.remedies), Not(HasSubstr("*: told")));
    // a way is named in its row, in words
    EXPECT_THAT(text, HasSubstr("\n     way hoist chain:\n"));
    EXPECT_THAT(text, Not(HasSubstr(" :\n")));
}

// What lies beside the path drops the same volts, not more.
TEST(ReportTruth, WaysAddNothingToTheVoltsOfThePath)
{
    const test::assessed_station s = test::gate_two_clamps();
    const std::string drawing = budget_drawing(s.is, s.found);
    for (const part_result& p : s.found.parts) {
        if (p.way.empty())
            EXPECT_THAT(drawing, HasSubstr(p.name));
        else
            EXPECT_THAT(drawing, Not(HasSubstr(p.name))) << p.way;
    }
}

TEST(ReportTruth, TheLoopShowsWhereWaysBranchOff)
{
    const test::assessed_station s = test::gate_two_clamps();
    const std::string loop = loop_drawing(s.is, s.found);
    for (const way_result& w : s.found.ways) EXPECT_THAT(loop, HasSubstr(">" + w.name + ", ")) << w.name;
    const auto ends_of = [](const std::string& drawing) {
        std::size_t count = 0;
        for (std::size_t at = drawing.find("<circle"); at != std::string::npos; at = drawing.find("<circle", at + 1))
            ++count;
        return count;
    };
    test::assessed_station plain = s;
    plain.is.ways.clear();
    // two ends of each way beside the terminals
    EXPECT_EQ(ends_of(loop), ends_of(loop_drawing(plain.is, plain.found)) + 2 * s.is.ways.size());
    EXPECT_EQ(ends_of(loop_column(s.is, s.found)), ends_of(loop_column(plain.is, plain.found)) + 2 * s.is.ways.size());
}

// Nobody keeps a time of a second.
TEST(ReportTruth, ATimeBelowAMinuteIsAtOnce)
{
    EXPECT_EQ(detail::hours_text(4.56_h), "4.5 h");
    EXPECT_EQ(detail::hours_text(12.7_min), "12 min");
    EXPECT_EQ(detail::hours_text(1.37_s), "less than a minute");
    EXPECT_EQ(detail::after_text(1.37_s), "at once");
    grip_forecast g;
    g.horizon = 2000_h;
    g.points = {{.at = {}}, {.at = 2000_h}};
    g.poor_points = {{.at = {}}, {.at = 1.37_s}};
    g.outlook_poor = grip_outlook::unstable;
    g.grip_left = 0.9;
    g.grip_left_low = 0.4;
    g.quarter_lost = band<duration>{1.37_s, 2000_h, 2000_h};
    g.inspect_by = 1.37_s;
    for (const std::string& line : grip_lines(g)) EXPECT_THAT(line, Not(HasSubstr("0.000"))) << line;
    EXPECT_THAT(grip_lines(g), Contains(HasSubstr("in a poor case at once, typically not within 2000 h")));
    EXPECT_THAT(grip_lines(g), Contains(HasSubstr("Inspect it before the next weld")));
}

// A clamp whose spots melt in a poor case keeps nothing there.
TEST(ReportTruth, AClampThatMeltsKeepsNoGripInThatCase)
{
    clamp_prospect c{
        .name = "clamp", .lead = "work lead", .cable_needs = 80_N, .poor_melts = true, .keeps_poor = false};
    c.look_again = duration{};
    const std::vector<std::string> lines = clamp_prospect_lines(c, 2000_h);
    for (const std::string& l : lines) {
        EXPECT_THAT(l, Not(HasSubstr("neither typically nor in a poor case"))) << l;
        EXPECT_THAT(l, Not(HasSubstr("typically and in a poor case"))) << l;
    }
    EXPECT_THAT(lines, Contains(HasSubstr("in a poor case its spots melt from the first weld on")));
    EXPECT_THAT(lines, Contains(HasSubstr("the poor case fails from the start")));
}

// Where no arc line reaches, neither a length is told nor that nothing would be noticed.
TEST(ReportTruth, AnArcWithoutALineHasNoLength)
{
    station s = test::gate_shop().is;
    s.job.process = process::saw;
    const assessment a = assess(s);
    EXPECT_THAT(operating_line(a), HasSubstr("the arc's length is not known"));
    EXPECT_THAT(weld_answer(a, {}), HasSubstr("Of the arc's length nothing is said"));
    EXPECT_THAT(report_text(s, a, {}), Not(HasSubstr("stubs")));
}

// A finding at the arc and "notices nothing" deny each other.
TEST(ReportTruth, AFindingAtTheArcIsNoNothing)
{
    test::assessed_station s = test::gate_two_clamps();
    s.found.weld.clear();
    EXPECT_THAT(weld_answer(s.found, {}), HasSubstr("notices nothing"));
    s.found.findings.push_back({finding_id::supply_gives_other_current, finding_severity::warning,
                                "The job is stated at 230 A; it gets 180 A."});
    EXPECT_EQ(weld_answer(s.found, {}), "At the arc: The job is stated at 230 A; it gets 180 A.");
}

}  // namespace
