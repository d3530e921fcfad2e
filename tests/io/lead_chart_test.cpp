// Factors as text and values, and the chart of limiting length.
#include <cstddef>
#include <cstdlib>
#include <fstream>
#include <limits>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/forbidden_words.hpp"
#include "io/markup_checker.hpp"
#include "support/reference_table.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/lead_chart.hpp>
#include <weldloop/io/report/factor_text.hpp>
#include <weldloop/io/report/lead_chart_page.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using weldloop::test::reference_table;

namespace {

std::vector<cable> leads_of_the_shop()
{
    std::vector<cable> out;
    for (const conductor_size& size : {awg(4), awg(2), awg(1), aught(1), aught(2), aught(3), aught(4)})
        out.push_back(welding_cable(size, 10_m));
    return out;
}

}  // namespace

TEST(FactorText, ReadsLikeAGuide)
{
    const std::string text =
        factor_text(factor_table_of(welding_cable(square_mm(70), 10_m), {}, duty_cycle::of(3_min, 5_min)));
    EXPECT_THAT(text, HasSubstr("70 mm2, conductor 85 degC, 60 % of 5 min: "));
    EXPECT_THAT(text, HasSubstr("25 degC          1.00     1.00"));
    EXPECT_THAT(text, HasSubstr("0.82"));  // 45 degC by the guides
    EXPECT_THAT(text, HasSubstr("coiled"));
    EXPECT_THAT(text, HasSubstr("judgement"));
    EXPECT_EQ(detail::factor_digits(1.0), "1.00");
    EXPECT_EQ(detail::factor_digits(0.996), "1.00");
    EXPECT_EQ(detail::factor_digits(0.9), "0.90");
    EXPECT_EQ(detail::factor_digits(1.254), "1.25");
    EXPECT_EQ(detail::factor_digits(0.057), "0.06");
}

TEST(FactorCsv, IsReadBack)
{
    const factor_table t = factor_table_of(welding_cable(aught(2), 10_m), {}, duty_cycle::of(3_min, 5_min));
    const reference_table back("factors", factor_csv(t));
    ASSERT_EQ(back.rows().size(), t.ambient.size() + t.grouping.size());
    for (std::size_t i = 0; i < t.ambient.size(); ++i) {
        const auto& row = back.rows()[i];
        EXPECT_EQ(row.text("kind"), "ambient");
        EXPECT_EQ(row.text("size"), "2/0 AWG");
        EXPECT_EQ(row.number("period_s"), 300.0);
        EXPECT_NEAR(row.number("factor"), t.ambient[i].by_model, 1e-5);
        EXPECT_NEAR(row.number("square_root_factor"), t.ambient[i].by_square_root, 1e-5);
    }
    EXPECT_EQ(back.rows().back().text("lay"), "coiled");
    EXPECT_EQ(back.rows().back().text("judgement"), "yes");
}

TEST(LeadLengthChart, ShowsEverySize)
{
    const std::vector<cable> leads = leads_of_the_shop();
    const std::string svg = lead_length_chart(leads, {.duty = duty_cycle::of(0.6), .allowed_drop = 4_V});
    EXPECT_EQ(svg, lead_length_chart(leads, {.duty = duty_cycle::of(0.6), .allowed_drop = 4_V}));
    const test::markup_checker checked(svg);
    EXPECT_EQ(checked.fault(), "");
    for (const cable& lead : leads) EXPECT_THAT(svg, HasSubstr(">" + to_text(lead.size) + "</text>"));
    EXPECT_THAT(svg, HasSubstr("4 V along the lead, 60 % of 10 min, air 25 degC, alone"));
    EXPECT_EQ(svg.find("nan"), std::string::npos);
    if (const char* path = std::getenv("WELDLOOP_LEAD_CHART")) {
        std::ofstream page(path);
        page << "<!doctype html><meta charset=utf-8><style>" << drawing_style << "</style>" << svg;
    }
}

// International foot, 0.3048 m; 86 degF is 30 degC by definition.
TEST(LeadLengthChart, IsToldInFeet)
{
    const shown_units american{.temperatures = "degF", .lengths = shown_lengths::feet};
    const std::vector<cable> leads = leads_of_the_shop();
    const std::string svg =
        lead_length_chart(leads, {.where = {.air = 30_degC}, .duty = duty_cycle::of(0.6), .units = american});
    EXPECT_THAT(svg, HasSubstr("longest lead in ft, one way: 2 V along the lead, 60 % of 10 min, air 86 degF"));
    EXPECT_EQ(svg.find(" m<"), std::string::npos);
    const current rated = ampacity_of(leads[0], {.air = 30_degC}, duty_cycle::of(0.6)).amps;
    const length_answer end =
        longest_lead(leads[0], {.current = (1.0 - 1e-9) * rated, .duty = duty_cycle::of(0.6)}, {.air = 30_degC}, 2_V);
    EXPECT_THAT(svg, HasSubstr("up to " + to_text(rated, "A") + ", there " + to_text(end.length, "ft")));
    EXPECT_THAT(lead_duty_chart(leads, {.air = 30_degC}, 10_min, american), HasSubstr("air 86 degF"));
}

