#pragma once
/// @file
/// What the operating point of supply, loop and arc is found to be against what the job states.

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/operating_point_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/course_effects_of.hpp>
#include <weldloop/rating/finding_id.hpp>
#include <weldloop/rating/solved_station.hpp>

namespace weldloop {

/// How far the current of the operating point may lie from the job's before it is said.
inline constexpr source current_agreement_judgement{
    "a supply that gives the job's current within 5 % gives it: arc lines are not known better",
    "2026",
    {},
    source_kind::judgement};

namespace detail {

inline constexpr double current_agreement = 0.05;  // of the job's current; see current_agreement_judgement

/// The finding of an operating point, if there is one. @param s the station @param p its operating point
[[nodiscard]] inline std::optional<loop_finding> operating_finding(const station& s, const operating_point& p)
{
    const std::string asked = to_text(p.asked, "A");
    const source_line line = output_line_of(*s.supply, {s.job.process, s.job.current});
    if (p.outcome == operating_outcome::beyond_line) {
        const auto [least, most] = line.currents();
        if (p.held == arc_hold::wire_feed && p.asked > most)
            return loop_finding{finding_id::supply_gives_other_current, finding_severity::warning,
                                "The job is stated at " + asked + "; the supply gives no more than " +
                                    to_text(most, "A") + "."};
        const std::string known =
            "the supply's output line, known from " + to_text(least, "A") + " to " + to_text(most, "A");
        return loop_finding{finding_id::working_point_not_known, finding_severity::warning,
                            "The job is stated at " + asked + "; " +
                                (p.held == arc_hold::wire_feed
                                     ? "the wire's feed draws a current beyond " + known + "."
                                     : "with an arc of " + to_text(arc_length_of(s), "mm") +
                                           " supply, loop and arc meet beyond " + known + ".")};
    }
    if (p.outcome == operating_outcome::loop_not_settled || p.outcome == operating_outcome::not_settled)
        return loop_finding{finding_id::working_point_not_known, finding_severity::warning,
                            "The job is stated at " + asked +
                                (p.outcome == operating_outcome::loop_not_settled
                                     ? "; at the current that the supply would give, the loop has no settled state."
                                     : "; no working point of supply, loop and arc was found.")};
    // what follows from an arc line that does not reach so far is no finding
    if (!p.line_in_range && p.held == arc_hold::arc_length) return std::nullopt;
    if (p.outcome == operating_outcome::no_arc) {
        if (p.held == arc_hold::wire_feed)
            return loop_finding{finding_id::too_few_volts_for_arc, finding_severity::stop_job,
                                "At the current of the wire's feed the loop typically takes all of the supply's volts: "
                                "nothing is left for the arc."};
        return loop_finding{finding_id::too_few_volts_for_arc, finding_severity::stop_job,
                            "The job is stated at " + asked + "; with an arc of " + to_text(arc_length_of(s), "mm") +
                                " the supply typically holds no current through this loop: 0 A."};
    }
    if (!p.is_found()) return std::nullopt;
    if (p.held == arc_hold::wire_feed && p.line_in_range && p.arc_length.value() < 0.0)
        return loop_finding{finding_id::too_few_volts_for_arc, finding_severity::warning,
                            "At " + to_text(p.current, "A") + " the loop leaves the arc " +
                                to_text(p.arc_voltage, "V") + ", less than an arc of no length typically asks for, " +
                                to_text(arc_voltage_at(arc_line_of(s), length{}, p.current), "V") +
                                (arc_in(s).line ? "" : " by the usual line of its process") +
                                ": the wire typically stubs into the work."};
    if (p.held == arc_hold::wire_feed ||
        std::fabs((p.current - p.asked).value()) <= current_agreement * p.asked.value())
        return std::nullopt;
    return loop_finding{finding_id::supply_gives_other_current, finding_severity::warning,
                        "The job is stated at " + asked + "; with an arc of " + to_text(p.arc_length, "mm") +
                            " the supply typically gives " + to_text(p.current, "A") + " through this loop, at " +
                            to_text(p.terminals, "V") + " across its terminals."};
}

/// Adds a finding behind those that weigh as much.
inline void add_in_order(std::vector<loop_finding>& all, const loop_finding& f)
{
    all.insert(
        std::find_if(all.begin(), all.end(), [&f](const loop_finding& other) { return other.severity < f.severity; }),
        f);
}

/// Solves the operating point of a station whose loop conducts, and adds what is found of it.
inline void add_operating_point(assessment& out, const solved_station& solved)
{
    const station& s = solved.of();
    if (!s.supply || out.outcome == loop_outcome::open_circuit) return;
    operating_point p = operating_point_from(s, scatter::typical, {&solved.typical(), &solved.typical_state(), false});
    p.loop = {};
    if (const std::optional<loop_finding> f = operating_finding(s, p)) add_in_order(out.findings, *f);
    out.operating = std::move(p);
}

/// The finding of a level of pulses that the supply does not hold; the first of those.
[[nodiscard]] inline std::optional<loop_finding> level_finding(const course_effects& c)
{
    const auto at = std::find_if(c.levels.begin(), c.levels.end(), [](const level_point& l) { return !l.is_held; });
    if (at == c.levels.end()) return std::nullopt;
    const std::string level = "The course of the current has " + to_text(at->asked, "A") + " for " +
                              to_text(at->time, "ms") + " of each period; ";
    std::string why = "the supply's output line does not go there.";
    if (at->outcome == operating_outcome::no_arc)
        why = "by its output line the supply typically holds no arc there.";
    else if (at->outcome == operating_outcome::found && at->current != at->asked)
        why = "the supply typically gives " + to_text(at->current, "A") + " there, at " + to_text(at->terminals, "V") +
              " across its terminals.";
    else if (at->outcome == operating_outcome::found)
        why = "by its output line the supply has " + to_text(at->terminals, "V") +
              " there, and loop and arc typically ask for " + to_text(voltage(at->loop_drop + at->arc_wants), "V") +
              ".";
    return loop_finding{finding_id::level_not_held, finding_severity::warning, level + why};
}

/// What add_operating_point() and add_course_effects() find of a station whose loop conducts.
/// @param s the station, sound, with a supply @param loop at the job's current; of a point that rests_on_job_drop() and
/// direct current its drop is enough @param settled its state, or null
[[nodiscard]] inline std::vector<loop_finding> findings_at_arc_from(const station& s, const loop_state& loop,
                                                                    const solve::periodic_state* settled)
{
    std::vector<loop_finding> out;
    const operating_point p = operating_point_from(s, scatter::typical, {&loop, settled, false});
    if (const std::optional<loop_finding> f = operating_finding(s, p)) out.push_back(*f);
    if (const std::optional<course_effects> c = course_effects_of(s, loop, p.is_found() ? &p : nullptr))
        if (const std::optional<loop_finding> f = level_finding(*c)) out.push_back(*f);
    return out;
}

/// The same, solved from the beginning; of a station without a supply, or whose loop is open, nothing. @param s the
/// station, sound @param like settled state of a station with hardly anything different, whose swing is lent, or null
[[nodiscard]] inline std::vector<loop_finding> findings_at_arc(const station& s,
                                                               const solve::periodic_state* like = nullptr)
{
    if (!s.supply) return {};
    solve::periodic_state settled;
    loop_solver solver(s);
    const bool lends = like != nullptr && !solver.divides(scatter::typical) && lends_swing(*like, solver.network());
    const loop_state loop =
        solver.solve(scatter::typical, &settled,
                     {.near = lends ? like : nullptr, .reached_from = solve::period_search::start::cold});
    if (loop.outcome == loop_outcome::open_circuit) return {};
    return findings_at_arc_from(s, loop, &settled);
}

/// Adds what alternating or pulsed current meets, and what is found of it.
inline void add_course_effects(assessment& out, const solved_station& solved)
{
    out.course = course_effects_of(solved.of(), solved.typical(),
                                   out.operating && out.operating->is_found() ? &*out.operating : nullptr);
    if (!out.course) return;
    if (const std::optional<loop_finding> f = level_finding(*out.course)) add_in_order(out.findings, *f);
}

}  // namespace detail

}  // namespace weldloop
