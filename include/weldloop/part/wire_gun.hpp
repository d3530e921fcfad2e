#pragma once
/// @file
/// A gun that feeds a wire electrode.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// What is inside a gun.
inline constexpr source gun_judgement{
    "wire gun: 50 mm2 of copper, crimped at both ends; 1.2 mm steel wire, 15 mm of it beyond the tip",
    "2026",
    {},
    source_kind::judgement};

/// A wire gun with its cable. The cable inside is an ordinary lead (`lead`) and is rated as one.
struct wire_gun {
    std::string name = {};                                          ///< empty: "wire gun 3" by its place in the path
    cable lead = welding_cable(square_mm(50), in_si<length>(3.0));  ///< conductor from the feeder to the tip
    metal wire = mild_steel;                                        ///< of the electrode
    length wire_diameter = in_si<length>(0.0012);                   ///< [m] above 0
    length extension = in_si<length>(0.015);                        ///< [m] of wire between tip and arc, 0 or above

    /// A gun of 3 m without a name.
    wire_gun() = default;
    /// A gun of the usual make. @param n name, may be empty @param long_ of its cable [m], above 0 @see gun_judgement
    /// @throws not_finite_error, out_of_range_error
    wire_gun(std::string n, length long_) : name(std::move(n)), lead(welding_cable(square_mm(50), long_)) {}
};

}  // namespace weldloop
