#pragma once
/// @file
/// What a spring clamp's jaws press with at an opening, and how far they may be opened.
///
/// The jaws swing about the pivot: an opening x stands for the angle 2 asin(x/(2 arm)). The stated stress at the stated
/// opening fixes the spring; its rate follows from wire and turns. New and cold: softening and relaxation come on top.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/part/clamp_spring.hpp>

namespace weldloop {

/// What ends the opening of a clamp.
enum class opening_bound {
    set,       ///< the spring would take a set: its force would be less ever after
    solid,     ///< the turns of a compression spring touch
    buckling,  ///< a compression spring would buckle
    straight,  ///< the arms stand in one line
};

/// The words for a bound, as printed.
[[nodiscard]] constexpr std::string_view to_text(opening_bound bound)
{
    switch (bound) {
    case opening_bound::set: return "the spring would take a set";
    case opening_bound::solid: return "the turns touch";
    case opening_bound::buckling: return "the spring would buckle";
    case opening_bound::straight: return "the arms stand in one line";
    }
    return "the spring would take a set";
}

/// How far a clamp's jaws may be opened.
struct clamp_travel {
    force when_closed = {};                    ///< [N] between the jaws when they meet: what the spring is preset to
    length slack_below = {};                   ///< [m] opening below which the spring no longer presses; 0 if preset
    length widest = {};                        ///< [m] widest opening without harm; below the stated one for a spring
                                               ///< that has taken a set as it stands
    opening_bound bound = opening_bound::set;  ///< what ends it
    weldloop::basis basis = {};                ///< sources
};

namespace detail {

// The force at the jaws as a straight line over a travel: the arc of the spring's line for a torsion spring; the
// opening for a compression spring, which lies across the two arms and is pressed by x times its arm over the jaws'.
class opening_line {
public:
    explicit opening_line(const clamp_spring& s) : s_(s)
    {
        require_within(s.coils, 1.0, 100.0, "spring coils");
        require_positive(s.arm, "clamp arm");
        require_opening(s.opening);
        strength_ = tensile_strength(s.wire, s.wire_diameter);
        const pressure stress = static_cast<double>(s.stress) * strength_;
        if (s.compression) {
            require_compression(s);
            lever_ = s.compression->arm / s.arm;
            const pressure shear = shear_modulus(s.wire, s.wire_diameter);
            load_rate_ =
                compression_rate(shear, s.wire_diameter, s.coil_diameter, active_turns(s.turns, s.compression->ends));
            const length solid = solid_length(s.wire_diameter, s.turns, s.compression->ends);
            if (!(solid < s.compression->free_length))
                throw out_of_range_error("free length", si_text(s.compression->free_length),
                                         "above the solid length of " + si_text(solid));
            const force load =
                compression_load(stress / std::numbers::sqrt3, s.wire_diameter, s.coil_diameter, correction_of(s));
            solid_load_ = load_rate_ * (s.compression->free_length - solid);
            if (load > solid_load_)
                throw out_of_range_error("spring stress", si_text(stress), "one that does not press the spring solid");
            at_stated_ = by_load(load);
            rate_ = static_cast<double>(s.coils) * (lever_ * lever_) * load_rate_;
        } else {
            require_not_negative(s.legs, "leg length");
            at_stated_ = by_moment(torsion_moment(stress, s.wire_diameter, s.coil_diameter));
            rate_ = static_cast<double>(s.coils) *
                    torsion_rate(youngs_modulus(s.wire, s.wire_diameter), s.wire_diameter, s.coil_diameter,
                                 torsion_active_turns(s.turns, s.legs, s.coil_diameter)) *
                    si::radian * si::radian / (s.arm * s.arm);
        }
    }

    length require_opening(length x) const
    {
        return require_within(x, in_si<length>(0.0), 2.0 * s_.arm, "jaw opening");
    }
    [[nodiscard]] length travel(length x) const
    {
        return s_.compression ? x : length(2.0 * std::asin(0.5 * x / s_.arm) * s_.arm);
    }
    [[nodiscard]] length opening(length along) const
    {
        if (s_.compression) return along;
        return 2.0 * s_.arm * std::sin(0.5 * std::clamp<double>(along / s_.arm, 0.0, std::numbers::pi));
    }
    // below zero where the spring would have to pull
    [[nodiscard]] force at(length along) const { return at_stated_ + rate_ * (along - travel(s_.opening)); }
    [[nodiscard]] length travel_for(force wanted) const { return travel(s_.opening) + (wanted - at_stated_) / rate_; }
    [[nodiscard]] length travel_to_straight() const { return travel(2.0 * s_.arm); }

