#pragma once
/// @file
/// How report_page.hpp is answered.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/draw/drawings.hpp>
#include <weldloop/io/report/course_words.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/page_style.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_request.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/io/report/surface_words.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

class report_writer {
public:
    report_writer(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                  const report_request& asked)
        : station_(s), found_(found), remedies_(remedies), asked_(asked), answers_(asked.answers),
          degrees_(asked.units.temperatures.name()), facts_(facts_of(s))
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
        dangers();
        answer();
        loop();
        put("<div class=\"rest\">\n");
        parts();
        totals();
        findings();
        weld();
        course();
        ways();
        charts();
        grip();
        life();
        fault();
        remedies();
        cautions();
        places();
        surfaces();
        sources();
        put("</div>\n</main>\n<footer>\n<p>").say(report_standing).put("</p>\n</footer>\n</body>\n</html>\n");
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
    /// Text whose letters may run from right to left, kept apart from what stands beside it.
    report_writer& name(std::string_view text) { return put("<bdi>").say(text).put("</bdi>"); }
    /// A sentence of the library in the units of the report.
    [[nodiscard]] std::string told(std::string_view sentence) const
    {
        return in_shown_units(sentence, asked_.units, facts_);
    }
    [[nodiscard]] std::string told_of(const part_result& p, std::string_view sentence) const
    {
        return in_shown_units(sentence, asked_.units, facts_of(station_, &p));
    }
    /// A part of the page that can be jumped to by its heading.
    void section(std::string_view id, std::string_view heading, std::string_view classes = {})
    {
        put("<section");
        if (!classes.empty()) put(" class=\"").put(classes).put("\"");
        put(" aria-labelledby=\"").put(id).put("\">\n<h2 id=\"").put(id).put("\">").say(heading).put("</h2>\n");
    }
    void end_section() { put("</section>\n"); }
    void condition(std::string_view label, std::string_view text)
    {
        element("dt", label);
        element("dd", text);
    }
    void drawing(const std::string& svg, std::string_view caption)
    {
        if (svg.empty()) return;
        put("<figure class=\"one\">\n").put(svg);
        element("figcaption", caption);
        put("</figure>\n");
    }
    /// Two drawings of the same: one for wide pages, one for narrow ones.
    void drawings(const std::string& wide, const std::string& narrow, std::string_view caption)
    {
        if (wide.empty()) return;
        put("<figure>\n<div class=\"on-wide\">\n").put(wide).put("</div>\n<div class=\"on-narrow\">\n");
        put(narrow).put("</div>\n");
        element("figcaption", caption);
        put("</figure>\n");
    }
    void list(const std::vector<std::string>& lines, std::string_view tag = "ul")
    {
        put("<").put(tag).put(">\n");
        for (const std::string& line : lines) element("li", line);
        put("</").put(tag.substr(0, tag.find(' '))).put(">\n");
    }
    [[nodiscard]] std::vector<std::string> told_all(std::vector<std::string> sentences) const
    {
        for (std::string& s : sentences) s = told(s);
        return sentences;
    }
    /// The cautions that belong to what they stand below.
    void beside(const std::vector<std::string>& cautions)
    {
        if (!cautions.empty()) list(told_all(cautions), "ul class=\"beside\"");
    }

    void head()
    {
        put("<header>\n<h1>").name(found_.name).put("</h1>\n");
        put("<dl class=\"conditions\">\n");
        condition("Job", job_line(station_.job));
        condition("Surroundings", surroundings_line(station_.where, asked_.units));
        condition("Supply", supply_line(station_));
        condition("Made", made_line(asked_));
        put("</dl>\n</header>\n");
    }

    void finding(const loop_finding& f)
    {
        put("<b>").say(to_text(f.severity)).put("</b> ").say(told(f.text)).put(" <code>").say(to_text(f.id));
        put("</code>");
    }
    void dangers()
    {
        const std::vector<present_danger> all = present_dangers(found_);
        if (all.empty()) return;
        section("danger", "This can hurt now", "danger");
        put("<ul>\n");
        for (const present_danger& d : all) {
            put("<li>");
            finding(d.finding);
            beside(d.cautions);
            put("</li>\n");
        }
        put("</ul>\n");
        end_section();
    }

