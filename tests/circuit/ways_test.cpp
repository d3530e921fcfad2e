// Ways beside the path: how the current divides, and what it then does, against arithmetic by hand.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/measured_body.hpp>
#include <weldloop/circuit/workpiece_body.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/field/surface_reading.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/way_findings.hpp>
#include <weldloop/solve/sparse_lu.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iostream>
#include <map>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;

// A part of so many milliohm and no known temperature.
measured_part ohmic(const std::string& name, double milliohms)
{
    return {.name = name, .drop = exactly(in_si<voltage>(0.1 * milliohms)), .at = 100_A};
}

// Feeder, arc, post, the path's own way back, stud, tail.
station two_posts(double amps, double own_milliohms)
{
    station s{
        .name = "bench", .job = {.process = process::gmaw, .current = in_si<current>(amps)}, .where = {.air = 25_degC}};
    s.path = {ohmic("feeder", 1.0), arc{}, junction{"post"}, ohmic("own way", own_milliohms), junction{"stud"},
              ohmic("tail", 0.5)};
    return s;
}

double amps_of(const station& s, const loop_state& state, const std::string& part)
{
    return state.parts[place_of(s, part)].current.value();
}
double volts_of(const station& s, const loop_state& state, const std::string& part)
{
    return state.parts[place_of(s, part)].drop.value();
}

constexpr double exact = 1e-9;

// source: current divider, I R2/(R1 + R2)
TEST(Ways, TwoResistancesShareAsTheDividerSays)
{
    for (const double own : {0.05, 1.0, 2.0, 40.0})
        for (const double other : {0.02, 3.0, 500.0}) {
            station s = two_posts(240.0, own);
            s.ways = {{.name = "strap", .from = "post", .to = "stud", .path = {ohmic("strap metal", other)}}};
            const loop_state state = solve_loop(s);
            ASSERT_TRUE(state.is_solved());
            const double share = own / (own + other), volts = 240.0 * 1e-3 * own * other / (own + other);
            EXPECT_NEAR_REL(state.ways[0].current.value(), 240.0 * share, exact);
            EXPECT_NEAR_REL(amps_of(s, state, "strap metal"), 240.0 * share, exact);
            EXPECT_NEAR_REL(amps_of(s, state, "own way"), 240.0 * (1.0 - share), exact);
            EXPECT_NEAR_REL(amps_of(s, state, "tail"), 240.0, exact);
            // the largest that reaches a point, whichever way it comes or goes
            EXPECT_NEAR_REL(amps_of(s, state, "post"), 240.0, exact);
            EXPECT_NEAR_REL(amps_of(s, state, "stud"), 240.0, exact);
            EXPECT_NEAR_REL(volts_of(s, state, "own way"), volts, exact);
            EXPECT_NEAR_REL(volts_of(s, state, "strap metal"), volts, exact);
            EXPECT_NEAR_REL(state.total_drop.value(), 240.0 * 1.5e-3 + volts, exact);
        }
}

// source: a protective conductor of 0.214 ohm beside a return of 2, 20 and 200 milliohm: the divider, to the ampere
TEST(Ways, AProtectiveConductorTakesWhatAWornReturnLeaves)
{
    const std::array<std::pair<double, double>, 3> worn{{{2.0, 2.3}, {20.0, 21.0}, {200.0, 121.0}}};
    for (const auto& [milliohms, printed] : worn) {
        station s = two_posts(250.0, milliohms);
        s.ways = {
            {.name = "earth", .from = "post", .to = "stud", .kind = way_kind::stray, .path = {ohmic("wire", 214.0)}}};
        const double amps = solve_loop(s).ways[0].current.value();
        EXPECT_NEAR(amps, printed, printed < 10.0 ? 0.05 : 0.5) << milliohms;
        EXPECT_NEAR_REL(amps, 250.0 * milliohms / (milliohms + 214.0), exact);
    }
}

