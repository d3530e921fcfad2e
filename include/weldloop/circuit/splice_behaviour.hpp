#pragma once
/// @file
/// A cable splice under current: two crimps, one after the other.

#include <algorithm>
#include <numbers>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable_splice.hpp>
#include <weldloop/part/lug.hpp>

namespace weldloop {

namespace detail {
inline lug end_in_sleeve(const cable_splice& s, const conductor_size& cable)
{
    lug out;
    out.size = cable;
    out.stamped = s.stamped;
    out.missing_strands = s.missing_strands;
    return out;
}
}  // namespace detail

/// Conductance of a splice at 20 degC [S]: the crimps of both ends, each as a lug's crimp of its size would be.
/// @param s the splice @throws not_finite_error, out_of_range_error @see crimp_conductance_of()
[[nodiscard]] inline band<conductance> splice_conductance_of(const cable_splice& s)
{
    return in_series(crimp_conductance_of(detail::end_in_sleeve(s, s.first)),
                     crimp_conductance_of(detail::end_in_sleeve(s, s.second)));
}

/// What a splice does at a current. @param s the splice @param through current [A], 0 or above @param bulk of the
/// sleeve
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const cable_splice& s, current through, temperature bulk)
{
    return in_series(crimp_behaviour_of(detail::end_in_sleeve(s, s.first), through, bulk),
                     crimp_behaviour_of(detail::end_in_sleeve(s, s.second), through, bulk));
}

/// What a splice looks like.
inline constexpr source splice_shape_judgement{
    "cable splice: a sleeve 1.3 strand diameters of the larger cable across and 7.8 long, full of copper, under a "
    "covering of emissivity 0.9",
    "2026",
    {},
    source_kind::judgement};

/// The body of a splice. @param s the splice @see splice_shape_judgement
[[nodiscard]] inline thermal_body body_of(const cable_splice& s)
{
    constexpr double covered = 0.9;
    const length strands = detail::strand_diameter(std::max(s.first, s.second)), across = 1.3 * strands;
    const length along = 6.0 * across;
    return {.surface = std::numbers::pi * across * along,
            .diameter = across,
            .emissivity = covered,
            .capacity = detail::heat_of(annealed_copper, 0.25 * std::numbers::pi * across * across * along)};
}

/// The sheet of a splice: the crimp of either end, the worse one held against its acceptance. @param s the splice
/// @throws not_finite_error, out_of_range_error @see splice_shape_judgement
[[nodiscard]] inline part_sheet sheet_of(const cable_splice& s)
{
    part_sheet out;
    const auto crimp_on = [&s](const conductor_size& cable) {
        return crimp_conductance_of(detail::end_in_sleeve(s, cable));
    };
    const band<conductance> first = crimp_on(s.first), second = crimp_on(s.second);
    out.contacts = {{"first crimp", contact_hold::crimp, first, crimp_metals},
                    {"second crimp", contact_hold::crimp, second, crimp_metals}};
    out.body = body_of(s);
    out.melting = annealed_copper.melting;
    out.outer_face = first.typical;
    out.limits = {detail::joint_limit_at(part_place::metal, joint_kind::bolted, "crimped bare copper")};
    const auto one = detail::crimp_held(first, s.first.area()), other = detail::crimp_held(second, s.second.area());
    const auto used = [](const resistance_limit& l) { return (l.held.typical / l.highest).value(); };
    out.crimp = one && other && used(*other) > used(*one) ? other : one;
    out.basis.add(crimp_basis_of(s.first.area())).add(crimp_basis_of(s.second.area()));
    out.basis.add(underfilled_barrel_judgement).add(splice_shape_judgement);
    return out;
}

/// What can be otherwise with a splice.
[[nodiscard]] inline part_conditions<cable_splice> conditions_of(const cable_splice&)
{
    return {.missing_strands = &cable_splice::missing_strands};
}

}  // namespace weldloop
