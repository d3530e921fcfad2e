#pragma once
/// @file
/// A spring-loaded pad under current.

#include <numbers>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/part/contact.hpp>
#include <weldloop/part/spring_pad.hpp>

namespace weldloop {

/// What a spring-loaded pad looks like, and how hot its spring is.
inline constexpr source spring_pad_judgement{"spring-loaded pad: bears on three domed points, loses heat by its rim "
                                             "and its back, dull metal of emissivity 0.22, and across its points into "
                                             "10 mm of the metal it bears on; "
                                             "the spring behind it is as hot as the pad and carries no current",
                                             "2026",
                                             {},
                                             source_kind::judgement};

/// The contact of a spring-loaded pad with what it is pressed on. @param p the pad
[[nodiscard]] inline contact pad_contact_of(const spring_pad& p)
{
    return {.metals = {p.pad, p.against},
            .force = p.pressing,
            .surface = p.surface,
            .name = p.name,
            .shape = contact_shape::sphere,
            .points = p.points};
}

/// What a spring-loaded pad does at a current; open without force. @param p the pad
/// @param through current [A], 0 or above @param bulk temperature of the pad
/// @throws not_finite_error, out_of_range_error @see contact_conductance_of(), spring_pad_judgement
[[nodiscard]] inline joint_behaviour behaviour_of(const spring_pad& p, current through, temperature bulk)
{
    return behaviour_of(pad_contact_of(p), through, bulk);
}

/// The body of a spring-loaded pad. @param p the pad @throws not_finite_error, out_of_range_error
/// @see spring_pad_judgement
[[nodiscard]] inline thermal_body body_of(const spring_pad& p)
{
    constexpr double dull_metal = 0.22;
    const length across = require_positive(p.across, "pad across");
    const length thickness = require_positive(p.thickness, "pad thickness");
    const area back = 0.25 * std::numbers::pi * across * across;
    return {.surface = back + std::numbers::pi * across * thickness,
            .diameter = across,
            .emissivity = dull_metal,
            .capacity = detail::heat_of(p.pad, back * thickness)};
}

/// The sheet of a spring-loaded pad. Its spring's loss of tension is not followed: state the force there is now.
/// @param p the pad @throws not_finite_error, out_of_range_error @see spring_pad_judgement
[[nodiscard]] inline part_sheet sheet_of(const spring_pad& p)
{
    part_sheet out;
    const contact face = pad_contact_of(p);
    out.contacts = {{"face", contact_hold::spring, contact_conductance_of(face), face.metals}};
    out.body = body_of(p);
    out.work = p.against;
    out.melting = detail::melting_of(face.metals);
    out.limits = {{part_place::metal, p.wire.tempering, "tempering of the spring behind it", p.wire.tempering_source},
                  detail::joint_limit_at(part_place::metal, joint_kind::contact, "bare copper-alloy contact in air")};
    out.basis.add(contact_basis_of(face)).add(spring_pad_judgement);
    return out;
}

/// What can be otherwise with a spring-loaded pad: its faces, and the force of its spring.
[[nodiscard]] inline part_conditions<spring_pad> conditions_of(const spring_pad& /*pad*/)
{
    return {
        .surface = &spring_pad::surface, .pressing = &spring_pad::pressing, .usual_pressing = spring_pad().pressing};
}

}  // namespace weldloop
