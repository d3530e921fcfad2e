#pragma once
/// @file
/// A lead as cells along its length, each a conductor and its covering: fine where heat comes in from the ends or a
/// damaged length, coarse in between. Solver adapter on plain doubles.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory>
#include <vector>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop {

/// How a lead is cut.
inline constexpr source lead_cells_model{"a lead as cells of conductor and covering: a quarter of its decay length at "
                                         "ends and damage, each 1.7 times the one "
                                         "before, half a cell of length h conducting k A/h (1 + sqrt(1 + (h/d)^2)); "
                                         "covering in three steps of the logarithm of "
                                         "its radius",
                                         "2026",
                                         "equal cells of this conductance pass the heat of a uniform fin of decay "
                                         "length d exactly; held against a march with "
                                         "finer cells and rings",
                                         source_kind::derived};

namespace detail {

/// Lengths of the cells of a stretch, small at both of its ends and growing to its middle [m].
/// @param whole length [m], above 0 @param decay length over which a disturbance falls to 1/e [m], above 0
[[nodiscard]] inline std::vector<double> graded_cells(double whole, double decay)
{
    constexpr double first = 0.25, growth = 1.7;  // see lead_cells_model
    constexpr double near = 3.0, fine = 0.6;      // decay lengths: so far from an end no cell is longer than that
    constexpr double longest = 40.0;              // decay lengths: beyond, nothing changes along the lead
    constexpr double most_of_a_half = 0.2;        // so that a short stretch between two bodies is cut as well
    std::vector<double> half;
    double left = 0.5 * whole, cell = std::min(first * decay, most_of_a_half * left);
    double cut = 0.0;  // by itself: of a lead far longer than its cells nothing is missing yet
    const auto is_near = [&] { return cut < near * decay; };
    while (left > 1.5 * cell && cell < longest * decay) {
        half.push_back(cell);
        left -= cell;
        cut += cell;
        cell = is_near() ? std::min(growth * cell, std::max(cell, fine * decay)) : growth * cell;
    }
    std::vector<double> out = half;
    const int middle = is_near() ? std::max(1, static_cast<int>(std::ceil(2.0 * left / (fine * decay)))) : 1;
    out.insert(out.end(), static_cast<std::size_t>(middle), 2.0 * left / middle);
    out.insert(out.end(), half.rbegin(), half.rend());
    return out;
}

/// A lead in a network.
struct lead_cells {
    using index = solve::heat_network::index;

