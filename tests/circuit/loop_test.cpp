#include <weldloop/circuit/head_cooling.hpp>
#include <weldloop/circuit/lead_cells.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/weldloop.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station loop_of(std::vector<path_part> work_side, current amps = 240_A, duty_cycle duty = duty_cycle::continuous())
{
    station s{
        .name = "bench", .job = {.process = process::smaw, .current = amps, .duty = duty}, .where = {.air = 30_degC}};
    s.path.emplace_back(welding_cable(aught(4), 5_m).named("feeder"));
    s.path.emplace_back(arc{});
    for (path_part& p : work_side) s.path.push_back(std::move(p));
    return s;
}

// A lead with nothing at its ends is a lead without ends.
TEST(Loop, ALeadAloneIsThatOfTheCableModel)
{
    for (const duty_cycle& duty :
         {duty_cycle::continuous(), duty_cycle::of(6_min, 10_min), duty_cycle::of(1_min, 5_min)}) {
        const station s = loop_of({welding_cable(aught(1), 12_m).named("lead")}, 220_A, duty);
        const loop_state state = solve_loop(s);
        const cable_heating alone = heating_of(std::get<cable>(s.path[2]), s.where, {.current = 220_A, .duty = duty});
        ASSERT_EQ(state.outcome, loop_outcome::solved);
        // the chain balances mean heat at the mean temperature; the ripple's share in the mean resistance is second
        // order
        EXPECT_NEAR(state.parts[2].peak.in_celsius(), alone.conductor_peak.in_celsius(), 1.0) << to_text(duty);
        EXPECT_NEAR_REL(state.parts[2].drop.value(),
                        (220_A * resistance_of(std::get<cable>(s.path[2]), alone.conductor_mean)).value(), 0.003);
    }
}

// Watts are volts times amperes, the wire that sticks out of a gun and its tip among them.
TEST(Loop, APartLosesWhatItDrops)
{
    station s{.name = "bench", .job = {.process = process::gmaw, .current = 220_A}, .where = {.air = 30_degC}};
    s.path = {crimped_lug("lug", aught(1)), wire_gun("gun", 10_ft), arc{}, welding_cable(aught(1), 12_m).named("lead")};
    const loop_state state = solve_loop(s);
    ASSERT_EQ(state.outcome, loop_outcome::solved);
    EXPECT_GT(state.parts[1].extension_drop.value(), 0.1);
    for (const std::size_t i : {0U, 1U, 3U})
        EXPECT_NEAR_REL(state.parts[i].loss.value(), (state.parts[i].drop * state.parts[i].current).value(), 1e-6);
}

// A lead in a coil or a bundle is that of the cable model too, in shade and sun, and its part says what was assumed of
// it.
TEST(Loop, ACoiledLeadIsThatOfTheCableModelAndSaysWhatWasAssumed)
{
    for (const lay lies : {lay::coiled, lay::bundled})
        for (const std::optional<int> count : {std::optional<int>{}, std::optional<int>{5}})
            for (const double sun : {0.0, 800.0}) {
                station s = loop_of({welding_cable(aught(1), 12_m).named("lead")}, 60_A);
                s.where.lay = lies;
                s.where.sun = in_si<heat_flux>(sun);
                (lies == lay::coiled ? s.where.coil_turns : s.where.bundled_leads) = count;
                const loop_state state = solve_loop(s);
                const cable_heating alone = heating_of(std::get<cable>(s.path[2]), s.where, {.current = 60_A});
                ASSERT_EQ(state.outcome, loop_outcome::solved);
                EXPECT_NEAR(state.parts[2].peak.in_celsius(), alone.conductor_peak.in_celsius(), 0.2)
                    << to_text(lies) << " " << count.value_or(0) << ", sun " << sun;
                EXPECT_EQ(state.part_basis[2].has(range_flag::crowd_assumed), !count);
                EXPECT_TRUE(state.part_basis[2].has(range_flag::arrangement_judgement));
            }
}

