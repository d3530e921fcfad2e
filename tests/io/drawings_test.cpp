// The drawings: well-formed, the same each time, nothing outside their frame.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/draw/drawings.hpp>
#include <weldloop/life/grip.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using testing::Not;

namespace {

std::vector<std::string> drawings_of(const test::assessed_station& s)
{
    const shown_units feet{.temperatures = "degF", .lengths = shown_lengths::feet};
    std::vector<std::string> out{loop_drawing(s.is, s.found),
                                 loop_column(s.is, s.found),
                                 loop_column(s.is, s.found, feet),
                                 way_drawing(s.is, s.found),
                                 way_column(s.is, s.found),
                                 budget_drawing(s.is, s.found),
                                 peak_drawing(s.is, s.found),
                                 peak_drawing(s.is, s.found, feet),
                                 duty_drawing(s.is, hottest_traces(s.is, s.found), feet)};
    for (const part_result& p : s.found.parts) {
        out.push_back(grip_drawing(s.is, p));
        out.push_back(station_grip_map(s.is, p));
    }
    return out;
}

double number_after(std::string_view text, std::string_view mark)
{
    const std::size_t at = text.find(mark);
    return at == std::string_view::npos ? -1.0
                                        : std::strtod(std::string(text.substr(at + mark.size(), 20)).c_str(), nullptr);
}

/// Every value of an attribute.
std::vector<double> values_of(std::string_view text, const std::string& attribute)
{
    std::vector<double> out;
    const std::string mark = " " + attribute + "=\"";
    for (std::size_t at = text.find(mark); at != std::string_view::npos; at = text.find(mark, at + 1))
        out.push_back(number_after(text.substr(at), mark));
    return out;
}

temperature_trace trace(std::string name, double peak)
{
    return {
        std::move(name),
        {{0_min, temperature::celsius(40)}, {6_min, temperature::celsius(peak)}, {10_min, temperature::celsius(40)}},
        temperature::celsius(85),
        {}};
}

}  // namespace

TEST(Drawings, AreWellFormedAndKeepWithinTheirFrame)
{
    for (const test::assessed_station& s : test::all_stations()) {
        for (const std::string& drawing : drawings_of(s)) {
            if (drawing.empty()) continue;
            EXPECT_EQ(test::markup_checker(drawing).fault(), "");
            EXPECT_THAT(drawing, Not(HasSubstr("nan")));
            const double width = number_after(drawing, "\" width=\""), height = number_after(drawing, "\" height=\"");
            for (const char* attribute : {"x", "x1", "x2", "cx"})
                for (const double x : values_of(drawing, attribute))
                    EXPECT_TRUE(x >= 0.0 && x <= width) << attribute << " " << x;
            for (const char* attribute : {"y", "y1", "y2", "cy"})
                for (const double y : values_of(drawing, attribute))
                    EXPECT_TRUE(y >= 0.0 && y <= height) << attribute << " " << y;
        }
    }
}

TEST(Drawings, AreTheSameEachTime)
{
    const test::assessed_station s = test::gate_shop();
    EXPECT_EQ(drawings_of(s), drawings_of(s));
}

TEST(Drawings, ShowEveryPartOfTheLoop)
{
    const test::assessed_station s = test::long_path();
    const std::string loop = loop_drawing(s.is, s.found);
    for (const part_result& p : s.found.parts) {
        // where parts stand close a place of two words takes two lines, a word is never cut
        const std::string place = deciding_row_of(p).at;
        EXPECT_THAT(loop, HasSubstr(">" + place.substr(0, place.find(' ')) + "<")) << p.name;
        EXPECT_THAT(loop_column(s.is, s.found), HasSubstr(">" + place + " " + decided_value(p) + ", ")) << p.name;
        EXPECT_THAT(loop, HasSubstr("<title>" + std::to_string(number_of(p)) + " " + p.name + ": "));
        EXPECT_THAT(loop, HasSubstr("v-" + std::string(class_word(p.verdict))));
    }
}

