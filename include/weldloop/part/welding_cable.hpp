#pragma once
/// @file
/// Flexible rubber-covered welding leads by size, and the resistance of a lead.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/iec_conductor_table.hpp>
#include <weldloop/part/resistance_choice.hpp>

namespace weldloop {

/// @name Sources of the lead table
/// @{
/// Overall diameters.
inline constexpr source bs_638_4_diameters{
    "Electric Cables Handbook (ed. Moore), BS 638-4:1979 cables", "3rd edition 1997",
    "appendix A9, table A9.1: overall diameter, mean of its limits", source_kind::handbook};
/// Conductor diameters.
inline constexpr source en_50525_2_81_diameters{
    "EN 50525-2-81 (IS 9857 for the covering)", "2011",
    "H01N2-D: conductor diameter from overall diameter and covering thickness", source_kind::memory};
/// Stranding of American leads.
inline constexpr source astm_b172{
    "ASTM B172", "2001a",
    "class K rope-lay: increment of mass and resistance by construction (agrees with published mass)",
    source_kind::memory};
/// Lay of metric conductors.
inline constexpr source iec_lay_judgement{
    "lay of metric conductors: 2 % in class 2, in class 5 and 6 that of the American rope-lay conductor of the area",
    "2026",
    {},
    source_kind::judgement};
/// @}

/// One row of the metric lead table.
struct lead_row {
    double area_mm2;      ///< nominal [mm2]
    double conductor_mm;  ///< diameter over the strands [mm]
    double overall_mm;    ///< diameter over the covering [mm]
    bool extrapolated;    ///< no published diameters: carried on from the two rows before
};

/// Metric leads. Overall diameter: mean of the BS 638-4 limits, 10 and 150 mm2 of H01N2-D; conductor diameter: H01N2-D;
/// 240 mm2 carries on the slope of the two rows before it. Their areas are rows of iec_conductors.
inline constexpr std::array lead_table{
    lead_row{10, 4.7, 8.7, false},    lead_row{16, 5.9, 10.15, false},   lead_row{25, 7.4, 11.5, false},
    lead_row{35, 8.8, 12.75, false},  lead_row{50, 10.45, 15.0, false},  lead_row{70, 12.45, 17.25, false},
    lead_row{95, 14.05, 19.5, false}, lead_row{120, 16.0, 21.5, false},  lead_row{150, 17.8, 23.8, false},
    lead_row{185, 19.6, 26.0, false}, lead_row{240, 22.09, 29.02, true},
};

namespace detail {

/// Stranding increment of a class K conductor by its construction.
[[nodiscard]] constexpr double class_k_increment(area section)
{
    // ASTM B172 changes the construction after these sizes: 7 x n, 19 x n, 7 x 7 x n, 19 x 7 x n
    if (section <= awg(4).area()) return 0.04;
    if (section <= aught(1).area()) return 0.05;
    if (section <= kcmil(300).area()) return 0.06;
    return 0.07;
}

struct lead_dimensions {
    double conductor, overall, increment;  // m, m, share
    bool interpolated, extrapolated;
};

// Straight lines in the logarithm of diameter over the logarithm of area, through the published rows.
[[nodiscard]] inline lead_dimensions lead_dimensions_at(double mm2)
{
    const auto increment_of = [](const lead_row& row) {
        const auto* const limit = std::find_if(iec_conductors.begin(), iec_conductors.end(),
                                               [&](const iec_conductor_row& c) { return c.area_mm2 == row.area_mm2; });
        return limit->flexible_ohm_per_km * 1e-3 * row.area_mm2 * 1e-6 / annealed_copper.resistivity.value() - 1.0;
    };
    for (const lead_row& row : lead_table)
        if (mm2 == row.area_mm2)
            return {row.conductor_mm * 1e-3, row.overall_mm * 1e-3, increment_of(row), false, row.extrapolated};
    std::size_t last = 0;  // published rows come first
    while (last + 1 < lead_table.size() && !lead_table[last + 1].extrapolated) ++last;
    std::size_t above = 1;
    while (above < last && lead_table[above].area_mm2 < mm2) ++above;
    const lead_row& a = lead_table[above - 1];
    const lead_row& b = lead_table[above];
    const double x = std::log(mm2 / a.area_mm2) / std::log(b.area_mm2 / a.area_mm2);
    const auto along = [x](double at_a, double at_b) { return at_a * std::pow(at_b / at_a, x); };
    const bool inside = x >= 0.0 && x <= 1.0;
    const double share = std::clamp(x, 0.0, 1.0);
    return {along(a.conductor_mm, b.conductor_mm) * 1e-3, along(a.overall_mm, b.overall_mm) * 1e-3,
            increment_of(a) + share * (increment_of(b) - increment_of(a)), inside, !inside};
}

}  // namespace detail

/// @name Sizes that welding_cable() covers
/// @{
inline constexpr conductor_size smallest_awg_lead = awg(8);            ///< in the American sizes
inline constexpr conductor_size largest_awg_lead = kcmil(500);         ///< in the American sizes
inline constexpr conductor_size smallest_metric_lead = square_mm(10);  ///< in square millimetres
inline constexpr conductor_size largest_metric_lead = square_mm(240);  ///< in square millimetres
/// @}

/// A flexible rubber-covered copper lead of a size, limit 85 degC.
///
/// Metric sizes have the published diameters. American sizes have diameters
/// interpolated in the logarithms between those (`dimensions_interpolated`; class K conductors come out within 6 % of
/// their approximate handbook diameters from 6 AWG to 250 kcmil, within 10 % outside) and the stranding increment of
/// ASTM B172, class K: 4 % to 4 AWG, 5 % to 1/0, 6 % to 300 kcmil, 7 % above. Below 10 and above 185 mm2 the diameters
/// are extrapolated (`dimensions_extrapolated`). A metric area that is no nominal size takes its increment between its
/// neighbours.
///
/// The resistance is the highest the size's standard allows: of metric sizes that of IEC 60228, 10 to 14 % above the
/// metal of the nominal area, of American sizes 2 % above nominal (recalled), 6 to 9 % above it. At equal area a metric
/// lead so has 2 to 6 % more resistance than an American one and carries 1 to 3 % less: its standard allows less metal.
/// Nominal is, for both, the metal of the area with its lay, equal at equal area.
/// @param size 8 AWG to 500 kcmil, or 10 to 240 mm2 @param one_way length [m], above 0
/// @param choice which resistance, default the highest
/// @throws missing_data_error for a size outside the table; not_finite_error, out_of_range_error for the length
[[nodiscard]] inline cable welding_cable(conductor_size size, length one_way,
                                         resistance_choice choice = resistance_choice::standard_maximum)
{
    require_positive(one_way, "lead length");
    const bool metric = size.scale() == size_scale::square_mm;
    if (metric ? size < smallest_metric_lead || size > largest_metric_lead
               : size < smallest_awg_lead || size > largest_awg_lead)
        throw missing_data_error("lead size", to_text(size), "8 AWG to 500 kcmil, or 10 to 240 mm2");
    const double mm2 = metric ? size.number() : size.area().value() * 1e6;
    const detail::lead_dimensions d = detail::lead_dimensions_at(mm2);
    cable out{.size = size, .length = one_way};
    out.conductor_diameter = in_si<length>(d.conductor);
    out.overall_diameter = in_si<length>(d.overall);
    const double lay = detail::class_k_increment(size.area());
    out.stranding_increment = choice == resistance_choice::nominal ? lay
                              : metric                             ? d.increment
                                                                   : (1.0 + lay) * (1.0 + astm_resistance_margin) - 1.0;
    out.made = {out.conductor_diameter, out.overall_diameter, out.stranding_increment, choice};
    out.dimensions_interpolated = d.interpolated;
    out.dimensions_extrapolated = d.extrapolated;
    return out;
}

/// Resistance per length of a lead where its strands are whole, R' = rho(T) (1 + increment)/A.
/// @param lead its metal, size and stranding increment (0 to 1) count @param t conductor temperature
/// @return [ohm/m]; class K tables (nominal) and IEC 60228 (highest) to their printed digits
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline resistance_per_length resistance_per_length_of(const cable& lead, temperature t)
{
    return conductor_resistance(lead.metal, lead.size.area(), lead.stranding_increment, t);
}

/// Resistance of a lead from end to end with its damage, R = R' ((L - Ld) + Ld/(1 - s)).
/// @param lead with a length above 0 and a damaged length of at most that @param t conductor temperature, taken as
/// uniform
/// @return [ohm]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline resistance resistance_of(const cable& lead, temperature t)
{
    return conductor_resistance(resistance_per_length_of(lead, t), lead.length, lead.missing_strands,
                                lead.damaged_length);
}

}  // namespace weldloop
