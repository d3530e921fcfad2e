#pragma once
/// @file
/// Heat that crosses a joint: through the metallic spots that carry the current, and through the air between them.

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/voltage_temperature.hpp>

namespace weldloop {

/// Effective air gap between two pressed faces outside their spots, 0.1 mm.
inline constexpr source pressed_gap{"air gap between the faces of a work connection outside its spots: 0.1 mm", {}, {}, source_kind::judgement};
/// [m], see pressed_gap.
inline constexpr length pressed_gap_height = in_si<length>(1e-4);

/// Thermal conductance of the metallic spots, L T G [W/K] (Wiedemann-Franz-Lorenz). The electrical conductance must be
/// that of the metal spots alone: a film that stops current does not stop heat in the same measure.
/// @param metallic electrical conductance of the spots [S], 0 or above @param t their temperature
[[nodiscard]] inline thermal_conductance spot_heat_conductance(conductance metallic, temperature t)
{
    require_not_negative(metallic, "spot conductance");
    return in_si<thermal_conductance>(lorenz_number * t.in_kelvin() * metallic.value());
}

/// Thermal conductance of a thin layer of air, k A/d [W/K].
/// @param air    conductivity of the air [W/(m K)], above 0
/// @param faces  apparent area [m2], 0 or above
/// @param gap    height [m], above 0
[[nodiscard]] inline thermal_conductance gap_heat_conductance(thermal_conductivity air, area faces, length gap)
{
    return require_positive(air, "air conductivity") * require_not_negative(faces, "contact area") / require_positive(gap, "gap");
}

}  // namespace weldloop
