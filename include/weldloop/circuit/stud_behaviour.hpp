#pragma once
/// @file
/// A stud terminal under current, as its farthest lug sees it.

#include <algorithm>
#include <numbers>

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/stud_terminal.hpp>

namespace weldloop {

namespace detail {
inline bolted_face stud_face(const stud_terminal& s, const metal& under)
{
    return {.metals = {s.palm, under},
            .bolt_diameter = s.diameter,
            .tightening = s.tightening,
            .thread = s.thread,
            .surface = s.surface};
}
}  // namespace detail

/// Faces of a stud that its farthest lug's current passes: one a lug, the last one left out where that lug is a part of
/// its own. @param s the stud: 1 to 10 lugs @throws out_of_range_error
[[nodiscard]] inline int faces_of(const stud_terminal& s)
{
    require_within(s.lugs, 1.0, 10.0, "lugs on a stud");
    return s.lugs - (s.lug_beside ? 1 : 0);
}

/// Conductance between the farthest lug of a stud and its seat at 20 degC [S]: the first palm on the seat, every
/// further one on the palm below. What flows through the nut and the thread is left out. @param s the stud: 1 to 10
/// lugs
/// @throws not_finite_error, out_of_range_error; missing_data_error for a stud whose one face belongs to a lug of its
/// own
/// @see bolted_face_conductance_of(), faces_of()
[[nodiscard]] inline band<conductance> stud_conductance_of(const stud_terminal& s)
{
    const int faces = faces_of(s);
    if (faces == 0) throw missing_data_error("stud conductance", "that of no face", "a face of its own");
    band<conductance> out = bolted_face_conductance_of(detail::stud_face(s, s.seat));
    for (int i = 1; i < faces; ++i) out = in_series(out, bolted_face_conductance_of(detail::stud_face(s, s.palm)));
    return out;
}

/// What a stud does at a current that all passes to its farthest lug. @param s the stud: 1 to 10 lugs
/// @param through current [A], 0 or above @param bulk of the stud @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const stud_terminal& s, current through, temperature bulk)
{
    const int faces = faces_of(s);
    if (faces == 0) return {.conducts = true, .hottest_spot = exactly(bulk)};
    joint_behaviour out = behaviour_of(detail::stud_face(s, s.seat), through, bulk);
    for (int i = 1; i < faces; ++i) out = in_series(out, behaviour_of(detail::stud_face(s, s.palm), through, bulk));
    return out;
}

/// What a stud looks like.
inline constexpr source stud_shape_judgement{
    "stud terminal: nut, washers and seat as a cylinder of dull brass, 2.5 thread diameters across and 3 long; "
    "emissivity 0.22",
    "2026",
    {},
    source_kind::judgement};

/// The body of a stud. @param s the stud @throws not_finite_error, out_of_range_error @see stud_shape_judgement
[[nodiscard]] inline thermal_body body_of(const stud_terminal& s)
{
    constexpr double dull_metal = 0.22;
    const length across = 2.5 * require_positive(s.diameter, "stud diameter"), along = 3.0 * s.diameter;
    return {.surface = std::numbers::pi * across * (along + 0.25 * across),
            .diameter = across,
            .emissivity = dull_metal,
            .capacity = detail::heat_of(brass, 0.25 * std::numbers::pi * across * across * along)};
}

/// The sheet of a stud: the first palm on its seat, and each further palm on the one below. @param s the stud
/// @throws not_finite_error, out_of_range_error @see stud_shape_judgement, stud_conductance_of()
[[nodiscard]] inline part_sheet sheet_of(const stud_terminal& s)
{
    part_sheet out;
    const int faces = faces_of(s);
    const bolted_face seat = detail::stud_face(s, s.seat), palms = detail::stud_face(s, s.palm);
    const band<conductance> on_seat = bolted_face_conductance_of(seat);
    if (faces > 0) {
        out.contacts.push_back({"seat", contact_hold::bolt, on_seat, seat.metals});
        out.basis.add(basis_of(seat));
    }
    if (faces > 1) {
        out.contacts.push_back(
            {"palms", contact_hold::bolt, bolted_face_conductance_of(palms), palms.metals, faces - 1});
        out.basis.add(basis_of(palms));
    }
    out.body = body_of(s);
    out.melting = detail::melting_of(seat.metals);
    out.outer_face = on_seat.typical;
    out.limits = {detail::joint_limit_at(part_place::metal, joint_kind::terminal, "bare terminal in air")};
    out.basis.add(stud_shape_judgement);
    return out;
}

/// What can be otherwise with a stud. @param s the stud @throws as usual_bolt_torque()
[[nodiscard]] inline part_conditions<stud_terminal> conditions_of(const stud_terminal& s)
{
    return {.surface = &stud_terminal::surface,
            .tightening = &stud_terminal::tightening,
            .usual_tightening = std::min(stud_terminal().tightening, usual_bolt_torque(s.diameter))};
}

}  // namespace weldloop
