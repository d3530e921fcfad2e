#pragma once
/// @file
/// The grip of a clamp over hours of shift.

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/io/curve_chart.hpp>
#include <weldloop/io/report_words.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The force on the jaws, typical case, over the hours of the forecast; the band of the time at which a quarter of the
/// grip is lost as a whisker at that force; the typical and the poor case of what is left at the end.
/// @param p a part with a forecast
/// @return an SVG element that takes its looks from drawing_style; empty for a part without a forecast
[[nodiscard]] inline std::string grip_drawing(const part_result& p)
{
    if (!p.grip || p.grip->points.size() < 2) return {};
    const grip_forecast& g = *p.grip;
    double hours = number_in(g.points.back().at, "h"), most = 0.0;
    if (g.quarter_lost) hours = std::max(hours, number_in(g.quarter_lost->high, "h"));
    for (const grip_point& at : g.points) most = std::max(most, at.force.value());
    if (!(hours > 0.0) || !(most > 0.0)) return {};

    std::string told;
    for (const std::string& line : grip_lines(g)) told.append(told.empty() ? "" : " ").append(line);
    detail::curve_chart chart(hours, 0.0, 1.12 * most, "hours of shift", "N on each jaw, warm", "Grip of " + p.name,
                              told);
    svg_drawing& on = chart.drawing();

    std::vector<std::pair<double, double>> points;
    for (const grip_point& at : g.points) points.emplace_back(number_in(at.at, "h"), at.force.value());
    const double when_new = points.front().second;
    if (g.quarter_lost) {
        const double level = 0.75 * when_new;
        const drawing_point a = chart.at(number_in(g.quarter_lost->low, "h"), level),
                            b = chart.at(number_in(g.quarter_lost->high, "h"), level);
        on.rectangle({a.x, detail::curve_chart::top}, std::max(b.x - a.x, 1.0),
                     detail::curve_chart::bottom - detail::curve_chart::top, "band");
        on.path(drawing_path()
                    .to({a.x, a.y - 6})
                    .line({a.x, a.y + 6})
                    .to(a)
                    .line(b)
                    .to({b.x, b.y - 6})
                    .line({b.x, b.y + 6})
                    .d(),
                "whisker");
    }
    chart.curve(points, 0);
    chart.label(points.back().second, "typical", detail::curve_chart::style(0));

    // the poor case is known at the end only: a mark, not a curve
    const double poor = static_cast<double>(g.grip_left_low) * when_new;
    const drawing_point end = chart.at(points.back().first, points.back().second),
                        low = chart.at(points.back().first, poor);
    on.path(drawing_path().to(end).line(low).to({low.x - 5, low.y}).line({low.x + 5, low.y}).d(), "whisker");
    chart.label(poor, "poor case, at the end", "whisker");

    const drawing_point quarter = chart.at(hours, 0.75 * when_new);
    on.line(chart.at(0.0, 0.75 * when_new), quarter, "limit");
    chart.draw_labels();
    on.text({detail::curve_chart::left + 8, quarter.y + 16},
            g.quarter_lost ? "a quarter lost; the shaded times are the band of when" : "a quarter lost", "small");
    return on.finished();
}

}  // namespace weldloop
