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
#include <weldloop/field/reading.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// How often each condition is met before anything is measured, and how a reading scatters.
inline constexpr source condition_priors{
    "prior weights of conditions met on shop floors, and 5 % scatter of a clamp-on reading",
    "2026",
    {},
    source_kind::judgement};

/// One condition that could explain a reading.
struct explanation {
    std::string condition = {};                  ///< "light rust", "strands missing", "as described"
    band<weldloop::resistance> resistance = {};  ///< what the part would have under it
    weldloop::likelihood likelihood = 0.0;       ///< given the reading
    weldloop::remedy remedy = {};                ///< what cures it
};

/// What a reading says of a part.
struct finding {
    std::string part = {};                     ///< its name
    weldloop::resistance measured = {};        ///< reading over current
    band<weldloop::resistance> expected = {};  ///< for the part as described
    bool within_expected = false;              ///< the reading lies within that band
    std::string most_likely = {};              ///< the condition that explains the reading best
    weldloop::likelihood likelihood = 0.0;     ///< of that condition among those considered
    weldloop::remedy remedy = {};              ///< for that condition
    std::vector<explanation> considered = {};  ///< every condition, the likeliest first
    weldloop::basis basis = {};                ///< sources
};

/// What readings across the parts of a loop say of each part.
///
/// Each part that was read is given, in turn, the conditions it could be in; the loop is solved at the reading's
/// current for each, and a condition's likelihood is its prior weight times the log-normal density of the reading under
/// it, normalised over the conditions considered. A condition nobody thought of is not among them.
/// @param s the station as described @param meter readings, each across a part by name
/// @return one finding a reading, in their order
/// @throws bad_station_error for a name that is not in the path or is the arc; out_of_range_error and not_finite_error
/// for a
///         reading that cannot be
[[nodiscard]] std::vector<finding> diagnose(const station& s, const std::vector<reading>& meter);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/field/diagnose_body.hpp>
#endif
