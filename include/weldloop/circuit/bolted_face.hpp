#pragma once
/// @file
/// Two faces pressed together by bolts, and a body of metal in series with a joint: what straps, studs and splices are
/// made of.

#include <cmath>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Two faces and the bolts through them.
struct bolted_face {
    metal_pair metals;                             ///< that meet
    length bolt_diameter;                          ///< [m] nominal thread, above 0
    torque tightening;                             ///< [N m] on each bolt, 0 or above
    thread_state thread;                           ///< of the bolts
    int bolts = 1;                                 ///< 1 to 100
    surface_state surface = surface_state::clean;  ///< of the worse face
};

/// Conductance of bolted faces at 20 degC [S]: force law with the exponent of bus bars and the force of all bolts; nut
/// factor, constant and surface scatter independently (the bolts of one face alike). Open without torque and on
/// unbroken paint. @param f the faces @throws not_finite_error, out_of_range_error @see bolt_force(),
/// force_law_constant()
[[nodiscard]] inline band<conductance> bolted_face_conductance_of(const bolted_face& f)
{
    const double bolts = require_within(f.bolts, 1.0, 100.0, "bolts");
    const band<force> one = bolt_force(f.tightening, f.thread, f.bolt_diameter);
    const auto surface = resistance_multiplier(f.surface);
    if (!surface || !(one.typical.value() > 0.0)) return detail::open_circuit;
    const double exponent = force_law_exponent(contact_shape::busbar);
    const band<double> by_bolt = mapped(one, [&](force x) { return std::pow((one.typical / x).value(), exponent); });
    const band<double> constant = force_law_constant(f.metals.first, f.metals.second).constant;
    return detail::scattered_conductance(force_law_conductance(1.0, exponent, bolts * one.typical),
                                         product_of(product_of(constant, by_bolt), *surface));
}

/// What bolted faces rest on. @param f the faces @throws as force_law_constant()
[[nodiscard]] inline basis basis_of(const bolted_face& f)
{
    basis out;
    detail::add_contact_basis(out, force_law_constant(f.metals.first, f.metals.second));
    return out.add(*nut_factor(f.thread).from);
}

/// Torque a bolt, nut or screw of a joint should have at least [N m]: the published one of its thread, of a thread
/// between two rows that of the smaller, of one below the table none. @param diameter nominal thread [m], above 0
/// @throws not_finite_error, out_of_range_error @see electrical_torque_table
[[nodiscard]] inline torque usual_bolt_torque(length diameter)
{
    constexpr double same_thread = 1.01;
    require_positive(diameter, "bolt diameter");
    torque out = {};
    for (const bolt_torque_row& row : electrical_torques)
        if (row.diameter <= same_thread * diameter) out = row.torque;
    return out;
}

/// What bolted faces do at a current. @param f the faces @param through current [A], 0 or above @param bulk of the
/// joint
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const bolted_face& f, current through, temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(bolted_face_conductance_of(f), f.metals, through, bulk);
    out.basis.add(basis_of(f));
    return out;
}

/// A joint with a length of metal in series: drop, resistance and heat of the metal added, its spots as they are.
/// @param joint what it does at the current @param body resistance of the metal [ohm], 0 or above
/// @param through current [A], 0 or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour with_body(joint_behaviour joint, resistance body, current through)
{
    require_not_negative(body, "resistance of the body");
    require_not_negative(through, "current");
    if (!joint.conducts) return joint;
    const voltage drop = require_finite(voltage(body * through), "drop of the body");
    const power loss = require_finite(power(drop * through), "heat of the body");
    const auto raise = [](auto& b, const auto& by) {
        for (auto* one : {&b.low, &b.typical, &b.high}) *one = require_finite(*one + by, "joint with its metal");
    };
    raise(joint.resistance, body);
    raise(joint.drop, drop);
    raise(joint.loss, loss);
    return joint;
}

}  // namespace weldloop
