#pragma once
/// @file
/// Inductance of the two leads of a loop from how they lie, and the voltage a current ramp takes along them.

#include <cmath>
#include <numbers>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/inductance.hpp>
#include <weldloop/part/cable.hpp>

namespace weldloop {

/// Spare lead in a coil.
struct coiled_spare {
    int turns = 0;            ///< 0: none
    length diameter = {};     ///< [m] mean diameter of the coil, above 0 where there are turns
    int layers = 1;           ///< turns on one another, 1 to `turns`
    bool both_leads = false;  ///< out and return lead lie in the coil together: their fields cancel
};

/// How the two leads of a loop lie.
struct lead_layout {
    length spacing = {};     ///< [m] from axis to axis, 0 or above; 0: side by side, touching
    coiled_spare coil = {};  ///< spare length in a coil; its lead is the longer one, or both
};

/// Inductance of a loop's leads.
struct lead_inductance {
    inductance straight;    ///< [H] of the lengths that lie out and back
    inductance coiled;      ///< [H] of the coil
    inductance total;       ///< [H] both
    length lead_in_coil;    ///< [m] of lead in the coil, of each lead that lies in it
    weldloop::basis basis;  ///< sources
};

/// Inductance of the electrode lead and the work lead of a loop: what is laid out and back as a pair with its spacing,
/// pair_inductance(), and what lies in a coil, coil_inductance().
///
/// The stretch laid out is the mean of both leads less what is in the coil. A coil of one lead counts in full; a coil
/// with both leads in it counts as a pair that touches, which is why spare leads are coiled together. Not counted: iron
/// near the leads, the work, the supply's own choke. Leads side by side have about 0.5 uH for each metre out and back.
/// @param one lead with its conductor diameter, and its overall diameter where it touches @param other the other lead
/// @param lies spacing and coil
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; out_of_range_error
/// for
///         a coil that takes more lead than there is
[[nodiscard]] inline lead_inductance inductance_of(const cable& one, const cable& other, const lead_layout& lies = {})
{
    for (const cable* lead : {&one, &other}) {
        require_positive(lead->length, "lead length");
        if (lead->conductor_diameter.value() == 0.0 || lead->overall_diameter.value() == 0.0)
            throw missing_data_error("diameter of lead " + (lead->name.empty() ? to_text(lead->size) : lead->name),
                                     "not given", "conductor and overall diameter, as welding_cable() sets them");
        require_positive(lead->conductor_diameter, "conductor diameter");
        require_positive(lead->overall_diameter, "overall diameter");
    }
    require_not_negative(lies.spacing, "spacing");
    require_within(static_cast<double>(lies.coil.turns), 0.0, most_coil_turns, "turns of the coil");

    const length touching = 0.5 * (one.overall_diameter + other.overall_diameter);
    const length apart = lies.spacing.value() == 0.0 ? touching : lies.spacing;
    if (apart < touching)
        throw out_of_range_error("spacing", si_text(apart), "0, or at least where leads touch, " + si_text(touching));
    const length radius = 0.5 * one.conductor_diameter, other_radius = 0.5 * other.conductor_diameter;

    lead_inductance out{};
    out.basis.add(parallel_wire_inductance);
    length laid = one.length + other.length;  // of both, less what is coiled
    if (lies.coil.turns > 0) {
        out.basis.add(neumann_circles);
        require_positive(lies.coil.diameter, "coil diameter");
        out.lead_in_coil = static_cast<double>(lies.coil.turns) * std::numbers::pi * lies.coil.diameter;
        const cable& longer = one.length < other.length ? other : one;
        const cable& shorter = one.length < other.length ? one : other;
        const length spare = lies.coil.both_leads ? shorter.length : longer.length;
        if (out.lead_in_coil > spare)
            throw out_of_range_error("lead in the coil", si_text(out.lead_in_coil),
                                     "at most the " + si_text(spare) + " of the lead");
        if (lies.coil.both_leads) {
            out.coiled = pair_inductance(touching, radius, other_radius) * out.lead_in_coil;
            laid -= 2.0 * out.lead_in_coil;
        } else {
            out.coiled = coil_inductance({.turns = lies.coil.turns,
                                          .diameter = lies.coil.diameter,
                                          .pitch = longer.overall_diameter,
                                          .layers = lies.coil.layers},
                                         0.5 * longer.conductor_diameter);
            laid -= out.lead_in_coil;
        }
    }
    out.straight = pair_inductance(apart, radius, other_radius) * (0.5 * laid);
    out.total = require_finite(inductance(out.straight + out.coiled), "inductance of the leads");
    return out;
}

}  // namespace weldloop
