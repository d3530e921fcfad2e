#pragma once
/// @file
/// How a clamp is used: shifts and rests, openings, knocks, cleaning, tightening, and the heat of the work.

#include <optional>
#include <utility>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// @name Sources of what service does
/// @{

/// Opening a clamp and closing it again.
inline constexpr source reclamping_judgement{"opening and clamping again gives new spots without film and undoes "
                                             "knocks, if the jaws wipe far enough as they close; each opening wears "
                                             "two millionths of the force away",
                                             "2026",
                                             {},
                                             source_kind::judgement};
/// Knocks.
inline constexpr source knock_judgement{
    "a knock shifts the jaws on their spots: 2 % more contact resistance until the clamp is opened or cleaned",
    "2026",
    {},
    source_kind::judgement};
/// Wiping.
inline constexpr source wiping_measured{
    "wiping of copper contacts under 1 N (abstract)", "1970s-80s",
    "0.025 mm or more generally gives low resistance, less is often worse than none; taken for the jaws of clamps",
    source_kind::paper};
/// Dragging.
inline constexpr source dragging_judgement{
    "a pull of the lead that drags the clamp over the work is a knock to its spots and wears like five openings",
    "2026",
    {},
    source_kind::judgement};
/// Off the work.
inline constexpr source loaded_time_rule{
    "Copper Development Association, connector design guide", "undated",
    "only time under load counts: 30 % in 5 years take 15 where it is loaded a third of the time; for steel springs, "
    "which stay bent off the work, that time counts at the temperature of the air",
    source_kind::handbook};
/// Cleaning.
inline constexpr source cleaning_judgement{
    "cleaning the jaws takes off all film that has grown and undoes knocks; a spring that has set stays so",
    "2026",
    {},
    source_kind::judgement};
/// @}

/// Share of the force that one opening wears away; see reclamping_judgement.
inline constexpr double wear_of_an_opening = 2e-6;
/// Share of contact resistance that one knock adds; see knock_judgement.
inline constexpr double knock_rise = 0.02;
/// Number of openings that wear as one drag does; see dragging_judgement.
inline constexpr double openings_of_a_drag = 5.0;
/// Least travel of the jaws on the work that cleans them; see wiping_measured.
inline constexpr length cleaning_wipe = in_si<length>(25e-6);

/// Whether a joint moves as its force goes.
enum class clamp_motion {
    moves,  ///< it breathes with heat, is knocked or clamped anew: its resistance is that of the force left
    still,  ///< nothing moves it: it keeps the resistance it was seated with, see untouched_resistance_factor()
};

/// How a clamp is used. Every length of time but `rest` is in hours of shift: the clock while people work, arc on or
/// off.
struct grip_service {
    duration shift = in_si<duration>(8.0 * 3600.0);  ///< [s] of one shift, above 0
    duration rest = {};                          ///< [s] by the clock between two shifts, 0 or above; the clamp stays
                                                 ///< on the work, at the temperature of the air
    double openings = 0.0;                       ///< number in a shift, 0 to 10000
    double knocks = 0.0;                         ///< number in a shift, 0 to 10000
    std::optional<duration> clean_every = {};    ///< hours of shift between two cleanings [s], above 0
    std::optional<duration> tighten_every = {};  ///< hours of shift between two tightenings of a screw or bolt [s],
                                                 ///< above 0; a spring minds none
    bool film = true;  ///< follow the oxide of copper at the spots, where jaw or work have copper; without it, or
                       ///< between steel and steel, their metal stays as it is
    std::optional<temperature> interpass = {};  ///< of the work at the clamp during the shift; its preheat otherwise
    double drags = 0.0;                 ///< number in a shift, 0 to 10000: the lead pulls the clamp over the work
    fraction on_work = 1.0;             ///< share of the shift on the work, above 0; else it hangs closed and cold
    length wipe = in_si<length>(1e-4);  ///< [m] the jaws slide on the work as they close, 0 or above; what is less than
                                        ///< cleaning_wipe takes no film off
    std::optional<length> widest_opening = {};  ///< [m] 0 or above, the jaws are pulled to at the first opening: beyond
                                                ///< clamp_travel_of() the spring takes a set there; empty: not that far
    clamp_motion motion = clamp_motion::moves;  ///< still only where nothing opens, knocks, drags or cleans it
};

/// Highest number of cleanings and tightenings a forecast follows; more often than that is a habit of every clamping.
inline constexpr double most_service_events = 1000.0;

/// Time by the clock that holds a time of shift, t (1 + rest/shift) [s].
/// @param in_shift hours of shift [s], 0 or above @param service shifts and rests
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration clock_hours(duration in_shift, const grip_service& service)
{
    require_not_negative(in_shift, "hours of shift");
    require_positive(service.shift, "shift");
    require_not_negative(service.rest, "rest between shifts");
    return require_finite(duration(in_shift * (1.0 + (service.rest / service.shift).value())), "hours by the clock");
}

/// Time under current within a time of shift, t x duty [s].
/// @param in_shift hours of shift [s], 0 or above @param duty of the job
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration arc_hours(duration in_shift, const duty_cycle& duty)
{
    return require_not_negative(in_shift, "hours of shift") * static_cast<double>(duty.share());
}

/// Hours of shift that hold a time under current, t/duty [s].
/// @param under_current [s], 0 or above @param duty of the job
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration shift_hours_of_arc(duration under_current, const duty_cycle& duty)
{
    return require_finite(
        duration(require_not_negative(under_current, "arc hours") / static_cast<double>(duty.share())),
        "hours of shift");
}

namespace detail {
inline void require_service(const grip_service& s, duration horizon)
{
    constexpr double most_a_shift = 1e4;
    static_cast<void>(clock_hours({}, s));
    require_within(s.openings, 0.0, most_a_shift, "openings in a shift");
    require_within(s.knocks, 0.0, most_a_shift, "knocks in a shift");
    require_within(s.drags, 0.0, most_a_shift, "drags in a shift");
    require_not_negative(s.wipe, "wipe of the jaws");
    if (!(static_cast<double>(s.on_work) > 0.0))
        throw out_of_range_error("share of the shift on the work", "0", "above zero: off the work nothing is gripped");
    if (s.widest_opening) require_not_negative(*s.widest_opening, "widest opening");
    const bool touched = s.openings > 0.0 || s.knocks > 0.0 || s.drags > 0.0 || s.clean_every.has_value();
    if (s.motion == clamp_motion::still && touched)
        throw out_of_range_error("motion of the joint", "still",
                                 "moves: what is opened, knocked, dragged or cleaned does not stay untouched");
    for (const auto& [every, what] :
         {std::pair{s.clean_every, "time between cleanings"}, std::pair{s.tighten_every, "time between tightenings"}})
        if (every) require_within(*every, horizon / most_service_events, in_si<duration>(1e12), what);
}
}  // namespace detail

}  // namespace weldloop
