// What the welder notices of single faults of the trade, and nothing of it where the loop is sound.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/loop_inductance.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/weld_sentence.hpp>
#include <weldloop/rating/weld_statements.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

station gate_bench()
{
    station s{.name = "gate bench",
              .job = {.process = process::gmaw, .current = 200_A, .duty = duty_cycle::of(0.4)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", aught(2)),
              welding_cable(aught(2), 6_m).named("feeder lead"),
              wire_gun("gun", 3_m),
              arc{},
              workpiece{.metal = mild_steel, .mass = 40_kg, .thickness = 8_mm, .name = "gate"},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "work clamp"},
              welding_cable(aught(2), 6_m).named("work lead"),
              junction{"return stud"},
              crimped_lug("return lug", aught(2))};
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    return s;
}
station stick_stand()
{
    station s = gate_bench();
    s.name = "stick stand";
    s.job.process = process::smaw;
    s.job.current = 150_A;
    s.path[2] = electrode_holder("holder", 300_A);
    s.supply = supply{.kind = supply_kind::drooping};
    s.supply->no_load.peak = 80_V;
    s.supply->short_circuit = 243_A;  // the job's 150 A at this arc
    return s;
}

// with the drop of its leads and joints in the setting
station gate_stand()
{
    station s = stick_stand();
    s.name = "gate stand";
    s.supply->short_circuit = 228_A;
    return s;
}
station tungsten_stand()
{
    station s = stick_stand();
    s.name = "tungsten stand";
    s.job.process = process::gtaw;
    s.job.current = 120_A;
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 50_V};
    s.supply->no_load.peak = 75_V;
    return s;
}

using id_set = std::set<std::string>;
id_set ids_of(const assessment& a)
{
    id_set out;
    for (const weld_statement& w : a.weld) out.emplace(to_text(w.id));
    return out;
}

TEST(WeldStatements, ASoundLoopHasNone)
{
    for (const station& s : {gate_bench(), stick_stand()}) {
        const assessment a = assess(s);
        EXPECT_TRUE(a.conducts);
        EXPECT_EQ(ids_of(a), id_set{}) << s.name << ": " << (a.weld.empty() ? "" : a.weld.front().text);
        EXPECT_EQ(weld_sentence(a.weld), "");
    }
    station undescribed = gate_bench();
    undescribed.supply.reset();
    EXPECT_TRUE(assess(undescribed).weld.empty());
}

// common practice, no source: single faults and what a welder says of them
TEST(WeldStatements, EachSingleFaultHasItsWords)
{
    struct fault {
        const char* what;
        bool wire;
        std::function<void(station&)> make;
        id_set says;
    };
    const fault faults[] = {
        {"lead too long and too small",
         true,
         [](station& s) { s.path[6] = welding_cable(awg(4), 11_m).named("work lead"); },
         {"arc_soft"}},
        {"spring clamp on the rust of years",
         true,
         [](station& s) {
             auto& joint = std::get<work_connection>(s.path[5]);
             joint.clamp = spring_clamp(200_A);
             joint.surface = surface_state::heavy_rust;
         },
         {"poor_starts", "spatter"}},
        {"lug that hangs on its last strands",
         true,
         [](station& s) { s.path[0] = crimped_lug("output lug", aught(2)).with_missing_strands(0.9); },
         {"poor_starts", "spatter"}},
        {"lead that eats the arc",
         true,
         [](station& s) { s.path[6] = welding_cable(awg(4), 40_m).named("work lead"); },
         {"arc_soft", "lack_of_fusion", "spatter"}},
        {"spare lead in a coil",
         true,
         [](station& s) {
             cable coil = welding_cable(aught(2), 20_m).named("work lead");
             coil.lay = lay::coiled;
             coil.coil_turns = 12;
             s.path[6] = coil;
         },
         {"poor_starts"}},
        {"thin leads on a drooping supply",
         false,
         [](station& s) {
             s.path[1] = welding_cable(awg(4), 40_m).named("feeder lead");
             s.path[6] = welding_cable(awg(4), 40_m).named("work lead");
         },
         {"ropy_bead", "lack_of_fusion"}},
        {"chain that steals current",
         false,
         [](station& s) {
             s.ways = {{.name = "chain",
                        .from = "gate",
                        .to = "return stud",
                        .kind = way_kind::stray,
                        .path = {measured_part{
                            .name = "chain links", .word = "chain", .drop = exactly(1.0_V), .at = 100_A}}}};
         },
         {"arc_blow"}},
    };
    for (const fault& f : faults) {
        station s = f.wire ? gate_bench() : stick_stand();
        f.make(s);
        const assessment a = assess(s);
        ASSERT_TRUE(a.conducts) << f.what;
        EXPECT_EQ(ids_of(a), f.says) << f.what << "; " << a.total_drop.typical.value() << " V";
        for (const weld_statement& w : a.weld) {
            EXPECT_GE(w.quantity, w.threshold) << f.what;
            EXPECT_NE(w.text.find("common practice, no source"), std::string::npos) << w.text;
            EXPECT_EQ(w.text.find("probab"), std::string::npos) << w.text;
        }
        EXPECT_EQ(weld_sentence(a.weld).starts_with("The welder typically notices "), !a.weld.empty());
        EXPECT_TRUE(std::find(a.sources.begin(), a.sources.end(), weld_thresholds) != a.sources.end()) << f.what;
    }
}

