#pragma once
/// @file
/// The grip of a clamp over hours of shift: what is left of its force, what that does to the joint, how hot it gets.

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/io/draw/history_panel.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_march.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

// One quantity of the three cases, drawn into one panel.
struct grip_cases {
    history kind, typical, poor;

    [[nodiscard]] std::pair<double, double> range() const
    {
        double least = typical.front().second, most = least;
        for (const history* h : {&kind, &typical, &poor})
            for (const auto& [t, v] : *h) {
                least = std::min(least, v);
                most = std::max(most, v);
            }
        return {least, most};
    }
};

// An open joint has no resistance to draw: its history ends before.
template <class F>
[[nodiscard]] history history_of(const std::vector<grip_point>& points, const F& value)
{
    history out;
    for (const grip_point& p : points) {
        const double v = value(p);
        if (std::isfinite(v)) out.emplace_back(number_in(p.at, "h"), v);
    }
    return out;
}

template <class F>
[[nodiscard]] grip_cases cases_of(const grip_forecast& g, const F& value)
{
    return {history_of(g.kind_points, value), history_of(g.points, value), history_of(g.poor_points, value)};
}

inline void draw_cases(history_panel& panel, const grip_cases& c, double hours)
{
    panel.band(c.kind, c.poor);
    panel.curve(c.kind, "case-kind");
    panel.curve(c.poor, "case-poor");
    panel.curve(c.typical, "curve0");
    for (const history* h : {&c.typical, &c.poor})
        if (!h->empty() && h->back().first < hours * (1.0 - 1e-6)) panel.end_mark(h->back().first, h->back().second);
}

}  // namespace detail

/// What is drawn beside the histories of a grip.
struct grip_marks {
    std::optional<temperature> limit = {};  ///< of the jaws, drawn if it lies near the histories
    fraction lost_before = 0.0;  ///< share of the force when new that is gone before the forecast begins, below 1
    shown_units units = {};      ///< of the report
};

