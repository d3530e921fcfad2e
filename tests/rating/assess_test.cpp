#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/part_limit.hpp>
#include <weldloop/rating/part_verdict.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station healthy()
{
    station s{.name = "bench",
              .job = {.process = process::gmaw, .current = 200_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", aught(2)),
              welding_cable(aught(2), 8_m).named("feeder"),
              wire_gun("gun", 3_m),
              arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("clamp lug", aught(2)),
              welding_cable(aught(2), 8_m).named("work lead")};
    return s;
}

const part_result& part(const assessment& a, const std::string& name)
{
    for (const part_result& p : a.parts)
        if (p.name == name) return p;
    throw std::runtime_error("no part " + name);
}

void expect_finite(const assessment& a)
{
    const auto check = [](double x) { EXPECT_TRUE(std::isfinite(x)) << x; };
    for (const part_result& p : a.parts) {
        for (const voltage& v : {p.drop.low, p.drop.typical, p.drop.high}) check(v.value());
        for (const power& w : {p.loss.low, p.loss.typical, p.loss.high}) check(w.value());
        for (const temperature& t : {p.peak.low, p.peak.typical, p.peak.high}) check(t.in_kelvin());
        check(p.used);
        EXPECT_LE(p.drop.low.value(), p.drop.high.value() * (1 + 1e-9) + 1e-9) << p.name;
    }
    for (const voltage& v : {a.total_drop.low, a.total_drop.typical, a.total_drop.high, a.arc_voltage.low,
                             a.arc_voltage.typical, a.arc_voltage.high}) {
        check(v.value());
        EXPECT_GE(v.value(), 0.0);
    }
}

TEST(Assess, AHealthyStationIsWithinItsLimits)
{
    const assessment a = assess(healthy());
    expect_finite(a);
    ASSERT_EQ(a.parts.size(), 6U);
    for (const part_result& p : a.parts)
        EXPECT_TRUE(p.verdict == verdict::within_limit || p.verdict == verdict::not_judged)
            << p.name << ": " << p.reason;
    EXPECT_EQ(part(a, "work lead").verdict, verdict::within_limit);
    EXPECT_NE(part(a, "work lead").reason.find("under the stated conditions"), std::string::npos);
}

TEST(Assess, ConstantVoltageGivesSettingLessDrop)
{
    station s = healthy();
    s.supply = supply{.kind = supply_kind::constant_voltage, .setting = 26_V};
    const assessment a = assess(s);
    EXPECT_NEAR(a.arc_voltage.typical.value(), 26.0 - a.total_drop.typical.value(), 1e-12);
    EXPECT_NEAR(a.arc_voltage.low.value(), 26.0 - a.total_drop.high.value(), 1e-12);
    EXPECT_GT(a.wire_extension_drop.typical.value(), 0.0);
    EXPECT_LT(a.wire_extension_drop.typical, a.total_drop.typical);
    EXPECT_FALSE(a.headroom);
}

TEST(Assess, ConstantCurrentKeepsTheArcUntilItsOutputLimit)
{
    station s = healthy();
    s.job.process = process::smaw;
    s.path[2] = electrode_holder("holder", 300_A);
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 40_V};
    const assessment a = assess(s);
    EXPECT_NEAR(a.arc_voltage.typical.value(), 28.0, 1e-12);  // 20 V + 0.04 V/A x 200 A
    ASSERT_TRUE(a.headroom);
    EXPECT_NEAR(a.headroom->typical.value(), 40.0 - 28.0 - a.total_drop.typical.value(), 1e-12);
    s.supply->highest_output = 28.5_V;
    const assessment starved = assess(s);
    EXPECT_LT(starved.arc_voltage.typical.value(), 28.0);
    EXPECT_EQ(starved.headroom->typical.value(), 0.0);
    EXPECT_NE(starved.arc_basis.find("highest output"), std::string::npos);
}

TEST(Assess, WithoutASupplyTheArcIsRelativeToTheLoadLine)
{
    const assessment a = assess(healthy());
    EXPECT_NEAR(a.arc_voltage.typical.value(), 14.0 + 0.05 * 200 - a.total_drop.typical.value(), 1e-12);
    EXPECT_NE(a.arc_basis.find("relative to the conventional load line"), std::string::npos);
    EXPECT_NE(a.arc_basis.find("no prediction of an arc"), std::string::npos);
}

