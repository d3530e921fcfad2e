#pragma once
/// @file
/// A year of work at a station, and what it is paid with.

#include <optional>

#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// A year of work. Prices are in whatever money the user states them in; none is assumed.
struct year_of_work {
    duration arc_time;                     ///< [s] the arc burns in a year, above 0, at most a year
    std::optional<double> tariff = {};     ///< [money/kWh] money for a kilowatt-hour, 0 or above
    std::optional<double> hour_cost = {};  ///< [money/h] money for an hour of the welder and the station, 0 or above
};

}  // namespace weldloop
