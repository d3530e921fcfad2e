#pragma once
/// @file
/// Temperatures over one duty period.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/duty_trace.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/io/draw/curve_chart.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The temperature of one part over a duty period, current first.
struct temperature_trace {
    std::string name = {};  ///< as printed
    std::vector<std::pair<duration, temperature>> points =
        {};                                 ///< from the start of the current to the end of the rest
    std::optional<temperature> limit = {};  ///< a limit that is defined for this very place
    std::string at = {};                    ///< the place, where it is not the one the report names the part's peak of
};

/// The traces of the hottest parts of an assessed station, hottest first, each at its hottest place; none for a loop
/// without a settled state or a duty without a break, where nothing swings. A limit is drawn only if it is defined for
/// that place; where the place is not the one the report names the part's peak of, the trace says which it is.
/// @param s the station @param found its assessment @param most how many
[[nodiscard]] inline std::vector<temperature_trace> hottest_traces(const station& s, const assessment& found,
                                                                   std::size_t most = 3)
{
    std::vector<temperature_trace> out;
    if (!found.conducts || s.job.duty.is_continuous()) return out;
    const loop_state solved = solve_loop(s);
    std::vector<const part_result*> parts;
    for (const part_result& p : found.parts)
        if (p.place < solved.parts.size()) parts.push_back(&p);
    std::stable_sort(parts.begin(), parts.end(), [&solved](const part_result* a, const part_result* b) {
        return solved.parts[a->place].peak > solved.parts[b->place].peak;
    });
    for (const part_result* p : parts) {
        if (out.size() == most) break;
        const std::string_view hottest = to_text(solved.parts[p->place].hottest);
        temperature_trace t{p->name, duty_trace_of(s, solved, p->place), {}, {}};
        for (const limit_use& u : p->limits)
            if (u.at == hottest && u.limit && (!t.limit || *u.limit < *t.limit)) t.limit = u.limit;
        if (to_text(p->peak_at) != hottest) t.at = hottest;
        out.push_back(std::move(t));
    }
    return out;
}

/// The traces of up to four parts over one duty period; the time under current is shaded, limits are dashed.
/// @param s the station the traces belong to @param traces hottest first; those beyond four are left out
/// @return an SVG element that takes its looks from drawing_style; empty without traces
[[nodiscard]] inline std::string duty_drawing(const station& s, const std::vector<temperature_trace>& traces)
{
    constexpr std::size_t most_traces = 4;
    double least = s.where.air.in_celsius(), most = least + 10.0;
    std::string told = "Air at " + to_text(s.where.air, "degC") + ", " + job_line(s.job) + ".";
    std::vector<const temperature_trace*> shown;
    for (const temperature_trace& t : traces) {
        if (t.points.empty() || shown.size() == most_traces) continue;
        shown.push_back(&t);
        double peak = t.points.front().second.in_celsius();
        for (const auto& [at, here] : t.points) peak = std::max(peak, here.in_celsius());
        most = std::max(most, peak);
        if (t.limit) most = std::max(most, t.limit->in_celsius());
        told.append(" ")
            .append(t.name)
            .append(t.at.empty() ? "" : ", ")
            .append(t.at)
            .append(": at most ")
            .append(detail::fixed_text(peak, 0))
            .append(" degC.");
    }
    if (shown.empty()) return {};

    const double minutes = number_in(s.job.duty.period(), "min"), on_minutes = number_in(s.job.duty.on(), "min");
    detail::curve_chart chart(minutes, least, least + 1.1 * (most - least), "minutes of the duty period", "degC",
                              "Temperature over the duty period", told);
    svg_drawing& on = chart.drawing();
    const drawing_point start = chart.at(0.0, least), stop = chart.at(on_minutes, least);
    on.rectangle(
        {{start.x, detail::curve_chart::top}, stop.x - start.x, detail::curve_chart::bottom - detail::curve_chart::top},
        "band");
    on.text({start.x + 6, detail::curve_chart::top + 14}, "under current", "small soft");

    std::vector<temperature> limits;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        std::vector<std::pair<double, double>> points;
        for (const auto& [at, here] : shown[i]->points) points.emplace_back(number_in(at, "min"), here.in_celsius());
        chart.curve(points, i);
        constexpr std::size_t room = 23;
        const std::string& place = shown[i]->at;
        const std::string label = place.empty() ? shortened(shown[i]->name, room)
                                                : shortened(shown[i]->name, room - 2 - place.size()) + ": " + place;
        chart.label(points.back().second, label, detail::curve_chart::style(i));
        if (shown[i]->limit && std::find(limits.begin(), limits.end(), *shown[i]->limit) == limits.end())
            limits.push_back(*shown[i]->limit);
    }
    for (const temperature limit : limits) {
        if (!(limit > s.where.air)) continue;
        on.line(chart.at(0.0, limit.in_celsius()), chart.at(minutes, limit.in_celsius()), "limit");
        chart.label(limit.in_celsius(), "limit " + to_text(limit, "degC"), "limit");
    }
    chart.draw_labels();
    return on.finished();
}

}  // namespace weldloop
