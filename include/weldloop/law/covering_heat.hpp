#pragma once
/// @file
/// Heat in the covering of a round conductor: what it lets through and what it stores.

#include <cmath>
#include <numbers>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Where the split of stored heat comes from.
inline constexpr source van_wormer_split{
    "Van Wormer, AIEE Transactions 74 III", "1955",
    "share of insulation heat counted with the conductor, long times; also IEC 60853-2 (from memory)",
    source_kind::memory};

/// Heat capacity of one metre [J/(m K)].
using heat_capacity_per_length = decltype(heat_capacity{} / length{});

namespace detail {

inline void require_covering(length inner, length outer)
{
    require_positive(inner, "conductor diameter");
    require_positive(outer, "overall diameter");
    if (!(outer > inner))
        throw out_of_range_error("overall diameter", si_text(outer),
                                 "above the conductor diameter of " + si_text(inner));
}

// ln(D/d), with all digits of a thin covering
inline double log_diameter_ratio(length inner, length outer)
{
    return std::log1p(((outer - inner) / inner).value());
}

// Says which argument it is that cannot be; a conductance that is zero because it is beyond the smallest number stands.
// Plain numbers [W/(m K), W/(m K), m, m], which stay in registers.
[[gnu::noinline, gnu::cold]] inline double doubtful_conductance(double found, double conductivity, double inner,
                                                                double outer)
{
    require_positive(in_si<thermal_conductivity>(conductivity), "thermal conductivity of the covering");
    require_covering(in_si<length>(inner), in_si<length>(outer));
    return require_finite(in_si<thermal_conductivity>(found), "heat conductance of the covering").value();
}

}  // namespace detail

/// Heat conducted through a round covering per metre and kelvin, G = 2 pi k / ln(D/d).
/// @param conductivity k [W/(m K)], above 0 @param inner d over the conductor [m], above 0
/// @param outer D over the covering [m], above d @return [W/(m K)] per metre of cable; exact for a uniform covering
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductivity covering_conductance(thermal_conductivity conductivity, length inner,
                                                               length outer)
{
    const thermal_conductivity found(2.0 * std::numbers::pi * conductivity / detail::log_diameter_ratio(inner, outer));
    // with these above zero the overall diameter is the larger, and a finite answer has finite arguments
    if (conductivity.value() > 0.0 && inner.value() > 0.0 && found.value() > 0.0 &&
        found.value() <= detail::greatest_number) [[likely]]
        return found;
    return in_si<thermal_conductivity>(
        detail::doubtful_conductance(found.value(), conductivity.value(), inner.value(), outer.value()));
}

/// Share of a covering's stored heat that counts with the conductor in a model of two stores, by Van Wormer:
/// p = 1/(2 ln(D/d)) - 1/((D/d)^2 - 1). The rest counts with the surface.
///
/// It is exact for the heat in the covering in steady conduction. A model of two stores with it reads bursts of current
/// shorter than the covering takes to warm through far too hot (35 % at 2 s); covered_conductor takes more points.
/// p tends to 1/2 for a thin covering.
/// @param inner d over the conductor [m], above 0 @param outer D over the covering [m], above d
/// @return share, 0 to 1/2
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double van_wormer_share(length inner, length outer)
{
    detail::require_covering(inner, outer);
    const double y = 2.0 * detail::log_diameter_ratio(inner, outer), y2 = y * y;
    constexpr double thin = 0.4;  // below it by the series, whose next term is below rounding
    if (y < thin)
        return 0.5 -
               y * (1.0 / 12 -
                    y2 * (1.0 / 720 - y2 * (1.0 / 30240 - y2 * (1.0 / 1209600 -
                                                                y2 * (1.0 / 47900160 - y2 * (691.0 / 1307674368e3))))));
    return 1.0 / y - 1.0 / std::expm1(y);
}

/// Heat stored by a round covering per metre and kelvin, C = c pi/4 (D^2 - d^2).
/// @param heat_per_volume c [J/(m3 K)], above 0 @param inner d over the conductor [m], above 0
/// @param outer D over the covering [m], above d
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline heat_capacity_per_length covering_heat_capacity(volumetric_heat heat_per_volume, length inner,
                                                                     length outer)
{
    require_positive(heat_per_volume, "heat per volume of the covering");
    detail::require_covering(inner, outer);
    return require_finite(
        heat_capacity_per_length(heat_per_volume * (0.25 * std::numbers::pi * ((outer - inner) * (outer + inner)))),
        "heat capacity of the covering");
}

}  // namespace weldloop
