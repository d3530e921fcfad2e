#pragma once
/// @file
/// How a clamp's grip changes with time: the result types of grip_over_time().

#include <optional>
#include <vector>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// A clamp at one time of its life.
struct grip_point {
    duration at = {};                      ///< hours of shift since it was put on [s]
    weldloop::force force = {};            ///< [N] on the jaws, warm
    weldloop::resistance resistance = {};  ///< [ohm] clamp and contact at the job's current; 0 if open
    temperature peak_temperature = {};     ///< of the clamp's body at the end of the on-time
};

/// The forecast. Times to a loss are given with their band, never alone.
struct grip_forecast {
    std::vector<grip_point> points = {};      ///< from new to the end of the forecast, typical case
    fraction grip_left = 1.0;                 ///< force at the end over force when new, typical, cold
    fraction grip_left_low = 1.0;             ///< the same for the pessimistic case
    std::optional<duration> inspect_by = {};  ///< early end of the band in which a quarter of the grip is gone
    std::optional<band<duration>> quarter_lost =
        {};                         ///< when a quarter of the grip is gone; ends beyond the forecast are its end
    duration horizon = {};          ///< how far the forecast looks [s]; a band's end there means "not before"
    bool runs_away = false;         ///< heat and loss of grip feed each other without settling
    bool spring_destroyed = false;  ///< hotter than the tempering range of its wire
    weldloop::basis basis = {};     ///< sources and left ranges
};

}  // namespace weldloop
