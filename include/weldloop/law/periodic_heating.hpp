#pragma once
/// @file
/// Temperatures of a covered conductor under a current programme that repeats without end, solved exactly.
/// Source: exponential_steps, the last state of a period the first of the next.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/law/heat_modes.hpp>
#include <weldloop/law/heating_segment.hpp>

namespace weldloop {

/// A current that is on for a time and off for the rest of a period.
struct on_off_current {
    weldloop::current current;  ///< [A] effective value while on, 0 or above
    duration on;                ///< [s], above 0
    duration period;            ///< [s], at least `on`
};

/// What a repeated programme does once it has settled.
struct periodic_heating {
    temperature conductor_peak;     ///< highest within the period
    temperature conductor_lowest;   ///< lowest within the period
    temperature conductor_on_mean;  ///< mean over the time with current; over the period where there is none
    temperature conductor_mean;     ///< mean over the period
    temperature surface_peak;       ///< highest within the period, often after the current has stopped
    temperature surface_mean;       ///< mean over the period
    power_per_length heat_in;       ///< [W/m] mean heat of the current over the period
    power_per_length heat_out;      ///< [W/m] mean heat given off less the sun's over the period
    bool melts = false;             ///< the peak lies above the melting point: the numbers only say "far too hot"
};

namespace detail {

/// The problem with the surface law replaced by straight lines, one slope for each segment of the programme and one
/// offset for each piece of it, and its settled solution.
class settled_programme {
public:
    settled_programme(const conductor_numbers& conductor, std::span<const heating_segment> programme,
                      const surface_kernel& surface)
        : conductor_(conductor), surface_(surface), air_(surface.air()), segments_(programme.size()),
          pieces_(programme.size()), room_(room_for(programme.size())), segment_(programme.size()),
          piece_(programme.size())
    {
        for (std::size_t i = 0; i < segments_; ++i) {
            segment_[i].current = programme[i].current.value();
            segment_[i].time = programme[i].duration.value();
            period_ += segment_[i].time;
            piece_[i].segment = i;
            piece_[i].span = segment_[i].time;
        }
    }

    /// Holds the conductor's resistance at its melting-point value instead of the linear law.
    void hold_resistance_at_melting() { held_ = true; }

    /// Finds the settled state. False where none was found, and where the conductor surely melts though its resistance
    /// is not held.
    bool settle()
    {
        cut();
        if (!held_ && surely_melts()) return false;
        if (!find_lines()) return false;
        find_extremes();
        return true;
    }

    /// Finds the current [A] of the first segment, the others being without any, that brings the conductor to a
    /// temperature [K] at that segment's end, and settles with it. None where this way does not lead there or where
    /// that is not the peak. It is as exact as settle(), whose steps it shares with the search for the current.
    ///
    /// For modes of a guessed current the problem is linear in the heat of the current at the air's temperature, which
    /// is solved for together with the offsets of the surface law's lines; the current that gives this heat and the
    /// modes' gain at the mean of the conductor is a better guess by far, and secants through these make the next.
    /// @param hot surface [K] for whose slope the line of the first segment is, where that of the mean surface is too
    /// far from it for the means to settle: on-times of many time constants in rests of more
    [[nodiscard]] std::optional<double> settle_with_peak(double peak, double first_guess,
                                                         std::optional<double> hot = std::nullopt)
    {
        constexpr int most_guesses = 20;      // takes 3 or 4
        constexpr double agreement = 1e-9;    // of the current guessed and found; what is found is far closer
        constexpr double settled_to = 1e-10;  // of the surface's rise
        constexpr double roughly = 1e-3;      // the same at the first guess
        constexpr double by_square = 1e-3;    // of the square of what the current has moved by, at the others
        cut();
        double amps = first_guess, heat = 0.0, near = roughly, guess_before = 0.0, step_before = 0.0;
        for (int guess = 0; guess < most_guesses; ++guess) {
            segment_[0].current = amps;
            const auto [at_air, gain] = joule(amps);
            const std::optional<double> at = mean_surface();
            if (!at) return std::nullopt;
            set_slopes(surface_.slope(*at));
            if (hot) segment_[0].slope = surface_.slope(*hot);
            if (guess == 0) {
                heat = at_air;
                for (std::size_t i = 0; i < pieces_; ++i) piece_[i].surface_mean = *at;
            }
            if (!set_modes()) return std::nullopt;
            const std::optional<double> mean = settle_heat(peak - air_, near, heat);
            if (!mean) return std::nullopt;
            const auto [unit_at_air, unit_gain] = joule(1.0);
            const double stepped = std::sqrt((heat + gain * *mean) / (unit_at_air + unit_gain * *mean));
            const double step = stepped - amps;
            if (!std::isfinite(step)) return std::nullopt;
            const double next = guess == 0 ? stepped : amps - step * (amps - guess_before) / (step - step_before);
            const bool is_near = guess > 0 && std::fabs(next - amps) <= agreement * amps;
            if (near == settled_to && (is_near || step == 0.0)) {
                segment_[0].current = is_near ? next : stepped;
                find_extremes();
                if (std::fabs(conductor_peak() - peak) > 2.0 * settled_to * (1.0 + peak - air_)) return std::nullopt;
                return segment_[0].current;
            }
            const double moved = step / amps;
            near = std::max(settled_to, std::min(roughly, by_square * moved * moved));
            guess_before = amps;
            step_before = step;
            amps = next > 0.5 * stepped && next < 2.0 * stepped ? next : stepped;
        }
        return std::nullopt;
    }

