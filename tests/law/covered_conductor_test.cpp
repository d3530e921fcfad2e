// The covering: what it conducts and stores, at its points and as a whole.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/law/heat_modes.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double pi = std::numbers::pi;

}  // namespace

TEST(CoveringHeat, Formulas)
{
    EXPECT_NEAR_REL(covering_conductance(flexible_rubber.thermal_conductivity, 10_mm, 16_mm).value(),
                    2 * pi * 0.2 / std::log(1.6), 1e-14);
    EXPECT_NEAR_REL(van_wormer_share(10_mm, 16_mm), 1 / (2 * std::log(1.6)) - 1 / (1.6 * 1.6 - 1), 1e-12);
    EXPECT_NEAR(van_wormer_share(10_mm, 10.0001 * 1_mm), 0.5, 1e-5);
    EXPECT_NEAR_REL(van_wormer_share(10_mm, 10.00501 * 1_mm), van_wormer_share(10_mm, 10.00499 * 1_mm),
                    1e-6);  // series meets formula
    EXPECT_NEAR_REL(covering_heat_capacity(flexible_rubber.heat_per_volume, 10_mm, 16_mm).value(),
                    2e6 * pi / 4 * (256 - 100) * 1e-6, 1e-12);
    for (double bad : {nan_value, infinite, 0.0, -1.0}) {
        EXPECT_THROW((void)covering_conductance(in_si<thermal_conductivity>(bad), 10_mm, 16_mm), error);
        EXPECT_THROW((void)covering_conductance(flexible_rubber.thermal_conductivity, in_si<length>(bad), 16_mm),
                     error);
        EXPECT_THROW((void)covering_conductance(flexible_rubber.thermal_conductivity, 10_mm, in_si<length>(bad)),
                     error);
        EXPECT_THROW((void)van_wormer_share(in_si<length>(bad), 16_mm), error);
        EXPECT_THROW((void)van_wormer_share(10_mm, in_si<length>(bad)), error);
        EXPECT_THROW((void)covering_heat_capacity(in_si<volumetric_heat>(bad), 10_mm, 16_mm), error);
        EXPECT_THROW((void)covering_heat_capacity(flexible_rubber.heat_per_volume, in_si<length>(bad), 16_mm), error);
    }
    EXPECT_THROW((void)covering_conductance(flexible_rubber.thermal_conductivity, 16_mm, 16_mm), out_of_range_error);
    EXPECT_THROW((void)van_wormer_share(16_mm, 10_mm), out_of_range_error);
    EXPECT_THROW((void)covering_heat_capacity(flexible_rubber.heat_per_volume, 16_mm, 16_mm), out_of_range_error);
}

// the polynomial is exact for what is known in closed form: steady conduction, and by Van Wormer the heat stored in it
TEST(CoveredConductor, SteadyConductionIsExact)
{
    for (const double ratio : {1.05, 1.3, 1.6, 2.5}) {
        const covered_conductor lead =
            covered_conductor_of({annealed_copper, 50_mm2, 0.0}, {flexible_rubber, 10_mm, ratio * 10_mm});
        const detail::conductor_numbers c(lead);
        double stored = 0.0, heat = 0.0;  // of a covering with 1 K at the conductor and 0 K at the surface
        for (std::size_t i = 0; i < detail::covering_points; ++i) {
            double out = 0.0;
            for (std::size_t j = 0; j < detail::covering_points; ++j)
                out += detail::covering_stiffness[i][j] * (1.0 - detail::lobatto_places[j]);
            EXPECT_NEAR(out, i == 0 ? 1.0 : i == detail::surface_point ? -1.0 : 0.0, 1e-12) << i;
            const double here = c.root_heat[i] * c.root_heat[i] - (i == 0 ? lead.metal.value() : 0.0);
            stored += here * (1.0 - detail::lobatto_places[i]);
            heat += here;
        }
        EXPECT_NEAR_REL(heat, lead.covering.value(), 1e-12);
        EXPECT_NEAR_REL(stored / heat, van_wormer_share(10_mm, ratio * 10_mm), 1e-6) << ratio;
    }
}

