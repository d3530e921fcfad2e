#pragma once
/// @file
/// The force a contact needs for a wanted resistance or a wanted drop.
/// Source: contact_conductance_of() and joint_behaviour_of() turned round.

#include <cmath>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/part/contact.hpp>

namespace weldloop {

namespace detail {
inline band<force> force_for_conductance(const contact& c, conductance wanted)
{
    contact with_one_newton = c;
    with_one_newton.force = in_si<force>(1.0);
    const band<conductance> g = contact_conductance_of(with_one_newton);
    if (!(g.typical.value() > 0.0))
        throw no_solution_error("contact force", "without a solution", "a surface that conducts: no unbroken paint");
    const double exponent = 1.0 / force_law_exponent(c.shape);
    const auto needed = [&](conductance of_one_newton) {
        const double found = std::pow((wanted / of_one_newton).value(), exponent);
        if (!std::isfinite(found))
            throw no_solution_error("contact force", "without a solution",
                                    "a resistance that a finite force can reach");
        return in_si<force>(found);
    };
    return {needed(g.high), needed(g.typical), needed(g.low)};
}
}  // namespace detail

/// Force that gives a contact a wanted resistance at 20 degC, its spots cold [N].
///
/// F = n (1e-6 K s/(n R))^(1/m)/0.102 for the three points of its scatter: with the high force 95 of 100 such contacts
/// are as good as wanted or better. The scatter of K and surface is raised to 1/m, so the band is wide.
/// @param c the contact: metals, surface, shape and number of points count, its own force does not
/// @param wanted resistance [ohm], above 0
/// @throws not_finite_error, out_of_range_error; no_solution_error for unbroken paint, or beyond any number
/// @see contact_conductance_of()
[[nodiscard]] inline band<force> force_for_resistance(const contact& c, resistance wanted)
{
    const conductance g = 1.0 / require_positive(wanted, "resistance");
    return detail::force_for_conductance(c, require_finite(g, "conductance"));
}

/// Force that holds the drop of a contact at a current to a wanted one [N].
/// @param c the contact: metals, surface, shape and number of points count, its own force does not
/// @param through current [A], above 0 @param wanted drop [V], above 0 and below the melting drop of its metals: a
///   contact never drops more, with however little force
/// @param bulk temperature of both bodies, below the melting point of either metal
/// @throws not_finite_error, out_of_range_error; no_solution_error for unbroken paint, or beyond any number
/// @see conductance_for_drop()
[[nodiscard]] inline band<force> force_for_drop(const contact& c, current through, voltage wanted, temperature bulk)
{
    const conductance here = conductance_for_drop(through, wanted, joint_limits_of(c.metals, bulk));
    return detail::force_for_conductance(c, here * detail::resistivity_growth(c.metals, bulk));
}

}  // namespace weldloop