    /// Whether the conductor of the settled state is above its melting point at some time.
    [[nodiscard]] double conductor_peak() const { return conductor_at_y(peak_); }  // K
    [[nodiscard]] bool melts() const { return conductor_peak() > conductor_.melting; }

    /// What it took so far: pieces solved and modes found, a few microseconds each.
    [[nodiscard]] std::size_t work() const { return work_; }

    /// The conductor [K] at a time [s] after the start of the programme, 0 to the period.
    [[nodiscard]] double conductor_at(double t) const
    {
        std::size_t i = 0;
        while (i + 1 < pieces_ && t > piece_[i].span) t -= piece_[i++].span;
        return conductor_at_y(path_of(piece_[i], 0).at(std::min(t, piece_[i].span)));
    }

    /// Peaks and means of the state last found.
    [[nodiscard]] periodic_heating result() const
    {
        double conductor = 0.0, surface = 0.0, on = 0.0, on_time = 0.0, heat_in = 0.0, heat_out = 0.0;
        double surface_peak = path_of(piece_[0], surface_point).begin(), surface_lowest = surface_peak;
        for (std::size_t i = 0; i < pieces_; ++i) {
            const piece& p = piece_[i];
            const double amps = segment_[p.segment].current;
            const double sum = path_of(p, 0).integral(p.times) / conductor_.root_heat[0];
            widen(p, surface_point, surface_lowest, surface_peak);
            conductor += sum;
            surface += p.span * p.surface_mean;
            const auto [at_air, per_kelvin] = joule(amps);
            heat_in += at_air * p.span + per_kelvin * sum;
            heat_out += p.span * p.loss;
            if (amps > 0.0) {
                on += sum;
                on_time += p.span;
            }
        }
        const double mean = air_ + conductor / period_;
        const double on_mean = on_time > 0.0 ? air_ + on / on_time : mean;
        const double surface_mean = surface / period_;
        // a steady current's mean and peak are the same number but for rounding
        const double highest = std::max({conductor_at_y(peak_), mean, on_mean});
        periodic_heating out;
        out.conductor_peak = temperature::kelvin(highest);
        out.conductor_lowest = temperature::kelvin(std::min(conductor_at_y(lowest_), mean));
        out.conductor_on_mean = temperature::kelvin(on_mean);
        out.conductor_mean = temperature::kelvin(mean);
        out.surface_peak =
            temperature::kelvin(std::max(air_ + surface_peak / conductor_.root_heat[surface_point], surface_mean));
        out.surface_mean = temperature::kelvin(surface_mean);
        out.heat_in = in_si<power_per_length>(heat_in / period_);
        out.heat_out = in_si<power_per_length>(heat_out / period_);
        out.melts = highest > conductor_.melting;
        return out;
    }

private:
    static constexpr double first_rise = 20.0;  // K, a lead at work: where searches start
    static constexpr double hottest = 1e9;      // K: far beyond anything a lead survives, so that a number comes out

