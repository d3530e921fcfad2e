#pragma once
/// @file
/// How the current of a spring clamp divides inside it: between its jaws, and what comes by the jaw without cable
/// between pivot, shunt and spring. One small circuit, solved.

#include <algorithm>
#include <limits>
#include <numbers>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/clamp_inside.hpp>
#include <weldloop/part/clamp_spring.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// Pivot without shunt.
inline constexpr source bare_pivot_judgement{
    "a pivot without shunt: the two arms on their pin as one contact, 5 times a clean one, under the jaws' force and "
    "that "
    "of the spring's legs, which push the handles apart behind it; "
    "the legs of the spring, which slide as the pivot does, likewise under their own force",
    "2026",
    {},
    source_kind::judgement};

namespace detail {

inline constexpr double worn_contact = 5.0;  // over a clean one, see bare_pivot_judgement

[[nodiscard]] inline length spring_wire_length(const clamp_spring& s)
{
    return s.coils * s.turns * std::numbers::pi * s.coil_diameter;
}

[[nodiscard]] inline area wire_section(const clamp_spring& s)
{
    return 0.25 * std::numbers::pi * s.wire_diameter * s.wire_diameter;
}

inline void require_spring(const clamp_spring& s)
{
    require_positive(s.wire_diameter, "spring wire diameter");
    require_within(s.coil_diameter, s.wire_diameter, in_si<length>(1.0), "spring coil diameter");
    require_within(s.coils, 1.0, 100.0, "spring coils");
    if (!(require_within(s.turns, 0.0, 1e4, "spring turns") > 0.0))
        throw out_of_range_error("spring turns", "0", "above zero");
}

}  // namespace detail

/// Resistance of a clamp's spring from leg to leg at 20 degC, all coil bodies side by side [ohm].
/// @param s the spring @throws not_finite_error, out_of_range_error @see spring_piece_judgement
[[nodiscard]] inline resistance spring_resistance(const clamp_spring& s)
{
    detail::require_spring(s);
    const double side_by_side = s.coils;
    return mild_steel.resistivity * detail::spring_wire_length(s) /
           (side_by_side * side_by_side * detail::wire_section(s));
}

/// What one leg of a clamp's spring presses on its arm with [N]: a coil body's moment over the length on which the leg
/// lies; a compression spring's own force. @param clamp with a spring
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline force spring_leg_force(const work_clamp& clamp)
{
    const clamp_spring& s = *clamp.spring;
    detail::require_spring(s);
    if (s.compression) return detail::load_of_one(s, clamp.force);
    return clamp.force * (s.arm / (static_cast<double>(s.coils) *
                                   require_positive(clamp.build.spring_seat, "length of the spring's seat")))
                             .value();
}

/// Resistance of the legs of a clamp's spring on the arms at 20 degC, two in a row for each coil body, all coil bodies
/// side by side [ohm]: what leads the current into the wire are contacts, worn like the pivot's.
/// @param clamp with a spring and a force above 0 @throws not_finite_error, out_of_range_error
/// @see bare_pivot_judgement
[[nodiscard]] inline resistance spring_leg_resistance(const work_clamp& clamp)
{
    constexpr double legs_a_coil = 2.0;
    const double constant = detail::worn_contact * force_law_constant(mild_steel, clamp.body_metal).constant.typical;
    return legs_a_coil / static_cast<double>(clamp.spring->coils) *
           force_law_resistance(constant, force_law_exponent(contact_shape::toothed_jaw), spring_leg_force(clamp));
}

/// Resistance of a bare, worn pivot at 20 degC [ohm]. @param clamp whose halves turn on it; its force is above 0
/// @throws not_finite_error, out_of_range_error @see bare_pivot_judgement
[[nodiscard]] inline resistance pivot_resistance(const work_clamp& clamp)
{
    // a lever between two forces to one side
    const double pressed =
        clamp.force.value() + (clamp.spring ? static_cast<double>(clamp.spring->coils) * spring_leg_force(clamp).value()
                                            : clamp.force.value());
    const double constant =
        detail::worn_contact * force_law_constant(clamp.body_metal, clamp.body_metal).constant.typical;
    return force_law_resistance(constant, force_law_exponent(contact_shape::toothed_jaw), in_si<force>(pressed));
}

/// Temperatures at which the current of a clamp divides.
struct clamp_division_heat {
    temperature jaws = reference_temperature;    ///< of jaws, arms, pivot and shunt
    temperature spring = reference_temperature;  ///< of the wire
};

/// A clamp's current divided. Shares of the whole; resistances are heat over its square, so that they add up to the
/// clamp's from the work to the pivot's side of the cable connection.
struct clamp_division {
    fraction other_jaw = 0.0;  ///< by the jaw without cable
    fraction spring = 0.0;     ///< through the wire
    fraction shunt = 0.0;      ///< through the shunt
    fraction pivot = 0.0;      ///< through the pin
    /// How the spring's share yields as its wire grows g times in resistance: spring / (1 + spring_yields (g - 1)); 0
    /// to 1, near 1 where what lies beside the wire carries nearly all.
    fraction spring_yields = 0.0;
    resistance jaws = {};  ///< [ohm] contacts of both jaws; 0 where both are open
    resistance arms = {};  ///< [ohm] both arms up to the pivot, pin and shunt, the arms' half of the legs' contacts
    resistance wire = {};  ///< [ohm] the spring, with its half of the contacts of its legs
    bool conducts = true;  ///< false: both jaws are open
};

