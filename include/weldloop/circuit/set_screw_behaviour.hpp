#pragma once
/// @file
/// A cable end under a set-screw, under current.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/set_screw.hpp>

namespace weldloop {

/// What strands make of a screw's force.
inline constexpr source set_screw_judgement{
    "set-screw on copper in brass: of its force bare strands keep 30, 50, 70 %, a ferrule 60, 80, 95 %; exponent of "
    "the "
    "force law 0.7, between 0.5 of one point and 1.0 published for many strands on a flat",
    "2026",
    {},
    source_kind::judgement};
/// Share of the force that bare strands keep once they have settled; see set_screw_judgement.
inline constexpr band<double> force_kept_by_strands{0.3, 0.5, 0.7};
/// Share of the force that a ferrule keeps; see set_screw_judgement.
inline constexpr band<double> force_kept_by_ferrule{0.6, 0.8, 0.95};

/// Conductance of a cable end under a set-screw at 20 degC [S]: the force law on the settled force of the screw, less
/// by the cube of the share of strands under it as in a crimp. Constant, nut factor, settling and exponent scatter
/// independently. Open without torque.
/// @param s the terminal: torque 0 or above, diameter above 0
/// @throws not_finite_error, out_of_range_error @see set_screw_judgement, underfilled_barrel_judgement
[[nodiscard]] inline band<conductance> set_screw_conductance_of(const set_screw& s)
{
    const band<force> screw = bolt_force(s.tightening, s.thread, s.screw_diameter);
    if (!(screw.typical.value() > 0.0)) return detail::open_circuit;
    const band<double>& kept = s.ferrule ? force_kept_by_ferrule : force_kept_by_strands;
    const double usual = force_law_exponent(contact_shape::toothed_jaw);
    const double few = force_law_exponent(contact_shape::point), many = force_law_exponent(contact_shape::flat);
    const force settled = kept.typical * screw.typical;
    const auto of_force = [&](double share) { return std::pow(share, -usual); };
    const band<double> by_screw = mapped(screw, [&](force f) { return of_force((f / screw.typical).value()); });
    const band<double> by_settling = mapped(kept, [&](double k) { return of_force(k / kept.typical); });
    const double kgf = detail::kgf_per_newton * settled.value();
    const double one = std::pow(kgf, usual - few), other = std::pow(kgf, usual - many);
    const band<double> by_exponent{std::min({one, other, 1.0}), 1.0, std::max({one, other, 1.0})};
    const band<double> constant = force_law_constant(palm_metals.first, palm_metals.second).constant;
    const band<double> scatter = product_of(product_of(constant, by_screw), product_of(by_settling, by_exponent));
    const double worse = underfilled_factor(s.missing_strands);
    return detail::scattered_conductance(force_law_conductance(1.0, usual, settled) / worse, scatter);
}

/// What a cable end under a set-screw rests on. @param s the terminal
[[nodiscard]] inline basis basis_of(const set_screw& s)
{
    basis out;
    return out.add(force_law_form)
        .add(*force_law_constant(palm_metals.first, palm_metals.second).from)
        .add(force_law_exponents)
        .add(set_screw_judgement)
        .add(underfilled_barrel_judgement)
        .add(*nut_factor(s.thread).from);
}

/// What a cable end under a set-screw does at a current. @param s the terminal @param through current [A], 0 or above
/// @param bulk temperature of the terminal @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const set_screw& s, current through, temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(set_screw_conductance_of(s), palm_metals, through, bulk);
    out.basis.add(basis_of(s));
    return out;
}

/// What the terminal of a set-screw looks like.
inline constexpr source set_screw_shape_judgement{
    "set-screw terminal: a block of dull brass two strand diameters across and three long, emissivity 0.22",
    "2026",
    {},
    source_kind::judgement};

/// The body of a set-screw's terminal. @param s the terminal @see set_screw_shape_judgement
[[nodiscard]] inline thermal_body body_of(const set_screw& s)
{
    constexpr double dull_metal = 0.22;
    const length across = 2.0 * detail::strand_diameter(s.size), along = 3.0 * detail::strand_diameter(s.size);
    return {.surface = std::numbers::pi * across * (along + 0.5 * across),
            .diameter = across,
            .emissivity = dull_metal,
            .capacity = detail::heat_of(brass, 0.25 * std::numbers::pi * across * across * along)};
}

/// The sheet of a cable end under a set-screw. @param s the terminal @throws not_finite_error, out_of_range_error
/// @see set_screw_shape_judgement
[[nodiscard]] inline part_sheet sheet_of(const set_screw& s)
{
    part_sheet out;
    const band<conductance> screw = set_screw_conductance_of(s);
    out.contacts = {{"screw", contact_hold::screw, screw, palm_metals}};
    out.body = body_of(s);
    out.melting = detail::melting_of(palm_metals);
    out.outer_face = screw.typical;
    out.limits = {detail::joint_limit_at(part_place::metal, joint_kind::terminal, "bare terminal in air")};
    out.basis.add(basis_of(s)).add(set_screw_shape_judgement);
    return out;
}

/// What can be otherwise with a cable end under a set-screw.
/// @param s the cable end @throws as usual_bolt_torque()
[[nodiscard]] inline part_conditions<set_screw> conditions_of(const set_screw& s)
{
    return {.tightening = &set_screw::tightening,
            .usual_tightening = std::min(set_screw().tightening, usual_bolt_torque(s.screw_diameter)),
            .missing_strands = &set_screw::missing_strands};
}

}  // namespace weldloop
