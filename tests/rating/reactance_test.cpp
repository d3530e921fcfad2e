// Alternating current in the balance of volts: what the leads' inductance takes stands at right angles to loop and arc.
// Every expected value by hand from the phasor diagram, U^2 = (V + arc)^2 + (X I)^2.
#include <weldloop/circuit/loop_inductance.hpp>
#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/supply_line.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

// Covered electrodes on alternating current of 50 Hz, the work lead in a coil.
station gate_post(steel_beside steel)
{
    station s{.name = "gate post",
              .job = {.process = process::smaw, .current = 120_A, .duty = duty_cycle::of(0.35)},
              .where = {.air = 20_degC}};
    s.job.course = waveform::sine(120_A, 50_Hz);
    cable coil = welding_cable(square_mm(50), 25_m).named("work lead");
    coil.lay = lay::coiled;
    coil.coil_turns = 15;
    coil.steel = steel;
    s.path = {welding_cable(square_mm(50), 25_m).named("electrode lead"), electrode_holder("holder", 300_A), arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "work clamp"}, coil};
    s.supply = supply{.kind = supply_kind::drooping, .short_circuit = 200_A};
    s.supply->no_load.peak = 75_V;
    s.allowed_drop = 30_V;
    return s;
}
const remedy* find(const std::vector<remedy>& all, const std::string& words)
{
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const remedy& r) { return r.what.find(words) != std::string::npos; });
    return at == all.end() ? nullptr : &*at;
}
bool has(const assessment& a, weld_id id)
{
    return std::any_of(a.weld.begin(), a.weld.end(), [id](const weld_statement& w) { return w.id == id; });
}
bool clears(const remedy& r, weld_id id)
{
    return std::find(r.clears_weld.begin(), r.clears_weld.end(), id) != r.clears_weld.end();
}

TEST(Reactance, StandsAtRightAngles)
{
    const station s = gate_post(steel_beside::under_coil);
    const double by_hand = 2.0 * std::numbers::pi * 50.0 * lead_inductance_of(s).total.value();  // ohm
    EXPECT_NEAR_REL(reactance_of(s).value(), by_hand, 1e-9);
    ASSERT_GT(by_hand, 0.01);
    const operating_point p = operating_point_of(s);
    ASSERT_TRUE(p.is_found());
    const double across = by_hand * p.current.value(), in_phase = (p.arc_voltage + p.loop_drop).value();
    EXPECT_NEAR_REL(p.inductive.value(), across, 1e-9);
    EXPECT_NEAR_REL(p.terminals.value(), std::sqrt(in_phase * in_phase + across * across), 1e-9);
    // on the supply's straight line, 75 V at 0 A to 0 V at 200 A
    EXPECT_NEAR_REL(p.terminals.value(), 75.0 * (1.0 - p.current.value() / 200.0), 1e-5);
    // less current than without the reactance
    station direct = s;
    direct.job.course.reset();
    EXPECT_LT(p.current, operating_point_of(direct).current);
    EXPECT_EQ(operating_point_of(direct).inductive, voltage{});
}

// What a supply of one current has left over, and whether it holds the arc.
TEST(Reactance, TakesFromTheHeadroom)
{
    station s = gate_post(steel_beside::none);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 40_V};
    const assessment a = assess(s);
    ASSERT_TRUE(a.headroom);
    const double across = reactance_of(s).value() * 120.0;
    const double in_phase = std::sqrt(40.0 * 40.0 - across * across);
    EXPECT_NEAR_REL(a.headroom->typical.value(), in_phase - a.total_drop.typical.value() - (20.0 + 0.04 * 120.0), 1e-9);
    EXPECT_NE(a.arc_basis.find("at right angles"), std::string::npos) << a.arc_basis;
    // an output that loop and arc in phase would leave enough of
    s.supply->highest_output = in_si<voltage>(a.total_drop.typical.value() + 24.8 + 0.2);
    const assessment weak = assess(s);
    EXPECT_TRUE(std::any_of(weak.findings.begin(), weak.findings.end(),
                            [](const loop_finding& f) { return f.id == finding_id::supply_cannot_hold_arc; }));
}

// On a steady level the current stands: nothing along the inductance.
TEST(Reactance, IsNoneOnSteadyLevels)
{
    station s = gate_post(steel_beside::none);
    s.job.course = waveform::square_ac({.positive = 120_A, .negative = 120_A, .frequency = 50_Hz});
    EXPECT_EQ(reactance_of(s).value(), 0.0);
    s.job.course.reset();
    EXPECT_EQ(reactance_of(s).value(), 0.0);
}

// A coil on steel chokes the current: to take it off the steel, or to lay it out, is a step like others, and when the
// station is built so the statement is gone.
TEST(Reactance, SteelAndCoilHaveTheirSteps)
{
    for (const steel_beside steel : {steel_beside::within_coil, steel_beside::under_coil}) {
        const station s = gate_post(steel);
        ASSERT_TRUE(has(assess(s), weld_id::choked_current)) << to_text(steel);
        const auto all = remedies_for(s);
        const remedy* straight = find(all, "lay work lead out straight (now coiled)");
        ASSERT_NE(straight, nullptr);
        EXPECT_TRUE(clears(*straight, weld_id::choked_current));
        station laid = s;
        auto& lead = std::get<cable>(laid.path[4]);
        lead.lay = lay::alone;
        lead.coil_turns = {};
        lead.steel = steel_beside::none;
        EXPECT_FALSE(has(assess(laid), weld_id::choked_current));
        const remedy* off = find(all, "away from the steel");
        station away = s;
        std::get<cable>(away.path[4]).steel = steel_beside::none;
        EXPECT_EQ(off != nullptr && clears(*off, weld_id::choked_current), !has(assess(away), weld_id::choked_current));
    }
    // a lead alone through a frame
    station frame = gate_post(steel_beside::none);
    auto& lead = std::get<cable>(frame.path[4]);
    lead.lay = {};
    lead.coil_turns = {};
    lead.steel = steel_beside::round_lead;
    lead.length = 60_m;
    frame.job.course = waveform::sine(120_A, 200_Hz);
    ASSERT_TRUE(has(assess(frame), weld_id::choked_current));
    const auto all = remedies_for(frame);
    const remedy* off = find(all, "lay work lead away from the steel that is round the lead");
    ASSERT_NE(off, nullptr);
    EXPECT_TRUE(clears(*off, weld_id::choked_current));
}

}  // namespace
