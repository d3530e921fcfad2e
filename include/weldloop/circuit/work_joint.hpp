#pragma once
/// @file
/// The joint of a work connection: its jaws on the work, what lies between jaws and cable, and the work's side.

#include <algorithm>

#include <weldloop/circuit/clamp_division.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// Jaws of a work connection on the work: all live jaws side by side, with what force is left.
[[nodiscard]] inline contact jaw_contact_of(const work_connection& w)
{
    const double left = 1.0 - static_cast<double>(w.grip_lost);
    return {
        .metals = {w.clamp.jaw, w.onto}, .force = left * w.clamp.force, .surface = w.surface, .shape = w.clamp.shape};
}

namespace detail {

// The joint of a clamp whose current divides inside it: its jaws with the heat they make, all else behind them.
inline joint_circuit divided_joint_of(const work_connection& w, const contact& jaw)
{
    const work_clamp& c = w.clamp;
    const clamp_division low = divided_clamp_current(w, scatter::low), typical = divided_clamp_current(w),
                         high = divided_clamp_current(w, scatter::high);
    const auto jaws = [](const clamp_division& d) {
        return d.conducts ? require_finite(conductance(1.0 / d.jaws), "conductance of the jaws") : conductance{};
    };
    const auto behind = [](const conductance& g, const clamp_division& d) {
        return require_finite(conductance(1.0 / (1.0 / g + d.arms)), "conductance between cable and jaws");
    };
    joint_circuit out;
    out.add({{jaws(high), jaws(typical), jaws(low)}, jaw.metals});
    out.add({{behind(c.termination.low, high), behind(c.termination.typical, typical), behind(c.termination.high, low)},
             {annealed_copper, c.body_metal}});
    out.outer = c.termination.typical;
    out.body = {c.body_surface, c.body_diameter, c.body_emissivity, c.body_capacity()};
    out.basis.add(contact_basis_of(jaw)).add(c.basis).add(bare_pivot_judgement);
    return out;
}

}  // namespace detail

/// The joint of a work connection: first the jaws on the work, then all between jaws and cable.
/// @throws out_of_range_error, not_finite_error for a clamp that cannot be
[[nodiscard]] inline joint_circuit joint_of(const work_connection& w)
{
    require_positive(w.clamp.body_surface, "clamp surface");
    require_positive(w.clamp.body_diameter, "clamp diameter");
    require_not_negative(w.clamp.body_mass, "clamp mass");
    require_not_negative(w.clamp.rated_current, "rated current");
    require_not_negative(w.clamp.jaw_area, "apparent contact of a jaw");
    for (const conductance& one : {w.clamp.termination.low, w.clamp.termination.typical, w.clamp.termination.high})
        require_not_negative(one, "conductance between cable and jaws");
    require_finite(w.clamp.body_capacity(), "heat stored by the clamp");
    const double jaws = require_within(w.clamp.live_jaws, 1.0, 2.0, "live jaws");
    const contact jaw = jaw_contact_of(w);
    joint_circuit out;
    if (w.clamp.inside && w.clamp.spring) return detail::divided_joint_of(w, jaw);
    out.add({mapped(contact_conductance_of(jaw),
                    [jaws](conductance g) { return require_finite(conductance(jaws * g), "conductance of the jaws"); }),
             jaw.metals});
    out.add({w.clamp.termination, {annealed_copper, w.clamp.body_metal}});
    out.outer = w.clamp.termination.typical;
    out.body = {w.clamp.body_surface, w.clamp.body_diameter, w.clamp.body_emissivity, w.clamp.body_capacity()};
    out.basis.add(contact_basis_of(jaw)).add(w.clamp.basis);
    return out;
}

/// The work side of a work connection. @param w the connection @param where air around
/// @throws not_finite_error, out_of_range_error for a work without thickness
[[nodiscard]] inline work_heat work_of(const work_connection& w, const surroundings& where)
{
    require_positive(w.work_thickness, "work thickness");
    const double jaws = require_within(w.clamp.live_jaws, 1.0, 2.0, "live jaws");
    const area faces = require_finite(area(jaws * require_not_negative(w.clamp.jaw_area, "apparent contact of a jaw")),
                                      "apparent contact of the jaws");
    const temperature work = w.preheat.value_or(where.air);
    const temperature patch = std::max(work, where.air + in_si<temperature_difference>(20.0));
    return {plate_sink(w.onto, w.work_thickness, patch, where), work, faces, patch_capacity(w.onto, w.work_thickness)};
}

}  // namespace weldloop