    /// A time of constant current and one slope of the surface law.
    struct segment {
        double current = 0.0, time = 0.0, slope = 0.0;  // A, s, W/(m K)
        bool has_modes = false;
        double modes_gain = 0.0, modes_slope = 0.0;  // W/(m K) for which the modes are
        symmetric_modes modes;
        point_values heat_drive;  // of the modes by the current's heat at the air's temperature
    };

    /// A part of a segment with one line for the surface law, loss + slope (Ts - at).
    struct piece {
        std::size_t segment = 0;
        bool first = true;            // of its segment
        double span = 0.0;            // s
        double at = 0.0, loss = 0.0;  // K, W/m less the sun's
        double surface_mean = 0.0;    // K, of the state last found
        mode_times times;
        mode_path path;
    };

    [[nodiscard]] point_path path_of(const piece& p, std::size_t point) const
    {
        return {segment_[p.segment].modes, p.path, point};
    }

    void find_extremes()
    {
        peak_ = lowest_ = path_of(piece_[0], 0).begin();
        for (std::size_t i = 0; i < pieces_; ++i) widen(piece_[i], 0, lowest_, peak_);
    }

    void set_slopes(double slope)
    {
        for (std::size_t s = 0; s < segments_; ++s) segment_[s].slope = slope;
    }

    /// Finds the lines of all pieces that fit their own solution.
    bool find_lines()
    {
        const std::optional<double> at = mean_surface();
        if (!at) return false;
        // one slope for all, at the surface that gives off the mean heat of the squared currents, is close enough for
        // all but loads that swing by hundreds of kelvin
        set_slopes(surface_.slope(*at));
        for (std::size_t i = 0; i < pieces_; ++i) piece_[i].surface_mean = *at;
        constexpr int usual_steps = 40;  // takes 8 to 15
        if (set_modes() && settle_offsets(usual_steps)) return true;
        return settle_with_all_slopes(*at);
    }

    /// Whether the conductor is far above its melting point at the mean heat already; its peak lies no lower.
    [[nodiscard]] bool surely_melts() const
    {
        constexpr double far = 1.05;  // of the melting point: the mean of a swing lies a little below
        const std::optional<double> at = mean_surface();
        if (!at) return true;
        const double through = surface_.loss(*at) - surface_.sun_per_length();
        return *at + through / conductor_.conductance > far * conductor_.melting;
    }

    /// Widens a range by what a point passes through within a piece.
    void widen(const piece& p, std::size_t point, double& least, double& most) const
    {
        const point_path path = path_of(p, point);
        const auto take = [&](double y) {
            least = std::min(least, y);
            most = std::max(most, y);
        };
        take(path.end());
        const point_path::turnings turns = path.turns(p.times, p.first);
        for (std::size_t i = 0; i < turns.count; ++i) take(path.at(turns.at[i]));
    }

    [[nodiscard]] double conductor_at_y(double y) const { return air_ + y / conductor_.root_heat[0]; }

    void touch(piece& p, double surface_temperature) const
    {
        p.at = surface_temperature;
        p.loss = surface_.loss(p.at) - surface_.sun_per_length();
    }

    /// Heat of a current in the conductor: {at the air's temperature, per kelvin above it}.
    [[nodiscard]] std::array<double, 2> joule(double amps) const
    {
        const double i2r = amps * amps * conductor_.resistance, reference = reference_temperature.in_kelvin();
        if (held_) return {i2r * (1.0 + conductor_.alpha * (conductor_.melting - reference)), 0.0};
        return {i2r * (1.0 + conductor_.alpha * (air_ - reference)), i2r * conductor_.alpha};
    }

    /// Whether a change [W/(m K)] is small beside the covering's conductance, so that modes found from others keep
    /// their digits.
    [[nodiscard]] bool is_small(double change) const { return std::fabs(change) < conductor_.conductance; }

