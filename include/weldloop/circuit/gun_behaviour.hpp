#pragma once
/// @file
/// A wire gun under current, beside its cable: the crimps at the ends of the cable, the tip that slides on the wire,
/// and the wire between tip and arc.

#include <numbers>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/part/wire_gun.hpp>

namespace weldloop {

/// Drop of a contact tip.
inline constexpr source tip_drop_judgement{
    "contact tip on a moving wire: 0.10, 0.20, 0.35 V from 50 A on, in proportion below", "2026",
    "judgement; below the melting drop of copper, 0.41 V", source_kind::judgement};
/// Resistivity of the wire beyond the tip.
inline constexpr source wire_extension_judgement{"wire extension: its resistivity between that at 20 degC and that at "
                                                 "melting (linear law), a quarter, half and all of the way",
                                                 "2026",
                                                 {},
                                                 source_kind::judgement};

/// Drop of a tip at and above `tip_level_current` [V]; see tip_drop_judgement.
inline constexpr band<voltage> tip_level_drop{in_si<voltage>(0.10), in_si<voltage>(0.20), in_si<voltage>(0.35)};
/// Share of the way from cold to melting that the mean resistivity of the wire has gone; see wire_extension_judgement.
inline constexpr band<double> wire_heating{0.25, 0.5, 1.0};
/// [A], see tip_drop_judgement.
inline constexpr current tip_level_current = in_si<current>(50.0);

/// Drop between tip and wire [V], nearly constant: a sliding contact makes as many spots as the current softens.
/// @param through current [A], 0 or above @throws not_finite_error, out_of_range_error @see tip_drop_judgement
[[nodiscard]] inline band<voltage> tip_drop(current through)
{
    require_not_negative(through, "current");
    const double share = through < tip_level_current ? (through / tip_level_current).value() : 1.0;
    return {share * tip_level_drop.low, share * tip_level_drop.typical, share * tip_level_drop.high};
}

/// Resistance of the wire between tip and arc, rho l/A [ohm], rho between that of cold and of just melting wire.
///
/// 1.2 mm steel, 15 mm: 4.6, 7.3, 12.7 milliohm. The wire melts off as fast as it is fed, so its mean resistivity
/// hardly depends on the current.
/// @param g the gun: wire diameter above 0, extension 0 or above
/// @throws not_finite_error, out_of_range_error @see wire_extension_judgement
[[nodiscard]] inline band<resistance> extension_resistance_of(const wire_gun& g)
{
    require_not_negative(g.extension, "wire extension");
    const length d = require_positive(g.wire_diameter, "wire diameter");
    const resistivity cold = require_positive(g.wire.resistivity, "resistivity");
    const resistivity molten = g.wire.resistivity_at(g.wire.melting);
    const auto along = [&](double share) {
        return require_finite(
            resistance((cold + share * (molten - cold)) * g.extension / (std::numbers::pi / 4.0 * d * d)),
            "wire resistance");
    };
    return {along(wire_heating.low), along(wire_heating.typical), along(wire_heating.high)};
}

/// Drop of the wire between tip and arc [V]. @param g the gun @param through current [A], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<voltage> extension_drop_of(const wire_gun& g, current through)
{
    require_not_negative(through, "current");
    return mapped(extension_resistance_of(g),
                  [&](resistance r) { return require_finite(voltage(r * through), "wire drop"); });
}

/// The sources a gun's fittings rest on: wire, tip and crimps. @param g the gun @throws as crimp_basis_of()
[[nodiscard]] inline basis gun_basis_of(const wire_gun& g)
{
    basis out = crimp_basis_of(g.lead.size.area());
    out.add(gun_judgement).add(tip_drop_judgement).add(wire_extension_judgement);
    if (g.wire.electrical_source != nullptr) out.add(*g.wire.electrical_source);
    if (g.cooling == torch_cooling::water) out.add(water_gun_judgement);
    return out;
}

}  // namespace weldloop
