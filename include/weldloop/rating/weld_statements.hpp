#pragma once
/// @file
/// What the welder typically notices of an assessed loop, each statement with the number behind it.

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_inductance.hpp>
#include <weldloop/circuit/operating_point_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/current_rise.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/course_effects_of.hpp>
#include <weldloop/rating/weld_statement.hpp>

namespace weldloop {

namespace detail {

/// Thresholds of the statements; see weld_thresholds.
namespace weld_limit {
inline constexpr double soft = 0.10;             // of the volts at the terminals
inline constexpr double cold_by_volts = 0.12;    // of the same
inline constexpr double cold_by_current = 0.10;  // of the current
inline constexpr double ropy = 0.05;             // of the current
inline constexpr double start = 1.0 / 3.0;       // of the no-load voltage
inline constexpr double blow = 0.10;             // of the arc's current
inline constexpr double far_return = 0.5;        // m
inline constexpr double start_rise = 5e5;        // A/s
inline constexpr double choked = 0.10;           // of the no-load voltage; see course_thresholds
inline constexpr double blunt = 0.20;            // of the level's time
}  // namespace weld_limit

/// Whether inductance chokes a changing current. @param c what it meets
[[nodiscard]] inline bool is_choked(const course_effects& c)
{
    return c.alternates && c.share && c.share->typical >= weld_limit::choked;
}
/// Whether its edges take long. @param c what it meets
[[nodiscard]] inline bool is_blunt(const course_effects& c)
{
    return c.edge && c.edge->end != edge_end::not_known && c.edge->lost.typical >= weld_limit::blunt;
}
/// Share of the no-load voltage that the leads' inductance takes while the current rises to start an arc; 0 of a
/// tungsten arc, which is started by a spark or by lifting off, at a few amperes. @param s with a supply
[[nodiscard]] inline double share_of_start(const station& s)
{
    if (s.job.process == process::gtaw) return 0.0;
    const voltage open = voltage_without_load(*s.supply, {s.job.process, s.job.current});
    const voltage left =
        left_while_rising(open, lead_inductance_of(s).total, in_si<current_rate>(weld_limit::start_rise));
    return 1.0 - (left / open).value();
}

/// The statements on the weld that rest on the leads' inductance, of a station with a supply and a settled loop.
/// @param s the station @param loop at the job's current @param met where supply, loop and arc meet, or null
[[nodiscard]] inline std::vector<weld_id> inductive_statements(const station& s, const loop_state& loop,
                                                               const operating_point* met)
{
    std::vector<weld_id> out;
    if (met != nullptr && share_of_start(s) >= weld_limit::start) out.push_back(weld_id::poor_starts);
    const std::optional<course_effects> c = course_effects_of(s, loop, met);
    if (c && is_choked(*c)) out.push_back(weld_id::choked_current);
    if (c && is_blunt(*c)) out.push_back(weld_id::blunt_pulses);
    return out;
}

/// The current that supply and arc would have without the loss of leads and joints, with the arc's length held [A];
/// empty where that is not known, or no more. @param p found
[[nodiscard]] inline std::optional<current> current_without_loss(const station& s, const operating_point& p)
{
    if (!p.line_in_range) return std::nullopt;
    const arc_line line = arc_line_of(s);
    const length held = arc_length_of(s);
    const resistance extension = p.wire_extension_drop / p.current, reactance = p.inductive / p.current;
    const std::optional<source_point> without =
        output_line_of(*s.supply, {s.job.process, s.job.current}).meeting([&](double amps) {
            const current i = in_si<current>(amps);
            return std::hypot((arc_voltage_at(line, held, i) + extension * i).value(), (reactance * i).value());
        });
    if (!without || !(without->current > p.current)) return std::nullopt;
    return without->current;
}

/// What the loss of an assessed loop comes to in the year that its station states; empty without one, or without a
/// settled loop. The electrode melts more slowly as the current is less than without the loss, where the arc's length
/// is held; a feed that is held melts the same.
[[nodiscard]] inline std::optional<yearly_loss> year_of(const station& s, const assessment& found)
{
    if (!s.year || !found.conducts) return std::nullopt;
    loss_in_a_year l{.lost = (found.total_drop.typical - found.wire_extension_drop.typical) * s.job.current,
                     .arc_time = s.year->arc_time,
                     .tariff = s.year->tariff,
                     .hour_cost = s.year->hour_cost};
    if (found.operating && found.operating->is_found()) {
        const operating_point& p = *found.operating;
        l.lost = (p.loop_drop - p.wire_extension_drop) * p.current;
        if (p.held == arc_hold::arc_length && s.job.process != process::gtaw)
            if (const std::optional<current> without = current_without_loss(s, p))
                l.slower = 1.0 - (p.current / *without).value();
    }
    return yearly_loss_of(l);
}

/// Collects the statements on one assessed station.
class weld_writer {
public:
    weld_writer(const station& s, const assessment& found) : s_(s), found_(found) {}

