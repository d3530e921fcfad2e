#pragma once
/// @file
/// Heat that crosses a joint: through the metallic spots that carry the current, through the air or grease between
/// them, and by radiation across the gap.

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/law/voltage_temperature.hpp>

namespace weldloop {

/// Conduction of a film of grease.
inline constexpr source grease_conductivity_recalled{
    "heat-transfer handbooks", {}, "mineral oil and grease 0.13 to 0.18 W/(m K)", source_kind::memory};
/// Grease or oil between the faces of a joint [W/(m K)]; see grease_conductivity_recalled.
inline constexpr thermal_conductivity grease_conductivity = in_si<thermal_conductivity>(0.15);

/// Effective air gap between two pressed faces outside their spots, 0.1 mm.
inline constexpr source pressed_gap{
    "air gap between the faces of a work connection outside its spots: 0.1 mm", {}, {}, source_kind::judgement};
/// [m], see pressed_gap.
inline constexpr length pressed_gap_height = in_si<length>(1e-4);

/// Thermal conductance of the metallic spots, L T G [W/K] (Wiedemann-Franz-Lorenz). The electrical conductance must be
/// that of the metal spots alone: a film that stops current does not stop heat in the same measure.
/// @param metallic electrical conductance of the spots [S], 0 or above @param t their temperature
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductance spot_heat_conductance(conductance metallic, temperature t)
{
    require_not_negative(metallic, "spot conductance");
    return in_si<thermal_conductance>(lorenz_number * t.in_kelvin() * metallic.value());
}

/// Thermal conductance of a thin layer of air, k A/d [W/K].
/// @param air    conductivity of the air [W/(m K)], above 0
/// @param faces  apparent area [m2], 0 or above
/// @param gap    height [m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductance gap_heat_conductance(thermal_conductivity air, area faces, length gap)
{
    return require_positive(air, "air conductivity") * require_not_negative(faces, "contact area") /
           require_positive(gap, "gap");
}

/// What lies between two faces outside their spots.
struct joint_gap {
    thermal_conductivity filling;                  ///< [W/(m K)] of the air or grease, above 0
    area faces;                                    ///< [m2] apparent contact area, 0 or above
    length height = pressed_gap_height;            ///< [m] above 0
    weldloop::emissivity first_emissivity = 0.5;   ///< of one face
    weldloop::emissivity second_emissivity = 0.5;  ///< of the other
};

/// Conductance of radiation between two close parallel faces [W/K], A sigma 4 T^3/(1/e1 + 1/e2 - 1). A few millionths
/// of what the spots pass; it stands here so that its absence needs no belief. A face of no emissivity gives zero.
/// @param gap area and emissivities of the faces @param t their mean temperature
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductance gap_radiation_conductance(const joint_gap& gap, temperature t)
{
    require_not_negative(gap.faces, "contact area");
    const double one = static_cast<double>(gap.first_emissivity), other = static_cast<double>(gap.second_emissivity);
    const double both = one * other;
    if (both == 0.0) return {};
    return radiation_coefficient(both / (one + other - both), t, t) * gap.faces;
}

/// Heat conductance of a whole joint [W/K]: metal spots by the Lorenz number, the gap's filling, and radiation.
///
/// The spots' conductance must be that of their metal. Never take the measured conductance of a joint with films for
/// it: a film stops current and lets heat through.
/// @param metallic electrical conductance of the metal spots alone [S], 0 or above
/// @param gap what lies between the faces @param t mean temperature of the joint
/// @throws not_finite_error, out_of_range_error @see lorenz_source, stefan_boltzmann_law
[[nodiscard]] inline thermal_conductance joint_heat_conductance(conductance metallic, const joint_gap& gap,
                                                                temperature t)
{
    return spot_heat_conductance(metallic, t) + gap_heat_conductance(gap.filling, gap.faces, gap.height) +
           gap_radiation_conductance(gap, t);
}

}  // namespace weldloop
