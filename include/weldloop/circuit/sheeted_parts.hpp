#pragma once
/// @file
/// Every kind of part that has a sheet. What is written once for all of them includes this.

#include <concepts>

#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/magnet_behaviour.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/rotary_ground_behaviour.hpp>
#include <weldloop/circuit/set_screw_behaviour.hpp>
#include <weldloop/circuit/splice_behaviour.hpp>
#include <weldloop/circuit/spring_pad_behaviour.hpp>
#include <weldloop/circuit/strap_behaviour.hpp>
#include <weldloop/circuit/stud_behaviour.hpp>

namespace weldloop {

/// A kind of part that the network and the limits take from its sheet.
template <class Part>
concept has_sheet = requires(const Part& p)
{
    {
        sheet_of(p)
        } -> std::same_as<part_sheet>;
};

/// A kind of part that diagnosis and remedies take from its conditions.
template <class Part>
concept has_conditions = requires(const Part& p)
{
    {
        conditions_of(p)
        } -> std::same_as<part_conditions<Part>>;
};

}  // namespace weldloop
