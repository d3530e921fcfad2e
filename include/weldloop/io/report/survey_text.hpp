#pragma once
/// @file
/// A survey, and two of one station, as plain text.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/field/survey.hpp>
#include <weldloop/field/survey_trend.hpp>
#include <weldloop/io/report/survey_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/io/report/text_writer.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

/// Columns of a survey as text.
inline constexpr std::size_t survey_width = 110;

/// A survey in ASCII, no line wider than survey_width.
/// @param stations what was surveyed @param found survey_of() it
[[nodiscard]] inline std::string survey_text(const std::vector<surveyed_station>& stations, const survey& found)
{
    detail::text_writer out(survey_width);
    out.heading("Survey of " + std::to_string(stations.size()) + (stations.size() == 1 ? " station" : " stations"));
    if (!found.not_read.empty())
        out.say(std::to_string(found.not_read.size()) +
                " of them could not be read or assessed; they stand at the end.");
    if (!found.ranked.empty()) out.say(detail::survey_summary(stations, found));
    out.title("Worst first");
    std::size_t rank = 0;
    for (const std::size_t i : found.ranked)
        out.say(detail::right_in(std::to_string(++rank), 4) + "  ",
                detail::station_words(stations[i]) + ": " + detail::standing_words(stations[i]));
    for (const std::size_t i : found.not_read) out.say("   -  ", stations[i].file + ": not read: " + stations[i].fault);
    out.list("Before anything is touched", "! ", touch_cautions);
    // the steps of one station under its name
    const auto steps = [&](const char* title, const std::vector<survey_step>& all, std::string_view none,
                           std::string_view explained) {
        if (all.empty() && none.empty()) return;
        out.title(title);
        out.say(all.empty() ? none : explained);
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (k == 0 || all[k].entry != all[k - 1].entry)
                out.say(detail::station_words(stations[all[k].entry]) + ":");
            out.say("  - ", detail::step_words(all[k]));
        }
    };
    steps("To mend, by what was read", found.to_mend, "", "");
    steps("To move and unhook", found.to_move, "", "");
    steps("To buy", found.to_buy, "Nothing that would clear a verdict or finding.", survey_buying_explained);
    steps("To clean and tighten this week", found.to_do, "Nothing.", "");
    out.title("To look at within the week");
    if (found.to_look_at.empty()) out.say("Nothing gives way within a week of shifts, not even in a poor case.");
    for (const survey_look& l : found.to_look_at)
        out.say("- ", detail::station_words(stations[l.entry]) + ": " + detail::look_words(l));
    steps("Until it is mended", found.until_then, "", survey_sparing_explained);
    out.blank();
    out.say(survey_standing);
    return out.finished();
}

/// Two surveys of one station in ASCII, no line wider than survey_width.
/// @param before the earlier @param after the later @param t trend_of() them
[[nodiscard]] inline std::string trend_text(const surveyed_station& before, const surveyed_station& after,
                                            const station_trend& t)
{
    constexpr std::size_t in_name = 24, in_change = 8, in_drop = 24, in_peak = 22;
    detail::text_writer out(survey_width);
    out.heading(after.found.name);
    out.say(detail::left_in("Before", 8), detail::station_words(before));
    out.say(detail::left_in("After", 8), detail::station_words(after));
    if (const std::string doubt = detail::doubt_words(before, after, t); !doubt.empty()) out.say("! ", doubt);
    out.say(detail::loop_words(t) + ".");
    out.blank();
    out.line(detail::left_in("part", in_name) + " " + detail::left_in("", in_change) +
             detail::left_in("drop", in_drop) + detail::left_in("peak", in_peak) + "verdict");
    for (const part_trend& p : t.parts) {
        out.line(detail::left_in(plain_ascii(p.name), in_name) + " " + detail::left_in(to_text(p.change), in_change) +
                 detail::left_in(detail::from_to(detail::drop_words(p.before), detail::drop_words(p.after)), in_drop) +
                 detail::left_in(detail::from_to(detail::peak_words(p.before), detail::peak_words(p.after)), in_peak) +
                 detail::from_to(detail::verdict_words(p.before), detail::verdict_words(p.after)));
        if (p.by_readings) out.say(std::string(in_name + 1, ' '), detail::change_words(p) + ":");
        for (const std::string& line : detail::found_lines(p)) out.say(std::string(in_name + 1, ' '), line);
    }
    if (!t.spans.empty()) out.title("Spans of parts");
    for (const span_trend& s : t.spans) out.say("- ", detail::span_words(s));
    out.blank();
    out.say("Typical values as calculated from the two descriptions; parts are known again by name and kind. A change "
            "counts "
            "from a tenth on; of what is calculated and what was read, felt and seen at both, the graver is said.");
    out.say(survey_standing);
    return out.finished();
}

}  // namespace weldloop
