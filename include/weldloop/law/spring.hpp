#pragma once
/// @file
/// Helical springs of round wire, in compression and in torsion: rate, stress, turns; moduli when hot.
///
/// d wire diameter, D mean coil diameter, C = D/d spring index. The curvature factors are made for C from 4 to 12; the
/// formulas are evaluated for any C above 1, see usual_spring_index().

#include <numbers>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

/// @name Sources of the spring laws
/// @{

/// Rates and stresses.
inline constexpr source spring_formulas{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                        "equations 10-3 to 10-9, 10-43, 10-50, 10-51", source_kind::handbook};
/// Active turns and solid length.
inline constexpr source spring_turns{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                     "table 10-1 and equation 10-48", source_kind::memory};
/// Moduli when hot.
inline constexpr source hot_modulus{
    "spring makers' association data: 2 % per 55 K, 20 to 200 degC", {}, {}, source_kind::handbook};
/// @}

using spring_rate = decltype(force{} / length{});                                     ///< N/m
using angular_rate = decltype(torque{} / boost::units::quantity<si::plane_angle>{});  ///< N m per radian

namespace detail {
// What a spring can be, wide enough for any: a watch hair spring to a rail buffer.
inline constexpr length thinnest_spring_wire = in_si<length>(1e-6);
inline constexpr length thickest_spring_wire = in_si<length>(0.2);
inline constexpr double highest_spring_index = 1000.0;
inline constexpr double most_turns = 1e6;
inline constexpr force highest_spring_load = in_si<force>(1e9);
inline constexpr torque highest_spring_moment = in_si<torque>(1e9);
inline constexpr double friction_turn_divisor = 10.8;  // per turn, between coils; 64/(2 pi) = 10.19 without friction

inline double require_index(double index)
{
    require_within(index, 1.0, highest_spring_index, "spring index");
    if (index == 1.0) throw out_of_range_error("spring index", "1", "above 1");
    return index;
}

inline double require_turns(double turns, std::string_view what)
{
    require_within(turns, 0.0, most_turns, what);
    if (turns == 0.0) throw out_of_range_error(std::string(what), "0", "above zero");
    return turns;
}

// Stress, modulus and hardness in pascal: nothing solid reaches the upper end.
inline pressure require_stress(pressure stress, std::string_view what)
{
    return require_within(stress, in_si<pressure>(0.0), in_si<pressure>(1e13), what);
}

inline pressure require_modulus(pressure modulus, std::string_view what)
{
    return require_stress(require_positive(modulus, what), what);
}
}  // namespace detail

/// Loss of modulus per kelvin, relative to 20 degC: 2 % per 55 K. @see hot_modulus
inline constexpr per_kelvin modulus_slope = in_si<per_kelvin>(3.6e-4);

/// Young's or shear modulus at a temperature, E(T) = E20 (1 - a (T - 20 degC)) [Pa].
///
/// The loss is reversible: it comes back on cooling and is kept apart from relaxation. Published for 20 to 200 degC;
/// beyond, an extrapolation.
/// @param at_20 modulus at 20 degC [Pa], above 0 @param t up to 1500 degC, where steel melts
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure modulus_at(pressure at_20, temperature t)
{
    detail::require_modulus(at_20, "modulus");
    require_within(t.in_celsius(), -temperature::celsius_zero_in_kelvin, 1500.0, "spring temperature in degC");
    return at_20 * (1.0 - (modulus_slope * (t - reference_temperature)).value());
}

/// Share of its force at 20 degC that an unrelaxed spring has at a temperature: modulus_at() over E20.
/// @param t up to 1500 degC @throws out_of_range_error
[[nodiscard]] inline double hot_force_ratio(temperature t)
{
    const pressure unit = in_si<pressure>(1.0);
    return (modulus_at(unit, t) / unit).value();
}

/// Spring index C = D/d.
/// @param coil mean coil diameter D [m], above d, up to 1000 d @param wire wire diameter d [m], 1 um to 0.2 m
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double spring_index(length coil, length wire)
{
    require_within(wire, detail::thinnest_spring_wire, detail::thickest_spring_wire, "wire diameter");
    require_positive(coil, "coil diameter");
    if (!(coil > wire && coil <= detail::highest_spring_index * wire))
        throw out_of_range_error("coil diameter", si_text(coil),
                                 "above the wire diameter of " + si_text(wire) + ", up to 1000 times that");
    return (coil / wire).value();
}

/// Whether an index lies within 4 to 12, for which the curvature factors are made.
[[nodiscard]] constexpr bool usual_spring_index(double index)
{
    return index >= 4.0 && index <= 12.0;
}

/// Wahl's factor of direct shear and curvature, (4C - 1)/(4C - 4) + 0.615/C.
/// @param index C, above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double wahl_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index;
}

/// Bergstrasser's factor of the same, (4C + 2)/(4C - 3); within 1.4 % of Wahl's from C 4, 1 % from C 8.
/// @param index C, above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double bergstrasser_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index + 2.0) / (4.0 * index - 3.0);
}

