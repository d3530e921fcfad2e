#pragma once
/// @file
/// The parts of a station by one number: those of the path in its order, then those of each way in theirs.

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <weldloop/circuit/part_in_path.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/part/supply_line.hpp>

namespace weldloop {

/// Where a part stands.
struct part_address {
    static constexpr std::size_t trunk = static_cast<std::size_t>(-1);  ///< stands for the path itself
    std::size_t way = trunk;                                            ///< which of the station's ways, or trunk
    std::size_t index = 0;                                              ///< in that path, from 0
};

/// How many parts a station has, arc, junctions and workpieces among them.
[[nodiscard]] inline std::size_t parts_in(const station& s)
{
    std::size_t out = s.path.size();
    for (const way& w : s.ways) out += w.path.size();
    return out;
}

/// Where the part with a number stands. @param s the station @param place from 0 @throws out_of_range_error
[[nodiscard]] inline part_address address_of(const station& s, std::size_t place)
{
    std::size_t left = place;
    if (left < s.path.size()) return {part_address::trunk, left};
    left -= s.path.size();
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        if (left < s.ways[w].path.size()) return {w, left};
        left -= s.ways[w].path.size();
    }
    throw out_of_range_error("part number", std::to_string(place), "below " + std::to_string(parts_in(s)));
}

/// The number of the first part of a way. @param s the station @param which of the station's ways, from 0
[[nodiscard]] inline std::size_t first_place_of_way(const station& s, std::size_t which)
{
    std::size_t out = s.path.size();
    for (std::size_t w = 0; w < which; ++w) out += s.ways[w].path.size();
    return out;
}

/// The path a part stands in. @param s the station @param a of it
[[nodiscard]] inline const std::vector<path_part>& path_at(const station& s, const part_address& a)
{
    return a.way == part_address::trunk ? s.path : s.ways[a.way].path;
}

/// The part with a number. @throws out_of_range_error
[[nodiscard]] inline const path_part& part_at(const station& s, std::size_t place)
{
    const part_address a = address_of(s, place);
    return path_at(s, a)[a.index];
}
/// The same, to be changed. @throws out_of_range_error
[[nodiscard]] inline path_part& part_at(station& s, std::size_t place)
{
    const part_address a = address_of(s, place);
    return a.way == part_address::trunk ? s.path[a.index] : s.ways[a.way].path[a.index];
}

/// The part with a number as its neighbours let it be, see part_in_path(). @throws out_of_range_error
[[nodiscard]] inline path_part part_as_placed(const station& s, std::size_t place)
{
    const part_address a = address_of(s, place);
    return part_in_path(path_at(s, a), a.index);
}

/// The name of the part with a number. @throws out_of_range_error
[[nodiscard]] inline std::string name_of(const station& s, std::size_t place)
{
    return name_of(part_at(s, place), place);
}

/// The name of a way; without one it is called by its place, "way 2".
/// @param s the station @param which from 0 @throws out_of_range_error
[[nodiscard]] inline std::string name_of_way(const station& s, std::size_t which)
{
    if (which >= s.ways.size())
        throw out_of_range_error("way number", std::to_string(which), "below " + std::to_string(s.ways.size()));
    return s.ways[which].name.empty() ? "way " + std::to_string(which + 1) : s.ways[which].name;
}

/// The number of the part with a name. @throws bad_station_error naming the parts there are
[[nodiscard]] inline std::size_t place_of(const station& s, std::string_view name)
{
    std::string all;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const std::string here = name_of(s, i);
        if (here == name) return i;
        all.append(all.empty() ? "" : ", ").append(here);
    }
    throw bad_station_error("part name", "\"" + std::string(name) + "\"", "one of: " + all);
}

/// Whether a part stands in a stray way. @param s the station @param place its number @throws out_of_range_error
[[nodiscard]] inline bool is_stray(const station& s, std::size_t place)
{
    const part_address a = address_of(s, place);
    return a.way != part_address::trunk && s.ways[a.way].kind == way_kind::stray;
}

