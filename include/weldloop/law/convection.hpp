#pragma once
/// @file
/// Convection from a horizontal cylinder in air: still air, wind, and both together. Plain dimensionless numbers in
/// and out; cable_surface.hpp puts the quantities to them.

#include <cmath>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/air.hpp>

namespace weldloop {

/// @name Sources of the convection laws
/// @{

/// Still air.
inline constexpr source churchill_chu_cylinder{"Churchill and Chu, Int. J. Heat Mass Transfer 18", "1975",
                                               "horizontal cylinder; quoted in Cengel eq. 9-25 and Incropera eq. 9.34",
                                               source_kind::paper};
/// Still air, power laws.
inline constexpr source morgan_cylinder{"Morgan, Advances in Heat Transfer 11", "1975",
                                        "power laws; Incropera table 9.1 (first range seen, others from memory)",
                                        source_kind::memory};
/// Wind across a cylinder.
inline constexpr source churchill_bernstein_cylinder{"Churchill and Bernstein, J. Heat Transfer 99", "1977",
                                                     "pp. 300-306; Holman eq. 6-21, Incropera eq. 7.54",
                                                     source_kind::paper};
/// Still air and wind together.
inline constexpr source mixed_convection_rule{"Incropera, Fundamentals of Heat and Mass Transfer", "7th edition",
                                              "section 9.9; power 4 for a horizontal cylinder in cross-flow",
                                              source_kind::memory};
/// @}

/// @name Ranges of the convection laws
/// Outside them the functions extrapolate; what is built on them raises range_flag::convection_range.
/// @{
inline constexpr double cylinder_lowest_rayleigh = 1e-5;    ///< Rayleigh number, Churchill and Chu, full form
inline constexpr double cylinder_highest_rayleigh = 1e12;   ///< Rayleigh number, Churchill and Chu, full form; Morgan
inline constexpr double laminar_highest_rayleigh = 1e9;     ///< Rayleigh number, Churchill and Chu, laminar form
inline constexpr double cross_flow_lowest_peclet = 0.2;     ///< Reynolds times Prandtl number, Churchill and Bernstein
inline constexpr double cross_flow_highest_reynolds = 1e7;  ///< Reynolds number, Churchill and Bernstein
/// @}

namespace detail {

inline constexpr double gravity = standard_gravity;

inline void require_number(double x, bool zero_allowed, std::string_view argument)
{
    if (!std::isfinite(x)) throw not_finite_error(std::string(argument), number_text(x));
    if (x < 0.0 || (x == 0.0 && !zero_allowed))
        throw out_of_range_error(std::string(argument), number_text(x), zero_allowed ? "zero or above" : "above zero");
}

/// @name Constants of Churchill and Chu's full form, Nu = (0.60 + 0.387 Ra^(1/6) / factor(Pr))^2
/// @{
inline constexpr double churchill_chu_still = 0.60, churchill_chu_slope = 0.387;
/// @}

/// (1 + (0.559/Pr)^(9/16))^(8/27), and the exponent of Pr it has as a power there.
struct prandtl_power {
    double value, exponent;

    explicit prandtl_power(double prandtl)
    {
        const double half = std::sqrt(0.559 / prandtl);
        const double sum = half * std::sqrt(std::sqrt(std::sqrt(half)));  // power 9/16
        value = std::pow(1.0 + sum, 8.0 / 27.0);
        exponent = -8.0 / 27.0 * 9.0 / 16.0 * sum / (1.0 + sum);
    }
};

/// The least of that factor where air_ceiling_at() holds, rounded down: it falls with the Prandtl number.
inline constexpr double least_prandtl_factor = 1.1998;

[[nodiscard]] inline double churchill_chu(double rayleigh, double prandtl)
{
    const double root =
        churchill_chu_still + churchill_chu_slope * std::cbrt(std::sqrt(rayleigh)) / prandtl_power(prandtl).value;
    return root * root;
}

/// One of Morgan's power laws.
struct morgan_row {
    double factor, exponent;

    [[nodiscard]] double nusselt(double rayleigh) const { return factor * std::pow(rayleigh, exponent); }
};

[[nodiscard]] inline morgan_row morgan_row_of(double rayleigh)
{
    if (rayleigh < 1e-2) return {0.675, 0.058};
    if (rayleigh < 1e2) return {1.02, 0.148};
    if (rayleigh < 1e4) return {0.850, 0.188};
    if (rayleigh < 1e7) return {0.480, 0.250};
    return {0.125, 1.0 / 3.0};
}

[[nodiscard]] inline double morgan(double rayleigh)
{
    return morgan_row_of(rayleigh).nusselt(rayleigh);
}

/// Churchill and Bernstein's Nusselt number, and its slopes over the logarithms of Reynolds and Prandtl number.
struct cross_flow_nusselt {
    double value, by_reynolds, by_prandtl;

