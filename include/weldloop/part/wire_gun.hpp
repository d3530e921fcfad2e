#pragma once
/// @file
/// A gun that feeds a wire electrode.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/torch_cooling.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// What is inside a gun.
inline constexpr source gun_judgement{
    "wire gun: 50 mm2 of copper, crimped at both ends; 1.2 mm steel wire, 15 mm of it beyond the tip",
    "2026",
    {},
    source_kind::judgement};

/// What is inside a gun cooled by water.
inline constexpr source water_gun_judgement{"wire gun cooled by water: 25 mm2 of copper in the water hose; its head is "
                                            "cooled by its gas, its wire and along its "
                                            "neck, as one without water",
                                            "2026",
                                            {},
                                            source_kind::judgement};

/// How far beyond the tip wires are fed.
inline constexpr source usual_extension_practice{
    "wire beyond the tip, the long end of what is usual: solid wire 15 mm, cored wire 25 mm, submerged arc 35 mm",
    {},
    {},
    source_kind::common_practice};

/// The longest extension that is usual [m]: a longer one is held nearer. @param p process; of one without a wire that
/// of solid wire @see usual_extension_practice
[[nodiscard]] constexpr length usual_extension(process p)
{
    constexpr double solid = 0.015, cored = 0.025, submerged = 0.035;  // m
    return in_si<length>(p == process::fcaw ? cored : p == process::saw ? submerged : solid);
}

/// Conductor usual in a gun. @param cooling of the gun @see gun_judgement, water_gun_judgement
[[nodiscard]] constexpr conductor_size usual_gun_cable(torch_cooling cooling)
{
    return cooling == torch_cooling::water ? square_mm(25) : square_mm(50);
}

/// A wire gun with its cable. The cable inside is an ordinary lead (`lead`) and is rated as one,
/// if water does not cool it.
struct wire_gun {
    std::string name = {};                                          ///< empty: "gun 3" by its place in the path
    cable lead = welding_cable(square_mm(50), in_si<length>(3.0));  ///< conductor from the feeder to the tip
    metal wire = mild_steel;                                        ///< of the electrode
    length wire_diameter = in_si<length>(0.0012);                   ///< [m] above 0
    length extension = in_si<length>(0.015);                        ///< [m] of wire between tip and arc, 0 or above
    torch_cooling cooling = torch_cooling::gas;                     ///< of the cable

    /// A gun of 3 m without a name.
    wire_gun() = default;
    /// A gun of the usual make. @param n name, may be empty @param long_ of its cable [m], above 0 @param c cooling
    /// @throws not_finite_error, out_of_range_error @see gun_judgement, water_gun_judgement
    wire_gun(std::string n, length long_, torch_cooling c = torch_cooling::gas)
        : name(std::move(n)), lead(welding_cable(usual_gun_cable(c), long_)), cooling(c)
    {
    }
};

}  // namespace weldloop