    [[nodiscard]] std::vector<weld_statement> all()
    {
        if (!found_.conducts) return {};
        joints();
        if (s_.supply && found_.operating && found_.operating->is_found()) {
            volts();
            current_at_arc();
            start();
        }
        stray();
        return_place();
        if (found_.course) changing_current(*found_.course);
        std::stable_sort(out_.begin(), out_.end(),
                         [](const weld_statement& a, const weld_statement& b) { return a.id < b.id; });
        return out_;
    }

private:
    void say(weld_id id, double quantity, double threshold, std::string text)
    {
        out_.push_back({id, quantity, threshold, std::move(text)});
    }
    // in the two digits that the lie of the leads bears
    static std::string rough_percent(double share) { return to_text(fraction(std::min(1.0, share)), 2); }
    static std::string percent(double share) { return to_text(fraction(std::min(1.0, share))); }

    // " and leaves 79 V of the 80 V without load in the first instant"; empty without a supply. @param takes what is
    // missing then
    [[nodiscard]] std::string first_instant(voltage takes) const
    {
        if (!s_.supply) return {};
        const voltage open = voltage_without_load(*s_.supply, {s_.job.process, s_.job.current});
        return " and leaves " + to_text(std::max(voltage{}, voltage(open - takes)), "V") + " of the " +
               to_text(open, "V") + " without load in the first instant";
    }

    // A joint that was seen to make and break, whose spots melt, or that is open in a poor case.
    void joints()
    {
        for (const part_result& p : found_.parts) {
            if (!p.is_intermittent) continue;
            const std::string why = p.name + " is stated to make and break the circuit: ";
            say(weld_id::poor_starts, 1.0, 1.0,
                "Poor starts: " + why + "while it is open it takes all of the volts" +
                    (s_.supply ? first_instant(voltage_without_load(*s_.supply, {s_.job.process, s_.job.current}))
                               : std::string()) +
                    " (common practice, no source).");
            say(weld_id::spatter, 1.0, 1.0,
                "Spatter: " + why + "the arc typically goes out and comes back with it (common practice, no source).");
        }
        for (const part_result& p : found_.parts) {
            if (p.verdict != verdict::spots_melting || !(p.current.typical.value() > 0.0)) continue;
            const std::string why =
                p.name + " is at the melting drop of its metals, " + to_text(p.drop.typical, "V") + " across it";
            const std::string then = ": it typically makes and breaks the circuit (common practice, no source).";
            say(weld_id::poor_starts, p.softening_used, 1.0,
                "Poor starts: " + why + first_instant(p.drop.typical) + then);
            say(weld_id::spatter, p.softening_used, 1.0, "Spatter: " + why + then);
            return;
        }
        for (const part_result& p : found_.parts) {
            if (!p.open_in_poor_case || !(p.current.typical.value() > 0.0)) continue;
            say(weld_id::poor_starts, 1.0, 1.0,
                "Poor starts: in a poor case " + p.name +
                    " does not touch metal to metal: where that is so the circuit typically closes only after some "
                    "scraping or pressing (common practice, no source).");
            return;
        }
    }

