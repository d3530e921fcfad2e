#pragma once
/// @file
/// Thermal endurance of insulating materials: how fast heat uses up their life, by temperature index and halving
/// interval.

#include <cmath>
#include <numbers>
#include <span>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// Temperature index and halving interval.
inline constexpr source iec_60216_endurance{
    "IEC 60216-1 and -8", "2013",
    "temperature index: 20 000 h to the end point; halving interval: what halves that time above it; ln(time) linear "
    "in "
    "1/T (the line as public pages of the standard give it, the figures of the definitions from memory)",
    source_kind::memory};
/// Time to the end point at the temperature index [h]; see iec_60216_endurance.
inline constexpr duration time_at_temperature_index = in_si<duration>(20000.0 * 3600.0);

/// Endurance of a material.
struct thermal_endurance {
    temperature index;                        ///< temperature index
    temperature_difference halving_interval;  ///< [K] above 0, that halves the time from the index up
};

/// A temperature that lasts for a time.
struct heated_time {
    temperature at;           ///< of the material
    weldloop::duration time;  ///< [s] 0 or above
};

namespace detail {
inline constexpr temperature_difference least_halving_interval = in_si<temperature_difference>(1.0);
inline constexpr temperature_difference most_halving_interval = in_si<temperature_difference>(50.0);
}  // namespace detail

/// Slope B of ln(time) over 1/T [K]: B = ln 2 Ti (Ti + H)/H, so that the interval H above the index Ti halves the time.
///
/// B times the gas constant is what is called the activation energy of the ageing: 10 K at 85 degC is 76 kJ/mol.
/// @param e index, and halving interval of 1 to 50 K @throws not_finite_error, out_of_range_error
[[nodiscard]] inline temperature_difference endurance_slope(const thermal_endurance& e)
{
    require_within(e.halving_interval, detail::least_halving_interval, detail::most_halving_interval,
                   "halving interval");
    const double index = e.index.in_kelvin(), interval = e.halving_interval.value();
    return in_si<temperature_difference>(std::numbers::ln2 * index * (index + interval) / interval);
}

/// Time to the end point at a steady temperature, t = 20 000 h exp(B (1/T - 1/Ti)) [s].
///
/// A line through tests of months, drawn on to years and to service: it holds for the material and the end point tested
/// (often half of its elongation left), in air, without bending, oil, ozone, sun or blows, and for no temperature at
/// which the material melts or changes otherwise.
/// @param e of the material @param at T, above absolute zero @throws not_finite_error, out_of_range_error, also where
/// the time is beyond 1e30 s
[[nodiscard]] inline duration endurance_time(const thermal_endurance& e, temperature at)
{
    const double slope = endurance_slope(e).value();
    if (!(at.in_kelvin() > 0.0)) throw out_of_range_error("temperature", to_text(at, "degC"), "above absolute zero");
    constexpr double longest = 1e30;  // s: far below it, nothing ages
    const double time = time_at_temperature_index.value() *
                        std::exp(slope * ((e.index - at).value() / (at.in_kelvin() * e.index.in_kelvin())));
    return in_si<duration>(require_within(time, 0.0, longest, "time to the end point"));
}

/// Share of the time to the end point that a course of temperatures uses, sum of t/time(T): each hour ages by its own
/// temperature, whatever came before (linear accumulation).
/// @param e of the material @param course temperatures and times @return 0 or above; 1 is the end point
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double endurance_used(const thermal_endurance& e, std::span<const heated_time> course)
{
    double used = 0.0;
    for (const heated_time& h : course)
        used += (require_not_negative(h.time, "time") / endurance_time(e, h.at)).value();
    return used;
}

/// The steady temperature that ages as much in the same time as a course does, between its coldest and its hottest.
/// @param e of the material @param course temperatures and times, not all of them 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline temperature equivalent_temperature(const thermal_endurance& e, std::span<const heated_time> course)
{
    duration whole{};
    for (const heated_time& h : course) whole += require_not_negative(h.time, "time");
    require_positive(whole, "time of the course");
    const double used = endurance_used(e, course);
    const double inverse = 1.0 / e.index.in_kelvin() +
                           std::log((whole / time_at_temperature_index).value() / used) / endurance_slope(e).value();
    return temperature::kelvin(1.0 / inverse);
}

}  // namespace weldloop