    cross_flow_nusselt(double reynolds, double prandtl)
    {
        const double thin = std::pow(0.4 / prandtl, 2.0 / 3.0);
        const double fast = std::pow(reynolds / 282000.0, 5.0 / 8.0);
        const double moved = 0.62 * std::sqrt(reynolds) * std::cbrt(prandtl) / std::sqrt(std::sqrt(1.0 + thin)) *
                             std::pow(1.0 + fast, 4.0 / 5.0);
        value = 0.3 + moved;
        by_reynolds = moved * 0.5 * (1.0 + fast / (1.0 + fast));
        by_prandtl = moved / 3.0 * (1.0 + 0.5 * thin / (1.0 + thin));
    }
};

[[nodiscard]] inline double churchill_bernstein(double reynolds, double prandtl)
{
    return cross_flow_nusselt(reynolds, prandtl).value;
}

}  // namespace detail

/// Rayleigh number of a horizontal cylinder, Ra = (g/T_film) |Ts - Ta| D^3 / (nu alpha).
/// @param diameter D [m], above 0 @param surface Ts @param air Ta
/// @param film properties of the air at the film temperature (Ts + Ta)/2
/// @return Ra, zero where both temperatures are equal
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double rayleigh_number(length diameter, temperature surface, temperature air,
                                            const air_properties& film)
{
    require_positive(diameter, "diameter");
    const double nu = require_positive(film.viscosity / film.density, "kinematic viscosity").value();
    const double alpha = require_positive(film.thermal_diffusivity(), "thermal diffusivity").value();
    const double d = diameter.value();
    return require_finite(detail::gravity / film.at.in_kelvin() * std::fabs((surface - air).value()) * d * d * d /
                              (nu * alpha),
                          "Rayleigh number");
}

/// Reynolds number of a cylinder in cross-flow, Re = V D / nu.
/// @param wind V [m/s], 0 or above @param diameter D [m], above 0 @param film air at the film temperature
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double reynolds_number(speed wind, length diameter, const air_properties& film)
{
    require_not_negative(wind, "wind");
    require_positive(diameter, "diameter");
    return require_finite(
        (wind * diameter / require_positive(film.kinematic_viscosity(), "kinematic viscosity")).value(),
        "Reynolds number");
}

/// Nusselt number of an isothermal horizontal cylinder in still fluid, full form of Churchill and Chu:
/// Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2.
///
/// Range 1e-5 < Ra < 1e12, any Pr; outside it the value is an extrapolation. Ra = 0 gives 0.36. Correlations for this
/// case differ by 10 to 20 % at the Ra of welding leads (1e3 to 1e5); this one lies low.
/// @param rayleigh number on the diameter, 0 or above @param prandtl number, above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double nusselt_horizontal_cylinder(double rayleigh, double prandtl)
{
    detail::require_number(rayleigh, true, "Rayleigh number");
    detail::require_number(prandtl, false, "Prandtl number");
    return detail::churchill_chu(rayleigh, prandtl);
}

/// The same number, laminar form of Churchill and Chu: Nu = 0.36 + 0.518 Ra^(1/4) / (1 + (0.559/Pr)^(9/16))^(4/9).
/// Range 1e-6 < Ra < 1e9; outside it an extrapolation.
/// @param rayleigh number on the diameter, 0 or above @param prandtl number, above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double nusselt_horizontal_cylinder_laminar(double rayleigh, double prandtl)
{
    detail::require_number(rayleigh, true, "Rayleigh number");
    detail::require_number(prandtl, false, "Prandtl number");
    return 0.36 + 0.518 * std::pow(rayleigh, 0.25) / std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 4.0 / 9.0);
}

/// The same number in air by Morgan's power laws Nu = B Ra^n, with B and n by the range of Ra:
/// 0.675 and 0.058 (to 1e-2), 1.02 and 0.148 (to 1e2), 0.850 and 0.188 (to 1e4), 0.480 and 0.250 (to 1e7), 0.125 and
/// 1/3 (to 1e12). It steps by up to 3 % where two ranges meet and lies 10 to 20 % above Churchill and Chu at the Ra of
/// welding leads. Range 1e-10 < Ra < 1e12; outside it an extrapolation. Ra = 0 gives 0.
/// @param rayleigh number on the diameter, 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double nusselt_horizontal_cylinder_morgan(double rayleigh)
{
    detail::require_number(rayleigh, true, "Rayleigh number");
    return detail::morgan(rayleigh);
}

/// Nusselt number of a cylinder in cross-flow, Churchill and Bernstein:
/// Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4) (1 + (Re/282000)^(5/8))^(4/5).
///
/// Range Re Pr > 0.2, Re < 1e7; outside it an extrapolation. Up to Re = 2e4, a gale across a lead, power laws keep
/// within 20 % of it; above, they lie higher: by up to 20 % near Re = 1e5, 24 % at 3e5. There its authors' own variant,
/// with 1 + (Re/282000)^(1/2) as the last factor, is 10 to 15 % higher too. Re = 0 gives 0.3.
/// @param reynolds number on the diameter, 0 or above @param prandtl number, above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double nusselt_cross_flow(double reynolds, double prandtl)
{
    detail::require_number(reynolds, true, "Reynolds number");
    detail::require_number(prandtl, false, "Prandtl number");
    return require_finite(detail::churchill_bernstein(reynolds, prandtl), "Nusselt number");
}

/// Nusselt number of natural and forced convection together, Nu = (Nu_natural^n + Nu_forced^n)^(1/n).
/// @param natural Nusselt number of still air, 0 or above @param forced number of the wind alone, 0 or above
/// @param exponent n, 1 to 10: 3 in transverse flow, 4 for a horizontal cylinder in cross-flow (the default and the
/// smaller result)
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double nusselt_mixed(double natural, double forced, double exponent = 4.0)
{
    detail::require_number(natural, true, "natural Nusselt number");
    detail::require_number(forced, true, "forced Nusselt number");
    require_within(exponent, 1.0, 10.0, "exponent of mixed convection");
    const double larger = natural > forced ? natural : forced;
    if (larger == 0.0) return 0.0;
    return require_finite(
        larger * std::pow(std::pow(natural / larger, exponent) + std::pow(forced / larger, exponent), 1.0 / exponent),
        "Nusselt number of mixed convection");
}

}  // namespace weldloop
