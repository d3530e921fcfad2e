#pragma once
/// @file
/// A welding station: the job, its surroundings, the power source, and the path the current takes.

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/plate.hpp>
#include <weldloop/part/supply.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/tig_torch.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// What is welded, how hard and how long.
struct job {
    weldloop::process process = process::smaw;   ///< sets the conventional load line
    weldloop::current current;                   ///< [A] while the arc burns, above 0
    duty_cycle duty = duty_cycle::continuous();  ///< time under current
};

/// Anything the current can pass through.
using path_part =
    std::variant<cable, lug, contact, plate, work_connection, arc, wire_gun, tig_torch, electrode_holder, coupling>;

/// A station. The path runs from one supply terminal through the arc to the other; its order is the current's.
struct station {
    std::string name = {};                        ///< as printed
    weldloop::job job;                            ///< what is welded
    surroundings where = {};                      ///< around every lead and joint
    std::vector<path_part> path = {};             ///< parts in the order of the current
    std::optional<weldloop::supply> supply = {};  ///< if it is described
    std::optional<voltage> allowed_drop = {};     ///< [V] the loop may take, if somebody set a limit
};

/// The word for the kind of a part, as printed and as used for parts without a name: "cable", "work connection".
[[nodiscard]] inline std::string_view kind_of(const path_part& part)
{
    struct namer {
        std::string_view operator()(const cable&) const { return "cable"; }
        std::string_view operator()(const lug&) const { return "lug"; }
        std::string_view operator()(const contact&) const { return "contact"; }
        std::string_view operator()(const plate&) const { return "plate"; }
        std::string_view operator()(const work_connection&) const { return "work connection"; }
        std::string_view operator()(const arc&) const { return "arc"; }
        std::string_view operator()(const wire_gun&) const { return "wire gun"; }
        std::string_view operator()(const tig_torch&) const { return "tig torch"; }
        std::string_view operator()(const electrode_holder&) const { return "electrode holder"; }
        std::string_view operator()(const coupling&) const { return "coupling"; }
    };
    return std::visit(namer{}, part);
}

/// The name of the part at a place of the path; a part without one is called by kind and place, "cable 2".
/// @param path the path @param index from 0, within it. @throws out_of_range_error
[[nodiscard]] inline std::string name_of(const std::vector<path_part>& path, std::size_t index)
{
    if (index >= path.size())
        throw out_of_range_error("path index", std::to_string(index), "below " + std::to_string(path.size()));
    const std::string& given = std::visit([](const auto& p) -> const std::string& { return p.name; }, path[index]);
    return given.empty() ? std::string(kind_of(path[index])) + " " + std::to_string(index + 1) : given;
}

/// The place of the part with a name, from 0. @throws bad_station_error naming the parts there are
[[nodiscard]] inline std::size_t index_of(const std::vector<path_part>& path, std::string_view name)
{
    std::string all;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::string here = name_of(path, i);
        if (here == name) return i;
        all.append(all.empty() ? "" : ", ").append(here);
    }
    throw bad_station_error("part name", "\"" + std::string(name) + "\"", "one of: " + all);
}

/// The place of the arc, from 0.
/// Checks the whole station on the way: a current above zero, exactly one arc, something on both sides of it, and no
/// two parts under one name.
/// @throws bad_station_error, out_of_range_error, not_finite_error
[[nodiscard]] inline std::size_t checked_arc_index(const station& s)
{
    require_positive(s.job.current, "welding current");
    require_not_negative(s.where.wind, "wind");
    if (s.allowed_drop) require_positive(*s.allowed_drop, "allowed drop");
    if (s.supply) {
        const bool holds_voltage = s.supply->kind == supply_kind::constant_voltage;
        require_positive(holds_voltage ? s.supply->setting : s.supply->highest_output,
                         holds_voltage ? "supply setting" : "supply highest output");
    }

    std::size_t arcs = 0, where = 0;
    std::set<std::string> names;
    for (std::size_t i = 0; i < s.path.size(); ++i) {
        if (std::holds_alternative<arc>(s.path[i])) {
            ++arcs;
            where = i;
        }
        if (const std::string name = name_of(s.path, i); !names.insert(name).second)
            throw bad_station_error("part name", "\"" + name + "\" twice", "one name for each part");
    }
    if (arcs != 1)
        throw bad_station_error("path", "with " + std::to_string(arcs) + " arcs",
                                "exactly one arc between the parts of both sides");
    if (where == 0 || where + 1 == s.path.size())
        throw bad_station_error("path", "with the arc at its end", "parts on both sides of the arc");
    return where;
}

}  // namespace weldloop
