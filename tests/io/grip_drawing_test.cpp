// The pictures of a clamp's grip: histories and map; well-formed, told apart without colour, the same each time.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/draw/grip_drawing.hpp>
#include <weldloop/io/draw/grip_map_drawing.hpp>
#include <weldloop/io/draw/standalone_drawing.hpp>
#include <weldloop/io/draw/station_grip_map.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using testing::Not;

namespace {

grip_point point(double hours, double newton, double microohm, double celsius)
{
    grip_point p;
    p.at = hours * 1_h;
    p.force = newton * 1_N;
    p.resistance = in_si<resistance>(microohm * 1e-6);
    p.peak_temperature = temperature::celsius(celsius);
    return p;
}

/// A forecast of 2000 h whose poor case ends after 700.
grip_forecast forecast()
{
    grip_forecast g;
    g.horizon = 2000_h;
    g.points = {point(0, 300, 200, 60), point(1000, 250, 230, 64), point(2000, 240, 240, 66)};
    g.kind_points = {point(0, 300, 150, 50), point(2000, 290, 155, 51)};
    g.poor_points = {point(0, 300, 400, 80), point(400, 190, 600, 120), point(700, 60, 0, 200)};
    g.grip_left = 0.8;
    g.grip_left_low = 0.2;
    g.quarter_lost = band<duration>{200_h, 2000_h, 2000_h};
    g.inspect_by = 200_h;
    return g;
}

grip_map map_of(std::size_t columns, std::size_t rows)
{
    grip_map m;
    m.horizon = 2000_h;
    for (std::size_t i = 0; i < columns; ++i) m.currents.push_back((100.0 + 20.0 * static_cast<double>(i)) * 1_A);
    for (std::size_t k = 0; k < rows; ++k)
        m.surface_factors.push_back(0.5 * std::pow(200.0, static_cast<double>(k) / static_cast<double>(rows - 1)));
    for (const double f : m.surface_factors)
        for (const current& i : m.currents) {
            const double load = i.value() * i.value() * std::sqrt(f) / 9e4;
            m.cells.push_back(load < 1.0   ? grip_outlook::holds
                              : load < 3.0 ? grip_outlook::declines
                                           : grip_outlook::unstable);
        }
    return m;
}

std::size_t count_of(const std::string& text, const std::string& word)
{
    std::size_t n = 0;
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + word.size())) ++n;
    return n;
}

/// The texts of a drawing, one a line.
std::string words_of(const std::string& svg)
{
    std::string out;
    for (std::size_t at = svg.find("<text"); at != std::string::npos; at = svg.find("<text", at + 1)) {
        const std::size_t from = svg.find('>', at) + 1;
        out.append(svg, from, svg.find("</text>", from) - from).append("\n");
    }
    return out;
}

/// Every coordinate of the elements that begin with a mark.
std::vector<double> coordinates_of(const std::string& svg, const std::string& mark)
{
    std::vector<double> out;
    for (std::size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, at + 1)) {
        const std::string element = svg.substr(at, svg.find('>', at) - at);
        for (std::size_t i = 1; i < element.size(); ++i) {
            const bool begins = std::strchr("\"ML ", element[i - 1]) != nullptr;
            char* end = nullptr;
            const double value = std::strtod(element.c_str() + i, &end);
            if (!begins || end == element.c_str() + i) continue;
            out.push_back(value);
            i = static_cast<std::size_t>(end - element.c_str());
        }
    }
    return out;
}

void expect_near_each(const std::vector<double>& a, const std::vector<double>& b, double tolerance)
{
    ASSERT_EQ(a.size(), b.size());
    ASSERT_FALSE(a.empty());
    for (std::size_t i = 0; i < a.size(); ++i) EXPECT_NEAR(a[i], b[i], tolerance) << i;
}

detail::map_cells cells_of_two_kinds()
{
    // two columns of 10, two rows of 10; the upper right cell is of kind 2
    return {{0, 10, 20}, {20, 10, 0}, {0, 0, 0, 2}};
}

}  // namespace

