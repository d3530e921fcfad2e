// What heat does to a loop with ways, against the balance of the mean straightened by differences and solved in full.
#include <weldloop/circuit/heat_response.hpp>
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <cmath>
#include <cstddef>
#include <random>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// A gate on a table, both with a way back to one stud.
station gate_and_table()
{
    station s{.name = "gate and table",
              .job = {.process = process::gmaw, .current = 180_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 25_degC}};
    const auto clamp = [](const char* name) {
        return work_connection{
            .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::oxidized, .name = name};
    };
    s.path = {welding_cable(aught(1), 5_m).named("feeder"),
              arc{},
              workpiece{.metal = mild_steel, .mass = 30_kg, .thickness = 3_mm, .name = "gate"},
              contact{.metals = {mild_steel, mild_steel}, .force = 180_N, .name = "gate on table"},
              workpiece{.metal = mild_steel, .mass = 80_kg, .thickness = 8_mm, .name = "table"},
              clamp("table clamp"),
              welding_cable(awg(1), 4_m).named("table lead"),
              junction{"stud"}};
    s.ways = {{.name = "gate's own",
               .from = "gate",
               .to = "stud",
               .path = {clamp("gate clamp"), welding_cable(awg(2), 6_m).named("gate lead")}},
              {.name = "strap", .from = "table", .to = "stud", .path = {welding_cable(awg(2), 3_m).named("bond")}}};
    return s;
}

// Solves a full system by elimination with exchange of rows. @param m row by row
std::vector<double> solved_in_full(std::vector<std::vector<double>> m, std::vector<double> right)
{
    const std::size_t n = right.size();
    for (std::size_t k = 0; k < n; ++k) {
        std::size_t pivot = k;
        for (std::size_t i = k + 1; i < n; ++i)
            if (std::fabs(m[i][k]) > std::fabs(m[pivot][k])) pivot = i;
        std::swap(m[k], m[pivot]);
        std::swap(right[k], right[pivot]);
        for (std::size_t i = k + 1; i < n; ++i) {
            const double f = m[i][k] / m[k][k];
            if (f == 0.0) continue;
            for (std::size_t j = k; j < n; ++j) m[i][j] -= f * m[k][j];
            right[i] -= f * right[k];
        }
    }
    for (std::size_t k = n; k-- > 0;) {
        for (std::size_t j = k + 1; j < n; ++j) right[k] -= m[k][j] * right[j];
        right[k] /= m[k][k];
    }
    return right;
}

}  // namespace

// source: the same balance, its slopes by differences of the heat that the network says, solved in full
TEST(HeatResponse, NumbersFollowFewSourcesAndTheHubs)
{
    const station s = gate_and_table();
    detail::loop_solver solver(s);
    solve::periodic_state found;
    const loop_state state = solver.solve(scatter::typical, &found);
    ASSERT_TRUE(state.is_solved());
    const detail::loop_network& net = solver.network();
    const solve::heat_network& heat = net.network();
    const double on_share = 0.6;

    const std::size_t n = heat.size();
    std::vector<std::vector<double>> slopes(n, std::vector<double>(n));
    for (std::size_t j = 0; j < n; ++j) {
        constexpr double step = 1e-3;  // K
        std::vector<double> there = found.mean, more(n), less(n);
        there[j] += step;
        heat.evaluate(there, on_share, more, nullptr);
        there[j] -= 2.0 * step;
        heat.evaluate(there, on_share, less, nullptr);
        for (std::size_t i = 0; i < n; ++i) slopes[i][j] = -(more[i] - less[i]) / (2.0 * step);
    }

    detail::heat_response response(net, found.mean, on_share);
    std::vector<std::size_t> at;  // a node of every part, and of every part's every contact
    for (const detail::loop_network::part_at& p : net.parts()) {
        if (!p.places.empty()) at.push_back(p.places.front().node);
        for (const detail::loop_network::contact_at& c : p.contacts) at.push_back(c.bulk);
    }
    std::mt19937 seeded(20261127);
    std::uniform_real_distribution<double> any_watts(-5.0, 5.0);
    std::vector<double> right(n, 0.0), moves;
    for (const std::size_t node : at) {
        std::vector<double> where(n, 0.0);
        where[node] = on_share;
        static_cast<void>(response.add(std::move(where)));
    }
    moves.assign(response.moves(), 0.0);
    EXPECT_EQ(response.moves(), at.size() + 3);  // gate, table, stud
    for (std::size_t k = 0; k < at.size(); ++k) {
        response.give(moves, k, any_watts(seeded));  // the last counts
        const double watts = any_watts(seeded);
        response.give(moves, k, watts);
        right[at[k]] += on_share * watts;
    }
    const std::vector<double> rise = solved_in_full(slopes, right);
    std::size_t few = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const auto moved = response.of(7.0, [i](const std::vector<double>& r) { return r[i]; });
        EXPECT_NEAR(moved.with(moves), 7.0 + rise[i], 1e-4 * std::fabs(rise[i]) + 1e-6) << i;
        if (2 * moved.some.size() < moves.size()) ++few;
    }
    EXPECT_GT(2 * few, n);  // most follow less than half of what moves
}