// common practice, no source: the trade's list. Each single fault of an otherwise sound station is named, by a finding,
// by what the welder notices, or by both, and nothing else is; the sound stations have nothing of either.
TEST(WeldStatements, TheTradesListFaultByFault)
{
    struct fault {
        const char* what;
        station (*sound)();
        std::function<void(station&)> make;
        id_set finds, says;
    };
    const auto coil = [](int turns, steel_beside steel) {
        cable c = welding_cable(aught(2), 20_m).named("work lead");
        c.lay = lay::coiled;
        c.coil_turns = turns;
        c.steel = steel;
        return c;
    };
    const fault faults[] = {
        {"a wire on a steep output",
         gate_bench,
         [](station& s) { s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V}; },
         {"supply_does_not_suit"},
         {}},
        {"covered electrodes on a flat output",
         gate_stand,
         [](station& s) { s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 26.8_V}; },
         {"supply_does_not_suit"},
         {"ropy_bead"}},  // on a flat output every volt of the loop costs current
        {"solid wire on the negative terminal",
         gate_bench,
         [](station& s) { s.supply->polarity = electrode_polarity::negative; },
         {"polarity_does_not_suit"},
         {}},
        {"a tungsten electrode on the positive terminal",
         tungsten_stand,
         [](station& s) { s.supply->polarity = electrode_polarity::positive; },
         {"polarity_does_not_suit"},
         {}},
        {"no-load voltage above its limit",
         gate_stand,
         [](station& s) {
             s.supply->no_load.peak = 120_V;
             s.supply->short_circuit = 194_A;  // the job's 150 A at this arc again
         },
         {"no_load_above_limit"},
         {}},
        {"a supply at its end",
         tungsten_stand,
         [](station& s) {
             s.supply->highest_output = 15.1_V;
             s.supply->no_load.peak.reset();
         },
         {"supply_cannot_hold_arc"},
         {}},
        {"a supply far behind its end",
         tungsten_stand,
         [](station& s) {
             s.supply->highest_output = 14_V;
             s.supply->no_load.peak.reset();
         },
         {"supply_cannot_hold_arc", "supply_gives_other_current"},
         {"ropy_bead"}},
        {"a wire that stubs",
         gate_bench,
         [](station& s) { s.supply->setting = 22_V; },
         {"too_few_volts_for_arc"},
         {"spatter"}},
        {"a return far to one end",
         gate_stand,
         [](station& s) {
             auto& here = std::get<arc>(s.path[3]);
             here.to_return = 1.5_m;
             here.returns_at = return_side::one_end;
         },
         {},
         {"arc_blow"}},
        {"a chain that steals current",
         gate_stand,
         [](station& s) {
             s.ways = {{.name = "chain",
                        .from = "gate",
                        .to = "return stud",
                        .kind = way_kind::stray,
                        .path = {measured_part{
                            .name = "chain links", .word = "chain", .drop = exactly(1.0_V), .at = 100_A}}}};
         },
         {"stray_current", "stray_when_return_opens"},
         {"arc_blow"}},
        {"a joint that makes and breaks",
         gate_stand,
         [](station& s) { s.intermittent = "return stud"; },
         {"part_intermittent"},
         {"poor_starts", "spatter"}},
        {"a lug that hangs on its last strands",
         gate_stand,
         [](station& s) { s.path[0] = crimped_lug("output lug", aught(2)).with_missing_strands(0.93); },
         {"spots_melt"},
         {"poor_starts", "spatter"}},
        {"a lead that is cut",
         gate_stand,
         [](station& s) { std::get<cable>(s.path[6]).covering_state = covering_state::cut; },
         {"covering_damaged"},
         {}},
        {"a spare lead in a coil",
         gate_bench,
         [&](station& s) { s.path[6] = coil(12, steel_beside::none); },
         {},
         {"poor_starts"}},
        {"a spare lead round a steel post, alternating",
         tungsten_stand,
         [&](station& s) {
             s.job.course = waveform::sine(s.job.current, 50_Hz);
             s.path[6] = coil(8, steel_beside::within_coil);
         },
         {},
         {"choked_current"}},
        {"pulses through a spare lead round a steel post",
         tungsten_stand,
         [&](station& s) {
             s.job.course = waveform::pulse({.base = 60_A, .peak = 180_A, .base_time = 3_ms, .peak_time = 3_ms});
             s.job.current = s.job.course->rms();
             s.path[6] = coil(8, steel_beside::within_coil);
         },
         {},
         {"blunt_pulses"}},
        {"pulses beyond the supply's end",
         tungsten_stand,
         [](station& s) {
             s.job.course = waveform::pulse({.base = 40_A, .peak = 200_A, .base_time = 3_ms, .peak_time = 1_ms});
             s.job.current = s.job.course->rms();
             s.supply->highest_output = 17_V;
             s.supply->no_load.peak.reset();
         },
         {"level_not_held"},
         {"blunt_pulses"}},
    };
    for (station (*sound)() : {gate_bench, gate_stand, tungsten_stand}) {
        const assessment a = assess(sound());
        EXPECT_TRUE(a.findings.empty()) << sound().name << ": " << a.findings.front().text;
        EXPECT_TRUE(a.weld.empty()) << sound().name << ": " << a.weld.front().text;
    }
    id_set every_statement;
    for (const fault& f : faults) {
        station s = f.sound();
        f.make(s);
        const assessment a = assess(s);
        id_set found;
        for (const loop_finding& at : a.findings) found.emplace(to_text(at.id));
        EXPECT_EQ(found, f.finds) << f.what;
        EXPECT_EQ(ids_of(a), f.says) << f.what;
        every_statement.insert(f.says.begin(), f.says.end());
        // what the supply cannot do is said before any verdict on a part
        if (f.finds.contains("supply_cannot_hold_arc") && !a.findings.empty()) {
            EXPECT_EQ(a.findings.front().id, finding_id::supply_cannot_hold_arc) << f.what;
            EXPECT_EQ(a.findings.front().severity, finding_severity::stop_job) << f.what;
            const std::string text = report_text(s, a, {});
            EXPECT_LT(text.find("[supply_cannot_hold_arc]"), text.find("verdict")) << f.what;
        }
    }
    every_statement.insert({"arc_soft", "lack_of_fusion"});  // of the list before
    EXPECT_EQ(every_statement, (id_set{"arc_soft", "poor_starts", "spatter", "lack_of_fusion", "ropy_bead", "arc_blow",
                                       "choked_current", "blunt_pulses"}));
}

