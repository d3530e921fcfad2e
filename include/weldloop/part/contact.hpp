#pragma once
/// @file
/// A bare contact: two bodies pressed together.

#include <string>

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Two metals, a force, and what lies between them.
struct contact {
    metal_pair metals;                                 ///< the two bodies
    weldloop::force force;                             ///< [N] pressing them together, 0 or above
    surface_state surface = surface_state::clean;      ///< of the worse side
    std::string name = {};                             ///< empty: "contact 3" by its place in the path
    contact_shape shape = contact_shape::toothed_jaw;  ///< sets the exponent of the force law
    int points = 1;                                    ///< separate contacts that share the current, 1 to 1000
};

}  // namespace weldloop
