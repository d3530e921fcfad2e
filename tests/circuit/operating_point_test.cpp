// Supply, loop and arc together, also against a circuit simulator: tests/oracle/operating_point.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>

#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

std::filesystem::path folder()
{
    return std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "operating_point";
}

reference_table kept(const std::string& name)
{
    std::ifstream in(folder() / name, std::ios::binary);
    return {name, std::string{std::istreambuf_iterator<char>(in), {}}};
}

station stick(const std::string& name, current i, length lead, surface_state on = surface_state::clean)
{
    station s{.name = name,
              .job = {.process = process::smaw, .current = i, .duty = duty_cycle::of(0.4)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", square_mm(50)),
              welding_cable(square_mm(50), lead, resistance_choice::nominal).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .surface = on, .name = "clamp"},
              welding_cable(square_mm(50), lead, resistance_choice::nominal).named("work lead")};
    return s;
}
station wire(const std::string& name, current i, length lead)
{
    station s = stick(name, i, lead);
    s.job.process = process::gmaw;
    s.path[2] = wire_gun("gun", 3_m);
    return s;
}

// A case as the simulator gets it, and the station with it.
struct drawn_case {
    std::string kind;
    std::array<double, 3> numbers;
    station is;
};

std::vector<drawn_case> cases()
{
    std::vector<drawn_case> out;
    const auto straight = [&](station s, double open, double closed, droop_shape shape) {
        s.supply = supply{.kind = supply_kind::drooping};
        s.supply->short_circuit = in_si<current>(closed);
        s.supply->no_load.peak = in_si<voltage>(open);
        s.supply->shape = shape;
        out.push_back({shape == droop_shape::straight ? "straight" : "reactive", {open, closed, 0.0}, s});
    };
    straight(stick("fence", 150_A, 15_m), 80.0, 260.0, droop_shape::straight);
    straight(stick("trailer", 120_A, 40_m, surface_state::light_rust), 70.0, 230.0, droop_shape::straight);
    straight(stick("gate", 180_A, 25_m), 90.0, 300.0, droop_shape::straight);
    straight(stick("hinge", 110_A, 20_m), 72.0, 130.0, droop_shape::by_reactance);
    straight(stick("rail", 160_A, 30_m, surface_state::oxidized), 80.0, 190.0, droop_shape::by_reactance);
    const auto engine = [&](station s, double open, double amps, double volts) {
        s.supply = supply{.kind = supply_kind::engine_driven, .setting = in_si<voltage>(volts)};
        s.supply->current_setting = in_si<current>(amps);
        s.supply->no_load.peak = in_si<voltage>(open);
        out.push_back({"engine", {open, amps, volts}, s});
    };
    engine(stick("field", 140_A, 50_m), 95.0, 150.0, 30.0);
    engine(stick("yard", 200_A, 20_m), 85.0, 210.0, 32.0);
    const auto current_kept = [&](station s, double amps, double rise) {
        s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 55_V};
        s.supply->current_setting = in_si<current>(amps);
        s.supply->rise = in_si<conductance>(rise);
        out.push_back({"current", {amps, 20.0 + 0.04 * amps, rise}, s});
    };
    current_kept(stick("bracket", 130_A, 60_m), 135.0, 1.5);
    current_kept(stick("hook", 170_A, 10_m), 165.0, 0.8);
    station flat = wire("frame", 220_A, 12_m);
    flat.supply = supply{.kind = supply_kind::constant_voltage, .setting = 31_V, .fall = 15_mohm};
    flat.supply->feeding = wire_feeding::by_arc_voltage;  // a flat output with the arc's length held
    out.push_back({"voltage", {31.0, 0.015, 0.0}, flat});
    return out;
}

constexpr std::array shares{0.7, 0.85, 1.0, 1.15, 1.3};  // of the job's current

void write_decks()
{
    std::ofstream drops(folder() / "drops.csv"), lines(folder() / "cases.csv");
    drops << "# written by tests/circuit/operating_point_test.cpp with WELDLOOP_WRITE_LOOPS=1\nstation,amps,volts\n";
    lines << "# written by tests/circuit/operating_point_test.cpp with WELDLOOP_WRITE_LOOPS=1\n"
             "station,kind,first,second,third,arc_V,arc_ohm\n";
    for (const drawn_case& c : cases()) {
        for (const double share : shares) {
            station s = c.is;
            s.job.current = share * c.is.job.current;
            const loop_state state = solve_loop(s);
            ASSERT_TRUE(state.is_solved()) << s.name;
            drops << s.name << ',' << number_text(s.job.current.value(), 17) << ','
                  << number_text(state.total_drop.value(), 17) << '\n';
        }
        const arc_line arc = usual_arc_line(c.is.job.process);
        lines << c.is.name << ',' << c.kind;
        for (const double x : c.numbers) lines << ',' << number_text(x, 17);
        lines << ',' << number_text((arc.at_no_length + arc.by_length * usual_arc_length(c.is.job.process)).value(), 17)
              << ',' << number_text(arc.by_current.value(), 17) << '\n';
    }
}

