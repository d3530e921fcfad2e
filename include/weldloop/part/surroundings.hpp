#pragma once
/// @file
/// What lies around a lead.

#include <optional>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/lay.hpp>

namespace weldloop {

/// Air, wind and the way the leads lie. Indoors without draught, wind is zero and the air rises by its own warmth.
struct surroundings {
    temperature air = temperature::celsius(25.0);  ///< air and walls around
    speed wind = in_si<speed>(0.0);                ///< across the lead [m/s], 0 or above, 0 for still air
    weldloop::lay lay = weldloop::lay::alone;      ///< arrangement of the leads
    std::optional<int> coil_turns = {};            ///< of coiled leads, up to 200; none if not known: many are assumed
    std::optional<int> bundled_leads = {};         ///< loaded leads in a bundle, up to 200; none if not known: six
    length altitude = in_si<length>(0.0);          ///< above sea level [m], up to 11000
    heat_flux sun = in_si<heat_flux>(0.0);         ///< sunlight on the lead [W/m2], 0 or above, 0 indoors
};

}  // namespace weldloop
