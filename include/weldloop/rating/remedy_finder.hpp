#pragma once
/// @file
/// What the parts of a station invite somebody to change: what is wrong with each, and what would be larger.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/lead/larger_lead.hpp>
#include <weldloop/rating/remedy_change.hpp>

namespace weldloop {

/// From where a bolt is called loose.
inline constexpr source loose_bolt_judgement{
    "a bolt below 0.8 of its published torque is called loose", {}, {}, source_kind::judgement};
/// See loose_bolt_judgement.
inline constexpr double loose_bolt_share = 0.8;

/// How large a cable a gun or torch comes with.
inline constexpr source largest_gun_judgement{
    "guns and torches have cables of at most 95 mm2", {}, {}, source_kind::judgement};
/// See largest_gun_judgement.
inline constexpr conductor_size largest_gun_cable = square_mm(95);

/// Ratings offered for clamps and holders.
inline constexpr std::array offered_ratings{100.0, 150.0, 200.0, 250.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0};

/// The smallest rating offered that is no less than a current; the largest there is above that.
/// @param least [A], 0 or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current offered_rating_from(current least)
{
    require_not_negative(least, "least rated current");
    const auto* const at = std::find_if(offered_ratings.begin(), offered_ratings.end(),
                                        [&](double amps) { return in_si<current>(amps) >= least; });
    return in_si<current>(at == offered_ratings.end() ? offered_ratings.back() : *at);
}

/// Sections offered for a strap or bar, as multiples of what it has.
inline constexpr std::array offered_sections{1.5, 2.0, 3.0, 4.0};

namespace detail {

/// A part in larger and larger makes, one of which may do.
struct ladder {
    struct rung {
        std::string label;  // the size or rating
        path_part part;
    };
    std::string opening;  // an instruction that the label ends
    std::vector<rung> rungs;
};

/// Finds the changes a part invites. The part may be another than the one that stands at its place.
class change_finder {
public:
    change_finder(const station& s, std::size_t index) : s_(s), at_(index) {}

    /// What is wrong with it and can be put right.
    [[nodiscard]] std::vector<change> changes(const path_part& part)
    {
        out_.clear();
        std::visit([this](const auto& p) { find(p); }, part);
        return std::move(out_);
    }
    /// What stands in for it in larger makes, small to large; empty where there are none.
    [[nodiscard]] ladder larger(const path_part& part)
    {
        ladder_ = {};
        std::visit([this](const auto& p) { climb(p); }, part);
        for (ladder::rung& r : ladder_.rungs) keep_name(r.part);
        return std::move(ladder_);
    }

private:
    [[nodiscard]] std::string name() const { return name_of(s_, at_); }

    void keep_name(path_part& part) const
    {
        std::visit(
            [this](auto& p) {
                if (p.name.empty()) p.name = name();
            },
            part);
    }

    change& offer(remedy_id id, std::string what, remedy_effort effort, path_part instead)
    {
        keep_name(instead);
        out_.push_back(
            {.what = std::move(what), .id = id, .part = at_, .effort = effort, .parts = {{at_, std::move(instead)}}});
        return out_.back();
    }

    static bool is_bare(surface_state s) { return s == surface_state::clean; }

    // ---- what is wrong

    // A covering that is not whole: the lead is taken out of use, dried, replaced or terminated anew beyond the place.
    void offer_covering(covering_state was, path_part sound)
    {
        if (was == covering_state::wet)
            offer(remedy_id::whole_covering,
                  "take " + name() + " out of use, dry it, and look for the cut that let the water in",
                  remedy_effort::clean, std::move(sound));
        else
            offer(remedy_id::whole_covering,
                  "take " + name() +
                      " out of use; replace it, or cut the place out and terminate it anew (its covering is " +
                      std::string(to_text(was)) + ")",
                  remedy_effort::re_terminate, std::move(sound));
    }