    /// Modes of every segment with its slope, and what a period does to a departure from the settled state. False where
    /// there is no settled state.
    bool set_modes()
    {
        work_ += segments_;
        point_matrix map{};  // of the period less one: it would lose its digits in a short one
        for (std::size_t s = 0; s < segments_; ++s) {
            segment& g = segment_[s];
            const auto [heat, gain] = joule(g.current);
            const segment* const near = g.has_modes ? &g : s > 0 ? &segment_[s - 1] : nullptr;
            g.modes = near != nullptr && is_small(gain - near->modes_gain) && is_small(g.slope - near->modes_slope)
                          ? modes_near(near->modes, conductor_, gain - near->modes_gain, g.slope - near->modes_slope)
                          : modes_of(conductor_, gain, g.slope);
            g.has_modes = true;
            g.modes_gain = gain;
            g.modes_slope = g.slope;
            set_heat(g, heat);
            if (mode_times::overflows(g.modes, g.time)) return false;
            point_matrix grows{}, next = map;
            for (std::size_t k = 0; k < covering_points; ++k) {
                const double growth = std::expm1(g.modes.rate[k] * g.time);
                for (std::size_t i = 0; i < covering_points; ++i)
                    for (std::size_t j = 0; j < covering_points; ++j)
                        grows[i][j] += growth * g.modes.vector[i][k] * g.modes.vector[j][k];
            }
            for (std::size_t i = 0; i < covering_points; ++i)
                for (std::size_t j = 0; j < covering_points; ++j) {
                    next[i][j] += grows[i][j];
                    for (std::size_t k = 0; k < covering_points; ++k) next[i][j] += grows[i][k] * map[k][j];
                }
            map = next;
        }
        for (std::size_t i = 0; i < pieces_; ++i) {
            piece& p = piece_[i];
            p.times = mode_times(segment_[p.segment].modes, p.span);
        }
        return factorize(map);
    }

    /// Factors one minus the period's map, with pivots. The conductor's growing resistance can make one mode grow and
    /// no more; the state settles if and only if the determinant is positive.
    bool factorize(const point_matrix& map_less_one)
    {
        bool is_positive = true;
        for (std::size_t i = 0; i < covering_points; ++i)
            for (std::size_t j = 0; j < covering_points; ++j) factors_[i][j] = -map_less_one[i][j];
        for (std::size_t c = 0; c < covering_points; ++c) {
            std::size_t best = c;
            for (std::size_t r = c + 1; r < covering_points; ++r)
                if (std::fabs(factors_[r][c]) > std::fabs(factors_[best][c])) best = r;
            pivot_[c] = best;
            if (best != c) {
                std::swap(factors_[c], factors_[best]);
                is_positive = !is_positive;
            }
            if (!std::isfinite(factors_[c][c]) || factors_[c][c] == 0.0) return false;
            if (factors_[c][c] < 0.0) is_positive = !is_positive;
            for (std::size_t r = c + 1; r < covering_points; ++r) {
                const double f = factors_[r][c] /= factors_[c][c];
                for (std::size_t k = c + 1; k < covering_points; ++k) factors_[r][k] -= f * factors_[c][k];
            }
        }
        return is_positive;
    }

    [[nodiscard]] point_values start_for(point_values w) const
    {
        for (std::size_t c = 0; c < covering_points; ++c) std::swap(w[c], w[pivot_[c]]);
        for (std::size_t c = 0; c < covering_points; ++c)
            for (std::size_t r = c + 1; r < covering_points; ++r) w[r] -= factors_[r][c] * w[c];
        for (std::size_t c = covering_points; c-- > 0;) {
            for (std::size_t k = c + 1; k < covering_points; ++k) w[c] -= factors_[c][k] * w[k];
            w[c] /= factors_[c][c];
        }
        return w;
    }

    /// What drives the modes of a piece: the heat of the current, and the line of the surface law.
    [[nodiscard]] point_values drive_of(const piece& p, const segment& g) const
    {
        const double offset = (g.slope * (p.at - air_) - p.loss) / conductor_.root_heat[surface_point];
        point_values out;
        for (std::size_t k = 0; k < covering_points; ++k)
            out[k] = g.heat_drive[k] + g.modes.vector[surface_point][k] * offset;
        return out;
    }

