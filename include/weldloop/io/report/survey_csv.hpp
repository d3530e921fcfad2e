#pragma once
/// @file
/// A survey as a table for spreadsheets.

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include <weldloop/core/text.hpp>
#include <weldloop/field/survey.hpp>
#include <weldloop/io/report/csv.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/survey_words.hpp>

namespace weldloop {

/// A line for each station, worst first, those that were not read at the end without numbers; by RFC 4180, with a line
/// of names, decimal points, UTF-8. Cells that nothing is known for are empty.
/// @param stations what was surveyed @param found survey_of() it
[[nodiscard]] inline std::string survey_csv(const std::vector<surveyed_station>& stations, const survey& found)
{
    const std::array names{std::string("rank"),          std::string("file"),         std::string("station"),
                           std::string("conducts"),      std::string("weakest part"), std::string("verdict"),
                           std::string("beyond_of_100"), std::string("peak_degC"),    std::string("limit_degC"),
                           std::string("loop_V"),        std::string("allowed_V"),    std::string("first step"),
                           std::string("regains_V"),     std::string("fault")};
    std::string out = csv_line(names);
    std::size_t rank = 0;
    for (const std::size_t i : found.ranked) {
        const surveyed_station& s = stations[i];
        const part_result& w = s.found.weakest();
        const remedy* first = nullptr;
        for (const remedy& r : s.remedies)
            if (first == nullptr && !r.is_remark && !r.is_summary) first = &r;
        const bool solved = s.found.conducts;
        const auto number = [](double x) { return number_text(x, 4); };
        const std::array fields{
            std::to_string(++rank),
            csv_field(s.file),
            csv_field(s.found.name),
            std::string(solved ? "yes" : "no"),
            csv_field(w.name),
            csv_field(to_text(w.verdict)),
            solved && can_exceed(w) ? number(100.0 * static_cast<double>(w.exceeds)) : std::string(),
            solved && temperature_is_known(w) ? number(w.peak_temperature.in_celsius()) : std::string(),
            solved && w.limit ? number(w.limit->in_celsius()) : std::string(),
            solved ? number(s.found.total_drop.typical.value()) : std::string(),
            s.is.allowed_drop ? number(s.is.allowed_drop->value()) : std::string(),
            first != nullptr ? csv_field(first->what) : std::string(),
            first != nullptr ? number(first->volts_regained.value()) : std::string(),
            std::string()};
        out += csv_line(fields);
    }
    for (const std::size_t i : found.not_read) {
        std::array<std::string, names.size()> fields;
        fields[1] = csv_field(stations[i].file);
        fields.back() = csv_field(stations[i].fault);
        out += csv_line(fields);
    }
    return out;
}

}  // namespace weldloop
