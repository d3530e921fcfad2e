#pragma once
/// @file
/// The conditions that a part found in a shop may be in, each as the part it would then be.

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/path_part.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/condition_id.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/sizing.hpp>
#include <weldloop/rating/remedy_id.hpp>

namespace weldloop::detail {

/// Weights of conditions beside those of surfaces.
inline constexpr source condition_judgement{
    "what is wrong with parts at fault: a clamp or bare contact is loose as often as its faces bear one of the "
    "commoner "
    "states; the contact tip is what mostly wears in a gun",
    "2026",
    {},
    source_kind::judgement};
/// Of each degree of a loose clamp, surfaces weighing 0.3 to 3; see condition_judgement.
inline constexpr double loose_clamp_weight = 2.5;
/// Of a worn contact tip, a broken cable of the gun weighing 2; see condition_judgement.
inline constexpr double worn_tip_weight = 4.0;

/// What can be seen or felt of a condition without a meter.
struct condition_signs {
    std::optional<surface_state> surface = {};  // of its faces, where it is about them
    double tightness = 1.0;                     // of bolts, springs and plugs, over that described
    double strands_missing = 0.0;               // share
    bool arc_unsteady = false;                  // at a gun
};

/// A condition in words, and which it is.
struct named_condition {
    condition_id id;
    std::string words;
};
/// What cures it in words, and which remedy that is; none where there is nothing to do.
struct named_cure {
    std::optional<remedy_id> id;
    std::string words;
};

struct candidate {
    named_condition condition;
    double weight;  // among the faults of the part, before anything is read; 0 as described
    path_part part;
    named_cure cure;
    condition_signs signs = {};
    bool is_beyond_wear = false;  // worse than all that wear and dirt make: its rate and resistances stand in
                                  // fault_rates.hpp and failing_part.hpp, not in weight and part
    bool is_failing = false;      // of these, about to burn or part
};

/// Conditions of one part. The part as described comes first.
class candidate_maker {
public:
    explicit candidate_maker(std::string name) : name_(std::move(name)) {}

    [[nodiscard]] std::vector<candidate> operator()(const path_part& p)
    {
        std::visit([this](const auto& part) { list(part); }, p);
        std::visit([this](const auto& part) { list_failing(part); }, p);
        return std::move(out_);
    }

private:
    void add(named_condition condition, double weight, path_part p, named_cure cure, condition_signs signs = {})
    {
        out_.push_back({std::move(condition), weight, std::move(p), std::move(cure), signs});
    }

    void described(std::string words, path_part p, condition_signs signs = {})
    {
        add({condition_id::as_described, std::move(words)}, 0.0, std::move(p), {{}, "nothing to do at " + name_},
            signs);
    }

    // None of a state that is no fault, or that no current passes.
    static std::optional<condition_id> id_of(surface_state s)
    {
        switch (s) {
        case surface_state::clean: return std::nullopt;
        case surface_state::oxidized: return condition_id::oxidized;
        case surface_state::greasy: return condition_id::greasy;
        case surface_state::galvanized: return condition_id::galvanized;
        case surface_state::light_rust: return condition_id::light_rust;
        case surface_state::heavy_rust: return condition_id::heavy_rust;
        case surface_state::mill_scale: return condition_id::mill_scale;
        case surface_state::mill_scale_bitten: return condition_id::mill_scale_bitten;
        case surface_state::spatter_covered: return condition_id::spatter_covered;
        case surface_state::painted_pierced: return condition_id::painted_pierced;
        case surface_state::painted_unbroken: return std::nullopt;
        }
        return std::nullopt;
    }

    static double weight_of(surface_state s)
    {
        switch (s) {
        case surface_state::clean: return 0.0;  // no fault, whatever is described
        case surface_state::oxidized: return 3.0;
        case surface_state::greasy: return 1.0;
        case surface_state::galvanized: return 0.3;
        case surface_state::light_rust: return 2.0;
        case surface_state::heavy_rust: return 0.7;
        case surface_state::mill_scale: return 1.0;
        case surface_state::mill_scale_bitten: return 1.0;
        case surface_state::spatter_covered: return 2.0;
        case surface_state::painted_pierced: return 1.0;
        case surface_state::painted_unbroken: return 0.0;
        }
        return 1.0;
    }

    template <class P>
    void surfaces(const P& part, surface_state P::*where)
    {
        described("as described (" + std::string(to_text(part.*where)) + ")", part, {.surface = part.*where});
        for (const surface_state s : all_surface_states) {
            const std::optional<condition_id> id = id_of(s);
            if (s == part.*where || !id) continue;
            P other = part;
            other.*where = s;
            add({*id, std::string(to_text(s))}, weight_of(s), other,
                {remedy_id::clean, "clean the faces of " + name_ + " to bright metal"}, {.surface = s});
        }
    }

