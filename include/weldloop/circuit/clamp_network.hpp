#pragma once
/// @file
/// A work clamp as a small heat network: jaw, body with pivot, spring, handles, cable connection. Conductances,
/// surfaces and capacities from its described dimensions; solved by clamp_heat.hpp.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>

#include <weldloop/circuit/air_layer.hpp>
#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/clamp_division.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/fin.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/hot_modulus.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// @name Sources of the network
/// @{

/// The spring among the pieces.
inline constexpr source spring_piece_judgement{"a clamp's spring: conductivity, density, specific heat and resistivity "
                                               "of mild steel; loses heat by the outside of "
                                               "its closed coils, emissivity 0.8; takes heat through the air under its "
                                               "legs (0.1 mm) and along one coil radius of wire, from arms and handles "
                                               "as they are at the pivot between them",
                                               "2026",
                                               {},
                                               source_kind::judgement};
/// A lead as a fin.
inline constexpr source lead_fin_judgement{
    "the lead behind a clamp as one fin whose loss is linear about its temperature far from the clamp", "2026",
    "fin of Incropera 3.6; the linear loss is judgement, held against the cut lead of the loop by a test",
    source_kind::derived};
/// @}

/// The places of a clamp that have a temperature of their own.
enum class clamp_node : std::size_t {
    jaw,     ///< touches the work
    body,    ///< reach and pivot
    spring,  ///< coils; follows the body where there is none
    handle,  ///< what a hand grips; follows the body where there is none
    entry,   ///< cable connection
};
/// How many places a clamp has.
inline constexpr std::size_t clamp_nodes = 5;

/// What lies behind the cable connection, as it takes heat: G (T - far).
struct clamp_outside {
    thermal_conductance conductance = {};  ///< G [W/K], 0 or above
    temperature far = {};                  ///< of the lead where the clamp is no longer felt, period mean
};

/// How the force on the jaws follows temperature, reversibly: (1 - slope (T - 20 degC))^power, never below zero.
struct warm_grip {
    per_kelvin slope = {};  ///< [1/K], 0 for a grip that does not mind
    int power = 1;          ///< 1 for a spring, 2 for a magnet
};

/// A clamp on its work as a heat network. Made by clamp_network_of(); may be changed by hand.
struct clamp_network {
    std::array<thermal_body, clamp_nodes> bodies =
        {};                                    ///< by clamp_node; a surface of 0 belongs to a place that follows
    thermal_conductance jaw_body = {};         ///< [W/K]
    thermal_conductance body_spring = {};      ///< [W/K]
    thermal_conductance handle_spring = {};    ///< [W/K] the spring hangs on the pivot, between body and handle
    thermal_conductance body_handle = {};      ///< [W/K]
    thermal_conductance body_entry = {};       ///< [W/K]
    thermal_conductance jaw_entry = {};        ///< [W/K] by the shunt
    band<conductance> jaws = {};               ///< [S] all live jaws at 20 degC with cold spots and the force when new
    metal_pair jaw_metals = {};                ///< jaw and work
    double force_exponent = 0.7;               ///< m of the force law, 0.1 to 1.5
    weldloop::force force = {};                ///< [N] on each jaw when new, cold
    warm_grip grip = {};                       ///< what warmth does to the force
    clamp_node gripping = clamp_node::spring;  ///< the place whose temperature the force follows
    temperature grip_limit = {};               ///< hotter, what grips is destroyed
    temperature body_melting = {};             ///< of the metal of its body
    band<conductance> termination = {};        ///< [S] between jaws and cable, at 20 degC
    metal_pair termination_metals = {};        ///< of it
    fraction arms_share = 0.0;                 ///< share of the termination's heat made in the arms
    resistance spring_path = {};   ///< [ohm] heat in the spring over the square of the whole current, 20 degC
    fraction spring_yields = 0.0;  ///< how its share of the current falls with its warmth, see clamp_division; 0: never
    work_heat work = {};           ///< what is gripped
    surroundings where = {};       ///< air around
    weldloop::basis basis = {};    ///< of the numbers
};

