#pragma once
/// @file
/// How long a lead may be against its current, one curve for each size.

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/draw/curve_chart.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/lead_limits.hpp>

namespace weldloop {

/// Curves that can be told apart in one lead_length_chart().
inline constexpr std::size_t most_lead_curves = 8;

/// A drawing of limiting length against current: each curve is longest_lead() of one size, one way, and ends with a dot
/// at the current that brings the conductor to its limit, where heat binds instead of the drop.
/// @param leads 1 to 8, of different sizes; their own lengths do not matter @param where air, wind, lay, altitude, sun
/// @param duty time under current @param allowed_drop [V] along one lead, above 0
/// @return an SVG element that takes its looks from drawing_style
/// @throws out_of_range_error for no lead or more than 8; what longest_lead() and ampacity_of() throw
[[nodiscard]] inline std::string lead_length_chart(std::span<const cable> leads, const surroundings& where,
                                                   duty_cycle duty, voltage allowed_drop)
{
    require_positive(allowed_drop, "allowed drop");
    if (leads.empty() || leads.size() > most_lead_curves)
        throw out_of_range_error("leads of a chart", std::to_string(leads.size()), "1 to 8");
    constexpr double inside = 1.0 - 1e-9;     // of the rated current: on the side that exists
    constexpr double above_the_ends = 2.2;    // height of the chart over the highest end of a curve
    constexpr double beyond_the_ends = 1.06;  // width over the last end
    constexpr int points_of_a_curve = 48;
    struct end_of_curve {
        double amps, metres;
    };
    std::vector<end_of_curve> ends;
    double most_amps = 0.0, most_metres = 0.0;
    const auto metres_at = [&](const cable& lead, double amps) {
        return longest_lead(lead, {.current = in_si<current>(amps), .duty = duty}, where, allowed_drop).length.value();
    };
    for (const cable& lead : leads) {
        const double rated = inside * ampacity_of(lead, where, duty).amps.value();
        ends.push_back({rated, metres_at(lead, rated)});
        most_amps = std::max(most_amps, rated);
        most_metres = std::max(most_metres, ends.back().metres);
    }
    most_metres *= above_the_ends;
    const std::string conditions = to_text(allowed_drop, "V") + " along the lead, " + to_text(duty) + ", air " +
                                   to_text(where.air, "degC") + ", " + std::string(to_text(where.lay));
    const std::string upwards = "longest lead in m, one way: " + conditions,
                      told = "Each curve is one size and ends where heat binds: " + conditions;
    detail::curve_chart chart(beyond_the_ends * most_amps, 0.0, most_metres,
                              {"A while the arc burns", upwards, "Longest lead by current and size", told}, {});
    svg_drawing& on = chart.drawing();
    for (std::size_t i = 0; i < leads.size(); ++i) {
        const auto [rated, shortest] = ends[i];
        // the length is close to a constant over the current, so that the curve enters the chart about here
        double from = rated * shortest / most_metres;
        for (int k = 0; k < 4; ++k) from = std::min(from * metres_at(leads[i], from) / most_metres, rated);
        std::vector<std::pair<double, double>> points;
        for (int k = 0; k <= points_of_a_curve; ++k) {
            const double amps = from + (rated - from) * k / points_of_a_curve;
            points.emplace_back(amps, std::min(metres_at(leads[i], amps), most_metres));
        }
        const std::string size = to_text(leads[i].size);
        on.begin_group("", size + ": up to " + to_text(in_si<current>(rated), "A") + ", there " +
                               to_text(in_si<length>(shortest), "m"));
        chart.curve(points, i);
        const drawing_point end = chart.at(rated, shortest);
        on.circle(end, 3.5, "dot");
        on.text({end.x, end.y + 17.0}, size, "middle small strong");
        on.end_group();
    }
    on.text({chart.frame().right + 8.0, chart.frame().top + 4.0}, "curve: drop binds", "small");
    on.text({chart.frame().right + 8.0, chart.frame().top + 22.0}, "dot: heat binds", "small");
    return on.finished();
}

/// A drawing of what leads may carry against the time under current: each curve is ampacity_of() of one size.
/// @param leads 1 to 8, of different sizes; their lengths do not matter @param where air, wind, lay, altitude, sun
/// @param period [s] that the share of time refers to, above 0
/// @return an SVG element that takes its looks from drawing_style
/// @throws out_of_range_error for no lead or more than 8; what ampacity_of() throws
[[nodiscard]] inline std::string lead_duty_chart(std::span<const cable> leads, const surroundings& where,
                                                 duration period)
{
    if (leads.empty() || leads.size() > most_lead_curves)
        throw out_of_range_error("leads of a chart", std::to_string(leads.size()), "1 to 8");
    constexpr int steps = 45;  // from a tenth to all of the period
    constexpr double least_share = 0.1, all = 100.0, above_the_highest = 1.05;
    std::vector<std::vector<std::pair<double, double>>> curves;
    double most_amps = 0.0;
    for (const cable& lead : leads) {
        auto& curve = curves.emplace_back();
        for (int k = 0; k <= steps; ++k) {
            const double share = least_share + (1.0 - least_share) * k / steps;
            const duty_cycle duty = k == steps ? duty_cycle::continuous() : duty_cycle::of(share * period, period);
            curve.emplace_back(all * share, ampacity_of(lead, where, duty).amps.value());
        }
        most_amps = std::max(most_amps, curve.front().second);
    }
    const std::string conditions = "period " + to_text(period, "min") + ", air " + to_text(where.air, "degC") + ", " +
                                   std::string(to_text(where.lay));
    detail::curve_chart chart(all, 0.0, above_the_highest * most_amps, "time under current, % of the period",
                              "A that a lead may carry: " + conditions, "Current by duty and size",
                              "Each curve is one size at the limit of its conductor: " + conditions);
    svg_drawing& on = chart.drawing();
    for (std::size_t i = 0; i < leads.size(); ++i) {
        const std::string size = to_text(leads[i].size);
        on.begin_group("", size + ": " + to_text(in_si<current>(curves[i].back().second), "A") + " without a break");
        chart.curve(curves[i], i);
        on.end_group();
        chart.label(curves[i].back().second, size, detail::curve_chart::style(i));
    }
    chart.draw_labels();
    return on.finished();
}

}  // namespace weldloop
