#pragma once
/// @file
/// The one unit of a program whose other units define WELDLOOP_BODIES_APART includes this file, and nothing else of
/// the library: the answers to the questions that the others only see declared are compiled there.

#ifdef WELDLOOP_BODIES_APART
#undef WELDLOOP_BODIES_APART  // here they are wanted
#endif

#include <weldloop/weldloop.hpp>

namespace weldloop::detail {

using any_function = void (*)();

template <class Result, class... Arguments>
any_function kept(Result (*question)(Arguments...))
{
    return reinterpret_cast<any_function>(question);
}

/// A function nobody in this unit calls leaves no code behind; one whose address is taken does.
[[gnu::used]] static const any_function kept_bodies[] = {
    kept(&solve_loop),
    kept(&assess),
    kept(&remedies_for),
    kept(&diagnose),
    kept(&locate_fault),
    kept<grip_forecast, const clamp_use&>(&grip_over_time),
    kept<grip_forecast, const work_connection&, const cable&, const load&, const surroundings&, duration,
         const grip_service&>(&grip_over_time),
    kept(&grip_in_station),
    kept(&hours_to_loss),
    kept(&grip_threshold_of),
    kept(&grip_derating_of),
    kept(&largest_clamp_current),
    kept(&grip_map_of),
    kept(&largest_clamp_duty),
    kept(&compare_grip),
    kept(&magnet_grip_of),
    kept(&joints_over_time),
    kept(&largest_magnet_current),
    kept(&operating_point_of),
    kept(&arc_hold_of),
    kept(&arc_line_of),
    kept(&arc_length_of),
    kept(&burn_off_of),
    kept(&cost_of_lost_volts),
    kept(&clamp_life_of),
    kept(&station_life_of),
    kept(&job_card_of),
    kept(&answers_of),
    kept(&compare_clamp_lives),
    kept(&judged_numbers_of)};

}  // namespace weldloop::detail
