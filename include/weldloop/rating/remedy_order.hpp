#pragma once
/// @file
/// The order of remedies, and which steps make others moot.

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/finding_id.hpp>
#include <weldloop/rating/remedy_change.hpp>
#include <weldloop/rating/remedy_finder.hpp>

namespace weldloop::detail {

/// A remedy with the change that it is.
struct step {
    change how = {};
    remedy says = {};
    bool lifts_stop = false;     // a finding that stops the job, an open circuit or melting spots are gone then
    bool from_the_part = false;  // what is wrong with the part invites it
};

// 0: lifts what stops the job; 1: clears some verdict; 2: only regains; 3: a summary; 4: a remark.
[[nodiscard]] inline int class_of(const step& s)
{
    if (s.says.is_remark) return 4;
    if (s.says.is_summary) return 3;
    if (s.lifts_stop) return 0;
    return s.says.clears_parts.empty() && s.says.clears_findings.empty() && s.says.clears_weld.empty() ? 2 : 1;
}

/// First what lifts a stop of the job, then what clears a verdict or finding, each by effort and then by volts; then
/// what only regains, by volts.
inline void put_in_order(std::vector<step>& steps)
{
    std::stable_sort(steps.begin(), steps.end(), [](const step& a, const step& b) {
        const int kind = class_of(a);
        if (kind != class_of(b)) return kind < class_of(b);
        if (kind < 2 && a.says.effort != b.says.effort) return a.says.effort < b.says.effort;
        if (a.says.volts_regained != b.says.volts_regained) return a.says.volts_regained > b.says.volts_regained;
        return a.says.cooled_by > b.says.cooled_by;
    });
}

/// Notes with each step which others need not be taken then: steps to parts that are gone; what is wrong with a part
/// and is not wrong with the one that stands in for it; and what is bought, or not welded, only for what this step
/// clears too with no more effort.
inline void find_moot(const station& s, std::vector<step>& steps)
{
    std::map<std::size_t, std::vector<const step*>> at_part;
    std::map<std::string, std::vector<const step*>> clearing_part;
    std::map<finding_id, std::vector<const step*>> clearing_finding;
    for (const step& b : steps) {
        if (b.says.is_remark || b.says.is_summary) continue;
        at_part[b.how.part].push_back(&b);
        for (const std::string& part : b.says.clears_parts) clearing_part[part].push_back(&b);
        for (const finding_id id : b.says.clears_findings) clearing_finding[id].push_back(&b);
    }
    const auto holds_all = [](const auto& all, const auto& some) {
        return std::all_of(some.begin(), some.end(),
                           [&](const auto& x) { return std::find(all.begin(), all.end(), x) != all.end(); });
    };
    for (step& a : steps) {
        if (a.says.is_remark || a.says.is_summary) continue;
        const auto note = [&a](const step& b) {
            std::vector<std::string>& moot = a.says.makes_moot;
            if (&a != &b && std::find(moot.begin(), moot.end(), b.says.what) == moot.end()) moot.push_back(b.says.what);
        };
        for (std::size_t i = a.how.gone_from; i < a.how.gone_to; ++i)
            for (const step* b : at_part[i]) note(*b);
        for (const part_change& p : a.how.parts) {
            const std::vector<change> left = change_finder(s, p.at).changes(p.instead);
            for (const step* b : at_part[p.at])
                if (b->from_the_part && !b->how.is_everywhere() &&
                    std::none_of(left.begin(), left.end(), [&](const change& c) { return c.id == b->how.id; }))
                    note(*b);
        }
        const auto look = [&](const std::vector<const step*>& others) {
            for (const step* b : others)
                if (b->says.effort >= remedy_effort::replace && a.says.effort <= b->says.effort &&
                    holds_all(a.says.clears_parts, b->says.clears_parts) &&
                    holds_all(a.says.clears_findings, b->says.clears_findings))
                    note(*b);
        };
        for (const std::string& part : a.says.clears_parts) look(clearing_part[part]);
        for (const finding_id id : a.says.clears_findings) look(clearing_finding[id]);
    }
}

}  // namespace weldloop::detail
