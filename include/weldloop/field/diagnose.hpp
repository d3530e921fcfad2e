#pragma once
/// @file
/// From millivolts to a culprit: readings across the parts of a loop against what each part should have, and the
/// condition that explains the reading best.

#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/field/condition_id.hpp>
#include <weldloop/field/reading.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// One condition that could explain a reading.
struct explanation {
    std::string condition = {};                    ///< "light rust", "strands missing", "as described"
    band<weldloop::resistance> resistance = {};    ///< what the part would have under it
    weldloop::likelihood likelihood = 0.0;         ///< given the reading
    weldloop::remedy remedy = {};                  ///< what cures it
    condition_id id = condition_id::as_described;  ///< which condition
};

/// What a reading says of a part.
struct finding {
    std::string part = {};                     ///< its name
    weldloop::resistance measured = {};        ///< reading over current
    band<weldloop::resistance> expected = {};  ///< for the part as described
    bool within_expected = false;              ///< the reading lies within that band and the error of the meters
    std::string most_likely = {};              ///< the condition that explains the reading best, or that none does
    weldloop::likelihood likelihood = 0.0;     ///< of that
    weldloop::remedy remedy = {};              ///< for that
    std::vector<explanation> considered = {};  ///< every condition, the likeliest first
    weldloop::likelihood wrong = 0.0;          ///< that it was taken wrongly (probe, range, name); with the likelihoods
                                               ///< of all conditions it adds up to 1
    weldloop::basis basis = {};                ///< sources
};

/// What readings across the parts of a loop say of each part, each reading by itself.
///
/// The states of the part and what the reading says of them are those of locate_fault(): the part as described or, at
/// the rate of its kind, in one of its conditions, each with the distribution of its resistance at the reading's
/// current in the loop as described; the reading with the errors of usual meters, or taken wrongly. Bands are the 5, 50
/// and 95 % points. A condition nobody thought of is not among them.
/// @param s the station as described @param meter readings, each across a part by name
/// @return one finding a reading, in their order
/// @throws bad_station_error for a name that is not in the path, is the arc or a junction, or a span of parts, which
/// locate_fault() takes; no_solution_error for a station that as described has no settled state at the current;
/// out_of_range_error and not_finite_error for a reading that cannot be
[[nodiscard]] std::vector<finding> diagnose(const station& s, const std::vector<reading>& meter);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/field/diagnose_body.hpp>
#endif
