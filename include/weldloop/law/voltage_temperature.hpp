#pragma once
/// @file
/// The law that ties the hottest spot of a contact to the voltage across it: heat leaves a spot by the way the current
/// came, so the temperature inside follows from the drop alone, whatever the shape of the spot.
///
/// Range: steady state; no insulating film in the spot; the Lorenz number constant. Computed melting drops agree with
/// the handbook ones within 8 % for copper, aluminium, iron, silver, gold, tin and tungsten; nickel (22 %) and zinc
/// (13 %) do not.

#include <algorithm>
#include <cmath>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// Lorenz number.
inline constexpr source lorenz_source{"Sommerfeld theory with the exact constants of the 2019 SI", "2019",
                                      "(pi^2/3)(k/e)^2 = 2.443e-8 V2/K2; contact practice writes 2.44e-8",
                                      source_kind::derived};
/// Kohlrausch's relation between drop and temperature.
inline constexpr source voltage_temperature_law{"Holm, Electric Contacts", "4th edition 1967",
                                                "V^2 = 4 L (Tm^2 - T0^2) (as printed in open code citing Holm)",
                                                source_kind::handbook};

/// L [V2/K2], thermal over electrical conductivity and temperature of a metal; see lorenz_source.
inline constexpr double lorenz_number = 2.44e-8;

namespace detail {
// Volts that heat a spot to `spot` kelvin over `bulk`; none where the bulk is that hot already.
inline voltage drop_to_reach(double spot, double bulk)
{
    if (bulk >= spot) return {};
    // (Tm - T0)(Tm + T0) keeps its digits where the two are close
    return in_si<voltage>(2.0 * std::sqrt(lorenz_number * (spot - bulk) * (spot + bulk)));
}
}  // namespace detail

/// Temperature of the hottest spot, sqrt(T0^2 + V^2/(4 L)).
///
/// This is the upper bound of a film-free contact: where a film takes part of the drop, the spot stays cooler. It knows
/// no metal, so it goes on past melting; joint_behaviour keeps below it.
/// @param drop V across the whole contact [V], 0 or above; no drop, no rise
/// @param bulk T0, of the bodies away from the contact
/// @throws not_finite_error, out_of_range_error @see voltage_temperature_law
[[nodiscard]] inline temperature hot_spot_temperature(voltage drop, temperature bulk)
{
    require_not_negative(drop, "contact drop");
    const double t0 = bulk.in_kelvin(), v = drop.value();
    return temperature::kelvin(std::sqrt(t0 * t0 + v * v / (4.0 * lorenz_number)));
}

/// Contact drop that heats the hottest spot to a temperature, sqrt(4 L (Tm^2 - T0^2)) [V]; the inverse of
/// hot_spot_temperature().
/// @param spot Tm, at or above `bulk` @param bulk T0, of the bodies away from the contact
/// @throws out_of_range_error if the spot is cooler than the bulk @see voltage_temperature_law
[[nodiscard]] inline voltage drop_for_spot_temperature(temperature spot, temperature bulk)
{
    if (spot < bulk)
        throw out_of_range_error("spot temperature", number_text(spot.in_kelvin(), 5) + " K",
                                 "at or above the bulk temperature of " + number_text(bulk.in_kelvin(), 5) + " K");
    return require_finite(detail::drop_to_reach(spot.in_kelvin(), bulk.in_kelvin()), "drop for the spot temperature");
}

/// Drop at which the spots of a metal begin to yield [V]. Zero where the bulk is that hot already.
/// @param m the metal @param bulk temperature of the bodies away from the contact @see voltage_temperature_law
[[nodiscard]] inline voltage softening_drop(const metal& m, temperature bulk)
{
    return detail::drop_to_reach(m.softening.in_kelvin(), bulk.in_kelvin());
}

/// Drop at which the spots of a metal begin to melt [V]. Zero where the bulk is that hot already.
/// @param m the metal @param bulk temperature of the bodies away from the contact @see voltage_temperature_law
[[nodiscard]] inline voltage melting_drop(const metal& m, temperature bulk)
{
    return detail::drop_to_reach(m.melting.in_kelvin(), bulk.in_kelvin());
}

/// The lower softening drop of two metals that meet [V]. @param metals the two @param bulk of both bodies
[[nodiscard]] inline voltage softening_drop(const metal_pair& metals, temperature bulk)
{
    return std::min(softening_drop(metals.first, bulk), softening_drop(metals.second, bulk));
}

/// The lower melting drop of two metals that meet [V]. @param metals the two @param bulk of both bodies
[[nodiscard]] inline voltage melting_drop(const metal_pair& metals, temperature bulk)
{
    return std::min(melting_drop(metals.first, bulk), melting_drop(metals.second, bulk));
}

}  // namespace weldloop
