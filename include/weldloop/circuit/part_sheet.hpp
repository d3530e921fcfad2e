#pragma once
/// @file
/// What the library knows of a kind of part that stands in the current's way as a joint: one sheet, from which the
/// network, the limits, the diagnosis and the remedies all take it.

#include <optional>
#include <string_view>
#include <vector>

#include <weldloop/circuit/contact_hold.hpp>
#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// A temperature limit at a place of a part.
struct place_limit {
    part_place where = part_place::metal;  ///< the place it is defined for
    temperature highest = {};              ///< allowed there
    std::string_view name = {};            ///< in words
    const source* from = nullptr;          ///< where it stands; a recalled one condemns but passes nothing
};

/// A limit of a resistance at 20 degC.
struct resistance_limit {
    weldloop::resistance highest = {};     ///< [ohm] allowed
    band<weldloop::resistance> held = {};  ///< [ohm] what is held against it
    std::string_view name = {};            ///< in words
    const source* from = nullptr;          ///< where it stands
};

/// A current that a part should not carry more of all the time.
struct current_limit {
    current highest = {};          ///< [A] all the time, or with rests as much heat
    std::string_view name = {};    ///< what carries it
    const source* from = nullptr;  ///< where it stands
};

/// Contacts of a part that are alike, one after the other.
struct sheet_contact {
    std::string_view word;   ///< what it is, for sentences
    contact_hold hold;       ///< what holds it
    band<conductance> cold;  ///< of each [S], at 20 degC with cold spots; zero is open
    metal_pair metals;       ///< that meet
    int alike = 1;           ///< in series, 1 or more
};

/// Metal in the current's way.
struct sheet_metal {
    weldloop::resistance at_20 = {};          ///< [ohm] at 20 degC, 0 or above
    per_kelvin temperature_coefficient = {};  ///< [1/K] of it, at 20 degC
};

/// A sliding contact without metal spots: a drop in proportion to the current up to a current, level above.
struct sheet_slide {
    band<voltage> level;  ///< [V] above it
    current from;         ///< [A] above 0
};

/// What the library knows of a part: made by the `sheet_of()` of its kind. One body, the same current through all of
/// it; heat passes to what stands before and behind it.
struct part_sheet {
    std::vector<sheet_contact> contacts = {};    ///< in series, in any order
    std::optional<sheet_metal> metal = {};       ///< in series with them
    std::optional<sheet_slide> slide = {};       ///< in series with them
    thermal_body body = {};                      ///< its metal, part_place::metal
    std::optional<weldloop::metal> work = {};    ///< what its contacts bear on, if that is the work or a fixture: it
                                                 ///< takes half of their heat and what crosses them
    temperature melting = {};                    ///< of its body: hotter, it ends the loop
    conductance outer_face = {};                 ///< [S] of its bolted or plugged face, which a joint beside it shares
    std::vector<place_limit> limits = {};        ///< temperatures, all at part_place::metal
    std::optional<resistance_limit> crimp = {};  ///< workmanship of its crimp, whatever its age
    std::optional<current_limit> carries = {};   ///< what is said of its wear: information, no verdict
    weldloop::basis basis = {};                  ///< of the numbers
};

/// What can be otherwise with a part than it should be and is put right by hand: the members of its description that
/// say so, null where there is none. Made by the `conditions_of()` of its kind.
template <class Part>
struct part_conditions {
    surface_state Part::*surface = nullptr;        ///< of its worst face; clean is as it should be
    torque Part::*tightening = nullptr;            ///< of its bolts, nut or screw
    torque usual_tightening = {};                  ///< [N m] as it should be
    strand_loss Part::*missing_strands = nullptr;  ///< outside its barrel; none is as it should be
    force Part::*pressing = nullptr;               ///< what holds its faces together
    force usual_pressing = {};                     ///< [N] as it should be
    length Part::*gap = nullptr;                   ///< what lies between it and what it should sit on
    area Part::*section = nullptr;                 ///< of its metal: larger makes have more
};

namespace detail {
[[nodiscard]] inline std::optional<band<resistance>> resistance_if_closed(const band<conductance>& g)
{
    if (!(g.low.value() > 0.0)) return std::nullopt;
    return mapped(g, [](conductance x) { return resistance(1.0 / x); });
}
[[nodiscard]] inline place_limit joint_limit_at(part_place where, joint_kind kind, std::string_view name)
{
    const joint_temperature_limit_row& row = joint_temperature_limit(kind, joint_finish::bare);
    return {where, row.highest, name, row.from};
}
/// The acceptance of a crimp on a conductor, with what it has held against it; none for one that is open.
[[nodiscard]] inline std::optional<resistance_limit> crimp_held(const band<conductance>& crimp, area conductor)
{
    const crimp_limit limit = crimp_limit_of(conductor);
    if (const auto held = resistance_if_closed(crimp))
        return resistance_limit{limit.resistance, *held, "acceptance of a crimp", limit.from};
    return std::nullopt;
}
[[nodiscard]] inline temperature melting_of(const metal_pair& m)
{
    return m.second.melting < m.first.melting ? m.second.melting : m.first.melting;
}
}  // namespace detail

}  // namespace weldloop
