#pragma once
/// @file
/// The smallest lead that stays cool enough and loses little enough voltage.

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/resistance_choice.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/code_rating.hpp>
#include <weldloop/rating/lead/drop.hpp>

namespace weldloop {

/// Sizes to choose from.
enum class size_family {
    american,  ///< 8 AWG to 500 kcmil, as listed by ASTM B172
    metric,    ///< 10 to 240 mm2, nominal sizes of IEC 60228
};

/// What decides the size of a lead.
enum class lead_limit {
    heat,  ///< the conductor's temperature limit
    drop,  ///< the allowed voltage drop
    rule,  ///< the rating rule that was named
};

/// The word for what decides.
[[nodiscard]] constexpr std::string_view to_text(lead_limit l)
{
    switch (l) {
    case lead_limit::heat: return "heat";
    case lead_limit::drop: return "drop";
    case lead_limit::rule: return "rule";
    }
    return "heat";
}

/// What a loop may take where the station names no limit of its own.
inline constexpr source usual_loop_drop{
    "AWS Welding Handbook and the safety standard after it, as described in a trade article", "1938 to 1942",
    "4 V in both leads, basis of its table of lead sizes", source_kind::handbook};
/// [V], see usual_loop_drop.
inline constexpr voltage usual_allowed_drop = in_si<voltage>(4.0);

/// One lead's share of what a loop may take.
inline constexpr source usual_lead_share{
    "this library: half of it for one lead, its twin carries the current back", {}, {}, source_kind::judgement};
/// [V], see usual_lead_share.
inline constexpr voltage usual_lead_drop = 0.5 * usual_allowed_drop;

/// What is asked of a lead.
struct lead_request {
    weldloop::length length;                        ///< [m] of one lead, above 0
    weldloop::current current;                      ///< [A] while the arc burns, above 0
    duty_cycle duty = duty_cycle::continuous();     ///< time under current
    surroundings where = {};                        ///< air, wind, lay, altitude, sun
    std::optional<voltage> allowed_drop = {};       ///< [V] along the hot lead, above 0; none: see drop_allowed()
    bool both_leads = false;                        ///< out and back leads of this length share the allowed drop
    size_family family = size_family::american;     ///< sizes to choose from
    std::optional<temperature> limit = {};          ///< of the conductor, as cable::limit
    weldloop::metal metal = annealed_copper;        ///< of the strands
    weldloop::covering covering = flexible_rubber;  ///< around them
    resistance_choice resistance = resistance_choice::standard_maximum;  ///< nominal, or the highest allowed
    std::optional<rating_rule> rule = {};  ///< a rule the lead must keep beside the physics; sizes it does not have are
                                           ///< passed over