// source: tests/reference/circuit-stray-current.csv, SC-71 to SC-73: shares computed from the resistances in the row
TEST(Ways, SharesOfTheTable)
{
    const std::map<std::string, std::array<double, 3>> rows{
        {"SC-71", {200.0, 20.0, 50.0}}, {"SC-72", {250.0, 5.0, 80.0}}, {"SC-73", {180.0, 200.0, 60.0}}};
    const test::reference_table table("circuit-stray-current.csv");
    ASSERT_EQ(table.rows().size(), rows.size());
    for (const auto& row : table.rows()) {
        const auto [amps, own, protective] = rows.at(row.text("id"));
        station s = two_posts(amps, own);
        s.ways = {{.from = "post", .to = "stud", .kind = way_kind::stray, .path = {ohmic("earth", protective)}}};
        constexpr double six_digits = 5e-6;
        EXPECT_NEAR_REL(solve_loop(s).ways[0].current.value(), row.number("value"), six_digits) << row.where();
    }
}

// source: the same loop at a thousand times the period, whose swing is still nothing beside its rises: what a period of
// milliseconds moves at a time says little of how far it is from rest
TEST(Ways, PeriodsOfMillisecondsComeToRestAsThoseOfSeconds)
{
    const auto at_period = [](double seconds) {
        station s{.name = "bench",
                  .job = {.process = process::gmaw,
                          .current = 420_A,
                          .duty = duty_cycle::of(in_si<duration>(0.8 * seconds), in_si<duration>(seconds))},
                  .where = {.air = 25_degC}};
        s.path = {welding_cable(square_mm(70), 6_m),
                  arc{},
                  junction{"post"},
                  welding_cable(square_mm(50), 5_m).named("own way"),
                  junction{"stud"},
                  ohmic("tail", 0.5)};
        s.ways = {{.name = "strap",
                   .from = "post",
                   .to = "stud",
                   .path = {crimped_lug("lug", square_mm(10)), welding_cable(square_mm(10), 4_m).named("thin lead")}}};
        return s;
    };
    const station s = at_period(2e-3);
    const loop_state short_one = solve_loop(s), long_one = solve_loop(at_period(2.0));
    ASSERT_TRUE(short_one.is_solved());
    ASSERT_TRUE(long_one.is_solved());
    for (const char* lead : {"own way", "thin lead"}) {
        const part_state &one = short_one.parts[place_of(s, lead)], &other = long_one.parts[place_of(s, lead)];
        EXPECT_GT((other.mean - s.where.air).value(), 20.0) << lead;
        EXPECT_NEAR(one.mean.in_kelvin(), other.mean.in_kelvin(), 0.01) << lead;
        EXPECT_NEAR_REL(one.current.value(), other.current.value(), 1e-5) << lead;
    }
}

// source: a stud between parts of no known temperature is as warm as the air, whatever the duty
TEST(Ways, APointThatNothingWarmsIsAsWarmAsTheAir)
{
    for (const double share : {0.3, 1.0}) {
        station s = two_posts(240.0, 2.0);
        s.job.duty = duty_cycle::of(share);
        s.ways = {{.name = "strap", .from = "post", .to = "stud", .path = {ohmic("strap metal", 2.0)}}};
        const loop_state state = solve_loop(s);
        ASSERT_TRUE(state.is_solved());
        for (const char* point : {"post", "stud"})
            EXPECT_NEAR((state.parts[place_of(s, point)].peak - s.where.air).value(), 0.0, 1e-6);
    }
}

// source: by hand; beside 6 milliohm stands 2 + (4 beside 1 + 3) = 4 milliohm
TEST(Ways, AWayMayBranchFromAnotherWay)
{
    station s = two_posts(100.0, 6.0);
    s.ways = {{.name = "second return",
               .from = "post",
               .to = "stud",
               .path = {ohmic("first length", 2.0), junction{"fork"}, ohmic("left", 4.0)}},
              {.name = "third return", .from = "fork", .to = "stud", .path = {ohmic("right", 1.0), ohmic("end", 3.0)}}};
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    EXPECT_NEAR_REL(amps_of(s, state, "own way"), 40.0, exact);
    EXPECT_NEAR_REL(amps_of(s, state, "first length"), 60.0, exact);
    EXPECT_NEAR_REL(amps_of(s, state, "left"), 30.0, exact);
    EXPECT_NEAR_REL(amps_of(s, state, "end"), 30.0, exact);
    EXPECT_NEAR_REL(amps_of(s, state, "fork"), 60.0, exact);
    EXPECT_NEAR_REL(state.ways[0].current.value(), 60.0, exact);  // the largest along it
    EXPECT_NEAR_REL(state.ways[1].current.value(), 30.0, exact);
}