TEST(CoveredConductor, ModesRebuildTheMatrix)
{
    const detail::conductor_numbers c(
        covered_conductor_of({annealed_copper, 50_mm2, 0.0}, {flexible_rubber, 10_mm, 15_mm}));
    const double gain = 0.03, slope = 0.6;
    const detail::symmetric_modes m = detail::modes_of(c, gain, slope);
    for (std::size_t i = 0; i < detail::covering_points; ++i)
        for (std::size_t j = 0; j < detail::covering_points; ++j) {
            double a = 0.0, one = 0.0;
            for (std::size_t k = 0; k < detail::covering_points; ++k) {
                a += m.vector[i][k] * m.rate[k] * m.vector[j][k];
                one += m.vector[i][k] * m.vector[j][k];
            }
            double expected = -c.conductance * detail::covering_stiffness[i][j];
            if (i == 0 && j == 0) expected += gain;
            if (i == detail::surface_point && j == i) expected -= slope;
            EXPECT_NEAR(a, expected / (c.root_heat[i] * c.root_heat[j]), 1e-13) << i << j;
            EXPECT_NEAR(one, i == j ? 1.0 : 0.0, 1e-14) << i << j;
        }
}

TEST(CoveredConductor, ModesFollowFromOthers)
{
    const detail::conductor_numbers c(
        covered_conductor_of({annealed_copper, 50_mm2, 0.0}, {flexible_rubber, 10_mm, 15_mm}));
    for (const double gain : {0.0, 0.01, 0.2})
        for (const double slope : {0.3, 0.6, 1.0}) {
            const detail::symmetric_modes fresh = detail::modes_of(c, gain, slope);
            const detail::symmetric_modes near =
                detail::modes_near(detail::modes_of(c, 0.03, 0.6), c, gain - 0.03, slope - 0.6);
            for (std::size_t k = 0; k < detail::covering_points; ++k) {
                detail::point_values fresh_rates = fresh.rate, near_rates = near.rate;
                std::sort(fresh_rates.begin(), fresh_rates.end());
                std::sort(near_rates.begin(), near_rates.end());
                EXPECT_NEAR_REL(near_rates[k], fresh_rates[k], 1e-11) << gain << " " << slope;
            }
            for (std::size_t i = 0; i < detail::covering_points; ++i)
                for (std::size_t j = 0; j < detail::covering_points; ++j) {
                    double a = 0.0, b = 0.0;
                    for (std::size_t k = 0; k < detail::covering_points; ++k) {
                        a += near.vector[i][k] * near.rate[k] * near.vector[j][k];
                        b += fresh.vector[i][k] * fresh.rate[k] * fresh.vector[j][k];
                    }
                    EXPECT_NEAR(a, b, 1e-13) << i << j;
                }
        }
}

TEST(CoveredConductor, RefusesBadInput)
{
    const covered_conductor good =
        covered_conductor_of({annealed_copper, 50_mm2, 0.1}, {flexible_rubber, 10_mm, 15_mm});
    for (const double bad : {nan_value, infinite, -1.0, 0.0}) {
        EXPECT_THROW(
            (void)covered_conductor_of({annealed_copper, in_si<area>(bad), 0.1}, {flexible_rubber, 10_mm, 16_mm}),
            error);
        EXPECT_THROW(
            (void)covered_conductor_of({annealed_copper, 50_mm2, 0.1}, {flexible_rubber, in_si<length>(bad), 16_mm}),
            error);
        covered_conductor c = good;
        c.diameter_ratio = bad;
        EXPECT_THROW(detail::conductor_numbers{c}, error);
        c = good;
        c.covering = in_si<heat_capacity_per_length>(bad);
        EXPECT_THROW(detail::conductor_numbers{c}, error);
    }
    EXPECT_THROW((void)covered_conductor_of({annealed_copper, 50_mm2, nan_value}, {flexible_rubber, 10_mm, 16_mm}),
                 error);
    EXPECT_THROW((void)covered_conductor_of({annealed_copper, 50_mm2, 0.1}, {flexible_rubber, 16_mm, 16_mm}),
                 out_of_range_error);
}