TEST(Assess, AnOpenCircuitIsTheWeakestPart)
{
    station s = healthy();
    std::get<work_connection>(s.path[4]).surface = surface_state::painted_unbroken;
    const assessment a = assess(s);
    EXPECT_FALSE(a.conducts);
    EXPECT_EQ(a.weakest().name, "clamp");
    EXPECT_EQ(a.weakest().verdict, verdict::open_circuit);
    EXPECT_EQ(a.total_drop.high.value(), 0.0);
    EXPECT_EQ(a.arc_voltage.high.value(), 0.0);
    expect_finite(a);
    // without current nothing else passes a verdict
    for (const part_result& p : a.parts)
        EXPECT_EQ(p.verdict, p.name == "clamp" ? verdict::open_circuit : verdict::not_judged) << p.name;
}

TEST(Assess, ABadContactIsFound)
{
    station s = healthy();
    s.path.insert(s.path.begin() + 4, contact{.metals = {mild_steel, mild_steel},
                                              .force = 60_N,
                                              .surface = surface_state::heavy_rust,
                                              .name = "gate on table"});
    const assessment a = assess(s);
    EXPECT_EQ(a.weakest().name, "gate on table");
    EXPECT_GE(a.weakest().verdict, verdict::over_limit);
    EXPECT_LE(part(a, "gate on table").hottest_spot->high, mild_steel.melting);
}

TEST(Assess, ALimitFromMemoryPassesNothing)
{
    const limit_use recalled{.at = "handle", .from = &holder_rise}, read{.at = "conductor", .from = &cable_class_85};
    EXPECT_FALSE(some_limit_was_read({}));
    EXPECT_FALSE(some_limit_was_read({recalled}));
    EXPECT_TRUE(some_limit_was_read({recalled, read}));
    // but it may condemn: in cool air the handle's recalled rise of 40 K ends below the 70 degC that were read
    const part_limits limits = limits_of(electrode_holder("holder", 400_A), {.air = 20_degC});
    EXPECT_LT(limits.places[1].highest, limits.places[0].highest);
}

// common practice, no source: missing strands heat the termination
TEST(Assess, MissingStrandsHeatTheTermination)
{
    station s = healthy();
    const temperature sound = part(assess(s), "clamp lug").peak_temperature;
    s.path[5] = crimped_lug("clamp lug", aught(2)).with_missing_strands(0.6);
    const part_result damaged = part(assess(s), "clamp lug");
    EXPECT_GT(damaged.peak_temperature, sound);
    EXPECT_EQ(damaged.verdict, verdict::over_limit);
}

// common practice, no source: a larger clamp on the same work is cooler
TEST(Assess, ALargerClampIsCooler)
{
    station s = healthy();
    temperature before = temperature::celsius(900);
    for (const current& rated : {200_A, 300_A, 400_A, 500_A}) {
        std::get<work_connection>(s.path[4]).clamp = spring_clamp(rated);
        const assessment a = assess(s);
        const std::vector<place_result>& places = part(a, "clamp").places;
        const auto jaws = std::find_if(places.begin(), places.end(),
                                       [](const place_result& p) { return p.what == part_place::jaws; });
        ASSERT_NE(jaws, places.end());
        const temperature now = jaws->peak.typical;
        EXPECT_LT(now, before) << to_text(rated, "A");
        before = now;
    }
}

// source: IEC 60974-13, 7 and 8.1: a new clamp on clean mild-steel plate of 12 mm with its largest cable has at most
// 378 micro-ohm (half of the pair less its plate) and rises by at most 40 K at the grip, 45 K at the cable connection.
// Held here at the 95 % point of its resistance, at the rated current and duty of the clamp, in air of 25 degC.
TEST(Assess, NewClampsOfTheFamiliesMeetTheTypeTest)
{
    for (const double amps : {100.0, 150.0, 200.0, 250.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0}) {
        for (const work_clamp& clamp : {spring_clamp(in_si<current>(amps)), screw_clamp(in_si<current>(amps))}) {
            const work_connection w{.clamp = clamp, .onto = mild_steel, .name = "clamp", .work_thickness = 12_mm};
            const joint_circuit j = joint_of(w);
            const double highest = 1.0 / j.contacts[0].cold.low.value() + 1.0 / j.contacts[1].cold.low.value();
            EXPECT_LE(highest, new_clamp_limit.value()) << clamp.name;
            EXPECT_NEAR(new_clamp_limit.value(), 378e-6, 0.5e-6);  // printed in the note to the standard's limit

            station s{.name = "type test",
                      .job = {.process = process::smaw,
                              .current = clamp.rated_current,
                              .duty = duty_cycle::of(clamp.rated_duty)}};
            s.path = {welding_cable(aught(4), 5_m).named("feeder"), arc{}, w,
                      welding_cable(clamp.largest_cable, 5_m).named("test cable")};
            const loop_state hot = solve_loop(s, scatter::high);
            ASSERT_EQ(hot.outcome, loop_outcome::solved) << clamp.name;
            int held = 0;
            for (const place_state& p : hot.parts[2].places) {
                const double rise = (p.peak - s.where.air).value();
                if (p.what == part_place::handle) {
                    EXPECT_LE(rise, grip_rise_limit.value()) << clamp.name;
                    ++held;
                }
                if (p.what == part_place::cable_connection) {
                    EXPECT_LE(rise, cable_connection_rise_limit.value()) << clamp.name;
                    ++held;
                }
            }
            EXPECT_EQ(held, 2) << clamp.name;
        }
    }
}

