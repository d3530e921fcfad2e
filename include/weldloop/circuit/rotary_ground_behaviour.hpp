#pragma once
/// @file
/// A rotary or sliding work connection under current.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
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
#include <weldloop/law/brush.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/rotary_ground.hpp>

namespace weldloop {

/// The contact of all metal fingers of a rotary ground, each a dome on the ring. @param r the ground
[[nodiscard]] inline contact finger_contact_of(const rotary_ground& r)
{
    return {.metals = {r.finger, r.ring},
            .force = static_cast<double>(r.count) * r.force,
            .surface = r.surface,
            .name = r.name,
            .shape = contact_shape::sphere,
            .points = r.count};
}

/// Whether the brushes of a rotary ground carry more than their material should all the time. Fingers: never.
/// @param r the ground @param through current [A], 0 or above @throws not_finite_error, out_of_range_error
/// @see brush_density_recalled
[[nodiscard]] inline bool brushes_overloaded(const rotary_ground& r, current through)
{
    require_not_negative(through, "current");
    const double count = require_within(r.count, 1.0, 1000.0, "brushes");
    return r.brush && through / (count * require_positive(r.face, "face of the brush")) > material_of(*r.brush).highest;
}

/// What a rotary ground does at a current: brushes share it and have the drop of one; fingers follow the force law.
///
/// A brush has no metal spots: its hottest spot is given as the bulk, and it never counts as melting. Brushes without
/// force are open.
/// @param r the ground @param through current [A], 0 or above @param bulk temperature of the ring
/// @throws not_finite_error, out_of_range_error @see brush_drop(), contact_conductance_of()
[[nodiscard]] inline joint_behaviour behaviour_of(const rotary_ground& r, current through, temperature bulk)
{
    if (!r.brush) return behaviour_of(finger_contact_of(r), through, bulk);
    require_not_negative(through, "current");
    require_not_negative(r.force, "brush force");
    const double count = require_within(r.count, 1.0, 1000.0, "brushes");
    const current of_one = through / count;
    joint_behaviour out;
    out.basis.add(brush_drop_recalled).add(brush_level_judgement).add(brush_density_recalled);
    out.hottest_spot = exactly(bulk);
    out.conducts = r.force.value() > 0.0;
    if (!out.conducts) return out;
    out.drop = brush_drop(*r.brush, of_one, r.face);
    out.loss = mapped(out.drop, [&](voltage v) { return require_finite(power(v * through), "heat of the brushes"); });
    // without current, the slope below the level density
    const current probe = through.value() > 0.0 ? of_one : current(brush_level_density * r.face);
    out.resistance = mapped(brush_drop(*r.brush, probe, r.face), [&](voltage v) {
        return require_finite(resistance(v / (count * probe)), "brush resistance");
    });
    return out;
}

/// A rotary ground as the loop sees a joint: the drop of its brushes, or the contact of its fingers.
/// @param r the ground @param through current [A], 0 or above @throws not_finite_error, out_of_range_error;
///   no_solution_error for brushes without force, which are open
[[nodiscard]] inline joint_circuit joint_of(const rotary_ground& r, current through)
{
    joint_circuit out;
    if (!r.brush) {
        const contact fingers = finger_contact_of(r);
        out.add({contact_conductance_of(fingers), fingers.metals});
        out.basis.add(contact_basis_of(fingers));
        return out;
    }
    const joint_behaviour b = behaviour_of(r, through, reference_temperature);
    if (!b.conducts) throw no_solution_error("brush drop", "that of an open circuit", "brushes with force");
    out.constant_drop = b.drop;
    out.basis.add(b.basis);
    return out;
}

/// What a rotary ground looks like.
inline constexpr source rotary_shape_judgement{
    "rotary ground: brushes or fingers cover a tenth of their track; ring, holder and cheeks have eight times the "
    "track's surface in still air, emissivity 0.5, and the metal of the track 10 mm thick",
    "2026",
    {},
    source_kind::judgement};
/// How hot a rotary ground may get.
inline constexpr source rotary_grease_judgement{
    "ring and brush gear: 100 degC, what the grease of the bearing beside them bears",
    "2026",
    {},
    source_kind::judgement};

/// The body of a rotary ground. @param r the ground @throws not_finite_error, out_of_range_error
/// @see rotary_shape_judgement
[[nodiscard]] inline thermal_body body_of(const rotary_ground& r)
{
    constexpr double track_over_brushes = 10.0, surface_over_track = 8.0, dull_and_dusty = 0.5;
    const length thick = in_si<length>(0.010);
    const double count = require_within(r.count, 1.0, 1000.0, "brushes");
    const area track = track_over_brushes * count * require_positive(r.face, "face of the brush");
    return {.surface = surface_over_track * track,
            .diameter = boost::units::root<2>(track),
            .emissivity = dull_and_dusty,
            .capacity = detail::heat_of(r.ring, track * thick)};
}

/// The sheet of a rotary ground: the level drop of its brushes, or the contact of its fingers; open without force.
/// @param r the ground @throws not_finite_error, out_of_range_error @see rotary_shape_judgement
[[nodiscard]] inline part_sheet sheet_of(const rotary_ground& r)
{
    part_sheet out;
    out.body = body_of(r);
    out.melting = r.ring.melting;
    out.limits = {
        {part_place::metal, temperature::celsius(100.0), "grease of the bearing beside it", &rotary_grease_judgement}};
    out.basis.add(rotary_shape_judgement);
    if (!r.brush) {
        const contact fingers = finger_contact_of(r);
        out.contacts = {{"fingers", contact_hold::spring, contact_conductance_of(fingers), fingers.metals}};
        out.melting = detail::melting_of(fingers.metals);
        out.limits.push_back(
            detail::joint_limit_at(part_place::metal, joint_kind::contact, "bare copper-alloy contact in air"));
        out.basis.add(contact_basis_of(fingers));
        return out;
    }
    require_not_negative(r.force, "brush force");
    out.carries = current_limit{static_cast<double>(r.count) * (material_of(*r.brush).highest * r.face), "brushes",
                                &brush_density_recalled};
    if (r.force.value() > 0.0)
        out.slide = sheet_slide{material_of(*r.brush).level_drop,
                                static_cast<double>(r.count) * (brush_level_density * r.face)};
    else
        out.contacts = {{"brushes", contact_hold::sliding, detail::open_circuit, {r.ring, r.ring}}};
    out.basis.add(brush_drop_recalled).add(brush_level_judgement).add(brush_density_recalled);
    return out;
}

/// What can be otherwise with a rotary ground: the faces and the force of fingers. The drop of brushes hardly minds
/// either. @param r the ground
[[nodiscard]] inline part_conditions<rotary_ground> conditions_of(const rotary_ground& r)
{
    if (r.brush) return {};
    return {
        .surface = &rotary_ground::surface, .pressing = &rotary_ground::force, .usual_pressing = rotary_ground().force};
}

}  // namespace weldloop
