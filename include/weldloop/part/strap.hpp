#pragma once
/// @file
/// A strap, braid or bar between two bolted faces.

#include <string>
#include <string_view>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Length of the wires of a braid.
inline constexpr source braid_lay_judgement{
    "wires of a flat braid are a tenth longer than the braid", {}, {}, source_kind::judgement};
/// Ratio of wire length to braid length; see braid_lay_judgement.
inline constexpr double braid_lay = 1.10;

/// How a strap is made.
enum class strap_make {
    solid,  ///< a bar, or a stack of foils
    braid,  ///< a flat braid with pressed ends
};

/// The word for a make, as written in station files.
[[nodiscard]] constexpr std::string_view to_text(strap_make m)
{
    return m == strap_make::solid ? "solid" : "braid";
}

/// A strap bolted at both ends.
struct strap {
    static constexpr std::string_view kind = "strap";  ///< its word in files and reports

    std::string name = {};                            ///< empty: "strap 3" by its place in the path
    weldloop::length length = 200_mm;                 ///< [m] between the bolted ends, 0 or above
    area section = 50_mm2;                            ///< [m2] of metal, above 0
    strap_make make = strap_make::braid;              ///< how it is made
    weldloop::metal metal = annealed_copper;          ///< what it is made of
    weldloop::metal onto = brass;                     ///< what both ends are bolted to
    int bolts = 1;                                    ///< at each end, 1 to 100
    weldloop::length bolt_diameter = 10_mm;           ///< [m] nominal thread, above 0
    torque tightening = in_si<torque>(40.0);          ///< [N m] on each bolt, 0 or above
    thread_state thread = thread_state::zinc_plated;  ///< of the bolts
    surface_state surface = surface_state::clean;     ///< of the bolted faces
};

}  // namespace weldloop