/// Divides the current of a spring clamp that has `inside`: I2/I = Z1/(Z1 + Z2) with Z1 jaw and arm on the cable's
/// side, Z2 the other jaw, its arm and 1/(1/Rp + 1/Rb + 1/Rs) of pivot, shunt and spring (wire and legs); these share
/// I2 as their conductances. Contacts before their spots yield. An insulated half (one live jaw) carries nothing.
///
/// The hotter the spring, the less it takes: `spring_yields` says by how much. The others take what it leaves.
/// @param w the clamp on its work; the cable's jaw has `cable_jaw_surface` where that is stated
/// @param level both jaws at this point of their scatter @param heat temperatures
/// @return all zero for a clamp without `inside` or spring
/// @throws not_finite_error, out_of_range_error @see bare_pivot_judgement
[[nodiscard]] inline clamp_division divided_clamp_current(const work_connection& w, scatter level = scatter::typical,
                                                          const clamp_division_heat& heat = {})
{
    const work_clamp& c = w.clamp;
    clamp_division out;
    if (!c.inside || !c.spring) return out;
    const scatter of_conductance = level == scatter::low    ? scatter::high
                                   : level == scatter::high ? scatter::low
                                                            : scatter::typical;
    const double left = 1.0 - static_cast<double>(w.grip_lost);
    const auto jaw = [&](surface_state surface) {
        return pick(contact_conductance_of(contact{
                        .metals = {c.jaw, w.onto}, .force = left * c.force, .surface = surface, .shape = c.shape}),
                    of_conductance)
            .value();
    };
    const auto hot = [](const metal& m, temperature t) { return (m.resistivity_at(t) / m.resistivity).value(); };
    constexpr double halves = 2.0;
    const clamp_build& b = c.build;
    const length whole = b.jaw + b.reach + b.handle + b.entry;
    const area half = c.body_mass / (halves * c.body_metal.density * whole);
    const double arm = (c.body_metal.resistivity_at(heat.jaws) * (b.jaw + b.reach) / half).value();

    const double own_jaw = jaw(w.cable_jaw_surface.value_or(w.surface)), other_jaw = jaw(w.surface);
    const double pin = c.inside->pivot == pivot_state::conducts
                           ? 1.0 / (pivot_resistance(c).value() * hot(c.body_metal, heat.jaws))
                           : 0.0;
    const double braid = c.inside->shunt == shunt_state::whole
                             ? (b.shunt / (annealed_copper.resistivity_at(heat.jaws) * b.shunt_length)).value()
                             : 0.0;
    const double legs = spring_leg_resistance(c).value() * hot(c.body_metal, heat.jaws);
    const double coils = spring_resistance(*c.spring).value() * hot(mild_steel, heat.spring);
    const double wire = 1.0 / (coils + legs);
    const double crossing = pin + braid + wire;

    const double own = own_jaw > 0.0 ? 1.0 / (1.0 / own_jaw + arm) : 0.0;
    const bool joined = c.live_jaws > 1 && other_jaw > 0.0;
    const double other = joined ? 1.0 / (1.0 / other_jaw + arm + 1.0 / crossing) : 0.0;
    if (!(own + other > 0.0)) {
        out.conducts = false;
        return out;
    }
    const double by_other = other / (own + other), by_own = 1.0 - by_other;
    out.other_jaw = by_other;
    out.spring = by_other * wire / crossing;
    out.shunt = by_other * braid / crossing;
    out.pivot = by_other * pin / crossing;
    if (joined) {  // share of the wire = Z1 / (A + B W), A = Z1 + R2 + arm, B = 1 + A (1/Rp + 1/Rb), W wire and legs
        const double beside_it = pin + braid, to_crossing = 1.0 / other_jaw + arm;
        const double around = own > 0.0 ? (1.0 / own + to_crossing) / (1.0 + (1.0 / own + to_crossing) * beside_it)
                              : beside_it > 0.0 ? 1.0 / beside_it
                                                : std::numeric_limits<double>::infinity();
        out.spring_yields = coils / (around + coils + legs);
    }
    const auto heat_of = [](double share, double conductance_of_it) {
        return share > 0.0 ? share * share / conductance_of_it : 0.0;
    };
    out.jaws = in_si<resistance>(heat_of(by_own, own_jaw) + heat_of(by_other, other_jaw));
    out.arms = in_si<resistance>((by_own * by_own + by_other * by_other) * arm +
                                 heat_of(static_cast<double>(out.shunt), braid) +
                                 heat_of(static_cast<double>(out.pivot), pin));
    // the heat of a contact goes half to either side
    const double through = static_cast<double>(out.spring), beside = 0.5 * through * through * legs;
    out.arms += in_si<resistance>(beside);
    out.wire = in_si<resistance>(heat_of(through, wire) - beside);
    return out;
}

}  // namespace weldloop