    void answer()
    {
        const std::vector<first_action> actions = first_actions(station_, found_, remedies_, answers_);
        section("short", "In short", "short");
        put("<p class=\"answer\">")
            .say(told_of(found_.weakest(), answer_sentence(found_, actions, answers_)))
            .put("</p>\n");
        element("p", weld_answer(found_, answers_));
        end_section();
        if (actions.empty()) return;
        section("first", "Do first", "first");
        put("<ol>\n");
        const std::vector<std::vector<std::string>> cautions = caution_lines(actions);
        std::size_t rank = 0;
        for (const first_action& a : actions) {
            put("<li><b>").say(told(what_line(a.does))).put("</b>");
            effect(a.by_readings ? "by what was found on the spot" : gain_line(a.does, found_.outcome, asked_.units));
            beside(cautions[rank++]);
            put("</li>\n");
        }
        put("</ol>\n");
        end_section();
    }

    void loop()
    {
        section("loop", "The loop");
        drawings(loop_drawing(station_, found_, asked_.units), loop_column(station_, found_, asked_.units),
                 "The current's way from one terminal through the arc to the other. Numbers are the places in the "
                 "path; below each part what decided its verdict.");
        end_section();
    }

    /// A cell that a narrow page shows with its heading before it.
    void cell(std::string_view heading, std::string_view text, std::string_view classes = "n")
    {
        const std::size_t bracket = std::min(text.find(" ("), text.size());
        put("<td role=\"cell\" data-is=\"").put(heading).put("\"");
        if (!classes.empty()) put(" class=\"").put(classes).put("\"");
        put(">").say(text.substr(0, bracket));
        if (bracket < text.size()) put(" <span class=\"why\">").say(text.substr(bracket + 1)).put("</span>");
        put("</td>");
    }
    void headings(const std::vector<std::pair<std::string, std::string_view>>& all)
    {
        put("<thead role=\"rowgroup\"><tr role=\"row\">");
        for (const auto& [text, classes] : all) {
            put("<th role=\"columnheader\" scope=\"col\"");
            if (!classes.empty()) put(" class=\"").put(classes).put("\"");
            put(">").say(text).put("</th>");
        }
        put("</tr></thead>\n");
    }
    void parts()
    {
        section("parts", "Parts");
        if (!found_.conducts) element("p", "No drops and no temperatures: " + told(no_state_line(found_)));
        put("<table role=\"table\" class=\"told parts\">\n<caption>Each part of the path and of the ways beside it, "
            "the arc "
            "left out</caption>\n");
        headings({{"No.", "n"},
                  {"Part", ""},
                  {"Drop, V", "n"},
                  {"Heat, W", "n"},
                  {"Decided at", ""},
                  {"There, " + degrees_, "n"},
                  {"Limit, " + degrees_, "n"},
                  {"Beyond, of 100", "n"},
                  {"Verdict", ""}});
        put("<tbody role=\"rowgroup\">\n");
        for (const part_result& p : found_.parts) {
            put("<tr role=\"row\"><td role=\"cell\" class=\"n no\">").say(number_with_mark(p));
            put("</td><th role=\"rowheader\" scope=\"row\">").name(p.name);
            if (p.word != p.name) put("<span class=\"why\">").say(p.word).put("</span>");
            if (!p.way.empty()) put("<span class=\"why\">way: ").name(p.way).put("</span>");
            put("</th>");
            if (found_.conducts) {
                const deciding_row row = deciding_row_of(p, asked_.units);
                cell("Drop, V", drop_text(p.drop));
                cell("Heat, W", fixed_text(p.loss.typical.value(), p.loss.typical.value() < 9.95 ? 1 : 0));
                cell("Decided at", row.at, "");
                cell("There, " + degrees_, row.value);
                cell("Limit, " + degrees_, row.limit);
                cell("Beyond, of 100", cases_number(p));
            } else {
                cell("Drop, V", p.conducts ? "-" : "open");
                for (const char* heading : {"Heat, W", "Decided at", "There", "Limit", "Beyond, of 100"})
                    cell(heading, "-", std::string_view(heading) == "Decided at" ? "" : "n");
            }
            put("<td role=\"cell\" class=\"says\"><span class=\"verdict w-")
                .put(class_word(p.verdict))
                .put("\">")
                .say(to_text(p.verdict))
                .put("</span> <span class=\"why\">")
                .say(reason_of(p))
                .put("</span></td></tr>\n");
        }
        put("</tbody>\n</table>\n");
        if (found_.conducts) {
            element("p class=\"note\"", decided_explained);
            element("p class=\"note\"", band_explained);
            element("p class=\"note\"", cases_explained);
            if (has_open_mark(found_)) element("p class=\"note\"", open_ways_explained);
        }
        end_section();
    }
    [[nodiscard]] std::string reason_of(const part_result& p) const
    {
        return (p.stray_hides_it ? "with every stray way open: " : "") + told_of(p, p.reason);
    }

