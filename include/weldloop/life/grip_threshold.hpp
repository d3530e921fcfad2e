#pragma once
/// @file
/// The largest current and duty a clamp bears: the end of its steady states, and what it holds for a number of hours.
/// Found on the steady states, not by marching.

#include <span>
#include <vector>

#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/life/clamp_place.hpp>
#include <weldloop/life/grip_map_result.hpp>

namespace weldloop {

/// Highest current any threshold looks at [A].
inline constexpr current highest_clamp_current = in_si<current>(5000.0);

/// Smallest current any threshold looks at [A].
inline constexpr current lowest_clamp_current = in_si<current>(1.0);

/// Which thermal moment of a clamp's life a threshold is asked for.
struct grip_moment {
    fraction force_left = 1.0;  ///< cold force over that when new, above 0
    double contact_factor =
        1.0;  ///< resistance of the jaws over that of the joint's own surface at the same force, above 0
    scatter level = scatter::typical;  ///< which point of the scatter of resistances
};

/// The last steady state of a clamp as the current rises, at one moment of its life.
///
/// At every current below, heat made and heat lost balance with the spring below its tempering limit, the jaws and
/// their spots below melting and the lead whole; above, they do not: the steady states have turned back (fold), or one
/// of the limits is met. Found by halving the current on the existence of a steady state, to 1e-7.
/// @param place the clamp, its lead, duty and air @param moment what is left of the grip, and how much worse the
/// surface has become
/// @return `beyond` with highest_clamp_current where nothing ends the steady states below it
/// @throws not_finite_error, out_of_range_error; bad_station_error for a joint that is open; no_solution_error for a
/// clamp without a steady state even at 1 A (work hotter than its spring stands)
[[nodiscard]] grip_threshold grip_threshold_of(const clamp_place& place, const grip_moment& moment = {});

/// What a largest current must keep.
enum class grip_demand {
    stays_stable,  ///< goes on conducting with a steady temperature
    keeps_grip,    ///< loses less than a quarter of its grip
};

/// The largest current a clamp bears for a number of hours of shift: with it the steady states that the spring passes
/// through last that long (or the grip does), typical case, without film. Zero if it bears none of 1 A or more.
/// @param place the clamp, its lead, duty and air
/// @param horizon hours of shift [s], above 0 to 30 years @param demand what must last
/// @return [A], at most highest_clamp_current
/// @throws not_finite_error, out_of_range_error; bad_station_error for a joint that is open
/// @see hours_to_loss()
[[nodiscard]] current largest_clamp_current(const clamp_place& place, duration horizon,
                                            grip_demand demand = grip_demand::stays_stable);

/// The largest share of its period a clamp bears a current for, otherwise as largest_clamp_current(). Zero if it does
/// not bear a hundredth.
/// @param place the clamp, its lead, the period of its duty and air @param through current [A], above 0 @param horizon
/// hours of shift [s], above 0 to 30 years
/// @param demand what must last
/// @throws not_finite_error, out_of_range_error; bad_station_error for a joint that is open
[[nodiscard]] fraction largest_clamp_duty(const clamp_place& place, current through, duration horizon,
                                          grip_demand demand = grip_demand::stays_stable);

/// The derating curve of a clamp: its largest current by duty.
/// @param place the clamp, its lead, the period of its duty and air @param shares duties, each above 0 to 1 @param
/// horizon hours of shift [s], above 0 to 30 years
/// @param demand what must last
/// @throws not_finite_error, out_of_range_error; bad_station_error for a joint that is open
[[nodiscard]] std::vector<grip_derating> grip_derating_of(const clamp_place& place, std::span<const double> shares,
                                                          duration horizon,
                                                          grip_demand demand = grip_demand::stays_stable);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/grip_threshold_body.hpp>
#endif
