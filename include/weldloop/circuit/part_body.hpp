#pragma once
/// @file
/// Bodies of the parts whose makers' drawings nobody has at hand: generic shapes scaled by the conductor.

#include <cmath>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metals.hpp>

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
    return boost::units::root<2>(size.area() * (4.0 / 3.14159265358979323846 / usual_fill));
}

[[nodiscard]] inline heat_capacity heat_of(const metal& m, volume v)
{
    return m.heat_per_volume() * v;
}
}  // namespace detail

/// A crimped lug: a barrel 1.3 strand diameters across and 3.9 long, and a flat palm of twice its width.
[[nodiscard]] inline thermal_body lug_body(const conductor_size& size)
{
    constexpr double pi = 3.14159265358979323846;
    const length strands = detail::strand_diameter(size), b = 1.3 * strands;
    const area outside = pi * b * (3.0 * b) + 2.0 * (2.0 * b) * (2.0 * b);
    const volume copper = 0.25 * pi * b * b * (3.0 * b) + (2.0 * b) * (2.0 * b) * (0.25 * b);
    constexpr double dull_metal = 0.22;
    return {outside, b, dull_metal, detail::heat_of(annealed_copper, copper)};
}

/// A covered coupling: three strand diameters across, ten long, half of it metal.
[[nodiscard]] inline thermal_body coupling_body(const conductor_size& size)
{
    constexpr double pi = 3.14159265358979323846, covered = 0.9;
    const length across = 3.0 * detail::strand_diameter(size), along = 10.0 * detail::strand_diameter(size);
    return {pi * across * along, across, covered, 0.5 * detail::heat_of(brass, 0.25 * pi * across * across * along)};
}

/// An electrode holder: a covered handle of 35 mm by 220 mm with a fifth of it metal.
[[nodiscard]] inline thermal_body holder_body()
{
    constexpr double pi = 3.14159265358979323846, covered = 0.9;
    const length across = in_si<length>(0.035), along = in_si<length>(0.220);
    return {pi * across * along, across, covered, 0.2 * detail::heat_of(brass, 0.25 * pi * across * across * along)};
}

/// The neck and nozzle of a gun or torch: 22 mm by 180 mm, half of it metal.
[[nodiscard]] inline thermal_body torch_head_body()
{
    constexpr double pi = 3.14159265358979323846, dull_metal = 0.22;
    const length across = in_si<length>(0.022), along = in_si<length>(0.180);
    return {pi * across * along, across, dull_metal, 0.5 * detail::heat_of(brass, 0.25 * pi * across * across * along)};
}

}  // namespace weldloop