    // at which the springs take a set
    [[nodiscard]] force at_set() const
    {
        if (!s_.compression)
            return by_moment(torsion_moment(s_.wire.set.bending * strength_, s_.wire_diameter, s_.coil_diameter));
        const double share = s_.compression->set_removed ? s_.wire.set.preset_shear : s_.wire.set.shear;
        return by_load(compression_load(share * strength_, s_.wire_diameter, s_.coil_diameter, correction_of(s_)));
    }
    // of compression springs, when their turns touch
    [[nodiscard]] force when_solid() const { return by_load(solid_load_); }
    [[nodiscard]] std::optional<force> when_buckling() const
    {
        if (s_.compression->guided) return std::nullopt;
        const auto y = buckling_deflection({s_.compression->free_length, s_.coil_diameter,
                                            youngs_modulus(s_.wire, s_.wire_diameter),
                                            shear_modulus(s_.wire, s_.wire_diameter), s_.compression->held});
        return y ? std::optional<force>(by_load(load_rate_ * *y)) : std::nullopt;
    }

private:
    // at the jaws, of what one spring has
    [[nodiscard]] force by_load(force one) const { return s_.coils * lever_ * one; }
    [[nodiscard]] force by_moment(torque one) const
    {
        return static_cast<double>(s_.coils) * one * si::radian / s_.arm;
    }

    clamp_spring s_;
    pressure strength_ = {};
    double lever_ = 1.0;          // spring's arm over the jaws' arm
    force at_stated_ = {};        // at the stated opening
    spring_rate rate_ = {};       // over the travel
    spring_rate load_rate_ = {};  // of one compression spring, over its own deflection
    force solid_load_ = {};       // of one compression spring
};

}  // namespace detail

/// What the jaws press with at an opening [N]: zero where the spring is slack. The law is straight on beyond the
/// spring's limits: see clamp_travel_of() for how far it may be opened.
/// @param s the spring, its stress and opening @param opening between the jaws [m], 0 to twice the arm
/// @throws not_finite_error, out_of_range_error, also for a compression spring that is pressed solid as it stands
[[nodiscard]] inline force clamp_force_at(const clamp_spring& s, length opening)
{
    const detail::opening_line line(s);
    line.require_opening(opening);
    return std::max(force{}, require_finite(line.at(line.travel(opening)), "force of the jaws"));
}

/// How far the jaws may be opened, and what the spring is preset to when they are closed.
///
/// A set is taken where the stress reaches the static strength of the wire (spring_wire::set), for a compression spring
/// by direct shear if its set was removed, by Wahl's factor otherwise.
/// @param s the spring, its stress and opening @throws as clamp_force_at()
[[nodiscard]] inline clamp_travel clamp_travel_of(const clamp_spring& s)
{
    const detail::opening_line line(s);
    clamp_travel out;
    out.basis.add(spring_formulas).add(spring_turns).add(*s.wire.strength_source).add(*s.wire.moduli_source);
    out.basis.add(*s.wire.set_source);
    out.when_closed = std::max(force{}, line.at(length{}));
    out.slack_below = line.opening(std::max(length{}, line.travel_for(force{})));
    length widest = line.travel_to_straight();
    out.bound = opening_bound::straight;
    const auto bounded = [&](force at, opening_bound why) {
        if (line.travel_for(at) >= widest) return;
        widest = line.travel_for(at);
        out.bound = why;
    };
    bounded(line.at_set(), opening_bound::set);
    if (s.compression) {
        bounded(line.when_solid(), opening_bound::solid);
        if (const auto buckles = line.when_buckling()) bounded(*buckles, opening_bound::buckling);
        out.basis.add(spring_stability);
    }
    out.widest = line.opening(std::max(length{}, widest));
    return out;
}

}  // namespace weldloop
