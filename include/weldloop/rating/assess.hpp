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
#include <weldloop/rating/findings.hpp>
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

// A part at the three points of the scatter; an end without a solution counts as such, never as a number.
struct part_cases {
    const part_state& typical;
    const part_state& high;
    loop_outcome outcome, outcome_high;
};

inline void judge(part_result& r, const part_limit& limit, const part_cases& at, const station& s)
{
    const limit_use use = use_of(limit, r, s);
    r.limit = limit.peak;
    r.limit_name = limit.peak_name;
    r.used = std::max(0.0, use.used);
    const auto say = [&r](verdict v, std::string why) {
        r.verdict = v;
        r.reason = std::move(why);
    };
    if (at.outcome == loop_outcome::open_circuit && !r.conducts)
        return say(verdict::open_circuit, "no metal touches metal: no current can flow");
    if (at.typical.metal_melts) return say(verdict::spots_melting, "its metal would pass its melting point");
    if (at.typical.spots_melt)
        return say(verdict::spots_melting,
                   "the drop of " + to_text(r.drop.typical, "V") + " is at the melting drop of its metals");
    if (at.outcome != loop_outcome::solved && !(use.used > 1.0))
        return say(verdict::not_judged, at.outcome == loop_outcome::open_circuit
                                            ? "no current flows: nothing to judge it by"
                                            : "the loop has no steady state: nothing to judge it by");

    const bool poor_is_open = at.outcome_high == loop_outcome::open_circuit && !at.high.conducts;
    r.used = std::max(r.used, at.typical.softening_used);
    if (use.used > 1.0) return say(verdict::over_limit, use.words);
    if (at.typical.softening_used > 1.0)
        return say(verdict::over_limit,
                   "a drop in it is " + number_text(100.0 * at.typical.softening_used, 3) +
                       " % of the softening drop of its metals: the spots yield and the contact is "
                       "not stable");
    if (poor_is_open) return say(verdict::may_exceed, "in a poor case no metal touches metal: an open circuit");
    if (at.high.metal_melts) return say(verdict::may_exceed, "in a poor case its metal would pass its melting point");
    if (at.high.spots_melt)
        return say(verdict::may_exceed, "at the 95 % point of the scatter its spots are at their melting drop");
    if (at.high.softening_used > 1.0)
        return say(verdict::may_exceed, "at the 95 % point of the scatter a drop in it passes the softening drop of "
                                        "its metals");
    if (use.used_high > 1.0)
        return say(verdict::may_exceed, use.words + ", but above it at the 95 % point of the scatter");
    if (use.used < 0.0)
        return say(verdict::not_judged, r.hottest_spot
                                            ? "no published limit for such a contact; hottest spot typically " +
                                                  to_text(r.hottest_spot->typical, "degC")
                                            : "no published limit for such a part");
    if (at.outcome_high != loop_outcome::solved)
        return say(verdict::not_judged, "in a poor case the loop has no steady state; typically " + use.words);
    if (use.used > close_share) return say(verdict::close_to_limit, use.words);
    if (!use.sourced)
        return say(verdict::not_judged, use.words + "; that limit is from memory and passes nothing by itself");
    say(verdict::within_limit, use.words + ", under the stated conditions");
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
    for (const source* s : b.sources()) {
        const bool known =
            std::any_of(all.begin(), all.end(), [s](const source& k) { return to_text(k) == to_text(*s); });
        if (!known) all.push_back(*s);
    }
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
    // an end of the scatter may be open or without a steady state: then the verdicts say so, and the band ends at the
    // typical solution
    const loop_state& at_low = low.outcome == loop_outcome::solved ? low : typical;
    const loop_state& at_high = high.outcome == loop_outcome::solved ? high : typical;

    assessment out;
    out.name = s.name;
    out.outcome = typical.outcome;
    out.conducts = typical.outcome == loop_outcome::solved;
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
        detail::judge(r, limit, {typical.parts[i], high.parts[i], typical.outcome, high.outcome}, s);
        if (std::holds_alternative<work_connection>(s.path[i]) && out.conducts) {
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
        out.arc_basis =
            out.outcome == loop_outcome::open_circuit ? "the circuit is open: no arc" : "the loop has no steady state";
    }
    out.findings = findings_for(s, out, high.outcome);
    out.cautions = cautions_for(s, out);
    basis of_cautions;
    of_cautions.add(osha_1926_351).add(osha_1910_254).add(touch_threshold);
    detail::collect(out.sources, of_cautions);
    return out;
}

}  // namespace weldloop
