#pragma once
/// @file
/// Code ratings of leads as published, and every rule that applies to a lead side by side.

#include <algorithm>
#include <array>
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
#include <weldloop/rating/ampacity.hpp>

namespace weldloop {

/// @name Sources of the code tables
/// @{
/// Flexible single conductors.
inline constexpr source nfpa_70_table_400_5{
    "NFPA 70", "2008 to 2017",
    "table 400.5(A)(2), type W and stage cable, single conductor in free air at 30 degC (as printed in a handbook of "
    "lighting; column letters from memory)",
    source_kind::standard};
/// Cells of the other table that were read.
inline constexpr source nfpa_70_table_310_17_read{
    "NFPA 70", "2023", "table 310.17, 75 degC, 6 and 4 AWG (in a worked feeder example)", source_kind::standard};
/// The other cells.
inline constexpr source nfpa_70_table_310_17{
    "NFPA 70", "2008 to 2023",
    "table 310.17, single insulated conductors in free air at 30 degC (from memory; equal to table 400.5 wherever both "
    "have a cell)",
    source_kind::memory};
/// @}

/// Air for which the code tables hold.
inline constexpr temperature code_table_air = temperature::celsius(30.0);

/// One cell of a code table.
struct code_cell {
    conductor_size size;   ///< as the table names it
    double limit_degC;     ///< column: highest conductor temperature [degC]
    double amps;           ///< [A] without a break, in air of 30 degC
    source_kind verified;  ///< `standard` where it was read, `memory` where recalled
};

/// NFPA 70 table 400.5(A)(2), the cells that were read.
inline constexpr std::array code_table_400_5{
    code_cell{awg(8), 75, 70, source_kind::standard},    code_cell{awg(8), 90, 80, source_kind::standard},
    code_cell{awg(6), 75, 95, source_kind::standard},    code_cell{awg(6), 90, 105, source_kind::standard},
    code_cell{awg(4), 60, 105, source_kind::standard},   code_cell{awg(4), 75, 125, source_kind::standard},
    code_cell{awg(4), 90, 140, source_kind::standard},   code_cell{awg(2), 60, 140, source_kind::standard},
    code_cell{awg(2), 75, 170, source_kind::standard},   code_cell{awg(2), 90, 190, source_kind::standard},
    code_cell{awg(1), 90, 220, source_kind::standard},   code_cell{aught(1), 60, 195, source_kind::standard},
    code_cell{aught(1), 75, 230, source_kind::standard}, code_cell{aught(1), 90, 260, source_kind::standard},
    code_cell{aught(2), 60, 225, source_kind::standard}, code_cell{aught(2), 75, 265, source_kind::standard},
    code_cell{aught(2), 90, 300, source_kind::standard}, code_cell{aught(3), 60, 260, source_kind::standard},
    code_cell{aught(3), 75, 310, source_kind::standard}, code_cell{aught(3), 90, 350, source_kind::standard},
    code_cell{aught(4), 60, 300, source_kind::standard}, code_cell{aught(4), 75, 360, source_kind::standard},
    code_cell{aught(4), 90, 405, source_kind::standard},
};

/// NFPA 70 table 310.17, copper. The 300 kcmil cell at 90 degC is 505 in editions to 2008.
inline constexpr std::array code_table_310_17{
    code_cell{awg(8), 60, 60, source_kind::memory},      code_cell{awg(8), 75, 70, source_kind::memory},
    code_cell{awg(8), 90, 80, source_kind::memory},      code_cell{awg(6), 60, 80, source_kind::memory},
    code_cell{awg(6), 75, 95, source_kind::standard},    code_cell{awg(6), 90, 105, source_kind::memory},
    code_cell{awg(4), 60, 105, source_kind::memory},     code_cell{awg(4), 75, 125, source_kind::standard},
    code_cell{awg(4), 90, 140, source_kind::memory},     code_cell{awg(3), 60, 120, source_kind::memory},
    code_cell{awg(3), 75, 145, source_kind::memory},     code_cell{awg(3), 90, 165, source_kind::memory},
    code_cell{awg(2), 60, 140, source_kind::memory},     code_cell{awg(2), 75, 170, source_kind::memory},
    code_cell{awg(2), 90, 190, source_kind::memory},     code_cell{awg(1), 60, 165, source_kind::memory},
    code_cell{awg(1), 75, 195, source_kind::memory},     code_cell{awg(1), 90, 220, source_kind::memory},
    code_cell{aught(1), 60, 195, source_kind::memory},   code_cell{aught(1), 75, 230, source_kind::memory},
    code_cell{aught(1), 90, 260, source_kind::memory},   code_cell{aught(2), 60, 225, source_kind::memory},
    code_cell{aught(2), 75, 265, source_kind::memory},   code_cell{aught(2), 90, 300, source_kind::memory},
    code_cell{aught(3), 60, 260, source_kind::memory},   code_cell{aught(3), 75, 310, source_kind::memory},
    code_cell{aught(3), 90, 350, source_kind::memory},   code_cell{aught(4), 60, 300, source_kind::memory},
    code_cell{aught(4), 75, 360, source_kind::memory},   code_cell{aught(4), 90, 405, source_kind::memory},
    code_cell{kcmil(250), 60, 340, source_kind::memory}, code_cell{kcmil(250), 75, 405, source_kind::memory},
    code_cell{kcmil(250), 90, 455, source_kind::memory}, code_cell{kcmil(300), 60, 375, source_kind::memory},
    code_cell{kcmil(300), 75, 445, source_kind::memory}, code_cell{kcmil(300), 90, 500, source_kind::memory},
    code_cell{kcmil(350), 60, 420, source_kind::memory}, code_cell{kcmil(350), 75, 505, source_kind::memory},
    code_cell{kcmil(350), 90, 570, source_kind::memory}, code_cell{kcmil(400), 60, 455, source_kind::memory},
    code_cell{kcmil(400), 75, 545, source_kind::memory}, code_cell{kcmil(400), 90, 615, source_kind::memory},
    code_cell{kcmil(500), 60, 515, source_kind::memory}, code_cell{kcmil(500), 75, 620, source_kind::memory},
    code_cell{kcmil(500), 90, 700, source_kind::memory},
};

/// A code table.
enum class code_table {
    nfpa_70_400_5,   ///< flexible cords and cables
    nfpa_70_310_17,  ///< building wire in free air
};

/// The cells of a table, sizes small to large.
[[nodiscard]] constexpr std::span<const code_cell> cells_of(code_table table)
{
    if (table == code_table::nfpa_70_400_5) return code_table_400_5;
    return code_table_310_17;
}

/// What a code table says of a size.
struct code_ampacity {
    current amps;                  ///< [A] without a break, corrected for the air
    current in_table;              ///< [A] as printed, air of 30 degC
    temperature column;            ///< conductor temperature of the column
    double air_factor = 1.0;       ///< ambient_factor() from 30 degC
    bool recalled = false;         ///< the cell was recalled, not read: it may condemn but not pass a lead
    const source* from = nullptr;  ///< where it stands
};

/// The code rating of a size: the cell of the hottest column that is no hotter than the limit, times
/// sqrt((Tc - Ta)/(Tc - 30 degC)), which the code's own factors follow within 0.012.
///
/// ampacity_of() of a lead of nominal resistance, alone in still air, lies 9 to 21 % above the tables, most in the 90
/// degC column (1 % less at the highest resistance); that is history and margin, and nothing is tuned to it. Nothing is
/// interpolated: a size that the table does not name has no code rating.
/// @param table which one @param size as written: 2/0, not its square millimetres
/// @param limit of the conductor; a lead of 85 degC takes the 75 degC column
/// @param air around it @return none where the table has no such size or column, or where the air is as hot as the
/// column
[[nodiscard]] inline std::optional<code_ampacity> code_ampacity_of(code_table table, const conductor_size& size,
                                                                   temperature limit, temperature air = code_table_air)
{
    const code_cell* best = nullptr;
    for (const code_cell& cell : cells_of(table))
        if (cell.size == size && temperature::celsius(cell.limit_degC) <= limit &&
            (best == nullptr || cell.limit_degC > best->limit_degC))
            best = &cell;
    if (best == nullptr || air >= temperature::celsius(best->limit_degC)) return std::nullopt;
    code_ampacity out;
    out.in_table = in_si<current>(best->amps);
    out.column = temperature::celsius(best->limit_degC);
    out.air_factor = ambient_factor(out.column, code_table_air, air);
    out.amps = out.air_factor * out.in_table;
    out.recalled = best->verified == source_kind::memory;
    if (table == code_table::nfpa_70_400_5)
        out.from = &nfpa_70_table_400_5;
    else
        out.from = out.recalled ? &nfpa_70_table_310_17 : &nfpa_70_table_310_17_read;
    return out;
}

/// A rule that gives a lead a current.
enum class rating_rule {
    physics,            ///< ampacity_of(): the conductor's peak at its limit
    guide_square_root,  ///< the continuous rating and the square root of the duty, as cable guides print it
    code_400_5,         ///< NFPA 70 table 400.5(A)(2)
    code_310_17,        ///< NFPA 70 table 310.17
};

/// Every rule, in the order of the enumeration.
inline constexpr std::array all_rating_rules{rating_rule::physics, rating_rule::guide_square_root,
                                             rating_rule::code_400_5, rating_rule::code_310_17};

/// The words for a rule.
[[nodiscard]] constexpr std::string_view to_text(rating_rule rule)
{
    switch (rule) {
    case rating_rule::physics: return "physics";
    case rating_rule::guide_square_root: return "guide, square root";
    case rating_rule::code_400_5: return "NFPA 70 table 400.5";
    case rating_rule::code_310_17: return "NFPA 70 table 310.17";
    }
    return "physics";
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
///   altitude are unknown to it.
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
        rules.push_back({rule, amps, (amps / rated.amps).value() - 1.0, recalled, &from});
    };
    add(rating_rule::physics, rated.amps, false, covering_points_model);
    add(rating_rule::guide_square_root, rated.by_square_root, false, square_root_duty_rule);
    const lay lies = lead.lay.value_or(where.lay);
    const bool is_copper = lead.metal.name == annealed_copper.name || lead.metal.name == tinned_copper.name;
    if (is_copper && (lies == lay::alone || lies == lay::spaced)) {
        const auto by_code = [&](rating_rule rule, code_table table) {
            if (const auto code = code_ampacity_of(table, lead.size, limit_of(lead), where.air))
                add(rule, code->amps, code->recalled, *code->from);
        };
        by_code(rating_rule::code_400_5, code_table::nfpa_70_400_5);
        by_code(rating_rule::code_310_17, code_table::nfpa_70_310_17);
    }
    auto governing = std::min_element(rules.begin(), rules.end(),
                                      [](const rule_rating& a, const rule_rating& b) { return a.amps < b.amps; });
    if (named) {
        governing = std::find_if(rules.begin(), rules.end(), [&](const rule_rating& r) { return r.rule == *named; });
        if (governing == rules.end())
            throw missing_data_error("rating rule", std::string(to_text(*named)) + " for " + to_text(lead.size),
                                     "physics, the guide rule, or a code table that names the size, for copper alone "
                                     "or spaced");
    }
    weldloop::basis from = rated.basis;
    for (const rule_rating& r : rules) from.add(*r.from);
    if (rules.size() > 2) from.add(ambient_factor_rule);
    const rule_rating decides = *governing;
    return {std::move(rules), decides, named.has_value(), from};
}

}  // namespace weldloop
