#pragma once
/// @file
/// What a report begins with: what can hurt now, one sentence that answers, and what to do first, each with the
/// cautions that belong to it.

#include <algorithm>
#include <array>
#include <cstddef>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/part_surface.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/cautions.hpp>
#include <weldloop/rating/touch_limit.hpp>
#include <weldloop/rating/verdict.hpp>
#include <weldloop/rating/weld_sentence.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

/// What a report says of a circuit in a word, the best first.
enum class circuit_answer {
    nothing_against,   ///< no verdict and no finding speaks against it
    in_poor_case,      ///< typically nothing does; in a poor case, or close to a limit, something does
    not_good,          ///< typically something does
    not_as_described,  ///< by what was found on the spot it is not what the file describes
    stop_job,          ///< no welding with it until it is cured
    carries_nothing,   ///< open, or without a settled state
};

/// The words for it.
[[nodiscard]] constexpr std::string_view to_text(circuit_answer a)
{
    switch (a) {
    case circuit_answer::nothing_against: return "nothing against it";
    case circuit_answer::in_poor_case: return "good typically";
    case circuit_answer::not_good: return "not good";
    case circuit_answer::not_as_described: return "not as described";
    case circuit_answer::stop_job: return "stop the job";
    case circuit_answer::carries_nothing: return "no settled current";
    }
    return "not good";
}

/// Something to do first, with the cautions that belong to it.
struct first_action {
    remedy does = {};                        ///< what
    bool by_readings = false;                ///< by what was found on the spot, not by the description
    std::vector<std::string> cautions = {};  ///< beside it
};

/// A finding that can hurt somebody now, with the cautions that belong to it.
struct present_danger {
    loop_finding finding = {};               ///< which
    std::vector<std::string> cautions = {};  ///< beside it
};

/// Actions a report begins with, at most.
inline constexpr std::size_t most_first_actions = 3;

