#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/circuit/force_for.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/resting_contact.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

const contact jaw{.metals = {annealed_copper, mild_steel}, .force = 0_N};

}  // namespace

// relations over random contacts: with the force found, the contact has the resistance, or the drop, that was wanted at
// the matching point of its scatter; a better joint needs more force
TEST(ForceFor, InvertsResistanceAndDrop)
{
    random_numbers random(71);
    for (int i = 0; i < random_cases; ++i) {
        contact c = jaw;
        c.surface = all_surface_states[static_cast<std::size_t>(
            random.count(0, static_cast<int>(all_surface_states.size()) - 2))];
        c.shape = static_cast<contact_shape>(random.count(0, 4));
        c.points = random.count(1, 9);
        const resistance wanted = in_si<resistance>(random.log_between(1e-5, 1e-2));
        const band<force> f = force_for_resistance(c, wanted);
        EXPECT_LE(f.low, f.typical);
        EXPECT_LE(f.typical, f.high);
        c.force = f.typical;
        EXPECT_NEAR_REL(contact_resistance_of(c).typical.value(), wanted.value(), 1e-9);
        c.force = f.high;
        EXPECT_NEAR_REL(contact_resistance_of(c).high.value(), wanted.value(), 1e-9);
        c.force = f.low;
        EXPECT_NEAR_REL(contact_resistance_of(c).low.value(), wanted.value(), 1e-9);
        EXPECT_GT(force_for_resistance(c, 0.9 * wanted).typical, f.typical);

        const temperature bulk = temperature::celsius(random.between(0, 150));
        const voltage drop = random.between(0.02, 0.98) * melting_drop(c.metals, bulk);
        const current amps = in_si<current>(random.log_between(10, 1000));
        const band<force> g = force_for_drop(c, amps, drop, bulk);
        c.force = g.typical;
        EXPECT_NEAR_REL(behaviour_of(c, amps, bulk).drop.typical.value(), drop.value(), 1e-6);
        c.force = g.high;
        EXPECT_NEAR_REL(behaviour_of(c, amps, bulk).drop.high.value(), drop.value(), 1e-6);
    }
}

// source: worked example k-law-steel-copper-m0.7 turned round: 198 micro-ohm need 500 N
TEST(ForceFor, WorkedExample)
{
    EXPECT_NEAR_REL(force_for_resistance(jaw, in_si<resistance>(0.000197725449066)).typical.value(), 500.0, 1e-9);
    EXPECT_NEAR_REL(force_for_resistance(jaw, 198_uohm).typical.value(),
                    force_for_resistance(198_uohm, 3100, 0.7).value(), 1e-12);
}

// common practice, no source: the dead weight of a small part is no work connection; more points share it
TEST(ForceFor, DeadWeight)
{
    EXPECT_NEAR_REL(weight_of(2_kg).value(), 19.6133, 1e-12);
    const metal_pair steel{mild_steel, mild_steel};
    const contact part = resting_contact(2_kg, steel, surface_state::mill_scale);
    EXPECT_EQ(part.points, 3);
    const joint_behaviour resting = behaviour_of(part, 200_A, 20_degC);
    const joint_behaviour clamped = behaviour_of({.metals = {brass, mild_steel}, .force = 500_N}, 200_A, 20_degC);
    EXPECT_GT(resting.drop.typical, 2.0 * clamped.drop.typical);
    EXPECT_TRUE(resting.spots_melt);
    EXPECT_FALSE(behaviour_of(resting_contact(0_kg, steel, surface_state::clean), 200_A, 20_degC).conducts);
}

TEST(ForceFor, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(force_for_resistance(jaw, in_si<resistance>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(force_for_drop(jaw, in_si<current>(x), 0.1_V, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(force_for_drop(jaw, 100_A, in_si<voltage>(x), 20_degC));
    EXPECT_THROW((void)force_for_drop(jaw, 100_A, 0.6_V, 20_degC), out_of_range_error);
    contact painted = jaw;
    painted.surface = surface_state::painted_unbroken;
    EXPECT_THROW((void)force_for_resistance(painted, 100_uohm), no_solution_error);
    EXPECT_THROW((void)force_for_resistance(jaw, in_si<resistance>(1e-300)), no_solution_error);
    EXPECT_REFUSES_BAD_NUMBERS(weight_of(in_si<mass>(x)));
}
