#pragma once
/// @file
/// What a part takes that is worse than wear makes it, and fails: a joint that has half parted or arcs, a conductor
/// with most of its strands gone.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/no_load_limit.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/solve/span_sums.hpp>

namespace weldloop::detail {

/// How a failing part shows.
inline constexpr source failing_judgement{
    "a part that is worse than wear makes it takes anything, evenly by the logarithm, from the 95 % point of the worst "
    "condition it wears into "
    "up to 15 V, in one of ten from there to the supply's voltage without load; a reading across it wanders by 15 %; "
    "cold it takes anything between that and what a sound one does; its body is as hot as its heat makes it within 30 "
    "%, or, in one of two, hotter, up to 600 K, as it takes more at other moments; six of ten are loose, one of ten "
    "has clean faces",
    "2026",
    "an arc between parted copper or steel takes 10 to 15 V (recalled); a joint that makes and breaks shows less",
    source_kind::judgement};
/// Below the drop at which copper softens, a joint that is worse than wear makes it is not yet failing.
inline constexpr source softening_volts_of_copper{
    "R. Holm, Electric Contacts", "1967", "softening voltage of copper, 0.12 V (recalled)", source_kind::memory};
/// [V]; see softening_volts_of_copper.
inline constexpr double softening_volts = 0.12;
/// Where an arc between parted metal ends being short [V]; see failing_judgement.
inline constexpr double short_arc_volts = 15.0;
/// Share of failing parts beyond; see failing_judgement.
inline constexpr double drawn_arc_share = 0.1;
/// Deviation of a reading and of a rise, as shares; see failing_judgement.
inline constexpr double failing_wanders = 0.15, failing_rise_spread = 0.3;
/// Most that the body rises [K], and the share that is hotter than its heat says; see failing_judgement.
inline constexpr double failing_rise_limit = 600.0, failing_hotter_share = 0.5;
/// Shares of failing parts that are loose, and whose faces look clean; see failing_judgement.
inline constexpr double failing_loose_share = 0.6, failing_clean_share = 0.1;

/// The most that can be read across a part: the supply's voltage without load where it is stated, else the highest
/// that a supply may have.
[[nodiscard]] inline voltage most_volts_of(const station& s)
{
    if (s.supply) {
        if (const std::optional<voltage> stated = no_load_voltage_of(*s.supply)) return *stated;
        if (s.supply->no_load.peak) return *s.supply->no_load.peak;
        return no_load_limit_for(s.supply->hazard, s.supply->no_load.kind).peak;
    }
    return no_load_limit_for(shock_hazard::ordinary, output_current::direct).peak;
}

/// The 95 % point of a resistance [ohm]. @param d its distribution, in rising order
[[nodiscard]] inline double top_of(const solve::distribution& d)
{
    constexpr double above = 0.05;
    double beyond = 0.0;
    for (std::size_t i = d.size(); i-- > 0;) {
        beyond += d[i].weight;
        if (beyond > above) return d[i].at;
    }
    return d.empty() ? 0.0 : d.front().at;
}

/// The resistances of a failing part at one current.
class failing_spread {
public:
    /// @param from the top of its known conditions [ohm] @param amps through it @param most_volts see most_volts_of()
    failing_spread(double from, double amps, double most_volts)
        : from_(from), short_(std::max(from, std::min(short_arc_volts, most_volts) / amps)),
          most_(std::max(short_, most_volts / amps))
    {
    }

    /// How many values: up to a short arc, and beyond.
    struct counts {
        std::size_t up_to_short = 0, beyond = 0;
        [[nodiscard]] std::size_t all() const { return up_to_short + beyond; }
    };
    /// Values that lie so close; none where nothing lies between the worst condition and the voltage without load.
    [[nodiscard]] counts values(double closest) const
    {
        const auto many = [&](double a, double b) {
            return a > 0.0 ? static_cast<std::size_t>(std::ceil(std::log(b / a) / closest)) : std::size_t{0};
        };
        return {many(from_, short_), many(short_, most_)};
    }
    /// Adds the values [ohm], in rising order. @param out to it @param n so many
    void put(std::vector<double>& out, const counts& n) const
    {
        put_between(out, from_, short_, n.up_to_short);
        put_between(out, short_, most_, n.beyond);
    }
    /// The probability of one. @param i its number, in rising order @param n how many there are
    [[nodiscard]] static double weight(std::size_t i, const counts& n)
    {
        const double beyond = n.up_to_short == 0 ? 1.0 : n.beyond == 0 ? 0.0 : drawn_arc_share;
        return i < n.up_to_short ? (1.0 - beyond) / static_cast<double>(n.up_to_short)
                                 : beyond / static_cast<double>(n.beyond);
    }

private:
    static void put_between(std::vector<double>& out, double a, double b, std::size_t many)
    {
        if (many == 0) return;
        const double ratio = std::pow(b / a, 1.0 / static_cast<double>(many));
        double ohms = a * std::sqrt(ratio);
        for (std::size_t i = 0; i < many; ++i, ohms *= ratio) out.push_back(ohms);
    }
    double from_, short_, most_;
};

}  // namespace weldloop::detail