namespace detail {

[[nodiscard]] constexpr bool can_hurt(const loop_finding& f)
{
    switch (f.id) {
    case finding_id::covering_damaged:
    case finding_id::covering_wet:
    case finding_id::no_load_above_limit:
    case finding_id::supply_cannot_hold_arc:
    case finding_id::open_circuit:
    case finding_id::no_steady_state:
    case finding_id::spots_melt:
    case finding_id::way_spans_arc:
    case finding_id::sharing_unstable:
    case finding_id::stray_current:
    case finding_id::stray_way:
    case finding_id::stray_when_return_opens:
    case finding_id::return_by_stray_ways_only:
    case finding_id::between_holders:
    case finding_id::part_intermittent: return true;
    case finding_id::no_steady_state_in_a_poor_case:
    case finding_id::supply_may_not_hold_arc:
    case finding_id::drop_above_allowed:
    case finding_id::drop_may_exceed_allowed:
    case finding_id::covering_cold:
    case finding_id::shared_work:
    case finding_id::other_duty_is_longer:
    case finding_id::supply_does_not_suit:
    case finding_id::polarity_does_not_suit:
    case finding_id::supply_gives_other_current:
    case finding_id::working_point_not_known:
    case finding_id::too_few_volts_for_arc:
    case finding_id::level_not_held: break;
    }
    return f.severity == finding_severity::stop_job;
}

[[nodiscard]] inline std::vector<std::string_view> cautions_of(finding_id id)
{
    switch (id) {
    case finding_id::open_circuit: return {caution_open};
    case finding_id::no_steady_state:
    case finding_id::sharing_unstable: return {caution_no_state};
    case finding_id::spots_melt: return {caution_melting, caution_fire};
    case finding_id::supply_cannot_hold_arc: return {caution_arc_goes_out};
    case finding_id::way_spans_arc: return {caution_across_arc};
    case finding_id::stray_current:
    case finding_id::stray_way:
    case finding_id::stray_when_return_opens:
    case finding_id::return_by_stray_ways_only: return {caution_stray, caution_after_stray, caution_no_earth};
    case finding_id::between_holders: return {caution_two_supplies};
    case finding_id::no_load_above_limit: return {caution_live_readings};
    case finding_id::covering_damaged:
    case finding_id::covering_wet: return {caution_switch_off};
    case finding_id::part_intermittent: return {caution_switch_off, caution_fire};
    default: return {};
    }
}

[[nodiscard]] inline const part_result* part_named(const assessment& found, std::string_view name)
{
    const auto at =
        std::find_if(found.parts.begin(), found.parts.end(), [name](const part_result& p) { return p.name == name; });
    return at == found.parts.end() ? nullptr : &*at;
}

/// The cautions of a step: what is done, to which part, as hot and as coated as it is.
[[nodiscard]] inline std::vector<std::string> cautions_of(const remedy& r, const station& s, const assessment& found)
{
    std::vector<std::string> out;
    const auto add = [&out](std::string_view caution) { out.emplace_back(caution); };
    const bool by_hand = r.effort != remedy_effort::weld_less && r.effort != remedy_effort::raise_volts;
    if (by_hand) add(caution_switch_off);
    const part_result* part = part_named(found, r.part);
    if (part != nullptr) {
        const auto hot = [](const place_result& at) { return at.peak.high > hot_to_touch; };
        if (by_hand && (part->hottest_spot || std::any_of(part->places.begin(), part->places.end(), hot)) &&
            std::find(found.cautions.begin(), found.cautions.end(), caution_burns) != found.cautions.end())
            add(caution_burns);
        if (part->verdict == verdict::spots_melting) add(caution_melting);
        if (covering_may_be_too_hot(*part)) add(caution_hot_covering);
        const auto surface = surface_of(part_at(s, part->place));
        if (by_hand && surface == surface_state::galvanized) add(caution_zinc);
        if (by_hand && (surface == surface_state::painted_pierced || surface == surface_state::painted_unbroken))
            add(caution_paint);
        if (!part->way.empty() &&
            std::any_of(s.ways.begin(), s.ways.end(), [](const way& w) { return w.kind == way_kind::stray; })) {
            add(caution_no_earth);
            add(caution_after_stray);
        }
    }
    if (r.restores_circuit && found.outcome == loop_outcome::open_circuit) add(caution_open);
    if (r.effort == remedy_effort::re_terminate) add(caution_no_splice);
    return out;
}

/// The part that by the readings may be failing; null: none.
[[nodiscard]] inline const suspected_part* failing_part_of(const station_answers& a)
{
    return a.fault ? a.fault->failing_part() : nullptr;
}

/// Adds what belongs to a part that may be failing, where it is not said already.
inline void add_failing_cautions(std::vector<std::string>& to)
{
    for (const std::string_view c : {caution_melting, caution_fire, caution_burns, caution_open})
        if (std::find(to.begin(), to.end(), c) == to.end()) to.emplace_back(c);
}

/// How near a step is to what has to be done first, 0 the nearest: it lifts what stops the job; it clears the verdict
/// on the worst part; it eases that; it is done to that part; it does something else.
[[nodiscard]] inline int distance_of(const remedy& r, const assessment& found)
{
    const auto holds = [](const auto& all, const auto& one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    };
    if (r.restores_circuit) return 0;
    for (const loop_finding& f : found.findings)
        if (f.severity == finding_severity::stop_job && holds(r.clears_findings, f.id)) return 0;
    const part_result& worst = found.weakest();
    if (!is_against(worst.verdict)) return 0;
    if (holds(r.clears_parts, worst.name)) return 1;
    if (r.part == worst.name && r.verdict_after && gravity_of(*r.verdict_after) < gravity_of(worst.verdict)) return 2;
    return r.part == worst.name ? 3 : 4;
}

/// The steps of a list, those nearest to what has to be done first before the others, each sort in the list's order.
/// @see distance_of()
[[nodiscard]] inline std::vector<const remedy*> nearest_first(const std::vector<remedy>& remedies,
                                                              const assessment& found)
{
    std::vector<const remedy*> out;
    for (const remedy& r : remedies)
        if (!r.is_remark && !r.is_summary) out.push_back(&r);
    std::stable_sort(out.begin(), out.end(), [&found](const remedy* a, const remedy* b) {
        return distance_of(*a, found) < distance_of(*b, found);
    });
    return out;
}

/// Whether the readings name a part at fault.
[[nodiscard]] inline bool is_at_fault(const station_answers& a)
{
    constexpr double even = 0.5;
    return a.fault && !a.fault->parts.empty() &&
           (static_cast<double>(a.fault->none) < even || failing_part_of(a) != nullptr);
}

/// A sentence up to its first semicolon or its end, without a full stop.
[[nodiscard]] inline std::string first_clause(std::string_view sentence)
{
    std::string out(sentence.substr(0, sentence.find(';')));
    while (!out.empty() && out.back() == '.') out.pop_back();
    return out;
}

/// A text up to the end of its first sentence, without the full stop; a point inside a number ends none.
[[nodiscard]] inline std::string first_sentence(std::string_view text)
{
    std::string out(text.substr(0, text.find(". ")));
    if (!out.empty() && out.back() == '.') out.pop_back();
    return out;
}

/// The names of a station that hold a number with a unit, which no telling over may touch, and the temperatures of
/// a part.
[[nodiscard]] inline sentence_facts facts_of(const station& s, const part_result* p = nullptr)
{
    sentence_facts out;
    const shown_units over{.temperatures = "degF", .lengths = shown_lengths::feet};
    const auto keep = [&](std::string name) {
        if (in_shown_units(name, over) != name) out.names.push_back(std::move(name));
    };
    keep(s.name);
    for (std::size_t i = 0; i < parts_in(s); ++i) keep(name_of(s, i));
    for (std::size_t w = 0; w < s.ways.size(); ++w) keep(name_of_way(s, w));
    for (const feed& f : s.others) keep(f.name);
    if (p == nullptr) return out;
    for (const limit_use& u : p->limits) {
        if (u.peak) out.exact.push_back(u.peak->typical);
        if (u.limit) out.exact.push_back(*u.limit);
    }
    for (const place_result& at : p->places) out.exact.push_back(at.peak.typical);
    return out;
}

}  // namespace detail

