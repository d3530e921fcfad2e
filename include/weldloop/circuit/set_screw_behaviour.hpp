#pragma once
/// @file
/// A cable end under a set-screw, under current.

#include <algorithm>
#include <cmath>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/scatter.hpp>
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

/// What a cable end under a set-screw does at a current. @param s the terminal @param through current [A], 0 or above
/// @param bulk temperature of the terminal @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const set_screw& s, current through, temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(set_screw_conductance_of(s), palm_metals, through, bulk);
    out.basis.add(force_law_form)
        .add(*force_law_constant(palm_metals.first, palm_metals.second).from)
        .add(force_law_exponents)
        .add(set_screw_judgement)
        .add(underfilled_barrel_judgement)
        .add(*nut_factor(s.thread).from);
    return out;
}

}  // namespace weldloop