// The worse the loop the more is said: also where it takes more than an arc of no length asks for.
TEST(WeldStatements, ALoopThatTakesNearlyAllStillHasItsWords)
{
    station s = stick_stand();
    s.supply->short_circuit = 400_A;
    for (const std::size_t i : {1U, 6U})
        s.path[i] = welding_cable(awg(4), 90_m).named(i == 1 ? "feeder lead" : "work lead");
    const assessment a = assess(s);
    ASSERT_TRUE(a.operating && a.operating->is_found());
    ASSERT_GT(a.operating->lost(), arc_line_of(s).at_no_length);
    EXPECT_EQ(ids_of(a), (id_set{"ropy_bead", "lack_of_fusion"}));
    // without the loss: 80 V (1 - I/400 A) = 20 V + 0.04 V/A I (load voltage at the usual length), I = 250 A
    for (const weld_statement& w : a.weld) EXPECT_NE(w.text.find("of 250 A"), std::string::npos) << w.text;
}

// What a supply makes good is not lost to the arc.
TEST(WeldStatements, RemoteSensingCuresASoftArc)
{
    station s = gate_bench();
    s.path[6] = welding_cable(awg(4), 11_m).named("work lead");
    EXPECT_TRUE(ids_of(assess(s)).contains("arc_soft"));
    s.supply->sensing = remote_sensing{.electrode_side = "feeder lead", .work_side = "work clamp"};
    EXPECT_EQ(ids_of(assess(s)), id_set{});
    s.supply->highest_output = 27_V;  // nothing to make it good with
    EXPECT_TRUE(ids_of(assess(s)).contains("arc_soft"));
}

