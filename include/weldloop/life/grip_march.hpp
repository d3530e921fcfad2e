#pragma once
/// @file
/// A clamp marched over hours of shift: slow states by an embedded pair of Runge and Kutta in the logarithm of time,
/// the heat quasi-steady at every stage. Solver on plain doubles; grip.hpp is what users call.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <utility>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/life/grip_ageing.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_service.hpp>

namespace weldloop {

/// When to inspect.
inline constexpr source quarter_grip_judgement{
    "a clamp is due for inspection when a quarter of its grip may be gone", "2026", {}, source_kind::judgement};
/// Share of the grip below which a clamp counts as fallen off.
inline constexpr double grip_gone = 0.10;
/// Share of its force a clamp may lose in the last half of a forecast and still count as settled.
inline constexpr double settling_loss = 0.01;

namespace detail {

/// How finely a march goes.
struct march_fineness {
    double tolerance = 1.5e-5;  // of the logarithm of force and of resistance, each step
    double longest = 1.0;       // in the logarithm of time
};

struct grip_march {
    std::vector<grip_point> points;
    double left = 1.0;                 // cold, of the force when the forecast began
    std::optional<double> quarter_at;  // s
    double ended_at = 0.0;             // s
    grip_end end = grip_end::horizon;
    grip_causes causes;
    double hottest_spring = 0.0, hottest_jaw = 0.0;  // K; spring in the mean, jaws at their peak
    double film_factor = 1.0;
    std::optional<double> untouched_ohm;  // at the end, of a joint nothing had moved
    bool spring_destroyed = false;
    bool spots_melt = false;
    int steps = 0;
};

class grip_marcher {
public:
    grip_marcher(const ageing_clamp& clamp, const clamp_network& network, const grip_service& service, duration horizon,
                 march_fineness fineness = {})
        : clamp_(&clamp), network_(&network), fineness_(fineness), horizon_(horizon.value()),
          clean_every_(service.clean_every ? service.clean_every->value() : horizon_),
          tighten_every_(service.tighten_every ? service.tighten_every->value() : horizon_)
    {
    }

    [[nodiscard]] grip_march operator()()
    {
        state_ = clamp_->ageing().start();
        heat_ = first_ = clamp_->at(state_, times_at(0.0), nullptr);
        record(0.0, heat_);
        if (bad(heat_)) return finish(0.0, heat_);

        // from new the rate of relaxation has no bound: a first moment at the first temperature, exactly
        const double start = horizon_ > instant ? std::min(first_moment, 0.5 * horizon_) : horizon_;
        const grip_rates r = clamp_->ageing().rates(state_, heat_.felt);
        state_.parameter = clamp_->ageing().first_parameter(heat_.felt.spring, start);
        state_.settled = clamp_->ageing().first_settled(heat_.felt.settling, start);
        state_.film_square = r.film_square * start;
        if (left_of(state_, start) <= 1.0 - inspection_loss) quarter_at_ = start;  // set at the first opening
        if (start == horizon_) {
            heat_ = clamp_->at(state_, times_at(horizon_), &heat_);
            record(horizon_, heat_);
        }
        double offset = 0.0;
        segment_start_ = 0.0;
        double from = start;
        while (from < horizon_) {
            const double to = next_event(from);
            if (const auto stopped = segment(from, to, offset)) return finish(stopped->first, stopped->second);
            from = to;
            if (from < horizon_) serve(from);
            offset = first_moment;
        }
        return finish(horizon_, heat_);
    }

private:
    static constexpr double first_moment = 1.0;  // s
    static constexpr double instant = 1e-9;      // s: all of a forecast that is no longer is its first moment

    [[nodiscard]] static bool bad(const grip_heat& h) { return h.open || h.heat.bound != clamp_bound::none; }

    [[nodiscard]] grip_times times_at(double t) const { return {t, t - tightened_, t - seated_}; }

    [[nodiscard]] double left_of(const grip_state& s, double t) const
    {
        const grip_times times = times_at(t);
        return clamp_->ageing().held(s, times) * clamp_->ageing().unworn(times);
    }

    // The next service event after a time, or the end. An event within rounding of a time is that time.
    [[nodiscard]] double next_event(double after) const
    {
        constexpr double rounding = 1e-9;
        const auto next = [&](double every) { return every * (std::floor(after / every * (1.0 + rounding)) + 1.0); };
        const double event = std::min(next(clean_every_), next(tighten_every_));
        return event >= horizon_ * (1.0 - rounding) ? horizon_ : event;
    }