    void find(const cable& c)
    {
        if (c.covering_state != covering_state::whole) {
            cable sound = c;
            sound.covering_state = covering_state::whole;
            offer_covering(c.covering_state, sound);
        }
        if (static_cast<double>(c.missing_strands) > 0.0) {
            cable whole = c;
            whole.missing_strands = 0.0;
            whole.damaged_length = {};
            offer(remedy_id::whole_lead, "cut the damaged length out of " + name() + " or replace the lead",
                  remedy_effort::re_terminate, whole);
        }
        if (c.lay && (*c.lay == lay::coiled || *c.lay == lay::bundled)) {
            cable laid = c;
            laid.lay = lay::alone;
            laid.coil_turns = laid.bundled_leads = std::nullopt;
            if (is_of_a_coil(c.steel)) laid.steel = steel_beside::none;
            offer(remedy_id::straight_lead,
                  "lay " + name() + " out straight (now " + std::string(to_text(*c.lay)) + ")", remedy_effort::move,
                  laid);
        }
        if (c.steel != steel_beside::none) {
            cable away = c;
            away.steel = steel_beside::none;
            offer(remedy_id::off_steel,
                  "lay " + name() + " away from the steel that is " + std::string(to_text(c.steel)) +
                      (is_of_a_coil(c.steel) ? "" : ", or pass both leads through the same opening"),
                  remedy_effort::move, away)
                .only_to_cure = true;
        }
    }

    void find(const lug& l)
    {
        if (static_cast<double>(l.missing_strands) > 0.0 || l.stamped.area() != l.size.area()) {
            lug fresh = l;
            fresh.missing_strands = 0.0;
            fresh.stamped = l.size;
            offer(remedy_id::fresh_crimp,
                  "cut " + name() + " off, cut back to bright flexible copper and crimp a lug made for " +
                      to_text(l.size) + " with every strand in it",
                  remedy_effort::re_terminate, fresh);
        }
        const lug usual = crimped_lug(l.name, l.size);
        if (l.bolt_torque < loose_bolt_share * usual.bolt_torque) {
            lug tight = l;
            tight.bolt_torque = usual.bolt_torque;
            tight.bolt_diameter = usual.bolt_diameter;
            offer(remedy_id::tight_bolt,
                  "switch off and tighten the bolt of " + name() + " to " + to_text(usual.bolt_torque, "Nm"),
                  remedy_effort::tighten, tight);
        }
        if (!is_bare(l.palm)) {
            lug bright = l;
            bright.palm = surface_state::clean;
            offer(remedy_id::clean, "clean the palm of " + name() + " and its seat to bright metal",
                  remedy_effort::clean, bright);
        }
    }

    void find(const contact& c)
    {
        if (!is_bare(c.surface)) {
            contact bright = c;
            bright.surface = surface_state::clean;
            offer(remedy_id::clean,
                  "clear both faces of " + name() + " to bright metal (now " + std::string(to_text(c.surface)) + ")",
                  remedy_effort::clean, bright);
        }
        const weldloop::force held = screw_clamp(usual_rating()).force;
        if (c.force < held) {
            contact pressed = c;
            pressed.force = held;
            pressed.surface = surface_state::clean;
            offer(remedy_id::pressed_faces,
                  (is_bare(c.surface) ? "" : "clear both faces of " + name() + " to bright metal and ") +
                      std::string("press ") + (is_bare(c.surface) ? name() : std::string("them")) +
                      " together with a screw clamp (" + to_text(held, "N") + ")",
                  remedy_effort::move, pressed);
        }
        clamp_on_the_work();
    }

    // Bare part beats table: the clamp on the part that is welded leaves contact and table out of the path.
    void clamp_on_the_work()
    {
        if (at_ >= s_.path.size()) return;
        std::size_t i = at_ + 1;
        while (i < s_.path.size() && is_table(i)) ++i;
        if (i < s_.path.size()) bypass_to(i, at_, i);
        i = at_;
        while (i > 0 && is_table(i - 1)) --i;
        if (i > 0) bypass_to(i - 1, i, at_ + 1);
    }
    [[nodiscard]] bool is_table(std::size_t i) const
    {
        return std::holds_alternative<contact>(s_.path[i]) || std::holds_alternative<plate>(s_.path[i]);
    }

    void bypass_to(std::size_t clamp, std::size_t from, std::size_t to)
    {
        const auto* w = std::get_if<work_connection>(&s_.path[clamp]);
        if (w == nullptr) return;
        work_connection bright = *w;
        bright.surface = surface_state::clean;
        bright.name = name_of(s_.path, clamp);
        out_.push_back({.what = "move " + bright.name + " onto the part that is welded, on bright metal, and leave " +
                                name() + " out of the current's way",
                        .id = remedy_id::moved_clamp,
                        .part = at_,
                        .effort = remedy_effort::move,
                        .parts = {{clamp, bright}},
                        .gone_from = from,
                        .gone_to = to});
    }

