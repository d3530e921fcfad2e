// The current inside a spring clamp against node equations, limits and the published rule of springs as current paths.
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/clamp_division.hpp>
#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/sold_clamp.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

work_connection on_steel(const work_clamp& clamp, surface_state surface = surface_state::clean)
{
    return {.clamp = clamp, .onto = mild_steel, .surface = surface};
}

double spring_share(const work_connection& w)
{
    return static_cast<double>(divided_clamp_current(w).spring);
}

// Node equations of the clamp's circuit for 1 A from the work to the cable, by Gauss: work is node 4 (earth). Nodes:
// own jaw, other jaw, end of the other arm, pivot's side of the cable.
struct node_voltages {
    std::array<std::array<double, 5>, 4> m{};

    void resistor(std::size_t a, std::size_t b, double siemens)
    {
        for (const auto& [i, j] : {std::pair{a, b}, std::pair{b, a}}) {
            if (i > 3) continue;
            m[i][i] += siemens;
            if (j < 4) m[i][j] -= siemens;
        }
    }
    std::array<double, 5> solved()
    {
        m[3][4] = 1.0;
        for (std::size_t k = 0; k < 4; ++k)
            for (std::size_t i = 0; i < 4; ++i) {
                if (i == k) continue;
                const double by = m[i][k] / m[k][k];
                for (std::size_t j = 0; j < 5; ++j) m[i][j] -= by * m[k][j];
            }
        return {m[0][4] / m[0][0], m[1][4] / m[1][1], m[2][4] / m[2][2], m[3][4] / m[3][3], 0.0};
    }
};

}  // namespace

TEST(ClampDivision, IsThatOfTheNodeEquations)
{
    for (const work_clamp& c : {stamped_spring_clamp(300_A), cast_spring_clamp(300_A), cast_spring_clamp(800_A)})
        for (const surface_state own : {surface_state::clean, surface_state::heavy_rust}) {
            work_connection w = on_steel(c, surface_state::light_rust);
            w.cable_jaw_surface = own;
            const clamp_division d = divided_clamp_current(w);
            const auto jaw = [&](surface_state s) {
                return contact_conductance_of(
                           contact{.metals = {c.jaw, mild_steel}, .force = c.force, .surface = s, .shape = c.shape})
                    .typical.value();
            };
            const double section = c.body_mass.value() / 2.0 / c.body_metal.density.value() /
                                   (c.build.jaw + c.build.reach + c.build.handle + c.build.entry).value();
            const double arm = section / (c.body_metal.resistivity * (c.build.jaw + c.build.reach)).value();
            const double braid = (c.build.shunt / (annealed_copper.resistivity * c.build.shunt_length)).value();
            const double wire = 1.0 / (spring_resistance(*c.spring) + spring_leg_resistance(c)).value(),
                         pin = 1.0 / pivot_resistance(c).value();
            node_voltages n;
            n.resistor(0, 4, jaw(own));
            n.resistor(1, 4, jaw(surface_state::light_rust));
            n.resistor(0, 3, arm);
            n.resistor(1, 2, arm);
            n.resistor(2, 3, braid + wire + pin);
            const std::array<double, 5> v = n.solved();
            EXPECT_NEAR_REL(static_cast<double>(d.spring), (v[3] - v[2]) * wire, 1e-9) << c.name;
            EXPECT_NEAR_REL(static_cast<double>(d.pivot), (v[3] - v[2]) * pin, 1e-9) << c.name;
            EXPECT_NEAR(static_cast<double>(d.shunt), (v[3] - v[2]) * braid, 1e-9) << c.name;
            EXPECT_NEAR_REL(static_cast<double>(d.other_jaw), v[1] * jaw(surface_state::light_rust), 1e-9) << c.name;
            // heat is heat: the parts add up to the resistance between work and cable
            EXPECT_NEAR_REL((d.jaws + d.arms + d.wire).value(), v[3], 1e-9) << c.name;
        }
}

