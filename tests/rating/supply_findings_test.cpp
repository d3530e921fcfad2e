// What is found of a supply by itself, and what remote sensing makes good.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/sensed_drop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/supply_findings.hpp>

#include <algorithm>
#include <string>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

station gate_bench()
{
    station s{.name = "gate bench",
              .job = {.process = process::gmaw, .current = 200_A, .duty = duty_cycle::of(0.5)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", aught(1)),
              welding_cable(aught(1), 10_m).named("feeder lead"),
              wire_gun("gun", 3_m),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "work clamp"},
              welding_cable(aught(1), 10_m).named("work lead"),
              crimped_lug("return lug", aught(1))};
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 26_V};
    return s;
}
station stick_stand()
{
    station s = gate_bench();
    s.job.process = process::smaw;
    s.path[2] = electrode_holder("holder", 300_A);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 44_V};
    return s;
}

std::vector<std::string> ids_of(const assessment& a)
{
    std::vector<std::string> out;
    for (const loop_finding& f : a.findings) out.emplace_back(to_text(f.id));
    return out;
}
const loop_finding* finding_of(const assessment& a, finding_id id)
{
    const auto found =
        std::find_if(a.findings.begin(), a.findings.end(), [id](const loop_finding& f) { return f.id == id; });
    return found == a.findings.end() ? nullptr : &*found;
}

TEST(SupplyFindings, NoLoadVoltageAboveTheLimitComesFirst)
{
    station s = stick_stand();
    s.supply->no_load.peak = 120_V;
    const assessment a = assess(s);
    ASSERT_FALSE(a.findings.empty());
    EXPECT_EQ(a.findings.front().id, finding_id::no_load_above_limit);
    EXPECT_EQ(a.findings.front().severity, finding_severity::stop_job);
    EXPECT_NE(a.findings.front().text.find("120 V peak"), std::string::npos) << a.findings.front().text;
    EXPECT_NE(a.findings.front().text.find("113 V peak"), std::string::npos) << a.findings.front().text;
    EXPECT_TRUE(
        std::any_of(a.sources.begin(), a.sources.end(), [](const source& from) { return from == no_load_limits; }));
    // also where no current flows at all: then it is all there is
    std::get<work_connection>(s.path[4]).surface = surface_state::painted_unbroken;
    EXPECT_EQ(ids_of(assess(s)), (std::vector<std::string>{"no_load_above_limit", "open_circuit"}));
}

TEST(SupplyFindings, NoLoadVoltageBelowTheLimitSaysNothing)
{
    station s = stick_stand();
    s.supply->no_load.peak = 113_V;
    EXPECT_TRUE(assess(s).findings.empty());
    s.supply->no_load = {.kind = output_current::alternating, .peak = 100_V, .rms = 71_V};
    EXPECT_TRUE(assess(s).findings.empty());
    s.supply->hazard = shock_hazard::increased;
    const assessment a = assess(s);
    const loop_finding* f = finding_of(a, finding_id::no_load_above_limit);
    ASSERT_NE(f, nullptr);
    EXPECT_NE(f->text.find("68 V peak, 48 V effective"), std::string::npos) << f->text;
    for (const std::string& caution : a.cautions) EXPECT_EQ(caution.find(" is safe"), std::string::npos) << caution;
}

// A supply that states no no-load voltage still shows it where its output line begins without current.
TEST(SupplyFindings, NoLoadVoltageIsReadOffTheOutputLine)
{
    station s = stick_stand();
    s.supply = supply{.kind = supply_kind::measured};
    s.supply->points = {{0_A, 118_V}, {150_A, 32_V}, {200_A, 15_V}};
    const assessment a = assess(s);
    ASSERT_FALSE(a.findings.empty());
    EXPECT_EQ(a.findings.front().id, finding_id::no_load_above_limit);
    EXPECT_NE(a.findings.front().text.find("118 V effective"), std::string::npos) << a.findings.front().text;
    EXPECT_TRUE(
        std::any_of(a.sources.begin(), a.sources.end(), [](const source& from) { return from == no_load_limits; }));
    s.supply->points.front() = {10_A, 118_V};  // not read without current
    EXPECT_EQ(finding_of(assess(s), finding_id::no_load_above_limit), nullptr);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 115_V};
    EXPECT_NE(finding_of(assess(s), finding_id::no_load_above_limit), nullptr);
}

// common practice, no source: a table of what suits what
TEST(SupplyFindings, WhatSuitsAProcess)
{
    supply flat{.kind = supply_kind::constant_voltage, .setting = 27_V};
    supply steep{.kind = supply_kind::constant_current, .highest_output = 60_V};
    struct row {
        process of;
        bool flat, steep, flat_following, steep_following;
    };
    for (const row& r : {row{process::smaw, false, true, false, true}, row{process::gtaw, false, true, false, true},
                         row{process::gmaw, true, false, true, false}, row{process::fcaw, true, false, true, true},
                         row{process::saw, true, false, true, true}}) {
        const supply_use use{r.of, 200_A};
        flat.feeding = steep.feeding = wire_feeding::constant_speed;
        EXPECT_EQ(suits_process(flat, use), r.flat) << to_text(r.of);
        EXPECT_EQ(suits_process(steep, use), r.steep) << to_text(r.of);
        flat.feeding = steep.feeding = wire_feeding::by_arc_voltage;
        EXPECT_EQ(suits_process(flat, use), r.flat_following) << to_text(r.of);
        EXPECT_EQ(suits_process(steep, use), r.steep_following) << to_text(r.of);
    }
    EXPECT_FALSE(suits_process(electrode_polarity::positive, process::gtaw));
    EXPECT_FALSE(suits_process(electrode_polarity::negative, process::gmaw));
    EXPECT_TRUE(suits_process(electrode_polarity::negative, process::fcaw));
    EXPECT_TRUE(suits_process(electrode_polarity::not_stated, process::gmaw));
}