TEST(Drawings, OfALoopWithoutAStateShowNoDropsAndNoHeat)
{
    for (const test::assessed_station& s : {test::open_bench(), test::ending_stand()}) {
        const std::string loop = loop_drawing(s.is, s.found);
        EXPECT_THAT(loop, HasSubstr(s.found.outcome == loop_outcome::open_circuit ? "open circuit: no current flows"
                                                                                  : "no steady state at this current"));
        EXPECT_THAT(loop, Not(HasSubstr("degC")));
        EXPECT_THAT(loop, Not(HasSubstr("heat0")));
        EXPECT_EQ(budget_drawing(s.is, s.found), "");
        EXPECT_EQ(peak_drawing(s.is, s.found), "");
        EXPECT_TRUE(hottest_traces(s.is, s.found).empty());
        for (const part_result& p : s.found.parts) EXPECT_EQ(grip_drawing(s.is, p), "");
    }
}

TEST(Drawings, NameThePlaceOfEveryPeak)
{
    const test::assessed_station s = test::gate_shop();
    const std::string loop = loop_drawing(s.is, s.found), peaks = peak_drawing(s.is, s.found);
    for (const part_result& p : s.found.parts) {
        const std::string peak = detail::fixed_text(p.peak.typical.in_celsius(), 0), place(to_text(p.peak_at));
        if (deciding_row_of(p).at == place) {
            EXPECT_THAT(loop,
                        HasSubstr(p.name + ": " + place + " " + peak + " degC, " + std::string(to_text(p.verdict))));
        }
        EXPECT_THAT(peaks, HasSubstr(p.name + ", " + place + ": " + detail::band_text(p.peak, 0) + " degC."));
        EXPECT_THAT(peaks, HasSubstr(", " + place + "</text>"));
    }
}

// One loop, one clamp: what the forecast of its grip starts from is what the solved loop has, mean and peak.
TEST(Drawings, OfTheGripStartAtTheJawsOfTheLoop)
{
    constexpr double settled = 1e-6;  // K, of the search for the mean
    for (const test::assessed_station& s : {test::gate_shop(), test::trailer_stand(), test::long_path()})
        for (const bool without_break : {true, false}) {
            station job = s.is;
            if (without_break) job.job.duty = duty_cycle::continuous();
            const loop_state solved = solve_loop(job);
            std::size_t clamps = 0;
            for (std::size_t i = 0; i < job.path.size(); ++i) {
                const std::optional<grip_forecast> grip = grip_in_station(job, i);
                if (!grip) continue;
                ++clamps;
                ASSERT_FALSE(grip->points.empty());
                const grip_point& start = grip->points.front();
                for (const place_state& at : solved.parts[i].places) {
                    if (at.what == part_place::jaws) {
                        EXPECT_NEAR(start.peak_temperature.in_kelvin(), at.peak.in_kelvin(), settled) << job.name;
                    }
                    if (at.what == part_place::spring) {
                        EXPECT_NEAR(start.spring_temperature.in_kelvin(), at.mean.in_kelvin(), settled) << job.name;
                    }
                    if (at.what == part_place::handle) {
                        EXPECT_NEAR(start.handle_temperature.in_kelvin(), at.mean.in_kelvin(), settled) << job.name;
                    }
                }
            }
            EXPECT_EQ(clamps, 1U);
        }
}

TEST(Drawings, TellVerdictsApartByLineAndWord)
{
    const std::string style(drawing_style);
    std::vector<std::string> lines;
    for (const verdict v : {verdict::within_limit, verdict::not_judged, verdict::close_to_limit, verdict::may_exceed,
                            verdict::over_limit, verdict::spots_melting, verdict::open_circuit}) {
        const std::size_t at = style.find(".v-" + std::string(class_word(v)) + "{");
        ASSERT_NE(at, std::string::npos);
        // all but the colour
        const std::size_t width = style.find("stroke-width", at);
        lines.push_back(style.substr(width, style.find('}', width) - width));
    }
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) EXPECT_NE(lines[i], lines[j]);
}

