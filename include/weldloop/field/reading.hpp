#pragma once
/// @file
/// Meter readings taken on a loop under load.

#include <string>

#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// A voltage read across one part while a current flowed.
struct reading {
    std::string across = {};         ///< name of the part
    voltage volts = {};              ///< across it [V], 0 or above
    weldloop::current current = {};  ///< through it at that moment [A], above 0
};

}  // namespace weldloop
