#pragma once
/// @file
/// How long a station goes on as it is: its clamps in the loop, and the joints nobody touches.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/life/clamp_life.hpp>
#include <weldloop/life/joint_drift.hpp>
#include <weldloop/life/station_service.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// How long a clamp of a station goes on holding, by its forecast in the loop.
struct clamp_prospect {
    std::size_t place = 0;                  ///< its number in the station, from 0
    std::string name = {};                  ///< as printed
    std::string lead = {};                  ///< the lead it has to hold; empty: none hangs on it
    clamp_hours quarter_lost = {};          ///< of the grip it has now
    clamp_hours cable_not_held = {};        ///< until it no longer holds 5 m of that lead with a coupling by friction
    std::optional<force> cable_needs = {};  ///< [N] at each jaw for that; empty for leads outside 16 to 185 mm2
    grip_causes causes = {};                ///< what raised its resistance, shares, typical
    std::optional<resistance> untouched = {};  ///< [ohm] at the end if nothing moves it, typical; empty: it has ended
    std::optional<resistance> moved = {};      ///< [ohm] at the end once it is moved, typical; empty as above
    std::optional<duration> poor_ends = {};    ///< [s] when the poor case comes to an end before the hours are over
    bool poor_melts = false;                   ///< in the poor case its spots melt, though it goes on
    bool keeps_typically = true;               ///< it loses less than a quarter, holds its lead and finds rest
    bool keeps_poor = true;                    ///< the same in the poor case
    bool cures_sought = false;                 ///< cures were looked for: it does not keep the poor case
    std::vector<clamp_cure> cures = {};        ///< of those tried, each alone, that typically keep it
    std::optional<duration> look_again = {};   ///< [s] when a poor case may have lost a quarter, dropped its lead or
                                               ///< come to an end; empty: not within the hours looked ahead
};

/// How long a station lasts.
struct station_life {
    station_service service = {};             ///< the use it is looked ahead with
    std::vector<clamp_prospect> clamps = {};  ///< in the order of the parts; none without a settled state
    drift_forecast joints = {};               ///< every other joint
    weldloop::basis basis = {};               ///< sources
};

/// How long a station lasts as it is, with the use it was assessed with.
///
/// Clamps: read off the forecasts of the assessment, which are marched in the loop. Of one that does not keep its grip
/// in the poor case two changes are tried in the loop, each alone: bright metal under the jaws, and a screw clamp of
/// its rating; not where the verdict rests on stray ways taken as open. The largest current, duty and work temperature,
/// other sizes, and the clamp to buy are answered by clamp_life_of() for the clamp with its lead. Other joints:
/// joints_over_time().
/// @param s the station @param found its assessment
/// @throws as assess(), joints_over_time()
[[nodiscard]] station_life station_life_of(const station& s, const assessment& found);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/rating/station_life_body.hpp>
#endif
