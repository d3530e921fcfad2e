#pragma once
/// @file
/// A plate, table or bar that carries the current from one end to the other.

#include <string>

#include <weldloop/core/quantities.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// A flat body in the current's way. Current enters over the whole width of one end and leaves at the other; the
/// crowding near a small clamp belongs to the contact there.
struct plate {
    weldloop::metal metal;       ///< what it is made of
    weldloop::length length;     ///< [m] along the current, above 0
    weldloop::length width;      ///< [m] across, above 0
    weldloop::length thickness;  ///< [m], above 0
    std::string name = {};       ///< empty: "plate 5" by its place in the path
};

}  // namespace weldloop
