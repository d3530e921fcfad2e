#pragma once
/// @file
/// What to do about a station: each step weighed by what it clears and regains, in the order in which to take them.

#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/remedy_worth.hpp>

namespace weldloop {

/// What to do about a station, in the order in which to do it.
///
/// Each step is weighed alone: the parts it touches are solved with it, as far as heat is felt, typically and with
/// every joint at its 95 % point, and judged as assess() judges them. First comes what lifts a stop of the job (an open
/// circuit, melting spots, a finding that says so), then what clears any other verdict or finding, both by effort
/// (tighten, clean, move, re-terminate, replace, raise volts, weld less) and then by volts; then what only regains at
/// least least_regain or cools its part by at least least_cooling, by volts. A larger lead, gun, holder, coupling or
/// clamp is the smallest of its family with no verdict against it in the loop; where the loop takes more than allowed
/// (4 V if the station says nothing, see usual_loop_drop), a larger lead also brings it within that, or both leads
/// together do. Rest or less current is offered for the parts that nothing short of buying cures, in steps of a
/// twentieth, if the whole loop, solved with it, has nothing left that stops the job; what it leaves over a limit is
/// named. Where supply, loop and arc do not meet as the job asks, the point is solved anew with each step that
/// leaves the arc more volts; larger leads with which they do are offered, one or both, and a constant-voltage supply
/// set higher, with what that costs the other parts; where no leads do, a remark says what remains.
///
/// After the single steps comes all cleaning and tightening taken together (`is_summary`), where there are at least two
/// such steps; last, sentences (`is_remark`) on what nothing listed clears. Time and memory grow in proportion to the
/// path.
/// @param s the station
/// @return may be empty: a sound station needs nothing
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] std::vector<remedy> remedies_for(const station& s);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/rating/remedies_body.hpp>
#endif
