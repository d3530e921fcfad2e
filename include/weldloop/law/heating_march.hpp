#pragma once
/// @file
/// Temperatures of a covered conductor after a single shot of current or while it cools, marched in time.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/law/heat_modes.hpp>
#include <weldloop/law/heating_segment.hpp>

namespace weldloop {

/// How the equations are marched.
inline constexpr source exponential_steps{
    "exponential steps of the linear problem, surface law by its tangent at the start of each step",
    {},
    "derived; second order, step by halving; compared with the classical Runge-Kutta rule in tests/law",
    source_kind::derived};

namespace detail {

/// Marches a covered conductor under one current. The path is a chain of exponential pieces, continuous, two to a step.
class heating_march {
public:
    heating_march(const covered_conductor& conductor, const cable_surface& surface, current through,
                  const conductor_profile& start)
        : conductor_(conductor), surface_(surface), air_(surface_.air()), coldest_(air_),
          heat_(require_not_negative(through, "current").value() * through.value() * conductor_.resistance),
          state_{y_of(start.conductor, 0), y_of(start.within[0], 1), y_of(start.within[1], 2), y_of(start.within[2], 3),
                 y_of(start.surface, surface_point)}
    {
        for (std::size_t i = 0; i < covering_points; ++i)
            coldest_ = std::min(coldest_, air_ + state_[i] / conductor_.root_heat[i]);
        const double slope = surface_.slope(std::max(start.surface.in_kelvin(), air_ + first_rise));
        slow_time_ = conductor_.whole_heat * (1.0 / conductor_.conductance + 1.0 / slope);
        step_ = first_share * slow_time_;
    }

    [[nodiscard]] conductor_profile now() const
    {
        const auto at = [this](std::size_t i) {
            return temperature::kelvin(std::max(air_ + state_[i] / conductor_.root_heat[i], coldest_));
        };
        return {at(0), {at(1), at(2), at(3)}, at(surface_point)};
    }
    [[nodiscard]] double elapsed() const { return elapsed_; }    // s
    [[nodiscard]] bool has_settled() const { return settled_; }  // nothing moves any more

    /// One step of at most `most` seconds, as long as the error allows.
    void advance(double most)
    {
        const line at_start = line_at(state_);
        for (double h = std::min(step_, most);;) {
            if (++steps_ > most_steps || !(h > 0.0)) fail();
            bool is_good = !mode_times::overflows(at_start.modes, h);
            double error = 0.0, moved = 0.0, rise = 0.0;
            point_values end{};
            if (is_good) {
                first_ = piece(at_start, state_, 0.5 * h);
                const point_values middle = first_.end();
                second_ = piece(line_at(middle), middle, 0.5 * h);
                const point_values at_once = piece(at_start, state_, h).end();
                end = second_.end();
                is_good = !mode_times::overflows(second_.modes, 0.5 * h);
                for (std::size_t i = 0; i < covering_points; ++i) {
                    // of a second-order rule: two halves leave a quarter of the error of the whole
                    error = std::max(error, std::fabs(end[i] - at_once[i]) / (3.0 * conductor_.root_heat[i]));
                    moved = std::max(moved, std::fabs(end[i] - state_[i]) / conductor_.root_heat[i]);
                    rise = std::max(rise, std::fabs(state_[i]) / conductor_.root_heat[i]);
                    is_good = is_good && std::isfinite(end[i]) && std::isfinite(at_once[i]);
                }
            }
            const double allowed = step_error + step_error_of_rise * rise;
            const double change =
                is_good ? std::clamp(0.9 * std::cbrt(allowed / std::max(error, 1e-300)), least_change, most_change)
                        : least_change;
            if (is_good && error <= allowed) {
                settled_ = moved <= rest_of_rise * (1.0 + rise) && h >= first_share * slow_time_;
                state_ = end;
                elapsed_ += h;
                step_ = h * change;
                return;
            }
            h *= std::min(change, 0.5);
            step_ = h;
        }
    }

