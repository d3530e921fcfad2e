#pragma once
/// @file
/// What was found on the spot, and the part at fault by it, in sentences.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

/// How the probabilities of a search are meant; printed beside them.
inline constexpr std::string_view fault_explained =
    "Probabilities rest on judged rates of faults and judged scatter of connections, held against the station as it is "
    "described above: they say where to look first, not what is so.";

/// What is said in the place of a search where the station as described has no settled state.
inline constexpr std::string_view fault_without_state =
    "No part can be named by the readings: as it is described the station has no settled state at the current they "
    "were "
    "taken at. Describe it as it should be; the readings say how it is.";

/// Suspects that are named: those above this probability, at least one.
inline constexpr double worth_suspecting = 0.05;
/// Suspects named at most.
inline constexpr std::size_t most_suspects = 5;

namespace detail {

// "97 %", "<1 %", ">99 %"
[[nodiscard]] inline std::string sure_words(likelihood p)
{
    return cases_number(p) + " %";
}

[[nodiscard]] inline std::string words_of(const reading& r, const shown_units&)
{
    return r.across + (r.to.empty() ? std::string() : " to " + r.to) + ": " + to_text(r.volts, "V") + " at " +
           to_text(r.current, "A") +
           (r.error.value() > 0.0 ? ", the voltmeter within " + to_text(r.error, "V") : std::string());
}
[[nodiscard]] inline std::string words_of(const heat_observation& o, const shown_units& units)
{
    return o.part + ": hottest at " + shown_text(o.hottest, units) + ", within " +
           number_text(shown_number(o.error, units)) + " " + std::string(difference_unit(units));
}
[[nodiscard]] inline std::string words_of(const four_wire_observation& o, const shown_units&)
{
    return o.part + ": " + to_text(o.ohms, "uohm") + " with four wires, cold" +
           (o.error.value() > 0.0 ? ", within " + to_text(o.error, "uohm") : std::string());
}
[[nodiscard]] inline std::string words_of(const tightness_observation& o, const shown_units&)
{
    return o.part + ": as tight as " + number_text(100.0 * o.share, 3) + " % of what it should be";
}
[[nodiscard]] inline std::string words_of(const surface_observation& o, const shown_units&)
{
    return o.part + ": its faces look " + std::string(to_text(o.seen));
}
[[nodiscard]] inline std::string words_of(const strand_observation& o, const shown_units&)
{
    return o.part + ": " + number_text(100.0 * static_cast<double>(o.missing), 3) + " % of the strands seen missing";
}
[[nodiscard]] inline std::string words_of(const arc_observation& o, const shown_units&)
{
    return o.part + ": its arc burns " + std::string(to_text(o.seen));
}
// "volts across holder", "the tightness of holder, supply off and locked"
[[nodiscard]] inline std::string words_of(const next_reading& n)
{
    switch (n.quantity) {
    case reading_quantity::volts: return "volts across " + n.across + (n.to.empty() ? "" : " to " + n.to);
    case reading_quantity::arc: return "whether the arc burns evenly at " + n.across;
    case reading_quantity::tightness: return "the tightness of " + n.across + ", supply off and locked";
    case reading_quantity::surface: return "the faces of " + n.across + ", supply off and locked";
    case reading_quantity::strands: return "the strands at " + n.across + ", supply off and locked";
    }
    return {};
}

// What is said of a part that may be failing.
[[nodiscard]] inline std::string failing_line(const suspected_part& p)
{
    return "Stop the job: " + p.name + " may be failing, " + sure_words(p.failing) +
           ": about to burn or part. With the supply off and locked, " + what_line(p.remedy) +
           ". Until then nothing is welded with it and nothing read across it under current.";
}

}  // namespace detail

/// A finding on the spot in words: "work lead to return lug: 0.9 V at 228 A". @param o what was found
/// @param units of the report
[[nodiscard]] inline std::string observation_line(const observation& o, const shown_units& units = {})
{
    return std::visit([&units](const auto& one) { return detail::words_of(one, units); }, o);
}