    static constexpr double loose_grip_lost = 0.6, slack_grip_lost = 0.9;  // shares
    static constexpr double hardly_tight = 0.02, hardly_pressed = 0.1;     // of torque or force as described
    static constexpr length usual_lift = in_si<length>(0.5e-3);            // by a grain of scale or spatter

    void list(const work_connection& w)
    {
        surfaces(w, &work_connection::surface);
        for (const auto& [lost, words] : {std::pair{loose_grip_lost, "loose: more than half of its grip lost"},
                                          std::pair{slack_grip_lost, "slack: hardly any grip left"}}) {
            work_connection loose = w;
            loose.grip_lost = lost;
            add({condition_id::loose, words}, loose_clamp_weight, loose,
                {remedy_id::tight_clamp, "tighten " + name_ + ", or replace its spring or screw"},
                {.tightness = 1.0 - lost});
        }
    }
    void list(const contact& c)
    {
        surfaces(c, &contact::surface);
        contact light = c;
        light.force *= 0.2;
        add({condition_id::loose, "loose: hardly any force on the contact"}, loose_clamp_weight, light,
            {remedy_id::pressed_faces, "clamp " + name_ + " down"}, {.tightness = 0.2});
    }
    [[nodiscard]] named_cure new_lug() const
    {
        return {remedy_id::fresh_crimp,
                "cut " + name_ + " off, cut back to bright flexible copper and crimp a new lug"};
    }
    void list(const lug& l)
    {
        described("as described", l);
        for (const double share : {0.2, 0.4, 0.6}) {
            lug damaged = l;
            damaged.missing_strands = share;
            add({condition_id::strands_missing,
                 to_text(fraction(share)) + " of the strands missing or the crimp loose"},
                1.0, damaged, new_lug(), {.strands_missing = share});
        }
        lug loose = l;
        loose.bolt_torque *= hardly_tight;
        const named_cure cure{remedy_id::tight_bolt,
                              "switch off, clean the palm of " + name_ + " to bright metal and tighten its bolt"};
        add({condition_id::loose, "palm bolt loose"}, 1.5, loose, cure, {.tightness = hardly_tight});
        lug dirty = loose;
        dirty.palm = surface_state::oxidized;
        add({condition_id::loose_and_oxidized, "palm loose and oxidized"}, 1.0, dirty, cure,
            {.surface = surface_state::oxidized, .tightness = hardly_tight});
    }
    void list(const cable& c)
    {
        described("as described", c);
        cable longer = c;
        longer.length *= 1.5;
        add({condition_id::longer, "half as long again as described"}, 1.0, longer,
            {remedy_id::measured_length, "measure the length of " + name_ + " and shorten it"});
        const auto& sizes =
            sizes_of(c.size.scale() == size_scale::square_mm ? size_family::metric : size_family::american);
        for (std::size_t i = sizes.size(); i-- > 0;)
            if (sizes[i] < c.size) {
                cable thinner = welding_cable(sizes[i], c.length);
                add({condition_id::thinner, "a size smaller than described (" + to_text(sizes[i]) + ")"}, 1.0, thinner,
                    {remedy_id::checked_size, "check the size printed on " + name_});
                break;
            }
        cable damaged = c;
        damaged.missing_strands = 0.5;
        damaged.damaged_length = 0.2 * c.length;
        add({condition_id::strands_broken, "half of the strands gone over a fifth of its length"}, 0.7, damaged,
            {remedy_id::whole_lead, "find the stiff, hot or crushed length of " + name_ + " and cut it out"},
            {.strands_missing = 0.5});
    }
    void list(const coupling& c)
    {
        surfaces(c, &coupling::surface);
        coupling loose = c;
        loose.force *= hardly_pressed;
        add({condition_id::loose, "not turned home"}, 3.0, loose,
            {remedy_id::turned_home, "clean " + name_ + " and turn it home"}, {.tightness = hardly_pressed});
    }
    void list(const electrode_holder& h)
    {
        surfaces(h, &electrode_holder::surface);
        electrode_holder weak = h;
        weak.force *= 0.2;
        add({condition_id::loose, "weak jaws"}, 2.0, weak,
            {remedy_id::new_jaws, "replace the jaws or spring of " + name_}, {.tightness = 0.2});
    }
    // Any part that says what can be otherwise with it.
    template <has_conditions Part>
    void list(const Part& p)
    {
        const part_conditions<Part> can = conditions_of(p);
        if (can.surface != nullptr)
            surfaces(p, can.surface);
        else
            described("as described", p);
        if (can.tightening != nullptr) {
            Part loose = p;
            loose.*can.tightening *= hardly_tight;
            const named_cure cure{remedy_id::tight_bolt,
                                  "switch off, clean the faces of " + name_ + " to bright metal and tighten it"};
            add({condition_id::loose, "loose"}, 1.5, loose, cure, {.tightness = hardly_tight});
            if (can.surface != nullptr && p.*can.surface == surface_state::clean) {
                loose.*can.surface = surface_state::oxidized;
                add({condition_id::loose_and_oxidized, "loose and oxidized"}, 1.0, loose, cure,
                    {.surface = surface_state::oxidized, .tightness = hardly_tight});
            }
        }
        if (can.missing_strands != nullptr)
            for (const double share : {0.2, 0.4, 0.6}) {
                Part damaged = p;
                damaged.*can.missing_strands = share;
                add({condition_id::strands_missing,
                     to_text(fraction(share)) + " of the strands missing or the joint loose"},
                    1.0, damaged,
                    {remedy_id::fresh_joint,
                     "cut back to bright flexible copper at " + name_ + " and make the joint anew"},
                    {.strands_missing = share});
            }
        if (can.pressing != nullptr) {
            Part weak = p;
            weak.*can.pressing *= hardly_pressed;
            add({condition_id::loose, "hardly any force"}, 2.0, weak,
                {remedy_id::new_springs, "replace the springs of " + name_}, {.tightness = hardly_pressed});
        }
        if (can.gap != nullptr) {
            Part lifted = p;
            lifted.*can.gap += usual_lift;
            add({condition_id::lifted, "lifted off its seat by scale or spatter"}, 2.0, lifted,
                {remedy_id::clear_seat, "clear the seat of " + name_});
        }
    }
    void list(const plate& p) { described("as described", p); }
    // A wire held too long beyond the tip is no condition of the gun, and nothing read, seen or felt of a part tells of
    // it: it is not among them.
    void list(const wire_gun& g)
    {
        described("as described", g);
        add({condition_id::worn_tip, "contact tip worn"}, worn_tip_weight, g,
            {remedy_id::new_tip, "fit a new contact tip of the wire's size to " + name_}, {.arc_unsteady = true});
        wire_gun damaged = g;
        damaged.lead.missing_strands = 0.5;
        damaged.lead.damaged_length = 0.2 * g.lead.length;
        add({condition_id::strands_broken, "half of the strands of its cable gone near the handle"}, 2.0, damaged,
            {remedy_id::new_gun_cable, "replace the cable of " + name_ + " or cut it back and fit it anew"},
            {.strands_missing = 0.5});
    }
    void list(const tig_torch& t) { described("as described", t); }
    void list(const arc&) {}
    void list(const junction&) {}
    void list(const workpiece& w) { described("as described", w); }
    void list(const measured_part& m) { described("as measured before", m); }

