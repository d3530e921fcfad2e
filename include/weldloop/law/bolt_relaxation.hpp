#pragma once
/// @file
/// What a bolt or a clamp's screw loses of its force after it was tightened: faces bed in, soft metal creeps, the
/// faster the hotter it is. One law for tables of times and for marches through changing temperatures.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// Relaxation of a bolted joint.
inline constexpr source bolt_relaxation_judgement{
    "bolted copper beds in by 5, 10, 20 % of its force in the first hour and settles by 1, 2, 4 % at 20 degC in every "
    "decade of hours; hotter in proportion to 1/(softening temperature - temperature), up to where a "
    "metal that softens holds nothing after an hour, as long as it takes to anneal; aluminium twice that, a conical "
    "spring washer halves it, the frame of a screw clamp, which gives "
    "four to five times as far as a bolt, leaves a fifth",
    "2026", "judgement; up to 1e5 h; published measurements were not found", source_kind::judgement};

/// What a bolt presses together.
enum class bolted_pair {
    copper_only,     ///< copper or brass
    with_aluminium,  ///< aluminium on at least one side
};

/// What follows the faces when they bed in.
enum class bolt_follower {
    bolt,           ///< the stretched bolt alone
    spring_washer,  ///< a conical spring washer under it
    screw_frame,    ///< the bent frame of a screw clamp
};

/// Whether the faces of a bolted joint have been pressed together before.
enum class bolted_faces {
    fresh,   ///< never
    bedded,  ///< tightened before: half of the bedding is done
};

/// A joint under a bolt or a screw, as it settles.
struct bolted_joint {
    bolted_pair pressed = bolted_pair::copper_only;     ///< what is pressed
    bolt_follower follower = bolt_follower::bolt;       ///< what follows
    bolted_faces faces = bolted_faces::fresh;           ///< their past
    temperature softening = annealed_copper.softening;  ///< where the softer metal softens, above 20 degC
};

/// The joint of two metals as it settles under a stiff bolt. Of a coat it is the copper under it that carries the
/// force.
/// @param one, other the metals that are pressed
[[nodiscard]] inline bolted_joint bolted_joint_of(const metal& one, const metal& other)
{
    const auto softening = [](const metal& m) { return coat_melting_of(m) ? annealed_copper.softening : m.softening; };
    return {.pressed = one == aluminium || other == aluminium ? bolted_pair::with_aluminium : bolted_pair::copper_only,
            .softening = std::min(softening(one), softening(other))};
}

/// Share lost in the first hour; see bolt_relaxation_judgement.
inline constexpr band<double> bolt_bedding{0.05, 0.10, 0.20};
/// Share lost in every decade of hours at 20 degC; see bolt_relaxation_judgement.
inline constexpr band<double> bolt_creep{0.01, 0.02, 0.04};
/// Factor by which aluminium loses more; see bolt_relaxation_judgement.
inline constexpr double aluminium_relaxation = 2.0;
/// Share of the loss with a conical spring washer; see bolt_relaxation_judgement.
inline constexpr double spring_washer_relaxation = 0.5;
/// Share of the loss in the frame of a screw clamp; see bolt_relaxation_judgement. The frame of the 300 A clamp bends
/// by 0.2 mm under its screw, a bolt M10 of 20 mm stretches by 0.045 mm.
inline constexpr double screw_frame_relaxation = 0.2;
/// Share of the bedding that comes again when a bedded joint is re-tightened; see bolt_relaxation_judgement.
inline constexpr double bedding_again = 0.5;
/// Pace of a metal that has softened, 0.9/(0.02 log10(2)) [1]: a stiff bolt has nothing left after an hour. Softening
/// temperatures are those of an hour's annealing (memory), and no metal softens at once.
inline constexpr double softened_pace = 149.5;

/// How fast a joint settles at a temperature over how fast it does at 20 degC, (Ts - 20 degC)/(Ts - T) [1]: it grows
/// without a step towards the softening temperature Ts; just below it reaches softened_pace and stays.
/// @param t of the joint @param softening Ts, above 20 degC
/// @throws out_of_range_error @see bolt_relaxation_judgement
[[nodiscard]] inline double settling_pace(temperature t, temperature softening)
{
    const double range = (softening - reference_temperature).value();
    if (!(range > 0.0))
        throw out_of_range_error("softening temperature", number_text(softening.in_celsius(), 5) + " degC",
                                 "above 20 degC");
    const double below = (softening - t).value();
    return below > range / softened_pace ? range / below : softened_pace;
}

