#pragma once
/// @file
/// A clamp in its place: what its largest current, its thresholds and its map are asked of.

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// A clamp on its work with its lead, whatever its current.
struct clamp_place {
    work_connection joint;    ///< the clamp on its work, as it is when new
    cable lead;               ///< that it carries
    duty_cycle duty;          ///< of the load; where a duty is sought, its period
    surroundings where = {};  ///< air around
};

}  // namespace weldloop
