#pragma once
/// @file
/// How clamp_life.hpp is answered.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/life/clamp_life.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/work_clamp_standard.hpp>

namespace weldloop {

namespace detail {

[[nodiscard]] inline std::optional<force> cable_force_of(const cable& lead)
{
    const double mm2 = lead.size.area().value() * 1e6;
    constexpr double rounding = 1e-9;
    if (mm2 < cable_masses.front().square_mm * (1.0 - rounding) ||
        mm2 > cable_masses.back().square_mm * (1.0 + rounding))
        return std::nullopt;
    return holding_force(holding_test_mass(lead.size.area()));
}

// When a history of force falls below a least one: between its points it falls with the logarithm of time, as
// relaxation does and as the points are spaced; on a straight line from the first.
[[nodiscard]] inline std::optional<duration> falls_below(const std::vector<grip_point>& points, force least)
{
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (points[i].force >= least) continue;
        if (i == 0) return points[0].at;
        const grip_point &a = points[i - 1], &b = points[i];
        const double share = ((a.force - least) / (a.force - b.force)).value();
        if (!(a.at.value() > 0.0)) return a.at + share * (b.at - a.at);
        return a.at * std::pow((b.at / a.at).value(), share);
    }
    return std::nullopt;
}

// In order: no case before a poorer one.
[[nodiscard]] inline clamp_hours in_order(clamp_hours h)
{
    const auto not_before = [](std::optional<duration>& t, const std::optional<duration>& poorer) {
        if (t) t = poorer ? std::optional(std::max(*t, *poorer)) : std::nullopt;
    };
    not_before(h.typical, h.poor);
    not_before(h.mild, h.typical);
    return h;
}

[[nodiscard]] inline clamp_hours quarter_hours(const grip_forecast& f)
{
    if (!f.quarter_lost) return {};
    const auto within = [&](duration t) { return t < f.horizon ? std::optional(t) : std::nullopt; };
    return in_order({within(f.quarter_lost->low), within(f.quarter_lost->typical), within(f.quarter_lost->high)});
}

[[nodiscard]] inline clamp_hours cable_hours(const grip_forecast& f, const std::optional<force>& needs)
{
    if (!needs) return {};
    return in_order(
        {falls_below(f.poor_points, *needs), falls_below(f.points, *needs), falls_below(f.kind_points, *needs)});
}

[[nodiscard]] inline grip_question question_of(const clamp_use& u)
{
    const clamp_outside behind = lead_outside(u.lead, u.where, u.load);
    return {u.joint, u.where, u.load, u.service, {behind, behind, behind}, u.horizon};
}

// Whether a clamp keeps its grip in one case: a lead that melts keeps nothing.
[[nodiscard]] inline bool keeps_grip(const clamp_use& u, const std::optional<force>& needs, grip_case which)
{
    const grip_question q = question_of(u);
    if (q.outside.typical.far >= conductor_melting_of(u.lead.metal)) return false;
    const grip_march m = march_case(q, network_of(q), which);
    if (m.quarter_at || (m.end != grip_end::horizon && m.end != grip_end::settled)) return false;
    return !needs || !falls_below(m.points, *needs);
}

// The largest x between two ends with which a case keeps its grip, to 1 %; nothing if it does not at the low one.
template <class Changed>
[[nodiscard]] std::optional<double> largest_kept(double low, double high, const Changed& keeps)
{
    constexpr double narrow = 1.01;
    if (!keeps(low)) return std::nullopt;
    if (keeps(high)) return high;
    while (high > narrow * low) {
        const double middle = std::sqrt(low * high);
        (keeps(middle) ? low : high) = middle;
    }
    return low;
}

class clamp_life_answer {
public:
    explicit clamp_life_answer(const clamp_use& u) : use_(u), needs_(cable_force_of(u.lead)) {}

