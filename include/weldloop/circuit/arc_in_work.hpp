#pragma once
/// @file
/// The arc's heat in a workpiece that stays for a while and is followed by a cold one.

#include <algorithm>
#include <cmath>
#include <optional>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/circuit/workpiece_body.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/law/arc_heat.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/law/work_spread.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/workpiece.hpp>

namespace weldloop {

/// How pieces that come and go are one body.
inline constexpr source pieces_in_turn{
    "pieces in turn: each begins at the air's temperature, is heated from the beginning of its stay and takes its heat "
    "away. The "
    "body that stands for them has the mean over the stay; the poor end of its band is its hottest, at the end of the "
    "stay or as the arc goes out",
    "2026", "one body with an even loss, exact for constant coefficients; compared with a march of pieces in a test",
    source_kind::derived};
/// Where on a piece a clamp grips.
inline constexpr source place_on_work{
    "weld across the middle of a long piece, or in the middle of a disc of the workpiece's area, clamp at its distance "
    "from there",
    "2026", "bars and discs are exact; that a piece is one of them: judgement", source_kind::judgement};

/// The stay of a piece, and how pieces follow each other.
struct piece_stay {
    duration stays = {};    ///< [s] above 0
    double occupied = 1.0;  ///< share of the time in which a piece is there, above 0 to 1
};

/// The stay of a piece; none where neither a stay nor a number of pieces is stated. Where one of them is, pieces follow
/// each other at once. @param w the piece @throws not_finite_error, out_of_range_error, where pieces follow each other
/// faster than they stay too
[[nodiscard]] inline std::optional<piece_stay> stay_of(const workpiece& w)
{
    detail::require_workpiece(w);
    if (!w.stays && !w.pieces_per_hour) return std::nullopt;
    constexpr double rounding = 1e-9;
    if (!w.pieces_per_hour) return piece_stay{*w.stays, 1.0};
    const auto follows = in_si<duration>(detail::seconds_per_hour / *w.pieces_per_hour);
    if (!w.stays) return piece_stay{follows, 1.0};
    const double occupied = (*w.stays / follows).value();
    if (occupied > 1.0 + rounding)
        throw out_of_range_error("pieces per hour", number_text(*w.pieces_per_hour),
                                 "at most one in each stay of " + si_text(*w.stays));
    return piece_stay{*w.stays, std::min(1.0, occupied)};
}

/// What the arc does to the piece it burns on.
struct arc_in_work {
    band<power> arc = {};               ///< [W] into the piece while the arc burns, by the measured share
    band<power> heat = {};              ///< [W] the same as the piece's body takes it: its high end as if its
                                        ///< hottest lasted
    thermal_conductance to_patch = {};  ///< [W/K] see patch_to_staying_piece()
    thermal_conductance exchange = {};  ///< [W/K] to the air's temperature: what pieces carry away
    double hottest_over_mean =
        1.0;  ///< ratio of the piece's rise at the end of its stay or as the arc goes out, over its mean
    rise_by_watt place = {};                      ///< of where it is gripped, by a watt [K/W]
    band<temperature_difference> over_mean = {};  ///< [K] by the heat while the arc burns, as the piece's body: its
                                                  ///< high end that of the hottest
};

/// What a watt of the arc does where a piece is gripped, over its mean; none where no distance is stated.
/// @param w the piece @param heated the same as it is heated @throws not_finite_error, out_of_range_error
/// @see place_on_work
[[nodiscard]] inline rise_by_watt place_over_mean(const workpiece& w, const heated_stay& heated)
{
    detail::require_workpiece(w);
    if (!w.from_weld) return {};
    if (w.bar_length) return bar_over_mean(heated, *w.bar_length, *w.from_weld);
    return disc_over_mean(heated, w.thickness, detail::radius_over_patch(w) * work_patch_radius, *w.from_weld);
}

/// From the patch under a contact to the mean of a piece that stays for a while [W/K]: heat comes from no farther than
/// it gets in the stay. The mean over the stay of an even flow to a point of a disc of the piece's area, 10 mm away.
/// @param w the piece @param heated the same as it is heated @throws not_finite_error, out_of_range_error
[[nodiscard]] inline thermal_conductance patch_to_staying_piece(const workpiece& w, const heated_stay& heated)
{
    heated_stay even = heated;
    even.on = even.period;
    const double over =
        disc_over_mean(even, w.thickness, detail::radius_over_patch(w) * work_patch_radius, work_patch_radius).mean;
    const thermal_conductance settled = patch_to_piece(w);
    return over > 0.0 ? std::max(settled, in_si<thermal_conductance>(1.0 / over)) : settled;
}

/// The arc's heat in a piece under a job; none without a stay. The conventional load voltage of the process, or the
/// setting of a constant-voltage supply, stands for the arc's: what the leads take is in it, so that the heat is some
/// percent too high.
/// @param s the station @param w the piece the arc burns on
/// @throws not_finite_error, out_of_range_error, where the arc would burn longer than pieces are there too
[[nodiscard]] inline std::optional<arc_in_work> arc_heat_in(const station& s, const workpiece& w)
{
    const std::optional<piece_stay> stay = stay_of(w);
    if (!stay) return std::nullopt;
    const double on = static_cast<double>(s.job.duty.share());
    if (on > stay->occupied)
        throw out_of_range_error("pieces per hour", number_text(*w.pieces_per_hour),
                                 "so many that a piece is there whenever the arc burns, " + number_text(on) +
                                     " of the time");
    const bool holds_voltage = s.supply && s.supply->kind == supply_kind::constant_voltage;
    arc_in_work out;
    out.arc = arc_power_in_work(
        s.job.process, holds_voltage ? s.supply->setting : conventional_load_voltage(s.job.process, s.job.current),
        s.job.current);
    // all of an hour's heat within the time that pieces are there
    out.heat = mapped(out.arc, [&](power p) { return power(p / stay->occupied); });
    const thermal_body body = workpiece_body_of(w);
    constexpr int rounds = 30;  // the coefficient moves with the fourth root of the rise, and by radiation: contracts
    const duration period = s.job.duty.period();
    heated_stay heated{w.metal, body.capacity, {}, stay->stays, std::min(period, s.job.duty.on() / stay->occupied),
                       period};
    stay_heating heating;
    double rise = 0.0;
    for (int i = 0; i < rounds; ++i) {
        const temperature hot = s.where.air + in_si<temperature_difference>(rise);
        heated.loss = body_coefficient(body, std::min(hot, w.metal.melting), s.where) * body.surface;
        heating = heating_over_stay(heated);
        constexpr double half = 0.5;
        rise = half * (rise + (on * out.heat.typical / (heated.loss + heating.exchange)).value());
    }
    out.exchange = heating.exchange;
    out.to_patch = patch_to_staying_piece(w, heated);
    out.place = place_over_mean(w, heated);
    const rise_by_watt& all = heating.rise;
    const bool ends_hottest = all.end + out.place.end >= all.arc_ends + out.place.arc_ends;
    out.hottest_over_mean = (ends_hottest ? all.end : all.arc_ends) / all.mean;
    const auto by = [](power p, double kelvin_by_watt) {
        return in_si<temperature_difference>(kelvin_by_watt * p.value());
    };
    out.over_mean = {by(out.heat.low, out.place.mean), by(out.heat.typical, out.place.mean),
                     by(out.heat.high, ends_hottest ? out.place.end : out.place.arc_ends)};
    out.heat.high = out.heat.high * out.hottest_over_mean;
    return out;
}

}  // namespace weldloop
