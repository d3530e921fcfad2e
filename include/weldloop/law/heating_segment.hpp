#pragma once
/// @file
/// A current and the time it flows.

#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// A current that flows for a time: a single pulse, or one step of a programme.
struct heating_segment {
    weldloop::current current;    ///< [A] effective value, 0 or above
    weldloop::duration duration;  ///< [s], above 0; a single one may be 0 where that is said
};

}  // namespace weldloop
