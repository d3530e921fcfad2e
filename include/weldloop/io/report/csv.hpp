#pragma once
/// @file
/// Tables as comma-separated values, by RFC 4180.

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include <weldloop/io/report/escape.hpp>

namespace weldloop {

/// A text as one field: in quotes where it holds a comma, a quote or a line break, quotes doubled. A text that a
/// spreadsheet would take for a formula, one whose first character but for spaces is = + - @ or a tab or return, gets
/// an apostrophe before it. Line breaks and tabs stay; other control characters and those that steer the text around
/// them become '?': a file that is shown on a terminal steers nothing.
/// @param text of a cell, not a number
[[nodiscard]] inline std::string csv_field(std::string_view text)
{
    const std::size_t first = text.find_first_not_of(' ');
    const bool is_formula =
        first != std::string_view::npos && std::string_view("=+-@\t\r\n").find(text[first]) != std::string_view::npos;
    std::string whole = is_formula ? "'" : "";
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find_first_of("\t\n", at), text.size());
        const bool is_return = end > at && end < text.size() && text[end] == '\n' && text[end - 1] == '\r';
        whole.append(printable(text.substr(at, end - at - (is_return ? 1 : 0)))).append(is_return ? "\r" : "");
        if (end < text.size()) whole.push_back(text[end]);
        at = end + 1;
    }
    if (whole.find_first_of(",\"\r\n") == std::string::npos) return whole;
    std::string out = "\"";
    for (const char c : whole) out.append(c == '"' ? 2 : 1, c);
    return out + "\"";
}

/// A line of fields that are ready, with its line break. @param fields by csv_field(), or numbers
[[nodiscard]] inline std::string csv_line(std::span<const std::string> fields)
{
    std::string out;
    for (std::size_t i = 0; i < fields.size(); ++i) out.append(i == 0 ? "" : ",").append(fields[i]);
    return out + "\r\n";
}

}  // namespace weldloop
