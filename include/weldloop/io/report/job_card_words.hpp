#pragma once
/// @file
/// What a job card says in each of its forms.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/job_card.hpp>

namespace weldloop {

/// What a job card is and is not; printed in each of its forms.
inline constexpr std::string_view job_card_standing =
    "Calculated for the stated conditions; it replaces neither a measurement at the joint nor local codes, makers' "
    "instructions and licensed practice. What a joint should read is a band that one sound joint in ten lies outside "
    "of; "
    "a reading within a limit is no release for work. Numbers in brackets name the sources.";

/// How the list of what speaks against a station that is well made is meant; printed under its heading.
inline constexpr std::string_view still_against_explained =
    "Choose one, change the station's description by it and have the card made anew: sizes of lugs and what joints "
    "should "
    "read hang on it.";

namespace detail {

/// "[3]", the place of a source in a list.
[[nodiscard]] inline std::string source_mark(const basis& all, const source* from)
{
    std::size_t number = 0;
    for (const source* s : all.sources()) {
        ++number;
        if (s == from) return "[" + std::to_string(number) + "]";
    }
    return "[?]";
}

/// "Put work clamp on the part itself: there the loop typically takes 1.2 V ..., on the table ..."
[[nodiscard]] inline std::string seat_line(const clamp_seat& s)
{
    const std::string part = "on the part itself the loop typically takes " + to_text(s.part_drop, "V") + " and " +
                             s.clamp + " peaks at " + to_text(s.part_peak, "degC"),
                      table = "on the table " + to_text(s.table_drop, "V") + " and " + to_text(s.table_peak, "degC");
    return s.on_the_part ? "Put " + s.clamp + " on the part: " + part + ", " + table + "."
                         : "Leave " + s.clamp + " on the table: " + part + ", " + table + ".";
}

[[nodiscard]] inline std::string card_line_text(const card_line& l, const basis& all)
{
    return l.what + ": " + l.value + " " + source_mark(all, l.from);
}

[[nodiscard]] inline std::string what_still_text(const remedy& r, loop_outcome outcome)
{
    return r.is_remark ? what_line(r) : what_line(r) + ": " + gain_line(r, outcome);
}

}  // namespace detail

}  // namespace weldloop
