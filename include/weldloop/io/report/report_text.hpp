#pragma once
/// @file
/// The report as plain text, for a terminal.

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
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/surface_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/weld_sentence.hpp>

namespace weldloop {

/// Columns of the text report.
inline constexpr std::size_t text_report_width = 110;

namespace detail {

class text_report {
public:
    text_report(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                const station_answers& answers)
        : station_(s), found_(found), remedies_(remedies), answers_(answers)
    {
    }

    [[nodiscard]] std::string written()
    {
        head();
        findings();
        weld();
        ways();
        table();
        totals();
        fault();
        what_would_help();
        life();
        part_by_part();
        grip();
        list("Cautions", found_.cautions, "! ");
        surfaces();
        sources();
        blank();
        say(report_standing);
        return std::move(out_);
    }

private:
    static constexpr std::size_t width = text_report_width;
    // number, name, drop, loss, peak, its place, limit, cases, verdict, with one or two spaces between: 110 in all
    static constexpr std::size_t in_number = 3, in_name = 20, in_drop = 20, in_loss = 5, in_peak = 14, in_place = 16,
                                 in_limit = 4, in_cases = 6;

    void blank() { out_.push_back('\n'); }
    void line(std::string_view text)
    {
        const std::size_t end = text.find_last_not_of(' ');
        out_.append(text.substr(0, end == std::string_view::npos ? 0 : end + 1)).push_back('\n');
    }
    void say(std::string_view text) { say("", text); }
    /// What is said after a mark or label stays clear of it in every line.
    void say(std::string_view label, std::string_view text)
    {
        std::string before(label);
        for (const std::string& l : broken(plain_ascii(text), width - label.size())) {
            line(before + l);
            before.assign(label.size(), ' ');
        }
    }
    void title(std::string_view text)
    {
        blank();
        line(text);
        line(std::string(text.size(), '-'));
    }
    void labelled(std::string_view label, std::string_view text) { say(left_in(label, 14), text); }
    void list(std::string_view heading, const std::vector<std::string>& items, std::string_view mark)
    {
        if (items.empty()) return;
        title(heading);
        for (const std::string& item : items) say(mark, item);
    }

    void head()
    {
        const std::string name = plain_ascii(found_.name);
        for (const std::string& l : broken(name, width)) line(l);
        line(std::string(std::min(name.size(), width), '='));
        labelled("Job", job_line(station_.job));
        labelled("Surroundings", surroundings_line(station_.where));
        labelled("Supply", supply_line(station_));
        if (answers_.fault) labelled("By readings", fault_lines(*answers_.fault).front());
        if (!found_.weld.empty()) labelled("At the weld", weld_sentence(found_.weld));
    }

    void findings()
    {
        if (!found_.findings.empty()) title("What stands out");
        for (const loop_finding& f : found_.findings)
            say("- ", std::string(to_text(f.severity)) + ": " + f.text + " [" + std::string(to_text(f.id)) + "]");
        blank();
    }

    void weld()
    {
        std::vector<std::string> texts;
        for (const weld_statement& w : found_.weld) texts.push_back(w.text + " [" + std::string(to_text(w.id)) + "]");
        list("What the welder notices", texts, "- ");
        if (!texts.empty()) blank();
    }

    void ways()
    {
        if (station_.ways.empty()) return;
        title("Ways beside the path");
        for (std::size_t w = 0; w < station_.ways.size(); ++w) say("- ", way_line(station_, found_, w));
        blank();
    }

