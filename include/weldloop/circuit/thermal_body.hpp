#pragma once
/// @file
/// A joint as a lump of metal: what it stores, what it loses to the air.
/// Source: churchill_chu_cylinder, churchill_bernstein_cylinder, mixed_convection_rule, stefan_boltzmann_law.

#include <algorithm>
#include <cmath>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// A body of one temperature in air.
struct thermal_body {
    area surface = {};                      ///< [m2] seen by the air, above 0
    length diameter = in_si<length>(0.03);  ///< [m] across, for convection, above 0
    weldloop::emissivity emissivity = 0.5;  ///< of its surface
    heat_capacity capacity = {};            ///< [J/K], 0 or above
};

namespace detail {

// body_coefficient() of one body at many temperatures: what does not change with them worked out once.
class body_law {
public:
    body_law(const thermal_body& body, const surroundings& around)
        : pressure_(pressure_at_altitude(around.altitude).value()),
          diameter_(require_positive(body.diameter, "diameter").value()), air_(around.air.in_kelvin()),
          wind_(around.wind), emissivity_(body.emissivity)
    {
    }

    // W/(m2 K). @param kelvin of the body, 0 or above
    [[nodiscard]] double at(double kelvin) const
    {
        constexpr double smallest_difference = 1.0;  // K, below it natural convection is taken as that of 1 K
        double difference = kelvin - air_;
        if (std::fabs(difference) < smallest_difference) difference = std::copysign(smallest_difference, difference);
        const temperature surface = temperature::kelvin(air_ + difference);
        const double film = std::clamp(air_ + 0.5 * difference, air_coldest.in_kelvin(), air_hottest.in_kelvin());
        const air_numbers air = air_numbers_at(film, pressure_);
        const double nu = air.viscosity / air.density, alpha = air.conductivity / (air.density * air.specific_heat);
        const double rayleigh = require_finite(gravity / film * std::fabs(surface.in_kelvin() - air_) * diameter_ *
                                                   diameter_ * diameter_ / (nu * alpha),
                                               "Rayleigh number");
        double nusselt = churchill_chu(rayleigh, nu / alpha);
        if (wind_.value() > 0.0)
            nusselt = nusselt_mixed(nusselt, nusselt_cross_flow(wind_.value() * diameter_ / nu, nu / alpha));
        return nusselt * air.conductivity / diameter_ +
               radiation_coefficient(emissivity_, surface, temperature::kelvin(air_)).value();
    }

private:
    double pressure_, diameter_, air_;
    speed wind_;
    weldloop::emissivity emissivity_;
};

}  // namespace detail

/// Heat transfer coefficient of a body in air, convection and radiation [W/(m2 K)]: Churchill-Chu for a horizontal
/// cylinder of its diameter, combined with cross-flow in wind, plus grey radiation to walls at the air's temperature.
/// @param body what it is @param hot its temperature @param around air and wind
/// @throws not_finite_error, out_of_range_error
/// Accuracy: a clamp is no cylinder; 20 % is a fair guess (judgement). At equal temperatures the limit for a small
/// difference (1 K) is returned.
[[nodiscard]] inline heat_transfer_coefficient body_coefficient(const thermal_body& body, temperature hot,
                                                                const surroundings& around)
{
    return in_si<heat_transfer_coefficient>(detail::body_law(body, around).at(hot.in_kelvin()));
}

/// Heat lost by a body to the air [W]; negative below the air's temperature.
/// @param body what it is @param hot its temperature @param around air and wind @throws as body_coefficient()
[[nodiscard]] inline power body_loss(const thermal_body& body, temperature hot, const surroundings& around)
{
    return body_coefficient(body, hot, around) * body.surface * (hot - around.air);
}

}  // namespace weldloop
