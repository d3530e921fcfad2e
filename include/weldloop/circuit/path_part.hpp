#pragma once
/// @file
/// Anything that can stand in the current's way, and how it is called.

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/cable_splice.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/junction.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/measured_part.hpp>
#include <weldloop/part/plate.hpp>
#include <weldloop/part/rotary_ground.hpp>
#include <weldloop/part/set_screw.hpp>
#include <weldloop/part/spring_pad.hpp>
#include <weldloop/part/strap.hpp>
#include <weldloop/part/stud_terminal.hpp>
#include <weldloop/part/tig_torch.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_connection.hpp>
#include <weldloop/part/work_magnet.hpp>
#include <weldloop/part/workpiece.hpp>

namespace weldloop {

/// Anything the current can pass through.
using path_part = std::variant<cable, lug, contact, plate, work_connection, arc, wire_gun, tig_torch, electrode_holder,
                               coupling, junction, workpiece, measured_part, strap, stud_terminal, set_screw,
                               cable_splice, rotary_ground, work_magnet, spring_pad>;

namespace detail {
struct kind_namer {
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
    std::string_view operator()(const junction&) const { return "junction"; }
    std::string_view operator()(const workpiece&) const { return "workpiece"; }
    template <class Part>
    std::string_view operator()(const Part&) const requires requires
    {
        Part::kind;
    }
    {
        return Part::kind;
    }
    std::string_view operator()(const measured_part& m) const
    {
        return m.word.empty() ? std::string_view("measured part") : std::string_view(m.word);
    }
};
}  // namespace detail

/// The word for the kind of a part, as printed and as used for parts without a name: "cable", "work connection"; of a
/// measured part its own. A kind says it by its member `kind`, or has a line here.
[[nodiscard]] inline std::string_view kind_of(const path_part& part)
{
    return std::visit(detail::kind_namer{}, part);
}
[[nodiscard]] std::string_view kind_of(const path_part&& part) = delete;  ///< its word would die with the part

/// The name of a part; without one it is called by kind and place, "cable 2".
/// @param part the part @param place from 0
[[nodiscard]] inline std::string name_of(const path_part& part, std::size_t place)
{
    const std::string& given = std::visit([](const auto& p) -> const std::string& { return p.name; }, part);
    return given.empty() ? std::string(kind_of(part)) + " " + std::to_string(place + 1) : given;
}

/// The name of the part at a place of the path; a part without one is called by kind and place, "cable 2".
/// @param path the path @param index from 0, within it. @throws out_of_range_error
[[nodiscard]] inline std::string name_of(const std::vector<path_part>& path, std::size_t index)
{
    if (index >= path.size())
        throw out_of_range_error("path index", std::to_string(index), "below " + std::to_string(path.size()));
    return name_of(path[index], index);
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

/// Whether ways may start or end at a part.
[[nodiscard]] inline bool is_hub(const path_part& part)
{
    return std::holds_alternative<junction>(part) || std::holds_alternative<workpiece>(part);
}

/// Whether a part ends a cable and is bolted to what stands beside it: a clamp or magnet there leaves its cable
/// connection to it, see part_in_path().
[[nodiscard]] inline bool ends_a_cable(const path_part& part)
{
    return std::holds_alternative<lug>(part) || std::holds_alternative<set_screw>(part);
}

/// Whether a part holds on to the work at one side: no heat passes there to a neighbour in the path.
[[nodiscard]] inline bool holds_the_work(const path_part& part)
{
    return std::holds_alternative<work_connection>(part) || std::holds_alternative<work_magnet>(part);
}

}  // namespace weldloop