TEST(GripHistories, ShowThreeQuantitiesWithTheirBands)
{
    const std::string svg = grip_histories("clamp <1>", forecast());
    EXPECT_EQ(test::markup_checker(svg).fault(), "");
    EXPECT_EQ(svg, grip_histories("clamp <1>", forecast()));
    for (const char* words : {"N on each jaw, warm", "micro-ohm, clamp and contact", "degC, peak of the jaws",
                              "hours of shift", "a quarter lost", "inspect by 200 h"})
        EXPECT_THAT(svg, HasSubstr(words));
    EXPECT_EQ(count_of(svg, "class=\"band\""), 3U);
    EXPECT_EQ(count_of(svg, ">typical<"), 1U);
    EXPECT_EQ(count_of(svg, ">kind case<"), 1U);
    EXPECT_EQ(count_of(svg, ">poor case<"), 1U);
    EXPECT_THAT(svg, Not(HasSubstr("nan")));
    EXPECT_THAT(svg, HasSubstr("clamp &lt;1&gt;"));
}

// The poor case ends early in all three panels; its open joint has no resistance to draw and ends with the last one.
TEST(GripHistories, MarkACaseThatEndsBeforeItsHours)
{
    EXPECT_EQ(count_of(grip_histories("c", forecast()), "end-mark"), 3U);
    EXPECT_THAT(grip_histories("c", forecast()), HasSubstr("cross: that case ends there"));
    grip_forecast whole = forecast();
    whole.poor_points.back() = point(2000, 150, 700, 120);
    EXPECT_EQ(count_of(grip_histories("c", whole), "end-mark"), 0U);
    EXPECT_THAT(grip_histories("c", whole), Not(HasSubstr("cross:")));
}

TEST(GripHistories, DrawALimitThatIsNear)
{
    EXPECT_THAT(grip_histories("c", forecast(), {.limit = 85_degC}), HasSubstr("limit 85 degC"));
    grip_forecast cool = forecast();
    cool.poor_points.clear();
    EXPECT_THAT(grip_histories("c", cool, {.limit = 900_degC}), Not(HasSubstr("limit 900")));
    // without cases there is no band, and the typical curve alone
    cool.kind_points.clear();
    EXPECT_THAT(grip_histories("c", cool), Not(HasSubstr("class=\"band\"")));
    EXPECT_EQ(test::markup_checker(grip_histories("c", cool)).fault(), "");
}

TEST(GripHistories, AreEmptyWithoutAHistory)
{
    EXPECT_EQ(grip_histories("c", {}), "");
    grip_forecast g = forecast();
    g.points.resize(1);
    EXPECT_EQ(grip_histories("c", g), "");
    station s;
    s.path = {arc{}, work_connection{.clamp = spring_clamp(300_A), .onto = mild_steel, .grip_lost = 0.3}};
    part_result p;
    EXPECT_EQ(grip_drawing(s, p), "");
    p.name = "clamp";
    p.place = 1;
    p.grip = forecast();
    EXPECT_EQ(grip_drawing(s, p), grip_histories("clamp", forecast(), {.lost_before = 0.3}));
    // the curves are the jaws': a limit of the handle has no place beside them
    p.limit = 70_degC;
    p.limits = {{.at = "handle", .name = "touched", .limit = 70_degC}};
    EXPECT_EQ(grip_drawing(s, p), grip_histories("clamp", forecast(), {.lost_before = 0.3}));
    p.limits.push_back({.at = "jaws", .name = "bolted", .limit = 90_degC});
    EXPECT_EQ(grip_drawing(s, p), grip_histories("clamp", forecast(), {.limit = 90_degC, .lost_before = 0.3}));
}

TEST(GripHistories, DrawAQuarterOfTheGripWhenNew)
{
    // 300 N are left of 300/0.7 N when new: three quarters of that are 321 N, above all that is left
    const std::string svg = grip_histories("c", forecast(), {.lost_before = 0.3});
    EXPECT_THAT(svg, HasSubstr("a quarter of new lost"));
    EXPECT_THAT(svg, Not(HasSubstr(">inspect by")));
    const auto first_of = [&svg](const std::string& style) {
        const std::size_t at = svg.find("class=\"" + style + "\"");
        const std::size_t begins = svg.rfind('<', at);
        return coordinates_of(svg.substr(begins, svg.find('>', at) + 1 - begins), "<");
    };
    const std::vector<double> level = first_of("limit"), curve = first_of("curve0");
    ASSERT_GE(level.size(), 4U);
    ASSERT_GE(curve.size(), 2U);
    EXPECT_LT(level[1], curve[1]);  // downwards is larger
}

