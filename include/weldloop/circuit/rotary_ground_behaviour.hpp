#pragma once
/// @file
/// A rotary or sliding work connection under current.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
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
    out.loss = mapped(out.drop, [&](voltage v) { return power(v * through); });
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

}  // namespace weldloop
