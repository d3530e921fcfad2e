#pragma once
/// @file
/// A jaw held off the work by balls of spatter, from the spots themselves: few high balls, each a scaled steel point.
/// The multiplier of surface_state::spatter_covered says the same by judgement; a test holds both against each other.

#include <cmath>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/contact.hpp>

namespace weldloop {

/// How many balls carry a jaw.
inline constexpr source spatter_ball_judgement{
    "a jaw on spatter rests on 3 balls, from 1 to 10; each is a steel point with cracked scale",
    "2026",
    {},
    source_kind::judgement};
/// Number of balls that carry a jaw; see spatter_ball_judgement.
inline constexpr band<double> spatter_balls{1.0, 3.0, 10.0};

/// The contact of a jaw on a known number of balls. @param jaw its metal @param pressing force [N], 0 or above
/// @param balls that carry it, 1 to 1000
/// @throws not_finite_error, out_of_range_error @see spatter_ball_judgement
[[nodiscard]] inline contact spatter_contact_of(const metal& jaw, force pressing, int balls)
{
    constexpr double most_balls = 1000.0;
    require_not_negative(pressing, "contact force");
    require_within(balls, 1.0, most_balls, "balls under the jaw");
    return {.metals = {jaw, mild_steel},
            .force = pressing,
            .surface = surface_state::mill_scale_bitten,
            .shape = contact_shape::point,
            .points = balls};
}

/// Conductance of a jaw on spatter at 20 degC [S]: n points of the force law with m = 0.5 and the multiplier of cracked
/// scale; K, scale and the number of balls scatter independently. Open without force.
/// @param jaw its metal @param pressing force [N], 0 or above
/// @throws not_finite_error, out_of_range_error @see contact_conductance_of()
[[nodiscard]] inline band<conductance> spatter_conductance_of(const metal& jaw, force pressing)
{
    const contact few = spatter_contact_of(jaw, pressing, static_cast<int>(spatter_balls.typical));
    const band<conductance> known = contact_conductance_of(few);
    if (!(known.typical.value() > 0.0)) return known;
    const double spread = 1.0 - force_law_exponent(few.shape);  // G goes as n^(1 - m)
    const auto against_typical = [&](double balls) { return std::pow(spatter_balls.typical / balls, spread); };
    const band<double> count{against_typical(spatter_balls.high), 1.0, against_typical(spatter_balls.low)};
    const band<double> of_known{(known.typical / known.high).value(), 1.0, (known.typical / known.low).value()};
    return detail::scattered_conductance(known.typical, product_of(of_known, count));
}

/// What a jaw on spatter does at a current. @param jaw its metal @param pressing force [N], 0 or above
/// @param through current [A], 0 or above @param bulk temperature of jaw and work
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour spatter_behaviour_of(const metal& jaw, force pressing, current through,
                                                          temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(spatter_conductance_of(jaw, pressing), {jaw, mild_steel}, through, bulk);
    out.basis.add(contact_basis_of(spatter_contact_of(jaw, pressing, 1))).add(spatter_ball_judgement);
    return out;
}

}  // namespace weldloop
