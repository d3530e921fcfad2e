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
    EXPECT_THAT(value_of(c, "output lug", "lead in the barrel"), HasSubstr("above 72.6 mm2"));
    EXPECT_THAT(value_of(c, "output lug", "cut back"), HasSubstr("152 mm to 254 mm"));  // 6 to 10 inches
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
