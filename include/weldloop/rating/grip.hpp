#pragma once
/// @file
/// How a clamp's grip changes with time: force -> resistance -> heat -> force, marched over hours of shift.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_element.hpp>
#include <weldloop/circuit/loop_heat.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/spring.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/rating/grip_forecast.hpp>

namespace weldloop {

/// @name Sources of the march
/// @{

/// Settling of joints without a spring.
inline constexpr source settling_judgement{"screw and bolted joints settle: 0.5 % of the force for each decade of "
                                           "hours after the first six minutes for a screw, 0.25 % for a bolt",
                                           "2026",
                                           {},
                                           source_kind::judgement};
/// Where the spring sits.
inline constexpr source spring_place_judgement{
    "a clamp's spring is as hot as its body", "2026", {}, source_kind::judgement};
/// When to inspect.
inline constexpr source quarter_grip_judgement{
    "a clamp is due for inspection when a quarter of its grip may be gone", "2026", {}, source_kind::judgement};
/// @}

/// Share of the grip whose loss calls for inspection; see quarter_grip_judgement.
inline constexpr double inspection_loss = 0.25;
/// Share of the grip below which a clamp counts as fallen off.
inline constexpr double grip_gone = 0.10;

namespace detail {

// Which end of every scatter a march is made for.
enum class grip_case { kind, typical, harsh };

struct clamp_stand {
    bool conducts = false;
    double resistance = 0.0;  // ohm at the job's current
    temperature mean = {}, peak = {};
};

// The clamp in its stretch of the loop.
struct clamp_stretch {
    std::vector<loop_element> elements;
    std::size_t clamp = 0;
    work_connection joint;
    surroundings where;
    weldloop::load load;

    [[nodiscard]] clamp_stand at(double lost, scatter level)
    {
        joint.grip_lost = std::clamp(lost, 0.0, 1.0);  // a spring colder than 20 degC pushes a little more: not counted
        elements[clamp].joint = joint_of(joint);
        loop_state state;
        state.parts.resize(elements.size());
        if (!is_closed(elements[clamp])) return {false, 0.0, where.air, where.air};
        for (part_state& p : state.parts) p.mean = p.peak = p.hottest_spot = where.air;
        solve_heat(elements, where, load, level, state);
        const part_state& p = state.parts[clamp];
        return {true, p.drop.value() / load.current.value(), p.mean, p.peak};
    }
};

// What holds the clamp, as a state that ages.
class grip_holder {
public:
    grip_holder(const work_clamp& clamp, grip_case which) : clamp_(&clamp), which_(which)
    {
        if (clamp.spring) spring_.emplace(clamp.spring->wire, clamp.spring->stress);
    }

    void advance(temperature body, duration dt)
    {
        if (spring_) spring_->advance(body, dt);
        age_ += dt.value();
    }

    // share of the cold force that is gone
    [[nodiscard]] double lost() const
    {
        if (spring_) {
            const relaxation r = spring_->result();
            return static_cast<double>(which_ == grip_case::kind      ? r.bracket.low
                                       : which_ == grip_case::typical ? r.bracket.typical
                                                                      : r.bracket.high);
        }
        constexpr double first_settling = 360.0;  // s
        const double per_decade = clamp_->kind == clamp_kind::screw ? 0.005 : 0.0025;
        const double factor = which_ == grip_case::kind ? 0.5 : which_ == grip_case::typical ? 1.0 : 2.0;
        return age_ > first_settling ? std::min(1.0, factor * per_decade * std::log10(age_ / first_settling)) : 0.0;
    }

    // a hot spring pushes less, and recovers when it cools
    [[nodiscard]] double warm_share(temperature body) const
    {
        constexpr pressure cold = in_si<pressure>(1.0);
        constexpr temperature hottest =
            temperature::celsius(1000.0);  // the spring is long destroyed; keeps the ratio above zero
        return clamp_->spring ? (modulus_at(cold, std::min(body, hottest)) / cold).value() : 1.0;
    }

