#pragma once
/// @file
/// How course_effects follow from a solved loop.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/course_levels.hpp>
#include <weldloop/circuit/loop_inductance.hpp>
#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/circuit/sensed_drop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/waveform_heating.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/current_rise.hpp>
#include <weldloop/law/source_line.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/rating/course_effects.hpp>

namespace weldloop::detail {

inline constexpr double edge_done = 0.95;  // of the change, from where on a level counts as reached; see edge_model

/// Works out what the course of a job meets in its loop, solved at the job's current.
class course_finder {
public:
    /// @param s with a course that is not direct @param loop solved @param met where supply, loop and arc meet, or null
    course_finder(const station& s, const loop_state& loop, const operating_point* met)
        : s_(s), course_(*s.job.course), met_(met), scale_((s.job.current / course_.rms()).value()),
          loop_(loop.total_drop / s.job.current), sensed_(sensed_drop_of(s, loop) / s.job.current)
    {
    }

    [[nodiscard]] course_effects operator()()
    {
        impedance();
        out_.mean = scale_ * course_.mean();
        out_.alternates = changes_sign();
        const std::vector<course_level> levels = levels_of(course_);
        if (s_.supply && !levels.empty()) {
            if (!has_one_working_point(course_))
                for (const course_level& l : levels) out_.levels.push_back(point_at(l));
            for (const course_level& l : levels) look_at_edge(l);
            if (!out_.levels.empty()) out_.basis.add(level_model);
            if (out_.edge) out_.basis.add(edge_model);
        }
        return std::move(out_);
    }

private:
    void impedance()
    {
        const station_inductance leads = lead_inductance_of(s_);
        out_.basis.add(loop_reactance).add(leads.basis);
        out_.frequency = course_.frequency();
        out_.resistance = loop_;
        for (const path_part& part : s_.path)
            if (const auto* lead = std::get_if<cable>(&part))
                out_.skin_ratio = std::max(out_.skin_ratio, waveform_ratio_of(*lead, course_));
        out_.inductance = leads.range;
        const auto turned = 2.0 * std::numbers::pi * out_.frequency;
        out_.reactance = mapped(leads.range, [&](inductance l) { return resistance(turned * l); });
        out_.fundamental = scale_ / std::numbers::sqrt2 * course_.harmonic(1);
        out_.inductive = mapped(out_.reactance, [&](resistance x) { return voltage(x * out_.fundamental); });
        if (!s_.supply) return;
        const voltage open = voltage_without_load(*s_.supply, {s_.job.process, s_.job.current});
        if (open.value() > 0.0) out_.share = mapped(out_.inductive, [&](voltage v) { return (v / open).value(); });
        // on a steady level nothing stands along the inductance; see reactance_of()
        if (met_ == nullptr || !changes_sign() || !levels_of(course_).empty()) return;
        const voltage in_phase = met_->arc_voltage + met_->loop_drop;
        out_.added = mapped(out_.inductive, [&](voltage v) {
            return in_si<voltage>(std::hypot(in_phase.value(), v.value())) - in_phase;
        });
    }

    [[nodiscard]] bool changes_sign() const
    {
        const double one_way = std::fabs(course_.mean().value()), both = course_.mean_absolute().value();
        constexpr double rounding = 1e-12;
        return one_way < both * (1.0 - rounding);
    }

    // The supply as it stands at a level: one that keeps a current is set to the level and holds it.
    [[nodiscard]] source_line line_at(current level) const
    {
        supply set = *s_.supply;
        if (set.kind == supply_kind::constant_current) {
            set.current_setting = {};
            set.rise = {};
        }
        return output_line_of(set, {s_.job.process, level});
    }
    [[nodiscard]] bool keeps_current() const { return s_.supply->kind == supply_kind::constant_current; }
    [[nodiscard]] voltage arc_takes(current through) const
    {
        return arc_voltage_at(arc_line_of(s_), arc_length_of(s_), through);
    }

