#pragma once
/// @file
/// One metre of round covered conductor as a heat store: the metal, and the covering at a few points of its radius.

#include <array>
#include <cmath>
#include <cstddef>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/covering_heat.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// The model of a covered conductor in time.
inline constexpr source covering_points_model{
    "conductor of one temperature, heat conduction in the covering by collocation at five Gauss-Lobatto points of the "
    "logarithm of its radius",
    {},
    "derived; compared with a covering of 200 rings in tests/circuit and of layers in tests/law",
    source_kind::derived};

/// One metre of covered conductor; what periodic_heating_of() and profile_after() need to know of it.
struct covered_conductor {
    resistance_per_length resistance;    ///< [ohm/m] above 0, at 20 degC
    per_kelvin temperature_coefficient;  ///< [1/K] of it, any, referred to 20 degC
    temperature melting;                 ///< of the conductor; its resistance is not raised further above
    heat_capacity_per_length metal;      ///< [J/(m K)] above 0, of the conductor
    heat_capacity_per_length covering;   ///< [J/(m K)] above 0, of the whole covering
    thermal_conductivity conductance;    ///< [W/(m K)] above 0, per metre, from conductor to surface
    double diameter_ratio = 1.0;         ///< of the covering, outer over inner, above 1
};

/// The strands of a covered conductor.
struct stranded_section {
    weldloop::metal metal;   ///< of the strands
    area section;            ///< area of metal [m2], above 0
    double increment = 0.0;  ///< of stranding [1], 0 to 1
};

/// What is around them.
struct covering_ring {
    weldloop::covering covering;  ///< its material
    length inner;                 ///< diameter over the strands [m], above 0
    length outer;                 ///< diameter over the covering [m], above `inner`
};

/// A round covered conductor from its materials and dimensions.
/// @param strands metal, area and increment @param ring covering and its diameters
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline covered_conductor covered_conductor_of(const stranded_section& strands, const covering_ring& ring)
{
    const metal& metal = strands.metal;
    require_positive(metal.heat_per_volume(), "heat per volume of the conductor");
    return {conductor_resistance(metal, strands.section, strands.increment, reference_temperature),
            metal.temperature_coefficient,
            conductor_melting_of(metal),
            metal.heat_per_volume() * strands.section,
            covering_heat_capacity(ring.covering.heat_per_volume, ring.inner, ring.outer),
            covering_conductance(ring.covering.thermal_conductivity, ring.inner, ring.outer),
            (ring.outer / ring.inner).value()};
}

/// Temperatures of a covered conductor at a moment.
struct conductor_profile {
    temperature conductor;              ///< of the strands, and of the covering's inner face
    std::array<temperature, 3> within;  ///< of the covering at 17, 50 and 83 % of the logarithm of the radius
    temperature surface;                ///< of the covering's outer face

    /// The same everywhere, as of a lead that has lain long enough in shade.
    [[nodiscard]] static conductor_profile even(temperature everywhere)
    {
        return {everywhere, {everywhere, everywhere, everywhere}, everywhere};
    }
};

namespace detail {

/// Points of the covering, its two faces included; the conductor is at the first.
inline constexpr std::size_t covering_points = 5;
/// A number for each point; the conductor's first, the surface's last.
using point_values = std::array<double, covering_points>;
inline constexpr std::size_t surface_point = covering_points - 1;

/// Gauss-Lobatto points of the interval 0 to 1, (1 -+ sqrt(3/7))/2 within, and their weights.
inline constexpr point_values lobatto_places{0.0, 0.5 - 0.32732683535398857, 0.5, 0.5 + 0.32732683535398857, 1.0};
inline constexpr point_values lobatto_weights{1.0 / 20, 49.0 / 180, 16.0 / 45, 49.0 / 180, 1.0 / 20};

/// Heat flow out of point i per kelvin of point j in units of the covering's conductance: the integral of the products
/// of the slopes of the polynomials through the points, which the weights give exactly.
[[nodiscard]] constexpr std::array<point_values, covering_points> lobatto_stiffness()
{
    std::array<point_values, covering_points> slope{}, out{};
    point_values product{};
    for (std::size_t i = 0; i < covering_points; ++i) {
        product[i] = 1.0;
        for (std::size_t k = 0; k < covering_points; ++k)
            if (k != i) product[i] *= lobatto_places[i] - lobatto_places[k];
    }
    for (std::size_t i = 0; i < covering_points; ++i)
        for (std::size_t j = 0; j < covering_points; ++j)
            if (i != j) {
                slope[i][j] = product[i] / product[j] / (lobatto_places[i] - lobatto_places[j]);
                slope[i][i] -= slope[i][j];  // an even temperature has no slope
            }
    for (std::size_t i = 0; i < covering_points; ++i)
        for (std::size_t j = 0; j < covering_points; ++j)
            for (std::size_t m = 0; m < covering_points; ++m)
                out[i][j] += lobatto_weights[m] * slope[m][i] * slope[m][j];
    return out;
}
inline constexpr std::array<point_values, covering_points> covering_stiffness = lobatto_stiffness();

/// A covered conductor in plain numbers, arguments checked. Linear but for the surface, which is the caller's matter.
struct conductor_numbers {
    double resistance, alpha, melting;  // ohm/m at 20 degC, 1/K, K
    double conductance;                 // W/(m K)
    point_values root_heat{};           // square root of the heat capacity that counts with each point
    double whole_heat = 0.0;            // J/(m K)

    explicit conductor_numbers(const covered_conductor& c)
        : resistance(require_positive(c.resistance, "resistance per length").value()),
          alpha(require_finite(c.temperature_coefficient, "temperature coefficient").value()),
          melting(c.melting.in_kelvin()),
          conductance(require_positive(c.conductance, "conductance of the covering").value())
    {
        const double metal = require_positive(c.metal, "heat capacity of the conductor").value();
        const double around = require_positive(c.covering, "heat capacity of the covering").value();
        constexpr double thickest = 1e3;  // of the diameter ratio; leads have 1.2 to 2
        const double log_ratio =
            std::log(require_within(c.diameter_ratio, 1.0, thickest, "diameter ratio of the covering"));
        point_values share{};  // of the covering's heat: the ring's area grows with the square of the radius
        double sum = 0.0;
        for (std::size_t i = 0; i < covering_points; ++i)
            sum += share[i] = lobatto_weights[i] * std::exp(2.0 * log_ratio * lobatto_places[i]);
        for (std::size_t i = 0; i < covering_points; ++i)
            root_heat[i] = std::sqrt((i == 0 ? metal : 0.0) + around * share[i] / sum);
        whole_heat = metal + around;
    }
};

}  // namespace detail

}  // namespace weldloop
