#pragma once
/// @file
/// A magnetic work connection.

#include <string>
#include <string_view>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
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
    static constexpr std::string_view kind = "magnet";  ///< its word in files and reports

    std::string name = {};                                  ///< empty: "magnet 3" by its place in the path
    weldloop::force rated = in_si<weldloop::force>(300.0);  ///< [N] pull on clean thick steel at 20 degC, 0 or above
    magnet_grade grade = ferrite_magnet;                    ///< material of the magnet
    temperature magnet = reference_temperature;             ///< of the magnet; in a station found by the network
    metal pad = brass;                                      ///< metal of the pad
    fraction pad_share = 1.0 / 3.0;                         ///< share of the pull that presses the pad
    int points = 2;                                         ///< contact points of the pad, 1 to 1000
    metal work = mild_steel;                                ///< what it sits on
    surface_state surface = surface_state::clean;           ///< of the work under the pad
    length gap = {};                                        ///< [m] scale, paint or dirt under the magnet, 0 or above
    conductor_size cable = square_mm(50);                   ///< of its cable, 16 to 185 mm2
    length work_thickness = 10_mm;                          ///< [m] of what it sits on, above 0; carries heat away
    bool lug_beside = false;  ///< its cable ends in a part of its own, which has the crimp; see part_in_path()
};

}  // namespace weldloop
