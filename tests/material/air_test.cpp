#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/material/air.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {
constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();
}  // namespace

// source: Cengel, table A-9, public copy (one source): density at 101.325 kPa, its conductivity lies 2.0..2.8 % below
// the other table's. Incropera, table A.4 (from memory): densities of 100 kPa although headed 1 atm.
TEST(Air, AgreesWithPrintedTables)
{
    int from_memory = 0, seen = 0;
    for (const auto& row : reference_table("heat-air-properties.csv").rows()) {
        const bool is_memory = row.text("verified") == "memory";
        (is_memory ? from_memory : seen) += 1;
        const air_properties air =
            air_at(temperature::kelvin(row.number("T_K")), is_memory ? 100_kPa : sea_level_pressure);
        EXPECT_NEAR_REL(air.density.value(), row.number("rho_kg_per_m3"), 0.002) << row.where();
        EXPECT_NEAR_REL(air.specific_heat.value(), row.number("cp_J_per_kgK"), 0.004) << row.where();
        EXPECT_NEAR_REL(air.thermal_conductivity.value(), row.number("k_W_per_mK"), is_memory ? 0.008 : 0.029)
            << row.where();
        if (row.has("alpha_m2_per_s")) {  // conductivity, density and heat together
            EXPECT_NEAR_REL(air.thermal_diffusivity().value(), row.number("alpha_m2_per_s"),
                            (is_memory ? 0.008 : 0.029) + 0.002 + 0.004)
                << row.where();
        }
        if (row.has("mu_Pa_s")) {
            EXPECT_NEAR_REL(air.viscosity.value(), row.number("mu_Pa_s"), 0.015) << row.where();
        }
        if (row.has("nu_m2_per_s")) {
            EXPECT_NEAR_REL(air.kinematic_viscosity().value(), row.number("nu_m2_per_s"), 0.015) << row.where();
        }
        if (row.has("Pr")) {
            EXPECT_NEAR_REL(air.prandtl(), row.number("Pr"), 0.035) << row.where();
        }
    }
    EXPECT_EQ(from_memory + seen, 27);
    EXPECT_GE(seen, 15);
}

TEST(Air, DiffusivityRatioIsPrandtl)
{
    for (double t : {150.0, 300.0, 800.0, 1800.0}) {
        const air_properties air = air_at(temperature::kelvin(t));
        EXPECT_NEAR_REL((air.viscosity * air.specific_heat / air.thermal_conductivity).value(), air.prandtl(), 1e-14);
        EXPECT_EQ(air.at, temperature::kelvin(t));
    }
}

// source: U.S. Standard Atmosphere 1976, table values at 2000, 5000 and 11000 m (from memory; 79495, 54020, 22632 Pa),
// beside the definition at sea level.
TEST(Air, PressureFallsWithAltitude)
{
    EXPECT_EQ(pressure_at_altitude(0_m), sea_level_pressure);
    EXPECT_NEAR_REL(pressure_at_altitude(2000_m).value(), 79495.0, 0.001);
    EXPECT_NEAR_REL(pressure_at_altitude(5000_m).value(), 54020.0, 0.001);
    EXPECT_NEAR_REL(pressure_at_altitude(11_km).value(), 22632.0, 0.001);
    // hydrostatics: dp/dz = -rho g, with the standard's 15 degC - 6.5 K/km
    for (double z : {0.0, 1500.0, 6000.0}) {
        const double slope =
            (pressure_at_altitude(in_si<length>(z + 1)) - pressure_at_altitude(in_si<length>(z))).value();
        const double rho =
            air_at(temperature::kelvin(288.15 - 0.0065 * z), pressure_at_altitude(in_si<length>(z))).density.value();
        EXPECT_NEAR_REL(slope, -rho * 9.80665, 0.001);
    }
}

TEST(Air, RefusesWhatCannotBe)
{
    EXPECT_THROW((void)air_at(temperature::kelvin(99)), out_of_range_error);
    EXPECT_THROW((void)air_at(temperature::kelvin(1901)), out_of_range_error);
    EXPECT_THROW((void)air_at(20_degC, 0_Pa), out_of_range_error);
    EXPECT_THROW((void)air_at(20_degC, -1.0 * 1_Pa), out_of_range_error);
    EXPECT_THROW((void)air_at(20_degC, in_si<pressure>(nan_value)), not_finite_error);
    EXPECT_THROW((void)air_at(20_degC, in_si<pressure>(infinite)), not_finite_error);
    EXPECT_THROW((void)pressure_at_altitude(in_si<length>(nan_value)), not_finite_error);
    EXPECT_THROW((void)pressure_at_altitude(in_si<length>(infinite)), not_finite_error);
    EXPECT_THROW((void)pressure_at_altitude(11001_m), out_of_range_error);
    EXPECT_THROW((void)pressure_at_altitude(in_si<length>(-501)), out_of_range_error);
}
