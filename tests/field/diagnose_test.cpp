#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/field/diagnose.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/plate.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <utility>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station bench()
{
    station s{.name = "frame jig",
              .job = {.process = process::smaw, .current = 180_A, .duty = duty_cycle::of(4_min, 10_min)},
              .where = {.air = 25_degC}};
    s.path = {welding_cable(awg(1), 15_m), arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("lug", awg(1)), welding_cable(awg(1), 15_m).named("work lead")};
    return s;
}

finding one(const std::string& across, voltage volts, current amps = 180_A)
{
    return diagnose(bench(), {{.across = across, .volts = volts, .current = amps}}).front();
}

TEST(Diagnose, AGoodPartIsAsDescribed)
{
    const loop_state state = solve_loop(bench());
    for (const char* name : {"clamp", "lug", "work lead"}) {
        const voltage typical = state.parts[index_of(bench().path, name)].drop;
        const finding f = one(name, typical);
        EXPECT_TRUE(f.within_expected) << name;
        EXPECT_TRUE(f.most_likely.starts_with("as described")) << name << ": " << f.most_likely;
        EXPECT_NEAR_REL(f.measured.value(), (typical / 180_A).value(), 1e-12);
    }
}

TEST(Diagnose, TenfoldDropsAreBlamed)
{
    const finding clamp = one("clamp", 0.41_V, 178_A);
    EXPECT_FALSE(clamp.within_expected);
    EXPECT_FALSE(clamp.most_likely.starts_with("as described"));
    EXPECT_GT(clamp.remedy.volts_regained.value(), 0.2);
    EXPECT_NEAR_REL(clamp.remedy.volts_regained.value(), ((clamp.measured - clamp.expected.typical) * 178_A).value(),
                    1e-9);
    const finding lug = one("lug", 0.060_V);
    EXPECT_FALSE(lug.most_likely.starts_with("as described"));
    EXPECT_EQ(lug.remedy.part, "lug");
    const finding lead = one("work lead", 1.62_V);
    EXPECT_FALSE(lead.within_expected);
    EXPECT_FALSE(lead.most_likely.starts_with("as described")) << lead.most_likely;
}

TEST(Diagnose, AColdLeadReadsLower)
{
    // a lead at the air's temperature: 15 m of 1 AWG at 25 degC
    const resistance cold = resistance_of(welding_cable(awg(1), 15_m), 25_degC);
    EXPECT_TRUE(one("work lead", cold * 180_A).within_expected);
}

TEST(Diagnose, LikelihoodsAddUpToOne)
{
    for (const double volts : {0.0, 0.001, 0.03, 0.4, 5.0}) {
        const finding f = one("clamp", in_si<voltage>(volts));
        double sum = 0.0;
        for (const explanation& e : f.considered) sum += static_cast<double>(e.likelihood);
        EXPECT_NEAR(sum + static_cast<double>(f.wrong), 1.0, 1e-9) << volts;
        if (static_cast<double>(f.wrong) < 0.5) {
            EXPECT_EQ(f.most_likely, f.considered.front().condition);
        } else {
            EXPECT_EQ(f.likelihood, f.wrong);
        }
    }
}

// A reading that is sooner wrong than right, if hardly so, is said to fit nothing.
TEST(Diagnose, ASoonerWrongReadingFitsNothing)
{
    const voltage typical = solve_loop(bench()).parts[index_of(bench().path, "clamp")].drop;
    double low = 0.0, high = typical.value();  // nothing across a joint is wrong, its typical drop is right
    ASSERT_GT(static_cast<double>(one("clamp", 0_V).wrong), 0.9);
    ASSERT_LT(static_cast<double>(one("clamp", typical).wrong), 0.5);
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (static_cast<double>(one("clamp", in_si<voltage>(middle)).wrong) > 0.7 ? low : high) = middle;
    }
    const finding f = one("clamp", in_si<voltage>(low));
    EXPECT_NEAR(static_cast<double>(f.wrong), 0.7, 0.01);
    EXPECT_TRUE(f.most_likely.starts_with("fits no condition")) << f.most_likely;
}

TEST(Diagnose, RefusesReadingsThatCannotBe)
{
    const auto read = [](const std::string& across, voltage v, current i) {
        return diagnose(bench(), {{.across = across, .volts = v, .current = i}});
    };
    EXPECT_THROW(read("clamp", -0.1_V, 100_A), out_of_range_error);
    EXPECT_THROW(read("clamp", 0.1_V, 0_A), out_of_range_error);
    EXPECT_THROW(read("clamp", in_si<voltage>(std::numeric_limits<double>::quiet_NaN()), 10_A), not_finite_error);
    EXPECT_THROW(read("no such part", 0.1_V, 100_A), bad_station_error);
    EXPECT_THROW(read("arc", 20_V, 100_A), bad_station_error);
    EXPECT_TRUE(diagnose(bench(), {}).empty());
}

