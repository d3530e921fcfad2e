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

/// The peak temperature of each part above the air, at the place named beside it, its band as a whisker, and the limit
/// that is defined for that place as an upright mark.
/// @param s the station @param found its assessment @param units of the report
/// @return an SVG element that takes its looks from drawing_style; empty for a loop without a settled state
/// @throws not_finite_error
[[nodiscard]] inline std::string peak_drawing(const station& s, const assessment& found, const shown_units& units = {})
{
    if (!found.conducts || found.parts.empty()) return {};
    const auto number = [&units](temperature t) { return units.temperatures.number_of(t); };
    const std::string degrees(units.temperatures.name());
    const double air = number(s.where.air);
    constexpr double least_rise = 10.0;  // K
    double most = number(s.where.air + in_si<temperature_difference>(least_rise));
    std::string told = "Air at " + detail::shown_text(s.where.air, units) + ".";
    for (const part_result& p : found.parts) {
        if (!temperature_is_known(p)) continue;
        most = std::max(most, number(p.peak.high));
        if (p.limit) most = std::max(most, number(*p.limit));
        told.append(" ").append(p.name).append(", ").append(to_text(p.peak_at));
        told.append(": ").append(detail::degrees_text(p.peak, units)).append(" " + degrees + ".");
    }
    detail::row_chart chart(found.parts.size(), air, air + 1.03 * (most - air),
                            degrees + ", peak in the duty period, above air at " +
                                detail::shown_text(s.where.air, units),
                            "Peak temperatures of " + found.name, told);
    svg_drawing& on = chart.drawing();
    for (std::size_t i = 0; i < found.parts.size(); ++i) {
        const part_result& p = found.parts[i];
        if (!temperature_is_known(p)) {
            chart.name(i, std::to_string(number_of(p)), p.name).words(i, "not known", "small soft");
            continue;
        }
        const std::string place(to_text(p.peak_at));
        constexpr std::size_t letters = 30;
        chart.name(i, std::to_string(number_of(p)), shortened(p.name, letters - place.size()) + ", " + place)
            .bar(i, air, number(p.peak.typical), "bar");
        chart.whisker(i, number(p.peak.low), number(p.peak.high));
        std::string words = detail::degrees_text(p.peak, units);
        if (p.limit && *p.limit > s.where.air) {
            const double x = chart.x_of(number(*p.limit)), y = chart.y_of(i);
            on.line({x, y - 10}, {x, y + 10}, "limit-mark");
        }
        if (p.limit) words.append(", limit ").append(detail::degrees_text(*p.limit, units));
        chart.words(i, words, "small");
    }
    return on.finished();
}

}  // namespace weldloop
