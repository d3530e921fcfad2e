#pragma once
/// @file
/// The loop solved: what current does to every part, the leads as heated fins between the joints.

#include <algorithm>
#include <cstddef>
#include <vector>

#include <weldloop/circuit/loop_element.hpp>
#include <weldloop/circuit/loop_heat.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/part_in_path.hpp>
#include <weldloop/circuit/station.hpp>

namespace weldloop {

/// Solves the loop of a station in the periodic steady state of its duty.
///
/// Mean temperatures over the duty period come from one heat balance per chain of parts: joints are lumps that lose
/// heat to the air and the work, leads are heated fins between them, resistances follow temperature, joints follow
/// their voltage-current characteristic. The ripple of the duty period is added to the mean: of a lead by its own
/// two-store periodic solution, of a joint by its heat capacity against all conductances it feels. No heat is credited
/// to the supply's terminals and none is charged for the arc's own heat at gun, holder or electrode.
///
/// @param s     the station @param level which point of every joint's scatter to solve for
/// @return finite values, whose meaning `outcome` says: only where the loop has a steady state are they its drops and
///         temperatures; else every part is as without current, at the temperature of the air
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] inline loop_state solve_loop(const station& s, scatter level = scatter::typical)
{
    const std::size_t arc_at = checked_arc_index(s);
    loop_state out;
    out.parts.resize(s.path.size());

    std::vector<loop_element> elements;
    elements.reserve(s.path.size());
    for (std::size_t i = 0; i < s.path.size(); ++i) {
        elements.push_back(element_of(part_in_path(s.path, i), s.where, s.job.current, i < arc_at));
        out.part_basis.push_back(elements.back().basis);
    }
    for (std::size_t i = 0; i < elements.size(); ++i) {
        out.parts[i].mean = out.parts[i].peak = out.parts[i].hottest_spot = s.where.air;
        out.parts[i].conducts = is_closed(elements[i]);
        out.conducts = out.conducts && out.parts[i].conducts;
    }
    if (!out.conducts) {
        out.outcome = loop_outcome::open_circuit;
        return out;
    }
    const std::vector<part_state> without_current = out.parts;
    detail::solve_heat(elements, s.where, {.current = s.job.current, .duty = s.job.duty}, level, out);
    if (out.outcome == loop_outcome::solved &&
        std::any_of(out.parts.begin(), out.parts.end(), [](const part_state& p) { return p.metal_melts; }))
        out.outcome = loop_outcome::melts;
    if (out.outcome != loop_outcome::solved) {
        for (std::size_t i = 0; i < out.parts.size(); ++i) {
            const bool melts = out.outcome == loop_outcome::melts && out.parts[i].metal_melts;
            out.parts[i] = without_current[i];
            out.parts[i].metal_melts = melts;
        }
        return out;
    }
    for (const part_state& p : out.parts) {
        out.total_drop += p.drop;
        out.extension_drop += p.extension_drop;
    }
    return out;
}

}  // namespace weldloop