// source: tests/reference/circuit-examples.csv, CE-22: 8 A into arms of 2, 11, 14, 3 and a cross arm of 32
TEST(Ways, ABridge)
{
    station s{.name = "bridge", .job = {.current = 8_A}, .where = {.air = 25_degC}};
    s.path = {ohmic("feeder", 1.0), arc{},         junction{"A"},     ohmic("2", 2.0), junction{"B"},
              ohmic("11", 11.0),    junction{"D"}, ohmic("tail", 1.0)};
    s.ways = {
        {.name = "other side", .from = "A", .to = "D", .path = {ohmic("14", 14.0), junction{"C"}, ohmic("3", 3.0)}},
        {.name = "cross", .from = "B", .to = "C", .path = {ohmic("32", 32.0)}}};
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    for (const auto& [part, amps] : {std::pair{"2", 5.0}, {"11", 4.0}, {"14", 3.0}, {"3", 4.0}, {"32", 1.0}})
        EXPECT_NEAR_REL(amps_of(s, state, part), amps, exact) << part;
    EXPECT_NEAR_REL(state.total_drop.value(), 8.0 * 2e-3 + 54e-3, exact);
    // in balance, 14/3.5 = 2/0.5, nothing crosses
    s.ways[0].path[2] = ohmic("3", 77.0);
    EXPECT_NEAR(solve_loop(s).ways[1].current.value(), 0.0, 8.0 * exact);
}

// source: the lower of two levelled drops takes all but what lifts the other as high; ohmic where it is stray
TEST(Ways, AConstantDropInAWay)
{
    station s = two_posts(300.0, 1.0);
    measured_part ring = ohmic("ring", 1.0);
    ring.drop = exactly(0.2_V);
    ring.at = 300_A;
    ring.law = drop_law::constant;
    s.ways = {{.name = "over the ring", .from = "post", .to = "stud", .path = {ring}}};
    // 0.2 V over 1 milliohm are 200 A
    EXPECT_NEAR_REL(solve_loop(s).ways[0].current.value(), 100.0, exact);
    s.ways[0].kind = way_kind::stray;
    EXPECT_NEAR_REL(solve_loop(s).ways[0].current.value(), 300.0 / (1.0 + 2.0 / 3.0), exact);
}

// ---- real parts: heat and current together

station gate(way_kind last)
{
    station s{.name = "gate",
              .job = {.process = process::gmaw, .current = 230_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 30_degC}};
    s.path = {welding_cable(aught(1), 8_m).named("feeder lead"),
              arc{},
              workpiece{.metal = mild_steel, .mass = 30_kg, .thickness = 3_mm, .name = "gate"},
              contact{.metals = {mild_steel, mild_steel},
                      .force = 180_N,
                      .surface = surface_state::spatter_covered,
                      .name = "gate on table"},
              work_connection{.clamp = spring_clamp(300_A),
                              .onto = mild_steel,
                              .surface = surface_state::light_rust,
                              .name = "table clamp"},
              welding_cable(awg(1), 9_m).named("work lead"),
              junction{"return stud"},
              crimped_lug("return lug", awg(1))};
    s.ways = {{.name = "clamp on the gate",
               .from = "gate",
               .to = "return stud",
               .path = {work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "gate clamp"},
                        welding_cable(awg(1), 9_m).named("second work lead")}},
              {.name = "hoist chain",
               .from = "gate",
               .to = "return stud",
               .kind = last,
               .path = {ohmic("chain", 100.0), welding_cable(square_mm(10), 20_m).named("earth wire")}}};
    return s;
}

way turned(way w)
{
    std::swap(w.from, w.to);
    std::reverse(w.path.begin(), w.path.end());
    return w;
}

