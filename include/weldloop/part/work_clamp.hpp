#pragma once
/// @file
/// The clamp or lug that takes the current off the work: spring clamps, screw clamps, bolted lugs.
///
/// The factories give generic members of a family by rated current. No published family exists; what each value rests
/// on is said beside it, and a result that used it names it. Describe a clamp of your own by changing what differs.

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/core/band.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/screw.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/clamp_inside.hpp>
#include <weldloop/part/clamp_spring.hpp>
#include <weldloop/part/work_clamp_standard.hpp>

namespace weldloop {

/// @name Sources of the clamp families
/// @{

/// Body, jaws and spring of the spring clamps.
inline constexpr source spring_clamp_family{
    "spring clamps by rated current: body, jaws, arms, spring of two coils", "2026",
    "judgement; the least force of 250 N is the middle of a judged 100 to 600 N", source_kind::judgement};
/// Force of the spring clamps.
inline constexpr source spring_clamp_margin{
    "spring clamp: 2.5 times the force that just passes the holding test", "2026", {}, source_kind::judgement};
/// Clamps between two members of a family.
inline constexpr source clamp_interpolation{
    "clamps between two members of their family: every dimension, the duty, the section of the largest cable, the "
    "stress "
    "of the spring and the torque of the hand on a straight line between the two",
    "2026", "judgement; a clamp of 600 A is that of 500 A at a lower duty, one of 1000 A that of 800 A",
    source_kind::judgement};
/// Body, screw and torque of the screw clamps.
inline constexpr source screw_clamp_family{
    "screw clamps by rated current: body, screw, torque of a firm hand", "2026", {}, source_kind::judgement};
/// How the metal of the clamps lies along the way of heat and current.
inline constexpr source clamp_build_judgement{"clamps and lugs as pieces along their length: jaw and reach half of the "
                                              "arm each, handles 1.4 arms, cable connection "
                                              "0.4 arm; a shunt of half the cable's copper to the second live jaw; "
                                              "springs of four turns a coil, their legs resting "
                                              "on 20 mm of the arms",
                                              "2026",
                                              {},
                                              source_kind::judgement};
/// Body, palm and bolt of the work lugs.
inline constexpr source work_lug_family{
    "bolted work lug: body and palm by cable section, bolt M8 to 35 mm2, M10 to 95 mm2, M12 above",
    "2026",
    {},
    source_kind::judgement};
/// Rated current of the work lugs.
inline constexpr source work_lug_current{
    "guide ratings of 85 degC welding cable at 60 % duty (BS 638-4), by a power law of the section", "1996",
    "175 A (A/16 mm2)^0.650, within 2 % from 16 to 185 mm2", source_kind::memory};
/// @}

/// How a work clamp grips.
enum class clamp_kind {
    spring,  ///< jaws closed by a torsion spring
    screw,   ///< jaws closed by a screw
    bolted,  ///< a lug bolted to the work; outside the standard of work clamps
};

/// The word for a kind, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(clamp_kind kind)
{
    switch (kind) {
    case clamp_kind::spring: return "spring clamp";
    case clamp_kind::screw: return "screw clamp";
    case clamp_kind::bolted: return "bolted lug";
    }
    return "spring clamp";
}

/// What a spring clamp is made like.
enum class clamp_make {
    usual,    ///< spring_clamp(): cast brass, crimped, both jaws live
    stamped,  ///< stamped_spring_clamp(): steel sheet
    cast,     ///< cast_spring_clamp(): brass, stud and braid
};

/// The screw of a screw clamp.
struct clamp_screw {
    screw_thread thread = {.diameter = 16_mm, .pitch = 4_mm};  ///< what turns
    torque tightened_to = 6_Nm;                                ///< [N m] 0 or above
};

/// How a clamp's metal lies between the work and the cable: four pieces in a row, as long as stated; the section of all
/// follows from the body's mass, the surface of each is its share of the body's. See clamp_build_judgement.
struct clamp_build {
    length jaw = 30_mm;     ///< [m] from the tip, above 0: what warms with the contact
    length reach = 30_mm;   ///< [m] between jaw and pivot, above 0
    length handle = 84_mm;  ///< [m] 0 or above, behind the pivot, what a hand grips; 0 for a lug
    length entry = 24_mm;   ///< [m] from the pivot to the end of the cable connection, above 0
    area shunt = {};        ///< [m2] 0 or above, copper from the jaws to the cable connection beside the body; 0: none
    length shunt_length = 84_mm;  ///< [m] of that copper, above 0
    length spring_seat = 20_mm;   ///< [m] over which each leg of a spring lies on its arm, above 0
};

/// A clamp or lug that connects the work lead to the work.
struct work_clamp {
    std::string name = {};                             ///< as printed
    clamp_kind kind = clamp_kind::spring;              ///< how it grips
    current rated_current = {};                        ///< [A] 0 or above, at the rated duty
    duty_fraction rated_duty = 1.0;                    ///< share of a 10 min period at the rated current
    conductor_size largest_cable = square_mm(50);      ///< its cable connection is made for
    int live_jaws = 2;                                 ///< jaws that carry current, 1 or 2, side by side
    weldloop::force force = {};                        ///< [N] 0 or above, at each jaw when new, cold, on the work
    metal jaw = brass;                                 ///< what touches the work
    contact_shape shape = contact_shape::toothed_jaw;  ///< how it touches
    area jaw_area = {};                                ///< [m2] 0 or above, apparent contact of one live jaw
    std::optional<clamp_spring> spring = {};           ///< of a spring clamp
    std::optional<clamp_screw> screw = {};             ///< of a screw clamp
    metal body_metal = brass;                          ///< of arms and jaws
    mass body_mass = {};                               ///< [kg] 0 or above, that warms up with the jaws
    area body_surface = {};                            ///< [m2] above 0, seen by the air
    length body_diameter = 30_mm;                      ///< [m] above 0, across, for convection
    weldloop::emissivity body_emissivity = 0.8;        ///< painted or covered arms; 0.3 for bare tarnished metal
    band<conductance> termination =
        {};                      ///< [S] 0 or above, of all between cable and jaw faces: cable connection, arms, shunt
    weldloop::basis basis = {};  ///< of these numbers
    clamp_build build = {};      ///< where the body's metal lies
    resistance arms = {};        ///< [ohm] the part of `termination` that arms and shunt have, 0 or above
    /// How the halves of a spring clamp are joined. Stated, the current is divided between jaws, pivot, shunt and
    /// spring (divided_clamp_current()), and `arms` holds only the piece behind the pivot; else both jaws are alike and
    /// clamp_spring::current_share says what the spring carries.
    std::optional<clamp_inside> inside = {};
    clamp_make make = clamp_make::usual;  ///< of a spring clamp

