#pragma once
/// @file
/// A job card as a page to be printed.

#include <cstddef>
#include <string>
#include <string_view>

#include <weldloop/io/report/job_card_words.hpp>
#include <weldloop/io/report/page_writer.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/job_card.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

namespace detail {
inline constexpr std::string_view job_card_style = R"css(
.card{border-top:2px solid var(--ink);margin-top:1.4rem;break-inside:avoid}
.card h3{margin:.6rem 0 .2rem}
.card table{margin:.3rem 0}
.card .box{width:2rem}
.card .box span{display:inline-block;width:.95rem;height:.95rem;border:1.5px solid var(--ink)}
.card th{width:11rem;min-width:0}
.card tbody td:last-child{min-width:0;width:2.6rem;color:var(--soft)}
@media (max-width:34rem){.card tr{grid-template-columns:1.9rem 7rem 1fr 2.4rem}
.card tbody td:last-child{grid-column:auto}}
@media print{.cautions{border-width:1px}}
)css";
}  // namespace detail

/// A job card as one page that needs nothing from elsewhere, a box to tick before each line.
/// @param card as job_card_of() gave it
[[nodiscard]] inline std::string job_card_page(const job_card& card)
{
    detail::page_writer page("Job card: " + card.made.name, detail::job_card_style);
    page.put("<dl class=\"conditions\">\n");
    page.condition("Job", job_line(card.made.job));
    page.condition("Surroundings", surroundings_line(card.made.where));
    page.put("</dl>\n");
    page.begin_main();
    page.cautions("Before anything is touched", touch_cautions, "Before anything is read under current",
                  live_cautions);
    if (!card.found.conducts)
        page.element("p", "Nothing can be said of volts and temperatures, even with every joint well made: " +
                              no_state_line(card.found));
    if (card.seat) {
        page.element("h2", "Where the clamp belongs");
        page.element("p", detail::seat_line(*card.seat));
    }
    if (!card.still_against.empty()) {
        page.element("h2", "What speaks against it however well it is made");
        page.element("p", still_against_explained);
        page.put("<ul>\n");
        for (const remedy& r : card.still_against) page.element("li", detail::what_still_text(r, card.found.outcome));
        page.put("</ul>\n");
    }
    page.element("h2", "Part by part");
    for (const part_card& p : card.parts) {
        page.put("<section class=\"card\">\n");
        page.element("h3", std::to_string(p.place + 1) + " " + p.name);
        page.element("p", p.make);
        if (!p.lines.empty()) {
            page.put("<table>\n<tbody>\n");
            for (const card_line& l : p.lines) {
                page.put("<tr><td class=\"box\"><span></span></td><th scope=\"row\">")
                    .say(l.what)
                    .put("</th><td>")
                    .say(l.value);
                page.put("</td><td>").say(detail::source_mark(card.basis, l.from)).put("</td></tr>\n");
            }
            page.put("</tbody>\n</table>\n");
        }
        page.put("</section>\n");
    }
    page.element("h2", "Sources");
    page.put("<ul class=\"sources\">\n");
    std::size_t number = 0;
    for (const source* from : card.basis.sources())
        page.element("li", "[" + std::to_string(++number) + "] " + to_text(*from));
    page.put("</ul>\n");
    return page.finished(job_card_standing);
}

}  // namespace weldloop
