#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/brush.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {
using namespace weldloop;
}

// recalled practice, and so no proof: 2 V a pair of carbon brushes, 0.5 V a pair of metal-graphite; level from 5 A/cm2
TEST(Brush, DropIsNearlyConstant)
{
    EXPECT_NEAR_REL(2.0 * brush_drop(brush_kind::carbon, 100_A, 4_cm2).typical.value(), 2.0, 1e-12);
    EXPECT_NEAR_REL(2.0 * brush_drop(brush_kind::metal_graphite, 100_A, 4_cm2).typical.value(), 0.5, 1e-12);
    EXPECT_EQ(brush_drop(brush_kind::metal_graphite, 40_A, 4_cm2), brush_drop(brush_kind::metal_graphite, 80_A, 4_cm2));
    EXPECT_NEAR_REL(brush_drop(brush_kind::carbon, 10_A, 4_cm2).typical.value(), 0.5, 1e-12);
    EXPECT_EQ(brush_drop(brush_kind::carbon, 0_A, 4_cm2), band<voltage>{});
    EXPECT_EQ(brush_drop_recalled.kind, source_kind::memory);
    EXPECT_REFUSES_BAD_NUMBERS(brush_drop(brush_kind::carbon, in_si<current>(x), 4_cm2));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(brush_drop(brush_kind::carbon, 1_A, in_si<area>(x)));
}