namespace detail {

// Metal that a pin, foil or missing piece stands for: keeps the arithmetic of a place that follows another finite.
inline constexpr heat_capacity least_piece_capacity = in_si<heat_capacity>(0.1);

inline constexpr length pin_gap = in_si<length>(2e-3);  // see spring_piece_judgement

/// Outside of the closed coils.
[[nodiscard]] inline area coil_surface(const clamp_spring& s)
{
    return s.coils * s.turns * std::numbers::pi * (s.coil_diameter + s.wire_diameter) * s.wire_diameter;
}

/// All legs, two a coil: air under the leg, then wire to the coil; beside them the pin inside the coils.
[[nodiscard]] inline thermal_conductance spring_seat_conductance(const clamp_spring& s, length seat,
                                                                 thermal_conductivity air)
{
    const thermal_conductance under = gap_heat_conductance(air, seat * s.wire_diameter, pressed_gap_height);
    const thermal_conductance along = mild_steel.thermal_conductivity * wire_section(s) / (0.5 * s.coil_diameter);
    constexpr double legs_a_coil = 2.0;
    const area inside = s.coils * s.turns * std::numbers::pi * (s.coil_diameter - s.wire_diameter) * s.wire_diameter;
    return legs_a_coil * s.coils * (under * along / (under + along)) + gap_heat_conductance(air, inside, pin_gap);
}

}  // namespace detail

/// The heat network of a clamp on its work.
///
/// Pieces: jaw, body (reach and pivot), handles, cable connection; each has the share of the body's mass and surface
/// that it has of the length, all have the section mass/(density x length). Neighbours conduct from middle to middle,
/// k A/d; the cable connection hangs on one of the two halves. A shunt conducts beside them from jaw to connection. The
/// spring hangs by its legs on the pivot, whose temperature lies on the straight line between body and handles: against
/// a stamped clamp cut in pieces of 2.5 mm its spring is up to 6 K too hot; hung on the body alone it would be some 25
/// K.
///
/// @param w the clamp on its work; `grip_lost` is not in it @param where air around
/// @throws out_of_range_error, not_finite_error for a clamp that cannot be
/// @see clamp_build_judgement, spring_piece_judgement, pressed_gap
[[nodiscard]] inline clamp_network clamp_network_of(const work_connection& w, const surroundings& where)
{
    const work_clamp& c = w.clamp;
    const clamp_build& b = c.build;
    require_positive(b.jaw, "length of the jaw");
    require_positive(b.reach, "length between jaw and pivot");
    require_not_negative(b.handle, "length of the handles");
    require_positive(b.entry, "length of the cable connection");
    require_not_negative(b.shunt, "section of the shunt");
    require_positive(b.shunt_length, "length of the shunt");
    require_positive(b.spring_seat, "length of the spring's seat");
    require_positive(c.body_mass, "clamp mass");
    require_not_negative(c.arms, "resistance of the arms");
    require_positive(c.force, "clamp force");

    work_connection fresh = w;
    fresh.grip_lost = 0.0;
    const joint_circuit joint = joint_of(fresh);

    clamp_network out;
    const length whole = b.jaw + b.reach + b.handle + b.entry;
    const area section = c.body_mass / (require_positive(c.body_metal.density, "density of the clamp") * whole);
    const auto piece = [&](clamp_node node, length part) {
        const double share = (part / whole).value();
        thermal_body& body = out.bodies[static_cast<std::size_t>(node)];
        body = {share * c.body_surface, c.body_diameter, c.body_emissivity, share * c.body_capacity()};
        body.capacity = std::max(body.capacity, detail::least_piece_capacity);
    };
    piece(clamp_node::jaw, b.jaw);
    piece(clamp_node::body, b.reach);
    piece(clamp_node::handle, b.handle);
    piece(clamp_node::entry, b.entry);
    const auto between = [&](length one, length other, double share_of_section) {
        return require_positive(c.body_metal.thermal_conductivity, "conductivity of the clamp") *
               (share_of_section * section) / (0.5 * (one + other));
    };
    const double one_half = c.live_jaws > 1 ? 0.5 : 1.0;
    out.jaw_body = between(b.jaw, b.reach, 1.0);
    out.body_handle = between(b.reach, b.handle, 1.0);
    out.body_entry = between(b.reach, b.entry, one_half);
    const bool torn = c.inside && c.inside->shunt == shunt_state::broken;
    out.jaw_entry = annealed_copper.thermal_conductivity * (torn ? area{} : b.shunt) / b.shunt_length;

    thermal_body& spring = out.bodies[static_cast<std::size_t>(clamp_node::spring)];
    spring = {.surface = {},
              .diameter = c.body_diameter,
              .emissivity = c.body_emissivity,
              .capacity = detail::least_piece_capacity};
    out.body_spring = out.body_handle;
    if (c.spring) {
        const clamp_spring& s = *c.spring;
        detail::require_spring(s);
        const thermal_conductivity air = air_at(where.air).thermal_conductivity;
        constexpr double coil_emissivity = 0.8;  // see spring_piece_judgement
        spring = {.surface = detail::coil_surface(s),
                  .diameter = s.coil_diameter + s.wire_diameter,
                  .emissivity = coil_emissivity,
                  .capacity = mild_steel.density * detail::spring_wire_length(s) * detail::wire_section(s) *
                              mild_steel.specific_heat};
        // the pivot lies between the middles of reach and handles, which are as hot as body and handle are
        const thermal_conductance seat = detail::spring_seat_conductance(s, b.spring_seat, air);
        const double behind = (b.reach / (b.reach + b.handle)).value();
        out.body_spring = (1.0 - behind) * seat;
        out.handle_spring = behind * seat;
        const double share = static_cast<double>(s.current_share);
        out.spring_path = share * share * spring_resistance(s);
        if (c.inside) {
            const clamp_division divided = divided_clamp_current(fresh);
            out.spring_path = divided.wire;
            out.spring_yields = divided.spring_yields;
        }
        out.grip = {.slope = modulus_slope, .power = 1};
        out.grip_limit = s.wire.tempering;
        out.basis.add(spring_piece_judgement).add(hot_modulus);
    } else {
        out.gripping = clamp_node::body;
        out.grip_limit = std::min(c.body_metal.melting, c.jaw.melting);
    }

    out.body_melting = c.body_metal.melting;
    out.jaws = joint.contacts[0].cold;
    out.jaw_metals = joint.contacts[0].metals;
    out.force_exponent = force_law_exponent(c.shape);
    out.force = c.force;
    out.termination = joint.contacts[1].cold;
    out.termination_metals = joint.contacts[1].metals;
    const resistance arms = c.arms + divided_clamp_current(fresh).arms;
    out.arms_share = std::min(1.0, (arms * out.termination.typical).value());
    out.work = work_of(w, where);
    if (c.kind != clamp_kind::bolted) {  // a lug lies on the work with its whole palm
        thermal_body& jaw = out.bodies[static_cast<std::size_t>(clamp_node::jaw)];
        const area inner = inner_share_of_jaws * jaw.surface;
        out.work.beside = std::max(area{}, inner - out.work.faces);
        jaw.surface -= inner;
        out.basis.add(jaws_beside_contact);
    }
    out.where = where;
    out.basis.add(joint.basis).add(work_patch).add(pressed_gap).add(fin_equations);
    return out;
}

