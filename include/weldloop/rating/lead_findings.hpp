#pragma once
/// @file
/// What is found of the leads and parts of a station whatever they carry: coverings that are not whole, a part that
/// makes and breaks.

#include <algorithm>
#include <cstddef>
#include <string>
#include <variant>

#include <weldloop/circuit/lead_in_part.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/part/covering_state.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/finding_id.hpp>

namespace weldloop::detail {

/// "work lead (cut), gun (burnt)": the leads that a finding of coverings is about.
/// @param s the station @param id covering_damaged or covering_wet
[[nodiscard]] inline std::string leads_found(const station& s, finding_id id)
{
    std::string out;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const cable* lead = lead_in(part_at(s, i));
        if (lead == nullptr || lead->covering_state == covering_state::whole) continue;
        if ((lead->covering_state == covering_state::wet) != (id == finding_id::covering_wet)) continue;
        out.append(out.empty() ? "" : ", ").append(name_of(s, i));
        out.append(" (").append(to_text(lead->covering_state)).append(")");
    }
    return out;
}

/// Whether coverings of a station call for a finding. @param s the station @param id covering_damaged or covering_wet
[[nodiscard]] inline bool has_covering_finding(const station& s, finding_id id)
{
    return !leads_found(s, id).empty();
}

/// Adds the findings of coverings that are not whole: `covering_damaged`, `covering_wet`. Both stop the job, in every
/// state of the loop. Heat and drop are still those of a whole covering, with the strands as stated.
/// @param out the assessment, its findings the gravest first @param s its station
inline void add_covering_findings(assessment& out, const station& s)
{
    const auto add = [&](finding_id id, const char* words) {
        const std::string leads = leads_found(s, id);
        if (leads.empty()) return;
        const auto first_milder = std::find_if(out.findings.begin(), out.findings.end(), [](const loop_finding& f) {
            return f.severity != finding_severity::stop_job;
        });
        out.findings.insert(first_milder, {id, finding_severity::stop_job,
                                           std::string("The covering is not whole: ").append(leads).append(words)});
    };
    add(finding_id::covering_damaged,
        ". Whoever touches it may get a shock, and bare strands arc to what they touch. Take it out of use; replace "
        "it, or cut the place out and terminate it anew.");
    add(finding_id::covering_wet,
        ". Whoever touches it may get a shock. Take it out of use, dry it, and look for the cut that let the water "
        "in.");
}

/// What is said of a lead in air that is colder than its covering may be handled in; empty: nothing.
/// @param name of the lead @param lead itself @param air around it @see covering::coldest_handled
[[nodiscard]] inline std::string cold_covering_text(const std::string& name, const cable& lead, temperature air)
{
    const covering& c = lead.covering;
    if (!c.coldest_handled || air >= *c.coldest_handled) return {};
    return name + " is covered with " + std::string(c.name) + ", which is stiff in air of " + to_text(air, "degC") +
           " and may crack where it is bent or knocked: such leads are not laid or moved below " +
           to_text(*c.coldest_handled, "degC") + " (" + to_text(*c.coldest_handled_source) +
           "). Warm it before it is uncoiled, leave it where it lies, or take one that is made for the cold.";
}

/// Adds `covering_cold`, a warning, for every lead whose covering may not be handled in the station's air. The arc's
/// own heat warms a lead under current; it is laid out and moved cold.
/// @param out the assessment, its findings the gravest first @param s its station
inline void add_cold_coverings(assessment& out, const station& s)
{
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const cable* lead = lead_in(part_at(s, i));
        if (lead == nullptr) continue;
        const std::string text = cold_covering_text(name_of(s, i), *lead, s.where.air);
        if (text.empty()) continue;
        const auto milder = std::find_if(out.findings.begin(), out.findings.end(),
                                         [](const loop_finding& f) { return f.severity == finding_severity::notice; });
        out.findings.insert(milder, {finding_id::covering_cold, finding_severity::warning, text});
        for (part_result& p : out.parts)
            if (p.place == i) p.basis.add(*lead->covering.coldest_handled_source);
    }
}

/// Adds that a part was seen to make and break the circuit: `part_intermittent`, a warning whatever the loop carries.
/// Drops and temperatures are those while it makes. @param out the assessment, its findings the gravest first
/// @param s its station @throws bad_station_error for a name that no part has, and for the arc
inline void add_intermittent(assessment& out, const station& s)
{
    if (s.intermittent.empty()) return;
    const std::size_t at = place_of(s, s.intermittent);
    if (std::holds_alternative<arc>(part_at(s, at)))
        throw bad_station_error("intermittent part", "the arc", "a part of the circuit beside it");
    const auto milder = std::find_if(out.findings.begin(), out.findings.end(),
                                     [](const loop_finding& f) { return f.severity == finding_severity::notice; });
    out.findings.insert(milder, {finding_id::part_intermittent, finding_severity::warning,
                                 s.intermittent +
                                     " is stated to make and break the circuit. With the supply off, look whether it "
                                     "is loose, dirty or broken; drops and temperatures here are those while it "
                                     "makes."});
    for (part_result& p : out.parts)
        if (p.place == at) p.is_intermittent = true;
}

}  // namespace weldloop::detail
