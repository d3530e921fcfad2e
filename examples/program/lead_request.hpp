#pragma once
// What is asked of leads on the command line, by the keys of station files.
#include <array>
#include <optional>
#include <string_view>

#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/rating/lead/sizing.hpp>

#include "call.hpp"

namespace program {

/// @name Options about a lead's duty and surroundings
/// @{
inline constexpr option duty_option{"--duty", "SHARE", "time under current, \"60 %\" of the period, or continuous"};
inline constexpr option period_option{"--period", "TIME", "that the share refers to (10 min)"};
inline constexpr option air_option{"--air", "TEMPERATURE", "around the lead (25 degC)"};
inline constexpr option lay_option{"--lay", "WORD", "how it lies: alone, on floor, coiled, bundled ... (alone)"};
inline constexpr option covering_option{"--covering", "WORD", "around the strands: rubber, pvc ... (rubber)"};
inline constexpr option sizes_option{"--sizes", "WORD", "american or metric (american)"};
/// @}

inline wl::duty_cycle duty_of(const call& c)
{
    if (c.text("--duty", "continuous") == "continuous") {
        if (c.has("--period")) call::fault("a continuous duty has no --period");
        return wl::duty_cycle::continuous();
    }
    const auto share = c.required<wl::duty_fraction>("--duty");
    const auto period = c.value<wl::duration>("--period");
    return period ? wl::duty_cycle::of(static_cast<double>(share) * *period, *period) : wl::duty_cycle::of(share);
}

inline wl::covering covering_of(const call& c)
{
    return c.chosen("--covering", wl::all_coverings, [](const wl::covering& one) { return one.name; });
}

/// The units of an answer, as of a station's file: those its temperatures and lengths are written in; where it has
/// none of the one sort the other decides.
/// @param lengths how its length is written, or nothing
inline wl::shown_units units_of(const call& c, std::string_view lengths)
{
    const std::string air = c.text("--air", "");
    const bool in_feet = lengths.ends_with("ft") || lengths.ends_with("in") || lengths.ends_with("yd"),
               in_fahrenheit = air.ends_with("degF");
    wl::shown_units out;
    if (air.empty() ? in_feet : in_fahrenheit) out.temperatures = "degF";
    if (lengths.empty() ? in_fahrenheit : in_feet) out.lengths = wl::shown_lengths::feet;
    return out;
}

inline wl::surroundings surroundings_of(const call& c)
{
    wl::surroundings out;
    if (const auto air = c.value<wl::temperature>("--air")) out.air = *air;
    if (c.has("--lay")) out.lay = c.chosen("--lay", wl::all_lays, [](wl::lay l) { return wl::to_text(l); });
    return out;
}

inline wl::size_family family_of(const call& c)
{
    constexpr std::array both{wl::size_family::american, wl::size_family::metric};
    return c.chosen("--sizes", both, [](wl::size_family f) -> std::string_view {
        return f == wl::size_family::american ? "american" : "metric";
    });
}

}  // namespace program
