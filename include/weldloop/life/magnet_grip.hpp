#pragma once
/// @file
/// The grip of a magnetic work connection under a load: how warm its magnet gets, what pull that leaves, and the
/// largest current it bears. A magnet below its highest temperature forgets nothing, so there is no history to march.

#include <weldloop/core/band.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_magnet.hpp>

namespace weldloop {

/// What a magnet comes to under a load, by the scatter of its contact.
struct magnet_grip {
    band<temperature> magnet = {};               ///< of the housing, period mean
    band<temperature> magnet_peak = {};          ///< of the housing, hottest in the period
    band<temperature> pad = {};                  ///< period mean
    band<double> pull_left = {};                 ///< share of the pull at 20 degC; 0 where it is demagnetised
    band<weldloop::resistance> resistance = {};  ///< [ohm] cable to work at the job's current; 0 where demagnetised
    bool demagnetised = false;                   ///< typically: hotter than its grade bears, pull lost for good
    bool may_be_demagnetised = false;            ///< at the 95 % point of its contact's resistance
    weldloop::basis basis = {};                  ///< sources and left ranges
};

/// The grip of a magnet on its work under a load, settled. @param m the magnet @param lead behind it
/// @param work current [A], above 0, and duty @param where air around
/// @throws not_finite_error, out_of_range_error; bad_station_error for a magnet that does not hold or conducts nothing
/// @see clamp_network_of(const work_magnet&, const conductor_size&, const surroundings&, length)
[[nodiscard]] magnet_grip magnet_grip_of(const work_magnet& m, const cable& lead, const load& work,
                                         const surroundings& where);

/// The largest current a magnet bears, typical contact: with it the magnet stays below the highest temperature of its
/// grade at every moment of the period and its pad's spots below melting. Zero if it bears none of 1 A or more.
/// @param m the magnet @param lead behind it @param duty of the load @param where air around
/// @return [A], at most highest_clamp_current
/// @throws not_finite_error, out_of_range_error; bad_station_error for a magnet that does not hold or conducts nothing
[[nodiscard]] current largest_magnet_current(const work_magnet& m, const cable& lead, const duty_cycle& duty,
                                             const surroundings& where);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/magnet_grip_body.hpp>
#endif
