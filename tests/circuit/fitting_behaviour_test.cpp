// Couplings, holders, guns and torches under current.
#include <gtest/gtest.h>

#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/gun_behaviour.hpp>
#include <weldloop/circuit/holder_behaviour.hpp>
#include <weldloop/circuit/torch_behaviour.hpp>
#include <weldloop/core/literals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;

coupling turned_to(double x)
{
    coupling out("coupling", square_mm(50));
    out.force = in_si<force>(x);
    return out;
}

electrode_holder gripping(double x)
{
    electrode_holder out("holder", 200_A);
    out.force = in_si<force>(x);
    return out;
}

wire_gun with_wire(double diameter, double extension)
{
    wire_gun out("gun", 10_ft);
    out.wire_diameter = in_si<length>(diameter);
    out.extension = in_si<length>(extension);
    return out;
}

}  // namespace

// relation: two crimps and a plug in series
TEST(CouplingBehaviour, CrimpsAndPlugInSeries)
{
    const coupling c("coupling", square_mm(50));
    const double ohms = 1.0 / plug_conductance_of(c).typical.value() + 2.0 * crimp_resistance(50_mm2).typical.value();
    EXPECT_NEAR_REL(1.0 / coupling_conductance_of(c).typical.value(), ohms, 1e-12);
    const joint_behaviour b = behaviour_of(c, 200_A, 20_degC);
    EXPECT_GE(b.drop.typical.value(), 200.0 * ohms);
    EXPECT_NEAR_REL(b.drop.typical.value(), 200.0 * ohms, 0.005);  // its spots are hardly warm
    EXPECT_LT(b.resistance.typical, 100_uohm);  // a plug that is turned home is no worse than a clamp
    EXPECT_GT(behaviour_of(turned_to(20), 200_A, 20_degC).loss.typical, b.loss.typical);
    EXPECT_FALSE(behaviour_of(turned_to(0), 200_A, 20_degC).conducts);
}

// relation: a crimp and the jaws in series; the jaws on the rod are the worse part
TEST(HolderBehaviour, CrimpAndJawsInSeries)
{
    const electrode_holder h("holder", 200_A);
    const double crimp = crimp_resistance(35_mm2).typical.value(), jaws = 1.0 / jaw_conductance_of(h).typical.value();
    EXPECT_NEAR_REL(1.0 / holder_conductance_of(h).typical.value(), crimp + jaws, 1e-12);
    EXPECT_GT(jaws, crimp);
    EXPECT_LT(behaviour_of(h, 200_A, 40_degC).drop.typical, 0.2_V);
    EXPECT_FALSE(behaviour_of(gripping(0), 200_A, 40_degC).conducts);
}

// judgement, worked by hand: mild steel from 143 nohm m to 957 at melting, halfway 550; 15 mm of 1.2 mm wire 7.3
// milliohm
TEST(GunBehaviour, WireExtension)
{
    const band<resistance> r = extension_resistance_of(with_wire(0.0012, 0.015));
    EXPECT_NEAR(r.low.value() * 1e3, 4.60, 0.01);
    EXPECT_NEAR(r.typical.value() * 1e3, 7.30, 0.01);
    EXPECT_NEAR(r.high.value() * 1e3, 12.70, 0.01);
    EXPECT_NEAR_REL(extension_drop_of(with_wire(0.0012, 0.015), 240_A).typical.value(), 240 * r.typical.value(), 1e-12);
    EXPECT_EQ(extension_resistance_of(with_wire(0.0012, 0)), band<resistance>{});
    EXPECT_NEAR_REL((extension_resistance_of(with_wire(0.0008, 0.015)).typical / r.typical).value(), 2.25, 1e-12);
}

// judgement: nearly constant, and below the melting drop of the tip's copper
TEST(GunBehaviour, TipDropHardlyFollowsTheCurrent)
{
    EXPECT_EQ(tip_drop(0_A), band<voltage>{});
    EXPECT_EQ(tip_drop(100_A), tip_drop(400_A));
    EXPECT_NEAR_REL(tip_drop(25_A).typical.value(), 0.5 * tip_drop(50_A).typical.value(), 1e-12);
    EXPECT_LT(tip_drop(400_A).high, melting_drop(annealed_copper, 100_degC));
}

TEST(GunBehaviour, FittingsHaveTheirSources)
{
    const wire_gun g("gun", 10_ft);
    EXPECT_TRUE(gun_basis_of(g).has(source_kind::judgement));
    const tig_torch t("torch", 12_ft);
    EXPECT_TRUE(torch_basis_of(t).has(source_kind::judgement));
    EXPECT_NEAR_REL(collet_conductance().typical.value(), 1.0 / 150e-6, 1e-12);
    EXPECT_LT(collet_conductance().low, collet_conductance().high);
}

TEST(FittingBehaviour, RefusesWhatCannotBe)
{
    const coupling c;
    const electrode_holder h;
    EXPECT_REFUSES_BAD_NUMBERS(plug_conductance_of(turned_to(x)));
    EXPECT_REFUSES_BAD_NUMBERS(coupling_conductance_of(turned_to(x)));
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(turned_to(x), 1_A, 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(c, in_si<current>(x), 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(jaw_conductance_of(gripping(x)));
    EXPECT_REFUSES_BAD_NUMBERS(holder_conductance_of(gripping(x)));
    EXPECT_REFUSES_BAD_NUMBERS(behaviour_of(h, in_si<current>(x), 20_degC));
    EXPECT_REFUSES_BAD_NUMBERS(tip_drop(in_si<current>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(extension_resistance_of(with_wire(x, 0.015)));
    EXPECT_REFUSES_BAD_NUMBERS(extension_resistance_of(with_wire(0.0012, x)));
    EXPECT_REFUSES_BAD_NUMBERS(extension_drop_of(with_wire(0.0012, 0.015), in_si<current>(x)));
    coupling thin;
    thin.size = square_mm(0.05);
    EXPECT_THROW((void)coupling_crimps_conductance_of(thin), out_of_range_error);
}
