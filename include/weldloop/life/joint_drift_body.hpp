#pragma once
/// @file
/// How joint_drift.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/bolt_relaxation.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/joint_ageing.hpp>
#include <weldloop/law/oxide_growth.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/life/joint_drift.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

namespace detail {

/// What a way of holding means for ageing.
struct hold_ageing {
    double spot_radius;  // m, see joint_spots_judgement
    double open_to_air;  // share, see joint_sealing_judgement
    double slips;        // that double the resistance over those of open faces, see fretting_recalled
    contact_shape shape;
    bool settles, feels_cycles;
};

[[nodiscard]] constexpr hold_ageing ageing_of(contact_hold h)
{
    constexpr double usual_spot = 5e-6, crimped_spot = 20e-6;
    constexpr double sealed = 0.05, pressed = 0.2;
    switch (h) {
    case contact_hold::crimp: return {crimped_spot, sealed, 100.0, contact_shape::flat, false, true};
    case contact_hold::bolt: return {usual_spot, pressed, 10.0, contact_shape::busbar, true, true};
    case contact_hold::screw: return {usual_spot, pressed, 10.0, contact_shape::flat, true, true};
    case contact_hold::spring: return {usual_spot, 1.0, 1.0, contact_shape::toothed_jaw, false, false};
    case contact_hold::resting:
    case contact_hold::sliding: return {usual_spot, 1.0, 1.0, contact_shape::toothed_jaw, false, false};
    }
    return {usual_spot, 1.0, 1.0, contact_shape::toothed_jaw, false, false};
}

/// Slips that double the resistance of open faces, see fretting_recalled: the mild end first.
inline constexpr band<double> doubling_slips{1e5, 1e4, 1e3};

/// A joint on its way.
struct ageing_joint {
    std::size_t part, contact;
    hold_ageing how;
    bolted_joint settling;
    bool grows_film;
    // slow states
    length oxide = {}, eaten = {};
    double decades = 0.0;
    // what the solved circuit says of it
    temperature with_current = {}, without = {}, mean = {};
    temperature_difference period_swing = {}, start_swing = {};
    double softening_used = 0.0, used_before = 1.0;
    double solved_ln_ratio = 0.0;  // with which it was solved
    // logarithms of what has raised its resistance
    double by_film = 0.0, by_force = 0.0, by_fretting = 0.0;
    // how it ends
    drift_case found = {};

    [[nodiscard]] double ln_ratio() const { return by_film + by_force + by_fretting; }
};

/// The joints of a circuit at one end of what may be, in time.
class drift_march {
public:
    drift_march(const station& s, const joint_service& service, scatter level)
        : station_(&s), service_(service), level_(level), solver_(s)
    {
        const loop_network& net = solver_.network();
        for (std::size_t i = 0; i < net.parts().size(); ++i)
            for (std::size_t k = 0; k < net.parts()[i].contacts.size(); ++k) {
                const loop_network::contact_at& c = net.parts()[i].contacts[k];
                const bool held_by_clamp = c.on_work && c.hold != contact_hold::resting;
                const bool seated_anew =
                    c.hold == contact_hold::spring && std::holds_alternative<electrode_holder>(part_at(s, i));
                if (held_by_clamp || seated_anew || c.hold == contact_hold::sliding) continue;
                const metal_pair& m = c.law->metals();
                joints_.push_back({.part = i,
                                   .contact = k,
                                   .how = ageing_of(c.hold),
                                   .settling = bolted_joint_of(m.first, m.second),
                                   .grows_film = grows_copper_oxide(m.first) || grows_copper_oxide(m.second)});
            }
    }

    /// @param horizon hours of shift [s] @param fineness share of the usual steps
    drift_end run(duration horizon, double fineness)
    {
        const double most_change = usual_change * fineness;
        if (!solve()) return {outcome_, {}};
        note_yielding(0.0);
        double now = 0.0, step = first_step * fineness;
        while (now < horizon.value()) {
            step = std::min(step, horizon.value() - now);
            const std::vector<ageing_joint> before = joints_;
            age(in_si<duration>(now), in_si<duration>(step));
            double change = 0.0;  // since the circuit was solved
            for (const ageing_joint& j : joints_)
                change = std::max(change, warmth_of(j) * (j.ln_ratio() - j.solved_ln_ratio));
            if (change > most_change && step > least_step) {
                joints_ = before;
                step = std::max(least_step, step * std::clamp(0.9 * most_change / change, 0.1, 0.7));
                continue;
            }
            // the last one is solved in any case: its numbers are asked for
            if (change < worth_solving * most_change && now + step < horizon.value()) {
                now += step;
                step *= growth;
                continue;
            }
            if (!solve()) {  // bisected: the loop's end is found to a hundredth of its time
                joints_ = before;
                if (step <= std::max(least_step, ends_within * now)) {
                    const drift_end out{outcome_, in_si<duration>(now)};
                    finish();
                    return out;
                }
                step = std::max(least_step, 0.5 * step);
                continue;
            }
            note_yielding(now + step);
            now += step;
            step *= growth;
        }
        finish();
        return {loop_outcome::solved, horizon};
    }