TEST(WeldStatements, ArcBlowIsOfOneDirection)
{
    station s = stick_stand();
    s.ways = {{.name = "chain",
               .from = "gate",
               .to = "return stud",
               .kind = way_kind::stray,
               .path = {measured_part{.name = "chain links", .word = "chain", .drop = exactly(1.0_V), .at = 100_A}}}};
    EXPECT_TRUE(ids_of(assess(s)).contains("arc_blow"));
    s.job.course = waveform::pulse({.base = 60_A, .peak = 200_A, .base_time = 5_ms, .peak_time = 5_ms});
    s.job.current = s.job.course->rms();
    EXPECT_TRUE(ids_of(assess(s)).contains("arc_blow"));
    s.job.course = waveform::sine(150_A, 50_Hz);
    s.job.current = 150_A;
    EXPECT_FALSE(ids_of(assess(s)).contains("arc_blow"));
    s.job.course.reset();
    s.supply->polarity = electrode_polarity::alternating;
    EXPECT_FALSE(ids_of(assess(s)).contains("arc_blow"));
}

TEST(WeldStatements, ATungstenArcIsNotStartedByARushOfCurrent)
{
    station s = gate_bench();
    cable coil = welding_cable(aught(2), 20_m).named("work lead");
    coil.lay = lay::coiled;
    coil.coil_turns = 12;
    s.path[6] = coil;
    s.path[2] = electrode_holder("holder", 300_A);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V};
    s.job.process = process::smaw;
    EXPECT_TRUE(ids_of(assess(s)).contains("poor_starts"));
    s.job.process = process::gtaw;
    EXPECT_FALSE(ids_of(assess(s)).contains("poor_starts"));
}

