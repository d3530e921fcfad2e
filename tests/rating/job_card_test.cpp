// A job card against the tables it quotes and against the station it says to make.
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/job_card.hpp>
#include <weldloop/rating/lead/cut_back.hpp>
#include <weldloop/rating/usual_size.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr, testing::StartsWith;

namespace {

// A gate jig with every fault a termination can have.
station worn_jig()
{
    station s{.name = "gate jig",
              .job = {.process = process::smaw, .current = 200_A, .duty = duty_cycle::of(4_min, 10_min)},
              .where = {.air = 25_degC}};
    lug output = crimped_lug("output lug", aught(1)).tightened_to(2_Nm).with_missing_strands(0.3);
    output.stamped = aught(3);
    output.palm = surface_state::oxidized;
    cable lead = welding_cable(aught(1), 10_m).named("electrode lead");
    lead.missing_strands = 0.2;
    lead.damaged_length = 10_cm;
    lead.covering_state = covering_state::cut;
    coupling plug("plug", aught(1));
    plug.force = 20_N;
    work_connection clamp{
        .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::light_rust, .name = "clamp"};
    clamp.grip_lost = 0.5;
    s.path = {output,
              lead,
              plug,
              welding_cable(aught(1), 5_m).named("whip"),
              electrode_holder("holder", 300_A),
              arc{},
              contact{.metals = {mild_steel, mild_steel},
                      .force = 300_N,
                      .surface = surface_state::mill_scale,
                      .name = "gate on table"},
              plate{.metal = mild_steel, .length = 1_m, .width = 500_mm, .thickness = 10_mm, .name = "table"},
              clamp,
              crimped_lug("clamp lug", aught(1)),
              welding_cable(aught(1), 10_m).named("work lead"),
              crimped_lug("return lug", aught(1))};
    return s;
}

const part_card& card_of(const job_card& c, std::string_view name)
{
    return *std::find_if(c.parts.begin(), c.parts.end(), [&](const part_card& p) { return p.name == name; });
}
const card_line* line_of(const part_card& p, std::string_view what)
{
    const auto at = std::find_if(p.lines.begin(), p.lines.end(), [&](const card_line& l) { return l.what == what; });
    return at == p.lines.end() ? nullptr : &*at;
}
std::string value_of(const job_card& c, std::string_view name, std::string_view what)
{
    const card_line* l = line_of(card_of(c, name), what);
    return l == nullptr ? "no such line" : l->value;
}

const job_card& jig_card()
{
    static const job_card card = job_card_of(worn_jig());
    return card;
}

}  // namespace

// MIL-T-7928E: 5 mV at 245 A for 1/0 (from memory), at 200 A in proportion. DIN 43673: 40 N m on M10. T = K d F with K
// 0.17, 0.15 to 0.22: 23.5 kN, 18.2 to 26.7.
TEST(JobCard, QuotesTheTables)
{
    const job_card& c = jig_card();
    EXPECT_THAT(value_of(c, "output lug", "crimp, at most"), StartsWith("5 mV at 245 A (4.1 mV at 200 A)"));
    EXPECT_EQ(line_of(card_of(c, "output lug"), "crimp, at most")->from, &crimp_limits_recalled);
    EXPECT_THAT(value_of(c, "output lug", "torque"), StartsWith("40 Nm on the M10"));
    EXPECT_EQ(line_of(card_of(c, "output lug"), "torque")->from, &electrical_torque_table);
    EXPECT_EQ(value_of(c, "output lug", "force of that"), "24 kN, from bolt to bolt 18 kN to 27 kN");
    // IEC 60974-13: 0.08 V at 100 A over a pair of clamps and 260 mm of plate of 75 x 12 mm, 0.15 uohm m: 43 of 800
    // micro-ohm; half of the rest at 200 A
    EXPECT_THAT(value_of(c, "clamp", "drop when new, at most"), StartsWith("76 mV at 200 A"));
    EXPECT_THAT(value_of(c, "electrode lead", "conductor, at most"), "85 degC");
    // a barrel of up to (1/0.4)^(1/3) of the conductor, 53.5 mm2 by ASTM B258
    EXPECT_THAT(value_of(c, "output lug", "lead in the barrel"), HasSubstr("1/0 AWG (53.5 mm2)"));
    EXPECT_THAT(value_of(c, "output lug", "lead in the barrel"), HasSubstr("3/0 AWG or larger"));  // above 72.6 mm2
    EXPECT_THAT(value_of(c, "output lug", "cut back"), HasSubstr("152 mm to 254 mm"));             // 6 to 10 inches
    EXPECT_THAT(value_of(c, "output lug", "bare copper"), HasSubstr("none"));
    for (const part_card& p : c.parts)
        for (const card_line& l : p.lines) {
            ASSERT_NE(l.from, nullptr) << p.name << ": " << l.what;
            EXPECT_THAT(c.basis.sources(), testing::Contains(l.from));
        }
}

