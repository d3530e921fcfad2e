#pragma once
/// @file
/// What a report says of the surfaces of a station: the multiple of clean metal's resistance that each state stands
/// for, with its spread, and that it is judgement.

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/part_surface.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// How to read the list of surfaces; printed above it.
inline constexpr std::string_view surfaces_explained =
    "Resistance over that of clean metal at the same force, typical with its 5 and 95 % points. No published table of "
    "these numbers exists.";

/// A surface state of a station and the parts that have it.
struct surface_in_use {
    surface_state state;             ///< what a person sees
    std::vector<std::string> parts;  ///< their names, in the order of the path
};

/// The surface states of a station, in the order of the enumeration; those that no part has are left out.
/// @param s the station
[[nodiscard]] inline std::vector<surface_in_use> surfaces_in_use(const station& s)
{
    std::vector<surface_in_use> out;
    for (const surface_state state : all_surface_states) {
        surface_in_use here{state, {}};
        for (std::size_t i = 0; i < parts_in(s); ++i)
            if (surface_of(part_at(s, i)) == state) here.parts.push_back(name_of(s, i));
        if (!here.parts.empty()) out.push_back(std::move(here));
    }
    return out;
}

/// "spatter-covered: 4 (0.8..30), judgement - gate on table"; "open" for a state that does not conduct.
/// @param s a state in use
[[nodiscard]] inline std::string surface_line(const surface_in_use& s)
{
    std::string out(to_text(s.state));
    out.append(": ");
    if (const auto m = resistance_multiplier(s.state))
        out.append(number_text(m->typical))
            .append(" (")
            .append(number_text(m->low))
            .append("..")
            .append(number_text(m->high))
            .append(")");
    else
        out.append("open");
    out.append(", ").append(to_text(surface_state_judgement.kind)).append(" - ");
    for (std::size_t i = 0; i < s.parts.size(); ++i) out.append(i == 0 ? "" : ", ").append(s.parts[i]);
    return out;
}

}  // namespace weldloop
