#pragma once
/// @file
/// Inductance of leads: straight, out and back, laid apart, coiled; and the voltage a changing current needs.

#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/magnetic_constant.hpp>

namespace weldloop {

/// @name Sources of inductance
/// @{
/// Leads out and back.
inline constexpr source parallel_wire_inductance{"Mehta and Mehta, Principles of Power System",
                                                 {},
                                                 "chapter 9, loop of two parallel wires; examples 9.1, 9.2",
                                                 source_kind::handbook};
/// Straight pieces of finite length.
inline constexpr source neumann_straight{"Neumann's integral over straight filaments",
                                         {},
                                         "closed form; Rosa 1908 has the same (recalled)",
                                         source_kind::derived};
/// Turns of a coil.
inline constexpr source neumann_circles{"Neumann's integral over coaxial circles",
                                        {},
                                        "complete elliptic integrals by the arithmetic-geometric mean",
                                        source_kind::derived};
/// @}

/// Internal inductance of a round conductor with uniform current, mu0 mur/(8 pi): 50 nH/m for copper [H/m].
/// @param relative_permeability mur [1], 0.999 to 1e6 @throws not_finite_error, out_of_range_error
/// @see skin_effect::inductance_ratio for what is left of it at a frequency
[[nodiscard]] inline inductance_per_length internal_inductance(double relative_permeability = 1.0)
{
    return magnetic_constant * (detail::require_permeability(relative_permeability) / (8.0 * std::numbers::pi));
}

/// Mutual inductance of two equal parallel filaments side by side, Neumann's integral in closed form:
/// M = mu0/(2 pi) (l asinh(l/d) - sqrt(l^2 + d^2) + d) [H].
/// @param extent l, length of each [m], above 0 @param apart d, from axis to axis [m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline inductance mutual_inductance_parallel(length extent, length apart)
{
    const double l = require_positive(extent, "conductor length").value();
    const double d = require_positive(apart, "spacing").value();
    // d - sqrt(l^2 + d^2) without the loss of digits that a wide spacing would bring
    const double less = l * (l / (d + std::hypot(l, d)));
    const double m = l * std::asinh(l / d) - less;
    return require_finite(in_si<inductance>(magnetic_constant.value() / (2.0 * std::numbers::pi) * std::fmax(m, 0.0)),
                          "mutual inductance");
}

/// Inductance of a straight round conductor by itself, its return infinitely far: that of a filament beside itself at
/// the distance of its radius, and the internal part, L = mu0/(2 pi) (l asinh(l/a) - sqrt(l^2 + a^2) + a) + L'i l, for
/// long conductors mu0 l/(2 pi) (ln(2l/a) - 1) + L'i l [H].
/// @param extent l [m], above 0 @param radius a [m], above 0
/// @param internal L'i [H/m], 0 or above: internal_inductance(), times skin_effect::inductance_ratio at a frequency
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline inductance straight_inductance(length extent, length radius,
                                                    inductance_per_length internal = internal_inductance())
{
    require_not_negative(internal, "internal inductance");
    return require_finite(inductance(mutual_inductance_parallel(extent, require_positive(radius, "conductor radius")) +
                                     internal * extent),
                          "inductance");
}

/// Inductance of two long parallel leads, out and back, per length of the pair:
/// L' = mu0/(2 pi) ln(d^2/(a1 a2)) + L'i1 + L'i2 [H/m]. Exact for round sections with uniform current; 2 l/d above 50
/// keeps the ends below 2 %, else loop_inductance().
/// @param apart d, from axis to axis [m], at least a1 + a2 @param radius a1 of one [m], above 0
/// @param other_radius a2 of the other [m], above 0
/// @param internal L'i of each [H/m], 0 or above
/// @throws not_finite_error, out_of_range_error @see parallel_wire_inductance
[[nodiscard]] inline inductance_per_length pair_inductance(length apart, length radius, length other_radius,
                                                           inductance_per_length internal = internal_inductance())
{
    require_positive(radius, "conductor radius");
    require_positive(other_radius, "other conductor radius");
    require_finite(apart, "spacing");
    require_not_negative(internal, "internal inductance");
    if (apart < radius + other_radius)
        throw out_of_range_error("spacing", si_text(apart),
                                 "at least the sum of the radii, " + si_text(length(radius + other_radius)));
    const double external = std::log((apart / radius).value()) + std::log((apart / other_radius).value());
    return require_finite(
        inductance_per_length(magnetic_constant * (external / (2.0 * std::numbers::pi)) + 2.0 * internal),
        "inductance of a pair");
}

/// Inductance of a closed rectangle of round conductor: leads laid apart over a length, joined across at both ends. The
/// two pairs of opposite sides, L = 2 (L_l - M_l,w + L_w - M_w,l), each by straight_inductance() and
/// mutual_inductance_parallel(); sides at right angles do not couple [H].
/// @param extent l, one side [m], at least 2 a @param width w, the other side [m], at least 2 a
/// @param radius a [m], above 0
/// @param internal L'i [H/m], 0 or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline inductance loop_inductance(length extent, length width, length radius,
                                                inductance_per_length internal = internal_inductance())
{
    require_positive(radius, "conductor radius");
    for (const length& side : {require_positive(extent, "loop length"), require_positive(width, "loop width")})
        if (side < 2.0 * radius)
            throw out_of_range_error("loop side", si_text(side),
                                     "at least two radii, " + si_text(length(2.0 * radius)));
    const auto pair_of_sides = [&](length side, length apart) {
        return 2.0 * (straight_inductance(side, radius, internal) - mutual_inductance_parallel(side, apart));
    };
    return require_finite(inductance(pair_of_sides(extent, width) + pair_of_sides(width, extent)), "loop inductance");
}

