#pragma once
/// @file
/// How operating_point.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <variant>

#include <weldloop/circuit/course_levels.hpp>
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/circuit/sensed_drop.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/law/source_line.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

namespace detail {

[[nodiscard]] inline const arc& arc_in(const station& s)
{
    return std::get<arc>(s.path[checked_arc_index(s)]);
}

[[nodiscard]] inline const wire_gun* gun_in(const station& s)
{
    for (const path_part& p : s.path)
        if (const auto* g = std::get_if<wire_gun>(&p)) return g;
    return nullptr;
}

/// A loop that was solved already, at its station's own current: a search begins there without solving it again.
struct known_loop {
    const loop_state* state = nullptr;               ///< or null
    const solve::periodic_state* settled = nullptr;  ///< of it, where that has a settled state
    bool state_is_wanted = true;  ///< false: the point without the loop's state at it, one solved loop less
};

/// The loop at currents of its own; the last one solved is kept.
class loop_at_current {
public:
    loop_at_current(const station& s, scatter level, const known_loop& known)
        : s_(s), level_(level), known_(known), known_amps_(s.job.current.value())
    {
        if (known.state == nullptr || !known.state->is_solved() || known.settled == nullptr) return;
        near_ = *known.settled;
        near_amps_ = known_amps_;
    }

    /// Solves at a current. @param extension of the gun's wire, where it is another
    [[nodiscard]] const loop_state& solve(double amps, std::optional<length> extension = {})
    {
        s_.job.current = in_si<current>(amps);
        if (extension)
            for (path_part& p : s_.path)
                if (auto* g = std::get_if<wire_gun>(&p)) g->extension = *extension;
        if (known_.state != nullptr && amps == known_amps_ && !extension) return state_ = *known_.state;
        // a settled state of less current lies on the way from the cold; one of hardly more is as good a beginning
        constexpr double hardly_more = 1.02;
        const bool begins_near = near_amps_ > 0.0 && near_amps_ <= hardly_more * amps;
        solve::periodic_state found;
        state_ = loop_solver(s_).solve(level_, &found, {.near = begins_near ? &near_ : nullptr});
        if (!state_.is_solved() && begins_near) state_ = loop_solver(s_).solve(level_, &found);
        if (state_.is_solved()) {
            near_ = std::move(found);
            near_amps_ = amps;
        }
        return state_;
    }
    [[nodiscard]] const loop_state& state() const { return state_; }
    /// What lies between terminals and taps [V].
    [[nodiscard]] double sensed() const { return sensed_drop_of(s_, state_).value(); }

private:
    station s_;
    scatter level_;
    known_loop known_;
    double known_amps_, near_amps_ = 0.0;  // A; 0: nothing is near
    solve::periodic_state near_;
    loop_state state_;
};

/// Balance of supply, loop and arc of a checked station with a supply.
class operating_balance {
public:
    operating_balance(const station& s, scatter level, const known_loop& known)
        : s_(&s), line_(output_line_of(*s.supply, {s.job.process, s.job.current})), arc_(arc_line_of(s)),
          length_(arc_length_of(s)), reactance_(reactance_of(s).value()), loop_(s, level, known),
          state_is_wanted_(known.state_is_wanted)
    {
        out_.asked = s.job.current;
        out_.basis.add(operating_point_model);
        if (reactance_ > 0.0) out_.basis.add(loop_reactance);
        if (!arc_in(s).line) out_.basis.add(usual_arc_line_basis(s.job.process));
        if (s.supply->kind == supply_kind::measured) out_.basis.add(monotone_interpolation);
    }

