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
#include <weldloop/core/text.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/sizing.hpp>

namespace weldloop::detail {

/// What can be seen or felt of a condition without a meter.
struct condition_signs {
    std::optional<surface_state> surface = {};  // of its faces, where it is about them
    double tightness = 1.0;                     // of bolts, springs and plugs, over that described
    double strands_missing = 0.0;               // share
};

struct candidate {
    std::string condition;
    double weight;  // before the reading
    path_part part;
    std::string cure;
    condition_signs signs = {};
};

/// Conditions of one part. The part as described comes first.
class candidate_maker {
public:
    explicit candidate_maker(std::string name) : name_(std::move(name)) {}

    [[nodiscard]] std::vector<candidate> operator()(const path_part& p)
    {
        std::visit([this](const auto& part) { list(part); }, p);
        return std::move(out_);
    }

private:
    void add(std::string condition, double weight, path_part p, std::string cure, condition_signs signs = {})
    {
        out_.push_back({std::move(condition), weight, std::move(p), std::move(cure), signs});
    }

    static double weight_of(surface_state s)
    {
        switch (s) {
        case surface_state::clean: return 3.0;
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
    void surfaces(const P& part, surface_state P::*where, double described)
    {
        add("as described (" + std::string(to_text(part.*where)) + ")", described, part, "nothing to do at " + name_,
            {.surface = part.*where});
        for (const surface_state s : all_surface_states) {
            if (s == part.*where || weight_of(s) == 0.0) continue;
            P other = part;
            other.*where = s;
            add(std::string(to_text(s)), weight_of(s), other, "clean the faces of " + name_ + " to bright metal",
                {.surface = s});
        }
    }

    static constexpr double as_described = 6.0;
    static constexpr double hardly_tight = 0.02, hardly_pressed = 0.1;  // of torque or force as described
    static constexpr length usual_lift = in_si<length>(0.5e-3);         // by a grain of scale or spatter

    void list(const work_connection& w)
    {
        surfaces(w, &work_connection::surface, as_described);
        work_connection weak = w;
        weak.grip_lost = 0.6;
        add("grip lost (weak spring or loose screw)", 2.0, weak, "tighten or replace " + name_ + ": its grip is weak",
            {.tightness = 0.4});
    }
    void list(const contact& c)
    {
        surfaces(c, &contact::surface, as_described);
        contact light = c;
        light.force *= 0.2;
        add("hardly any force on the contact", 1.0, light, "clamp " + name_ + " down", {.tightness = 0.2});
    }
    void list(const lug& l)
    {
        add("as described", as_described, l, "nothing to do at " + name_);
        for (const double share : {0.2, 0.4, 0.6}) {
            lug damaged = l;
            damaged.missing_strands = share;
            add(to_text(fraction(share)) + " of the strands missing or the crimp loose", 1.0, damaged,
                "cut " + name_ + " off, cut back to bright flexible copper and crimp a new lug",
                {.strands_missing = share});
        }
        lug loose = l;
        loose.bolt_torque *= hardly_tight;
        add("palm bolt loose", 1.5, loose, "switch off, clean and tighten the bolt of " + name_,
            {.tightness = hardly_tight});
        lug dirty = loose;
        dirty.palm = surface_state::oxidized;
        add("palm loose and oxidized", 1.0, dirty,
            "switch off, clean the palm of " + name_ + " to bright metal and tighten its bolt",
            {.surface = surface_state::oxidized, .tightness = hardly_tight});
    }
    void list(const cable& c)
    {
        add("as described", as_described, c, "nothing to do at " + name_);
        cable longer = c;
        longer.length *= 1.5;
        add("half as long again as described", 1.0, longer, "measure the length of " + name_ + " and shorten it");
        const auto& sizes =
            sizes_of(c.size.scale() == size_scale::square_mm ? size_family::metric : size_family::american);
        for (std::size_t i = sizes.size(); i-- > 0;)
            if (sizes[i] < c.size) {
                cable thinner = welding_cable(sizes[i], c.length);
                add("a size smaller than described (" + to_text(sizes[i]) + ")", 1.0, thinner,
                    "check the size printed on " + name_);
                break;
            }
        cable damaged = c;
        damaged.missing_strands = 0.5;
        damaged.damaged_length = 0.2 * c.length;
        add("half of the strands gone over a fifth of its length", 0.7, damaged,
            "find the stiff, hot or crushed length of " + name_ + " and cut it out", {.strands_missing = 0.5});
    }
    void list(const coupling& c)
    {
        surfaces(c, &coupling::surface, as_described);
        coupling loose = c;
        loose.force *= hardly_pressed;
        add("not turned home", 3.0, loose, "clean " + name_ + " and turn it home", {.tightness = hardly_pressed});
    }
    void list(const electrode_holder& h)
    {
        surfaces(h, &electrode_holder::surface, as_described);
        electrode_holder weak = h;
        weak.force *= 0.2;
        add("weak jaws", 2.0, weak, "replace the jaws or spring of " + name_, {.tightness = 0.2});
    }
    // Any part that says what can be otherwise with it.
    template <has_conditions Part>
    void list(const Part& p)
    {
        const part_conditions<Part> can = conditions_of(p);
        if (can.surface != nullptr)
            surfaces(p, can.surface, as_described);
        else
            add("as described", as_described, p, "nothing to do at " + name_);
        if (can.tightening != nullptr) {
            Part loose = p;
            loose.*can.tightening *= hardly_tight;
            add("loose", 1.5, loose, "switch off, clean and tighten " + name_, {.tightness = hardly_tight});
            if (can.surface != nullptr && p.*can.surface == surface_state::clean) {
                loose.*can.surface = surface_state::oxidized;
                add("loose and oxidized", 1.0, loose,
                    "switch off, clean the faces of " + name_ + " to bright metal and tighten it",
                    {.surface = surface_state::oxidized, .tightness = hardly_tight});
            }
        }
        if (can.missing_strands != nullptr)
            for (const double share : {0.2, 0.4, 0.6}) {
                Part damaged = p;
                damaged.*can.missing_strands = share;
                add(to_text(fraction(share)) + " of the strands missing or the joint loose", 1.0, damaged,
                    "cut back to bright flexible copper at " + name_ + " and make the joint anew",
                    {.strands_missing = share});
            }
        if (can.pressing != nullptr) {
            Part weak = p;
            weak.*can.pressing *= hardly_pressed;
            add("hardly any force", 2.0, weak, "replace the springs of " + name_, {.tightness = hardly_pressed});
        }
        if (can.gap != nullptr) {
            Part lifted = p;
            lifted.*can.gap += usual_lift;
            add("lifted off its seat by scale or spatter", 2.0, lifted, "clear the seat of " + name_);
        }
    }
    void list(const plate& p) { add("as described", 1.0, p, "nothing to do at " + name_); }
    void list(const wire_gun& g)
    {
        add("as described", as_described, g, "nothing to do at " + name_);
        wire_gun longer = g;
        longer.extension *= 1.7;
        add("long wire extension", 2.0, longer, "hold " + name_ + " closer: shorten the wire beyond the tip");
    }
    void list(const tig_torch& t) { add("as described", 1.0, t, "nothing to do at " + name_); }
    void list(const arc&) {}
    void list(const junction&) {}
    void list(const workpiece& w) { add("as described", 1.0, w, "nothing to do at " + name_); }
    void list(const measured_part& m) { add("as measured before", 1.0, m, "nothing to do at " + name_); }

    std::string name_;
    std::vector<candidate> out_;
};

}  // namespace weldloop::detail