// source: a circuit does not know from which end a way is written down, nor in which order ways are
TEST(Ways, SenseAndOrderHaveNoEffect)
{
    const station s = gate(way_kind::stray);
    const loop_state before = solve_loop(s);
    ASSERT_TRUE(before.is_solved());
    for (int how = 1; how < 8; ++how) {
        station other = s;
        if ((how & 1) != 0) other.ways[0] = turned(other.ways[0]);
        if ((how & 2) != 0) other.ways[1] = turned(other.ways[1]);
        if ((how & 4) != 0) std::swap(other.ways[0], other.ways[1]);
        const loop_state after = solve_loop(other);
        ASSERT_TRUE(after.is_solved());
        for (std::size_t i = 0; i < parts_in(s); ++i) {
            const part_state &a = before.parts[i], &b = after.parts[place_of(other, name_of(s, i))];
            constexpr double same = 1e-6;
            EXPECT_NEAR(b.current.value(), a.current.value(), same * s.job.current.value()) << how << name_of(s, i);
            EXPECT_NEAR(b.drop.value(), a.drop.value(), same * before.total_drop.value()) << how << name_of(s, i);
            const double rise = (a.peak - s.where.air).value();
            EXPECT_NEAR((b.peak - s.where.air).value(), rise, same * std::max(1.0, rise)) << how << name_of(s, i);
            EXPECT_EQ(b.hottest, a.hottest) << how << name_of(s, i);
        }
        EXPECT_NEAR_REL(after.total_drop.value(), before.total_drop.value(), 1e-6);
    }
}

// source: what goes into a point comes out of it; heat made is drop times current of every part that has a temperature
TEST(Ways, CurrentsMeetAndHeatIsKept)
{
    station s = gate(way_kind::stray);
    std::get<work_connection>(s.path[4]).clamp = screw_clamp(300_A);  // no spring that takes a share of the current
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    const double amps = s.job.current.value();
    EXPECT_NEAR(amps_of(s, state, "gate on table") + amps_of(s, state, "gate clamp") + amps_of(s, state, "chain"), amps,
                1e-9 * amps);
    EXPECT_NEAR(amps_of(s, state, "return lug"), amps, 1e-9 * amps);
    EXPECT_NEAR(amps_of(s, state, "gate"), amps, 1e-9 * amps);
    double made = 0.0;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        if (name_of(s, i) != "chain") made += 0.6 * state.parts[i].loss.value();
    }
    EXPECT_NEAR_REL(state.made.value(), made, 1e-6);
    // what is stored while a period repeats to 1e-4 K: most of it in the piece of 13440 J/K, over 600 s
    EXPECT_NEAR(state.lost.value(), state.made.value(), 2.0 * 1e-4 * 13440.0 / 600.0);
    detail::loop_solver solver(s);
    solve::periodic_state found;
    static_cast<void>(solver.solve(scatter::typical, &found));
    EXPECT_NEAR(found.imbalance, 0.0, 1e-9);
    s.job.duty = duty_cycle::continuous();
    const loop_state steady = solve_loop(s);
    ASSERT_TRUE(steady.is_solved());
    EXPECT_NEAR_REL(steady.lost.value(), steady.made.value(), 1e-9);
    // where the current keeps still, heat is drop times current to the last digit
    for (const part_state& p : steady.parts)
        EXPECT_NEAR_REL(p.loss.value() + 1.0, (p.drop * p.current).value() + 1.0, 1e-12);
}

// source: by hand, from the drops of the parts; steady current, so that the metal of the piece has one temperature
TEST(Ways, VoltsRoundTheLoopsAddUp)
{
    station s = gate(way_kind::intended);
    s.job.duty = duty_cycle::continuous();
    s.job.current = 150_A;
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    const auto& piece = state.parts[place_of(s, "gate")];
    const double spread =
        spreading_resistance_of(std::get<workpiece>(s.path[2])).value() *
        (1.0 + mild_steel.temperature_coefficient.value() * (piece.mean - reference_temperature).value());
    const auto sum = [&](std::initializer_list<const char*> parts) {
        double volts = spread * amps_of(s, state, *parts.begin());
        for (const char* p : parts) volts += volts_of(s, state, p);
        return volts;
    };
    const double own = sum({"gate on table", "table clamp", "work lead"}),
                 second = sum({"gate clamp", "second work lead"}), chain = sum({"chain", "earth wire"});
    EXPECT_NEAR_REL(second, own, 1e-9);
    EXPECT_NEAR_REL(chain, own, 1e-9);
    EXPECT_NEAR_REL(state.total_drop.value(),
                    volts_of(s, state, "feeder lead") + 150.0 * spread + own + volts_of(s, state, "return lug"), 1e-9);
    // what spreads has each current over again: as one at the largest it makes the same heat
    double squares = 150.0 * 150.0;
    for (const char* p : {"gate on table", "gate clamp", "chain"}) squares += std::pow(amps_of(s, state, p), 2.0);
    EXPECT_NEAR_REL(piece.loss.value(), spread * squares, 1e-9);
}

