#pragma once
/// @file
/// How much hotter or colder than its mean a piece of work is at some distance from the weld that heats it.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// Heat from a weld in the middle of a piece without heat at its edges, from the cold.
inline constexpr source conduction_from_the_middle{
    "heat conduction in a bar and in a disc with insulated edges and an even loss, from the cold: Fourier and "
    "Fourier-Bessel series",
    {},
    "as in any textbook of heat conduction",
    source_kind::derived};

/// A rise over the mean of a piece by a watt of the weld [K/W]; negative: colder.
struct rise_over_mean {
    double mean = 0.0;  ///< in the mean over the piece's stay
    double end = 0.0;   ///< at the end of it
};

/// A piece that is heated for a stay.
struct heated_stay {
    weldloop::metal metal;          ///< of the piece
    heat_capacity capacity = {};    ///< [J/K] above 0
    thermal_conductance loss = {};  ///< [W/K] from all of its surface, 0 or above
    duration stay = {};             ///< [s] above 0
};

namespace detail {

// What is left of a mode after a stay that began at none, over what it is at last.
[[nodiscard]] inline rise_over_mean mode_after(double stays_over_time_constant)
{
    const double z = stays_over_time_constant;
    constexpr double small = 1e-4;  // below it the series, exact to z^2
    if (z < small) return {0.5 * z, z};
    return {1.0 + std::expm1(-z) / z, -std::expm1(-z)};
}

inline void require_stay(const heated_stay& s)
{
    require_positive(s.capacity, "heat capacity");
    require_not_negative(s.loss, "loss");
    require_positive(s.stay, "stay of the workpiece");
}
[[nodiscard]] inline double diffusivity_of(const metal& m)
{
    return (m.thermal_conductivity / m.heat_per_volume()).value();
}

}  // namespace detail

/// Along a bar or tube welded across its middle, T - T_mean by a watt: sum over j of 2 cos(2 pi j x/L)/(C lambda_j)
/// times what is there of the mode, lambda_j = a (2 pi j/L)^2 + G/C.
/// @param s capacity C, loss G and stay @param bar its length L [m], above 0 @param away x [m] along it from the weld,
/// 0 or above; beyond the end it counts as the end
/// @throws not_finite_error, out_of_range_error. Accuracy: 1e-4 of the rise at the weld for a steady state
[[nodiscard]] inline rise_over_mean bar_over_mean(const heated_stay& s, length bar, length away)
{
    detail::require_stay(s);
    require_positive(bar, "length of the workpiece");
    require_not_negative(away, "distance from the weld");
    constexpr int modes = 1000;
    const double C = s.capacity.value(), x = std::min(away / bar, decltype(away / bar)(0.5)).value();
    rise_over_mean out;
    for (int j = 1; j <= modes; ++j) {
        const double turn = 2.0 * std::numbers::pi * j, k = turn / bar.value();
        const double rate = detail::diffusivity_of(s.metal) * k * k + s.loss.value() / C;
        const rise_over_mean there = detail::mode_after(rate * s.stay.value());
        const double at_last = 2.0 * std::cos(turn * x) / (C * rate);
        out.mean += at_last * there.mean;
        out.end += at_last * there.end;
    }
    return out;
}

/// In a disc welded in its middle, T - T_mean by a watt: with the zeros alpha_n of J1 the sum of J0(alpha_n r/R)/
/// J0(alpha_n)^2/(C lambda_n) times what is there of the mode, lambda_n = a (alpha_n/R)^2 + G/C; the settled sum
/// without loss is (ln(R/r) + r^2/(2 R^2) - 3/4)/(2 pi k d) and counts as such.
/// @param s capacity C, loss G and stay @param thickness d [m], above 0 @param rim R [m], above 0
/// @param away r [m] from the middle, above 0; beyond the rim it counts as the rim
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline rise_over_mean disc_over_mean(const heated_stay& s, length thickness, length rim, length away)
{
    detail::require_stay(s);
    require_positive(thickness, "thickness");
    require_positive(rim, "radius of the workpiece");
    require_positive(away, "distance from the weld");
    const double over = std::min(away.value() / rim.value(), 1.0), C = s.capacity.value();
    constexpr double mean_of_disc = 0.75;
    const double settled = (0.5 * over * over - std::log(over) - mean_of_disc) /
                           (2.0 * std::numbers::pi * (s.metal.thermal_conductivity * thickness).value());
    rise_over_mean out{settled, settled};
    constexpr int modes = 60;
    for (int n = 1; n <= modes; ++n) {
        // McMahon: the zeros of J1, the first within 3e-4
        const double b = (n + 0.25) * std::numbers::pi, e = 1.0 / (8.0 * b);
        const double alpha = b - 3.0 * e + 12.0 * e * e * e - 1179.0 * 32.0 * e * e * e * e * e / 5.0;
        const double k = alpha / rim.value(), even = detail::diffusivity_of(s.metal) * k * k,
                     rate = even + s.loss.value() / C, at_rim = std::cyl_bessel_j(0.0, alpha);
        const rise_over_mean there = detail::mode_after(rate * s.stay.value());
        const double shape = std::cyl_bessel_j(0.0, alpha * over) / (at_rim * at_rim * C);
        out.mean += shape * (there.mean / rate - 1.0 / even);
        out.end += shape * (there.end / rate - 1.0 / even);
    }
    return out;
}

}  // namespace weldloop
