#pragma once
/// @file
/// Growth of the oxide on bare copper in dry air, by time and temperature. For relative trends: its constants were
/// fitted to recalled points, and moisture, sulphur and tin are not in it.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// Constants of growth.
inline constexpr source copper_oxide_growth{
    "Slade (ed.), Electrical Contacts", "2nd edition",
    "oxide thickness on copper: 2.2 and 4 nm after 1e3 and 1e5 h at 20 degC, 15 and 130 nm at 100 degC; the laws and "
    "0.82 eV were fitted to these four points",
    source_kind::memory};
/// Regimes of growth.
inline constexpr source copper_oxide_regimes{
    "Fujita et al., Oxidation of Metals 82, 181-193", "2014",
    "abstract: logarithmic below 5 nm, cubic to 25 nm, parabolic above, 40 to 180 degC", source_kind::paper};

/// Metals whose oxide this is.
inline constexpr source copper_oxide_metals{
    "copper's oxide grows on copper, brass, bronze and copper skins; tin keeps it off, steel rusts or scales instead, "
    "which no law here follows",
    "2026",
    {},
    source_kind::judgement};

/// Whether the oxide of copper grows on a metal. @param m the metal @see copper_oxide_metals
[[nodiscard]] inline bool grows_copper_oxide(const metal& m)
{
    return m == annealed_copper || m == brass || m == bronze || m == copper_clad_aluminium_10 ||
           m == copper_clad_aluminium_15;
}

/// Highest temperature of the growth law; see copper_oxide_regimes.
inline constexpr temperature hottest_oxide_growth = temperature::celsius(180.0);

namespace detail {
// nm and hours; see copper_oxide_growth
inline constexpr double oxide_log_at_1000_h = 2.2, oxide_log_per_decade = 0.9;
inline constexpr double oxide_parabolic_at_100_degc = 0.225;        // nm2/h
inline constexpr double oxide_activation_kelvin = 0.82 / 8.617e-5;  // eV over Boltzmann's constant in eV/K
inline constexpr double nanometre = 1e-9;

// nm2/h
inline double oxide_rate(temperature t)
{
    constexpr double reference_kelvin = 373.15;
    return oxide_parabolic_at_100_degc * std::exp(oxide_activation_kelvin * ((t.in_kelvin() - reference_kelvin) /
                                                                             (t.in_kelvin() * reference_kelvin)));
}

// nm2/h by the logarithmic law at a thickness in nm
inline double oxide_logarithmic_rate(double x)
{
    constexpr double reference_decades = 3.0, no_more = 9.0;  // 1000 h, 1e9 h
    const double decades = (x - oxide_log_at_1000_h) / oxide_log_per_decade + reference_decades;
    return decades < no_more ? 2.0 * x * oxide_log_per_decade / std::numbers::ln10 * std::pow(10.0, -decades) : 0.0;
}

// nm2/h at a thickness in nm
inline double oxide_square_rate(double x, temperature t)
{
    return std::max(oxide_rate(t), oxide_logarithmic_rate(x));
}

inline void require_growth_temperature(temperature t)
{
    if (t > hottest_oxide_growth || t.in_kelvin() <= 0.0)
        throw out_of_range_error("temperature", number_text(t.in_celsius(), 5) + " degC", "above 0 K, up to 180 degC");
}
}  // namespace detail

/// Thickness of the oxide on bare copper after a time at one temperature [m]: the larger of
/// 2.2 nm + 0.9 nm log10(t/1000 h) and sqrt(kp t), kp = 0.225 nm2/h exp(-(0.82 eV/k)(1/T - 1/373.15 K)).
///
/// The logarithmic law belongs to room temperature and 100 to 1e5 h; below some hours it is nothing. Between 25 and 5
/// nm the growth is really cubic, which lies between both.
/// @param t temperature, up to 180 degC @param since time since the metal was bright [s], 0 or above
/// @throws not_finite_error, out_of_range_error
/// @par Accuracy
/// within 16 % of the four points it was made for; 10 K more double the rate near 90 degC
/// @see copper_oxide_growth, copper_oxide_regimes
[[nodiscard]] inline length copper_oxide_thickness(temperature t, duration since)
{
    constexpr double reference_hours = 1000.0;
    detail::require_growth_temperature(t);
    const double hours = require_not_negative(since, "time").value() / detail::seconds_per_hour;
    const double parabolic = std::sqrt(detail::oxide_rate(t) * hours);
    if (hours == 0.0) return {};
    const double logarithmic =
        detail::oxide_log_at_1000_h + detail::oxide_log_per_decade * std::log10(hours / reference_hours);
    return in_si<length>(std::max(parabolic, logarithmic) * detail::nanometre);
}

/// Thickness after a further time at another temperature [m]: each law goes on from the thickness reached, as if it had
/// grown there at the new temperature.
/// @param reached thickness so far [m], 0 or above, below 1 mm @param t temperature, up to 180 degC
/// @param further time [s], 0 or above
/// @throws not_finite_error, out_of_range_error @see copper_oxide_growth
[[nodiscard]] inline length copper_oxide_grown(length reached, temperature t, duration further)
{
    detail::require_growth_temperature(t);
    const double x =
        require_within(reached, length{}, in_si<length>(1e-3), "oxide thickness").value() / detail::nanometre;
    const double hours = require_not_negative(further, "time").value() / detail::seconds_per_hour;
    const double parabolic = std::sqrt(x * x + detail::oxide_rate(t) * hours);
    // the age at which the logarithmic law would have this thickness; beyond 1e9 h it grows no more
    constexpr double reference_hours = 1000.0, no_more = 9.0;
    const double decades =
        (x - detail::oxide_log_at_1000_h) / detail::oxide_log_per_decade + std::log10(reference_hours);
    const double age = decades < no_more ? std::pow(10.0, decades) : 0.0;
    const double logarithmic = decades < no_more && hours > 0.0
                                   ? x + detail::oxide_log_per_decade / std::numbers::ln10 * std::log1p(hours / age)
                                   : x;
    return in_si<length>(
        std::max(parabolic, x > 0.0 ? logarithmic : copper_oxide_thickness(t, further).value() / detail::nanometre) *
        detail::nanometre);
}

/// Speed at which the square of the thickness grows, d(x^2)/dt [m2/s]: the larger of kp (parabolic) and
/// 2 x (0.9 nm/ln 10)/age, age being the time after which the logarithmic law has the thickness x. For integrators: the
/// square starts without a singularity. Beyond 1e9 h of age the logarithmic law grows no more. Integrated it is
/// copper_oxide_grown() in small steps, and up to a fifth above copper_oxide_thickness() where both laws are alike.
/// @param reached thickness so far [m], 0 or above, below 1 mm @param t temperature, up to 180 degC
/// @throws not_finite_error, out_of_range_error @see copper_oxide_growth
[[nodiscard]] inline decltype(area{} / duration{}) copper_oxide_square_growth(length reached, temperature t)
{
    detail::require_growth_temperature(t);
    const double x =
        require_within(reached, length{}, in_si<length>(1e-3), "oxide thickness").value() / detail::nanometre;
    return in_si<decltype(area{} / duration{})>(detail::oxide_square_rate(x, t) * detail::nanometre *
                                                detail::nanometre / detail::seconds_per_hour);
}

}  // namespace weldloop
