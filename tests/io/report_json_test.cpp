// The report as JSON: the keys others rely on, an open circuit in words, and what is sent is what is read back.
#include <cmath>
#include <limits>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "support/near.hpp"

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/io/report/json_values.hpp>
#include <weldloop/io/report/report_json.hpp>

using namespace weldloop;
using nlohmann::json;

namespace {

json report_of(const test::assessed_station& s)
{
    return json::parse(report_json(s.is, s.found, s.remedies, {.answers = s.answers}));
}

/// Every number below a value is finite, and no null stands in for one that was not.
void expect_numbers(const json& value)
{
    EXPECT_FALSE(value.is_null());
    if (value.is_number_float()) {
        EXPECT_TRUE(std::isfinite(value.get<double>()));
    }
    if (value.is_structured()) {
        for (const json& below : value) expect_numbers(below);
    }
}

void expect_band(const json& value)
{
    EXPECT_LE(value.at("low").get<double>(), value.at("typical").get<double>());
    EXPECT_LE(value.at("typical").get<double>(), value.at("high").get<double>());
}

}  // namespace

TEST(ReportJson, HasTheKeysOthersRelyOn)
{
    for (const test::assessed_station& s : {test::gate_shop(), test::trailer_stand(), test::long_path()}) {
        const json report = report_of(s);
        EXPECT_EQ(report.at("schema"), "weldloop-station-report/3");
        EXPECT_EQ(report.at("name"), s.is.name);
        ASSERT_EQ(report.at("parts").size(), s.is.path.size() - 1);
        for (const json& part : report.at("parts")) {
            EXPECT_TRUE(part.at("name").is_string());
            EXPECT_TRUE(part.at("verdict").is_string());
            for (const char* key : {"drop_V", "loss_W", "peak_degC"}) expect_band(part.at(key));
        }
        EXPECT_TRUE(report.at("total_drop_V").is_number());
        EXPECT_TRUE(report.at("arc_V").is_number());
        EXPECT_TRUE(report.at("arc_V_basis").is_string());
        EXPECT_EQ(report.at("weakest"), s.found.weakest().name);
        EXPECT_EQ(report.at("outcome"), "solved");
        ASSERT_EQ(report.at("findings").size(), s.found.findings.size());
        for (std::size_t i = 0; i < s.found.findings.size(); ++i)
            EXPECT_EQ(report.at("findings").at(i).at("id"), std::string(to_text(s.found.findings[i].id)));
        EXPECT_TRUE(report.at("remedies").is_array());
        EXPECT_FALSE(report.at("cautions").empty());
        EXPECT_FALSE(report.at("sources").empty());
        expect_numbers(report);
    }
}

TEST(ReportJson, HasTheWays)
{
    const test::assessed_station s = test::gate_two_clamps();
    const json report = report_of(s);
    ASSERT_EQ(report.at("ways").size(), s.found.ways.size());
    for (std::size_t w = 0; w < s.found.ways.size(); ++w) {
        const json& way = report.at("ways").at(w);
        const way_result& is = s.found.ways[w];
        EXPECT_EQ(way.at("name"), is.name);
        EXPECT_EQ(way.at("kind"), is.kind == way_kind::stray ? "stray" : "intended");
        expect_band(way.at("current_A"));
        EXPECT_NEAR_REL(way.at("current_A").at("typical").get<double>(), is.current.typical.value(), 1e-6);
        EXPECT_NEAR_REL(way.at("share").get<double>(), is.current.typical.value() / 230.0, 1e-6);
        EXPECT_EQ(way.at("conducts"), true);
        EXPECT_EQ(way.at("spans_arc"), false);
    }
    // every part but the arc, those of the ways after those of the path
    ASSERT_EQ(report.at("parts").size(), parts_in(s.is) - 1);
    std::size_t in_ways = 0;
    for (const json& part : report.at("parts")) {
        expect_band(part.at("current_A"));
        if (part.at("way") != "") ++in_ways;
        if (part.at("name") == "chain") {
            EXPECT_EQ(part.at("way"), "hoist chain");
            EXPECT_EQ(part.at("kind"), "chain");
            EXPECT_EQ(part.at("peak_degC"), "unknown");
            EXPECT_EQ(part.at("current_A"), report.at("ways").at(1).at("current_A"));
        }
    }
    EXPECT_EQ(in_ways, 4u);
    expect_numbers(report);
    bool stray = false;
    for (const json& finding : report.at("findings")) stray = stray || finding.at("id") == "stray_current";
    EXPECT_TRUE(stray);
}

