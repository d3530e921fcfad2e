#pragma once
/// @file
/// Helical compression springs of round wire: turns, rate, shear stress, force at a length, buckling.
///
/// Slenderness l = a L0/D with a for the way the ends are held. Below l^2 = C2 = 2 pi^2 (E - G)/(2 G + E) a spring is
/// stable at any deflection (2.63 for steel); above it buckles at y = L0 C1 (1 - sqrt(1 - C2/l^2)),
/// C1 = E/(2 (E - G)). Holds for squared and ground ends and a spring not guided by pin or tube.

#include <cmath>
#include <numbers>
#include <optional>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/law/spring.hpp>

namespace weldloop {

using spring_rate = decltype(force{} / length{});  ///< N/m

namespace detail {
inline constexpr force highest_spring_load = in_si<force>(1e9);
}  // namespace detail

/// How the ends of a compression spring are made.
enum class coil_ends {
    plain,           ///< cut off
    plain_ground,    ///< cut off and ground
    squared,         ///< closed
    squared_ground,  ///< closed and ground
};

/// Turns of a compression spring that give way: all of them for plain ends, one less when those are ground, two less
/// for closed ends.
/// @param total turns of wire, up to 1e6 @param ends how they are made
/// @throws not_finite_error; out_of_range_error too if none is left
[[nodiscard]] inline double active_turns(double total, coil_ends ends)
{
    const double dead = ends == coil_ends::plain ? 0.0 : ends == coil_ends::plain_ground ? 1.0 : 2.0;
    require_within(total, 0.0, detail::most_turns, "turns");
    if (!(total > dead))
        throw out_of_range_error("turns", number_text(total), "above " + number_text(dead) + " for these ends");
    return total - dead;
}

/// Length of a compression spring pressed solid [m]: d Nt for ground ends, d (Nt + 1) otherwise.
/// @param wire wire diameter d [m], 1 um to 0.2 m @param total turns of wire Nt, above 0 to 1e6
/// @param ends how they are made
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length solid_length(length wire, double total, coil_ends ends)
{
    require_within(wire, detail::thinnest_spring_wire, detail::thickest_spring_wire, "wire diameter");
    detail::require_turns(total, "turns");
    const bool ground = ends == coil_ends::plain_ground || ends == coil_ends::squared_ground;
    return wire * (ground ? total : total + 1.0);
}

/// Rate of a compression or extension spring, G d^4/(8 D^3 Na) [N/m].
/// @param shear G [Pa], above 0 to 10 TPa @param wire d [m], 1 um to 0.2 m @param coil D [m], above d, up to 1000 d
/// @param turns active turns Na, above 0 to 1e6
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline spring_rate compression_rate(pressure shear, length wire, length coil, double turns)
{
    detail::require_modulus(shear, "shear modulus");
    const double index = spring_index(coil, wire);
    return require_finite(
        spring_rate(shear * wire / (8.0 * index * index * index * detail::require_turns(turns, "active turns"))),
        "spring rate");
}

/// What the stress of a compression spring is corrected for.
enum class coil_correction {
    wahl,          ///< direct shear and curvature, Wahl's form
    bergstrasser,  ///< the same, Bergstrasser's form
    direct_shear,  ///< direct shear alone: a steady load, where the curvature's peak yields and does no harm
};

/// The factor of a correction. @param index C [1], above 1 to 1000 @param correction which
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double coil_factor(double index, coil_correction correction)
{
    switch (correction) {
    case coil_correction::wahl: return wahl_factor(index);
    case coil_correction::bergstrasser: return bergstrasser_factor(index);
    case coil_correction::direct_shear: return direct_shear_factor(index);
    }
    return wahl_factor(index);
}

/// Shear stress of a compression spring at the inner fibre, K 8 F D/(pi d^3) [Pa].
/// @param load F [N], 0 to 1 GN @param wire d [m], 1 um to 0.2 m @param coil D [m], above d, up to 1000 d
/// @param correction what K stands for
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure compression_stress(force load, length wire, length coil,
                                                 coil_correction correction = coil_correction::wahl)
{
    require_within(load, in_si<force>(0.0), detail::highest_spring_load, "spring load");
    const double index = spring_index(coil, wire);
    return coil_factor(index, correction) * 8.0 * index / std::numbers::pi * load / (wire * wire);
}

/// Load that brings a compression spring to a shear stress; the inverse of compression_stress() [N].
/// @param shear_stress [Pa], 0 to 10 TPa @param wire d [m], 1 um to 0.2 m
/// @param coil D [m], above d, up to 1000 d
/// @param correction what K stands for @throws not_finite_error, out_of_range_error
[[nodiscard]] inline force compression_load(pressure shear_stress, length wire, length coil,
                                            coil_correction correction = coil_correction::wahl)
{
    detail::require_stress(shear_stress, "shear stress");
    const double index = spring_index(coil, wire);
    return shear_stress * (wire * wire) * (std::numbers::pi / (8.0 * index * coil_factor(index, correction)));
}

/// Force of a compression spring pressed to a length, k (L0 - L) [N]; none at its free length.
/// @param rate k [N/m], above 0 @param free L0 [m], above 0 @param solid its solid length [m], above 0, below L0
/// @param pressed_to L [m], at least the solid and at most the free length @throws not_finite_error, out_of_range_error
[[nodiscard]] inline force compression_force(spring_rate rate, length free, length solid, length pressed_to)
{
    require_positive(rate, "spring rate");
    require_positive(free, "free length");
    require_positive(solid, "solid length");
    if (!(solid < free)) throw out_of_range_error("solid length", si_text(solid), "below the free length");
    require_within(pressed_to, solid, free, "spring length");
    return require_finite(force(rate * (free - pressed_to)), "spring force");
}

/// Stability of compression springs.
inline constexpr source spring_stability{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                         "equations 10-10 to 10-13 (recalled), table 10-2 (read on a public page)",
                                         source_kind::memory};

/// How the ends of a compression spring are held.
enum class spring_ends_held {
    both_flat,         ///< between flat parallel faces
    flat_and_pivoted,  ///< one flat face, one pivot
    both_pivoted,      ///< on two pivots, as between the handles of a clamp
    flat_and_free,     ///< one flat face, the other end free to move sideways
};

/// The factor of the free length for a way to hold the ends, 0.5, 0.707, 1, 2. @see spring_stability
[[nodiscard]] constexpr double slenderness_factor(spring_ends_held ends)
{
    switch (ends) {
    case spring_ends_held::both_flat: return 0.5;
    case spring_ends_held::flat_and_pivoted: return 0.707;
    case spring_ends_held::both_pivoted: return 1.0;
    case spring_ends_held::flat_and_free: return 2.0;
    }
    return 2.0;
}

namespace detail {
// C2 of the head of this file; refuses moduli no isotropic solid has
inline double stability_constant(pressure youngs, pressure shear)
{
    require_modulus(youngs, "Young's modulus");
    require_modulus(shear, "shear modulus");
    if (!(shear < youngs))
        throw out_of_range_error("shear modulus", si_text(shear), "below Young's modulus of " + si_text(youngs));
    return 2.0 * std::numbers::pi * std::numbers::pi * ((youngs - shear) / (2.0 * shear + youngs)).value();
}
}  // namespace detail

/// The longest free length of a compression spring that is stable at any deflection, D sqrt(C2)/a [m].
/// @param coil mean coil diameter D [m], above 0 @param youngs E [Pa], above 0 to 10 TPa
/// @param shear G [Pa], above 0, below E
/// @param ends how they are held @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length longest_stable_spring(length coil, pressure youngs, pressure shear, spring_ends_held ends)
{
    require_positive(coil, "coil diameter");
    return require_finite(
        length(coil * (std::sqrt(detail::stability_constant(youngs, shear)) / slenderness_factor(ends))),
        "longest stable spring");
}

/// A compression spring that may buckle.
struct standing_spring {
    length free_length;     ///< L0 [m], above 0
    length coil;            ///< mean coil diameter D [m], above 0
    pressure youngs;        ///< E [Pa], above 0 to 10 TPa
    pressure shear;         ///< G [Pa], above 0, below E
    spring_ends_held ends;  ///< how they are held
};

/// The deflection at which a compression spring buckles [m]; empty for a spring that never does.
/// @param spring its dimensions, moduli and ends @throws not_finite_error, out_of_range_error
[[nodiscard]] inline std::optional<length> buckling_deflection(const standing_spring& spring)
{
    const auto& [free_length, coil, youngs, shear, ends] = spring;
    require_positive(free_length, "free length");
    if (free_length <= longest_stable_spring(coil, youngs, shear, ends)) return std::nullopt;
    const double slenderness = slenderness_factor(ends) * (free_length / coil).value();
    const double share = detail::stability_constant(youngs, shear) / (slenderness * slenderness);
    // 1 - sqrt(1 - s) as s/(1 + sqrt(1 - s)): a slender spring keeps its digits
    return free_length * (0.5 * (youngs / (youngs - shear)).value() * share / (1.0 + std::sqrt(1.0 - share)));
}

}  // namespace weldloop