    // The arc's length held: the loop's drop is carried on from the last two currents.
    [[nodiscard]] operating_point with_length_held()
    {
        out_.held = arc_hold::arc_length;
        constexpr int most_rounds = 60;
        constexpr double agreement = 1e-7, near_by = 1e-3, less = 0.7;  // of the current
        const auto [least, most] = line_.currents();
        double amps = std::clamp(s_->job.current, least, most).value(), too_much = most.value() * 2.0;
        if (!(amps > 0.0)) amps = s_->job.current.value();
        std::optional<double> before, drop_before;
        bool was_solved = false;
        for (int round = 0; round < most_rounds; ++round) {
            const loop_state& state = loop_.solve(amps);
            if (state.outcome == loop_outcome::open_circuit) return ended(operating_outcome::open_circuit);
            if (!state.is_solved()) {
                too_much = std::min(too_much, amps);
                amps = was_solved ? 0.5 * (*before + too_much) : less * amps;
                if (amps < 1e-3 * s_->job.current.value() || (was_solved && too_much - *before < 1e-6 * too_much))
                    return ended(operating_outcome::loop_not_settled);
                continue;
            }
            const double drop = drop_at_terminals(amps), ohmic = drop / amps;
            double slope = ohmic, by_heat = 0.0;  // V/A; V/A3
            if (before && *before != amps) {
                slope = std::clamp((drop - *drop_before) / (amps - *before), 0.1 * ohmic, 10.0 * ohmic);
                by_heat = (ohmic - *drop_before / *before) / (amps * amps - *before * *before);
            }
            // r i + k i^3 where more current makes more resistance, as heat does in leads; else straight
            const bool grows = by_heat > 0.0 && by_heat * amps * amps < ohmic;
            const auto loop_volts = [&](double i) {
                return grows ? (ohmic + by_heat * (i * i - amps * amps)) * i : drop + slope * (i - amps);
            };
            const auto load = [&](double i) { return std::hypot(loop_volts(i) + arc_volts(i), reactance_ * i); };
            const std::optional<source_point> met = line_.meeting(load);
            const bool two_are_known = before && *before != amps;
            before = amps;
            drop_before = drop;
            was_solved = true;
            if (!met && line_.at(line_.length()).voltage.value() > load(most.value())) {
                // volts to spare where the line ends: more current than is known of, unless the loop does not bear that
                if (amps == most.value()) return ended(operating_outcome::beyond_line);
                if (most.value() >= too_much) return ended(operating_outcome::loop_not_settled);
                amps = most.value();
                continue;
            }
            if (!met || !(met->current.value() > 0.0)) {
                // an arc that is not held at this drop may be at less current and heat
                amps *= less;
                if (amps < 1e-2 * s_->job.current.value())
                    return ended(least.value() > 0.0 ? operating_outcome::beyond_line : operating_outcome::no_arc);
                continue;
            }
            const double next = met->current.value();
            if (std::fabs(next - amps) <= agreement * amps) return written(amps, length_, {});
            // so near, the line through two solved loops is as close as the heat is settled
            if (!state_is_wanted_ && two_are_known && !s_->supply->sensing && std::fabs(next - amps) <= near_by * amps)
                return carried_on(next, loop_volts(next));
            amps = next < too_much ? next : 0.5 * (amps + too_much);
        }
        return ended(operating_outcome::not_settled);
    }

