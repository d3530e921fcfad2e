#pragma once
/// @file
/// What is found of the leads of a station whatever they carry: coverings that are not whole.

#include <algorithm>
#include <string>

#include <weldloop/circuit/lead_in_part.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/part/covering_state.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/finding_id.hpp>

namespace weldloop::detail {

/// "work lead (cut), gun (burnt)": the leads whose covering is in a state that is asked for.
template <class Wanted>
[[nodiscard]] std::string leads_with_covering(const station& s, const Wanted& wanted)
{
    std::string out;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const cable* lead = lead_in(part_at(s, i));
        if (lead == nullptr || !wanted(lead->covering_state)) continue;
        out.append(out.empty() ? "" : ", ").append(name_of(s, i));
        out.append(" (").append(to_text(lead->covering_state)).append(")");
    }
    return out;
}

/// Adds the findings of coverings that are not whole: `covering_damaged`, `covering_wet`. Both stop the job, in every
/// state of the loop. Heat and drop are still those of a whole covering, with the strands as stated.
/// @param out the assessment, its findings the gravest first @param s its station
inline void add_covering_findings(assessment& out, const station& s)
{
    const auto add = [&](finding_id id, const std::string& leads, const char* words) {
        if (leads.empty()) return;
        const auto first_milder = std::find_if(out.findings.begin(), out.findings.end(), [](const loop_finding& f) {
            return f.severity != finding_severity::stop_job;
        });
        out.findings.insert(first_milder, {id, finding_severity::stop_job,
                                           std::string("The covering is not whole: ").append(leads).append(words)});
    };
    add(finding_id::covering_damaged,
        leads_with_covering(
            s, [](covering_state state) { return state != covering_state::whole && state != covering_state::wet; }),
        ". Whoever touches it may get a shock, and bare strands arc to what they touch. Take it out of use; replace "
        "it, or cut the place out and terminate it anew.");
    add(finding_id::covering_wet,
        leads_with_covering(s, [](covering_state state) { return state == covering_state::wet; }),
        ". Whoever touches it may get a shock. Take it out of use, dry it, and look for the cut that let the water "
        "in.");
}

}  // namespace weldloop::detail
