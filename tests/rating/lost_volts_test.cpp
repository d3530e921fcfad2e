// What the working point is found to be, and what lost volts cost.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/lost_volts.hpp>

#include <algorithm>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

station stick_stand(length lead = 15_m)
{
    station s{.name = "stand",
              .job = {.process = process::smaw, .current = 150_A, .duty = duty_cycle::of(0.4)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", square_mm(50)),
              welding_cable(square_mm(50), lead).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              welding_cable(square_mm(50), lead).named("work lead")};
    return s;
}
station wire_bench(length lead = 10_m)
{
    station s = stick_stand(lead);
    s.job.process = process::gmaw;
    s.job.current = 200_A;
    s.path[2] = wire_gun("gun", 3_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 27_V};
    return s;
}
supply drooping(voltage open, current closed)
{
    supply out{.kind = supply_kind::drooping};
    out.no_load.peak = open;
    out.short_circuit = closed;
    return out;
}
const loop_finding* finding_of(const assessment& a, finding_id id)
{
    const auto found =
        std::find_if(a.findings.begin(), a.findings.end(), [id](const loop_finding& f) { return f.id == id; });
    return found == a.findings.end() ? nullptr : &*found;
}

TEST(OperatingFindings, ASupplyThatGivesAnotherCurrentSaysBoth)
{
    station s = stick_stand();
    s.supply = drooping(80_V, 320_A);  // at about 29 V it gives some 200 A
    const assessment more = assess(s);
    const loop_finding* f = finding_of(more, finding_id::supply_gives_other_current);
    ASSERT_NE(f, nullptr);
    EXPECT_NE(f->text.find("150 A"), std::string::npos) << f->text;
    ASSERT_TRUE(more.operating);
    EXPECT_NE(f->text.find(to_text(more.operating->current, "A")), std::string::npos) << f->text;
    EXPECT_GT(more.operating->current, 180_A);
    s.supply = drooping(80_V, 190_A);
    const assessment less = assess(s);
    EXPECT_NE(finding_of(less, finding_id::supply_gives_other_current), nullptr);
    EXPECT_LT(less.operating->current, 130_A);
    EXPECT_EQ(less.findings.front().id, finding_id::supply_gives_other_current);  // it falls: an arc is held

    // within one twentieth nothing is said: 80 V (1 - I/Ik) with the arc and loop at 150 A
    s.supply->short_circuit = 150_A * (80.0 / (80.0 - 26.0 - less.total_drop.typical.value()));
    const assessment as_asked = assess(s);
    EXPECT_NEAR(as_asked.operating->current.value(), 150.0, 0.5);
    EXPECT_EQ(finding_of(as_asked, finding_id::supply_gives_other_current), nullptr);
    s.job.current = 0.96 * as_asked.operating->current;
    EXPECT_EQ(finding_of(assess(s), finding_id::supply_gives_other_current), nullptr);
    s.job.current = 0.94 * as_asked.operating->current;
    EXPECT_NE(finding_of(assess(s), finding_id::supply_gives_other_current), nullptr);
}

TEST(OperatingFindings, NoArcAndStubbing)
{
    station s = stick_stand();
    s.supply = drooping(19_V, 500_A);  // an arc of no current asks for 20 V (load voltage, IEC 60974-1)
    const assessment none = assess(s);
    const loop_finding* f = finding_of(none, finding_id::too_few_volts_for_arc);
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, finding_severity::stop_job);
    EXPECT_NE(f->text.find("150 A"), std::string::npos);
    EXPECT_NE(f->text.find("0 A"), std::string::npos);

    station w = wire_bench(40_m);
    w.supply->setting = 21_V;
    const assessment stubs = assess(w);
    f = finding_of(stubs, finding_id::too_few_volts_for_arc);
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, finding_severity::warning);
    EXPECT_NE(f->text.find("stubs"), std::string::npos);
    w.supply->setting = 27_V;
    w.supply->limit = 180_A;
    const assessment limited = assess(w);
    f = finding_of(limited, finding_id::supply_gives_other_current);
    ASSERT_NE(f, nullptr);
    EXPECT_NE(f->text.find("180 A"), std::string::npos);
}

