#pragma once
/// @file
/// What a search for the part at fault answers.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/field/condition_id.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/remedy_id.hpp>

namespace weldloop {

/// A condition that a part at fault may be in.
struct possible_condition {
    std::string condition = {};                    ///< in words
    likelihood share = 0.0;                        ///< of it among the faults of the part
    std::string cure = {};                         ///< what cures it
    condition_id id = condition_id::as_described;  ///< which condition
    std::optional<remedy_id> cure_id = {};         ///< which cure
};

/// A part and what is likely to be wrong with it.
struct suspected_part {
    std::string name = {};             ///< as printed
    likelihood probability = 0.0;      ///< that this part is at fault, whatever else is
    likelihood failing = 0.0;          ///< of that: that it is failing, about to burn or part
    std::string condition = {};        ///< the likeliest of those that the likeliest cure is for, if it is
    likelihood condition_share = 0.0;  ///< of that condition among all it could be in
    weldloop::remedy remedy = {};      ///< the likeliest cure, and the second where that is likely too; that
                                       ///< of a part that may be failing: to open it, before the likeliest
    likelihood cure_share = 0.0;       ///< of the conditions that the likeliest cure is for
    std::vector<possible_condition> conditions = {};  ///< all it could be in, the likeliest first
    bool is_read = false;                             ///< some observation is about it
    weldloop::condition_id condition_id = weldloop::condition_id::as_described;  ///< which condition the likeliest is
    std::optional<remedy_id> second_cure = {};  ///< which the second cure in the remedy's words is, if it names one
};

/// A part stops the job where it is failing by more than this.
inline constexpr source stop_when_failing_judgement{
    "a job is stopped for a part that is failing in one of ten cases: looking costs minutes",
    "2026",
    {},
    source_kind::judgement};
/// Probability, see stop_when_failing_judgement.
inline constexpr double stop_when_failing = 0.1;

/// Whether a part is failing likely enough to stop the job. @param p the part
[[nodiscard]] inline bool may_be_failing(const suspected_part& p)
{
    return static_cast<double>(p.failing) >= stop_when_failing;
}

/// An observation that was not used.
struct unused_observation {
    std::size_t which = 0;  ///< number of the observation, from 0
    std::string what = {};  ///< in words, with the reason
};

/// An observation that hardly fits anything.
struct doubtful_observation {
    std::size_t which = 0;         ///< number of the observation, from 0
    likelihood probability = 0.0;  ///< that it was taken wrongly
    std::string what = {};         ///< in words, with what to check
};

/// What to read, feel or look at.
enum class reading_quantity {
    volts,      ///< across the part under current
    tightness,  ///< of its bolt, screw, plug or spring
    surface,    ///< of its faces, opened with the supply off and locked
    strands,    ///< whether some are missing
    arc,        ///< whether it burns evenly, at a gun
};

/// The word for what is read, as printed.
[[nodiscard]] constexpr std::string_view to_text(reading_quantity q)
{
    switch (q) {
    case reading_quantity::volts: return "volts";
    case reading_quantity::tightness: return "tightness";
    case reading_quantity::surface: return "surface";
    case reading_quantity::strands: return "strands";
    case reading_quantity::arc: return "arc";
    }
    return "";
}

/// The reading that would tell most.
struct next_reading {
    std::string across = {};                              ///< name of the part
    std::string to = {};                                  ///< last part of a span; empty for one part
    reading_quantity quantity = reading_quantity::volts;  ///< what to read
    double bits = 0.0;  ///< [bit] expected information on that part's fault, or of a part
                        ///< likely at fault on its condition
};

/// The answer.
struct fault_search {
    std::vector<suspected_part> parts = {};           ///< in falling probability, all that can be at fault
    likelihood none = 1.0;                            ///< that nothing is at fault
    std::optional<next_reading> next = {};            ///< the next most telling reading; none if none tells anything
    std::vector<doubtful_observation> doubtful = {};  ///< more likely taken wrongly than not
    std::vector<unused_observation> not_judged = {};  ///< what no conclusion was drawn from
    bool crossing = false;                            ///< spans overlap without one holding the other, or were read at
                                                      ///< currents far apart: probabilities take such spans as if they
                                                      ///< had no part in common
    weldloop::basis basis = {};                       ///< sources

    /// Of the parts that may be failing the one likeliest at fault; null: none stops the job.
    [[nodiscard]] const suspected_part* failing_part() const
    {
        const auto first = std::find_if(parts.begin(), parts.end(), may_be_failing);
        return first == parts.end() ? nullptr : &*first;
    }
};

}  // namespace weldloop
