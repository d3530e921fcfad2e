// How currents divide among ways, against a circuit simulator at the same resistances: tests/oracle/ways_circuit.
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include "circuit/ways_circuit_stations.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using test::gate_station;
using test::kept_ways;
using test::ohmic;
using test::over;
using test::reference_table;
using test::ways_folder;

// Feeder, arc, post, the path's own way back with a stop half way, stud, tail.
station bench(const std::string& name, double amps, double first, double second)
{
    station s{
        .name = name, .job = {.process = process::gmaw, .current = in_si<current>(amps)}, .where = {.air = 25_degC}};
    s.path = {ohmic("feeder", 1.3), arc{},
              junction{"post"},     ohmic("first half", first),
              junction{"half way"}, ohmic("second half", second),
              junction{"stud"},     ohmic("tail", 0.7)};
    return s;
}

std::vector<station> networks()
{
    std::vector<station> out;
    out.push_back(bench("pair", 240.0, 2.0, 3.0));
    out.back().ways = {over("strap", "post", "stud", {ohmic("strap metal", 7.0)})};
    out.push_back(bench("bridge", 8.0, 2.0, 11.0));  // arms 2, 11, 14, 3, cross arm 32
    out.back().ways = {
        over("side", "post", "stud", {ohmic("third", 14.0), junction{"side middle"}, ohmic("fourth", 3.0)}),
        over("cross", "half way", "side middle", {ohmic("cross arm", 32.0)})};
    out.push_back(bench("balanced-bridge", 100.0, 2.0, 6.0));
    out.back().ways = {
        over("side", "post", "stud", {ohmic("third", 1.0), junction{"side middle"}, ohmic("fourth", 3.0)}),
        over("cross", "side middle", "half way", {ohmic("cross arm", 0.4)})};
    out.push_back(bench("nested", 315.0, 5.0, 1.5));
    out.back().ways = {over("outer", "post", "stud", {ohmic("out", 2.0), junction{"fork"}, ohmic("back", 4.0)}),
                       over("inner", "fork", "stud", {ohmic("in", 1.0), junction{"inner fork"}, ohmic("end", 2.5)}),
                       over("innermost", "half way", "inner fork", {ohmic("link", 0.9)})};
    out.push_back(bench("two-supplies", 180.0, 1.0, 2.0));
    out.back().ways = {over("strap", "post", "stud", {ohmic("strap metal", 6.0)})};
    out.back().others = {{.name = "second", .from = "half way", .to = "stud", .current = 220_A}};
    out.push_back(gate_station("gate-gently", 40.0, surface_state::light_rust));
    out.push_back(gate_station("gate-hard", 320.0, surface_state::light_rust));
    out.push_back(gate_station("gate-spattered", 230.0, surface_state::spatter_covered));
    out.push_back(gate_station("gate-bridge", 200.0, surface_state::oxidized));
    out.back().ways[1].path.insert(out.back().ways[1].path.begin() + 1, junction{"hook"});
    out.back().ways[0].path.insert(out.back().ways[0].path.begin() + 1, junction{"clamp bolt"});
    out.back().ways.push_back(over("tie", "hook", "clamp bolt", {welding_cable(square_mm(25), 2_m).named("tie lead")}));
    measured_part ring = ohmic("ring", 1.0);
    ring.drop = exactly(0.2_V);
    ring.at = 300_A;
    ring.law = drop_law::constant;
    out.push_back(gate_station("gate-ring", 260.0, surface_state::clean));
    out.back().ways.push_back(
        over("positioner", "gate", "return stud", {ring, welding_cable(square_mm(35), 4_m).named("its lead")}));
    return out;
}

struct element {
    char kind;
    std::string name, from, to;
    double value, drop;  // ohm or A; V from `from` to `to` as the library has it
};

