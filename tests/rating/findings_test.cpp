// Verdicts in the poor case, and what is found of the loop as a whole.
#include <gtest/gtest.h>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>

#include <algorithm>
#include <string>

namespace {
using namespace weldloop;

station trailer_stand()
{
    station s{.name = "trailer stand",
              .job = {.process = process::smaw, .current = 100_A, .duty = duty_cycle::of(0.35)},
              .where = {.air = 22_degC}};
    s.path = {crimped_lug("electrode terminal", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("clamp lug", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("work lead")};
    return s;
}

const part_result& part(const assessment& a, const std::string& name)
{
    return *std::find_if(a.parts.begin(), a.parts.end(), [&](const part_result& p) { return p.name == name; });
}

const loop_finding* finding_of(const assessment& a, const std::string& id)
{
    const auto found =
        std::find_if(a.findings.begin(), a.findings.end(), [&](const loop_finding& f) { return to_text(f.id) == id; });
    return found == a.findings.end() ? nullptr : &*found;
}

// The law that condemns two faces condemns them in every part: yielding spots are not stable, whoever holds them.
TEST(Verdicts, YieldingSpotsCountInEveryPart)
{
    station s = trailer_stand();
    s.path[4] = work_connection{.clamp = bolted_work_lug(square_mm(50)),
                                .onto = mild_steel,
                                .surface = surface_state::heavy_rust,
                                .name = "clamp"};
    const assessment a = assess(s);
    EXPECT_GE(gravity_of(part(a, "clamp").verdict), gravity_of(verdict::may_exceed)) << part(a, "clamp").reason;

    station light = trailer_stand();
    std::get<electrode_holder>(light.path[2]).surface = surface_state::heavy_rust;
    EXPECT_GE(gravity_of(part(assess(light), "holder").verdict), gravity_of(verdict::may_exceed));
}

// Over surfaces, clamps and currents: no part is within its limit while the solution of the poor case melts its spots.
TEST(Verdicts, NothingIsWithinItsLimitWhileItsPoorCaseMelts)
{
    int melting = 0;
    for (const surface_state surface : all_surface_states)
        for (const double amps : {60.0, 100.0, 160.0, 250.0})
            for (const work_clamp& clamp : {spring_clamp(300_A), screw_clamp(300_A), bolted_work_lug(square_mm(50))}) {
                station s = trailer_stand();
                s.job.current = in_si<current>(amps);
                s.path[4] = work_connection{.clamp = clamp, .onto = mild_steel, .surface = surface, .name = "clamp"};
                const loop_state poor = solve_loop(s, scatter::high);
                if (!(poor.parts[4].spots_melt || poor.parts[4].passes_bound)) continue;
                ++melting;
                EXPECT_GE(gravity_of(part(assess(s), "clamp").verdict), gravity_of(verdict::may_exceed))
                    << clamp.name << ", " << to_text(surface) << ", " << amps << " A";
            }
    EXPECT_GE(melting, 5);
}

TEST(Findings, ASoundLoopHasNone)
{
    station s = trailer_stand();
    s.allowed_drop = 4_V;
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 44_V};
    EXPECT_TRUE(assess(s).findings.empty());
}

TEST(Findings, ASupplyThatCannotHoldTheArc)
{
    station s = trailer_stand();
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 20_V};
    const assessment a = assess(s);
    const loop_finding* f = finding_of(a, "supply_cannot_hold_arc");
    ASSERT_NE(f, nullptr);
    EXPECT_EQ(f->severity, finding_severity::stop_job);
    // the arc asks for 20 V + 0.04 V/A x 100 A (IEC 60974-1, conventional load voltage), the loop for its drop
    const double need = 24.0 + a.total_drop.typical.value() - 20.0;
    EXPECT_NE(f->text.find(to_text(in_si<voltage>(need), "V")), std::string::npos) << f->text;

    // a tenth too little typically
    s.supply->highest_output = 24_V + 0.9 * a.total_drop.typical;
    EXPECT_NE(finding_of(assess(s), "supply_cannot_hold_arc"), nullptr);

    // just enough typically, not in a poor case
    s.supply->highest_output = 24_V + 0.5 * (a.total_drop.typical + a.total_drop.high);
    const assessment b = assess(s);
    EXPECT_EQ(finding_of(b, "supply_cannot_hold_arc"), nullptr);
    ASSERT_NE(finding_of(b, "supply_may_not_hold_arc"), nullptr);

    s.job.process = process::gmaw;
    s.path[2] = wire_gun("gun", 3_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 0.5_V};
    EXPECT_NE(finding_of(assess(s), "supply_cannot_hold_arc"), nullptr);
}

TEST(Findings, ALoopOverItsAllowedDrop)
{
    station s = trailer_stand();
    const band<voltage> drop = assess(s).total_drop;
    s.allowed_drop = 0.99 * drop.typical;
    const assessment over = assess(s);
    ASSERT_NE(finding_of(over, "drop_above_allowed"), nullptr);
    EXPECT_EQ(finding_of(over, "drop_may_exceed_allowed"), nullptr);
    s.allowed_drop = 0.5 * (drop.typical + drop.high);
    const assessment may = assess(s);
    EXPECT_EQ(finding_of(may, "drop_above_allowed"), nullptr);
    ASSERT_NE(finding_of(may, "drop_may_exceed_allowed"), nullptr);
    s.allowed_drop = 1.01 * drop.high;
    EXPECT_TRUE(assess(s).findings.empty());
}

TEST(Findings, ALoopThatMeltsHasNoNumbers)
{
    station s = trailer_stand();
    s.job.current = 3000_A;
    const assessment a = assess(s);
    EXPECT_EQ(a.outcome, loop_outcome::ends);
    EXPECT_FALSE(a.conducts);
    ASSERT_NE(finding_of(a, "no_steady_state"), nullptr);
    for (const part_result& p : a.parts) {
        EXPECT_EQ(p.drop.high.value(), 0.0);
        EXPECT_TRUE(p.verdict == verdict::not_judged || p.verdict == verdict::spots_melting) << p.name;
    }
    EXPECT_EQ(a.weakest().verdict, verdict::spots_melting);
}

TEST(Findings, TheGravestComeFirst)
{
    station s = trailer_stand();
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 20_V};
    s.allowed_drop = 0.1_V;
    const assessment a = assess(s);
    ASSERT_GE(a.findings.size(), 2U);
    for (std::size_t i = 1; i < a.findings.size(); ++i) EXPECT_GE(a.findings[i - 1].severity, a.findings[i].severity);
}

}  // namespace
