#pragma once
/// @file
/// The life of a clamp as sentences, as JSON and as a page of its own. Each time is said of the poor case too.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/io/draw/clamp_life_drawing.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/report/answers_json.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/json_values.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/page_style.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/life/clamp_life.hpp>

namespace weldloop {

/// The version of the JSON of a clamp's life, its key "schema".
inline constexpr std::string_view clamp_life_schema = "weldloop-clamp-life/1";

namespace detail {

// "up to 229 A (in a poor case up to 203 A)"
template <class Quantity, class Say>
[[nodiscard]] std::string bearing_words(const clamp_bearing<Quantity>& b, std::string_view none, const Say& say)
{
    if (!b.typical) return std::string(none);
    return "typically up to " + say(*b.typical) + ", in a poor case " +
           (b.poor ? "up to " + say(*b.poor) : std::string("at none that was tried"));
}

// A cell that a narrow page shows with its heading before it.
[[nodiscard]] inline std::string labelled_cell(std::string_view heading, std::string_view text)
{
    return "<td role=\"cell\" data-is=\"" + std::string(heading) + "\">" + markup_escaped(text) + "</td>";
}

// Clamps side by side as a table of a page.
[[nodiscard]] inline std::string clamp_lives_table(std::span<const clamp_life_row> rows, duration horizon)
{
    constexpr std::array<std::string_view, 6> headings{"Left, typically", "Left, poor case",
                                                       "A quarter lost",  "A quarter lost, poor case",
                                                       "Lead dropped",    "Lead dropped, poor case"};
    std::string out =
        "<table role=\"table\" class=\"told places\">\n<caption>Grip that is left at the end, and when a quarter is "
        "lost or the lead drops</caption>\n<thead role=\"rowgroup\"><tr role=\"row\"><th "
        "role=\"columnheader\" scope=\"col\">Clamp</th>";
    for (const std::string_view heading : headings)
        out += "<th role=\"columnheader\" scope=\"col\">" + std::string(heading) + "</th>";
    out += "</tr></thead>\n<tbody role=\"rowgroup\">\n";
    for (const clamp_life_row& r : rows) {
        out += "<tr role=\"row\"><th role=\"rowheader\" scope=\"row\"><bdi>" + markup_escaped(r.name) + "</bdi></th>";
        const std::array<std::string, 6> cells{
            percent_of(static_cast<double>(r.grip_left)),      percent_of(static_cast<double>(r.grip_left_poor)),
            hours_word(r.quarter_lost.typical, horizon, ""),   hours_word(r.quarter_lost.poor, horizon, ""),
            hours_word(r.cable_not_held.typical, horizon, ""), hours_word(r.cable_not_held.poor, horizon, "")};
        for (std::size_t k = 0; k < cells.size(); ++k) out += labelled_cell(headings[k], cells[k]);
        out += "</tr>\n";
    }
    return out + "</tbody>\n</table>\n";
}

template <class Quantity, class Number>
[[nodiscard]] json json_bearing(const clamp_bearing<Quantity>& b, const Number& number)
{
    const auto one = [&](const std::optional<Quantity>& x) { return x ? json_number(number(*x)) : json("none"); };
    return {{"poor", one(b.poor)}, {"typical", one(b.typical)}};
}

}  // namespace detail

/// The life of a clamp in sentences, each true in the poor case or saying "typically".
/// @param life of the clamp
[[nodiscard]] inline std::vector<std::string> clamp_life_lines(const clamp_life& life)
{
    std::vector<std::string> out;
    const grip_forecast& f = life.forecast;
    out.push_back(detail::quarter_line(life.quarter_lost, life.horizon));
    if (life.cable_needs)
        out.push_back(detail::cable_line(life.cable_not_held, *life.cable_needs, "its lead", life.horizon));
    if (const std::string by = detail::causes_words(life.causes); !by.empty())
        out.push_back("What raised its resistance, typically: " + by + ".");
    std::optional<resistance> moved;
    if (!f.points.empty() && f.points.back().resistance.value() > 0.0) moved = f.points.back().resistance;
    if (std::string line = detail::untouched_line(f.untouched_resistance, moved); !line.empty())
        out.push_back(std::move(line));
    const auto amps = [](current i) { return number_text(std::floor(i.value()), 4) + " A"; };
    const auto percent = [](fraction x) { return number_text(std::floor(100.0 * static_cast<double>(x)), 3) + " %"; };
    out.push_back("Current with which it keeps its grip, at this duty: " +
                  detail::bearing_words(life.largest_current, "none, not even typically", amps) + ".");
    out.push_back("Share of the period with which it does, at this current: " +
                  detail::bearing_words(life.largest_duty, "none, not even typically", percent) + ".");
    out.push_back(
        "Work on which it does, at this current and duty: " +
        detail::bearing_words(life.hottest_work, "none, however cool, not even typically", detail::celsius_words) +
        ".");
    if (!life.keeps_poor()) {
        if (life.cures.empty()) out.push_back("No single change that was tried keeps its grip, not even typically.");
        for (const clamp_cure& c : life.cures) out.push_back("Would keep it: " + detail::cure_words(c) + ".");
    }
    out.push_back(life.buy.empty() ? "None of the clamps tried keeps its grip here in a poor case."
                  : life.buy == life.name
                      ? "The clamp to buy: the same again."
                      : "The clamp to buy: " + life.buy + ", which keeps its grip here in a poor case too.");
    out.push_back(detail::look_again_line(life.look_again, life.horizon));
    double hottest = -300.0, poor = -300.0;
    for (const grip_point& p : f.points) hottest = std::max(hottest, p.peak_temperature.in_celsius());
    for (const grip_point& p : f.poor_points) poor = std::max(poor, p.peak_temperature.in_celsius());
    constexpr double burns = 60.0;  // degC: bare metal touched for a second
    if (std::max(hottest, poor) > burns)
        out.push_back("Hot metal burns: its jaws get " + number_text(std::ceil(hottest), 3) + " degC hot typically, " +
                      number_text(std::ceil(std::max(hottest, poor)), 3) +
                      " degC in a poor case. Let it cool, and switch off before it is moved.");
    return out;
}

/// The life of a clamp as JSON, see docs/pages/report.md. @param life of the clamp
/// @throws not_finite_error should a result hold NaN or infinity
[[nodiscard]] inline std::string clamp_life_json(const clamp_life& life)
{
    using detail::json;
    const auto as_json = [](double x) { return detail::json_number(x); };
    json out{{"schema", clamp_life_schema},
             {"clamp", life.name},
             {"horizon_h", detail::json_hours(life.horizon)},
             {"quarter_lost_h", detail::json_clamp_hours(life.quarter_lost)},
             {"cable_not_held_h", detail::json_clamp_hours(life.cable_not_held)}};
    if (life.cable_needs) out["cable_needs_N"] = as_json(life.cable_needs->value());
    out["causes"] = detail::json_causes(life.causes);
    out["largest_current_A"] = detail::json_bearing(life.largest_current, [](current i) { return i.value(); });
    out["largest_duty"] = detail::json_bearing(life.largest_duty, [](fraction x) { return static_cast<double>(x); });
    out["hottest_work_degC"] = detail::json_bearing(life.hottest_work, [](temperature t) { return t.in_celsius(); });
    out["cures"] = json::array();
    for (const clamp_cure& c : life.cures) out["cures"].push_back(detail::json_cure(c));
    out["buy"] = life.buy.empty() ? json("none") : json(life.buy);
    out["look_again_h"] = life.look_again ? detail::json_hours(*life.look_again) : json("not within horizon");
    if (life.forecast.untouched_resistance)
        out["untouched_resistance_ohm"] = as_json(life.forecast.untouched_resistance->value());
    out["lines"] = json::array();
    for (const std::string& line : clamp_life_lines(life)) out["lines"].push_back(line);
    out["sources"] = json::array();
    for (const source* s : life.basis.sources()) out["sources"].push_back(to_text(*s));
    return detail::json_text(out);
}

/// Clamps side by side as a table of plain text, one line each under a heading.
/// @param rows of compare_clamp_lives() @param horizon they were made for [s], any
[[nodiscard]] inline std::string clamp_lives_text(std::span<const clamp_life_row> rows, duration horizon)
{
    const auto column = [](std::string text, std::size_t width) {
        if (text.size() < width) text.append(width - text.size(), ' ');
        return text;
    };
    std::string out = column("clamp", 30) + column("left", 7) + column("poor", 6) + column("a quarter lost", 22) +
                      column("in a poor case", 22) + column("lead dropped", 22) + "in a poor case\n";
    for (const clamp_life_row& r : rows) {
        const auto time = [&](const std::optional<duration>& t) {
            return column(detail::hours_word(t, horizon, ""), 22);
        };
        std::string line = column(shortened(plain_ascii(r.name), 29), 30) +
                           column(detail::percent_of(static_cast<double>(r.grip_left)), 7) +
                           column(detail::percent_of(static_cast<double>(r.grip_left_poor)), 6) +
                           time(r.quarter_lost.typical) + time(r.quarter_lost.poor) + time(r.cable_not_held.typical) +
                           time(r.cable_not_held.poor);
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + "\n";
    }
    return out;
}

/// The life of a clamp as a page, with the kinds beside it drawn. Every text is escaped; nothing comes from elsewhere.
/// @param life of the clamp @param beside rows of compare_clamp_lives() with the same horizon, may be empty
/// @throws not_finite_error
[[nodiscard]] inline std::string clamp_life_page(const clamp_life& life, std::span<const clamp_life_row> beside)
{
    std::string out = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>";
    out += markup_escaped(life.name) + " - how long it holds</title>\n<style>" + std::string(drawing_style) +
           std::string(page_style) + "</style>\n</head>\n<body>\n<header>\n<h1>" + markup_escaped(life.name) +
           "</h1>\n</header>\n<main>\n<h2>How long it holds</h2>\n<ul>\n";
    for (const std::string& line : clamp_life_lines(life)) out += "<li>" + markup_escaped(line) + "</li>\n";
    out += "</ul>\n";
    if (!beside.empty())
        out += "<h2>Kinds side by side</h2>\n<figure class=\"one\">\n" + clamp_life_drawing(beside, life.horizon) +
               "<figcaption>Hours of shift until a quarter of the grip of a new one is lost, from the poor case to the "
               "mild one.</figcaption>\n</figure>\n" +
               detail::clamp_lives_table(beside, life.horizon);
    out += "<details>\n<summary>Where the numbers come from</summary>\n<ul class=\"sources\">\n";
    for (const source* s : life.basis.sources()) out += "<li>" + markup_escaped(to_text(*s)) + "</li>\n";
    return out + "</ul>\n</details>\n</main>\n</body>\n</html>\n";
}

}  // namespace weldloop
