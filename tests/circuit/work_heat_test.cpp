// What a plate under a contact takes up and leads away: what cannot be is refused.
#include <weldloop/circuit/work_heat.hpp>

#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// hand calculation: a disc of steel, pi r^2 d rho c
TEST(WorkHeat, StoresWhatADiscOfItsMetalStores)
{
    const double r = work_patch_radius.value();
    EXPECT_NEAR_REL(patch_capacity(mild_steel, 8_mm).value(),
                    std::numbers::pi * r * r * 0.008 * mild_steel.density.value() * mild_steel.specific_heat.value(),
                    1e-12);
}

TEST(WorkHeat, RefusesWhatCannotBe)
{
    EXPECT_THROW((void)patch_capacity(mild_steel, -8_mm), out_of_range_error);
    EXPECT_THROW((void)patch_capacity(mild_steel, in_si<length>(std::nan(""))), not_finite_error);
    EXPECT_THROW((void)plate_sink(mild_steel, 0_mm, 40_degC, {}), out_of_range_error);
}
}  // namespace
