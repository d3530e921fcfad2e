#pragma once
/// @file
/// How lost_volts.hpp is answered.

#include <cstddef>
#include <optional>
#include <variant>

#include <weldloop/circuit/operating_point_body.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/rating/lost_volts.hpp>

namespace weldloop {

namespace detail {

/// cost_of_lost_volts() with a loop that is known. @param known at the station's own current, typically
[[nodiscard]] inline lost_volts cost_of_lost_volts_from(const station& s, voltage lost, const known_loop& known)
{
    require_positive(lost, "lost volts");
    const std::size_t arc_at = checked_arc_index(s);
    if (!s.supply) throw missing_data_error("supply", "not described", "one with its output line");
    const arc_line line = arc_line_of(s);
    if (!(lost < line.at_no_length))
        throw out_of_range_error("lost volts", si_text(lost),
                                 "below what an arc of no length asks for, " + si_text(line.at_no_length));
    lost_volts out;
    out.lost = lost;
    const band<arc_gradient> gradient =
        std::get<arc>(s.path[arc_at]).line ? exactly(line.by_length) : usual_arc_gradient(s.job.process);
    if (line.by_length.value() > 0.0)
        out.arc_shorter = {lost / gradient.high, lost / gradient.typical, lost / gradient.low};

    // with the arc's length held, whatever holds it in the shop; a loop that takes less is an arc that asks for less
    station held = s;
    held.supply->feeding = wire_feeding::by_arc_voltage;
    const operating_point now = operating_point_from(held, scatter::typical, known);
    std::get<arc>(held.path[arc_at]).line = arc_line{line.at_no_length - lost, line.by_length, line.by_current};
    const operating_point without = operating_point_from(held, scatter::typical, known);
    out.outcome = now.is_found() ? without.outcome : now.outcome;
    if (out.outcome != operating_outcome::found) return out;
    out.current_now = now.current;
    out.current_without = without.current;
    if (const wire_gun* gun = gun_in(s))
        if (const std::optional<burn_off> wire = burn_off_of(s)) {
            out.feed_now = melting_speed(*wire, now.current, gun->extension);
            out.feed_without = melting_speed(*wire, without.current, gun->extension);
        }
    out.terminals_wanted = without.terminals + lost;
    if (s.supply->kind == supply_kind::constant_voltage) out.setting_wanted = s.supply->setting + lost;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const part_state &before = now.loop.parts[i], &then = without.loop.parts[i];
        if (std::holds_alternative<arc>(part_at(s, i)) || !(before.current.value() > 0.0)) continue;
        out.parts.push_back({name_of(s, i), i, before.loss, then.loss, before.peak, then.peak});
    }
    return out;
}

}  // namespace detail

[[nodiscard]] inline lost_volts cost_of_lost_volts(const station& s, voltage lost)
{
    return detail::cost_of_lost_volts_from(s, lost, {});
}

}  // namespace weldloop