    [[nodiscard]] clamp_life operator()()
    {
        clamp_life out;
        out.name = use_.joint.clamp.name;
        out.horizon = use_.horizon;
        out.forecast = grip_over_time(use_);
        out.cable_needs = needs_;
        out.quarter_lost = quarter_hours(out.forecast);
        out.cable_not_held = cable_hours(out.forecast, needs_);
        out.causes = out.forecast.causes;
        out.look_again = earlier(out.quarter_lost.poor, out.cable_not_held.poor);
        if (const duration end = out.forecast.poor_points.back().at; !out.look_again && end < use_.horizon)
            out.look_again = end;
        bearings(out);
        if (!out.keeps_poor()) cures(out);
        if (out.keeps_poor()) out.buy = out.name;
        out.basis.add(out.forecast.basis).add(clamp_cure_order).add(work_clamp_holding_test);
        out.basis.add(holding_friction_judgement).add(welding_cable_masses);
        return out;
    }

private:
    [[nodiscard]] static std::optional<duration> earlier(const std::optional<duration>& a,
                                                         const std::optional<duration>& b)
    {
        return a && b ? std::min(a, b) : a ? a : b;
    }

    template <class Change>
    [[nodiscard]] clamp_bearing<double> both(double low, double high, const Change& change) const
    {
        const auto in_case = [&](grip_case which, double to) {
            return largest_kept(low, to, [&](double x) {
                clamp_use u = use_;
                change(u, x);
                return keeps_grip(u, needs_, which);
            });
        };
        clamp_bearing<double> out;
        out.typical = in_case(grip_case::typical, high);
        if (out.typical) out.poor = in_case(grip_case::harsh, *out.typical);
        return out;
    }

    template <class Quantity, class Make>
    [[nodiscard]] static clamp_bearing<Quantity> made(const clamp_bearing<double>& b, const Make& make)
    {
        const auto one = [&](const std::optional<double>& x) {
            return x ? std::optional<Quantity>(make(*x)) : std::nullopt;
        };
        return {one(b.poor), one(b.typical)};
    }

    void bearings(clamp_life& out) const
    {
        constexpr double most_current = 5000.0, least_share = 0.01, least_rise = 1.0;
        out.largest_current =
            made<current>(both(1.0, most_current, [](clamp_use& u, double x) { u.load.current = in_si<current>(x); }),
                          [](double x) { return in_si<current>(x); });
        const duration period = use_.load.duty.period();
        out.largest_duty = made<fraction>(
            both(least_share, 1.0,
                 [&](clamp_use& u, double x) { u.load.duty = duty_cycle::of(std::min(1.0, x) * period, period); }),
            [](double x) { return fraction(std::min(1.0, x)); });
        const double highest = (hottest_work_asked - use_.where.air).value();
        if (highest > least_rise)
            out.hottest_work =
                made<temperature>(both(least_rise, highest,
                                       [](clamp_use& u, double x) {
                                           u.service.interpass = u.where.air + in_si<temperature_difference>(x);
                                       }),
                                  [&](double x) { return use_.where.air + in_si<temperature_difference>(x); });
    }

    // A change alone; listed if it typically keeps the grip. Returns whether it keeps the poor case.
    bool weigh(clamp_life& out, clamp_cure cure, const clamp_use& changed) const
    {
        if (!keeps_grip(changed, needs_, grip_case::typical)) return false;
        const grip_forecast f = grip_over_time(changed);
        cure.grip_left = f.grip_left;
        cure.grip_left_poor = f.grip_left_low;
        cure.keeps_poor = keeps_grip(changed, needs_, grip_case::harsh);
        out.cures.push_back(cure);
        return cure.keeps_poor;
    }

