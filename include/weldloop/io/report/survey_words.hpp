#pragma once
/// @file
/// What a survey says in each of its forms.

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/text.hpp>
#include <weldloop/field/survey.hpp>
#include <weldloop/field/survey_trend.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/report_words.hpp>

namespace weldloop {

/// What a survey is and is not; printed in each of its forms.
inline constexpr std::string_view survey_standing =
    "Calculated from the stations as their files describe them; it sees no cable and replaces no inspection, nor local "
    "codes and licensed practice. A rank says where to go first, no release for work. Every step: supply off and "
    "locked "
    "before a part is touched.";

/// How the list of what to buy is meant; printed under its heading.
inline constexpr std::string_view survey_buying_explained =
    "Each step by itself clears something; of one station some are alternatives, which its own report weighs.";

namespace detail {

/// "Gate shop, bench 1 (gate_shop.toml)"
[[nodiscard]] inline std::string station_words(const surveyed_station& s)
{
    return s.found.name.empty() ? s.file : s.found.name + " (" + s.file + ")";
}

/// "stop the job: ..." or the weakest part with its verdict.
[[nodiscard]] inline std::string standing_words(const surveyed_station& s)
{
    const part_result& w = s.found.weakest();
    std::string out = w.name + ": " + std::string(to_text(w.verdict));
    if (has_read_fault(s)) out = "by readings, " + fault_lines(*s.answers.fault).front() + " As described " + out;
    if (!s.found.conducts) return no_state_line(s.found);
    for (const loop_finding& f : s.found.findings)
        if (f.severity == finding_severity::stop_job) return out + "; stop the job: " + f.text;
    return out;
}

[[nodiscard]] inline std::string step_words(const survey_step& s)
{
    std::string out = s.what;
    if (s.volts_regained.value() > 0.0005) out += ", regains " + to_text(s.volts_regained, "V", 2);
    return out + (s.cures ? "" : "; clears no verdict by itself");
}

/// Hours cut to whole ones, so that nobody looks too late.
[[nodiscard]] inline std::string look_words(const survey_look& l)
{
    constexpr double slip = 1e-9;
    const double hours = std::floor(number_in(l.by, "h") + slip);
    return l.part + ": in a poor case it may give way " +
           (hours < 1.0 ? std::string("within the first hour of shift")
                        : "after " + number_text(hours, 6) + " h of shift");
}

/// "9.1 mV -> 12.3 mV"
[[nodiscard]] inline std::string from_to(const std::string& before, const std::string& after)
{
    return before == after ? before : before + " -> " + after;
}
[[nodiscard]] inline std::string drop_words(const std::optional<part_then>& p)
{
    return p && p->drop ? to_text(p->drop->typical, "mV", 3) : "-";
}
[[nodiscard]] inline std::string peak_words(const std::optional<part_then>& p)
{
    return p && p->peak ? to_text(*p->peak, "degC", 3) : "-";
}
[[nodiscard]] inline std::string verdict_words(const std::optional<part_then>& p)
{
    return p ? std::string(to_text(p->verdict)) : "-";
}
[[nodiscard]] inline std::string read_words(const part_trend& t)
{
    const auto of = [](const std::optional<part_then>& p) {
        return p && p->read ? to_text(*p->read, "uohm", 3) : std::string("-");
    };
    std::string out = from_to(of(t.before), of(t.after));
    if (t.read_ratio) out += " (" + number_text(*t.read_ratio, 3) + " times)";
    return out;
}
/// "loop 4.1 V -> 5.9 V"
[[nodiscard]] inline std::string loop_words(const station_trend& t)
{
    const auto of = [](const std::optional<voltage>& v) { return v ? to_text(*v, "V") : std::string("no state"); };
    return "The loop typically takes " + from_to(of(t.drop_before), of(t.drop_after));
}

}  // namespace detail

}  // namespace weldloop
