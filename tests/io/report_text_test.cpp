// The report as text: within its width, nothing but ASCII, an open circuit in words, and no promise.
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/report_text.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using testing::Not;

namespace {

std::string report_of(const test::assessed_station& s)
{
    return report_text(s.is, s.found, s.remedies);
}

std::vector<test::assessed_station> all_stations()
{
    return {test::gate_shop(), test::trailer_stand(), test::long_path(), test::open_bench(), test::hostile_shop()};
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
    for (const test::assessed_station& s : all_stations()) {
        for (const std::string& line : lines_of(report_of(s))) {
            EXPECT_LE(line.size(), text_report_width) << line;
            for (const char c : line) EXPECT_TRUE(c >= ' ' && c <= '~') << line;
            EXPECT_FALSE(line.ends_with(" ")) << "\"" << line << "\"";
        }
    }
}

TEST(ReportText, AlignsItsColumns)
{
    const test::assessed_station s = test::gate_shop();
    std::size_t rows = 0;
    for (const std::string& line : lines_of(report_of(s))) {
        for (const part_result& p : s.found.parts) {
            const std::string start = detail::right_in(std::to_string(number_of(p)), 4) + "  " + p.name + "  ";
            if (!line.starts_with(start)) continue;
            ++rows;
            EXPECT_EQ(line.substr(84, 2), "  ") << line;
            EXPECT_TRUE(std::string(to_text(p.verdict)).starts_with(line.substr(86))) << line;
        }
    }
    EXPECT_EQ(rows, s.found.parts.size());
}

TEST(ReportText, SaysWhatCounts)
{
    const test::assessed_station s = test::gate_shop();
    const std::string text = report_of(s);
    for (const part_result& p : s.found.parts) EXPECT_THAT(text, HasSubstr(p.name));
    EXPECT_THAT(text, HasSubstr("Loop takes"));
    EXPECT_THAT(text, HasSubstr("allowed: 4 V"));
    EXPECT_THAT(text, HasSubstr("Arc gets"));
    EXPECT_THAT(text, HasSubstr("Weakest       " + s.found.weakest().name));
    EXPECT_THAT(text, HasSubstr("What would help, most first"));
    EXPECT_THAT(text, HasSubstr("Grip of work clamp"));
    EXPECT_THAT(text, HasSubstr("Cautions"));
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
    EXPECT_THAT(text, Not(HasSubstr("inf")));
    EXPECT_THAT(text, Not(HasSubstr("nan")));
}

TEST(ReportText, PromisesNothing)
{
    for (const test::assessed_station& s : all_stations()) EXPECT_EQ(test::forbidden_word_in(report_of(s)), "");
    EXPECT_NE(test::forbidden_word_in("It is Safe."), "");
    EXPECT_EQ(test::forbidden_word_in("unsafe, safeguard"), "");
}

TEST(ReportText, GivesTimesOfGripWithTheirBand)
{
    grip_forecast g;
    g.points = {{0_h, 300_N, 100_uohm, temperature::celsius(60)}, {2000_h, 200_N, 200_uohm, temperature::celsius(80)}};
    g.grip_left = 0.7;
    g.grip_left_low = 0.5;
    g.quarter_lost = band<duration>{400_h, 1500_h, 2000_h};
    g.inspect_by = 400_h;
    EXPECT_EQ(grip_lines(g),
              (std::vector<std::string>{"Grip left after 2000 h of shift: typically 70 %, in a poor case 50 %.",
                                        "A quarter of the grip is lost: in a poor case after 400 h, typically after "
                                        "1500 h, in a kind case not within 2000 h.",
                                        "Inspect within 400 h of shift, the early end of that band."}));
    g.inspect_by = g.quarter_lost->low = 987.6_h;  // never later than it is
    EXPECT_EQ(grip_lines(g).back(), "Inspect within 980 h of shift, the early end of that band.");
    EXPECT_EQ(detail::cut_to_two_digits(1200.0), 1200.0);
    EXPECT_NEAR(detail::cut_to_two_digits(0.0478), 0.047, 1e-12);
    g.quarter_lost.reset();
    g.inspect_by.reset();
    g.runs_away = g.spring_destroyed = true;
    const std::vector<std::string> lines = grip_lines(g);
    EXPECT_THAT(lines, testing::Contains(HasSubstr("Does not settle")));
    EXPECT_THAT(lines, testing::Contains(HasSubstr("destroyed")));
    EXPECT_TRUE(grip_lines({}).empty());
}

TEST(ReportText, TellsWhatARemedyRegains)
{
    remedy r{"tighten it", "lug 3", 0.42_V, 35_K, false};
    EXPECT_EQ(gain_line(r), "gains 0.420 V, cools the part by 35 K");
    EXPECT_EQ(what_line(r), "lug 3: tighten it");
    r.what = "tighten lug 3";
    EXPECT_EQ(what_line(r), "tighten lug 3");
    EXPECT_EQ(gain_line({"", "", 0_V, 0_K, true}), "closes the circuit");
    EXPECT_EQ(gain_line({"", "", 0_V, 0_K, false}), "gains nothing that counts at this current");
}
