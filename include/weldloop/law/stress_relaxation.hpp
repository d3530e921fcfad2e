#pragma once
/// @file
/// Stress relaxation of a spring held at a constant deflection: the permanent loss of force in time at temperature.
///
/// Larson-Miller form: P = T (20 + log10(t/1 h)), r = r0 exp(b (mu - 0.7)) exp(c (P - P0)), S/S0 = exp(-r), with T the
/// absolute temperature, t the time, mu the initial stress over tensile strength (bending; for shear take sqrt(3)
/// tau0), P0 = 293.15 K x 23 the value at 20 degC and 1000 h, and r0, b, c constants of the wire
/// (material/spring_wire.hpp). For a wire without a published law T stands for 20 degC + s (T - 20 degC), with s of the
/// wire, see relaxation_shifted. The exponential of r keeps the stress above zero; it is a choice of this library.
///
/// What it rests on: published code values for the same cold-drawn wire in tension, 20 to 100 degC, mu 0.6 to 0.8, 1 h
/// to 30 years. At 20 degC it meets them within 5 %, after 30 years it is 10 % low; hot, the published temperature laws
/// differ from each other by up to 1.6 and it lies between them. Outside that range, and for wires without a published
/// law, the result is flagged and its bounds widened, by up to a factor 3 either way in r: see relaxation_widening. A
/// lower bound once reached stays: no spring recovers. Presetting and residual coiling stress change a real spring's
/// loss: the plain and the hot-preset class bracket it. Other published laws, for comparison: code_relaxation.hpp.
///
/// Above the tempering limit of the wire (250 degC for cold-drawn carbon wire) the law has no meaning: the spring is
/// reported destroyed, all its force lost. The reversible softening of a hot spring is apart: modulus_at() of
/// hot_modulus.hpp.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/relaxation_result.hpp>
#include <weldloop/material/spring_wire.hpp>

