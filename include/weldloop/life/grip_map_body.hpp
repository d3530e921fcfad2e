#pragma once
/// @file
/// How grip_map.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/life/grip_map.hpp>
#include <weldloop/life/grip_map_result.hpp>
#include <weldloop/life/grip_threshold_body.hpp>

namespace weldloop {

namespace detail {

// The first row for which something is, which then is for all after it. @param beyond a row from which on it is
template <class Is>
[[nodiscard]] std::size_t first_row(std::size_t beyond, const Is& is)
{
    std::size_t low = 0;
    for (std::size_t probe = beyond - 1; low < beyond; probe = low + (beyond - low) / 2) {
        if (is(probe))
            beyond = probe;
        else
            low = probe + 1;
    }
    return beyond;
}

}  // namespace detail

[[nodiscard]] inline grip_map grip_map_of(const clamp_place& place, std::span<const current> currents,
                                          std::span<const double> surface_factors, duration horizon)
{
    const surroundings& where = place.where;
    const duty_cycle& duty = place.duty;
    require_positive(horizon, "forecast");
    require_within(horizon, in_si<duration>(0.0), longest_forecast, "forecast");
    for (std::size_t i = 0; i < currents.size(); ++i) {
        require_positive(currents[i], "current of the map");
        if (i > 0) require_positive(currents[i] - currents[i - 1], "step between two currents of the map");
    }
    for (std::size_t i = 0; i < surface_factors.size(); ++i) {
        require_within(surface_factors[i], 1e-6, 1e6, "surface factor");
        if (i > 0 && !(surface_factors[i] > surface_factors[i - 1]))
            throw out_of_range_error("surface factors",
                                     number_text(surface_factors[i]) + " after " + number_text(surface_factors[i - 1]),
                                     "rising values");
    }
    work_connection clean = place.joint;
    clean.surface = surface_state::clean;
    const clamp_network network = clamp_network_of(clean, where);
    const detail::grip_ageing ageing(clean, where, {.film = false}, detail::grip_case::typical, 0.0);
    grip_map out{{currents.begin(), currents.end()}, {surface_factors.begin(), surface_factors.end()}, {}, horizon, {}};
    out.cells.resize(currents.size() * surface_factors.size());
    // more current or a worse surface never makes a clamp last longer: of each column only the first row of each
    // outlook is sought, from where it was in the column before
    std::size_t unstable_from = surface_factors.size(), declines_from = surface_factors.size();
    std::shared_ptr<const solve::periodic_state> period;  // of the clamp looked at last
    current stepped{};                                    // at which its march got its steps
    for (std::size_t column = 0; column < currents.size(); ++column) {
        const load work{.current = currents[column], .duty = duty};
        const detail::clamp_solver solver(network, lead_outside(place.lead, where, work), work, scatter::typical);
        std::vector<std::optional<grip_outlook>> known(surface_factors.size());
        std::size_t period_row = surface_factors.size();  // of the period, if it is of this column
        constexpr double same_steps = 1.3;                // up to so much more current
        if (currents[column] > same_steps * stepped) {
            period = nullptr;
            stepped = currents[column];
        }
        const auto outlook = [&](std::size_t row) {
            if (known[row]) return *known[row];
            using reached = detail::clamp_solver::reached;
            const reached from = row < period_row ? reached::cold : reached::near;  // what is near must be no worse
            period_row = row;
            detail::clamp_swing swing = detail::swing_of(
                solver, {ageing.force_share(ageing.start(), {}), surface_factors[row]}, duty, period, from);
            constexpr double until_a_quarter = 0.25;  // of the logarithm of the jaws' conductance
            swing.trust_heat(until_a_quarter);
            known[row] = detail::direct_clamp(solver, ageing, duty, surface_factors[row], true, &swing)
                             .life(horizon.value())
                             .within(horizon.value());
            return *known[row];
        };
        unstable_from =
            detail::first_row(unstable_from, [&](std::size_t row) { return outlook(row) == grip_outlook::unstable; });
        declines_from = detail::first_row(std::min(declines_from, unstable_from),
                                          [&](std::size_t row) { return outlook(row) != grip_outlook::holds; });
        for (std::size_t row = 0; row < surface_factors.size(); ++row)
            out.cells[row * currents.size() + column] = row >= unstable_from   ? grip_outlook::unstable
                                                        : row >= declines_from ? grip_outlook::declines
                                                                               : grip_outlook::holds;
    }
    out.basis.add(network.basis).add(lead_fin_judgement).add(quarter_grip_judgement);
    return out;
}

[[nodiscard]] inline std::vector<grip_row> compare_grip(std::span<const work_clamp> clamps, const clamp_use& use)
{
    std::vector<grip_row> out;
    for (const work_clamp& clamp : clamps) {
        clamp_use one = use;
        one.joint.clamp = clamp;
        one.joint.grip_lost = 0.0;
        const grip_forecast f = grip_over_time(one);
        grip_row row{clamp.name,
                     clamp.kind,
                     f.grip_left,
                     f.grip_left_low,
                     f.outlook,
                     f.outlook_poor,
                     f.points.back().resistance,
                     use.where.air,
                     f.inspect_by};
        for (const grip_point& p : f.points) row.hottest = std::max(row.hottest, p.peak_temperature);
        out.push_back(std::move(row));
    }
    return out;
}

}  // namespace weldloop
