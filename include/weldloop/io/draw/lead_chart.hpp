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
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/draw/curve_chart.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/lead_limits.hpp>
#include <weldloop/rating/lead/sizing.hpp>

namespace weldloop {

/// Curves that can be told apart in one lead_length_chart().
inline constexpr std::size_t most_lead_curves = detail::curve_chart::styles;

/// What a chart of leads holds for.
struct lead_chart_conditions {
    surroundings where = {};                     ///< air, wind, lay, altitude, sun
    duty_cycle duty = duty_cycle::continuous();  ///< of the lengths; its period is that of both charts
    voltage allowed_drop = usual_lead_drop;      ///< [V] along one lead, above 0
    shown_units units = {};                      ///< the chart is told in
};

/// A drawing of limiting length against current: each curve is longest_lead() of one size, one way, and ends with a dot
/// at the current that brings the conductor to its limit, where heat binds instead of the drop.
/// @param leads 1 to 8, of different sizes; their own lengths do not matter @param c what they hold for
/// @return an SVG element that takes its looks from drawing_style
/// @throws out_of_range_error for no lead or more than 8; what longest_lead() and ampacity_of() throw
[[nodiscard]] inline std::string lead_length_chart(std::span<const cable> leads, const lead_chart_conditions& c)
{
    require_positive(c.allowed_drop, "allowed drop");
    if (leads.empty() || leads.size() > most_lead_curves)
        throw out_of_range_error("leads of a chart", std::to_string(leads.size()), "1 to 8");
    constexpr double inside = 1.0 - 1e-9;     // of the rated current: on the side that exists
    constexpr double above_the_ends = 4.0;    // height of the chart over the highest end of a curve
    constexpr double beyond_the_ends = 1.06;  // width over the last end
    constexpr int points_of_a_curve = 48;
    struct end_of_curve {
        double amps, reach;  // in the unit of the chart
    };
    std::vector<end_of_curve> ends;
    double most_amps = 0.0, farthest = 0.0;
    const bool in_feet = c.units.lengths == shown_lengths::feet;
    const auto reach_at = [&](const cable& lead, double amps) {
        const length l =
            longest_lead(lead, {.current = in_si<current>(amps), .duty = c.duty}, c.where, c.allowed_drop).length;
        return in_feet ? number_in(l, "ft") : number_in(l, "m");
    };
    for (const cable& lead : leads) {
        const double rated = inside * ampacity_of(lead, c.where, c.duty).amps.value();
        ends.push_back({rated, reach_at(lead, rated)});
        most_amps = std::max(most_amps, rated);
        farthest = std::max(farthest, ends.back().reach);
    }
    farthest *= above_the_ends;
    const std::string unit = in_feet ? "ft" : "m";
    const std::string conditions = to_text(c.allowed_drop, "V") + " along the lead, " + to_text(c.duty) + ", air " +
                                   to_text(c.where.air, c.units.temperatures) + ", " +
                                   std::string(to_text(c.where.lay));
    const std::string upwards = "longest lead in " + unit + ", one way: " + conditions,
                      told = "Each curve is one size and ends where heat binds: " + conditions;
    detail::curve_chart chart(beyond_the_ends * most_amps, 0.0, farthest,
                              {"A while the arc burns", upwards, "Longest lead by current and size", told},
                              {.bottom = 420});
    svg_drawing& on = chart.drawing();
    for (std::size_t i = 0; i < leads.size(); ++i) {
        const auto [rated, shortest] = ends[i];
        // the length is close to a constant over the current, so that the curve enters the chart about here
        double from = rated * shortest / farthest;
        for (int k = 0; k < 4; ++k) from = std::min(from * reach_at(leads[i], from) / farthest, rated);
        std::vector<std::pair<double, double>> points;
        for (int k = 0; k <= points_of_a_curve; ++k) {
            const double amps = from + (rated - from) * k / points_of_a_curve;
            points.emplace_back(amps, std::min(reach_at(leads[i], amps), farthest));
        }
        const std::string size = to_text(leads[i].size);
        on.begin_group("", size + ": up to " + to_text(in_si<current>(rated), "A") + ", there " +
                               number_text(shortest) + " " + unit);
        chart.curve(points, i);
        const drawing_point end = chart.at(rated, shortest);
        on.circle(end, 3.5, "dot");
        on.text({end.x, end.y + 17.0}, size, "middle small strong halo");
        on.end_group();
    }
    on.text({chart.frame().right + 8.0, chart.frame().top + 4.0}, "curve: drop binds", "small");
    on.text({chart.frame().right + 8.0, chart.frame().top + 22.0}, "dot: heat binds", "small");
    on.text({chart.frame().right + 8.0, chart.frame().top + 40.0}, "above the chart: longer", "small");
    return on.finished();
}

/// A drawing of what leads may carry against the time under current: each curve is ampacity_of() of one size.
/// @param leads 1 to 8, of different sizes; their lengths do not matter @param where air, wind, lay, altitude, sun
/// @param period [s] that the share of time refers to, above 0 @param units the chart is told in
/// @return an SVG element that takes its looks from drawing_style
/// @throws out_of_range_error for no lead or more than 8; what ampacity_of() throws
[[nodiscard]] inline std::string lead_duty_chart(std::span<const cable> leads, const surroundings& where,
                                                 duration period, const shown_units& units = {})
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
    const std::string conditions = "period " + to_text(period, "min") + ", air " +
                                   to_text(where.air, units.temperatures) + ", " + std::string(to_text(where.lay));
    const std::string upwards = "A that a lead may carry: " + conditions,
                      told = "Each curve is one size at the limit of its conductor: " + conditions;
    const detail::curve_frame frame{.foot = detail::narrow_frame(leads.size()).foot};
    detail::curve_chart chart(all, 0.0, above_the_highest * most_amps,
                              {"time under current, % of the period", upwards, "Current by duty and size", told},
                              frame);
    svg_drawing& on = chart.drawing();
    for (std::size_t i = 0; i < leads.size(); ++i) {
        const std::string size = to_text(leads[i].size);
        on.begin_group("", size + ": " + to_text(in_si<current>(curves[i].back().second), "A") + " without a break");
        chart.curve(curves[i], i);
        const drawing_point start = chart.at(curves[i].front().first, curves[i].front().second);
        on.text({start.x - 6.0, start.y + 4.0}, size, "end small strong halo");
        on.end_group();
        chart.key(size + ", " + to_text(in_si<current>(curves[i].back().second), "A") + " without a break",
                  detail::curve_chart::style(i));
    }
    return on.finished();
}

}  // namespace weldloop
