#pragma once
/// @file
/// The report as one page of HTML that needs nothing from elsewhere.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/draw/drawings.hpp>
#include <weldloop/io/draw/way_drawing.hpp>
#include <weldloop/io/report/course_words.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/page_style.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/surface_words.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/weld_sentence.hpp>

namespace weldloop {

namespace detail {

class report_writer {
public:
    report_writer(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                  const station_answers& answers)
        : station_(s), found_(found), remedies_(remedies), answers_(answers)
    {
    }

    [[nodiscard]] std::string written()
    {
        put("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        put("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .say(found_.name)
            .put(" - welding circuit report</title>\n");
        put("<style>").put(drawing_style).put(page_style).put("</style>\n</head>\n<body>\n");
        head();
        put("<main>\n");
        fault();
        loop();
        parts();
        cautions();
        remedies();
        life();
        charts();
        places();
        grip();
        surfaces();
        sources();
        put("</main>\n<footer>\n<p>").say(report_standing).put("</p>\n</footer>\n</body>\n</html>\n");
        return std::move(out_);
    }

private:
    /// Writes marks of the page.
    report_writer& put(std::string_view marks)
    {
        out_.append(marks);
        return *this;
    }
    /// Writes text, escaped.
    report_writer& say(std::string_view text)
    {
        out_.append(markup_escaped(text));
        return *this;
    }
    report_writer& element(std::string_view tag, std::string_view text)
    {
        return put("<").put(tag).put(">").say(text).put("</").put(tag.substr(0, tag.find(' '))).put(">\n");
    }
    void condition(std::string_view label, std::string_view text)
    {
        element("dt", label);
        element("dd", text);
    }
    void figure(std::string_view label, std::string_view value, std::string_view note)
    {
        put("<div><span>").say(label).put("</span><b>").say(value).put("</b><span>").say(note).put("</span></div>\n");
    }
    void drawing(const std::string& svg, std::string_view caption)
    {
        if (svg.empty()) return;
        put("<figure>\n<div class=\"scroll\" tabindex=\"0\">\n").put(svg).put("</div>\n");
        element("figcaption", caption);
        put("</figure>\n");
    }

    void head()
    {
        put("<header>\n");
        element("h1", found_.name);
        put("<dl class=\"conditions\">\n");
        condition("Job", job_line(station_.job));
        condition("Surroundings", surroundings_line(station_.where));
        condition("Supply", supply_line(station_));
        if (answers_.fault) condition("By readings", fault_lines(*answers_.fault).front());
        if (!found_.weld.empty()) condition("At the weld", weld_sentence(found_.weld));
        if (const std::string year = year_line(found_); !year.empty()) condition("In a year", year);
        put("</dl>\n");
        findings();
        weld();
        put("<div class=\"figures\">\n");
        std::string note =
            station_.allowed_drop ? "allowed: " + to_text(*station_.allowed_drop, "V") : "no limit was stated";
        if (found_.conducts && found_.wire_extension_drop.typical.value() > 0.0)
            note.append("; ")
                .append(volts_line(found_.wire_extension_drop, found_.outcome))
                .append(" of it in the wire beyond the tip");
        figure("The loop takes", volts_line(found_.total_drop, found_.outcome), note);
        std::string arc_note = found_.arc_basis;
        if (found_.headroom) arc_note.append("; headroom ").append(volts_line(*found_.headroom, found_.outcome));
        if (const std::string point = operating_line(found_); !point.empty())
            arc_note.append("; working point ").append(point);
        figure("The arc gets", found_.conducts ? volts_line(found_.arc_voltage, found_.outcome) : "nothing", arc_note);
        const part_result& weakest = found_.weakest();
        figure("Weakest part", weakest.name,
               "No. " + std::to_string(number_of(weakest)) + ", " + std::string(to_text(weakest.verdict)));
        put("</div>\n");
        const std::vector<std::string> course = course_lines(found_);
        if (!course.empty()) {
            put("<p>What the changing current meets:</p>\n<ul class=\"course\">\n");
            for (const std::string& l : course) put("<li>").say(l).put("</li>\n");
            put("</ul>\n");
        }
        put("</header>\n");
    }

    void weld()
    {
        if (found_.weld.empty()) return;
        put("<ul class=\"weld\">\n");
        for (const weld_statement& w : found_.weld)
            put("<li>").say(w.text).put(" <code>").say(to_text(w.id)).put("</code></li>\n");
        put("</ul>\n");
    }

    void findings()
    {
        if (found_.findings.empty()) return;
        put("<ul class=\"findings\">\n");
        for (const loop_finding& f : found_.findings)
            put("<li class=\"f-")
                .put(f.severity == finding_severity::stop_job  ? "stop"
                     : f.severity == finding_severity::warning ? "warning"
                                                               : "notice")
                .put("\"><b>")
                .say(to_text(f.severity))
                .put("</b> ")
                .say(f.text)
                .put(" <code>")
                .say(to_text(f.id))
                .put("</code></li>\n");
        put("</ul>\n");
    }

    void loop()
    {
        element("h2", "The loop");
        drawing(
            loop_drawing(station_, found_),
            "The current's way from one terminal through the arc to the other. Numbers are the places in the path.");
        drawing(
            way_drawing(station_, found_),
            "Ways beside the path, each from the point where it starts to the point where it ends, with its current "
            "while the arc burns.");
    }

    void parts()
    {
        element("h2", "Parts");
        if (found_.conducts) {
            element("p", band_explained);
            element("p", cases_explained);
        } else
            element("p", "No drops and no temperatures: " + no_state_line(found_));
        put("<div class=\"scroll\" tabindex=\"0\">\n<table>\n<caption>Each part of the path and of "
            "the ways beside it, the arc left out</caption>\n");
        put("<thead><tr><th scope=\"col\" class=\"n\">No.</th><th scope=\"col\">Part</th><th scope=\"col\" "
            "class=\"n\">Drop, V</th><th scope=\"col\" class=\"n wide\">Heat, W</th>"
            "<th scope=\"col\" class=\"n\">Peak, degC</th><th scope=\"col\" class=\"n wide\">Limit, degC</th>"
            "<th scope=\"col\" class=\"n wide\">Beyond, of 100</th><th "
            "scope=\"col\">Verdict</th></tr></thead>\n<tbody>\n");
        for (const part_result& p : found_.parts) {
            put("<tr><td class=\"n\">").say(std::to_string(number_of(p))).put("</td><th scope=\"row\">").say(p.name);
            if (p.word != p.name) put("<span class=\"why\">").say(p.word).put("</span>");
            if (!p.way.empty()) put("<span class=\"why\">").say("way: " + p.way).put("</span>");
            put("</th>");
            if (found_.conducts) {
                band_cell(drop_text(p.drop));
                wide_cell(fixed_text(p.loss.typical.value(), p.loss.typical.value() < 9.95 ? 1 : 0));
                if (temperature_is_known(p))
                    band_cell(band_text(p.peak, 0), to_text(p.peak_at));
                else
                    band_cell("unknown");
                wide_cell(p.limit ? fixed_text(p.limit->in_celsius(), 0) : "-");
                wide_cell(cases_number(p));
            } else {
                band_cell(p.conducts ? "-" : "open");
                wide_cell("-");
                band_cell("-");
                wide_cell("-");
                wide_cell("-");
            }
            put("<td><span class=\"verdict w-")
                .put(class_word(p.verdict))
                .put("\">")
                .say(to_text(p.verdict))
                .put("</span><span class=\"why\">")
                .say(reason_of(p))
                .put("</span></td></tr>\n");
        }
        put("</tbody>\n");
        if (found_.conducts) {
            put("<tfoot><tr><td></td><th scope=\"row\">the whole loop</th>");
            band_cell(drop_text(found_.total_drop));
            put("<td class=\"wide\" colspan=\"5\"></td></tr></tfoot>\n");
        }
        put("</table>\n</div>\n");
    }
    [[nodiscard]] static std::string reason_of(const part_result& p)
    {
        std::string out = p.stray_hides_it ? "with every stray way open: " + p.reason : p.reason;
        for (const range_flag flag : p.basis.flags()) out.append(out.empty() ? "" : "; ").append(to_text(flag));
        return out;
    }
    /// A value that a narrow screen leaves out; the reason beside the verdict names the limit.
    void wide_cell(std::string_view text) { put("<td class=\"n wide\">").say(text).put("</td>"); }
    /// The typical value, its band in brackets below, and what it is of.
    void band_cell(std::string_view text, std::string_view of = {})
    {
        const std::size_t bracket = std::min(text.find(" ("), text.size());
        put("<td class=\"n\">").say(text.substr(0, bracket));
        if (bracket < text.size()) put("<span class=\"why\">").say(text.substr(bracket + 1)).put("</span>");
        if (!of.empty()) put("<span class=\"why\">").say(of).put("</span>");
        put("</td>");
    }

    void cautions()
    {
        if (found_.cautions.empty()) return;
        put("<section class=\"cautions\" aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">Before anything is "
            "touched</h2>\n<ul>\n");
        for (const std::string& c : found_.cautions) element("li", c);
        put("</ul>\n</section>\n");
    }

    void remedies()
    {
        if (remedies_.empty()) return;
        element("h2", "What would help, most first");
        put("<ol>\n");
        for (const remedy& r : remedies_)
            put("<li>").say(what_line(r)).effect(gain_line(r, found_.outcome)).effect(remedy_effect(r)).put("</li>\n");
        put("</ol>\n");
    }
    report_writer& effect(const std::string& text)
    {
        return text.empty() ? *this : put("<span class=\"gain\">").say(text).put("</span>");
    }

    void charts()
    {
        if (!found_.conducts) return;
        element("h2", "Where the volts go");
        drawing(budget_drawing(station_, found_), "Each drop begins where the one before it ends. Whiskers span from "
                                                  "the 5 to the 95 % point of each part's scatter.");
        element("h2", "How hot it gets");
        drawing(peak_drawing(station_, found_), "Highest temperature in the duty period of the place named, where the "
                                                "limit is defined that each part was held against (upright mark); of "
                                                "a part without one, of its hottest place. Contact spots are hotter.");
        drawing(duty_drawing(station_, hottest_traces(station_, found_)),
                "The hottest parts over one duty period, once it has settled, typical case: each at its hottest place, "
                "which is named where it is not the place of its limit.");
    }

    /// All places of every part with their peaks and limits.
    void places()
    {
        if (!found_.conducts) return;
        element("h2", "Every place and every limit");
        put("<div class=\"scroll\" tabindex=\"0\">\n<table class=\"places\">\n<caption>Peaks in the duty period; "
            "limits "
            "stand at the place they are defined for, the deciding one of each part in bold</caption>\n");
        put("<thead><tr><th scope=\"col\">Place</th><th scope=\"col\" class=\"n\">Peak, degC</th><th scope=\"col\" "
            "class=\"n\">Limit, degC</th><th scope=\"col\" class=\"n\">Beyond, of 100</th><th scope=\"col\">Held "
            "against</th></tr></thead>\n");
        for (const part_result& p : found_.parts) places_of(p);
        put("</table>\n</div>\n");
    }
    void places_of(const part_result& p)
    {
        put("<tbody>\n<tr class=\"part\"><th scope=\"rowgroup\" colspan=\"5\">")
            .say(std::to_string(number_of(p)) + " " + p.name)
            .put("</th></tr>\n");
        for (const place_result& at : p.places) {
            bool held = false;
            for (const limit_use& u : p.limits) {
                if (!u.peak || u.at != to_text(at.what)) continue;
                limit_row(u, &u == p.limits.data());
                held = true;
            }
            if (!held) place_row(to_text(at.what), band_text(at.peak, 0), "-", "-", "", false);
        }
        for (const limit_use& u : p.limits)
            if (!u.peak) limit_row(u, &u == p.limits.data());
        if (p.hottest_spot)
            place_row("contact spots", band_text(*p.hottest_spot, 0), "-",
                      p.limits.empty() ? cases_number(p) : std::string("-"),
                      "at most; their drop typically at " + fixed_text(100.0 * p.softening_used, 0) +
                          " % of the softening drop of their metals",
                      p.limits.empty());
        for (const std::string& note : p.notes)
            put("<tr><td class=\"note\" colspan=\"5\">").say("Note: " + note).put("</td></tr>\n");
        put("</tbody>\n");
    }
    void limit_row(const limit_use& u, bool deciding)
    {
        const std::string share = "typically at " + fixed_text(100.0 * u.used, 0) +
                                  (u.limit ? " % of the allowed rise" : " % of it") + ", in a poor case at " +
                                  fixed_text(100.0 * u.used_high, 0) + " %";
        place_row(u.at, u.peak ? band_text(*u.peak, 0) : "-", u.limit ? fixed_text(u.limit->in_celsius(), 0) : "-",
                  cases_number(u.exceeds), u.name + "; " + share, deciding);
    }
    void place_row(std::string_view place, std::string_view peak, std::string_view limit, std::string_view cases,
                   std::string_view held_against, bool deciding)
    {
        put(deciding ? "<tr class=\"deciding\"><th scope=\"row\">" : "<tr><th scope=\"row\">").say(place).put("</th>");
        for (const std::string_view cell : {peak, limit, cases}) put("<td class=\"n\">").say(cell).put("</td>");
        put("<td class=\"against\">").say(held_against).put("</td></tr>\n");
    }

    void fault()
    {
        if (answers_.observations.empty()) return;
        element("h2", "Where the fault is, by what was found");
        if (answers_.fault) {
            put("<ul class=\"fault\">\n");
            for (const std::string& line : fault_lines(*answers_.fault)) element("li", line);
            put("</ul>\n");
        } else
            element("p", fault_without_state);
        put("<section class=\"cautions\" aria-labelledby=\"live\">\n<h3 id=\"live\">Before anything is read or "
            "touched</h3>\n<ul>\n");
        for (const std::string_view c : reading_cautions) element("li", c);
        put("</ul>\n</section>\n");
        element("h3", "What was found");
        put("<ol class=\"found\">\n");
        for (const observation& o : answers_.observations) element("li", observation_line(o));
        put("</ol>\n");
        element("p", fault_explained);
    }

    void life()
    {
        if (!answers_.life) return;
        const station_life& life = *answers_.life;
        element("h2", "How long it lasts");
        element("p", service_line(life.service) + ".");
        for (const clamp_prospect& c : life.clamps) {
            element("h3", c.name);
            list(clamp_prospect_lines(c, life.service.horizon));
        }
        element("h3", "Joints that nobody touches");
        list(joint_drift_lines(life.joints));
        element("p", yielding_explained);
    }
    void list(const std::vector<std::string>& lines)
    {
        put("<ul>\n");
        for (const std::string& line : lines) element("li", line);
        put("</ul>\n");
    }

    void grip()
    {
        for (const part_result& p : found_.parts) {
            if (!p.grip || p.grip->points.empty()) continue;
            element("h2", "Grip of " + p.name);
            drawing(grip_drawing(station_, p),
                    "Force, resistance and peak temperature of the jaws, if the clamp stays as it is now. Shaded: "
                    "from the kind to the poor case.");
            put("<ul>\n");
            for (const std::string& line : grip_lines(*p.grip, grip_lost_before(station_, p))) element("li", line);
            for (const range_flag flag : p.grip->basis.flags())
                element("li", "Note: " + std::string(to_text(flag)) + ".");
            put("</ul>\n");
            drawing(
                station_grip_map(station_, p),
                "What such a clamp comes to at other currents and on other surfaces: typical case, with its grip when "
                "new, without film, the nearest lead alone behind it.");
        }
    }

    void surfaces()
    {
        const std::vector<surface_in_use> used = surfaces_in_use(station_);
        if (used.empty()) return;
        element("h2", "Surfaces");
        element("p", surfaces_explained);
        put("<ul>\n");
        for (const surface_in_use& s : used) element("li", surface_line(s));
        put("</ul>\n");
    }

    void sources()
    {
        element("h2", "Where the numbers come from");
        source_list("Read", true);
        source_list("Judgement, memory, or common practice: weigh these yourself", false);
    }
    void source_list(std::string_view heading, bool read)
    {
        bool any = false;
        for (const source& s : sources_of(found_, answers_)) {
            if (was_read(s.kind) != read) continue;
            if (!any) {
                element("h3", heading);
                put("<ul class=\"sources\">\n");
            }
            any = true;
            element("li", to_text(s));
        }
        if (any) put("</ul>\n");
    }

    const station& station_;
    const assessment& found_;
    const std::vector<remedy>& remedies_;
    const station_answers& answers_;
    std::string out_;
};

}  // namespace detail

/// The report as a page: figures, drawings, table, cautions, remedies, grip, sources. No scripts, fonts or files from
/// elsewhere; light and dark as the reader's system says, and made for print. Every text is escaped.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @param answers how long it lasts and where the fault is, see answers_of(); what is empty is left out
/// @throws not_finite_error should a result hold NaN or infinity; bad_station_error for an assessment without parts
[[nodiscard]] inline std::string report_page(const station& s, const assessment& found,
                                             const std::vector<remedy>& remedies, const station_answers& answers = {})
{
    return detail::report_writer(s, found, remedies, answers).written();
}

}  // namespace weldloop
