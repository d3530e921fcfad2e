#pragma once
/// @file
/// What a bolt loses of its force after it was tightened: faces bed in, soft metal creeps.

#include <algorithm>
#include <cmath>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Relaxation of a bolted joint.
inline constexpr source bolt_relaxation_judgement{
    "bolted copper loses 5, 10, 20 % of its force in the first hour and 1, 2, 4 % in every decade of hours after it; "
    "aluminium twice that, a conical spring washer halves it",
    "2026", "judgement; 20 to 100 degC, up to 1e5 h; published measurements were not found", source_kind::judgement};

/// What a bolt presses together.
enum class bolted_pair {
    copper_only,     ///< copper or brass
    with_aluminium,  ///< aluminium on at least one side
};

/// Share lost in the first hour; see bolt_relaxation_judgement.
inline constexpr band<double> bolt_bedding{0.05, 0.10, 0.20};
/// Share lost in every decade of hours; see bolt_relaxation_judgement.
inline constexpr band<double> bolt_creep{0.01, 0.02, 0.04};
/// How many times as much aluminium loses; see bolt_relaxation_judgement.
inline constexpr double aluminium_relaxation = 2.0;
/// Share of the loss with a conical spring washer; see bolt_relaxation_judgement.
inline constexpr double spring_washer_relaxation = 0.5;
/// Share of the bedding that comes again when a bedded joint is re-tightened; see bolt_relaxation_judgement.
inline constexpr double bedding_again = 0.5;

/// Share of a bolt's force that is left a time after it was tightened, 1 - a - b log10(1 + t/1 h) for the three points
/// of the scatter, never below zero. At time zero all of it.
/// @param since tightening [s], 0 or above @param pressed what is between head and nut
/// @param spring_washer whether a conical spring washer follows the bedding
/// @param bedded whether the same faces had been tightened before: half of the bedding is done
/// @throws not_finite_error, out_of_range_error @see bolt_relaxation_judgement
[[nodiscard]] inline band<double> bolt_force_left(duration since, bolted_pair pressed = bolted_pair::copper_only,
                                                  bool spring_washer = false, bool bedded = false)
{
    constexpr double hour = 3600.0;
    const double hours = require_not_negative(since, "time since tightening").value() / hour;
    const double worse = (pressed == bolted_pair::with_aluminium ? aluminium_relaxation : 1.0) *
                         (spring_washer ? spring_washer_relaxation : 1.0);
    const double begun = std::min(1.0, hours) * (bedded ? bedding_again : 1.0);
    const double decades = std::log10(1.0 + hours);
    const auto left = [&](double bedding, double creep) {
        return std::max(0.0, 1.0 - worse * (bedding * begun + creep * decades));
    };
    return {left(bolt_bedding.high, bolt_creep.high), left(bolt_bedding.typical, bolt_creep.typical),
            left(bolt_bedding.low, bolt_creep.low)};
}

}  // namespace weldloop
