#pragma once
/// @file
/// How hot each part gets, and how hot it may get.

#include <algorithm>
#include <cstddef>
#include <string>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/draw/row_chart.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The peak temperature of each part above the air, at the place named below it, its band as a whisker, and the limit
/// that is defined for that place as an upright mark.
/// @param s the station @param found its assessment
/// @return an SVG element that takes its looks from drawing_style; empty for a loop without a settled state
[[nodiscard]] inline std::string peak_drawing(const station& s, const assessment& found)
{
    if (!found.conducts || found.parts.empty()) return {};
    const double air = s.where.air.in_celsius();
    double most = air + 10.0;
    std::string told = "Air at " + to_text(s.where.air, "degC") + ".";
    for (const part_result& p : found.parts) {
        most = std::max(most, p.peak.high.in_celsius());
        if (p.limit) most = std::max(most, p.limit->in_celsius());
        told.append(" ").append(p.name).append(", ").append(to_text(p.peak_at));
        told.append(": ").append(detail::band_text(p.peak, 0)).append(" degC.");
    }
    constexpr double row_height = 36.0;  // for two lines
    detail::row_chart chart(found.parts.size(), air, air + 1.03 * (most - air),
                            "peak in the duty period, degC, above air at " + to_text(s.where.air, "degC"),
                            "Peak temperatures of " + found.name, told, row_height);
    svg_drawing& on = chart.drawing();
    for (std::size_t i = 0; i < found.parts.size(); ++i) {
        const part_result& p = found.parts[i];
        chart.name(i, std::to_string(number_of(p)), p.name, "", to_text(p.peak_at))
            .bar(i, air, p.peak.typical.in_celsius(), "bar");
        chart.whisker(i, p.peak.low.in_celsius(), p.peak.high.in_celsius());
        std::string words = detail::band_text(p.peak, 0);
        if (p.limit && *p.limit > s.where.air) {
            const double x = chart.x_of(p.limit->in_celsius()), y = chart.y_of(i);
            on.line({x, y - 11}, {x, y + 11}, "limit-mark");
        }
        if (p.limit) words.append(", limit ").append(detail::fixed_text(p.limit->in_celsius(), 0));
        chart.words(i, words, "small");
    }
    return on.finished();
}

}  // namespace weldloop