    /// Modes at the begin of a piece from those at the end of the one before.
    [[nodiscard]] point_values carried_over(std::size_t i, const point_values& z) const
    {
        if (i == 0 || piece_[i].segment == piece_[i - 1].segment) return z;
        return segment_[piece_[i].segment].modes.to_modes(segment_[piece_[i - 1].segment].modes.from_modes(z));
    }

    /// Where the period ends that starts with everything at the air's temperature.
    [[nodiscard]] point_values end_from_rest() const
    {
        point_values z{};
        for (std::size_t i = 0; i < pieces_; ++i) {
            const segment& g = segment_[piece_[i].segment];
            z = carried_over(i, z);
            const point_values drive = drive_of(piece_[i], g);
            for (std::size_t k = 0; k < covering_points; ++k)
                z[k] += (g.modes.rate[k] * z[k] + drive[k]) * piece_[i].times.by_speed[k];
        }
        return segment_[piece_[pieces_ - 1].segment].modes.from_modes(z);
    }

    /// Solves with the lines as they are; sets the paths and surface means of all pieces.
    bool solve()
    {
        work_ += pieces_;
        const point_values start = start_for(end_from_rest());
        point_values z = segment_[0].modes.to_modes(start);
        highest_ = start[0] / conductor_.root_heat[0];
        for (std::size_t i = 0; i < pieces_; ++i) {
            piece& p = piece_[i];
            const segment& g = segment_[p.segment];
            p.path = mode_path(g.modes, p.times, carried_over(i, z), drive_of(p, g));
            // after a sudden huge heat the polynomial over the covering dips below the air for a moment; nothing does
            p.surface_mean = air_ + std::max(0.0, path_of(p, surface_point).integral(p.times) / p.span) /
                                        conductor_.root_heat[surface_point];
            z = p.path.finish;
            highest_ = std::max(highest_, path_of(p, 0).end() / conductor_.root_heat[0]);
        }
        return std::isfinite(highest_) && std::isfinite(piece_[pieces_ - 1].surface_mean);
    }

    /// Moves the offsets until each line touches the surface law at the mean of its piece.
    bool settle_offsets(int most_steps)
    {
        constexpr double agreement = 1e-10;  // of the surface's rise above the air
        constexpr double slowest = 0.55;     // of the change before: agrees just within the steps
        constexpr double sure = 1e-6;        // of the rise: beyond, rounding may slow the last steps
        constexpr double rounding = 1e-12;   // of the conductor's rise, all that its difference to the surface leaves
        for (int step = 0; step < most_steps; ++step) {
            for (std::size_t i = 0; i < pieces_; ++i) touch(piece_[i], piece_[i].surface_mean);
            if (!solve()) return false;
            const double before = last_change_;
            measure_change();
            if (last_change_ <= agreement * (1.0 + last_rise_) + rounding * highest_) return true;
            // too slow to agree in time, or going apart
            if (step > 1 && last_change_ > slowest * before && last_change_ > sure * (1.0 + last_rise_)) return false;
        }
        return false;
    }

    void set_heat(segment& g, double heat) const
    {
        for (std::size_t k = 0; k < covering_points; ++k)
            g.heat_drive[k] = g.modes.vector[0][k] * heat / conductor_.root_heat[0];
    }

