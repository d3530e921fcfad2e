#pragma once
/// @file
/// A stud with one or more lugs under its nut.

#include <string>
#include <string_view>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// A stud terminal: lug palms pressed on its seat by a nut, of which the farthest carries the current.
struct stud_terminal {
    static constexpr std::string_view kind = "stud";  ///< its word in files and reports

    std::string name = {};                    ///< empty: "stud 3" by its place in the path
    length diameter = 10_mm;                  ///< [m] nominal thread, above 0
    torque tightening = in_si<torque>(20.0);  ///< [N m] on the nut, 0 or above
    thread_state thread = thread_state::dry;  ///< of the stud
    metal seat = brass;                       ///< what the first palm lies on
    metal palm = annealed_copper;             ///< of the lugs
    int lugs = 1;                             ///< under the nut, 1 to 10; the last one is the farthest from the seat
    surface_state surface = surface_state::clean;  ///< of the worst face
    bool lug_beside = false;  ///< the last lug is a part of its own, which has the face of its palm; see part_in_path()
};

}  // namespace weldloop
