#pragma once
/// @file
/// A rotary or sliding work connection.

#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/brush.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Brushes or copper fingers on a turning ring, all side by side.
struct rotary_ground {
    static constexpr std::string_view kind = "rotary ground";  ///< its word in files and reports

    std::string name = {};  ///< empty: "rotary ground 3" by its place in the path
    std::optional<brush_kind> brush = brush_kind::metal_graphite;  ///< none: fingers of metal that slide on the ring
    int count = 4;                                                 ///< brushes or fingers, 1 to 1000
    area face = in_si<area>(4e-4);                                 ///< [m2] of one brush on the ring, above 0
    weldloop::force force =
        in_si<weldloop::force>(10.0);              ///< [N] 0 or above, of one brush or finger; 0: it does not touch
    metal finger = annealed_copper;                ///< metal of a finger
    metal ring = brass;                            ///< metal of the ring
    surface_state surface = surface_state::clean;  ///< of ring and fingers
};

}  // namespace weldloop
