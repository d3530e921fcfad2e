#pragma once
/// @file
/// The units a station file is written in, for the report that is made of it.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/parse.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/io/station/toml_parser.hpp>
#include <weldloop/io/station/toml_section.hpp>

namespace weldloop::detail {

/// How many quantities of a file are written in each sort of unit.
struct unit_count {
    std::size_t celsius = 0, fahrenheit = 0, metric = 0, feet = 0;
};

/// Whether a text of a file is a quantity with one of these units: "40 ft".
template <class Q, std::size_t N>
[[nodiscard]] bool is_in(std::string_view text, const std::array<std::string_view, N>& units)
{
    if (std::none_of(units.begin(), units.end(), [text](std::string_view u) { return text.ends_with(u); }))
        return false;
    try {
        static_cast<void>(parse<Q>(text));
        return true;
    } catch (const error&) {
        return false;
    }
}

inline void count_units(const toml::node& node, unit_count& n)
{
    // a name may look like a quantity
    constexpr std::array<std::string_view, 5> names{"name", "across", "from", "to", "clamp"};
    if (const toml::table* table = node.as_table()) {
        for (auto&& [key, value] : *table)
            if (std::find(names.begin(), names.end(), key.str()) == names.end()) count_units(value, n);
    } else if (const toml::array* array = node.as_array()) {
        for (const toml::node& value : *array) count_units(value, n);
    } else if (const auto* text = node.as_string()) {
        const std::string_view t = text->get();
        n.celsius += is_in<temperature>(t, std::array<std::string_view, 1>{"degC"}) ? 1 : 0;
        n.fahrenheit += is_in<temperature>(t, std::array<std::string_view, 1>{"degF"}) ? 1 : 0;
        n.metric += is_in<length>(t, std::array<std::string_view, 1>{"m"}) ? 1 : 0;  // m, mm, cm, um, nm, km
        n.feet += is_in<length>(t, std::array<std::string_view, 4>{"ft", "in", "yd", "mil"}) ? 1 : 0;
    }
}

/// The units most quantities of a file are written in; where it has none of the one sort, the other decides, and a tie
/// is SI. The table [report] overrides it: temperatures = "degF" or "degC", lengths = "ft" or "m".
/// @param file the whole file @param stated its table [report], if it has one
[[nodiscard]] inline shown_units read_units(const toml::table& file, const std::optional<toml_section>& stated)
{
    unit_count n;
    count_units(file, n);
    shown_units out;
    const bool no_lengths = n.metric + n.feet == 0, no_temperatures = n.celsius + n.fahrenheit == 0;
    if (no_temperatures ? n.feet > n.metric : n.fahrenheit > n.celsius) out.temperatures = "degF";
    if (no_lengths ? n.fahrenheit > n.celsius : n.feet > n.metric) out.lengths = shown_lengths::feet;
    if (!stated) return out;
    stated->allow_only({"temperatures", "lengths"});
    const auto itself = [](std::string_view word) { return word; };
    if (stated->has("temperatures"))
        out.temperatures = temperature_scale::at_run_time(
            stated->word("temperatures", std::array<std::string_view, 2>{"degC", "degF"}, itself));
    if (stated->has("lengths"))
        out.lengths = stated->word("lengths", std::array<std::string_view, 2>{"m", "ft"}, itself) == "ft"
                          ? shown_lengths::feet
                          : shown_lengths::metric;
    return out;
}

}  // namespace weldloop::detail
