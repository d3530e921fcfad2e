#pragma once
/// @file
/// A named point of the circuit where ways part or meet.

#include <string>

namespace weldloop {

/// A stud, bar or bolt where several conductors meet. It takes no volts of its own; what is bolted there shares its
/// temperature. Ways start and end at its name.
struct junction {
    std::string name = {};  ///< by which ways call it; empty: "junction 3" by its place
};

}  // namespace weldloop
