// What a report says of work that the arc heats, and of the clamps on it.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/rating/clamp_on_work.hpp>
#include <weldloop/weldloop.hpp>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <algorithm>
#include <iostream>
#include <string>

#include <gmock/gmock.h>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

station brackets()
{
    station s{.name = "brackets",
              .job = {.process = process::gmaw, .current = 180_A, .duty = duty_cycle::of(36_s, 60_s)},
              .where = {.air = 25_degC}};
    s.path = {
        welding_cable(square_mm(50), 8_m).named("feeder"), arc{},
        workpiece{.metal = mild_steel,
                  .mass = 4_kg,
                  .thickness = 10_mm,
                  .name = "bracket",
                  .stays = 4_min,
                  .from_weld = 60_mm},
        work_connection{
            .clamp = screw_clamp(300_A), .onto = mild_steel, .surface = surface_state::light_rust, .name = "clamp"},
        welding_cable(square_mm(50), 8_m).named("work lead")};
    return s;
}
station on_the_table()
{
    station s = brackets();
    s.path.insert(s.path.begin() + 3, contact{.metals = {mild_steel, mild_steel}, .force = 200_N, .name = "lies on"});
    s.path.insert(s.path.begin() + 4,
                  workpiece{.metal = mild_steel, .mass = 80_kg, .thickness = 12_mm, .name = "table"});
    return s;
}
const part_result& part(const assessment& a, const std::string& name)
{
    return *std::find_if(a.parts.begin(), a.parts.end(), [&](const part_result& p) { return p.name == name; });
}
constexpr const char* not_counted = "The arc's own heat in the work is not counted";

TEST(HotWork, WithoutAStayItIsNotJudged)
{
    station s = brackets();
    std::get<workpiece>(s.path[2]).stays.reset();
    std::get<workpiece>(s.path[2]).from_weld.reset();
    const assessment a = assess(s);
    EXPECT_THAT(part(a, "bracket").notes, Contains(HasSubstr(not_counted)));
    EXPECT_THAT(part(a, "clamp").notes, Not(Contains(HasSubstr("On cold work"))));
}

TEST(HotWork, TheReportSaysHowHotAndWhatForTheClamp)
{
    const station s = brackets();
    const assessment a = assess(s);
    for (const std::string& n : part(a, "bracket").notes) std::cout << n << '\n';
    for (const std::string& n : part(a, "clamp").notes) std::cout << n << '\n';
    EXPECT_THAT(part(a, "bracket").notes, Not(Contains(HasSubstr(not_counted))));
    // source: 0.84 of 23 V x 180 A
    EXPECT_THAT(part(a, "bracket").notes, Contains(HasSubstr("The arc typically puts 3.5 kW into it")));
    EXPECT_THAT(part(a, "bracket").notes, Contains(HasSubstr("radiation and spatter")));
    station cold = s;
    std::get<workpiece>(cold.path[2]).stays.reset();
    const loop_state state = solve_loop(cold);
    EXPECT_THAT(part(a, "clamp").notes,
                Contains(HasSubstr("On cold work it would typically peak at " + to_text(state.parts[3].peak, "degC"))));
    // the band: 5 and 95 % points apart, the poor end above
    EXPECT_GT(part(a, "clamp").peak.high, part(a, "clamp").peak.typical);
    EXPECT_GT(part(a, "clamp").peak.typical, state.parts[3].peak);
    // grip is forecast in the hot state
    ASSERT_TRUE(part(a, "clamp").grip);
    const assessment b = assess(cold);
    EXPECT_LE(static_cast<double>(part(a, "clamp").grip->grip_left),
              static_cast<double>(part(b, "clamp").grip->grip_left));
    // sources of the arc's share stand in the report
    EXPECT_THAT(a.sources, Contains(wire_arc_calorimetry));
}

// relation: what the note says of the part is what that station gives; heat spared against a contact more
TEST(HotWork, OnThePartAgainstOnTheTable)
{
    const station table = on_the_table();
    const assessment a = assess(table);
    for (const std::string& n : part(a, "clamp").notes) std::cout << n << '\n';
    const loop_state on_part = solve_loop(brackets()), on_table = solve_loop(table);
    const std::string at = to_text(on_part.parts[3].peak, "degC");
    EXPECT_THAT(part(a, "clamp").notes, Contains(HasSubstr("On the part itself it would typically peak at " + at)));
    EXPECT_LT(on_part.total_drop, on_table.total_drop);
    EXPECT_THAT(part(a, "clamp").notes, Contains(HasSubstr(" V less")));
    EXPECT_EQ(on_part.parts[3].peak > on_table.parts[5].peak,
              std::any_of(part(a, "clamp").notes.begin(), part(a, "clamp").notes.end(), [](const std::string& n) {
                  return n.find("the table keeps the arc's heat from it") != std::string::npos;
              }));
}

// relation: the piece's band against the loop solved with every share and joint at its poor end, with and without ways
TEST(HotWork, TheBandOfThePieceIsThatOfThePoorLoop)
{
    for (const bool with_way : {false, true}) {
        station s = brackets();
        if (with_way) {
            s.path.push_back(junction{"stud"});
            s.path.push_back(welding_cable(square_mm(50), 1_m).named("tail"));
            s.ways = {{.name = "strap",
                       .from = "bracket",
                       .to = "stud",
                       .path = {measured_part{.name = "strap metal", .drop = {1_V, 2_V, 3_V}, .at = 100_A}}}};
        }
        const assessment a = assess(s);
        const loop_state poor = solve_loop(s, scatter::high), typical = solve_loop(s);
        const std::size_t piece = place_of(s, "bracket");
        const double rise = (poor.parts[piece].peak - s.where.air).value();
        std::cout << "piece: " << a.parts[1].peak.low.in_celsius() << ' '
                  << part(a, "bracket").peak.typical.in_celsius() << ' ' << part(a, "bracket").peak.high.in_celsius()
                  << " degC, poor loop " << poor.parts[piece].peak.in_celsius() << '\n';
        EXPECT_NEAR_REL((part(a, "bracket").peak.typical - s.where.air).value(),
                        (typical.parts[piece].peak - s.where.air).value(), 1e-9);
        // one cause, its band's end: the sum over joints moves it little
        EXPECT_NEAR_REL((part(a, "bracket").peak.high - s.where.air).value(), rise, 0.05);
        EXPECT_LT(part(a, "bracket").peak.low, part(a, "bracket").peak.typical);
    }
}

}  // namespace
