#pragma once
/// @file
/// Heat along a conductor that loses heat sideways: the heated fin between two ends, and the disc round a hot spot
/// on a plate.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/solve/bessel.hpp>

namespace weldloop {

/// Fins of uniform section and of annular shape.
inline constexpr source fin_equations{"Incropera and DeWitt, Fundamentals of Heat and Mass Transfer", "6th edition",
                                      "section 3.6, extended surfaces; example 3.9", source_kind::handbook};

/// A conductor between two ends, heated along its length and cooled along its surface:
/// k A theta'' = g theta - q, with theta the rise over the air.
///
/// Its rise far from the ends is q/g, its decay length sqrt(k A / g). The heat made per metre may grow with the
/// conductor's temperature: put that slope into g, g = U P - I2 R' alpha.
class heated_fin {
public:
    /// @param axial   k A, conduction along the fin per unit gradient [W m/K], above 0
    /// @param loss    g, net heat lost per metre and kelvin of rise [W/(m K)], above 0
    /// @param heating q, heat made per metre at the temperature of the air [W/m], any
    /// @param extent  length of the fin [m], above 0
    /// @throws not_finite_error, out_of_range_error
    heated_fin(decltype(thermal_conductance{} * weldloop::length{}) axial, thermal_conductivity loss,
               power_per_length heating, weldloop::length extent)
        : length_(require_positive(extent, "fin length").value()), loss_(require_positive(loss, "fin loss").value()),
          far_rise_(require_finite(require_finite(heating, "fin heating").value() / loss_, "rise far from the ends")),
          decay_(1.0 / std::sqrt(require_positive(axial, "fin conduction").value() / loss_)), axial_(axial.value())
    {
        require_positive(decay_, "reciprocal of the decay length");
        require_finite(1.0 / decay_, "decay length");
        require_positive(half(), "length of the fin over its decay length");
    }

    /// Decay length of a disturbance at an end, sqrt(k A / g) [m].
    [[nodiscard]] weldloop::length decay_length() const { return in_si<weldloop::length>(1.0 / decay_); }
    /// Rise of a stretch far from both ends, q/g [K].
    [[nodiscard]] temperature_difference far_rise() const { return in_si<temperature_difference>(far_rise_); }

    /// Conductance an end feels towards itself, k A m coth(m L) [W/K]. @throws not_finite_error for a fin so short that
    /// it has no number
    [[nodiscard]] thermal_conductance own_end() const
    {
        return require_finite(in_si<thermal_conductance>(axial_ * decay_ / std::tanh(decay_ * length_)),
                              "conductance of the fin's end");
    }
    /// Conductance an end feels towards the other end, k A m / sinh(m L) [W/K]. @throws as own_end()
    [[nodiscard]] thermal_conductance other_end() const
    {
        return require_finite(in_si<thermal_conductance>(axial_ * decay_ / std::sinh(decay_ * length_)),
                              "conductance of the fin's end towards the other");
    }

    /// Heat that flows into the fin at an end whose rise is `here`, the other end being at `there` [W].
    /// @param here [K], any @param there [K], any @throws not_finite_error
    [[nodiscard]] power into_end(temperature_difference here, temperature_difference there) const
    {
        require_finite(here, "rise of this end");
        require_finite(there, "rise of the other end");
        // own_end() less other_end() is k A m tanh(m L/2): written out, a short fin keeps its digits
        const thermal_conductance sideways = in_si<thermal_conductance>(axial_ * decay_ * std::tanh(half()));
        return require_finite(power(other_end() * (here - there) + sideways * (here - far_rise())),
                              "heat into the fin");
    }

    /// Mean rise over the length for given end rises [K]; exact, from the heat balance of the whole fin.
    /// @param one [K], any @param other [K], any @throws not_finite_error
    [[nodiscard]] temperature_difference mean_rise(temperature_difference one, temperature_difference other) const
    {
        require_finite(one, "rise of one end");
        require_finite(other, "rise of the other end");
        const double y = half();
        double middle = 1.0 - std::tanh(y) / y;  // weight of the rise far from the ends
        constexpr double little = 0.5;
        if (y < little) {  // y cosh y - sinh y by its series, all terms above zero
            middle = 1.0;
            for (int k = 6; k > 0; --k) middle = 1.0 + middle * y * y / (2.0 * k * (2.0 * k + 3.0));
            middle *= y * y / (3.0 * std::cosh(y));
        }
        return require_finite(temperature_difference(0.5 * (1.0 - middle) * (one + other) + middle * far_rise()),
                              "mean rise of the fin");
    }