TEST(Assess, AddsItsCautions)
{
    station s = healthy();
    std::get<work_connection>(s.path[4]).surface = surface_state::galvanized;
    const assessment a = assess(s);
    std::string all;
    for (const std::string& c : a.cautions) all += c + "\n";
    for (const char* wanted : {"Switch off", "insulated probes", "no-load voltage", "fire watch", "protective earth",
                               "10 ft", "coiled", "pacemaker", "Local codes", "Zinc"})
        EXPECT_NE(all.find(wanted), std::string::npos) << wanted;
    EXPECT_EQ(all.find("Paint fume"), std::string::npos);
}

TEST(Assess, NeverPrintsWhatItCannotKnow)
{
    station s = healthy();
    std::string all;
    for (const surface_state state : all_surface_states) {
        std::get<work_connection>(s.path[4]).surface = state;
        const assessment a = assess(s);
        for (const part_result& p : a.parts) all += p.reason + std::string(to_text(p.verdict)) + " ";
        for (const std::string& c : a.cautions) all += c + " ";
        all += a.arc_basis;
    }
    for (const char* never : {" safe", "approved", "complies", "keep welding"})
        EXPECT_EQ(all.find(never), std::string::npos) << never;
}

TEST(Assess, AnyPathGivesFiniteNumbersOrATypedError)
{
    std::mt19937 random(11);
    const auto upto = [&](int n) { return std::uniform_int_distribution<int>(0, n)(random); };
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    const std::array sizes{awg(8), awg(4), awg(1), aught(2), aught(4), square_mm(16), square_mm(70), square_mm(185)};
    const auto size = [&] { return sizes[static_cast<std::size_t>(upto(7))]; };
    const auto state = [&] { return all_surface_states[static_cast<std::size_t>(upto(10))]; };
    int open = 0, closed = 0;
    for (int i = 0; i < 40; ++i) {
        station s{
            .name = "random",
            .job = {.process = all_processes[static_cast<std::size_t>(upto(4))],
                    .current = in_si<current>(between(20, 700)),
                    .duty = duty_cycle::of(between(0.05, 1.0))},
            .where = {.air = temperature::celsius(between(-20, 50)), .wind = in_si<speed>(upto(1) * between(0, 5))}};
        const auto some = [&] {
            for (int k = upto(4); k >= 0; --k) switch (upto(6)) {
                case 0: s.path.emplace_back(welding_cable(size(), in_si<length>(between(0.3, 40)))); break;
                case 1: s.path.emplace_back(crimped_lug("", size()).with_missing_strands(between(0, 0.8))); break;
                case 2: s.path.emplace_back(coupling("", size())); break;
                case 3:
                    s.path.emplace_back(contact{.metals = {mild_steel, stainless_steel},
                                                .force = in_si<force>(between(1, 900)),
                                                .surface = state()});
                    break;
                case 4:
                    s.path.emplace_back(plate{.metal = aluminium, .length = 1_m, .width = 100_mm, .thickness = 5_mm});
                    break;
                case 5:
                    s.path.emplace_back(work_connection{.clamp = upto(1) ? spring_clamp(200_A) : screw_clamp(400_A),
                                                        .onto = mild_steel,
                                                        .surface = state()});
                    break;
                default: s.path.emplace_back(welding_cable(size(), in_si<length>(between(1, 20)))); break;
                }
        };
        some();
        s.path.emplace_back(arc{});
        some();
        const assessment a = assess(s);
        expect_finite(a);
        (a.conducts ? closed : open) += 1;
        EXPECT_FALSE(a.sources.empty());
    }
    EXPECT_GT(open, 0);
    EXPECT_GT(closed, 10);
}

}  // namespace
