// Spring clamps as they are sold, by dimensions: what follows from them, without steps, within what can be.
#include <cmath>
#include <limits>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/work_clamp_standard.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

std::vector<double> numbers(const work_clamp& c)
{
    return {c.force.value(),
            c.body_mass.value(),
            c.body_surface.value(),
            c.jaw_area.value(),
            1.0 / c.arms.value(),
            c.termination.low.value(),
            c.termination.high.value(),
            c.largest_cable.area().value(),
            1.0 / static_cast<double>(c.spring->stress)};
}

}  // namespace

TEST(SoldClamps, FollowFromTheirDimensions)
{
    const spring_clamp_dimensions d = stamped_spring_clamp_dimensions(300_A);
    const work_clamp c = clamp_of(d);
    EXPECT_EQ(c.name, "stamped spring clamp 300 A");
    EXPECT_EQ(c.jaw, mild_steel);
    EXPECT_EQ(c.body_metal, mild_steel);
    EXPECT_EQ(c.build.shunt.value(), 0.0);
    ASSERT_TRUE(c.inside);
    // two halves of 2 mm x 42 mm x 190 mm of steel
    EXPECT_NEAR_REL(c.body_mass.value(), 2.0 * 0.002 * 0.042 * 0.190 * 7870.0, 1e-12);
    EXPECT_NEAR_REL(c.body_surface.value(), 2.0 * 0.126 * 0.190, 1e-12);
    // rho l/A from jaw tip to connection, 100 mm of one half: 170 micro-ohm; `arms` has the 35 mm behind the pivot
    EXPECT_NEAR_REL(c.arms.value(), 143e-9 * 0.035 / 84e-6, 1e-12);
    EXPECT_NEAR_REL(143e-9 * 0.100 / 84e-6, 170e-6, 2e-3);
    EXPECT_NEAR_REL(static_cast<double>(c.spring->stress), 0.70, 1e-9);
    // 1.5 times the force of the published holding test (IEC 60974-13, 9.1)
    EXPECT_NEAR_REL(c.force.value(), 1.5 * holding_force(holding_test_mass(70_mm2)).value(), 1e-12);
    EXPECT_TRUE(c.basis.has(source_kind::judgement));

    const work_clamp cast = cast_spring_clamp(300_A), usual = spring_clamp(300_A);
    EXPECT_NEAR_REL(cast.body_mass.value(), usual.body_mass.value(), 1e-12);
    EXPECT_NEAR_REL(cast.body_surface.value(), usual.body_surface.value(), 1e-12);
    EXPECT_NEAR_REL(static_cast<double>(cast.spring->stress), static_cast<double>(usual.spring->stress), 1e-12);
    EXPECT_EQ(cast.build.shunt, usual.build.shunt);
    EXPECT_FALSE(usual.inside);
}

TEST(SoldClamps, HaveNoStepsAndGrowWithTheRating)
{
    for (const auto& [make, most] : {std::pair{&stamped_spring_clamp, 600.0}, std::pair{&cast_spring_clamp, 1000.0}}) {
        std::vector<double> last = numbers(make(100_A));
        for (double amps = 100.5; amps <= most; amps += 0.5) {
            const std::vector<double> now = numbers(make(in_si<current>(amps)));
            for (std::size_t i = 0; i < now.size(); ++i) {
                // wires of the cast family are in tenths of a millimetre, see Families.HaveNoSteps
                EXPECT_GE(now[i], last[i] * (1.0 - (i == 8 ? 2e-6 : 1e-12))) << amps << " A, number " << i;
                EXPECT_LE(now[i], last[i] * 1.006) << amps << " A, number " << i;
            }
            last = now;
        }
    }
}

// A face under a stud comes on top of the crimp; what is loose is worse by (1/10)^-m; a crimp knows no loosening.
TEST(SoldClamps, TheCablesConnectionHasAState)
{
    const auto typical = [](clamp_cable_end made, cable_end_state state) {
        return cable_connection_resistance({.made = made, .state = state}, 70_mm2, brass).typical.value();
    };
    const double crimp = crimp_resistance(70_mm2).typical.value();
    EXPECT_EQ(typical(clamp_cable_end::crimped, cable_end_state::loose), crimp);
    const double face = typical(clamp_cable_end::stud, cable_end_state::tight) - crimp;
    EXPECT_GT(face, 0.0);
    EXPECT_NEAR_REL(typical(clamp_cable_end::stud, cable_end_state::loose) - crimp, face * std::pow(10.0, 0.6), 1e-9);
    EXPECT_NEAR_REL(typical(clamp_cable_end::set_screw, cable_end_state::loose),
                    typical(clamp_cable_end::set_screw, cable_end_state::tight) * std::pow(10.0, 0.7), 1e-9);
    spring_clamp_dimensions d = cast_spring_clamp_dimensions(300_A);
    const work_clamp tight = clamp_of(d);
    d.connection.state = cable_end_state::loose;
    EXPECT_LT(clamp_of(d).termination.typical, tight.termination.typical);
    for (const clamp_cable_end e : all_clamp_cable_ends)
        for (const cable_end_state s : all_cable_end_states) {
            const band<resistance> r = cable_connection_resistance({.made = e, .state = s}, 70_mm2, brass);
            EXPECT_LE(r.low, r.typical);
            EXPECT_LE(r.typical, r.high);
        }
}

TEST(SoldClamps, ALargerOneIsOfTheSameMake)
{
    EXPECT_EQ(same_make(stamped_spring_clamp(300_A), 400_A).name, "stamped spring clamp 400 A");
    EXPECT_EQ(same_make(stamped_spring_clamp(300_A), 800_A).name, "cast spring clamp 800 A");
    EXPECT_EQ(same_make(cast_spring_clamp(300_A), 400_A).name, "cast spring clamp 400 A");
    EXPECT_EQ(same_make(spring_clamp(300_A), 400_A).name, "spring clamp 400 A");
    EXPECT_EQ(same_make(screw_clamp(300_A), 400_A).name, "screw clamp 400 A");
    EXPECT_EQ(same_make(bolted_work_lug(square_mm(70)), 400_A).name, bolted_work_lug(square_mm(70)).name);
}

TEST(SoldClamps, RefuseWhatCannotBe)
{
    EXPECT_THROW((void)stamped_spring_clamp(99_A), out_of_range_error);
    EXPECT_THROW((void)stamped_spring_clamp(601_A), out_of_range_error);
    EXPECT_THROW((void)cast_spring_clamp(1001_A), out_of_range_error);
    EXPECT_THROW((void)stamped_spring_clamp(in_si<current>(std::numeric_limits<double>::quiet_NaN())),
                 not_finite_error);
    const spring_clamp_dimensions good = stamped_spring_clamp_dimensions(300_A);
    const auto refused = [&](auto change) {
        spring_clamp_dimensions d = good;
        change(d);
        EXPECT_THROW((void)clamp_of(d), out_of_range_error);
    };
    refused([](spring_clamp_dimensions& d) { d.section = {}; });
    refused([](spring_clamp_dimensions& d) { d.outline = {}; });
    refused([](spring_clamp_dimensions& d) { d.force = {}; });
    refused([](spring_clamp_dimensions& d) { d.jaw_length = {}; });
    refused([](spring_clamp_dimensions& d) { d.reach = {}; });
    refused([](spring_clamp_dimensions& d) { d.entry = {}; });
    refused([](spring_clamp_dimensions& d) { d.force = 2_kN; });  // its spring would break
    refused([](spring_clamp_dimensions& d) { d.connection.tightened_to = -1.0 * 1_Nm; });
}
