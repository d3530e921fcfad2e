#pragma once
/// @file
/// Crimped joints: the published acceptance limits by conductor size, and what under-filling a barrel costs.

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

#include <weldloop/core/band.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// @name Sources of crimp data
/// @{

/// Source: limits up to 4 AWG.
inline constexpr source crimp_limits_read{
    "MIL-T-7928E", "E", "voltage drop and tensile table, 26 to 4 AWG (as reproduced in an open syllabus)",
    source_kind::standard};
/// Source: limits of 2 AWG to 4/0.
inline constexpr source crimp_limits_recalled{"MIL-T-7928E", "E", "voltage drop and tensile table, 2 AWG to 4/0",
                                              source_kind::memory};
/// Source: limits above 4/0.
inline constexpr source crimp_limit_beyond{
    "limit carried on beyond 4/0 with the slope of its last two sizes", {}, "above 107 mm2", source_kind::judgement};
/// Source: scatter of a sound crimp.
inline constexpr source crimp_band_judgement{
    "a sound crimp: 0.2, 0.4, 1.0 of the acceptance limit (5, 50, 95 % points)", "2026", {}, source_kind::judgement};
/// Source: missing strands.
inline constexpr source underfilled_barrel_judgement{
    "an under-filled barrel: remaining strands carry the current, 1/(1-s), and are gripped less, 1/(1-s)^2", "2026",
    "s is the share of the barrel's strands that is missing", source_kind::judgement};
/// @}

/// Resistance of a sound crimp over its acceptance limit; see crimp_band_judgement.
inline constexpr band<double> sound_crimp_share{0.2, 0.4, 1.0};
/// Largest conductor the limits are carried on to [m2]; see crimp_limit_beyond.
inline constexpr area largest_crimp = in_si<area>(300e-6);

/// A row of the acceptance table. The drop spans from the front of the barrel to the conductor just behind it.
struct crimp_limit_row {
    conductor_size size;   ///< of the conductor
    current test_current;  ///< [A]
    voltage highest_drop;  ///< [V] at the test current
    force pull_out;        ///< [N] least tensile strength
    bool recalled;         ///< from memory, not read
};

namespace detail {
constexpr crimp_limit_row crimp_row(conductor_size size, double amps, double millivolts, double pounds, bool recalled)
{
    return {size, in_si<current>(amps), in_si<voltage>(millivolts * 1e-3),
            in_si<force>(pounds * newtons_per_pound_force), recalled};
}
}  // namespace detail

/// The acceptance table, smallest conductor first; see crimp_limits_read and crimp_limits_recalled.
inline constexpr std::array crimp_limits{
    detail::crimp_row(awg(26), 3, 8, 7, false),     detail::crimp_row(awg(24), 4.5, 8, 10, false),
    detail::crimp_row(awg(22), 9, 7, 15, false),    detail::crimp_row(awg(20), 11, 6, 19, false),
    detail::crimp_row(awg(18), 16, 5, 38, false),   detail::crimp_row(awg(16), 22, 7, 50, false),
    detail::crimp_row(awg(14), 32, 6, 70, false),   detail::crimp_row(awg(12), 41, 5, 110, false),
    detail::crimp_row(awg(10), 55, 5, 150, false),  detail::crimp_row(awg(8), 73, 5, 225, false),
    detail::crimp_row(awg(6), 101, 5, 300, false),  detail::crimp_row(awg(4), 135, 5, 400, false),
    detail::crimp_row(awg(2), 181, 5, 550, true),   detail::crimp_row(awg(1), 211, 5, 650, true),
    detail::crimp_row(aught(1), 245, 5, 700, true), detail::crimp_row(aught(2), 283, 5, 750, true),
    detail::crimp_row(aught(3), 328, 5, 825, true), detail::crimp_row(aught(4), 380, 5, 875, true),
};

/// A limit with its source.
struct crimp_limit {
    weldloop::resistance resistance;  ///< [ohm] highest a good crimp may have
    const source* from;               ///< the table, read or recalled, or beyond it
};

/// Highest resistance a good crimp may have [ohm]: test drop over test current of the table, between its sizes by a
/// straight line of log R against log area. Above 4/0 the last two sizes are carried on. It counts as read only where
/// both neighbours are.
/// @param conductor area of metal [m2], from that of 26 AWG up to 300 mm2
/// @throws not_finite_error, out_of_range_error @see crimp_limits
[[nodiscard]] inline crimp_limit crimp_limit_of(area conductor)
{
    constexpr double rounding = 1e-9;  // a size that is the end of the table is inside it
    require_within(conductor, (1.0 - rounding) * crimp_limits.front().size.area(), largest_crimp, "conductor area");
    const auto log_area = [](const crimp_limit_row& row) { return std::log(row.size.area().value()); };
    const auto log_limit = [](const crimp_limit_row& row) {
        return std::log((row.highest_drop / row.test_current).value());
    };
    std::size_t above = 1;
    while (above + 1 < crimp_limits.size() && crimp_limits[above].size.area() < conductor) ++above;
    const crimp_limit_row& a = crimp_limits[above - 1];
    const crimp_limit_row& b = crimp_limits[above];
    const double share = (std::log(conductor.value()) - log_area(a)) / (log_area(b) - log_area(a));
    const bool beyond = share > 1.0 + rounding;
    return {in_si<resistance>(std::exp(log_limit(a) + share * (log_limit(b) - log_limit(a)))),
            beyond                     ? &crimp_limit_beyond
            : a.recalled || b.recalled ? &crimp_limits_recalled
                                       : &crimp_limits_read};
}

/// Resistance of a sound, well-made crimp with its scatter [ohm]: the acceptance limit is the 95 % point.
/// @param conductor area of metal [m2], from that of 26 AWG up to 300 mm2
/// @throws not_finite_error, out_of_range_error @see crimp_band_judgement
[[nodiscard]] inline band<resistance> crimp_resistance(area conductor)
{
    const resistance limit = crimp_limit_of(conductor).resistance;
    return {sound_crimp_share.low * limit, sound_crimp_share.typical * limit, sound_crimp_share.high * limit};
}

/// Share of a barrel's strands that is missing when a cable and a barrel of different sizes meet. A barrel larger than
/// the cable is under-filled in the ratio of the areas; into a smaller one the strands go only if some are cut off.
/// @param conductor area of the cable [m2], above 0 @param barrel area the lug is made for [m2], above 0
/// @param missing share of the cable's strands outside the barrel
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline strand_loss barrel_shortfall(area conductor, area barrel, strand_loss missing = 0.0)
{
    require_positive(conductor, "conductor area");
    require_positive(barrel, "barrel area");
    const area larger = std::max(conductor, barrel), smaller = std::min(conductor, barrel);
    // what is empty and what is missing of the rest, each with all its digits
    return ((larger - smaller) / larger).value() + (smaller / larger).value() * static_cast<double>(missing);
}

/// How many times the resistance of a full barrel an under-filled one has, 1/(1 - s)^3.
/// @param shortfall s, share of the strands that is missing, 0 to below 1; not infinite up to s = 1 - 1e-100
/// @throws not_finite_error for a barrel as good as empty @see underfilled_barrel_judgement
[[nodiscard]] inline double underfilled_factor(strand_loss shortfall)
{
    const double left = 1.0 - static_cast<double>(shortfall);
    const double factor = 1.0 / (left * left * left);
    return require_within(factor, 1.0, std::numeric_limits<double>::max(), "factor of an under-filled barrel");
}

}  // namespace weldloop
