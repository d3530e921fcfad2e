#pragma once
/// @file
/// A magnetic work connection.

#include <string>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/magnet.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// How a magnet presses its pad.
inline constexpr source magnet_pad_judgement{"magnetic work connection: the current crosses a pad of its own, which "
                                             "takes a third of the pull on two points; the "
                                             "steel of the magnet carries the rest and no current",
                                             {},
                                             {},
                                             source_kind::judgement};

/// A magnet that holds itself to the work and carries current through a pad of its own.
struct work_magnet {
    std::string name = {};                                  ///< empty: "work magnet"
    weldloop::force rated = in_si<weldloop::force>(300.0);  ///< [N] pull on clean thick steel at 20 degC, 0 or above
    magnet_grade grade = ferrite_magnet;                    ///< material of the magnet
    temperature magnet = reference_temperature;             ///< of the magnet
    metal pad = brass;                                      ///< metal of the pad
    fraction pad_share = 1.0 / 3.0;                         ///< share of the pull that presses the pad
    int points = 2;                                         ///< contact points of the pad, 1 to 1000
    metal work = mild_steel;                                ///< what it sits on
    surface_state surface = surface_state::clean;           ///< of the work under the pad
    length gap = {};                                        ///< [m] scale, paint or dirt under the magnet, 0 or above
};

}  // namespace weldloop