// Eight curves in eight styles, and no word on a bare line of the grid.
TEST(LeadLengthChart, TellsItsCurvesApart)
{
    const std::vector<cable> leads = leads_of_the_shop();
    for (const std::string& svg : {lead_length_chart(leads, {}), lead_duty_chart(leads, {}, 10_min)}) {
        for (std::size_t i = 0; i < leads.size(); ++i) {
            const std::string style = "curve" + std::to_string(i);
            EXPECT_NE(svg.find("class=\"" + style + "\""), std::string::npos) << style;
            EXPECT_NE(drawing_style.find(".drawing ." + style + "{stroke"), std::string_view::npos) << style;
            EXPECT_THAT(svg, HasSubstr("halo\">" + to_text(leads[i].size)));
        }
    }
}

TEST(LeadLengthChart, RefusesBadInput)
{
    const std::vector<cable> leads = leads_of_the_shop();
    const duty_cycle duty = duty_cycle::of(0.6);
    EXPECT_THROW((void)lead_length_chart({}, {.duty = duty}), out_of_range_error);
    EXPECT_THROW((void)lead_length_chart(std::vector<cable>(9, leads[0]), {.duty = duty}), out_of_range_error);
    EXPECT_THROW((void)lead_length_chart(leads, {.duty = duty, .allowed_drop = 0_V}), out_of_range_error);
    EXPECT_THROW((void)lead_length_chart(
                     leads, {.duty = duty, .allowed_drop = in_si<voltage>(std::numeric_limits<double>::quiet_NaN())}),
                 not_finite_error);
    EXPECT_THROW((void)lead_length_chart(leads, {.where = {.air = 90_degC}, .duty = duty}), out_of_range_error);
    std::vector<cable> bare = leads;
    bare[2].overall_diameter = length{};
    EXPECT_THROW((void)lead_length_chart(bare, {.duty = duty}), missing_data_error);
}

// BS 638-4 family and IEC 60974-1 practice: a lead carries more the less of the period it is under current; without a
// break it carries its ampacity.
TEST(LeadDutyChart, EndsAtTheCurrentWithoutABreak)
{
    const std::vector<cable> leads = leads_of_the_shop();
    const std::string svg = lead_duty_chart(leads, {.air = 30_degC}, 5_min);
    EXPECT_EQ(test::markup_checker(svg).fault(), "");
    for (const cable& lead : leads)
        EXPECT_THAT(svg, HasSubstr(to_text(lead.size) + ": " + to_text(ampacity_of(lead, {.air = 30_degC}).amps, "A") +
                                   " without a break"));
    EXPECT_THAT(svg, HasSubstr("period 5 min, air 30 degC, alone"));
    EXPECT_EQ(svg.find("nan"), std::string::npos);
    EXPECT_NE(svg, lead_duty_chart(leads, {.air = 30_degC}, 10_min));
    EXPECT_THROW((void)lead_duty_chart({}, {}, 5_min), out_of_range_error);
    EXPECT_THROW((void)lead_duty_chart(std::vector<cable>(9, leads[0]), {}, 5_min), out_of_range_error);
    EXPECT_THROW((void)lead_duty_chart(leads, {}, 0_min), out_of_range_error);
    EXPECT_THROW((void)lead_duty_chart(leads, {.air = 90_degC}, 5_min), out_of_range_error);
}

TEST(LeadChartPage, HoldsBothChartsAndTheirConditions)
{
    const std::vector<cable> leads = leads_of_the_shop();
    const std::string page = lead_chart_page(leads, {.where = {.air = 30_degC}, .duty = duty_cycle::of(0.6)});
    EXPECT_EQ(test::markup_checker(std::string_view(page).substr(page.find('\n') + 1)).fault(), "");
    EXPECT_EQ(test::forbidden_word_in(page), "");
    EXPECT_THAT(page, HasSubstr("2 V along the lead, 60 % of 10 min, air 30 degC, alone"));
    EXPECT_THAT(page, HasSubstr("period 10 min, air 30 degC, alone"));
    EXPECT_THAT(page, HasSubstr("come first"));
    EXPECT_THROW((void)lead_chart_page({}, {}), out_of_range_error);
}
