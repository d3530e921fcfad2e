#pragma once
/// @file
/// What the rest of a solved loop takes from a clamp in it, as the clamp's own network needs it.
/// Source: the solved balance of heat made straight at its state, derived.

#include <algorithm>
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

/// What a solved loop says of a clamp in it, as its forecast begins.
struct clamp_in_loop {
    clamp_outside outside = {};               ///< what the loop takes from it
    current through = {};                     ///< while the arc burns
    std::optional<clamp_outside> piece = {};  ///< the workpiece it sits on, as it takes heat from under its jaws
    clamp_period period = {};                 ///< that it goes through
    scatter level = scatter::typical;         ///< at which point of every joint's scatter
};

/// A solved loop as the clamps in it feel it.
class loop_around {
public:
    /// @param net the loop's network @param found its solved state @param on_share share of the period with current
    /// @param level at which the loop was solved
    loop_around(const loop_network& net, const solve::periodic_state& found, double on_share, scatter level)
        : net_(&net), found_(&found), level_(level), balance_(net.network().pattern()), rise_(found.mean.size(), 0.0)
    {
        net.network().evaluate(found.mean, on_share, rise_, &balance_);
        static_cast<void>(balance_.eliminate());
        std::fill(rise_.begin(), rise_.end(), 0.0);
    }

    /// @param clamp index of the work connection in the path
    [[nodiscard]] clamp_in_loop of(std::size_t clamp)
    {
        const auto node_of = [&](part_place what) {
            for (const loop_network::place_at& p : net_->parts()[clamp].places)
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
        return {behind(node[entry_place]), in_si<current>(net_->amps_in(net_->parts()[clamp].branch)),
                piece_under(node[patch_place]), clamp_period_of(*found_, node), level_};
    }

private:
    // The heat that leaves a place by a link, as a straight line through the solved state: what flows there in the mean
    // over the period, and by how much more where the place is warmer, the whole rest of the loop following.
    // @param g conductance of the link from the place to the other [W/K]
    [[nodiscard]] clamp_outside beyond_link(std::size_t place, std::size_t other, double g)
    {
        // What a watt put into the neighbour raises it by while the place is held, which tells the rest of the loop
        // from the clamp: less what a watt in the place would take back.
        const answer by_other = watt_in(other, place, other), by_place = watt_in(place, place, other);
        const double held = by_other.at_other - by_place.at_other * by_other.at_place / by_place.at_place;
        const double rest = 1.0 / held - g, here = found_->mean[place], there = found_->mean[other];
        if (!(rest > 0.0)) return {{}, temperature::kelvin(net_->air() + there)};
        const double conductance = g * rest / (g + rest), flow = g * (here - there);
        return {in_si<thermal_conductance>(conductance), temperature::kelvin(net_->air() + here - flow / conductance)};
    }
    // What a watt in a node does to two [K/W].
    struct answer {
        double at_place, at_other;
    };
    [[nodiscard]] answer watt_in(std::size_t node, std::size_t place, std::size_t other)
    {
        constexpr double felt = 1e-14;
        rise_[node] = 1.0;
        const solve::sparse_lu::range solved = balance_.solve_near(rise_, {node, node + 1}, felt);
        const answer out{rise_[place], rise_[other]};
        std::fill(rise_.begin() + static_cast<std::ptrdiff_t>(solved.begin),
                  rise_.begin() + static_cast<std::ptrdiff_t>(solved.end), 0.0);
        return out;
    }

    // The heat that leaves a clamp by its cable.
    [[nodiscard]] clamp_outside behind(std::size_t entry)
    {
        for (const loop_network::path_link& l : net_->path_links()) {
            if (l.a != entry && l.b != entry) continue;
            const std::size_t other = l.a == entry ? l.b : l.a;
            constexpr double mean_of_two = 0.5;
            const double rise = mean_of_two * (found_->mean[entry] + found_->mean[other]);
            return beyond_link(entry, other,
                               l.by_mean != nullptr ? l.by_mean->at(rise, 0.0, solve::asked::value).value
                                                    : l.conductance);
        }
        return {{}, temperature::kelvin(net_->air())};
    }
    // The heat that leaves the patch under a clamp into a workpiece of the station; none where it sits on a plate of
    // its own.
    [[nodiscard]] std::optional<clamp_outside> piece_under(std::size_t patch)
    {
        for (const loop_network::path_link& l : net_->patch_links())
            if (l.a == patch) return beyond_link(patch, l.b, l.conductance);
        return std::nullopt;
    }

    const loop_network* net_;
    const solve::periodic_state* found_;
    scatter level_;
    solve::sparse_lu balance_;  // of the mean over the period, straightened and eliminated
    std::vector<double> rise_;
};

/// One clamp in a solved loop.
/// @param net the loop's network @param found its solved state @param clamp index of the work connection in the path
/// @param on_share share of the period with current @param level at which the loop was solved
[[nodiscard]] inline clamp_in_loop clamp_in(const loop_network& net, const solve::periodic_state& found,
                                            std::size_t clamp, double on_share, scatter level)
{
    return loop_around(net, found, on_share, level).of(clamp);
}

}  // namespace weldloop::detail
