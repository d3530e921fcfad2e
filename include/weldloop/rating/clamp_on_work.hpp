#pragma once
/// @file
/// What the arc's heat in the work does to clamps, and whether a clamp on the table would be better off on the part.

#include <cstddef>
#include <optional>
#include <string>
#include <variant>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/solved_station.hpp>

namespace weldloop::detail {

/// The piece beside the arc of a solved station, if the arc's heat in it counts.
[[nodiscard]] inline std::optional<std::size_t> heated_piece(const solved_station& solved)
{
    const auto& parts = solved.network().parts();
    for (std::size_t i = 0; i < parts.size(); ++i)
        if (parts[i].arc_heat) return i;
    return std::nullopt;
}

// "; the loop takes 0.31 V less"
[[nodiscard]] inline std::string drop_against(voltage then, voltage now)
{
    const voltage change = then - now;
    return std::string("and the loop take ")
        .append(to_text(change < voltage{} ? -change : change, "V", 2))
        .append(change < voltage{} ? " less" : " more");
}

// Where the path runs piece, what lies between, table, clamp: the number of the clamp.
[[nodiscard]] inline std::optional<std::size_t> clamp_on_table(const station& s, std::size_t piece)
{
    if (!s.ways.empty() || !s.others.empty()) return std::nullopt;
    std::size_t i = piece + 1;
    if (i >= s.path.size() || !std::holds_alternative<contact>(s.path[i])) return std::nullopt;
    while (i < s.path.size() &&
           (std::holds_alternative<contact>(s.path[i]) || std::holds_alternative<plate>(s.path[i]) ||
            std::holds_alternative<workpiece>(s.path[i])))
        ++i;
    const bool ends_at_clamp = i < s.path.size() && std::holds_alternative<work_connection>(s.path[i]);
    return ends_at_clamp ? std::optional(i) : std::nullopt;
}

/// Adds to every clamp what it would reach on cold work; to one on the table what it would on the part itself.
/// @param out the assessment, its parts measured @param solved the station
inline void note_hot_work(assessment& out, const solved_station& solved)
{
    const std::optional<std::size_t> piece = heated_piece(solved);
    if (!piece || !solved.typical().is_solved()) return;
    const station& s = solved.of();
    station cold = s;
    auto& unheated = std::get<workpiece>(cold.path[*piece]);
    unheated.stays.reset();
    unheated.pieces_per_hour.reset();
    const loop_state on_cold = solve_loop(cold, scatter::typical);
    for (part_result& r : out.parts) {
        if (r.with_stray_open || !std::holds_alternative<work_connection>(part_at(s, r.place)) || !on_cold.is_solved())
            continue;
        r.notes.push_back(std::string("On cold work it would typically peak at ")
                              .append(to_text(on_cold.parts[r.place].peak, "degC"))
                              .append(", with the arc's heat in the work at ")
                              .append(to_text(solved.typical().parts[r.place].peak, "degC"))
                              .append("."));
    }
    const std::optional<std::size_t> clamp = clamp_on_table(s, *piece);
    if (!clamp) return;
    station moved = s;
    moved.path.erase(moved.path.begin() + static_cast<std::ptrdiff_t>(*piece) + 1,
                     moved.path.begin() + static_cast<std::ptrdiff_t>(*clamp));
    const loop_state on_part = solve_loop(moved, scatter::typical);
    if (!on_part.is_solved()) return;
    for (part_result& r : out.parts)
        if (r.place == *clamp)
            r.notes.push_back(std::string("On the part itself it would typically peak at ")
                                  .append(to_text(on_part.parts[*piece + 1].peak, "degC"))
                                  .append(" instead of ")
                                  .append(to_text(solved.typical().parts[*clamp].peak, "degC"))
                                  .append(", ")
                                  .append(drop_against(on_part.total_drop, solved.typical().total_drop))
                                  .append(on_part.parts[*piece + 1].peak > solved.typical().parts[*clamp].peak
                                              ? ": the table keeps the arc's heat from it."
                                              : ": what lies between part and table costs more than the arc's heat."));
}

}  // namespace weldloop::detail
