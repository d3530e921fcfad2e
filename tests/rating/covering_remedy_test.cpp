// What is done about a covering that is not whole, and what its heat uses up of it, in a whole station.
#include <algorithm>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/covering_life.hpp>
#include <weldloop/rating/remedies.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

station bench()
{
    station s{.name = "gate bench",
              .job = {.process = process::gmaw, .current = 150_A, .duty = duty_cycle::of(3_min, 10_min)}};
    s.path = {wire_gun("gun", 3_m),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("lug", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("first"),
              crimped_lug("middle", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("second")};
    return s;
}

cable& lead(station& s, std::size_t i)
{
    return std::get<cable>(s.path[i]);
}

std::vector<remedy> of_coverings(const station& s)
{
    std::vector<remedy> out;
    for (const remedy& r : remedies_for(s))
        if (r.what.find("out of use") != std::string::npos) out.push_back(r);
    return out;
}

}  // namespace

TEST(CoveringRemedy, ComesFirstAndClearsItsFinding)
{
    EXPECT_TRUE(of_coverings(bench()).empty());
    station s = bench();
    lead(s, 4).covering_state = covering_state::cut;
    const std::vector<remedy> all = remedies_for(s);
    ASSERT_FALSE(all.empty());
    EXPECT_EQ(all.front().part, "first");
    EXPECT_EQ(all.front().effort, remedy_effort::re_terminate);
    EXPECT_THAT(all.front().what, testing::HasSubstr("cut the place out"));
    EXPECT_THAT(all.front().clears_findings, testing::ElementsAre(finding_id::covering_damaged));
}

// relation: a step to one part does not spare what is done to every lead
TEST(CoveringRemedy, SparesNothingThatIsDoneToAllLeads)
{
    station s = bench();
    s.where.lay = lay::coiled;
    s.where.coil_turns = 3;
    lead(s, 4).covering_state = covering_state::cut;
    const std::vector<remedy> steps = of_coverings(s);
    ASSERT_EQ(steps.size(), 1U);
    for (const std::string& spared : steps[0].makes_moot)
        EXPECT_EQ(spared.find("straight"), std::string::npos) << spared;
    const std::vector<remedy> all = remedies_for(s);
    EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                            [](const remedy& r) { return r.what.find("out straight") != std::string::npos; }));
}

// two leads: each step lifts a stop, neither clears the finding by itself; a wet one has its own
TEST(CoveringRemedy, OneOfTwoLeavesTheFinding)
{
    station s = bench();
    lead(s, 4).covering_state = covering_state::burnt;
    lead(s, 6).covering_state = covering_state::bare;
    std::vector<remedy> steps = of_coverings(s);
    ASSERT_EQ(steps.size(), 2U);
    for (const remedy& r : steps) EXPECT_TRUE(r.clears_findings.empty()) << r.what;
    lead(s, 6).covering_state = covering_state::wet;
    steps = of_coverings(s);
    ASSERT_EQ(steps.size(), 2U);
    EXPECT_EQ(steps[0].effort, remedy_effort::clean);  // the wet one is dried: less effort comes first
    EXPECT_THAT(steps[0].clears_findings, testing::ElementsAre(finding_id::covering_wet));
    EXPECT_THAT(steps[1].clears_findings, testing::ElementsAre(finding_id::covering_damaged));
    std::get<wire_gun>(s.path[0]).lead.covering_state = covering_state::crushed;
    EXPECT_EQ(of_coverings(s).size(), 3U);
}

// a lead far below its limit uses next to nothing and is not talked about; one past its limit is, the poor case first
TEST(CoveringUse, IsSaidWhereItIsMuch)
{
    const station cool = bench();
    const assessment a = assess(cool);
    for (const part_result& p : a.parts)
        if (p.name == "first") {
            ASSERT_TRUE(p.covering_use);
            EXPECT_LT(p.covering_use->poor, 0.05);
            EXPECT_TRUE(p.notes.empty());
            EXPECT_NEAR_REL(p.covering_use->poor, covering_life_of(p, cool, usual_forecast).poor, 1e-12);
        } else if (p.name == "clamp") {
            EXPECT_FALSE(p.covering_use);
        }
    station warm = bench();  // between: said from a twentieth of a life on
    warm.job.duty = duty_cycle::continuous();
    bool said = false, kept = false;
    for (double amps = 150.0; amps < 360.0; amps += 5.0) {
        warm.job.current = in_si<current>(amps);
        for (const part_result& p : assess(warm).parts) {
            if (p.name != "first" || !p.covering_use) continue;
            EXPECT_EQ(!p.notes.empty(), p.covering_use->poor > 0.05) << amps;
            said = said || (p.covering_use->poor > 0.05 && p.covering_use->poor < 0.3);
            kept = kept || (p.covering_use->poor > 0.01 && p.covering_use->poor < 0.05);
        }
    }
    EXPECT_TRUE(said && kept);
    station hot = bench();
    hot.job.current = 360_A;
    hot.job.duty = duty_cycle::continuous();
    const assessment b = assess(hot);
    ASSERT_TRUE(b.conducts);
    const auto first = std::find_if(b.parts.begin(), b.parts.end(), [](const auto& p) { return p.name == "first"; });
    ASSERT_NE(first, b.parts.end());
    EXPECT_GT(first->covering_use->poor, 0.5);
    EXPECT_GE(first->covering_use->poor, first->covering_use->typical);
    EXPECT_GE(first->covering_use->typical, first->covering_use->good);
    EXPECT_THAT(first->notes, testing::Contains(testing::HasSubstr("In 2000 h of this work: ")));
}
