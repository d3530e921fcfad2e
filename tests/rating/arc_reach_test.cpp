// How far an arc line reaches: what rests on one that does not is not said, and what is said does not deny itself.
#include <gtest/gtest.h>

#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/supply.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedy_finder.hpp>

#include <algorithm>
#include <string>

namespace {
using namespace weldloop;
using namespace weldloop::literals;

station line(process of, current amps, voltage setting)
{
    station s{.name = "beam line", .job = {.process = of, .current = amps, .duty = duty_cycle::of(0.6)}};
    s.path = {welding_cable(square_mm(185), 6_m).named("electrode lead"), wire_gun("gun", 1_m), arc{},
              work_connection{.clamp = bolted_work_lug(square_mm(185)), .onto = mild_steel, .name = "return"},
              welding_cable(square_mm(185), 6_m).named("return lead")};
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = setting};
    return s;
}
bool has(const assessment& a, finding_id id)
{
    return std::any_of(a.findings.begin(), a.findings.end(), [id](const loop_finding& f) { return f.id == id; });
}
bool has(const assessment& a, weld_id id)
{
    return std::any_of(a.weld.begin(), a.weld.end(), [id](const weld_statement& w) { return w.id == id; });
}

// common practice, no source: submerged arcs run at 26 to 36 V, 400 to 900 A, and do not stub there
TEST(ArcReach, ASubmergedArcAtItsUsualVoltsStubsNowhere)
{
    for (const double amps : {400.0, 600.0, 900.0})
        for (const double volts : {30.0, 34.0, 38.0}) {
            const assessment a = assess(line(process::saw, in_si<current>(amps), in_si<voltage>(volts)));
            ASSERT_TRUE(a.operating && a.operating->is_found());
            EXPECT_FALSE(a.operating->line_in_range);
            EXPECT_FALSE(has(a, finding_id::too_few_volts_for_arc));
            EXPECT_FALSE(has(a, weld_id::spatter)) << amps;
        }
    // its own line is taken at any current
    station known = line(process::saw, 600_A, 34_V);
    std::get<arc>(known.path[2]).line = arc_line{in_si<voltage>(33.0), in_si<arc_gradient>(1000.0), {}};
    const assessment a = assess(known);
    EXPECT_TRUE(a.operating->line_in_range);
    EXPECT_TRUE(has(a, finding_id::too_few_volts_for_arc));
}

// A feeder that follows the arc's voltage: what current flows would rest on the line alone.
TEST(ArcReach, NoCurrentIsNamedByALineThatDoesNotReach)
{
    station s = line(process::saw, 600_A, 0_V);
    s.supply = supply{.kind = supply_kind::drooping, .short_circuit = 1000_A};
    s.supply->no_load.peak = 80_V;
    s.supply->feeding = wire_feeding::by_arc_voltage;
    const assessment a = assess(s);
    EXPECT_FALSE(has(a, finding_id::supply_gives_other_current));
    EXPECT_FALSE(has(a, finding_id::too_few_volts_for_arc));
    EXPECT_FALSE(has(a, weld_id::ropy_bead));
}

// The usual lines end where usual_arc_line_range() says, and usual arcs lie within.
TEST(ArcReach, UsualArcsLieWithinTheUsualLines)
{
    struct row {
        process of;
        double amps;
        bool is_within;
    };
    for (const row& r :
         {row{process::gmaw, 230.0, true}, row{process::gmaw, 600.0, false}, row{process::fcaw, 280.0, true},
          row{process::fcaw, 500.0, false}, row{process::smaw, 140.0, true}, row{process::gtaw, 180.0, true},
          row{process::saw, 600.0, false}})
        EXPECT_EQ(arc_line_reaches(line(r.of, in_si<current>(r.amps), 30_V), in_si<current>(r.amps)), r.is_within)
            << to_text(r.of) << " " << r.amps;
}

// A finding that the wire stubs has its statement on the weld.
TEST(ArcReach, AWireThatStubsIsNoticed)
{
    const assessment a = assess(line(process::gmaw, 300_A, 22_V));
    ASSERT_TRUE(has(a, finding_id::too_few_volts_for_arc));
    EXPECT_TRUE(has(a, weld_id::spatter));
}

// common practice, no source: cored wire is fed 20 to 25 mm beyond the tip, submerged arc 25 to 35 mm
TEST(ArcReach, AUsualExtensionIsNotHeldNearer)
{
    struct row {
        process of;
        double mm;
        const char* offered;
    };
    for (const row& r :
         {row{process::gmaw, 15.0, ""}, row{process::gmaw, 25.0, "15 mm"}, row{process::fcaw, 22.0, ""},
          row{process::fcaw, 40.0, "25 mm"}, row{process::saw, 30.0, ""}, row{process::saw, 60.0, "35 mm"}}) {
        station s = line(r.of, 300_A, 30_V);
        std::get<wire_gun>(s.path[1]).extension = r.mm * 1_mm;
        std::string said;
        for (const change& c : changes_for(s))
            if (c.id == remedy_id::nearer) said = c.what;
        const std::string wanted = r.offered;
        EXPECT_EQ(said.empty(), wanted.empty()) << to_text(r.of) << " " << r.mm << ": " << said;
        EXPECT_NE(said.find(wanted), std::string::npos) << said;
    }
}

// What is said of a supply is said of its kind.
TEST(ArcReach, ADroopingSupplyIsCalledThat)
{
    station s = line(process::smaw, 100_A, 0_V);
    s.path[1] = electrode_holder("holder", 300_A);
    s.supply = supply{.kind = supply_kind::drooping, .short_circuit = 500_A};
    s.supply->no_load.peak = 70_V;
    s.supply->shape = droop_shape::by_reactance;
    const assessment a = assess(s);
    EXPECT_EQ(a.arc_basis.find("constant-current"), std::string::npos) << a.arc_basis;
    const auto at = std::find_if(a.findings.begin(), a.findings.end(),
                                 [](const loop_finding& f) { return f.id == finding_id::supply_does_not_suit; });
    ASSERT_NE(at, a.findings.end());
    EXPECT_EQ(at->text.find("flat output"), std::string::npos) << at->text;
    EXPECT_NE(at->text.find("drooping supply"), std::string::npos) << at->text;
}

}  // namespace