    [[nodiscard]] current usual_rating() const { return offered_rating_from(s_.job.current); }

    void find(const work_connection& w)
    {
        if (!is_bare(w.surface)) {
            work_connection bright = w;
            bright.surface = surface_state::clean;
            offer(remedy_id::clean,
                  "grind the seat of " + name() + " to bright metal (now " + std::string(to_text(w.surface)) + ")",
                  remedy_effort::clean, bright);
        }
        if (w.preheat && *w.preheat > s_.where.air) {
            work_connection away = w;
            away.preheat = {};
            offer(remedy_id::away_from_heat, "move " + name() + " away from where the work is kept hot",
                  remedy_effort::move, away);
        }
        if (static_cast<double>(w.grip_lost) > 0.0) {
            work_connection fresh = w;
            fresh.grip_lost = 0.0;
            if (w.clamp.kind == clamp_kind::spring)
                offer(remedy_id::new_spring, "replace " + name() + ": its spring has lost grip", remedy_effort::replace,
                      fresh);
            else
                offer(remedy_id::tight_clamp, "switch off and tighten " + name() + " again: it has lost grip",
                      remedy_effort::tighten, fresh);
        }
        const current rated = offered_rating_from(std::max(w.clamp.rated_current, s_.job.current));
        if (w.clamp.kind == clamp_kind::spring) {
            work_connection screwed = w;
            screwed.clamp = screw_clamp(rated);
            screwed.grip_lost = 0.0;
            offer(remedy_id::to_screw_clamp, "change " + name() + " for a screw clamp of " + to_text(rated, "A"),
                  remedy_effort::replace, screwed);
        }
        if (w.clamp.kind != clamp_kind::bolted && w.clamp.rated_current < s_.job.current) {
            work_connection bigger = w;
            bigger.clamp = same_make(w.clamp, rated);
            bigger.grip_lost = 0.0;
            offer(remedy_id::to_larger_clamp,
                  "change " + name() + " for one rated " + to_text(rated, "A") + ": it is too small for the current",
                  remedy_effort::replace, bigger);
        }
        if (w.clamp.kind != clamp_kind::bolted && work_lug_fits(w.clamp.largest_cable)) {
            work_connection bolted = w;
            bolted.clamp = bolted_work_lug(w.clamp.largest_cable);
            bolted.grip_lost = 0.0;
            bolted.surface = surface_state::clean;
            offer(remedy_id::to_bolted_lug, "change " + name() + " for a lug bolted to bright metal",
                  remedy_effort::replace, bolted)
                .only_to_cure = true;
        }
    }
    static bool work_lug_fits(const conductor_size& size)
    {
        return size.area() >= smallest_lug && size.area() <= largest_lug;
    }

    void find(const coupling& c)
    {
        coupling home = c;
        home.surface = surface_state::clean;
        home.force = std::max(c.force, usual_coupling_force(c.size));
        if (!is_bare(c.surface) || c.force < home.force)
            offer(remedy_id::turned_home, "clean " + name() + " and turn it home", remedy_effort::clean, home);
    }

    void find(const electrode_holder& h)
    {
        if (!is_bare(h.surface)) {
            electrode_holder bright = h;
            bright.surface = surface_state::clean;
            offer(remedy_id::clean, "clean the jaws of " + name(), remedy_effort::clean, bright);
        }
        electrode_holder fresh = h;
        fresh.force = electrode_holder().force;
        fresh.surface = surface_state::clean;
        if (h.force < fresh.force)
            offer(remedy_id::new_jaws, "replace " + name() + ": its jaws hardly press", remedy_effort::replace, fresh);
    }