    // What the circuit takes of the supply's volts where the arc pays for it: on a flat output.
    void volts()
    {
        if (steepness_of(*s_.supply, {s_.job.process, s_.job.current}) != output_steepness::flat) return;
        const operating_point& p = *found_.operating;
        const voltage lost = p.lost();
        const double share = (lost / p.terminals).value();
        const std::string numbers = to_text(lost, "V") + " of the " + to_text(p.terminals, "V") +
                                    " at the supply are lost in the circuit, " + percent(share);
        if (share >= weld_limit::soft)
            say(weld_id::arc_soft, share, weld_limit::soft,
                "Arc soft: " + numbers + "; said from " + percent(weld_limit::soft) +
                    " on (common practice, no source).");
        if (share >= weld_limit::cold_by_volts)
            say(weld_id::lack_of_fusion, share, weld_limit::cold_by_volts,
                "Risk of lack of fusion: " + numbers +
                    ", so that a heat input by the supply's meter, Q = k U I / v, is " +
                    percent((lost / (p.terminals - lost)).value()) + " above the weld's; said from " +
                    percent(weld_limit::cold_by_volts) + " on (common practice, no source).");
        if (p.held != arc_hold::wire_feed || !p.line_in_range) return;
        if (p.arc_length.value() < 0.0)
            say(weld_id::spatter, -p.arc_length.value(), 0.0,
                "Spatter: the loop leaves the arc " + to_text(p.arc_voltage, "V") +
                    ", less than an arc of no length typically asks for: the wire typically stubs into the work "
                    "(common practice, no source).");
        const length shorter = lost / usual_gradient();
        const length usual = usual_arc_length(s_.job.process);
        if (shorter >= usual)
            say(weld_id::spatter, shorter.value(), usual.value(),
                "Spatter: the " + to_text(lost, "V") + " lost in the circuit make the arc shorter by " +
                    to_text(shorter, "mm") + " at the same feed; said from its usual length, " + to_text(usual, "mm") +
                    ", on (common practice, no source).");
    }
    [[nodiscard]] arc_gradient usual_gradient() const
    {
        const arc_line line = arc_line_of(s_);
        return line.by_length.value() > 0.0 ? line.by_length : usual_arc_gradient(s_.job.process).typical;
    }

    // What the loop costs in current with the arc's length held: on a falling output, or one at its end.
    void current_at_arc()
    {
        const operating_point& p = *found_.operating;
        if (p.held != arc_hold::arc_length) return;
        const std::optional<current> without = current_without_loss(s_, p);
        if (!without) return;
        const double share = 1.0 - (p.current / *without).value();
        const std::string numbers = "the " + to_text(p.lost(), "V") + " that leads and joints take leave " +
                                    to_text(p.current, "A") + " of " + to_text(*without, "A") +
                                    " at the same arc length, " + percent(share) + " less";
        if (share >= weld_limit::ropy)
            say(weld_id::ropy_bead, share, weld_limit::ropy,
                "Ropy bead: " + numbers + "; said from " + percent(weld_limit::ropy) +
                    " on (common practice, no source).");
        if (share >= weld_limit::cold_by_current)
            say(weld_id::lack_of_fusion, share, weld_limit::cold_by_current,
                "Risk of lack of fusion: " + numbers + "; said from " + percent(weld_limit::cold_by_current) +
                    " on (common practice, no source).");
    }

    // What is left for the first instant with the leads' inductance as they lie.
    void start()
    {
        const voltage open = voltage_without_load(*s_.supply, {s_.job.process, s_.job.current});
        const station_inductance leads = lead_inductance_of(s_);
        const inductance l = leads.total;
        const double share = share_of_start(s_);
        if (share < weld_limit::start) return;
        say(weld_id::poor_starts, share, weld_limit::start,
            "Poor starts: the leads as they lie" + words_of_steel(leads) + " have " + to_text(l, "uH", 2) +
                ": for the current to rise by 500 A/ms they would take " + to_text(voltage(share * open), "V", 2) +
                " of " + to_text(open, "V") + " without load; said from a third on (common practice, no source).");
    }