// source: a way past the arc is a short circuit: all else is as without it
TEST(Ways, AWayPastTheArcIsTakenAsOpen)
{
    station s = two_posts(200.0, 2.0);
    s.path.insert(s.path.begin() + 1, junction{"feed stud"});
    s.ways = {{.name = "beside", .from = "post", .to = "stud", .path = {ohmic("strap", 2.0)}}};
    const loop_state without = solve_loop(s);
    for (const auto& [from, to] : {std::pair{"feed stud", "stud"}, {"post", "feed stud"}}) {
        station shorted = s;
        shorted.ways.push_back({.name = "past the arc", .from = from, .to = to, .path = {ohmic("spanner", 0.5)}});
        const loop_state state = solve_loop(shorted);
        ASSERT_TRUE(state.is_solved());
        EXPECT_TRUE(state.ways[1].spans_arc);
        EXPECT_FALSE(state.ways[1].conducts);
        EXPECT_EQ(state.ways[1].current.value(), 0.0);
        EXPECT_FALSE(state.ways[0].spans_arc);
        EXPECT_NEAR_REL(state.ways[0].current.value(), without.ways[0].current.value(), exact);
        EXPECT_NEAR_REL(state.total_drop.value(), without.total_drop.value(), exact);
    }
    // two halves that only together pass the arc: the second is what closes the circuit
    station halves = s;
    halves.ways.push_back({.name = "first half",
                           .from = "feed stud",
                           .to = "post",
                           .path = {ohmic("a", 1.0), junction{"middle"}, ohmic("b", 1.0)}});
    EXPECT_TRUE(solve_loop(halves).ways[1].spans_arc);
    halves.ways.back() = {.name = "before", .from = "feed stud", .to = "middle", .path = {ohmic("a", 1.0)}};
    halves.ways.push_back({.name = "behind",
                           .from = "stud",
                           .to = "post",
                           .path = {ohmic("b", 1.0), junction{"middle"}, ohmic("c", 1.0)}});
    const loop_state both = solve_loop(halves);
    EXPECT_EQ(both.ways[1].spans_arc + both.ways[2].spans_arc, 1);
}

path_part painted(const std::string& name)
{
    return work_connection{
        .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::painted_unbroken, .name = name};
}

// source: where only one way is left it carries all
TEST(Ways, WhenAllElseIsOpenTheStrayWayCarriesAll)
{
    station s = two_posts(180.0, 1.0);
    s.ways = {{.name = "earth", .from = "post", .to = "stud", .kind = way_kind::stray, .path = {ohmic("wire", 214.0)}}};
    s.path[3] = painted("own way");
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    EXPECT_FALSE(state.parts[3].conducts);
    EXPECT_EQ(state.parts[3].current.value(), 0.0);
    EXPECT_NEAR_REL(state.ways[0].current.value(), 180.0, exact);
    EXPECT_NEAR_REL(state.total_drop.value(), 180.0 * (1.5e-3 + 0.214), exact);
    // and with that open too there is no circuit
    s.ways[0].path.push_back(painted("clamp of the wire"));
    EXPECT_EQ(solve_loop(s).outcome, loop_outcome::open_circuit);
    EXPECT_EQ(solve_loop(s).parts[0].current.value(), 0.0);
}

// source: an open way is no way
TEST(Ways, AnOpenWayCarriesNothing)
{
    station s = two_posts(180.0, 1.0);
    const loop_state without = solve_loop(s);
    s.ways = {{.name = "painted", .from = "post", .to = "stud", .path = {ohmic("strap", 1.0), painted("clamp")}}};
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    EXPECT_FALSE(state.ways[0].conducts);
    EXPECT_FALSE(state.ways[0].spans_arc);
    EXPECT_EQ(state.ways[0].current.value(), 0.0);
    EXPECT_NEAR_REL(amps_of(s, state, "own way"), 180.0, exact);
    EXPECT_NEAR_REL(state.total_drop.value(), without.total_drop.value(), exact);
    const part_state& clamp = state.parts[place_of(s, "clamp")];
    EXPECT_NEAR((clamp.peak - s.where.air).value(), 0.0, 1e-6);
    EXPECT_EQ(clamp.drop.value(), 0.0);
}

