#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/lap_joint.hpp>
#include <weldloop/material/metals.hpp>

#include "law/contact_fixture.hpp"
#include "law/oracle_joints.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

const lap_bar unit_bar{in_si<resistivity>(1), in_si<length>(1)};

}  // namespace

// source: tests/reference/contacts-lap-joint-2d.csv, a two-dimensional finite-volume solution. The law covers overlaps
// from 2 thicknesses on: 2.6 % there, 0.5 % from 3 on, as the table's notes say; shorter overlaps are refused.
TEST(LapJoint, EveryRowOfTheTable)
{
    for (const auto& row : test::reference_table("contacts-lap-joint-2d.csv").rows()) {
        const length overlap = in_si<length>(row.number("overlap_over_thickness"));
        if (overlap < in_si<length>(2)) {
            EXPECT_THROW((void)lap_joint_resistance(unit_bar, unit_bar, {1_m, overlap}), out_of_range_error);
            continue;
        }
        EXPECT_NEAR_REL(lap_joint_resistance(unit_bar, unit_bar, {1_m, overlap}).value(),
                        row.number("R_overlap_in_squares_rho_over_width"), overlap < in_si<length>(3) ? 0.026 : 0.005)
            << row.where();
        EXPECT_NEAR_REL(row.number("R_overlap_in_squares_rho_over_width") / overlap.value(),
                        row.number("ratio_e_to_equal_length_bar"), 0.001);
    }
}

// independent field solution (finite elements, tests/oracle/joints): the overlap alone, within 0.3 % from 3 thicknesses
// on for alike bars and any interface, 2.4 % at 2; bars of unlike metals as the law says of itself
TEST(LapJoint, AgreesWithTheFieldSolution)
{
    constexpr double extension = 6.0;  // thicknesses of bar beyond the overlap in the deck
    for (const auto& solved : test::field_solutions("lap")) {
        const double l = solved.at("L"), rho2 = solved.at("Rho2", 1.0);
        if (l < 2.0) continue;
        const lap_bar other{in_si<resistivity>(rho2), in_si<length>(1)};
        const film_resistivity film = in_si<film_resistivity>(solved.at("Layer") * solved.at("Rho3", 1.0));
        const double field = solved.resistance - extension * (1.0 + rho2);
        const double law = lap_joint_resistance(unit_bar, other, {1_m, in_si<length>(l), film}).value();
        const double allowed = rho2 > 3.0 ? 0.05 : rho2 > 1.0 ? 0.012 : l < 3.0 ? 0.024 : 0.004;
        EXPECT_NEAR_REL(law, field, allowed) << "overlap " << l << ", film " << film.value() << ", other " << rho2;
        // the whole joint with its bars, what a meter would see, is within 1 %
        EXPECT_NEAR_REL(law + solved.resistance - field, solved.resistance, 0.01);
    }
}

// limiting cases and properties over random joints: a bad interface counts alone, c/(b l); resistance rises with the
// interface and falls with width; exchanging the bars changes nothing
TEST(LapJoint, LimitsAndTrends)
{
    EXPECT_NEAR_REL(lap_joint_resistance(unit_bar, unit_bar, {1_m, 5_m, in_si<film_resistivity>(1e9)}).value(), 1e9 / 5,
                    1e-6);
    random_numbers random(43);
    for (int i = 0; i < random_cases; ++i) {
        const auto bar = [&] {
            return lap_bar{in_si<resistivity>(random.log_between(1e-8, 1e-6)),
                           in_si<length>(random.log_between(1e-3, 2e-2))};
        };
        const lap_bar one = bar(), other = bar();
        const length b = in_si<length>(random.log_between(1e-2, 0.2)),
                     l = random.log_between(2.001, 20) * std::max(one.thickness, other.thickness);
        const film_resistivity c = in_si<film_resistivity>(random.log_between(1e-13, 1e-6));
        const resistance r = lap_joint_resistance(one, other, {b, l, c});
        EXPECT_NEAR_REL(lap_joint_resistance(other, one, {b, l, c}).value(), r.value(), 1e-12);
        EXPECT_GT(lap_joint_resistance(one, other, {b, l, 1.1 * c}), r);
        EXPECT_NEAR_REL(lap_joint_resistance(one, other, {2.0 * b, l, c}).value(), 0.5 * r.value(), 1e-12);
    }
}

// source: the note to the force law's tables: K = 100 and m = 1 at 10 MPa give 9.8e-11 ohm m2
TEST(LapJoint, InterfaceByTheForceLaw)
{
    EXPECT_NEAR_REL(interface_resistivity(100, 10_MPa).value(), 9.8e-11, 0.001);
    EXPECT_LT(interface_resistivity(100, 15_MPa), interface_resistivity(100, 10_MPa));
}

TEST(LapJoint, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(lap_joint_resistance({in_si<resistivity>(x), 1_m}, unit_bar, {1_m, 5_m}));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(
        lap_joint_resistance(unit_bar, {in_si<resistivity>(1), in_si<length>(x)}, {1_m, 5_m}));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(lap_joint_resistance(unit_bar, unit_bar, {in_si<length>(x), 5_m}));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(lap_joint_resistance(unit_bar, unit_bar, {1_m, in_si<length>(x)}));
    EXPECT_REFUSES_BAD_NUMBERS(lap_joint_resistance(unit_bar, unit_bar, {1_m, 5_m, in_si<film_resistivity>(x)}));
    EXPECT_THROW((void)lap_joint_resistance(unit_bar, unit_bar, {1_m, 1.9_m}), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(interface_resistivity(100, in_si<pressure>(x)));
    EXPECT_THROW((void)interface_resistivity(0, 10_MPa), out_of_range_error);
}