    // ", with steel beside them typically (20 to 80 uH by what steel it is),"
    [[nodiscard]] static std::string words_of_steel(const station_inductance& leads)
    {
        if (!(leads.by_steel.value() > 0.0)) return {};
        return ", with the steel beside them, typically (" + to_text(leads.range.low, "uH", 2) + " to " +
               to_text(leads.range.high, "uH", 2) + " by what steel it is)";
    }

    // What the leads' inductance does to alternating current and to pulses.
    void changing_current(const course_effects& c)
    {
        if (is_choked(c))
            say(weld_id::choked_current, c.share->typical, weld_limit::choked,
                "Choked current: at " + to_text(c.frequency, "Hz") + " the inductance of the leads as they lie, " +
                    to_text(c.inductance.typical, "uH", 2) + ", typically takes " +
                    to_text(c.inductive.typical, "V", 2) + ", " + rough_percent(c.share->typical) +
                    " of the voltage without load; said from " + percent(weld_limit::choked) +
                    " on (judged, no source).");
        if (!is_blunt(c)) return;
        const course_edge& e = *c.edge;
        const std::string way = "from " + to_text(e.from, "A") + " to " + to_text(e.to, "A") + " the current ";
        say(weld_id::blunt_pulses, e.lost.typical, weld_limit::blunt,
            "Blunt pulses: " + way +
                (e.end == edge_end::too_few_volts
                     ? "typically does not get: the supply has too few volts"
                     : "typically takes " + to_text(e.takes.typical, "ms", 2) + " through the leads as they lie, " +
                           to_text(c.inductance.typical, "uH", 2) + ", of the " + to_text(e.time, "ms") + " there, " +
                           rough_percent(e.lost.typical) + " lost") +
                "; said from " + percent(weld_limit::blunt) + " on (judged, no source).");
    }

    // Pulses of one direction blow an arc as direct current does.
    [[nodiscard]] bool alternates() const
    {
        constexpr double even = 1e-9;  // of the effective value
        if (s_.supply && s_.supply->polarity == electrode_polarity::alternating) return true;
        return s_.job.course && !s_.job.course->is_dc() &&
               std::fabs(s_.job.course->mean().value()) <= even * s_.job.course->rms().value();
    }

    // Current that leaves the work by ways that are not meant for it crosses it beside the weld.
    void stray()
    {
        double share = 0.0;
        for (const way_result& w : found_.ways)
            if (w.kind == way_kind::stray) share += static_cast<double>(w.share);
        if (alternates()) return;  // alternating arcs are hardly blown
        if (share < weld_limit::blow) return;
        say(weld_id::arc_blow, share, weld_limit::blow,
            "Arc blow: " + percent(share) +
                " of the current leave the work by stray ways instead of the work clamp; "
                "said from " +
                percent(weld_limit::blow) + " on (common practice, no source).");
    }

    // Direct current that crosses the work to one side of the arc, where the station says how far.
    void return_place()
    {
        const arc& a = arc_in(s_);
        if (alternates() || a.returns_at != return_side::one_end || !a.to_return) return;
        if (*a.to_return < in_si<length>(weld_limit::far_return)) return;
        say(weld_id::arc_blow, a.to_return->value(), weld_limit::far_return,
            "Arc blow: the current crosses the work to one end of the weld, over " + to_text(*a.to_return, "m") +
                " to the clamp; direct current then typically blows the arc away from it; said from " +
                to_text(in_si<length>(weld_limit::far_return), "m") + " on (common practice, no source).");
    }

    const station& s_;
    const assessment& found_;
    std::vector<weld_statement> out_;
};

}  // namespace detail

/// The statements on the weld that an assessed loop calls for, in the order of weld_id; none for a sound loop, and none
/// for one without a settled state. All thresholds are common practice without a source (weld_thresholds); no
/// probability is given, for there are no data for one.
/// @param s the station @param found its assessment, with its operating point
[[nodiscard]] inline std::vector<weld_statement> weld_statements_for(const station& s, const assessment& found)
{
    return detail::weld_writer(s, found).all();
}

}  // namespace weldloop
