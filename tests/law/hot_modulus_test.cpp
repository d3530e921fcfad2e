// The reversible softening of a warm spring.
#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/hot_modulus.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

// Spring makers' data: 2 % per 55 K.
TEST(HotSpring, LosesTwoPercentPer55Kelvin)
{
    EXPECT_NEAR(wl::hot_force_ratio(75_degC), 0.98, 2.5e-4);
    EXPECT_DOUBLE_EQ(wl::hot_force_ratio(20_degC), 1.0);
    EXPECT_NEAR_REL(wl::number_in(wl::modulus_at(200_GPa, 200_degC), "GPa"), 200.0 * (1.0 - 3.6e-4 * 180.0), 1e-13);
    EXPECT_GT(wl::modulus_at(200_GPa, wl::temperature::celsius(-40)), 200_GPa);
    EXPECT_GT(wl::hot_force_ratio(1500_degC), 0.0);
    EXPECT_GT(wl::hot_force_ratio(wl::temperature::kelvin(0)), 1.0);
}

// It comes back: the modulus depends on the temperature alone, so a spring that was hot is as stiff as before, and
// relaxation, which does not come back, is another law (stress_relaxation_test.cpp, CoolingFreezesTheLoss).
TEST(HotSpring, FallsWithTemperatureInAStraightLine)
{
    double last = 2.0;
    for (double celsius = -40.0; celsius <= 250.0; celsius += 10.0) {
        const double now = wl::hot_force_ratio(wl::temperature::celsius(celsius));
        EXPECT_LT(now, last);
        if (last < 2.0) {
            EXPECT_NEAR(last - now, 3.6e-3, 1e-12);
        }
        last = now;
    }
}

TEST(HotSpring, RefusesWhatCannotBe)
{
    EXPECT_THROW((void)wl::modulus_at(0_GPa, 20_degC), wl::out_of_range_error);
    EXPECT_THROW((void)wl::modulus_at(200_GPa, 1501_degC), wl::out_of_range_error);
}
