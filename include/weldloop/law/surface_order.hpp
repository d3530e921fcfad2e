#pragma once
/// @file
/// How sure it is that one surface is better than another.

#include <weldloop/core/fraction.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Probability that a joint with the first surface has less resistance than one with the second, between the same
/// metals at the same force, from the bands of both states (judgement, so this is too).
///
/// Clean is better than light rust in 94 of 100 pairs, better than light oxide in 79; unbroken paint loses against
/// everything, and against itself nobody wins: one half.
/// @param first one state @param second the other
/// @see probability_smaller(), surface_state_judgement
[[nodiscard]] inline likelihood probability_better(surface_state first, surface_state second)
{
    const auto one = resistance_multiplier(first), other = resistance_multiplier(second);
    if (!one || !other) return !one && !other ? 0.5 : one ? 1.0 : 0.0;
    return probability_smaller(*one, *other);
}

}  // namespace weldloop
