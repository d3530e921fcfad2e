#pragma once
/// @file
/// How a clamp's grip changes with time: the result types of grip_over_time().

#include <optional>
#include <string_view>
#include <vector>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// Share of the grip whose loss calls for inspection; see quarter_grip_judgement.
inline constexpr double inspection_loss = 0.25;

/// A clamp at one time of its life.
struct grip_point {
    duration at = {};                      ///< hours of shift since it was put on [s]
    weldloop::force force = {};            ///< [N] on each jaw, warm
    weldloop::resistance resistance = {};  ///< [ohm] clamp and contact at the job's current; 0 if open
    temperature peak_temperature = {};     ///< of the jaws at the end of the on-time
    temperature spring_temperature = {};   ///< of the spring, mean over the duty period; the body's without a spring
    temperature handle_temperature = {};   ///< of what a hand grips, mean over the duty period
    length film = {};                      ///< [m] oxide at the rim of the spots
};

/// What a clamp comes to within a forecast.
enum class grip_outlook {
    holds,     ///< loses less than a quarter of its grip
    declines,  ///< loses a quarter or more, and goes on conducting
    unstable,  ///< finds no steady temperature, destroys its spring, melts its spots, or falls off
};

/// The word for an outlook, as printed.
[[nodiscard]] constexpr std::string_view to_text(grip_outlook outlook)
{
    switch (outlook) {
    case grip_outlook::holds: return "holds";
    case grip_outlook::declines: return "declines";
    case grip_outlook::unstable: return "unstable";
    }
    return "unstable";
}

/// Why a forecast ends where it does.
enum class grip_end {
    horizon,    ///< the hours asked for are over, and the grip was still changing
    settled,    ///< the hours are over, and their last half took less than one in a hundred of the force
    fallen,     ///< less than a tenth of the grip left
    ran_away,   ///< no steady temperature below the tempering of the spring or the melting of the jaws is left
    destroyed,  ///< the spring got hotter than the tempering range of its wire
    worn,       ///< the film has eaten the metal of the spots
};

/// The words for an end, as printed.
[[nodiscard]] constexpr std::string_view to_text(grip_end end)
{
    switch (end) {
    case grip_end::horizon: return "still changing at the end of the hours asked for";
    case grip_end::settled: return "settled";
    case grip_end::fallen: return "grip gone";
    case grip_end::ran_away: return "ran away";
    case grip_end::destroyed: return "spring destroyed";
    case grip_end::worn: return "spots eaten up by film";
    }
    return "ran away";
}

/// What drove the rise of a joint's resistance, as shares that sum to one; all zero if nothing rose.
struct grip_causes {
    fraction force = {};        ///< permanent loss of force
    fraction film = {};         ///< oxide at the spots
    fraction heat = {};         ///< hotter metal and a softer warm spring
    fraction disturbance = {};  ///< knocks and poor re-clamping
};

/// The forecast. Times to a loss are given with their band, never alone.
struct grip_forecast {
    std::vector<grip_point> points = {};      ///< from new to the end of the forecast, typical case
    fraction grip_left = 1.0;                 ///< force at the end over force when the forecast begins, typical, cold
    fraction grip_left_low = 1.0;             ///< the same for the pessimistic case
    std::optional<duration> inspect_by = {};  ///< early end of the band in which a quarter of the grip is gone
    std::optional<band<duration>> quarter_lost =
        {};                         ///< when a quarter of the grip is gone; ends beyond the forecast are its end
    duration horizon = {};          ///< how far the forecast looks [s]; a band's end there means "not before"
    bool runs_away = false;         ///< heat and loss of grip feed each other without settling
    bool spring_destroyed = false;  ///< hotter than the tempering range of its wire
    weldloop::basis basis = {};     ///< sources and left ranges

    std::vector<grip_point> poor_points = {};         ///< the pessimistic case: high resistance, harsher relaxation
    std::vector<grip_point> kind_points = {};         ///< the mild case: low resistance, milder relaxation
    grip_outlook outlook = grip_outlook::holds;       ///< of the typical case
    grip_outlook outlook_poor = grip_outlook::holds;  ///< of the pessimistic case
    grip_end end = grip_end::horizon;                 ///< why the typical case ends
    grip_causes causes = {};                          ///< of the rise of resistance, typical case
    bool jaws_soften = false;   ///< the typical jaws got as hot as their metal's softening temperature
    bool spots_melt = false;    ///< the typical jaws end at the melting drop of their metals: may weld or burn
    duration clock_hours = {};  ///< [s] by the clock: shifts and the rests between them, whole forecast
    duration arc_hours = {};    ///< [s] under current, whole forecast
    /// What a meter reads at the end, typical case, if nothing moves the joint before [ohm]: its spots stay those it
    /// was seated with, see untouched_resistance_factor(). The last of `points` is what it has once it is moved. Empty
    /// where the forecast ends without a joint.
    std::optional<weldloop::resistance> untouched_resistance = {};
};

}  // namespace weldloop