// common practice, no source: direct current that crosses the work to one side blows the arc
TEST(WeldStatements, ArcBlowByThePlaceOfTheReturn)
{
    station s = stick_stand();
    arc& here = std::get<arc>(s.path[3]);
    const auto blows = [&] { return ids_of(assess(s)) == id_set{"arc_blow"}; };
    here.to_return = 1.2_m;
    EXPECT_EQ(ids_of(assess(s)), id_set{});  // on which side is not said
    here.returns_at = return_side::one_end;
    EXPECT_TRUE(blows());
    EXPECT_NE(assess(s).weld.front().text.find("1.2 m"), std::string::npos);
    here.to_return = 0.5_m;
    EXPECT_TRUE(blows());
    here.to_return = 0.49_m;
    EXPECT_EQ(ids_of(assess(s)), id_set{});
    here.to_return = 1.2_m;
    here.returns_at = return_side::both_ends;
    EXPECT_EQ(ids_of(assess(s)), id_set{});
    here.returns_at = return_side::one_end;
    here.to_return.reset();  // how far is not said
    EXPECT_EQ(ids_of(assess(s)), id_set{});
    here.to_return = 1.2_m;
    s.job.course = waveform::sine(150_A, 50_Hz);
    EXPECT_EQ(ids_of(assess(s)), id_set{});
}

// common practice, no source: a joint that makes and breaks leaves nothing for the start while it is open
TEST(WeldStatements, AnIntermittentJointMakesPoorStarts)
{
    station s = gate_bench();
    s.supply->no_load.peak = 62_V;
    s.intermittent = "work clamp";
    const assessment a = assess(s);
    EXPECT_EQ(ids_of(a), (id_set{"poor_starts", "spatter"}));
    EXPECT_NE(a.weld.front().text.find("work clamp is stated to make and break"), std::string::npos);
    EXPECT_NE(a.weld.front().text.find("leaves 0 V of the 62 V without load in the first instant"), std::string::npos)
        << a.weld.front().text;
    const auto found = std::find_if(a.findings.begin(), a.findings.end(),
                                    [](const loop_finding& f) { return f.id == finding_id::part_intermittent; });
    ASSERT_NE(found, a.findings.end());
    EXPECT_EQ(found->severity, finding_severity::warning);
    for (const part_result& p : a.parts) EXPECT_EQ(p.is_intermittent, p.name == "work clamp");
    s.supply.reset();  // without a supply nothing is known of its volts
    EXPECT_EQ(ids_of(assess(s)), (id_set{"poor_starts", "spatter"}));
    s.intermittent = "clamp";
    EXPECT_THROW(static_cast<void>(assess(s)), bad_station_error);
    s.intermittent = "arc";
    EXPECT_THROW(static_cast<void>(assess(s)), bad_station_error);
}

// At its melting drop a joint leaves the start what it does not take: the drop in the sentence is that of the part.
TEST(WeldStatements, AJointAtItsMeltingDropSaysWhatItLeaves)
{
    station s = gate_bench();
    s.supply->no_load.peak = 62_V;
    auto& joint = std::get<work_connection>(s.path[5]);
    joint.clamp = spring_clamp(200_A);
    joint.surface = surface_state::heavy_rust;
    const assessment a = assess(s);
    const auto clamp =
        std::find_if(a.parts.begin(), a.parts.end(), [](const part_result& p) { return p.name == "work clamp"; });
    ASSERT_EQ(clamp->verdict, verdict::spots_melting);
    const std::string& said = a.weld.front().text;
    EXPECT_EQ(a.weld.front().id, weld_id::poor_starts);
    EXPECT_NE(said.find(to_text(clamp->drop.typical, "V") + " across it and leaves " +
                        to_text(voltage(62_V - clamp->drop.typical), "V") + " of the 62 V"),
              std::string::npos)
        << said;
}

// A joint that conducts typically and not in a poor case: no surface state has that, so it is said of one by hand.
TEST(WeldStatements, AJointThatMayBeOpenMakesPoorStarts)
{
    const station s = gate_bench();
    assessment a = assess(s);
    for (const part_result& p : a.parts) EXPECT_FALSE(p.open_in_poor_case) << p.name;
    EXPECT_TRUE(weld_statements_for(s, a).empty());
    const auto clamp =
        std::find_if(a.parts.begin(), a.parts.end(), [](const part_result& p) { return p.name == "work clamp"; });
    clamp->open_in_poor_case = true;
    const std::vector<weld_statement> said = weld_statements_for(s, a);
    ASSERT_EQ(said.size(), 1U);
    EXPECT_EQ(said.front().id, weld_id::poor_starts);
    EXPECT_NE(said.front().text.find("in a poor case work clamp"), std::string::npos) << said.front().text;
    clamp->current = exactly(0_A);  // a joint without current starts nothing
    EXPECT_TRUE(weld_statements_for(s, a).empty());
}

