#pragma once
/// @file
/// The verdict on a part: what it has at each place against what is allowed there, its spots, its poor case.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/lead_in_part.hpp>
#include <weldloop/circuit/scattered_sum.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/covering_state.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/part_limit.hpp>
#include <weldloop/rating/solved_station.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// Share of a limit from which a part is called close to it.
inline constexpr double close_share = 0.9;
/// Probability of exceeding a limit from which a part may exceed it: more than one case in twenty.
inline constexpr double may_exceed_share = 0.05;

/// Whether some limit stands in a document that was read: one that is only recalled may condemn a part but passes
/// nothing by itself.
[[nodiscard]] inline bool some_limit_was_read(const std::vector<limit_use>& limits)
{
    return std::any_of(limits.begin(), limits.end(),
                       [](const limit_use& u) { return u.from->kind != source_kind::memory; });
}

namespace detail {

/// How much of a verdict is asked for.
enum class verdict_depth {
    alone,    // the verdict, without bands and words
    in_full,  // with its reason, its limits and their bands
};

/// Of may_exceed_share: a new crimp's 95 % point is its limit.
inline constexpr double share_rounding = 1e-6;

/// Share of an allowed rise that a temperature uses. Air at or above the limit leaves no allowed rise: any warmth is
/// past any limit.
[[nodiscard]] inline double share_of_rise(temperature peak, temperature limit, temperature air)
{
    constexpr double past_any_limit = 100.0;
    return limit > air ? std::min<double>((peak - air) / (limit - air), past_any_limit) : past_any_limit;
}

/// Probability that a resistance with a band lies above a limit.
[[nodiscard]] inline double probability_above(const band<resistance>& held, resistance limit)
{
    const double distance = std::log(static_cast<double>(limit / held.typical));
    const double end =
        std::fabs(std::log(static_cast<double>(distance > 0.0 ? held.high / held.typical : held.typical / held.low)));
    if (end == 0.0) return distance < 0.0 ? 1.0 : 0.0;
    return normal_share(-distance / end * band_deviations);
}

[[nodiscard]] inline limit_use use_of(const place_limit& limit, const solved_station& s, std::size_t part,
                                      verdict_depth depth)
{
    limit_use out;
    out.from = limit.from;
    const std::size_t node = s.node_of(part, limit.where);
    const temperature air = s.of().where.air;
    out.used = share_of_rise(s.at(s.typical_state().peak[node]), limit.highest, air);
    if (depth == verdict_depth::in_full) {
        out.at = to_text(limit.where);
        out.name = limit.name;
        out.limit = limit.highest;
        out.peak = s.peak_band(s.scatter_of().peak_of(node));
        out.used_high = share_of_rise(out.peak->high, limit.highest, air);
    }
    out.exceeds = limit.highest > air ? s.scatter_of().peak_above(node, (limit.highest - air).value()) : 1.0;
    return out;
}

[[nodiscard]] inline limit_use use_of(const resistance_limit& limit, std::string_view what)
{
    limit_use out;
    out.at = what;
    out.name = limit.name;
    out.from = limit.from;
    out.used = limit.held.typical / limit.highest;
    out.used_high = static_cast<double>(limit.held.high / limit.highest);
    out.exceeds = probability_above(limit.held, limit.highest);
    return out;
}

// "conductor 72.5 degC against 85 degC (conductor limit of its covering)"
[[nodiscard]] inline std::string words_of(const limit_use& u, const part_limits& limits)
{
    if (u.limit)
        return u.at + " typically " + to_text(u.peak->typical, "degC") + " against " + to_text(*u.limit, "degC") +
               " (" + u.name + ")";
    return u.at + " typically " + to_text(limits.crimp->held.typical, "uohm") + " cold against " +
           to_text(limits.crimp->highest, "uohm") + " (" + u.name + ")";
}

// Whether the bound of a place is the melting point of its metal.
[[nodiscard]] inline bool melts_there(part_place where)
{
    return where != part_place::spring && where != part_place::magnet;
}
[[nodiscard]] inline std::string bound_words(part_place where)
{
    if (where == part_place::spring) return "its spring would pass the tempering limit of its wire";
    if (where == part_place::magnet) return "its magnet would pass the temperature beyond which its pull is lost";
    return "the metal of its " + std::string(to_text(where)) + " would pass its melting point";
}

// What is known of the part as new: information, whatever its verdict.
inline void note_type_test(part_result& r, const part_limits& limits)
{
    if (limits.as_new)
        r.notes.push_back("A " + std::string(limits.as_new->name) + " allows " +
                          to_text(limits.as_new->highest, "uohm") + " at 20 degC; this one has typically " +
                          to_text(limits.as_new->held.typical, "uohm") + ".");
    for (const auto& rise : {limits.as_new_grip, limits.as_new_cable}) {
        if (!rise) continue;
        for (const place_result& p : r.places)
            if (p.what == rise->where)
                r.notes.push_back("A " + std::string(rise->name) + " allows " + to_text(rise->highest, "degC") +
                                  " in this air; here it is typically " + to_text(p.peak.typical, "degC") + ".");
    }
}

// What it carries beside what wear allows: as much heat as a steady current would make.
inline void note_wear(part_result& r, const part_limits& limits, const part_state& usual, const duty_cycle& duty)
{
    if (!limits.carries) return;
    const current steady = std::sqrt(static_cast<double>(duty.share())) * usual.current;
    if (steady > limits.carries->highest)
        r.notes.push_back("Its " + std::string(limits.carries->name) + " carry the heat of " + to_text(steady, "A") +
                          " without a break; they should carry " + to_text(limits.carries->highest, "A") +
                          " at most all the time (" + std::string(limits.carries->from->document) + ", " +
                          std::string(to_text(limits.carries->from->kind)) + ").");
}

// What was seen of a lead's covering, and a limit stated for it that its covering or strands do not stand.
inline void note_lead(part_result& r, const path_part& part)
{
    const cable* lead = lead_in(part);
    if (lead == nullptr) return;
    if (lead->covering_state != covering_state::whole)
        r.notes.push_back("Its covering is " + std::string(to_text(lead->covering_state)) +
                          ": the verdict is on its heat alone, and it is out of use until that is cured.");
    if (!is_limit_above_lead(*lead)) return;
    const conductor_limit limit = conductor_limit_of(*lead);
    r.notes.push_back("It is held against " + to_text(limit.highest, "degC") + ", as stated; a covering of " +
                      std::string(lead->covering.name) + " over " + std::string(lead->metal.name) + " stands " +
                      to_text(*limit.of_lead, "degC") + ".");
}

inline void judge(part_result& r, const solved_station& s, std::size_t i, verdict_depth depth = verdict_depth::in_full)
{
    const part_state &usual = s.typical().parts[i], &poor = s.poor().parts[i];
    const auto say = [&r, depth](verdict v, deciding_fact by, const auto& why) {
        r.verdict = v;
        r.decided_by = by;
        if (depth == verdict_depth::in_full) r.reason = why();
    };
    const part_limits limits = limits_of(part_as_placed(s.of(), i), s.of().where);
    if (limits.crimp) r.limits.push_back(use_of(*limits.crimp, "crimp"));
    if (s.is_solved())
        for (const place_limit& l : limits.places) r.limits.push_back(use_of(l, s, i, depth));
    // what may be exceeded by how often it is; what may not, by how much of it is used
    const auto often = [](const limit_use& u) {
        const double exceeds = static_cast<double>(u.exceeds);
        return exceeds > may_exceed_share * (1.0 + share_rounding) ? exceeds : 0.0;
    };
    std::stable_sort(r.limits.begin(), r.limits.end(), [&often](const limit_use& a, const limit_use& b) {
        return often(a) != often(b) ? often(a) > often(b) : a.used > b.used;
    });
    for (const limit_use& u : r.limits) r.basis.add(*u.from);
    const limit_use* deciding = r.limits.empty() ? nullptr : r.limits.data();
    if (deciding != nullptr) {
        r.limit = deciding->limit;
        r.limit_name = deciding->name;
        r.used = std::max(0.0, deciding->used);
        r.exceeds = deciding->exceeds;
        if (deciding->peak) {  // one temperature beside one limit: that of the place the limit is defined for
            r.peak = *deciding->peak;
            r.peak_temperature = r.peak.typical;
            for (const place_result& p : r.places)
                if (to_text(p.what) == deciding->at) r.peak_at = p.what;
        }
    }

    if ((s.outcome() == loop_outcome::open_circuit || s.is_solved()) && !r.conducts)
        return say(verdict::open_circuit, deciding_fact::no_contact,
                   [&] { return "no metal touches metal: no current can flow"; });
    if (s.is_solved() && usual.current == current{})
        return say(verdict::not_judged, deciding_fact::nothing,
                   [&] { return "it carries no current as things stand"; });
    if (usual.passes_bound && s.outcome() == loop_outcome::ends)
        return say(melts_there(*usual.passes_bound) ? verdict::spots_melting : verdict::over_limit,
                   deciding_fact::melting_part,
                   [&] { return bound_words(*usual.passes_bound) + " before the loop settles"; });
    if (!s.is_solved()) {
        if (deciding != nullptr && deciding->used > 1.0)
            return say(verdict::over_limit, deciding_fact::limit, [&] { return words_of(*deciding, limits); });
        return say(verdict::not_judged, deciding_fact::nothing, [&] {
            return s.outcome() == loop_outcome::open_circuit ? "no current flows: nothing to judge it by"
                                                             : "the loop has no steady state: nothing to judge it by";
        });
    }

    if (depth == verdict_depth::in_full) {
        note_type_test(r, limits);
        note_wear(r, limits, usual, s.of().job.duty);
        note_lead(r, part_as_placed(s.of(), i));
    }
    own_scatter own;
    std::string_view weak_contact, melting_contact;  // nearest to yielding in a poor case; at its melting drop then
    for (std::size_t k = 0; k < usual.contacts.size(); ++k) {
        const own_scatter at = s.scatter_of().own_of(i, k);
        if (weak_contact.empty() || at.softening_used_high > own.softening_used_high) {
            weak_contact = usual.contacts[k].what;
            own.yields = at.yields;
        }
        if (at.melts_high && melting_contact.empty()) melting_contact = usual.contacts[k].what;
        own.softening_used_high = std::max(own.softening_used_high, at.softening_used_high);
        own.melts_high = own.melts_high || at.melts_high;
    }
    // as it is typically: the one at its melting drop, else the one nearest to yielding
    const contact_state* worst = nullptr;
    for (const contact_state& c : usual.contacts)
        if (worst == nullptr || std::pair(c.melts, c.softening_used) > std::pair(worst->melts, worst->softening_used))
            worst = &c;
    r.exceeds = std::max(static_cast<double>(r.exceeds), own.yields);

    if (usual.spots_melt)
        return say(verdict::spots_melting, deciding_fact::spots, [&] {
            return "the drop of " + to_text(worst->drop, "V") + " over its " + std::string(worst->what) +
                   " is typically at the melting drop of its metals";
        });
    constexpr double one_half = 0.5;
    if (deciding != nullptr && (deciding->used > 1.0 || static_cast<double>(deciding->exceeds) > one_half))
        return say(verdict::over_limit, deciding_fact::limit,
                   [&] { return words_of(*deciding, limits) + "; exceeded " + cases_text(deciding->exceeds); });
    if (usual.softening_used > 1.0) {
        r.used = usual.softening_used;
        return say(verdict::over_limit, deciding_fact::spots, [&] {
            return "the drop over its " + std::string(worst->what) + " is typically " +
                   number_text(100.0 * usual.softening_used, 3) +
                   " % of the softening drop of its metals: the spots yield and the contact is not stable";
        });
    }
    if (own.melts_high)
        return say(verdict::may_exceed, deciding_fact::spots, [&] {
            return "at the 95 % point of its scatter the spots of its " + std::string(melting_contact) +
                   " are at their melting drop";
        });
    if (own.softening_used_high > 1.0)
        return say(verdict::may_exceed, deciding_fact::spots, [&] {
            return "its spots may yield, " + cases_text(own.yields) + ": at the 95 % point the drop over its " +
                   std::string(weak_contact) + " passes the softening drop of its metals";
        });
    if (deciding != nullptr && often(*deciding) > 0.0)
        return say(verdict::may_exceed, deciding_fact::limit,
                   [&] { return words_of(*deciding, limits) + "; exceeded " + cases_text(deciding->exceeds); });
    if (s.poor().outcome == loop_outcome::open_circuit && !poor.conducts)
        return say(verdict::may_exceed, deciding_fact::no_contact,
                   [&] { return "in a poor case no metal touches metal: an open circuit"; });
    if (poor.passes_bound)
        return say(verdict::may_exceed, deciding_fact::melting_part, [&] {
            return "with every joint at its 95 % point its " + std::string(to_text(*poor.passes_bound)) +
                   " passes what it bears before the loop settles";
        });
    if (deciding == nullptr) {
        if (usual.contacts.empty())
            return say(verdict::not_judged, deciding_fact::nothing,
                       [&] { return "no published limit for such a part"; });
        r.used = usual.softening_used;
        return say(verdict::within_limit, deciding_fact::spots, [&] {
            return "its spots stay below the softening drop of its metals, " +
                   number_text(100.0 * usual.softening_used, 2) + " % of it typically, " +
                   number_text(100.0 * own.softening_used_high, 2) +
                   " % at the 95 % point, under the stated conditions; no published temperature limit";
        });
    }
    if (deciding->used > close_share)
        return say(verdict::close_to_limit, deciding_fact::limit, [&] { return words_of(*deciding, limits); });
    if (!some_limit_was_read(r.limits))
        return say(verdict::not_judged, deciding_fact::limit, [&] {
            return words_of(*deciding, limits) + "; that limit is from memory and passes nothing by itself";
        });
    say(verdict::within_limit, deciding_fact::limit,
        [&] { return words_of(*deciding, limits) + ", under the stated conditions"; });
}

}  // namespace detail

}  // namespace weldloop
