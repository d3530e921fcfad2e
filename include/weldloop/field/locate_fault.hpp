#pragma once
/// @file
/// From everything found out on the spot to the part at fault, how sure that is, and what to read next.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/field/fault_rates.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// How readings are judged.
inline constexpr source fault_search_model{
    "parts at fault or not, each by itself; resistances by the library's own bands; a reading is taken wrongly (probe, "
    "range, name, unit) in two of a hundred, and then says nothing; what the eye or hand finds is right in nine of ten",
    "2026",
    {},
    source_kind::judgement};
/// Share of readings that are taken wrongly; see fault_search_model.
inline constexpr double misread_share = 0.02;
/// Share of what the eye or hand finds that is right; see fault_search_model.
inline constexpr double seen_right_share = 0.9;

/// A part and what is likely to be wrong with it.
struct suspected_part {
    std::string name = {};             ///< as printed
    likelihood probability = 0.0;      ///< that this part is at fault, whatever else is
    std::string condition = {};        ///< the likeliest of those it could be in if it is
    likelihood condition_share = 0.0;  ///< of that condition among them
    weldloop::remedy remedy = {};      ///< what cures that condition
    bool is_read = false;              ///< some observation is about it
};

/// An observation that hardly fits anything.
struct doubtful_observation {
    std::size_t which = 0;         ///< number of the observation, from 0
    likelihood probability = 0.0;  ///< that it was taken wrongly
    std::string what = {};         ///< in words, with what to check
};

/// What a reading is of.
enum class reading_quantity {
    volts,  ///< across the part under current
};

/// The word for what a reading is of, as printed.
[[nodiscard]] constexpr std::string_view to_text(reading_quantity)
{
    return "volts";
}

/// The reading that would tell most.
struct next_reading {
    std::string across = {};                              ///< name of the part
    std::string to = {};                                  ///< last part of a span; empty for one part
    reading_quantity quantity = reading_quantity::volts;  ///< what to read
    double bits = 0.0;                                    ///< expected information on that part's fault
};

/// The answer.
struct fault_search {
    std::vector<suspected_part> parts = {};           ///< in falling probability, all that can be at fault
    likelihood none = 1.0;                            ///< that nothing is at fault
    std::optional<next_reading> next = {};            ///< the next most telling reading; none if none tells anything
    std::vector<doubtful_observation> doubtful = {};  ///< more likely taken wrongly than not
    bool crossing = false;                            ///< spans overlap without one holding the other: probabilities
                                                      ///< take such spans as if they had no part in common
    weldloop::basis basis = {};                       ///< sources
};

/// How the search is set.
struct fault_search_settings {
    fault_rates rates = {};        ///< of faults before anything is read
    weldloop::meters meters = {};  ///< errors of readings that state none
};

/// Finds the part at fault.
///
/// Every part is as described or, at the rate of its kind, in one of the conditions such a part is found in. Of each
/// the distribution of its resistance follows from the bands of its contacts in the loop as described, solved once at
/// the mean current of the readings, what a contact makes more of heat itself included. A reading is the sum over its
/// span with its error, or wrong; spans that hold one another are reckoned exactly (solve/span_sums.hpp): any number of
/// parts may be at fault at once. Temperatures, cold resistances, torques and what is seen weigh the conditions of
/// their own part.
/// @param s the station as described @param observations what was found, in any order
/// @param settings rates of faults and errors of meters
/// @throws bad_station_error for a name that is not in the station, is the arc or a junction, or a span that lies in
/// two ways or holds the arc; no_solution_error for a station that as described has no settled state; not_finite_error
/// and out_of_range_error for what cannot be
/// @par Accuracy
/// the probabilities are those of the model: judged rates, judged bands. Currents of readings are taken to be alike: a
/// joint near its softening drop has another resistance at another current.
[[nodiscard]] fault_search locate_fault(const station& s, const std::vector<observation>& observations,
                                        const fault_search_settings& settings = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/field/locate_fault_body.hpp>
#endif