/// Mutual inductance of two coaxial circles, Neumann's integral:
/// M = mu0 sqrt(R1 R2) ((2/k - k) K(k) - (2/k) E(k)), k^2 = 4 R1 R2/((R1 + R2)^2 + z^2) [H].
///
/// K and E come from one arithmetic-geometric mean of 1 and k' = sqrt(1 - k^2), in which the bracket is a sum of
/// positive terms: all digits are kept for circles far apart and nearly touching. 1e-13 against quadrature.
/// @param radius R1 [m], above 0 @param other_radius R2 [m], above 0
/// @param apart z along the axis [m], any of either sign; circles that coincide are refused
/// @throws not_finite_error, out_of_range_error @see neumann_circles
[[nodiscard]] inline inductance mutual_inductance_coaxial(length radius, length other_radius, length apart)
{
    const double r1 = require_positive(radius, "circle radius").value();
    const double r2 = require_positive(other_radius, "other circle radius").value();
    const double z = require_finite(apart, "distance of the circles").value();
    const double across = std::hypot(r1 + r2, z), between = std::hypot(r1 - r2, z);
    if (between == 0.0)
        throw out_of_range_error("distance of the circles", si_text(apart), "circles that do not coincide");
    const double k2 = 4.0 * (r1 / across) * (r2 / across);
    double a = 1.0, b = between / across;  // b = k'
    // (2/k - k) K - (2/k) E = (2/k) K sum over n above 0 of 2^(n-1) c_n^2, c_1 = (1 - k')/2 = k^2/(2 (1 + k'))
    double c = 0.5 * k2 / (1.0 + b), sum = 0.0, weight = 1.0;
    for (int n = 1; n < 12 && c > 0.0; ++n) {  // quadratic: 8 rounds at most, for k' of 1e-16
        sum += weight * c * c;
        const double next_a = 0.5 * (a + b);
        b = std::sqrt(a * b);
        a = next_a;
        c = 0.25 * c * c / (0.5 * (a + b));
        weight *= 2.0;
    }
    const double complete_k = 0.5 * std::numbers::pi / a;
    return require_finite(in_si<inductance>(magnetic_constant.value() * across * complete_k * sum),
                          "mutual inductance");
}

