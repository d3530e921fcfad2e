#pragma once
/// @file
/// Meter readings taken on a loop under load.

#include <string>

#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// A voltage read across one part, or a span of parts, while a current flowed. A gun or torch is read from its plug to
/// its tip or collet: no probe reaches what lies beyond.
struct reading {
    std::string across = {};         ///< name of the part, or of the first of a span
    voltage volts = {};              ///< across it [V], 0 or above
    weldloop::current current = {};  ///< through it at that moment [A], above 0
    std::string to = {};             ///< name of the last part of a span; empty for one part
    voltage error = {};  ///< [V] 0 or above, half of the 95 % interval of the voltmeter; 0: that of a usual one
};

}  // namespace weldloop
