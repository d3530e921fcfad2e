#pragma once
/// @file
/// What is found of a loop as a whole: whether current flows at all, whether it settles, what the drop leaves.

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/arc_voltage.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// The findings of an assessed loop, the gravest first.
///
/// Ids: `open_circuit`, `no_steady_state`, `no_steady_state_in_a_poor_case`, `spots_melt`, `supply_cannot_hold_arc`,
/// `supply_may_not_hold_arc`, `drop_above_allowed`, `drop_may_exceed_allowed`.
/// @param s the station @param found its assessment: parts, total drop, outcome
/// @param poor outcome of the loop at the 95 % point of every joint's scatter
[[nodiscard]] inline std::vector<loop_finding> findings_for(const station& s, const assessment& found,
                                                            loop_outcome poor)
{
    std::vector<loop_finding> out;
    const auto add = [&out](std::string id, finding_severity severity, std::string text) {
        out.push_back({std::move(id), severity, std::move(text)});
    };
    const auto named = [&found](verdict v) {
        std::string names;
        for (const part_result& p : found.parts)
            if (p.verdict == v) names.append(names.empty() ? "" : ", ").append(p.name);
        return names;
    };
    if (found.outcome == loop_outcome::open_circuit)
        add("open_circuit", finding_severity::stop_job, "The circuit is open at " + named(verdict::open_circuit) + ".");
    if (found.outcome == loop_outcome::ends) {
        std::string names;
        for (const part_result& p : found.parts)
            if (p.verdict == verdict::spots_melting || p.verdict == verdict::over_limit)
                names.append(names.empty() ? "" : ", ").append(p.name);
        add("no_steady_state", finding_severity::stop_job,
            "The loop has no steady state at this current and duty: what it is made of gives way first, at " + names +
                ".");
    }
    if (found.outcome == loop_outcome::not_settled)
        add("no_steady_state", finding_severity::stop_job,
            "No steady state of the loop was found at this current and duty: there are no temperatures to judge it "
            "by.");
    if (found.outcome != loop_outcome::solved) return out;

    if (const std::string melting = named(verdict::spots_melting); !melting.empty())
        add("spots_melt", finding_severity::stop_job, "Contact spots melt at " + melting + ".");
    if (poor != loop_outcome::solved)
        add("no_steady_state_in_a_poor_case", finding_severity::warning,
            poor == loop_outcome::open_circuit
                ? "In a poor case the circuit is open: some joint may not touch metal to metal."
                : "In a poor case, every joint at the 95 % point of its scatter, the loop has no steady state.");

    if (s.supply && s.supply->kind == supply_kind::constant_current) {
        const voltage needed = conventional_load_voltage(s.job.process, s.job.current);
        const auto short_by = [&](voltage drop) -> voltage { return drop + needed - s.supply->highest_output; };
        if (short_by(found.total_drop.typical).value() > 0.0)
            add("supply_cannot_hold_arc", finding_severity::stop_job,
                "The supply cannot hold this current: loop and arc ask for " +
                    to_text(short_by(found.total_drop.typical), "V") + " more than its highest output of " +
                    to_text(s.supply->highest_output, "V") + ", typically.");
        else if (short_by(found.total_drop.high).value() > 0.0)
            add("supply_may_not_hold_arc", finding_severity::warning,
                "In a poor case the supply cannot hold this current: loop and arc then ask for " +
                    to_text(short_by(found.total_drop.high), "V") + " more than its highest output.");
    }
    if (s.supply && s.supply->kind == supply_kind::constant_voltage) {
        if (found.total_drop.typical >= s.supply->setting)
            add("supply_cannot_hold_arc", finding_severity::stop_job,
                "The loop typically takes " + to_text(found.total_drop.typical, "V") + ", all of the setting of " +
                    to_text(s.supply->setting, "V") + ": nothing is left for the arc.");
        else if (found.total_drop.high >= s.supply->setting)
            add("supply_may_not_hold_arc", finding_severity::warning,
                "In a poor case the loop takes all of the supply's setting: nothing is left for the arc.");
    }
    if (s.allowed_drop) {
        const std::string allowed = to_text(*s.allowed_drop, "V");
        if (found.total_drop.typical > *s.allowed_drop)
            add("drop_above_allowed", finding_severity::warning,
                "The loop typically takes " + to_text(found.total_drop.typical, "V") + ", above the allowed " +
                    allowed + ".");
        else if (found.total_drop.high > *s.allowed_drop)
            add("drop_may_exceed_allowed", finding_severity::notice,
                "The loop typically takes " + to_text(found.total_drop.typical, "V") + " of the allowed " + allowed +
                    ", in a poor case " + to_text(found.total_drop.high, "V") + ".");
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const loop_finding& a, const loop_finding& b) { return a.severity > b.severity; });
    return out;
}

}  // namespace weldloop