    void cures(clamp_life& out) const
    {
        if (use_.joint.surface != surface_state::clean) {
            clamp_use u = use_;
            u.joint.surface = surface_state::clean;
            u.joint.cable_jaw_surface.reset();
            weigh(out, {.kind = clamp_cure_kind::clean_surface}, u);
        }
        const std::optional<temperature> hot = use_.service.interpass ? use_.service.interpass : use_.joint.preheat;
        if (const auto& cooler = out.hottest_work.poor ? out.hottest_work.poor : out.hottest_work.typical;
            hot && cooler && *cooler < *hot) {
            clamp_use u = use_;
            u.service.interpass = *cooler;
            weigh(out, {.kind = clamp_cure_kind::cooler_work, .work = cooler}, u);
        }
        if (const auto& less = out.largest_current.poor ? out.largest_current.poor : out.largest_current.typical;
            less && *less < use_.load.current) {
            clamp_use u = use_;
            u.load.current = *less;
            weigh(out, {.kind = clamp_cure_kind::less_current, .amps = less}, u);
        }
        larger(out);
        kinds(out);
    }

    // The smallest of its make that keeps the poor case; of those that typically keep it only the first is listed.
    void larger(clamp_life& out) const
    {
        constexpr std::array ratings{100.0, 200.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0};
        if (use_.joint.clamp.kind == clamp_kind::bolted) return;
        std::optional<clamp_cure> first;
        for (const double amps : ratings) {
            if (!(amps > use_.joint.clamp.rated_current.value() * (1.0 + 1e-9))) continue;
            clamp_use u = use_;
            u.joint.clamp = same_make(use_.joint.clamp, in_si<current>(amps));
            u.joint.grip_lost = 0.0;
            clamp_life tried;
            const bool kept = weigh(tried, {.kind = clamp_cure_kind::next_size, .clamp = u.joint.clamp.name}, u);
            if (!tried.cures.empty() && !first) first = tried.cures.front();
            if (!kept) continue;
            first = tried.cures.front();
            out.buy = first->clamp;
            break;
        }
        if (first) out.cures.push_back(*first);
    }

    void kinds(clamp_life& out) const
    {
        const work_clamp& now = use_.joint.clamp;
        std::vector<work_clamp> others;
        const current rated = std::clamp(now.rated_current, in_si<current>(100.0), in_si<current>(1000.0));
        if (now.kind == clamp_kind::spring && now.make == clamp_make::stamped)
            others.push_back(cast_spring_clamp(rated));
        if (now.kind != clamp_kind::screw) others.push_back(screw_clamp(rated));
        if (now.kind != clamp_kind::bolted && needs_) others.push_back(bolted_work_lug(use_.lead.size));
        for (const work_clamp& c : others) {
            clamp_use u = use_;
            u.joint.clamp = c;
            u.joint.grip_lost = 0.0;
            if (c.kind == clamp_kind::bolted) u.service.openings = 0.0;
            if (weigh(out, {.kind = clamp_cure_kind::other_kind, .clamp = c.name}, u) && out.buy.empty())
                out.buy = c.name;
        }
    }

    clamp_use use_;
    std::optional<force> needs_;
};

}  // namespace detail

[[nodiscard]] inline clamp_life clamp_life_of(const clamp_use& use)
{
    return detail::clamp_life_answer(use)();
}

[[nodiscard]] inline std::vector<clamp_life_row> compare_clamp_lives(std::span<const work_clamp> clamps,
                                                                     const clamp_use& use)
{
    std::vector<clamp_life_row> out;
    const std::optional<force> needs = detail::cable_force_of(use.lead);
    for (const work_clamp& clamp : clamps) {
        clamp_use u = use;
        u.joint.clamp = clamp;
        u.joint.grip_lost = 0.0;
        if (clamp.kind == clamp_kind::bolted) u.service.openings = 0.0;
        const grip_forecast f = grip_over_time(u);
        out.push_back({clamp.name, f.grip_left, f.grip_left_low, detail::quarter_hours(f),
                       detail::cable_hours(f, needs), f.outlook, f.outlook_poor});
    }
    return out;
}

}  // namespace weldloop
