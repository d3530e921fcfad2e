#pragma once
/// @file
/// An electrode holder under current: the crimp on its cable and the jaws on the rod.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/electrode_holder.hpp>

namespace weldloop {

/// The contact between a holder's jaws and the rod. @param h the holder
[[nodiscard]] inline contact jaw_contact_of(const electrode_holder& h)
{
    return {.metals = {h.jaws, h.rod},
            .force = h.force,
            .surface = h.surface,
            .name = h.name,
            .shape = contact_shape::toothed_jaw,
            .points = holder_contact_points};
}

/// Conductance of a holder's jaws on the rod at 20 degC [S]; open without force or on unbroken paint.
/// @param h the holder @throws not_finite_error, out_of_range_error @see holder_judgement, contact_conductance_of()
[[nodiscard]] inline band<conductance> jaw_conductance_of(const electrode_holder& h)
{
    return contact_conductance_of(jaw_contact_of(h));
}

/// Conductance of a whole holder at 20 degC [S], crimp and jaws; the rod itself is not in it.
/// @param h the holder @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<conductance> holder_conductance_of(const electrode_holder& h)
{
    return in_series(sound_crimp_conductance_of(h.size.area()), jaw_conductance_of(h));
}

/// What a holder does at a current. @param h the holder @param through current [A], 0 or above
/// @param bulk temperature of its metal @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const electrode_holder& h, current through, temperature bulk)
{
    joint_behaviour out = in_series(sound_crimp_behaviour_of(h.size.area(), through, bulk),
                                    behaviour_of(jaw_contact_of(h), through, bulk));
    out.basis.add(holder_judgement);
    return out;
}

}  // namespace weldloop
