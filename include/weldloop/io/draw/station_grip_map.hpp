#pragma once
/// @file
/// The map of a station's work clamp, for its report.

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/io/draw/grip_map_drawing.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/life/grip_map.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The drawing of what a station's work clamp comes to over current and surface, with the job marked: 0.4 to 1.7 times
/// the clamp's current, 0.5 to 100 times the resistance of clean metal, the lead being the cable nearest to the clamp.
/// @param s the station @param p the assessed part
/// @return an SVG element that takes its looks from drawing_style; empty for a part that is no work connection with a
/// forecast, and where the path has no cable @throws as grip_map_of()
[[nodiscard]] inline std::string station_grip_map(const station& s, const part_result& p)
{
    constexpr std::size_t columns = 20, rows = 12;
    constexpr double least_share = 0.4, most_share = 1.7, least_factor = 0.5, most_factor = 100.0;
    if (!p.grip || p.place >= parts_in(s)) return {};
    const auto* joint = std::get_if<work_connection>(&part_at(s, p.place));
    const cable* lead = detail::nearest_cable(s, p.place);
    if (joint == nullptr || lead == nullptr) return {};
    std::vector<current> currents;
    std::vector<double> factors;
    for (std::size_t i = 0; i < columns; ++i)
        currents.push_back(p.current.typical *
                           (least_share + (most_share - least_share) * static_cast<double>(i) / (columns - 1)));
    for (std::size_t i = 0; i < rows; ++i)
        factors.push_back(least_factor * std::pow(most_factor / least_factor, static_cast<double>(i) / (rows - 1)));
    const grip_map m = grip_map_of({*joint, *lead, s.job.duty, s.where}, currents, factors, p.grip->horizon);
    std::optional<grip_map_mark> mark;
    if (const auto multiplier = resistance_multiplier(joint->surface))
        mark = grip_map_mark{p.current.typical, multiplier->typical, "this job"};
    return grip_map_drawing(m, p.name, mark);
}

}  // namespace weldloop
