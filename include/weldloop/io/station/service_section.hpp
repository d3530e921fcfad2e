#pragma once
/// @file
/// How a station is used, read from its file: [service].

#include <array>
#include <cstddef>
#include <string_view>
#include <utility>

#include <weldloop/core/literals.hpp>
#include <weldloop/io/station/part_section.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/life/station_service.hpp>

namespace weldloop::detail {

/// @name What the keys may hold
/// @{
inline constexpr allowed_span<duration> forecast_hours{0_s, longest_forecast, true};
inline constexpr allowed_span<duration> shift_hours{0_s, 24_h, true};
inline constexpr allowed_span<duration> rest_hours{0_s, 8760_h};
inline constexpr allowed_span<double> events_a_shift{0.0, 10000.0};
inline constexpr allowed_span<double> starts_a_shift{0.0, 1000.0};
/// @}

/// Shifts and rests go to clamps and other joints alike; what a section leaves out is that of single shifts by day.
[[nodiscard]] inline station_service read_service(const toml_section& s)
{
    s.allow_only({"look_ahead", "shift", "rest", "openings", "knocks", "drags", "on_work", "clean_every",
                  "tighten_every", "starts", "air", "motion"});
    station_service out;
    s.take("look_ahead", out.horizon, forecast_hours);
    s.take("shift", out.joints.shift, shift_hours);
    s.take("rest", out.joints.rest, rest_hours);
    out.clamps.shift = out.joints.shift;
    out.clamps.rest = out.joints.rest;
    const std::array counts{std::pair{"openings", &out.clamps.openings}, std::pair{"knocks", &out.clamps.knocks},
                            std::pair{"drags", &out.clamps.drags}};
    for (const auto& [key, count] : counts)
        if (s.has(key)) *count = s.number(key, events_a_shift);
    if (s.has("on_work")) {
        out.clamps.on_work = s.required<fraction>("on_work");
        if (!(static_cast<double>(out.clamps.on_work) > 0.0))
            s.refuse(s.place("on_work"), "\"on_work\" cannot be 0: off the work nothing is gripped; allowed: above 0 % "
                                         "to 100 %");
    }
    const allowed_span<duration> between{out.horizon / most_service_events, longest_forecast};
    if (s.has("clean_every")) out.clamps.clean_every = s.required<duration>("clean_every", between);
    if (s.has("tighten_every")) out.clamps.tighten_every = s.required<duration>("tighten_every", between);
    if (s.has("starts")) out.joints.starts = s.number("starts", starts_a_shift);
    s.take_word("air", out.joints.air, all_joint_airs, word_of_value);
    s.take_word("motion", out.joints.motion, all_joint_motions, word_of_value);
    return out;
}

}  // namespace weldloop::detail