    void row(std::string_view number, std::string_view name, std::string_view drop, std::string_view loss,
             std::string_view peak, std::string_view place, std::string_view limit, std::string_view cases,
             std::string_view verdict)
    {
        line(right_in(number, in_number) + "  " + left_in(name, in_name) + " " + right_in(drop, in_drop) + " " +
             right_in(loss, in_loss) + "  " + right_in(peak, in_peak) + "  " + left_in(place, in_place) + " " +
             right_in(limit, in_limit) + " " + right_in(cases, in_cases) + "  " + std::string(verdict));
    }
    void table()
    {
        row("No.", "part", "drop, V", "heat,", "peak,", "of its", "lim.", "beyond", "verdict");
        row("", "", "", "W", "degC", "", "degC", "in 100", "");
        line(std::string(width, '-'));
        std::string_view way;
        for (const part_result& p : found_.parts) {
            if (p.way != way) line(std::string(in_number + 2, ' ') + plain_ascii(p.way) + ":");
            way = p.way;
            const std::string_view none = p.conducts ? "-" : "open";
            if (!found_.conducts) {
                row(std::to_string(number_of(p)), plain_ascii(p.name), none, "-", "-", "-", "-", "-",
                    short_text(p.verdict));
                continue;
            }
            row(std::to_string(number_of(p)), plain_ascii(p.name), drop_text(p.drop),
                fixed_text(p.loss.typical.value(), p.loss.typical.value() < 9.95 ? 1 : 0),
                temperature_is_known(p) ? band_text(p.peak, 0) : "unknown",
                temperature_is_known(p) ? to_text(p.peak_at) : "-",
                p.limit ? fixed_text(p.limit->in_celsius(), 0) : "-", cases_number(p), short_text(p.verdict));
        }
        line(std::string(width, '-'));
        if (found_.conducts) {
            say(band_explained);
            say(cases_explained);
        } else
            say("No drops and no temperatures: " + no_state_line(found_));
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
        labelled("", found_.arc_basis);
        if (found_.headroom)
            labelled("Headroom", volts_line(*found_.headroom, found_.outcome) + " of the supply's output left");
        if (const std::string point = operating_line(found_); !point.empty()) labelled("Working point", point);
        std::string_view label = "Waveform";
        for (const std::string& l : course_lines(found_)) {
            labelled(label, l);
            label = "";
        }
        if (const std::string year = year_line(found_); !year.empty()) labelled("In a year", year);
        const part_result& weakest = found_.weakest();
        labelled("Weakest", weakest.name + " (No. " + std::to_string(number_of(weakest)) +
                                "): " + std::string(to_text(weakest.verdict)));
    }

    void part_by_part()
    {
        title("Part by part");
        const std::string clear(in_number + 2, ' ');
        for (const part_result& p : found_.parts) {
            say(right_in(std::to_string(number_of(p)), in_number) + "  ",
                name_with_way(p) + ", " + std::string(to_text(p.verdict)) + ": " +
                    (p.stray_hides_it ? "with every stray way open: " : "") + p.reason + ".");
            if (!found_.conducts) continue;
            for (const limit_use& u : p.limits)
                say(clear + "limit: ", limit_line(u) + "; exceeded " + cases_text(u.exceeds));
            std::string peaks;
            for (const place_result& at : p.places)
                peaks.append(peaks.empty() ? "" : ", ")
                    .append(to_text(at.what))
                    .append(" ")
                    .append(band_text(at.peak, 0));
            if (p.places.size() > 1) say(clear + "peaks: ", peaks + " degC");
            for (const std::string& n : p.notes) say(clear + "note:  ", n);
        }
    }

    void what_would_help()
    {
        if (remedies_.empty()) return;
        title("What would help, most first");
        std::size_t rank = 0;
        for (const remedy& r : remedies_) {
            const std::string mark = right_in(std::to_string(++rank), in_number - 1) + ".  ";
            say(mark, what_line(r));
            if (!r.is_remark) say(std::string(mark.size(), ' '), gain_line(r, found_.outcome));
            if (const std::string effect = remedy_effect(r); !effect.empty())
                say(std::string(mark.size(), ' '), effect);
        }
    }

    void fault()
    {
        if (answers_.observations.empty()) return;
        title("Where the fault is, by what was found");
        std::size_t number = 0;
        for (const observation& o : answers_.observations)
            say(right_in(std::to_string(++number), in_number) + "  ", observation_line(o));
        blank();
        if (answers_.fault)
            for (const std::string& l : fault_lines(*answers_.fault)) say("- ", l);
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
            say(plain_ascii(c.name) + ":");
            for (const std::string& l : clamp_prospect_lines(c, life.service.horizon)) say("- ", l);
        }
        say("Joints that nobody touches:");
        for (const std::string& l : joint_drift_lines(life.joints)) say("- ", l);
        say(yielding_explained);
    }

    void grip()
    {
        for (const part_result& p : found_.parts) {
            if (!p.grip || p.grip->points.empty()) continue;
            title("Grip of " + plain_ascii(p.name));
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
    const station_answers& answers_;
    std::string out_;
};

}  // namespace detail

/// The report as a table and lists, in ASCII, no line longer than text_report_width.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @param answers how long it lasts and where the fault is, see answers_of(); what is empty is left out
/// @throws not_finite_error should a result hold NaN or infinity; bad_station_error for an assessment without parts
[[nodiscard]] inline std::string report_text(const station& s, const assessment& found,
                                             const std::vector<remedy>& remedies, const station_answers& answers = {})
{
    return detail::text_report(s, found, remedies, answers).written();
}

}  // namespace weldloop