    void find(const wire_gun& g)
    {
        lead_of(g);
        const length usual = usual_extension(s_.job.process);
        if (g.extension > usual) {
            wire_gun nearer = g;
            nearer.extension = usual;
            offer(remedy_id::nearer,
                  "hold " + name() + " nearer: " + to_text(usual, "mm") + " of wire beyond the tip (now " +
                      to_text(g.extension, "mm") + ")",
                  remedy_effort::move, nearer);
        }
    }
    void find(const tig_torch& t)
    {
        lead_of(t);
        if (t.cooling == torch_cooling::water) return;
        offer(remedy_id::water_cooled, "change " + name() + " for one cooled by water", remedy_effort::replace,
              tig_torch(name(), t.lead.length, torch_cooling::water))
            .only_to_cure = true;
    }
    // The lead inside a gun or torch is a lead.
    template <class Part>
    void lead_of(const Part& part)
    {
        const std::size_t before = out_.size();
        find(part.lead);
        for (std::size_t i = before; i < out_.size(); ++i) {
            Part other = part;
            other.lead = std::get<cable>(out_[i].parts.front().instead);
            other.lead.name = part.lead.name;
            out_[i].parts.front().instead = std::move(other);
            keep_name(out_[i].parts.front().instead);
        }
    }

    // Any part that says what can be otherwise with it.
    template <has_conditions Part>
    void find(const Part& p)
    {
        const part_conditions<Part> can = conditions_of(p);
        const bool has_gap = can.gap != nullptr && p.*can.gap > length{};
        if (can.surface != nullptr && !is_bare(p.*can.surface) && !has_gap) {
            Part bright = p;
            bright.*can.surface = surface_state::clean;
            offer(remedy_id::clean,
                  "clean the faces of " + name() + " to bright metal (now " + std::string(to_text(p.*can.surface)) +
                      ")",
                  remedy_effort::clean, bright);
        }
        if (can.tightening != nullptr && p.*can.tightening < loose_bolt_share * can.usual_tightening) {
            Part tight = p;
            tight.*can.tightening = can.usual_tightening;
            offer(remedy_id::tight_bolt,
                  "switch off and tighten " + name() + " to " + to_text(can.usual_tightening, "Nm"),
                  remedy_effort::tighten, tight);
        }
        if (can.missing_strands != nullptr && static_cast<double>(p.*can.missing_strands) > 0.0) {
            Part whole = p;
            whole.*can.missing_strands = 0.0;
            offer(remedy_id::fresh_joint,
                  "cut back to bright flexible copper at " + name() + " and join it with every strand",
                  remedy_effort::re_terminate, whole);
        }
        if (can.pressing != nullptr && p.*can.pressing < can.usual_pressing) {
            Part pressed = p;
            pressed.*can.pressing = can.usual_pressing;
            offer(remedy_id::new_springs,
                  "replace the springs of " + name() + ": they should press with " + to_text(can.usual_pressing, "N"),
                  remedy_effort::replace, pressed);
        }
        // what lies under it and what its faces are covered with are one layer, cleared in one step
        if (has_gap) {
            Part seated = p;
            seated.*can.gap = {};
            if (can.surface != nullptr) seated.*can.surface = surface_state::clean;
            offer(remedy_id::clear_seat,
                  "clear the seat of " + name() + " to bright metal, so that it sits flat and pulls in full (now " +
                      to_text(p.*can.gap, "mm") + " under it)",
                  remedy_effort::clean, seated)
                .for_its_hold = true;
        }
    }

    void find(const plate&) {}
    void find(const arc&) {}
    void find(const junction&) {}
    void find(const workpiece&) {}
    void find(const measured_part&) {}

    // ---- what would be larger

    template <class Make>
    void climb_sizes(const conductor_size& from, const Make& make,
                     const std::optional<conductor_size>& most = std::nullopt)
    {
        for (const conductor_size& size : sizes_of(family_of(from)))
            if (size > from && !(most && size > *most)) ladder_.rungs.push_back({to_text(size), make(size)});
    }
    template <class Make>
    void climb_ratings(current from, const Make& make)
    {
        for (const double amps : offered_ratings)
            if (const current rated = in_si<current>(amps); rated > from)
                ladder_.rungs.push_back({to_text(rated, "A"), make(rated)});
    }

