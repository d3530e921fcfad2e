#pragma once
/// @file
/// A strap, braid or bar under current: two bolted ends and the metal between them.

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/strap.hpp>

namespace weldloop {

/// One bolted end of a strap. @param s the strap
[[nodiscard]] inline bolted_face end_of(const strap& s)
{
    return {.metals = {s.metal, s.onto},
            .bolt_diameter = s.bolt_diameter,
            .tightening = s.tightening,
            .thread = s.thread,
            .bolts = s.bolts,
            .surface = s.surface};
}

/// Resistance of a strap between its ends [ohm], rho l/A, a braid's wires 1.10 times as long as the braid.
/// @param s the strap: length 0 or above, section above 0 @param t its temperature
/// @throws not_finite_error, out_of_range_error @see braid_lay_judgement
[[nodiscard]] inline resistance body_resistance_of(const strap& s, temperature t)
{
    require_not_negative(s.length, "length");
    require_positive(s.section, "section");
    require_positive(s.metal.resistivity, "resistivity");
    const double lay = s.make == strap_make::braid ? braid_lay : 1.0;
    return require_finite(resistance(lay * s.metal.resistivity_at(t) * s.length / s.section), "strap resistance");
}

/// What a strap does at a current. @param s the strap @param through current [A], 0 or above
/// @param bulk temperature of the strap @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const strap& s, current through, temperature bulk)
{
    const joint_behaviour end = behaviour_of(end_of(s), through, bulk);
    joint_behaviour out = with_body(in_series(end, end), body_resistance_of(s, bulk), through);
    if (s.metal.electrical_source != nullptr) out.basis.add(*s.metal.electrical_source);
    if (s.make == strap_make::braid) out.basis.add(braid_lay_judgement);
    return out;
}

}  // namespace weldloop
