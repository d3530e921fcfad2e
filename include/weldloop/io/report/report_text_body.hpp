#pragma once
/// @file
/// How report_text.hpp is answered.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/course_words.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/report_request.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/io/report/surface_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/io/report/text_writer.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

class text_report : text_writer {
public:
    text_report(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                const report_request& asked)
        : text_writer(text_report_width), station_(s), found_(found), remedies_(remedies), asked_(asked),
          answers_(asked.answers), facts_(facts_of(s))
    {
    }

    [[nodiscard]] std::string written()
    {
        head();
        dangers();
        answer();
        table();
        totals();
        findings();
        weld();
        ways();
        grip();
        life();
        fault();
        what_would_help();
        list("All cautions", told_all(all_cautions_of(found_, answers_)), "! ");
        if (asked_.detail == report_detail::whole) {
            part_by_part();
            surfaces();
            sources();
        }
        blank();
        say(report_standing);
        if (asked_.detail == report_detail::brief) say(more_is_known);
        return finished();
    }

private:
    static constexpr std::size_t width = text_report_width;
    // number, name, drop, heat, place that decided, value there, limit, cases, verdict, one or two spaces between
    static constexpr std::size_t in_number = 3, in_name = 20, in_drop = 20, in_loss = 5, in_place = 16, in_value = 14,
                                 in_limit = 5, in_cases = 6;
    static constexpr std::string_view more_is_known =
        "Every limit of every part, the surfaces, the sources and what rests on judgement stand in the whole report.";

    void labelled(std::string_view label, std::string_view text) { say(left_in(label, 14), text); }
    void list(std::string_view heading, const std::vector<std::string>& items, std::string_view mark)
    {
        if (items.empty()) return;
        title(heading);
        for (const std::string& item : items) say(mark, item);
    }
    [[nodiscard]] std::vector<std::string> told_all(std::vector<std::string> sentences) const
    {
        for (std::string& s : sentences) s = told(s);
        return sentences;
    }
    /// A sentence of the library in the units of the report.
    [[nodiscard]] std::string told(std::string_view sentence) const
    {
        return in_shown_units(sentence, asked_.units, facts_);
    }
    [[nodiscard]] std::string told_of(const part_result& p, std::string_view sentence) const
    {
        return in_shown_units(sentence, asked_.units, facts_of(station_, &p));
    }

    void head()
    {
        heading(found_.name);
        labelled("Job", job_line(station_.job));
        labelled("Surroundings", surroundings_line(station_.where, asked_.units));
        labelled("Supply", supply_line(station_));
        labelled("Made", made_line(asked_));
    }

    void dangers()
    {
        const std::vector<present_danger> all = present_dangers(found_);
        if (all.empty()) return;
        title("This can hurt now");
        for (const present_danger& d : all) {
            say("! ", std::string(to_text(d.finding.severity)) + ": " + told(d.finding.text) + " [" +
                          std::string(to_text(d.finding.id)) + "]");
            for (const std::string& c : d.cautions) say("  ! ", told(c));
        }
    }

    void answer()
    {
        const std::vector<first_action> actions = first_actions(station_, found_, remedies_, answers_);
        title("In short");
        say(told_of(found_.weakest(), answer_sentence(found_, actions, answers_)));
        say(weld_answer(found_, answers_));
        if (!actions.empty()) title("Do first");
        const std::vector<std::vector<std::string>> cautions = caution_lines(actions);
        std::size_t rank = 0;
        for (const first_action& a : actions) {
            const std::string mark = right_in(std::to_string(++rank), in_number - 1) + ".  ", clear(mark.size(), ' ');
            say(mark, told(what_line(a.does)) + (a.by_readings ? ", by what was found" : ""));
            if (!a.by_readings) say(clear, gain_line(a.does, found_.outcome, asked_.units));
            for (const std::string& c : cautions[rank - 1]) say(clear + "! ", told(c));
        }
        blank();
    }