TEST(History, IsReadBetweenItsPoints)
{
    const detail::history h{{0.0, 10.0}, {4.0, 20.0}, {5.0, 0.0}};
    EXPECT_DOUBLE_EQ(detail::value_at(h, -1.0), 10.0);
    EXPECT_DOUBLE_EQ(detail::value_at(h, 1.0), 12.5);
    EXPECT_DOUBLE_EQ(detail::value_at(h, 4.0), 20.0);
    EXPECT_DOUBLE_EQ(detail::value_at(h, 4.5), 10.0);
    EXPECT_DOUBLE_EQ(detail::value_at(h, 9.0), 0.0);
}

TEST(MapRegions, AreRectanglesOfTheirKind)
{
    const detail::map_cells m = cells_of_two_kinds();
    EXPECT_EQ(detail::region_of(m, 2).d(), "M10 10 L20 10 L20 0 L10 0Z");
    EXPECT_EQ(detail::region_of(m, 1).d(), "");
}

TEST(MapRegions, HatchOnlyWhereTheKindLies)
{
    const detail::map_cells m = cells_of_two_kinds();
    for (const double slope : {1.0, -1.0}) {
        std::istringstream d(detail::hatching_of(m, 2, 3.0, slope).d());
        std::string step;
        int ends = 0;
        while (d >> step) {
            double y = 0.0;
            const double x = std::stod(step.substr(1));
            d >> y;
            EXPECT_GE(x, 10.0);
            EXPECT_LE(x, 20.0);
            EXPECT_GE(y, 0.0);
            EXPECT_LE(y, 10.0);
            ++ends;
        }
        EXPECT_GE(ends, 6);
    }
}

// One corner: the edge runs from the frame to the frame in one line, so that its dashes run on.
TEST(MapRegions, EdgesRunInOneLine)
{
    const std::string d = detail::edge_of(cells_of_two_kinds(), 1).d();
    EXPECT_EQ(count_of(d, "M"), 1U);
    EXPECT_THAT(d, HasSubstr("10 10"));
    // an island is one closed line of four sides
    const detail::map_cells island{{0, 1, 2, 3}, {3, 2, 1, 0}, {0, 0, 0, 0, 1, 0, 0, 0, 0}};
    const std::string round = detail::edge_of(island, 1).d();
    EXPECT_EQ(count_of(round, "M"), 1U);
    EXPECT_EQ(count_of(round, "L"), 4U);
    EXPECT_EQ(detail::edge_of(island, 2).d(), "");
}

TEST(MapRegions, PlaceWordsWhereTheyFit)
{
    const detail::map_cells m = cells_of_two_kinds();
    const auto at = detail::roomiest_point(m, 2, 4.0, 4.0);
    ASSERT_TRUE(at);
    EXPECT_TRUE(at->x >= 10.0 && at->x < 20.0 && at->y >= 0.0 && at->y < 10.0);  // its rectangle
    EXPECT_FALSE(detail::roomiest_point(m, 2, 6.0, 4.0));
    EXPECT_FALSE(detail::roomiest_point(m, 1, 1.0, 1.0));
}

TEST(GripMap, TellsItsRegionsApartWithoutColour)
{
    const std::string svg = grip_map_drawing(map_of(30, 30), "spring clamp");
    EXPECT_EQ(test::markup_checker(svg).fault(), "");
    EXPECT_EQ(svg, grip_map_drawing(map_of(30, 30), "spring clamp"));
    EXPECT_THAT(svg, Not(HasSubstr("nan")));
    // a word on the map and one in the key each
    for (const char* word : {"holds", "declines", "unstable"})
        EXPECT_EQ(count_of(svg, ">" + std::string(word) + "<"), 2U) << word;
    EXPECT_EQ(count_of(svg, "hatch-declines"), 2U);  // once on the map, once in the key
    EXPECT_EQ(count_of(svg, "hatch-unstable"), 4U);  // crossed
    EXPECT_EQ(count_of(svg, "edge-declines"), 1U);
    EXPECT_EQ(count_of(svg, "edge-unstable"), 1U);
    for (const char* surface : {"clean", "light rust", "mill scale", "heavy rust"})
        EXPECT_THAT(svg, HasSubstr(">" + std::string(surface) + "</text>"));
    EXPECT_THAT(svg, Not(HasSubstr(">painted, unbroken<")));  // it conducts nothing and has no factor
}

