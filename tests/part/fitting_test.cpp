// Lugs, couplings, holders, guns and torches as their factories make them; all of it judgement of the library.
#include <limits>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/arc.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/tig_torch.hpp>
#include <weldloop/part/wire_gun.hpp>

namespace {
using namespace weldloop;
}

TEST(Fittings, LugHasTheBoltOfItsSizeAndItsPublishedTorque)
{
    EXPECT_EQ(crimped_lug("a", square_mm(25)).bolt_diameter, 8_mm);
    EXPECT_EQ(crimped_lug("a", square_mm(25)).bolt_torque, 20_Nm);
    EXPECT_EQ(crimped_lug("a", awg(1)).bolt_diameter, 10_mm);
    EXPECT_EQ(crimped_lug("a", aught(2)).bolt_torque, 40_Nm);
    EXPECT_EQ(crimped_lug("a", square_mm(95)).bolt_diameter, 10_mm);
    EXPECT_EQ(crimped_lug("a", aught(4)).bolt_torque, 70_Nm);
    const lug l = crimped_lug("clamp lug", awg(1)).with_missing_strands(0.2);
    EXPECT_EQ(l.name, "clamp lug");
    EXPECT_EQ(l.size, awg(1));
    EXPECT_EQ(l.stamped, awg(1));
    EXPECT_EQ(static_cast<double>(l.missing_strands), 0.2);
    EXPECT_EQ(l.palm, surface_state::clean);
}

TEST(Fittings, CouplingAndHolderGrowWithTheCable)
{
    EXPECT_EQ(electrode_holder("h", 300_A).force, 480_N);  // 1.6 N/A, the judgement of holder_judgement
    EXPECT_EQ(coupling("c", square_mm(25)).force, 300_N);
    EXPECT_EQ(coupling("c", square_mm(50)).force, 500_N);
    EXPECT_EQ(coupling("c", square_mm(70)).force, 800_N);
    EXPECT_TRUE(coupling().name.empty());
    conductor_size last = square_mm(1);
    for (const double amps : {100.0, 200.0, 300.0, 400.0, 500.0, 600.0}) {
        const electrode_holder h("h", in_si<current>(amps));
        EXPECT_EQ(h.rated.value(), amps);
        EXPECT_GT(h.size, last);
        last = h.size;
    }
    EXPECT_TRUE(electrode_holder().name.empty());
}

TEST(Fittings, GunAndTorchHoldALead)
{
    const wire_gun gun("gun", 10_ft);
    EXPECT_EQ(gun.name, "gun");
    EXPECT_EQ(gun.lead.length, 10_ft);
    EXPECT_EQ(gun.wire_diameter, 1.2_mm);
    EXPECT_EQ(gun.extension, 15_mm);
    const tig_torch dry("torch", 12_ft), wet("torch", 12_ft, torch_cooling::water);
    EXPECT_EQ(dry.lead.length, 12_ft);
    EXPECT_GT(dry.lead.size, wet.lead.size);
    EXPECT_EQ(to_text(wet.cooling), "water");
    EXPECT_GT(gun.lead.size, wire_gun("gun", 10_ft, torch_cooling::water).lead.size);
    EXPECT_TRUE(wire_gun().name.empty());
    EXPECT_TRUE(tig_torch().name.empty());
    EXPECT_EQ(arc{}.name, "arc");
}

TEST(Fittings, RefuseWhatCannotBe)
{
    for (const double x : {0.0, -1.0, 2001.0})
        EXPECT_THROW((void)electrode_holder("h", in_si<current>(x)), out_of_range_error) << x;
    EXPECT_THROW((void)electrode_holder("h", in_si<current>(std::numeric_limits<double>::quiet_NaN())),
                 not_finite_error);
    EXPECT_THROW((void)wire_gun("g", in_si<length>(-1)), out_of_range_error);
    EXPECT_THROW((void)tig_torch("t", in_si<length>(0)), out_of_range_error);
    EXPECT_THROW((void)wire_gun("g", in_si<length>(std::numeric_limits<double>::infinity())), not_finite_error);
}
