#pragma once
/// @file
/// Ways beside the path: a second clamp, a bonding strap, a hoist chain; and another supply on the same work.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/path_part.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// What a way is there for.
enum class way_kind {
    intended,  ///< it shall carry welding current
    stray,     ///< nobody means it to: a chain, a bearing, a pipe, a protective conductor. A fault, never an allowance
};

/// The word for a kind of way, as printed and in station files.
[[nodiscard]] constexpr std::string_view to_text(way_kind k)
{
    return k == way_kind::intended ? "intended" : "stray";
}

/// All of them.
inline constexpr std::array all_way_kinds{way_kind::intended, way_kind::stray};

/// A way between two named points of the circuit, junctions or workpieces of the path or of another way.
struct way {
    std::string name = {};               ///< empty: "way 2" by its place
    std::string from = {};               ///< name of the junction or workpiece where it starts
    std::string to = {};                 ///< where it ends
    way_kind kind = way_kind::intended;  ///< what it is there for
    std::vector<path_part> path = {};    ///< its parts, from `from` to `to`; no arc, gun, torch or holder
};

/// Another supply whose current runs in parts of this circuit: a second welder on the same work.
struct feed {
    std::string name = {};           ///< empty: "feed 1" by its place
    std::string from = {};           ///< where its current enters this circuit: the workpiece under its arc, say
    std::string to = {};             ///< where it leaves: the stud its own return goes from, say
    weldloop::current current = {};  ///< [A] while its arc burns, above 0
    duty_cycle duty = duty_cycle::continuous();  ///< counts as burning while this one's arc burns
    std::optional<voltage> no_load = {};         ///< [V] its no-load voltage, above 0
};

}  // namespace weldloop
