#pragma once
/// @file
/// The spring that closes a clamp.

#include <cmath>
#include <numbers>
#include <optional>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/compression_spring.hpp>
#include <weldloop/law/torsion_spring.hpp>
#include <weldloop/material/spring_wire.hpp>

namespace weldloop {

/// A compression spring between the arms of a clamp, in place of a torsion spring at the pivot.
struct compression_between_arms {
    length arm = 40_mm;                                      ///< [m] from pivot to the spring's line, above 0
    length free_length = 60_mm;                              ///< [m] above the solid length
    coil_ends ends = coil_ends::squared_ground;              ///< how its ends are made
    spring_ends_held held = spring_ends_held::both_pivoted;  ///< how they are held
    bool guided = false;                                     ///< on a pin or in a tube, so that it cannot buckle
    bool set_removed = false;                                ///< pressed solid once when made
};

/// The spring of a spring clamp, as it stands with the clamp on the work: a torsion spring at the pivot, unless
/// `compression` says otherwise.
struct clamp_spring {
    spring_wire wire = hard_drawn_wire;  ///< what it is coiled of
    length wire_diameter = 5_mm;         ///< [m] above 0
    length coil_diameter = 30_mm;        ///< [m] mean, at least the wire diameter, up to 1 m
    int coils = 2;                       ///< coil bodies, or compression springs, that share the work, 1 or more
    length arm = 50_mm;                  ///< [m] above 0, from pivot to jaws
    stress_fraction stress = 0.6;        ///< bending stress over tensile strength, clamp on the work, spring new;
                                         ///< of a compression spring sqrt(3) times the shear stress
    double turns = 4.0;                  ///< of each coil body, above 0; all turns of a compression spring
    fraction current_share = 0.0;        ///< of the clamp's current that passes through the wire; 0 where a fixed shunt
                                         ///< by-passes it, see divided_clamp_current()
    length opening = 10_mm;              ///< [m] between the jaws, where `stress` holds, 0 or above
    length legs = 40_mm;  ///< [m] 0 or above, both straight legs of a coil body, bent with it; torsion spring
    std::optional<compression_between_arms> compression = {};  ///< in place of the torsion spring
};

namespace detail {
inline void require_compression(const clamp_spring& s)
{
    require_positive(s.compression->arm, "spring arm");
    require_positive(s.compression->free_length, "free length");
}

// The peak of curvature yields when the set is removed: a spring so made is judged by direct shear alone.
inline coil_correction correction_of(const clamp_spring& s)
{
    return s.compression->set_removed ? coil_correction::direct_shear : coil_correction::wahl;
}

// Force on one compression spring for a force between the jaws.
inline force load_of_one(const clamp_spring& s, force at)
{
    return at * (s.arm / s.compression->arm) / static_cast<double>(s.coils);
}
}  // namespace detail

/// Stress of a clamp's spring over the tensile strength of its wire at a force between the jaws: bending of a torsion
/// spring, each coil body taking its share of the moment F x arm; sqrt(3) times the shear of a compression spring,
/// which takes F x arm / its own arm, by Wahl's factor, or by direct shear if its set was removed.
/// @param s the spring @param at force at the jaws [N], 0 or above
/// @throws not_finite_error; out_of_range_error also for a spring that could not bear it
[[nodiscard]] inline stress_fraction clamp_spring_stress(const clamp_spring& s, force at)
{
    require_within(s.coils, 1.0, 100.0, "spring coils");
    require_positive(s.arm, "clamp arm");
    require_not_negative(at, "clamp force");
    const pressure strength = tensile_strength(s.wire, s.wire_diameter);
    if (s.compression) {
        detail::require_compression(s);
        const pressure shear =
            compression_stress(detail::load_of_one(s, at), s.wire_diameter, s.coil_diameter, detail::correction_of(s));
        return std::numbers::sqrt3 * static_cast<double>(shear / strength);
    }
    const torque each = at * s.arm / si::radian / static_cast<double>(s.coils);
    return static_cast<double>(torsion_stress(each, s.wire_diameter, s.coil_diameter) / strength);
}

}  // namespace weldloop