namespace weldloop {

/// The form of the law and the usual constant 20 of its parameter.
inline constexpr source larson_miller{"Larson and Miller, Transactions of the ASME 74", "1952",
                                      "time-temperature parameter T (C + log t), C = 20 usual", source_kind::memory};

/// How the bounds open outside the fitted range.
inline constexpr source relaxation_widening{
    "bounds of relaxation outside the fitted range: a factor 3 either way in the exponent once stress is 0.05, "
    "temperature 20 K or time a decade past it towards more loss for the upper bound, towards less for the lower; the "
    "other way four to six times as slowly, so that no bound falls with stress, temperature or time",
    "2026",
    {},
    source_kind::judgement};

namespace detail {
inline constexpr double larson_miller_constant = 20.0;
inline constexpr double reference_parameter = 293.15 * (larson_miller_constant + 3.0);  // [K] 20 degC, 1000 h = 10^3 h
inline constexpr double reference_stress = 0.7;
// the range the constants were fitted in
inline constexpr double fitted_stress_low = 0.6, fitted_stress_high = 0.8;
inline constexpr double fitted_celsius_low = 20.0, fitted_celsius_high = 100.0;
inline constexpr double fitted_seconds_low = seconds_per_hour, fitted_seconds_high = 262800.0 * seconds_per_hour;

// Under what a spring relaxes: initial stress over strength, hottest so far, time so far.
struct relaxation_conditions {
    double stress, celsius, hours;
};
enum class bound_side { lower, upper };

// The factor by which a bound of the exponent is opened, see relaxation_widening: 1 within the fitted range, growing
// without a step to extrapolation_factor.
[[nodiscard]] inline double widening_of(bound_side side, const relaxation_conditions& at)
{
    constexpr double fast_stress = 0.05, fast_kelvin = 20.0, fast_decades = 1.0;
    constexpr double slow_stress = 0.2, slow_kelvin = 100.0, slow_decades = 6.0;
    const double log_hours = std::log10(std::max(at.hours, std::numeric_limits<double>::min()));
    const auto past = [](double x, double low, double high, double below, double above) {
        return x < low ? (low - x) / below : x > high ? (x - high) / above : 0.0;
    };
    const auto in_all = [&](double stress_below, double stress_above, double kelvin_below, double kelvin_above,
                            double decades_below, double decades_above) {
        return past(at.stress, fitted_stress_low, fitted_stress_high, stress_below, stress_above) +
               past(at.celsius, fitted_celsius_low, fitted_celsius_high, kelvin_below, kelvin_above) +
               past(log_hours, std::log10(fitted_seconds_low / seconds_per_hour),
                    std::log10(fitted_seconds_high / seconds_per_hour), decades_below, decades_above);
    };
    const double stretch = side == bound_side::upper
                               ? in_all(slow_stress, fast_stress, slow_kelvin, fast_kelvin, slow_decades, fast_decades)
                               : in_all(fast_stress, slow_stress, fast_kelvin, slow_kelvin, fast_decades, slow_decades);
    return std::pow(extrapolation_factor, std::min(1.0, stretch));
}

// 10^a + 10^b, as a power of ten
inline double log10_of_sum(double a, double b)
{
    const double high = std::max(a, b), low = std::min(a, b);
    return high + std::log1p(std::pow(10.0, low - high)) / std::numbers::ln10;
}

// The constants that the law of relaxation takes from a wire.
inline void require_relaxation(const spring_wire& wire)
{
    constexpr double most_rise = 100.0;  // the wires known have 1 and less
    for (const relaxation_constants* k : {&wire.normal, &wire.preset}) {
        require_relaxation_law(k->reference_exponent, k->parameter_slope);
        require_within(k->stress_slope, -highest_exponent, highest_exponent, "slope of relaxation by stress");
    }
    require_within(wire.rise_scale, 0.0, most_rise, "factor on the rise over 20 degC");
}

// The parameter [K] reached by holding a spring that had reached one (minus infinity: new) at a temperature [K] for a
// time above zero. Never less than before; at or below zero kelvin nothing happens.
inline double advanced_parameter(double parameter, double kelvin, duration time)
{
    if (kelvin <= 0.0) return parameter;
    const double added = std::log10(time.value()) - std::log10(seconds_per_hour);
    // power of ten of the hours that lead to the present parameter at this temperature
    const double reached = parameter / kelvin - larson_miller_constant;
    const double total = std::isfinite(reached) ? log10_of_sum(reached, added) : reached > 0.0 ? reached : added;
    return std::isfinite(total) ? std::max(parameter, kelvin * (larson_miller_constant + total)) : parameter;
}
}  // namespace detail

/// A spring's relaxation over any history of temperatures, exact for a history of constant stretches.
///
/// The state is the Larson-Miller parameter P reached so far. A stretch of time dt at T first asks which time at T
/// would have led to the same P, t_eq = 10^(P/T - 20) h, and goes on from there: P = T (20 + log10(t_eq + dt)). Hence
/// cutting a stretch in pieces changes nothing, cooling freezes the loss, and the order of temperatures matters only
/// through the state. A new spring has lost nothing.
class relaxation_state {
public:
    /// @param wire of the spring @param stress initial stress over tensile strength, 0 to 1
    /// @throws not_finite_error, out_of_range_error for a wire whose constants of relaxation cannot be
    relaxation_state(const spring_wire& wire, stress_fraction stress)
        : wire_(wire), stress_(static_cast<double>(stress))
    {
        detail::require_relaxation(wire);
    }

    /// Holds the spring at a temperature for a time.
    /// @param t spring temperature; at absolute zero nothing happens
    /// @param time [s], 0 or above; 0 changes nothing
    /// @throws not_finite_error, out_of_range_error for a negative time
    relaxation_state& advance(temperature t, duration time)
    {
        require_not_negative(time, "time");
        if (time.value() == 0.0) return *this;
        hottest_ = std::max(hottest_, t.in_kelvin());
        elapsed_ = std::min(elapsed_ + time.value(), std::numeric_limits<double>::max());
        if (t > wire_.tempering) destroyed_ = true;
        if (destroyed_) return *this;
        parameter_ = detail::advanced_parameter(parameter_, scaled_kelvin(t.in_kelvin()), time);
        least_exponent_ = std::max(least_exponent_, lower_bound());
        return *this;
    }

    /// Share of its initial stress the spring has lost. Everything, once destroyed.
    /// @param making plain unless said otherwise
    [[nodiscard]] fraction lost(spring_making making = spring_making::plain) const
    {
        return destroyed_ ? fraction(1.0) : detail::lost_by(exponent(making));
    }

    /// The exponent r of S/S0 = exp(-r); 0 for a new spring. Meaningless once destroyed.
    /// @param making plain unless said otherwise
    [[nodiscard]] double exponent(spring_making making = spring_making::plain) const
    {
        return exponent_at(parameter_, making);
    }

