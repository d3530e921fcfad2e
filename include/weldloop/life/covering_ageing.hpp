#pragma once
/// @file
/// How much of its thermal life a lead's covering uses: by a programme of shifts, by one bad day, at a hot end.

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <string>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/thermal_endurance.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// @name Sources of the endurance of coverings
/// @{
/// Where the index lies.
inline constexpr source covering_index_judgement{
    "temperature index of a covering: in a poor case its conductor limit, typically 15 K, at best 30 K above it",
    "2026",
    "judgement; the best case is that of EN 50618, 90 degC for 25 years and 120 degC for 20 000 h (from memory)",
    source_kind::judgement};
/// How wide the interval is.
inline constexpr source covering_interval_rule{
    "halving interval of coverings: 10 K, the rule of thumb of public pages on cable life; 6 and 12 K as its ends",
    "2026", "rule read, ends judgement: 1.3 and 0.65 eV at 85 degC", source_kind::judgement};
/// @}

/// @name Endurance of coverings
/// @{
/// Temperature index above the conductor limit of a covering, poor, typical, good; see covering_index_judgement.
inline constexpr std::array index_above_limit{in_si<temperature_difference>(0.0), in_si<temperature_difference>(15.0),
                                              in_si<temperature_difference>(30.0)};
/// Halving interval: least, typical, most; see covering_interval_rule.
inline constexpr std::array covering_halving_interval{
    in_si<temperature_difference>(6.0), in_si<temperature_difference>(10.0), in_si<temperature_difference>(12.0)};
/// @}

/// Share of a covering's thermal life that is used, the poor case first. 1 is the end point of a test of endurance,
/// which is no date: cuts, burns, crushing and bending end most leads before.
struct covering_age {
    double poor = 0.0;         ///< [1] 0 or above, of a poor covering, at its hottest
    double typical = 0.0;      ///< [1] 0 or above, of a typical one
    double good = 0.0;         ///< [1] 0 or above, of a good one, at its mean
    temperature hottest = {};  ///< of the conductor, which the covering's inside has
    bool past_short_time =
        false;              ///< hotter than the covering stands even for seconds: it is damaged, age says nothing
    weldloop::basis basis;  ///< sources
};

/// A part of a working day that is all alike.
struct shift {
    load work;                                       ///< current [A], 0 or above, and duty
    weldloop::duration time = in_si<duration>(0.0);  ///< [s] that it goes on, above 0; taken as settled
    surroundings where = {};                         ///< air, wind, lay, altitude, sun
};

namespace detail {

/// The three points of a covering at a mean and a peak temperature.
inline void add_age(covering_age& out, const covering& c, temperature mean, temperature peak, duration time)
{
    if (!c.highest)
        throw missing_data_error("endurance of the covering", "no conductor limit of " + std::string(c.name),
                                 "a covering with a published limit");
    const auto used = [&](std::size_t index, std::size_t interval, temperature at) {
        const std::array course{heated_time{at, time}};
        return endurance_used({*c.highest + index_above_limit[index], covering_halving_interval[interval]}, course);
    };
    // above the index a short interval ages faster, below it slower: either end may be the poor one
    out.poor += std::max(used(0, 0, peak), used(0, 2, peak));
    out.good += std::min(used(2, 0, mean), used(2, 2, mean));
    out.typical += used(1, 1, mean + 0.5 * (peak - mean));
    for (const double share : {out.poor, out.typical, out.good}) require_finite(share, "thermal life used");
    out.hottest = std::max(out.hottest, peak);
    out.past_short_time = out.past_short_time || (c.short_time && peak > *c.short_time);
}

inline void add_ageing_basis(basis& out)
{
    out.add(iec_60216_endurance).add(covering_index_judgement).add(covering_interval_rule);
}

}  // namespace detail

/// What a covering uses of its thermal life at a temperature: at the hot end beside a bad lug, say.
/// @param c the covering @param at of its inside @param time [s] 0 or above
/// @throws missing_data_error for a covering without a conductor limit; not_finite_error, out_of_range_error
[[nodiscard]] inline covering_age covering_age_at(const covering& c, temperature at, duration time)
{
    covering_age out;
    detail::add_age(out, c, at, at, time);
    detail::add_ageing_basis(out.basis);
    return out;
}

/// What a lead's covering uses of its thermal life in a programme of shifts, far from its ends.
///
/// Each shift is taken as settled, by heating_of(); the covering's inside, its hottest, has the conductor's
/// temperature. Within a period the true use lies between that at the mean and that at the peak, since hot moments
/// count more than they last: the poor case takes the peak, the good one the mean, the typical one the middle. Hours
/// without current count at the temperature of the air only if they are given as a shift.
///
/// Index and halving interval of coverings are judgement around one rule of thumb: the interval is wide, and it is
/// meant for comparing days and leads. It is no forecast: damage comes before age, typically.
/// @param lead with its diameters and a covering with a conductor limit @param day shifts of one day
/// @param days number of times it is repeated, 0 to 1e6; 1 for one bad day
/// @throws missing_data_error for a lead without diameters or a covering without limit; not_finite_error,
/// out_of_range_error; no_solution_error
[[nodiscard]] inline covering_age covering_life_of(const cable& lead, std::span<const shift> day, double days = 1.0)
{
    constexpr double most_days = 1e6;
    require_within(days, 0.0, most_days, "days");
    covering_age out;
    for (const shift& s : day) {
        require_positive(s.time, "time of a shift");
        const cable_heating hot = heating_of(lead, s.where, s.work);
        const temperature_difference damage = hot.conductor_peak - hot.conductor_period_mean - hot.ripple_up;
        // at a damaged place mean and peak are both higher than where the strands are whole
        detail::add_age(out, lead.covering, hot.conductor_period_mean + std::max(damage, temperature_difference{}),
                        hot.conductor_peak, days * s.time);
        out.basis.add(hot.basis);
    }
    detail::add_ageing_basis(out.basis);
    return out;
}

/// "12 % of its thermal life in a poor case, typically 1.1 %; ...": what a report may print of it.
/// @param age of covering_life_of() or covering_age_at()
[[nodiscard]] inline std::string to_text(const covering_age& age)
{
    if (age.past_short_time)
        return "in a poor case its covering gets hotter than it stands even for seconds: it is damaged then, and age "
               "says nothing";
    const auto percent = [](double share) { return number_text(100.0 * share, 2) + " %"; };
    std::string out = percent(age.poor);
    out.append(" of the thermal life of its covering in a poor case, typically ").append(percent(age.typical));
    out.append(", at best ").append(percent(age.good));
    return out.append("; index and halving interval are judgement and from memory, and damage comes before age, "
                      "typically");
}

}  // namespace weldloop
