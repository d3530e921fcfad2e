#pragma once
/// @file
/// Code ratings of leads as published, and every rule that applies to a lead side by side.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/code_tables.hpp>

namespace weldloop {

/// What a code table says of a size.
struct code_ampacity {
    current amps;                  ///< [A] without a break, corrected for the air
    current in_table;              ///< [A] as printed, in the air of the table
    temperature column;            ///< conductor temperature of the column
    double air_factor = 1.0;       ///< ambient_factor() from the air of the table
    bool recalled = false;         ///< the cell was recalled, not read: it may condemn but not pass a lead
    const source* from = nullptr;  ///< where it stands
};

/// The code rating of a size: the cell of the hottest column that is no hotter than the limit, times
/// sqrt((Tc - Ta)/(Tc - To)), To the air of the table, which the codes' own factors follow within 0.012.
///
/// ampacity_of() of a lead of nominal resistance, alone in still air, lies 9 to 21 % above the tables, most in the 90
/// degC column (1 % less at the highest resistance); that is history and margin, and nothing is tuned to it. Nothing is
/// interpolated: a size that the table does not name has no code rating.
/// @param table which one @param size as written: 2/0, not its square millimetres
/// @param limit of the conductor; a lead of 85 degC takes the 75 degC column
/// @param in_air around it, default that of the table @return none where the table has no such size or column, or where
/// the air is as hot as the column
[[nodiscard]] inline std::optional<code_ampacity> code_ampacity_of(code_table table, const conductor_size& size,
                                                                   temperature limit,
                                                                   std::optional<temperature> in_air = std::nullopt)
{
    const temperature air = in_air.value_or(air_of(table));
    const code_cell* best = nullptr;
    for (const code_cell& cell : cells_of(table))
        if (cell.size == size && temperature::celsius(cell.limit_degC) <= limit &&
            (best == nullptr || cell.limit_degC > best->limit_degC))
            best = &cell;
    if (best == nullptr || air >= temperature::celsius(best->limit_degC)) return std::nullopt;
    code_ampacity out;
    out.in_table = in_si<current>(best->amps);
    out.column = temperature::celsius(best->limit_degC);
    out.air_factor = ambient_factor(out.column, air_of(table), air);
    out.amps = out.air_factor * out.in_table;
    out.recalled = best->verified == source_kind::memory;
    out.from = &source_of(table, *best);
    return out;
}

/// A rule that gives a lead a current.
enum class rating_rule {
    physics,            ///< ampacity_of(): the conductor's peak at its limit
    guide_square_root,  ///< the continuous rating and the square root of the duty, as cable guides print it
    code_400_5,         ///< NFPA 70 table 400.5(A)(2)
    code_310_17,        ///< NFPA 70 table 310.17
    iec_60364,          ///< IEC 60364-5-52 methods F and G, fixed wiring
    ship_bv,            ///< ship rules of Bureau Veritas, at most six bunched
    ship_abs,           ///< ship rules of ABS
    guide_bs_638_4,     ///< guide ratings of BS 638-4, recalled
};

/// Every rule, in the order of the enumeration.
inline constexpr std::array all_rating_rules{
    rating_rule::physics,   rating_rule::guide_square_root, rating_rule::code_400_5, rating_rule::code_310_17,
    rating_rule::iec_60364, rating_rule::ship_bv,           rating_rule::ship_abs,   rating_rule::guide_bs_638_4};

/// The words for a rule.
[[nodiscard]] constexpr std::string_view to_text(rating_rule rule)
{
    switch (rule) {
    case rating_rule::physics: return "physics";
    case rating_rule::guide_square_root: return "guide, square root";
    case rating_rule::code_400_5: return "NFPA 70 table 400.5";
    case rating_rule::code_310_17: return "NFPA 70 table 310.17";
    case rating_rule::iec_60364: return "IEC 60364-5-52 table B.52.12";
    case rating_rule::ship_bv: return "Bureau Veritas ship rules";
    case rating_rule::ship_abs: return "ABS ship rules";
    case rating_rule::guide_bs_638_4: return "BS 638-4 guide";
    }
    return "physics";
}

/// Whether a rule governs a lead that is not named one: fixed wiring, ships and the recalled guide have their own
/// field, and stand beside the others until the caller names them. @param rule which
[[nodiscard]] constexpr bool governs_unnamed(rating_rule rule)
{
    return rule == rating_rule::physics || rule == rating_rule::guide_square_root || rule == rating_rule::code_400_5 ||
           rule == rating_rule::code_310_17;
}

/// The guide rating of a metric size at a duty: the column of the next larger share of the period, times the factor of
/// the air, sqrt((85 degC - Ta)/60 K). Recalled: it may condemn but not pass a lead.
/// @param size in square millimetres @param duty share of the period; the period is that of the guide, 5 min, or longer
/// @param air around it
/// @return none where the guide has no such size, for a period other than its own where there is a rest, and where the
/// air is as hot as the conductor
[[nodiscard]] inline std::optional<code_ampacity> guide_rating_of(const conductor_size& size, const duty_cycle& duty,
                                                                  temperature air = guide_air)
{
    if (size.scale() != size_scale::square_mm || air >= guide_limit) return std::nullopt;
    if (!duty.is_continuous() && duty.period() != guide_period) return std::nullopt;
    const auto* const row = std::find_if(bs_638_4_ratings.begin(), bs_638_4_ratings.end(),
                                         [&](const guide_row& r) { return r.area_mm2 == size.number(); });
    if (row == bs_638_4_ratings.end()) return std::nullopt;
    constexpr double rounding = 1e-9;  // a share of 60 % is that of the column
    const double percent = 100.0 * static_cast<double>(duty.share()) * (1.0 - rounding);
    std::size_t column = 0;
    while (column + 1 < guide_duties.size() && guide_duties[column] < percent) ++column;
    code_ampacity out;
    out.in_table = in_si<current>(row->amps[column]);
    out.column = guide_limit;
    out.air_factor = ambient_factor(guide_limit, guide_air, air);
    out.amps = out.air_factor * out.in_table;
    out.recalled = true;
    out.from = &bs_638_4_guide;
    return out;
}

/// The table of IEC 60364-5-52 for a lay; none where it has none. @param lies how leads lie
[[nodiscard]] constexpr std::optional<code_table> fixed_wiring_table_of(lay lies)
{
    switch (lies) {
    case lay::touching_pair: return code_table::iec_60364_pair;
    case lay::three_flat: return code_table::iec_60364_three_flat;
    case lay::trefoil: return code_table::iec_60364_trefoil;
    case lay::spaced: return code_table::iec_60364_spaced;
    default: return std::nullopt;
    }
}

/// What one rule allows.
struct rule_rating {
    rating_rule rule;       ///< which
    current amps;           ///< [A] at the duty and in the air asked about
    double over_physics;    ///< share by which it lies above (or, negative, below) the physics
    bool recalled = false;  ///< rests on a number that was recalled: it may condemn but not pass a lead
    const source* from;     ///< where the rule stands
};

/// Every rule that applies to a lead.
struct lead_ratings {
    std::vector<rule_rating> rules;  ///< in the order of rating_rule
    rule_rating governing;           ///< the lowest, or the one the caller named
    bool named = false;              ///< the caller named it
    weldloop::basis basis;           ///< sources, and ranges left
};

/// Every rule that applies to a lead, the lowest governing unless the caller names one.
///
/// - physics: ampacity_of(), any lead;
/// - guide: equal_heating_current() of the continuous rating, any lead; above the physics wherever there is a rest;
/// - code: code_ampacity_of(), only for copper in a size the table names, lying alone or spaced, with a limit of 60
/// degC
///   or more. The code's duty multipliers (630.11(A)) are for supply conductors: a lead gets no credit for its rest, so
///   that at low duty the code governs by far; name another rule where the code does not bind. Damage, wind, sun and
///   altitude are unknown to it;
/// - IEC 60364-5-52 (a limit of 90 degC, a lay it has), the ship rules (any lay but a coil) and BS 638-4 (recalled; 85
///   degC, alone or spaced, its own period of 5 min), all for copper of metric sizes: they stand beside the others and
///   govern only where they are named, see governs_unnamed().
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param duty default continuous
/// @param named the rule that is to govern; none for the lowest
/// @throws as ampacity_of(); missing_data_error where the named rule does not apply to the lead
[[nodiscard]] inline lead_ratings ratings_of(const cable& lead, const surroundings& where,
                                             duty_cycle duty = duty_cycle::continuous(),
                                             std::optional<rating_rule> named = std::nullopt)
{
    const ampacity rated = ampacity_of(lead, where, duty);
    std::vector<rule_rating> rules;
    const auto add = [&](rating_rule rule, current amps, bool recalled, const source& from) {
        rules.push_back({rule, amps, static_cast<double>(amps / rated.amps) - 1.0, recalled, &from});
    };
    add(rating_rule::physics, rated.amps, false, covering_points_model);
    add(rating_rule::guide_square_root, rated.by_square_root, false, square_root_duty_rule);
    const lay lies = lead.lay.value_or(where.lay);
    const bool is_copper = lead.metal == annealed_copper || lead.metal == tinned_copper;
    const auto by_code = [&](rating_rule rule, code_table table) {
        if (const auto code = code_ampacity_of(table, lead.size, limit_of(lead), where.air))
            add(rule, code->amps, code->recalled, *code->from);
    };
    if (is_copper && (lies == lay::alone || lies == lay::spaced)) {
        by_code(rating_rule::code_400_5, code_table::nfpa_70_400_5);
        by_code(rating_rule::code_310_17, code_table::nfpa_70_310_17);
    }
    if (is_copper) {
        if (const auto table = fixed_wiring_table_of(lies)) by_code(rating_rule::iec_60364, *table);
        if (lies != lay::coiled) {
            by_code(rating_rule::ship_bv, code_table::ship_bv);
            by_code(rating_rule::ship_abs, code_table::ship_abs);
        }
        if ((lies == lay::alone || lies == lay::spaced) && limit_of(lead) >= guide_limit)
            if (const auto guide = guide_rating_of(lead.size, duty, where.air))
                add(rating_rule::guide_bs_638_4, guide->amps, true, *guide->from);
    }
    auto governing = std::min_element(rules.begin(), rules.end(), [](const rule_rating& a, const rule_rating& b) {
        return std::pair(!governs_unnamed(a.rule), a.amps) < std::pair(!governs_unnamed(b.rule), b.amps);
    });
    if (named) {
        governing = std::find_if(rules.begin(), rules.end(), [&](const rule_rating& r) { return r.rule == *named; });
        if (governing == rules.end())
            throw missing_data_error("rating rule", std::string(to_text(*named)) + " for " + to_text(lead.size),
                                     "physics, the guide rule, or a table that has this size of copper, this lay, "
                                     "limit and duty");
    }
    weldloop::basis from = rated.basis;
    for (const rule_rating& r : rules) from.add(*r.from);
    if (rules.size() > 2) from.add(ambient_factor_rule);
    const rule_rating decides = *governing;
    return {std::move(rules), decides, named.has_value(), from};
}

}  // namespace weldloop
