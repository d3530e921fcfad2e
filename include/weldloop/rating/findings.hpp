#pragma once
/// @file
/// What is found of a loop as a whole: whether current flows at all, whether it settles, what the drop leaves.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/rating/arc_voltage.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/finding_id.hpp>
#include <weldloop/rating/supply_findings.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

namespace detail {

/// The highest output of a station's supply at the job's current, as far as it is in phase with that: see
/// reactance_of().
/// @param s with a supply
[[nodiscard]] inline voltage highest_in_phase_of(const station& s)
{
    return in_phase_of(highest_output_at(*s.supply, {s.job.process, s.job.current}), reactance_of(s) * s.job.current);
}

/// What the findings of a loop follow from.
struct loop_summary {
    loop_outcome outcome = loop_outcome::solved;  // of the typical case
    loop_outcome poor = loop_outcome::solved;     // with every joint at the 95 % point of its scatter
    bool melts = false;                           // typically, at some part
    voltage drop = {};                            // typical
};

/// A finding without its words.
struct finding_kind {
    finding_id id;
    finding_severity severity;
};

inline bool graver(const finding_kind& a, const finding_kind& b)
{
    return a.severity > b.severity;
}

/// Which findings there are, the gravest first.
/// @param above whether the drop at its 95 % point lies above a value
template <class HighAbove>
[[nodiscard]] std::vector<finding_kind> finding_kinds(const station& s, const loop_summary& loop,
                                                      const HighAbove& above)
{
    constexpr finding_severity notice = finding_severity::notice, warning = finding_severity::warning,
                               stop_job = finding_severity::stop_job;
    std::vector<finding_kind> out;
    for (const finding_id id : supply_finding_ids(s))
        out.push_back({id, id == finding_id::no_load_above_limit ? stop_job : warning});
    if (loop.outcome != loop_outcome::solved) {
        const bool is_open = loop.outcome == loop_outcome::open_circuit;
        out.push_back({is_open ? finding_id::open_circuit : finding_id::no_steady_state, stop_job});
        std::stable_sort(out.begin(), out.end(), graver);
        return out;
    }
    if (loop.melts) out.push_back({finding_id::spots_melt, stop_job});
    if (loop.poor != loop_outcome::solved) out.push_back({finding_id::no_steady_state_in_a_poor_case, warning});
    // a falling output gives less current, not none: whether that holds the arc is the working point's to say
    const auto falls = [](supply_kind k) {
        return k == supply_kind::drooping || k == supply_kind::engine_driven || k == supply_kind::measured;
    };
    if (s.supply && !s.supply->sensing && !falls(s.supply->kind)) {
        const bool holds_voltage = s.supply->kind == supply_kind::constant_voltage;
        const voltage highest = highest_in_phase_of(s);
        const voltage left =
            holds_voltage ? highest : voltage(highest - conventional_load_voltage(s.job.process, s.job.current));
        if (loop.drop > left || (holds_voltage && loop.drop == left))
            out.push_back({finding_id::supply_cannot_hold_arc, stop_job});
        else if (above(left))
            out.push_back({finding_id::supply_may_not_hold_arc, warning});
    }
    if (s.allowed_drop) {
        if (loop.drop > *s.allowed_drop)
            out.push_back({finding_id::drop_above_allowed, warning});
        else if (above(*s.allowed_drop))
            out.push_back({finding_id::drop_may_exceed_allowed, notice});
    }
    std::stable_sort(out.begin(), out.end(), graver);
    return out;
}

/// What ways beside the path are found to do. @param s the station @param state its loop
inline void add_way_kinds(std::vector<finding_kind>& out, const station& s, const loop_state& state)
{
    bool carries = false, is_there = false, spans = false;
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        spans = spans || state.ways[w].spans_arc;
        if (s.ways[w].kind != way_kind::stray || state.ways[w].spans_arc) continue;
        const bool none =
            state.outcome == loop_outcome::open_circuit || (state.is_solved() && !(state.ways[w].current > current{}));
        (none ? is_there : carries) = true;
    }
    if (spans) out.push_back({finding_id::way_spans_arc, finding_severity::stop_job});
    if (carries) out.push_back({finding_id::stray_current, finding_severity::stop_job});
    if (is_there) out.push_back({finding_id::stray_way, finding_severity::warning});
}