    void findings()
    {
        std::vector<std::string> texts;
        for (const loop_finding& f : found_.findings)
            if (!can_hurt(f))
                texts.push_back(std::string(to_text(f.severity)) + ": " + told(f.text) + " [" +
                                std::string(to_text(f.id)) + "]");
        list("What else stands out", texts, "- ");
    }

    void weld()
    {
        std::vector<std::string> texts;
        for (const weld_statement& w : found_.weld)
            texts.push_back(told(w.text) + " [" + std::string(to_text(w.id)) + "]");
        list("What the welder notices", texts, "- ");
    }

    void ways()
    {
        if (station_.ways.empty()) return;
        title("Ways beside the path");
        for (std::size_t w = 0; w < station_.ways.size(); ++w) say("- ", way_line(station_, found_, w));
    }

    struct cells {
        std::string_view number, name, drop, loss;
        deciding_row decided;
        std::string_view cases, verdict;
    };
    void row(const cells& c)
    {
        const bool is_marked = c.number.ends_with('*');  // which stands behind the column of numbers
        line(right_in(c.number, in_number + (is_marked ? 1 : 0)) + (is_marked ? " " : "  ") + left_in(c.name, in_name) +
             " " + right_in(c.drop, in_drop) + " " + right_in(c.loss, in_loss) + "  " +
             left_in(c.decided.at, in_place) + " " + right_in(c.decided.value, in_value) + " " +
             right_in(c.decided.limit, in_limit) + " " + right_in(c.cases, in_cases) + "  " + std::string(c.verdict));
    }
    void table()
    {
        const std::string degrees(asked_.units.temperatures.name());
        row({"No.", "part", "drop, V", "heat,", {"decided at", "there,", "lim.,"}, "beyond", "verdict"});
        row({"", "", "", "W", {"", degrees, degrees}, "in 100", ""});
        line(std::string(width, '-'));
        std::string_view way;
        for (const part_result& p : found_.parts) {
            if (p.way != way) say(std::string(in_number + 2, ' '), "way " + p.way + ":");
            way = p.way;
            const std::string number = number_with_mark(p), name = plain_ascii(p.name);
            if (!found_.conducts) {
                row({number, name, p.conducts ? "-" : "open", "-", {"-", "-", "-"}, "-", short_text(p.verdict)});
                continue;
            }
            row({number, name, drop_text(p.drop),
                 fixed_text(p.loss.typical.value(), p.loss.typical.value() < 9.95 ? 1 : 0),
                 deciding_row_of(p, asked_.units), cases_number(p), short_text(p.verdict)});
        }
        line(std::string(width, '-'));
        if (found_.conducts) {
            say(decided_explained);
            say(band_explained);
            say(cases_explained);
            if (has_open_mark(found_)) say(open_ways_explained);
        } else
            say("No drops and no temperatures: " + told(no_state_line(found_)));
        blank();
    }

    void totals()
    {
        std::string takes = volts_line(found_.total_drop, found_.outcome);
        if (station_.allowed_drop) takes.append("; allowed: ").append(to_text(*station_.allowed_drop, "V"));
        labelled("Loop takes", takes);
        if (found_.conducts && found_.wire_extension_drop.typical.value() > 0.0)
            labelled("", "of that " + volts_line(found_.wire_extension_drop, found_.outcome) +
                             " in the wire beyond the gun's tip");
        labelled("Arc gets", found_.conducts ? volts_line(found_.arc_voltage, found_.outcome) : "nothing");
        labelled("", told(found_.arc_basis));
        if (found_.headroom)
            labelled("Headroom", volts_line(*found_.headroom, found_.outcome) + " of the supply's output left");
        if (const std::string point = operating_line(found_, asked_.units); !point.empty())
            labelled("Working point", point);
        std::string_view label = "Waveform";
        for (const std::string& l : course_lines(found_)) {
            labelled(label, l);
            label = "";
        }
        if (const std::string year = year_line(found_); !year.empty()) labelled("In a year", year);
    }

