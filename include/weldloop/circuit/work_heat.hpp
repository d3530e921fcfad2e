#pragma once
/// @file
/// The work under a clamp as a sink of heat.

#include <numbers>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/fin.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// Heated patch under a contact and the emissivity of shop steel.
inline constexpr source work_patch{
    "heated patch of 10 mm radius under a contact; emissivity 0.8 of scaled or rusty steel (Holman A-10 range)",
    {},
    {},
    source_kind::judgement};
/// [m], see work_patch.
inline constexpr length work_patch_radius = in_si<length>(0.010);
/// [1] see work_patch.
inline constexpr double work_emissivity = 0.8;
/// Width of the warmed work, a few decay lengths, for the convection formula, which hardly minds [m] (judgement).
inline constexpr length work_width = in_si<length>(0.1);
/// Thickness of work that is not described, 10 mm (judgement).
inline constexpr length usual_work_thickness = in_si<length>(0.010);

/// The work side of a joint.
struct work_heat {
    thermal_conductance sink = {};  ///< from the patch under the contact into the plate and the air [W/K]
    temperature work = {};          ///< of the work far from the contact: the air's, or its preheat
    area faces = {};                ///< apparent contact area between jaw and work [m2]
    heat_capacity patch = {};       ///< of the work under the contact [J/K]; 0: next to none
    area beside = {};               ///< faces of the jaws that look at the work and do not touch it [m2]
};

/// Sink of a plate round a contact: a disc fin losing heat from both faces as a body of its own width would.
/// @param m metal of the plate @param thickness [m], above 0 @param patch expected temperature of the patch
/// @param where air around @return [W/K] @throws as disc_fin_conductance(), body_coefficient()
[[nodiscard]] inline thermal_conductance plate_sink(const metal& m, length thickness, temperature patch,
                                                    const surroundings& where)
{
    const thermal_body face{.surface = {}, .diameter = work_width, .emissivity = work_emissivity, .capacity = {}};
    return disc_fin_conductance(m.thermal_conductivity, thickness, work_patch_radius,
                                body_coefficient(face, patch, where));
}

/// Heat capacity of the patch of a plate under a contact [J/K].
/// @param m metal of the plate @param thickness [m], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline heat_capacity patch_capacity(const metal& m, length thickness)
{
    require_not_negative(thickness, "work thickness");
    return require_finite(
        heat_capacity(std::numbers::pi * work_patch_radius * work_patch_radius * thickness * m.heat_per_volume()),
        "heat capacity of the work");
}

}  // namespace weldloop
