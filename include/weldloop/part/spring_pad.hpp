#pragma once
/// @file
/// A contact pad that a spring presses on the work or on a fixture.

#include <string>
#include <string_view>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/spring_wire.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// A round pad with a spring behind it, as in a fixture that closes on the part.
struct spring_pad {
    static constexpr std::string_view kind = "spring pad";  ///< its word in files and reports

    std::string name = {};        ///< empty: "spring pad 3" by its place in the path
    metal pad = annealed_copper;  ///< of the pad
    metal against = mild_steel;   ///< what it is pressed on
    force pressing = 200_N;       ///< [N] 0 or above, by the spring as it stands now; 0: it does not touch
    length across = 40_mm;        ///< [m] of the pad, above 0
    length thickness = 15_mm;     ///< [m] of the pad, above 0
    int points = 3;               ///< on which it bears, 1 to 1000
    surface_state surface = surface_state::clean;  ///< of the worse face
    spring_wire wire = hard_drawn_wire;            ///< of the spring behind it
};

}  // namespace weldloop
