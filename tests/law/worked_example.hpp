#pragma once
/// @file
/// Rows of tests/reference/contacts-worked-examples.csv: a formula, its inputs and the answer.

#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/number_chars.hpp>

#include "support/reference_table.hpp"

namespace weldloop::test {

/// "rho=1.7241e-8; a=1e-4" as numbers by name; "f=fc=0.08" gives both names the number. A trailing unit is left out.
inline std::map<std::string, double> inputs_of(std::string_view text)
{
    std::map<std::string, double> out;
    while (!text.empty()) {
        const std::size_t end = text.find(';');
        std::string_view item = text.substr(0, end);
        text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
        std::vector<std::string> names;
        for (std::size_t equals = item.find('='); equals != std::string_view::npos; equals = item.find('=')) {
            std::string_view name = item.substr(0, equals);
            while (name.starts_with(' ')) name.remove_prefix(1);
            names.emplace_back(name);
            item.remove_prefix(equals + 1);
        }
        const auto front = detail::number_at_front(item);
        if (!front.value || names.empty()) throw std::runtime_error("unreadable input: " + std::string(item));
        double value = *front.value;
        if (item.substr(front.used).starts_with('/'))  // an inch fraction
            value /= detail::number_at_front(item.substr(front.used + 1)).value.value();
        for (const std::string& name : names) out[name] = value;
    }
    return out;
}

/// The row of an identifier. @throws std::runtime_error if there is none
inline reference_table::row worked_example(std::string_view id)
{
    for (const reference_table::row& row : reference_table("contacts-worked-examples.csv").rows())
        if (row.text("id") == id) return row;
    throw std::runtime_error("no worked example " + std::string(id));
}

}  // namespace weldloop::test
