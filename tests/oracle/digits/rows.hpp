#pragma once
/// @file
/// The rows of rows.csv.

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "oracle/digits/laws.hpp"

namespace weldloop::test::digits {

/// What a law gives for some inputs, to fifty digits.
struct row {
    std::string law;             ///< its name
    std::string text;            ///< the inputs as they stand in the file
    std::vector<double> inputs;  ///< exactly
    double high;                 ///< the value is this
    double low;                  ///< and this
    double allowed;              ///< relative error
};

/// The rows of a file. @throws std::runtime_error if it cannot be read
inline std::vector<row> rows_of(const std::string& path)
{
    std::ifstream in(path);
    if (!in) throw std::runtime_error("cannot read " + path);
    std::vector<row> out;
    const auto number = [](const std::string& text) { return std::strtod(text.c_str(), nullptr); };
    for (std::string line; std::getline(in, line);) {
        if (line.empty() || line.front() == '#' || line.rfind("law,", 0) == 0) continue;
        std::istringstream cells(line);
        row r{};
        std::string high, low, allowed;
        std::getline(cells, r.law, ',');
        std::getline(cells, r.text, ',');
        std::getline(cells, high, ',');
        std::getline(cells, low, ',');
        std::getline(cells, allowed, ',');
        r.high = number(high);
        r.low = number(low);
        r.allowed = number(allowed);
        std::istringstream inputs_text(r.text);
        for (std::string x; inputs_text >> x;) r.inputs.push_back(number(x));
        out.push_back(std::move(r));
    }
    return out;
}

/// The law of a name. @throws std::runtime_error for a name that is none
inline double (*law_of(std::string_view name))(inputs)
{
    for (const named_law& l : laws)
        if (l.name == name) return l.value;
    throw std::runtime_error("no law of the name " + std::string(name));
}

}  // namespace weldloop::test::digits