/// The findings that can hurt somebody now, the gravest first, each with the cautions that belong to it.
/// @param found the assessment
[[nodiscard]] inline std::vector<present_danger> present_dangers(const assessment& found)
{
    std::vector<present_danger> out;
    std::vector<std::string_view> said;
    for (const loop_finding& f : found.findings) {
        if (!detail::can_hurt(f)) continue;
        present_danger& d = out.emplace_back(present_danger{f, {}});
        for (const std::string_view c : detail::cautions_of(f.id)) {
            if (std::find(said.begin(), said.end(), c) != said.end()) continue;
            said.push_back(c);
            d.cautions.emplace_back(c);
        }
    }
    return out;
}

/// What to do first: what the readings call for; what lifts a stop of the job; what clears the verdict on the worst
/// part, or eases it; then the best of the other remedies. One that another makes unnecessary, or that makes another
/// so, is left to the whole list.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @param answers beside it @throws as part_at() for remedies of another station
[[nodiscard]] inline std::vector<first_action> first_actions(const station& s, const assessment& found,
                                                             const std::vector<remedy>& remedies,
                                                             const station_answers& answers)
{
    std::vector<first_action> out;
    if (detail::is_at_fault(answers)) {
        const suspected_part* const failing = detail::failing_part_of(answers);
        const suspected_part& first = failing != nullptr ? *failing : answers.fault->parts.front();
        if (!first.remedy.what.empty()) {
            first_action a{first.remedy, true, {}};
            if (a.does.part.empty()) a.does.part = first.name;
            a.cautions = detail::cautions_of(a.does, s, found);
            a.cautions.insert(a.cautions.begin(), std::string(reading_cautions.back()));
            if (failing != nullptr) detail::add_failing_cautions(a.cautions);
            out.push_back(std::move(a));
        }
    }
    const auto spares = [](const remedy& a, const remedy& b) {
        return std::find(a.makes_moot.begin(), a.makes_moot.end(), b.what) != a.makes_moot.end();
    };
    for (const remedy* const next : detail::nearest_first(remedies, found)) {
        if (out.size() == most_first_actions) break;
        const remedy& r = *next;
        if (std::any_of(out.begin(), out.end(), [&](const first_action& a) {
                return spares(a.does, r) || spares(r, a.does) || a.does.what == r.what;
            }))
            continue;
        out.push_back({r, false, detail::cautions_of(r, s, found)});
    }
    return out;
}

