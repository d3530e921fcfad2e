#pragma once
/// @file
/// The power source, as far as the loop feels it.

#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// What a power source holds constant.
enum class supply_kind {
    constant_voltage,  ///< wire processes: the terminals keep the set voltage, the loop takes its drop out of the arc
    constant_current,  ///< covered electrode and tungsten: the arc keeps its voltage, the supply must add the drop
};

/// A power source.
struct supply {
    supply_kind kind = supply_kind::constant_voltage;  ///< what it holds constant
    voltage setting = {};                              ///< constant voltage: set voltage at the terminals [V], above 0
    voltage highest_output =
        {};  ///< constant current: highest terminal voltage it holds at the job's current [V], above 0
};

}  // namespace weldloop
