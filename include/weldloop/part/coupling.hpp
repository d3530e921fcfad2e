#pragma once
/// @file
/// A cable coupling.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Force between plug and socket by size.
inline constexpr source coupling_judgement{"twist-lock coupling: brass plug drawn against its socket with 300 N up to "
                                           "25 mm2, 500 N up to 50 mm2, 800 N above; a crimp on either cable",
                                           "2026",
                                           {},
                                           source_kind::judgement};

/// Force between plug and socket of a coupling turned home [N]. @param size of its cable @see coupling_judgement
[[nodiscard]] constexpr force usual_coupling_force(const conductor_size& size)
{
    return size <= square_mm(25) ? 300_N : size <= square_mm(50) ? 500_N : 800_N;
}

/// A twist-lock coupling: a plug and a socket of brass, each crimped to a cable.
struct coupling {
    std::string name = {};                ///< empty: "coupling 3" by its place in the path
    conductor_size size = square_mm(50);  ///< of the cables
    weldloop::force force = usual_coupling_force(
        square_mm(50));  ///< [N] 0 or above, of the plug in the socket; a plug not turned home has little
    surface_state surface = surface_state::clean;  ///< of plug and socket

    /// A coupling for 50 mm2 without a name.
    coupling() = default;
    /// A clean coupling turned home. @param n name, may be empty @param s size of the cables
    coupling(std::string n, conductor_size s) : name(std::move(n)), size(s), force(usual_coupling_force(s)) {}
};

}  // namespace weldloop