// Two coil bodies with two legs each: a leg presses with its body's moment over the 20 mm it lies on, F x 65 mm / 2 /
// 20 mm = 1.625 F, through a worn contact of steel, 5 x 7600/(0.102 x 1.625 F)^0.7 micro-ohm; two in a row, two rows
// side by side are one.
TEST(ClampDivision, CurrentEntersTheSpringByItsLegs)
{
    work_clamp c = stamped_spring_clamp(300_A);
    EXPECT_NEAR_REL(spring_leg_force(c).value(), 1.625 * c.force.value(), 1e-12);
    EXPECT_NEAR_REL(spring_leg_resistance(c).value(), 5.0 * 7600e-6 / std::pow(0.102 * 1.625 * c.force.value(), 0.7),
                    1e-12);
    // statics of a lever: the pin holds jaw and legs, F (1 + 2 x 1.625)
    EXPECT_NEAR_REL(pivot_resistance(c).value(), 5.0 * 7600e-6 / std::pow(0.102 * 4.25 * c.force.value(), 0.7), 1e-12);
    c.spring->compression = compression_between_arms{.arm = 2.0 * c.spring->arm};
    EXPECT_NEAR_REL(spring_leg_force(c).value(), 0.25 * c.force.value(), 1e-12);
    c.build.spring_seat = {};
    c.spring->compression.reset();
    EXPECT_THROW((void)spring_leg_force(c), out_of_range_error);
}

// IEC 60974-13, 9.1 (tests/reference/contacts-work-clamp-standard.csv): no spring as current path unless permanently
// by-passed. By-passed by its braid the spring carries next to nothing; not so where the braid is broken and the pivot
// corroded, where there never was a shunt, or where the cable's jaw bites on dirt.
TEST(ClampDivision, TheSpringCarriesWhatNoShuntTakes)
{
    work_connection w = on_steel(cast_spring_clamp(300_A));
    EXPECT_LT(spring_share(w), 0.02);
    w.clamp.inside->pivot = pivot_state::open;
    EXPECT_LT(spring_share(w), 0.02);
    w.clamp.inside->shunt = shunt_state::broken;
    const double clean = spring_share(w);
    w.surface = surface_state::light_rust;
    const double rusty = spring_share(w);
    EXPECT_NEAR(clean, 0.097,
                0.001);  // what this model gives; half of the current is what a jaw without resistance has
    EXPECT_NEAR(rusty, 0.265, 0.001);
    w.surface = surface_state::clean;
    w.cable_jaw_surface = surface_state::heavy_rust;
    EXPECT_GT(spring_share(w), 0.5);
    w.cable_jaw_surface = surface_state::painted_unbroken;
    EXPECT_NEAR_REL(spring_share(w), 1.0, 1e-12);
    EXPECT_TRUE(divided_clamp_current(w).conducts);
    w.surface = surface_state::painted_unbroken;
    EXPECT_FALSE(divided_clamp_current(w).conducts);
    EXPECT_EQ(joint_of(w).contacts[0].cold.typical.value(), 0.0);

    const work_connection stamped = on_steel(stamped_spring_clamp(300_A));
    EXPECT_GT(spring_share(stamped), 0.05);
    work_connection insulated = stamped;
    insulated.clamp.live_jaws = 1;
    EXPECT_EQ(spring_share(insulated), 0.0);
    EXPECT_EQ(static_cast<double>(divided_clamp_current(insulated).other_jaw), 0.0);
    EXPECT_EQ(spring_share(on_steel(spring_clamp(300_A))), 0.0);  // by-passed by its description
    EXPECT_EQ(spring_share(on_steel(screw_clamp(300_A))), 0.0);
}

// A hot spring takes less; the shares of the crossing add up to what the other jaw has; worse jaws push more through
// it.
TEST(ClampDivision, SharesAddUpAndFollowHeat)
{
    for (const work_clamp& c : {stamped_spring_clamp(200_A), cast_spring_clamp(400_A)}) {
        const work_connection w = on_steel(c);
        double last = 0.0;
        for (const scatter level : {scatter::low, scatter::typical, scatter::high}) {
            const clamp_division d = divided_clamp_current(w, level);
            EXPECT_NEAR_REL(static_cast<double>(d.spring) + static_cast<double>(d.shunt) + static_cast<double>(d.pivot),
                            static_cast<double>(d.other_jaw), 1e-12);
            EXPECT_LE(static_cast<double>(d.other_jaw), 0.5);
            EXPECT_GT(static_cast<double>(d.spring), last);
            last = static_cast<double>(d.spring);
        }
        EXPECT_LT(static_cast<double>(divided_clamp_current(w, scatter::typical, {.spring = 200_degC}).spring),
                  spring_share(w));
    }
}

