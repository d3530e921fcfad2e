#pragma once
/// @file
/// Where supply, loop and arc meet: the current that flows and the volts of each.

#include <optional>

#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/operating_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/burn_off.hpp>

namespace weldloop {

/// What a station's arc is held by: the feed where a wire is fed at a constant speed from a flat output, else its
/// length. @param s the station @throws as output_line_of()
[[nodiscard]] arc_hold arc_hold_of(const station& s);

/// The arc line of a station's arc, its own or the usual one of the process.
/// @param s the station, with one arc @throws bad_station_error for one without
[[nodiscard]] arc_line arc_line_of(const station& s);
/// Whether a station's arc line may be held against its arc at a current: its own at any, the usual one within
/// usual_arc_line_range().
/// @param s the station, with one arc @param i current [A], 0 or above
/// @throws bad_station_error for one without an arc, not_finite_error, out_of_range_error
[[nodiscard]] bool arc_line_reaches(const station& s, current i);
/// The length of a station's arc, its own or the usual one of the process [m].
/// @param s the station, with one arc @throws bad_station_error for one without
[[nodiscard]] length arc_length_of(const station& s);

/// Burn-off constants of a station's wire: usual_burn_off() of a solid wire that is not on the negative terminal;
/// empty for other processes, for alternating current and for metals without constants: those melt at other rates.
/// @param s the station @throws not_finite_error, out_of_range_error
[[nodiscard]] std::optional<burn_off> burn_off_of(const station& s);

/// Solves supply, loop and arc together, U(I) = V(I) + a + b L + c I: the output line of the supply, the drop V of the
/// loop in its settled period at that current with the heat it makes, the arc line.
///
/// *Length held*: I follows. Of several points the one with the most current. *Feed held*: where the arc states its
/// wire feed and burn-off constants of the wire are known, current, extension and length follow from feed = a' I + b'
/// Le I^2 with tip and work at the distance of the usual extension and length; else the job's current stands for what
/// the feed draws, and the length follows.
///
/// A measured line that ends, on either side, before the point is met has the outcome `beyond_line`; so has a feed
/// that draws a current which the line does not have.
///
/// Remote sensing: what lies between terminals and taps is made good up to the supply's highest output.
///
/// The course of an alternating current counts by its effective value, in the supply's line too. What it takes along
/// the leads' inductance, X I, stands at right angles: U^2 = (V + a + b L + c I)^2 + (X I)^2, with reactance_of(); the
/// supply's own voltage is taken as one with no reactance inside, so that for a supply that falls by reactance the two,
/// which add straight, are counted a little low. Accuracy: the balance holds to 1e-6 of the volts, as closely as the
/// loop's heat is settled; against a circuit simulator on ten stations (tests/oracle/operating_point) to 1e-4. The arc
/// line is often a recalled one: the basis says so.
/// @param s the station @param level which point of every joint's scatter to solve for
/// @throws bad_station_error, missing_data_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] operating_point operating_point_of(const station& s, scatter level = scatter::typical);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/circuit/operating_point_body.hpp>
#endif
