#pragma once
/// @file
/// The [year] of a station file.

#include <weldloop/core/quantities.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/part/year_of_work.hpp>

namespace weldloop::detail {

/// @name What the keys of a year may hold
/// @{
inline constexpr allowed_span<duration> arc_times_in_a_year{in_si<duration>(0.0),
                                                            in_si<duration>(366.0 * 24.0 * 3600.0), true};
inline constexpr allowed_span<double> prices{0.0, 1e9};
/// @}

[[nodiscard]] inline year_of_work read_year(const toml_section& s)
{
    s.allow_only({"arc_time", "tariff", "hour_cost"});
    year_of_work out{.arc_time = s.required<duration>("arc_time", arc_times_in_a_year)};
    if (s.has("tariff")) out.tariff = s.number("tariff", prices);
    if (s.has("hour_cost")) out.hour_cost = s.number("hour_cost", prices);
    return out;
}

}  // namespace weldloop::detail
