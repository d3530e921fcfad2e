#pragma once
/// @file
/// When a clamp has lost a share of its grip, or all of it, found directly: the time is an integral over the steady
/// states that the spring passes through, and needs no march.
/// Source: the relaxation of the clamp's spring (relaxation_choice.hpp) as an integral over the states it passes,
/// derived.

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/life/clamp_place.hpp>
#include <weldloop/life/grip_forecast.hpp>

namespace weldloop {

/// Hours of shift until a clamp has lost a share of its grip [s], found directly from the steady states that its spring
/// passes through: t = integral of dP/(dP/dt), P the Larson-Miller parameter, the heat steady at each. Film, knocks and
/// service are not in it; grip_over_time() marches with them.
///
/// The band is that of the forecast: small resistance with the milder relaxation, typical, large with the harsher. An
/// end beyond the longest forecast is that. Its low end is the inspection interval with its margin.
/// @param place the clamp, its lead, duty and air @param through current [A], above 0
/// @param lost share of the grip, above 0 to 0.9
/// @throws not_finite_error, out_of_range_error; bad_station_error if the joint is open from the start
[[nodiscard]] band<duration> hours_to_loss(const clamp_place& place, current through, fraction lost = inspection_loss);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/grip_time_body.hpp>
#endif