TEST(SupplyFindings, ACoredWireOnConstantCurrentIsSaid)
{
    station s = gate_bench();
    s.job.process = process::fcaw;
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V};
    const assessment a = assess(s);
    const loop_finding* f = finding_of(a, finding_id::supply_does_not_suit);
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, finding_severity::warning);
    EXPECT_NE(f->text.find("fcaw"), std::string::npos);
    EXPECT_NE(f->text.find("common practice"), std::string::npos);
    s.supply->feeding = wire_feeding::by_arc_voltage;
    EXPECT_EQ(finding_of(assess(s), finding_id::supply_does_not_suit), nullptr);

    station stick = stick_stand();
    stick.supply = supply{.kind = supply_kind::constant_voltage, .setting = 30_V};
    EXPECT_NE(finding_of(assess(stick), finding_id::supply_does_not_suit), nullptr);
    s = gate_bench();
    s.supply->polarity = electrode_polarity::negative;
    EXPECT_NE(finding_of(assess(s), finding_id::polarity_does_not_suit), nullptr);
}

TEST(SupplyFindings, ADroopingSupplyHoldsWhatItsLineHas)
{
    station s = stick_stand();
    s.supply = supply{.kind = supply_kind::drooping};
    s.supply->no_load.peak = 80_V;
    s.supply->short_circuit = 400_A;  // 40 V at 200 A
    const assessment a = assess(s);
    EXPECT_EQ(ids_of(a), (std::vector<std::string>{"supply_gives_other_current"}));  // some 240 A at this arc
    ASSERT_TRUE(a.headroom);
    EXPECT_NEAR(a.headroom->typical.value(), 40.0 - 28.0 - a.total_drop.typical.value(), 1e-9);
    s.supply->short_circuit = 290_A;  // 24.8 V at 200 A, the arc alone asks for 28 V (IEC 60974-1, load voltage)
    const assessment b = assess(s);
    // it gives less current, and the arc burns on
    EXPECT_EQ(finding_of(b, finding_id::supply_cannot_hold_arc), nullptr);
    const loop_finding* f = finding_of(b, finding_id::supply_gives_other_current);
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, finding_severity::warning);
    ASSERT_TRUE(b.operating && b.operating->is_found());
    EXPECT_LT(b.operating->current, 200_A);
    EXPECT_NE(f->text.find(to_text(b.operating->current, "A")), std::string::npos) << f->text;
    s.supply->no_load.peak = 20_V;  // less than an arc of any length asks for: none is held
    const assessment c = assess(s);
    const loop_finding* none = finding_of(c, finding_id::too_few_volts_for_arc);
    ASSERT_NE(none, nullptr);
    EXPECT_EQ(none->severity, finding_severity::stop_job);
}

// An engine-driven set to the volts its arc has: it falls through them, and gives a little less than was asked for.
TEST(SupplyFindings, AnEngineSetGivesLessAndHoldsTheArc)
{
    station s = stick_stand();
    s.job.current = 160_A;
    s.supply = supply{.kind = supply_kind::engine_driven, .setting = 26_V};
    s.supply->no_load.peak = 80_V;
    const assessment a = assess(s);
    for (const loop_finding& f : a.findings) EXPECT_NE(f.severity, finding_severity::stop_job) << f.text;
    ASSERT_TRUE(a.operating && a.operating->is_found());
    EXPECT_GT(a.operating->current, 100_A);
}

TEST(SupplyFindings, SensingMakesGoodWhatLiesBeforeItsTaps)
{
    station s = gate_bench();
    const loop_state state = solve_loop(s);
    const voltage total = state.total_drop;
    s.supply->sensing = remote_sensing{.electrode_side = "feeder lead", .work_side = "work clamp"};
    const voltage sensed =
        state.parts[0].drop + state.parts[1].drop + state.parts[4].drop + state.parts[5].drop + state.parts[6].drop;
    EXPECT_NEAR_REL(sensed_drop_of(s, state).value(), sensed.value(), 1e-12);
    EXPECT_NEAR_REL(assess(s).arc_voltage.typical.value(), (26_V - total + sensed).value(), 1e-9);
    // tapped before the bad clamp, not behind it: its drop stays
    s.supply->sensing->work_side = "work lead";
    EXPECT_NEAR_REL(sensed_drop_of(s, state).value(), (sensed - state.parts[4].drop).value(), 1e-12);
    // the terminals go no higher than they can
    s.supply->highest_output = 26.5_V;
    EXPECT_NEAR_REL(assess(s).arc_voltage.typical.value(), (26.5_V - total).value(), 1e-9);
    EXPECT_EQ(sensed_drop_of(gate_bench(), state), 0_V);
    s.supply->sensing->work_side = "gun";
    EXPECT_THROW(static_cast<void>(assess(s)), bad_station_error);
    s = stick_stand();
    s.supply->sensing.emplace();
    EXPECT_THROW(static_cast<void>(assess(s)), bad_station_error);
}

}  // namespace
