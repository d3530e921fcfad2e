#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/magnet.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// relations: the square of the remanence, a quarter over the half gap, damage beyond the grade's temperature
TEST(Magnet, FallsWithHeatAndGap)
{
    EXPECT_EQ(magnet_force(300_N, ferrite_magnet, 20_degC).force, 300_N);
    EXPECT_NEAR_REL(magnet_force(300_N, ferrite_magnet, 120_degC).force.value(), 300 * 0.8 * 0.8, 1e-12);
    EXPECT_NEAR_REL(magnet_force(300_N, ferrite_magnet, 20_degC, magnet_half_gap).force.value(), 75.0, 1e-12);
    EXPECT_FALSE(magnet_force(300_N, neodymium_magnet, 80_degC).damaged);
    EXPECT_TRUE(magnet_force(300_N, neodymium_magnet, 81_degC).damaged);
    EXPECT_EQ(magnet_force(300_N, ferrite_magnet, 600_degC).force.value(), 0.0);
    for (const magnet_grade& g : all_magnet_grades) {
        force last = 400_N;
        for (double celsius = -20; celsius < 500; celsius += 20) {
            const force now = magnet_force(280_N, g, temperature::celsius(celsius)).force;
            EXPECT_LE(now, last);
            EXPECT_GE(now, magnet_force(280_N, g, temperature::celsius(celsius), 0.1_mm).force);
            last = now;
        }
        EXPECT_EQ(g.from->kind, source_kind::memory);
    }
}

TEST(Magnet, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(magnet_force(in_si<force>(x), ferrite_magnet, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(magnet_force(1_N, ferrite_magnet, 20_degC, in_si<length>(x)));
    magnet_grade odd = ferrite_magnet;
    odd.remanence_slope = in_si<per_kelvin>(-1);
    EXPECT_THROW((void)magnet_force(1_N, odd, 20_degC), out_of_range_error);
}
