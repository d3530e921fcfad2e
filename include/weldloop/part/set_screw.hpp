#pragma once
/// @file
/// A cable end under a set-screw.

#include <string>
#include <string_view>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/law/bolt.hpp>

namespace weldloop {

/// A cable end in a brass terminal, pressed by a screw on its strands or on a ferrule over them.
struct set_screw {
    static constexpr std::string_view kind = "set screw";  ///< its word in files and reports

    std::string name = {};                    ///< empty: "set screw 3" by its place in the path
    conductor_size size = square_mm(35);      ///< of the cable
    length screw_diameter = 8_mm;             ///< [m] nominal thread, above 0
    torque tightening = in_si<torque>(10.0);  ///< [N m], 0 or above; a loose screw has little
    thread_state thread = thread_state::dry;  ///< of the screw
    bool ferrule = true;                      ///< a copper ferrule round the strands
    strand_loss missing_strands = 0.0;        ///< strands that did not get under the screw
};

}  // namespace weldloop
