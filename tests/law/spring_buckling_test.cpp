// Buckling of compression springs.
#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "law/spring_examples.hpp"

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/spring_buckling.hpp>

#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::ksi;

namespace {
constexpr wl::pressure e = 30e3 * ksi, g = 11.5e3 * ksi;  // steel, as the textbook rounds it
}

// Shigley equation 10-13: for steel, L0 < 2.63 D/a (memory), with the ends' factors of table 10-2 (read on a public
// page).
TEST(SpringBuckling, OfSteelBeginsAt263CoilDiameters)
{
    for (const auto& [ends, factor] :
         {std::pair{wl::spring_ends_held::both_flat, 0.5}, std::pair{wl::spring_ends_held::flat_and_pivoted, 0.707},
          std::pair{wl::spring_ends_held::both_pivoted, 1.0}, std::pair{wl::spring_ends_held::flat_and_free, 2.0}})
        EXPECT_NEAR_REL(wl::longest_stable_spring(10_mm, e, g, ends).value(), 2.63 * 10e-3 / factor, 0.005);
}

// At its longest stable length a spring would buckle at C1 of its length, that is far beyond solid; a longer one
// sooner, and a very long one like a column, at C1 C2/(2 l^2) of its length.
TEST(SpringBuckling, ComesSoonerForASlenderSpring)
{
    const wl::length longest = wl::longest_stable_spring(10_mm, e, g, wl::spring_ends_held::both_pivoted);
    EXPECT_FALSE(wl::buckling_deflection({longest, 10_mm, e, g, wl::spring_ends_held::both_pivoted}));
    double last = 0.5 * 30.0 / 18.5;  // C1
    for (const double times : {1.0001, 1.2, 1.5, 2.0, 4.0, 8.0}) {
        const auto at = wl::buckling_deflection({times * longest, 10_mm, e, g, wl::spring_ends_held::both_pivoted});
        ASSERT_TRUE(at);
        const double share = (*at / (times * longest)).value();
        EXPECT_LT(share, last);
        last = share;
    }
    const auto column = wl::buckling_deflection({100.0 * longest, 10_mm, e, g, wl::spring_ends_held::both_pivoted});
    EXPECT_NEAR_REL((*column / (100.0 * longest)).value(), 0.5 * 30.0 / 18.5 / (2.0 * 100.0 * 100.0), 1e-4);
}

TEST(SpringBuckling, RefusesWhatCannotBe)
{
    const wl::spring_ends_held flat = wl::spring_ends_held::both_flat;
    EXPECT_THROW((void)wl::longest_stable_spring(0_mm, e, g, flat), wl::out_of_range_error);
    EXPECT_THROW((void)wl::longest_stable_spring(10_mm, g, e, flat), wl::out_of_range_error);
    EXPECT_THROW((void)wl::buckling_deflection({0_mm, 10_mm, e, g, flat}), wl::out_of_range_error);
    EXPECT_THROW((void)wl::buckling_deflection(
                     {wl::in_si<wl::length>(std::numeric_limits<double>::quiet_NaN()), 10_mm, e, g, flat}),
                 wl::not_finite_error);
}
