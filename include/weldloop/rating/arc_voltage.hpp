#pragma once
/// @file
/// What is left for the arc.

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/part/supply_line.hpp>

namespace weldloop {

/// The arc's share of the voltage, and what it is relative to.
struct arc_share {
    band<voltage> arc = {};                      ///< at the arc
    std::string relative_to = {};                ///< in words
    std::optional<band<voltage>> headroom = {};  ///< constant current: supply output left after arc and loop
    bool starved = false;                        ///< constant current: the supply cannot hold the current
    const source* from = nullptr;                ///< of the load line, where it was used
};

/// Voltage at the terminals of a constant-voltage supply at the job's current: its line, and what lies between
/// terminals and taps, up to the highest output where one is known [V]. @param s the supply @param use process and
/// current @param sensed drop between terminals and taps, 0 or above
/// @throws as output_line_of(), also for a drop that cannot be
[[nodiscard]] inline voltage terminal_voltage_of(const supply& s, const supply_use& use, voltage sensed)
{
    require_not_negative(sensed, "sensed drop");
    const voltage wanted = highest_output_at(s, use) + sensed;
    require_finite(wanted, "voltage at the terminals");
    return s.sensing && s.highest_output.value() > 0.0 ? std::min(s.highest_output, wanted) : wanted;
}

/// What a loop drop leaves for the arc.
///
/// Constant voltage: the setting less the loop's drop, the wire extension of a gun included. Constant current: the arc
/// keeps the conventional load voltage of its process; arc and drop come out of the supply's highest output, and
/// past it the arc gets what is left. No supply described: the conventional load voltage less the drop, a value
/// relative to a type-test load and no prediction of an arc. Of alternating current without steady levels the supply's
/// volts are first reduced to what is in phase with it, sqrt(U^2 - (X I)^2), with reactance_of().
/// @param s the station @param drop of the whole loop while current flows [V], any finite one: a second supply may turn
/// it round
/// @param sensed [V], 0 or above: typical part of it that lies between terminals and taps of remote sensing,
/// sensed_drop_of(): made good up to the supply's highest output. What a poor case adds to the drop is counted as not
/// made good.
/// @throws as conventional_load_voltage(), reactance_of(), terminal_voltage_of(); not_finite_error for the drop
[[nodiscard]] inline arc_share arc_share_of(const station& s, const band<voltage>& drop, voltage sensed = {})
{
    for (const voltage& one : {drop.low, drop.typical, drop.high}) require_finite(one, "drop of the loop");
    require_not_negative(sensed, "sensed drop");
    const voltage none = {};
    const auto left_of = [none](voltage all, voltage taken) { return std::max(none, all - taken); };
    const voltage load_line = conventional_load_voltage(s.job.process, s.job.current);
    const voltage across = reactance_of(s) * s.job.current;
    const std::string angles =
        across.value() > 0.0 ? ", the " + to_text(across, "V", 2) + " of the leads' reactance at right angles to both"
                             : std::string();
    arc_share out;
    if (s.supply && s.supply->kind == supply_kind::constant_voltage) {
        const voltage terminals =
            in_phase_of(terminal_voltage_of(*s.supply, {s.job.process, s.job.current}, sensed), across);
        out.arc = mapped(drop, [&](voltage d) { return left_of(terminals, d); });
        out.relative_to = s.supply->sensing ? "constant-voltage setting between the taps, less what the loop drops "
                                              "behind them"
                                            : "constant-voltage setting less the loop's drop";
        out.relative_to += angles;
        return out;
    }
    out.from = &load_line_source(s.job.process);
    if (s.supply) {
        const voltage highest = in_phase_of(highest_output_at(*s.supply, {s.job.process, s.job.current}), across);
        out.arc = mapped(drop, [&](voltage d) { return std::min(load_line, left_of(highest, d)); });
        out.headroom = mapped(drop, [&](voltage d) { return left_of(highest, d + load_line); });
        out.starved = drop.typical + load_line > highest;
        out.relative_to =
            out.starved ? "what the supply's highest output leaves after the loop's drop"
            : s.supply->kind == supply_kind::constant_current
                ? "conventional load voltage of the process, held by the constant-current supply"
                : "conventional load voltage of the process, which the supply's output leaves at the job's current";
        out.relative_to += angles;
        return out;
    }
    out.arc = mapped(drop, [&](voltage d) { return left_of(load_line, d); });
    out.relative_to =
        "relative to the conventional load line of the process: a type-test load, no prediction of an arc";
    return out;
}

}  // namespace weldloop