/// All cautions of a report: those of the assessment, then those of a part that by the readings may be failing.
/// @param found the assessment @param answers beside it
[[nodiscard]] inline std::vector<std::string> all_cautions_of(const assessment& found, const station_answers& answers)
{
    std::vector<std::string> out = found.cautions;
    if (detail::failing_part_of(answers) != nullptr) detail::add_failing_cautions(out);
    return out;
}

/// A caution in a few words, for where it has been said in full before. @param caution as printed
/// @return empty for one that has no short form
[[nodiscard]] inline std::string_view short_caution(std::string_view caution)
{
    struct row {
        std::string_view whole, brief;
    };
    const std::array rows{row{caution_switch_off, "switch off"},
                          row{touch_cautions[0], "supply off, locked, proven dead"},
                          row{caution_burns, "hot parts"},
                          row{caution_melting, "melting contact"},
                          row{caution_hot_covering, "fume of a hot covering"},
                          row{caution_zinc, "zinc fume"},
                          row{caution_paint, "paint fume"},
                          row{caution_no_earth, "an earth stays"},
                          row{caution_after_stray, "an electrician looks at what carried stray current"},
                          row{caution_open, "no-load voltage across the gap"},
                          row{caution_no_splice, "no splice near the holder or gun"}};
    for (const row& r : rows)
        if (r.whole == caution) return r.brief;
    return {};
}

/// The lines of caution beside each of some actions: each caution in full where it is first called for, later in a few
/// words with the number of that action, so that every action that calls for one has its line.
/// @param actions in the order of their numbers, from 1
[[nodiscard]] inline std::vector<std::vector<std::string>> caution_lines(const std::vector<first_action>& actions)
{
    std::vector<std::vector<std::string>> out;
    std::map<std::string, std::size_t, std::less<>> said;  // and under which number
    for (const first_action& a : actions) {
        std::vector<std::string>& lines = out.emplace_back();
        std::string again;
        std::size_t under = 0;
        for (const std::string& c : a.cautions) {
            const std::string_view brief = short_caution(c);
            const auto before = said.find(c);
            if (before == said.end() || brief.empty()) {
                said.emplace(c, out.size());
                lines.push_back(c);
                continue;
            }
            if (before->second != under) {
                under = before->second;
                again += (again.empty() ? "As said under " : "; under ") + std::to_string(under) + ": ";
            } else
                again += "; ";
            again += brief;
        }
        if (!again.empty()) lines.insert(lines.begin(), again + ".");
    }
    return out;
}

/// What is said of the circuit. @param found the assessment @param answers beside it
[[nodiscard]] inline circuit_answer circuit_answer_of(const assessment& found, const station_answers& answers)
{
    if (found.outcome != loop_outcome::solved) return circuit_answer::carries_nothing;
    const auto some = [&found](finding_severity s) {
        return std::any_of(found.findings.begin(), found.findings.end(),
                           [s](const loop_finding& f) { return f.severity == s; });
    };
    const verdict worst = found.weakest().verdict;
    if (detail::failing_part_of(answers) != nullptr || some(finding_severity::stop_job) ||
        gravity_of(worst) >= gravity_of(verdict::spots_melting))
        return circuit_answer::stop_job;
    if (detail::is_at_fault(answers)) return circuit_answer::not_as_described;
    if (some(finding_severity::warning) || worst == verdict::over_limit) return circuit_answer::not_good;
    if (is_against(worst) || some(finding_severity::notice)) return circuit_answer::in_poor_case;
    return circuit_answer::nothing_against;
}

