#pragma once
/// @file
/// The voltage budget: each part's drop begins where that of the part before it ends, so that the last bar is their
/// sum. What lies in a way beside the path drops the same volts as the path beside it, not more: it is left out.

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/draw/row_chart.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The drops of the path's parts in its order, as they add up, with the band of each as a whisker about the end of its
/// bar, and their total. The drop the station allows is drawn as a dashed line.
/// @param s the station @param found its assessment, of a closed circuit
/// @return an SVG element that takes its looks from drawing_style; empty for an open circuit, which has no drops
/// @throws not_finite_error
[[nodiscard]] inline std::string budget_drawing(const station& s, const assessment& found)
{
    if (!found.conducts || found.parts.empty()) return {};
    std::vector<part_result> parts;
    std::copy_if(found.parts.begin(), found.parts.end(), std::back_inserter(parts),
                 [](const part_result& p) { return p.way.empty(); });
    double most = found.total_drop.high.value(), sum = 0.0;
    for (const part_result& p : parts) {
        most = std::max(most, sum + p.drop.high.value());
        sum += p.drop.typical.value();
    }
    if (s.allowed_drop) most = std::max(most, s.allowed_drop->value());
    most = std::max(1.03 * most, 1e-3);

    std::string told = "The loop takes " + volts_line(found.total_drop, loop_outcome::solved) + ".";
    for (const part_result& p : parts)
        told.append(" ").append(p.name).append(": ").append(volts_line(p.drop, loop_outcome::solved)).append(".");
    detail::row_chart chart(parts.size() + 1, 0.0, most, "volts of the loop, summed up along the path",
                            "Voltage budget of " + found.name, told);
    svg_drawing& on = chart.drawing();

    if (s.allowed_drop) {
        const double x = chart.x_of(s.allowed_drop->value());
        on.line({x, detail::row_chart::first_row - 8}, {x, chart.bottom()}, "limit");
        const bool at_right = x > 0.75 * detail::row_chart::width;
        on.text({x, detail::row_chart::first_row - 13}, "allowed " + to_text(*s.allowed_drop, "V"),
                at_right ? "end small" : "middle small");
    }
    double at = 0.0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const part_result& p = parts[i];
        const double end = at + p.drop.typical.value();
        chart.name(i, number_with_mark(p), p.name)
            .bar(i, at, end, "bar")
            .whisker(i, at + p.drop.low.value(), at + p.drop.high.value());
        chart.words(i, volts_line(p.drop, loop_outcome::solved), "small");
        on.line({chart.x_of(end), chart.y_of(i) + 0.5 * detail::row_chart::bar_height},
                {chart.x_of(end), chart.y_of(i + 1) - 0.5 * detail::row_chart::bar_height}, "thin");
        at = end;
    }
    const std::size_t last = parts.size();
    chart.name(last, "", "the whole loop", "strong").bar(last, 0.0, found.total_drop.typical.value(), "sum");
    chart.whisker(last, found.total_drop.low.value(), found.total_drop.high.value())
        .words(last, volts_line(found.total_drop, loop_outcome::solved), "small strong");
    return on.finished();
}

}  // namespace weldloop
