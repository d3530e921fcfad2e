#pragma once
/// @file
/// What the rest of a chain takes from a clamp in it, as the clamp's network needs it.

#include <cstddef>
#include <vector>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/loop_element.hpp>
#include <weldloop/circuit/loop_heat.hpp>
#include <weldloop/core/quantities.hpp>

namespace weldloop::detail {

/// The heat that leaves a clamp by its neighbours, as a straight line through two states: as the chain is, and with 40
/// W more in the clamp. What bends it, the cooling of leads and lugs, bends it by a few percent over that range.
/// @param elements a stretch of the loop whose parts all conduct @param clamp index of the work connection
[[nodiscard]] inline clamp_outside neighbours_of(std::vector<loop_element> elements, std::size_t clamp,
                                                 const surroundings& where, const load& work, scatter level)
{
    constexpr double more_heat = 40.0;  // W, mean over the period
    const loop_load l{&where, level, work.current, work.current.value(), static_cast<double>(work.duty.share()), work};
    struct at_clamp {
        double rise = 0.0, flow = 0.0;  // K over the air, W into the neighbours
    };
    const auto solved = [&] {
        at_clamp out;
        for (chain_at& chain : chains_of(elements, l)) {
            for (std::size_t i = 0; i < chain.joints.size(); ++i) {
                if (chain.joints[i].element != &elements[clamp]) continue;
                static_cast<void>(settle(chain, l));
                joint_at j = chain.joints[i];
                const chain_node node = node_of(j, l);
                out = {j.rise, node.power + node.sink_flow - node.sink * j.rise};
            }
        }
        return out;
    };
    const at_clamp now = solved();
    const band<voltage> before = elements[clamp].joint->constant_drop;
    const voltage more = in_si<voltage>(more_heat / (l.duty * l.amps));
    elements[clamp].joint->constant_drop = {before.low + more, before.typical + more, before.high + more};
    const at_clamp hotter = solved();
    const double g = hotter.rise > now.rise ? (hotter.flow - now.flow) / (hotter.rise - now.rise) : 0.0;
    if (!(g > 0.0)) return {{}, where.air};
    return {in_si<thermal_conductance>(g), over_air(l, now.rise - now.flow / g)};
}

}  // namespace weldloop::detail