    /// Moves the offsets as settle_offsets() does, and the heat [W/m] of the first segment's current at the air's
    /// temperature with them, so that the conductor is `top` [K] above the air at its end. Gives the conductor's mean
    /// [K] above the air over that segment; none where it does not settle.
    [[nodiscard]] std::optional<double> settle_heat(double top, double agreement, double& heat)
    {
        constexpr int most_steps = 40;      // takes 1 to 4
        constexpr double rounding = 1e-12;  // of the conductor's rise
        std::size_t ends = 1;               // pieces of the first segment
        while (ends < pieces_ && piece_[ends].segment == 0) ++ends;
        const auto end = [&] { return path_of(piece_[ends - 1], 0).end() / conductor_.root_heat[0]; };
        const auto mean = [&] {
            double sum = 0.0;
            for (std::size_t i = 0; i < ends; ++i) sum += path_of(piece_[i], 0).integral(piece_[i].times);
            return sum / (conductor_.root_heat[0] * segment_[0].time);
        };
        std::vector<double> means(pieces_), by_heat(pieces_);  // K; K m/W
        for (std::size_t i = 0; i < pieces_; ++i) {
            means[i] = piece_[i].surface_mean;
            piece_[i].at = air_;
            piece_[i].loss = 0.0;
        }
        set_heat(segment_[0], 1.0);
        if (!solve()) return std::nullopt;
        const double end_by_heat = end(), mean_by_heat = mean();
        if (!(end_by_heat > 0.0)) return std::nullopt;
        for (std::size_t i = 0; i < pieces_; ++i) by_heat[i] = piece_[i].surface_mean - air_;
        for (int step = 0; step < most_steps; ++step) {
            for (std::size_t i = 0; i < pieces_; ++i) touch(piece_[i], means[i]);
            set_heat(segment_[0], heat);
            if (!solve()) return std::nullopt;
            const double missing = top - end(), more = missing / end_by_heat;
            heat += more;
            double change = std::fabs(missing), rise = 0.0;
            for (std::size_t i = 0; i < pieces_; ++i) {
                means[i] = piece_[i].surface_mean += more * by_heat[i];
                change = std::max(change, std::fabs(means[i] - piece_[i].at));
                rise = std::max(rise, std::fabs(piece_[i].at - air_));
            }
            if (change <= agreement * (1.0 + rise) + rounding * highest_) return mean() + more * mean_by_heat;
        }
        return std::nullopt;
    }

    /// Surface temperature [K] that gives off the heat of the programme's mean squared current; none below `hottest`.
    [[nodiscard]] std::optional<double> mean_surface() const
    {
        double at_air = 0.0, per_kelvin = 0.0;  // W/m
        for (std::size_t s = 0; s < segments_; ++s) {
            const auto [heat, gain] = joule(segment_[s].current);
            at_air += segment_[s].time / period_ * heat;
            per_kelvin += segment_[s].time / period_ * gain;
        }
        if (at_air == 0.0 && surface_.sun_per_length() == 0.0) return air_;
        const auto surplus = [&](double surface) {
            const value_and_slope given = surface_.loss_and_slope(surface);
            const double through = given.value - surface_.sun_per_length();
            return value_and_slope{through - at_air - per_kelvin * (surface + through / conductor_.conductance - air_),
                                   given.slope - per_kelvin * (1.0 + given.slope / conductor_.conductance)};
        };
        double rise = first_rise;
        while (surplus(air_ + rise).value < 0.0)
            if ((rise *= 2.0) > hottest) return std::nullopt;
        return rising_root(surplus, air_, air_ + rise, air_ + 0.75 * rise, "surface temperature");
    }

    /// For loads that swing by hundreds of kelvin: every piece with a slope of its own, Newton's rule on the means.
    /// Given off heat grows ever faster with the temperature, so that it approaches from above and does not overshoot.
    bool settle_with_all_slopes(double start)
    {
        constexpr int most_steps = 30;        // takes 4 to 10
        constexpr double agreement = 1e-9;    // of the rise
        constexpr double near_enough = 1e-3;  // of the rise, at last: what melts needs no more digits
        constexpr double rounding = 1e-12;    // of the conductor's rise
        split_into_pieces();
        for (std::size_t i = 0; i < pieces_; ++i) piece_[i].surface_mean = start;
        for (int step = 0; step < most_steps; ++step) {
            for (std::size_t i = 0; i < pieces_; ++i) {
                touch(piece_[i], piece_[i].surface_mean);
                segment_[i].slope = surface_.slope(piece_[i].at);
            }
            if (!set_modes() || !solve()) return false;
            measure_change();
            if (last_change_ <= agreement * (1.0 + last_rise_) + rounding * highest_) return true;
        }
        return last_change_ <= near_enough * (1.0 + last_rise_);
    }

    /// How many pieces the segments of a programme may be cut into: fine ones where there are few.
    [[nodiscard]] static std::size_t room_for(std::size_t segments)
    {
        constexpr std::size_t usual = 64, least_of_a_segment = 4;
        return std::max(usual, least_of_a_segment * segments);
    }