    /// What may be lost [V]: as stated, else usual_allowed_drop along both leads and half of it along one.
    [[nodiscard]] voltage drop_allowed() const
    {
        return allowed_drop.value_or(both_leads ? usual_allowed_drop : usual_lead_drop);
    }
};

/// The smallest lead that satisfies a request.
struct lead_choice {
    weldloop::cable cable;                      ///< the lead, its length that of the request
    lead_limit governed_by = lead_limit::heat;  ///< which limit the next smaller size fails, or fails by more
    ampacity rated;                             ///< what the lead may carry at this duty
    std::optional<rule_rating> by_rule = {};    ///< what the named rule allows it
    cable_heating heating;                      ///< how hot it gets
    voltage drop;                               ///< [V] along it when hot, along both where both were asked for
    current current_margin;                     ///< [A] rated, by physics and the named rule, less asked, 0 or above
    voltage drop_margin;                        ///< [V] allowed less lost, 0 or above
    weldloop::basis basis;                      ///< sources, and ranges left
};

/// American sizes of leads, small to large.
inline constexpr std::array american_lead_sizes{awg(8),     awg(6),     awg(4),     awg(3),    awg(2),     awg(1),
                                                aught(1),   aught(2),   aught(3),   aught(4),  kcmil(250), kcmil(300),
                                                kcmil(350), kcmil(400), kcmil(450), kcmil(500)};
/// Metric sizes of leads, small to large.
inline constexpr std::array metric_lead_sizes{square_mm(10),  square_mm(16),  square_mm(25), square_mm(35),
                                              square_mm(50),  square_mm(70),  square_mm(95), square_mm(120),
                                              square_mm(150), square_mm(185), square_mm(240)};

/// The sizes of a family, small to large.
[[nodiscard]] constexpr std::span<const conductor_size> sizes_of(size_family family)
{
    if (family == size_family::metric) return metric_lead_sizes;
    return american_lead_sizes;
}

namespace detail {

/// A size tried for a request: what it uses of each limit, 1 where it just keeps it.
struct tried_lead {
    weldloop::cable cable;
    cable_heating heating;
    voltage drop;  // along one lead
    std::optional<rule_rating> by_rule;
    double heat_use = 0.0, rule_use = 0.0;
};

/// The lead of a size as a request wants it. @throws missing_data_error for a size outside the table
[[nodiscard]] inline cable requested_lead(const lead_request& r, const conductor_size& size)
{
    cable out = welding_cable(size, r.length, r.resistance);
    out.limit = r.limit;
    out.metal = r.metal;
    out.covering = r.covering;
    return out;
}

/// One size tried; none where the named rule does not have it.
[[nodiscard]] inline std::optional<tried_lead> tried(const lead_request& r, const conductor_size& size)
{
    tried_lead out{requested_lead(r, size), {}, {}, {}};
    const temperature limit = limit_of(out.cable);
    if (r.rule) {
        const lead_ratings all = ratings_of(out.cable, r.where, r.duty);
        for (const rule_rating& rated : all.rules)
            if (rated.rule == *r.rule) out.by_rule = rated;
        if (!out.by_rule) return std::nullopt;
        out.rule_use = static_cast<double>(r.current / out.by_rule->amps);
    }
    out.heating = heating_of(out.cable, r.where, {.current = r.current, .duty = r.duty});
    out.drop = drop_of(out.cable, r.current, out.heating.conductor_mean);
    out.heat_use = (out.heating.conductor_peak - r.where.air) / (limit - r.where.air);
    return out;
}

[[nodiscard]] inline bool keeps_heat_and_rule(const tried_lead& t)
{
    return t.heating.conductor_peak <= limit_of(t.cable) && t.rule_use <= 1.0;
}

inline void require_request(const lead_request& r)
{
    require_positive(r.length, "lead length");
    require_positive(r.current, "current");
    const temperature limit = limit_of(requested_lead(r, sizes_of(r.family).front()));
    if (r.where.air >= limit)
        throw out_of_range_error("air temperature", to_text(r.where.air, "degC"),
                                 "below the limit of " + to_text(limit, "degC"));
}

/// What a lead that was tried may carry by physics and rule.
[[nodiscard]] inline current rated_by_all(const tried_lead& t, const ampacity& physics)
{
    return t.by_rule ? std::min(physics.amps, t.by_rule->amps) : physics.amps;
}

/// Leads side by side that a refusal still names.
inline constexpr int most_leads_named = 12;

/// How many leads of a size, laid apart and of one length, would satisfy a request together; 0: not even
/// most_leads_named of them.
[[nodiscard]] inline int leads_that_would_do(const lead_request& request, const conductor_size& size,
                                             double leads_in_row)
{
    lead_request each = request;
    for (int count = 2; count <= most_leads_named; ++count) {
        each.current = request.current / static_cast<double>(count);
        const std::optional<tried_lead> one = tried(each, size);
        if (one && keeps_heat_and_rule(*one) && leads_in_row * one->drop <= request.drop_allowed()) return count;
    }
    return 0;
}

/// No size of a series does: what the largest one carries and loses, and how many of them would. A temperature it would
/// never live to is not said.
[[noreturn]] inline void refuse_every_size(const lead_request& r, const tried_lead* largest, double leads_in_row)
{
    const std::string limit = to_text(limit_of(requested_lead(r, sizes_of(r.family).front())), "degC");
    if (largest == nullptr)
        throw no_solution_error("lead size",
                                r.rule ? "no size has a rating by " + std::string(to_text(*r.rule)) : "no size tried",
                                "a rule that has the sizes of the series");
    const conductor_size& size = largest->cable.size;
    std::string value = "beyond the largest of the series, " + to_text(size);
    const char* between = ", which ";
    if (largest->heating.conductor_peak > limit_of(largest->cable)) {
        value += between + std::string("carries ") + to_text(ampacity_of(largest->cable, r.where, r.duty).amps, "A") +
                 " of " + to_text(r.current, "A") + " at this duty";
        between = " and ";
    }
    if (largest->rule_use > 1.0 && largest->by_rule) {
        value += between + std::string("is allowed ") + to_text(largest->by_rule->amps, "A") + " by the rule";
        between = " and ";
    }
    // at its limit of heat at the most: hotter it is not used
    const voltage drop = leads_in_row * drop_of(largest->cable, r.current,
                                                std::min(largest->heating.conductor_mean, limit_of(largest->cable)));
    if (drop > r.drop_allowed())
        value += between + std::string("loses ") + to_text(drop, "V") + " of " + to_text(r.drop_allowed(), "V");
    std::string allowed = "less current, duty or length, or more volts, with at most " + limit + " at the conductor";
    if (const int count = leads_that_would_do(r, size, leads_in_row); count > 0)
        allowed += "; " + std::to_string(count) + " leads of " + to_text(size) +
                   " side by side would do, of one length and laid apart, each with lugs of its own on the same studs";
    throw no_solution_error("lead size", value, allowed);
}

}  // namespace detail

/// The smallest lead of a family whose conductor stays at or below the limit, whose drop when hot stays at or below the
/// allowed one, and that keeps the named rule.
///
/// All are calculated for each size from the smallest up: the conductor's peak by heating_of(), the drop by drop_of()
/// at its mean over the arc-on time, the rule by ratings_of(). `governed_by` names the limit that the next smaller size
/// fails; where it fails several, the one it fails by the largest share. For the smallest size of the family it names
/// the limit that is nearest.
/// @param request length, current and allowed drop above 0; air below the limit
/// @throws not_finite_error, out_of_range_error; no_solution_error when none suffices, naming the largest size, what it
/// carries and loses, and how many of them side by side would do, and when the named rule has none of the family
[[nodiscard]] inline lead_choice smallest_lead(const lead_request& request)
{
    detail::require_request(request);
    require_positive(request.drop_allowed(), "allowed drop");
    const double leads = request.both_leads ? 2.0 : 1.0;
    double heat_use = 0.0, drop_use = 0.0, rule_use = 0.0;  // of the size before: share of each limit that is used up
    bool is_first = true;
    std::optional<detail::tried_lead> largest;
    for (const conductor_size& size : sizes_of(request.family)) {
        const std::optional<detail::tried_lead> now = detail::tried(request, size);
        if (!now) continue;
        const voltage drop = leads * now->drop;
        const double drop_now = drop / request.drop_allowed();
        if (is_first || !(detail::keeps_heat_and_rule(*now) && drop <= request.drop_allowed())) {
            heat_use = now->heat_use;
            drop_use = drop_now;
            rule_use = now->rule_use;
        }
        if (detail::keeps_heat_and_rule(*now) && drop <= request.drop_allowed()) {
            const ampacity rated = ampacity_of(now->cable, request.where, request.duty);
            const double most = std::max({heat_use, drop_use, rule_use});
            return {.cable = now->cable,
                    .governed_by = rule_use == most && rule_use > 0.0 ? lead_limit::rule
                                   : heat_use == most                 ? lead_limit::heat
                                                                      : lead_limit::drop,
                    .rated = rated,
                    .by_rule = now->by_rule,
                    .heating = now->heating,
                    .drop = drop,
                    .current_margin = detail::rated_by_all(*now, rated) - request.current,
                    .drop_margin = request.drop_allowed() - drop,
                    .basis = weldloop::basis(now->heating.basis).add(rated.basis)};
        }
        is_first = false;
        largest = now;
    }
    detail::refuse_every_size(request, largest ? &*largest : nullptr, leads);
}

/// Electrode and work lead, chosen together.
struct lead_pair_choice {
    lead_choice electrode;  ///< out; `governed_by`, margins of heat and rule are its own
    lead_choice work;       ///< back
    voltage drop;           ///< [V] along both when hot
    voltage drop_margin;    ///< [V] allowed less lost, 0 or above
    volume metal;           ///< [m3] of both leads together, the least that does
};

/// The two leads, each of its own length, air and lay, that keep one allowed drop together with the least metal.
///
/// Every pair of sizes is compared; each lead keeps its own limit of heat and its own rule. Of pairs of equal metal the
/// one that loses less is taken.
/// @param electrode what is asked of the one; its own allowed drop and `both_leads` do not count
/// @param work the same of the other
/// @param allowed_drop [V] along both, above 0
/// @throws not_finite_error, out_of_range_error; no_solution_error where no pair does
[[nodiscard]] inline lead_pair_choice smallest_leads(const lead_request& electrode, const lead_request& work,
                                                     voltage allowed_drop)
{
    require_positive(allowed_drop, "allowed drop");
    const auto fit = [](const lead_request& r) {
        detail::require_request(r);
        std::vector<detail::tried_lead> out;
        for (const conductor_size& size : sizes_of(r.family))
            if (const auto t = detail::tried(r, size); t && detail::keeps_heat_and_rule(*t)) out.push_back(*t);
        if (out.empty())
            throw no_solution_error("lead size", "none keeps heat and rule at " + to_text(r.current, "A"),
                                    "a smaller current or duty, or another rule");
        return out;
    };
    const std::vector<detail::tried_lead> outs = fit(electrode), backs = fit(work);
    const auto metal_of = [](const detail::tried_lead& t) -> volume { return t.cable.size.area() * t.cable.length; };
    const detail::tried_lead *out = nullptr, *back = nullptr;
    for (const detail::tried_lead& a : outs)
        for (const detail::tried_lead& b : backs) {
            if (a.drop + b.drop > allowed_drop) continue;
            const auto key = [&](const detail::tried_lead& x, const detail::tried_lead& y) {
                return std::pair(metal_of(x) + metal_of(y), x.drop + y.drop);
            };
            if (out == nullptr || key(a, b) < key(*out, *back)) {
                out = &a;
                back = &b;
            }
        }
    if (out == nullptr)
        throw no_solution_error("lead sizes",
                                "the largest lose " + to_text(voltage(outs.back().drop + backs.back().drop), "V"),
                                "at most " + to_text(allowed_drop, "V"));
    const voltage lost = out->drop + back->drop;
    const auto choice = [&](const lead_request& r, const detail::tried_lead& t,
                            const detail::tried_lead& smallest) -> lead_choice {
        const ampacity rated = ampacity_of(t.cable, r.where, r.duty);
        return {.cable = t.cable,
                .governed_by = &t != &smallest           ? lead_limit::drop
                               : t.rule_use > t.heat_use ? lead_limit::rule
                                                         : lead_limit::heat,
                .rated = rated,
                .by_rule = t.by_rule,
                .heating = t.heating,
                .drop = t.drop,
                .current_margin = detail::rated_by_all(t, rated) - r.current,
                .drop_margin = allowed_drop - lost,
                .basis = weldloop::basis(t.heating.basis).add(rated.basis)};
    };
    // the sizes that keep heat and rule stand small to large: one that is not the first is there for the drop
    return {choice(electrode, *out, outs.front()), choice(work, *back, backs.front()), lost, allowed_drop - lost,
            metal_of(*out) + metal_of(*back)};
}

}  // namespace weldloop
