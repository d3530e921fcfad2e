#pragma once
/// @file
/// Spring clamps as they are sold: stamped of steel, and cast of a copper alloy with a braid; any spring clamp by its
/// dimensions. What no dimension gives is judgement, and said with the result.

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/clamp_cable_connection.hpp>
#include <weldloop/part/clamp_inside.hpp>
#include <weldloop/part/clamp_spring.hpp>
#include <weldloop/part/work_clamp.hpp>

namespace weldloop {

/// Stamped clamps.
inline constexpr source stamped_clamp_family{
    "stamped spring clamps by rated current: two bare halves of steel sheet 2 mm thick and 42 mm wide at 300 A, "
    "thickness "
    "by the fourth root of the rating and width by its square root; no shunt, cable by a lug on a stud of one half; "
    "1.5 "
    "times the force that just passes the holding test, at least 120 N; spring at 0.70 of its strength",
    "2026",
    {},
    source_kind::judgement};
/// Cast clamps.
inline constexpr source cast_clamp_family{
    "cast spring clamps by rated current: mass, surface, force and stress of the spring clamps, lengths of that of 300 "
    "A by "
    "the cube root of the mass; a braid of half the "
    "cable's copper to the second jaw, cable by a lug on a stud under a strain relief",
    "2026",
    {},
    source_kind::judgement};

/// A spring clamp by its dimensions: two like halves on a pin, the cable on one of them.
struct spring_clamp_dimensions {
    std::string name = {};                         ///< as printed
    clamp_make make = clamp_make::stamped;         ///< what a larger one of it is
    current rated_current = {};                    ///< [A] 0 or above, printed on it, at the rated duty
    duty_fraction rated_duty = 0.60;               ///< share of a 10 min period
    conductor_size largest_cable = square_mm(50);  ///< its cable connection is made for
    metal body = mild_steel;                       ///< of both halves
    metal jaw = mild_steel;                        ///< what touches the work
    int live_jaws = 2;                             ///< 2: both bite bare; 1: the half without cable is insulated
    length jaw_length = 35_mm;                     ///< [m] from the tip, above 0
    length reach = 30_mm;                          ///< [m] between jaw and pivot, above 0
    length handle = 90_mm;                         ///< [m] behind the pivot, 0 or above
    length entry = 35_mm;                          ///< [m] from the pivot to the cable's connection, above 0
    area section = 84_mm2;                         ///< [m2] of one half, above 0
    length outline = 126_mm;                       ///< [m] round one half that the air sees, above 0
    weldloop::emissivity emissivity = 0.3;         ///< of its surface
    length across = 30_mm;                         ///< [m] for convection, above 0
    area jaw_area = 60_mm2;                        ///< [m2] 0 or above, apparent contact of one jaw
    weldloop::force force = {};                    ///< [N] at each jaw when new, above 0
    spring_wire wire = hard_drawn_wire;            ///< of its two coil bodies
    length wire_diameter = 5_mm;                   ///< [m] above 0
    double turns = 4.0;                            ///< turns of each coil body, above 0 to 10000
    area shunt = {};                               ///< [m2] 0 or above, copper beside the pivot; 0: none
    length shunt_length = 90_mm;                   ///< [m] of it, above 0
    clamp_inside inside = {};                      ///< states of pivot and shunt
    clamp_cable_connection connection = {.made = clamp_cable_end::stud};  ///< of the cable
    const source* family = &stamped_clamp_family;                         ///< what the numbers rest on
};

namespace detail {

inline constexpr double stamped_reference_amps = 300.0, stamped_margin = 1.5, stamped_stress = 0.70;
inline constexpr force least_stamped_force = 120_N;
inline constexpr current largest_stamped = 600_A, cast_reference = 300_A;
inline constexpr length stamped_sheet = 2_mm, stamped_width = 42_mm;
inline constexpr double seen_faces = 1.5;  // of a channel: its outside and half of its inside

// Wire of a torsion spring that a moment brings to a share of its strength; at one index the stress is as
// d^(exponent of strength - 3). The spring tried is within the range of one law of strength.
inline length wire_for(clamp_spring trial, force at, double stress)
{
    const double falls_as = 3.0 - hard_drawn_strength.front().exponent;
    trial.wire_diameter = 8_mm;  // thick enough for every clamp of the families
    trial.coil_diameter = clamp_spring_index * trial.wire_diameter;
    return trial.wire_diameter * std::pow(static_cast<double>(clamp_spring_stress(trial, at)) / stress, 1.0 / falls_as);
}

}  // namespace detail

/// The work clamp of these dimensions: mass, surface, resistance of the arms and stress of the spring follow.
///
/// Arms: rho l/A of one half from jaw to connection; what of it is shared by both jaws is taken when the current is
/// divided (divided_clamp_current()). The spring's stress is at 20 degC, clamp on the work.
/// @param d dimensions @throws not_finite_error, out_of_range_error, also for a spring that could not bear the force
[[nodiscard]] inline work_clamp clamp_of(const spring_clamp_dimensions& d)
{
    constexpr double halves = 2.0;
    require_not_negative(d.rated_current, "rated current");
    require_not_negative(d.jaw_area, "apparent contact of a jaw");
    require_positive(d.section, "section of the arms");
    require_positive(d.outline, "outline of the arms");
    require_positive(d.force, "clamp force");
    require_positive(d.jaw_length, "length of the jaw");
    require_positive(d.reach, "length between jaw and pivot");
    require_not_negative(d.handle, "length of the handles");
    require_positive(d.entry, "length of the cable connection");
    require_positive(d.across, "width of the arms");
    require_not_negative(d.shunt, "copper beside the pivot");
    require_positive(d.shunt_length, "length of the copper beside the pivot");
    require_positive(d.turns, "turns of the spring");
    require_within(d.live_jaws, 1.0, 2.0, "live jaws");
    const length whole = d.jaw_length + d.reach + d.handle + d.entry;
    work_clamp out;
    out.name = d.name;
    out.kind = clamp_kind::spring;
    out.make = d.make;
    out.rated_current = d.rated_current;
    out.rated_duty = d.rated_duty;
    out.largest_cable = d.largest_cable;
    out.live_jaws = d.live_jaws;
    out.force = d.force;
    out.jaw = d.jaw;
    out.jaw_area = d.jaw_area;
    clamp_spring spring{.wire = d.wire,
                        .wire_diameter = d.wire_diameter,
                        .coil_diameter = detail::clamp_spring_index * d.wire_diameter,
                        .arm = d.jaw_length + d.reach,
                        .turns = d.turns};
    spring.stress = clamp_spring_stress(spring, d.force);
    out.spring = spring;
    out.body_metal = d.body;
    out.body_mass = require_finite(mass(halves * d.section * whole * d.body.density), "mass of the arms");
    out.body_surface = require_finite(area(halves * d.outline * whole), "surface of the arms");
    out.body_diameter = d.across;
    out.body_emissivity = d.emissivity;
    out.build = {.jaw = d.jaw_length,
                 .reach = d.reach,
                 .handle = d.handle,
                 .entry = d.entry,
                 .shunt = d.shunt,
                 .shunt_length = d.shunt_length};
    out.inside = d.inside;
    out.arms = require_finite(resistance(d.body.resistivity * d.entry / d.section), "resistance of the arms");
    const resistance arms = out.arms;
    out.termination = mapped(cable_connection_resistance(d.connection, d.largest_cable.area(), d.body),
                             [arms](const resistance& r) { return 1.0 / (r + arms); });
    out.basis.add(*d.family).add(clamp_cable_connection_judgement).add(clamp_build_judgement).add(clamp_interpolation);
    out.basis.add(crimp_band_judgement).add(*crimp_limit_of(d.largest_cable.area()).from);
    out.basis.add(work_clamp_holding_test).add(holding_friction_judgement).add(welding_cable_masses);
    return out;
}

/// Dimensions of a stamped steel spring clamp, see stamped_clamp_family. Smooth in the rating: powers of it, and the
/// cable and duty of the spring clamps. @param rated current [A], 100 to 600
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline spring_clamp_dimensions stamped_spring_clamp_dimensions(current rated)
{
    require_within(rated, in_si<current>(100.0), detail::largest_stamped, "rated current");
    const detail::clamp_row row = detail::clamp_member_of(rated).row;
    const double size = rated.value() / detail::stamped_reference_amps, root = std::sqrt(size), slow = std::sqrt(root);
    spring_clamp_dimensions out;
    out.name = "stamped spring clamp " + to_text(rated, "A");
    out.rated_current = rated;
    out.rated_duty = row.duty;
    out.largest_cable = square_mm(row.cable_mm2);
    for (length spring_clamp_dimensions::*const of :
         {&spring_clamp_dimensions::jaw_length, &spring_clamp_dimensions::reach, &spring_clamp_dimensions::handle,
          &spring_clamp_dimensions::entry, &spring_clamp_dimensions::shunt_length})
        out.*of *= slow;
    const length width = root * detail::stamped_width;
    out.section = slow * detail::stamped_sheet * width;
    constexpr double both_faces = 2.0;
    out.outline = both_faces * detail::seen_faces * width;
    out.jaw_area *= root;
    const force held = detail::stamped_margin * holding_force(holding_test_mass(out.largest_cable.area()));
    out.force = std::max(held, detail::least_stamped_force);
    out.wire_diameter = detail::wire_for({.arm = out.jaw_length + out.reach}, out.force, detail::stamped_stress);
    return out;
}

/// Dimensions of a cast spring clamp with braid and stud, see cast_clamp_family.
/// @param rated current [A], 100 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline spring_clamp_dimensions cast_spring_clamp_dimensions(current rated)
{
    const work_clamp usual = spring_clamp(rated);
    const clamp_build like = spring_clamp(detail::cast_reference).build;
    constexpr double halves = 2.0;
    // like bodies: every length as the cube root of the mass
    const double longer =
        std::cbrt(static_cast<double>(usual.body_mass / spring_clamp(detail::cast_reference).body_mass));
    spring_clamp_dimensions out;
    out.name = "cast spring clamp " + to_text(rated, "A");
    out.make = clamp_make::cast;
    out.rated_current = rated;
    out.rated_duty = usual.rated_duty;
    out.largest_cable = usual.largest_cable;
    out.body = out.jaw = brass;
    out.jaw_length = longer * like.jaw;
    out.reach = longer * like.reach;
    out.handle = longer * like.handle;
    out.entry = longer * like.entry;
    const length whole = out.jaw_length + out.reach + out.handle + out.entry;
    out.section = usual.body_mass / (halves * brass.density * whole);
    out.outline = usual.body_surface / (halves * whole);
    out.emissivity = usual.body_emissivity;
    out.across = usual.body_diameter;
    out.jaw_area = usual.jaw_area;
    out.force = usual.force;
    out.wire_diameter =
        detail::wire_for({.arm = out.jaw_length + out.reach}, out.force, static_cast<double>(usual.spring->stress));
    out.shunt = usual.build.shunt;
    out.shunt_length = longer * like.shunt_length;
    out.family = &cast_clamp_family;
    return out;
}

/// A spring clamp stamped of steel sheet as the trade sells it cheaply: steel jaws, both biting, the cable on one half,
/// no shunt, so that what comes by the other jaw passes pivot and spring. It makes no claim to the published type test.
/// @param rated current [A], 100 to 600 @throws not_finite_error, out_of_range_error @see stamped_clamp_family
[[nodiscard]] inline work_clamp stamped_spring_clamp(current rated)
{
    return clamp_of(stamped_spring_clamp_dimensions(rated));
}

/// A spring clamp cast of brass as the trade sells it for daily use: a braid beside the pivot, the cable by a lug on a
/// stud under a strain relief, which keeps it tight.
/// @param rated current [A], 100 to 1000 @throws not_finite_error, out_of_range_error @see cast_clamp_family
[[nodiscard]] inline work_clamp cast_spring_clamp(current rated)
{
    return clamp_of(cast_spring_clamp_dimensions(rated));
}

/// A new clamp of the same make and another rating; of a stamped one beyond its family the cast one. A lug stays what
/// it is: its rating is that of its cable. @param like the clamp @param rated current [A], 100 to 1000
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline work_clamp same_make(const work_clamp& like, current rated)
{
    switch (like.kind) {
    case clamp_kind::screw: return screw_clamp(rated);
    case clamp_kind::bolted: return like;
    case clamp_kind::spring: break;
    }
    if (like.make == clamp_make::stamped && rated <= detail::largest_stamped) return stamped_spring_clamp(rated);
    return like.make == clamp_make::usual ? spring_clamp(rated) : cast_spring_clamp(rated);
}

}  // namespace weldloop