TEST(ReportJson, SaysWhatTheAssessmentSays)
{
    const test::assessed_station s = test::gate_shop();
    const json report = report_of(s);
    EXPECT_NEAR_REL(report.at("total_drop_V").get<double>(), s.found.total_drop.typical.value(), 1e-6);
    EXPECT_NEAR_REL(report.at("arc_band_V").at("low").get<double>(), s.found.arc_voltage.low.value(), 1e-6);
    EXPECT_NEAR_REL(report.at("allowed_drop_V").get<double>(), 4.0, 1e-12);
    double sum = 0.0;
    for (std::size_t i = 0; i < s.found.parts.size(); ++i) {
        const part_result& p = s.found.parts[i];
        const json& part = report.at("parts").at(i);
        EXPECT_EQ(part.at("name"), p.name);
        EXPECT_EQ(part.at("number"), p.place + 1);
        EXPECT_EQ(part.at("verdict"), std::string(to_text(p.verdict)));
        EXPECT_EQ(part.at("verdict_id"), std::string(id_text(p.verdict)));
        EXPECT_NEAR_REL(part.at("peak_degC").at("typical").get<double>(), p.peak.typical.in_celsius(), 1e-6);
        EXPECT_EQ(part.contains("grip"), p.grip.has_value());
        EXPECT_EQ(part.at("peak_at"), std::string(to_text(p.peak_at)));
        ASSERT_EQ(part.at("places").size(), p.places.size());
        for (std::size_t k = 0; k < p.places.size(); ++k) {
            EXPECT_EQ(part.at("places").at(k).at("place"), std::string(to_text(p.places[k].what)));
            EXPECT_NEAR_REL(part.at("places").at(k).at("peak_degC").at("high").get<double>(),
                            p.places[k].peak.high.in_celsius(), 1e-6);
        }
        ASSERT_EQ(part.at("limits").size(), p.limits.size());
        for (std::size_t k = 0; k < p.limits.size(); ++k)
            EXPECT_NEAR(part.at("limits").at(k).at("exceeds_probability").get<double>(),
                        static_cast<double>(p.limits[k].exceeds), 1e-6);
        EXPECT_EQ(part.at("notes").size(), p.notes.size());
        sum += part.at("drop_V").at("typical").get<double>();
    }
    EXPECT_NEAR_REL(sum, report.at("total_drop_V").get<double>(), 1e-5);
    ASSERT_EQ(report.at("remedies").size(), s.remedies.size());
    EXPECT_EQ(report.at("remedies").at(0).at("what"), s.remedies.at(0).what);
    for (std::size_t i = 0; i < s.remedies.size(); ++i) {
        const remedy& r = s.remedies[i];
        ASSERT_TRUE(r.id) << r.what;
        EXPECT_EQ(report.at("remedies").at(i).at("id"), std::string(to_text(*r.id)));
        EXPECT_EQ(r.id == remedy_id::remark, r.is_remark) << r.what;
        EXPECT_EQ(r.id == remedy_id::all_by_hand, r.is_summary) << r.what;
    }
    EXPECT_EQ(report.at("sources").size(), s.found.sources.size());
}

TEST(ReportJson, SaysOpenInWords)
{
    const json report = report_of(test::open_bench());
    EXPECT_EQ(report.at("conducts"), false);
    EXPECT_EQ(report.at("total_drop_V"), "open");
    EXPECT_EQ(report.at("total_drop_band_V"), "open");
    EXPECT_EQ(report.at("arc_V"), "open");
    const json& clamp = report.at("parts").back();
    EXPECT_EQ(clamp.at("drop_V"), "open");
    EXPECT_EQ(clamp.at("loss_W"), "open");
    EXPECT_EQ(clamp.at("verdict"), "open circuit");
    EXPECT_EQ(clamp.at("peak_degC"), "open");
    EXPECT_EQ(report.at("parts").front().at("peak_degC"), "none");
    expect_numbers(report);
}

TEST(ReportJson, TakesAnyNameAndGivesBackText)
{
    const test::assessed_station s = test::hostile_shop();
    const json report = report_of(s);
    const auto name = report.at("name").get<std::string>();
    EXPECT_THAT(name, testing::StartsWith("<script>alert('x')</script> & \"\x1b[31m"));
    EXPECT_THAT(name, testing::HasSubstr("\xEF\xBF\xBD"));
}

TEST(ReportJson, IsTheSameEachTime)
{
    const test::assessed_station s = test::gate_shop();
    EXPECT_EQ(report_json(s.is, s.found, s.remedies, {.answers = s.answers}),
              report_json(s.is, s.found, s.remedies, {.answers = s.answers}));
    EXPECT_THAT(report_json(s.is, s.found, s.remedies, {.answers = s.answers}),
                testing::StartsWith("{\n  \"schema\": \"weldloop-station-report/3\",\n  \"name\""));
}

TEST(ReportJson, RefusesWhatIsNoNumber)
{
    test::assessed_station s = test::trailer_stand();
    s.found.parts[0].drop.high = in_si<voltage>(std::numeric_limits<double>::quiet_NaN());
    EXPECT_THROW(static_cast<void>(report_json(s.is, s.found, s.remedies, {.answers = s.answers})), not_finite_error);
    s.found.parts.clear();
    EXPECT_THROW(static_cast<void>(report_json(s.is, s.found, s.remedies, {.answers = s.answers})), bad_station_error);
}

TEST(ReportJson, RoundsToSevenDigits)
{
    EXPECT_EQ(detail::json_number(0.12345678901).dump(), "0.1234568");
    EXPECT_EQ(detail::json_number(-1234567.89).dump(), "-1234568.0");
    EXPECT_EQ(detail::json_number(0.0).dump(), "0.0");
    EXPECT_EQ(detail::json_number(5e-324).get<double>(), 5e-324);
    EXPECT_DOUBLE_EQ(detail::json_number(1.7e308).get<double>(), 1.7e308);
}
