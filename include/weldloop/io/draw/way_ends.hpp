#pragma once
/// @file
/// Where the ways beside the path start and end in the path, for drawings of the loop.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop::detail {

/// The ends of a way; an end inside another way has no place in the path.
struct way_ends {
    std::size_t way = 0;
    std::optional<std::size_t> from = {}, to = {};
};

/// The ends of every way that has one in the path, in the order of the ways. @param s the station
[[nodiscard]] inline std::vector<way_ends> ways_at_path(const station& s)
{
    const auto place_of_hub = [&s](std::string_view name) -> std::optional<std::size_t> {
        for (std::size_t i = 0; i < s.path.size(); ++i)
            if (is_hub(s.path[i]) && name_of(s, i) == name) return i;
        return std::nullopt;
    };
    std::vector<way_ends> out;
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        const way_ends e{w, place_of_hub(s.ways[w].from), place_of_hub(s.ways[w].to)};
        if (e.from || e.to) out.push_back(e);
    }
    return out;
}

/// "hoist chain, 5.4 A": a way with its current, where that is known. @param found the assessment @param which way
[[nodiscard]] inline std::string way_label(const assessment& found, std::size_t which)
{
    const way_result& w = found.ways[which];
    if (found.outcome != loop_outcome::solved || w.spans_arc) return w.name;
    const double amps = w.current.typical.value();
    constexpr double whole_amps = 20.0;
    return w.name + ", " + fixed_text(amps, amps < whole_amps ? 1 : 0) + " A";
}

}  // namespace weldloop::detail
