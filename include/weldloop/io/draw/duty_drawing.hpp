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
/// @param s the station @param found its assessment @param most how many @throws as solve_loop()
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
/// @param units of the temperatures shown
/// @return an SVG element that takes its looks from drawing_style; empty without traces
/// @throws not_finite_error
[[nodiscard]] inline std::string duty_drawing(const station& s, const std::vector<temperature_trace>& traces,
                                              const shown_units& units = {})
{
    const auto number = [&units](temperature t) { return units.temperatures.number_of(t); };
    const std::string degrees(units.temperatures.name());
    constexpr std::size_t most_traces = 4;
    constexpr double least_rise = 10.0;  // K
    double least = number(s.where.air), most = number(s.where.air + in_si<temperature_difference>(least_rise));
    std::string told = "Air at " + detail::shown_text(s.where.air, units) + ", " + job_line(s.job) + ".";
    std::vector<const temperature_trace*> shown;
    for (const temperature_trace& t : traces) {
        if (t.points.empty() || shown.size() == most_traces) continue;
        shown.push_back(&t);
        double peak = number(t.points.front().second);
        for (const auto& [at, here] : t.points) peak = std::max(peak, number(here));
        most = std::max(most, peak);
        if (t.limit) most = std::max(most, number(*t.limit));
        told.append(" ")
            .append(t.name)
            .append(t.at.empty() ? "" : ", ")
            .append(t.at)
            .append(": at most ")
            .append(detail::fixed_text(peak, 0))
            .append(" " + degrees + ".");
    }
    if (shown.empty()) return {};

    std::vector<temperature> limits;
    for (const temperature_trace* t : shown)
        if (t->limit && *t->limit > s.where.air && std::find(limits.begin(), limits.end(), *t->limit) == limits.end())
            limits.push_back(*t->limit);
    const double minutes = number_in(s.job.duty.period(), "min"), on_minutes = number_in(s.job.duty.on(), "min");
    detail::curve_chart chart(
        minutes, least, least + 1.1 * (most - least),
        {"minutes of the duty period; under current where shaded", degrees, "Temperature over the duty period", told},
        detail::narrow_frame(shown.size() + limits.size()));
    svg_drawing& on = chart.drawing();
    const detail::curve_frame& frame = chart.frame();
    const drawing_point start = chart.at(0.0, least), stop = chart.at(on_minutes, least);
    on.rectangle({{start.x, frame.top}, stop.x - start.x, frame.bottom - frame.top}, "band");
    for (std::size_t i = 0; i < shown.size(); ++i) {
        std::vector<std::pair<double, double>> points;
        for (const auto& [at, here] : shown[i]->points) points.emplace_back(number_in(at, "min"), number(here));
        chart.curve(points, i);
        constexpr std::size_t room = 46;
        const std::string& place = shown[i]->at;
        chart.key(place.empty() ? shortened(shown[i]->name, room)
                                : shortened(shown[i]->name, room - 2 - place.size()) + ": " + place,
                  detail::curve_chart::style(i));
    }
    for (const temperature limit : limits) {
        on.line(chart.at(0.0, number(limit)), chart.at(minutes, number(limit)), "limit");
        chart.key("limit " + detail::shown_text(limit, units), "limit");
    }
    return on.finished();
}

}  // namespace weldloop