// source: Kirchhoff's law of points: both supplies' currents add up in the return they share
TEST(Ways, ASecondSupplyAddsUpInTheSharedReturn)
{
    station s = two_posts(200.0, 2.0);
    s.others = {{.name = "second welder", .from = "post", .to = "stud", .current = 150_A}};
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    EXPECT_NEAR_REL(amps_of(s, state, "own way"), 350.0, exact);
    EXPECT_NEAR_REL(amps_of(s, state, "feeder"), 200.0, exact);
    EXPECT_NEAR_REL(amps_of(s, state, "tail"), 200.0, exact);
    EXPECT_NEAR_REL(state.total_drop.value(), 200.0 * 1.5e-3 + 350.0 * 2e-3, exact);
    // the other way round they take from each other
    std::swap(s.others[0].from, s.others[0].to);
    const loop_state against = solve_loop(s);
    EXPECT_NEAR_REL(amps_of(s, against, "own way"), 50.0, exact);
    EXPECT_NEAR_REL(against.total_drop.value(), 200.0 * 1.5e-3 + 50.0 * 2e-3, exact);
    // beside a second way both divide
    s.ways = {{.name = "strap", .from = "post", .to = "stud", .path = {ohmic("strap metal", 6.0)}}};
    std::swap(s.others[0].from, s.others[0].to);
    EXPECT_NEAR_REL(solve_loop(s).ways[0].current.value(), 350.0 / 4.0, exact);
}

// ---- the workpiece

// Rings of a disc from its patch to its rim: heat comes in at the patch, every ring loses the same per area. From a
// patch at no rise outwards; what the mean lies below it is the resistance.
double marched_resistance(double conductivity, double thickness, double patch, double rim)
{
    constexpr int rings = 40000;
    const double step = (rim - patch) / rings, face = std::numbers::pi * (rim * rim - patch * patch);
    double rise = 0.0, flow = 1.0, sum = 0.0, radius = patch;
    for (int i = 0; i < rings; ++i) {
        const double outer = radius + step, middle = 0.5 * (radius + outer);
        const double ring = std::numbers::pi * (outer * outer - radius * radius);
        // half of the ring's own loss has left by its middle
        flow -= 0.5 * ring / face;
        const double fall = flow * step / (conductivity * thickness * 2.0 * std::numbers::pi * middle);
        sum += ring * (rise - 0.5 * fall);
        rise -= fall;
        flow -= 0.5 * ring / face;
        radius = outer;
    }
    EXPECT_NEAR(flow, 0.0, 1e-9);  // nothing leaves at the rim
    return -sum / face;
}

TEST(Workpiece, HeatSpreadsAsInADiscWithAnEvenSink)
{
    for (const double kg : {0.5, 5.0, 30.0, 2000.0})
        for (const double mm : {1.0, 3.0, 12.0}) {
            const workpiece w{.metal = mild_steel, .mass = in_si<mass>(kg), .thickness = in_si<length>(1e-3 * mm)};
            const double rim = std::sqrt(kg / 7870.0 / (1e-3 * mm) / std::numbers::pi);
            // rings of a 40000th of the disc: the trapezoids leave less than 1e-6
            EXPECT_NEAR_REL(1.0 / patch_to_piece(w).value(), marched_resistance(50.0, 1e-3 * mm, 0.010, rim), 2e-5);
        }
}

// source: by hand: 30 kg of steel of 7870 kg/m3 and 3 mm are 1.27065 m2, a disc of 0.635974 m; ln(63.5974) = 4.15257;
// 143e-9 ohm m x 4.15257/(2 pi 0.003 m) = 31.503 micro-ohm
TEST(Workpiece, SpreadingResistanceByHand)
{
    const workpiece w{.metal = mild_steel, .mass = 30_kg, .thickness = 3_mm};
    EXPECT_NEAR(spreading_resistance_of(w).value(), 31.503e-6, 0.0005e-6);
    // both faces, 2 x 1.27065 m2, and 30 kg of 448 J/(kg K)
    EXPECT_NEAR(workpiece_body_of(w).surface.value(), 2.5413, 5e-5);
    EXPECT_NEAR(workpiece_body_of(w).capacity.value(), 13440.0, 1e-6);
}

