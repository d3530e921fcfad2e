#pragma once
/// @file
/// Temperature inside a contact of two metals between two bodies, and the heat that goes into either body.
///
/// Current and heat take the same path, so the temperature is a function of the potential alone. With thermal
/// conductivity L T/rho (Wiedemann, Franz, Lorenz) the heat of the current gives d(L T dT/dphi)/dphi = -1 in either
/// metal, and since heat flux and current both pass the interface unchanged the same holds across it:
///
///     T(phi)^2 = T1^2 + (T2^2 - T1^2) phi/V + phi (V - phi)/L
///
/// The hottest spot is therefore the same for any two metals; what differs is where it lies.
/// Range as in voltage_temperature.hpp: steady state, the Lorenz number constant, no film unless said.

#include <algorithm>
#include <cmath>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// Temperature along the potential of a contact.
inline constexpr source potential_temperature_law{
    "steady heat and current on one path with L T/rho for the conductivity of heat",
    {},
    "T^2 = T1^2 + (T2^2 - T1^2) phi/V + phi (V - phi)/L; with a film in the middle Tm^2 = T0^2 + (V^2 - Vf^2)/(4 L) "
    "(checked against finite differences)",
    source_kind::derived};

/// Temperature at a potential inside a contact, T^2 = T1^2 + (T2^2 - T1^2) phi/V + phi (V - phi)/L.
/// @param at phi, counted from the first body [V], 0 to `drop` @param drop V across the whole contact [V], above 0
/// @param first T1 of the first body @param second T2 of the second
/// @throws not_finite_error, out_of_range_error @see potential_temperature_law
[[nodiscard]] inline temperature contact_temperature_at(voltage at, voltage drop, temperature first, temperature second)
{
    require_positive(drop, "contact drop");
    require_within(at, in_si<voltage>(0.0), drop, "potential in the contact");
    const double t1 = first.in_kelvin(), t2 = second.in_kelvin(), phi = at.value(), share = (at / drop).value();
    return temperature::kelvin(
        std::sqrt((1.0 - share) * t1 * t1 + share * t2 * t2 + phi * (drop - at).value() / lorenz_number));
}

/// Potential of the interface of two metals, counted from the first body, V rho1/(rho1 + rho2) [V]: either side of a
/// spot has the same shape, so the drop divides as the resistivities do.
///
/// Resistivities are those at 20 degC. The heat of the spot raises both; metals of unlike temperature coefficients
/// shift the interface by a few per cent of the drop.
/// @param drop V across the whole contact [V], 0 or above @param metals the two, resistivities above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage interface_potential(voltage drop, const metal_pair& metals)
{
    require_not_negative(drop, "contact drop");
    const resistivity one = require_positive(metals.first.resistivity, "resistivity");
    const resistivity other = require_positive(metals.second.resistivity, "resistivity");
    return drop * (one / (one + other)).value();
}

/// Temperature of the interface of two metals: no higher than the hottest spot, which lies in the worse conductor.
/// @param drop V across the whole contact [V], above 0 @param metals the two
/// @param first T1 of the first metal's body @param second T2 of the second's
/// @throws not_finite_error, out_of_range_error @see interface_potential(), contact_temperature_at()
[[nodiscard]] inline temperature interface_temperature(voltage drop, const metal_pair& metals, temperature first,
                                                       temperature second)
{
    return contact_temperature_at(interface_potential(drop, metals), drop, first, second);
}

/// Where a contact is hottest.
struct hottest_point {
    voltage at;                     ///< [V] potential, counted from the first body
    weldloop::temperature hottest;  ///< there
};

/// The hottest point of a contact between bodies of two temperatures: at phi = V/2 + L (T2^2 - T1^2)/(2 V), or the
/// hotter body itself where that lies outside the contact (a small drop between unlike bodies; no drop at all).
/// @param drop V across the whole contact [V], 0 or above @param first T1 of the first body @param second T2
/// @throws not_finite_error, out_of_range_error @see potential_temperature_law
[[nodiscard]] inline hottest_point hottest_point_of(voltage drop, temperature first, temperature second)
{
    const double v = require_not_negative(drop, "contact drop").value();
    const double unlike = (second.in_kelvin() - first.in_kelvin()) * (second.in_kelvin() + first.in_kelvin());
    const double lifted = lorenz_number * unlike;  // L (T2^2 - T1^2) [V2]
    if (v * v <= std::abs(lifted))
        return second > first ? hottest_point{drop, second} : hottest_point{in_si<voltage>(0.0), first};
    if (v == 0.0) return {in_si<voltage>(0.0), first};
    const voltage at = in_si<voltage>(0.5 * (v + lifted / v));
    return {at, std::max({first, second, contact_temperature_at(at, drop, first, second)})};
}

/// Temperature of the hottest spot with a film at the interface that takes part of the drop,
/// sqrt(T0^2 + (V^2 - Vf^2)/(4 L)). The film's own heat goes half to either side; with all of the drop in the film its
/// spots are no warmer than the bodies, as they have no metal to heat them through.
/// @param drop V across the whole contact [V], 0 or above @param in_film Vf, part of it in the film [V], 0 to V
/// @param bulk T0 of both bodies, of metals alike
/// @throws not_finite_error, out_of_range_error @see potential_temperature_law, hot_spot_temperature()
[[nodiscard]] inline temperature filmed_spot_temperature(voltage drop, voltage in_film, temperature bulk)
{
    require_not_negative(drop, "contact drop");
    require_within(in_film, in_si<voltage>(0.0), drop, "drop in the film");
    const double t0 = bulk.in_kelvin();
    return temperature::kelvin(
        std::sqrt(t0 * t0 + (drop - in_film).value() * (drop + in_film).value() / (4.0 * lorenz_number)));
}

/// Heat that a contact puts into its two bodies.
struct side_heat {
    power first;   ///< [W] into the first body; below zero where heat comes from it
    power second;  ///< [W] into the second; both together are drop times current
};

/// Heat a film-free contact puts into either body [W]: half of what the current makes, and the heat the metal of the
/// spots conducts from the hotter body, G (V^2/2 +/- L (T2^2 - T1^2)/2).
///
/// It does not depend on the metals, nor on where in the contact the heat is made. Without drop it is the Lorenz
/// conductance L G (T1 + T2)/2 times T2 - T1.
/// @param drop V [V], 0 or above @param spots G, drop over current inverted: of the metal that carries it [S], 0 or
/// above
/// @param first T1 of the first body @param second T2 of the second
/// @throws not_finite_error, out_of_range_error @see potential_temperature_law
[[nodiscard]] inline side_heat heat_into_sides(voltage drop, conductance spots, temperature first, temperature second)
{
    const double v = require_not_negative(drop, "contact drop").value();
    const double g = require_not_negative(spots, "spot conductance").value();
    const double made = 0.5 * g * v * v;
    const double conducted =
        0.5 * lorenz_number * g * (second.in_kelvin() - first.in_kelvin()) * (second.in_kelvin() + first.in_kelvin());
    return {require_finite(in_si<power>(made + conducted), "heat of a contact"),
            require_finite(in_si<power>(made - conducted), "heat of a contact")};
}

}  // namespace weldloop
