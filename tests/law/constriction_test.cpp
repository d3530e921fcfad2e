#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/constriction.hpp>
#include <weldloop/material/metals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

constexpr resistivity copper = annealed_copper.resistivity;

std::vector<contact_spot> disc_of_spots(int rings, length disc, length radius)
{
    // 1, 6, 12, ... on circles: the same area around each spot
    std::vector<contact_spot> spots{{0_m, 0_m, radius}};
    for (int k = 1; k <= rings; ++k)
        for (int i = 0; i < 6 * k; ++i) {
            const double angle = 2.0 * std::numbers::pi * i / (6 * k), at = disc.value() * k / (rings + 0.5);
            spots.push_back({in_si<length>(at * std::cos(angle)), in_si<length>(at * std::sin(angle)), radius});
        }
    return spots;
}

}  // namespace

// relation: two bodies of one metal are the two-metal formula with equal resistivities
TEST(Constriction, TwoEqualMetalsAreOne)
{
    random_numbers random(1);
    for (int i = 0; i < random_cases; ++i) {
        const resistivity rho = in_si<resistivity>(random.log_between(1e-8, 1e-6));
        const length a = in_si<length>(random.log_between(1e-7, 1e-2));
        EXPECT_NEAR_REL(constriction_resistance(rho, rho, a).value(), constriction_resistance(rho, a).value(), 1e-14);
    }
}

// relation: R = sqrt(rho^2 pi xi H/(4F)), Holm
TEST(Constriction, PlasticContactFallsWithTheRootOfForce)
{
    random_numbers random(2);
    for (int i = 0; i < random_cases; ++i) {
        const force f = in_si<force>(random.log_between(0.1, 1e5));
        const pressure h = in_si<pressure>(random.log_between(1e7, 1e10));
        const double xi = random.between(0.05, 1.0);
        const double expected =
            std::sqrt(copper.value() * copper.value() * std::numbers::pi * xi * h.value() / (4.0 * f.value()));
        EXPECT_NEAR_REL(constriction_resistance(copper, spot_radius(f, h, xi)).value(), expected, 1e-13);
        EXPECT_GT(spot_radius(2.0 * f, h, xi), spot_radius(f, h, xi));
    }
}

// limiting case: no force, no contact
TEST(Constriction, NoForceGivesNoSpot)
{
    EXPECT_EQ(spot_radius(0_N, 1_GPa).value(), 0.0);
    EXPECT_EQ(bearing_area(0_N, 1_GPa).value(), 0.0);
    EXPECT_THROW((void)constriction_resistance(copper, spot_radius(0_N, 1_GPa)), out_of_range_error);
}

// relation: one spot in the pair sum is the single spot; spots far apart are in parallel
TEST(Constriction, PairSumHasItsLimits)
{
    const std::vector<contact_spot> one{{3_mm, -2_mm, 0.1_mm}};
    EXPECT_NEAR_REL(constriction_resistance(copper, one).value(), constriction_resistance(copper, 0.1_mm).value(),
                    1e-14);
    const std::vector<contact_spot> far{{-500_m, 0_m, 0.1_mm}, {500_m, 0_m, 0.3_mm}};
    EXPECT_NEAR_REL(constriction_resistance(copper, far).value(), constriction_resistance(copper, 0.4_mm).value(),
                    1e-6);
}

// relation: four equal spots on a square of side s, written out by hand: rho/(8a) + rho/(16 pi) (8/s + 4/(s sqrt 2))
TEST(Constriction, FourSpotsOnASquare)
{
    const double a = 1e-4, s = 2e-3, rho = copper.value();
    const length h = in_si<length>(0.5 * s), r = in_si<length>(a);
    const std::vector<contact_spot> square{{h, h, r}, {h, -h, r}, {-h, h, r}, {-h, -h, r}};
    const double expected =
        rho / (8.0 * a) + rho / (16.0 * std::numbers::pi) * (8.0 / s + 4.0 / (s * std::numbers::sqrt2));
    EXPECT_NEAR_REL(constriction_resistance(copper, square).value(), expected, 1e-13);
}

// relation, derived: the short form lets a spot crowd itself in the place its neighbours leave free, which is a disc of
// r/sqrt(n); that adds (2 pi / sqrt(n)) / (16/3) = 1.18/sqrt(n) to the cluster's part
TEST(Constriction, ShortFormApproachesPairSum)
{
    const length disc = 5_mm, a = 0.02_mm;
    for (const int rings : {5, 9, 20}) {
        const auto spots = disc_of_spots(rings, disc, a);
        const int n = static_cast<int>(spots.size());
        const resistance cluster = copper / (2.0 * cluster_radius(disc));
        const resistance excess = clustered_constriction_resistance(copper, n, a, cluster_radius(disc)) -
                                  constriction_resistance(copper, spots);
        EXPECT_NEAR_REL((excess / cluster).value() * std::sqrt(n), 1.18, 0.08) << n;
    }
}