/// Inductance of one circular turn of round conductor, mu0 R (ln(8 R/a) - 2) + 2 pi R L'i [H]. Thin conductor: the next
/// term is of the order (a/R)^2, 1e-3 at a/R 0.05.
/// @param radius R of the turn [m], above 0 @param wire_radius a [m], above 0, at most a fifth of R
/// @param internal L'i [H/m], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline inductance turn_inductance(length radius, length wire_radius,
                                                inductance_per_length internal = internal_inductance())
{
    constexpr double thickest = 0.2;  // of the turn's radius; the neglected terms reach a few per cent there
    require_positive(radius, "turn radius");
    require_within(wire_radius, length{}, length(thickest * radius), "conductor radius");
    require_positive(wire_radius, "conductor radius");
    require_not_negative(internal, "internal inductance");
    const length around = 2.0 * std::numbers::pi * radius;
    const double external = std::log(8.0 * (radius / wire_radius).value()) - 2.0;
    return require_finite(inductance(magnetic_constant * radius * external + internal * around),
                          "inductance of a turn");
}

/// Turns of lead on a heap or a drum.
struct lead_coil {
    int turns;        ///< 1 to `most_coil_turns`
    length diameter;  ///< [m] above 0, mean diameter, from axis to axis of the lead
    length pitch;     ///< [m] above 0, from one turn to the next, the diameter of the lead where they touch
    int layers = 1;   ///< turns on one another, 1 to `turns`; a loose heap has about the root of the turns
};

/// Most turns that coil_inductance() sums; a lead has a dozen.
inline constexpr int most_coil_turns = 500;

/// Inductance of a coil: every turn by itself and with every other, the turns as coaxial circles laid out in `layers`
/// layers of equal pitch along and across, L = sum Li + 2 sum Mik [H].
///
/// It grows with nearly the square of the turns. In air: a coil that lies on a steel plate has up to twice this (its
/// mirror image in the plate adds at most as much again), one on a steel drum more. A heap whose turns are spread has
/// less.
/// @param c the coil @param wire_radius a over the strands [m], above 0, at most half of the pitch
/// @param internal L'i [H/m], 0 or above
/// @throws not_finite_error, out_of_range_error @see neumann_circles
[[nodiscard]] inline inductance coil_inductance(const lead_coil& c, length wire_radius,
                                                inductance_per_length internal = internal_inductance())
{
    const double turns = require_within(static_cast<double>(c.turns), 1.0, most_coil_turns, "turns of the coil");
    const double layers = require_within(static_cast<double>(c.layers), 1.0, turns, "layers of the coil");
    require_positive(c.diameter, "coil diameter");
    require_positive(c.pitch, "pitch of the turns");
    require_positive(wire_radius, "conductor radius");
    if (2.0 * wire_radius > c.pitch)
        throw out_of_range_error("pitch of the turns", si_text(c.pitch),
                                 "at least the conductor diameter, " + si_text(length(2.0 * wire_radius)));
    const length between_layers = (layers - 1.0) * c.pitch;  // from the innermost to the outermost, on one side
    if (between_layers >= c.diameter)
        throw out_of_range_error("coil diameter", si_text(c.diameter),
                                 "above the layers on one another, " + si_text(between_layers));
    const int per_layer = (c.turns + c.layers - 1) / c.layers;
    struct ring {
        length radius, along;
    };
    std::vector<ring> rings;
    rings.reserve(static_cast<std::size_t>(c.turns));
    for (int i = 0; i < c.turns; ++i)
        rings.push_back({0.5 * (c.diameter - between_layers) + static_cast<double>(i / per_layer) * c.pitch,
                         static_cast<double>(i % per_layer) * c.pitch});
    inductance total{};
    for (std::size_t i = 0; i < rings.size(); ++i) {
        total += turn_inductance(rings[i].radius, wire_radius, internal);
        for (std::size_t k = 0; k < i; ++k)
            total += 2.0 * mutual_inductance_coaxial(rings[i].radius, rings[k].radius, rings[i].along - rings[k].along);
    }
    return require_finite(total, "coil inductance");
}

/// Voltage that a change of current takes along an inductance, V = L dI/dt [V]; below 0 while the current falls. A
/// supply without it to spare cannot follow the ramp.
/// @param l L [H], 0 or above @param change of current [A], any of either sign
/// @param within time of the change [s], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage ramp_voltage(inductance l, current change, duration within)
{
    require_not_negative(l, "inductance");
    require_finite(change, "change of current");
    require_positive(within, "duration of the change");
    return require_finite(voltage(l * change / within), "voltage of the ramp");
}

}  // namespace weldloop