    // The worst that can be: these come last.
    template <class Part>
    void fails(const Part& p, const std::string& how, const std::string& cure)
    {
        fails(p, how, cure, {remedy_id::opened, "open " + name_ + ", and make it anew or replace it"});
    }
    // @param cure of it when it fails @param milder before that
    template <class Part>
    void fails(const Part& p, const std::string& how, const std::string& cure, named_cure milder)
    {
        add({condition_id::half_parted, "half parted or hardly pressed together, worse than wear makes it"}, 0.0, p,
            std::move(milder));
        out_.back().is_beyond_wear = true;
        add({condition_id::failing, "failing: " + how}, 0.0, p,
            {remedy_id::out_of_use, "take " + name_ + " out of use, let it cool, " + cure});
        out_.back().is_beyond_wear = out_.back().is_failing = true;
    }
    static constexpr const char* make_anew = "open it, and make it anew or replace it";
    template <class Joint>
    void list_failing(const Joint& j)
    {
        fails(j, "the joint arcs or has half parted", make_anew);
    }
    void list_failing(const lug& l) { fails(l, "the joint arcs or has half parted", make_anew, new_lug()); }
    void list_failing(const work_connection& w)
    {
        fails(w, "it arcs between jaws and work, or its lead has half parted", make_anew);
    }
    void list_failing(const cable& c)
    {
        fails(c, "most of its strands gone somewhere, about to part", "and replace it or cut the burnt length out");
    }
    void list_failing(const electrode_holder& h)
    {
        fails(h, "jaws or lead connection arc or have half parted", make_anew);
    }
    void list_failing(const wire_gun& g)
    {
        fails(g, "its cable or a connection arcs or has half parted", "open its ends, and replace its cable");
    }
    void list_failing(const tig_torch& t)
    {
        fails(t, "its cable or a connection arcs or has half parted", "open its ends, and replace its cable");
    }
    void list_failing(const plate&) {}
    void list_failing(const workpiece&) {}
    void list_failing(const arc&) {}
    void list_failing(const junction&) {}

    std::string name_;
    std::vector<candidate> out_;
};

}  // namespace weldloop::detail
