// What goes to the job: cards, blank sheets, surveys. Their words, their widths, their markup, and names of any sort.
#include <algorithm>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/io/report/blank_sheet_page.hpp>
#include <weldloop/io/report/blank_sheet_text.hpp>
#include <weldloop/io/report/csv.hpp>
#include <weldloop/io/report/job_card_page.hpp>
#include <weldloop/io/report/job_card_text.hpp>
#include <weldloop/io/report/survey_csv.hpp>
#include <weldloop/io/report/survey_page.hpp>
#include <weldloop/io/report/survey_text.hpp>

using namespace weldloop;
using testing::HasSubstr, testing::Not;

namespace {

void expect_good_text(const std::string& text, std::size_t width)
{
    EXPECT_EQ(test::forbidden_word_in(text), "");
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        EXPECT_LE(line.size(), width) << line;
        EXPECT_TRUE(std::all_of(line.begin(), line.end(), [](char c) { return c >= ' ' && c < '\x7F'; })) << line;
    }
    EXPECT_EQ(text.find("nan"), std::string::npos);
}

void expect_good_page(const std::string& page)
{
    EXPECT_EQ(test::markup_checker(std::string_view(page).substr(page.find('\n') + 1)).fault(), "");
    EXPECT_EQ(test::forbidden_word_in(page), "");
    EXPECT_THAT(page, Not(HasSubstr("<script")));
    EXPECT_THAT(page, Not(HasSubstr("src=")));
}

// Every caution of the work stands there, before the first joint.
void expect_cautions_first(const std::string& text, std::string_view first_part)
{
    EXPECT_THAT(text, HasSubstr("locked against switching"));
    EXPECT_LT(text.find("locked against switching"), text.find(first_part));
    EXPECT_LT(text.find("measurement category"), text.find(first_part));
    EXPECT_LT(text.find("second person"), text.find(first_part));
}

surveyed_station surveyed(const test::assessed_station& s, const std::string& file)
{
    return {.file = file, .is = s.is, .found = s.found, .remedies = s.remedies, .answers = s.answers};
}

std::vector<surveyed_station> shop()
{
    std::vector<surveyed_station> out{
        surveyed(test::trailer_stand(), "trailer.toml"), surveyed(test::gate_shop(), "gate.toml"),
        surveyed(test::open_bench(), "open.toml"), surveyed(test::hostile_answers(), "=2+3,\"x\".toml")};
    out.push_back({.file = "broken.toml", .fault = "broken.toml:3:1: not TOML, \"here\""});
    return out;
}

}  // namespace

TEST(JobCardText, SaysCautionsFirstAndEverySource)
{
    const test::assessed_station s = test::gate_shop();
    const job_card card = job_card_of(s.is);
    const std::string text = job_card_text(card), page = job_card_page(card);
    expect_good_text(text, job_card_width);
    expect_good_page(page);
    expect_cautions_first(text, "output lug");
    expect_cautions_first(page, "<h3>1 output lug");
    for (const std::string& both : {text, page}) {
        EXPECT_THAT(both, HasSubstr("40 Nm on the M10"));
        EXPECT_THAT(both, HasSubstr("[1]"));
        EXPECT_THAT(both, Not(HasSubstr("[?]")));
        EXPECT_THAT(both, HasSubstr("Put work clamp on the part"));
    }
    EXPECT_THAT(text, HasSubstr("replace work lead (3 AWG) by"));
    EXPECT_THAT(text, HasSubstr("have the card made anew"));
}

TEST(JobCardText, BearsAnyNameAndNoState)
{
    for (const test::assessed_station& s : {test::hostile_shop(), test::ending_stand()}) {
        const job_card card = job_card_of(s.is);
        expect_good_text(job_card_text(card), job_card_width);
        expect_good_page(job_card_page(card));
        EXPECT_EQ(job_card_text(card).find("Nothing can be said of volts") == std::string::npos, card.found.conducts);
    }
}

