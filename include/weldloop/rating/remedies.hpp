#pragma once
/// @file
/// What to do about a station, ranked by what each step would regain.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/sizing.hpp>

namespace weldloop {

/// A remedy is listed if it regains at least this much voltage, or cools its part by least_cooling.
inline constexpr voltage least_regain = in_si<voltage>(0.010);
/// See least_regain.
inline constexpr temperature_difference least_cooling = in_si<temperature_difference>(3.0);

/// What a loop may take where the station names no limit of its own.
inline constexpr source usual_loop_drop{
    "AWS Welding Handbook and the safety standard after it, as described in a trade article", "1938 to 1942",
    "4 V in both leads, basis of its table of lead sizes", source_kind::handbook};
/// [V], see usual_loop_drop.
inline constexpr voltage usual_allowed_drop = in_si<voltage>(4.0);
/// Share of the allowed rise from which a larger lead is offered.
inline constexpr double warm_lead_share = 0.9;

/// A change to a station: the words for it, and the station after it.
struct change {
    std::string what = {};        ///< an instruction in plain words
    std::size_t part = 0;         ///< place in the path, before the change
    station after = {};           ///< the station once it is done
    bool part_stays = true;       ///< false: the part is no longer in the path
    bool only_if_needed = false;  ///< a larger lead: worth it only where the lead is hot or the loop takes too much
};

namespace detail {

// Collects the changes a part invites.
class change_finder {
public:
    change_finder(const station& s, std::vector<change>& out) : s_(s), out_(out) {}

    void look_at(std::size_t index)
    {
        at_ = index;
        std::visit([this](const auto& part) { find(part); }, s_.path[index]);
    }

private:
    [[nodiscard]] std::string name() const { return name_of(s_.path, at_); }

    void offer(std::string what, path_part instead, bool only_if_needed = false)
    {
        change c{std::move(what), at_, s_, true, only_if_needed};
        std::visit(
            [this](auto& p) {
                if (p.name.empty()) p.name = name();
            },
            instead);
        c.after.path[at_] = std::move(instead);
        out_.push_back(std::move(c));
    }

    // The next size of the scale the lead is written in; where the lead runs too hot, the first that would not.
    [[nodiscard]] std::optional<cable> better_lead(const cable& c) const
    {
        std::optional<cable> best;
        for (const conductor_size& size :
             sizes_of(c.size.scale() == size_scale::square_mm ? size_family::metric : size_family::american)) {
            if (!(size > c.size)) continue;
            best = welding_cable(size, c.length).named(c.name);
            best->limit = c.limit;
            best->lay = c.lay;
            const load work{.current = s_.job.current, .duty = s_.job.duty};
            if (!heating_of(*best, s_.where, work).over_limit) break;
        }
        return best;
    }

    static bool is_bare(surface_state s) { return s == surface_state::clean; }

    void find(const cable& c)
    {
        if (static_cast<double>(c.missing_strands) > 0.0) {
            cable whole = c;
            whole.missing_strands = 0.0;
            whole.damaged_length = {};
            offer("cut the damaged length out of " + name() + " or replace the lead", whole);
        }
        if (const auto thicker = better_lead(c))
            offer("replace " + name() + " (" + to_text(c.size) + ") by " + to_text(thicker->size), *thicker, true);
        if (c.lay && (*c.lay == lay::coiled || *c.lay == lay::bundled)) {
            cable laid = c;
            laid.lay = lay::alone;
            offer("lay " + name() + " out straight (now " + std::string(to_text(*c.lay)) + ")", laid);
        }
        if (s_.where.lay == lay::coiled || s_.where.lay == lay::bundled) {
            change spread{"lay " + name() + " and the other leads out straight, apart from each other", at_, s_, true};
            spread.after.where.lay = lay::alone;
            const bool offered =
                std::any_of(out_.begin(), out_.end(), [](const change& o) { return o.what.starts_with("lay "); });
            if (!offered) out_.push_back(std::move(spread));
        }
    }

    void find(const lug& l)
    {
        if (static_cast<double>(l.missing_strands) > 0.0 || l.stamped.area() != l.size.area()) {
            lug fresh = l;
            fresh.missing_strands = 0.0;
            fresh.stamped = l.size;
            offer("cut " + name() + " off, cut back to bright flexible copper and crimp a lug made for " +
                      to_text(l.size) + " with every strand in it",
                  fresh);
        }
        const lug usual = crimped_lug(l.name, l.size);
        if (l.bolt_torque < 0.8 * usual.bolt_torque) {
            lug tight = l;
            tight.bolt_torque = usual.bolt_torque;
            tight.bolt_diameter = usual.bolt_diameter;
            offer("switch off and tighten the bolt of " + name() + " to " + to_text(usual.bolt_torque, "Nm"), tight);
        }
        if (!is_bare(l.palm)) {
            lug bright = l;
            bright.palm = surface_state::clean;
            offer("clean the palm of " + name() + " and its seat to bright metal", bright);
        }
    }

    void find(const contact& c)
    {
        if (!is_bare(c.surface)) {
            contact bright = c;
            bright.surface = surface_state::clean;
            offer("clear both faces of " + name() + " to bright metal (now " + std::string(to_text(c.surface)) + ")",
                  bright);
        }
        clamp_on_the_work();
    }

    // Bare part beats table: the clamp on the part that is welded leaves contact and table out of the path.
    void clamp_on_the_work()
    {
        for (std::size_t i = at_ + 1; i < s_.path.size(); ++i) bypass_to(i, at_, i);
        for (std::size_t i = 0; i < at_; ++i) bypass_to(i, i + 1, at_ + 1);
    }

