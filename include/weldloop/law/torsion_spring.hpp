#pragma once
/// @file
/// Helical torsion springs of round wire: turns, rate, bending stress, and what they need of room when wound.
/// Source: spring_formulas; 10.8 instead of 64/(2 pi) is its allowance for friction between coils.

#include <numbers>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/law/spring.hpp>

namespace weldloop {

using angular_rate = decltype(torque{} / boost::units::quantity<si::plane_angle>{});  ///< N m per radian

namespace detail {
inline constexpr torque highest_spring_moment = in_si<torque>(1e9);
inline constexpr double friction_turn_divisor = 10.8;  // per turn, between coils; 64/(2 pi) = 10.19 without friction
}  // namespace detail

/// Active turns of a torsion spring with straight legs, Nb + (l1 + l2)/(3 pi D).
/// @param body turns of the body Nb, above 0 @param both_legs l1 + l2 [m], 0 to 1000 D @param coil D [m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double torsion_active_turns(double body, length both_legs, length coil)
{
    detail::require_turns(body, "turns");
    require_not_negative(both_legs, "leg length");
    require_positive(coil, "coil diameter");
    if (both_legs > detail::highest_spring_index * coil)
        throw out_of_range_error("leg length", si_text(both_legs), "up to 1000 coil diameters");
    return body + (both_legs / (3.0 * std::numbers::pi * coil)).value();
}

/// Rate of a torsion spring with the friction of its coils, E d^4/(10.8 D Na) per turn [N m/rad].
///
/// The textbook's 10.8 per turn stands 6 % above 64/(2 pi): coils rub, and measured springs are that much softer.
/// @param youngs E [Pa], above 0 to 10 TPa @param wire d [m], 1 um to 0.2 m @param coil D [m], above d, up to 1000 d
/// @param turns active turns Na, above 0 to 1e6
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline angular_rate torsion_rate(pressure youngs, length wire, length coil, double turns)
{
    detail::require_modulus(youngs, "Young's modulus");
    const double index = spring_index(coil, wire);
    detail::require_turns(turns, "active turns");
    const double d = wire.value();
    return in_si<angular_rate>(youngs.value() * d * d * d /
                               (2.0 * std::numbers::pi * detail::friction_turn_divisor * index * turns));
}

/// Bending stress of a torsion spring at the inner fibre, Ki 32 M/(pi d^3) [Pa].
/// @param moment M [N m], 0 to 1 GN m @param wire d [m], 1 um to 0.2 m @param coil D [m], above d, up to 1000 d
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure torsion_stress(torque moment, length wire, length coil)
{
    require_within(moment, in_si<torque>(0.0), detail::highest_spring_moment, "spring moment");
    const double d = wire.value();
    return in_si<pressure>(inner_bending_factor(spring_index(coil, wire)) * 32.0 * moment.value() /
                           (std::numbers::pi * d * d * d));
}

/// Moment that brings a torsion spring to a bending stress; the inverse of torsion_stress() [N m].
/// @param bending_stress [Pa], 0 to 10 TPa @param wire d [m], 1 um to 0.2 m @param coil D [m], above d, up to 1000 d
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline torque torsion_moment(pressure bending_stress, length wire, length coil)
{
    detail::require_stress(bending_stress, "bending stress");
    const double d = wire.value();
    return in_si<torque>(bending_stress.value() * std::numbers::pi * d * d * d /
                         (32.0 * inner_bending_factor(spring_index(coil, wire))));
}

/// Mean coil diameter of a torsion spring wound closed by an angle, D Nb/(Nb + theta) [m]: it shrinks onto its pin.
/// @param coil D [m] when free, above 0 @param body turns of the body Nb, above 0
/// @param wound theta in turns, 0 or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length wound_coil_diameter(length coil, double body, double wound)
{
    require_positive(coil, "coil diameter");
    detail::require_turns(body, "turns");
    require_within(wound, 0.0, detail::most_turns, "turns wound");
    return coil * (body / (body + wound));
}

/// Length of a torsion spring's close-coiled body wound by an angle, d (Nb + 1 + theta) [m].
/// @param wire d [m], 1 um to 0.2 m @param body turns of the body Nb, above 0 @param wound theta in turns, 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length wound_body_length(length wire, double body, double wound)
{
    require_within(wire, detail::thinnest_spring_wire, detail::thickest_spring_wire, "wire diameter");
    detail::require_turns(body, "turns");
    require_within(wound, 0.0, detail::most_turns, "turns wound");
    return wire * (body + 1.0 + wound);
}

}  // namespace weldloop
