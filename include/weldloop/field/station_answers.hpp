#pragma once
/// @file
/// What is answered of a station beside its assessment: how long it lasts, and where the fault is by what was found.

#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/station_life.hpp>

namespace weldloop {

/// The answers; what was not asked is empty.
struct station_answers {
    std::optional<station_life> life = {};       ///< how long it lasts
    std::vector<observation> observations = {};  ///< what was found on the spot, in the order it was stated
    std::optional<fault_search> fault = {};      ///< the part at fault by them; empty without observations
    bool as_described_unsettled = false;         ///< there are observations, but the station as described has no
                                                 ///< settled state that they could be held against
};

/// All of it. @param s the station @param found its assessment @param observations what was found on the spot
/// @throws as station_life_of(), locate_fault(); a station without a settled state is an answer, no error
[[nodiscard]] station_answers answers_of(const station& s, const assessment& found,
                                         const std::vector<observation>& observations = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/field/station_answers_body.hpp>
#endif
