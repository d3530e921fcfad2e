// What the welder notices, in every form of the report.
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/rating/weld_sentence.hpp>

using namespace weldloop;
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