// source: ngspice, decks made by tests/oracle/operating_point/run.sh from the loop's settled drops at five currents (a
// polynomial through them), the supply's line and the arc's line written there anew
TEST(OperatingPoint, AgainstACircuitSimulator)
{
    if (std::getenv("WELDLOOP_WRITE_LOOPS") != nullptr) write_decks();
    const reference_table outputs = kept("outputs.csv"), drops = kept("drops.csv");
    ASSERT_EQ(outputs.rows().size(), 10U);
    std::size_t row = 0, drop_row = 0;
    for (const drawn_case& c : cases()) {
        const auto& simulated = outputs.rows().at(row++);
        ASSERT_EQ(simulated.text("station"), c.is.name);
        for (const double share : shares) {
            station s = c.is;
            s.job.current = share * c.is.job.current;
            EXPECT_NEAR(solve_loop(s).total_drop.value(), drops.rows().at(drop_row++).number("volts"), 1e-6) << s.name;
        }
        const operating_point p = operating_point_of(c.is);
        ASSERT_TRUE(p.is_found()) << c.is.name << ": " << to_text(p.outcome);
        EXPECT_EQ(p.held, arc_hold::arc_length);
        EXPECT_NEAR_REL(p.current.value(), simulated.number("amps"), 1e-4) << c.is.name;
        EXPECT_NEAR_REL(p.terminals.value(), simulated.number("terminals_V"), 1e-4) << c.is.name;
        EXPECT_NEAR_REL(p.arc_voltage.value(), simulated.number("arc_V"), 1e-4) << c.is.name;
        EXPECT_GT(p.current.value(), shares.front() * c.is.job.current.value()) << c.is.name;  // the polynomial's range
        EXPECT_LT(p.current.value(), shares.back() * c.is.job.current.value()) << c.is.name;
        EXPECT_NEAR_REL(p.terminals.value(), (p.arc_voltage + p.loop_drop).value(), 1e-12);
        EXPECT_EQ(p.asked, c.is.job.current);
    }
}

TEST(OperatingPoint, TheLoopIsTheOneOfThatCurrent)
{
    constexpr double as_settled = 1e-5;  // two searches for a period that repeats within 1e-4 K
    for (const drawn_case& c : cases()) {
        const operating_point p = operating_point_of(c.is);
        ASSERT_TRUE(p.is_found()) << c.is.name;
        station s = c.is;
        s.job.current = p.current;
        EXPECT_NEAR_REL(p.loop_drop.value(), solve_loop(s).total_drop.value(), as_settled) << c.is.name;
        // and the supply has these volts there
        const source_line line = output_line_of(*c.is.supply, {c.is.job.process, c.is.job.current});
        EXPECT_NEAR_REL(line.at_current(p.current).voltage.value(), p.terminals.value(), 1e-6) << c.is.name;
    }
}

// An assessment stops one solved loop earlier: the same point, as closely as the heat is settled.
TEST(OperatingPoint, AnAssessmentHasTheSamePoint)
{
    for (const drawn_case& c : cases()) {
        const operating_point p = operating_point_of(c.is);
        const assessment a = assess(c.is);
        ASSERT_TRUE(p.is_found() && a.operating && a.operating->is_found()) << c.is.name;
        EXPECT_NEAR_REL(a.operating->current.value(), p.current.value(), 1e-6) << c.is.name;
        EXPECT_NEAR_REL(a.operating->loop_drop.value(), p.loop_drop.value(), 1e-5) << c.is.name;
        EXPECT_NEAR_REL(a.operating->terminals.value(), p.terminals.value(), 1e-6) << c.is.name;
        EXPECT_NEAR_REL(a.operating->lost().value(), p.lost().value(), 1e-4) << c.is.name;
        EXPECT_EQ(a.operating->arc_length, p.arc_length) << c.is.name;
    }
}

TEST(OperatingPoint, ConstantCurrentGivesItsSettingWhateverTheLoopTakes)
{
    for (const length& lead : {10_m, 60_m}) {
        station s = stick("stand", 150_A, lead);
        s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V};
        const operating_point p = operating_point_of(s);
        ASSERT_TRUE(p.is_found());
        EXPECT_NEAR_REL(p.current.value(), 150.0, 1e-9);
        EXPECT_NEAR_REL(p.loop_drop.value(), solve_loop(s).total_drop.value(), 1e-9);
    }
}

