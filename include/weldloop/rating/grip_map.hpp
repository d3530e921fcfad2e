#pragma once
/// @file
/// The map of a clamp over current and surface: where it holds, declines, or is unstable; and kinds of clamp side by
/// side.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/rating/grip.hpp>
#include <weldloop/rating/grip_map_result.hpp>
#include <weldloop/rating/grip_threshold.hpp>

namespace weldloop {

/// The map of a clamp over current and surface factor, on the steady states its spring passes through
/// (hours_to_loss()); typical case, no film. Each column is a pure function of its current: parts of a map may be made
/// at the same time by several threads, and put side by side.
/// @param joint the clamp on its work; its surface is replaced by the factors
/// @param lead that it carries @param duty of the load @param where air around
/// @param currents [A], each above 0, rising @param surface_factors contact resistance over that of clean metal, each
/// 1e-6 to 1e6, rising @param horizon hours of shift [s], above 0 to 30 years
/// @throws not_finite_error, out_of_range_error also for columns or rows that do not rise
[[nodiscard]] inline grip_map grip_map_of(const work_connection& joint, const cable& lead, const duty_cycle& duty,
                                          const surroundings& where, std::span<const current> currents,
                                          std::span<const double> surface_factors, duration horizon)
{
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
    work_connection clean = joint;
    clean.surface = surface_state::clean;
    const clamp_network network = clamp_network_of(clean, where);
    const detail::grip_ageing ageing(clean, where, {}, detail::grip_case::typical, false);
    grip_map out{{currents.begin(), currents.end()}, {surface_factors.begin(), surface_factors.end()}, {}, horizon, {}};
    out.cells.resize(currents.size() * surface_factors.size());
    for (std::size_t column = 0; column < currents.size(); ++column) {
        const load work{.current = currents[column], .duty = duty};
        const detail::clamp_solver solver(network, lead_outside(lead, where, work), work, scatter::typical);
        solve::periodic_state period;  // of the row before
        for (std::size_t row = 0; row < surface_factors.size(); ++row) {
            const detail::clamp_swing swing =
                detail::swing_of(solver, {ageing.force_share({}, {}), surface_factors[row]}, duty, period);
            out.cells[row * currents.size() + column] =
                detail::direct_clamp(solver, ageing, duty, surface_factors[row], true, &swing)
                    .life(horizon.value())
                    .within(horizon.value());
        }
    }
    out.basis.add(network.basis).add(lead_fin_judgement).add(quarter_grip_judgement);
    return out;
}

/// One clamp of a comparison.
struct grip_row {
    std::string name = {};                            ///< of the clamp
    clamp_kind kind = clamp_kind::spring;             ///< how it grips
    fraction grip_left = 1.0;                         ///< at the end, typical, cold
    fraction grip_left_low = 1.0;                     ///< the same for the pessimistic case
    grip_outlook outlook = grip_outlook::holds;       ///< typical
    grip_outlook outlook_poor = grip_outlook::holds;  ///< pessimistic
    weldloop::resistance resistance = {};             ///< [ohm] at the end, typical; 0 if open
    temperature hottest = {};                 ///< of the jaws at the end of the on-time, over the whole forecast
    std::optional<duration> inspect_by = {};  ///< early end of the band in which a quarter of the grip is gone
};

/// Clamps side by side in the same place, under the same load, in the order given.
/// @param clamps to compare @param place the joint whose clamp they replace, as new
/// @param lead that each carries @param work current and duty @param where air around @param horizon as for
/// grip_over_time() @param service as for grip_over_time()
/// @throws as grip_over_time()
[[nodiscard]] inline std::vector<grip_row> compare_grip(std::span<const work_clamp> clamps,
                                                        const work_connection& place, const cable& lead,
                                                        const load& work, const surroundings& where, duration horizon,
                                                        const grip_service& service = {})
{
    std::vector<grip_row> out;
    for (const work_clamp& clamp : clamps) {
        work_connection joint = place;
        joint.clamp = clamp;
        joint.grip_lost = 0.0;
        const grip_forecast f = grip_over_time(joint, lead, work, where, horizon, service);
        grip_row row{clamp.name,
                     clamp.kind,
                     f.grip_left,
                     f.grip_left_low,
                     f.outlook,
                     f.outlook_poor,
                     f.points.back().resistance,
                     where.air,
                     f.inspect_by};
        for (const grip_point& p : f.points) row.hottest = std::max(row.hottest, p.peak_temperature);
        out.push_back(std::move(row));
    }
    return out;
}

}  // namespace weldloop
