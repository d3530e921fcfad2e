#pragma once
/// @file
/// How grip_time.hpp is answered.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/life/grip_ageing.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_time.hpp>

namespace weldloop {

namespace detail {

/// The life of a clamp without film, as times at which things happen [s of shift]; infinity for what does not.
struct grip_life {
    double loss = std::numeric_limits<double>::infinity();  // a share of the grip lost, a quarter unless said otherwise
    double end = std::numeric_limits<double>::infinity();   // no steady state, molten spots, or a tenth of the grip

    [[nodiscard]] grip_outlook within(double horizon) const
    {
        return end <= horizon ? grip_outlook::unstable : loss <= horizon ? grip_outlook::declines : grip_outlook::holds;
    }
};

/// The clamp as a function of its slow state alone: neither film nor knocks nor service. Its times are integrals over
/// the parameter of relaxation, dt = dP/(dP/dt); a clamp that ends has lost its grip.
class direct_clamp {
public:
    /// @param spots_must_hold a clamp whose spots melt has ended
    /// @param swing as for ageing_clamp
    direct_clamp(const clamp_solver& solver, const grip_ageing& ageing, const duty_cycle& duty, double contact_factor,
                 bool spots_must_hold, const clamp_swing* swing = nullptr)
        : clamp_(solver, ageing, duty, contact_factor, swing), spots_must_hold_(spots_must_hold)
    {
    }

    /// The whole life up to a horizon.
    [[nodiscard]] grip_life life(double horizon, double share_lost = inspection_loss) const
    {
        const double share_left = 1.0 - share_lost;
        grip_life out;
        place at{0.0, 0.0, clamp_.at(clamp_.ageing().start(), {}, nullptr)};
        if (bad(at.heat)) {
            out.loss = out.end = 0.0;
            return out;
        }
        const grip_ageing& ageing = clamp_.ageing();
        if (!ageing.has_spring()) return settled(at.heat, share_left, horizon, out);

        constexpr double first_moment = 1.0;  // s
        at.parameter = ageing.first_parameter(at.heat.felt.spring, first_moment);
        at.seconds = first_moment;
        const auto to_share = [&](double left) {
            if (ageing.bound_moves())
                run_to_exponent(at, ageing.exponent_at_share(left), horizon);
            else
                run(at, ageing.parameter_for(ageing.exponent_at_share(left), 1.0), horizon);
        };
        to_share(share_left);
        if (at.seconds <= horizon) out.loss = at.seconds;
        if (at.seconds <= horizon && !at.ended) to_share(grip_gone);
        if (at.seconds <= horizon) out.end = at.seconds;
        return out;
    }

private:
    [[nodiscard]] bool bad(const grip_heat& h) const
    {
        return h.open || h.heat.bound != clamp_bound::none || (spots_must_hold_ && h.heat.spots_melt);
    }

    // Where the spring is on its way.
    struct place {
        double parameter, seconds;
        grip_heat heat;
        bool ended = false;  // the steady states ended there
    };

