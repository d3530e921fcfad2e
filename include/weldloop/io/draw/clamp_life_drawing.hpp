#pragma once
/// @file
/// Kinds of clamp side by side: when each has lost a quarter of its grip, from the poor case to the mild one.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/life/clamp_life.hpp>

namespace weldloop {

namespace detail {

/// A time as words: the first hour is as fine as the laws go. @param before a word before a number, with its space
[[nodiscard]] inline std::string hours_word(const std::optional<duration>& t, duration horizon, std::string_view before)
{
    constexpr double first = 1.0;
    if (!t) return "not within " + number_text(number_in(horizon, "h"), 3) + " h";
    const double hours = number_in(*t, "h");
    if (hours <= 0.0) return "from the start";
    if (hours < first) return "within the first hour";
    const double scale = std::pow(10.0, std::floor(std::log10(hours)) - 1.0);
    return std::string(before) + number_text(std::floor(hours / scale + 1e-9) * scale, 4) + " h";
}

}  // namespace detail

/// One row for each clamp over hours on a scale of decades, from the first hour to the horizon: the bar reaches from
/// the poor case to the mild one, the tick is the typical one; an arrow goes on where a case is not met within the
/// horizon.
/// @param rows of compare_clamp_lives() @param horizon they were made for [s], above an hour
/// @return empty without rows @throws not_finite_error
[[nodiscard]] inline std::string clamp_life_drawing(std::span<const clamp_life_row> rows, duration horizon)
{
    if (rows.empty()) return {};
    constexpr double width = 440, from = 12, to = 404, first_row = 34, row_height = 64, foot = 46;
    const double bottom = first_row + row_height * static_cast<double>(rows.size());
    const double decades = std::max(1.0, std::log10(number_in(horizon, "h")));
    svg_drawing out(
        width, bottom + foot, "How long clamps keep their grip",
        "Hours of shift until a quarter of the grip of a new clamp is lost: bar from the poor to the mild case, "
        "tick at the typical one, an arrow where it is not lost within the horizon.");
    const auto x_of = [&](const std::optional<duration>& t) {
        if (!t) return to;
        const double decade = std::log10(std::max(1.0, number_in(*t, "h")));
        return from + (to - from) * std::min(1.0, decade / decades);
    };
    for (double d = 0.0; d <= decades + 1e-9; d += 1.0) {
        const double x = from + (to - from) * d / decades;
        out.line({x, first_row - 8}, {x, bottom}, "grid");
        out.text({x, bottom + 17}, d == 0.0 ? "first hour" : number_text(std::pow(10.0, d), 6),
                 d == 0.0 ? "small soft tick" : "middle small soft tick");
    }
    out.line({from, bottom}, {to, bottom}, "axis");
    out.line({to, first_row - 8}, {to, bottom}, "limit");
    out.text({to, first_row - 14}, number_text(number_in(horizon, "h"), 4) + " h looked ahead", "end small soft");
    out.text({0.5 * (from + to), bottom + 36}, "hours of shift until a quarter of the grip is lost",
             "middle small soft");
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const clamp_life_row& r = rows[i];
        const double above = first_row + row_height * static_cast<double>(i), y = above + 46;
        const std::string typical = detail::hours_word(r.quarter_lost.typical, horizon, "");
        const std::string poor = "poor: " + detail::hours_word(r.quarter_lost.poor, horizon, "");
        out.begin_group("", r.name + ": typically " + typical + ", " + poor);
        out.text({from, above + 16}, shortened(r.name, 30), "halo");
        const double low = x_of(r.quarter_lost.poor), high = x_of(r.quarter_lost.mild),
                     at = x_of(r.quarter_lost.typical);
        if (high > low) out.rectangle({{low, y - 7}, std::max(2.0, high - low), 14}, "bar");
        if (r.quarter_lost.poor) out.line({low, y - 10}, {low, y + 10}, "whisker");
        if (r.quarter_lost.typical) out.line({at, y - 12}, {at, y + 12}, "limit-mark");
        if (!r.quarter_lost.mild)
            out.path(drawing_path()
                         .to({to, y})
                         .line({to + 16, y})
                         .to({to + 10, y - 5})
                         .line({to + 16, y})
                         .line({to + 10, y + 5})
                         .d(),
                     "whisker");
        out.text({to, above + 14}, typical, "end halo small");
        out.text({to, above + 28}, poor, "end halo small soft");
        out.end_group();
    }
    return out.finished();
}

}  // namespace weldloop