    /// Makes every piece a segment.
    void split_into_pieces()
    {
        const std::vector<segment> whole = segment_;
        segment_.resize(pieces_);
        for (std::size_t i = 0; i < pieces_; ++i) {
            piece& p = piece_[i];
            segment_[i] = whole[p.segment];
            segment_[i].time = p.span;
            segment_[i].has_modes = false;
            p.segment = i;
        }
        segments_ = pieces_;
    }

    /// How far the means of the pieces lie from where their lines touch, and the largest rise there.
    void measure_change()
    {
        last_change_ = last_rise_ = 0.0;
        for (std::size_t i = 0; i < pieces_; ++i) {
            last_change_ = std::max(last_change_, std::fabs(piece_[i].surface_mean - piece_[i].at));
            last_rise_ = std::max(last_rise_, std::fabs(piece_[i].at - air_));
        }
    }

    /// Cuts the segments into pieces that grow with the distance from the switching, so that a line fits each; the same
    /// for every current, so that results stay smooth in it.
    void cut()
    {
        constexpr double first_share = 1.0 / 16;       // of the time constant
        constexpr double growth = 1.5;                 // of each piece over the one before
        constexpr std::size_t most_of_a_segment = 16;  // (1.5^16 - 1)/8 = 82 time constants
        if (segments_ == 1) return;                    // steady
        const double time_constant =
            conductor_.whole_heat * (1.0 / conductor_.conductance + 1.0 / surface_.slope(air_ + first_rise));
        const std::size_t most = std::min(most_of_a_segment, room_ / segments_);
        pieces_ = 0;
        const auto add = [this](std::size_t s, double span) {
            if (pieces_ == piece_.size()) piece_.emplace_back();
            piece_[pieces_].first = pieces_ == 0 || piece_[pieces_ - 1].segment != s;
            piece_[pieces_].segment = s;
            piece_[pieces_++].span = span;
        };
        for (std::size_t s = 0; s < segments_; ++s) {
            double left = segment_[s].time, length = first_share * time_constant;
            for (std::size_t k = 1; k < most && left > growth * length; ++k) {
                add(s, length);
                left -= length;
                length *= growth;
            }
            add(s, left);
        }
    }