/// Every source of a report: those of the assessment, then those of the answers beside it.
[[nodiscard]] inline std::vector<source> sources_of(const assessment& found, const station_answers& answers)
{
    std::vector<source> out = found.sources;
    const auto add = [&out](const basis& b) {
        for (const source* s : b.sources())
            if (std::find(out.begin(), out.end(), *s) == out.end()) out.push_back(*s);
    };
    if (answers.life) add(answers.life->basis);
    if (answers.fault) add(answers.fault->basis);
    return out;
}

/// What a search says, in sentences: the culprit and how sure, what to do first, what else is suspected, which readings
/// to doubt, what to read next.
/// @param f the search
[[nodiscard]] inline std::vector<std::string> fault_lines(const fault_search& f)
{
    std::vector<std::string> out;
    constexpr double even = 0.5;
    const suspected_part* const failing = f.failing_part();
    if (failing != nullptr) {
        out.push_back(detail::failing_line(*failing));
        std::string others;
        for (const suspected_part& p : f.parts)
            if (may_be_failing(p) && &p != failing)
                others.append(others.empty() ? "" : ", ").append(p.name + " (" + detail::sure_words(p.failing) + ")");
        if (!others.empty()) out.push_back("Or another may be failing, and is opened too: " + others + ".");
    }
    if (!f.doubtful.empty())
        out.emplace_back("Not every reading can be trusted: take what is in doubt again, with another probe and range, "
                         "before anything is welded. Where a reading above all that is known of its part comes out the "
                         "same, that part is failing in a way of its own, a joint that arcs or a conductor about to "
                         "part: stop the job there, whatever is said below.");
    if (failing == nullptr && (static_cast<double>(f.none) >= even || f.parts.empty()))
        out.push_back("Most likely nothing is at fault: " + detail::sure_words(f.none) +
                      (f.doubtful.empty() ? "; the readings fit the station as it is described." : "."));
    std::size_t named = 0;
    for (const suspected_part& p : f.parts) {
        if (named == most_suspects || (named > 0 && static_cast<double>(p.probability) < worth_suspecting)) break;
        const bool leads = named == 0 && static_cast<double>(p.probability) >= even;
        std::string line = (leads        ? "At fault: "
                            : named == 0 ? "First suspect: "
                                         : "Also suspected: ") +
                           p.name + ", " + detail::sure_words(p.probability) + "; if so, " + p.condition + " (" +
                           detail::sure_words(p.condition_share) + " of that)";
        if (!p.is_read) line += "; nothing was read or seen of it";
        line += ".";
        const bool first = named == 0 && static_cast<double>(f.none) < even;
        const bool is_stopped = may_be_failing(p);  // its step stands above
        if (!first && !is_stopped && !p.remedy.what.empty()) line += " There: " + what_line(p.remedy) + ".";
        out.push_back(std::move(line));
        if (first && !is_stopped && !p.remedy.what.empty())
            out.push_back("What to do first, supply off and locked: " + what_line(p.remedy) + ".");
        ++named;
    }
    if (!f.parts.empty() && static_cast<double>(f.none) < even)
        out.push_back("That nothing is at fault: " + detail::sure_words(f.none) + ".");
    for (const doubtful_observation& d : f.doubtful)
        out.push_back("Reading " + std::to_string(d.which + 1) + " is in doubt, " + detail::sure_words(d.probability) +
                      ": " + d.what + ".");
    for (const unused_observation& u : f.not_judged)
        out.push_back("Reading " + std::to_string(u.which + 1) + ": " + u.what + ".");
    out.push_back(f.next ? "Read or look at next: " + detail::words_of(*f.next) +
                               "; that would tell most of what is still open."
                         : std::string("No further reading of volts across a part would tell anything that counts."));
    if (f.crossing)
        out.emplace_back("Some spans overlap without one holding the other, or were read at currents far apart; they "
                         "are weighed as if "
                         "they had no part in common.");
    return out;
}

}  // namespace weldloop