    /// The same clamp under a name.
    [[nodiscard]] work_clamp named(std::string new_name) const
    {
        work_clamp out = *this;
        out.name = std::move(new_name);
        return out;
    }
    /// The same clamp with another force when new; its spring works in proportion, at most to its strength.
    /// @param value [N], 0 or above @throws not_finite_error, out_of_range_error
    [[nodiscard]] work_clamp pressing_with(weldloop::force value) const
    {
        require_not_negative(value, "clamp force");
        work_clamp out = *this;
        require_not_negative(out.force, "clamp force when new");
        if (out.spring && out.force > weldloop::force{})
            out.spring->stress =
                static_cast<double>(out.spring->stress) *
                require_finite(static_cast<double>(value / out.force), "clamp force over that when new");
        out.force = value;
        return out;
    }
    /// Heat stored by the body [J/K].
    [[nodiscard]] heat_capacity body_capacity() const { return body_mass * body_metal.specific_heat; }
};

namespace detail {

// One member of the spring and screw clamp families; see clamp_interpolation.
struct clamp_row {
    double amps, duty, cable_mm2;
    double surface_m2, mass_kg;  // of a spring clamp
    double arms_uohm, jaw_mm2;   // arms and shunt in series with the cable connection; one jaw's apparent contact
    double wire_mm, arm_mm;      // spring
    double hand_torque, screw_mm, pitch_mm;  // screw clamp
};
inline constexpr std::array clamp_rows{clamp_row{100, 0.60, 35, 0.020, 0.30, 12, 60, 4.5, 50, 3.0, 12, 3},
                                       clamp_row{200, 0.60, 50, 0.028, 0.45, 10, 90, 4.5, 45, 4.0, 12, 3},
                                       clamp_row{300, 0.60, 70, 0.036, 0.60, 8, 120, 5.6, 60, 5.0, 14, 3},
                                       clamp_row{400, 0.60, 95, 0.046, 0.85, 7, 160, 6.1, 58, 6.0, 16, 4},
                                       clamp_row{500, 0.60, 120, 0.058, 1.15, 6, 200, 7.0, 70, 8.0, 16, 4},
                                       clamp_row{600, 0.35, 120, 0.058, 1.15, 6, 200, 7.0, 70, 8.0, 16, 4},
                                       clamp_row{800, 0.35, 185, 0.078, 1.90, 4, 280, 8.25, 75, 10.0, 18, 4},
                                       clamp_row{1000, 0.20, 185, 0.078, 1.90, 4, 280, 8.25, 75, 10.0, 18, 4}};
inline constexpr double clamp_spring_index = 6.0;   // coil over wire diameter
inline constexpr double holding_margin = 2.5;       // see spring_clamp_margin
inline constexpr force least_spring_force = 250_N;  // see spring_clamp_family
// see clamp_build_judgement
inline constexpr double jaw_over_arm = 0.5, handle_over_arm = 1.4, entry_over_arm = 0.4, shunt_over_cable = 0.5;
inline constexpr double screw_body_over_spring_body = 1.4;        // a screw clamp's frame weighs more
inline constexpr double screw_surface_over_spring_surface = 0.9;  // and has no handles

// A clamp of a rating: every number of the row in between, and the two members.
struct clamp_member {
    clamp_row row, below, above;
    double share;  // of the way from below to above

