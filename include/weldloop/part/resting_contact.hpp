#pragma once
/// @file
/// A part that lies on the table by its weight.

#include <string>
#include <utility>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/contact.hpp>

namespace weldloop {

/// What a part on a table rests on.
inline constexpr source resting_points_judgement{
    "a stiff part on a table rests on three high points", {}, {}, source_kind::judgement};
/// See resting_points_judgement.
inline constexpr int resting_points = 3;

/// Weight of a mass, m g [N]. @param resting m [kg], 0 or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline force weight_of(mass resting)
{
    require_not_negative(resting, "mass");
    return require_finite(in_si<force>(resting.value() * detail::standard_gravity), "weight");
}

/// The contact of a part that lies on a table: three points under its weight. 2 kg press with 20 N, which is no work
/// connection; a part held by its own weight needs a clamp of its own.
/// @param resting mass of the part [kg], 0 or above @param metals part and table @param surface of the worse of both
/// @param name as printed; empty: called by its place
/// @throws not_finite_error, out_of_range_error @see resting_points_judgement
[[nodiscard]] inline contact resting_contact(mass resting, const metal_pair& metals, surface_state surface,
                                             std::string name = {})
{
    return {.metals = metals,
            .force = weight_of(resting),
            .surface = surface,
            .name = std::move(name),
            .shape = contact_shape::point,
            .points = resting_points};
}

}  // namespace weldloop