    // A screw or bolt: bedding by the clock, settling by clock and heat, by the classical rule of Runge and Kutta in
    // the logarithm of time.
    [[nodiscard]] grip_life settled(const grip_heat& fresh, double share_left, double horizon, grip_life out) const
    {
        constexpr double usual_step = 1.0, shortest = 1e-3, first_moment = 1.0;
        const grip_ageing& ageing = clamp_.ageing();
        const auto left = [&](double decades, double t) { return ageing.held({.settled = decades}, {t, t, t}); };
        if (!(0.5 * horizon > 0.0)) return out;  // too short for a first moment
        double t = std::min(first_moment, 0.5 * horizon), decades = ageing.first_settled(fresh.felt.settling, t);
        grip_heat near = fresh;
        const auto slope = [&](double c, double at, bool& ends) {
            const grip_heat h = clamp_.at({.settled = c}, {at, at, at}, &near);
            ends = ends || bad(h) || left(c, at) <= grip_gone;
            if (!ends) near = h;
            return ends ? 0.0 : at * ageing.rates({.settled = c}, h.felt).settled;
        };
        double step = usual_step;
        while (t < horizon) {
            const double x = std::min(step, std::log(horizon / t));
            const double half = t * std::exp(0.5 * x), full = t * std::exp(x);
            bool ends = false;
            const double k1 = slope(decades, t, ends);
            const double k2 = slope(decades + 0.5 * x * k1, half, ends);
            const double k3 = slope(decades + 0.5 * x * k2, half, ends);
            const double k4 = slope(decades + x * k3, full, ends);
            const double next = decades + x / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
            const double k5 = slope(next, full, ends);
            if (ends && x > shortest) {
                step = 0.5 * x;
                continue;
            }
            if (ends) {
                out.end = full;
                out.loss = std::min(out.loss, full);
                return out;
            }
            if (!std::isfinite(out.loss) && left(next, full) <= share_left) {
                const auto over = [&](double u) {
                    const double v = 1.0 - u;
                    const double c = v * v * (1.0 + 2.0 * u) * decades + u * u * (1.0 + 2.0 * v) * next +
                                     x * u * v * (v * k1 - u * k5);
                    return left(c, t * std::exp(u * x)) - share_left;
                };
                const bool at_once = over(0.0) <= 0.0;
                out.loss = at_once ? t : t * std::exp(x * root_between(over, 0.0, 1.0, "time of a loss of grip"));
            }
            t = x < step ? horizon : full;
            decades = next;
        }
        return out;
    }

    // The last parameter with a steady state, between a place that has it and a parameter that has not.
    [[nodiscard]] double last_steady(const place& from, double high) const
    {
        constexpr int halvings = 24;
        double low = from.parameter;
        for (int i = 0; i < halvings; ++i) {
            const double middle = 0.5 * (low + high);
            const grip_heat h = heat_at(middle, from);
            if (bad(h)) {
                high = middle;
                continue;
            }
            low = middle;
        }
        return low;
    }

    // Time at one temperature that leads to a parameter [s].
    [[nodiscard]] static double seconds_to(double parameter, double kelvin)
    {
        return seconds_per_hour * std::pow(10.0, parameter / kelvin - larson_miller_constant);
    }

    // The clamp with its spring at a parameter on its way from a place: its hours as if the temperature stayed.
    [[nodiscard]] grip_heat heat_at(double parameter, const place& from) const
    {
        const grip_ageing& ageing = clamp_.ageing();
        const double before = ageing.seconds_before(), kelvin = ageing.scaled(from.heat.felt.spring),
                     t = (before + from.seconds) * std::pow(10.0, (parameter - from.parameter) / kelvin) - before;
        return clamp_.at({parameter, 0.0}, {t, t, t}, &from.heat);
    }

    // Goes on by one stretch, its time by Gauss and Legendre; shorter where the steady states end within it.
    void go(place& at, double end) const
    {
        const grip_heat there = heat_at(end, at);
        const bool ends = bad(there);
        if (ends) end = last_steady(at, end);
        const double width = end - at.parameter;
        const place begun = at;
        for (std::size_t g = 0; g < gauss; ++g) {
            const double parameter = begun.parameter + abscissa[g] * width;
            at.heat = heat_at(parameter, begun);
            at.seconds +=
                width * weight[g] / grip_ageing::parameter_rate(parameter, clamp_.ageing().scaled(at.heat.felt.spring));
        }
        at.parameter = end;
        at.ended = ends;
        if (!ends) at.heat = there;
    }

    // Of a wire whose rise counts several times a cold spring is below absolute zero as the law takes it: there nothing
    // happens, however long it lasts.
    [[nodiscard]] bool never_relaxes(place& at) const
    {
        if (clamp_.ageing().scaled(at.heat.felt.spring) > 0.0) return false;
        at.seconds = std::numeric_limits<double>::infinity();
        return true;
    }