    void totals()
    {
        put("<dl class=\"conditions\">\n");
        condition("The loop takes", volts_line(found_.total_drop, found_.outcome) +
                                        (station_.allowed_drop ? "; allowed: " + to_text(*station_.allowed_drop, "V")
                                                               : std::string("; no limit was stated")) +
                                        (found_.conducts && found_.wire_extension_drop.typical.value() > 0.0
                                             ? "; of it " + volts_line(found_.wire_extension_drop, found_.outcome) +
                                                   " in the wire beyond the tip"
                                             : std::string()));
        condition("The arc gets",
                  (found_.conducts ? volts_line(found_.arc_voltage, found_.outcome) : std::string("nothing")) + "; " +
                      told(found_.arc_basis));
        if (found_.headroom)
            condition("Headroom", volts_line(*found_.headroom, found_.outcome) + " of the supply's output left");
        if (const std::string point = operating_line(found_, asked_.units); !point.empty())
            condition("Working point", point);
        if (const std::string year = year_line(found_); !year.empty()) condition("In a year", year);
        put("</dl>\n");
    }

    void findings()
    {
        const auto& all = found_.findings;
        if (std::all_of(all.begin(), all.end(), can_hurt)) return;
        element("h2", "What else stands out");
        put("<ul class=\"findings\">\n");
        for (const loop_finding& f : all) {
            if (can_hurt(f)) continue;
            put(f.severity == finding_severity::notice ? "<li class=\"f-notice\">" : "<li class=\"f-warning\">");
            finding(f);
            put("</li>\n");
        }
        put("</ul>\n");
    }

    void weld()
    {
        if (found_.weld.empty()) return;
        element("h2", "What the welder notices");
        put("<ul class=\"weld\">\n");
        for (const weld_statement& w : found_.weld)
            put("<li>").say(told(w.text)).put(" <code>").say(to_text(w.id)).put("</code></li>\n");
        put("</ul>\n");
    }

    void course()
    {
        const std::vector<std::string> lines = course_lines(found_);
        if (lines.empty()) return;
        element("h2", "What the changing current meets");
        put("<ul class=\"course\">\n");
        for (const std::string& l : lines) element("li", l);
        put("</ul>\n");
    }

    void ways()
    {
        if (station_.ways.empty()) return;
        element("h2", "Ways beside the path");
        put("<ul>\n");
        for (std::size_t w = 0; w < station_.ways.size(); ++w) element("li", way_line(station_, found_, w));
        put("</ul>\n");
        drawings(way_drawing(station_, found_, asked_.units), way_column(station_, found_, asked_.units),
                 "Each way from the point where it starts to the point where it ends, with its current while the arc "
                 "burns.");
    }

    void remedies()
    {
        if (remedies_.empty()) return;
        element("h2", "All that would help, most first");
        put("<ol>\n");
        for (const remedy& r : remedies_) {
            put("<li>").say(told(what_line(r)));
            effect(gain_line(r, found_.outcome, asked_.units)).effect(told(remedy_effect(r))).put("</li>\n");
        }
        put("</ol>\n");
        element("p class=\"note\"", told(gains_explained));
    }
    report_writer& effect(const std::string& text)
    {
        return text.empty() ? *this : put("<span class=\"gain\">").say(text).put("</span>");
    }

    void cautions()
    {
        const std::vector<std::string> all = all_cautions_of(found_, answers_);
        if (all.empty()) return;
        section("cautions", "All cautions", "cautions");
        list(told_all(all));
        end_section();
    }

