#pragma once
/// @file
/// Every kind of part that has a sheet. What is written once for all of them includes this.

#include <concepts>

#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// A kind of part that the network and the limits take from its sheet.
template <class Part>
concept has_sheet = requires(const Part& p) {
    { sheet_of(p) } -> std::same_as<part_sheet>;
};

/// A kind of part that diagnosis and remedies take from its conditions.
template <class Part>
concept has_conditions = requires(const Part& p) {
    { conditions_of(p) } -> std::same_as<part_conditions<Part>>;
};

}  // namespace weldloop
