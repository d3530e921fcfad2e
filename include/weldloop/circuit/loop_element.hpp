#pragma once
/// @file
/// Every kind of part as the loop sees it: a lead, a joint, both, a plate, or the arc.

#include <optional>
#include <variant>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/gun_behaviour.hpp>
#include <weldloop/circuit/holder_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/torch_behaviour.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>

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

/// One part as the loop sees it.
struct loop_element {
    std::optional<cable> lead = {};           ///< a length that heats and is cooled along its way
    std::optional<joint_circuit> joint = {};  ///< a lump that carries the current across
    std::optional<work_heat> work = {};       ///< where the joint presses on the work
    std::optional<plate> flat = {};           ///< a plate in the current's way
    thermal_conductance neck = {};  ///< with both: of the metal between the joint and the covered end of the lead
    bool joint_first = false;       ///< with both: the joint comes before the lead in the path
    bool ends_chain = false;        ///< no heat passes from its neighbours through it
    thermal_conductivity cooled_conductance = {};  ///< of a water-cooled lead to its water, per metre
    band<voltage> extension = {};                  ///< drop of the wire beyond a gun's tip
    weldloop::basis basis = {};                    ///< of the numbers
};

/// Whether current can pass, at the typical point of the joint's scatter.
[[nodiscard]] inline bool is_closed(const loop_element& e)
{
    if (!e.joint) return true;
    for (std::size_t i = 0; i < e.joint->count; ++i)
        if (!(e.joint->contacts[i].cold.typical.value() > 0.0)) return false;
    return true;
}

/// Jaws of a work connection on the work: all live jaws side by side, with what force is left.
[[nodiscard]] inline contact jaw_contact_of(const work_connection& w)
{
    const double left = 1.0 - static_cast<double>(w.grip_lost);
    return {
        .metals = {w.clamp.jaw, w.onto}, .force = left * w.clamp.force, .surface = w.surface, .shape = w.clamp.shape};
}

/// The joint of a work connection: first the jaws on the work, then all between jaws and cable.
/// @throws out_of_range_error, not_finite_error for a clamp that cannot be
[[nodiscard]] inline joint_circuit joint_of(const work_connection& w)
{
    require_positive(w.clamp.body_surface, "clamp surface");
    require_positive(w.clamp.body_diameter, "clamp diameter");
    require_not_negative(w.clamp.body_mass, "clamp mass");
    const double jaws = require_within(w.clamp.live_jaws, 1.0, 2.0, "live jaws");
    const contact jaw = jaw_contact_of(w);
    joint_circuit out;
    out.add({mapped(contact_conductance_of(jaw), [jaws](conductance g) { return conductance(jaws * g); }), jaw.metals});
    out.add({w.clamp.termination, {annealed_copper, w.clamp.body_metal}});
    out.outer = w.clamp.termination.typical;
    out.body = {w.clamp.body_surface, w.clamp.body_diameter, w.clamp.body_emissivity, w.clamp.body_capacity()};
    out.basis.add(contact_basis_of(jaw)).add(w.clamp.basis);
    return out;
}

/// The work side of a work connection. @param w the connection @param where air around
[[nodiscard]] inline work_heat work_of(const work_connection& w, const surroundings& where)
{
    require_positive(w.work_thickness, "work thickness");
    const temperature work = w.preheat.value_or(where.air);
    const temperature patch = std::max(work, where.air + in_si<temperature_difference>(20.0));
    return {plate_sink(w.onto, w.work_thickness, patch, where), work,
            static_cast<double>(w.clamp.live_jaws) * w.clamp.jaw_area};
}