// A damaged length: the closed draw-down of the lead by itself against the cells of the loop, which conduct along it.
TEST(Loop, ADamagedLeadAgreesWithItsDrawDown)
{
    for (const double missing : {0.2, 0.5})
        for (const double metres : {0.05, 0.2, 1.0, 4.0})
            for (const duty_cycle& duty : {duty_cycle::continuous(), duty_cycle::of(6_min, 10_min)}) {
                cable lead = welding_cable(square_mm(50), 20_m).named("lead");
                lead.missing_strands = missing;
                lead.damaged_length = in_si<length>(metres);
                const station s = loop_of({lead}, 220_A, duty);
                const loop_state state = solve_loop(s);
                ASSERT_EQ(state.outcome, loop_outcome::solved);
                const load work{.current = 220_A, .duty = duty};
                const cable_heating alone = heating_of(lead, s.where, work);
                const voltage drop_alone = 220_A * resistance_of(lead, alone.conductor_mean);
                lead.missing_strands = 0.0;
                const temperature sound = heating_of(lead, s.where, work).conductor_peak;
                const double excess = (state.parts[2].peak - sound).value();
                EXPECT_GT(excess, 0.4);
                // the closed form takes one decay length for damage and lead, and the mean's
                EXPECT_NEAR((alone.conductor_peak - sound).value(), excess, 0.5 + 0.1 * excess)
                    << missing << ", " << metres << " m, " << to_text(duty);
                // it takes the mean temperature of the whole lead, though the hot length has the most resistance
                EXPECT_NEAR_REL(state.parts[2].drop.value(), drop_alone.value(), 0.02);
            }
}

// Lug, lead, lug at continuous current, the lead cut into cells and marched to balance: same laws, another solver.
TEST(Loop, LeadBetweenLugsAgreesWithCells)
{
    const cable lead = welding_cable(awg(1), 1.5_m).named("lead");
    const lug bad = crimped_lug("bad lug", awg(1)).with_missing_strands(0.6);
    const lug good = crimped_lug("good lug", awg(1));
    const station s = loop_of({bad, lead, good}, 200_A);
    const loop_state state = solve_loop(s);
    ASSERT_EQ(state.outcome, loop_outcome::solved);

    const int cells = 300;
    const double dx = lead.length.value() / cells,
                 axial = lead.metal.thermal_conductivity.value() * lead.size.area().value();
    const auto n = static_cast<std::size_t>(cells);
    const double air = s.where.air.in_kelvin();
    std::vector<double> t(n, air + 30);
    double ends[2] = {air + 30, air + 30};
    const lug element[2] = {bad, good};
    const auto drop_of_lug = [](const lug& l, temperature at) {
        const auto one = [&](const band<conductance>& cold, const metal_pair& metals) {
            return joint_drop(200_A, conductance_at(cold.typical, metals, at), joint_limits_of(metals, at)).value();
        };
        return one(crimp_conductance_of(l), crimp_metals) + one(palm_conductance_of(l), palm_metals);
    };
    for (int sweep = 0; sweep < 6000; ++sweep) {
        const auto link = [&](double a, double b, double distance) { return axial / distance * (a - b); };
        for (int e = 0; e < 2; ++e) {  // lumps at the ends, Newton on their balance
            const std::size_t neighbour = e == 0 ? 0 : n - 1;
            const auto surplus = [&](double x) {
                const temperature at = temperature::kelvin(x);
                return 200 * drop_of_lug(element[e], at) - body_loss(lug_body(element[e].size), at, s.where).value() -
                       link(x, t[neighbour], 0.5 * dx);
            };
            const double f = surplus(ends[e]), slope = (surplus(ends[e] + 1e-3) - f) / 1e-3;
            ends[e] -= f / slope;
        }
        for (std::size_t i = 0; i < n; ++i) {
            const double left = i == 0 ? ends[0] : t[i - 1], right = i + 1 == n ? ends[1] : t[i + 1];
            const double gl = axial / (i == 0 ? 0.5 * dx : dx), gr = axial / (i + 1 == n ? 0.5 * dx : dx);
            const temperature at = temperature::kelvin(t[i]);
            const double made = 200.0 * 200.0 * resistance_of(lead, at).value() / lead.length.value();
            const double lost = steady_loss_of(lead, s.where, at).value();
            const double loss_slope = lost / (t[i] - air);
            // implicit in the cell's own temperature
            t[i] = (gl * left + gr * right + dx * (made - lost + loss_slope * t[i])) / (gl + gr + dx * loss_slope);
        }
    }
    double hottest = 0;
    for (const double x : t) hottest = std::fmax(hottest, x);
    const auto& parts = state.parts;
    EXPECT_NEAR(parts[2].peak.in_kelvin(), ends[0], 0.3);
    EXPECT_NEAR(parts[4].peak.in_kelvin(), ends[1], 0.3);
    EXPECT_NEAR(parts[3].peak.in_kelvin(), std::fmax(hottest, std::fmax(ends[0], ends[1])), 0.3);
}

