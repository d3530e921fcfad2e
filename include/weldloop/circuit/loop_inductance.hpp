#pragma once
/// @file
/// Inductance of a station's leads as they lie.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <variant>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/inductance.hpp>
#include <weldloop/law/lead_bundle.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/steel_beside.hpp>

namespace weldloop {

/// What is assumed of the lay of leads for their inductance.
inline constexpr source loop_lay_judgement{
    "leads out and back lie side by side unless a lead is coiled by itself; such a coil is a flat heap of all of its "
    "length; leads coiled together cancel; guns, holders and the work add nothing",
    "2026",
    {},
    source_kind::judgement};

/// Inductance of the leads of a station's path.
struct station_inductance {
    inductance straight = {};     ///< [H] of what lies out and back
    inductance coiled = {};       ///< [H] of leads coiled by themselves
    inductance by_steel = {};     ///< [H] that steel beside leads typically adds
    inductance total = {};        ///< [H] all, typically
    band<inductance> range = {};  ///< [H] the same over what steel may make of it; alike without steel
    weldloop::basis basis = {};   ///< sources
};

/// Inductance of the cables of a station's path. A cable whose own lay is `coiled` counts as a coil of its turns, or of
/// as many as are assumed for its heat, by coil_inductance(); the others as half of a pair that touches,
/// pair_inductance(); steel that is stated beside a lead multiplies its own, steel_factor(). A least value: leads laid
/// apart have some times as much, and so have leads beside steel that is not stated.
///
/// @param s the station @throws not_finite_error, out_of_range_error for a cable without diameters, a coil that
/// cannot be, and steel of a coil beside a lead that is not stated to be coiled, or round one that is
[[nodiscard]] inline station_inductance lead_inductance_of(const station& s)
{
    station_inductance out;
    out.basis.add(loop_lay_judgement).add(parallel_wire_inductance);
    for (const path_part& part : s.path) {
        const auto* lead = std::get_if<cable>(&part);
        if (lead == nullptr) continue;
        const length radius = 0.5 * lead->conductor_diameter;
        const bool in_coil = lead->lay && *lead->lay == lay::coiled;
        if (lead->steel != steel_beside::none && is_of_a_coil(lead->steel) != in_coil)
            throw out_of_range_error("steel beside a lead", std::string(to_text(lead->steel)),
                                     in_coil ? "under or within its coil" : "round the lead, which is not coiled");
        inductance own{};
        if (in_coil) {
            out.basis.add(neumann_circles);
            const int turns = lead->coil_turns.value_or(assumed_turns_of(lead->length));
            const length diameter = lead->length / (std::numbers::pi * turns);
            // as many turns on one another as make the heap about as high as it is wide
            const double room = 1.0 + 0.5 * (diameter / lead->overall_diameter).value();
            const int layers =
                std::clamp(static_cast<int>(std::min(std::sqrt(static_cast<double>(turns)), room)), 1, turns);
            own = coil_inductance(
                {.turns = turns, .diameter = diameter, .pitch = lead->overall_diameter, .layers = layers}, radius);
            out.coiled += own;
        } else {
            own = 0.5 * (pair_inductance(lead->overall_diameter, radius, radius) * lead->length);
            out.straight += own;
        }
        const band<double> factor = steel_factor(lead->steel);
        out.by_steel += (factor.typical - 1.0) * own;
        out.range.low += factor.low * own;
        out.range.high += factor.high * own;
        if (lead->steel != steel_beside::none) out.basis.add(steel_beside_judgement);
        if (lead->steel == steel_beside::under_coil) out.basis.add(steel_image_bound);
    }
    out.total = out.range.typical = out.straight + out.coiled + out.by_steel;
    return out;
}

}  // namespace weldloop