    /// Highest rise anywhere along the fin, ends included [K].
    /// @param one [K], any @param other [K], any @throws not_finite_error
    [[nodiscard]] temperature_difference highest_rise(temperature_difference one, temperature_difference other) const
    {
        const double u1 = require_finite(one, "rise of one end").value() - far_rise_;
        const double u2 = require_finite(other, "rise of the other end").value() - far_rise_;
        constexpr double little = 0.5;
        if (half() < little) return highest_of_short(std::max(one, other), std::min(one, other));
        double highest = std::fmax(u1, u2);
        if (u1 < 0.0 && u2 < 0.0) {  // ends cooler than the middle: u = -2 sqrt(PQ) e^(-mL/2) where its slope is zero
            const double e = std::exp(-decay_ * length_);
            const double p = (u2 - u1 * e) / (1.0 - e * e);
            const double q = (u1 - u2 * e) / (1.0 - e * e);
            if (p < 0.0 && q < 0.0) {
                const double from_middle = 0.5 / decay_ * std::log(q / p);
                if (std::fabs(from_middle) < 0.5 * length_) highest = -2.0 * std::sqrt(p * q * e);
            }
        }
        return require_finite(in_si<temperature_difference>(far_rise_ + highest), "highest rise of the fin");
    }

private:
    [[nodiscard]] double half() const { return 0.5 * decay_ * length_; }  // m L/2
    // Over its hotter end by s^2/(u + sqrt(u^2 - s^2)), s = q/(k A m), q the heat that leaves there, and u its rise
    // below the one far from the ends: no digits are lost where that is high above both.
    [[nodiscard]] temperature_difference highest_of_short(temperature_difference hot, temperature_difference cold) const
    {
        const double s = -into_end(hot, cold).value() / (axial_ * decay_);
        if (!(s > 0.0 && into_end(cold, hot).value() < 0.0)) return hot;
        const double u = far_rise_ - hot.value();
        const double above = s * s / (u + std::sqrt(std::max(0.0, (u - s) * (u + s))));
        return require_finite(temperature_difference(hot + in_si<temperature_difference>(above)),
                              "highest rise of the fin");
    }

    double length_, loss_, far_rise_, decay_, axial_;
};

/// Conductance from a round hot spot on a wide plate to the air over both its faces [W/K]:
/// G = 2 pi k t (m r) K1(m r)/K0(m r), m = sqrt(2 h/(k t)).
/// @param k            conductivity of the plate [W/(m K)], above 0
/// @param thickness    of the plate [m], above 0
/// @param spot_radius  of the heated patch [m], above 0
/// @param h            heat transfer coefficient of each face [W/(m2 K)], above 0
/// @throws not_finite_error, out_of_range_error
/// Valid while the plate is thin against its heated patch and wide against 1/m (10 to 30 cm for steel); a smaller
/// plate warms up as a whole and holds the spot hotter.
[[nodiscard]] inline thermal_conductance disc_fin_conductance(thermal_conductivity k, length thickness,
                                                              length spot_radius, heat_transfer_coefficient h)
{
    require_positive(k, "plate conductivity");
    require_positive(thickness, "plate thickness");
    require_positive(spot_radius, "spot radius");
    require_positive(h, "heat transfer coefficient");
    const double kt = k.value() * thickness.value();
    const double mr =
        require_finite(std::sqrt(2.0 * h.value() / kt) * spot_radius.value(), "spot radius over the fin's length");
    constexpr double two_pi = 6.283185307179586;
    // towards m r = 700 both Bessel functions underflow: from 500 on their ratio by its expansion, to 1e-13,
    // and below 1e-8 K1 is 1/x and K0 is -ln(x/2) - gamma to rounding: the limit of a small spot on a large plate
    if (mr < 1e-8) {
        require_within(mr, std::numeric_limits<double>::min(), 1e-8, "spot radius over the fin's length");
        return require_finite(in_si<thermal_conductance>(two_pi * kt / (-std::log(0.5 * mr) - std::numbers::egamma)),
                              "conductance of the plate");
    }
    const double by = 1.0 / mr;
    const double ratio = mr > 500.0 ? 1.0 + by * (0.5 - by * (0.125 - by * (0.125 - by * 25.0 / 128.0)))
                                    : solve::bessel_k(1.0, mr) / solve::bessel_k(0.0, mr);
    return require_finite(in_si<thermal_conductance>(two_pi * kt * mr * ratio), "conductance of the plate");
}

}  // namespace weldloop