TEST(JobCard, MakesEveryJointSound)
{
    const station& made = jig_card().made;
    const auto& output = std::get<lug>(made.path[0]);
    EXPECT_EQ(output.stamped, aught(1));
    EXPECT_EQ(output.missing_strands, strand_loss(0.0));
    EXPECT_EQ(output.bolt_torque, 40_Nm);
    EXPECT_EQ(output.palm, surface_state::clean);
    const auto& lead = std::get<cable>(made.path[1]);
    EXPECT_EQ(lead.missing_strands, strand_loss(0.0));
    EXPECT_EQ(lead.covering_state, covering_state::whole);
    EXPECT_EQ(std::get<coupling>(made.path[2]).force, usual_coupling_force(aught(1)));
    EXPECT_EQ(std::get<contact>(made.path[6]).surface, surface_state::clean);
    const auto& clamp = std::get<work_connection>(made.path[8]);
    EXPECT_EQ(clamp.surface, surface_state::clean);
    EXPECT_EQ(clamp.grip_lost, fraction(0.0));
    EXPECT_EQ(clamp.clamp.kind, clamp_kind::spring);  // nothing is said of its use
    EXPECT_LT(jig_card().found.total_drop.typical, assess(worn_jig()).total_drop.typical);
    // what a joint should read is what the made station has
    for (const part_result& p : jig_card().found.parts) {
        if (p.name != "plug") continue;
        EXPECT_THAT(value_of(jig_card(), "plug", "should read"),
                    StartsWith(to_text(p.drop.low, "mV", 2) + " to " + to_text(p.drop.high, "mV", 2) + " at 200 A"));
    }
}

TEST(JobCard, TheClampSuitsItsUse)
{
    EXPECT_THAT(card_of(jig_card(), "clamp").make, HasSubstr("taken off and put on, a screw clamp"));
    station_service used;
    used.clamps.openings = 20;
    const job_card moved = job_card_of(worn_jig(), used);
    EXPECT_EQ(std::get<work_connection>(moved.made.path[8]).clamp.kind, clamp_kind::screw);
    EXPECT_THAT(card_of(moved, "clamp").make, StartsWith("Screw clamp, 300 A"));
    const job_card still = job_card_of(worn_jig(), station_service{});
    EXPECT_EQ(std::get<work_connection>(still.made.path[8]).clamp.kind, clamp_kind::bolted);
    EXPECT_THAT(card_of(still, "clamp").make, HasSubstr("nothing moves here"));
    EXPECT_THAT(value_of(still, "clamp", "torque"), StartsWith("40 Nm on the M10"));
}

// The table between gate and clamp takes volts and heats; without it the loop is another station, which is assessed.
TEST(JobCard, TheClampBelongsOnThePart)
{
    const job_card& c = jig_card();
    ASSERT_TRUE(c.seat);
    EXPECT_EQ(c.seat->clamp, "clamp");
    station on_part = c.made;
    on_part.path.erase(on_part.path.begin() + 6, on_part.path.begin() + 8);
    const assessment there = assess(on_part);
    EXPECT_EQ(c.seat->part_drop, there.total_drop.typical);
    EXPECT_EQ(c.seat->table_drop, c.found.total_drop.typical);
    EXPECT_LT(c.seat->part_drop, c.seat->table_drop);
    EXPECT_TRUE(c.seat->on_the_part);
    // without a table there is nothing to choose
    EXPECT_FALSE(job_card_of(on_part).seat);
}

