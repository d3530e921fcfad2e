#pragma once
/// @file
/// The arc, as a place in the path.

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/arc_line.hpp>

namespace weldloop {

/// On which side of the weld the current leaves the work.
enum class return_side {
    not_stated,  ///< nothing is said of it
    one_end,     ///< by a clamp beyond one end of the weld
    both_ends,   ///< by clamps beyond both ends, or all round it
};

/// Every side, in the order of the enumeration.
inline constexpr std::array all_return_sides{return_side::not_stated, return_side::one_end, return_side::both_ends};

/// The word for a side.
[[nodiscard]] constexpr std::string_view to_text(return_side s)
{
    switch (s) {
    case return_side::not_stated: return "not stated";
    case return_side::one_end: return "one end";
    case return_side::both_ends: return "both ends";
    }
    return "not stated";
}

/// The arc. What voltage is left for it follows from the loop and the supply; what is known of it beside makes the
/// working point of supply, loop and arc that of this arc instead of a usual one.
struct arc {
    std::string name = "arc";                     ///< as printed
    std::optional<weldloop::length> length = {};  ///< [m] above 0, as it is held or aimed at; empty: usual_arc_length()
    std::optional<arc_line> line = {};            ///< its voltage by length and current; empty: usual_arc_line()
    std::optional<speed> wire_feed = {};          ///< [m/s] above 0, at which a wire is fed, if it is known
    std::optional<weldloop::length> to_return = {};    ///< [m] above 0, through the work to the nearest work clamp
    return_side returns_at = return_side::not_stated;  ///< where that is
};

}  // namespace weldloop
