#pragma once
/// @file
/// What the numbers of a lead rest on: only what was used is named, and what the user stated is named as that.

#include <algorithm>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/iec_conductor_table.hpp>
#include <weldloop/part/resistance_choice.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// @name What the user stated of a lead
/// @{
/// Diameters.
inline constexpr source lead_dimensions_of_user{"dimensions stated for the lead", {}, {}, source_kind::stated};
/// Resistance above that of the metal's area.
inline constexpr source lead_increment_of_user{"stranding increment stated for the lead", {}, {}, source_kind::stated};
/// Heat and its conduction.
inline constexpr source lead_covering_of_user{"constants stated for the covering", {}, {}, source_kind::stated};
/// @}

namespace detail {

/// Adds what the stranding increment of a lead rests on, first of its sources but that of the metal.
inline void add_resistance_basis(basis& out, const cable& lead)
{
    if (lead.stranding_increment != lead.made.stranding_increment ||
        lead.made.conductor_diameter == weldloop::length{}) {
        out.add(lead_increment_of_user);
        return;
    }
    const bool nominal = lead.made.resistance == resistance_choice::nominal;
    if (lead.size.scale() == size_scale::square_mm) {
        out.add_new(nominal ? iec_lay_judgement : iec_60228_classes);
        return;
    }
    out.add(astm_b172);
    if (!nominal) out.add(astm_resistance_limit);
}

/// Whether a covering conducts heat as one of the table.
[[nodiscard]] inline bool is_conductivity_of_table(const covering& c)
{
    return std::any_of(all_coverings.begin(), all_coverings.end(),
                       [&](const covering& row) { return row.thermal_conductivity == c.thermal_conductivity; });
}

/// Whether a covering stores heat as one of the table.
[[nodiscard]] inline bool is_heat_of_table(const covering& c)
{
    return std::any_of(all_coverings.begin(), all_coverings.end(),
                       [&](const covering& row) { return row.heat_per_volume == c.heat_per_volume; });
}

/// Begins a list with the sources of a lead's numbers and its flags.
inline void begin_basis_of(basis& out, const cable& lead)
{
    if (lead.metal.electrical_source) out.add_new(*lead.metal.electrical_source);
    add_resistance_basis(out, lead);
    const source& conductivity =
        is_conductivity_of_table(lead.covering) ? iec_60287_2_1_table_1 : lead_covering_of_user;
    if (lead.conductor_diameter == lead.made.conductor_diameter && lead.overall_diameter == lead.made.overall_diameter)
        out.add_new(bs_638_4_diameters, en_50525_2_81_diameters, conductivity);
    else {
        if (lead.overall_diameter == lead.made.overall_diameter) out.add_new(bs_638_4_diameters);
        if (lead.conductor_diameter == lead.made.conductor_diameter) out.add_new(en_50525_2_81_diameters);
        out.add_new(lead_dimensions_of_user, conductivity);
    }
    if (lead.dimensions_interpolated) out.add(range_flag::dimension_interpolated);
    if (lead.dimensions_extrapolated) out.add(range_flag::dimension_extrapolated);
    if (is_limit_above_lead(lead)) out.add(range_flag::limit_above_covering);
}

[[nodiscard]] inline basis basis_of(const cable& lead)
{
    basis out;
    begin_basis_of(out, lead);
    return out;
}

}  // namespace detail

}  // namespace weldloop