namespace detail {

/// The cable in its own path that lies nearest to a part; none if there is no cable in it. Of two equally near ones the
/// later. @throws out_of_range_error
[[nodiscard]] inline const cable* nearest_cable(const station& s, std::size_t place)
{
    const part_address a = address_of(s, place);
    const std::vector<path_part>& path = path_at(s, a);
    for (std::size_t away = 1; away < path.size(); ++away) {
        if (a.index + away < path.size())
            if (const auto* c = std::get_if<cable>(&path[a.index + away])) return c;
        if (away <= a.index)
            if (const auto* c = std::get_if<cable>(&path[a.index - away])) return c;
    }
    return nullptr;
}

/// The cable that hangs on a part: the next in its own path, or the next but one behind what ends a cable; none where
/// something else, a strap or stud, lies between. @throws out_of_range_error
[[nodiscard]] inline const cable* cable_held_at(const station& s, std::size_t place)
{
    const part_address a = address_of(s, place);
    const std::vector<path_part>& path = path_at(s, a);
    const auto behind = [&path](std::size_t at, std::size_t next) -> const cable* {
        if (at >= path.size()) return nullptr;
        if (const auto* c = std::get_if<cable>(&path[at])) return c;
        return ends_a_cable(path[at]) && next < path.size() ? std::get_if<cable>(&path[next]) : nullptr;
    };
    constexpr std::size_t nowhere = static_cast<std::size_t>(-1);
    const std::size_t before = a.index >= 1 ? a.index - 1 : nowhere, far = a.index >= 2 ? a.index - 2 : nowhere;
    const cable* after = behind(a.index + 1, a.index + 2);
    return after != nullptr ? after : behind(before, far);
}

/// What no way can see alone: names, and where ways and feeds start and end.
inline void check_ways(const station& s)
{
    std::set<std::string> names;
    std::vector<std::string> hubs;
    std::string all;
    std::vector<std::size_t> way_of_hub;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const part_address a = address_of(s, i);
        const path_part& part = path_at(s, a)[a.index];
        const std::string name = name_of(part, i);
        if (!names.insert(name).second)
            throw bad_station_error("part name", "\"" + name + "\" twice", "one name for each part");
        if (a.way != part_address::trunk &&
            (std::holds_alternative<arc>(part) || std::holds_alternative<wire_gun>(part) ||
             std::holds_alternative<tig_torch>(part) || std::holds_alternative<electrode_holder>(part)))
            throw bad_station_error("part of a way", "\"" + name + "\"",
                                    "leads and joints; arc, guns, torches and holders stand in the path");
        if (!is_hub(part)) continue;
        hubs.push_back(name);
        way_of_hub.push_back(a.way);
        all.append(all.empty() ? "" : ", ").append(name);
    }
    if (all.empty()) all = "a junction or workpiece, of which there is none";
    const auto known = [&](const std::string& what, const std::string& name, std::size_t own) {
        for (std::size_t h = 0; h < hubs.size(); ++h) {
            if (hubs[h] != name) continue;
            if (own != part_address::trunk && way_of_hub[h] == own)
                throw bad_station_error(what, "\"" + name + "\", which stands in that way itself",
                                        "a point outside it");
            return;
        }
        throw bad_station_error(what, "\"" + name + "\"", "one of: " + all);
    };
    std::set<std::string> called;
    const auto once = [&called](const std::string& what, const std::string& name) {
        if (!called.insert(name).second) throw bad_station_error(what, "\"" + name + "\" twice", "one name for each");
    };
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        const way& here = s.ways[w];
        const std::string name = name_of_way(s, w);
        once("way name", name);
        if (here.path.empty()) throw bad_station_error("way \"" + name + "\"", "without parts", "one part or more");
        known("start of way \"" + name + "\"", here.from, w);
        known("end of way \"" + name + "\"", here.to, w);
        if (here.from == here.to)
            throw bad_station_error("way \"" + name + "\"", "from \"" + here.from + "\" to the same point",
                                    "two different points");
    }
    for (std::size_t f = 0; f < s.others.size(); ++f) {
        const feed& here = s.others[f];
        const std::string name = here.name.empty() ? "feed " + std::to_string(f + 1) : here.name;
        once("feed name", name);
        require_positive(here.current, "current of feed \"" + name + "\"");
        if (here.no_load) require_positive(*here.no_load, "no-load voltage of feed \"" + name + "\"");
        known("start of feed \"" + name + "\"", here.from, part_address::trunk);
        known("end of feed \"" + name + "\"", here.to, part_address::trunk);
        if (here.from == here.to)
            throw bad_station_error("feed \"" + name + "\"", "from \"" + here.from + "\" to the same point",
                                    "two different points");
    }
}