    [[nodiscard]] double between(double x, double y) const { return x + share * (y - x); }
};

inline clamp_member clamp_member_of(current rated)
{
    require_within(rated, in_si<current>(clamp_rows.front().amps), in_si<current>(clamp_rows.back().amps),
                   "rated current");
    std::size_t above = 1;
    while (above + 1 < clamp_rows.size() && clamp_rows[above].amps < rated.value()) ++above;
    const clamp_row& a = clamp_rows[above - 1];
    const clamp_row& b = clamp_rows[above];
    clamp_member out{b, a, b, (rated.value() - a.amps) / (b.amps - a.amps)};
    for (double clamp_row::*const of :
         {&clamp_row::amps, &clamp_row::duty, &clamp_row::cable_mm2, &clamp_row::surface_m2, &clamp_row::mass_kg,
          &clamp_row::arms_uohm, &clamp_row::jaw_mm2, &clamp_row::wire_mm, &clamp_row::arm_mm, &clamp_row::hand_torque,
          &clamp_row::screw_mm, &clamp_row::pitch_mm})
        out.row.*of = out.between(a.*of, b.*of);
    return out;
}

// A sound crimp and what lies between it and the jaws.
inline band<conductance> clamp_termination(area cable, resistance arms)
{
    return mapped(crimp_resistance(cable), [arms](const resistance& crimp) { return 1.0 / (crimp + arms); });
}

inline work_clamp clamp_of_family(current rated, clamp_kind kind, const clamp_member& member)
{
    work_clamp out;
    out.name = std::string(to_text(kind)) + " " + to_text(rated, "A");
    out.kind = kind;
    out.rated_current = rated;
    out.rated_duty = member.row.duty;
    out.largest_cable = square_mm(member.row.cable_mm2);
    out.jaw_area = in_si<area>(member.row.jaw_mm2 * 1e-6);
    out.body_mass = in_si<mass>(member.row.mass_kg);
    out.body_surface = in_si<area>(member.row.surface_m2);
    out.arms = in_si<resistance>(member.row.arms_uohm * 1e-6);
    out.termination = clamp_termination(out.largest_cable.area(), out.arms);
    const length arm = in_si<length>(member.row.arm_mm * 1e-3);
    out.build = {.jaw = jaw_over_arm * arm,
                 .reach = (1.0 - jaw_over_arm) * arm,
                 .handle = handle_over_arm * arm,
                 .entry = entry_over_arm * arm,
                 .shunt_length = handle_over_arm * arm};
    out.basis.add(crimp_band_judgement).add(*crimp_limit_of(out.largest_cable.area()).from).add(clamp_build_judgement);
    out.basis.add(clamp_interpolation);
    return out;
}

// Force of a spring clamp for its largest cable; see spring_clamp_margin and spring_clamp_family.
inline force spring_clamp_force(double cable_mm2)
{
    const force held = holding_margin * holding_force(holding_test_mass(square_mm(cable_mm2).area()));
    return held > least_spring_force ? held : least_spring_force;
}

inline clamp_spring spring_of_wire(double wire_mm, double arm_mm, force at)
{
    clamp_spring out;
    out.wire_diameter = in_si<length>(wire_mm * 1e-3);
    out.coil_diameter = clamp_spring_index * out.wire_diameter;
    out.arm = in_si<length>(arm_mm * 1e-3);
    out.stress = clamp_spring_stress(out, at);
    return out;
}

// The spring of a member: its wire brings it to the stress between those of the two members. At one index the stress is
// as d^(exponent of strength - 3).
inline clamp_spring spring_of_member(const clamp_member& member, force at)
{
    const auto stress_of = [](const clamp_row& row) {
        return static_cast<double>(spring_of_wire(row.wire_mm, row.arm_mm, spring_clamp_force(row.cable_mm2)).stress);
    };
    const double wanted = member.between(stress_of(member.below), stress_of(member.above));
    const clamp_spring as_above = spring_of_wire(member.above.wire_mm, member.row.arm_mm, at);
    const double falls_as = 3.0 - hard_drawn_strength.front().exponent;
    const double wire = member.above.wire_mm * std::pow(static_cast<double>(as_above.stress) / wanted, 1.0 / falls_as);
    return spring_of_wire(wire, member.row.arm_mm, at);
}

// A bolted lug, scaled from the member of 50 mm2; see work_lug_family and work_lug_current.
inline constexpr area smallest_lug = 16_mm2, largest_lug = 185_mm2, reference_lug = 50_mm2;
inline constexpr area largest_m8_lug = 35_mm2, largest_m10_lug = 95_mm2;
inline constexpr mass reference_lug_mass = 0.06_kg;
inline constexpr area reference_lug_surface = 40_cm2, reference_lug_palm = 300_mm2;
inline constexpr length reference_lug_diameter = 15_mm;
inline constexpr length reference_palm_length = 20_mm, reference_lug_neck = 8_mm, reference_barrel_length = 25_mm;
inline constexpr double lug_emissivity = 0.3;  // bare, tarnished
inline constexpr current smallest_lug_current = 175_A;
inline constexpr double lug_current_exponent = 0.650, lug_duty = 0.60;
inline constexpr double size_rounding = 1e-9;  // a size that ends a range is inside it

}  // namespace detail

/// A spring clamp as the library has always meant it: two live jaws of cast brass, a crimped cable, a shunt of half the
/// cable's copper to the second jaw.
///
/// Its force is 2.5 times what the published holding test needs with its largest cable, and no less than 250 N: 280 N
/// at 200 A (50 mm2), 370 N at 300 A (70 mm2), 490 N at 400 A (95 mm2), 590 N at 500 and 600 A (120 mm2), 870 N at 800
/// and 1000 A (185 mm2). So a new one on clean mild steel stays within the published 378 micro-ohm at the 95 % point of
/// its scatter, and within the published rises at its rated current and duty. The spring's stress follows from the
/// force.
///
/// Between these members all numbers change without a step, and none that is of use falls with the rating: see
/// clamp_interpolation. The stress of the spring never rises with it (by 0.03 % from 100 to 200 A), so that at the same
/// load the larger clamp keeps as much of its force or more.
/// @param rated current [A], 100 to 1000
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline work_clamp spring_clamp(current rated)
{
    const detail::clamp_member member = detail::clamp_member_of(rated);
    work_clamp out = detail::clamp_of_family(rated, clamp_kind::spring, member);
    out.force = detail::spring_clamp_force(member.row.cable_mm2);
    out.spring = detail::spring_of_member(member, out.force);
    out.build.shunt = detail::shunt_over_cable * out.largest_cable.area();
    out.basis.add(spring_clamp_family)
        .add(spring_clamp_margin)
        .add(work_clamp_holding_test)
        .add(holding_friction_judgement);
    out.basis.add(welding_cable_masses);
    return out;
}

/// A screw clamp with one live brass jaw; the screw itself carries no current.
///
/// Its force is what the power screw makes of the torque of a firm hand, 3 N m (100 A, Tr12x3) to 10 N m (1000 A,
/// Tr18x4).
/// @param rated current [A], 100 to 1000, members as for spring_clamp()
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline work_clamp screw_clamp(current rated)
{
    const detail::clamp_member member = detail::clamp_member_of(rated);
    work_clamp out = detail::clamp_of_family(rated, clamp_kind::screw, member);
    out.live_jaws = 1;
    out.body_mass *= detail::screw_body_over_spring_body;
    out.body_surface *= detail::screw_surface_over_spring_surface;
    const clamp_screw screw{.thread = {.diameter = in_si<length>(member.row.screw_mm * 1e-3),
                                       .pitch = in_si<length>(member.row.pitch_mm * 1e-3)},
                            .tightened_to = in_si<torque>(member.row.hand_torque)};
    out.force = screw_force(screw.tightened_to, screw.thread);
    out.screw = screw;
    out.basis.add(screw_clamp_family).add(power_screw).add(clamp_screw_judgement);
    return out;
}

/// A crimped copper lug bolted to the work with the published torque of an electrical joint.
///
/// Such a lug lies outside the standard of work clamps: its rating is that of its cable.
/// @param size of the cable, 16 to 185 mm2 of metal (6 AWG is too small, 4/0 AWG and 350 kcmil fit)
/// @throws out_of_range_error
[[nodiscard]] inline work_clamp bolted_work_lug(const conductor_size& size)
{
    const area metal_area = size.area();
    const auto within = [metal_area](area limit) { return metal_area <= limit * (1.0 + detail::size_rounding); };
    if (metal_area < detail::smallest_lug * (1.0 - detail::size_rounding) || !within(detail::largest_lug))
        throw out_of_range_error("lug size", to_text(size),
                                 to_text(detail::smallest_lug, "mm2") + " to " + to_text(detail::largest_lug, "mm2"));
    const length bolt = within(detail::largest_m8_lug) ? 8_mm : within(detail::largest_m10_lug) ? 10_mm : 12_mm;
    const double area_ratio = metal_area / detail::reference_lug;
    const double length_ratio = std::sqrt(area_ratio);
    work_clamp out;
    out.name = "bolted work lug " + to_text(size);
    out.kind = clamp_kind::bolted;
    out.rated_current = detail::smallest_lug_current *
                        std::pow(static_cast<double>(metal_area / detail::smallest_lug), detail::lug_current_exponent);
    out.rated_duty = detail::lug_duty;
    out.largest_cable = size;
    out.live_jaws = 1;
    out.jaw = annealed_copper;
    out.shape = contact_shape::busbar;
    const torque tightening = electrical_bolt_torque(bolt);
    out.force = bolt_force(tightening, thread_state::zinc_plated, bolt).typical;
    out.body_metal = annealed_copper;
    out.body_mass = area_ratio * detail::reference_lug_mass;
    out.body_surface = length_ratio * detail::reference_lug_surface;
    out.body_diameter = length_ratio * detail::reference_lug_diameter;
    out.body_emissivity = detail::lug_emissivity;
    out.jaw_area = length_ratio * detail::reference_lug_palm;
    out.termination = detail::clamp_termination(metal_area, out.arms);
    out.build = {.jaw = length_ratio * detail::reference_palm_length,
                 .reach = length_ratio * detail::reference_lug_neck,
                 .handle = {},
                 .entry = length_ratio * detail::reference_barrel_length};
    out.basis.add(work_lug_family).add(work_lug_current).add(electrical_torque_table).add(nut_factor_zinc);
    out.basis.add(crimp_band_judgement).add(*crimp_limit_of(metal_area).from).add(clamp_build_judgement);
    return out;
}

}  // namespace weldloop
