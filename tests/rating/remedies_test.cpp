#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/remedies.hpp>

#include <algorithm>
#include <string>

namespace {
using namespace weldloop;

station shop()
{
    station s{.name = "bench",
              .job = {.process = process::gmaw, .current = 240_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 30_degC}};
    s.path = {welding_cable(aught(2), 8_m).named("feeder"),
              arc{},
              contact{.metals = {mild_steel, mild_steel},
                      .force = 120_N,
                      .surface = surface_state::spatter_covered,
                      .name = "gate on table"},
              plate{.metal = mild_steel, .length = 1_m, .width = 1_m, .thickness = 10_mm, .name = "table"},
              work_connection{.clamp = spring_clamp(200_A),
                              .onto = mild_steel,
                              .surface = surface_state::light_rust,
                              .name = "clamp",
                              .grip_lost = 0.4},
              crimped_lug("lug", awg(2)).with_missing_strands(0.4).tightened_to(0.1_Nm),
              welding_cable(awg(2), 12_m).named("work lead")};
    return s;
}

bool has(const std::vector<remedy>& all, const std::string& words)
{
    return std::any_of(all.begin(), all.end(),
                       [&](const remedy& r) { return r.what.find(words) != std::string::npos; });
}

TEST(Remedies, NameEachFaultAndRankByWhatTheyRegain)
{
    const auto all = remedies_for(shop());
    EXPECT_TRUE(has(all, "grind the seat of clamp to bright metal (now light rust)"));
    EXPECT_TRUE(has(all, "clear both faces of gate on table"));
    EXPECT_TRUE(has(all, "move clamp onto the part that is welded"));
    EXPECT_TRUE(has(all, "replace work lead (2 AWG) by "));
    EXPECT_TRUE(has(all, "crimp a lug made for 2 AWG"));
    EXPECT_TRUE(has(all, "its spring has lost grip"));
    EXPECT_TRUE(has(all, "too small for the current"));
    for (std::size_t i = 1; i < all.size(); ++i) EXPECT_GE(all[i - 1].volts_regained, all[i].volts_regained);
    for (const remedy& r : all) EXPECT_TRUE(r.volts_regained >= least_regain || r.cooled_by >= least_cooling) << r.what;
}

// common practice, no source: the bare part beats the table with spatter, scratching the surface bright helps
TEST(Remedies, TheBarePartBeatsTheTable)
{
    const station s = shop();
    const loop_state table = solve_loop(s);
    for (const change& c : changes_for(s))
        if (c.what.starts_with("move")) {
            EXPECT_LT(solve_loop(c.after).total_drop, table.total_drop);
            EXPECT_EQ(c.after.path.size(), s.path.size() - 2);
        }
}

TEST(Remedies, AChangeLeavesTheRestAlone)
{
    const station s = shop();
    for (const change& c : changes_for(s)) {
        EXPECT_EQ(c.after.job.current, s.job.current);
        EXPECT_NO_THROW(static_cast<void>(solve_loop(c.after))) << c.what;
        if (c.part_stays) {
            EXPECT_EQ(c.after.path.size(), s.path.size()) << c.what;
        }
    }
}

TEST(Remedies, CloseAnOpenCircuitFirst)
{
    station s = shop();
    std::get<work_connection>(s.path[4]).surface = surface_state::painted_unbroken;
    const auto all = remedies_for(s);
    ASSERT_FALSE(all.empty());
    EXPECT_TRUE(all.front().restores_circuit);
    EXPECT_EQ(all.front().part, "clamp");
    // two open parts: each remedy closes its own
    std::get<contact>(s.path[2]).surface = surface_state::painted_unbroken;
    const auto both = remedies_for(s);
    EXPECT_GE(std::count_if(both.begin(), both.end(), [](const remedy& r) { return r.restores_circuit; }), 2);
}

TEST(Remedies, ASoundStationNeedsLittle)
{
    station s = shop();
    s.path = {welding_cable(kcmil(500), 3_m).named("feeder"), arc{},
              work_connection{.clamp = bolted_work_lug(aught(4)), .onto = mild_steel, .name = "lug"},
              welding_cable(kcmil(500), 3_m).named("work lead")};
    EXPECT_TRUE(remedies_for(s).empty());
}

// A larger lead always regains something; it is offered where the lead is hot or the loop takes more than it may.
TEST(Remedies, OfferALargerLeadOnlyWhereItIsNeeded)
{
    station s = shop();
    s.job = {.process = process::smaw, .current = 100_A, .duty = duty_cycle::of(0.35)};
    s.path = {welding_cable(awg(2), 20_m).named("feeder"), arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              welding_cable(awg(2), 20_m).named("work lead")};
    EXPECT_FALSE(has(remedies_for(s), "replace work lead"));
    s.allowed_drop = 1_V;
    EXPECT_TRUE(has(remedies_for(s), "replace work lead (2 AWG) by 1 AWG"));
    s.allowed_drop = {};
    s.job.current = 300_A;
    s.job.duty = duty_cycle::continuous();
    EXPECT_TRUE(has(remedies_for(s), "replace work lead"));
}

TEST(Remedies, CoiledLeadsAreLaidOutOnce)
{
    station s = shop();
    s.where.lay = lay::coiled;
    const auto all = remedies_for(s);
    EXPECT_EQ(std::count_if(all.begin(), all.end(), [](const remedy& r) { return r.what.starts_with("lay "); }), 1);
}

}  // namespace