/// Parts of the path that lie between the terminals and the taps of a supply that senses remotely.
struct sensed_parts {
    std::size_t electrode_side_ends;  // the first part behind the tap
    std::size_t work_side_begins;     // the first part behind the other tap, seen from the arc
};
[[nodiscard]] inline sensed_parts sensed_parts_of(const station& s)
{
    std::size_t arc_at = 0;
    while (arc_at < s.path.size() && !std::holds_alternative<arc>(s.path[arc_at])) ++arc_at;
    const auto tapped = [&](const char* side, const std::string& name, std::size_t from, std::size_t to) {
        std::string all;
        for (std::size_t i = from; i < to; ++i) {
            const std::string here = name_of(s.path[i], i);
            if (here == name) return i;
            all.append(all.empty() ? "" : ", ").append(here);
        }
        throw bad_station_error(std::string("sensing on the ") + side + " side", "at \"" + name + "\"",
                                "one of: " + all);
    };
    if (s.supply->kind != supply_kind::constant_voltage)
        throw bad_station_error("sensing", "with a supply of " + std::string(to_text(s.supply->kind)),
                                "a supply that holds its voltage");
    const remote_sensing& at = *s.supply->sensing;
    return {at.electrode_side.empty() ? 0 : tapped("electrode", at.electrode_side, 0, arc_at) + 1,
            at.work_side.empty() ? s.path.size() : tapped("work", at.work_side, arc_at + 1, s.path.size())};
}

/// Whether a supply is described; whatever it cannot be is refused.
inline bool checked_supply(const station& s)
{
    if (!s.supply) return false;
    static_cast<void>(output_line_of(*s.supply, {s.job.process, s.job.current}));
    static_cast<void>(standing_of(s.supply->no_load, s.supply->hazard));
    if (s.supply->sensing) static_cast<void>(sensed_parts_of(s));
    return true;
}

}  // namespace detail

/// The place of the arc in the path, from 0.
/// Checks the whole station on the way: a current above zero, exactly one arc, something on both sides of it, no two
/// parts, ways or feeds under one name, ways and feeds between two known points, ways with parts.
/// @throws bad_station_error, out_of_range_error, not_finite_error
[[nodiscard]] inline std::size_t checked_arc_index(const station& s)
{
    require_positive(s.job.current, "welding current");
    require_not_negative(s.where.wind, "wind");
    if (s.allowed_drop) require_positive(*s.allowed_drop, "allowed drop");
    static_cast<void>(detail::checked_supply(s));
    std::size_t arcs = 0, where = 0;
    for (std::size_t i = 0; i < s.path.size(); ++i)
        if (std::holds_alternative<arc>(s.path[i])) {
            ++arcs;
            where = i;
        }
    detail::check_ways(s);
    if (arcs != 1)
        throw bad_station_error("path", "with " + std::to_string(arcs) + " arcs",
                                "exactly one arc between the parts of both sides");
    if (where == 0 || where + 1 == s.path.size())
        throw bad_station_error("path", "with the arc at its end", "parts on both sides of the arc");
    return where;
}

}  // namespace weldloop