// What the division says heats the clamp: heat made is the square of the current times jaws, arms, connection and wire.
TEST(ClampDivision, FeedsTheHeatNetwork)
{
    const surroundings shop{.air = 20_degC};
    const work_connection w = on_steel(stamped_spring_clamp(300_A));
    const clamp_division d = divided_clamp_current(w);
    const clamp_network n = clamp_network_of(w, shop);
    EXPECT_EQ(n.spring_path, d.wire);
    EXPECT_NEAR_REL(n.jaws.typical.value(), 1.0 / d.jaws.value(), 1e-12);
    EXPECT_NEAR_REL(1.0 / n.termination.typical.value(), 1.0 / w.clamp.termination.typical.value() + d.arms.value(),
                    1e-12);
    EXPECT_LE(n.jaws.low, n.jaws.typical);
    EXPECT_LE(n.jaws.typical, n.jaws.high);
    EXPECT_LE(n.termination.low, n.termination.typical);
    const load small{.current = 1_A};
    const detail::clamp_solver solver(n, {in_si<thermal_conductance>(0.1), shop.air}, small, scatter::typical);
    const clamp_heat h = solver.result_of(solver.solve({}));
    EXPECT_NEAR_REL(h.made.value(), (d.jaws + d.arms + d.wire + 1.0 / w.clamp.termination.typical).value(), 1e-3);
    work_connection torn = on_steel(cast_spring_clamp(300_A));
    const double before = clamp_network_of(torn, shop).jaw_entry.value();
    torn.clamp.inside->shunt = shunt_state::broken;
    EXPECT_GT(before, 0.0);
    EXPECT_EQ(clamp_network_of(torn, shop).jaw_entry.value(), 0.0);
}

// The wire's share at its own warmth, by the division done again there: clamps with and without shunt, both jaws alike
// or one dirty or dead.
TEST(ClampDivision, SpringYieldsAsTheDivisionAtItsWarmthSays)
{
    std::vector<work_connection> seen;
    for (const work_clamp& c : {stamped_spring_clamp(200_A), cast_spring_clamp(400_A)}) {
        seen.push_back(on_steel(c));
        work_connection torn = on_steel(c);
        torn.clamp.inside->shunt = shunt_state::broken;
        seen.push_back(torn);
        work_connection dirty = torn;
        dirty.cable_jaw_surface = surface_state::heavy_rust;
        seen.push_back(dirty);
        dirty.clamp.inside->pivot = pivot_state::open;
        seen.push_back(dirty);
    }
    for (const work_connection& w : seen) {
        const clamp_division cold = divided_clamp_current(w);
        for (const temperature hot : {temperature::celsius(-40), 60_degC, 164_degC, 400_degC}) {
            const double growth = (mild_steel.resistivity_at(hot) / mild_steel.resistivity).value();
            const clamp_division warm = divided_clamp_current(w, scatter::typical, {.spring = hot});
            EXPECT_NEAR_REL(static_cast<double>(warm.spring),
                            static_cast<double>(cold.spring) /
                                (1.0 + static_cast<double>(cold.spring_yields) * (growth - 1.0)),
                            1e-12);
        }
        EXPECT_GE(static_cast<double>(cold.spring_yields), 0.0);
        EXPECT_LT(static_cast<double>(cold.spring_yields), 1.0);
    }
    work_connection one = on_steel(stamped_spring_clamp(300_A));
    one.clamp.live_jaws = 1;
    EXPECT_EQ(static_cast<double>(divided_clamp_current(one).spring_yields), 0.0);
}

// The hot spring's heat in the network: with its share as it is at the temperature found, and kept there, a network
// finds the same temperatures.
TEST(ClampDivision, ShareInTheNetworkIsThatOfTheTemperatureFound)
{
    work_connection w = on_steel(stamped_spring_clamp(300_A), surface_state::light_rust);
    const surroundings shop{.air = 30_degC};
    const load much{.current = 300_A, .duty = duty_cycle::of(6_min, 10_min)};
    const clamp_network n = clamp_network_of(w, shop);
    ASSERT_GT(static_cast<double>(n.spring_yields), 0.1);
    const auto solved = [&](const clamp_network& net) {
        const detail::clamp_solver solver(net, {in_si<thermal_conductance>(0.2), shop.air}, much, scatter::typical);
        return solver.result_of(solver.solve({}));
    };
    const clamp_heat found = solved(n);
    const auto spring = static_cast<std::size_t>(clamp_node::spring);
    const temperature hot = found.mean[spring];
    const double growth = (mild_steel.resistivity_at(hot) / mild_steel.resistivity).value();
    ASSERT_GT(growth, 1.2);
    clamp_network kept = n;
    const double falls = 1.0 + static_cast<double>(n.spring_yields) * (growth - 1.0);
    kept.spring_path /= falls * falls;
    kept.spring_yields = 0.0;
    const clamp_heat again = solved(kept);
    for (std::size_t k = 0; k < clamp_nodes; ++k)
        EXPECT_NEAR(again.mean[k].in_celsius(), found.mean[k].in_celsius(), 0.02) << k;
    kept = n;
    kept.spring_yields = 0.0;
    EXPECT_GT(solved(kept).mean[spring], hot);
}
