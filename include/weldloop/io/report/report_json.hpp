#pragma once
/// @file
/// The report as JSON, for programs.

#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/report/report_request.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The version of the JSON report, its key "schema". The number rises when a key goes or changes its meaning.
inline constexpr std::string_view report_schema = "weldloop-station-report/3";

/// The report as a JSON text, indented, its keys in a fixed order (described in the page on reports).
/// Numbers are in the unit the key ends with. A loop without a settled state has "open" or "none" in the place of
/// drops, heat, peaks and totals, and neither places nor limits. Bytes that are not UTF-8 become U+FFFD.
/// Sentences are in SI and degC too, whatever units the request names: those are told beside, for programs that print.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @param asked answers, units, date; all may be left out
/// @throws not_finite_error should a result hold NaN or infinity; bad_station_error for an assessment without parts;
/// out_of_range_error for a date that is no day
[[nodiscard]] std::string report_json(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                                      const report_request& asked = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/io/report/report_json_body.hpp>
#endif
