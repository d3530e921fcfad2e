#pragma once
/// @file
/// The report as plain text, for a terminal.

#include <cstddef>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/report/report_request.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// Columns of the text report.
inline constexpr std::size_t text_report_width = 110;

/// The report as a table and lists, in ASCII, no line longer than text_report_width: what can hurt now, the answer in
/// short, what to do first, then the rest. Limits of every part, surfaces and sources only where the request asks for
/// the whole.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @param asked answers, detail, units, date; all may be left out
/// @throws not_finite_error should a result hold NaN or infinity; bad_station_error for an assessment without parts;
/// out_of_range_error for a date that is no day
[[nodiscard]] std::string report_text(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                                      const report_request& asked = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/io/report/report_text_body.hpp>
#endif
