// The curvature of helical springs: factors, limits, bad input.
#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/spring.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

TEST(SpringFactors, WahlAndBergstrasserAgree)
{
    for (double index = 4.0; index <= 12.0; index += 0.25) {
        EXPECT_TRUE(wl::usual_spring_index(index));
        EXPECT_NEAR_REL(wl::bergstrasser_factor(index), wl::wahl_factor(index), index < 8.0 ? 0.014 : 0.01) << index;
        EXPECT_GT(wl::bergstrasser_factor(index), wl::direct_shear_factor(index)) << index;
        EXPECT_GT(wl::inner_bending_factor(index), 1.0);
        EXPECT_LT(wl::outer_bending_factor(index), 1.0);
    }
    EXPECT_FALSE(wl::usual_spring_index(3.99));
    EXPECT_FALSE(wl::usual_spring_index(12.01));
}

TEST(SpringFactors, TendToOneForAStraightBar)
{
    EXPECT_NEAR_REL(wl::wahl_factor(1000.0), 1.0, 2e-3);
    EXPECT_NEAR_REL(wl::bergstrasser_factor(1000.0), 1.0, 2e-3);
    EXPECT_NEAR_REL(wl::direct_shear_factor(1000.0), 1.0, 1e-3);
    EXPECT_NEAR_REL(wl::inner_bending_factor(1000.0), 1.0, 1e-3);
    EXPECT_NEAR_REL(wl::outer_bending_factor(1000.0), 1.0, 1e-3);
}

TEST(SpringFactors, RefuseWhatCannotBe)
{
    const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    EXPECT_THROW((void)wl::spring_index(2_mm, 2_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::spring_index(2_mm, 0_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::spring_index(wl::in_si<wl::length>(nan), 2_mm), wl::not_finite_error);
    EXPECT_THROW((void)wl::spring_index(5_m, 2_mm), wl::out_of_range_error);
    EXPECT_NO_THROW((void)wl::spring_index(wl::in_si<wl::length>(125.0), wl::in_si<wl::length>(0.125)));  // 1000
    for (auto* factor : {&wl::wahl_factor, &wl::bergstrasser_factor, &wl::direct_shear_factor,
                         &wl::inner_bending_factor, &wl::outer_bending_factor}) {
        EXPECT_THROW((void)factor(1.0), wl::out_of_range_error);
        EXPECT_THROW((void)factor(-3.0), wl::out_of_range_error);
        EXPECT_THROW((void)factor(nan), wl::not_finite_error);
        EXPECT_THROW((void)factor(inf), wl::not_finite_error);
    }
}