    [[nodiscard]] bool destroyed() const { return spring_ && spring_->destroyed(); }
    [[nodiscard]] basis why() const
    {
        basis out;
        if (spring_)
            out.add(spring_->result().basis).add(spring_place_judgement);
        else
            out.add(settling_judgement);
        return out;
    }

private:
    const work_clamp* clamp_;
    grip_case which_;
    std::optional<relaxation_state> spring_;
    double age_ = 0.0;  // s
};

struct grip_march {
    std::vector<grip_point> points;
    double left = 1.0;
    std::optional<double> quarter_at;  // s
    bool fell = false, destroyed = false;
    basis why;
};

[[nodiscard]] inline grip_march march_grip(clamp_stretch stretch, grip_case which, duration horizon)
{
    constexpr double first_step = 60.0;     // s
    constexpr double growth = 1.6;          // of a step that changed little
    constexpr double largest_change = 2.0;  // K of body temperature within a step
    constexpr double smallest_step = 1.0;   // s
    constexpr int most_steps = 4000;        // bounded work

    const work_clamp clamp = stretch.joint.clamp;
    const double lost_before = static_cast<double>(stretch.joint.grip_lost);
    const scatter level = which == grip_case::kind      ? scatter::low
                          : which == grip_case::typical ? scatter::typical
                                                        : scatter::high;
    const auto total_lost = [&](double since) { return 1.0 - (1.0 - lost_before) * (1.0 - since); };

    grip_holder holder(clamp, which);
    grip_march out;
    clamp_stand now = stretch.at(total_lost(0.0), level);
    double time = 0.0, step = first_step;
    const auto record = [&](const grip_holder& h, const clamp_stand& at) {
        const double left = 1.0 - total_lost(h.lost());
        out.points.push_back({in_si<duration>(time), left * h.warm_share(at.peak) * clamp.force,
                              in_si<resistance>(at.resistance), at.peak});
    };
    record(holder, now);
    for (int i = 0; i < most_steps && time < horizon.value() && !out.fell; ++i) {
        const double dt = std::min(step, horizon.value() - time);
        grip_holder next = holder;
        // the harsh case keeps the spring at the peak of the duty period
        next.advance(which == grip_case::harsh ? now.peak : now.mean, in_si<duration>(dt));
        const double left = 1.0 - total_lost(next.lost());
        const clamp_stand then = stretch.at(1.0 - left * next.warm_share(now.peak), level);
        const double change = std::fabs((then.peak - now.peak).value());
        if (change > largest_change && dt > smallest_step && !next.destroyed()) {
            step = std::max(smallest_step, 0.5 * dt);
            continue;
        }
        const double before = 1.0 - total_lost(holder.lost());
        const double quarter = (1.0 - inspection_loss) * (1.0 - lost_before);
        if (!out.quarter_at && left <= quarter)
            out.quarter_at = before > left ? time + dt * (before - quarter) / (before - left) : time + dt;
        time += dt;
        holder = next;
        now = then;
        step = std::min(growth * dt, horizon.value() / 20.0);
        record(holder, now);
        out.destroyed = holder.destroyed();
        out.fell = out.destroyed || left <= grip_gone * (1.0 - lost_before) || !now.conducts;
    }
    out.left = 1.0 - holder.lost();
    out.why = holder.why();
    return out;
}

[[nodiscard]] inline grip_forecast forecast_grip(const clamp_stretch& stretch, duration horizon)
{
    const grip_march kind = march_grip(stretch, grip_case::kind, horizon);
    const grip_march typical = march_grip(stretch, grip_case::typical, horizon);
    const grip_march harsh = march_grip(stretch, grip_case::harsh, horizon);
    grip_forecast out;
    out.points = typical.points;
    out.horizon = horizon;
    out.grip_left = std::clamp(typical.left, 0.0, 1.0);
    out.grip_left_low = std::clamp(harsh.left, 0.0, 1.0);
    out.runs_away = typical.fell;
    out.spring_destroyed = typical.destroyed;
    const auto or_end = [horizon](const std::optional<double>& t) { return t ? in_si<duration>(*t) : horizon; };
    if (harsh.quarter_at) {
        out.quarter_lost =
            band<duration>{or_end(harsh.quarter_at), or_end(typical.quarter_at), or_end(kind.quarter_at)};
        out.inspect_by = out.quarter_lost->low;
    }
    out.basis.add(typical.why).add(harsh.why).add(quarter_grip_judgement);
    return out;
}

}  // namespace detail

/// Longest forecast, thirty years of hours.
inline constexpr duration longest_forecast = in_si<duration>(262800.0 * 3600.0);

/// The grip of a clamp over hours of shift, with the lead it carries.
///
/// At each step the force left gives the contact's resistance, the resistance gives drop and heat along the joint's
/// characteristic, the heat balance of clamp, work and lead gives the body's temperature in the periodic steady state
/// of the duty, and the spring relaxes at that temperature. Steps grow while little happens and are halved where the
/// body's temperature would move by more than 2 K. Three marches give the band: small resistance with the milder
/// relaxation, typical with the middle, large resistance with the harsher one at the peak of the duty period.
/// The end is a clamp that settles, or one that runs away: its spring destroyed or less than a tenth of its grip left.
///
/// Screw and bolted clamps have no spring; their small settling is judgement.
/// @param joint   the clamp on its work @param lead that it carries @param work current and duty
/// @param where   air around @param horizon hours of shift to look ahead [s], above 0 to 30 years
/// @throws not_finite_error, out_of_range_error; bad_station_error if the joint is open from the start
[[nodiscard]] inline grip_forecast grip_over_time(const work_connection& joint, const cable& lead, const load& work,
                                                  const surroundings& where, duration horizon)
{
    require_positive(work.current, "welding current");
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");
    detail::clamp_stretch stretch{{}, 0, joint, where, work};
    stretch.elements.push_back(element_of(joint, where, work.current, false));
    stretch.elements.push_back(element_of(lead, where, work.current, false));
    if (!is_closed(stretch.elements.front()))
        throw bad_station_error("work connection", "an open circuit", "a clamp whose jaws touch metal");
    grip_forecast out = detail::forecast_grip(stretch, horizon);
    out.basis.add(stretch.elements.front().basis);
    return out;
}

/// Hours of shift an assessment looks ahead, a year of single shifts.
inline constexpr duration usual_forecast = in_si<duration>(2000.0 * 3600.0);

/// The grip of a work connection among its neighbours in a station whose parts all conduct.
/// @param s the station @param index of the work connection in its path
/// @param horizon as for grip_over_time()
/// @return empty if the part is no work connection
[[nodiscard]] inline std::optional<grip_forecast> grip_in_station(const station& s, std::size_t index,
                                                                  duration horizon = usual_forecast)
{
    const std::size_t arc_at = checked_arc_index(s);
    if (index >= s.path.size())
        throw out_of_range_error("path index", std::to_string(index), "below " + std::to_string(s.path.size()));
    const auto* joint = std::get_if<work_connection>(&s.path[index]);
    if (joint == nullptr) return std::nullopt;
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");

    std::size_t first = index, last = index;
    const auto element_at = [&](std::size_t i) { return element_of(s.path[i], s.where, s.job.current, i < arc_at); };
    while (first > 0 && !element_at(first - 1).ends_chain) --first;
    while (last + 1 < s.path.size() && !element_at(last + 1).ends_chain) ++last;
    detail::clamp_stretch stretch{{}, index - first, *joint, s.where, {.current = s.job.current, .duty = s.job.duty}};
    for (std::size_t i = first; i <= last; ++i) {
        stretch.elements.push_back(element_at(i));
        if (!is_closed(stretch.elements.back())) return std::nullopt;
    }
    return detail::forecast_grip(stretch, horizon);
}

}  // namespace weldloop