// A station's circuit at its settled state: what spreads in a workpiece at the ends of its branches, then their parts.
std::vector<element> circuit_of(const station& s)
{
    const loop_state state = solve_loop(s);
    EXPECT_TRUE(state.is_solved()) << s.name;
    const detail::loop_network net(s, checked_arc_index(s));
    const auto& branches = net.branches();
    std::vector<element> out;
    for (const auto& g : net.given())
        out.push_back({'I', "given", "p" + std::to_string(g.into), "p" + std::to_string(g.out_of), g.amps, 0.0});
    std::vector<double> spread(net.points(), 0.0);
    std::size_t point = 1;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        if (!is_hub(part_at(s, i))) continue;
        ++point;
        double squares = 0.0;
        for (std::size_t b = 0; b < branches.size(); ++b)
            if (branches[b].from == point || branches[b].to == point)
                squares += state.branch_amps[b] * state.branch_amps[b];
        spread[point] = state.parts[i].loss.value() / squares;
    }
    for (std::size_t b = 0; b < branches.size(); ++b) {
        const double amps = state.branch_amps[b];
        std::vector<element> row;
        if (spread[branches[b].from] > 0.0) row.push_back({'R', "spreading", "", "", spread[branches[b].from], 0.0});
        for (const std::size_t p : branches[b].parts) {
            const path_part& part = part_at(s, p);
            if (std::holds_alternative<arc>(part)) continue;
            const auto* m = std::get_if<measured_part>(&part);
            const bool stated = m != nullptr && m->law == drop_law::ohmic;
            row.push_back({'R', name_of(s, p), "", "",
                           stated ? (m->drop.typical / m->at).value() : state.parts[p].drop.value() / std::fabs(amps),
                           0.0});
        }
        if (spread[branches[b].to] > 0.0) row.push_back({'R', "spreading", "", "", spread[branches[b].to], 0.0});
        for (std::size_t k = 0; k < row.size(); ++k) {
            const auto node = [&](std::size_t at) {
                return at == 0            ? "p" + std::to_string(branches[b].from)
                       : at == row.size() ? "p" + std::to_string(branches[b].to)
                                          : "b" + std::to_string(b) + "_" + std::to_string(at);
            };
            row[k].from = node(k);
            row[k].to = node(k + 1);
            row[k].drop = amps * row[k].value;
            out.push_back(row[k]);
        }
    }
    return out;
}

TEST(WaysCircuit, CurrentsDivideAsInTheSimulator)
{
    constexpr int all_digits = 17;
    if (std::getenv("WELDLOOP_WRITE_WAYS") != nullptr) {
        std::ofstream out(ways_folder() / "elements.csv");
        out << "# written by tests/circuit/ways_circuit_test.cpp with "
               "WELDLOOP_WRITE_WAYS=1\nnetwork,kind,name,from,to,value\n";
        for (const station& s : networks())
            for (const element& e : circuit_of(s))
                out << s.name << ',' << e.kind << ',' << e.name << ',' << e.from << ',' << e.to << ','
                    << number_text(e.value, all_digits) << '\n';
    }
    const reference_table elements = kept_ways("elements.csv"), outputs = kept_ways("outputs.csv");
    const std::vector<station> all = networks();
    ASSERT_EQ(all.size(), 10u);
    std::size_t row = 0, simulated = 0;
    for (const station& s : all)
        for (const element& e : circuit_of(s)) {
            const auto& stated = elements.rows().at(row++);
            ASSERT_EQ(stated.text("network"), s.name);
            ASSERT_EQ(stated.text("name"), e.name);
            ASSERT_EQ(stated.text("from") + stated.text("to"), e.from + e.to);
            EXPECT_NEAR_REL(e.value, stated.number("value"), 1e-6) << stated.where();
            if (e.kind == 'I') continue;
            const auto& drop = outputs.rows().at(simulated++);
            ASSERT_EQ(drop.text("network"), s.name);
            constexpr double same = 1e-6;  // V, and of the arc's current
            EXPECT_NEAR(e.drop, drop.number("drop_V"), same) << drop.where();
            EXPECT_NEAR(e.drop / e.value, drop.number("drop_V") / stated.number("value"), same * s.job.current.value())
                << drop.where();
        }
    EXPECT_EQ(row, elements.rows().size());
    EXPECT_EQ(simulated, outputs.rows().size());
}

// source: the two networks of one station
TEST(WaysCircuit, TheSplitChangesWithTheCurrent)
{
    const auto share = [](double amps) {
        return solve_loop(gate_station("gate", amps, surface_state::light_rust)).ways[0].current.value() / amps;
    };
    EXPECT_GT(std::fabs(share(320.0) - share(40.0)), 0.02);
}

}  // namespace
