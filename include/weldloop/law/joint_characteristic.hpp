#pragma once
/// @file
/// The voltage-current characteristic of a joint. A joint is not a fixed resistance: once its spots grow soft they
/// spread, and the drop levels off below the melting drop of its metals however hard the current pushes.

#include <algorithm>
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

/// What the heat of a spot does to its resistance.
inline constexpr source hot_spot_resistance{
    "Holm, Electric Contacts", "4th edition 1967",
    "1 + (2/3) alpha (Tm - T0), the mean of T - T0 over the drop where the rise is small (derived again in a test)",
    source_kind::memory};
/// Ratio of the mean rise of the metal that makes the resistance to the rise of the hottest spot; see
/// hot_spot_resistance.
inline constexpr double mean_over_highest_rise = 2.0 / 3.0;
/// Highest hot_growth of a joint [1]. Above 1 (alpha T0 above 1.5) a spot that cannot yield would have two states at
/// one current; no metal of the table comes there above 120 K.
inline constexpr double highest_hot_growth = 1.0;

/// The drops between which a joint levels off, and how its spots' resistance grows with their heat.
struct joint_limits {
    voltage softening;  ///< [V] 0 or above: up to here the spots keep their size
    voltage melting;    ///< [V] at least `softening`, never exceeded
    double hot_growth =
        0.0;  ///< c = (2/3) alpha T0 [1] of the metals at the bulk's temperature T0, 0 to 1; 0: no growth
    voltage hot_scale = {};  ///< [V] Vh = 2 sqrt(L) T0, the drop that heats a spot to sqrt(2) T0; above 0 if c is
};

/// The limits of two metals: the lower drop of each, and alpha weighted by their resistivities.
///
/// The weighting is exact for metals of one alpha; of brass on steel it is within 3 % (the worse metal holds the hotter
/// part of the drop). hot_growth is never taken above highest_hot_growth, which only a bulk colder than 120 K asks for.
/// @param metals the two @param bulk temperature of both bodies
/// @throws not_finite_error, out_of_range_error for a resistivity that cannot be
[[nodiscard]] inline joint_limits joint_limits_of(const metal_pair& metals, temperature bulk)
{
    const auto slope = [](const metal& m) { return m.resistivity * m.temperature_coefficient; };
    require_positive(metals.first.resistivity, "resistivity");
    require_positive(metals.second.resistivity, "resistivity");
    const per_kelvin alpha = (slope(metals.first) + slope(metals.second)) /
                             (metals.first.resistivity_at(bulk) + metals.second.resistivity_at(bulk));
    const double growth = mean_over_highest_rise * (alpha * bulk.above_absolute_zero()).value();
    return {softening_drop(metals, bulk), melting_drop(metals, bulk),
            bulk.in_kelvin() > 0.0 ? std::clamp(growth, 0.0, highest_hot_growth) : 0.0,
            in_si<voltage>(2.0 * std::sqrt(lorenz_number) * bulk.in_kelvin())};
}

namespace detail {

// The characteristic on plain volts; `x` is the current over the cold conductance.
class spot_characteristic {
public:
    explicit spot_characteristic(const joint_limits& l)
        : softening_(l.softening.value()), melting_(l.melting.value()), growth_(l.hot_growth),
          scale_(growth_ > 0.0 ? l.hot_scale.value() : 1.0), cold_softening_(softening_ / hot(softening_))
    {
    }

    double softening() const { return softening_; }  // V
    double melting() const { return melting_; }      // V

    // Resistance of the hot spots over that of cold ones of the same size, at a drop.
    double hot(double v) const
    {
        const double z = v / scale_;
        return 1.0 + growth_ * (std::sqrt(1.0 + z * z) - 1.0);
    }

    // Drop for x, which may be infinite for a joint that is all but open: then it is the melting drop.
    double drop(double x) const
    {
        if (x <= cold_softening_) return std::min(rigid(x), softening_);
        if (!(softening_ < melting_)) return melting_;
        const double first = levelled(x * hot(softening_));
        return growth_ > 0.0 ? yielding(x, first) : first;
    }

