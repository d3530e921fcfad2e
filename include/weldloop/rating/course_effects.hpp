#pragma once
/// @file
/// What a current that changes meets in a loop: its impedance, the levels of pulses, the edges between them.

#include <optional>
#include <string_view>
#include <vector>

#include <weldloop/circuit/operating_state.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// @name Sources of what a changing current meets
/// @{
/// Levels of pulses.
inline constexpr source level_model{
    "each level of the current by itself: static output line, straight arc line, the loop's resistance at the heat of "
    "the job's effective current",
    {},
    "the period is short beside the time that leads and joints take to warm",
    source_kind::derived};
/// Edges between levels.
inline constexpr source edge_model{
    "L di/dt = U(i) - R i - arc(i) until 95 % of the change (by judgement)",
    {},
    "U: a supply that keeps a current gives its highest output, others their static line; a reversal first falls to "
    "zero, with supply and arc driving it together",
    source_kind::derived};
/// @}

/// How a level of a course is met.
struct level_point {
    weldloop::current asked = {};                                ///< [A] size of the current that the course states
    weldloop::duration time = {};                                ///< [s] it stands there
    operating_outcome outcome = operating_outcome::not_settled;  ///< `found`, `no_arc` or `beyond_line`
    weldloop::current current = {};  ///< [A] of a supply that keeps a current: what it gives; else as asked
    voltage terminals = {};          ///< [V] across the supply's terminals, by its static line
    voltage loop_drop = {};          ///< [V] that the loop takes, less what a supply makes good
    voltage arc_voltage = {};        ///< [V] that is left for the arc
    voltage arc_wants = {};          ///< [V] that the arc asks for at its length and that current; 0 where its line
                                     ///< does not reach so far
    bool is_held = false;            ///< the current comes within 5 % of the asked one, and the arc gets what it asks
};

/// What becomes of an edge.
enum class edge_end {
    reached,        ///< the level is reached while it lasts
    too_late,       ///< the level is over first
    too_few_volts,  ///< nothing is left to drive the current there
    not_known,      ///< the supply's line is not known all the way
};

/// The words for what becomes of an edge.
[[nodiscard]] constexpr std::string_view to_text(edge_end e)
{
    switch (e) {
    case edge_end::reached: return "reached";
    case edge_end::too_late: return "over before it is reached";
    case edge_end::too_few_volts: return "too few volts";
    case edge_end::not_known: return "not known";
    }
    return "not known";
}

/// The edge of a course that loses most.
struct course_edge {
    weldloop::current from = {};       ///< [A] with its sign
    weldloop::current to = {};         ///< [A] with its sign
    duration time = {};                ///< [s] at the level it leads to
    edge_end end = edge_end::reached;  ///< typically; look at it first
    band<duration> takes = {};         ///< [s] that the volts at hand need; of an edge that is reached or too late
    band<double> lost = {};  ///< share of the level's time that passes on the way, beyond the ramp that the course has;
                             ///< 1 where it is not reached
};

/// What a current that changes meets in a loop.
struct course_effects {
    weldloop::frequency frequency = {};    ///< [Hz] how often the course repeats
    weldloop::resistance resistance = {};  ///< [ohm] of the loop at the job's current, the skin effect in it
    double skin_ratio = 1.0;               ///< of the lead with the most: resistance over that for direct current
    band<weldloop::inductance> inductance =
        {};  ///< [H] of the leads as they lie, over what steel beside them may make of it
    band<weldloop::resistance> reactance = {};  ///< [ohm] X = 2 pi f L
    weldloop::current fundamental = {};         ///< [A] effective value of the first harmonic
    band<voltage> inductive = {};               ///< [V] that it takes along the reactance
    std::optional<band<double>> share = {};     ///< of the supply's volts without load that these are
    std::optional<band<voltage>> added = {};    ///< [V] more that alternating current without steady levels asks of the
                                                ///< supply for them, at right angles to loop and arc
    weldloop::current mean = {};                ///< [A] with its sign: what flows one way all the time
    bool alternates = false;                    ///< the current changes its direction
    std::vector<level_point> levels = {};       ///< in the order of the course; empty without a supply, and of one size
    std::optional<course_edge> edge = {};       ///< empty without a supply, and without steady levels
    weldloop::basis basis = {};                 ///< sources
};

}  // namespace weldloop