/// Three histories under each other: the force on the jaws, the resistance of clamp and contact, and the peak
/// temperature of the jaws, each typical and with the band between the kind and the poor case. A cross ends a case that
/// does not reach the end of the forecast; the dashed line is the force at which a quarter of that when new is lost,
/// the upright one the time to inspect.
/// @param name of the clamp, as printed @param g its forecast @param marks limit, what is lost before, units
/// @return an SVG element that takes its looks from drawing_style; empty for a forecast of fewer than two points
/// @throws not_finite_error
[[nodiscard]] inline std::string grip_histories(std::string_view name, const grip_forecast& g,
                                                const grip_marks& marks = {})
{
    if (g.points.size() < 2) return {};
    const auto number = [&marks](temperature t) { return marks.units.temperatures.number_of(t); };
    double hours = std::max(number_in(g.horizon, "h"), number_in(g.points.back().at, "h"));
    const detail::grip_cases grip = detail::cases_of(g, [](const grip_point& p) { return p.force.value(); });
    const detail::grip_cases joint = detail::cases_of(
        g, [](const grip_point& p) { return p.resistance.value() > 0.0 ? p.resistance.value() * 1e6 : std::nan(""); });
    const detail::grip_cases heat =
        detail::cases_of(g, [&](const grip_point& p) { return number(p.peak_temperature); });
    const double lost = static_cast<double>(marks.lost_before);
    const double when_new = lost < 1.0 ? grip.typical.front().second / (1.0 - lost) : 0.0;
    const double quarter_lost = (1.0 - inspection_loss) * when_new;
    const double most_force = std::max(grip.range().second, quarter_lost);
    if (!(hours > 0.0) || !(most_force > 0.0) || joint.typical.size() < 2) return {};
    const bool cut_short = [&] {
        for (const detail::history* h : {&grip.typical, &grip.poor})
            if (!h->empty() && h->back().first < hours * (1.0 - 1e-6)) return true;
        return false;
    }();

    constexpr double width = 440, left = 52, right = 428, panel_height = 130, apart = 40, below = 46, a_key = 18;
    const double first_top = g.inspect_by && lost < inspection_loss ? 56.0 : 34.0;  // room for its words
    const double keys_from = first_top + 3 * panel_height + 2 * apart + below;
    const double height = keys_from + (cut_short ? 3 : 2) * a_key;
    std::string told;
    for (const std::string& line : grip_lines(g, marks.lost_before)) told.append(told.empty() ? "" : " ").append(line);
    svg_drawing on(width, height, "Grip of " + std::string(name), told);
    const auto frame = [&](int place) {
        const double top = first_top + place * (panel_height + apart);
        return detail::panel_frame{left, right, top, top + panel_height};
    };

    detail::history_panel forces(on, frame(0), hours, 0.0, 1.08 * most_force,
                                 "N on each jaw, warm; dashed: " +
                                     std::string(lost > 0.0 ? "a quarter of new lost" : "a quarter lost"));
    detail::draw_cases(forces, grip, hours);
    forces.level(quarter_lost, "limit");

    const auto [least_ohm, most_ohm] = joint.range();
    detail::history_panel joints(on, frame(1), hours, 0.8 * least_ohm, 1.1 * most_ohm,
                                 "micro-ohm, clamp and contact at the job's current");
    detail::draw_cases(joints, joint, hours);

    auto [coolest, hottest] = heat.range();
    const double limit = marks.limit ? number(*marks.limit) : coolest;
    const bool near = marks.limit && limit < coolest + 3.0 * (hottest - coolest) + 10.0;
    if (near) hottest = std::max(hottest, limit);
    const double margin = 0.08 * (hottest - coolest) + 2.0;
    const std::string of_heat = std::string(marks.units.temperatures.name()) + ", peak of the jaws in the duty period" +
                                (near ? "; dashed: limit " + detail::shown_text(*marks.limit, marks.units) : "");
    detail::history_panel heats(on, frame(2), hours, std::min(coolest, near ? limit : coolest) - margin,
                                hottest + margin, of_heat);
    detail::draw_cases(heats, heat, hours);
    if (near) heats.level(limit, "limit");

    const double bottom = frame(2).bottom;
    for (const double t : heats.times())
        on.text({heats.at(t, hottest).x, bottom + 19}, number_text(t, 6), "middle small soft tick");
    on.text({0.5 * (left + right), bottom + 37}, "hours of shift", "middle small soft");
    double key = left;
    for (const auto& [words, style] :
         {std::pair{"typical", "curve0"}, std::pair{"kind case", "case-kind"}, std::pair{"poor case", "case-poor"}}) {
        constexpr double per_entry = 122.0;
        on.line({key, keys_from + 10}, {key + 30, keys_from + 10}, style);
        on.text({key + 38, keys_from + 14}, words, "small");
        key += per_entry;
    }
    if (cut_short) on.text({left, keys_from + a_key + 16}, "cross: that case ends there", "small soft");
    if (g.inspect_by && lost < inspection_loss) {
        const double x = heats.at(number_in(*g.inspect_by, "h"), hottest).x;
        for (int place = 0; place < 3; ++place) on.line({x, frame(place).top}, {x, frame(place).bottom}, "limit");
        const bool to_the_left = x > 0.5 * (left + right);
        on.line({x, first_top - 32}, {x, first_top - 26}, "limit-mark");
        on.text({to_the_left ? x - 8 : x + 8, first_top - 25},
                "inspect by " + number_text(detail::cut_to_two_digits(number_in(*g.inspect_by, "h"))) + " h",
                to_the_left ? "end small strong" : "small strong");
    }
    return on.finished();
}

/// The histories of a part with a forecast, with its limit where that is defined for the jaws.
/// @param s the station @param p the assessed part @param units of the report
/// @return an SVG element that takes its looks from drawing_style; empty for a part without a forecast
/// @throws as grip_histories()
[[nodiscard]] inline std::string grip_drawing(const station& s, const part_result& p, const shown_units& units = {})
{
    if (!p.grip) return {};
    std::optional<temperature> limit;
    for (const limit_use& u : p.limits)
        if (u.at == to_text(part_place::jaws) && u.limit && (!limit || *u.limit < *limit)) limit = u.limit;
    return grip_histories(p.name, *p.grip, {.limit = limit, .lost_before = grip_lost_before(s, p), .units = units});
}

}  // namespace weldloop
