#pragma once
/// @file
/// The body of a part that is known by what was measured on it.

#include <cmath>
#include <numbers>
#include <optional>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// What the user measured.
inline constexpr source measured_by_user{"drop of a measured part, as stated", {}, {}, source_kind::stated};
/// What stands for the rest of it.
inline constexpr source measured_part_body{
    "a measured part with a stated cooling area: one body, convection as from a body as wide as a ball of that area, "
    "emissivity 0.5, specific heat of mild steel; without a mass it follows its heat at once",
    "2026",
    {},
    source_kind::judgement};

/// Surface and heat of a measured part. @param cooling [m2] above 0 @param heavy its mass [kg] above 0, if it is known
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_body measured_body(area cooling, const std::optional<mass>& heavy)
{
    constexpr double between_dull_and_painted = 0.5;
    require_positive(cooling, "cooling area");
    if (heavy)
        require_finite(heat_capacity(require_positive(*heavy, "mass") * mild_steel.specific_heat), "heat stored");
    return {.surface = cooling,
            .diameter = boost::units::root<2>(cooling / std::numbers::pi),
            .emissivity = between_dull_and_painted,
            .capacity = heavy ? *heavy * mild_steel.specific_heat : heat_capacity{}};
}

}  // namespace weldloop
