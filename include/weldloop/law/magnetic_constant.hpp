#pragma once
/// @file
/// The magnetic constant and what the laws of inductance and skin effect measure with it.

#include <numbers>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// The magnetic constant. Exact until 2019; the present value differs by less than 1e-9 of it.
inline constexpr source magnetic_constant_definition{"SI, ampere", "1948", "4 pi 1e-7 H/m", source_kind::standard};

using inductance_per_length = decltype(inductance{} / length{});  ///< henry per metre

/// mu0 [H/m]; see magnetic_constant_definition.
inline constexpr inductance_per_length magnetic_constant = in_si<inductance_per_length>(4e-7 * std::numbers::pi);

/// Range of relative permeability that is taken: copper and aluminium have 1, steel some hundreds.
/// @{
inline constexpr double least_permeability = 0.999;  ///< [1] the most diamagnetic of conductors, bismuth, has 0.9998
inline constexpr double most_permeability = 1e6;     ///< [1] soft magnetic alloys reach about this
/// @}

namespace detail {
inline double require_permeability(double relative)
{
    return require_within(relative, least_permeability, most_permeability, "relative permeability");
}
}  // namespace detail

}  // namespace weldloop