TEST(GripMap, MarksAPlaceInsideIt)
{
    const grip_map m = map_of(12, 8);
    const grip_map_mark inside{200_A, 1.0, "this job"}, beyond{900_A, 1.0, "this job"};
    EXPECT_THAT(grip_map_drawing(m, "c", inside), HasSubstr(">this job<"));
    EXPECT_THAT(grip_map_drawing(m, "c", beyond), Not(HasSubstr(">this job<")));
    EXPECT_EQ(test::markup_checker(grip_map_drawing(m, "c", inside)).fault(), "");
}

TEST(GripMap, RefusesWhatIsNoMap)
{
    EXPECT_THROW((void)grip_map_drawing({}, "c"), out_of_range_error);
    grip_map short_of_cells = map_of(5, 5);
    short_of_cells.cells.pop_back();
    EXPECT_THROW((void)grip_map_drawing(short_of_cells, "c"), out_of_range_error);
    grip_map zero = map_of(5, 5);
    zero.surface_factors.front() = 0.0;
    EXPECT_THROW((void)grip_map_drawing(zero, "c"), out_of_range_error);
}

TEST(GripMap, OfAStationMarksItsJob)
{
    const test::assessed_station s = test::gate_shop();
    std::size_t drawn = 0;
    for (const part_result& p : s.found.parts) {
        const std::string svg = station_grip_map(s.is, p);
        EXPECT_EQ(svg.empty(), !p.grip.has_value()) << p.name;
        if (svg.empty()) continue;
        EXPECT_THAT(svg, HasSubstr(">this job<"));
        ++drawn;
    }
    EXPECT_GE(drawn, 1U);
}

TEST(StandaloneDrawing, CarriesItsLooks)
{
    const std::string svg = standalone_drawing(grip_map_drawing(map_of(6, 6), "c"));
    EXPECT_EQ(test::markup_checker(svg).fault(), "");
    EXPECT_THAT(svg, HasSubstr("<style>"));
    EXPECT_LT(svg.find("<style>"), svg.find("<rect"));
    EXPECT_EQ(standalone_drawing(""), "");
}

// The pictures of docs/pages/grip_model.md: a 300 A spring clamp on rusty plate, 10 m of 70 mm2, as its page says. Run
// with WELDLOOP_WRITE_PICTURES=1 to draw them anew; without, this fails if they show something else.
TEST(GripPictures, OfThePagesAreWhatTheLibraryDraws)
{
    const work_connection joint{spring_clamp(300_A), mild_steel, surface_state::light_rust};
    const cable lead = welding_cable(square_mm(70), 10_m);
    const load work{.current = 320_A, .duty = duty_cycle::of(0.6)};
    const grip_forecast forecast = grip_over_time(joint, lead, work, {}, 2000_h);
    std::vector<current> currents;
    std::vector<double> factors;
    for (int i = 0; i < 40; ++i) currents.push_back((100.0 + 15.0 * i) * 1_A);
    for (int k = 0; k < 30; ++k) factors.push_back(0.5 * std::pow(200.0, k / 29.0));
    const grip_map map = grip_map_of({joint, lead, work.duty}, currents, factors, 2000_h);
    const std::filesystem::path folder =
        std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "docs" / "pictures";
    for (const auto& [file, svg] :
         {std::pair{"grip_histories.svg", standalone_drawing(grip_histories(joint.clamp.name, forecast))},
          std::pair{"grip_map.svg",
                    standalone_drawing(grip_map_drawing(
                        map, joint.clamp.name,
                        grip_map_mark{work.current, resistance_multiplier(joint.surface)->typical, "this job"}))}}) {
        if (std::getenv("WELDLOOP_WRITE_PICTURES") != nullptr) {
            std::filesystem::create_directories(folder);
            std::ofstream(folder / file) << svg;
        }
        const std::string kept = test::content_of(folder / file);
        EXPECT_EQ(words_of(kept), words_of(svg)) << file;
        // curves to a drawing unit; where the map's words stand follows its regions, cell by cell
        const bool curves = std::string(file) == "grip_histories.svg";
        expect_near_each(coordinates_of(kept, curves ? "<path" : "<text"),
                         coordinates_of(svg, curves ? "<path" : "<text"), curves ? 1.0 : 25.0);
        EXPECT_EQ(test::markup_checker(svg).fault(), "") << file;
    }
}
