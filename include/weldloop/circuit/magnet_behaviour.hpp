#pragma once
/// @file
/// A magnetic work connection under current.

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/magnet.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/work_magnet.hpp>

namespace weldloop {

/// Whether a magnet holds on a metal: of the table only mild steel. @param m the metal, known by its name
[[nodiscard]] constexpr bool holds_a_magnet(const metal& m)
{
    return m == mild_steel;
}

/// Pull of a work magnet where it sits [N]; none on stainless steel, aluminium or copper. @param m the magnet
/// @throws not_finite_error, out_of_range_error @see magnet_force()
[[nodiscard]] inline magnet_pull pull_of(const work_magnet& m)
{
    const magnet_pull on_steel = magnet_force(m.rated, m.grade, m.magnet, m.gap);
    return holds_a_magnet(m.work) ? on_steel : magnet_pull{{}, on_steel.damaged};
}

/// The contact of a work magnet's pad, under its share of the pull. @param m the magnet
/// @throws not_finite_error, out_of_range_error @see magnet_pad_judgement
[[nodiscard]] inline contact pad_contact_of(const work_magnet& m)
{
    return {.metals = {m.pad, m.work},
            .force = static_cast<double>(m.pad_share) * pull_of(m).force,
            .surface = m.surface,
            .name = m.name,
            .shape = contact_shape::toothed_jaw,
            .points = m.points};
}

/// What a work magnet does at a current; open on a metal that holds no magnet. @param m the magnet
/// @param through current [A], 0 or above @param bulk temperature of pad and work
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const work_magnet& m, current through, temperature bulk)
{
    joint_behaviour out = behaviour_of(pad_contact_of(m), through, bulk);
    out.basis.add(magnet_pad_judgement).add(magnet_gap_judgement).add(*m.grade.from);
    return out;
}

/// What can be otherwise with a work magnet.
[[nodiscard]] inline part_conditions<work_magnet> conditions_of(const work_magnet&)
{
    return {.surface = &work_magnet::surface, .gap = &work_magnet::gap};
}

}  // namespace weldloop