    // The feed held: the current is the feed's, the length what the volts leave.
    [[nodiscard]] operating_point with_feed_held()
    {
        out_.held = arc_hold::wire_feed;
        const arc& a = arc_in(*s_);
        const wire_gun* gun = gun_in(*s_);
        const std::optional<burn_off> wire = a.wire_feed ? burn_off_of(*s_) : std::nullopt;
        if (!wire) return at_current(s_->job.current.value(), {});
        require_positive(*a.wire_feed, "wire feed");
        out_.basis.add(burn_off_recalled).add(burn_off_by_diameter);
        // tip and work stay where they are: what the arc is shorter, the extension is longer. The drop of leads and
        // joints is taken as straight about the last current, that of the extension as its length and current.
        const double apart = (gun->extension + length_).value();
        constexpr int most_rounds = 60;
        constexpr double agreement = 1e-9;  // m
        double amps = s_->job.current.value(), extension = gun->extension.value();
        std::optional<double> before, leads_before;
        for (int round = 0; round < most_rounds; ++round) {
            const operating_point p = round == 0 ? at_current(amps, {}) : at_current(amps, in_si<length>(extension));
            if (round > 0 && !p.is_found()) return p;
            double leads = 0.0, slope = 0.0, wire_ohm = 0.0;
            if (p.is_found()) {
                leads = p.lost().value();
                slope = leads / amps;
                wire_ohm = extension > 0.0 ? p.wire_extension_drop.value() / (amps * extension) : 0.0;
                const double taken = std::clamp((apart - p.arc_length.value()), 0.0, apart);
                if (round > 0 && std::fabs(taken - extension) <= agreement) return p;
                if (before && *before != amps)
                    slope = std::clamp((leads - *leads_before) / (amps - *before), 0.1 * slope, 10.0 * slope);
            }
            const auto excess = [&](double e) {
                const current i = current_for_feed(*wire, *a.wire_feed, in_si<length>(e));
                const auto [least, most] = line_.currents();
                const double left = line_.at_current(std::clamp(i, least, most)).voltage.value() -
                                    (leads + slope * (i.value() - amps)) - wire_ohm * e * i.value();
                return e + arc_length_at(arc_, in_si<voltage>(std::max(0.0, left)), i).value() - apart;
            };
            if (p.is_found()) {
                before = amps;
                leads_before = leads;
            }
            // shorter than none, or longer than from tip to work, it cannot be: there the wire stubs
            extension = !p.is_found()          ? extension
                        : excess(0.0) >= 0.0   ? 0.0
                        : excess(apart) <= 0.0 ? apart
                                               : root_between(excess, 0.0, apart, "wire extension");
            amps = current_for_feed(*wire, *a.wire_feed, in_si<length>(extension)).value();
        }
        return ended(operating_outcome::not_settled);
    }

private:
    [[nodiscard]] double arc_volts(double amps) const
    {
        return arc_voltage_at(arc_, length_, in_si<current>(amps)).value();
    }
    // Drop of the loop as the output line feels it: sensing makes good a part of it, up to the highest output.
    [[nodiscard]] double drop_at_terminals(double amps) const
    {
        return loop_.state().total_drop.value() - made_good(amps);
    }
    [[nodiscard]] double made_good(double amps) const
    {
        if (!s_->supply->sensing) return 0.0;
        const double sensed = loop_.sensed();
        const double line = line_.at_current(std::min(in_si<current>(amps), line_.currents().second)).voltage.value();
        const double highest = s_->supply->highest_output.value();
        return highest > 0.0 ? std::clamp(highest - line, 0.0, sensed) : sensed;
    }

    [[nodiscard]] operating_point at_current(double amps, std::optional<length> extension)
    {
        const auto [least, most] = line_.currents();
        if (in_si<current>(amps) > most || in_si<current>(amps) < least) return ended(operating_outcome::beyond_line);
        const loop_state& state = loop_.solve(amps, extension);
        if (state.outcome == loop_outcome::open_circuit) return ended(operating_outcome::open_circuit);
        if (!state.is_solved()) return ended(operating_outcome::loop_not_settled);
        const voltage given = line_.at_current(in_si<current>(amps)).voltage;
        const double left = in_phase_of(given, in_si<voltage>(reactance_ * amps)).value() - drop_at_terminals(amps);
        if (!(left > 0.0)) return ended(operating_outcome::no_arc);
        return written(amps, arc_length_at(arc_, in_si<voltage>(left), in_si<current>(amps)), extension);
    }