    /// The first time within the step just made at which the conductor is at a temperature [K], from below or above;
    /// seconds from the start of the march. None where it is not.
    [[nodiscard]] std::optional<double> conductor_passes(double wanted) const
    {
        const double level = (wanted - air_) * conductor_.root_heat[0];
        double from = elapsed_ - first_.path.time - second_.path.time;
        for (const piece* p : {&first_, &second_}) {
            const point_path path(p->modes, p->path, 0);
            const auto off = [&](double t) { return path.at(t) - level; };
            const point_path::turnings turns = path.turns(p->times, true);
            double begin = 0.0, before = path.begin() - level;
            if (before == 0.0) return from;
            for (std::size_t i = 0; i <= turns.count; ++i) {
                const bool is_last = i == turns.count;
                const double to = is_last ? p->path.time : turns.at[i], after = is_last ? path.end() - level : off(to);
                if ((before < 0.0) != (after < 0.0)) {
                    if (!((off(begin) < 0.0) != (off(to) < 0.0))) return from + to;  // equal but for rounding
                    return from + root_between(off, begin, to, "time to a temperature");
                }
                begin = to;
                before = after;
            }
            from += p->path.time;
        }
        return std::nullopt;
    }

private:
    static constexpr int most_steps = 5000;                         // takes 20 to 200
    static constexpr double first_rise = 20.0;                      // K, a lead at work
    static constexpr double first_share = 0.01;                     // of the time constant: the first step
    static constexpr double step_error = 5e-5;                      // K in a step
    static constexpr double step_error_of_rise = 1e-6;              // of the rise, where that is more
    static constexpr double least_change = 0.1, most_change = 4.0;  // of the step
    static constexpr double rest_of_rise = 1e-11;                   // movement in a step that counts as none

    /// The linear problem at a state: the surface law's tangent and the heat of the current.
    struct line {
        symmetric_modes modes;
        point_values drive;
    };

    struct piece {
        symmetric_modes modes;
        mode_times times;
        mode_path path;

        piece() = default;
        piece(const line& of, const point_values& y, double t)
            : modes(of.modes), times(modes, t), path(modes, times, modes.to_modes(y), of.drive)
        {
        }
        [[nodiscard]] point_values end() const { return modes.from_modes(path.finish); }
    };

    [[nodiscard]] double y_of(const temperature& t, std::size_t point) const
    {
        return (t.in_kelvin() - air_) * conductor_.root_heat[point];
    }

    [[nodiscard]] line line_at(const point_values& y) const
    {
        // a sudden heat makes the polynomial over the covering dip below what is around for a moment; nothing does that
        const double at = std::max(air_ + y[surface_point] / conductor_.root_heat[surface_point], coldest_);
        const value_and_slope given = surface_.line_at(at);
        const double loss = given.value - surface_.sun_per_length(), slope = given.slope;
        const bool is_molten = air_ + y[0] / conductor_.root_heat[0] >= conductor_.melting;
        const double above = (is_molten ? conductor_.melting : air_) - reference_temperature.in_kelvin();
        line out;
        out.modes = modes_of(conductor_, is_molten ? 0.0 : heat_ * conductor_.alpha, slope);
        point_values drive{};
        drive[0] = heat_ * (1.0 + conductor_.alpha * above) / conductor_.root_heat[0];
        drive[surface_point] = (slope * (at - air_) - loss) / conductor_.root_heat[surface_point];
        out.drive = out.modes.to_modes(drive);
        return out;
    }

    [[noreturn]] void fail() const
    {
        throw no_solution_error("temperature in time",
                                "not followed beyond " + number_text(elapsed_) + " s in the bounded number of steps",
                                "a current and a time that can be followed");
    }

