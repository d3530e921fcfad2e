#pragma once
// A class's table of readings: comma-separated, a line of columns, numbers, lines that begin with # left out. What is
// wrong is refused with its line.
#include <cmath>
#include <cstddef>
#include <locale>
#include <span>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/error.hpp>

namespace lab {

// A table: columns in one line as written, and the cells of each row with the line they stand in.
struct readings {
    std::string columns;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::size_t> lines;
};

// The cells of a line; a comma within quotes belongs to its cell.
inline std::vector<std::string> cells_of(std::string_view line)
{
    std::vector<std::string> out(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            out.emplace_back();
        else if (c != '\r' && !((c == ' ' || c == '\t') && out.back().empty()))
            out.back().push_back(c);
    }
    for (std::string& cell : out)
        while (!cell.empty() && (cell.back() == ' ' || cell.back() == '\t')) cell.pop_back();
    return out;
}

// Reads a table. @throws weldloop::missing_data_error without columns or readings, weldloop::bad_text_error for a row
// with more or fewer cells
inline readings readings_of(const std::string& text)
{
    readings out;
    std::istringstream in(text);
    std::size_t number = 0, count = 0;
    for (std::string line; std::getline(in, line);) {
        ++number;
        const std::vector<std::string> cells = cells_of(line);
        if (line.starts_with('#') || (cells.size() == 1 && cells.front().empty())) continue;
        if (out.columns.empty()) {
            for (const std::string& c : cells) out.columns.append(out.columns.empty() ? "" : ",").append(c);
            count = cells.size();
            continue;
        }
        if (cells.size() != count)
            throw weldloop::bad_text_error(line, 0,
                                           "the " + std::to_string(count) + " columns " + out.columns + ", in line " +
                                               std::to_string(number));
        out.rows.push_back(cells);
        out.lines.push_back(number);
    }
    if (out.columns.empty()) throw weldloop::missing_data_error("table", "empty", "a line of columns and readings");
    if (out.rows.empty()) throw weldloop::missing_data_error("table", "columns alone", "readings below them");
    return out;
}

// The number in a cell, between two limits that are not allowed themselves.
inline double number_in(const readings& table, std::size_t row, std::size_t column, double above, double below)
{
    const std::string& cell = table.rows[row][column];
    const std::string where = cells_of(table.columns)[column] + " in line " + std::to_string(table.lines[row]);
    std::istringstream in(cell);
    in.imbue(std::locale::classic());
    double value = 0.0;
    if (!(in >> value) || in.peek() != std::istringstream::traits_type::eof() || !std::isfinite(value))
        throw weldloop::bad_text_error(cell, 0, "a number: " + where);
    if (!(value > above && value < below))
        throw weldloop::out_of_range_error(
            where, cell, "above " + weldloop::number_text(above) + ", below " + weldloop::number_text(below));
    return value;
}

}  // namespace lab
