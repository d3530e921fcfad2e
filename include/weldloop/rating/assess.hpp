#pragma once
/// @file
/// Assessing a station: every part's drop, heat and temperatures, held against its limits, and the loop as a whole.

#include <weldloop/circuit/station.hpp>
#include <weldloop/life/station_service.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// Assesses a station: solves its loop, holds each part against its limits where they are defined, and says what is
/// left for the arc.
///
/// The loop is solved at the median of every joint's scatter and once more with every joint at its 95 % point; between,
/// the scatter of single temperatures and drops is that of contacts that scatter independently (loop_scatter_model). A
/// verdict rests on the probability that a limit is exceeded: over one half it is `over_limit` (and so is a typical
/// value above it), over one in twenty `may_exceed`. Contacts open, melting or past their softening drop, typically or
/// at their 95 % point, count in every part. Type tests of new parts are notes, no verdicts.
///
/// A loop without a settled state (open, or ended by melting metal or a spring that loses its temper) has no numbers:
/// drops are zero, parts at the temperature of the air, `outcome` and the findings say why.
///
/// Where ways share the current it is divided at the temperatures it makes, and the scatter is drawn
/// (drawn_scatter_model). Parts of the path and of intended ways are judged with stray ways as they stand and with all
/// of them open, and the worse counts, `with_stray_open`: what steals current also cools. Any stray way, current in it,
/// and what it would carry with an intended way back open, are findings.
/// @param s the station
/// @param service its use, for the grip of clamps and the age of coverings; drops and temperatures do not hang on it
/// @return finite values
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station or a use that cannot be
[[nodiscard]] assessment assess(const station& s, const station_service& service = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/rating/assess_body.hpp>
#endif
