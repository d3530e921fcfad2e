#pragma once
/// @file
/// What a survey says in each of its forms.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <variant>
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
    "Each step by itself clears something, of those for one part the best; what serves two parts of a station and what "
    "else would do is weighed in its own report.";

/// How the list of what spares a circuit is meant; printed under its heading.
inline constexpr std::string_view survey_sparing_explained = "It mends nothing: the cause stays.";

namespace detail {

/// "Gate shop, bench 1 (gate_shop.toml)"
[[nodiscard]] inline std::string station_words(const surveyed_station& s)
{
    return s.found.name.empty() ? s.file : s.found.name + " (" + s.file + ")";
}

/// A sentence that begins with a capital letter, unless it begins with the name of a part.
[[nodiscard]] inline std::string capital(std::string sentence, std::string_view name = {})
{
    const bool is_name = !name.empty() && sentence.starts_with(name);
    if (!is_name && !sentence.empty() && sentence[0] >= 'a' && sentence[0] <= 'z')
        sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
    return sentence;
}

/// "lug: over limit. Stop the job: ... Warning: ...": the weakest part with its verdict, or what readings say, then
/// every finding that is more than a notice.
[[nodiscard]] inline std::string standing_words(const surveyed_station& s)
{
    const part_result& w = s.found.weakest();
    std::string out =
        s.found.conducts ? w.name + ": " + std::string(to_text(w.verdict)) + "." : capital(no_state_line(s.found));
    if (has_read_fault(s)) out = "By readings: " + fault_lines(*s.answers.fault).front() + " As described: " + out;
    for (const finding_severity severity : {finding_severity::stop_job, finding_severity::warning})
        for (const loop_finding& f : s.found.findings)
            if (f.severity == severity) out += " " + capital(std::string(to_text(severity))) + ": " + f.text;
    return out;
}

/// "Replace work lead by 2/0 AWG, regains 1.2 V."
[[nodiscard]] inline std::string step_words(const survey_step& s)
{
    const bool is_named = s.part.empty() || s.what.find(s.part) != std::string::npos;
    std::string out = capital(is_named ? s.what : s.part + ": " + s.what, s.part);
    if (s.volts_regained.value() > 0.0005) out += ", regains " + to_text(s.volts_regained, "V", 2);
    return out + (s.cures ? "." : "; clears no verdict by itself.");
}

/// How many stations a list of steps is about.
[[nodiscard]] inline std::size_t stations_in(const std::vector<survey_step>& steps)
{
    std::vector<std::size_t> entries;
    for (const survey_step& s : steps)
        if (std::find(entries.begin(), entries.end(), s.entry) == entries.end()) entries.push_back(s.entry);
    return entries.size();
}

/// "Something stops the job at 2 stations; ... To buy: 3 steps at 2 stations; ...": the whole in two sentences.
[[nodiscard]] inline std::string survey_summary(const std::vector<surveyed_station>& stations, const survey& found)
{
    std::size_t stop = 0, over = 0;
    for (const std::size_t i : found.ranked) {
        const auto badness = badness_of(stations[i]);
        if (std::get<0>(badness))
            ++stop;
        else if (std::get<1>(badness) >= gravity_of(verdict::may_exceed))
            ++over;
    }
    const auto at = [](std::size_t count) { return std::to_string(count) + (count == 1 ? " station" : " stations"); };
    const std::string out = "Something stops the job at " + at(stop) +
                            "; a limit is or may be exceeded, or readings name a part at fault, at " +
                            std::to_string(over) + " more.";
    std::string work;
    const auto add = [&](const std::vector<survey_step>& steps, std::string_view what) {
        if (steps.empty()) return;
        work.append(work.empty() ? "" : "; ").append(what).append(": ").append(std::to_string(steps.size()));
        work.append(steps.size() == 1 ? " step at " : " steps at ").append(at(stations_in(steps)));
    };
    add(found.to_mend, "to mend");
    add(found.to_move, "to move");
    add(found.to_buy, "to buy");
    add(found.to_do, "to clean and tighten this week");
    return work.empty() ? out : out + " " + capital(work) + ".";
}

/// Hours cut to whole ones, so that nobody looks too late.
[[nodiscard]] inline std::string look_words(const survey_look& l)
{
    constexpr double slip = 1e-9;
    const double hours = std::floor(number_in(l.by, "h") + slip);
    return l.part + ": in a poor case it may give way " +
           (hours < 1.0 ? std::string("within the first hour of shift.")
                        : "after " + number_text(hours, 6) + " h of shift.");
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
/// "worse, by what was read"
[[nodiscard]] inline std::string change_words(const part_trend& t)
{
    return std::string(to_text(t.change)) + (t.by_readings ? ", by what was read or seen" : "");
}
/// "50 degC -> 60 degC", as read at the hottest place.
[[nodiscard]] inline std::string hottest_words(const part_trend& t)
{
    const auto of = [](const std::optional<part_then>& p) {
        return p && p->hottest ? to_text(*p->hottest, "degC", 3) : std::string("-");
    };
    return from_to(of(t.before), of(t.after));
}
/// "its faces look clean -> its faces look light rust", every sort of look.
[[nodiscard]] inline std::vector<std::string> looks_words(const part_trend& t)
{
    std::vector<std::string> out;
    const auto look = [&](const std::optional<part_then>& p, std::size_t sort) {
        if (p)
            for (const observation& o : p->looks)
                if (o.index() == sort) return observation_line(o).substr(t.name.size() + 2);  // behind "name: "
        return std::string("-");
    };
    for (std::size_t sort = 0; sort < std::variant_size_v<observation>; ++sort) {
        const std::string was = look(t.before, sort), is = look(t.after, sort);
        if (was != "-" || is != "-") out.push_back(from_to(was, is));
    }
    return out;
}
/// What was read, felt and seen of a part, a line for each; none where nothing was.
[[nodiscard]] inline std::vector<std::string> found_lines(const part_trend& t)
{
    std::vector<std::string> out;
    const auto any = [&](auto has) { return (t.before && has(*t.before)) || (t.after && has(*t.after)); };
    if (any([](const part_then& p) { return p.read.has_value(); })) out.push_back("as read: " + read_words(t));
    if (any([](const part_then& p) { return p.hottest.has_value(); }))
        out.push_back("hottest, as read: " + hottest_words(t));
    for (const std::string& look : looks_words(t)) out.push_back("seen: " + look);
    return out;
}
/// "clamp to terminal, as read: 9 mohm -> 12 mohm (1.33 times)"
[[nodiscard]] inline std::string span_words(const span_trend& s)
{
    const auto of = [](const std::optional<resistance>& r) { return r ? to_text(*r, "uohm", 3) : std::string("-"); };
    return s.from + " to " + s.to + ", as read: " + from_to(of(s.before), of(s.after)) +
           (s.ratio ? " (" + number_text(*s.ratio, 3) + " times)" : std::string());
}
/// Why the two may not be one station; empty where nothing says so.
[[nodiscard]] inline std::string doubt_words(const surveyed_station& before, const surveyed_station& after,
                                             const station_trend& t)
{
    std::string out;
    if (t.names_differ)
        out = "The two files name two stations, \"" + before.found.name + "\" and \"" + after.found.name + "\". ";
    if (2 * t.known_again < t.most_parts || t.names_differ)
        out +=
            std::to_string(t.known_again) + " of " + std::to_string(t.most_parts) +
            " parts have a name and kind in common" +
            (2 * t.known_again < t.most_parts ? ": these may be two stations, and then nothing here is a trend." : ".");
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
