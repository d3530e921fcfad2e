#pragma once
/// @file
/// The piece that is welded, as a body that carries current and heat.

#include <optional>
#include <string>

#include <weldloop/core/quantities.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// What is welded. Clamps and contacts that sit on it give it their heat and take its warmth; current spreads in it
/// from the arc and gathers under them. Ways start and end at its name.
struct workpiece {
    weldloop::metal metal;                  ///< what it is made of
    weldloop::mass mass;                    ///< [kg] above 0
    length thickness;                       ///< [m] of its walls where current and heat run, above 0
    std::string name = {};                  ///< by which ways call it; empty: "workpiece 4" by its place
    std::optional<area> cooling_area = {};  ///< [m2] above 0; left out: both faces of a plate of its mass and thickness
    std::optional<duration> stays = {};     ///< [s] above 0: how long a piece stays before a cold one takes its place
    std::optional<double> pieces_per_hour =
        {};                                 ///< [1/h] 0.001 to 3600; no piece stays longer than they follow each other
    std::optional<length> from_weld = {};   ///< [m] above 0, from the weld to what grips the piece; left out: as hot
                                            ///< there as the piece is in the mean
    std::optional<length> bar_length = {};  ///< [m] above 0, of a tube or bar along which its heat runs; left out: it
                                            ///< runs as in a round plate
};

}  // namespace weldloop
