#pragma once
/// @file
/// What is found of a supply before any current flows: its no-load voltage against the hazard, and whether its kind and
/// its polarity suit the process.

#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/law/no_load_limit.hpp>
#include <weldloop/part/supply.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/rating/finding_id.hpp>

namespace weldloop {

/// Which supply a process wants.
inline constexpr source supply_for_process{
    "a wire fed at a constant speed wants a flat output; covered electrodes and tungsten arcs a steep one; a steep one "
    "feeds a cored wire or a submerged arc where the feeder follows the arc's voltage",
    {},
    {},
    source_kind::common_practice};
/// Which polarity a process wants.
inline constexpr source polarity_for_process{
    "solid wire is welded with the electrode positive; a tungsten electrode on the positive terminal overheats",
    {},
    {},
    source_kind::common_practice};

/// Whether a supply's output suits a process (common practice, supply_for_process): a flat output with a wire fed
/// at a constant speed; a steep one with covered electrodes, with tungsten arcs, and with cored wire and submerged arc
/// where the feeder follows the arc's voltage. @param s the supply @param use process and current of the job
/// @throws as output_line_of()
[[nodiscard]] inline bool suits_process(const supply& s, const supply_use& use)
{
    const bool is_flat = steepness_of(s, use) == output_steepness::flat;
    if (!feeds_wire(use.process)) return !is_flat;
    if (s.feeding == wire_feeding::constant_speed) return is_flat;
    return is_flat || use.process != process::gmaw;
}

/// Whether a polarity is one the process is welded with (common practice, polarity_for_process); one that is not
/// stated is. @param p polarity @param of process
[[nodiscard]] constexpr bool suits_process(electrode_polarity p, process of)
{
    if (of == process::gtaw) return p != electrode_polarity::positive;
    if (of == process::gmaw) return p == electrode_polarity::positive || p == electrode_polarity::not_stated;
    return true;  // covered electrodes, cored wires and submerged arc: by the make of the electrode
}

namespace detail {

/// What is found of a station's supply by itself, the gravest first.
[[nodiscard]] inline std::vector<finding_id> supply_finding_ids(const station& s)
{
    std::vector<finding_id> out;
    if (!s.supply) return out;
    if (standing_of(known_no_load_of(*s.supply, {s.job.process, s.job.current}), s.supply->hazard) ==
        no_load_standing::above_limit)
        out.push_back(finding_id::no_load_above_limit);
    if (!suits_process(*s.supply, {s.job.process, s.job.current})) out.push_back(finding_id::supply_does_not_suit);
    if (!suits_process(s.supply->polarity, s.job.process)) out.push_back(finding_id::polarity_does_not_suit);
    return out;
}

/// The sources of what is found of a supply.
inline void add_supply_sources(basis& out, const station& s)
{
    out.add(supply_for_process).add(steepness_judgement);
    if (s.supply->polarity != electrode_polarity::not_stated) out.add(polarity_for_process);
    const no_load_voltage open = known_no_load_of(*s.supply, {s.job.process, s.job.current});
    if (open.peak || open.rms) out.add(*no_load_limit_for(s.supply->hazard, s.supply->no_load.kind).from);
}

// "120 V peak, 85 V effective"
[[nodiscard]] inline std::string volts_of(std::optional<voltage> peak, std::optional<voltage> rms)
{
    std::string out;
    if (peak) out += to_text(*peak, "V") + " peak";
    if (rms) out += (out.empty() ? "" : ", ") + to_text(*rms, "V") + " effective";
    return out;
}

/// The sentence for a finding of supply_finding_ids().
[[nodiscard]] inline std::string words_of_supply(finding_id id, const station& s)
{
    const supply& from = *s.supply;
    const std::string process_word(to_text(s.job.process));
    switch (id) {
    case finding_id::no_load_above_limit: {
        const no_load_limit limit = no_load_limit_for(from.hazard, from.no_load.kind);
        const no_load_voltage open = known_no_load_of(from, {s.job.process, s.job.current});
        return "The supply's no-load voltage of " + volts_of(open.peak, open.rms) + " is above what is allowed for " +
               (from.hazard == shock_hazard::ordinary    ? "ordinary work"
                : from.hazard == shock_hazard::increased ? "work with increased hazard of shock"
                                                         : "torches held by a machine") +
               ", " + volts_of(limit.peak, limit.rms) + ": it is not used there. A lower one is no safe one either.";
    }
    case finding_id::supply_does_not_suit: {
        const bool is_flat = steepness_of(from, {s.job.process, s.job.current}) == output_steepness::flat;
        // a falling line can be nearly flat where the job stands on it
        const bool falls = from.kind == supply_kind::drooping || from.kind == supply_kind::engine_driven ||
                           from.kind == supply_kind::measured;
        if (falls && !feeds_wire(s.job.process))
            return "At " + to_text(s.job.current, "A") + " the output of this " + std::string(to_text(from.kind)) +
                   " supply hardly falls with the current, which does not suit " + process_word +
                   ": every touch of the electrode draws much more current (common practice).";
        if (!feeds_wire(s.job.process))
            return "A flat output does not suit " + process_word +
                   ": every touch of the electrode draws as much current as the loop lets through (common practice).";
        return std::string(is_flat ? "A flat" : "A steep") + " output does not suit " + process_word + " with " +
               (from.feeding == wire_feeding::constant_speed
                    ? "a wire fed at a constant speed: the arc does not hold its length, and typically stubs or burns "
                      "back (common practice)."
                    : "a feeder that follows the arc's voltage: a solid wire's arc changes faster than the feeder "
                      "(common practice).");
    }
    case finding_id::polarity_does_not_suit:
        return s.job.process == process::gtaw
                   ? "With the electrode positive a tungsten electrode typically overheats and melts (common practice)."
                   : "Solid wire is welded with the electrode positive; otherwise the arc typically wanders and "
                     "spatters, with little penetration (common practice).";
    default: return {};
    }
}

}  // namespace detail

}  // namespace weldloop
