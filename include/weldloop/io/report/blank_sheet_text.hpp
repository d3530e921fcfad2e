#pragma once
/// @file
/// A blank sheet for a clipboard as plain text.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/report/blank_sheet_words.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/io/report/text_writer.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/probe_reading.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

/// Columns of a blank sheet as text.
inline constexpr std::size_t blank_sheet_width = 100;

/// A sheet to be filled in on the spot, in ASCII, no line wider than blank_sheet_width: cautions first, then each part
/// in the order of the current with what it should show beside blanks for what it does.
/// @param s the station @param found its assessment @param expected by probe_readings_of(); a station without a settled
/// state has none, and why is said @param units of the station's file
/// @throws as part_at()
[[nodiscard]] inline std::string blank_sheet_text(const station& s, const assessment& found,
                                                  const std::vector<probe_reading>& expected,
                                                  const shown_units& units = {})
{
    constexpr std::size_t in_number = 3, in_name = 24, in_expected = 20, in_blank = 13;
    const std::string blank(in_blank - 1, '_');
    detail::text_writer out(blank_sheet_width);
    out.heading("Readings: " + s.name);
    out.say(detail::left_in("Job", 14), job_line(s.job));
    out.say(detail::left_in("Surroundings", 14), in_shown_units(surroundings_line(s.where), units));
    out.list("Before anything is touched", "! ", touch_cautions);
    out.list("Before anything is read under current", "! ", live_cautions);
    out.title("First");
    for (const std::string_view field : blank_sheet_fields)
        out.line(detail::left_in(std::string(field) + ":", 34) + std::string(36, '_'));
    out.title("Part by part, at " + to_text(s.job.current, "A"));
    if (!found.conducts)
        out.say("Nothing is to be expected: " + in_shown_units(no_state_line(found), units, {.names = {s.name}}));
    for (const probe_reading& r : expected) {
        out.line(detail::right_in(std::to_string(r.place + 1), in_number) + "  " +
                 detail::left_in(plain_ascii(r.name), in_name) + "expected " +
                 detail::left_in(detail::expected_volts(r), in_expected) + "read " + blank + " mV at ______ A");
        out.line(std::string(in_number + 2 + in_name, ' ') + "expected " +
                 detail::left_in(detail::expected_heat(r, units), in_expected) + "read " + blank + " " +
                 std::string(units.temperatures.name()));
        out.say(std::string(in_number + 2, ' '),
                "probes: " + std::string(probes_of(r.kind)) + "; " + detail::heat_probe_of(s, r));
        out.line(std::string(in_number + 2, ' ') + "seen: " + std::string(60, '_'));
        out.blank();
    }
    out.say(blank_sheet_explained);
    out.say(
        std::string("What was read goes into the station's file as [[reading]]; the word fault then names the part."));
    return out.finished();
}

}  // namespace weldloop