    [[nodiscard]] operating_point written(double amps, length l, std::optional<length> extension)
    {
        operating_point out = out_;
        out.outcome = operating_outcome::found;
        out.current = in_si<current>(amps);
        out.loop_drop = loop_.state().total_drop;
        out.wire_extension_drop = loop_.state().extension_drop;
        out.made_good = in_si<voltage>(made_good(amps));
        out.arc_length = l;
        out.line_in_range = arc_line_reaches(*s_, out.current);
        out.arc_voltage = arc_.at_no_length + arc_.by_length * l + arc_.by_current * out.current;
        stand_at_right_angles(out);
        out.extension = extension;
        out.loop = loop_.state();
        return out;
    }
    void stand_at_right_angles(operating_point& out) const
    {
        out.inductive = in_si<voltage>(reactance_ * out.current.value());
        const voltage in_phase = out.arc_voltage + out.loop_drop;
        out.terminals =
            reactance_ > 0.0 ? in_si<voltage>(std::hypot(in_phase.value(), out.inductive.value())) : in_phase;
    }
    // A point beside the last solved loop. @param drop of the loop there [V]
    [[nodiscard]] operating_point carried_on(double amps, double drop) const
    {
        operating_point out = out_;
        out.outcome = operating_outcome::found;
        out.current = in_si<current>(amps);
        out.loop_drop = in_si<voltage>(drop);
        out.wire_extension_drop = loop_.state().extension_drop * (drop / loop_.state().total_drop.value());
        out.line_in_range = arc_line_reaches(*s_, out.current);
        out.arc_length = length_;
        out.arc_voltage = in_si<voltage>(arc_volts(amps));
        stand_at_right_angles(out);
        return out;
    }
    [[nodiscard]] operating_point ended(operating_outcome o) const
    {
        operating_point out = out_;
        out.outcome = o;
        out.line_in_range = arc_line_reaches(*s_, s_->job.current);
        return out;
    }

    const station* s_;
    source_line line_;
    arc_line arc_;
    length length_;
    double reactance_;  // ohm
    loop_at_current loop_;
    bool state_is_wanted_;
    operating_point out_;
};

}  // namespace detail

[[nodiscard]] inline arc_line arc_line_of(const station& s)
{
    return detail::arc_in(s).line.value_or(usual_arc_line(s.job.process));
}

[[nodiscard]] inline bool arc_line_reaches(const station& s, current i)
{
    require_not_negative(i, "arc current");
    if (detail::arc_in(s).line) return true;
    const std::optional<arc_line_range> range = usual_arc_line_range(s.job.process);
    return range && i >= range->least && i <= range->most;
}

[[nodiscard]] inline length arc_length_of(const station& s)
{
    const length l = detail::arc_in(s).length.value_or(usual_arc_length(s.job.process));
    return require_positive(l, "arc length");
}

[[nodiscard]] inline std::optional<burn_off> burn_off_of(const station& s)
{
    const wire_gun* gun = detail::gun_in(s);
    const electrode_polarity polarity = s.supply ? s.supply->polarity : electrode_polarity::not_stated;
    if (gun == nullptr || s.job.process != process::gmaw || polarity == electrode_polarity::negative ||
        polarity == electrode_polarity::alternating)
        return std::nullopt;
    return usual_burn_off(gun->wire, gun->wire_diameter);
}

[[nodiscard]] inline arc_hold arc_hold_of(const station& s)
{
    return s.supply && feeds_wire(s.job.process) && s.supply->feeding == wire_feeding::constant_speed &&
                   steepness_of(*s.supply, {s.job.process, s.job.current}) == output_steepness::flat
               ? arc_hold::wire_feed
               : arc_hold::arc_length;
}

namespace detail {

/// Whether the point of a station rests on nothing of its loop but the drop at the job's current: the feed holds that,
/// and nothing of the loop is made good.
[[nodiscard]] inline bool rests_on_job_drop(const station& s)
{
    return arc_hold_of(s) == arc_hold::wire_feed && !(arc_in(s).wire_feed && burn_off_of(s)) && !s.supply->sensing;
}

/// operating_point_of() with a loop that is known. @param known at the station's own current and that level
[[nodiscard]] inline operating_point operating_point_from(const station& s, scatter level, const known_loop& known)
{
    static_cast<void>(checked_arc_index(s));
    operating_point none;
    none.asked = s.job.current;
    none.outcome = !s.supply ? operating_outcome::no_supply : operating_outcome::not_steady;
    if (!s.supply || (s.job.course && !has_one_working_point(*s.job.course))) return none;
    operating_balance balance(s, level, known);
    return arc_hold_of(s) == arc_hold::wire_feed ? balance.with_feed_held() : balance.with_length_held();
}

}  // namespace detail

[[nodiscard]] inline operating_point operating_point_of(const station& s, scatter level)
{
    return detail::operating_point_from(s, level, {});
}

}  // namespace weldloop
