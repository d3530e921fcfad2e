#pragma once
/// @file
/// What a supply that senses its voltage away from its terminals makes good of a loop's drop.
/// Source: Kirchhoff's law of voltages.

#include <cstddef>

#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// The part of a loop's drop that lies between the supply's terminals and its taps [V]: made good by the supply, as
/// long as its highest output allows. Zero without remote sensing.
///
/// A tap lies behind its part on the electrode side and before it on the work side: what fails between the tap and the
/// arc is not made good.
/// @param s a checked station @param state its loop, solved @throws bad_station_error for a tap at no part of that side
[[nodiscard]] inline voltage sensed_drop_of(const station& s, const loop_state& state)
{
    voltage out{};
    if (!s.supply || !s.supply->sensing) return out;
    const detail::sensed_parts taps = detail::sensed_parts_of(s);
    for (std::size_t i = 0; i < taps.electrode_side_ends; ++i) out += state.parts[i].drop;
    for (std::size_t i = taps.work_side_begins; i < s.path.size(); ++i) out += state.parts[i].drop;
    return out;
}

}  // namespace weldloop
