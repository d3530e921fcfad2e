#pragma once
/// @file
/// What a report says beside the assessment, and how it says it.

#include <chrono>
#include <optional>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/version.hpp>

namespace weldloop {

/// How much of a text report is printed. Page and JSON always hold everything; the page folds it away.
enum class report_detail {
    brief,  ///< what is acted on
    whole,  ///< every limit of every part, surfaces, sources and judgement too
};

/// What is asked of a report; everything may be left out.
struct report_request {
    station_answers answers =
        {};  ///< how long it lasts, where the fault is: see answers_of(); what is empty is left out
    report_detail detail = report_detail::brief;           ///< of the text
    shown_units units = {};                                ///< of text and page: see described_station::units
    std::optional<std::chrono::year_month_day> date = {};  ///< of the report, as the caller says; never the clock's
};

/// "0.1.0", of these headers.
[[nodiscard]] inline std::string version_text()
{
    return std::to_string(version_major) + "." + std::to_string(version_minor) + "." + std::to_string(version_patch);
}

namespace detail {

/// "2026-11-26". @throws out_of_range_error for a day that no calendar has
[[nodiscard]] inline std::string date_text(std::chrono::year_month_day date)
{
    const std::string year = std::to_string(static_cast<int>(date.year()));
    const auto two_digits = [](unsigned n) { return (n < 10 ? "0" : "") + std::to_string(n); };
    const std::string text = year + "-" + two_digits(static_cast<unsigned>(date.month())) + "-" +
                             two_digits(static_cast<unsigned>(date.day()));
    if (!date.ok() || static_cast<int>(date.year()) < 1000)
        throw out_of_range_error("date of the report", text, "a day of the calendar from the year 1000 on");
    return text;
}

}  // namespace detail

/// "2026-11-26, weldloop 0.1.0": when a report was made and by what; without a date "weldloop 0.1.0".
/// @throws out_of_range_error for a date that is no day
[[nodiscard]] inline std::string made_line(const report_request& asked)
{
    return (asked.date ? detail::date_text(*asked.date) + ", " : std::string()) + "weldloop " + version_text();
}

}  // namespace weldloop
