#pragma once
/// @file
/// How station_answers.hpp is answered.

#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/field/locate_fault_body.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/rating/station_life_body.hpp>

namespace weldloop {

[[nodiscard]] inline station_answers answers_of(const station& s, const assessment& found,
                                                const std::vector<observation>& observations)
{
    station_answers out{.life = station_life_of(s, found), .observations = observations};
    if (observations.empty()) return out;
    try {
        out.fault = locate_fault(s, observations);
    } catch (const no_solution_error&) {
        out.as_described_unsettled = true;
    }
    return out;
}

}  // namespace weldloop
