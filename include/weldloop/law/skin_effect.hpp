#pragma once
/// @file
/// Skin effect: alternating current and the harmonics of pulses keep to the outside of a conductor.

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/magnetic_constant.hpp>
#include <weldloop/law/waveform.hpp>

namespace weldloop {

/// @name Sources of skin effect
/// @{
/// The exact solution.
inline constexpr source bessel_skin_effect{
    "Maxwell's equations in a round wire", {}, "Z/R0 = (z/2) I0(z)/I1(z), z = (1 + j) a/delta", source_kind::derived};
/// The formula of the cable standard, lowest range of its argument.
inline constexpr source iec_60287_skin{"IEC 60287-1-1", "2006", "2.1.2, xs up to 2.8", source_kind::standard};
/// The formula of the cable standard, middle and highest range of its argument.
inline constexpr source iec_60287_skin_above{"IEC 60287-1-1", "2006", "2.1.2, xs above 2.8", source_kind::memory};
/// @}

/// What alternating current does to a round conductor.
struct skin_effect {
    double resistance_ratio = 1.0;     ///< R_ac/R_dc, 1 or above
    double resistance_increase = 0.0;  ///< R_ac/R_dc - 1 [1], with all its digits where it is small
    double inductance_ratio = 1.0;     ///< internal inductance over that of direct current, 0 to 1
};

/// Largest ratio of radius to skin depth that is answered for; a 1 m bar in the gigahertz range.
inline constexpr double most_radius_over_depth = 1e6;

/// Depth at which the current density of a plane conductor has fallen to 1/e, delta = sqrt(rho/(pi f mu0 mur)) [m].
/// @param rho resistivity [ohm m], above 0 @param f frequency [Hz], above 0
/// @param relative_permeability mur [1], 0.999 to 1e6
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length skin_depth(resistivity rho, frequency f, double relative_permeability = 1.0)
{
    require_positive(rho, "resistivity");
    require_positive(f, "frequency");
    const double mu = magnetic_constant.value() * detail::require_permeability(relative_permeability);
    return require_finite(in_si<length>(std::sqrt(rho.value() / (std::numbers::pi * f.value() * mu))), "skin depth");
}

/// Radius of a round conductor over its skin depth, a/delta = sqrt(f mu0 mur/R').
///
/// It follows from the direct-current resistance alone. So a stranded conductor whose strands touch counts as a solid
/// one of its resistance, however loosely it is packed: what its radius gains, its mean resistivity loses.
/// @param dc R' at its temperature [ohm/m], above 0 @param f [Hz], 0 or above
/// @param relative_permeability mur [1], 0.999 to 1e6
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double radius_over_skin_depth(resistance_per_length dc, frequency f,
                                                   double relative_permeability = 1.0)
{
    require_positive(dc, "resistance per length");
    require_not_negative(f, "frequency");
    const double mu = magnetic_constant.value() * detail::require_permeability(relative_permeability);
    return require_finite(std::sqrt(f.value() * mu / dc.value()), "radius over skin depth");
}

namespace detail {

inline constexpr double skin_asymptotic_from = 32.0;  // |z|; e^(-2 |z|/sqrt(2)) is then below rounding

/// (z/2) I0(z)/I1(z) - 1 by the continued fraction w/(2 + w/(3 + ...)), w = z^2/4 = j (a/delta)^2/2, from its tail
/// inwards. Each part keeps its own relative accuracy: no difference of near numbers is taken.
[[nodiscard]] inline std::complex<double> bessel_quotient_by_fraction(double radius_over_depth)
{
    const std::complex<double> w(0.0, 0.5 * radius_over_depth * radius_over_depth);
    int k = 24 + static_cast<int>(2.0 * std::numbers::sqrt2 * radius_over_depth);  // enough for all digits
    std::complex<double> tail = static_cast<double>(k);
    for (--k; k >= 2; --k) tail = static_cast<double>(k) + w / tail;
    return w / tail;
}

/// The same by Hankel's expansions of I0 and I1 for large z.
[[nodiscard]] inline std::complex<double> bessel_quotient_by_expansion(double radius_over_depth)
{
    const std::complex<double> z(radius_over_depth, radius_over_depth);
    std::complex<double> i0 = 1.0, i1 = 1.0, term0 = 1.0, term1 = 1.0;
    for (int k = 1; k <= 24; ++k) {  // smaller than rounding by then
        const double odd = 2.0 * k - 1.0;
        term0 *= -(0.0 - odd * odd) / (8.0 * k * z);
        term1 *= -(4.0 - odd * odd) / (8.0 * k * z);
        i0 += term0;
        i1 += term1;
    }
    return 0.5 * z * i0 / i1 - 1.0;
}

}  // namespace detail

/// Skin effect of a round conductor with the return far away, Z/R0 = (z/2) I0(z)/I1(z) with z = (1 + j) a/delta:
/// the real part is R_ac/R_dc, the imaginary part over (a/delta)^2/4 the ratio of internal inductance.
///
/// Exact; 1e-12 against a program of arbitrary precision, the small increase at low frequency included. Limits: 1 and 1
/// for a/delta to 0; a/(2 delta) + 1/4 and 2 delta/a for large a/delta.
/// @param radius_over_depth a/delta [1], 0 to 1e6 @throws not_finite_error, out_of_range_error
/// @see radius_over_skin_depth(), bessel_skin_effect
[[nodiscard]] inline skin_effect skin_effect_at(double radius_over_depth)
{
    require_within(radius_over_depth, 0.0, most_radius_over_depth, "radius over skin depth");
    if (radius_over_depth * radius_over_depth == 0.0) return {};
    const std::complex<double> more = radius_over_depth * std::numbers::sqrt2 < detail::skin_asymptotic_from
                                          ? detail::bessel_quotient_by_fraction(radius_over_depth)
                                          : detail::bessel_quotient_by_expansion(radius_over_depth);
    const double increase = std::max(more.real(), 0.0);
    return {1.0 + increase, increase, 4.0 * more.imag() / (radius_over_depth * radius_over_depth)};
}

/// Skin effect of a conductor of a direct-current resistance, skin_effect_at(radius_over_skin_depth()).
///
/// For a flexible lead it is an upper bound: strands that oxide keeps apart and that change places along the lay share
/// the current more evenly. A return lead close by adds proximity effect, which is not counted: by the approximation of
/// the cable standard (recalled) 2.9 (d/s)^2 times the skin effect, d over the strands, s from axis to axis.
/// @param dc R' at its temperature [ohm/m], above 0 @param f [Hz], 0 or above; 0 gives the ratios 1 and 1
/// @param relative_permeability mur [1], 0.999 to 1e6
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline skin_effect skin_effect_of(resistance_per_length dc, frequency f,
                                                double relative_permeability = 1.0)
{
    return skin_effect_at(radius_over_skin_depth(dc, f, relative_permeability));
}

/// A range of the argument in which the cable standard has one polynomial for its skin effect factor.
struct iec_skin_range {
    double up_to;        ///< [1] highest argument
    const source* from;  ///< read or recalled
};

/// @name Formula of the cable standard
/// @{
inline constexpr iec_skin_range iec_skin_low{2.8, &iec_60287_skin};           ///< xs^4/(192 + 0.8 xs^4)
inline constexpr iec_skin_range iec_skin_middle{3.8, &iec_60287_skin_above};  ///< -0.136 - 0.0177 xs + 0.0563 xs^2
inline constexpr iec_skin_range iec_skin_high{30.0, &iec_60287_skin_above};   ///< 0.354 xs - 0.733; no end is stated
/// @}

/// Skin effect factor of the cable standard with where it comes from.
struct iec_skin_factor {
    double increase;     ///< factor ys = R_ac/R_dc - 1
    bool in_range;       ///< the argument is at most that of `iec_skin_high`
    const source* from;  ///< the formula used, read or recalled
};

/// Argument of the cable standard's formula, xs = sqrt(8 pi f 1e-7 ks/R') [1]; sqrt(2) of radius_over_skin_depth() for
/// ks 1.
/// @param dc R' at its temperature [ohm/m], above 0 @param f [Hz], 0 or above
/// @param ks factor, 0 to 1: 1 for solid and stranded copper, less where strands are kept apart
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double iec_skin_argument(resistance_per_length dc, frequency f, double ks = 1.0)
{
    require_within(ks, 0.0, 1.0, "coefficient ks");
    return std::numbers::sqrt2 * radius_over_skin_depth(dc, f) * std::sqrt(ks);
}

/// Skin effect factor ys of IEC 60287-1-1: xs^4/(192 + 0.8 xs^4) up to 2.8, -0.136 - 0.0177 xs + 0.0563 xs^2 up to 3.8,
/// 0.354 xs - 0.733 above.
///
/// Error of 1 + ys against skin_effect_at(): up to 0.11 % to xs 2.8, 0.41 % to 3.8, 0.57 % above (just above 3.8).
/// @param xs argument [1], 0 to 1e6 @return the factor; `in_range` is false above `iec_skin_high`
/// @throws not_finite_error, out_of_range_error @see iec_60287_skin, iec_60287_skin_above
[[nodiscard]] inline iec_skin_factor iec_skin_factor_at(double xs)
{
    require_within(xs, 0.0, most_radius_over_depth, "argument xs");
    if (xs <= iec_skin_low.up_to) {
        const double fourth = xs * xs * xs * xs;
        return {fourth / (192.0 + 0.8 * fourth), true, iec_skin_low.from};
    }
    if (xs <= iec_skin_middle.up_to) return {-0.136 - 0.0177 * xs + 0.0563 * xs * xs, true, iec_skin_middle.from};
    return {0.354 * xs - 0.733, xs <= iec_skin_high.up_to, iec_skin_high.from};
}

/// What the harmonics of a current do to the heat of a conductor.
struct waveform_resistance {
    double resistance_ratio = 1.0;  ///< heat over that of the same rms as direct current
    double beyond = 0.0;            ///< share of rms^2 in harmonics above the last one summed
};

/// Harmonics that waveform_resistance_of() sums one by one.
inline constexpr int summed_harmonics = 256;

/// Effective resistance of a conductor for a waveform, over that for direct current:
/// (mean^2 + sum of In^2/2 r(n f))/rms^2, with r from skin_effect_of(). Heat is rms()^2 R' times this ratio.
///
/// The first `summed_harmonics` are summed; the rest of rms^2 is spread over the orders above as they fall on average,
/// with 1/n^2 where the current steps (or ramps faster than the last harmonic) and with 1/n^4 where it ramps. Measured
/// error 1e-5 of the ratio. 1 for direct current and for no current.
/// @param w the current @param dc R' of the conductor at its temperature [ohm/m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline waveform_resistance waveform_resistance_of(const waveform& w, resistance_per_length dc)
{
    require_positive(dc, "resistance per length");
    const double rms = w.rms().value();
    if (w.is_dc() || rms == 0.0) return {};
    const double fundamental = radius_over_skin_depth(dc, w.frequency());
    const auto ratio = [&](double order) {  // beyond the range of the exact law its limit is as good
        return skin_effect_at(std::min(fundamental * std::sqrt(order), most_radius_over_depth)).resistance_ratio;
    };
    const auto share_of = [rms](current i) { return i.value() / rms * (i.value() / rms); };
    double sum = share_of(w.mean()), counted = sum;
    for (int n = 1; n <= summed_harmonics; ++n) {
        const double share = 0.5 * share_of(w.harmonic(n));
        if (share == 0.0) continue;
        counted += share;
        sum += share * ratio(n);
    }
    const double beyond = std::max(0.0, 1.0 - counted);
    // Orders above N = 256: with u = N/n the shares fall as du (steps) or 3 u^2 du (ramps); u = v^2 tames the end.
    const bool steps = summed_harmonics * std::numbers::pi * w.shortest_edge().value() < w.period().value();
    constexpr int cells = 16;
    double mean_ratio = 0.0, weights = 0.0;
    for (int i = 0; i < cells; ++i) {
        const double v = (i + 0.5) / cells, weight = steps ? v : v * v * v * v * v;
        mean_ratio += weight * ratio(summed_harmonics / (v * v));
        weights += weight;
    }
    return {require_finite(sum + beyond * mean_ratio / weights, "resistance for a waveform"), beyond};
}

}  // namespace weldloop
