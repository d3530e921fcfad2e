#pragma once
/// @file
/// What a little heat at some nodes of a solved loop does to numbers that are straight in its rises. Solver adapter on
/// plain doubles.
/// Source: the solved balance of heat made straight at its state, derived.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/sparse_lu.hpp>

namespace weldloop::detail {

/// How rises follow the heat of sources, by the slopes of the balance of the mean.
///
/// Ways feel each other by the junctions and workpieces between them: a number is told by the sources near it, and by
/// the rises of those hubs. What heat moves is one list: the watts of every source, then the rises of the hubs [K].
class heat_response {
public:
    /// @param net the loop's network, set to its state @param mean rises over the period [K] @param on_share share of
    /// the period with current
    heat_response(const loop_network& net, std::span<const double> mean, double on_share)
    {
        const solve::heat_network& heat = net.network();
        std::vector<double> gain(heat.size());
        matrix_ = heat.pattern();
        heat.evaluate(mean, on_share, gain, &matrix_);
        for (const loop_network::part_at& p : net.parts())
            if (!p.meeting.empty())
                for (const loop_network::place_at& place : p.places)
                    if (place.what == part_place::metal) hubs_.push_back(place.node);
        constexpr double held = 1e15;  // W/K
        solve::sparse_lu apart = matrix_;
        for (const std::size_t hub : hubs_) apart.values()[hub] += held;
        static_cast<void>(apart.eliminate());
        static_cast<void>(matrix_.eliminate());
        for (const std::size_t hub : hubs_) {
            by_hub_.emplace_back(heat.size(), 0.0);
            by_hub_.back()[hub] = held;
            apart.solve(by_hub_.back());
        }
    }

    /// Adds a source, before anything is asked. @param where what every node gets of its watt [W] @return its number
    std::size_t add(std::vector<double> where)
    {
        matrix_.solve(where);
        by_source_.push_back(std::move(where));
        return by_source_.size() - 1;
    }

    /// A number that heat moves: what it is usually, and by how much it follows a few of what moves.
    struct moved {
        double usual = 0.0;
        struct follows {
            std::size_t which;
            double by;
        };
        std::vector<follows> some = {};

        [[nodiscard]] double with(std::span<const double> moves) const
        {
            double out = usual;
            for (const follows& f : some) out += f.by * moves[f.which];
            return out;
        }
    };
    /// @param usual what the number is with nothing moved @param number straight in the rises of all nodes, without
    /// that
    template <class Number>
    [[nodiscard]] moved of(double usual, const Number& number) const
    {
        constexpr double least = 1e-10;  // of the largest, by sources and by hubs
        moved out{usual};
        std::vector<double> by_source, by_hub;
        for (const std::vector<double>& rise : by_source_) by_source.push_back(number(rise));
        for (const std::vector<double>& rise : by_hub_) by_hub.push_back(number(rise));
        const auto largest = [](const std::vector<double>& all) {
            double most = 0.0;
            for (const double x : all) most = std::max(most, std::fabs(x));
            return most;
        };
        const double most_by_source = largest(by_source), most_by_hub = largest(by_hub);
        for (std::size_t h = 0; h < by_source.size(); ++h) {
            double near = by_source[h];  // past the hubs
            for (std::size_t k = 0; k < hubs_.size(); ++k) near -= by_hub[k] * by_source_[h][hubs_[k]];
            if (std::fabs(near) > least * most_by_source) out.some.push_back({h, near});
        }
        for (std::size_t k = 0; k < hubs_.size(); ++k)
            if (std::fabs(by_hub[k]) > least * most_by_hub) out.some.push_back({by_source_.size() + k, by_hub[k]});
        return out;
    }

    /// How long the list of what heat moves is.
    [[nodiscard]] std::size_t moves() const { return by_source_.size() + hubs_.size(); }
    /// Lets a source give other watts. @param moves out: the list @param source its number @param watts more than
    /// usually
    void give(std::vector<double>& moves, std::size_t source, double watts) const
    {
        const double by = watts - moves[source];
        moves[source] = watts;
        for (std::size_t k = 0; k < hubs_.size(); ++k)
            moves[by_source_.size() + k] += by_source_[source][hubs_[k]] * by;
    }

private:
    solve::sparse_lu matrix_;
    std::vector<std::size_t> hubs_;                        // nodes of junctions and workpieces
    std::vector<std::vector<double>> by_source_, by_hub_;  // rises of all nodes by a watt; by a kelvin with hubs held
};

}  // namespace weldloop::detail