// Money only where its price is stated; energy and time where a year is.
TEST(WeldStatements, AYearsLoss)
{
    station s = stick_stand();
    EXPECT_FALSE(assess(s).year);
    s.year = year_of_work{.arc_time = 500_h};
    const assessment bare = assess(s);
    ASSERT_TRUE(bare.year);
    const operating_point& p = *bare.operating;
    EXPECT_NEAR_REL(bare.year->lost.value(), (p.loop_drop * p.current).value() * 500.0 * 3600.0, 1e-9);
    // without the loss: 80 V (1 - I/243 A) = 20 V + 0.04 V/A I (load voltage at the usual length)
    const double without = 60.0 / (80.0 / 243.0 + 0.04);
    EXPECT_NEAR_REL(bare.year->arc_time.value(), 500.0 * 3600.0 * (without / p.current.value() - 1.0), 1e-6);
    EXPECT_FALSE(bare.year->energy_cost || bare.year->time_cost);
    s.year->tariff = 0.3;
    s.year->hour_cost = 50.0;
    const assessment paid = assess(s);
    EXPECT_NEAR_REL(*paid.year->energy_cost, 0.3 * bare.year->lost.value() / 3.6e6, 1e-9);
    EXPECT_NEAR_REL(*paid.year->time_cost, 50.0 * bare.year->arc_time.value() / 3600.0, 1e-9);
    station wire = gate_bench();  // a feed that is held melts the same
    wire.year = year_of_work{.arc_time = 500_h};
    EXPECT_EQ(assess(wire).year->arc_time, 0_h);
}

// Just below and above the threshold of a soft arc.
TEST(WeldStatements, ThresholdsHoldWhereTheyAreSaid)
{
    for (const double metres : {2.0, 6.0, 10.0, 14.0, 18.0, 24.0}) {
        station s = gate_bench();
        s.path[6] = welding_cable(awg(2), in_si<length>(metres)).named("work lead");
        const assessment a = assess(s);
        const double share = ((a.total_drop.typical - a.wire_extension_drop.typical) / a.operating->terminals).value();
        EXPECT_EQ(ids_of(a).contains("arc_soft"), share >= 0.10) << share;
        EXPECT_EQ(ids_of(a).contains("lack_of_fusion"), share >= 0.12) << share;
    }
}

TEST(LoopInductance, StraightLeadsAndCoils)
{
    station s = gate_bench();
    const cable lead = welding_cable(aught(2), 6_m);
    const station_inductance flat = lead_inductance_of(s);
    EXPECT_EQ(flat.coiled, in_si<inductance>(0.0));
    // two leads of 6 m side by side: 0.1 uH/m (1 + 4 ln(d/r)), Mehta and Mehta example 9.1
    const double ratio = (lead.overall_diameter / (0.5 * lead.conductor_diameter)).value();
    EXPECT_NEAR_REL(flat.total.value(), 6.0 * 1e-7 * (1.0 + 4.0 * std::log(ratio)), 1e-9);
    cable coil = welding_cable(aught(2), 20_m).named("work lead");
    coil.lay = lay::coiled;
    coil.coil_turns = 12;
    s.path[6] = coil;
    const station_inductance coiled = lead_inductance_of(s);
    EXPECT_GT(coiled.coiled, in_si<inductance>(40e-6));
    EXPECT_LT(coiled.coiled, in_si<inductance>(120e-6));
    EXPECT_NEAR_REL(coiled.straight.value(), 0.5 * flat.straight.value(), 1e-12);
    coil.coil_turns = 24;
    s.path[6] = coil;
    EXPECT_GT(lead_inductance_of(s).coiled, coiled.coiled);
}

}  // namespace