/// The lead behind a clamp as one heated fin without far end, linear about its temperature far from the clamp: that
/// temperature is the settled one of heating_of(), the fin's loss per kelvin is taken there, less what the current's
/// heat gains per kelvin.
///
/// No current gives the air's temperature. A lead that heats faster than it cools far from the clamp (far beyond its
/// melting point) conducts nothing and stays at the melting point of its metal.
/// @param lead behind the clamp @param where air around @param work current [A], 0 or above, and duty
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error
/// @see lead_fin_judgement, heated_fin, decay_length_of()
[[nodiscard]] inline clamp_outside lead_outside(const cable& lead, const surroundings& where, const load& work)
{
    const cable_heating far = heating_of(lead, where, work);
    if (far.conductor_period_mean >= conductor_melting_of(lead.metal)) return {{}, conductor_melting_of(lead.metal)};
    const current effective = work.current * std::sqrt(static_cast<double>(work.duty.share()));
    double decay = 0.0;
    try {
        decay = decay_length_of(lead, where, far.conductor_period_mean, effective).value();
    } catch (const no_solution_error&) {
        return {{}, far.conductor_period_mean};
    }
    const double axial = (lead.metal.thermal_conductivity * lead.size.area()).value();
    return {in_si<thermal_conductance>(axial / decay * std::tanh(lead.length.value() / decay)),
            far.conductor_period_mean};
}

}  // namespace weldloop