/// One sentence that answers: what is said of the circuit, its worst part with the place, value and limit that decided,
/// and what to do first.
/// @param found the assessment @param actions of first_actions() @param answers beside it
[[nodiscard]] inline std::string answer_sentence(const assessment& found, const std::vector<first_action>& actions,
                                                 const station_answers& answers)
{
    const circuit_answer answer = circuit_answer_of(found, answers);
    const part_result& worst = found.weakest();
    std::string out;
    switch (answer) {
    case circuit_answer::nothing_against:
        out =
            "Nothing speaks against the circuit as it is described: of the parts that can be judged none is typically "
            "over its limit, nor in more than 1 of 20 such cases";
        break;
    case circuit_answer::in_poor_case:
        out = is_against(worst.verdict)
                  ? "The circuit is typically within its limits, but close to one, or past one in a poor case"
                  : "The parts of the circuit are within their limits, but see what stands out";
        break;
    case circuit_answer::not_good: out = "The circuit is not good for this job"; break;
    case circuit_answer::not_as_described:
        out = "By what was found on the spot the circuit is not as described: " + answers.fault->parts.front().name +
              (static_cast<double>(answers.fault->parts.front().probability) >= 0.5 ? " is at fault, "
                                                                                    : " is the first suspect, ") +
              detail::sure_words(answers.fault->parts.front().probability) + ", likeliest " +
              answers.fault->parts.front().condition;
        break;
    case circuit_answer::stop_job:
        if (const suspected_part* const failing = detail::failing_part_of(answers))
            out = "Stop the job: by what was found on the spot " + failing->name + " may be failing, " +
                  detail::sure_words(failing->failing) + ", about to burn or part";
        else
            out = "Stop the job: the circuit is not fit for it as it is";
        break;
    case circuit_answer::carries_nothing:
        out = found.outcome == loop_outcome::open_circuit
                  ? "The circuit is open and carries no current"
                  : "Stop the job: the circuit typically finds no settled state";
        break;
    }
    // what speaks by readings, not by the description
    const bool as_described = answer == circuit_answer::not_as_described ||
                              (answer == circuit_answer::stop_job && detail::failing_part_of(answers) != nullptr);
    const bool nothing = answer == circuit_answer::nothing_against;
    if (is_against(worst.verdict) || (nothing && worst.verdict != verdict::not_judged)) {
        out += as_described ? "; as it is described its worst part is "
               : nothing    ? "; the part nearest to its limit is "
                            : "; the worst part is ";
        out += name_with_way(worst) + " (No. " + std::to_string(number_of(worst)) + "), " +
               std::string(to_text(worst.verdict)) + ": " + (worst.stray_hides_it ? "with every stray way open " : "") +
               detail::first_clause(worst.reason);
    } else if (!as_described && !found.findings.empty())
        out += ": " + detail::first_sentence(found.findings.front().text);
    if (!actions.empty()) {
        constexpr int clears_it = 1;
        const first_action& a = actions.front();
        if (!a.by_readings && detail::distance_of(a.does, found) > clears_it) out += "; no single step clears that";
        out += "; do first: " + what_line(a.does);
    } else if (answer == circuit_answer::nothing_against)
        out += "; nothing has to be done first";
    else
        out += "; no single step that was tried helps";
    return out + ".";
}

namespace detail {
/// Findings that a welder notices at the arc.
[[nodiscard]] constexpr bool is_at_arc(finding_id id)
{
    return id == finding_id::supply_cannot_hold_arc || id == finding_id::too_few_volts_for_arc ||
           id == finding_id::supply_gives_other_current || id == finding_id::level_not_held ||
           id == finding_id::supply_does_not_suit || id == finding_id::polarity_does_not_suit ||
           id == finding_id::part_intermittent;
}
/// What is typically noticed, by statements and findings together: the one never denies the other.
[[nodiscard]] inline std::string noticed(const assessment& found)
{
    if (!found.weld.empty()) return weld_sentence(found.weld);
    const auto at = std::find_if(found.findings.begin(), found.findings.end(),
                                 [](const loop_finding& f) { return is_at_arc(f.id); });
    return at == found.findings.end() ? "At the arc the welder typically notices nothing of the circuit."
                                      : "At the arc: " + first_sentence(at->text) + ".";
}
}  // namespace detail

/// The weld's sentence: what the welder typically notices. @param found the assessment @param answers beside it
[[nodiscard]] inline std::string weld_answer(const assessment& found, const station_answers& answers)
{
    if (found.outcome != loop_outcome::solved)
        return "Nothing can be said of the weld: the circuit has no settled current for this job.";
    std::string said = detail::noticed(found);
    if (found.operating && found.operating->is_found() && !found.operating->line_in_range)
        said += " Of the arc's length nothing is said: no arc line of the process is known at this current.";
    return circuit_answer_of(found, answers) == circuit_answer::not_as_described ||
                   detail::failing_part_of(answers) != nullptr
               ? said + " That is of the circuit as it is described."
               : said;
}

}  // namespace weldloop
