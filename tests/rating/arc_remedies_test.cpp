// Remedies that clear what supply, loop and arc are found to make of each other.
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/lost_volts.hpp>
#include <weldloop/rating/remedies.hpp>

#include <algorithm>
#include <string>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

// covered electrodes at a gate post, far from the supply
station post(conductor_size lead, length each, voltage highest)
{
    station s{.name = "gate post",
              .job = {.process = process::smaw, .current = 140_A, .duty = duty_cycle::of(0.35)},
              .where = {.air = 20_degC}};
    s.path = {crimped_lug("output lug", lead),
              welding_cable(lead, each).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "work clamp"},
              welding_cable(lead, each).named("work lead"),
              crimped_lug("return lug", lead)};
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = highest};
    s.allowed_drop = 30_V;  // the drop by itself is nobody's concern here
    return s;
}
station bench(length lead, voltage setting)
{
    station s = post(square_mm(35), lead, 0_V);
    s.job.process = process::gmaw;
    s.job.current = 200_A;
    s.path[2] = wire_gun("gun", 3_m);
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = setting};
    return s;
}

bool has(const assessment& a, finding_id id)
{
    return std::any_of(a.findings.begin(), a.findings.end(), [id](const loop_finding& f) { return f.id == id; });
}
std::vector<remedy> clearing(const std::vector<remedy>& all, finding_id id)
{
    std::vector<remedy> out;
    std::copy_if(all.begin(), all.end(), std::back_inserter(out), [id](const remedy& r) {
        return std::find(r.clears_findings.begin(), r.clears_findings.end(), id) != r.clears_findings.end();
    });
    return out;
}

// Both findings of a supply that cannot do it, with leads of a size at either place.
bool is_short(station s, double electrode_mm2, double work_mm2, length each)
{
    s.path[1] = welding_cable(square_mm(electrode_mm2), each).named("electrode lead");
    s.path[5] = welding_cable(square_mm(work_mm2), each).named("work lead");
    const assessment a = assess(s);
    return has(a, finding_id::supply_cannot_hold_arc) || has(a, finding_id::supply_gives_other_current);
}
constexpr double sizes_mm2[] = {16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0, 150.0, 185.0, 240.0};

// Thin long leads on a supply at its end: what a step says it clears is gone when the station is built with it, and the
// next smaller size leaves it. The sizes are tried here one by one.
TEST(ArcRemedies, LargerLeadsBringTheArcBack)
{
    const station thin = post(square_mm(16), 30_m, 33_V);
    const assessment a = assess(thin);
    ASSERT_TRUE(has(a, finding_id::supply_cannot_hold_arc));
    ASSERT_TRUE(has(a, finding_id::supply_gives_other_current));
    const std::vector<remedy> cures = clearing(remedies_for(thin), finding_id::supply_gives_other_current);
    for (const bool electrode : {true, false}) {
        double least = 0.0;
        for (const double mm2 : sizes_mm2)
            if (least == 0.0 && !is_short(thin, electrode ? mm2 : 16.0, electrode ? 16.0 : mm2, 30_m)) least = mm2;
        ASSERT_GT(least, 16.0);
        const std::string lead = electrode ? "electrode lead" : "work lead";
        const auto step = std::find_if(cures.begin(), cures.end(), [&](const remedy& r) { return r.part == lead; });
        ASSERT_NE(step, cures.end()) << lead;
        EXPECT_NE(step->what.find("by " + to_text(square_mm(least))), std::string::npos) << step->what;
        EXPECT_EQ(step->effort, remedy_effort::replace);
        EXPECT_EQ(clearing({*step}, finding_id::supply_cannot_hold_arc).size(), 1U);
    }
}

TEST(ArcRemedies, BothLeadsWhereNeitherIsEnough)
{
    const station thin = post(square_mm(16), 30_m, 30_V);
    ASSERT_TRUE(is_short(thin, 16.0, 240.0, 30_m) && is_short(thin, 240.0, 16.0, 30_m));
    double least = 0.0;
    for (const double mm2 : sizes_mm2)
        if (least == 0.0 && !is_short(thin, mm2, mm2, 30_m)) least = mm2;
    ASSERT_GT(least, 16.0);
    const std::vector<remedy> cures = clearing(remedies_for(thin), finding_id::supply_gives_other_current);
    ASSERT_FALSE(cures.empty());
    const std::string by = " by " + to_text(square_mm(least));
    EXPECT_EQ(cures.front().what, "replace electrode lead (16 mm2)" + by + " and work lead (16 mm2)" + by);
    EXPECT_EQ(clearing(cures, finding_id::supply_cannot_hold_arc).size(), cures.size());
}