    // By how much the drop rises with x, above 0. @param v that drop() gives
    double slope(double x, double v) const
    {
        if (!(v > 0.0 && v < melting_)) return 0.0;
        // v = x f(v), or the same times the root of (Vm - v)/(Vm - Vs), differentiated by the logarithm of x
        const double z = v / scale_, s = std::sqrt(1.0 + z * z);
        double stiff = 1.0 / v - growth_ * z / (scale_ * s * (1.0 + growth_ * (s - 1.0)));
        if (v > softening_) stiff += 0.5 / (melting_ - v);
        return 1.0 / (stiff * x);
    }

    // The x that gives a drop below melting: the inverse of drop().
    double cold(double v) const
    {
        const double size = v > softening_ ? std::sqrt((melting_ - softening_) / (melting_ - v)) : 1.0;
        return v * size / hot(v);
    }

private:
    // v = x hot(v), a quadratic in v.
    double rigid(double x) const
    {
        const double w = x * growth_ / scale_;
        const double root = std::sqrt(growth_ * growth_ + w * w * (1.0 - 2.0 * growth_));
        return x * (1.0 - growth_ + root) / (1.0 - w * w);
    }

    // v^2 (Vm - Vs) + y^2 v - y^2 Vm = 0, y the current over the conductance of hot spots of the cold size.
    double levelled(double y) const
    {
        return 2.0 * melting_ / (1.0 + std::sqrt(1.0 + 4.0 * ((melting_ - softening_) / y) * (melting_ / y)));
    }

    // The same with y = x hot(v): Newton's method from a lower bound, kept inside a bracket that only narrows.
    double yielding(double x, double v) const
    {
        constexpr int most_steps = 60;
        constexpr double settled = 1e-8;  // its square is less than rounding, and so is the next step
        const double span = melting_ - softening_;
        double low = std::clamp(v, softening_, melting_), high = melting_;
        v = low;
        for (int i = 0; i < most_steps; ++i) {
            const double z = v / scale_, s = std::sqrt(1.0 + z * z);
            const double f = 1.0 + growth_ * (s - 1.0);
            const double ratio = v / x / f;
            const double surplus = ratio * ratio - (melting_ - v) / span;
            const double slope = 2.0 * ratio * (1.0 - growth_ * (1.0 - 1.0 / s)) / (x * f * f) + 1.0 / span;
            (surplus < 0.0 ? low : high) = v;
            double next = v - surplus / slope;
            if (!(next >= low && next <= high)) next = 0.5 * (low + high);
            const bool done = std::abs(next - v) <= settled * v;
            v = next;
            if (done) break;
        }
        return v;
    }

    double softening_, melting_, growth_, scale_, cold_softening_;
};

// Resistivity of both metals over that at 20 degC.
inline double resistivity_growth(const metal_pair& metals, temperature bulk)
{
    require_positive(metals.first.resistivity, "resistivity");
    require_positive(metals.second.resistivity, "resistivity");
    return ((metals.first.resistivity_at(bulk) + metals.second.resistivity_at(bulk)) /
            (metals.first.resistivity + metals.second.resistivity))
        .value();
}

// The drop of two metals that meet, with its slopes, on plain numbers: joint_limits_of() and spot_characteristic for
// one pair at many temperatures of its bulk.
class pair_characteristic {
public:
    explicit pair_characteristic(const metal_pair& m)
        : resistivity_((require_positive(m.first.resistivity, "resistivity") +
                        require_positive(m.second.resistivity, "resistivity"))
                           .value()),
          slope_((m.first.resistivity * m.first.temperature_coefficient +
                  m.second.resistivity * m.second.temperature_coefficient)
                     .value()),
          softening_(std::min(m.first.softening, m.second.softening).in_kelvin()),
          melting_(std::min(m.first.melting, m.second.melting).in_kelvin()), metals_(m)
    {
    }

