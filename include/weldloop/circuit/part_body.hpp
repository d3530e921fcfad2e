#pragma once
/// @file
/// Bodies of the parts whose makers' drawings nobody has at hand: generic shapes scaled by the conductor.

#include <cmath>
#include <numbers>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// Generic shapes of lugs, couplings, holders and gun heads.
inline constexpr source generic_bodies{"generic shapes of lugs, couplings, holders and torch heads scaled by the "
                                       "conductor; emissivity 0.22 of dull metal, 0.9 of a covered part",
                                       {},
                                       {},
                                       source_kind::judgement};

namespace detail {
// Diameter over the strands at the usual fill of flexible conductors.
[[nodiscard]] inline length strand_diameter(const conductor_size& size)
{
    constexpr double usual_fill = 0.60;  // metal over circle; published flexible conductors lie between 0.50 and 0.68
    return boost::units::root<2>(size.area() * (4.0 / std::numbers::pi / usual_fill));
}

[[nodiscard]] inline heat_capacity heat_of(const metal& m, volume v)
{
    return m.heat_per_volume() * v;
}
}  // namespace detail

/// Ratio of the width of a lug's barrel to the diameter of the strands in it; see generic_bodies.
inline constexpr double barrel_width = 1.3;
/// Ratio of the length of a lug's barrel to its width; see generic_bodies.
inline constexpr double barrel_length = 3.0;

/// How deep a conductor goes into the barrel of a usual lug [m]. @param size of the conductor @see generic_bodies
[[nodiscard]] inline length usual_barrel_depth(const conductor_size& size)
{
    return barrel_length * barrel_width * detail::strand_diameter(size);
}

/// A crimped lug: a barrel, and a flat palm of twice its width.
[[nodiscard]] inline thermal_body lug_body(const conductor_size& size)
{
    using std::numbers::pi;
    const length b = barrel_width * detail::strand_diameter(size), along = barrel_length * b;
    const area outside = pi * b * along + 2.0 * (2.0 * b) * (2.0 * b);
    const volume copper = 0.25 * pi * b * b * along + (2.0 * b) * (2.0 * b) * (0.25 * b);
    constexpr double dull_metal = 0.22;
    return {outside, b, dull_metal, detail::heat_of(annealed_copper, copper)};
}

/// A covered coupling: three strand diameters across, ten long, half of it metal.
[[nodiscard]] inline thermal_body coupling_body(const conductor_size& size)
{
    using std::numbers::pi;
    constexpr double covered = 0.9;
    const length across = 3.0 * detail::strand_diameter(size), along = 10.0 * detail::strand_diameter(size);
    return {pi * across * along, across, covered, 0.5 * detail::heat_of(brass, 0.25 * pi * across * across * along)};
}

/// The handle of an electrode holder.
inline constexpr source holder_handle_judgement{
    "electrode holder: 35 mm across, 220 mm long, a fifth of it metal; head of 80 mm in the air, handle of 140 mm: 4 "
    "mm "
    "of fibre-filled plastic (0.25 W/(m K), 2.0 MJ/(m3 K)) over 2 mm of air round the metal",
    "2026",
    {},
    source_kind::judgement};

/// An electrode holder as two bodies: its metal with the covered head, and the outside of its handle.
struct holder_bodies {
    thermal_body core = {};               ///< metal, cooled by the outside of the head
    thermal_body handle = {};             ///< what the hand grips
    thermal_conductance insulation = {};  ///< between them [W/K]
};

/// The bodies of a holder. @param where the air in its gap has the temperature of the air around
/// @throws as air_at() @see holder_handle_judgement
[[nodiscard]] inline holder_bodies holder_bodies_of(const surroundings& where)
{
    constexpr double covered = 0.9, share_of_metal = 0.2, pi = std::numbers::pi;
    const length across = in_si<length>(0.035), head = in_si<length>(0.080), grip = in_si<length>(0.140);
    const length wall = in_si<length>(0.004), gap = in_si<length>(0.002);
    const auto plastic = in_si<thermal_conductivity>(0.25);
    const auto heat_of_plastic = in_si<volumetric_heat>(2.0e6);
    const length inside = across - 2.0 * wall, metal_across = inside - 2.0 * gap;
    const auto layer = [](length outer, length inner, thermal_conductivity k) {
        return std::log((outer / inner).value()) / k;
    };
    const thermal_conductivity air = air_at(where.air).thermal_conductivity;
    return {.core = {pi * across * head, across, covered,
                     share_of_metal * detail::heat_of(brass, 0.25 * pi * across * across * (head + grip))},
            .handle = {pi * across * grip, across, covered,
                       heat_of_plastic * (0.25 * pi * (across * across - inside * inside) * grip)},
            .insulation = 2.0 * pi * grip / (layer(across, inside, plastic) + layer(inside, metal_across, air))};
}

/// The neck and nozzle of a gun or torch: 22 mm by 180 mm, half of it metal.
[[nodiscard]] inline thermal_body torch_head_body()
{
    using std::numbers::pi;
    constexpr double dull_metal = 0.22;
    const length across = in_si<length>(0.022), along = in_si<length>(0.180);
    return {pi * across * along, across, dull_metal, 0.5 * detail::heat_of(brass, 0.25 * pi * across * across * along)};
}

}  // namespace weldloop
