#pragma once
/// @file
/// The report as plain text, for a terminal.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/escape.hpp>
#include <weldloop/io/report_words.hpp>
#include <weldloop/io/surface_words.hpp>
#include <weldloop/io/text_layout.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// Columns of the text report.
inline constexpr std::size_t text_report_width = 110;

namespace detail {

class text_report {
public:
    text_report(const station& s, const assessment& found, const std::vector<remedy>& remedies)
        : station_(s), found_(found), remedies_(remedies)
    {
    }

    [[nodiscard]] std::string written()
    {
        head();
        table();
        totals();
        what_stands_out();
        what_would_help();
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
    // number, name, drop, loss, peak, limit, verdict, with one or two spaces between: 110 in all
    static constexpr std::size_t in_number = 4, in_name = 26, in_drop = 21, in_loss = 6, in_peak = 14, in_limit = 6,
                                 in_verdict = 24;

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
        blank();
    }

    void row(std::string_view number, std::string_view name, std::string_view drop, std::string_view loss,
             std::string_view peak, std::string_view limit, std::string_view verdict)
    {
        line(right_in(number, in_number) + "  " + left_in(name, in_name) + " " + right_in(drop, in_drop) + " " +
             right_in(loss, in_loss) + "  " + right_in(peak, in_peak) + " " + right_in(limit, in_limit) + "  " +
             std::string(verdict));
    }
    void table()
    {
        row("No.", "part", "drop, V", "loss,", "peak,", "limit,", "verdict");
        row("", "", "", "W", "degC", "degC", "");
        line(std::string(width, '-'));
        for (const part_result& p : found_.parts) {
            const std::string drop = found_.conducts ? band_text(p.drop, 3) : p.conducts ? "-" : "open";
            const std::string loss =
                found_.conducts ? fixed_text(p.loss.typical.value(), p.loss.typical.value() < 9.95 ? 1 : 0) : "-";
            const std::string peak = found_.conducts ? band_text(p.peak, 0) : "-";
            const std::string_view words = to_text(p.verdict);
            row(std::to_string(number_of(p)), plain_ascii(p.name), drop, loss, peak,
                p.limit ? fixed_text(p.limit->in_celsius(), 0) : "-",
                left_in(words.substr(0, words.find(',')), in_verdict));
        }
        line(std::string(width, '-'));
        if (found_.conducts) say(band_explained);
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
        const part_result& weakest = found_.weakest();
        labelled("Weakest", weakest.name + " (No. " + std::to_string(number_of(weakest)) +
                                "): " + std::string(to_text(weakest.verdict)));
    }

    void what_stands_out()
    {
        bool titled = !found_.findings.empty();
        if (titled) title("What stands out");
        for (const loop_finding& f : found_.findings) say("      ", std::string(to_text(f.severity)) + ": " + f.text);
        for (const part_result& p : found_.parts) {
            if (p.verdict == verdict::within_limit || p.reason.empty()) continue;
            if (!titled) title("What stands out");
            titled = true;
            say(right_in(std::to_string(number_of(p)), in_number) + "  ",
                p.name + ", " + std::string(to_text(p.verdict)) + ": " + p.reason);
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
            say(std::string(mark.size(), ' '), gain_line(r));
        }
    }

    void grip()
    {
        for (const part_result& p : found_.parts) {
            if (!p.grip || p.grip->points.empty()) continue;
            title("Grip of " + plain_ascii(p.name));
            for (const std::string& l : grip_lines(*p.grip)) say("- ", l);
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
        for (const source& s : found_.sources) (was_read(s.kind) ? read : not_read).push_back(to_text(s));
        list("Sources", read, "- ");
        list("Numbers that rest on judgement, on memory or on common practice", not_read, "- ");
    }

    const station& station_;
    const assessment& found_;
    const std::vector<remedy>& remedies_;
    std::string out_;
};

}  // namespace detail

/// The report as a table and lists, in ASCII, no line longer than text_report_width.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @throws not_finite_error should a result hold NaN or infinity; bad_station_error for an assessment without parts
[[nodiscard]] inline std::string report_text(const station& s, const assessment& found,
                                             const std::vector<remedy>& remedies)
{
    return detail::text_report(s, found, remedies).written();
}

}  // namespace weldloop