TEST(Workpiece, WhatCannotBeIsRefused)
{
    const workpiece good{.metal = mild_steel, .mass = 30_kg, .thickness = 3_mm};
    EXPECT_GT(patch_to_piece(good).value(), 0.0);
    workpiece bad = good;
    bad.mass = 0_kg;
    EXPECT_THROW(static_cast<void>(patch_to_piece(bad)), out_of_range_error);
    bad = good;
    bad.thickness = in_si<length>(std::nan(""));
    EXPECT_THROW(static_cast<void>(spreading_resistance_of(bad)), not_finite_error);
    bad = good;
    bad.stays = 0_min;
    EXPECT_THROW(static_cast<void>(workpiece_body_of(bad)), out_of_range_error);
    bad = good;
    bad.pieces_per_hour = 4000.0;
    EXPECT_THROW(static_cast<void>(workpiece_body_of(bad)), out_of_range_error);
    // hardly wider than the patch: finite
    const workpiece tiny{.metal = mild_steel, .mass = in_si<mass>(0.005), .thickness = 3_mm};
    EXPECT_TRUE(std::isfinite(patch_to_piece(tiny).value()));
    EXPECT_GT(spreading_resistance_of(tiny).value(), 0.0);
}

// A clamp on a piece of many square metres beside the same clamp on a plate without end, of the same thickness. The
// plate loses heat by the fin equation, most of it near the patch; the piece counts as losing evenly all over, which
// has the heat run further: its patch is hotter, never colder.
TEST(Workpiece, AGreatPieceIsNearlyAPlateWithoutEnd)
{
    const auto peak_on = [](bool piece, double kg) {
        station s{.name = "plate",
                  .job = {.process = process::smaw, .current = 200_A, .duty = duty_cycle::of(0.6)},
                  .where = {.air = 25_degC}};
        s.path = {welding_cable(square_mm(50), 10_m).named("feeder"), arc{},
                  work_connection{.clamp = screw_clamp(300_A),
                                  .onto = mild_steel,
                                  .surface = surface_state::light_rust,
                                  .name = "clamp",
                                  .work_thickness = 10_mm},
                  welding_cable(square_mm(50), 10_m).named("work lead")};
        if (piece)
            s.path.insert(s.path.begin() + 2,
                          workpiece{.metal = mild_steel, .mass = in_si<mass>(kg), .thickness = 10_mm});
        const loop_state state = solve_loop(s);
        EXPECT_TRUE(state.is_solved());
        return state.parts[place_of(s, "clamp")].peak.in_celsius();
    };
    const double endless = peak_on(false, 0.0), great = peak_on(true, 2000.0), greater = peak_on(true, 20000.0);
    std::cout << "clamp, degC: plate without end " << endless << ", piece of 2 t " << great << ", of 20 t " << greater
              << '\n';
    EXPECT_GT(great, endless);
    EXPECT_GT(greater, great);
    // 25 m2 of 10 mm: within a tenth of the rise
    EXPECT_LT(great - endless, 0.1 * (endless - 25.0));
}

// ---- what cannot be

TEST(Ways, WhatCannotBeIsRefused)
{
    const station good = gate(way_kind::stray);
    EXPECT_TRUE(solve_loop(good).is_solved());
    const auto refused = [&good](const auto& spoil, const std::string& argument) {
        station s = good;
        spoil(s);
        try {
            static_cast<void>(solve_loop(s));
            ADD_FAILURE() << "taken: " << argument;
        } catch (const error& e) {
            EXPECT_NE((e.argument() + " is " + e.value()).find(argument), std::string::npos) << e.what();
        }
    };
    refused([](station& s) { s.ways[0].from = "gat"; }, "start of way \"clamp on the gate\" is \"gat\"");
    refused([](station& s) { s.ways[0].to = "work lead"; }, "end of way \"clamp on the gate\" is \"work lead\"");
    refused([](station& s) { s.ways[0].to = "gate"; }, "way \"clamp on the gate\" is from \"gate\" to the same point");
    refused([](station& s) { s.ways[1].path.clear(); }, "way \"hoist chain\" is without parts");
    refused([](station& s) { s.ways[1].path.emplace_back(wire_gun("gun", 3_m)); }, "part of a way is \"gun\"");
    refused([](station& s) { s.ways[1].path.emplace_back(arc{.name = "second arc"}); },
            "part of a way is \"second arc\"");
    refused([](station& s) { s.ways[1].path.emplace_back(electrode_holder("holder", 300_A)); },
            "part of a way is \"holder\"");
    refused([](station& s) { s.ways[1].path[0] = ohmic("work lead", 1.0); }, "part name is \"work lead\" twice");
    refused([](station& s) { s.ways[1].name = "clamp on the gate"; }, "way name is \"clamp on the gate\" twice");
    refused(
        [](station& s) {
            s.ways[1].path.emplace_back(junction{"own"});
            s.ways[1].to = "own";
        },
        "which stands in that way itself");
    refused([](station& s) { s.others = {{.name = "b", .from = "gate", .to = "gate", .current = 100_A}}; },
            "feed \"b\" is from \"gate\" to the same point");
    refused([](station& s) { s.others = {{.name = "b", .from = "gate", .to = "stud", .current = 100_A}}; },
            "end of feed \"b\" is \"stud\"");
    refused([](station& s) { s.others = {{.name = "b", .from = "gate", .to = "return stud", .current = 0_A}}; },
            "current of feed \"b\"");
    refused([](station& s) { std::get<measured_part>(s.ways[1].path[0]).at = 0_A; },
            "current at which a part was measured");
    refused(
        [](station& s) {
            std::get<measured_part>(s.ways[1].path[0]).drop = {0.3_V, 0.2_V, 0.4_V};
        },
        "rise from low to typical measured drop");
}

