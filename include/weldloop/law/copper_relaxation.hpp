#pragma once
/// @file
/// Stress relaxation of copper-alloy springs, such as the jaws of a clamp: the permanent loss of force in time at
/// temperature.
///
/// Larson-Miller form: P = T (20 + log10(t/1 h)), r = r0 exp(c (P - P0)), S/S0 = exp(-r), P0 = 378.15 K x 23 the value
/// at 105 degC and 1000 h. The share lost does not depend on the initial stress (published for beryllium copper, taken
/// for all), at stresses usual in springs. What goes at once on first loading is apart, see
/// copper_spring_alloy::first_loading.
///
/// An estimate: but for one published bound the constants are recalled, so every result is flagged and its bounds are a
/// factor 3 either way in r. Above the temperature at which its temper is gone the spring is destroyed.

#include <algorithm>
#include <cmath>
#include <limits>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/relaxation_result.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/material/copper_spring_alloy.hpp>

namespace weldloop {

namespace detail {
inline constexpr double copper_reference_parameter = 378.15 * (larson_miller_constant + 3.0);  // [K] 105 degC, 1000 h
}  // namespace detail

/// A copper-alloy spring's relaxation over any history of temperatures: the state is the Larson-Miller parameter
/// reached so far, as in relaxation_state.
class copper_relaxation_state {
public:
    /// @param alloy of the spring @throws not_finite_error, out_of_range_error for one whose constants cannot be
    explicit copper_relaxation_state(const copper_spring_alloy& alloy) : alloy_(alloy)
    {
        detail::require_relaxation_law(alloy.reference_exponent, alloy.parameter_slope);
    }

    /// Holds the spring at a temperature for a time.
    /// @param t spring temperature; at absolute zero nothing happens @param time [s], 0 or above
    /// @throws not_finite_error, out_of_range_error for a negative time
    copper_relaxation_state& advance(temperature t, duration time)
    {
        require_not_negative(time, "time");
        if (time.value() == 0.0) return *this;
        if (t > alloy_.temper_lost) destroyed_ = true;
        if (!destroyed_) parameter_ = detail::advanced_parameter(parameter_, t.in_kelvin(), time);
        return *this;
    }

    /// The exponent r of S/S0 = exp(-r); 0 for a new spring. Meaningless once destroyed.
    [[nodiscard]] double exponent() const
    {
        return detail::relaxation_exponent(alloy_.reference_exponent,
                                           alloy_.parameter_slope.value() *
                                               (parameter_ - detail::copper_reference_parameter));
    }
    /// Share of its initial stress the spring has lost. Everything, once destroyed.
    [[nodiscard]] fraction lost() const { return destroyed_ ? fraction(1.0) : detail::lost_by(exponent()); }
    /// Whether it has been hotter than its temper bears. Nothing undoes that.
    [[nodiscard]] bool destroyed() const { return destroyed_; }

    /// The state as a result with bounds, flags and sources.
    [[nodiscard]] relaxation result() const
    {
        relaxation out;
        out.basis.add(larson_miller).add(*alloy_.relaxation_source).add(*alloy_.slope_source);
        out.basis.add(range_flag::relaxation_range);
        if (destroyed_) out.basis.add(range_flag::spring_destroyed).add(copper_temper_judgement);
        out.destroyed = destroyed_;
        out.lost = lost();
        out.bracket = destroyed_ ? exactly(fraction(1.0))
                                 : detail::relaxation_bracket(exponent(), exponent(), detail::extrapolation_factor);
        return out;
    }

private:
    copper_spring_alloy alloy_;
    double parameter_ = -std::numeric_limits<double>::infinity();  // [K]
    bool destroyed_ = false;
};

/// Relaxation of a copper-alloy spring held at one temperature.
/// @param alloy of the spring @param t its temperature @param time [s], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline relaxation copper_relaxation(const copper_spring_alloy& alloy, temperature t, duration time)
{
    return copper_relaxation_state(alloy).advance(t, time).result();
}

}  // namespace weldloop