namespace detail {
inline void require_pace(double pace)
{
    if (!(require_within(pace, 0.0, softened_pace, "pace of settling") > 0.0))
        throw out_of_range_error("pace of settling", "0", "above zero");
}
}  // namespace detail

/// Decades of settling after a further time at one pace, p log10(10^(c/p) + t/1 h) [1]: the time at this pace that
/// would have led to the decades reached, and as much more.
/// @param reached decades c so far [1], 0 to 1e12
/// @param pace p [1], above 0 to softened_pace, see settling_pace()
/// @param further time [s], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double settled_decades(double reached, double pace, duration further)
{
    detail::require_pace(pace);
    require_within(reached, 0.0, 1e12, "decades of settling");
    const double hours = require_not_negative(further, "time since tightening").value() / detail::seconds_per_hour;
    return reached + pace / std::numbers::ln10 * std::log1p(hours * std::pow(10.0, -reached / pace));
}

/// Speed of settled_decades(), p/(ln 10) 10^(-c/p) per hour [1/s].
/// @param reached decades c [1], any @param pace p [1], above 0 to softened_pace
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double settling_rate(double reached, double pace)
{
    detail::require_pace(pace);
    require_finite(reached, "decades of settling");
    return require_finite(pace / (std::numbers::ln10 * detail::seconds_per_hour) * std::pow(10.0, -reached / pace),
                          "speed of settling");
}

/// Factor of what a joint loses over what a stiff bolt on copper does. @param joint the joint
[[nodiscard]] constexpr double relaxation_factor(const bolted_joint& joint)
{
    const double soft = joint.pressed == bolted_pair::with_aluminium ? aluminium_relaxation : 1.0;
    switch (joint.follower) {
    case bolt_follower::bolt: return soft;
    case bolt_follower::spring_washer: return soft * spring_washer_relaxation;
    case bolt_follower::screw_frame: return soft * screw_frame_relaxation;
    }
    return soft;
}

/// Share of a bolt's force that is left, 1 - k (a t/1 h + b c), t at most an hour and k relaxation_factor(); never
/// below zero. At time zero all of it.
/// @param since tightening [s], 0 or above @param decades c [1], see settled_decades(), 0 to 1e12
/// @param joint what settles @return at the three points of the scatter, the worst first
/// @throws not_finite_error, out_of_range_error @see bolt_relaxation_judgement
[[nodiscard]] inline band<double> bolt_force_left(duration since, double decades, const bolted_joint& joint)
{
    const double hours = require_not_negative(since, "time since tightening").value() / detail::seconds_per_hour;
    const double begun = std::min(1.0, hours) * (joint.faces == bolted_faces::bedded ? bedding_again : 1.0);
    const auto left = [&](double bedding, double creep) {
        return std::max(0.0, 1.0 - relaxation_factor(joint) * (bedding * begun + creep * decades));
    };
    return {left(bolt_bedding.high, bolt_creep.high), left(bolt_bedding.typical, bolt_creep.typical),
            left(bolt_bedding.low, bolt_creep.low)};
}

/// The same share of a joint that has been at one temperature since it was tightened.
/// @param since tightening [s], 0 or above @param at temperature @param joint what settles
/// @throws not_finite_error, out_of_range_error @see settling_pace()
[[nodiscard]] inline band<double> bolt_force_left(duration since, temperature at, const bolted_joint& joint)
{
    return bolt_force_left(since, settled_decades(0.0, settling_pace(at, joint.softening), since), joint);
}

/// The same share at 20 degC, 1 - k (a t/1 h + b log10(1 + t/1 h)).
/// @param since tightening [s], 0 or above @param joint what settles
/// @throws not_finite_error, out_of_range_error @see bolt_relaxation_judgement
[[nodiscard]] inline band<double> bolt_force_left(duration since, const bolted_joint& joint = {})
{
    return bolt_force_left(since, reference_temperature, joint);
}

}  // namespace weldloop
