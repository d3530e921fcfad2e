#pragma once
/// @file
/// The power source, as far as the loop feels it.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/no_load_limit.hpp>
#include <weldloop/law/source_line.hpp>

namespace weldloop {

/// What a power source holds constant, or how its output falls.
enum class supply_kind {
    constant_voltage,  ///< wire processes: the terminals keep the set voltage, the loop takes its drop out of the arc
    constant_current,  ///< covered electrode and tungsten: the arc keeps its voltage, the supply must add the drop
    drooping,          ///< from no-load voltage to short-circuit current
    engine_driven,     ///< a generator: from its own no-load voltage straight through the point it is set to
    measured,          ///< by points that were read
};

/// Every kind, in the order of the enumeration.
inline constexpr std::array all_supply_kinds{supply_kind::constant_voltage, supply_kind::constant_current,
                                             supply_kind::drooping, supply_kind::engine_driven, supply_kind::measured};

/// The word for a kind, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(supply_kind k)
{
    switch (k) {
    case supply_kind::constant_voltage: return "constant voltage";
    case supply_kind::constant_current: return "constant current";
    case supply_kind::drooping: return "drooping";
    case supply_kind::engine_driven: return "engine driven";
    case supply_kind::measured: return "measured";
    }
    return "constant voltage";
}

/// How a drooping output falls.
enum class droop_shape {
    straight,      ///< U = U0 (1 - I/Ik)
    by_reactance,  ///< (U/U0)^2 + (I/Ik)^2 = 1: a transformer bounded by its leakage
};

/// Every shape, in the order of the enumeration.
inline constexpr std::array all_droop_shapes{droop_shape::straight, droop_shape::by_reactance};

/// The word for a shape.
[[nodiscard]] constexpr std::string_view to_text(droop_shape s)
{
    return s == droop_shape::straight ? "straight" : "by reactance";
}

/// Which terminal the electrode is on.
enum class electrode_polarity {
    not_stated,   ///< nothing is said of it
    positive,     ///< electrode on the positive terminal
    negative,     ///< electrode on the negative terminal
    alternating,  ///< both in turn
};

/// Every polarity, in the order of the enumeration.
inline constexpr std::array all_polarities{electrode_polarity::not_stated, electrode_polarity::positive,
                                           electrode_polarity::negative, electrode_polarity::alternating};

/// The word for a polarity.
[[nodiscard]] constexpr std::string_view to_text(electrode_polarity p)
{
    switch (p) {
    case electrode_polarity::not_stated: return "not stated";
    case electrode_polarity::positive: return "electrode positive";
    case electrode_polarity::negative: return "electrode negative";
    case electrode_polarity::alternating: return "alternating";
    }
    return "not stated";
}

/// What sets the speed of a wire.
enum class wire_feeding {
    constant_speed,  ///< the set speed; the arc holds its length by its current
    by_arc_voltage,  ///< a feeder that follows the arc's voltage; the arc's length is held by the feed
};

/// Both ways of feeding, in the order of the enumeration.
inline constexpr std::array all_wire_feedings{wire_feeding::constant_speed, wire_feeding::by_arc_voltage};

/// The word for a way of feeding.
[[nodiscard]] constexpr std::string_view to_text(wire_feeding f)
{
    return f == wire_feeding::constant_speed ? "constant speed" : "by arc voltage";
}

/// Wires by which a supply senses the voltage it holds, away from its terminals. What lies between terminal and tap is
/// made good; what lies behind the tap is not.
struct remote_sensing {
    std::string electrode_side = {};  ///< tapped behind this part of the path, towards the arc; empty: at the terminal
    std::string work_side = {};       ///< tapped before this part of the path, towards the arc; empty: at the terminal
};

/// A power source. What a kind does not use is left as it is.
struct supply {
    supply_kind kind = supply_kind::constant_voltage;  ///< what it holds constant
    voltage setting = {};  ///< constant voltage: set voltage at the terminals, or between the taps [V], above 0;
                           ///< engine driven: voltage at the current it is set to
    voltage highest_output =
        {};  ///< constant current: highest terminal voltage it holds at the job's current [V], above 0; constant
             ///< voltage with remote sensing: highest terminal voltage, 0 where none is known
    current current_setting = {};  ///< constant current, engine driven: what it is set to [A], 0 or above; 0: the job's
    resistance fall = {};          ///< constant voltage: what each ampere takes off [V/A], 0 or above
    conductance rise = {};         ///< constant current: what each volt less adds [A/V], 0 or above
    std::optional<current> limit = {};             ///< constant voltage: the current rises no further [A], above 0
    std::optional<current> short_circuit = {};     ///< drooping: current without voltage [A], above 0
    droop_shape shape = droop_shape::straight;     ///< drooping
    std::vector<source_point> points = {};         ///< measured: each with more current and no more voltage
    no_load_voltage no_load = {};                  ///< without current, if it is known; drooping, engine driven: needed
    shock_hazard hazard = shock_hazard::ordinary;  ///< of the place it is used in
    electrode_polarity polarity = electrode_polarity::not_stated;  ///< which terminal the electrode is on
    wire_feeding feeding = wire_feeding::constant_speed;           ///< of a wire process
    std::optional<remote_sensing> sensing = {};  ///< constant voltage: where it senses, if not at its terminals
};

}  // namespace weldloop
