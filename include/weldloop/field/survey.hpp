#pragma once
/// @file
/// Many stations side by side: which one is worst, what to buy, what to clean this week.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// A working week.
inline constexpr source survey_week_practice{"a week of five shifts", {}, {}, source_kind::common_practice};
/// Number of shifts, see survey_week_practice.
inline constexpr double shifts_of_a_week = 5.0;

/// A station of a survey with all that was answered of it, or why there is nothing.
struct surveyed_station {
    std::string file = {};              ///< by which it is called, unlike any other of the survey
    std::string fault = {};             ///< why it could not be read or assessed; empty: it was
    station is = {};                    ///< the station
    assessment found = {};              ///< of it
    std::vector<remedy> remedies = {};  ///< best first
    station_answers answers = {};       ///< how long it lasts, where its fault is
};

/// Something to do at a station of a survey.
struct survey_step {
    std::size_t entry = 0;                        ///< place of its station in what was surveyed, from 0
    std::string part = {};                        ///< the part it is done to; empty: none alone
    std::string what = {};                        ///< in words, supply off
    remedy_effort effort = remedy_effort::clean;  ///< what it takes
    bool cures = false;           ///< it clears a verdict or finding, or closes the circuit; else it only regains
    voltage volts_regained = {};  ///< [V] typically
};

/// A joint that wants looking at within the week.
struct survey_look {
    std::size_t entry = 0;  ///< place of its station, from 0
    std::string part = {};  ///< its name
    duration by = {};       ///< [s] hours of shift from now, in a poor case
};

/// What a survey comes to.
struct survey {
    std::vector<std::size_t> ranked = {};      ///< places of the stations that were read, the worst first
    std::vector<std::size_t> not_read = {};    ///< places of the others, in their order
    std::vector<survey_step> to_move = {};     ///< clamps and leads laid elsewhere, stray ways taken off; worst first
    std::vector<survey_step> to_buy = {};      ///< that cures, one for each part of a station, the worst station first
    std::vector<survey_step> to_do = {};       ///< cleaning and tightening, of the worst station first
    std::vector<survey_step> until_then = {};  ///< that cures without mending: welding less, the supply set higher
    std::vector<survey_step> to_mend = {};     ///< what readings say is at fault, of the worst station first
    std::vector<survey_look> to_look_at = {};  ///< the soonest first
};

/// Whether what was read on a station says that some part of it may be failing. @param s one that was read
[[nodiscard]] inline bool has_failing_part(const surveyed_station& s)
{
    return s.answers.fault && s.answers.fault->failing_part() != nullptr;
}

/// Whether what was read on a station says that some part of it is likelier at fault than not, or may be failing.
/// @param s one that was read
[[nodiscard]] inline bool has_read_fault(const surveyed_station& s)
{
    constexpr double even = 0.5;
    return s.answers.fault && !s.answers.fault->parts.empty() &&
           (static_cast<double>(s.answers.fault->none) < even || has_failing_part(s));
}

namespace detail {

/// The worse, the larger: stopped, gravity of the weakest part, how often it exceeds, how much it uses.
[[nodiscard]] inline std::tuple<bool, int, double, double> badness_of(const surveyed_station& s)
{
    const assessment& a = s.found;
    const bool stops = !a.conducts || has_failing_part(s) ||
                       std::any_of(a.findings.begin(), a.findings.end(),
                                   [](const loop_finding& f) { return f.severity == finding_severity::stop_job; });
    const part_result& w = a.weakest();
    const int weight = gravity_of(w.verdict);
    return {stops, has_read_fault(s) ? std::max(weight, gravity_of(verdict::over_limit)) : weight,
            static_cast<double>(w.exceeds), w.used};
}

[[nodiscard]] inline bool cures_something(const remedy& r)
{
    return r.restores_circuit || r.clears_verdict || !r.clears_findings.empty() || !r.clears_parts.empty();
}

/// Whether a list has a step for the part of another.
[[nodiscard]] inline bool holds_part(const std::vector<survey_step>& steps, const survey_step& other)
{
    return !other.part.empty() && std::any_of(steps.begin(), steps.end(), [&](const survey_step& s) {
        return s.entry == other.entry && s.part == other.part;
    });
}

}  // namespace detail

/// What a survey of stations comes to.
///
/// Ranked: stations whose job stops first (an open circuit, no settled state, a finding that says so, a part that by
/// readings may be failing), then by the
/// gravity of the weakest part's verdict (at least that of an exceeded limit where readings say that a part is at
/// fault), by how often it exceeds its limit, by how much of it it uses; among equals in
/// the order given. To buy is what clears a verdict or finding and takes a part or a new termination, of the steps for
/// one part the best; to do is what takes a spanner or a brush; to move is what is laid elsewhere or unhooked, stray
/// ways among it; what only spares the circuit until then is apart; to look at are clamps and joints that in a poor
/// case may give way within a week of shifts.
/// @param stations each with a name of its own @return places in `stations`
/// @throws bad_station_error for an assessment without parts
[[nodiscard]] inline survey survey_of(const std::vector<surveyed_station>& stations)
{
    survey out;
    for (std::size_t i = 0; i < stations.size(); ++i)
        (stations[i].fault.empty() ? out.ranked : out.not_read).push_back(i);
    std::stable_sort(out.ranked.begin(), out.ranked.end(), [&](std::size_t a, std::size_t b) {
        return detail::badness_of(stations[a]) > detail::badness_of(stations[b]);
    });
    for (const std::size_t i : out.ranked) {
        const surveyed_station& s = stations[i];
        if (has_read_fault(s)) {
            const suspected_part* const failing = s.answers.fault->failing_part();
            const suspected_part& first = failing != nullptr ? *failing : s.answers.fault->parts.front();
            if (!first.remedy.what.empty())
                out.to_mend.push_back({i, first.name, first.remedy.what, first.remedy.effort, true, {}});
        }
        for (const remedy& r : s.remedies) {
            if (r.is_summary || r.is_remark) continue;
            const survey_step step{i, r.part, r.what, r.effort, detail::cures_something(r), r.volts_regained};
            switch (r.effort) {
            case remedy_effort::replace:
            case remedy_effort::re_terminate:
                if (step.cures && !detail::holds_part(out.to_buy, step)) out.to_buy.push_back(step);
                break;
            case remedy_effort::clean:
            case remedy_effort::tighten: out.to_do.push_back(step); break;
            case remedy_effort::move: out.to_move.push_back(step); break;
            case remedy_effort::raise_volts:
            case remedy_effort::weld_less:
                if (step.cures) out.until_then.push_back(step);
                break;
            }
        }
        if (!s.answers.life) continue;
        const duration week = shifts_of_a_week * s.answers.life->service.joints.shift;
        for (const clamp_prospect& c : s.answers.life->clamps)
            if (c.look_again && *c.look_again <= week) out.to_look_at.push_back({i, c.name, *c.look_again});
        for (const joint_drift& j : s.answers.life->joints.joints) {
            if (!j.poor.yields || *j.poor.yields > week) continue;
            const auto known = std::find_if(out.to_look_at.begin(), out.to_look_at.end(),
                                            [&](const survey_look& l) { return l.entry == i && l.part == j.name; });
            if (known == out.to_look_at.end())
                out.to_look_at.push_back({i, j.name, *j.poor.yields});
            else
                known->by = std::min(known->by, *j.poor.yields);
        }
    }
    std::stable_sort(out.to_look_at.begin(), out.to_look_at.end(),
                     [](const survey_look& a, const survey_look& b) { return a.by < b.by; });
    return out;
}

}  // namespace weldloop
