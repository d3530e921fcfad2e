#pragma once
/// @file
/// The arc, as a place in the path.

#include <string>

namespace weldloop {

/// The arc. It has no data of its own: what voltage is left for it follows from the loop and the supply.
struct arc {
    std::string name = "arc";  ///< as printed
};

}  // namespace weldloop