// What a reading says of a part holds whatever the instrument: nine of ten healthy leads and joints lie within what is
// expected of them, cold or warm, typical or not.
TEST(Diagnose, HealthyPartsAreWithinWhatIsExpected)
{
    const station s = bench();
    const resistance cold = resistance_of(welding_cable(awg(1), 15_m), 25_degC);
    const loop_state settled = solve_loop(s);
    const resistance warm = resistance_of(welding_cable(awg(1), 15_m), settled.parts.back().mean);
    std::mt19937 random(5);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> unit;
    int within = 0, as_described = 0;
    constexpr int leads = 400;
    for (int i = 0; i < leads; ++i) {
        const resistance is = cold + unit(random) * (warm - cold);
        const double volts = 180.0 * is.value() * (1.0 + 0.008 / 1.96 * normal(random)) + 1e-3 / 1.96 * normal(random);
        const double amps = 180.0 * (1.0 + 0.0306 / 1.96 * normal(random));
        const finding f =
            diagnose(s, {{.across = "work lead", .volts = in_si<voltage>(volts), .current = in_si<current>(amps)}})
                .front();
        within += f.within_expected ? 1 : 0;
        as_described += f.most_likely.starts_with("as described") ? 1 : 0;
    }
    EXPECT_GT(within, 0.85 * leads);
    EXPECT_GT(as_described, 0.97 * leads);
}

TEST(Diagnose, BandsAreInOrder)
{
    for (const double volts : {0.0, 0.41, 2479.0})
        for (const char* name : {"clamp", "lug", "work lead"})
            for (const explanation& e : one(name, in_si<voltage>(volts)).considered) {
                EXPECT_GT(e.resistance.low.value(), 0.0) << e.condition;
                EXPECT_LE(e.resistance.low, e.resistance.typical) << e.condition;
                EXPECT_LE(e.resistance.typical, e.resistance.high) << e.condition;
            }
    // the band of a clean clamp is that of its contacts: its ends are those of the loop with that clamp good and poor
    station good = bench(), poor = bench();
    const finding clamp = one("clamp", 0.03_V);
    const voltage high = solve_loop(poor, scatter::high).parts[2].drop,
                  low = solve_loop(good, scatter::low).parts[2].drop;
    EXPECT_NEAR_REL(clamp.expected.high.value(), high.value() / 180.0, 0.1);
    EXPECT_NEAR_REL(clamp.expected.low.value(), low.value() / 180.0, 0.1);
}

// Far above all that a lug, a clamp or a lead wears into: failing, or the reading was taken wrongly; never sound.
TEST(Diagnose, FarAboveAllConditionsAPartIsFailing)
{
    for (const auto& [name, volts] : {std::pair{"lug", 0.3_V}, std::pair{"clamp", 2_V}, std::pair{"work lead", 5_V}}) {
        const finding f = one(name, volts);
        EXPECT_TRUE(f.most_likely.starts_with("failing")) << name << ": " << f.most_likely;
        EXPECT_GT(static_cast<double>(f.likelihood), 0.5);
        EXPECT_GT(static_cast<double>(f.wrong), 0.02);
        EXPECT_TRUE(f.remedy.what.starts_with(std::string("take ") + name + " out of use")) << f.remedy.what;
        EXPECT_TRUE(f.basis.has(source_kind::judgement));
    }
    // an arc drawn out over a lead: likelier misread, but it is opened first
    const finding drawn = one("work lead", 25_V);
    EXPECT_GT(static_cast<double>(drawn.wrong), 0.5);
    EXPECT_TRUE(drawn.remedy.what.starts_with("take work lead out of use")) << drawn.remedy.what;
}

// Two kilovolts, nothing where there must be something, a table at 137 times its band.
TEST(Diagnose, ReadingsThatFitNoCondition)
{
    station s = bench();
    s.path.push_back(plate{.metal = mild_steel, .length = 1.2_m, .width = 0.8_m, .thickness = 10_mm, .name = "table"});
    std::swap(s.path[2], s.path.back());  // beside the arc
    const loop_state state = solve_loop(s);
    const voltage table = state.parts[2].drop;
    ASSERT_GT(table, 0_V);
    for (const auto& [name, volts] : {std::pair{"work lead", 130_V}, std::pair{"work lead", 2479_V},
                                      std::pair{"work lead", 0_V}, std::pair{"table", voltage(137.0 * table)}}) {
        const finding f = diagnose(s, {{.across = name, .volts = volts, .current = 180_A}}).front();
        EXPECT_FALSE(f.within_expected) << name << volts.value();
        EXPECT_EQ(f.most_likely, "fits no condition: check probe, range and name");
        EXPECT_GT(static_cast<double>(f.likelihood), 0.99);
        EXPECT_EQ(f.remedy.what, std::string("read ") + name + " again: check probe, range and name");
        EXPECT_LE(f.expected.low, f.expected.high);
    }
    EXPECT_THROW(static_cast<void>(diagnose(s, {{.across = "lug", .volts = 1_V, .current = 180_A, .to = "work lead"}})),
                 bad_station_error);
}

// A gun is read to its tip: neither what its tip drops nor the wire beyond it is expected between the probes.
TEST(Diagnose, OfAGunWhatProbesReach)
{
    station s = bench();
    s.job.process = process::gmaw;
    s.path.insert(s.path.begin() + 1, wire_gun("gun", 3_m));
    const loop_state state = solve_loop(s);
    const part_state& gun = state.parts[1];
    ASSERT_GT(gun.extension_drop, 0.5_V);
    const voltage reached = gun.drop - gun.tip_drop - gun.extension_drop;
    const finding f = diagnose(s, {{.across = "gun", .volts = reached, .current = 180_A}}).front();
    EXPECT_TRUE(f.within_expected);
    EXPECT_NEAR_REL(f.expected.typical.value(), reached.value() / 180.0, 0.08);  // cold or warm
    EXPECT_EQ(f.most_likely, "as described");
    EXPECT_FALSE(diagnose(s, {{.across = "gun", .volts = gun.drop, .current = 180_A}}).front().within_expected);
}

}  // namespace
