#pragma once
// A station file in, its report out, as one text of JSON: for whoever calls the library from another language.
#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include <weldloop/core/attempt.hpp>
#include <weldloop/io/report/blank_sheet_page.hpp>
#include <weldloop/io/report/job_card_page.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/rating/probe_reading.hpp>
#include <weldloop/weldloop.hpp>

namespace browser {

namespace wl = weldloop;

/// What is asked.
struct request {
    std::string_view text;                                 ///< of a station file
    std::string_view file_name;                            ///< as messages call it
    std::optional<std::chrono::year_month_day> date = {};  ///< of the report
    wl::report_detail detail = wl::report_detail::brief;   ///< of the text
};

/// Where and why a station file is at fault. Line and column count from 1 and are 0 for the file as a whole.
inline nlohmann::ordered_json fault_of(const wl::station_file_error& e)
{
    return {{"id", static_cast<int>(e.id())}, {"line", e.line()},       {"column", e.column()},
            {"reason", e.reason()},           {"nearest", e.nearest()}, {"message", e.what()}};
}

/// Why there is no report, where the file as such can be read.
inline nlohmann::ordered_json fault_of(const wl::failure& why)
{
    return {{"id", why.id ? static_cast<int>(*why.id) : 0},
            {"line", 0},
            {"column", 0},
            {"reason", why.text},
            {"nearest", ""},
            {"message", why.text}};
}

/// A page beside the report; empty where there is none to make, which takes nothing from the report.
template <class Make>
std::string page_beside(const Make& make)
{
    const auto made = wl::attempt(make);
    return made ? *made : std::string();
}

/// The report in its three forms, the job card and the blank sheet for readings.
inline nlohmann::ordered_json report_of(const request& asked)
{
    const wl::described_station described = wl::described_station_from_toml(asked.text, asked.file_name);
    const wl::station& station = described.station;
    const wl::assessment found = wl::assess(station, described.service);
    const std::vector<wl::remedy> remedies = wl::remedies_for(station);
    const wl::report_request wanted{.answers = wl::answers_of(station, found, described.observations),
                                    .detail = asked.detail,
                                    .units = described.units,
                                    .date = asked.date};
    const auto card = [&] {
        const auto service = described.service_is_stated ? std::optional(described.service) : std::nullopt;
        return wl::job_card_page(wl::job_card_of(station, service), described.units);
    };
    const auto sheet = [&] {
        return wl::blank_sheet_page(station, found, wl::probe_readings_of(station, found), described.units);
    };
    return {{"name", station.name},
            {"card", page_beside(card)},
            {"sheet", page_beside(sheet)},
            {"page", wl::report_page(station, found, remedies, wanted)},
            {"text", wl::report_text(station, found, remedies, wanted)},
            {"json", wl::report_json(station, found, remedies, wanted)}};
}

/// An object with name, page, text and json (the three forms of the report), card and sheet (pages); or with error (id,
/// line, column, reason, nearest word, message). What is no UTF-8 in a message is replaced.
inline std::string answer_to(const request& asked)
{
    const auto made = wl::attempt([&]() -> nlohmann::ordered_json {
        try {
            return report_of(asked);
        } catch (const wl::station_file_error& e) {
            return {{"error", fault_of(e)}};
        }
    });
    const nlohmann::ordered_json out = made ? *made : nlohmann::ordered_json{{"error", fault_of(*made.failure())}};
    return out.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

}  // namespace browser
