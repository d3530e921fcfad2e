#pragma once
/// @file
/// A strap, braid or bar under current: two bolted ends and the metal between them.

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
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

/// What a strap looks like.
inline constexpr source strap_shape_judgement{
    "strap: ten times as wide as thick, a braid half filled with metal; beyond the bolts of either end as much of it "
    "as "
    "it is wide lies in the air; emissivity 0.22 of dull metal, 0.5 of a braid; one temperature all along",
    "2026",
    {},
    source_kind::judgement};

/// The body of a strap. @param s the strap @throws not_finite_error, out_of_range_error @see strap_shape_judgement
[[nodiscard]] inline thermal_body body_of(const strap& s)
{
    const bool braid = s.make == strap_make::braid;
    const double width_over_thickness = 10.0, filled = braid ? 0.5 : 1.0, ends = 2.0;
    require_not_negative(s.length, "length");
    const length width = boost::units::root<2>(width_over_thickness * require_positive(s.section, "section") / filled);
    const length along = s.length + ends * width, around = 2.0 * (width + width / width_over_thickness);
    return {.surface = around * along,
            .diameter = width,
            .emissivity = braid ? 0.5 : 0.22,
            .capacity = detail::heat_of(s.metal, (braid ? braid_lay : 1.0) * s.section * along)};
}

/// The sheet of a strap: two bolted ends alike and the metal between them. @param s the strap
/// @throws not_finite_error, out_of_range_error @see strap_shape_judgement
[[nodiscard]] inline part_sheet sheet_of(const strap& s)
{
    part_sheet out;
    const bolted_face end = end_of(s);
    const band<conductance> ends = bolted_face_conductance_of(end);
    out.contacts = {{"bolted ends", contact_hold::bolt, ends, end.metals, 2}};
    out.metal = sheet_metal{body_resistance_of(s, reference_temperature), s.metal.temperature_coefficient};
    out.body = body_of(s);
    out.melting = detail::melting_of(end.metals);
    out.outer_face = ends.typical;
    out.limits = {detail::joint_limit_at(part_place::metal, joint_kind::bolted, "bolted bare metal in air")};
    out.basis.add(basis_of(end)).add(strap_shape_judgement);
    if (s.metal.electrical_source != nullptr) out.basis.add(*s.metal.electrical_source);
    if (s.make == strap_make::braid) out.basis.add(braid_lay_judgement);
    return out;
}

/// What can be otherwise with a strap. @param s the strap @throws as usual_bolt_torque()
[[nodiscard]] inline part_conditions<strap> conditions_of(const strap& s)
{
    return {.surface = &strap::surface,
            .tightening = &strap::tightening,
            .usual_tightening = usual_bolt_torque(s.bolt_diameter),
            .section = &strap::section};
}

}  // namespace weldloop
