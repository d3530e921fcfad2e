#pragma once
/// @file
/// Sizes as the series in use at a station has them: nobody keeps lugs of 50 mm2 beside leads in AWG.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <variant>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/rating/lead/larger_lead.hpp>
#include <weldloop/rating/lead/sizing.hpp>

namespace weldloop {

/// The series of sizes a station's leads are written in: that of most of its cables, ways counted. Without a cable, and
/// of a tie, the metric one.
/// @param s the station
[[nodiscard]] inline size_family family_in_use(const station& s)
{
    std::size_t american = 0, all = 0;
    for (std::size_t i = 0; i < parts_in(s); ++i)
        if (const auto* c = std::get_if<cable>(&part_at(s, i))) {
            ++all;
            if (family_of(c->size) == size_family::american) ++american;
        }
    return 2 * american > all ? size_family::american : size_family::metric;
}

/// The size of a series that stands for a size: itself where the series has it, else the one nearest by ratio of areas.
/// 50 mm2 is 1/0 AWG (53.5 mm2), 70 mm2 is 2/0 AWG (67.4 mm2).
/// @param size as it is written @param series to choose from
[[nodiscard]] inline conductor_size usual_size(const conductor_size& size, size_family series)
{
    const std::span<const conductor_size> sizes = sizes_of(series);
    const auto apart = [&](const conductor_size& s) { return std::fabs(std::log(s.area() / size.area())); };
    return *std::min_element(sizes.begin(), sizes.end(),
                             [&](const conductor_size& a, const conductor_size& b) { return apart(a) < apart(b); });
}

/// The smallest size of a series with more metal than so much; none where its largest has no more.
/// @param metal [m2], 0 or above @param series to choose from @throws not_finite_error, out_of_range_error
[[nodiscard]] inline std::optional<conductor_size> smallest_size_above(area metal, size_family series)
{
    require_not_negative(metal, "metal of the conductor");
    for (const conductor_size& size : sizes_of(series))
        if (size.area() > metal) return size;
    return std::nullopt;
}

}  // namespace weldloop