TEST(Loop, DropsAddUpAndHeatIsDropTimesCurrent)
{
    station s = loop_of({contact{.metals = {mild_steel, mild_steel},
                                 .force = 200_N,
                                 .surface = surface_state::oxidized,
                                 .name = "on table"},
                         plate{.metal = mild_steel, .length = 1_m, .width = 0.8_m, .thickness = 10_mm, .name = "table"},
                         work_connection{.clamp = spring_clamp(300_A), .onto = mild_steel, .name = "clamp"},
                         crimped_lug("lug", awg(1)), welding_cable(awg(1), 10_m).named("lead"),
                         coupling("coupling", awg(1)), welding_cable(awg(1), 5_m).named("tail")});
    const loop_state state = solve_loop(s);
    voltage sum = {};
    for (const part_state& p : state.parts) {
        sum += p.drop;
        EXPECT_NEAR_REL(p.loss.value(), (p.drop * s.job.current).value(), 1e-12);
        EXPECT_GE(p.peak, s.where.air);
        EXPECT_GE(p.hottest_spot, p.peak);
    }
    EXPECT_NEAR_REL(state.total_drop.value(), sum.value(), 1e-12);
    // a plate of 1 m x 0.8 m x 10 mm: 143 nohm m x 1/(0.8 x 0.01) = 17.9 micro-ohm at 20 degC
    EXPECT_NEAR_REL(state.parts[3].drop.value(),
                    240 * 143e-9 * (1 + 0.0039 * (state.parts[3].mean.in_celsius() - 20)) / 0.008, 1e-9);
}

TEST(Loop, AnOpenPartStopsTheCurrent)
{
    const station s = loop_of({work_connection{.clamp = spring_clamp(300_A),
                                               .onto = mild_steel,
                                               .surface = surface_state::painted_unbroken,
                                               .name = "clamp"},
                               crimped_lug("lug", awg(1)), welding_cable(awg(1), 10_m).named("lead")});
    const loop_state state = solve_loop(s);
    EXPECT_EQ(state.outcome, loop_outcome::open_circuit);
    EXPECT_FALSE(state.parts[2].conducts);
    EXPECT_TRUE(state.parts[3].conducts);
    for (const part_state& p : state.parts) {
        EXPECT_EQ(p.drop.value(), 0.0);
        EXPECT_EQ(p.peak, s.where.air);
    }
}

TEST(Loop, AHotJointWarmsTheLeadEndAndTheLeadTheJoint)
{
    const cable lead = welding_cable(aught(1), 10_m).named("lead");
    const auto peaks = [&](double missing) {
        return solve_loop(loop_of({crimped_lug("lug", aught(1)).with_missing_strands(missing), lead}, 200_A)).parts;
    };
    const auto sound = peaks(0.0), damaged = peaks(0.7);
    EXPECT_GT(damaged[2].peak, sound[2].peak);
    EXPECT_GT(damaged[3].peak, sound[3].peak);
    // a sound lug makes little heat of its own: the lead's heat is what warms it
    EXPECT_GT((sound[2].peak - 30_degC).value(), 0.5 * (sound[3].peak - 30_degC).value());
}

TEST(Loop, OverloadGivesFiniteAnswersBelowMelting)
{
    for (const double amps : {10.0, 500.0, 2000.0, 10000.0}) {
        const station s = loop_of(
            {contact{
                 .metals = {mild_steel, mild_steel}, .force = 5_N, .surface = surface_state::heavy_rust, .name = "c"},
             work_connection{.clamp = spring_clamp(100_A),
                             .onto = mild_steel,
                             .surface = surface_state::painted_pierced,
                             .name = "clamp"},
             crimped_lug("lug", awg(8)).with_missing_strands(0.9), welding_cable(awg(8), 10_m).named("lead")},
            in_si<current>(amps));
        for (const scatter level : {scatter::low, scatter::typical, scatter::high}) {
            const loop_state state = solve_loop(s, level);
            for (const part_state& p : state.parts) {
                EXPECT_TRUE(std::isfinite(p.drop.value()) && std::isfinite(p.loss.value()));
                EXPECT_LE(p.peak, mild_steel.melting) << amps;
                EXPECT_LE(p.hottest_spot, mild_steel.melting) << amps;
            }
        }
    }
}

TEST(Loop, PreheatedWorkWarmsTheClamp)
{
    work_connection w{.clamp = spring_clamp(300_A), .onto = mild_steel, .name = "clamp"};
    const auto peak = [&] {
        return solve_loop(loop_of({w, welding_cable(aught(1), 10_m).named("lead")})).parts[2].peak;
    };
    const temperature cold = peak();
    w.preheat = 150_degC;
    EXPECT_GT((peak() - cold).value(), 10.0);
}

