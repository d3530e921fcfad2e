#pragma once
/// @file
/// A job card as plain text.

#include <cstddef>
#include <string>

#include <weldloop/io/report/job_card_words.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/io/report/text_writer.hpp>
#include <weldloop/rating/job_card.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

/// Columns of a job card as text.
inline constexpr std::size_t job_card_width = 100;

/// A job card in ASCII, no line wider than job_card_width: cautions first, then part by part what to make, to keep to
/// and to check.
/// @param card as job_card_of() gave it
[[nodiscard]] inline std::string job_card_text(const job_card& card)
{
    detail::text_writer out(job_card_width);
    out.heading("Job card: " + card.made.name);
    out.say(detail::left_in("Job", 14), job_line(card.made.job));
    out.say(detail::left_in("Surroundings", 14), surroundings_line(card.made.where));
    out.list("Before anything is touched", "! ", touch_cautions);
    out.list("Before anything is read under current", "! ", live_cautions);
    if (!card.found.conducts) {
        out.blank();
        out.say("Nothing can be said of volts and temperatures, even with every joint well made: " +
                no_state_line(card.found));
    }
    if (card.seat) {
        out.blank();
        out.say(detail::seat_line(*card.seat));
    }
    if (!card.still_against.empty()) {
        out.title("What speaks against it however well it is made");
        out.say(still_against_explained);
        for (const remedy& r : card.still_against) out.say("- ", detail::what_still_text(r, card.found.outcome));
    }
    for (const part_card& p : card.parts) {
        out.title(std::to_string(p.place + 1) + "  " + plain_ascii(p.name));
        out.say(p.make);
        for (const card_line& l : p.lines) out.say("[ ] ", detail::card_line_text(l, card.basis));
    }
    out.title("Sources");
    std::size_t number = 0;
    for (const source* from : card.basis.sources()) out.say("[" + std::to_string(++number) + "] ", to_text(*from));
    out.blank();
    out.say(job_card_standing);
    return out.finished();
}

}  // namespace weldloop
