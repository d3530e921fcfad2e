#pragma once
/// @file
/// How a clamp's grip changes with time: force -> resistance -> heat -> force, over hours of shift.

#include <cstddef>
#include <optional>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/life/clamp_use.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_service.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// The grip of a clamp over hours of shift, with the lead it carries.
///
/// In every slow state the force left gives the contact's resistance, the resistance gives drop and heat along the
/// joint's characteristic, the heat network of the clamp with work and lead gives the temperatures of jaws, spring and
/// handles in the mean over the duty period, and spring, film, wear and knocks change as they do at those temperatures,
/// the swing within the period included. Steps follow an error estimate of the logarithm of the force. Three marches
/// give the band: small resistance with the milder relaxation, typical with the middle, large resistance with the
/// harsher one; the outer ones are opened by up to a factor 3 in the exponent of the loss as a spring gets hotter
/// than 100 degC or is stressed outside 0.6 to 0.8 of its strength (relaxation_widening, for the one temperature that
/// would have led to the same state in the same hours). Grip lost before counts by lost_before_judgement.
///
/// The end is a clamp that settles or goes on declining to the horizon, or one without a steady state: a spring beyond
/// its tempering limit, less than a tenth of the grip, no metal left in its spots. Screw and bolted clamps have no
/// spring; they bed in and settle by bolt_force_left(), at the temperature of their jaws.
/// @param joint   the clamp on its work @param lead that it carries @param work current and duty
/// @param where   air around @param horizon hours of shift to look ahead [s], above 0 to 30 years
/// @param service shifts, rests, openings, knocks, cleaning; left out: one long shift, never touched
/// @throws not_finite_error, out_of_range_error; bad_station_error if the joint is open from the start
/// @par Accuracy
/// against an ODE suite with the heat of all places followed in time: force within 0.1 %, temperature within 0.1 K;
/// what the laws themselves are worth stands with them
[[nodiscard]] grip_forecast grip_over_time(const work_connection& joint, const cable& lead, const load& work,
                                           const surroundings& where, duration horizon,
                                           const grip_service& service = {});

/// The same for a clamp in use. @param use the clamp on its work, its lead, load, air, horizon and service
/// @throws as above
[[nodiscard]] grip_forecast grip_over_time(const clamp_use& use);

/// The grip of a work connection among its neighbours in a station that has a settled state: what they take from it is
/// read off the solved loop.
/// @param s the station @param index of the work connection in its path
/// @param horizon [s], as in grip_over_time() @param service as for grip_over_time()
/// @return empty if the part is no work connection, or the loop has no settled state
/// @throws bad_station_error, out_of_range_error, not_finite_error
[[nodiscard]] std::optional<grip_forecast> grip_in_station(const station& s, std::size_t index,
                                                           duration horizon = usual_forecast,
                                                           const grip_service& service = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/grip_body.hpp>
#endif