    struct cell {
        index conductor = 0, surface = 0;
        double length = 0.0;                    // m
        double at_zero = 0.0, by_kelvin = 0.0;  // ohm at the reference, ohm/K
    };
    std::vector<cell> cells;
    double begin_conductance = 0.0, end_conductance = 0.0;  // W/K, from the lead's end to its first and last cell
};

/// Loss of a lead's surface over the rise of that surface, by that rise, sun left out: the law of a curve_table. Below
/// half the air's absolute temperature, where trials of a solver may stray and no law holds, it is what it is there.
[[nodiscard]] inline auto lead_surface_law(const cable& lead, const surroundings& where)
{
    return [kernel = surface_kernel(surface_of(lead, where))](double rise) {
        const double coldest = -0.5 * kernel.air(), at = std::max(rise, coldest);
        return kernel.loss(kernel.air() + at) / at;
    };
}

/// How far heat creeps along the lead, for the grading of its cells only [m]: at a rise of 50 K, without current.
[[nodiscard]] inline double grading_length(const cable& lead, const solve::curve_table& surface, double covering,
                                           double cooled)
{
    constexpr double usual_rise = 50.0;  // K
    const double by_surface = surface.at(usual_rise).value / usual_rise;
    const double loss = by_surface * covering / (by_surface + covering) + cooled;
    return std::sqrt((lead.metal.thermal_conductivity * lead.size.area()).value() / loss);
}

/// The same of a lead that no water cools, as a length [m].
[[nodiscard]] inline length grading_length_of(const cable& lead, const surroundings& where)
{
    require_dimensions(lead);
    return in_si<length>(grading_length(lead, solve::curve_table(lead_surface_law(lead, where)),
                                        conductor_of(lead).conductance.value(), 0.0));
}

/// Which ends of a lead touch something that heat comes from or goes to.
struct lead_ends {
    bool begin = true, end = true;
};

/// As graded_cells(), for a stretch that heat comes into at one end alone, or at none: half of one twice as long, small
/// at that end and growing to the other, past which nothing changes.
[[nodiscard]] inline std::vector<double> graded_cells(double whole, double decay, const lead_ends& joined)
{
    if (joined.begin && joined.end) return graded_cells(whole, decay);
    std::vector<double> out;
    if (!joined.begin && !joined.end) {
        out.push_back(whole);
        return out;
    }
    double left = whole;
    for (const double cell : graded_cells(2.0 * whole, decay)) {
        out.push_back(std::min(cell, left));
        left -= out.back();
        if (left <= 1e-9 * whole) break;
    }
    if (!joined.begin) std::reverse(out.begin(), out.end());
    return out;
}

/// Puts a lead into a network.
/// @param n to add to @param lead with its diameters @param where air around, which is the reference of the rises
/// @param surface of the lead, kept by the caller; heat of the current is the caller's to put in @param cooled to water
/// along the conductor [W/(m K)] @param joined which of its ends touch something
[[nodiscard]] inline lead_cells put_lead(solve::heat_network& n, const cable& lead, const surroundings& where,
                                         const solve::curve_table& surface, double cooled, const lead_ends& joined = {})
{
    require_dimensions(lead);
    // of the logarithm of the covering's radius, close to the conductor first: a short pulse comes no farther
    constexpr std::array<double, 4> places{0.0, 0.12, 0.5, 1.0};
    constexpr lead_cells::index nowhere = solve::heat_network::nowhere;
    const surface_kernel kernel(surface_of(lead, where));
    const double air = where.air.in_kelvin();
    const double melting = (conductor_melting_of(lead.metal) - where.air).value();
    const covered_conductor metre = conductor_of(lead);
    const double covering = metre.conductance.value();
    const double ratio = metre.diameter_ratio, squared = ratio * ratio - 1.0;
    const double axial = (lead.metal.thermal_conductivity * lead.size.area()).value();
    const double decay = grading_length(lead, surface, covering, cooled);
    // heat of the covering between two places of the logarithm of its radius, 0 to 1
    const auto stored = [&](double from, double to) {
        return metre.covering.value() * (std::pow(ratio, 2.0 * to) - std::pow(ratio, 2.0 * from)) / squared;
    };

    lead_cells out;
    const double missing = static_cast<double>(lead.missing_strands);
    const double damage = is_damaged(lead) ? lead.damaged_length.value() : 0.0;
    const double sound = 0.5 * (lead.length.value() - damage);
    struct stretch {
        double whole, metal_left;
    };
    std::vector<stretch> stretches;
    if (damage > 0.0) {
        if (sound > 0.0) stretches.push_back({sound, 1.0});
        stretches.push_back({damage, 1.0 - missing});
        if (sound > 0.0) stretches.push_back({sound, 1.0});
    } else
        stretches.push_back({lead.length.value(), 1.0});

    const double alpha = lead.metal.temperature_coefficient.value();
    struct piece {
        double length, metal_left;
    };
    std::vector<piece> pieces;
    for (const stretch& s : stretches)
        for (const double length : graded_cells(
                 s.whole, decay, {&s != &stretches.front() || joined.begin, &s != &stretches.back() || joined.end}))
            pieces.push_back({length, s.metal_left});
    // all surfaces first, all conductors last: the conductors are the chain, the rest hangs on it, and what hangs at
    // the same place of every cell is eliminated side by side
    out.cells.resize(pieces.size());
    lead_cells::index outer = nowhere;
    for (std::size_t k = places.size(); k-- > 0;) {
        const double from = k > 0 ? 0.5 * (places[k - 1] + places[k]) : 0.0;
        const double to = k + 1 < places.size() ? 0.5 * (places[k] + places[k + 1]) : 1.0;
        const double in_covering = stored(from, to);
        const lead_cells::index first = n.size();
        for (std::size_t j = 0; j < pieces.size(); ++j) {
            const piece& p = pieces[j];
            const double metal = k == 0 ? metre.metal.value() * p.metal_left : 0.0;
            const lead_cells::index here =
                n.add_node((metal + in_covering) * p.length, k == 0 ? melting : solve::heat_network::unbounded);
            if (outer == nowhere)
                out.cells[j].surface = here;
            else
                n.link(outer + j, here, covering * p.length / (places[k + 1] - places[k]));
            out.cells[j].conductor = here;
        }
        outer = first;
    }
    double before = 0.0;  // W/K from the cell before to its end, 0 for the first
    for (std::size_t j = 0; j < pieces.size(); ++j) {
        const piece& p = pieces[j];
        lead_cells::cell& c = out.cells[j];
        c.length = p.length;
        n.surface(c.surface, p.length, surface);
        n.constant(c.surface, kernel.sun_per_length() * p.length);
        n.sink(c.conductor, cooled * p.length, 0.0);
        const double at_reference = metre.resistance.value() * p.length / p.metal_left;
        c.by_kelvin = at_reference * alpha;
        c.at_zero = at_reference * (1.0 + alpha * (air - reference_temperature.in_kelvin()));
        const double over_decay = p.length / decay;
        const double half =
            axial * p.metal_left / p.length * (1.0 + std::sqrt(1.0 + over_decay * over_decay));  // see lead_cells_model
        if (before > 0.0)
            n.link(out.cells[j - 1].conductor, c.conductor, before * half / (before + half));
        else
            out.begin_conductance = half;
        before = half;
    }
    out.end_conductance = before;
    return out;
}

}  // namespace detail

}  // namespace weldloop