    [[nodiscard]] const metal_pair& metals() const { return metals_; }

    struct drop_at {
        double volts;      // V
        double by_log;     // V, by the logarithm of the current over the conductance
        double by_kelvin;  // V/K
    };

    // The drop alone [V]. @param x current over the conductance with the bulk at 20 degC [V], above 0 @param kelvin of
    // the bulk, above 0
    [[nodiscard]] double volts_at(double x, double kelvin) const
    {
        const bulk_numbers bulk = bulk_at(kelvin);
        return spot_characteristic(bulk.limits).drop(x * bulk.resistivity / resistivity_);
    }

    // Its characteristic with the bulk at a temperature, and the resistivity there over that at 20 degC.
    struct with_bulk {
        spot_characteristic law;
        double growth;  // 1
    };
    // @param kelvin of the bulk, above 0
    [[nodiscard]] with_bulk at_bulk(double kelvin) const
    {
        const bulk_numbers bulk = bulk_at(kelvin);
        return {spot_characteristic(bulk.limits), bulk.resistivity / resistivity_};
    }

    // The drop with its slopes. @param v that volts_at() gives @param kelvin for this bulk
    [[nodiscard]] drop_at sloped(double v, double kelvin) const
    {
        const auto [at_bulk, growth_if_free, limits] = bulk_at(kelvin);
        const double alpha = slope_ / at_bulk, growth = limits.hot_growth;
        const double melt = limits.melting.value(), soft = limits.softening.value();
        if (!(v < melt)) return {v, 0.0, reach_slope(melting_, melt, kelvin)};
        // v = x f(v), or the same times the root of (Vm - v)/(Vm - Vs), differentiated
        const double z = v / limits.hot_scale.value(), s = std::sqrt(1.0 + z * z), f = 1.0 + growth * (s - 1.0);
        const double f_by_v = growth > 0.0 ? growth * z * z / (s * v * f) : 0.0;  // of f
        const double growth_by_kelvin =
            growth_if_free == growth ? mean_over_highest_rise * alpha * (1.0 - alpha * kelvin) : 0.0;
        const double f_by_kelvin = (growth_by_kelvin * (s - 1.0) - growth * z * z / (s * kelvin)) / f;
        double stiff = 1.0 / v - f_by_v, by_kelvin = alpha + f_by_kelvin;
        if (v > soft) {
            const double melt_slope = reach_slope(melting_, melt, kelvin),
                         soft_slope = reach_slope(softening_, soft, kelvin);
            stiff += 0.5 / (melt - v);
            by_kelvin += 0.5 * (melt_slope / (melt - v) - (melt_slope - soft_slope) / (melt - soft));
        }
        return {v, 1.0 / stiff, by_kelvin / stiff};
    }

private:
    struct bulk_numbers {
        double resistivity;     // ohm m, of both metals
        double growth_if_free;  // of the hot spots' resistance, before its bounds
        joint_limits limits;
    };
    [[nodiscard]] bulk_numbers bulk_at(double kelvin) const
    {
        const temperature bulk = temperature::kelvin(kelvin);
        const double at_bulk = (metals_.first.resistivity_at(bulk) + metals_.second.resistivity_at(bulk)).value();
        const double growth_if_free = mean_over_highest_rise * slope_ / at_bulk * kelvin;
        return {at_bulk,
                growth_if_free,
                {in_si<voltage>(reach(softening_, kelvin)), in_si<voltage>(reach(melting_, kelvin)),
                 std::clamp(growth_if_free, 0.0, highest_hot_growth),
                 in_si<voltage>(2.0 * std::sqrt(lorenz_number) * kelvin)}};
    }

    // Of drop_to_reach(), and its slope by the bulk's temperature.
    [[nodiscard]] static double reach(double spot, double bulk)
    {
        return bulk >= spot ? 0.0 : 2.0 * std::sqrt(lorenz_number * (spot - bulk) * (spot + bulk));
    }
    [[nodiscard]] static double reach_slope(double spot, double volts, double bulk)
    {
        return bulk >= spot ? 0.0 : -4.0 * lorenz_number * bulk / volts;
    }

