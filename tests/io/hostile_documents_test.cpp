// What a name may hold, in all that is written beside the report: cards, sheets, surveys, trends, charts, lives of
// clamps, drawings. Terminals, pages, tables and JSON stay what they are.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"
#include "io/hostile_names.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/field/survey.hpp>
#include <weldloop/field/survey_trend.hpp>
#include <weldloop/io/draw/budget_drawing.hpp>
#include <weldloop/io/draw/duty_drawing.hpp>
#include <weldloop/io/draw/grip_drawing.hpp>
#include <weldloop/io/draw/loop_column.hpp>
#include <weldloop/io/draw/loop_drawing.hpp>
#include <weldloop/io/draw/peak_drawing.hpp>
#include <weldloop/io/draw/standalone_drawing.hpp>
#include <weldloop/io/draw/station_grip_map.hpp>
#include <weldloop/io/draw/way_drawing.hpp>
#include <weldloop/io/report/blank_sheet_page.hpp>
#include <weldloop/io/report/blank_sheet_text.hpp>
#include <weldloop/io/report/clamp_life_report.hpp>
#include <weldloop/io/report/job_card_page.hpp>
#include <weldloop/io/report/job_card_text.hpp>
#include <weldloop/io/report/lead_chart_page.hpp>
#include <weldloop/io/report/survey_csv.hpp>
#include <weldloop/io/report/survey_page.hpp>
#include <weldloop/io/report/survey_text.hpp>
#include <weldloop/life/clamp_life.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/job_card.hpp>
#include <weldloop/rating/probe_reading.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr, testing::Not;

namespace {

void expect_harmless_text(const std::string& text, std::string_view what)
{
    EXPECT_FALSE(text.empty()) << what;
    EXPECT_TRUE(std::all_of(text.begin(), text.end(), [](char c) { return c == '\n' || (c >= ' ' && c <= '~'); }))
        << what;
}

void expect_harmless_page(const std::string& page, std::string_view what)
{
    EXPECT_FALSE(page.empty()) << what;
    EXPECT_EQ(test::steering_in(page), "") << what;
    EXPECT_THAT(page, Not(HasSubstr("<script"))) << what;
    EXPECT_THAT(page, Not(HasSubstr("<img"))) << what;
    const std::size_t begin = page.starts_with("<!") ? page.find('\n') + 1 : 0;
    EXPECT_EQ(test::markup_checker(std::string_view(page).substr(begin)).fault(), "") << what;
}

const test::assessed_station& hostile()
{
    static const test::assessed_station s = test::named(test::steering_name());
    return s;
}

}  // namespace

TEST(HostileDocuments, CardAndSheet)
{
    const test::assessed_station& s = hostile();
    const job_card card = job_card_of(s.is);
    expect_harmless_text(job_card_text(card), "card");
    expect_harmless_page(job_card_page(card), "card");
    const std::vector<probe_reading> expected = probe_readings_of(s.is, s.found);
    expect_harmless_text(blank_sheet_text(s.is, s.found, expected), "sheet");
    expect_harmless_page(blank_sheet_page(s.is, s.found, expected), "sheet");
}

TEST(HostileDocuments, SurveyTrendAndTheirTable)
{
    const test::assessed_station& s = hostile();
    const std::vector<surveyed_station> all{
        {.file = test::steering_name(), .is = s.is, .found = s.found, .remedies = s.remedies, .answers = s.answers},
        {.file = "b" + test::steering_name(), .fault = test::steering_name()}};
    const survey found = survey_of(all);
    expect_harmless_text(survey_text(all, found), "survey");
    expect_harmless_page(survey_page(all, found), "survey");
    const station_trend t = trend_of(all[0], all[0]);
    expect_harmless_text(trend_text(all[0], all[0], t), "trend");
    expect_harmless_page(trend_page(all[0], all[0], t), "trend");

    std::string table = survey_csv(all, found);
    EXPECT_THAT(table, HasSubstr("lead <script>"));
    // a tab and a line break stay in their quotes; a return only before one
    std::erase(table, '\t');
    for (std::size_t at = table.find("\r\n"); at != std::string::npos; at = table.find("\r\n", at)) table.erase(at, 1);
    EXPECT_EQ(test::steering_in(table), "");
}

TEST(HostileDocuments, ChartAndLifeOfAClamp)
{
    std::vector<cable> leads{welding_cable(square_mm(50), 10_m).named(test::steering_name())};
    expect_harmless_page(lead_chart_page(leads, {.where = {.air = 30_degC}}), "chart");

    work_clamp clamp = cast_spring_clamp(300_A);
    clamp.name = test::steering_name();
    const clamp_use use{.joint = {.clamp = clamp, .onto = mild_steel, .surface = surface_state::light_rust},
                        .lead = welding_cable(square_mm(70), 10_m),
                        .load = {.current = 250_A, .duty = duty_cycle::of(6_min, 10_min)},
                        .where = {.air = 25_degC}};
    const std::vector<work_clamp> clamps{clamp};
    const std::vector<clamp_life_row> rows = compare_clamp_lives(clamps, use);
    const clamp_life life = clamp_life_of(use);
    expect_harmless_text(clamp_lives_text(rows, use.horizon), "clamps side by side");
    expect_harmless_page(clamp_life_page(life, rows), "life of a clamp");
    const std::string json = clamp_life_json(life);
    EXPECT_EQ(test::steering_in(json), "");
    EXPECT_EQ(nlohmann::json::parse(json).at("clamp"), test::steering_name());
}

TEST(HostileDocuments, Drawings)
{
    const test::assessed_station& s = hostile();
    std::vector<std::string> all{loop_drawing(s.is, s.found),
                                 loop_column(s.is, s.found),
                                 way_drawing(s.is, s.found),
                                 way_column(s.is, s.found),
                                 budget_drawing(s.is, s.found),
                                 peak_drawing(s.is, s.found),
                                 duty_drawing(s.is, hottest_traces(s.is, s.found))};
    for (const part_result& p : s.found.parts) {
        all.push_back(grip_drawing(s.is, p));
        all.push_back(station_grip_map(s.is, p));
    }
    std::size_t drawn = 0;
    for (const std::string& drawing : all) {
        if (drawing.empty()) continue;
        ++drawn;
        expect_harmless_page(drawing, drawing.substr(0, 200));
        expect_harmless_page(standalone_drawing(drawing), "by itself: " + drawing.substr(0, 200));
    }
    EXPECT_GT(drawn, 8U);
}