// relations: any set of spots lies between them all in parallel without crowding and the best one alone
TEST(Constriction, MoreSpotsNeverHarm)
{
    random_numbers random(3);
    for (int i = 0; i < 200; ++i) {
        std::vector<contact_spot> spots;
        double sum = 0.0;
        for (int k = 0; k < 12; ++k) {
            const length radius = in_si<length>(random.log_between(1e-5, 5e-5));
            spots.push_back({in_si<length>(1e-3 * (k % 4)), in_si<length>(1e-3 * (k / 4)), radius});
            sum += radius.value();
            const double r = constriction_resistance(copper, spots).value();
            EXPECT_GE(r, copper.value() / (2.0 * sum) * (1.0 - 1e-12));
            EXPECT_LE(r, constriction_resistance(copper, spots.front().radius).value() * (1.0 + 1e-12));
        }
    }
}

// properties over random clusters: one more spot, at least 5 radii from the others (where the pair sum is good to 1 %),
// lowers the resistance; so does a larger one; n equal spots in the short form fall with n, with their radius and with
// the cluster's
TEST(Constriction, FallsWithTheNumberOfSpots)
{
    random_numbers random(5);
    for (int i = 0; i < 300; ++i) {
        const double pitch = random.log_between(5e-4, 5e-3), largest = pitch / 5.0;
        std::vector<contact_spot> spots;
        double last = std::numeric_limits<double>::infinity();
        for (int k = 0; k < 16; ++k) {
            const length radius = in_si<length>(random.log_between(0.2 * largest, largest));
            spots.push_back({in_si<length>(pitch * (k % 4)), in_si<length>(pitch * (k / 4)), radius});
            const double r = constriction_resistance(copper, spots).value();
            EXPECT_LT(r, last) << k;
            last = r;
        }
        const length a = in_si<length>(random.log_between(1e-6, 1e-4)), alpha = random.log_between(10, 1e3) * a;
        const int n = random.count(1, 200);
        const resistance r = clustered_constriction_resistance(copper, n, a, alpha);
        EXPECT_LT(clustered_constriction_resistance(copper, n + 1, a, alpha), r);
        EXPECT_LT(clustered_constriction_resistance(copper, n, 1.1 * a, alpha), r);
        EXPECT_LT(clustered_constriction_resistance(copper, n, a, 1.1 * alpha), r);
    }
}

TEST(Constriction, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(constriction_resistance(in_si<resistivity>(x), 1_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(constriction_resistance(copper, in_si<length>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(constriction_resistance(in_si<resistivity>(x), copper, 1_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(constriction_resistance(copper, in_si<resistivity>(x), 1_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(constriction_resistance(copper, copper, in_si<length>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(bearing_area(in_si<force>(x), 1_GPa));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(bearing_area(1_N, in_si<pressure>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(bearing_area(1_N, 1_GPa, x));
    EXPECT_REFUSES_BAD_NUMBERS(spot_radius(in_si<force>(x), 1_GPa));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(spot_radius(1_N, in_si<pressure>(x)));
    EXPECT_THROW((void)spot_radius(1_N, 1_GPa, 1.01), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(cluster_radius(in_si<length>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clustered_constriction_resistance(in_si<resistivity>(x), 3, 1_mm, 1_cm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clustered_constriction_resistance(copper, 3, in_si<length>(x), 1_cm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clustered_constriction_resistance(copper, 3, 1_mm, in_si<length>(x)));
    EXPECT_THROW((void)clustered_constriction_resistance(copper, 0, 1_mm, 1_cm), out_of_range_error);
    EXPECT_THROW((void)clustered_constriction_resistance(copper, 3, 1_mm, 0.9_mm), out_of_range_error);
    EXPECT_THROW((void)constriction_resistance(copper, std::vector<contact_spot>{}), out_of_range_error);
    const std::vector<contact_spot> overlapping{{0_m, 0_m, 1_mm}, {1.9_mm, 0_m, 1_mm}};
    EXPECT_THROW((void)constriction_resistance(copper, overlapping), out_of_range_error);
    for (const double x : test::not_finite) {
        EXPECT_THROW((void)constriction_resistance(copper, std::vector<contact_spot>{{in_si<length>(x), 0_m, 1_mm}}),
                     not_finite_error);
        EXPECT_THROW((void)constriction_resistance(copper, std::vector<contact_spot>{{0_m, in_si<length>(x), 1_mm}}),
                     not_finite_error);
        EXPECT_THROW((void)constriction_resistance(copper, std::vector<contact_spot>{{0_m, 0_m, in_si<length>(x)}}),
                     not_finite_error);
    }
    EXPECT_THROW((void)constriction_resistance(copper, in_si<length>(1e-320)), not_finite_error);  // beyond any number
}
