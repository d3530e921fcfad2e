// Pictures of docs/pages/work_heat.md and docs/pages/ways.md.
#include <cmath>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/circuit/loop.hpp>

#include "circuit/ways_circuit_stations.hpp"
#include "circuit/work_heat_cases.hpp"
#include "pages/page_chart.hpp"

namespace {
using namespace weldloop;
using test::dot;
using test::error_words;
using test::page_chart;
using test::points;

// source: tests/oracle/work_heat/outputs.csv, finite elements in three dimensions
TEST(WorkHeatPictures, RiseWhereAClampGrips)
{
    points means, peaks, beyond;
    for (const auto& row : test::kept_work_heat().rows()) {
        const test::grip_rise f = test::rise_at_grip(row);
        const double mean = row.number("mean_K"), peak = row.number("peak_K");
        const double off_mean = 100.0 * (f.mean / mean - 1.0), off_peak = 100.0 * (f.peak / peak - 1.0);
        if (test::beyond_the_picture(row)) {
            beyond.emplace_back(mean, off_mean);
            beyond.emplace_back(peak, off_peak);
            continue;
        }
        means.emplace_back(mean, off_mean);
        peaks.emplace_back(peak, off_peak);
    }
    page_chart chart("Error of the rise where a clamp grips welded work",
                     {"rise by finite elements [K]", 0.1, 1000.0, true},
                     {"calculated over elements, less one [%]", -20.0, 20.0});
    chart.level(10.0, "")
        .level(-10.0, "what the page promises")
        .dots(means, dot::filled, "mean over the stay")
        .dots(peaks, dot::ring, "highest in the stay")
        .dots(beyond, dot::cross, "beyond the picture of the piece")
        .edge(1.0, "1 K");
    expect_on_page("work_heat.md", "work_heat_error.svg", chart,
                   "A plate and a square tube against finite elements in three dimensions, " +
                       std::to_string(means.size()) + " cases: mean " + error_words(means).text() + "; highest " +
                       error_words(peaks).text() +
                       ". Crosses: a stay of a minute, less than a kelvin, a clamp that takes much for long: " +
                       error_words(beyond).text() + ".");
}

// source: tests/oracle/ways_circuit/outputs.csv, a circuit simulator at the resistances of the settled state
TEST(WaysPictures, SharesOverTheCurrent)
{
    points second, table, chain;
    for (double amps = 40.0; amps < 325.0; amps += 40.0) {
        const loop_state s = solve_loop(test::gate_station("gate", amps, surface_state::light_rust));
        ASSERT_TRUE(s.is_solved()) << amps;
        const double by_second = 100.0 * s.ways[0].current.value() / amps,
                     by_chain = 100.0 * s.ways[1].current.value() / amps;
        second.emplace_back(amps, by_second);
        chain.emplace_back(amps, by_chain);
        table.emplace_back(amps, 100.0 - by_second - by_chain);
    }
    // current of a part as the simulator has it: its drop over its resistance
    points simulated;
    double worst = 0.0;
    const auto elements = test::kept_ways("elements.csv"), outputs = test::kept_ways("outputs.csv");
    for (const auto& [network, amps] : std::map<std::string, double>{{"gate-gently", 40.0}, {"gate-hard", 320.0}}) {
        std::size_t row = 0;
        for (const auto& e : elements.rows()) {
            if (e.text("kind") != "R") continue;
            const auto& drop = outputs.rows().at(row++);
            if (e.text("network") != network) continue;
            const std::string& name = e.text("name");
            const points* ours = name == "gate clamp"    ? &second
                                 : name == "table clamp" ? &table
                                 : name == "chain"       ? &chain
                                                         : nullptr;
            if (ours == nullptr) continue;
            const double share = 100.0 * drop.number("drop_V") / e.number("value") / amps;
            simulated.emplace_back(amps, share);
            worst = std::max(worst, std::fabs(share - (amps < 100.0 ? ours->front() : ours->back()).second));
        }
    }
    ASSERT_EQ(simulated.size(), 6U);
    constexpr double allowed = 0.001;  // points of 100
    EXPECT_LT(worst, allowed);
    double least = 100.0, at_least = 0.0;
    for (const auto& [amps, share] : table)
        if (share < least) {
            least = share;
            at_least = amps;
        }
    page_chart chart("Who carries what as the current rises", {"welding current [A]", 0.0, 320.0},
                     {"share of the current [%]", 0.0, 80.0});
    chart.curve(second, 0, "clamp on the gate and its lead")
        .curve(table, 1, "gate on the table, clamp on the table")
        .curve(chain, 4, "hoist chain and an earth wire: stray")
        .dots(simulated, dot::ring, "circuit simulator, settled resistances");
    expect_on_page("ways.md", "ways_shares.svg", chart,
                   "A gate lies on a lightly rusted table: one clamp sits on the table, one on the gate, and a hoist "
                   "chain still hangs on it. "
                   "No one share holds for all currents: the table takes " +
                       number_text(table.front().second, 2) + " % at 40 A, " + number_text(least, 2) + " % at " +
                       number_text(at_least) + " A and " + number_text(table.back().second, 2) +
                       " % at 320 A, as its spots warm and resist more at first, and then yield. Rings: ngspice at the "
                       "settled resistances, the same shares within " +
                       number_text(allowed) + " points. No part of the stray share is allowed.");
}

}  // namespace
