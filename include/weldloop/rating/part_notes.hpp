#pragma once
/// @file
/// What a part's numbers stand for only in part.

#include <cmath>
#include <cstddef>
#include <string>
#include <variant>

#include <weldloop/circuit/arc_in_work.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/solved_station.hpp>

namespace weldloop::detail {

/// Whether a piece's heat runs all over it within its stay: its disc's slowest uneven mode has died away by then.
[[nodiscard]] inline bool evens_out(const workpiece& w)
{
    constexpr double first_zero = 3.8317;  // of the Bessel function J1
    const length rim = radius_over_patch(w) * work_patch_radius;
    const auto diffusivity = w.metal.thermal_conductivity / w.metal.heat_per_volume();
    const auto stay = stay_of(w);
    return stay && rim * rim / (first_zero * first_zero * diffusivity) < stay->stays;
}

/// What is said of a piece that the arc heats.
[[nodiscard]] inline std::string arc_heat_note(const workpiece& w, const arc_in_work& heat, const place_state& piece,
                                               temperature air)
{
    std::string out = "The arc typically puts ";
    out.append(to_text(heat.arc.typical, "kW", 2)).append(" into it while it burns (");
    out.append(to_text(heat.arc.low, "kW", 2)).append(" to ").append(to_text(heat.arc.high, "kW", 2));
    out.append(
        ", the measured share of the process; the load voltage stands for the arc's). In the mean over its stay it "
        "is then at ");
    out.append(to_text(piece.mean, "degC")).append(", at its hottest at ");
    out.append(to_text(air + heat.hottest_over_mean * (piece.mean - air), "degC"));
    out.append(": what grips it is reckoned at the mean, and in the poor case as if the hottest lasted. ");
    if (!evens_out(w))
        out.append(
            "Its heat does not run all over it within its stay: near the weld it is hotter, far from it colder. ");
    out.append(w.from_weld ? w.bar_length ? "It counts as welded across its middle."
                                          : "It counts as a round plate welded in its middle."
                           : "How far from the weld it is gripped is not known.");
    return out.append(" The arc's radiation and spatter on holder, gun head and clamp are not counted.");
}

/// Adds what is not known of a part, or what its numbers leave out.
/// @param r its result, measured @param part it @param solved the station @param place its number
inline void note_what_is_not_known(part_result& r, const path_part& part, const solved_station& solved,
                                   std::size_t place)
{
    if (const auto* m = std::get_if<measured_part>(&part); m != nullptr && !m->cooling_area)
        r.notes.emplace_back(
            "Its temperature is not known: no cooling area is stated for it. The temperature of the air "
            "stands in its place.");
    const auto* w = std::get_if<workpiece>(&part);
    if (w == nullptr) return;
    const auto& heat = solved.network().parts()[place].arc_heat;
    if (!heat)
        r.notes.emplace_back("The arc's own heat in the work is not counted: how hot the work gets is not judged.");
    else if (solved.typical().is_solved())
        r.notes.push_back(
            arc_heat_note(*w, heat->what, solved.typical().parts[place].places.front(), solved.of().where.air));
}

}  // namespace weldloop::detail
