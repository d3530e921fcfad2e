#pragma once
/// @file
/// A cable coupling under current: a crimp on either cable and the plug in its socket.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/coupling.hpp>

namespace weldloop {

/// The contact between plug and socket of a coupling: brass on brass with the exponent of flat bars. @param c the
/// coupling
[[nodiscard]] inline contact plug_contact_of(const coupling& c)
{
    return {.metals = {brass, brass},
            .force = c.force,
            .surface = c.surface,
            .name = c.name,
            .shape = contact_shape::busbar};
}

/// Conductance of a coupling's plug in its socket at 20 degC [S]; open without force or on unbroken paint.
/// @param c the coupling @throws not_finite_error, out_of_range_error @see coupling_judgement, contact_conductance_of()
[[nodiscard]] inline band<conductance> plug_conductance_of(const coupling& c)
{
    return contact_conductance_of(plug_contact_of(c));
}

/// Conductance of the two crimps of a coupling, one after the other, at 20 degC [S].
/// @param c the coupling @throws not_finite_error, out_of_range_error @see crimp_band_judgement
[[nodiscard]] inline band<conductance> coupling_crimps_conductance_of(const coupling& c)
{
    return both_crimps_conductance_of(c.size.area());
}

/// Conductance of a whole coupling at 20 degC [S]. @param c the coupling @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<conductance> coupling_conductance_of(const coupling& c)
{
    return in_series(coupling_crimps_conductance_of(c), plug_conductance_of(c));
}

/// What a coupling does at a current. @param c the coupling @param through current [A], 0 or above
/// @param bulk temperature of its metal @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const coupling& c, current through, temperature bulk)
{
    // each crimp levels off by itself
    const joint_behaviour crimp = sound_crimp_behaviour_of(c.size.area(), through, bulk);
    joint_behaviour out = in_series(in_series(crimp, crimp), behaviour_of(plug_contact_of(c), through, bulk));
    out.basis.add(coupling_judgement);
    return out;
}

/// The sheet of a coupling: its plug and both crimps on one body, the limit of a contact of bare copper alloy.
/// @param c the coupling @throws not_finite_error, out_of_range_error
[[nodiscard]] inline part_sheet sheet_of(const coupling& c)
{
    part_sheet out;
    const contact plug = plug_contact_of(c);
    const band<conductance> crimp = sound_crimp_conductance_of(c.size.area());
    out.contacts = {{"plug", contact_hold::spring, plug_conductance_of(c), plug.metals},
                    {"crimps", contact_hold::crimp, crimp, crimp_metals, 2}};
    out.body = coupling_body(c.size);
    out.melting = detail::melting_of(plug.metals);
    out.outer_face = crimp.typical;
    out.limits = {detail::joint_limit_at(part_place::metal, joint_kind::contact, "bare copper-alloy contact in air")};
    out.basis.add(contact_basis_of(plug)).add(crimp_basis_of(c.size.area())).add(coupling_judgement);
    out.basis.add(generic_bodies);
    return out;
}

/// What can be otherwise with a coupling. @param c the coupling
[[nodiscard]] inline part_conditions<coupling> conditions_of(const coupling& c)
{
    return {
        .surface = &coupling::surface, .pressing = &coupling::force, .usual_pressing = usual_coupling_force(c.size)};
}

}  // namespace weldloop
