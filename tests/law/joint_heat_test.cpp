#include <weldloop/core/literals.hpp>
#include <weldloop/law/joint_heat.hpp>

#include <limits>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// source: Wiedemann-Franz law with the Lorenz number of the contact literature, 2.44e-8 V2/K2 (Holm; Sommerfeld theory
// gives 2.443e-8)
TEST(JointHeat, SpotsConductByTheLorenzNumber)
{
    // a contact of 200 micro-ohm at 330 K passes 2.44e-8 x 330 / 200e-6 = 0.04026 W/K
    EXPECT_NEAR_REL(spot_heat_conductance(in_si<conductance>(5000), temperature::kelvin(330)).value(), 0.04026, 1e-12);
    EXPECT_EQ(spot_heat_conductance(in_si<conductance>(0), 20_degC).value(), 0.0);
    EXPECT_THROW(static_cast<void>(spot_heat_conductance(in_si<conductance>(-1), 20_degC)), out_of_range_error);
}

TEST(JointHeat, GapConductsByItsAir)
{
    EXPECT_NEAR_REL(gap_heat_conductance(in_si<thermal_conductivity>(0.026), 2_cm2, in_si<length>(1e-4)).value(), 0.052,
                    1e-12);
    EXPECT_THROW(static_cast<void>(gap_heat_conductance(in_si<thermal_conductivity>(0.026), 2_cm2, 0_mm)),
                 out_of_range_error);
    EXPECT_THROW(static_cast<void>(gap_heat_conductance(
                     in_si<thermal_conductivity>(std::numeric_limits<double>::infinity()), 2_cm2, 1_mm)),
                 not_finite_error);
}

// relation: the three ways add; between black faces radiation is 4 sigma T^3; a film-laden joint keeps its gap
TEST(JointHeat, WaysAcrossTheJointAdd)
{
    const joint_gap air{.filling = in_si<thermal_conductivity>(0.026),
                        .faces = 2_cm2,
                        .first_emissivity = 1.0,
                        .second_emissivity = 1.0};
    const temperature t = temperature::kelvin(330);
    EXPECT_NEAR_REL(gap_radiation_conductance(air, t).value(), 4 * 5.670374419e-8 * 330.0 * 330 * 330 * 2e-4, 1e-12);
    EXPECT_NEAR_REL(joint_heat_conductance(in_si<conductance>(5000), air, t).value(),
                    0.04026 + 0.052 + gap_radiation_conductance(air, t).value(), 1e-9);
    EXPECT_GT(joint_heat_conductance(in_si<conductance>(0), air, t).value(), 0.052);
    joint_gap greased = air, bright = air;
    greased.filling = grease_conductivity;
    bright.first_emissivity = 0.0;
    EXPECT_GT(joint_heat_conductance(in_si<conductance>(5000), greased, t),
              joint_heat_conductance(in_si<conductance>(5000), air, t));
    EXPECT_EQ(gap_radiation_conductance(bright, t).value(), 0.0);
    bright.faces = in_si<area>(-1);
    EXPECT_THROW(static_cast<void>(gap_radiation_conductance(bright, t)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(joint_heat_conductance(in_si<conductance>(-1), air, t)), out_of_range_error);
}

}  // namespace
