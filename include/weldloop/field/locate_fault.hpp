#pragma once
/// @file
/// From everything found out on the spot to the part at fault, how sure that is, and what to read next.

#include <cstddef>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/fault_rates.hpp>
#include <weldloop/field/fault_search.hpp>
#include <weldloop/field/observation.hpp>

namespace weldloop {

/// How the search is set.
struct fault_search_settings {
    fault_rates rates = {};        ///< of faults before anything is read
    weldloop::meters meters = {};  ///< errors of readings that state none
    std::size_t most_values = 64;  ///< sums over spans with no more values are exact, others kept in cells of a third
                                   ///< of the reading's deviation
};

/// Finds the part at fault.
///
/// Every part is as described or, at the rate of its kind, in one of the conditions such a part is found in. Of each
/// the distribution of its resistance follows from the bands of its contacts in the loop as described, solved at the
/// currents of the readings (those within a quarter of one another together), what a contact makes more of heat itself
/// included. A reading is the sum over its span with its error, or wrong; spans that hold one another are reckoned
/// exactly (solve/span_sums.hpp): any number of parts may be at fault at once. Temperatures, cold resistances,
/// torques and what is seen weigh the conditions of their own part. Temperatures and cold resistances belong to the
/// station's own current.
/// @param s the station as described @param observations what was found, in any order
/// @param settings rates of faults and errors of meters
/// @throws bad_station_error for a name that is not in the station, is the arc or a junction, or a span that lies in
/// two ways or holds the arc, or the arc of a part that is no gun; no_solution_error for a station that as described
/// has no settled state at any of the currents; not_finite_error and out_of_range_error for what cannot be
/// @par Accuracy
/// the probabilities are those of the model: judged rates, judged bands. Of a joint read at two currents what is poor
/// at one is taken to be as poor at the other.
[[nodiscard]] fault_search locate_fault(const station& s, const std::vector<observation>& observations,
                                        const fault_search_settings& settings = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/field/locate_fault_body.hpp>
#endif
