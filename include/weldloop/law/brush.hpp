#pragma once
/// @file
/// Sliding contacts of carbon and of metal and graphite: a drop that hardly follows the current. Copper sliding on
/// copper is no brush: it is a contact of the force law, see circuit/rotary_ground_behaviour.hpp.

#include <algorithm>
#include <array>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Drop of a brush.
inline constexpr source brush_drop_recalled{"IEEE 113 and machine-design practice",
                                            {},
                                            "a pair of brushes: 2 V for carbon and graphite, 0.5 V for metal-graphite; "
                                            "half of it for one (ends of the bands are "
                                            "judgement)",
                                            source_kind::memory};
/// Where the drop levels off.
inline constexpr source brush_level_judgement{
    "drop in proportion to the current density up to 5 A/cm2, level above", "2026", {}, source_kind::judgement};
/// Highest current density of brushes.
inline constexpr source brush_density_recalled{"brush makers' general practice",
                                               {},
                                               "carbon and graphite up to 12 A/cm2, metal-graphite up to 20 A/cm2",
                                               source_kind::memory};

using brush_density = decltype(current{} / area{});  ///< ampere per square metre

/// What slides on the ring.
enum class brush_kind {
    metal_graphite,  ///< copper or bronze powder with graphite
    carbon,          ///< carbon, graphite, electrographite
};

/// A brush material.
struct brush_material {
    std::string_view name;     ///< as printed
    band<voltage> level_drop;  ///< [V] of one brush on its ring, above the level density
    brush_density highest;     ///< [A/m2] it should carry all the time
};

/// The material of a kind. @see brush_drop_recalled, brush_density_recalled
[[nodiscard]] constexpr brush_material material_of(brush_kind kind)
{
    if (kind == brush_kind::carbon)
        return {"carbon", {in_si<voltage>(0.8), in_si<voltage>(1.0), in_si<voltage>(1.3)}, in_si<brush_density>(12e4)};
    return {"metal-graphite",
            {in_si<voltage>(0.15), in_si<voltage>(0.25), in_si<voltage>(0.5)},
            in_si<brush_density>(20e4)};
}

/// Current density from which on the drop is level [A/m2]; see brush_level_judgement.
inline constexpr brush_density brush_level_density = in_si<brush_density>(5e4);

/// Drop of one brush on its ring [V]: in proportion to the current density up to 5 A/cm2, level above.
/// @param kind material @param through current of this brush [A], 0 or above @param face area on the ring [m2], above 0
/// @throws not_finite_error, out_of_range_error @see brush_drop_recalled, brush_level_judgement
[[nodiscard]] inline band<voltage> brush_drop(brush_kind kind, current through, area face)
{
    require_not_negative(through, "current");
    require_positive(face, "face of the brush");
    const double share = std::min(1.0, (through / face / brush_level_density).value());
    return mapped(material_of(kind).level_drop, [share](voltage v) { return voltage(share * v); });
}

}  // namespace weldloop
