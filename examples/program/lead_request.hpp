#pragma once
// What is asked of leads on the command line, by the keys of station files.
#include <array>
#include <optional>
#include <string_view>

#include <weldloop/rating/lead/sizing.hpp>

#include "call.hpp"

namespace program {

/// @name Options about a lead's duty and surroundings
/// @{
inline constexpr option duty_option{"--duty", "SHARE", "time under current, \"60 %\" of the period, or continuous"};
inline constexpr option period_option{"--period", "TIME", "that the share refers to (10 min)"};
inline constexpr option air_option{"--air", "TEMPERATURE", "around the lead (25 degC)"};
inline constexpr option lay_option{"--lay", "WORD", "how it lies: alone, on floor, coiled, bundled ... (alone)"};
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
