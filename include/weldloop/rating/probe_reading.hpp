#pragma once
/// @file
/// What a voltmeter and a thermometer should show at each part of a station as it is described.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/rating/arc_heated.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// What should be read at one part while current flows and the duty has settled.
struct probe_reading {
    std::size_t place = 0;                 ///< its number in the station, from 0
    std::string name = {};                 ///< as printed
    part_kind kind = part_kind::cable;     ///< what it is
    band<weldloop::current> current = {};  ///< [A] any, through it
    band<voltage> volts = {};              ///< [V] 0 or above, across it, 5, 50 and 95 % points, as far as probes reach
    std::optional<band<temperature>> peak = {};  ///< in the duty period, where a probe reaches: of a lead on its
                                                 ///< covering; empty where it is not known
    part_place peak_at = part_place::metal;      ///< where that is
    bool heated_by_arc = false;  ///< by what is not reckoned: no temperature is expected, and none is judged
};

/// Where a part peaks, in a word: what the network calls the jaws of a bolted lug is the lug.
/// @param s the station @param r a reading of it @throws as part_at()
[[nodiscard]] inline std::string peak_place_word(const station& s, const probe_reading& r)
{
    const auto* w = std::get_if<work_connection>(&part_at(s, r.place));
    const bool is_lug = w != nullptr && w->clamp.kind == clamp_kind::bolted && r.peak_at == part_place::jaws;
    return is_lug ? "lug" : std::string(to_text(r.peak_at));
}

/// The readings to expect at every part of a station. A gun or torch counts from its plug to its tip or collet: what
/// lies beyond, contact and wire, no probe reaches, and for it the loop is solved with all joints at their 5, 50 and 95
/// % points. Temperatures are those of the hottest place that a probe reaches: of a lead its covering, under which the
/// conductor is hotter; of holder, gun and torch none, since the arc heats them by what is not reckoned.
/// @param s the station @param found its assessment
/// @return in the order of the parts; none without a settled state @throws as solve_loop()
[[nodiscard]] inline std::vector<probe_reading> probe_readings_of(const station& s, const assessment& found)
{
    std::vector<probe_reading> out;
    if (!found.conducts) return out;
    const bool has_tip = std::any_of(found.parts.begin(), found.parts.end(), [](const part_result& p) {
        return p.kind == part_kind::wire_gun || p.kind == part_kind::tig_torch;
    });
    std::vector<loop_state> levels;
    if (has_tip)
        for (const scatter level : {scatter::low, scatter::typical, scatter::high})
            levels.push_back(solve_loop(s, level));
    const bool all_solved =
        std::all_of(levels.begin(), levels.end(), [](const loop_state& l) { return l.is_solved(); });
    for (const part_result& p : found.parts) {
        if (p.kind == part_kind::junction || p.kind == part_kind::workpiece) continue;
        probe_reading r{.place = p.place,
                        .name = p.name,
                        .kind = p.kind,
                        .current = p.current,
                        .volts = p.drop,
                        .peak_at = p.peak_at};
        r.heated_by_arc = is_heated_by_arc(p.kind);
        if (!p.places.empty() && !r.heated_by_arc) r.peak = p.peak;
        for (const place_result& at : p.places)
            if (p.kind == part_kind::cable && at.what == part_place::covering) {
                r.peak = at.peak;
                r.peak_at = at.what;
            }
        if (p.kind == part_kind::wire_gun || p.kind == part_kind::tig_torch) {
            if (!all_solved) continue;
            const auto to_the_tip = [&](const loop_state& l) -> voltage {
                const part_state& g = l.parts[p.place];
                return g.drop - g.extension_drop - g.tip_drop;
            };
            r.volts = {to_the_tip(levels[0]), to_the_tip(levels[1]), to_the_tip(levels[2])};
        }
        out.push_back(std::move(r));
    }
    return out;
}

}  // namespace weldloop
