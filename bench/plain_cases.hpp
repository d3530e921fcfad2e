#pragma once
// The library's parts as plain numbers for the twins, worked out before anything is counted or timed.
#include <algorithm>
#include <cstddef>
#include <string_view>
#include <vector>

#include <weldloop/law/force_law.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/contact.hpp>

#include "plain_joint.hpp"
#include "plain_lead.hpp"

namespace plain {

inline std::vector<lead> leads_of(const std::vector<weldloop::cable>& leads)
{
    std::vector<lead> out;
    for (const weldloop::cable& c : leads)
        out.push_back({c.size.area().value(), c.metal.resistivity.value(), c.stranding_increment,
                       c.conductor_diameter.value(), c.overall_diameter.value(), weldloop::limit_of(c).in_kelvin()});
    return out;
}

inline std::vector<conductor_of_any> conductors_of(const std::vector<weldloop::cable>& leads)
{
    std::vector<conductor_of_any> out;
    for (const weldloop::cable& c : leads)
        out.push_back({c.size.area().value(), c.metal.resistivity.value(), c.stranding_increment,
                       c.metal.temperature_coefficient.value()});
    return out;
}

// Metals by their number in the library's list, which finds them by name.
inline int number_of(std::string_view metal)
{
    const auto at = std::find_if(weldloop::all_metals.begin(), weldloop::all_metals.end(),
                                 [metal](const weldloop::metal& m) { return m.name == metal; });
    return static_cast<int>(at - weldloop::all_metals.begin());
}

inline joint_metal metal_of(const weldloop::metal& m)
{
    return {number_of(m.name),  m.resistivity.value(),   m.temperature_coefficient.value(),
            m.hardness.value(), m.softening.in_kelvin(), m.melting.in_kelvin()};
}

inline std::vector<joint> joints_of(const std::vector<weldloop::contact>& contacts)
{
    constants.clear();
    for (const auto& row : weldloop::detail::published_constants)
        constants.push_back({number_of(row.first), number_of(row.second), row.low, row.high});
    multipliers.assign(weldloop::all_surface_states.size(), {});
    for (std::size_t i = 0; i < multipliers.size(); ++i)
        if (const auto m = weldloop::resistance_multiplier(weldloop::all_surface_states[i]))
            multipliers[i] = {m->low, m->typical, m->high};
    std::vector<joint> out;
    for (const weldloop::contact& c : contacts)
        out.push_back({metal_of(c.metals.first), metal_of(c.metals.second), c.force.value(),
                       static_cast<int>(c.surface), 0.7, static_cast<double>(c.points)});
    return out;
}

}  // namespace plain
