#pragma once
/// @file
/// A chain of lumped joints with leads or direct contacts between them: the linear heat balance at one iterate.

#include <cstddef>
#include <vector>

namespace weldloop::detail {

// A joint: what is made in it, and what it loses to fixed temperatures. Rises are over the air.
struct chain_node {
    double power = 0.0;      // W, mean over the duty period
    double sink = 0.0;       // W/K to the air and the work
    double sink_flow = 0.0;  // W that the sinks would bring to a joint held at the temperature of the air
};

// A link between neighbours: heat leaving node a is own (a - far) - cross (b - far), and likewise from b. A lead is a
// heated fin; a plain conductance g is own = cross = g.
struct chain_link {
    double own = 0.0;
    double cross = 0.0;
    double far = 0.0;
};

// Conductance by which a node feels its surroundings and its neighbours, for its time constant.
[[nodiscard]] inline double total_conductance(const std::vector<chain_node>& nodes,
                                              const std::vector<chain_link>& links, std::size_t i)
{
    double g = nodes[i].sink;
    if (i > 0) g += links[i - 1].own;
    if (i < links.size()) g += links[i].own;
    return g;
}

// The rises of all nodes: symmetric tridiagonal system, solved by elimination. links.size() + 1 == nodes.size().
// A chain without any loss has no steady state; the tiny leak keeps the arithmetic finite and the rise absurdly high,
// which the caller sees as "does not settle".
[[nodiscard]] inline std::vector<double> solve_chain(const std::vector<chain_node>& nodes,
                                                     const std::vector<chain_link>& links)
{
    constexpr double leak = 1e-9;  // W/K
    const std::size_t n = nodes.size();
    std::vector<double> diagonal(n), right(n);
    for (std::size_t i = 0; i < n; ++i) {
        diagonal[i] = nodes[i].sink + leak;
        right[i] = nodes[i].power + nodes[i].sink_flow;
    }
    for (std::size_t i = 0; i < links.size(); ++i) {
        const double far_flow = (links[i].own - links[i].cross) * links[i].far;
        diagonal[i] += links[i].own;
        diagonal[i + 1] += links[i].own;
        right[i] += far_flow;
        right[i + 1] += far_flow;
    }
    for (std::size_t i = 1; i < n; ++i) {
        const double factor = links[i - 1].cross / diagonal[i - 1];
        diagonal[i] -= factor * links[i - 1].cross;
        right[i] += factor * right[i - 1];
    }
    for (std::size_t i = n; i-- > 0;) {
        if (i + 1 < n) right[i] += links[i].cross * right[i + 1];
        right[i] /= diagonal[i];
    }
    return right;
}

}  // namespace weldloop::detail
