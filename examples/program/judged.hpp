#pragma once
// What --judge asks.
#include <algorithm>

#include <weldloop/field/fault_search.hpp>
#include <weldloop/rating/assessment.hpp>

namespace program {

namespace wl = weldloop;

/// Whether something speaks against a station: a part over its limit or that may be, a finding that stops the job, or
/// no verdict on any part.
inline bool speaks_against(const wl::assessment& found)
{
    const auto parts = [&](const auto& is) { return std::any_of(found.parts.begin(), found.parts.end(), is); };
    return !found.conducts || parts([](const wl::part_result& p) {
        return wl::gravity_of(p.verdict) >= wl::gravity_of(wl::verdict::may_exceed);
    }) || !parts([](const wl::part_result& p) { return p.verdict != wl::verdict::not_judged; }) ||
           std::any_of(found.findings.begin(), found.findings.end(),
                       [](const wl::loop_finding& f) { return f.severity == wl::finding_severity::stop_job; });
}

/// Whether readings speak against a station: a part at fault, one that may be failing, a reading in doubt.
inline bool speaks_against(const wl::fault_search& found)
{
    constexpr double even = 0.5;
    return static_cast<double>(found.none) < even || found.failing_part() != nullptr || !found.doubtful.empty();
}

}  // namespace program