    [[nodiscard]] level_point point_at(const course_level& l) const
    {
        level_point p{.asked = in_si<current>(scale_ * std::fabs(l.current.value())), .time = l.duration};
        if (!(p.asked.value() > 0.0)) {  // no current: no arc to hold
            p.outcome = operating_outcome::no_arc;
            p.is_held = true;
            return p;
        }
        const source_line line = line_at(p.asked);
        p.current = p.asked;
        if (keeps_current()) {
            const auto met = line.meeting([&](double amps) {
                const current i = in_si<current>(amps);
                return (loop_ * i + arc_takes(i)).value();
            });
            if (!met || !(met->current.value() > 0.0)) {
                p.outcome = operating_outcome::no_arc;
                p.current = {};
                return p;
            }
            p.current = met->current;
            p.terminals = met->voltage;
            p.loop_drop = loop_ * p.current;
        } else {
            const auto [least, most] = line.currents();
            if (p.asked < least || p.asked > most) {
                p.outcome = operating_outcome::beyond_line;
                p.current = {};
                return p;
            }
            p.terminals = line.at_current(p.asked).voltage;
            const voltage sensed = sensed_ * p.asked, highest = s_.supply->highest_output;
            const voltage made_good =
                highest.value() > 0.0 ? std::clamp(voltage(highest - p.terminals), voltage{}, sensed) : sensed;
            p.loop_drop = loop_ * p.asked - made_good;
            if (!(p.terminals > p.loop_drop)) {
                p.outcome = operating_outcome::no_arc;
                return p;
            }
        }
        p.outcome = operating_outcome::found;
        p.arc_voltage = p.terminals - p.loop_drop;
        // an arc line that does not reach so far asks for nothing
        if (arc_line_reaches(s_, p.current)) p.arc_wants = arc_takes(p.current);
        constexpr double close = 0.05, rounding = 1e-9;  // of the current; of the volts
        p.is_held = std::fabs((p.current - p.asked).value()) <= close * p.asked.value() &&
                    p.arc_voltage >= (1.0 - rounding) * p.arc_wants;
        return p;
    }

    // Edges to a larger size, and reversals: the others fall by themselves.
    void look_at_edge(const course_level& l)
    {
        // where one point stands for the course its current flows, else that of the levels
        const double scale = met_ != nullptr ? (met_->current / course_.rms()).value() : scale_;
        const double from = scale * l.before.value(), to = scale * l.current.value();
        const bool reverses = from * to < 0.0;
        if (!reverses && !(std::fabs(to) > std::fabs(from))) return;
        course_edge e{.from = in_si<current>(from), .to = in_si<current>(to), .time = l.duration};
        const double begin = reverses ? 0.0 : std::fabs(from), end = begin + edge_done * (std::fabs(to) - begin);
        const source_line line = line_at(in_si<current>(std::fabs(to)));
        const auto reach = line.currents();
        const current least = reach.first, most = reach.second;  // by name: no lambda may hold a part of a binding
        const bool is_measured = s_.supply->kind == supply_kind::measured;
        if (is_measured && (in_si<current>(end) > most || in_si<current>(begin) < least)) {
            e.end = edge_end::not_known;
        } else {
            const auto supply_volts = [&](double i) {
                if (keeps_current()) return s_.supply->highest_output.value();
                return in_si<current>(i) > most ? 0.0 : line.at_current(in_si<current>(i)).voltage.value();
            };
            const auto takes = [&](inductance leads) -> std::optional<duration> {
                // with a feed held the arc is as long as its working point has it
                const length arc_length = met_ != nullptr ? std::max(length{}, met_->arc_length) : arc_length_of(s_);
                const auto other = [&](double i) {
                    const current now = in_si<current>(i);
                    return (loop_ * now + arc_voltage_at(arc_line_of(s_), arc_length, now)).value();
                };
                const auto rising = [&](double i) { return supply_volts(i) - other(i); };
                const auto falling = [&](double i) { return supply_volts(i) + other(i); };
                const auto up = rise_time(leads, in_si<current>(begin), in_si<current>(end), rising);
                if (!up || !reverses) return up;
                return *up + *rise_time(leads, current{}, in_si<current>(std::fabs(from)), falling);
            };
            if (takes(out_.inductance.typical)) {
                e.takes = mapped(out_.inductance, [&](inductance leads) { return *takes(leads); });
                e.lost = mapped(e.takes,
                                [&](duration t) { return std::clamp(((t - l.ramp) / l.duration).value(), 0.0, 1.0); });
                if (e.takes.typical >= l.ramp + l.duration) e.end = edge_end::too_late;
            } else {
                e.end = edge_end::too_few_volts;
                e.lost = exactly(1.0);
            }
        }
        if (!out_.edge || e.end == edge_end::not_known || e.lost.typical > out_.edge->lost.typical) out_.edge = e;
    }

    const station& s_;
    const waveform& course_;
    const operating_point* met_;
    double scale_;
    resistance loop_, sensed_;  // over the job's current: what the loop takes, and what sensing makes good
    course_effects out_;
};

/// What the course of a job meets; empty for direct current. @param s the station @param loop solved at the job's
/// current, typically @param met where supply, loop and arc meet, or null
[[nodiscard]] inline std::optional<course_effects> course_effects_of(const station& s, const loop_state& loop,
                                                                     const operating_point* met)
{
    if (!s.job.course || s.job.course->is_dc() || !(s.job.course->rms().value() > 0.0) || !loop.is_solved())
        return std::nullopt;
    return course_finder(s, loop, met)();
}

}  // namespace weldloop::detail
