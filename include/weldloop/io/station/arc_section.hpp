#pragma once
/// @file
/// The [arc] of a station file.

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/io/station/part_section.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/part/arc.hpp>

namespace weldloop::detail {

/// @name What the keys of an arc may hold
/// @{
inline constexpr allowed_span<length> arc_lengths{0_mm, 50_mm, true};
inline constexpr allowed_span<voltage> arc_falls{0_V, 60_V, true};
inline constexpr allowed_span<voltage> arc_volts_by_unit{0_V, 20_V};
inline constexpr allowed_span<speed> wire_feeds{0_m_per_s, in_si<speed>(1.0), true};
inline constexpr allowed_span<length> ways_through_work{0_mm, in_si<length>(100.0), true};
/// @}

/// Adds what a file says of the arc to the arc of the path.
inline void read_arc_values(const toml_section& s, arc& out)
{
    s.allow_only({"length", "at_no_length", "volts_per_mm", "volts_per_100A", "wire_feed", "to_return", "return_side"});
    if (s.has("to_return")) out.to_return = s.required<length>("to_return", ways_through_work);
    s.take_word("return_side", out.returns_at, all_return_sides, word_of_value);
    if (s.has("length")) out.length = s.required<length>("length", arc_lengths);
    if (s.has("wire_feed")) out.wire_feed = s.required<speed>("wire_feed", wire_feeds);
    if (!s.has("at_no_length") && !s.has("volts_per_mm") && !s.has("volts_per_100A")) return;
    arc_line line{.at_no_length = s.required<voltage>("at_no_length", arc_falls),
                  .by_length = s.required<voltage>("volts_per_mm", arc_volts_by_unit) / 1_mm};
    voltage per_100_A{};
    s.take("volts_per_100A", per_100_A, arc_volts_by_unit);
    line.by_current = per_100_A / 100_A;
    out.line = line;
}

}  // namespace weldloop::detail
