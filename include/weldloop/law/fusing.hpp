#pragma once
/// @file
/// Heating without loss: short-circuit pulses and the current that melts a conductor.

#include <cmath>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/heating_segment.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// The law without loss.
inline constexpr source iec_60949_adiabatic{
    "IEC 60949", "1988", "adiabatic short-circuit current, clause 3; worked example 95 mm2, 90 to 250 degC, 1 s",
    source_kind::standard};

namespace detail {

/// Temperature below 20 degC at which the linear law of resistance reaches zero, as a distance above it: 1/alpha [K].
[[nodiscard]] inline double resistance_zero_below(const metal& metal)
{
    return 1.0 / require_positive(metal.temperature_coefficient, "temperature coefficient").value();
}

/// Heating without loss, rho c dT = J^2 rho20 (T - T_zero)/span dt: what the constants of a conductor come to.
struct adiabatic_law {
    double k2;    ///< K^2 = c span/rho20 [A2 s/m4]
    double span;  ///< beta + 20 degC [K]

    /// Integral of J^2 dt that heats from one temperature to another [A2 s/m4], K^2 ln((beta + T2)/(beta + T1)).
    [[nodiscard]] double integral(temperature from, temperature to) const
    {
        // ln of their ratio, with all digits of a small rise
        return k2 * std::log1p((to - from).value() / above_zero(from));
    }
    /// Temperature after an integral of J^2 dt [A2 s/m4].
    [[nodiscard]] temperature after(temperature from, double integral) const
    {
        return from + in_si<temperature_difference>(above_zero(from) * std::expm1(integral / k2));
    }

private:
    [[nodiscard]] double above_zero(temperature t) const
    {
        const double above = span + (t - reference_temperature).value();
        if (!(above > 0.0))
            throw out_of_range_error("start temperature", to_text(t, "degC"),
                                     "above " + number_text(reference_temperature.in_celsius() - span) +
                                         " degC, where the linear law of resistance ends");
        return above;
    }
};

/// The law of a metal by its own constants.
[[nodiscard]] inline adiabatic_law adiabatic_law_of(const metal& metal)
{
    const double span = resistance_zero_below(metal);
    return {require_positive(metal.heat_per_volume(), "heat per volume").value() * span /
                require_positive(metal.resistivity, "resistivity").value(),
            span};
}

}  // namespace detail

/// Current that brings a conductor to its melting point in a time, no heat lost:
/// I = K A sqrt(ln((beta + Tm)/(beta + T0))/t) with K^2 = c (beta + 20 degC)/rho20 and beta = 1/alpha20 - 20 degC.
///
/// A thin coat counts for nothing: tinned copper melts where copper does (conductor_melting_of()), its tin has long
/// run. Constants are the metal's own; for copper K = 225 A s^(1/2)/mm2 against 226 in IEC 60949. Heat of melting is
/// not counted, nor what is lost: good for pulses up to a few seconds, low (safe) beyond.
/// @param metal of the conductor @param section A [m2], above 0 @param t duration [s], above 0
/// @param start T0, below the melting point
/// @return [A]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current fusing_current(const metal& metal, area section, duration t, temperature start)
{
    require_positive(section, "conductor area");
    require_positive(t, "duration");
    if (start >= conductor_melting_of(metal))
        throw out_of_range_error("start temperature", to_text(start, "degC"),
                                 "below the melting point of " + to_text(conductor_melting_of(metal), "degC"));
    return require_finite(in_si<current>(section.value() * std::sqrt(detail::adiabatic_law_of(metal).integral(
                                                                         start, conductor_melting_of(metal)) /
                                                                     t.value())),
                          "fusing current");
}

/// Where heating begins and ends.
struct heating_span {
    temperature start;  ///< at the beginning
    temperature end;    ///< at the end, above `start`, at most the melting point
};

/// Current that heats a conductor from one temperature to another in a time, no heat lost; as fusing_current().
/// @param metal of the conductor @param section A [m2], above 0 @param t duration [s], above 0
/// @param span T0 and T1
/// @return [A]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current adiabatic_current(const metal& metal, area section, duration t, const heating_span& span)
{
    require_positive(section, "conductor area");
    require_positive(t, "duration");
    if (span.start >= span.end || span.end > conductor_melting_of(metal))
        throw out_of_range_error("end temperature", to_text(span.end, "degC"),
                                 "above the start, at most the melting point of " +
                                     to_text(conductor_melting_of(metal), "degC"));
    return require_finite(
        in_si<current>(section.value() *
                       std::sqrt(detail::adiabatic_law_of(metal).integral(span.start, span.end) / t.value())),
        "adiabatic current");
}

/// Temperature of a conductor after a current pulse, no heat lost:
/// T1 = (beta + T0) exp(I^2 t/(K^2 A^2)) - beta. It inverts adiabatic_current().
/// @param metal of the conductor @param section A [m2], above 0 @param pulse I [A], 0 or above, and t [s], above 0
/// @param start T0, below the melting point
/// @return temperature at the end of the pulse
/// @throws not_finite_error, out_of_range_error; no_solution_error when it melts before
[[nodiscard]] inline temperature adiabatic_temperature(const metal& metal, area section, const heating_segment& pulse,
                                                       temperature start)
{
    require_positive(section, "conductor area");
    require_not_negative(pulse.current, "current");
    require_positive(pulse.duration, "duration");
    const current melts = fusing_current(metal, section, pulse.duration, start);
    if (pulse.current > melts)
        throw no_solution_error("temperature after the pulse",
                                "above the melting point of " + to_text(conductor_melting_of(metal), "degC"),
                                "at most " + si_text(melts) + " for " + si_text(pulse.duration));
    const double current_density = pulse.current.value() / section.value();
    return detail::adiabatic_law_of(metal).after(start, current_density * current_density * pulse.duration.value());
}

}  // namespace weldloop
