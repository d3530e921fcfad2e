#pragma once
/// @file
/// What a loop's loss comes to in a year, in the user's money.

#include <optional>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>

namespace weldloop {

/// What a year's loss is reckoned from. Prices are in whatever money the user states them in.
struct loss_in_a_year {
    power lost;                         ///< [W] heat made in leads and joints while the arc burns, 0 or above
    duration arc_time;                  ///< [s] the arc burns in a year, above 0, at most a year
    double slower = 0.0;                ///< share by which the wire or electrode melts more slowly for it, 0 to below 1
    std::optional<double> tariff = {};  ///< [money/kWh] money for a kilowatt-hour, 0 or above
    std::optional<double> hour_cost = {};  ///< [money/h] money for an hour of the welder and the station, 0 or above
};

/// A year's loss; money only where its price was given.
struct yearly_loss {
    energy lost = {};                        ///< [J] in leads and joints, at the supply's output
    duration arc_time = {};                  ///< [s] that the same weld metal takes longer
    std::optional<double> energy_cost = {};  ///< [money] at the tariff
    std::optional<double> time_cost = {};    ///< [money] at the cost of an hour
};

/// What a loop's loss comes to in a year: energy P t at the supply's output (what the supply itself loses for it comes
/// on top), and the time that the same weld metal takes longer, t s/(1 - s), as if the rest of the work were none.
/// @param l the loss @throws not_finite_error, out_of_range_error
[[nodiscard]] inline yearly_loss yearly_loss_of(const loss_in_a_year& l)
{
    constexpr duration longest = in_si<duration>(366.0 * 24.0 * 3600.0);
    constexpr double least_left = 1e-3;  // of the melting rate
    require_not_negative(l.lost, "power lost");
    require_within(require_positive(l.arc_time, "arc time in a year"), duration{}, longest, "arc time in a year");
    require_within(l.slower, 0.0, 1.0 - least_left, "share melted more slowly");
    constexpr double any_price = 1e12;
    if (l.tariff) require_within(*l.tariff, 0.0, any_price, "tariff");
    if (l.hour_cost) require_within(*l.hour_cost, 0.0, any_price, "cost of an hour");
    constexpr energy kilowatt_hour = in_si<energy>(3.6e6);
    constexpr duration an_hour = in_si<duration>(3600.0);
    yearly_loss out;
    out.lost = l.lost * l.arc_time;
    out.arc_time = l.arc_time * (l.slower / (1.0 - l.slower));
    if (l.tariff) out.energy_cost = *l.tariff * (out.lost / kilowatt_hour).value();
    if (l.hour_cost) out.time_cost = *l.hour_cost * (out.arc_time / an_hour).value();
    return out;
}

}  // namespace weldloop
