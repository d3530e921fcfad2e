#pragma once
/// @file
/// A survey, and two of one station, as a page.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/field/survey.hpp>
#include <weldloop/field/survey_trend.hpp>
#include <weldloop/io/report/page_writer.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/survey_words.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

namespace detail {
inline constexpr std::string_view survey_style = R"css(
tbody td:last-child{min-width:10rem}
.trend td,.trend th{white-space:nowrap}
.worse{font-weight:650;color:var(--over)}
@media (max-width:34rem){.trend tr{grid-template-columns:1fr 1fr}.trend thead{display:none}.trend td,.trend th{white-space:normal}}
)css";
}  // namespace detail

/// A survey as one page that needs nothing from elsewhere.
/// @param stations what was surveyed @param found survey_of() it
[[nodiscard]] inline std::string survey_page(const std::vector<surveyed_station>& stations, const survey& found)
{
    detail::page_writer page("Survey of " + std::to_string(stations.size()) +
                                 (stations.size() == 1 ? " station" : " stations"),
                             detail::survey_style);
    if (!found.not_read.empty())
        page.element("p", std::to_string(found.not_read.size()) +
                              " of them could not be read or assessed; they stand at the end of the list.");
    if (!found.ranked.empty()) page.element("p", detail::survey_summary(stations, found));
    page.begin_main();
    page.element("h2", "Worst first");
    page.put(
        "<div class=\"scroll\" tabindex=\"0\">\n<table>\n<thead><tr><th scope=\"col\" class=\"n\">No.</th><th "
        "scope=\"col\">Station</th><th scope=\"col\" class=\"n\">Loop, V</th><th scope=\"col\" class=\"n\">Beyond, of "
        "100</th><th scope=\"col\">What stands out</th></tr></thead>\n<tbody>\n");
    std::size_t rank = 0;
    for (const std::size_t i : found.ranked) {
        const surveyed_station& s = stations[i];
        page.put("<tr><td class=\"n\">").say(std::to_string(++rank)).put("</td><th scope=\"row\">").say(s.found.name);
        page.put("<span class=\"why\">").say(s.file).put("</span></th><td class=\"n\">");
        page.say(s.found.conducts ? detail::fixed_text(s.found.total_drop.typical.value(), 2) : std::string("-"));
        page.put("</td><td class=\"n\">")
            .say(s.found.conducts ? cases_number(s.found.weakest()) : "-")
            .put("</td><td>");
        page.say(detail::standing_words(s)).put("</td></tr>\n");
    }
    for (const std::size_t i : found.not_read)
        page.put("<tr><td class=\"n\">-</td><th scope=\"row\">")
            .say(stations[i].file)
            .put("</th><td class=\"n\">-</td><td class=\"n\">-</td><td>")
            .say("not read: " + stations[i].fault)
            .put("</td></tr>\n");
    page.put("</tbody>\n</table>\n</div>\n");
    page.put("<section class=\"cautions\" aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">Before anything is "
             "touched</h2>\n<ul>\n");
    for (const std::string_view c : touch_cautions) page.element("li", c);
    page.put("</ul>\n</section>\n");
    const auto list = [&page](std::string_view title, std::string_view none, const std::vector<std::string>& items) {
        page.element("h2", title);
        if (items.empty()) return static_cast<void>(page.element("p", none));
        page.put("<ul>\n");
        for (const std::string& item : items) page.element("li", item);
        page.put("</ul>\n");
    };
    const auto steps = [&](const std::vector<survey_step>& all) {
        std::vector<std::string> out;
        for (const survey_step& s : all)
            out.push_back(detail::station_words(stations[s.entry]) + ": " + detail::step_words(s));
        return out;
    };
    if (!found.to_mend.empty()) list("To mend, by what was read", "", steps(found.to_mend));
    if (!found.to_move.empty()) list("To move and unhook", "", steps(found.to_move));
    list("To buy", "Nothing that would clear a verdict or finding.", steps(found.to_buy));
    if (!found.to_buy.empty()) page.element("p", survey_buying_explained);
    list("To clean and tighten this week", "Nothing.", steps(found.to_do));
    std::vector<std::string> looks;
    for (const survey_look& l : found.to_look_at)
        looks.push_back(detail::station_words(stations[l.entry]) + ": " + detail::look_words(l));
    list("To look at within the week", "Nothing gives way within a week of shifts, not even in a poor case.", looks);
    if (!found.until_then.empty()) {
        list("Until it is mended", "", steps(found.until_then));
        page.element("p", survey_sparing_explained);
    }
    return page.finished(survey_standing);
}

/// Two surveys of one station as one page that needs nothing from elsewhere.
/// @param before the earlier @param after the later @param t trend_of() them
[[nodiscard]] inline std::string trend_page(const surveyed_station& before, const surveyed_station& after,
                                            const station_trend& t)
{
    detail::page_writer page(after.found.name + ": before and after", detail::survey_style);
    page.put("<dl class=\"conditions\">\n");
    page.condition("Before", detail::station_words(before));
    page.condition("After", detail::station_words(after));
    page.put("</dl>\n");
    if (const std::string doubt = detail::doubt_words(before, after, t); !doubt.empty()) page.element("p", doubt);
    page.element("p", detail::loop_words(t) + ".");
    page.begin_main();
    page.put(
        "<div class=\"scroll\" tabindex=\"0\">\n<table class=\"trend\">\n<thead><tr><th scope=\"col\">Part</th><th "
        "scope=\"col\">Change</th><th scope=\"col\">Drop</th><th scope=\"col\">Peak</th><th scope=\"col\">As "
        "found</th><th scope=\"col\">Verdict</th></tr></thead>\n<tbody>\n");
    for (const part_trend& p : t.parts) {
        page.put("<tr><th scope=\"row\">")
            .say(p.name)
            .put(p.change == part_fate::worse ? "</th><td class=\"worse\">" : "</th><td>");
        page.say(detail::change_words(p));
        std::string found;
        for (const std::string& line : detail::found_lines(p)) found += (found.empty() ? "" : "; ") + line;
        for (const std::string& cell :
             {detail::from_to(detail::drop_words(p.before), detail::drop_words(p.after)),
              detail::from_to(detail::peak_words(p.before), detail::peak_words(p.after)),
              found.empty() ? std::string("-") : found,
              detail::from_to(detail::verdict_words(p.before), detail::verdict_words(p.after))})
            page.put("</td><td>").say(cell);
        page.put("</td></tr>\n");
    }
    page.put("</tbody>\n</table>\n</div>\n");
    if (!t.spans.empty()) {
        page.element("h2", "Spans of parts");
        page.put("<ul>\n");
        for (const span_trend& s : t.spans) page.element("li", detail::span_words(s));
        page.put("</ul>\n");
    }
    page.element("p",
                 "Typical values as calculated from the two descriptions; parts are known again by name and kind. A "
                 "change counts from a tenth on; of what is calculated and what was read, felt and seen at both, the "
                 "graver is said.");
    return page.finished(survey_standing);
}

}  // namespace weldloop
