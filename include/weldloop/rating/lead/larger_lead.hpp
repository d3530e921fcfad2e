#pragma once
/// @file
/// A lead in another size, otherwise as it was: what a larger lead is that replaces one.
/// Source: welding_cable(); outside its sizes geometry, diameters with the root of the section.

#include <cmath>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/sizing.hpp>

namespace weldloop {

/// Whether welding_cable() covers a size.
[[nodiscard]] constexpr bool is_lead_size(const conductor_size& size)
{
    return size.scale() == size_scale::square_mm ? size >= smallest_metric_lead && size <= largest_metric_lead
                                                 : size >= smallest_awg_lead && size <= largest_awg_lead;
}

/// The family a size is written in.
[[nodiscard]] constexpr size_family family_of(const conductor_size& size)
{
    return size.scale() == size_scale::square_mm ? size_family::metric : size_family::american;
}

/// A lead of the same length, metal, covering, lay, limit and name in another size, with whole strands.
///
/// Diameters and stranding increment are those of welding_cable() where the lead is one; a lead of other make keeps
/// its increment, and its diameters go with those of welding_cable() from size to size, or with the root of the
/// section where that covers none of the two (`dimensions_interpolated`). An unknown diameter stays unknown.
/// @param lead what it replaces @param size the new one @throws as welding_cable()
[[nodiscard]] inline cable resized(const cable& lead, const conductor_size& size)
{
    cable out = lead;
    out.size = size;
    out.missing_strands = 0.0;
    out.damaged_length = {};
    out.covering_state = covering_state::whole;
    if (!is_lead_size(lead.size) || !is_lead_size(size)) {
        const double by = std::sqrt(static_cast<double>(size.area() / lead.size.area()));
        out.conductor_diameter *= by;
        out.overall_diameter *= by;
        out.dimensions_interpolated = true;
        return out;
    }
    const cable was = welding_cable(lead.size, lead.length, lead.made.resistance),
                is = welding_cable(size, lead.length, lead.made.resistance);
    const auto goes_with = [](length own, length from, length to) -> length {
        return own == from ? to : own * (to / from);
    };
    out.conductor_diameter = goes_with(lead.conductor_diameter, was.conductor_diameter, is.conductor_diameter);
    out.overall_diameter = goes_with(lead.overall_diameter, was.overall_diameter, is.overall_diameter);
    if (lead.stranding_increment == was.stranding_increment) out.stranding_increment = is.stranding_increment;
    const bool of_the_table =
        lead.conductor_diameter == was.conductor_diameter && lead.overall_diameter == was.overall_diameter;
    out.dimensions_interpolated = of_the_table ? is.dimensions_interpolated : true;
    out.dimensions_extrapolated = is.dimensions_extrapolated;
    out.made = is.made;
    return out;
}

}  // namespace weldloop
