#pragma once
/// @file
/// Anything that can stand in the current's way, and how it is called.

#include <cstddef>
#include <string>
#include <string_view>
#include <type_traits>
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

/// The kinds of part, in the order of path_part.
enum class part_kind : std::size_t {
    cable,             ///< weldloop::cable
    lug,               ///< weldloop::lug
    contact,           ///< weldloop::contact
    plate,             ///< weldloop::plate
    work_connection,   ///< weldloop::work_connection
    arc,               ///< weldloop::arc
    wire_gun,          ///< weldloop::wire_gun
    tig_torch,         ///< weldloop::tig_torch
    electrode_holder,  ///< weldloop::electrode_holder
    coupling,          ///< weldloop::coupling
    junction,          ///< weldloop::junction
    workpiece,         ///< weldloop::workpiece
    measured_part,     ///< weldloop::measured_part
    strap,             ///< weldloop::strap
    stud_terminal,     ///< weldloop::stud_terminal
    set_screw,         ///< weldloop::set_screw
    cable_splice,      ///< weldloop::cable_splice
    rotary_ground,     ///< weldloop::rotary_ground
    work_magnet,       ///< weldloop::work_magnet
    spring_pad,        ///< weldloop::spring_pad
};

/// The word for a kind of part, as station files and reports have it: "cable", "work clamp". A part with a sheet has it
/// in its member `kind`.
[[nodiscard]] constexpr std::string_view to_text(part_kind kind)
{
    switch (kind) {
    case part_kind::cable: return "cable";
    case part_kind::lug: return "lug";
    case part_kind::contact: return "contact";
    case part_kind::plate: return "plate";
    case part_kind::work_connection: return "work clamp";
    case part_kind::arc: return "arc";
    case part_kind::wire_gun: return "gun";
    case part_kind::tig_torch: return "tig torch";
    case part_kind::electrode_holder: return "holder";
    case part_kind::coupling: return "coupling";
    case part_kind::junction: return "junction";
    case part_kind::workpiece: return "workpiece";
    case part_kind::measured_part: return "measured";
    case part_kind::strap: return strap::kind;
    case part_kind::stud_terminal: return stud_terminal::kind;
    case part_kind::set_screw: return set_screw::kind;
    case part_kind::cable_splice: return cable_splice::kind;
    case part_kind::rotary_ground: return rotary_ground::kind;
    case part_kind::work_magnet: return work_magnet::kind;
    case part_kind::spring_pad: return spring_pad::kind;
    }
    return "part";
}

namespace detail {
template <class Part, class... Parts>
[[nodiscard]] constexpr part_kind kind_among(const std::variant<Parts...>*)
{
    std::size_t at = 0;
    (void)((std::is_same_v<Part, Parts> ? true : (++at, false)) || ...);
    return static_cast<part_kind>(at);
}
}  // namespace detail

/// The kind that a type of part is.
template <class Part>
inline constexpr part_kind kind_of_part = detail::kind_among<Part>(static_cast<const path_part*>(nullptr));

static_assert(kind_of_part<spring_pad> == part_kind::spring_pad &&
                  std::variant_size_v<path_part> == static_cast<std::size_t>(part_kind::spring_pad) + 1,
              "a kind of part without an enumerator: part_kind has the order of path_part");

/// The kind of a part.
[[nodiscard]] constexpr part_kind kind_of(const path_part& part)
{
    return static_cast<part_kind>(part.index());
}

/// The word for a part, as printed and as used for parts without a name: that of its kind; of a measured part its own.
[[nodiscard]] inline std::string_view word_of(const path_part& part)
{
    if (const auto* const measured = std::get_if<measured_part>(&part))
        return measured->word.empty() ? std::string_view("measured part") : std::string_view(measured->word);
    return to_text(kind_of(part));
}
[[nodiscard]] std::string_view word_of(const path_part&& part) = delete;  ///< its word would die with the part

/// The name of a part; without one it is called by kind and place, "cable 2".
/// @param part the part @param place from 0
[[nodiscard]] inline std::string name_of(const path_part& part, std::size_t place)
{
    const std::string& given = std::visit([](const auto& p) -> const std::string& { return p.name; }, part);
    return given.empty() ? std::string(word_of(part)) + " " + std::to_string(place + 1) : given;
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