    void bypass_to(std::size_t clamp, std::size_t from, std::size_t to)
    {
        const auto* w = std::get_if<work_connection>(&s_.path[clamp]);
        if (w == nullptr) return;
        for (std::size_t k = from; k < to; ++k)
            if (!std::holds_alternative<contact>(s_.path[k]) && !std::holds_alternative<plate>(s_.path[k])) return;
        work_connection bright = *w;
        bright.surface = surface_state::clean;
        bright.name = name_of(s_.path, clamp);
        change c{"move " + bright.name + " onto the part that is welded, on bright metal, and leave " + name() +
                     " out of the current's way",
                 at_, s_, false};
        c.after.path[clamp] = bright;
        c.after.path.erase(c.after.path.begin() + static_cast<std::ptrdiff_t>(from),
                           c.after.path.begin() + static_cast<std::ptrdiff_t>(to));
        out_.push_back(std::move(c));
    }

    void find(const work_connection& w)
    {
        if (!is_bare(w.surface)) {
            work_connection bright = w;
            bright.surface = surface_state::clean;
            offer("grind the seat of " + name() + " to bright metal (now " + std::string(to_text(w.surface)) + ")",
                  bright);
        }
        if (static_cast<double>(w.grip_lost) > 0.0) {
            work_connection fresh = w;
            fresh.grip_lost = 0.0;
            offer("replace " + name() + ": its spring has lost grip", fresh);
        }
        const current rated =
            std::clamp(std::max(w.clamp.rated_current, s_.job.current), in_si<current>(100.0), in_si<current>(1000.0));
        if (w.clamp.kind == clamp_kind::spring) {
            work_connection screwed = w;
            screwed.clamp = screw_clamp(rated);
            screwed.grip_lost = 0.0;
            offer("change " + name() + " for a screw clamp of " + to_text(rated, "A"), screwed);
        }
        if (w.clamp.kind != clamp_kind::bolted && w.clamp.rated_current < s_.job.current) {
            work_connection bigger = w;
            bigger.clamp = w.clamp.kind == clamp_kind::spring ? spring_clamp(rated) : screw_clamp(rated);
            bigger.grip_lost = 0.0;
            offer("change " + name() + " for one rated " + to_text(rated, "A") + ": it is too small for the current",
                  bigger);
        }
    }

    void find(const coupling& c)
    {
        coupling home(c.name, c.size);
        if (!is_bare(c.surface) || c.force < home.force) offer("clean " + name() + " and turn it home", home);
    }

    void find(const electrode_holder& h)
    {
        if (is_bare(h.surface)) return;
        electrode_holder bright = h;
        bright.surface = surface_state::clean;
        offer("clean the jaws of " + name(), bright);
    }

    void find(const plate&) {}
    void find(const arc&) {}
    void find(const wire_gun&) {}
    void find(const tig_torch&) {}

    const station& s_;
    std::vector<change>& out_;
    std::size_t at_ = 0;
};

}  // namespace detail

/// Every change the parts of a station invite, not yet weighed. @param s the station
[[nodiscard]] inline std::vector<change> changes_for(const station& s)
{
    std::vector<change> out;
    detail::change_finder finder(s, out);
    for (std::size_t i = 0; i < s.path.size(); ++i) finder.look_at(i);
    return out;
}

/// What to do about a station, the step that regains most first. Each step is weighed alone: the loop is solved with it
/// and without it, at the typical point of every joint's scatter. Steps that regain less than least_regain and cool
/// their part by less than least_cooling are left out, and so are larger leads where the lead is cool enough and the
/// loop takes no more than the station allows (4 V if it says nothing, see usual_loop_drop). In an open circuit the
/// steps that close it come first.
/// @param s the station
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] inline std::vector<remedy> remedies_for(const station& s)
{
    const loop_state before = solve_loop(s);
    std::vector<remedy> out;
    const bool takes_too_much = before.total_drop > s.allowed_drop.value_or(usual_allowed_drop);
    for (const change& c : changes_for(s)) {
        if (c.only_if_needed && !takes_too_much) {
            const cable& lead = std::get<cable>(s.path[c.part]);
            const temperature_difference allowed = lead.limit - s.where.air;
            if (before.parts[c.part].peak - s.where.air < warm_lead_share * allowed) continue;
        }
        const loop_state after = solve_loop(c.after);
        remedy r;
        r.what = c.what;
        r.part = name_of(s.path, c.part);
        const part_state& was = before.parts[c.part];
        r.restores_circuit = !was.conducts && (!c.part_stays || after.parts[c.part].conducts);
        r.restores_circuit = r.restores_circuit || (was.passes_bound && after.is_solved());
        if (before.outcome == loop_outcome::solved && after.outcome == loop_outcome::solved) {
            r.volts_regained = before.total_drop - after.total_drop;
            const temperature then = c.part_stays ? after.parts[c.part].peak : s.where.air;
            r.cooled_by = before.parts[c.part].peak - then;
        }
        if (r.restores_circuit || r.volts_regained >= least_regain || r.cooled_by >= least_cooling)
            out.push_back(std::move(r));
    }
    std::stable_sort(out.begin(), out.end(), [](const remedy& a, const remedy& b) {
        if (a.restores_circuit != b.restores_circuit) return a.restores_circuit;
        return a.volts_regained != b.volts_regained ? a.volts_regained > b.volts_regained : a.cooled_by > b.cooled_by;
    });
    return out;
}

}  // namespace weldloop
