#pragma once
/// @file
/// How diagnose.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/diagnose.hpp>
#include <weldloop/field/reading.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/remedies_body.hpp>

namespace weldloop {

namespace detail {

struct candidate {
    std::string condition;
    double weight;  // before the reading
    path_part part;
    std::string cure;
};

// Conditions of one part. The part as described comes first.
class candidate_maker {
public:
    explicit candidate_maker(std::string name) : name_(std::move(name)) {}

    [[nodiscard]] std::vector<candidate> operator()(const path_part& p)
    {
        std::visit([this](const auto& part) { list(part); }, p);
        return std::move(out_);
    }

private:
    void add(std::string condition, double weight, path_part p, std::string cure)
    {
        out_.push_back({std::move(condition), weight, std::move(p), std::move(cure)});
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
        add("as described (" + std::string(to_text(part.*where)) + ")", described, part, "nothing to do at " + name_);
        for (const surface_state s : all_surface_states) {
            if (s == part.*where || weight_of(s) == 0.0) continue;
            P other = part;
            other.*where = s;
            add(std::string(to_text(s)), weight_of(s), other, "clean the faces of " + name_ + " to bright metal");
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
        add("grip lost (weak spring or loose screw)", 2.0, weak, "tighten or replace " + name_ + ": its grip is weak");
    }
    void list(const contact& c)
    {
        surfaces(c, &contact::surface, as_described);
        contact light = c;
        light.force *= 0.2;
        add("hardly any force on the contact", 1.0, light, "clamp " + name_ + " down");
    }
    void list(const lug& l)
    {
        add("as described", as_described, l, "nothing to do at " + name_);
        for (const double share : {0.2, 0.4, 0.6}) {
            lug damaged = l;
            damaged.missing_strands = share;
            add(to_text(fraction(share)) + " of the strands missing or the crimp loose", 1.0, damaged,
                "cut " + name_ + " off, cut back to bright flexible copper and crimp a new lug");
        }
        lug loose = l;
        loose.bolt_torque *= hardly_tight;
        add("palm bolt loose", 1.5, loose, "switch off, clean and tighten the bolt of " + name_);
        lug dirty = loose;
        dirty.palm = surface_state::oxidized;
        add("palm loose and oxidized", 1.0, dirty,
            "switch off, clean the palm of " + name_ + " to bright metal and tighten its bolt");
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
            "find the stiff, hot or crushed length of " + name_ + " and cut it out");
    }
    void list(const coupling& c)
    {
        surfaces(c, &coupling::surface, as_described);
        coupling loose = c;
        loose.force *= hardly_pressed;
        add("not turned home", 3.0, loose, "clean " + name_ + " and turn it home");
    }
    void list(const electrode_holder& h)
    {
        surfaces(h, &electrode_holder::surface, as_described);
        electrode_holder weak = h;
        weak.force *= 0.2;
        add("weak jaws", 2.0, weak, "replace the jaws or spring of " + name_);
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
            add("loose", 1.5, loose, "switch off, clean and tighten " + name_);
            if (can.surface != nullptr && p.*can.surface == surface_state::clean) {
                loose.*can.surface = surface_state::oxidized;
                add("loose and oxidized", 1.0, loose,
                    "switch off, clean the faces of " + name_ + " to bright metal and tighten it");
            }
        }
        if (can.missing_strands != nullptr)
            for (const double share : {0.2, 0.4, 0.6}) {
                Part damaged = p;
                damaged.*can.missing_strands = share;
                add(to_text(fraction(share)) + " of the strands missing or the joint loose", 1.0, damaged,
                    "cut back to bright flexible copper at " + name_ + " and make the joint anew");
            }
        if (can.pressing != nullptr) {
            Part weak = p;
            weak.*can.pressing *= hardly_pressed;
            add("hardly any force", 2.0, weak, "replace the springs of " + name_);
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

// What the part would have at the reading's current, everything else of the station as described.
[[nodiscard]] inline band<resistance> resistance_in(const station& s, std::size_t index, const path_part& part)
{
    station changed = s;
    part_at(changed, index) = part;
    const auto at = [&](scatter level) {
        const loop_state state = solve_loop(changed, level);
        return state.outcome == loop_outcome::solved ? state.parts[index].drop / state.parts[index].current
                                                     : resistance{};
    };
    band<resistance> out{at(scatter::low), at(scatter::typical), at(scatter::high)};
    // a lead that has not warmed up yet reads lower
    if (const auto* c = std::get_if<cable>(&part)) out.low = std::min(out.low, resistance_of(*c, s.where.air));
    return out;
}

// Density of a reading in a log-normal with its own spread on either side of the median.
[[nodiscard]] inline double density(resistance measured, const band<resistance>& b)
{
    constexpr double reading_scatter = 0.05;  // see condition_priors
    if (!(b.typical > resistance{})) return 0.0;
    const auto over_typical = [&b](resistance r) { return static_cast<double>(r / b.typical); };
    const double below =
        std::hypot(std::log(1.0 / std::max(over_typical(b.low), 1e-12)) / band_deviations, reading_scatter);
    const double above = std::hypot(std::log(over_typical(b.high)) / band_deviations, reading_scatter);
    const double distance = std::log(over_typical(measured));
    const double sigma = distance < 0.0 ? below : above;
    return 2.0 / (below + above) * std::exp(-0.5 * (distance / sigma) * (distance / sigma));
}

}  // namespace detail

[[nodiscard]] inline std::vector<finding> diagnose(const station& s, const std::vector<reading>& meter)
{
    static_cast<void>(checked_arc_index(s));
    std::vector<finding> out;
    for (const reading& r : meter) {
        require_not_negative(r.volts, "reading across " + r.across);
        require_positive(r.current, "current of the reading across " + r.across);
        const std::size_t index = place_of(s, r.across);
        const path_part& read = part_at(s, index);
        if (std::holds_alternative<arc>(read))
            throw bad_station_error("reading across", "the arc", "any other part: the arc is no resistance");
        if (std::holds_alternative<junction>(read))
            throw bad_station_error("reading across", "a junction", "a part between two points");
        station at_reading = s;
        at_reading.job.current = r.current;

        finding f;
        f.part = r.across;
        f.measured = r.volts / r.current;
        constexpr auto least_reading = in_si<resistance>(1e-9);  // a reading of nothing still has a logarithm
        const resistance measured = std::max(f.measured, least_reading);
        double sum = 0.0;
        std::vector<double> weights;
        for (const detail::candidate& c : detail::candidate_maker(f.part)(read)) {
            explanation e;
            e.condition = c.condition;
            e.resistance = detail::resistance_in(at_reading, index, c.part);
            e.remedy.what = c.cure;
            e.remedy.part = f.part;
            const resistance saved =
                f.measured - (weights.empty() ? e.resistance : f.considered.front().resistance).typical;
            if (!weights.empty() && saved > resistance{}) e.remedy.volts_regained = saved * r.current;
            weights.push_back(c.weight * detail::density(measured, e.resistance));
            sum += weights.back();
            f.considered.push_back(std::move(e));
        }
        f.expected = f.considered.front().resistance;
        f.within_expected = f.measured >= f.expected.low && f.measured <= f.expected.high;
        for (std::size_t i = 0; i < weights.size(); ++i)
            f.considered[i].likelihood =
                sum > 0.0 ? std::clamp(weights[i] / sum, 0.0, 1.0) : 1.0 / static_cast<double>(weights.size());
        std::stable_sort(f.considered.begin(), f.considered.end(),
                         [](const explanation& a, const explanation& b) { return a.likelihood > b.likelihood; });
        f.most_likely = f.considered.front().condition;
        f.likelihood = f.considered.front().likelihood;
        f.remedy = f.considered.front().remedy;
        f.basis.add(condition_priors).add(surface_state_judgement);
        out.push_back(std::move(f));
    }
    return out;
}

}  // namespace weldloop