TEST(BlankSheet, HasABlankBesideEveryExpectation)
{
    for (const test::assessed_station& s :
         {test::gate_shop(), test::gate_two_clamps(), test::long_path(), test::hostile_shop()}) {
        const std::vector<probe_reading> expected = probe_readings_of(s.is, s.found);
        const std::string text = blank_sheet_text(s.is, s.found, expected),
                          page = blank_sheet_page(s.is, s.found, expected);
        expect_good_text(text, blank_sheet_width);
        expect_good_page(page);
        expect_cautions_first(text, "Part by part");
        expect_cautions_first(page, "Part by part");
        std::size_t blanks = 0;
        for (std::size_t at = text.find("mV at ______ A"); at != std::string::npos;
             at = text.find("mV at ______ A", at + 1))
            ++blanks;
        EXPECT_EQ(blanks, expected.size());
        for (const std::string_view field : blank_sheet_fields) {
            EXPECT_THAT(text, HasSubstr(field));
            EXPECT_THAT(page, HasSubstr(field));
        }
    }
    const test::assessed_station s = test::gate_shop();
    const std::vector<probe_reading> expected = probe_readings_of(s.is, s.found);
    // of a lead its covering, of what the arc heats nothing; and when to stop
    for (const std::string& both :
         {blank_sheet_text(s.is, s.found, expected), blank_sheet_page(s.is, s.found, expected)}) {
        EXPECT_THAT(both, HasSubstr("hottest at its covering"));
        EXPECT_THAT(both, HasSubstr("temperature not judged: the arc heats it"));
        EXPECT_THAT(both, Not(HasSubstr("hottest at its conductor")));
        EXPECT_THAT(both, Not(HasSubstr("hottest at its head")));
    }
    EXPECT_THAT(blank_sheet_page(s.is, s.found, expected), HasSubstr("many times what is expected: stop"));
    EXPECT_THAT(blank_sheet_text(s.is, s.found, expected), HasSubstr(to_text(expected[0].volts.high, "mV", 2)));
}

// 1.8 degF to a kelvin and 32 degF at 0 degC; 0.3048 m to a foot.
TEST(BlankSheet, IsToldInTheUnitsOfTheFile)
{
    const test::assessed_station s = test::gate_shop();
    const shown_units units{.temperatures = "degF", .lengths = shown_lengths::feet};
    std::vector<probe_reading> expected = probe_readings_of(s.is, s.found);
    expected.front().peak =
        band<temperature>{temperature::celsius(40.0), temperature::celsius(50.0), temperature::celsius(60.0)};
    const std::string text = blank_sheet_text(s.is, s.found, expected, units),
                      page = blank_sheet_page(s.is, s.found, expected, units);
    for (const std::string& both : {text, page}) {
        EXPECT_THAT(both, HasSubstr("104 to 140 degF"));
        EXPECT_THAT(both, HasSubstr("air 93 degF"));
        EXPECT_THAT(both, Not(HasSubstr("degC")));
    }
    const job_card card = job_card_of(s.is);
    EXPECT_THAT(job_card_text(card, units), HasSubstr("Lead of 1/0 AWG, 25 ft one way"));
    EXPECT_THAT(job_card_page(card, units), HasSubstr("40 Nm on the M10"));
}

TEST(BlankSheet, SaysWhyNothingIsExpected)
{
    const test::assessed_station s = test::open_bench();
    const std::string text = blank_sheet_text(s.is, s.found, probe_readings_of(s.is, s.found));
    EXPECT_THAT(text, HasSubstr("Nothing is to be expected: "));
    expect_good_page(blank_sheet_page(s.is, s.found, {}));
}

