#pragma once
/// @file
/// A work clamp on the work.

#include <optional>
#include <string>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/work_clamp.hpp>

namespace weldloop {

/// A work clamp, what it grips, and what lies between.
struct work_connection {
    work_clamp clamp;                                     ///< see spring_clamp(), screw_clamp(), bolted_work_lug()
    metal onto;                                           ///< what is gripped
    surface_state surface = surface_state::clean;         ///< of the place gripped
    std::string name = {};                                ///< empty: "work clamp 7" by its place in the path
    length work_thickness = 10_mm;                        ///< [m] of the part gripped, above 0; carries heat away
    fraction grip_lost = 0.0;                             ///< share of the force when new that has gone
    std::optional<temperature> preheat = {};              ///< of the work at the clamp, if it is kept hot
    std::optional<surface_state> cable_jaw_surface = {};  ///< of the place under the jaw on the cable's side, where
                                                          ///< that is another; for clamps that have `inside`
};

}  // namespace weldloop