TEST(JobCard, CutsBackWhatWasHot)
{
    station s = worn_jig();
    std::get<lug>(s.path[11]) = crimped_lug("return lug", aught(1)).with_missing_strands(0.55);
    s.job.duty = duty_cycle::continuous();
    const assessment now = assess(s);
    const auto hot =
        std::find_if(now.parts.begin(), now.parts.end(), [](const part_result& p) { return p.name == "return lug"; });
    ASSERT_TRUE(now.conducts);
    const job_card c = job_card_of(s);
    const auto& lead = std::get<cable>(s.path[10]);
    const temperature limit = limit_of(lead);
    if (hot->peak_temperature > limit) {
        const cut_back burnt = cut_back_of(lead, s.where, {hot->peak_temperature, limit}, 200_A);
        EXPECT_THAT(value_of(c, "return lug", "of that by heat"), StartsWith(to_text(burnt.length, "mm", 2)));
    } else
        EXPECT_EQ(value_of(c, "return lug", "of that by heat"), "no such line");
    // an end that was never hot has no such line
    EXPECT_EQ(value_of(jig_card(), "clamp lug", "of that by heat"), "no such line");
}

TEST(JobCard, SaysSoWhereNothingCanBeExpected)
{
    station s = worn_jig();
    s.job.current = 4000_A;
    s.job.duty = duty_cycle::continuous();
    const job_card c = job_card_of(s);
    EXPECT_FALSE(c.found.conducts);
    EXPECT_FALSE(c.seat);
    EXPECT_EQ(value_of(c, "output lug", "should read"), "no such line");
    EXPECT_EQ(value_of(c, "output lug", "look again"), "no such line");
    EXPECT_THAT(value_of(c, "output lug", "torque"), StartsWith("40 Nm"));
    EXPECT_THROW((void)job_card_of(station{}), error);
}

TEST(JobCard, NamesWhatNoWorkmanshipCures)
{
    station s = worn_jig();
    s.job.current = 320_A;
    s.job.duty = duty_cycle::continuous();
    std::get<cable>(s.path[10]) = welding_cable(awg(4), 10_m).named("work lead");
    const job_card c = job_card_of(s);
    EXPECT_TRUE(std::any_of(c.still_against.begin(), c.still_against.end(),
                            [](const remedy& r) { return r.part == "work lead"; }));
    // the lug on that lead is of its size, whatever was described
    EXPECT_EQ(std::get<lug>(c.made.path[11]).size, awg(4));
}

namespace {

// A stand whose parts are of two series, with leads back on two ways; the lugs of each way see its share alone.
station carried_stand()
{
    station s{.name = "frame stand",
              .job = {.process = process::smaw, .current = 180_A, .duty = duty_cycle::of(4_min, 10_min)},
              .where = {.air = 25_degC}};
    cable_splice sleeve;
    sleeve.name = "sleeve";
    rotary_ground turner;
    turner.name = "turner";
    s.path = {welding_cable(awg(2), 10_m).named("lead"),
              sleeve,
              welding_cable(awg(2), 5_m).named("lead b"),
              coupling("plug", square_mm(70)),
              welding_cable(awg(4), 3_m).named("whip"),
              electrode_holder("holder", 250_A),
              arc{},
              turner,
              workpiece{.metal = mild_steel, .mass = 30_kg, .thickness = 5_mm, .name = "frame"},
              work_connection{.clamp = bolted_work_lug(square_mm(35)), .onto = mild_steel, .name = "seat lug"},
              welding_cable(awg(3), 10_m).named("work lead"),
              crimped_lug("return lug", awg(3)),
              junction{.name = "stud"},
              crimped_lug("output lug", awg(2))};
    way second{.name = "second lead", .from = "frame", .to = "stud"};
    second.path = {work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "second clamp"},
                   welding_cable(awg(3), 10_m).named("second work lead"), crimped_lug("second lug", awg(3))};
    s.ways = {second};
    return s;
}

}  // namespace

// MIL-T-7928E: 6 mV at 158 A for 3 AWG's row below, 4 AWG (135 A) (from memory); of the way's share in proportion.
TEST(JobCard, LimitsAreThoseOfTheWaysOwnCurrent)
{
    const job_card c = job_card_of(carried_stand());
    ASSERT_TRUE(c.found.conducts);
    for (const part_result& p : c.found.parts) {
        if (p.name != "return lug" && p.name != "second lug") continue;
        ASSERT_LT(p.current.typical, 150_A);
        const crimp_limit limit = crimp_limit_of(awg(3).area());
        EXPECT_THAT(value_of(c, p.name, "crimp, at most"),
                    HasSubstr("(" + to_text(voltage(limit.resistance * p.current.typical), "mV", 2) + " at " +
                              to_text(p.current.typical, "A") + ")"));
    }
    for (const part_result& p : c.found.parts) {
        if (p.name != "second clamp") continue;
        EXPECT_THAT(value_of(c, p.name, "drop when new, at most"), HasSubstr(" at " + to_text(p.current.typical, "A")));
    }
    EXPECT_THAT(value_of(c, "output lug", "crimp, at most"), HasSubstr(" at 180 A)"));
}

