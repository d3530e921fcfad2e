#pragma once
/// @file
/// Temperatures of a covered conductor after a single shot of current or while it cools, marched in time.

#include <algorithm>
#include <array>
#include <cmath>
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
#include <weldloop/law/periodic_heating.hpp>

namespace weldloop {

/// How the two stores are marched.
inline constexpr source exponential_steps{
    "exponential steps of the linear problem, surface law by its tangent at the start of each step",
    {},
    "derived; second order, step by halving; compared with the classical Runge-Kutta rule in tests/law",
    source_kind::derived};

/// The two temperatures that describe a lead at a moment.
struct store_temperatures {
    temperature conductor;  ///< of the strands
    temperature surface;    ///< of the covering

    /// Both the same, as of a lead that has lain long enough: store_temperatures::even(where.air).
    [[nodiscard]] static store_temperatures even(temperature both) { return {both, both}; }
};

namespace detail {

/// Marches the two stores under one current. The path is a chain of exponential pieces, continuous, two to a step.
class store_march {
public:
    store_march(const two_stores& stores, const cable_surface& surface, current through,
                const store_temperatures& start)
        : surface_(surface), air_(surface_.air()),
          inner_(require_positive(stores.inner, "heat capacity of the conductor").value()),
          outer_(require_positive(stores.outer, "heat capacity of the covering").value()),
          between_(require_positive(stores.between, "conductance of the covering").value()),
          root_inner_(std::sqrt(inner_)), root_outer_(std::sqrt(outer_)),
          heat_(require_not_negative(through, "current").value() * through.value() *
                require_positive(stores.resistance, "resistance per length").value()),
          alpha_(require_finite(stores.temperature_coefficient, "temperature coefficient").value()),
          melting_(stores.melting.in_kelvin()), state_{(start.conductor.in_kelvin() - air_) * root_inner_,
                                                       (start.surface.in_kelvin() - air_) * root_outer_}
    {
        const double slope = surface_.slope(std::max(start.surface.in_kelvin(), air_ + first_rise));
        slow_time_ = (inner_ + outer_) * (1.0 / between_ + 1.0 / slope);
        step_ = first_share * slow_time_;
    }

    [[nodiscard]] double conductor() const { return air_ + state_[0] / root_inner_; }  // K
    [[nodiscard]] double surface() const { return air_ + state_[1] / root_outer_; }    // K
    [[nodiscard]] double elapsed() const { return elapsed_; }                          // s
    [[nodiscard]] bool has_settled() const { return settled_; }                        // nothing moves any more