// source: the page on ways: level from a hundredth of its current on, straight below
TEST(MeasuredPart, AConstantDropIsLevelFromAHundredthOfItsCurrent)
{
    const detail::loop_network::measured_at m{
        .drop = exactly(2_V), .at = 300.0, .is_constant = true, .volts = 2.0, .law = nullptr};
    EXPECT_EQ(m.drop_of(300.0).volts, 2.0);
    EXPECT_EQ(m.drop_of(-3.0).volts, -2.0);
    EXPECT_NEAR_REL(m.drop_of(1.5).volts, 1.0, 1e-12);
}

// source: the judgement that stands with it: emissivity 0.5, as wide as a ball of its area (area = pi d^2), mild steel
TEST(MeasuredPart, IsABodyOfItsAreaAndMass)
{
    const thermal_body b = measured_body(0.03_m2, 2_kg);
    EXPECT_EQ(static_cast<double>(b.emissivity), 0.5);
    EXPECT_NEAR_REL(b.diameter.value(), 0.0977205, 1e-6);
    EXPECT_EQ(b.capacity, 2_kg * mild_steel.specific_heat);
    EXPECT_EQ(measured_body(0.03_m2, std::nullopt).capacity.value(), 0.0);
}

}  // namespace

// A junction that only brushes and clamps touch, none of which warms it, is as warm as the air.
TEST(Ways, AJunctionNothingWarmsIsAsWarmAsTheAir)
{
    for (const duty_cycle& duty : {duty_cycle::of(4_min, 10_min), duty_cycle::continuous()}) {
        station s{.name = "turned frame",
                  .job = {.process = process::smaw, .current = 120_A, .duty = duty},
                  .where = {.air = 30_degC}};
        rotary_ground turner{.brush = brush_kind::metal_graphite};
        turner.name = "turner";
        const work_connection lug{.clamp = bolted_work_lug(square_mm(35)),
                                  .onto = mild_steel,
                                  .surface = surface_state::clean,
                                  .name = "seat lug"};
        s.path = {welding_cable(awg(2), 3_m).named("whip"),
                  arc{},
                  turner,
                  junction{.name = "frame"},
                  lug,
                  welding_cable(awg(2), 10_m).named("work lead"),
                  junction{.name = "stud"},
                  crimped_lug("output lug", awg(2))};
        s.ways = {{.name = "second",
                   .from = "frame",
                   .to = "stud",
                   .path = {work_connection{.clamp = screw_clamp(300_A),
                                            .onto = mild_steel,
                                            .surface = surface_state::clean,
                                            .name = "second clamp"},
                            welding_cable(awg(2), 10_m).named("second lead")}}};
        const loop_state state = solve_loop(s);
        ASSERT_EQ(state.outcome, loop_outcome::solved);
        EXPECT_NEAR(state.parts[3].peak.in_celsius(), 30.0, 1e-6);
        for (const part_state& p : state.parts) EXPECT_TRUE(std::isfinite(p.drop.value()));
    }
}
