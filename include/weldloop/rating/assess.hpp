#pragma once
/// @file
/// Assessing a station: every part's drop, heat and temperature, held against its limit.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/arc_voltage.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/cautions.hpp>
#include <weldloop/rating/grip.hpp>
#include <weldloop/rating/part_limit.hpp>

namespace weldloop {

/// Share of a limit from which a part is called close to it.
inline constexpr double close_share = 0.9;

/// How drops that scatter independently add up.
inline constexpr source independent_drops{
    "drops that scatter independently: distances from the median add as squares", {}, {}, source_kind::derived};

namespace detail {

[[nodiscard]] inline double share_of_rise(temperature peak, temperature limit, temperature air)
{
    const double allowed = (limit - air).value();
    // air at or above the limit: any warmth is too much
    constexpr double past_any_limit = 100.0;
    return allowed > 0.0 ? std::min((peak - air).value() / allowed, past_any_limit) : past_any_limit;
}

// Share of its limits a part uses, which limit that is, and the words for it.
struct limit_use {
    double used = -1.0;
    double used_high = -1.0;
    bool sourced = false;  // some limit was read, not recalled
    std::string words;
};

[[nodiscard]] inline limit_use use_of(const part_limit& limit, const part_result& r, const station& s)
{
    limit_use out;
    if (limit.peak) {
        out.used = share_of_rise(r.peak.typical, *limit.peak, s.where.air);
        out.used_high = share_of_rise(r.peak.high, *limit.peak, s.where.air);
        out.sourced = limit.peak_source->kind != source_kind::memory;
        out.words = "peak " + to_text(r.peak.typical, "degC") + " against " + to_text(*limit.peak, "degC") + " (" +
                    std::string(limit.peak_name) + ")";
    }
    if (limit.highest && limit.held) {
        constexpr double rounded = 1e-9;  // a new crimp's 95 % point is its limit
        out.sourced = out.sourced || limit.highest_source->kind != source_kind::memory;
        const double used = (limit.held->typical / *limit.highest).value();
        if (used > out.used) {
            out.used = used;
            out.words = to_text(limit.held->typical, "uohm") + " cold against " + to_text(*limit.highest, "uohm") +
                        " (" + std::string(limit.highest_name) + ")";
        }
        out.used_high = std::max(out.used_high, (limit.held->high / *limit.highest).value() * (1.0 - rounded));
    }
    return out;
}

inline void judge(part_result& r, const part_limit& limit, const part_state& typical, const station& s,
                  bool current_flows)
{
    const limit_use use = use_of(limit, r, s);
    r.limit = limit.peak;
    r.limit_name = limit.peak_name;
    r.used = std::max(0.0, use.used);
    if (!r.conducts) {
        r.verdict = verdict::open_circuit;
        r.reason = "no metal touches metal: no current can flow";
    } else if (typical.spots_melt || typical.metal_melts) {
        r.verdict = verdict::spots_melting;
        r.reason = typical.metal_melts
                       ? "its metal would pass its melting point"
                       : "the drop of " + to_text(r.drop.typical, "V") + " is at the melting drop of its metals";
    } else if (use.used < 0.0) {
        r.verdict = verdict::not_judged;
        r.reason = r.hottest_spot ? "no published limit for such a contact; hottest spot " +
                                        to_text(r.hottest_spot->typical, "degC")
                                  : "no published limit for such a part";
    } else if (!current_flows && use.used <= 1.0) {
        r.verdict = verdict::not_judged;
        r.reason = "no current flows: nothing to judge it by";
    } else if (use.used > 1.0) {
        r.verdict = verdict::over_limit;
        r.reason = use.words;
    } else if (use.used_high > 1.0) {
        r.verdict = verdict::may_exceed;
        r.reason = use.words + ", but above it at the 95 % point of the scatter";
    } else if (use.used > close_share) {
        r.verdict = verdict::close_to_limit;
        r.reason = use.words;
    } else if (!use.sourced) {
        r.verdict = verdict::not_judged;
        r.reason = use.words + "; that limit is from memory and passes nothing by itself";
    } else {
        r.verdict = verdict::within_limit;
        r.reason = use.words + ", under the stated conditions";
    }
}

// A contact without a sourced temperature limit is bad once its spots yield: beyond the softening drop it is not
// stable.
inline void judge_softening(part_result& r, const contact& c, const part_state& typical)
{
    if (r.verdict != verdict::not_judged) return;
    const voltage softening = softening_drop(c.metals, typical.mean);
    if (!(softening.value() > 0.0)) return;
    r.used = (typical.work_drop / softening).value();
    if (r.used > 1.0) {
        r.verdict = verdict::over_limit;
        r.reason = "drop " + to_text(typical.work_drop, "V") + " is above the softening drop of its metals, " +
                   to_text(softening, "V") + ": the spots yield and the contact is not stable";
    } else if ((r.drop.high / softening).value() > 1.0) {
        r.verdict = verdict::may_exceed;
        r.reason = "at the 95 % point of its scatter the drop passes the softening drop of its metals, " +
                   to_text(softening, "V");
    }
}

[[nodiscard]] inline band<voltage> total_of(const std::vector<part_result>& parts)
{
    double low = 0.0, typical = 0.0, high = 0.0;
    for (const part_result& p : parts) {
        const double t = p.drop.typical.value();
        low += (t - p.drop.low.value()) * (t - p.drop.low.value());
        high += (p.drop.high.value() - t) * (p.drop.high.value() - t);
        typical += t;
    }
    return {in_si<voltage>(std::max(0.0, typical - std::sqrt(low))), in_si<voltage>(typical),
            in_si<voltage>(typical + std::sqrt(high))};
}

// Good joints all round can leave a lead beside them a trifle warmer: its ends then stand the other way round.
template <class Q>
[[nodiscard]] band<Q> in_order(const Q& a, const Q& typical, const Q& c)
{
    return {std::min({a, typical, c}), typical, std::max({a, typical, c})};
}

inline void collect(std::vector<source>& all, const basis& b)
{
    for (const source* s : b.sources())
        if (std::find(all.begin(), all.end(), *s) == all.end()) all.push_back(*s);
}

}  // namespace detail

/// Assesses a station: solves its loop for the small, typical and large point of every joint's scatter, holds each part
/// against its limit, and says what is left for the arc.
///
/// The bands of single parts are those of all joints at once being good, typical or bad, which exaggerates the scatter
/// of leads between them a little; the band of the total drop adds the parts' scatter as independent.
/// An open part stops the current: then every drop is zero, every part is at the temperature of the air, and the
/// open part is the weakest.
/// @param s the station
/// @return finite values
/// @throws bad_station_error, out_of_range_error, not_finite_error for a station that cannot be
[[nodiscard]] inline assessment assess(const station& s)
{
    const std::size_t arc_at = checked_arc_index(s);
    const loop_state low = solve_loop(s, scatter::low);
    const loop_state typical = solve_loop(s, scatter::typical);
    const loop_state high = solve_loop(s, scatter::high);
    // a joint may be open at one end of its scatter only: then the typical solution stands for that end
    const loop_state& at_low = low.conducts ? low : typical;
    const loop_state& at_high = high.conducts ? high : typical;

    assessment out;
    out.name = s.name;
    out.conducts = typical.conducts;
    for (std::size_t i = 0; i < s.path.size(); ++i) {
        if (i == arc_at) continue;
        part_result r;
        r.name = name_of(s.path, i);
        r.kind = kind_of(s.path[i]);
        r.place = i;
        r.conducts = typical.parts[i].conducts;
        const part_state &good = at_low.parts[i], &usual = typical.parts[i], &bad = at_high.parts[i];
        r.drop = detail::in_order(good.drop, usual.drop, bad.drop);
        r.loss = detail::in_order(good.loss, usual.loss, bad.loss);
        r.peak = detail::in_order(good.peak, usual.peak, bad.peak);
        r.peak_temperature = r.peak.typical;
        if (usual.has_spots) r.hottest_spot = detail::in_order(good.hottest_spot, usual.hottest_spot, bad.hottest_spot);
        r.basis = typical.part_basis[i];
        const part_limit limit = limit_of(s.path[i], s.where);
        if (limit.peak_source != nullptr) r.basis.add(*limit.peak_source);
        if (limit.highest_source != nullptr) r.basis.add(*limit.highest_source);
        detail::judge(r, limit, typical.parts[i], s, typical.conducts);
        if (const auto* c = std::get_if<contact>(&s.path[i])) detail::judge_softening(r, *c, typical.parts[i]);
        if (const auto* w = std::get_if<work_connection>(&s.path[i]); w != nullptr && typical.conducts) {
            r.grip = grip_in_station(s, i);
            if (r.grip) r.basis.add(r.grip->basis);
        }
        out.wire_extension_drop.low += at_low.parts[i].extension_drop;
        out.wire_extension_drop.typical += typical.parts[i].extension_drop;
        out.wire_extension_drop.high += at_high.parts[i].extension_drop;
        detail::collect(out.sources, r.basis);
        out.parts.push_back(std::move(r));
    }
    if (out.conducts) {
        out.total_drop = detail::total_of(out.parts);
        const arc_share share = arc_share_of(s, out.total_drop);
        out.arc_voltage = share.arc;
        out.arc_basis = share.relative_to;
        out.headroom = share.headroom;
        basis own;
        own.add(independent_drops);
        if (share.from != nullptr) own.add(*share.from);
        detail::collect(out.sources, own);
    } else {
        out.arc_basis = "the circuit is open: no arc";
    }
    out.cautions = cautions_for(s, out);
    basis of_cautions;
    of_cautions.add(osha_1926_351).add(osha_1910_254).add(touch_threshold);
    detail::collect(out.sources, of_cautions);
    return out;
}

}  // namespace weldloop
