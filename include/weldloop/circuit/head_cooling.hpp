#pragma once
/// @file
/// What cools a gun or torch beside the air: gas through its head, the wire, water along its lead; and the neck between
/// head and lead.

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/part/cable.hpp>

namespace weldloop {

/// Cooling of a lead inside a water hose, from the conductor to the water at the air's temperature.
inline constexpr source water_hose_cooling{
    "water along a torch conductor: 20 W/(m K) to water at the air's temperature", {}, {}, source_kind::judgement};

/// [W/(m K)], see water_hose_cooling.
inline constexpr thermal_conductivity water_hose_conductance = in_si<thermal_conductivity>(20.0);

/// What shielding gas and wire take from a gun's or torch's head.
inline constexpr source head_cooling{
    "shielding gas through the head: 15 l/min of argon mix in a gun, 8 l/min of argon in a torch, warmed to the head's "
    "temperature (1.6 kg/m3 x 0.52 kJ/(kg K)); the moving wire takes half of the tip's heat",
    {},
    {},
    source_kind::judgement};
/// Share of the tip's heat that the wire leaves in it; see head_cooling.
inline constexpr double wire_share_kept = 0.5;
/// [W/K] while the arc burns; see head_cooling.
inline constexpr thermal_conductance gun_gas_cooling = in_si<thermal_conductance>(0.015 / 60.0 * 1.6 * 520.0);
/// [W/K] while the arc burns; see head_cooling.
inline constexpr thermal_conductance torch_gas_cooling = in_si<thermal_conductance>(0.008 / 60.0 * 1.6 * 520.0);

/// Neck between the head of a gun or torch and the covered end of its lead.
inline constexpr source head_neck{
    "neck of a gun or torch: 0.15 m of the copper section of its lead between head and handle",
    {},
    {},
    source_kind::judgement};
/// [m], see head_neck.
inline constexpr length head_neck_length = in_si<length>(0.15);

/// Conductance along the neck of a head [W/K]. @param lead behind it @see head_neck
[[nodiscard]] inline thermal_conductance neck_conductance_of(const cable& lead)
{
    return lead.metal.thermal_conductivity * lead.size.area() / head_neck_length;
}

}  // namespace weldloop
