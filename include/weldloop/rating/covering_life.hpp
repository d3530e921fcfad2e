#pragma once
/// @file
/// The thermal life that a lead's covering uses in an assessed station, at its hottest place: beside a bad lug, say.

#include <algorithm>

#include <weldloop/circuit/lead_in_part.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/life/covering_ageing.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// What the covering of a lead uses of its thermal life at its hottest place, in a time at the job's load.
///
/// The conductor's peak of the assessment, over its scatter by the joints: the poor case is a poor covering at the 95 %
/// point, the good one a good covering at the 5 % point. Peaks stand for the whole period, which is on the safe side.
/// @param part the lead, gun or torch as assessed @param s the assessed station @param time [s] of work, 0 or above
/// @throws missing_data_error for a part without a lead, one that was not solved, or a covering without a limit;
/// not_finite_error, out_of_range_error
[[nodiscard]] inline covering_age covering_life_of(const part_result& part, const station& s, duration time)
{
    const cable* lead = lead_in(part_at(s, part.place));
    const auto at = std::find_if(part.places.begin(), part.places.end(),
                                 [](const place_result& p) { return p.what == part_place::conductor; });
    if (lead == nullptr || at == part.places.end())
        throw missing_data_error("conductor temperature", part.name, "a lead, gun or torch of a solved station");
    covering_age out = covering_age_at(lead->covering, at->peak.high, time);
    out.typical = covering_age_at(lead->covering, at->peak.typical, time).typical;
    out.good = covering_age_at(lead->covering, at->peak.low, time).good;
    return out;
}

namespace detail {

/// Puts to a lead, gun or torch of a solved station what its covering uses of its thermal life in the hours looked
/// ahead, and says so where that is much. @param r as assessed @param s the station @param hours of work
inline void add_covering_use(part_result& r, const station& s, duration hours)
{
    constexpr double worth_saying = 0.05;  // of a life, in a poor case
    const cable* lead = lead_in(part_at(s, r.place));
    const bool is_known = std::any_of(r.places.begin(), r.places.end(),
                                      [](const place_result& p) { return p.what == part_place::conductor; });
    if (lead == nullptr || !is_known || !lead->covering.highest) return;
    r.covering_use = covering_life_of(r, s, hours);
    r.basis.add(r.covering_use->basis);
    if (r.covering_use->past_short_time || r.covering_use->poor > worth_saying)
        r.notes.push_back("In " + to_text(hours, "h") + " of this work: " + to_text(*r.covering_use) + ".");
}

}  // namespace detail

}  // namespace weldloop
