// What the welder notices, in every form of the report.
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/course_words.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/weld_sentence.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

namespace {

// a terminal's lines break where they are full
std::string in_one_line(std::string text)
{
    std::string out;
    for (const char c : text)
        if (!(c == '\n' || c == ' ') || (!out.empty() && out.back() != ' ')) out += c == '\n' ? ' ' : c;
    return out;
}

}  // namespace

TEST(WeldReport, SaysTheSameInTextPageAndJson)
{
    test::assessed_station s = test::gate_shop();
    s.is.path.insert(s.is.path.begin() + 1, welding_cable(awg(6), in_si<length>(12.0)).named("thin spare lead"));
    s = test::assessed(s.is);
    ASSERT_TRUE(s.found.conducts);
    ASSERT_FALSE(s.found.weld.empty());
    const std::string text = in_one_line(report_text(s.is, s.found, s.remedies, {.answers = s.answers}));
    const std::string page = report_page(s.is, s.found, s.remedies, {.answers = s.answers});
    const json weld = json::parse(report_json(s.is, s.found, s.remedies, {.answers = s.answers})).at("weld");
    EXPECT_THAT(text, HasSubstr(weld_sentence(s.found.weld)));
    EXPECT_THAT(page, HasSubstr(weld_sentence(s.found.weld)));
    ASSERT_EQ(weld.size(), s.found.weld.size());
    for (std::size_t i = 0; i < weld.size(); ++i) {
        const weld_statement& w = s.found.weld[i];
        EXPECT_EQ(weld.at(i).at("id"), std::string(to_text(w.id)));
        EXPECT_EQ(weld.at(i).at("text"), w.text);
        EXPECT_THAT(text, HasSubstr(w.text));
        EXPECT_THAT(page, HasSubstr(markup_escaped(w.text)));
    }
}

// Money in every form of the report, and only where its price is stated.
TEST(WeldReport, AYearsLossIsInEveryForm)
{
    test::assessed_station s = test::gate_shop();
    EXPECT_FALSE(json::parse(report_json(s.is, s.found, s.remedies)).contains("year"));
    EXPECT_THAT(report_text(s.is, s.found, s.remedies), Not(HasSubstr("In a year")));
    s.is.year = year_of_work{.arc_time = in_si<duration>(1.8e6), .tariff = 0.3};
    s = test::assessed(s.is);
    ASSERT_TRUE(s.found.year);
    const json year = json::parse(report_json(s.is, s.found, s.remedies)).at("year");
    constexpr double printed = 1e-5;  // JSON numbers are rounded
    EXPECT_NEAR(year.at("energy_lost_J").get<double>() / s.found.year->lost.value(), 1.0, printed);
    EXPECT_NEAR(year.at("energy_cost").get<double>() / *s.found.year->energy_cost, 1.0, printed);
    EXPECT_FALSE(year.contains("time_cost"));
    const std::string line = year_line(s.found);
    EXPECT_THAT(line, HasSubstr("kWh"));
    EXPECT_THAT(line, Not(HasSubstr("; time ")));
    EXPECT_THAT(in_one_line(report_text(s.is, s.found, s.remedies)), HasSubstr(line));
    EXPECT_THAT(report_page(s.is, s.found, s.remedies), HasSubstr(markup_escaped(line)));
}

TEST(WeldReport, TheHealthyStandSaysNothingOfTheKind)
{
    const test::assessed_station s = test::assessed(read_station(test::example_file("trailer_frame.toml")));
    EXPECT_TRUE(s.found.weld.empty());
    EXPECT_THAT(report_text(s.is, s.found, s.remedies, {.answers = s.answers}),
                HasSubstr("the welder typically notices nothing of the circuit"));
    EXPECT_THAT(report_page(s.is, s.found, s.remedies, {.answers = s.answers}),
                HasSubstr("the welder typically notices nothing of the circuit"));
    EXPECT_TRUE(json::parse(report_json(s.is, s.found, s.remedies, {.answers = s.answers})).at("weld").empty());
}

TEST(WeldReport, TheDemoSaysWhyTheWelderComplains)
{
    const test::assessed_station s = test::gate_shop();
    EXPECT_FALSE(s.found.weld.empty());
    for (const weld_statement& w : s.found.weld) EXPECT_GE(w.quantity, w.threshold) << w.text;
}

// What a changing current meets stands in every form of the report, pulses too, which have no one working point.
TEST(WeldReport, AChangingCurrentIsInEveryForm)
{
    test::assessed_station s = test::gate_shop();
    EXPECT_FALSE(json::parse(report_json(s.is, s.found, s.remedies)).contains("course"));
    EXPECT_THAT(report_text(s.is, s.found, s.remedies), Not(HasSubstr("Waveform")));
    EXPECT_THAT(report_page(s.is, s.found, s.remedies), Not(HasSubstr("changing current")));
    const waveform courses[] = {
        waveform::pulse({.base = 80_A, .peak = 320_A, .base_time = 6_ms, .peak_time = 4_ms}),
        waveform::pulse({.base = 80_A, .peak = 320_A, .base_time = 6_ms, .peak_time = 0.01_ms}),
        waveform::pulse({.base = 0_A, .peak = 300_A, .base_time = 6_ms, .peak_time = 4_ms}),
        waveform::square_ac({.positive = 200_A, .negative = 200_A, .frequency = 90_Hz, .positive_share = 0.35}),
        waveform::sine(220_A, 50_Hz),
    };
    for (const waveform& course : courses) {
        s.is.job.course = course;
        s.is.job.current = course.rms();
        s = test::assessed(s.is);
        ASSERT_TRUE(s.found.course);
        const std::vector<std::string> lines = course_lines(s.found);
        ASSERT_GE(lines.size(), 1U + s.found.course->levels.size());
        const std::string text = in_one_line(report_text(s.is, s.found, s.remedies, {.answers = s.answers}));
        const std::string page = report_page(s.is, s.found, s.remedies, {.answers = s.answers});
        const json out = json::parse(report_json(s.is, s.found, s.remedies, {.answers = s.answers}));
        EXPECT_EQ(out.at("course").at("lines"), json(lines));
        for (const std::string& l : lines) {
            EXPECT_THAT(text, HasSubstr(l));
            EXPECT_THAT(page, HasSubstr(markup_escaped(l)));
        }
        const bool pulses = !s.found.course->levels.empty();
        ASSERT_TRUE(s.found.operating);
        EXPECT_EQ(s.found.operating->outcome == operating_outcome::not_steady, pulses);
        if (!pulses) continue;
        EXPECT_THAT(operating_line(s.found), HasSubstr("at each of its levels"));
        EXPECT_THAT(text, HasSubstr(operating_line(s.found)));
        EXPECT_THAT(page, HasSubstr(markup_escaped(operating_line(s.found))));
        constexpr double printed = 1e-5;
        for (std::size_t i = 0; i < s.found.course->levels.size(); ++i) {
            const level_point& l = s.found.course->levels[i];
            const json& level = out.at("course").at("levels").at(i);
            EXPECT_NEAR(level.at("asked_A").get<double>(), l.asked.value(), printed * 320.0);
            EXPECT_EQ(level.at("outcome"), std::string(to_text(l.outcome)));
            EXPECT_EQ(level.contains("arc_V"), l.outcome == operating_outcome::found);
        }
    }
}