// The sentence for a finding.
[[nodiscard]] inline std::string words_of(finding_id id, const station& s, const assessment& found, loop_outcome poor)
{
    const auto named = [&found](const auto& wanted) {
        std::string names;
        for (const part_result& p : found.parts)
            if (wanted(p.verdict)) names.append(names.empty() ? "" : ", ").append(p.name);
        return names;
    };
    const band<voltage>& drop = found.total_drop;
    const auto highest = [&] { return highest_in_phase_of(s); };
    const auto missing = [&](voltage taken) {
        return to_text(voltage(taken + conventional_load_voltage(s.job.process, s.job.current) - highest()), "V");
    };
    const bool holds_current = s.supply && s.supply->kind != supply_kind::constant_voltage;
    switch (id) {
    case finding_id::open_circuit:
        return "The circuit is open at " + named([](verdict v) { return v == verdict::open_circuit; }) + ".";
    case finding_id::no_steady_state:
        return found.outcome == loop_outcome::ends
                   ? "The loop has no steady state at this current and duty: what it is made of gives way first, at " +
                         named([](verdict v) { return v == verdict::spots_melting || v == verdict::over_limit; }) + "."
                   : "No steady state of the loop was found at this current and duty: there are no temperatures to "
                     "judge it by.";
    case finding_id::spots_melt:
        return "Contact spots melt at " + named([](verdict v) { return v == verdict::spots_melting; }) + ".";
    case finding_id::no_steady_state_in_a_poor_case:
        return poor == loop_outcome::open_circuit
                   ? "In a poor case the circuit is open: some joint may not touch metal to metal."
                   : "In a poor case, every joint at the 95 % point of its scatter, the loop has no steady state.";
    case finding_id::supply_cannot_hold_arc:
        return holds_current ? "The supply cannot hold this current: loop and arc ask for " + missing(drop.typical) +
                                   " more than its highest output of " + to_text(highest(), "V") + ", typically."
                             : "The loop typically takes " + to_text(drop.typical, "V") + ", all of the " +
                                   to_text(highest(), "V") +
                                   " that the supply is set to at this current: nothing is left for the arc.";
    case finding_id::supply_may_not_hold_arc:
        return holds_current
                   ? "In a poor case the supply cannot hold this current: loop and arc then ask for " +
                         missing(drop.high) + " more than its highest output."
                   : "In a poor case the loop takes all of the supply's setting: nothing is left for the arc.";
    case finding_id::drop_above_allowed:
        return "The loop typically takes " + to_text(drop.typical, "V") + ", above the allowed " +
               to_text(*s.allowed_drop, "V") + ".";
    case finding_id::drop_may_exceed_allowed:
        return "The loop typically takes " + to_text(drop.typical, "V") + " of the allowed " +
               to_text(*s.allowed_drop, "V") + ", in a poor case " + to_text(drop.high, "V") + ".";
    case finding_id::no_load_above_limit:
    case finding_id::supply_does_not_suit:
    case finding_id::polarity_does_not_suit: return words_of_supply(id, s);
    default: return {};  // of ways, see add_way_findings()
    }
}

}  // namespace detail

/// The findings of an assessed loop, the gravest first.
///
/// Those up to finding_id::drop_may_exceed_allowed; ways add theirs.
/// @param s the station @param found its assessment: parts, total drop, outcome
/// @param poor outcome of the loop at the 95 % point of every joint's scatter
/// @throws as conventional_load_voltage() @return those that hold
[[nodiscard]] inline std::vector<loop_finding> findings_for(const station& s, const assessment& found,
                                                            loop_outcome poor)
{
    const bool melts = std::any_of(found.parts.begin(), found.parts.end(),
                                   [](const part_result& p) { return p.verdict == verdict::spots_melting; });
    std::vector<loop_finding> out;
    for (const detail::finding_kind& f :
         detail::finding_kinds(s, {found.outcome, poor, melts, found.total_drop.typical},
                               [&](voltage limit) { return found.total_drop.high > limit; }))
        out.push_back({f.id, f.severity, detail::words_of(f.id, s, found, poor)});
    return out;
}

}  // namespace weldloop