    void charts()
    {
        if (!found_.conducts) return;
        put("<div class=\"charts\">\n<div>\n");
        element("h2", "Where the volts go");
        drawing(budget_drawing(station_, found_),
                std::string("Each drop begins where the one before it ends. Whiskers span from "
                            "the 5 to the 95 % point of each part's scatter.") +
                    (station_.ways.empty() ? "" : " Ways beside the path lie beside these drops and add none.") +
                    (has_open_mark(found_) ? " " + std::string(open_ways_explained) : ""));
        put("</div>\n<div>\n");
        element("h2", "How hot it gets");
        drawing(peak_drawing(station_, found_, asked_.units),
                "Highest temperature in the duty period of the place named, where the limit is defined that each part "
                "was held against (upright mark); of a part without one, of its hottest place. Contact spots are "
                "hotter.");
        put("</div>\n<div>\n");
        const std::string duty = duty_drawing(station_, hottest_traces(station_, found_), asked_.units);
        if (!duty.empty()) element("h2", "Over one duty period");
        drawing(duty, "The hottest parts over one duty period, once it has settled, typical case: each at its hottest "
                      "place, which is named where it is not the place of its limit.");
        put("</div>\n</div>\n");
    }

    /// Folded away until it is asked for; nothing of it is needed to act.
    void fold(std::string_view heading) { put("<details>\n<summary>").say(heading).put("</summary>\n"); }
    void end_fold() { put("</details>\n"); }

    /// All places of every part with their peaks and limits.
    void places()
    {
        if (!found_.conducts) return;
        fold("Every place and every limit");
        put("<table role=\"table\" class=\"told places\">\n<caption>Peaks in the duty period; limits stand at the "
            "place "
            "they "
            "are defined for, the first of each part in bold</caption>\n");
        headings({{"Place", ""},
                  {"Peak, " + degrees_, "n"},
                  {"Limit, " + degrees_, "n"},
                  {"Beyond, of 100", "n"},
                  {"Held against", ""}});
        for (const part_result& p : found_.parts) places_of(p);
        put("</table>\n");
        end_fold();
    }
    void places_of(const part_result& p)
    {
        put("<tbody role=\"rowgroup\">\n<tr role=\"row\" class=\"part\"><th role=\"rowheader\" scope=\"rowgroup\" "
            "colspan=\"5\">")
            .say(std::to_string(number_of(p)) + " ")
            .name(p.name)
            .put("</th></tr>\n");
        const auto degrees = [this](const auto& t) { return degrees_text(t, asked_.units); };
        for (const place_result& at : p.places) {
            bool held = false;
            for (const limit_use& u : p.limits) {
                if (!u.peak || u.at != to_text(at.what)) continue;
                limit_row(u, &u == p.limits.data());
                held = true;
            }
            if (!held) place_row({to_text(at.what), degrees(at.peak), "-", "-", "", false});
        }
        for (const limit_use& u : p.limits)
            if (!u.peak) limit_row(u, &u == p.limits.data());
        if (p.hottest_spot)
            place_row({"contact spots", degrees(*p.hottest_spot), "-",
                       p.limits.empty() ? cases_number(p) : std::string("-"),
                       "at most; their drop typically at " + fixed_text(100.0 * p.softening_used, 0) +
                           " % of the softening drop of their metals",
                       p.limits.empty()});
        std::vector<std::string> notes = p.notes;
        for (const range_flag flag : p.basis.flags()) notes.push_back(std::string(to_text(flag)) + ".");
        for (const std::string& note : notes)
            put("<tr role=\"row\"><td role=\"cell\" class=\"aside\" colspan=\"5\">")
                .say("Note: " + told_of(p, note))
                .put("</td></tr>\n");
        put("</tbody>\n");
    }
    void limit_row(const limit_use& u, bool first)
    {
        const std::string share = "typically at " + fixed_text(100.0 * u.used, 0) +
                                  (u.limit ? " % of the allowed rise" : " % of it") + ", in a poor case at " +
                                  fixed_text(100.0 * u.used_high, 0) + " %";
        place_row({u.at, u.peak ? degrees_text(*u.peak, asked_.units) : "-",
                   u.limit ? degrees_text(*u.limit, asked_.units) : "-", cases_number(u.exceeds), u.name + "; " + share,
                   first});
    }
    struct place_cells {
        std::string_view place;
        std::string peak, limit, cases, held_against;
        bool first;
    };
    void place_row(const place_cells& c)
    {
        put(c.first ? "<tr role=\"row\" class=\"deciding\">" : "<tr role=\"row\">");
        put("<th role=\"rowheader\" scope=\"row\">").say(c.place).put("</th>");
        cell("Peak, " + degrees_, c.peak);
        cell("Limit, " + degrees_, c.limit);
        cell("Beyond, of 100", c.cases);
        put("<td role=\"cell\" class=\"against\">").say(c.held_against).put("</td></tr>\n");
    }

