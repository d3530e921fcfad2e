#pragma once
/// @file
/// Kept results of an independent field solution, tests/oracle/joints/outputs.csv.

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "support/reference_table.hpp"

namespace weldloop::test {

/// One solved case.
struct field_solution {
    std::map<std::string, double> settings;  ///< of deck and solver, by name
    double resistance;  ///< with resistivity 1 and spots of radius 1, or bars of thickness and width 1

    /// A setting, or what the deck takes where it is not given.
    double at(const std::string& name, double otherwise = 0.0) const
    {
        const auto found = settings.find(name);
        return found == settings.end() ? otherwise : found->second;
    }
};

/// The solved cases of a name. @throws std::runtime_error if there is none
inline std::vector<field_solution> field_solutions(const std::string& name)
{
    const std::filesystem::path path =
        std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "joints" / "outputs.csv";
    std::ifstream in(path, std::ios::binary);
    if (!in) throw std::runtime_error(path.string() + ": cannot be read");
    const std::string content{std::istreambuf_iterator<char>(in), {}};
    std::vector<field_solution> out;
    for (const auto& row : reference_table(path.string(), content).rows()) {
        if (row.text("case") != name) continue;
        field_solution one{{}, row.number("resistance")};
        std::istringstream words(row.text("settings"));
        std::string key;
        double value = 0.0;
        while (words >> key >> value) one.settings[key] = value;
        out.push_back(std::move(one));
    }
    if (out.empty()) throw std::runtime_error(path.string() + ": no case " + name);
    return out;
}

}  // namespace weldloop::test
