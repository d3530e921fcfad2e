#pragma once
/// @file
/// A survey, and two of one station, as a page.

#include <array>
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
    page.begin_told(
        "", {{"No.", "n"}, {"Station", ""}, {"Loop, V", "n"}, {"Beyond, of 100", "n"}, {"What stands out", ""}});
    const auto row = [&page](const std::string& rank, std::string_view name, std::string_view file,
                             const std::array<std::string, 3>& cells) {
        page.put("<tr role=\"row\"><td role=\"cell\" class=\"n no\">").say(rank);
        page.put("</td><th role=\"rowheader\" scope=\"row\">").say(name);
        if (!file.empty()) page.put("<span class=\"why\">").say(file).put("</span>");
        page.put("</th>").told("Loop, V", cells[0], "n").told("Beyond, of 100", cells[1], "n");
        page.told("What stands out", cells[2], "says").put("</tr>\n");
    };
    std::size_t rank = 0;
    for (const std::size_t i : found.ranked) {
        const surveyed_station& s = stations[i];
        row(std::to_string(++rank), s.found.name, s.file,
            {s.found.conducts ? detail::fixed_text(s.found.total_drop.typical.value(), 2) : "-",
             s.found.conducts ? cases_number(s.found.weakest()) : "-", detail::standing_words(s)});
    }
    for (const std::size_t i : found.not_read)
        row("-", stations[i].file, "", {"-", "-", "not read: " + stations[i].fault});
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
    page.begin_told("trend",
                    {{"Part", ""}, {"Change", ""}, {"Drop", ""}, {"Peak", ""}, {"As found", ""}, {"Verdict", ""}});
    for (const part_trend& p : t.parts) {
        page.put("<tr role=\"row\"><th role=\"rowheader\" scope=\"row\">").say(p.name).put("</th>");
        page.told("Change", detail::change_words(p), p.change == part_fate::worse ? "worse" : "");
        std::string found;
        for (const std::string& line : detail::found_lines(p)) found += (found.empty() ? "" : "; ") + line;
        page.told("Drop", detail::from_to(detail::drop_words(p.before), detail::drop_words(p.after)), "");
        page.told("Peak", detail::from_to(detail::peak_words(p.before), detail::peak_words(p.after)), "");
        page.told("As found", found.empty() ? "-" : found, "says");
        page.told("Verdict", detail::from_to(detail::verdict_words(p.before), detail::verdict_words(p.after)), "");
        page.put("</tr>\n");
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
