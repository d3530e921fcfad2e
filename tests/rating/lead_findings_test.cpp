// Coverings that are not whole stop the job, whatever the loop does.
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/lead/larger_lead.hpp>

#include <algorithm>
#include <string>

namespace {
using namespace weldloop;

station gate_stand()
{
    station s{.name = "gate stand",
              .job = {.process = process::gmaw, .current = 150_A, .duty = duty_cycle::of(0.35)},
              .where = {.air = 22_degC}};
    s.path = {welding_cable(square_mm(50), 10_m).named("feeder lead"), wire_gun("gun", 3_m), arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              welding_cable(square_mm(50), 10_m).named("work lead")};
    return s;
}

std::size_t findings_called(const assessment& a, finding_id id)
{
    return static_cast<std::size_t>(
        std::count_if(a.findings.begin(), a.findings.end(), [&](const loop_finding& f) { return f.id == id; }));
}

const loop_finding& finding_of(const assessment& a, finding_id id)
{
    return *std::find_if(a.findings.begin(), a.findings.end(), [&](const loop_finding& f) { return f.id == id; });
}

TEST(LeadFindings, AWholeCoveringHasNone)
{
    EXPECT_TRUE(assess(gate_stand()).findings.empty());
}

// source: EN 50565-1, lowest temperature of laying and handling: thermoplastic 5 degC, rubber -25 degC (from memory)
TEST(LeadFindings, AColdCoveringIsNotBent)
{
    station s = gate_stand();
    std::get<cable>(s.path[4]).covering = pvc;
    EXPECT_EQ(findings_called(assess(s), finding_id::covering_cold), 0U);
    s.where.air = temperature::celsius(-10);
    const assessment frost = assess(s);
    ASSERT_EQ(findings_called(frost, finding_id::covering_cold), 1U);
    const loop_finding& f = finding_of(frost, finding_id::covering_cold);
    EXPECT_EQ(f.severity, finding_severity::warning);
    EXPECT_EQ(f.text.rfind("work lead is covered with pvc", 0), 0U) << f.text;
    EXPECT_NE(f.text.find("below 5 degC"), std::string::npos) << f.text;
    EXPECT_NE(f.text.find("from memory"), std::string::npos) << f.text;
    s.where.air = temperature::celsius(-30);
    EXPECT_EQ(findings_called(assess(s), finding_id::covering_cold), 3U);  // both leads and the gun's
}

// source: OSHA 29 CFR 1926.351(b)(4): a cable needing repair is not used (read in WAC 296-155-405(2)(d)).
TEST(LeadFindings, ADamagedOneStopsTheJobAndNamesEveryLead)
{
    for (const covering_state state : all_covering_states) {
        if (state == covering_state::whole) continue;
        station s = gate_stand();
        std::get<cable>(s.path[4]).covering_state = state;
        std::get<wire_gun>(s.path[1]).lead.covering_state = state;
        const assessment a = assess(s);
        const finding_id id = state == covering_state::wet ? finding_id::covering_wet : finding_id::covering_damaged;
        ASSERT_EQ(a.findings.size(), 1U);
        ASSERT_EQ(findings_called(a, id), 1U);
        const loop_finding& f = finding_of(a, id);
        EXPECT_EQ(f.severity, finding_severity::stop_job);
        const std::string word(to_text(state));
        EXPECT_NE(f.text.find("gun (" + word + "), work lead (" + word + ")"), std::string::npos) << f.text;
        EXPECT_NE(f.text.find("shock"), std::string::npos);
        EXPECT_NE(f.text.find("Take it out of use"), std::string::npos);
        EXPECT_EQ(a.parts.back().notes.size(), 1U);
        EXPECT_EQ(a.parts.back().notes.front().rfind("Its covering is " + word + ": ", 0), 0U);
    }
}

// It stands before anything milder, in a loop that is open or melts as in one that is solved.
TEST(LeadFindings, StandBeforeMilderOnesAndInEveryOutcome)
{
    station s = gate_stand();
    std::get<cable>(s.path[0]).covering_state = covering_state::bare;
    std::get<cable>(s.path[4]).covering_state = covering_state::wet;
    s.allowed_drop = 0.5_V;
    const assessment over = assess(s);
    ASSERT_EQ(over.findings.size(), 3U);
    EXPECT_EQ(over.findings.back().id, finding_id::drop_above_allowed);
    s.job.current = 4000_A;
    const assessment melted = assess(s);
    EXPECT_FALSE(melted.conducts);
    EXPECT_EQ(findings_called(melted, finding_id::covering_damaged), 1U);
    EXPECT_EQ(findings_called(melted, finding_id::covering_wet), 1U);
}

TEST(LeadFindings, ANewLeadIsWhole)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    lead.covering_state = covering_state::burnt;
    EXPECT_EQ(resized(lead, square_mm(70)).covering_state, covering_state::whole);
}

}  // namespace
