#pragma once
/// @file
/// The loop solved: what current does to every part, one network of all its bodies, contacts and lead cells.
/// Source: balance of heat and Kirchhoff's laws in every node, derived; what stands between the nodes by the law of its
/// own header.

#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>

namespace weldloop {

/// Solves the loop of a station in the settled period of its duty.
///
/// One network carries it all: leads as cells of conductor and covering, fine at their ends; clamps with their five
/// places, holders with their handle, heads, lugs, couplings, plates and bare contacts; links where they touch;
/// contacts as sources by their voltage-current characteristic at the present temperature. Mean and swing are one
/// problem: the network is marched through its period until it repeats. No heat is credited to the supply's terminals
/// and none is charged for the arc's own heat at gun or holder, nor at the work unless its stay is stated.
///
/// Accuracy against a march written apart with finer cells and rings: peaks and means within 1 K or 2 % of the rise
/// (tests/oracle/loop_march); heat made and lost agree to 1e-9.
///
/// Where ways share the current it is divided at every moment by the temperatures there are. Against a march written
/// apart that does the same in short steps (tests/circuit/ways_random_test.cpp, 60 random loops): mean currents within
/// 0.01 % of the loop's, peaks within 1 K or 2 % of the rise. Of several states the one that the loop reaches when it
/// is switched on cold is sought; where a tenth of a kelvin decides which that is, the outcome is `unstable`.
/// @param s     the station @param level which point of every joint's scatter to solve for
/// @return finite values, whose meaning `outcome` says: only a solved loop has drops and temperatures; else every part
/// is
///         as without current, at the temperature of the air
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] loop_state solve_loop(const station& s, scatter level = scatter::typical);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/circuit/loop_body.hpp>
#endif