TEST(Loop, OrderBeforeAndAfterTheArcDoesNotMatterToAGun)
{
    station s{.name = "b", .job = {.process = process::gmaw, .current = 200_A, .duty = duty_cycle::of(0.6)}};
    s.path = {welding_cable(aught(1), 10_m).named("a"), wire_gun("gun", 3_m), arc{},
              welding_cable(aught(1), 10_m).named("b")};
    station turned = s;
    turned.path = {welding_cable(aught(1), 10_m).named("b"), arc{}, wire_gun("gun", 3_m),
                   welding_cable(aught(1), 10_m).named("a")};
    const part_state one = solve_loop(s).parts[1], other = solve_loop(turned).parts[2];
    EXPECT_NEAR(one.peak.in_kelvin(), other.peak.in_kelvin(), 1e-6);
    EXPECT_NEAR(one.drop.value(), other.drop.value(), 1e-9);
    EXPECT_GT(one.hottest_spot, one.peak);  // the tip is hotter than the lead behind it
}

TEST(Loop, WaterKeepsATorchLeadCool)
{
    station s{.name = "b", .job = {.process = process::gtaw, .current = 250_A, .duty = duty_cycle::of(0.6)}};
    s.path = {tig_torch("torch", 4_m, torch_cooling::water), arc{}, welding_cable(aught(1), 10_m).named("work lead")};
    const auto conductor = [&] {
        const loop_state state = solve_loop(s);
        return std::find_if(state.parts[0].places.begin(), state.parts[0].places.end(),
                            [](const place_state& p) { return p.what == part_place::conductor; })
            ->mean;  // along it: its end is as warm as the head
    };
    const temperature water = conductor();
    s.path[0] = tig_torch("torch", 4_m, torch_cooling::gas);
    const temperature gas = conductor();
    EXPECT_LT(water, 60_degC);
    EXPECT_GT(gas, water);
}

// hand: along a long gun cable water takes 20 W/(m K) (water_hose_cooling) and the covering about one more: the rise of
// its conductor is I^2 R'/20, and less by no more than a tenth
TEST(Loop, WaterKeepsAGunLeadCool)
{
    station s{.name = "b", .job = {.process = process::gmaw, .current = 300_A, .duty = duty_cycle::continuous()}};
    const wire_gun gun("gun", 60_m, torch_cooling::water);
    EXPECT_EQ(gun.lead.size, usual_gun_cable(torch_cooling::water));
    s.path = {gun, arc{}, welding_cable(aught(2), 10_m).named("work lead")};
    const loop_state state = solve_loop(s);
    ASSERT_EQ(state.outcome, loop_outcome::solved);
    const part_state& now = state.parts[0];
    const temperature mean = std::find_if(now.places.begin(), now.places.end(), [](const place_state& p) {
                                 return p.what == part_place::conductor;
                             })->mean;
    const double by_water = 300.0 * 300.0 * resistance_of(gun.lead, mean).value() / 60.0 / 20.0;
    EXPECT_LT((mean - s.where.air).value(), by_water);
    EXPECT_GT((mean - s.where.air).value(), 0.9 * by_water);
    EXPECT_NEAR_REL(state.made.value(), state.lost.value(), 1e-9);
    const auto names = [&s](const source& wanted) {
        const assessment a = assess(s);
        const auto& used = a.parts[0].basis.sources();
        return std::find(used.begin(), used.end(), &wanted) != used.end();
    };
    EXPECT_TRUE(names(water_hose_cooling));
    EXPECT_TRUE(names(water_gun_judgement));
    s.path[0] = wire_gun("gun", 60_m);
    EXPECT_FALSE(names(water_gun_judgement));
}

}  // namespace

// Nothing flows past the middle of a lead that is alike at both ends: half of it, with nothing at the cut, is cut
// alike.
TEST(LeadCells, GrowToAnEndThatTouchesNothing)
{
    for (const double whole : {0.05, 1.0, 7.0, 400.0}) {
        constexpr double decay = 0.3;
        const std::vector<double> doubled = detail::graded_cells(2.0 * whole, decay),
                                  one = detail::graded_cells(whole, decay, {true, false});
        double sum = 0.0;
        for (std::size_t i = 0; i < one.size(); ++i) {
            sum += one[i];
            if (i + 1 < one.size()) {
                EXPECT_EQ(one[i], doubled[i]);
            }
        }
        EXPECT_NEAR(sum, whole, 1e-12 * whole);
        std::vector<double> other = detail::graded_cells(whole, decay, {false, true});
        std::reverse(other.begin(), other.end());
        EXPECT_EQ(one, other);
        EXPECT_EQ(detail::graded_cells(whole, decay, {false, false}), std::vector<double>{whole});
    }
}
