#pragma once
/// @file
/// The arc, as a place in the path.

#include <optional>
#include <string>

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/arc_line.hpp>

namespace weldloop {

/// The arc. What voltage is left for it follows from the loop and the supply; what is known of it beside makes the
/// working point of supply, loop and arc that of this arc instead of a usual one.
struct arc {
    std::string name = "arc";                     ///< as printed
    std::optional<weldloop::length> length = {};  ///< [m] above 0, as it is held or aimed at; empty: usual_arc_length()
    std::optional<arc_line> line = {};            ///< its voltage by length and current; empty: usual_arc_line()
    std::optional<speed> wire_feed = {};          ///< [m/s] above 0, at which a wire is fed, if it is known
};

}  // namespace weldloop
