#pragma once
/// @file
/// Two cable ends joined in one sleeve.

#include <string>
#include <string_view>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/fraction.hpp>

namespace weldloop {

/// A crimped sleeve with a cable end in either side.
struct cable_splice {
    static constexpr std::string_view kind = "splice";  ///< its word in files and reports

    std::string name = {};                   ///< empty: "splice 3" by its place in the path
    conductor_size first = square_mm(50);    ///< of the one cable
    conductor_size second = square_mm(50);   ///< of the other
    conductor_size stamped = square_mm(50);  ///< size the sleeve is made for
    strand_loss missing_strands = 0.0;       ///< strands outside the sleeve, of the worse end
};

}  // namespace weldloop
