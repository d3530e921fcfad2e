#pragma once
/// @file
/// A stud terminal under current, as its farthest lug sees it.

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>
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

/// Conductance between the farthest lug of a stud and its seat at 20 degC [S]: the first palm on the seat, every
/// further one on the palm below. What flows through the nut and the thread is left out. @param s the stud: 1 to 10
/// lugs
/// @throws not_finite_error, out_of_range_error @see bolted_face_conductance_of()
[[nodiscard]] inline band<conductance> stud_conductance_of(const stud_terminal& s)
{
    require_within(s.lugs, 1.0, 10.0, "lugs on a stud");
    band<conductance> out = bolted_face_conductance_of(detail::stud_face(s, s.seat));
    for (int i = 1; i < s.lugs; ++i) out = in_series(out, bolted_face_conductance_of(detail::stud_face(s, s.palm)));
    return out;
}

/// What a stud does at a current that all passes to its farthest lug. @param s the stud: 1 to 10 lugs
/// @param through current [A], 0 or above @param bulk of the stud @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const stud_terminal& s, current through, temperature bulk)
{
    require_within(s.lugs, 1.0, 10.0, "lugs on a stud");
    joint_behaviour out = behaviour_of(detail::stud_face(s, s.seat), through, bulk);
    for (int i = 1; i < s.lugs; ++i) out = in_series(out, behaviour_of(detail::stud_face(s, s.palm), through, bulk));
    return out;
}

}  // namespace weldloop