    void climb(const cable& c)
    {
        ladder_.opening = "replace " + name() + " (" + to_text(c.size) + ") by ";
        climb_sizes(c.size, [&](const conductor_size& size) { return resized(c, size); });
    }
    template <class Part>
    void climb_inside(const Part& part)
    {
        ladder_.opening = "replace " + name() + " (cable of " + to_text(part.lead.size) + ") by one with a cable of ";
        climb_sizes(
            part.lead.size,
            [&](const conductor_size& size) {
                Part larger = part;
                larger.lead = resized(part.lead, size);
                return larger;
            },
            largest_gun_cable);
    }
    void climb(const wire_gun& g) { climb_inside(g); }
    void climb(const tig_torch& t) { climb_inside(t); }
    void climb(const electrode_holder& h)
    {
        ladder_.opening = "replace " + name() + " (" + to_text(h.rated, "A") + ") by one rated ";
        climb_ratings(h.rated, [&](current rated) {
            electrode_holder larger = h;
            larger.rated = rated;
            larger.size = std::max(h.size, usual_holder_cable(rated));
            return larger;
        });
    }
    void climb(const coupling& c)
    {
        ladder_.opening = "replace " + name() + " (" + to_text(c.size) + ") by one made for ";
        climb_sizes(c.size, [&](const conductor_size& size) {
            coupling larger(c.name, size);
            return larger;
        });
    }
    void climb(const work_connection& w)
    {
        if (w.clamp.kind == clamp_kind::bolted) return;
        ladder_.opening = "replace " + name() + " (" + to_text(w.clamp.rated_current, "A") + ") by one rated ";
        climb_ratings(w.clamp.rated_current, [&](current rated) {
            work_connection larger = w;
            larger.clamp = same_make(w.clamp, rated);
            larger.grip_lost = 0.0;
            return larger;
        });
    }
    // Any part that says what can be otherwise with it: more metal, where its section is one.
    template <has_conditions Part>
    void climb(const Part& p)
    {
        const auto section = conditions_of(p).section;
        if (section == nullptr) return;
        ladder_.opening = "replace " + name() + " (" + to_text(p.*section, "mm2") + ") by one of ";
        for (const double times : offered_sections) {
            Part larger = p;
            larger.*section *= times;
            ladder_.rungs.push_back({to_text(larger.*section, "mm2"), larger});
        }
    }
    void climb(const contact&) {}
    void climb(const plate&) {}
    void climb(const arc&) {}
    void climb(const junction&) {}
    void climb(const workpiece&) {}
    void climb(const measured_part&) {}

    const station& s_;
    std::size_t at_;
    std::vector<change> out_;
    ladder ladder_;
};

}  // namespace detail

namespace detail {
/// Whether another way or supply starts or ends at a point inside a way.
[[nodiscard]] inline bool holds_an_end(const station& s, std::size_t which)
{
    const std::size_t first = first_place_of_way(s, which);
    for (std::size_t i = 0; i < s.ways[which].path.size(); ++i) {
        if (!is_hub(s.ways[which].path[i])) continue;
        const std::string name = name_of(s, first + i);
        for (const way& w : s.ways)
            if (w.from == name || w.to == name) return true;
        for (const feed& f : s.others)
            if (f.from == name || f.to == name) return true;
    }
    return false;
}
}  // namespace detail

/// Every change that what is wrong with the parts of a station invites, not yet weighed. @param s the station
[[nodiscard]] inline std::vector<change> changes_for(const station& s)
{
    std::vector<change> out;
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        if (s.ways[w].kind != way_kind::stray || detail::holds_an_end(s, w)) continue;
        const std::size_t first = first_place_of_way(s, w);
        out.push_back({.what = "take " + name_of_way(s, w) +
                               " out of the welding circuit: unhook it, lift the work off it or insulate it from the "
                               "work; a protective earth stays connected to what it protects",
                       .id = remedy_id::stray_way_out,
                       .part = first,
                       .effort = remedy_effort::move,
                       .gone_from = first,
                       .gone_to = first + s.ways[w].path.size()});
    }
    bool laid = false;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        if (is_stray(s, i)) continue;  // it is taken out, never made fit to carry current
        const path_part& part = part_at(s, i);
        const auto* lead = std::get_if<cable>(&part);
        if (!laid && lead != nullptr && !lead->lay && (s.where.lay == lay::coiled || s.where.lay == lay::bundled)) {
            out.push_back({.what = "lay " + name_of(s, i) + " and the other leads out straight, apart from each other",
                           .id = remedy_id::straight_leads,
                           .part = i,
                           .effort = remedy_effort::move,
                           .lay = lay::alone});
            laid = true;
        }
        for (change& c : detail::change_finder(s, i).changes(part)) out.push_back(std::move(c));
    }
    return out;
}

}  // namespace weldloop