    double resistivity_, slope_, softening_, melting_;
    metal_pair metals_;
};

}  // namespace detail

namespace detail {
inline spot_characteristic checked_law(const joint_limits& limits)
{
    require_not_negative(limits.softening, "softening drop");
    require_within(limits.melting, limits.softening, in_si<voltage>(1e3), "melting drop");
    require_within(limits.hot_growth, 0.0, highest_hot_growth, "growth of a hot spot's resistance");
    if (limits.hot_growth > 0.0) require_positive(limits.hot_scale, "drop that heats a spot");
    return spot_characteristic(limits);
}
}  // namespace detail

/// Drop across a joint that carries a current [V].
///
/// With G the cold conductance, x = I/G, Vs and Vm the limits, T0 the bulk's temperature, f what the spots' own heat
/// does to their resistance, f(V) = 1 + c (sqrt(1 + (V/Vh)^2) - 1) = 1 + (2/3) alpha (Tm - T0):
///
/// - V = x f(V) as long as V <= Vs, a quadratic in V;
/// - above, the spots yield: their radius grows as 1/sqrt(hardness) and the hardness is (Vm - V)/(Vm - Vs) of its cold
///   value, so that V^2 (Vm - Vs) = x^2 f(V)^2 (Vm - V). Solved by Newton's method to rounding.
///
/// Continuous, rising with the current, below Vm; it tends to Vm as the current grows or the conductance falls to
/// nothing. Vm = 0 (bulk at the melting point: the joint is wetted) gives no drop.
/// @param through current [A], 0 or above @param cold conductance of the joint at its bulk's temperature, before its
///   spots heat and yield [S], above 0: an open joint has no drop of its own @param limits of its metals, 0 <=
///   softening
///   <= melting
/// @throws not_finite_error, out_of_range_error
/// @par Accuracy
/// against the exact integral over spots of a metal with a linear law of resistivity, f is within 2 % up
/// to the softening drop of every metal of the table; the fall of hardness above it is judgement
/// @see softening_hardness_law, hot_spot_resistance
[[nodiscard]] inline voltage joint_drop(current through, conductance cold, const joint_limits& limits)
{
    require_not_negative(through, "current");
    require_positive(cold, "joint conductance");
    return in_si<voltage>(detail::checked_law(limits).drop(through.value() / cold.value()));
}

/// The cold conductance that gives a joint a drop at a current, the inverse of joint_drop() [S].
/// @param through current [A], above 0 @param drop [V], above 0, below the melting drop: that is never reached
/// @param limits of its metals, 0 <= softening <= melting
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline conductance conductance_for_drop(current through, voltage drop, const joint_limits& limits)
{
    require_positive(through, "current");
    require_positive(drop, "joint drop");
    const detail::spot_characteristic law = detail::checked_law(limits);
    if (drop >= limits.melting)
        throw out_of_range_error("joint drop", si_text(drop), "below the melting drop of " + si_text(limits.melting));
    return require_finite(in_si<conductance>(through.value() / law.cold(drop.value())), "joint conductance");
}

/// Conductance of a joint at another bulk temperature [S]: the constriction lies in the metals, so it follows their
/// resistivities, G = G20 (rho1 + rho2 at 20 degC)/(rho1 + rho2 at T). This weighs each metal's coefficient by its
/// resistivity. A film in the joint does not follow it; for films the result is a bound.
/// @param at_20 conductance at 20 degC [S], 0 or above @param metals the two that meet @param bulk temperature of both
/// @throws not_finite_error, out_of_range_error for a conductance or a resistivity that cannot be
[[nodiscard]] inline conductance conductance_at(conductance at_20, const metal_pair& metals, temperature bulk)
{
    require_not_negative(at_20, "joint conductance");
    return require_finite(conductance(at_20 / detail::resistivity_growth(metals, bulk)), "joint conductance");
}

}  // namespace weldloop
