#pragma once
/// @file
/// What is judged about a clamp and its surface, in one place, with what each judgement does to the answer.

#include <optional>
#include <string>
#include <vector>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/life/clamp_use.hpp>

namespace weldloop {

/// How far a judged number may lie from what was judged.
inline constexpr source judged_ranges{"ranges of judged numbers: the 5 and 95 % points of a surface, both bounds of a "
                                      "law of relaxation; half and double of "
                                      "contacts, seats, sinks and gaps; spring stress 0.1 of the strength, force and "
                                      "section a factor 1.4, surface a factor "
                                      "1.25 either way, emissivity 0.1 to 0.9; wear a tenth and ten times",
                                      "2026",
                                      {},
                                      source_kind::judgement};

/// A clamp with one judged number moved.
struct judged_end {
    std::string value = {};                     ///< the number there, with its unit or as a factor
    fraction grip_left = 1.0;                   ///< at the horizon, typical but for the number
    std::optional<duration> quarter_lost = {};  ///< [s] empty: not within the horizon
};

/// One judged number and what it does to the answer.
struct judged_number {
    std::string what = {};         ///< in words
    const source* from = nullptr;  ///< the judgement
    std::string judged = {};       ///< its value
    judged_end one = {};           ///< at the lower end of its range
    judged_end other = {};         ///< at the upper end
    /// Share of the grip left between both ends and as judged: the largest less the smallest, 0 to 1.
    double effect = 0.0;
};

/// Every judged number of a clamp, its surface and its service with its effect on the answer, the largest first: the
/// typical case marched with that number alone at either end of its range. A number that the clamp does not have is
/// left out. Not in it: published laws and metals; what
/// decides no march (friction under the hung lead, the share that calls for inspection); the lengths of the clamp's
/// pieces; cleaning, drags and wipe.
/// @param use the clamp on its work @throws as grip_over_time() @see judged_ranges
[[nodiscard]] std::vector<judged_number> judged_numbers_of(const clamp_use& use);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/clamp_judgement_body.hpp>
#endif