TEST(Drawings, OfADutyPeriodShadeTheTimeUnderCurrent)
{
    const station s = read_station(test::example_file("gate_shop.toml"));
    const std::string drawing =
        duty_drawing(s, {trace("a < b", 90), trace("c", 70), trace("d", 60), trace("e", 50), trace("f", 45)});
    EXPECT_EQ(test::markup_checker(drawing).fault(), "");
    EXPECT_THAT(drawing, HasSubstr("a &lt; b"));
    EXPECT_THAT(drawing, HasSubstr("limit 85 degC"));
    EXPECT_THAT(drawing, Not(HasSubstr(">f</text>")));
    EXPECT_EQ(duty_drawing(s, {}), "");
    EXPECT_EQ(duty_drawing(s, {{"none", {}, {}, {}}}), "");
}

TEST(Drawings, TraceTheHottestPartsThatSwing)
{
    const test::assessed_station s = test::gate_shop();
    const std::vector<temperature_trace> traces = hottest_traces(s.is, s.found);
    ASSERT_EQ(traces.size(), 3U);
    double hotter = 1e9;
    std::size_t at_other_places = 0;
    for (const temperature_trace& t : traces) {
        const auto p = std::find_if(s.found.parts.begin(), s.found.parts.end(),
                                    [&](const part_result& q) { return q.name == t.name; });
        ASSERT_NE(p, s.found.parts.end());
        double peak = 0.0;
        for (const auto& [at, here] : t.points) peak = std::max(peak, here.in_celsius());
        EXPECT_LE(peak, hotter);
        hotter = peak;
        // the peak of the place it names; straight lines between the moments of the solution cost a little
        const std::string place = t.at.empty() ? std::string(to_text(p->peak_at)) : t.at;
        bool found = false;
        for (const place_result& at : p->places) {
            if (to_text(at.what) != place) continue;
            EXPECT_NEAR(peak, at.peak.typical.in_celsius(), 0.5) << t.name;
            found = true;
        }
        EXPECT_TRUE(found) << t.name;
        if (t.limit) {
            EXPECT_TRUE(std::any_of(p->limits.begin(), p->limits.end(), [&](const limit_use& u) {
                return u.at == place && u.limit == t.limit;
            })) << t.name;
        }
        if (!t.at.empty()) {
            ++at_other_places;
            EXPECT_THAT(duty_drawing(s.is, traces), HasSubstr(": " + t.at + "</text>"));
        }
        EXPECT_EQ(t.points.back().first, s.is.job.duty.period());
    }
    EXPECT_GT(at_other_places, 0U);  // the clamp's jaws, held against no limit, beside a limit of its handle
    EXPECT_TRUE(hottest_traces(test::open_bench().is, test::open_bench().found).empty());
    station without_rest = s.is;
    without_rest.job.duty = duty_cycle::continuous();
    EXPECT_TRUE(hottest_traces(without_rest, assess(without_rest)).empty());
}

TEST(Svg, WritesNumbersShortAndRefusesNaN)
{
    EXPECT_EQ(svg_drawing::number(1.5), "1.5");
    EXPECT_EQ(svg_drawing::number(2.0), "2");
    EXPECT_EQ(svg_drawing::number(-0.001), "0");
    EXPECT_EQ(svg_drawing::number(100.0), "100");
    EXPECT_EQ(svg_drawing::number(1.239), "1.24");
    EXPECT_THROW(static_cast<void>(svg_drawing::number(std::nan(""))), not_finite_error);
}

TEST(Svg, EscapesTitlesTextsAndClasses)
{
    svg_drawing d(10, 10, "a<b", "c&d");
    d.text({1, 2}, "\"x\" > y", "a\"b").begin_group("", "<tip>").end_group();
    EXPECT_EQ(test::markup_checker(d.finished()).fault(), "");
    EXPECT_THAT(d.finished(), HasSubstr("aria-label=\"a&lt;b\""));
    EXPECT_THAT(d.finished(), HasSubstr("&quot;x&quot; &gt; y"));
}

TEST(Svg, DividesSpansByRoundSteps)
{
    EXPECT_DOUBLE_EQ(round_step(10.0, 5), 2.0);
    EXPECT_DOUBLE_EQ(round_step(1.0, 10), 0.1);
    EXPECT_DOUBLE_EQ(round_step(7.3, 8), 1.0);
    EXPECT_DOUBLE_EQ(round_step(300.0, 4), 100.0);
    EXPECT_THROW(static_cast<void>(round_step(0.0, 4)), out_of_range_error);
}