TEST(JobCard, OneFigureIsNoRange)
{
    const std::string lead = value_of(job_card_of(carried_stand()), "lead", "should read");
    EXPECT_THAT(lead, testing::Not(HasSubstr(" to "))) << lead;
    EXPECT_THAT(lead, HasSubstr(" mV at 180 A"));
    // nor is one that no meter resolves: a whip whose ends are warmed a little
    EXPECT_THAT(value_of(job_card_of(carried_stand()), "whip", "should read"), testing::Not(HasSubstr(" to ")));
}

TEST(JobCard, OnlyClampsAndHoldersHaveJaws)
{
    const job_card c = job_card_of(carried_stand());
    for (const char* name : {"seat lug", "turner"}) {
        const part_card& p = card_of(c, name);
        EXPECT_THAT(p.make, testing::Not(HasSubstr("jaw")));
        for (const card_line& l : p.lines) EXPECT_THAT(l.value, testing::Not(HasSubstr("jaw"))) << name << l.what;
    }
    EXPECT_THAT(value_of(c, "turner", "ring"), HasSubstr("brushes"));
    EXPECT_THAT(value_of(c, "second clamp", "seat"), HasSubstr("jaws"));
}

TEST(JobCard, NothingIsStillThatIsMoved)
{
    for (const joint_motion motion : {joint_motion::moved, joint_motion::shaken}) {
        station_service used;
        used.joints.motion = motion;
        const job_card c = job_card_of(carried_stand(), used);
        for (const part_card& p : c.parts) EXPECT_THAT(p.make, testing::Not(HasSubstr("nothing moves"))) << p.name;
        // moved leads are no reason to bolt a clamp
        EXPECT_THAT(card_of(c, "second clamp").make, testing::Not(HasSubstr("bolted")));
        EXPECT_EQ(std::get<work_connection>(c.made.ways[0].path[0]).clamp.kind, clamp_kind::screw);
    }
    const job_card still = job_card_of(carried_stand(), station_service{});
    EXPECT_THAT(card_of(still, "output lug").make, HasSubstr("nothing moves here"));
    // and where nothing is said of the use, nothing is claimed of it
    EXPECT_THAT(card_of(job_card_of(carried_stand()), "output lug").make, testing::Not(HasSubstr("here")));
}

// ASTM B258: 2 AWG 33.6 mm2, 1/0 53.5, 2/0 67.4, 3/0 85.0.
TEST(JobCard, SizesAreOfTheSeriesInUse)
{
    const job_card c = job_card_of(carried_stand());
    EXPECT_EQ(std::get<coupling>(c.made.path[3]).size, awg(2));  // the larger of its leads
    EXPECT_EQ(std::get<cable_splice>(c.made.path[1]).stamped, awg(2));
    EXPECT_EQ(std::get<electrode_holder>(c.made.path[5]).size, awg(4));
    EXPECT_THAT(card_of(c, "seat lug").make, HasSubstr("for a lead of 3 AWG"));
    EXPECT_THAT(value_of(c, "output lug", "lead in the barrel"), HasSubstr("1/0 AWG or larger"));
    for (const part_card& p : c.parts) EXPECT_THAT(p.make, testing::Not(HasSubstr("mm2"))) << p.name;
    EXPECT_EQ(usual_size(square_mm(50), size_family::american), aught(1));
    EXPECT_EQ(usual_size(square_mm(70), size_family::american), aught(2));
    EXPECT_EQ(usual_size(aught(1), size_family::metric), square_mm(50));
    EXPECT_EQ(usual_size(awg(3), size_family::american), awg(3));
    EXPECT_EQ(smallest_size_above(square_mm(240).area(), size_family::metric), std::nullopt);
    EXPECT_EQ(family_in_use(carried_stand()), size_family::american);
    EXPECT_EQ(family_in_use(station{}), size_family::metric);
    // a clamp that takes a lug's place has a rating that is sold
    station_service used;
    used.clamps.openings = 20;
    const job_card moved = job_card_of(carried_stand(), used);
    const current rated = std::get<work_connection>(moved.made.path[9]).clamp.rated_current;
    EXPECT_EQ(number_in(rated, "A"), 50.0 * std::round(number_in(rated, "A") / 50.0));
}
