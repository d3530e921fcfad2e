#pragma once
/// @file
/// The voltage-current characteristic of a joint. A joint is not a fixed resistance: once its spots grow soft they
/// spread, and the drop levels off below the melting drop of its metals however hard the current pushes.

#include <cmath>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// How hardness falls between softening and melting.
inline constexpr source softening_hardness_law{
    "hardness of the spots falls evenly with the drop, from its cold value at the softening drop to nothing at the "
    "melting drop",
    "2026", "judgement; one measurement lies on it: 0.30 V for each pierced painted face of steel at 55 A",
    source_kind::judgement};

/// Where spots count as melting.
inline constexpr source melting_share_judgement{
    "spots are called melting from 0.95 of the melting drop on", "2026",
    "judgement: the characteristic approaches the melting drop without reaching it", source_kind::judgement};
/// Share of the melting drop from which spots count as melting; see melting_share_judgement.
inline constexpr double melting_share = 0.95;

/// The two drops between which a joint levels off.
struct joint_limits {
    voltage softening;  ///< [V] up to here the joint is ohmic
    voltage melting;    ///< [V] never exceeded
};

/// The limits of two metals: the lower of each. @param metals the two @param bulk temperature of both bodies
[[nodiscard]] inline joint_limits joint_limits_of(const metal_pair& metals, temperature bulk)
{
    return {softening_drop(metals, bulk), melting_drop(metals, bulk)};
}

namespace detail {

// Drop for x = I/G, which may be infinite for a joint that is all but open: then it is the melting drop.
inline double levelled_drop(double x, double softening, double melting)
{
    if (x <= softening) return x;
    return 2.0 * melting / (1.0 + std::sqrt(1.0 + 4.0 * ((melting - softening) / x) * (melting / x)));
}

// Resistivity of both metals over that at 20 degC.
inline double resistivity_growth(const metal_pair& metals, temperature bulk)
{
    require_positive(metals.first.resistivity, "resistivity");
    require_positive(metals.second.resistivity, "resistivity");
    return ((metals.first.resistivity_at(bulk) + metals.second.resistivity_at(bulk)) /
            (metals.first.resistivity + metals.second.resistivity))
        .value();
}

}  // namespace detail

/// Drop across a joint that carries a current [V].
///
/// With G the cold conductance, x = I/G, Vs and Vm the limits: V = x as long as x <= Vs. Above, the spots yield: their
/// radius grows as 1/sqrt(hardness) and the hardness is (Vm - V)/(Vm - Vs) of its cold value, so that
/// V^2 (Vm - Vs) + x^2 V - x^2 Vm = 0, which gives V = 2 Vm / (1 + sqrt(1 + 4 (Vm - Vs) Vm / x^2)).
///
/// Continuous, rising with the current, below Vm; it tends to Vm as the current grows or the conductance falls to
/// nothing. It leaves out that a hot spot has the resistivity of a hot metal: just below Vs the true drop is higher, by
/// about half where copper softens and twice where steel does. Vm = 0 (bulk at the melting point: the joint is wetted)
/// gives no drop.
/// @param through current [A], 0 or above @param cold conductance of the joint before its spots yield [S], above 0: an
///   open joint has no drop of its own @param limits of its metals, 0 <= softening <= melting
/// @throws not_finite_error, out_of_range_error @see softening_hardness_law
[[nodiscard]] inline voltage joint_drop(current through, conductance cold, const joint_limits& limits)
{
    require_not_negative(through, "current");
    require_positive(cold, "joint conductance");
    require_not_negative(limits.softening, "softening drop");
    require_within(limits.melting, limits.softening, in_si<voltage>(1e3), "melting drop");
    return in_si<voltage>(
        detail::levelled_drop(through.value() / cold.value(), limits.softening.value(), limits.melting.value()));
}

/// Conductance of a joint at another bulk temperature [S]: the constriction lies in the metals, so it follows their
/// resistivities, G = G20 (rho1 + rho2 at 20 degC)/(rho1 + rho2 at T). This weighs each metal's coefficient by its
/// resistivity. A film in the joint does not follow it; for films the result is a bound.
/// @param at_20 conductance at 20 degC [S], 0 or above @param metals the two that meet @param bulk temperature of both
/// @throws not_finite_error, out_of_range_error for a conductance or a resistivity that cannot be
[[nodiscard]] inline conductance conductance_at(conductance at_20, const metal_pair& metals, temperature bulk)
{
    require_not_negative(at_20, "joint conductance");
    return at_20 / detail::resistivity_growth(metals, bulk);
}

}  // namespace weldloop