    [[nodiscard]] const std::vector<ageing_joint>& joints() const { return joints_; }
    [[nodiscard]] const loop_network& network() { return solver_.network(); }

private:
    static constexpr double usual_change = 0.06;  // of ln R in a step
    static constexpr double worth_solving = 0.5;  // of that
    static constexpr double first_step = 3600.0;  // s
    static constexpr double least_step = 1e-3;    // s
    static constexpr double growth = 1.5;
    static constexpr double ends_within = 0.01;   // of the time
    static constexpr double spots_used_up = 0.9;  // of their radius, see joint_spots_judgement
    static constexpr double least_force = 0.01;   // share: what is less has fallen apart

    // How much of a change of a joint counts: one far from its softening drop hardly warms anything, and of one that
    // has yielded the numbers are known, its heat alone goes on.
    [[nodiscard]] static double warmth_of(const ageing_joint& j)
    {
        constexpr double least = 0.1, by_use = 4.0;
        return j.found.yields ? least : std::clamp(by_use * j.softening_used, least, 1.0);
    }
    [[nodiscard]] double pick_level(const band<double>& mild_to_harsh) const { return pick(mild_to_harsh, level_); }

    [[nodiscard]] bool solve()
    {
        loop_network& net = solver_.network();
        for (const ageing_joint& j : joints_) net.part(j.part).contacts[j.contact].left = std::exp(-j.ln_ratio());
        constexpr double settled = 5e-3;  // K: a few per cent of a resistance move a joint by kelvins
        solve::periodic_state found;
        loop_state state = solver_.solve(level_, &found, {.near = has_state_ ? &state_ : nullptr, .settled = settled});
        if (state.outcome == loop_outcome::not_settled && has_state_)
            state = solver_.solve(level_, &found, {.settled = settled});
        outcome_ = state.outcome;
        if (!state.is_solved()) return false;
        const auto share = static_cast<double>(station_->job.duty.share());
        const auto at = [&net](double rise) { return temperature::kelvin(net.air() + rise); };
        for (ageing_joint& j : joints_) {
            const loop_network::contact_at& c = net.parts()[j.part].contacts[j.contact];
            const double on = loop_network::bulk_rise(c, found.on_mean), all = loop_network::bulk_rise(c, found.mean);
            j.with_current = at(on);
            j.without = share < 1.0 ? at((all - share * on) / (1.0 - share)) : j.with_current;
            j.mean = at(all);
            double least = std::numeric_limits<double>::infinity(), most = -least;
            for (const std::vector<double>& moment : found.trace) {
                least = std::min(least, loop_network::bulk_rise(c, moment));
                most = std::max(most, loop_network::bulk_rise(c, moment));
            }
            j.period_swing = in_si<temperature_difference>(found.trace.empty() ? 0.0 : most - least);
            j.start_swing = in_si<temperature_difference>(std::max(0.0, loop_network::bulk_rise(c, found.peak)));
            j.softening_used = state.parts[j.part].contacts[j.contact].softening_used;
            j.solved_ln_ratio = j.ln_ratio();
        }
        state_ = std::move(found);
        has_state_ = true;
        return true;
    }

    // All joints a step older, at the temperatures they have now.
    void age(duration now, duration step)
    {
        const auto share = static_cast<double>(station_->job.duty.share());
        const double rests = (service_.rest / service_.shift).value();
        const temperature air = station_->where.air;
        const duration then = now + step;
        const duration period = station_->job.duty.is_continuous() ? duration{} : station_->job.duty.period();
        const speed eaten = pick(corrosion_speed(service_.air), level_);
        const double slips = slips_an_hour(service_.motion) * (then / in_si<duration>(seconds_per_hour)).value();
        for (ageing_joint& j : joints_) {
            if (j.grows_film) {
                const auto felt = [](const temperature& t) { return std::min(t, hottest_oxide_growth); };
                j.oxide = copper_oxide_grown(j.oxide, felt(j.with_current), share * step);
                j.oxide = copper_oxide_grown(j.oxide, felt(j.without), (1.0 - share) * step);
                j.oxide = copper_oxide_grown(j.oxide, felt(air), rests * step);
                j.eaten += j.how.open_to_air * (eaten * ((1.0 + rests) * step));
                const double used = std::min(spots_used_up, (j.oxide + j.eaten).value() / j.how.spot_radius);
                j.by_film = -std::log1p(-used);
            }
            j.by_fretting = std::log1p(slips / (j.how.slips * pick_level(doubling_slips)));
            if (level_ == scatter::low) continue;  // see untouched_joint_judgement
            double left = 1.0;
            if (j.how.settles) {
                j.decades = settled_decades(j.decades, settling_pace(j.mean, j.settling.softening), step);
                j.decades = settled_decades(j.decades, settling_pace(air, j.settling.softening), rests * step);
                left = pick(bolt_force_left({}, j.decades, j.settling),
                            level_ == scatter::high ? scatter::low : scatter::typical);
            }
            if (j.how.feels_cycles) {
                const double starts = service_.starts * (then / service_.shift).value();
                const double periods = period.value() > 0.0 ? (then / period).value() : 0.0;
                left *= std::max(0.0, 1.0 - cycling_loss *
                                                ((j.start_swing / cycling_swing).value() * std::log10(1.0 + starts) +
                                                 (j.period_swing / cycling_swing).value() * std::log10(1.0 + periods)));
            }
            // a swing that shrinks gives no force back
            j.by_force = std::max(j.by_force, -force_law_exponent(j.how.shape) * std::log(std::max(least_force, left)));
        }
    }