    conductor_numbers conductor_;
    surface_kernel surface_;
    double air_;
    std::size_t segments_, pieces_, room_;        // room_: for so many pieces
    double period_ = 0.0, highest_ = 0.0;         // s; K above the air
    double last_change_ = 0.0, last_rise_ = 0.0;  // K, of the pieces' surface means
    bool held_ = false;
    std::size_t work_ = 0;
    std::vector<segment> segment_;  // at most one a piece
    std::vector<piece> piece_;
    double peak_ = 0.0, lowest_ = 0.0;  // y of the conductor, of the settled state
    point_matrix factors_{};            // of one minus the period's map
    std::array<std::size_t, covering_points> pivot_{};
};

/// The settled state of a programme that has been checked.
[[nodiscard]] inline settled_programme settled(const conductor_numbers& conductor, const surface_kernel& surface,
                                               std::span<const heating_segment> programme)
{
    settled_programme out(conductor, programme, surface);
    if (out.settle() && !out.melts()) return out;
    out.hold_resistance_at_melting();
    if (!out.settle())
        throw no_solution_error("surface temperature", "not settled",
                                "a surface that gives off the heat of the current");
    return out;
}

/// The same, the programme's numbers checked.
[[nodiscard]] inline settled_programme checked_and_settled(const conductor_numbers& conductor,
                                                           const surface_kernel& surface,
                                                           std::span<const heating_segment> programme)
{
    if (programme.empty()) throw out_of_range_error("segments of the programme", "0", "1 or more");
    for (const heating_segment& s : programme) {
        require_not_negative(s.current, "current");
        require_positive(s.duration, "duration");
    }
    return settled(conductor, surface, programme);
}

}  // namespace detail

/// Settled temperatures of a covered conductor under a programme of currents that repeats without end.
///
/// One metre of conductor (Tc) and covering (T over the logarithm u of its radius, 0 to 1, G its conductance):
/// - C dTc/dt = I^2 R'(Tc) + G dT/du at the inner face, R'(T) = R'20 (1 + alpha (T - 20 degC));
/// - c(u) dT/dt = G d2T/du2 within, c(u) the covering's heat per u, which grows with the square of the radius;
/// - -G dT/du = q(Ts) - sun at the surface (Ts), q by surface_loss().
///
/// The covering is taken at five Gauss-Lobatto points of u, a polynomial of the fourth degree: steady conduction and
/// the heat stored in it are exact. The segments of the programme are cut into pieces that grow with the distance from
/// the switching; each piece has a straight line for q that meets it at the mean surface temperature of the piece, with
/// the slope that q has where the surface gives off the mean heat; these means are iterated until they agree (1e-10 of
/// the rise). The linear problem is solved exactly: exponentials of the modes, start of the period from (1 - map) x =
/// constant part, means from their integrals, peaks where the derivative vanishes. Heat in and heat out over the period
/// agree to 1e-9.
///
/// Accuracy: leads of 10 to 185 mm2 at 85 degC against marching the same equations, peak and mean of the conductor 0.05
/// % of the rise at 3 min of 5 and 6 of 10, 0.1 % at 1 of 5 and 2 of 10, the surface's peak twice that (tests/law, to
/// fifty digits in tests/oracle/digits); against a covering of 200 rings, 2 s of 1 min to 6 of 10 min, within 0.15 K
/// (tests/circuit). Above the melting point the resistance is held at the value it has there, as if it were hot all the
/// time; the result then only says "far too hot" (`melts`). Beyond a mean surface of 1e9 K, which a coil reaches at a
/// thousand times the current it melts at, there is none: no_solution_error. Loads that swing by hundreds of kelvin,
/// where one slope does not serve, take a slope for each piece and Newton's rule: at most a few milliseconds, and half
/// a millisecond for each segment of long programmes.
///
/// Degenerate cases: no current gives the temperature at which the surface loses the sun's heat, without sun the
/// air's. One segment is steady current.
/// @param conductor one metre of it @param surface and what is around it
/// @param programme one segment or more, each with a duration above 0
/// @throws not_finite_error, out_of_range_error; no_solution_error when the surface temperatures do not settle
[[nodiscard]] inline periodic_heating periodic_heating_of(const covered_conductor& conductor,
                                                          const cable_surface& surface,
                                                          std::span<const heating_segment> programme)
{
    const detail::conductor_numbers numbers(conductor);
    return detail::checked_and_settled(numbers, detail::surface_kernel(surface), programme).result();
}

/// The same for a current that is on for a time and off for the rest of a period.
/// @param conductor one metre of it @param surface and what is around it @param through current, on-time and period
/// @throws not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline periodic_heating periodic_heating_of(const covered_conductor& conductor,
                                                          const cable_surface& surface, const on_off_current& through)
{
    require_positive(through.on, "on-time");
    require_positive(through.period, "duty period");
    if (through.on > through.period)
        throw out_of_range_error("on-time", si_text(through.on),
                                 "at most the duty period of " + si_text(through.period));
    const std::array<heating_segment, 2> programme{heating_segment{through.current, through.on},
                                                   heating_segment{weldloop::current{}, through.period - through.on}};
    return periodic_heating_of(conductor, surface,
                               std::span<const heating_segment>(programme).first(through.on < through.period ? 2 : 1));
}

/// Temperature of the conductor at evenly spaced times of the period, first and last included, once it has settled.
/// @param conductor one metre of it @param surface and what is around it
/// @param programme as for periodic_heating_of() @param count of times, 2 to 10000
/// @return the temperatures; the first is that at the start of the first segment
/// @throws not_finite_error, out_of_range_error; no_solution_error when the surface temperatures do not settle
[[nodiscard]] inline std::vector<temperature> conductor_trace_of(const covered_conductor& conductor,
                                                                 const cable_surface& surface,
                                                                 std::span<const heating_segment> programme, int count)
{
    require_within(count, 2.0, 1e4, "times of the trace");
    const detail::conductor_numbers numbers(conductor);
    const detail::settled_programme found =
        detail::checked_and_settled(numbers, detail::surface_kernel(surface), programme);
    double period = 0.0;
    for (const heating_segment& s : programme) period += s.duration.value();
    std::vector<temperature> out;
    out.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) out.push_back(temperature::kelvin(found.conductor_at(period * i / (count - 1))));
    return out;
}

}  // namespace weldloop