    void fault()
    {
        if (answers_.observations.empty()) return;
        element("h2", "Where the fault is, by what was found");
        if (answers_.fault) {
            put("<ul class=\"fault\">\n");
            for (const std::string& line : fault_lines(*answers_.fault)) element("li", told(line));
            put("</ul>\n");
        } else
            element("p", fault_without_state);
        put("<section class=\"cautions\" aria-labelledby=\"live\">\n<h3 id=\"live\">Before anything is read or "
            "touched</h3>\n<ul>\n");
        for (const std::string_view c : reading_cautions) element("li", c);
        put("</ul>\n</section>\n");
        element("h3", "What was found");
        put("<ol class=\"found\">\n");
        for (const observation& o : answers_.observations) element("li", observation_line(o, asked_.units));
        put("</ol>\n");
        element("p class=\"note\"", fault_explained);
    }

    void life()
    {
        if (!answers_.life) return;
        const station_life& life = *answers_.life;
        element("h2", "How long it lasts");
        element("p", service_line(life.service) + ".");
        for (const clamp_prospect& c : life.clamps) {
            element("h3", c.name);
            list(told_each(clamp_prospect_lines(c, life.service.horizon)));
        }
        element("h3", "Joints that nobody touches");
        list(told_each(joint_drift_lines(life.joints)));
        element("p class=\"note\"", yielding_explained);
    }
    [[nodiscard]] std::vector<std::string> told_each(std::vector<std::string> lines) const
    {
        for (std::string& l : lines) l = told(l);
        return lines;
    }

    void grip()
    {
        for (const part_result& p : found_.parts) {
            if (!p.grip || p.grip->points.empty()) continue;
            element("h2", "Grip of " + p.name);
            std::vector<std::string> lines = grip_lines(*p.grip, grip_lost_before(station_, p));
            for (const range_flag flag : p.grip->basis.flags())
                lines.push_back("Note: " + std::string(to_text(flag)) + ".");
            list(lines);
            put("<div class=\"charts\">\n<div>\n");
            drawing(grip_drawing(station_, p, asked_.units),
                    "Force, resistance and peak temperature of the jaws, if the clamp stays as it is now. Shaded: "
                    "from the kind to the poor case.");
            put("</div>\n<div>\n");
            drawing(
                station_grip_map(station_, p),
                "What such a clamp comes to at other currents and on other surfaces: typical case, with its grip when "
                "new, without film, the nearest lead alone behind it.");
            put("</div>\n</div>\n");
        }
    }

    void surfaces()
    {
        const std::vector<surface_in_use> used = surfaces_in_use(station_);
        if (used.empty()) return;
        fold("Surfaces");
        element("p", surfaces_explained);
        put("<ul>\n");
        for (const surface_in_use& s : used) element("li", surface_line(s));
        put("</ul>\n");
        end_fold();
    }

    void sources()
    {
        source_list("Sources that were read", true);
        source_list("What rests on judgement, memory or common practice: weigh these yourself", false);
    }
    void source_list(std::string_view heading, bool read)
    {
        bool any = false;
        for (const source& s : sources_of(found_, answers_)) {
            if (was_read(s.kind) != read) continue;
            if (!any) {
                fold(heading);
                put("<ul class=\"sources\">\n");
            }
            any = true;
            element("li", to_text(s));
        }
        if (!any) return;
        put("</ul>\n");
        end_fold();
    }

    const station& station_;
    const assessment& found_;
    const std::vector<remedy>& remedies_;
    const report_request& asked_;
    const station_answers& answers_;
    std::string degrees_;
    sentence_facts facts_;
    std::string out_;
};

}  // namespace detail

inline std::string report_page(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                               const report_request& asked)
{
    return detail::report_writer(s, found, remedies, asked).written();
}

}  // namespace weldloop
