#pragma once
/// @file
/// How a cable is fixed in a clamp: crimped, by a lug on a stud, or under a set-screw.

#include <array>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// What fixes the cable.
inline constexpr source clamp_cable_connection_judgement{
    "cable in a clamp: a crimped lug under a stud as a bolted face, strands under a set-screw as a toothed jaw, both "
    "tightened by hand with 5 N m on M8, dry thread; loose: a tenth of that force is left",
    "2026",
    {},
    source_kind::judgement};

/// How a cable is fixed.
enum class clamp_cable_end {
    crimped,    ///< crimped in the clamp itself
    stud,       ///< a crimped lug under a stud
    set_screw,  ///< strands under a set-screw
};

/// The word for an end, as written in station files.
[[nodiscard]] constexpr std::string_view to_text(clamp_cable_end e)
{
    switch (e) {
    case clamp_cable_end::crimped: return "crimped";
    case clamp_cable_end::stud: return "stud";
    case clamp_cable_end::set_screw: return "set-screw";
    }
    return "crimped";
}

/// Every end.
inline constexpr std::array all_clamp_cable_ends{clamp_cable_end::crimped, clamp_cable_end::stud,
                                                 clamp_cable_end::set_screw};

/// Whether the connection is as it was made.
enum class cable_end_state {
    tight,  ///< as made; a strain relief keeps it so
    loose,  ///< worked loose; a crimp does not know it
};

/// The word for a state, as written in station files.
[[nodiscard]] constexpr std::string_view to_text(cable_end_state s)
{
    return s == cable_end_state::loose ? "loose" : "tight";
}

/// Every state of a connection.
inline constexpr std::array all_cable_end_states{cable_end_state::tight, cable_end_state::loose};

/// The connection of a cable with a clamp.
struct clamp_cable_connection {
    clamp_cable_end made = clamp_cable_end::crimped;  ///< how
    cable_end_state state = cable_end_state::tight;   ///< whether it still is
    torque tightened_to = 5_Nm;                       ///< [N m] of stud or screw, above 0
    length screw_diameter = 8_mm;                     ///< [m] of its thread, above 0
};

/// Share of the force that a loose connection has left; see clamp_cable_connection_judgement.
inline constexpr double loose_force_left = 0.1;

/// Resistance of a cable's connection with a clamp at 20 degC [ohm], clean faces: the crimp, and under a stud the
/// bolted face behind it; under a set-screw strands on the body alone.
/// @param c the connection @param cable section of its metal [m2], above 0, up to largest_crimp @param body what it is
/// fixed on
/// @throws not_finite_error, out_of_range_error @see clamp_cable_connection_judgement
[[nodiscard]] inline band<resistance> cable_connection_resistance(const clamp_cable_connection& c, area cable,
                                                                  const metal& body)
{
    if (c.made == clamp_cable_end::crimped) return crimp_resistance(cable);
    const double left = c.state == cable_end_state::loose ? loose_force_left : 1.0;
    const bool stud = c.made == clamp_cable_end::stud;
    const double exponent = force_law_exponent(stud ? contact_shape::busbar : contact_shape::toothed_jaw);
    const band<double> constant = force_law_constant(annealed_copper, body).constant;
    const band<force> pressing = bolt_force(c.tightened_to, thread_state::dry, c.screw_diameter);
    const auto face = [&](double k, force f) { return force_law_resistance(k, exponent, left * f); };
    const band<resistance> faces{face(constant.low, pressing.high), face(constant.typical, pressing.typical),
                                 face(constant.high, pressing.low)};
    if (!stud) return faces;
    const band<resistance> crimp = crimp_resistance(cable);
    return {crimp.low + faces.low, crimp.typical + faces.typical, crimp.high + faces.high};
}

}  // namespace weldloop
