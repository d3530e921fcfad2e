// What probes should read, against the published resistance of a lead.
#include <algorithm>
#include <cmath>
#include <string_view>
#include <variant>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/probe_reading.hpp>

using namespace weldloop;
using namespace weldloop::literals;

namespace {

station bench(current amps)
{
    station s{.name = "bench",
              .job = {.process = process::gmaw, .current = amps, .duty = duty_cycle::of(3_min, 10_min)},
              .where = {.air = 20_degC}};
    s.path = {welding_cable(square_mm(50), 10_m).named("lead"),
              wire_gun("gun", 3_m),
              arc{},
              workpiece{.metal = mild_steel, .mass = 30_kg, .thickness = 5_mm, .name = "gate"},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("lug", square_mm(50))};
    return s;
}

const probe_reading& at(const std::vector<probe_reading>& all, std::string_view name)
{
    return *std::find_if(all.begin(), all.end(), [&](const probe_reading& r) { return r.name == name; });
}

}  // namespace

// IEC 60228: 0.386 ohm/km for 50 mm2 at 20 degC, classes 5 and 6; 0.00393 1/K (IEC 60028).
TEST(ProbeReading, OfALeadIsItsPublishedResistance)
{
    const station s = bench(100_A);
    const assessment found = assess(s);
    const std::vector<probe_reading> all = probe_readings_of(s, found);
    const double cold = 0.386e-3 * 10.0 * 100.0;
    const probe_reading& lead = at(all, "lead");
    const auto part =
        std::find_if(found.parts.begin(), found.parts.end(), [](const part_result& p) { return p.name == "lead"; });
    const double hot = cold * (1.0 + 0.00393 * (part->peak.typical.in_celsius() - 20.0));
    EXPECT_GT(lead.volts.typical.value(), cold);
    EXPECT_LT(lead.volts.typical.value(), 1.001 * hot);  // the lead is coolest in its mean
    EXPECT_EQ(lead.current.typical, 100_A);
}

// Tip and wire take about as much as all the rest of a gun; no probe reaches them.
TEST(ProbeReading, OfAGunEndsAtItsTip)
{
    const station s = bench(200_A);
    const assessment found = assess(s);
    const std::vector<probe_reading> all = probe_readings_of(s, found);
    const probe_reading& gun = at(all, "gun");
    const auto part =
        std::find_if(found.parts.begin(), found.parts.end(), [](const part_result& p) { return p.name == "gun"; });
    const double cold = 0.386e-3 * 3.0 * 200.0;  // of its conductor, IEC 60228
    EXPECT_GT(gun.volts.low.value(), cold);
    EXPECT_LT(gun.volts.high.value(), 1.6 * cold);  // two crimps of 50 mm2 take 2 mV each at most
    EXPECT_LE(gun.volts.low, gun.volts.typical);
    EXPECT_LE(gun.volts.typical, gun.volts.high);
    EXPECT_LT(gun.volts.typical, part->drop.typical - found.wire_extension_drop.typical);
    // other parts read as assessed; a piece of work has no two ends
    const auto lug_part =
        std::find_if(found.parts.begin(), found.parts.end(), [](const part_result& p) { return p.name == "lug"; });
    EXPECT_EQ(at(all, "lug").volts.high, lug_part->drop.high);
    EXPECT_TRUE(std::none_of(all.begin(), all.end(), [](const probe_reading& r) { return r.name == "gate"; }));
}

// A probe reaches the covering of a lead, not the conductor under it. Between them lies what a wall of covering holds
// back: P = I^2 R per metre through ln(D/d) / (2 pi k), with the mean heat at 6 of 10 minutes as its least.
TEST(ProbeReading, OfALeadIsFeltOnItsCovering)
{
    station s = bench(400_A);
    s.job.duty = duty_cycle::continuous();
    const assessment found = assess(s);
    const std::vector<probe_reading> all = probe_readings_of(s, found);
    const probe_reading& lead = at(all, "lead");
    const auto part =
        std::find_if(found.parts.begin(), found.parts.end(), [](const part_result& p) { return p.name == "lead"; });
    ASSERT_TRUE(lead.peak);
    EXPECT_EQ(lead.peak_at, part_place::covering);
    const cable& is = std::get<cable>(s.path.front());
    const double watts =
        400.0 * 400.0 * 0.386e-3 * (1.0 + 0.00393 * (part->peak.typical.in_celsius() - 20.0));  // per metre
    const double wall = std::log(is.overall_diameter / is.conductor_diameter) * 1.0 /
                        is.covering.thermal_conductivity.value() / (2.0 * 3.141592653589793) * watts;
    EXPECT_NEAR((part->peak.typical - lead.peak->typical).value(), wall, 0.1 * wall);
}

// The arc heats a gun or holder by what is not reckoned: 20 degC for its handle would be no expectation.
TEST(ProbeReading, ExpectsNoTemperatureWhereTheArcHeats)
{
    station s = bench(200_A);
    EXPECT_FALSE(at(probe_readings_of(s, assess(s)), "gun").peak);
    EXPECT_TRUE(at(probe_readings_of(s, assess(s)), "gun").heated_by_arc);
    s.job.process = process::smaw;
    s.path[1] = electrode_holder("holder", 300_A);
    const std::vector<probe_reading> all = probe_readings_of(s, assess(s));
    EXPECT_FALSE(at(all, "holder").peak);
    EXPECT_GT(at(all, "holder").volts.typical, 0_V);
    EXPECT_FALSE(at(all, "clamp").heated_by_arc);
    EXPECT_TRUE(at(all, "clamp").peak);
}

TEST(ProbeReading, NoneWithoutASettledState)
{
    const station s = bench(4000_A);
    const assessment found = assess(s);
    ASSERT_FALSE(found.conducts);
    EXPECT_TRUE(probe_readings_of(s, found).empty());
}