/// The loop element of a part.
/// @param part    the part
/// @param where   surroundings
/// @param through current [A] while the arc burns, above 0
/// @param before_arc whether the current reaches it before the arc
/// @throws out_of_range_error, not_finite_error, missing_data_error for a part that cannot be
[[nodiscard]] inline loop_element element_of(const path_part& part, const surroundings& where, current through,
                                             bool before_arc)
{
    struct maker {
        const surroundings& where;
        current through;
        bool before_arc;

        loop_element operator()(const cable& c) const
        {
            loop_element e;
            e.lead = c;
            e.basis.add(detail::basis_of(c));
            return e;
        }
        loop_element operator()(const lug& l) const
        {
            joint_circuit j;
            j.add({crimp_conductance_of(l), crimp_metals});
            j.add({palm_conductance_of(l), palm_metals});
            j.outer = j.contacts[1].cold.typical;
            j.body = lug_body(l.size);
            j.basis.add(crimp_basis_of(l.size.area())).add(underfilled_barrel_judgement).add(palm_basis());
            return joint(j);
        }
        loop_element operator()(const coupling& c) const
        {
            joint_circuit j;
            const contact plug = plug_contact_of(c);
            j.add({plug_conductance_of(c), plug.metals});
            j.add({coupling_crimps_conductance_of(c), crimp_metals});
            j.outer = 2.0 * j.contacts[1].cold.typical;
            j.body = coupling_body(c.size);
            j.basis.add(contact_basis_of(plug)).add(crimp_basis_of(c.size.area())).add(coupling_judgement);
            return joint(j);
        }
        loop_element operator()(const electrode_holder& h) const
        {
            joint_circuit j;
            const contact jaw = jaw_contact_of(h);
            j.add({jaw_conductance_of(h), jaw.metals});
            j.add({sound_crimp_conductance_of(h.size.area()), crimp_metals});
            j.outer = j.contacts[1].cold.typical;
            j.body = holder_body();
            j.basis.add(contact_basis_of(jaw)).add(crimp_basis_of(h.size.area())).add(holder_judgement);
            return joint(j);
        }
        loop_element operator()(const wire_gun& g) const
        {
            joint_circuit j;
            j.add({gun_ends_conductance_of(g), crimp_metals});
            j.constant_drop = tip_drop(through);
            j.heat_kept = wire_share_kept;
            j.flow_cooling = gun_gas_cooling;
            j.outer = j.contacts[0].cold.typical;
            j.body = torch_head_body();
            loop_element e = joint(j);
            e.lead = g.lead;
            e.neck = neck_conductance_of(g.lead);
            e.joint_first = !before_arc;
            e.extension = extension_drop_of(g, through);
            e.basis.add(head_cooling).add(head_neck).add(gun_basis_of(g)).add(detail::basis_of(g.lead));
            return e;
        }
        loop_element operator()(const tig_torch& t) const
        {
            joint_circuit j;
            j.add({torch_ends_conductance_of(t), crimp_metals});
            j.add({collet_conductance(), collet_metals});
            j.flow_cooling = torch_gas_cooling;
            j.outer = j.contacts[0].cold.typical;
            j.body = torch_head_body();
            loop_element e = joint(j);
            e.lead = t.lead;
            e.neck = neck_conductance_of(t.lead);
            e.joint_first = !before_arc;
            if (t.cooling == torch_cooling::water) {
                e.cooled_conductance = water_hose_conductance;
                e.basis.add(water_hose_cooling);
            }
            e.basis.add(head_cooling).add(head_neck).add(torch_basis_of(t)).add(detail::basis_of(t.lead));
            return e;
        }
        loop_element operator()(const work_connection& w) const
        {
            loop_element e;
            e.joint = joint_of(w);
            e.work = work_of(w, where);
            e.basis.add(e.joint->basis).add(work_patch).add(pressed_gap).add(fin_equations);
            return e;
        }
        loop_element operator()(const contact& c) const
        {
            joint_circuit j;
            j.add({contact_conductance_of(c), c.metals});
            j.basis.add(contact_basis_of(c));
            loop_element e = joint(j);
            e.ends_chain = true;
            const temperature patch = where.air + in_si<temperature_difference>(20.0);
            // both bodies carry heat away; the lesser of the two stands for either
            e.work = work_heat{std::min(plate_sink(c.metals.first, usual_work_thickness, patch, where),
                                        plate_sink(c.metals.second, usual_work_thickness, patch, where)),
                               where.air,
                               {}};
            e.basis.add(work_patch).add(fin_equations);
            return e;
        }
        loop_element operator()(const plate& p) const
        {
            require_positive(p.length, "plate length");
            require_positive(p.width, "plate width");
            require_positive(p.thickness, "plate thickness");
            loop_element e;
            e.flat = p;
            e.ends_chain = true;
            e.basis.add(*p.metal.electrical_source);
            return e;
        }
        loop_element operator()(const arc&) const
        {
            loop_element e;
            e.ends_chain = true;
            return e;
        }

    private:
        static loop_element joint(const joint_circuit& j)
        {
            loop_element e;
            e.joint = j;
            e.basis.add(j.basis);
            if (j.body.surface.value() > 0.0) e.basis.add(generic_bodies);
            return e;
        }
    };
    return std::visit(maker{where, through, before_arc}, part);
}

}  // namespace weldloop
