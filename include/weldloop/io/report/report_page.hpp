#pragma once
/// @file
/// The report as one page of HTML that needs nothing from elsewhere.

#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/report/report_request.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// The report as a page: what can hurt now, the answer in short, what to do first, the loop; then tables, drawings and
/// sentences; sources folded away. No scripts, fonts or files from elsewhere; light and dark as the reader's system
/// says, narrow and wide, and made for print, where the first page is what is acted on. Every text is escaped.
/// @param s the station @param found its assessment @param remedies for it, best first
/// @param asked answers, units, date; all may be left out
/// @throws not_finite_error should a result hold NaN or infinity; bad_station_error for an assessment without parts;
/// out_of_range_error for a date that is no day
[[nodiscard]] std::string report_page(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                                      const report_request& asked = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/io/report/report_page_body.hpp>
#endif
