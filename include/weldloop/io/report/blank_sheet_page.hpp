#pragma once
/// @file
/// A blank sheet for a clipboard as a page to be printed.

#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/report/blank_sheet_words.hpp>
#include <weldloop/io/report/page_writer.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/probe_reading.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

namespace detail {
inline constexpr std::string_view blank_sheet_style = R"css(
.fields{display:grid;grid-template-columns:1fr 1fr;gap:.5rem 2rem;margin:1rem 0;list-style:none;padding:0;max-width:none}
.fields li{display:flex;gap:.5rem;align-items:baseline}
.fields li::after{content:"";flex:1;border-bottom:1px solid var(--ink);min-width:3rem;height:1.2rem}
.sheet td,.sheet th{border:1px solid var(--ink)}
.sheet .blank{min-width:5.5rem}
.sheet tbody td:last-child{min-width:8rem}
@media (max-width:34rem){.fields{grid-template-columns:1fr}.sheet thead{display:none}.sheet tr{grid-template-columns:1.9rem 1fr 1fr}
.sheet .blank{min-height:2rem;min-width:0}.sheet tbody td:last-child{grid-column:1/-1}}
@media print{.sheet tr{break-inside:avoid}.sheet .blank{min-width:4.5rem}.sheet tbody td:last-child{min-width:6rem}}
)css";
}  // namespace detail

/// The same as blank_sheet_text() as one page that needs nothing from elsewhere.
/// @param s the station @param found its assessment @param expected by probe_readings_of()
/// @param units of the station's file @throws as part_at()
[[nodiscard]] inline std::string blank_sheet_page(const station& s, const assessment& found,
                                                  const std::vector<probe_reading>& expected,
                                                  const shown_units& units = {})
{
    detail::page_writer page("Readings: " + s.name, detail::blank_sheet_style);
    page.put("<dl class=\"conditions\">\n");
    page.condition("Job", job_line(s.job));
    page.condition("Surroundings", in_shown_units(surroundings_line(s.where), units));
    page.put("</dl>\n");
    page.begin_main();
    page.cautions("Before anything is touched", touch_cautions, "Before anything is read under current", live_cautions);
    page.put("<ul class=\"fields\">\n");
    for (const std::string_view field : blank_sheet_fields) page.element("li", field);
    page.put("</ul>\n");
    page.element("h2", "Part by part, at " + to_text(s.job.current, "A"));
    if (!found.conducts)
        page.element("p",
                     "Nothing is to be expected: " + in_shown_units(no_state_line(found), units, {.names = {s.name}}));
    page.put("<table class=\"sheet\">\n<thead><tr><th scope=\"col\" class=\"n\">No.</th><th scope=\"col\">Part</th><th "
             "scope=\"col\">Expected</th><th scope=\"col\">Read, mV</th><th scope=\"col\">at A</th><th "
             "scope=\"col\">Expected</th><th scope=\"col\">Read, ")
        .say(units.temperatures.name())
        .put("</th><th scope=\"col\">Seen</th></tr></thead>\n<tbody>\n");
    for (const probe_reading& r : expected) {
        page.put("<tr><td class=\"n\">").say(std::to_string(r.place + 1)).put("</td><th scope=\"row\">").say(r.name);
        page.put("<span class=\"why\">").say(probes_of(r.kind)).put("</span></th><td>").say(detail::expected_volts(r));
        page.put("</td><td class=\"blank\"></td><td class=\"blank\"></td><td>").say(detail::expected_heat(r, units));
        page.put("<span class=\"why\">")
            .say(detail::heat_probe_of(s, r))
            .put("</span></td><td class=\"blank\"></td><td></td></tr>\n");
    }
    page.put("</tbody>\n</table>\n");
    page.element("p", blank_sheet_explained);
    return page.finished(
        "What was read goes into the station's file as [[reading]]; the word fault then names the part.");
}

}  // namespace weldloop
