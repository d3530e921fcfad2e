#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/larger_lead.hpp>

#include "support/near.hpp"

namespace {
using namespace weldloop;

TEST(LargerLead, OfTheTableIsTheTablesOwn)
{
    const cable is = resized(welding_cable(awg(3), 12_m).named("work lead"), kcmil(300));
    const cable table = welding_cable(kcmil(300), 12_m);
    EXPECT_EQ(is.size, table.size);
    EXPECT_EQ(is.conductor_diameter, table.conductor_diameter);
    EXPECT_EQ(is.overall_diameter, table.overall_diameter);
    EXPECT_EQ(is.stranding_increment, table.stranding_increment);
    EXPECT_EQ(is.dimensions_interpolated, table.dimensions_interpolated);
    EXPECT_EQ(is.name, "work lead");
}

// An aluminium lead in a coil of 12 turns stays one.
TEST(LargerLead, KeepsMetalCoveringLayAndLimit)
{
    cable was = welding_cable(square_mm(50), 20_m).named("lead");
    was.metal = aluminium;
    was.covering.heat_per_volume *= 1.25;
    was.lay = lay::coiled;
    was.coil_turns = 12;
    was.limit = 90_degC;
    was.stranding_increment = 0.02;
    was.missing_strands = 0.2;
    was.damaged_length = 100_mm;
    const cable is = resized(was, square_mm(95));
    EXPECT_EQ(is.metal.resistivity, aluminium.resistivity);
    EXPECT_EQ(is.covering.heat_per_volume, was.covering.heat_per_volume);
    EXPECT_EQ(is.lay, lay::coiled);
    EXPECT_EQ(is.coil_turns, 12);
    EXPECT_EQ(is.limit, 90_degC);
    EXPECT_EQ(is.length, 20_m);
    EXPECT_EQ(is.stranding_increment, 0.02);
    EXPECT_EQ(static_cast<double>(is.missing_strands), 0.0);  // a new lead is whole
    EXPECT_EQ(is.damaged_length, 0_m);
}

TEST(LargerLead, DiametersOfAnotherMakeGoWithTheSize)
{
    cable was = welding_cable(square_mm(50), 20_m);
    was.conductor_diameter *= 1.1;
    was.overall_diameter *= 1.3;
    const cable is = resized(was, square_mm(95)), table = welding_cable(square_mm(95), 20_m);
    EXPECT_NEAR_REL(is.conductor_diameter.value(), 1.1 * table.conductor_diameter.value(), 1e-12);
    EXPECT_NEAR_REL(is.overall_diameter.value(), 1.3 * table.overall_diameter.value(), 1e-12);
    EXPECT_TRUE(is.dimensions_interpolated);

    // no row: with the root of the section
    cable small = was;
    small.size = square_mm(6);
    const cable grown = resized(small, square_mm(24));
    EXPECT_NEAR_REL(grown.overall_diameter.value(), 2.0 * small.overall_diameter.value(), 1e-12);
    EXPECT_NEAR_REL(grown.conductor_diameter.value(), 2.0 * small.conductor_diameter.value(), 1e-12);
}

TEST(LargerLead, KnowsWhichSizesThereAre)
{
    EXPECT_TRUE(is_lead_size(awg(8)) && is_lead_size(kcmil(500)) && is_lead_size(square_mm(10)) &&
                is_lead_size(square_mm(240)));
    EXPECT_FALSE(is_lead_size(awg(9)) || is_lead_size(kcmil(501)) || is_lead_size(square_mm(9.9)) ||
                 is_lead_size(square_mm(241)));
    EXPECT_EQ(family_of(square_mm(50)), size_family::metric);
    EXPECT_EQ(family_of(kcmil(250)), size_family::american);
}

}  // namespace