    void serve(double t)
    {
        constexpr double rounding = 1e-6;
        const auto due = [&](double every) { return std::fabs(t / every - std::round(t / every)) < rounding; };
        if (due(clean_every_)) {
            state_.film_square = 0.0;
            seated_ = t;
        }
        if (due(tighten_every_)) {
            state_.settled = 0.0;
            tightened_ = t;
        }
        heat_ = clamp_->at(state_, times_at(t), &heat_);
        record(t, heat_);
        segment_start_ = t;
    }

    // d(state)/d(ln time) at a time of shift, with its heat
    struct slope {
        double parameter = 0.0, film_square = 0.0, settled = 0.0;
    };
    [[nodiscard]] slope slope_of(const grip_state& s, const grip_heat& h, double clock) const
    {
        const grip_rates r = clamp_->ageing().rates(s, h.felt);
        return {clock * r.parameter, clock * r.film_square, clock * r.settled};
    }

    [[nodiscard]] static grip_state moved(const grip_state& s, double h,
                                          std::initializer_list<std::pair<double, slope>> by)
    {
        grip_state out = s;
        for (const auto& [share, k] : by) {
            out.parameter += h * share * k.parameter;
            out.film_square += h * share * k.film_square;
            out.settled += h * share * k.settled;
        }
        out.film_square = std::max(0.0, out.film_square);
        return out;
    }

    // Hermite's cubic over a step
    struct step_path {
        grip_state a, b;
        slope ka, kb;
        double h;
        [[nodiscard]] grip_state at(double u) const
        {
            const double v = 1.0 - u;
            const auto cubic = [&](double p, double q, double dp, double dq) {
                return v * v * (1.0 + 2.0 * u) * p + u * u * (1.0 + 2.0 * v) * q + h * u * v * (v * dp - u * dq);
            };
            return {cubic(a.parameter, b.parameter, ka.parameter, kb.parameter),
                    std::max(0.0, cubic(a.film_square, b.film_square, ka.film_square, kb.film_square)),
                    cubic(a.settled, b.settled, ka.settled, kb.settled), a.reached};
        }
    };

    [[nodiscard]] double error_of(const grip_state& s, double t, const slope& error) const
    {
        constexpr double thinnest = 0.1;  // nm: a film that does not matter
        const double radius = clamp_spot_radius.value() / nanometre;
        const double nm = std::max(thinnest, std::sqrt(s.film_square));
        return std::max(
            {std::fabs(error.parameter) * clamp_->ageing().weight_of_parameter(s, times_at(t)),
             std::fabs(error.settled) * clamp_->ageing().weight_of_settling(s, times_at(t)),
             std::fabs(error.film_square) / (2.0 * nm * std::max(radius - nm, (1.0 - spots_eaten) * radius))});
    }