    // Goes on until the exponent of the loss, whose bound opens with temperature and time, has a value.
    void run_to_exponent(place& at, double wanted, double horizon) const
    {
        constexpr double decades = 0.5;
        constexpr int halvings = 30;
        const auto there = [&](const place& p) { return clamp_.ageing().exponent(p.parameter, p.seconds) >= wanted; };
        const double stretch = decades * clamp_.ageing().scaled(at.heat.felt.spring);
        if (never_relaxes(at)) return;
        while (!there(at) && at.seconds <= horizon && !at.ended) {
            place next = at;
            go(next, at.parameter + stretch);
            if (there(next)) {
                place low = at, high = next;
                for (int i = 0; i < halvings; ++i) {
                    place middle = low;
                    go(middle, 0.5 * (low.parameter + high.parameter));
                    (there(middle) ? high : low) = middle;
                }
                next = high;
            }
            at = next;
        }
    }

    // Goes on to a parameter, to the end of the steady states, or until the time is over: Gauss and Legendre over
    // stretches of a decade of time.
    void run(place& at, double to, double horizon) const
    {
        constexpr double decades = 1.0;
        if (at.parameter >= to) return;
        // the spring never gets hotter on the way than it is at its end: held there from the start it would arrive
        // first
        const grip_heat goal = clamp_.at({to, 0.0}, {}, &at.heat);
        if (!bad(goal) && seconds_to(to, clamp_.ageing().scaled(goal.felt.spring)) > horizon) {
            at.seconds = std::numeric_limits<double>::infinity();
            at.heat = goal;
            return;
        }
        const double stretch = decades * clamp_.ageing().scaled(at.heat.felt.spring);
        if (never_relaxes(at)) return;
        while (at.parameter < to && at.seconds <= horizon && !at.ended) go(at, std::min(to, at.parameter + stretch));
    }

    static constexpr std::size_t gauss = 4;
    static constexpr std::array<double, gauss> abscissa{0.0694318442029737, 0.3300094782075719, 0.6699905217924281,
                                                        0.9305681557970263};
    static constexpr std::array<double, gauss> weight{0.1739274225687269, 0.3260725774312731, 0.3260725774312731,
                                                      0.1739274225687269};

    ageing_clamp clamp_;
    bool spots_must_hold_;
};

}  // namespace detail

[[nodiscard]] inline band<duration> hours_to_loss(const clamp_place& place, current through, fraction lost)
{
    const work_connection& joint = place.joint;
    const surroundings& where = place.where;
    const load work{.current = through, .duty = place.duty};
    require_positive(work.current, "welding current");
    const double share = static_cast<double>(lost);
    if (!(share > 0.0 && share <= 1.0 - grip_gone))
        throw out_of_range_error("share of the grip", number_text(share), "above 0, up to 0.9");
    const clamp_network network = clamp_network_of(joint, where);
    if (!(network.jaws.typical.value() > 0.0))
        throw bad_station_error("work clamp", "an open circuit", "a clamp whose jaws touch metal");
    const clamp_outside behind = lead_outside(place.lead, where, work);
    const double horizon = longest_forecast.value();
    const auto in_case = [&](detail::grip_case which) {
        if (!(pick(network.jaws, which == detail::grip_case::harsh ? scatter::low : scatter::typical).value() > 0.0))
            return duration{};
        const detail::clamp_solver solver(network, behind, work, detail::scatter_of(which));
        const detail::grip_ageing ageing(joint, where, {.film = false}, which,
                                         detail::first_spring_kelvin(joint, solver, work.duty));
        const detail::grip_life found =
            detail::direct_clamp(solver, ageing, work.duty, 1.0, false).life(horizon, share);
        return in_si<duration>(std::min(found.loss, horizon));
    };
    const duration harsh = in_case(detail::grip_case::harsh), typical = in_case(detail::grip_case::typical),
                   kind = in_case(detail::grip_case::kind);
    const duration middle = std::max(harsh, typical);
    return {harsh, middle, std::max(middle, kind)};
}

}  // namespace weldloop
