#pragma once
/// @file
/// What the rest of a solved loop takes from a clamp in it, as the clamp's own network needs it.
/// Source: the solved balance of heat made straight at its state, derived.

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/clamp_swing.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop::detail {

/// The heat that leaves a place by a link, as a straight line through the solved state: what flows there in the mean
/// over the period, and by how much more where the place is warmer, the whole rest of the loop following.
/// @param net the loop's network @param found its solved state @param place, other the ends of the link
/// @param g its conductance [W/K] @param on_share share of the period with current
[[nodiscard]] inline clamp_outside beyond_link(const loop_network& net, const solve::periodic_state& found,
                                               std::size_t place, std::size_t other, double g, double on_share)
{
    // What a watt put into the neighbour raises it by while the place is held: its row left to itself tells the rest of
    // the loop from the clamp.
    solve::sparse_lu matrix = net.network().pattern();
    std::vector<double> gain(found.mean.size());
    net.network().evaluate(found.mean, on_share, gain, &matrix);
    constexpr double held = 1e12;  // W/K
    matrix.values()[place] += held;
    static_cast<void>(matrix.eliminate());
    std::vector<double> rise(found.mean.size(), 0.0);
    rise[other] = 1.0;
    matrix.solve(rise);
    const double rest = 1.0 / rise[other] - g, here = found.mean[place], there = found.mean[other];
    if (!(rest > 0.0)) return {{}, temperature::kelvin(net.air() + there)};
    const double conductance = g * rest / (g + rest), flow = g * (here - there);
    return {in_si<thermal_conductance>(conductance), temperature::kelvin(net.air() + here - flow / conductance)};
}

/// The heat that leaves a clamp by its cable. @param net the loop's network @param found its solved state
/// @param clamp number of the work connection @param on_share share of the period with current
[[nodiscard]] inline clamp_outside neighbours_of(const loop_network& net, const solve::periodic_state& found,
                                                 std::size_t clamp, double on_share)
{
    std::size_t entry = loop_network::nowhere;
    for (const loop_network::place_at& p : net.parts()[clamp].places)
        if (p.what == part_place::cable_connection) entry = p.node;
    for (const loop_network::path_link& l : net.path_links()) {
        if (l.a != entry && l.b != entry) continue;
        const std::size_t other = l.a == entry ? l.b : l.a;
        constexpr double mean_of_two = 0.5;
        const double rise = mean_of_two * (found.mean[entry] + found.mean[other]);
        return beyond_link(net, found, entry, other,
                           l.by_mean != nullptr ? l.by_mean->at(rise, 0.0, solve::asked::value).value : l.conductance,
                           on_share);
    }
    return {{}, temperature::kelvin(net.air())};
}

/// The heat that leaves the patch under a clamp into a workpiece of the station; none where it sits on a plate of its
/// own. @param patch node of the work under the jaws
[[nodiscard]] inline std::optional<clamp_outside>
piece_under(const loop_network& net, const solve::periodic_state& found, std::size_t patch, double on_share)
{
    for (const loop_network::path_link& l : net.patch_links())
        if (l.a == patch) return beyond_link(net, found, patch, l.b, l.conductance, on_share);
    return std::nullopt;
}

/// What a solved loop says of a clamp in it, as its forecast begins.
struct clamp_in_loop {
    clamp_outside outside = {};               ///< what the loop takes from it
    current through = {};                     ///< while the arc burns
    std::optional<clamp_outside> piece = {};  ///< the workpiece it sits on, as it takes heat from under its jaws
    clamp_period period = {};                 ///< that it goes through
    scatter level = scatter::typical;         ///< at which point of every joint's scatter
};
/// @param net the loop's network @param found its solved state @param clamp index of the work connection in the path
/// @param on_share share of the period with current @param level at which the loop was solved
[[nodiscard]] inline clamp_in_loop clamp_in(const loop_network& net, const solve::periodic_state& found,
                                            std::size_t clamp, double on_share, scatter level)
{
    const auto node_of = [&](part_place what) {
        for (const loop_network::place_at& p : net.parts()[clamp].places)
            if (p.what == what) return p.node;
        return loop_network::nowhere;
    };
    std::array<loop_network::index, clamp_places> node{};
    node[jaw_place] = node_of(part_place::jaws);
    node[body_place] = node_of(part_place::arms);
    node[spring_place] = node_of(part_place::spring);
    node[handle_place] = node_of(part_place::handle);
    node[entry_place] = node_of(part_place::cable_connection);
    node[patch_place] = node_of(part_place::work);
    for (const std::size_t k : {spring_place, handle_place})  // a clamp without it: the place follows the body
        if (node[k] == loop_network::nowhere) node[k] = node[body_place];
    return {neighbours_of(net, found, clamp, on_share), in_si<current>(net.amps_in(net.parts()[clamp].branch)),
            piece_under(net, found, node[patch_place], on_share), clamp_period_of(found, node), level};
}

}  // namespace weldloop::detail
