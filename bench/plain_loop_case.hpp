#pragma once
// A station's network as plain numbers for the loop's twin, read before anything is counted or timed.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <vector>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/material/air.hpp>

#include "plain_cases.hpp"
#include "plain_loop.hpp"

namespace plain {

inline loop_numbers numbers_of(const weldloop::detail::loop_network& from)
{
    const weldloop::solve::heat_network& net = from.network();
    const auto node = [](std::size_t i) {
        return i == weldloop::solve::heat_network::nowhere ? loop_numbers::nowhere : static_cast<int>(i);
    };
    loop_numbers out;
    out.air = from.air();
    out.capacity.assign(net.capacity().begin(), net.capacity().end());
    for (const auto& l : net.links()) out.links.push_back({node(l.a), node(l.b), l.g});
    for (const auto& s : net.sinks()) out.sinks.push_back({node(s.a), s.g, s.far, s.while_on});
    for (const auto& l : net.linear_sources()) out.lines.push_back({node(l.a), l.at_zero, l.slope});
    std::map<const weldloop::solve::curve_table*, std::size_t> known;
    for (const auto& s : net.surfaces()) {
        const auto [table, is_new] = known.emplace(s.table, out.tables.size());
        if (is_new) {
            std::array<double, 68> points{};
            for (std::size_t i = 0; i < points.size(); ++i) {
                const double root = 0.5 * (static_cast<double>(i) - 1), x = std::max(1e-6, root * root);
                points[i] = s.table->value_at(x) / x;
            }
            out.tables.push_back(points);
        }
        out.surfaces.push_back({node(s.a), s.size, table->second});
    }
    std::vector<const weldloop::detail::contact_source*> laws;
    for (const auto& s : net.sources()) {
        const auto* const law = dynamic_cast<const weldloop::detail::contact_source*>(s.law);
        if (law == nullptr) {
            out.fixed_heats.push_back({node(s.to), s.share * s.law->at(0, 0, weldloop::solve::asked::value).value});
            continue;
        }
        laws.push_back(law);
        out.contacts.push_back({node(s.in), node(s.with), node(s.follows), node(s.to), node(s.also_to), s.share,
                                s.also_share, metal_of(law->metals().first), metal_of(law->metals().second),
                                law->cold(), law->amps(), law->alike(), law->grip().slope,
                                law->grip().power * law->grip().exponent});
    }
    for (const auto& l : net.curved_links()) {
        const auto at = [&l](double rise) { return l.law->at(rise, 0, weldloop::solve::asked::value).value; };
        if (dynamic_cast<const weldloop::detail::contact_crossing*>(l.law) == nullptr) {
            loop_numbers::curved layer{node(l.a), node(l.b), {}};
            for (int i = 0; i < 64; ++i) layer.by_mean.push_back(at(8.0 * i));
            out.layers.push_back(layer);
            continue;
        }
        std::size_t of = 0;
        while (out.contacts[of].to != node(l.a)) ++of;
        const loop_numbers::contact& c = out.contacts[of];
        const auto& spots = *laws[of];
        const double volts = spots.volts_at(0, 0);
        const double gap = at(0) - 2.44e-8 * c.amps * out.air / (volts * c.alike);
        const double conductivity =
            weldloop::air_at(weldloop::temperature::kelvin(out.air)).thermal_conductivity.value();
        out.crossings.push_back({node(l.a), node(l.b), l.weight, of, gap > 1e-9 * at(0) ? gap / conductivity : 0});
    }
    return out;
}

}  // namespace plain