// RFC 4180, section 2, rules 1 and 5 to 7; formulas as spreadsheets take them.
TEST(Csv, KeepsToTheStandardAndStopsFormulas)
{
    EXPECT_EQ(csv_field("aaa"), "aaa");
    EXPECT_EQ(csv_field("b \r\nbb"), "\"b \r\nbb\"");
    EXPECT_EQ(csv_field("b\"bb"), "\"b\"\"bb\"");
    EXPECT_EQ(csv_field("a,b"), "\"a,b\"");
    EXPECT_EQ(csv_field(""), "");
    for (const char* start : {"=", "+", "-", "@", "\t"})
        EXPECT_EQ(csv_field(std::string(start) + "1"), "'" + std::string(start) + "1");
    EXPECT_EQ(csv_field("  =1"), "'  =1");
    EXPECT_EQ(csv_field("=a,b"), "\"'=a,b\"");
    EXPECT_EQ(csv_field("\r=1"), "'?=1");  // a return alone would write over the line of a terminal
    EXPECT_EQ(csv_field("\x1B[31mred \xE2\x80\xAEthgir"), "?[31mred ?thgir");
    EXPECT_EQ(csv_field("\xC3\xA9 \xE2\x82\xAC"), "\xC3\xA9 \xE2\x82\xAC");
    EXPECT_EQ(csv_field("a=1"), "a=1");
    const std::vector<std::string> fields{"1", "", "x"};
    EXPECT_EQ(csv_line(fields), "1,,x\r\n");
}

TEST(Survey, IsATableOfLikeLines)
{
    const std::vector<surveyed_station> all = shop();
    const survey found = survey_of(all);
    const std::string csv = survey_csv(all, found);
    // by a reader of its own: quotes, commas, line ends
    std::vector<std::vector<std::string>> lines(1, std::vector<std::string>(1));
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        if (quoted) {
            if (c == '"' && csv[i + 1] == '"')
                lines.back().back() += csv[++i];
            else if (c == '"')
                quoted = false;
            else
                lines.back().back() += c;
        } else if (c == '"')
            quoted = true;
        else if (c == ',')
            lines.back().emplace_back();
        else if (c == '\r') {
            ASSERT_EQ(csv[++i], '\n');
            lines.emplace_back(1);
        } else
            lines.back().back() += c;
    }
    ASSERT_EQ(lines.size(), all.size() + 2);  // names, stations, the empty piece behind the last line end
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) EXPECT_EQ(lines[i].size(), 14U);
    EXPECT_EQ(lines[1][1], "open.toml");
    EXPECT_EQ(lines[1][3], "no");
    EXPECT_EQ(lines[1][9], "");  // an open loop takes no volts that could be named
    EXPECT_EQ(lines[5][1], "broken.toml");
    EXPECT_EQ(lines[5][13], all[4].fault);
    EXPECT_THAT(csv, HasSubstr("\"'=2+3,\"\"x\"\".toml\""));
}

// by hand: 0.375 of all cases are 37.5 of 100, the seventh column
TEST(Survey, TellsCasesBeyondOfAHundred)
{
    std::vector<surveyed_station> one{surveyed(test::gate_shop(), "gate.toml")};
    for (part_result& p : one[0].found.parts) p.exceeds = 0.375;
    const std::string csv = survey_csv(one, survey_of(one)), line = csv.substr(csv.find("\r\n") + 2);
    EXPECT_EQ(csv.find("beyond_of_100"), csv.find("verdict,") + 8);
    const std::string word = csv_field(to_text(one[0].found.weakest().verdict));
    EXPECT_THAT(line, HasSubstr("," + word + ",37.5,"));
}

