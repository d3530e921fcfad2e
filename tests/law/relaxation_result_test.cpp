// Springs in series: limits, and the differential equation they stand for marched apart from the code.
#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/law/relaxation_result.hpp>

#include "support/near.hpp"

namespace wl = weldloop;

namespace {

double loss(double first, double share, double second)
{
    return static_cast<double>(wl::series_loss(first, share, second));
}

}  // namespace

TEST(SeriesSprings, WithoutAShareTheOtherIsAlone)
{
    EXPECT_NEAR_REL(loss(0.3, 1.0, 0.9), 0.3, 1e-14);
    EXPECT_NEAR_REL(loss(0.3, 0.0, 0.9), 0.9, 1e-14);
    EXPECT_NEAR_REL(loss(0.2, 0.37, 0.2), 0.2, 1e-14);
    EXPECT_EQ(loss(0.0, 0.5, 0.0), 0.0);
    EXPECT_EQ(loss(1.0, 0.1, 0.0), 1.0);
    EXPECT_EQ(loss(1.0, 0.0, 0.25), loss(0.5, 0.0, 0.25));
}

// Two elements of compliance c1, c2 under one force at a held travel; each creeps at F r_i'(t), r1 = 0.4 t, r2 = 0.1
// t^2. Marched by the midpoint rule in 1e5 steps.
TEST(SeriesSprings, SolvesTheirEquationOfCreep)
{
    const double c1 = 0.3, c2 = 0.7;
    double force = 1.0;
    const int steps = 100000;
    const double dt = 2.0 / steps;
    const auto slope = [&](double f, double t) { return -f * (c1 * 0.4 + c2 * 0.2 * t) / (c1 + c2); };
    for (int i = 0; i < steps; ++i) {
        const double t = i * dt;
        const double half = force + 0.5 * dt * slope(force, t);
        force += dt * slope(half, t + 0.5 * dt);
    }
    EXPECT_NEAR_REL(1.0 - loss(1.0 - std::exp(-0.4 * 2.0), 0.3, 1.0 - std::exp(-0.1 * 4.0)), force, 1e-8);
}

TEST(SeriesSprings, LieBetweenTheTwo)
{
    double last = 0.2;
    for (double share = 0.0; share <= 1.0; share += 0.05) {
        const double now = loss(0.8, share, 0.2);
        EXPECT_GE(now, last - 1e-15);
        EXPECT_LE(now, 0.8 + 1e-15);
        last = now;
    }
}

TEST(SeriesSprings, RefuseWhatIsNoShare)
{
    EXPECT_THROW((void)loss(1.1, 0.5, 0.5), wl::out_of_range_error);
    EXPECT_THROW((void)loss(0.5, -0.1, 0.5), wl::out_of_range_error);
    EXPECT_THROW((void)loss(0.5, 0.5, std::nan("")), wl::not_finite_error);
}
