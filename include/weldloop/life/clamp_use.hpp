#pragma once
/// @file
/// A clamp in use: what is asked about when its grip over the hours is asked for.

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/life/grip_service.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// Hours of shift an assessment looks ahead, a year of single shifts.
inline constexpr duration usual_forecast = in_si<duration>(2000.0 * 3600.0);

/// Longest forecast, thirty years of hours: as long as the law of springs was fitted to.
inline constexpr duration longest_forecast = in_si<duration>(detail::fitted_seconds_high);

/// A clamp on its work with all that its grip depends on.
struct clamp_use {
    work_connection joint;              ///< the clamp on its work, as it stands now
    cable lead;                         ///< that it carries
    weldloop::load load;                ///< current [A], above 0, and duty
    surroundings where = {};            ///< air around
    duration horizon = usual_forecast;  ///< hours of shift to look ahead [s], above 0 to 30 years
    grip_service service = {};          ///< shifts, rests, openings, knocks, cleaning
};

}  // namespace weldloop
