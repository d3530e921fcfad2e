#pragma once
/// @file
/// Tables as comma-separated values, by RFC 4180.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace weldloop {

/// A text as one field: in quotes where it holds a comma, a quote or a line break, quotes doubled. A text that a
/// spreadsheet would take for a formula, one whose first character but for spaces is = + - @ or a tab or return, gets
/// an apostrophe before it.
/// @param text of a cell, not a number
[[nodiscard]] inline std::string csv_field(std::string_view text)
{
    const std::size_t first = text.find_first_not_of(' ');
    const bool is_formula =
        first != std::string_view::npos && std::string_view("=+-@\t\r\n").find(text[first]) != std::string_view::npos;
    const std::string whole = (is_formula ? "'" : "") + std::string(text);
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