    // Marches between two events. Returns where and how it stopped, if it did.
    std::optional<std::pair<double, grip_heat>> segment(double from, double to, double offset)
    {
        constexpr double shortest = 1e-3;  // in the logarithm of time: a thousandth of the age
        constexpr double first_try = 0.5, most_growth = 3.0, most_shrinking = 0.2, safety = 0.9, halving = 0.4;
        constexpr int most_steps = 20000;
        const auto clock_of = [&](double t) { return t - segment_start_ + offset; };
        const auto time_of = [&](double log_clock) { return std::exp(log_clock) - offset + segment_start_; };
        double x = std::log(clock_of(from));
        const double end = std::log(clock_of(to));
        double h = first_try;
        slope k1 = slope_of(state_, heat_, clock_of(from));
        while (x < end) {
            if (++steps_ > most_steps)
                throw no_solution_error("grip forecast", "not finished after " + number_text(most_steps) + " steps",
                                        "a history that can be followed in bounded work");
            h = std::min(h, fineness_.longest);
            const bool last = x + h * 1.000001 >= end;
            if (last) h = end - x;
            const double t_end = last ? to : time_of(x + h);

            const auto stage = [&](const grip_state& s, double share, grip_heat& at) {
                const double t = share == 1.0 ? t_end : time_of(x + share * h);
                at = clamp_->at(s, times_at(t), &heat_);
                return slope_of(s, at, clock_of(t));
            };
            grip_heat h2, h3, h4;
            // Bogacki and Shampine's pair of third and second order
            const slope k2 = stage(moved(state_, h, {{0.5, k1}}), 0.5, h2);
            slope k3, k4;
            grip_state s1;
            double error = 0.0;
            bool failed = bad(h2);
            if (!failed) {
                k3 = stage(moved(state_, h, {{0.75, k2}}), 0.75, h3);
                failed = bad(h3);
            }
            if (!failed) {
                s1 = moved(state_, h, {{2.0 / 9.0, k1}, {1.0 / 3.0, k2}, {4.0 / 9.0, k3}});
                k4 = stage(s1, 1.0, h4);
                failed = bad(h4);
                const auto combine = [](double a, double b, double c, double d) {
                    return -5.0 / 72.0 * a + b / 12.0 + c / 9.0 - d / 8.0;
                };
                error = error_of(s1, t_end,
                                 {h * combine(k1.parameter, k2.parameter, k3.parameter, k4.parameter),
                                  h * combine(k1.film_square, k2.film_square, k3.film_square, k4.film_square),
                                  h * combine(k1.settled, k2.settled, k3.settled, k4.settled)});
            }
            const double wanted = failed ? halving
                                         : std::clamp(safety * std::cbrt(fineness_.tolerance / std::max(error, 1e-300)),
                                                      most_shrinking, most_growth);
            if (failed && h <= shortest) return std::pair{t_end, bad(h2) ? h2 : bad(h3) ? h3 : h4};
            if ((failed || error > fineness_.tolerance) && h > shortest) {
                h = std::max(shortest, h * wanted);
                continue;
            }
            const step_path path{state_, s1, k1, k4, h};
            const double begun = left_of(state_, time_of(x));
            const auto crossing = [&](double level) -> std::optional<double> {
                if (!(begun > level && left_of(s1, t_end) <= level)) return std::nullopt;
                return root_between([&](double v) { return left_of(path.at(v), time_of(x + v * h)) - level; }, 0.0, 1.0,
                                    "time of a loss");
            };
            if (!quarter_at_)
                if (const auto u = crossing(1.0 - inspection_loss)) quarter_at_ = time_of(x + *u * h);
            if (const auto u = crossing(grip_gone)) {
                const double t = time_of(x + *u * h);
                state_ = path.at(*u);
                heat_ = clamp_->at(state_, times_at(t), &heat_);
                record(t, heat_);
                fallen_ = true;
                return std::pair{t, heat_};
            }
            record_between(path, x, t_end, time_of);
            state_ = s1;
            if (clamp_->ageing().has_spring())
                state_.reached = std::max(state_.reached, clamp_->ageing().exponent(s1.parameter, t_end));
            heat_ = h4;
            k1 = k4;
            record(t_end, heat_);
            x += h;
            if (last) break;
            h *= wanted;
        }
        return std::nullopt;
    }

    // Points a twentieth of the horizon apart within a long step, for drawings.
    template <class TimeOf>
    void record_between(const step_path& path, double x, double t_end, const TimeOf& time_of)
    {
        constexpr double spacing = 1.0 / 20.0;
        const double t_begin = time_of(x);
        const int pieces = static_cast<int>((t_end - t_begin) / (spacing * horizon_));
        grip_heat near = heat_;
        for (int i = 1; i <= pieces; ++i) {
            const double t = t_begin + i * (t_end - t_begin) / (pieces + 1);
            const double u = (std::log(t - segment_start_ + (std::exp(x) - (t_begin - segment_start_))) - x) / path.h;
            near = clamp_->at(path.at(u), times_at(t), &near);
            if (!bad(near)) record(t, near);
        }
    }

    void record(double t, const grip_heat& h)
    {
        const clamp_solver& solver = clamp_->solver();
        if (bad(h)) return;
        hottest_spring_ = std::max(hottest_spring_, solver.air() + h.heat.rise[spring_place]);
        hottest_jaw_ = std::max(hottest_jaw_, h.jaw_peak_kelvin);
        spots_melt_ = spots_melt_ || h.heat.spots_melt;
        const auto point = [&](std::size_t place) { return temperature::kelvin(solver.air() + h.heat.rise[place]); };
        points_.push_back({in_si<duration>(t), h.condition.force_share * h.heat.warm * network_->force,
                           in_si<resistance>((h.heat.jaw_volts + h.heat.termination_volts) / solver.amps()),
                           temperature::kelvin(h.jaw_peak_kelvin), point(spring_place), point(handle_place),
                           in_si<length>(h.film_nm * nanometre)});
    }