    /// Whether it has been hotter than the tempering limit of its wire. Nothing undoes that.
    [[nodiscard]] bool destroyed() const { return destroyed_; }

    /// Whether the law was used outside the range it was fitted in, or stands in for a wire without a published one.
    [[nodiscard]] bool extrapolated() const
    {
        const double celsius = hottest_ - temperature::celsius_zero_in_kelvin;
        return !wire_.relaxation_published ||
               !detail::within_range(stress_, detail::fitted_stress_low, detail::fitted_stress_high) ||
               (elapsed_ > 0.0 &&
                (!detail::within_range(celsius, detail::fitted_celsius_low, detail::fitted_celsius_high) ||
                 !detail::within_range(elapsed_, detail::fitted_seconds_low, detail::fitted_seconds_high)));
    }

    /// The state as a result with bounds, flags and sources.
    [[nodiscard]] relaxation result() const
    {
        relaxation out;
        out.basis.add(larson_miller).add(*wire_.relaxation_source);
        if (extrapolated()) out.basis.add(range_flag::relaxation_range).add(relaxation_widening);
        if (destroyed_) {
            out.basis.add(range_flag::spring_destroyed).add(*wire_.tempering_source);
            out.destroyed = true;
            out.lost = 1.0;
            out.bracket = exactly(fraction(1.0));
            return out;
        }
        out.lost = detail::lost_by(exponent());
        out.bracket = {
            detail::lost_by(std::max(least_exponent_, lower_bound())),
            detail::lost_by(std::sqrt(exponent(spring_making::plain)) * std::sqrt(exponent(spring_making::preset))),
            detail::lost_by(upper_bound())};
        return out;
    }

private:
    [[nodiscard]] double exponent_at(double parameter, spring_making making) const
    {
        const relaxation_constants& k = making == spring_making::plain ? wire_.normal : wire_.preset;
        const double log_exponent = k.stress_slope * (stress_ - detail::reference_stress) +
                                    k.parameter_slope.value() * (parameter - detail::reference_parameter);
        return detail::relaxation_exponent(k.reference_exponent, log_exponent);
    }
    [[nodiscard]] double widening(detail::bound_side side) const
    {
        if (!wire_.relaxation_published) return detail::extrapolation_factor;
        if (!(elapsed_ > 0.0)) return 1.0;
        return detail::widening_of(
            side, {stress_, hottest_ - temperature::celsius_zero_in_kelvin, elapsed_ / detail::seconds_per_hour});
    }
    [[nodiscard]] double lower_bound() const
    {
        return std::min(exponent(spring_making::plain), exponent(spring_making::preset)) /
               widening(detail::bound_side::lower);
    }
    [[nodiscard]] double upper_bound() const
    {
        return std::max(exponent(spring_making::plain), exponent(spring_making::preset)) *
               widening(detail::bound_side::upper);
    }
    // the temperature the law is entered with, for a wire whose rise over 20 degC is scaled
    [[nodiscard]] double scaled_kelvin(double kelvin) const
    {
        const double at_reference = reference_temperature.in_kelvin();
        return at_reference + wire_.rise_scale * (kelvin - at_reference);
    }

    spring_wire wire_;
    double stress_;
    double parameter_ = -std::numeric_limits<double>::infinity();  // [K] Larson-Miller parameter reached
    double least_exponent_ = 0.0;                                  // lower bound reached so far
    double hottest_ = 0.0;                                         // [K]
    double elapsed_ = 0.0;                                         // [s]
    bool destroyed_ = false;
};

/// Relaxation of a spring held at one temperature, with bounds, flags and sources.
/// @param wire   of the spring
/// @param stress initial stress over tensile strength, 0 to 1
/// @param t      spring temperature
/// @param time   [s], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline relaxation relaxation_of(const spring_wire& wire, stress_fraction stress, temperature t,
                                              duration time)
{
    return relaxation_state(wire, stress).advance(t, time).result();
}

/// Share of its initial stress that a plain spring loses at one temperature, 1 - exp(-r); 1 above the tempering limit
/// of the wire. relaxation_of() gives the same with bounds and flags.
/// @param wire   of the spring
/// @param stress initial stress over tensile strength, 0 to 1
/// @param t      spring temperature
/// @param time   [s], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline fraction stress_relaxation(const spring_wire& wire, stress_fraction stress, temperature t,
                                                duration time)
{
    return relaxation_state(wire, stress).advance(t, time).lost();
}

}  // namespace weldloop