    conductor_numbers conductor_;
    surface_kernel surface_;
    double air_, coldest_, heat_;  // K, K, W/m at 20 degC
    double slow_time_ = 0.0, step_ = 0.0, elapsed_ = 0.0;
    int steps_ = 0;
    bool settled_ = false;
    point_values state_;
    piece first_, second_;
};

}  // namespace detail

/// Temperatures of a covered conductor after a current has flowed for a time, from any start.
///
/// The equations of periodic_heating_of(), marched once: in each step q is replaced by its tangent at the start of the
/// step and the linear problem solved exactly. Two halves of a step stand for the step; its error is a third of what
/// they differ from the whole by, and is kept below 5e-5 K (1e-6 of the rise where that is more). Steps grow as the
/// lead settles, so that a time of years takes no more work than one of hours.
///
/// Accuracy: within 0.01 K (1e-4 of the rise) of the equations (tests/law); of a covering of 200 rings within 0.05 K
/// (tests/circuit). Above the melting point the resistance is held: the number then only says "far too hot".
/// Degenerate cases: no time returns the start; no current cools towards the air, in the sun to what the sun holds.
/// @param conductor one metre of it @param surface and what is around it @param through current and time [s], 0 or
/// above
/// @param start the temperatures at time zero
/// @throws not_finite_error, out_of_range_error; no_solution_error for currents so large that numbers overflow
[[nodiscard]] inline conductor_profile profile_after(const covered_conductor& conductor, const cable_surface& surface,
                                                     const heating_segment& through, const conductor_profile& start)
{
    const duration time = require_not_negative(through.duration, "time");
    detail::heating_march march(conductor, surface, through.current, start);
    if (time.value() == 0.0) return start;
    // what is left is less than rounding once the time is used up
    constexpr double rounding = 1e-14;
    while (!march.has_settled() && time.value() - march.elapsed() > rounding * time.value())
        march.advance(time.value() - march.elapsed());
    return march.now();
}

/// A way from a state to a temperature of the conductor.
struct conductor_passage {
    conductor_profile start;  ///< the temperatures at time zero
    temperature wanted;       ///< of the conductor, above or below its start
};

/// The first time at which the conductor is at a temperature, from below or from above, under a current that stays.
///
/// Marched as in profile_after(); the passage is found within the exponential pieces, turning points included. The
/// march ends when nothing moves any more (1e-11 of the rise in a step): a temperature that close to the steady one
/// counts as never reached.
/// @param conductor one metre of it @param surface and what is around it @param through I [A], 0 or above
/// @param passage from where to which temperature of the conductor
/// @return [s], 0 where the start has it; none where it is never reached
/// @throws not_finite_error, out_of_range_error; no_solution_error for currents so large that numbers overflow
[[nodiscard]] inline std::optional<duration> time_to_conductor(const covered_conductor& conductor,
                                                               const cable_surface& surface, current through,
                                                               const conductor_passage& passage)
{
    detail::heating_march march(conductor, surface, through, passage.start);
    if (passage.start.conductor == passage.wanted) return duration{};
    while (!march.has_settled()) {
        march.advance(std::numeric_limits<double>::max());
        if (const std::optional<double> at = march.conductor_passes(passage.wanted.in_kelvin()))
            return in_si<duration>(*at);
    }
    return std::nullopt;
}

/// Time in which a small departure from a steady state dies away to 1/e: the slowest mode with the slope of the surface
/// law, without current. The faster modes, heat going from conductor into covering, are over in a tenth of it.
///
/// A whole warming does not follow one exponential: the surface gives off more per kelvin when it is hot.
/// Accuracy: 3e-4 of what the tangent gives where the surface law has no step (tests/oracle/digits).
/// @param conductor one metre of it @param surface and what is around it @param at temperature of the surface, where
/// the slope is taken, over a twentieth of the rise and 0.02 K to either side
/// @return [s]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration time_constant_of(const covered_conductor& conductor, const cable_surface& surface,
                                               temperature at)
{
    const detail::conductor_numbers numbers(conductor);
    const detail::surface_kernel kernel(surface);
    return require_finite(
        in_si<duration>(-1.0 / detail::modes_of(numbers, 0.0, kernel.slope(at.in_kelvin())).fastest_growth()),
        "time constant of the conductor");
}

}  // namespace weldloop