TEST(OperatingPoint, ASupplyAtItsEndGivesLessOrNoArc)
{
    station s = stick("stand", 150_A, 40_m);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 28_V};
    const operating_point less = operating_point_of(s);  // arc and loop ask for more than 28 V at 150 A
    ASSERT_TRUE(less.is_found()) << to_text(less.outcome);
    EXPECT_LT(less.current, 150_A);
    EXPECT_NEAR(less.terminals.value(), 28.0, 1e-6);
    s.supply->highest_output = 19_V;  // less than an arc without current asks for
    const operating_point none = operating_point_of(s);
    EXPECT_EQ(none.outcome, operating_outcome::no_arc);
    EXPECT_EQ(none.current, 0_A);
    EXPECT_EQ(none.asked, 150_A);
}

TEST(OperatingPoint, AFeedHoldsTheCurrentAndTheLostVoltsShortenTheArc)
{
    station s = wire("bench", 200_A, 5_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    const operating_point near = operating_point_of(s);
    ASSERT_TRUE(near.is_found());
    EXPECT_EQ(near.held, arc_hold::wire_feed);
    EXPECT_EQ(near.current, 200_A);
    EXPECT_NEAR(near.terminals.value(), 27.0, 1e-9);
    station far = wire("bench", 200_A, 25_m);
    far.supply = s.supply;
    const operating_point shorter = operating_point_of(far);
    EXPECT_EQ(shorter.current, 200_A);
    const arc_line line = usual_arc_line(process::gmaw);
    EXPECT_NEAR((near.arc_length - shorter.arc_length).value(),
                ((shorter.loop_drop - near.loop_drop) / line.by_length).value(), 1e-9);
    // a setting too low for any arc: the wire stubs, and the length says so
    far.supply->setting = 20_V;
    EXPECT_LT(operating_point_of(far).arc_length, 0_m);
}

// With the feed stated the extension grows by what the arc is shorter, and draws the current that melts it off.
TEST(OperatingPoint, AStatedFeedSettlesWithTheExtension)
{
    station s = wire("bench", 220_A, 15_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27.5_V};
    const burn_off steel = *usual_burn_off(mild_steel, 1.2_mm);
    std::get<arc>(s.path[3]).wire_feed = melting_speed(steel, 220_A, 15_mm);
    const operating_point p = operating_point_of(s);
    ASSERT_TRUE(p.is_found()) << to_text(p.outcome);
    ASSERT_TRUE(p.extension);
    EXPECT_NEAR((*p.extension + p.arc_length).value(), (15_mm + usual_arc_length(process::gmaw)).value(), 2e-9);
    EXPECT_NEAR_REL(melting_speed(steel, p.current, *p.extension).value(), std::get<arc>(s.path[3]).wire_feed->value(),
                    1e-9);
    EXPECT_NEAR(p.terminals.value(), 27.5, 1e-9);
    // a shorter arc has the longer extension and the smaller current
    s.supply->setting = 26_V;
    const operating_point lower = operating_point_of(s);
    EXPECT_LT(lower.arc_length, p.arc_length);
    EXPECT_LT(lower.current, p.current);
}

TEST(OperatingPoint, SensingGivesBackWhatLiesBeforeTheTaps)
{
    station s = wire("bench", 200_A, 25_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    const operating_point plain = operating_point_of(s);
    s.supply->sensing = remote_sensing{.electrode_side = "electrode lead", .work_side = "clamp"};
    const operating_point sensed = operating_point_of(s);
    ASSERT_TRUE(sensed.is_found());
    const voltage gun = sensed.loop.parts[2].drop;
    EXPECT_NEAR(sensed.arc_voltage.value(), 27.0 - gun.value(), 1e-9);
    EXPECT_GT(sensed.arc_voltage, plain.arc_voltage);
    s.supply->highest_output = 28_V;
    EXPECT_NEAR(operating_point_of(s).terminals.value(), 28.0, 1e-9);
}

// Nothing is known beyond the first and the last measured point: no arc, there, would be a false alarm.
TEST(OperatingPoint, NothingIsSaidBeyondAMeasuredLine)
{
    station s = stick("stand", 90_A, 10_m);
    s.supply = supply{.kind = supply_kind::measured};
    s.supply->points = {{50_A, 60_V}, {100_A, 45_V}};  // the arc takes some 25 V there
    EXPECT_EQ(operating_point_of(s).outcome, operating_outcome::beyond_line);
    s.supply->points = {{80_A, 20_V}, {120_A, 10_V}};
    EXPECT_EQ(operating_point_of(s).outcome, operating_outcome::beyond_line);
    s.supply->points = {{0_A, 19_V}, {120_A, 10_V}};  // from no load on too low: no arc indeed
    EXPECT_EQ(operating_point_of(s).outcome, operating_outcome::no_arc);
    s.supply->points = {{50_A, 60_V}, {100_A, 45_V}, {200_A, 15_V}};
    EXPECT_TRUE(operating_point_of(s).is_found());
    station fed = wire("bench", 170_A, 10_m);
    fed.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V, .limit = 180_A};
    std::get<arc>(fed.path[3]).wire_feed = melting_speed(*usual_burn_off(mild_steel, 1.2_mm), 230_A, 15_mm);
    EXPECT_EQ(operating_point_of(fed).outcome, operating_outcome::beyond_line);
}

// the recalled constants are those of solid wire on the positive terminal
TEST(OperatingPoint, OtherWiresMeltAtOtherRates)
{
    station s = wire("bench", 200_A, 10_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    EXPECT_TRUE(burn_off_of(s));
    s.supply->polarity = electrode_polarity::negative;
    EXPECT_FALSE(burn_off_of(s));
    std::get<arc>(s.path[3]).wire_feed = in_si<speed>(0.2);
    EXPECT_EQ(operating_point_of(s).current, 200_A);
    EXPECT_FALSE(operating_point_of(s).extension);
    s.supply->polarity = electrode_polarity::positive;
    EXPECT_TRUE(operating_point_of(s).extension);
    s.job.process = process::fcaw;
    EXPECT_FALSE(burn_off_of(s));
}

TEST(OperatingPoint, WhatIsLostIsWhatTheArcMisses)
{
    station s = wire("bench", 200_A, 25_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    const operating_point plain = operating_point_of(s);
    EXPECT_GT(plain.wire_extension_drop, 1_V);
    EXPECT_NEAR((plain.terminals - plain.lost()).value(), (plain.arc_voltage + plain.wire_extension_drop).value(),
                1e-9);
    s.supply->sensing = remote_sensing{.electrode_side = "electrode lead", .work_side = "clamp"};
    const operating_point sensed = operating_point_of(s);
    EXPECT_NEAR(sensed.lost().value(), (sensed.loop.parts[2].drop - sensed.wire_extension_drop).value(), 1e-9);
}

// by hand: on a sinusoidal current the volts of loop and arc are in phase with it, those of the leads' inductance stand
// at right angles, and the two together lie on the supply's straight line from 80 V to 260 A
TEST(OperatingPoint, AReactanceStandsAtRightAngles)
{
    station s = stick("gate post", 150_A, 25_m);
    s.job.course = waveform::sine(150_A, 50_Hz);
    cable& coil = std::get<cable>(s.path[5]);
    coil.lay = lay::coiled;
    coil.coil_turns = 20;
    s.supply = supply{.kind = supply_kind::drooping};
    s.supply->short_circuit = 260_A;
    s.supply->no_load.peak = 80_V;
    const operating_point p = operating_point_of(s);
    ASSERT_TRUE(p.is_found()) << to_text(p.outcome);
    const double in_phase = (p.arc_voltage + p.loop_drop).value(), across = p.inductive.value();
    ASSERT_GT(across, 2.0);  // V: added straight it would be far off
    EXPECT_NEAR_REL(std::hypot(in_phase, across), 80.0 * (1.0 - p.current.value() / 260.0), 1e-5);
}

TEST(OperatingPoint, SaysWhyThereIsNone)
{
    station s = stick("stand", 150_A, 10_m);
    EXPECT_EQ(operating_point_of(s).outcome, operating_outcome::no_supply);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V};
    s.job.course = waveform::pulse({.base = 60_A, .peak = 200_A, .base_time = 5_ms, .peak_time = 5_ms});
    EXPECT_EQ(operating_point_of(s).outcome, operating_outcome::not_steady);
    s.job.course = waveform::sine(150_A, 50_Hz);
    EXPECT_TRUE(operating_point_of(s).is_found());
    std::get<work_connection>(s.path[4]).surface = surface_state::painted_unbroken;
    EXPECT_EQ(operating_point_of(s).outcome, operating_outcome::open_circuit);
    station hot = stick("stand", 3000_A, 10_m);
    hot.supply = supply{.kind = supply_kind::constant_current, .highest_output = 200_V};
    EXPECT_EQ(operating_point_of(hot).outcome, operating_outcome::loop_not_settled);
    std::get<arc>(s.path[3]).length = 0_mm;
    EXPECT_THROW(static_cast<void>(operating_point_of(s)), out_of_range_error);
}

}  // namespace