    void part_by_part()
    {
        title("Part by part");
        const std::string clear(in_number + 2, ' '), degrees(asked_.units.temperatures.name());
        for (const part_result& p : found_.parts) {
            say(right_in(std::to_string(number_of(p)), in_number) + "  ",
                name_with_way(p) + ", " + std::string(to_text(p.verdict)) + ": " +
                    (p.stray_hides_it ? "with every stray way open: " : "") + told_of(p, p.reason) + ".");
            if (!found_.conducts) continue;
            for (const limit_use& u : p.limits)
                say(clear + "limit: ", limit_line(u, asked_.units) + "; exceeded " + cases_text(u.exceeds));
            std::string peaks;
            for (const place_result& at : p.places)
                peaks.append(peaks.empty() ? "" : ", ")
                    .append(to_text(at.what))
                    .append(" ")
                    .append(degrees_text(at.peak, asked_.units));
            if (p.places.size() > 1) say(clear + "peaks: ", peaks + " " + degrees);
            for (const std::string& n : p.notes) say(clear + "note:  ", told_of(p, n));
            for (const range_flag flag : p.basis.flags()) say(clear + "note:  ", to_text(flag));
        }
    }

    void what_would_help()
    {
        if (remedies_.empty()) return;
        title("All that would help, most first");
        std::size_t rank = 0;
        for (const remedy& r : remedies_) {
            const std::string mark = right_in(std::to_string(++rank), in_number - 1) + ".  ";
            say(mark, told(what_line(r)));
            if (!r.is_remark) say(std::string(mark.size(), ' '), gain_line(r, found_.outcome, asked_.units));
            if (const std::string effect = remedy_effect(r); !effect.empty())
                say(std::string(mark.size(), ' '), told(effect));
        }
        say(told(gains_explained));
    }

    void fault()
    {
        if (answers_.observations.empty()) return;
        title("Where the fault is, by what was found");
        std::size_t number = 0;
        for (const observation& o : answers_.observations)
            say(right_in(std::to_string(++number), in_number) + "  ", observation_line(o, asked_.units));
        blank();
        if (answers_.fault)
            for (const std::string& l : fault_lines(*answers_.fault)) say("- ", told(l));
        else
            say("- ", fault_without_state);
        for (const std::string_view c : reading_cautions) say("! ", c);
        say(fault_explained);
    }

    void life()
    {
        if (!answers_.life) return;
        const station_life& life = *answers_.life;
        title("How long it lasts");
        labelled("Use", service_line(life.service));
        for (const clamp_prospect& c : life.clamps) {
            say(c.name + ":");
            for (const std::string& l : clamp_prospect_lines(c, life.service.horizon)) say("- ", told(l));
        }
        say("Joints that nobody touches:");
        for (const std::string& l : joint_drift_lines(life.joints)) say("- ", told(l));
        say(yielding_explained);
    }

    void grip()
    {
        for (const part_result& p : found_.parts) {
            if (!p.grip || p.grip->points.empty()) continue;
            title("Grip of " + p.name);
            for (const std::string& l : grip_lines(*p.grip, grip_lost_before(station_, p))) say("- ", l);
        }
    }

    void surfaces()
    {
        const std::vector<surface_in_use> used = surfaces_in_use(station_);
        if (used.empty()) return;
        title("Surfaces");
        say(surfaces_explained);
        for (const surface_in_use& s : used) say("- ", surface_line(s));
    }

    void sources()
    {
        std::vector<std::string> read, not_read;
        for (const source& s : sources_of(found_, answers_)) (was_read(s.kind) ? read : not_read).push_back(to_text(s));
        list("Sources", read, "- ");
        list("Numbers that rest on judgement, on memory or on common practice", not_read, "- ");
    }

    const station& station_;
    const assessment& found_;
    const std::vector<remedy>& remedies_;
    const report_request& asked_;
    const station_answers& answers_;
    sentence_facts facts_;
};

}  // namespace detail

inline std::string report_text(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                               const report_request& asked)
{
    return detail::text_report(s, found, remedies, asked).written();
}

}  // namespace weldloop