TEST(ArcRemedies, NoLeadCuresASupplyThatIsTooWeak)
{
    const station weak = post(square_mm(16), 30_m, 22_V);  // an arc of 140 A asks for 25.6 V (load line) by itself
    ASSERT_TRUE(has(assess(weak), finding_id::supply_cannot_hold_arc));
    const std::vector<remedy> all = remedies_for(weak);
    EXPECT_TRUE(clearing(all, finding_id::supply_cannot_hold_arc).empty());
    EXPECT_TRUE(clearing(all, finding_id::supply_gives_other_current).empty());
    const auto said = std::find_if(all.begin(), all.end(), [](const remedy& r) {
        return r.is_remark && r.what.find("No larger leads by themselves") != std::string::npos;
    });
    ASSERT_NE(said, all.end());
    EXPECT_NE(said->what.find("The job is stated at 140 A"), std::string::npos) << said->what;
}

// a clamp on rust of years that takes the arc's volts: cleaning it gives them back
TEST(ArcRemedies, CleaningClearsWhatARustyClampMakes)
{
    const station clean = bench(6_m, 22_V);
    bool found = false;
    for (double volts = 22.0; volts < 28.0 && !found; volts += 0.25) {
        station bright = clean;
        bright.supply->setting = in_si<voltage>(volts);
        station s = bright;
        auto& clamp = std::get<work_connection>(s.path[4]);
        clamp.surface = surface_state::light_rust;
        if (has(assess(bright), finding_id::too_few_volts_for_arc) ||
            !has(assess(s), finding_id::too_few_volts_for_arc))
            continue;
        found = true;
        const std::vector<remedy> cures = clearing(remedies_for(s), finding_id::too_few_volts_for_arc);
        EXPECT_TRUE(std::any_of(cures.begin(), cures.end(), [](const remedy& r) {
            return r.part == "work clamp" && r.effort == remedy_effort::clean;
        }));
    }
    EXPECT_TRUE(found);
}

// The setting gives the volts back; the step says what that costs and comes behind what takes the cause away.
TEST(ArcRemedies, ASettingGivesTheVoltsBackAtACost)
{
    const station s = bench(30_m, 24_V);
    ASSERT_TRUE(has(assess(s), finding_id::too_few_volts_for_arc));
    const operating_point p = operating_point_of(s);
    const std::vector<remedy> all = remedies_for(s);
    const auto set =
        std::find_if(all.begin(), all.end(), [](const remedy& r) { return r.effort == remedy_effort::raise_volts; });
    ASSERT_NE(set, all.end());
    EXPECT_EQ(set->part, "supply");
    EXPECT_NE(set->what.find("set the supply to " + to_text(voltage(24_V + p.lost()), "V")), std::string::npos)
        << set->what;
    EXPECT_FALSE(set->verdict_before || set->verdict_after || set->clears_verdict);
    // the part that warms most is the one of cost_of_lost_volts()
    const lost_volts cost = cost_of_lost_volts(s, p.lost());
    ASSERT_EQ(cost.outcome, operating_outcome::found);
    const auto most =
        std::max_element(cost.parts.begin(), cost.parts.end(), [](const part_at_setting& a, const part_at_setting& b) {
            return a.peak_then - a.peak_now < b.peak_then - b.peak_now;
        });
    EXPECT_NE(
        set->what.find(most->name + " by " + to_text(temperature_difference(most->peak_then - most->peak_now), "K")),
        std::string::npos)
        << set->what;
    station then = s;
    then.supply->setting += p.lost();
    EXPECT_FALSE(has(assess(then), finding_id::too_few_volts_for_arc));
    // behind larger leads
    const auto leads = std::find_if(all.begin(), all.end(), [](const remedy& r) {
        return r.effort == remedy_effort::replace && !r.clears_findings.empty();
    });
    ASSERT_NE(leads, all.end());
    EXPECT_LT(leads - all.begin(), set - all.begin());
}

// Pulses whose peak the supply does not hold through thin leads.
TEST(ArcRemedies, LargerLeadsHoldThePeak)
{
    station s = post(square_mm(16), 20_m, 38_V);
    s.job.course = waveform::pulse({.base = 60_A, .peak = 220_A, .base_time = 6_ms, .peak_time = 4_ms});
    s.job.current = s.job.course->rms();
    ASSERT_TRUE(has(assess(s), finding_id::level_not_held));
    EXPECT_FALSE(clearing(remedies_for(s), finding_id::level_not_held).empty());
}

TEST(ArcRemedies, ASoundStationIsOfferedNothingOfTheKind)
{
    for (const station& s : {post(square_mm(50), 10_m, 60_V), bench(6_m, 28_V)}) {
        for (const finding_id id : {finding_id::supply_gives_other_current, finding_id::too_few_volts_for_arc})
            ASSERT_FALSE(has(assess(s), id));
        for (const remedy& r : remedies_for(s)) {
            EXPECT_NE(r.effort, remedy_effort::raise_volts) << r.what;
            EXPECT_TRUE(r.clears_findings.empty()) << r.what;
        }
    }
}

}  // namespace