    /// One step of at most `most` seconds, as long as the error allows.
    void advance(double most)
    {
        for (double h = std::min(step_, most);;) {
            if (++steps_ > most_steps || !(h > 0.0)) fail();
            segment_modes whole = piece_of(state_, h);
            first_ = piece_of(state_, 0.5 * h);
            bool is_good = !whole.overflows() && !first_.overflows();
            double error = 0.0, moved = 0.0;
            std::array<double, 2> end{};
            if (is_good) {
                second_ = piece_of(first_.end(), 0.5 * h);
                end = second_.end();
                const std::array<double, 2> at_once = whole.end();
                error = std::max(std::fabs(end[0] - at_once[0]) / root_inner_,
                                 std::fabs(end[1] - at_once[1]) / root_outer_) /
                        3.0;  // of a second-order rule: two halves leave a quarter of the error of the whole
                moved =
                    std::max(std::fabs(end[0] - state_[0]) / root_inner_, std::fabs(end[1] - state_[1]) / root_outer_);
                is_good = !second_.overflows() && std::isfinite(error) && std::isfinite(moved);
            }
            const double rise = std::max(std::fabs(state_[0]) / root_inner_, std::fabs(state_[1]) / root_outer_);
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
        const double level = (wanted - air_) * root_inner_;
        double from = elapsed_ - first_.time() - second_.time();
        for (const segment_modes* p : {&first_, &second_}) {
            const double at_start = p->value_at(0, 0.0) - level, at_end = p->end()[0] - level;
            const double at_turn = p->turning_value(0) - level, turn = p->turning_time(0);
            const auto value = [&](double t) { return p->value_at(0, t) - level; };
            if (at_start == 0.0) return from;
            if ((at_start < 0.0) != (at_turn < 0.0))
                return from + root_between(value, 0.0, turn, "time to a temperature");
            if ((at_turn < 0.0) != (at_end < 0.0))
                return from + root_between(value, turn, p->time(), "time to a temperature");
            from += p->time();
        }
        return std::nullopt;
    }

private:
    static constexpr int most_steps = 100000;                       // takes 20 to 200
    static constexpr double first_rise = 20.0;                      // K, a lead at work
    static constexpr double first_share = 0.01;                     // of the time constant: the first step
    static constexpr double step_error = 5e-5;                      // K in a step
    static constexpr double step_error_of_rise = 1e-6;              // of the rise, where that is more
    static constexpr double least_change = 0.1, most_change = 4.0;  // of the step
    static constexpr double rest_of_rise = 1e-11;                   // movement in a step that counts as none

    [[nodiscard]] segment_modes piece_of(const std::array<double, 2>& y, double t) const
    {
        const double at = air_ + y[1] / root_outer_;
        const double loss = surface_.loss(at) - surface_.sun_per_length(), slope = surface_.slope(at);
        const bool is_molten = air_ + y[0] / root_inner_ >= melting_;
        const double reference = reference_temperature.in_kelvin();
        const double base = heat_ * (1.0 + alpha_ * ((is_molten ? melting_ : air_) - reference));
        const double gain = is_molten ? 0.0 : heat_ * alpha_;
        segment_modes out(
            {(gain - between_) / inner_, between_ / (root_inner_ * root_outer_), -(between_ + slope) / outer_},
            {base / root_inner_, (slope * (at - air_) - loss) / root_outer_}, t);
        out.start(y);
        return out;
    }

    [[noreturn]] void fail() const
    {
        throw no_solution_error("temperature in time",
                                "not followed beyond " + number_text(elapsed_) + " s in the bounded number of steps",
                                "a current and a time that can be followed");
    }

    surface_kernel surface_;
    double air_, inner_, outer_, between_, root_inner_, root_outer_, heat_, alpha_, melting_;
    double slow_time_ = 0.0, step_ = 0.0, elapsed_ = 0.0;
    int steps_ = 0;
    bool settled_ = false;
    std::array<double, 2> state_;
    segment_modes first_, second_;
};

/// Time constant [s] of the slower of the two modes with a tangent to the surface law.
[[nodiscard]] inline double slower_time_constant(const two_stores& stores, double slope)
{
    const double inner = stores.inner.value(), outer = stores.outer.value(), g = stores.between.value();
    const double s11 = g / inner, s22 = (g + slope) / outer;
    const double mean = 0.5 * (s11 + s22), radius = std::hypot(0.5 * (s11 - s22), g / std::sqrt(inner * outer));
    return (mean + radius) / (g * slope / (inner * outer));  // 1/slower rate, from the product of both
}

}  // namespace detail

/// The two temperatures after a current has flowed for a time, from any start.
///
/// C1 dTc/dt = I^2 R'(Tc) - G (Tc - Ts) and C2 dTs/dt = G (Tc - Ts) - q(Ts) + sun, as in periodic_heating_of(), here
/// marched once: in each step q is replaced by its tangent at the start of the step and the linear problem solved
/// exactly. Two halves of a step stand for the step; its error is a third of what they differ from the whole by, and is
/// kept below 5e-5 K (1e-6 of the rise where that is more). Steps grow as the lead settles, so that a time of years
/// takes no more work than one of hours.
///
/// Accuracy: within 0.01 K (1e-4 of the rise) of the equations (tests/law); how well two stores stand for a covering
/// see burst_share(). Above the melting point the resistance is held: the number then only says "far too hot".
/// Degenerate cases: no time returns the start; no current cools towards the air, in the sun to what the sun holds.
/// @param stores of one metre @param surface and what is around it @param through I [A], 0 or above
/// @param time [s], 0 or above @param start the two temperatures at time zero
/// @throws not_finite_error, out_of_range_error; no_solution_error for currents so large that numbers overflow
[[nodiscard]] inline store_temperatures stores_after(const two_stores& stores, const cable_surface& surface,
                                                     current through, duration time, const store_temperatures& start)
{
    require_not_negative(time, "time");
    detail::store_march march(stores, surface, through, start);
    if (time.value() == 0.0) return start;
    // what is left is less than rounding once the time is used up
    constexpr double rounding = 1e-14;
    while (!march.has_settled() && time.value() - march.elapsed() > rounding * time.value())
        march.advance(time.value() - march.elapsed());
    return {temperature::kelvin(march.conductor()), temperature::kelvin(march.surface())};
}

/// The first time at which the conductor is at a temperature, from below or from above, under a current that stays.
///
/// Marched as in stores_after(); the passage is found within the exponential pieces, turning points included. The march
/// ends when nothing moves any more (1e-11 of the rise in a step): a temperature that close to the steady one counts as
/// never reached.
/// @param stores of one metre @param surface and what is around it @param through I [A], 0 or above
/// @param start the two temperatures at time zero @param wanted temperature of the conductor
/// @return [s], 0 where the start has it; none where it is never reached
/// @throws not_finite_error, out_of_range_error; no_solution_error for currents so large that numbers overflow
[[nodiscard]] inline std::optional<duration> time_to_conductor(const two_stores& stores, const cable_surface& surface,
                                                               current through, const store_temperatures& start,
                                                               temperature wanted)
{
    detail::store_march march(stores, surface, through, start);
    if (start.conductor == wanted) return duration{};
    while (!march.has_settled()) {
        march.advance(std::numeric_limits<double>::max());
        if (const std::optional<double> at = march.conductor_passes(wanted.in_kelvin())) return in_si<duration>(*at);
    }
    return std::nullopt;
}

/// Time in which a small departure from a steady state dies away to 1/e: the slower mode of the two stores with the
/// tangent to the surface law, without current. The faster mode, heat going from conductor into covering, is over in
/// a tenth of it.
///
/// A whole warming does not follow one exponential: the surface gives off more per kelvin when it is hot.
/// @param stores of one metre @param surface and what is around it @param at temperature of the surface, where the
/// tangent is taken; with that of the air taken 0.02 K to either side
/// @return [s]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration time_constant_of(const two_stores& stores, const cable_surface& surface, temperature at)
{
    require_positive(stores.inner, "heat capacity of the conductor");
    require_positive(stores.outer, "heat capacity of the covering");
    require_positive(stores.between, "conductance of the covering");
    const detail::surface_kernel kernel(surface);
    return in_si<duration>(detail::slower_time_constant(stores, kernel.slope(at.in_kelvin())));
}

}  // namespace weldloop