TEST(OperatingFindings, AnUnknownWorkingPointIsSaidAndStopsNothing)
{
    station s = stick_stand();
    s.supply = supply{.kind = supply_kind::measured};
    s.supply->points = {{100_A, 60_V}, {160_A, 45_V}};
    const assessment a = assess(s);
    const loop_finding* f = finding_of(a, finding_id::working_point_not_known);
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, finding_severity::warning);
    EXPECT_NE(f->text.find("100 A to 160 A"), std::string::npos) << f->text;
    EXPECT_EQ(finding_of(a, finding_id::too_few_volts_for_arc), nullptr);
}

TEST(OperatingFindings, ASoundStationHasNone)
{
    station s = stick_stand();
    EXPECT_FALSE(assess(s).operating);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V};
    const assessment a = assess(s);
    EXPECT_TRUE(a.findings.empty());
    EXPECT_TRUE(a.operating->is_found());
    EXPECT_TRUE(a.operating->loop.parts.empty());
    EXPECT_TRUE(assess(wire_bench()).findings.empty());
}

TEST(LostVolts, OnAFlatOutputTheyCostLengthOrCurrentAndWire)
{
    const station s = wire_bench();
    const lost_volts cost = cost_of_lost_volts(s, 2_V);
    ASSERT_EQ(cost.outcome, operating_outcome::found);
    EXPECT_NEAR(cost.arc_shorter.typical.value(), 2.0 / 636.0, 1e-9);  // 0.636 V/mm, recalled
    EXPECT_LT(cost.arc_shorter.low, cost.arc_shorter.high);
    EXPECT_EQ(*cost.setting_wanted, 29_V);
    EXPECT_NEAR(cost.terminals_wanted.value(), 29.0, 1e-8);
    EXPECT_GT(cost.current_without, cost.current_now);
    // the small change of the current: the volts over the slopes of loop and arc together
    station more = s;
    more.job.current = cost.current_without;
    station now = s;
    now.job.current = cost.current_now;
    const double loop_slope =
        ((solve_loop(more).total_drop - solve_loop(now).total_drop) / (cost.current_without - cost.current_now))
            .value();
    EXPECT_NEAR_REL((cost.current_without - cost.current_now).value(), 2.0 / (loop_slope + 0.022), 1e-6);
    const burn_off steel = *usual_burn_off(mild_steel, 1.2_mm);
    EXPECT_NEAR_REL(cost.feed_without->value(), melting_speed(steel, cost.current_without, 15_mm).value(), 1e-12);
    EXPECT_NEAR_REL(cost.feed_now->value(), melting_speed(steel, cost.current_now, 15_mm).value(), 1e-12);
    ASSERT_EQ(cost.parts.size(), 5U);
    for (const part_at_setting& p : cost.parts) {
        EXPECT_GT(p.loss_then, p.loss_now) << p.name;
        EXPECT_GT(p.peak_then, p.peak_now) << p.name;
    }
    // and a station set so has that current
    station regained = s;
    regained.supply->setting = *cost.setting_wanted;
    regained.supply->feeding = wire_feeding::by_arc_voltage;
    EXPECT_NEAR_REL(operating_point_of(regained).current.value(), cost.current_without.value(), 1e-8);
}

TEST(LostVolts, AConstantCurrentLosesHeadroomAlone)
{
    station s = stick_stand();
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 60_V};
    const lost_volts cost = cost_of_lost_volts(s, 3_V);
    ASSERT_EQ(cost.outcome, operating_outcome::found);
    EXPECT_NEAR_REL(cost.current_now.value(), cost.current_without.value(), 1e-9);
    EXPECT_FALSE(cost.setting_wanted);
    EXPECT_FALSE(cost.feed_now);
    for (const part_at_setting& p : cost.parts) EXPECT_NEAR_REL(p.loss_then.value(), p.loss_now.value(), 1e-8);
    // on a drooping supply some of the current as well
    s.supply = drooping(80_V, 260_A);
    const lost_volts droop = cost_of_lost_volts(s, 3_V);
    EXPECT_GT(droop.current_without, droop.current_now);
    EXPECT_LT((droop.current_without - droop.current_now).value(), 3.0 / (80.0 / 260.0));
}

TEST(LostVolts, RefusesWhatCannotBe)
{
    EXPECT_THROW(static_cast<void>(cost_of_lost_volts(stick_stand(), 2_V)), missing_data_error);
    EXPECT_THROW(static_cast<void>(cost_of_lost_volts(wire_bench(), 0_V)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(cost_of_lost_volts(wire_bench(), 16_V)), out_of_range_error);
}

}  // namespace
