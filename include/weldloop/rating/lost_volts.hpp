#pragma once
/// @file
/// What the volts that a loop takes cost at the arc, and what it costs to give them back at the supply.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/operating_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// What a part pays when the setting gives lost volts back.
struct part_at_setting {
    std::string name = {};       ///< of the part
    std::size_t place = 0;       ///< its number in the station
    power loss_now = {};         ///< [W] heat made in it while the arc burns, as things stand
    power loss_then = {};        ///< [W] the same at the setting that gives the volts back
    temperature peak_now = {};   ///< of its hottest place, as things stand
    temperature peak_then = {};  ///< the same at that setting
};

/// What lost volts cost, typically.
struct lost_volts {
    operating_outcome outcome = operating_outcome::not_settled;  ///< look at it first: only `found` has numbers
    voltage lost = {};                                           ///< [V] that were asked about
    band<length> arc_shorter = {};               ///< [m] at the same current: what the arc is shorter by; small where
                                                 ///< volts per length are large
    current current_now = {};                    ///< [A] with the arc's length held
    current current_without = {};                ///< [A] the same without the lost volts
    std::optional<speed> feed_now = {};          ///< [m/s] of wire that the current melts off; of wires with constants
    std::optional<speed> feed_without = {};      ///< [m/s] the same without the lost volts
    voltage terminals_wanted = {};               ///< [V] across the terminals that give the lost volts back
    std::optional<voltage> setting_wanted = {};  ///< [V] constant voltage: the setting that does
    std::vector<part_at_setting> parts = {};     ///< every part that carries the current, at that setting
};

/// What lost volts cost a station's arc: in length at the same current, in current and wire at the same length; the
/// setting that gives them back; and what the more of current makes of every part.
///
/// The lost volts are taken out of the balance as they are, whatever the current; supply, loop and arc are solved with
/// them and without, the loop with the heat of its current. A constant-current supply within its output keeps its
/// current: its lost volts cost headroom alone. The parts of a station whose current does not rise stay as they are.
/// @param s the station, its supply described @param lost [V], above 0, below what the arc has at no length
/// @throws missing_data_error without a supply; out_of_range_error, not_finite_error, bad_station_error
[[nodiscard]] lost_volts cost_of_lost_volts(const station& s, voltage lost);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/rating/lost_volts_body.hpp>
#endif
