#pragma once
/// @file
/// What can be found out about a loop on the spot: volts, temperatures, cold resistances, torques, and what the eye
/// sees.

#include <array>
#include <string>
#include <string_view>
#include <variant>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/field/reading.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// The highest temperature of a part, read while the job went on and had settled. Of a holder, gun or torch it is not
/// judged: the arc heats it.
struct heat_observation {
    std::string part = {};     ///< its name
    temperature hottest = {};  ///< of the part at the hottest place that a probe reaches: of a lead, on its covering
    temperature_difference error = in_si<temperature_difference>(4.0);  ///< [K] half of the 95 % interval, above 0
};

/// A resistance read across one part with four wires, cold and without welding current.
struct four_wire_observation {
    std::string part = {};            ///< its name
    weldloop::resistance ohms = {};   ///< [ohm] 0 or above
    weldloop::resistance error = {};  ///< [ohm] half of the 95 % interval; 0: 1 % and 1 uohm
};

/// How tight a bolt, a screw, a plug or a spring was found, over what it should be.
struct tightness_observation {
    std::string part = {};  ///< its name
    double share = 1.0;     ///< of the torque or force as described, 0 to 10
};

/// What the eye sees of the faces of a joint.
struct surface_observation {
    std::string part = {};                      ///< its name
    surface_state seen = surface_state::clean;  ///< the state they look like
};

/// Strands that are seen to be missing.
struct strand_observation {
    std::string part = {};      ///< its name
    strand_loss missing = 0.0;  ///< share of them
};

/// How the arc burns at a gun.
enum class arc_look {
    steady,    ///< evenly, at one sound
    unsteady,  ///< it stutters, or the wire burns back and catches
};

/// The word for a look of the arc, as printed and in station files.
[[nodiscard]] constexpr std::string_view to_text(arc_look l)
{
    return l == arc_look::steady ? "steady" : "unsteady";
}
/// All of them.
inline constexpr std::array arc_looks{arc_look::steady, arc_look::unsteady};

/// How the arc is seen and heard to burn at a gun.
struct arc_observation {
    std::string part = {};             ///< name of the gun
    arc_look seen = arc_look::steady;  ///< what it looks and sounds like
};

/// Anything found out on the spot.
using observation = std::variant<reading, heat_observation, four_wire_observation, tightness_observation,
                                 surface_observation, strand_observation, arc_observation>;

/// How readings are judged.
inline constexpr source fault_search_model{
    "parts at fault or not, each by itself; resistances by the library's own bands; a reading is taken wrongly (probe, "
    "range, name, unit) in two of a hundred, and then says nothing; what the eye or hand finds is right in nine of "
    "ten; the arc is unsteady at nine of ten worn contact tips, and at one of four guns without one",
    "2026",
    {},
    source_kind::judgement};
/// Share of readings that are taken wrongly; see fault_search_model.
inline constexpr double misread_share = 0.02;
/// Share of what the eye or hand finds that is right; see fault_search_model.
inline constexpr double seen_right_share = 0.9;
/// Share of guns whose arc is unsteady without a worn tip; see fault_search_model.
inline constexpr double otherwise_unsteady_share = 0.25;

/// Errors of meters, each half of a 95 % interval.
inline constexpr source usual_meters{
    "usual data sheets of hand instruments", "not seen",
    "voltmeter 0.8 % and 1 mV, clamp-on ammeter 2.5 % and 1 A, micro-ohmmeter 1 % and 1 "
    "uohm, as 95 % intervals",
    source_kind::memory};

/// The meters readings are taken with.
struct meters {
    double volts_share = 0.008;                       ///< of the reading, 0 to 1
    voltage volts_floor = in_si<voltage>(1e-3);       ///< [V] 0 or above, beside it
    double amps_share = 0.025;                        ///< of the current, 0 to 1
    current amps_floor = in_si<current>(1.0);         ///< [A] 0 or above, beside it
    double ohms_share = 0.01;                         ///< 0 to 1, of a four-wire reading
    resistance ohms_floor = in_si<resistance>(1e-6);  ///< [ohm] 0 or above, beside it
};

}  // namespace weldloop
