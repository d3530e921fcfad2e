#pragma once
/// @file
/// A current and the time it flows.

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// A welding current and its duty. For heat the current is the effective (rms) value.
struct load {
    weldloop::current current;                   ///< [A] while the arc burns, above 0
    duty_cycle duty = duty_cycle::continuous();  ///< time under current
};

}  // namespace weldloop
