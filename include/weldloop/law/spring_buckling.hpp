#pragma once
/// @file
/// Whether a compression spring buckles sideways, and at which deflection.
///
/// Slenderness l = a L0/D with a for the way the ends are held. Below l^2 = C2 = 2 pi^2 (E - G)/(2 G + E) the spring is
/// stable at any deflection (2.63 for steel); above it buckles at y = L0 C1 (1 - sqrt(1 - C2/l^2)),
/// C1 = E/(2 (E - G)). Holds for squared and ground ends and a spring not guided by pin or tube.

#include <cmath>
#include <numbers>
#include <optional>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/law/spring.hpp>

namespace weldloop {

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
/// @param coil mean coil diameter D [m], above 0 @param youngs E [Pa] @param shear G [Pa], below E
/// @param ends how they are held @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length longest_stable_spring(length coil, pressure youngs, pressure shear, spring_ends_held ends)
{
    require_positive(coil, "coil diameter");
    return coil * (std::sqrt(detail::stability_constant(youngs, shear)) / slenderness_factor(ends));
}

/// A compression spring that may buckle.
struct standing_spring {
    length free_length;     ///< L0 [m], above 0
    length coil;            ///< mean coil diameter D [m], above 0
    pressure youngs;        ///< E [Pa]
    pressure shear;         ///< G [Pa], below E
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
    return free_length * (0.5 * (youngs / (youngs - shear)).value() * (1.0 - std::sqrt(1.0 - share)));
}

}  // namespace weldloop
