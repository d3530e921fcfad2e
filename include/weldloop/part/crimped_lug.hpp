#pragma once
/// @file
/// A crimped lug of the usual make for a size.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/part/lug.hpp>

namespace weldloop {

/// Bolt of a lug's palm by size.
inline constexpr source palm_bolt_judgement{
    "palm bolt M8 up to 25 mm2, M10 up to 95 mm2, M12 above", {}, {}, source_kind::judgement};

/// Thread of the palm bolt usual for a cable [m]. @param size of the cable @see palm_bolt_judgement
[[nodiscard]] constexpr length usual_palm_bolt(const conductor_size& size)
{
    return size <= square_mm(25) ? 8_mm : size <= square_mm(95) ? 10_mm : 12_mm;
}

/// A lug made for a size, on a cable of that size, bolted to a clean stud with the published torque of its bolt.
/// @param name as printed; empty: called by its place @param size of cable and barrel
/// @see palm_bolt_judgement, electrical_torque_table
[[nodiscard]] inline lug crimped_lug(std::string name, conductor_size size)
{
    const length bolt = usual_palm_bolt(size);
    return {.name = std::move(name),
            .size = size,
            .stamped = size,
            .bolt_torque = electrical_bolt_torque(bolt),
            .bolt_diameter = bolt};
}

}  // namespace weldloop