TEST(Survey, NamesEveryStationAndWhatToDo)
{
    const std::vector<surveyed_station> all = shop();
    const survey found = survey_of(all);
    const std::string text = survey_text(all, found), page = survey_page(all, found);
    // on a narrow screen a row is a list: every cell names its column
    EXPECT_THAT(page, HasSubstr("<table role=\"table\" class=\"told\">"));
    EXPECT_THAT(page, HasSubstr("<td role=\"cell\" data-is=\"What stands out\" class=\"says\">"));
    expect_good_text(text, survey_width);
    expect_good_page(page);
    for (const std::string& both : {text, page}) {
        EXPECT_THAT(both, HasSubstr("open.toml"));
        EXPECT_THAT(both, HasSubstr("broken.toml:3:1"));
        EXPECT_THAT(both, HasSubstr("To buy"));
        EXPECT_THAT(both, HasSubstr("locked against switching"));
    }
    EXPECT_LT(text.find("open.toml"), text.find("gate.toml"));
    EXPECT_LT(text.find("gate.toml"), text.find("trailer.toml"));
    const std::vector<surveyed_station> one{all[0]};
    EXPECT_THAT(survey_text(one, survey_of(one)), HasSubstr("Survey of 1 station\n"));
    EXPECT_THAT(survey_text(one, survey_of(one)), HasSubstr("Nothing"));
}

// Every finding that is more than a notice, and sentences that begin as sentences do.
TEST(Survey, SaysAllThatSpeaksAgainstAStation)
{
    std::vector<surveyed_station> all{surveyed(test::trailer_stand(), "trailer.toml")};
    all[0].found.findings = {
        {finding_id::covering_damaged, finding_severity::stop_job, "The covering is not whole."},
        {finding_id::stray_current, finding_severity::stop_job, "A chain carries current."},
        {finding_id::drop_above_allowed, finding_severity::warning, "The loop takes more than allowed."},
        {finding_id::shared_work, finding_severity::notice, "Another supply welds here."}};
    remedy chain{.what = "unhook the chain", .part = "chain"};
    chain.effort = remedy_effort::move;
    chain.clears_verdict = true;
    all[0].remedies = {chain};
    const survey found = survey_of(all);
    for (const std::string& both : {survey_text(all, found), survey_page(all, found)}) {
        std::string one_line = both;
        std::replace(one_line.begin(), one_line.end(), '\n', ' ');
        while (one_line.find("  ") != std::string::npos) one_line.erase(one_line.find("  "), 1);
        EXPECT_THAT(one_line, HasSubstr("within limit. Stop the job: The covering is not whole. Stop the job: A chain "
                                        "carries current. Warning: The loop takes more than allowed."));
        EXPECT_THAT(one_line, testing::Not(HasSubstr("Another supply")));
        EXPECT_THAT(one_line, HasSubstr("To move and unhook"));
        EXPECT_THAT(one_line, HasSubstr("Unhook the chain."));
        EXPECT_THAT(one_line, HasSubstr("Something stops the job at 1 station;"));
        EXPECT_THAT(one_line, HasSubstr("To move: 1 step at 1 station."));
    }
}

TEST(SurveyTrend, ShowsBeforeAndAfter)
{
    const surveyed_station before = surveyed(test::trailer_stand(), "then.toml");
    test::assessed_station later = test::trailer_stand();
    std::get<lug>(later.is.path.back()).missing_strands = 0.6;
    later = test::assessed(later.is);
    const surveyed_station after = surveyed(later, "now.toml");
    const station_trend t = trend_of(before, after);
    const std::string text = trend_text(before, after, t), page = trend_page(before, after, t);
    expect_good_text(text, survey_width);
    expect_good_page(page);
    EXPECT_THAT(text, HasSubstr("worse"));
    EXPECT_THAT(page, HasSubstr("class=\"worse\""));
    EXPECT_THAT(text, HasSubstr(" -> "));
    EXPECT_THAT(text, testing::Not(HasSubstr("two stations")));
    const surveyed_station hostile = surveyed(test::hostile_answers(), "x");
    EXPECT_THAT(trend_text(hostile, after, trend_of(hostile, after)), HasSubstr("name two stations"));
    expect_good_text(trend_text(hostile, after, trend_of(hostile, after)), survey_width);
    expect_good_page(trend_page(hostile, after, trend_of(hostile, after)));
}
