#pragma once
/// @file
/// How station_life.hpp is answered.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/life/clamp_life_body.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/life/joint_drift_body.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/rating/station_life.hpp>

namespace weldloop {

namespace detail {

class station_prospects {
public:
    station_prospects(const station& s, const assessment& found) : station_(s), found_(found) {}

    [[nodiscard]] clamp_prospect of(const part_result& p) const
    {
        clamp_prospect out;
        out.place = p.place;
        out.name = p.name;
        if (const cable* lead = cable_held_at(station_, p.place); lead != nullptr) {
            out.lead = name_of_cable(p.place);
            out.cable_needs = cable_force_of(*lead);
        }
        const grip_forecast& f = *p.grip;
        out.quarter_lost = quarter_hours(f);
        out.cable_not_held = cable_hours(f, out.cable_needs);
        out.causes = f.causes;
        out.untouched = f.untouched_resistance;
        if (out.untouched && !f.points.empty() && f.points.back().resistance.value() > 0.0)
            out.moved = f.points.back().resistance;
        out.keeps_typically = keeps(f, out.cable_needs, of_typical);
        out.keeps_poor = keeps(f, out.cable_needs, of_poor);
        if (out.keeps_poor) return out;
        for (const auto& t : {out.quarter_lost.poor, out.cable_not_held.poor})
            if (t) out.look_again = out.look_again ? std::min(*out.look_again, *t) : *t;
        const duration end = f.poor_points.empty() ? duration{} : f.poor_points.back().at;
        if (f.outlook_poor == grip_outlook::unstable) {
            if (end < f.horizon)
                out.poor_ends = end;
            else
                out.poor_melts = true;
            const duration ends = out.poor_ends.value_or(duration{});  // spots that melt do so from the start
            out.look_again = out.look_again ? std::min(*out.look_again, ends) : ends;
        }
        if (!p.with_stray_open) cures(out);
        return out;
    }

private:
    enum grip_level { of_typical, of_poor };

    // The same rule for what stands and for what is tried.
    [[nodiscard]] static bool keeps(const grip_forecast& f, const std::optional<force>& needs, grip_level level)
    {
        const clamp_hours dropped = cable_hours(f, needs);
        return level == of_poor ? f.outlook_poor == grip_outlook::holds && !dropped.poor
                                : f.outlook == grip_outlook::holds && !dropped.typical;
    }

    [[nodiscard]] std::string name_of_cable(std::size_t place) const
    {
        const cable* lead = cable_held_at(station_, place);
        for (std::size_t i = 0; i < parts_in(station_); ++i)
            if (std::get_if<cable>(&part_at(station_, i)) == lead) return name_of(station_, i);
        return {};
    }

    void cures(clamp_prospect& out) const
    {
        out.cures_sought = true;
        const auto& now = std::get<work_connection>(part_at(station_, out.place));
        if (now.surface != surface_state::clean) {
            work_connection bright = now;
            bright.surface = surface_state::clean;
            bright.cable_jaw_surface.reset();
            weigh(out, {.kind = clamp_cure_kind::clean_surface}, std::move(bright));
        }
        if (now.clamp.kind != clamp_kind::screw && now.clamp.kind != clamp_kind::bolted) {
            constexpr double least = 100.0, most = 1000.0;
            work_connection other = now;
            other.clamp = screw_clamp(in_si<current>(std::clamp(now.clamp.rated_current.value(), least, most)));
            other.grip_lost = 0.0;
            const std::string name = other.clamp.name;
            weigh(out, {.kind = clamp_cure_kind::other_kind, .clamp = name}, std::move(other));
        }
    }

    // A change alone, in the loop; listed if it typically keeps the grip.
    void weigh(clamp_prospect& out, clamp_cure cure, work_connection with) const
    {
        station changed = station_;
        part_at(changed, out.place) = std::move(with);
        const auto f = grip_in_station(changed, out.place, found_.service.horizon, found_.service.clamps);
        if (!f || !keeps(*f, out.cable_needs, of_typical)) return;
        cure.grip_left = f->grip_left;
        cure.grip_left_poor = f->grip_left_low;
        cure.keeps_poor = keeps(*f, out.cable_needs, of_poor);
        out.cures.push_back(std::move(cure));
    }

    const station& station_;
    const assessment& found_;
};

}  // namespace detail

[[nodiscard]] inline station_life station_life_of(const station& s, const assessment& found)
{
    station_life out{.service = found.service};
    const detail::station_prospects prospects(s, found);
    for (const part_result& p : found.parts)
        if (p.grip && !p.grip->points.empty()) out.clamps.push_back(prospects.of(p));
    out.joints = joints_over_time(s, found.service.horizon, found.service.joints);
    out.basis.add(out.joints.basis);
    for (const clamp_prospect& c : out.clamps)
        if (c.cable_needs)
            out.basis.add(work_clamp_holding_test).add(holding_friction_judgement).add(welding_cable_masses);
    return out;
}

}  // namespace weldloop