    // Of the joints whose drop has passed the softening drop since the circuit was solved before, when it did.
    void note_yielding(double now)
    {
        for (ageing_joint& j : joints_) {
            if (!j.found.yields && j.softening_used >= 1.0) {
                const double passed =
                    j.used_before < 1.0 ? (1.0 - j.used_before) / (j.softening_used - j.used_before) : 0.0;
                j.found.yields = in_si<duration>(solved_at_ + passed * (now - solved_at_));
                write(j);
            }
            j.used_before = j.softening_used;
        }
        solved_at_ = now;
    }
    static void write(ageing_joint& j)
    {
        j.found.resistance_ratio = std::exp(j.ln_ratio());
        j.found.softening_used = j.softening_used;
        const double all = j.ln_ratio();
        if (all > 0.0) j.found.causes = {j.by_film / all, j.by_force / all, j.by_fretting / all};
    }
    void finish()
    {
        for (ageing_joint& j : joints_)
            if (!j.found.yields) write(j);
    }

    const station* station_;
    joint_service service_;
    scatter level_;
    loop_solver solver_;
    std::vector<ageing_joint> joints_;
    solve::periodic_state state_;
    bool has_state_ = false;
    double solved_at_ = 0.0;  // s of shift
    loop_outcome outcome_ = loop_outcome::not_settled;
};

/// The forecast with steps of another size. @param fineness share of the usual change in a step, above 0 to 1
[[nodiscard]] inline drift_forecast drift_in_steps(const station& s, duration horizon, const joint_service& service,
                                                   double fineness)
{
    require_positive(horizon, "horizon");
    require_within(horizon, duration{}, longest_forecast, "horizon");
    require_joint_service(service);
    drift_forecast out;
    out.horizon = horizon;
    out.clock = horizon * (1.0 + (service.rest / service.shift).value());
    drift_march poor(s, service, scatter::high), typical(s, service, scatter::typical), mild(s, service, scatter::low);
    out.poor = poor.run(horizon, fineness);
    out.typical = typical.run(horizon, fineness);
    out.mild = mild.run(horizon, fineness);
    const bool begins = out.typical.outcome == loop_outcome::solved || out.typical.at > duration{};
    for (std::size_t k = 0; begins && k < poor.joints().size(); ++k) {
        const ageing_joint& j = poor.joints()[k];
        const loop_network::contact_at& c = poor.network().parts()[j.part].contacts[j.contact];
        out.joints.push_back(
            {j.part, name_of(s, j.part), c.word, c.hold, j.found, typical.joints()[k].found, mild.joints()[k].found});
    }
    std::stable_sort(out.joints.begin(), out.joints.end(), [](const joint_drift& a, const joint_drift& b) {
        const auto never = in_si<duration>(std::numeric_limits<double>::infinity());
        const duration one = a.poor.yields.value_or(never), other = b.poor.yields.value_or(never);
        return one != other ? one < other : a.poor.softening_used > b.poor.softening_used;
    });
    out.basis.add(shrinking_spots).add(joint_spots_judgement).add(joint_sealing_judgement).add(copper_oxide_growth);
    out.basis.add(copper_corrosion_classes).add(cycling_judgement).add(bolt_relaxation_judgement);
    out.basis.add(untouched_joint_judgement).add(range_flag::relative_trend);
    if (service.motion != joint_motion::still) out.basis.add(fretting_recalled).add(joint_slips);
    return out;
}

}  // namespace detail

[[nodiscard]] inline drift_forecast joints_over_time(const station& s, duration horizon, const joint_service& service)
{
    constexpr double usual_steps = 1.0;
    return detail::drift_in_steps(s, horizon, service, usual_steps);
}

}  // namespace weldloop