    [[nodiscard]] grip_march finish(double t, const grip_heat& last)
    {
        grip_march out;
        out.left = left_of(state_, std::min(t, horizon_));
        out.end = end_of(last);
        out.spring_destroyed = last.heat.bound == clamp_bound::gripping && clamp_->ageing().has_spring();
        const bool softened = out.end == grip_end::fallen && last.open;
        if (out.end == grip_end::destroyed || out.end == grip_end::ran_away || softened) {
            if (out.spring_destroyed || softened) out.left = 0.0;
            // open from here on
            const temperature hot = temperature::kelvin(clamp_->solver().air() + last.heat.rise[jaw_place]);
            const auto at = [&](std::size_t place) {
                return temperature::kelvin(clamp_->solver().air() + last.heat.rise[place]);
            };
            points_.push_back({in_si<duration>(t),
                               {},
                               {},
                               hot,
                               at(spring_place),
                               at(handle_place),
                               in_si<length>(last.film_nm * nanometre)});
            hottest_spring_ = std::max(hottest_spring_, at(spring_place).in_kelvin());
        }
        if (!quarter_at_ && out.left <= 1.0 - inspection_loss) quarter_at_ = t;
        out.causes = causes(std::min(t, horizon_));
        out.film_factor = clamp_->ageing().film_factor(heat_.film_nm);
        if (!bad(last) && !fallen_) {
            clamp_condition still = heat_.condition;
            still.contact_factor = clamp_->ageing().film_factor(heat_.film_nm) *
                                   clamp_->ageing().untouched_factor(left_of(state_, std::min(t, horizon_)));
            const clamp_solver::state s = clamp_->solver().solve(still);
            if (s.bound == clamp_bound::none)
                out.untouched_ohm = (s.jaw_volts + s.termination_volts) / clamp_->solver().amps();
        }
        out.points = std::move(points_);
        out.quarter_at = quarter_at_;
        out.ended_at = t;
        out.hottest_spring = hottest_spring_;
        out.hottest_jaw = hottest_jaw_;
        out.steps = steps_;
        out.spots_melt = spots_melt_;
        return out;
    }

    [[nodiscard]] grip_end end_of(const grip_heat& last) const
    {
        constexpr double near_fold = 0.9;  // of its own heat that the contact's heat makes again; 1 at the fold
        if (fallen_) return grip_end::fallen;
        if (last.open) return std::isfinite(last.condition.contact_factor) ? grip_end::fallen : grip_end::worn;
        if (last.heat.bound == clamp_bound::melting) return grip_end::ran_away;
        if (last.heat.bound == clamp_bound::gripping)
            return clamp_->solver().returned(heat_.heat, heat_.condition) > near_fold ? grip_end::ran_away
                                                                                      : grip_end::destroyed;
        const double half = 0.5 * horizon_;
        const auto after =
            std::find_if(points_.begin(), points_.end(), [&](const grip_point& p) { return p.at.value() >= half; });
        if (after == points_.end()) return grip_end::horizon;
        return points_.back().force.value() >= (1.0 - settling_loss) * after->force.value() ? grip_end::settled
                                                                                            : grip_end::horizon;
    }

    // The logarithm of the jaws' resistance over that when new, taken apart; what the force law, the film and the
    // knocks do not explain is heat: hotter metal, hotter spots, a softer warm spring.
    [[nodiscard]] grip_causes causes(double t) const
    {
        const grip_times times = times_at(t);
        const grip_ageing& ageing = clamp_->ageing();
        const double m = network_->force_exponent;
        if (first_.open || !(first_.heat.jaw_volts > 0.0) || !(heat_.heat.jaw_volts > 0.0)) return {};
        const double whole = std::log(heat_.heat.jaw_volts / first_.heat.jaw_volts);
        const double by_force = std::max(0.0, -m * std::log(std::max(1e-300, ageing.held(state_, times))) +
                                                  std::log(ageing.still_factor(state_, times)));
        const double by_film = std::log(ageing.film_factor(heat_.film_nm));
        const double by_disturbance =
            -m * std::log(std::max(1e-300, ageing.unworn(times))) + std::log(ageing.knock_factor(times));
        const double by_heat = std::max(0.0, whole - by_force - by_film - by_disturbance);
        const double all = by_force + by_film + by_disturbance + by_heat;
        constexpr double rounding = 1e-12;
        if (!(all > rounding)) return {};
        return {by_force / all, by_film / all, by_heat / all, by_disturbance / all};
    }

    const ageing_clamp* clamp_;
    const clamp_network* network_;
    march_fineness fineness_;
    double horizon_, clean_every_, tighten_every_;
    grip_state state_ = {};
    grip_heat heat_ = {}, first_ = {};
    double tightened_ = 0.0, seated_ = 0.0, segment_start_ = 0.0;
    std::vector<grip_point> points_;
    std::optional<double> quarter_at_;
    double hottest_spring_ = 0.0, hottest_jaw_ = 0.0;
    int steps_ = 0;
    bool fallen_ = false, spots_melt_ = false;
};

}  // namespace detail

}  // namespace weldloop