/// Factor of direct shear alone, 1 + 0.5/C, for a spring that bears a steady load once.
/// @param index C, above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double direct_shear_factor(double index)
{
    detail::require_index(index);
    return 1.0 + 0.5 / index;
}

/// Curvature factor of bending at the inner fibre of a torsion spring, (4C^2 - C - 1)/(4C (C - 1)).
/// @param index C, above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double inner_bending_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index * index - index - 1.0) / (4.0 * index * (index - 1.0));
}

/// Curvature factor at the outer fibre, (4C^2 + C - 1)/(4C (C + 1)).
/// @param index C, above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double outer_bending_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index * index + index - 1.0) / (4.0 * index * (index + 1.0));
}

/// How the ends of a compression spring are made.
enum class coil_ends {
    plain,           ///< cut off
    plain_ground,    ///< cut off and ground
    squared,         ///< closed
    squared_ground,  ///< closed and ground
};

/// Turns of a compression spring that give way: all of them for plain ends, one less when those are ground, two less
/// for closed ends.
/// @param total turns of wire @param ends how they are made @throws out_of_range_error if none is left
[[nodiscard]] inline double active_turns(double total, coil_ends ends)
{
    const double dead = ends == coil_ends::plain ? 0.0 : ends == coil_ends::plain_ground ? 1.0 : 2.0;
    require_within(total, 0.0, detail::most_turns, "turns");
    if (!(total > dead))
        throw out_of_range_error("turns", number_text(total), "above " + number_text(dead) + " for these ends");
    return total - dead;
}

/// Length of a compression spring pressed solid [m]: d Nt for ground ends, d (Nt + 1) otherwise.
/// @param wire wire diameter d [m], 1 um to 0.2 m @param total turns of wire Nt @param ends how they are made
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length solid_length(length wire, double total, coil_ends ends)
{
    require_within(wire, detail::thinnest_spring_wire, detail::thickest_spring_wire, "wire diameter");
    detail::require_turns(total, "turns");
    const bool ground = ends == coil_ends::plain_ground || ends == coil_ends::squared_ground;
    return wire * (ground ? total : total + 1.0);
}

/// Rate of a compression or extension spring, G d^4/(8 D^3 Na) [N/m].
/// @param shear G [Pa] @param wire d [m] @param coil D [m], above d @param turns active turns Na, above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline spring_rate compression_rate(pressure shear, length wire, length coil, double turns)
{
    detail::require_modulus(shear, "shear modulus");
    const double index = spring_index(coil, wire);
    return shear * wire / (8.0 * index * index * index * detail::require_turns(turns, "active turns"));
}

/// Shear stress of a compression spring at the inner fibre, K 8 F D/(pi d^3) with Bergstrasser's K [Pa].
/// @param load F [N], 0 to 1 GN @param wire d [m] @param coil D [m], above d @throws not_finite_error,
/// out_of_range_error
[[nodiscard]] inline pressure compression_stress(force load, length wire, length coil)
{
    require_within(load, in_si<force>(0.0), detail::highest_spring_load, "spring load");
    const double index = spring_index(coil, wire);
    return bergstrasser_factor(index) * 8.0 * index / std::numbers::pi * load / (wire * wire);
}

/// Load that brings a compression spring to a shear stress; the inverse of compression_stress() [N].
/// @param shear_stress [Pa], 0 to 10 TPa @param wire d [m] @param coil D [m], above d @throws not_finite_error,
/// out_of_range_error
[[nodiscard]] inline force compression_load(pressure shear_stress, length wire, length coil)
{
    detail::require_stress(shear_stress, "shear stress");
    const double index = spring_index(coil, wire);
    return shear_stress * (wire * wire) * (std::numbers::pi / (8.0 * index * bergstrasser_factor(index)));
}

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
/// @param youngs E [Pa] @param wire d [m] @param coil D [m], above d @param turns active turns Na, above 0
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
/// @param moment M [N m], 0 to 1 GN m @param wire d [m] @param coil D [m], above d @throws not_finite_error,
/// out_of_range_error
[[nodiscard]] inline pressure torsion_stress(torque moment, length wire, length coil)
{
    require_within(moment, in_si<torque>(0.0), detail::highest_spring_moment, "spring moment");
    const double d = wire.value();
    return in_si<pressure>(inner_bending_factor(spring_index(coil, wire)) * 32.0 * moment.value() /
                           (std::numbers::pi * d * d * d));
}

/// Moment that brings a torsion spring to a bending stress; the inverse of torsion_stress() [N m].
/// @param bending_stress [Pa], 0 to 10 TPa @param wire d [m] @param coil D [m], above d @throws not_finite_error,
/// out_of_range_error
[[nodiscard]] inline torque torsion_moment(pressure bending_stress, length wire, length coil)
{
    detail::require_stress(bending_stress, "bending stress");
    const double d = wire.value();
    return in_si<torque>(bending_stress.value() * std::numbers::pi * d * d * d /
                         (32.0 * inner_bending_factor(spring_index(coil, wire))));
}

}  // namespace weldloop
