#pragma once
/// @file
/// A joint as a lump of metal: what it stores, what it loses to the air.
/// Source: churchill_chu_cylinder, churchill_bernstein_cylinder, mixed_convection_rule, stefan_boltzmann_law.

#include <algorithm>
#include <cmath>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
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

// body_coefficient() of one body at many temperatures: the air's pressure worked out once.
class body_law {
public:
    body_law(const thermal_body& body, const surroundings& around)
        : pressure_(pressure_at_altitude(around.altitude)), diameter_(body.diameter), air_(around.air),
          wind_(around.wind), emissivity_(body.emissivity)
    {
    }

    [[nodiscard]] heat_transfer_coefficient at(temperature hot) const
    {
        constexpr double smallest_difference = 1.0;  // K, below it natural convection is taken as that of 1 K
        double difference = (hot - air_).value();
        if (std::fabs(difference) < smallest_difference) difference = std::copysign(smallest_difference, difference);
        const temperature surface = air_ + in_si<temperature_difference>(difference);
        const temperature film = air_ + in_si<temperature_difference>(0.5 * difference);
        const air_properties air = air_at(std::clamp(film, air_coldest, air_hottest), pressure_);
        double nusselt = nusselt_horizontal_cylinder(rayleigh_number(diameter_, surface, air_, air), air.prandtl());
        if (wind_.value() > 0.0)
            nusselt = nusselt_mixed(nusselt, nusselt_cross_flow(reynolds_number(wind_, diameter_, air), air.prandtl()));
        return nusselt * air.thermal_conductivity / diameter_ + radiation_coefficient(emissivity_, surface, air_);
    }

private:
    pressure pressure_;
    length diameter_;
    temperature air_;
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
    return require_finite(detail::body_law(body, around).at(hot), "heat transfer coefficient of a body");
}

/// Heat lost by a body to the air [W]; negative below the air's temperature.
/// @param body what it is @param hot its temperature @param around air and wind @throws as body_coefficient()
[[nodiscard]] inline power body_loss(const thermal_body& body, temperature hot, const surroundings& around)
{
    return require_finite(power(body_coefficient(body, hot, around) *
                                require_not_negative(body.surface, "surface of a body") * (hot - around.air)),
                          "heat lost by a body");
}

}  // namespace weldloop
