#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include <boost/math/special_functions/ellint_1.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/inductance.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

inductance_per_length external()
{
    return in_si<inductance_per_length>(0.0);
}

}  // namespace

// source: worked examples of a power-system textbook (9.1, 9.2), of another (4.2), a finite-element description (one
// source each), the low-frequency constants (two sources); recalled formulas of Rosa and Grover. Printed: four digits.
TEST(Inductance, PublishedExamples)
{
    int rows = 0;
    for (const auto& row : reference_table("conductors-inductance.csv").rows()) {
        const double value = row.number("value");
        const std::string& what = row.text("quantity");
        const std::string& inputs = row.text("inputs");
        const auto mh_per_km = [](inductance_per_length l) { return l.value() * 1e6; };
        if (what.starts_with("internal inductance")) {
            EXPECT_NEAR_REL(internal_inductance().value() * 1e9, value, 1e-12) << row.where();
        } else if (inputs == "d 200 cm, r 0.6 cm") {
            EXPECT_NEAR(mh_per_km(pair_inductance(200_cm, 0.6_cm, 0.6_cm)), value, 6e-4) << row.where();
        } else if (inputs == "d 300 cm, r 1 cm, mu_r 1") {
            EXPECT_NEAR(mh_per_km(pair_inductance(300_cm, 1_cm, 1_cm)), value, 6e-4) << row.where();
        } else if (inputs == "d 300 cm, r 1 cm, mu_r 100") {
            EXPECT_NEAR(mh_per_km(pair_inductance(300_cm, 1_cm, 1_cm, internal_inductance(100))), value, 6e-4)
                << row.where();
        } else if (inputs.starts_with("area 10 cm2")) {
            const length radius = in_si<length>(std::sqrt(10e-4 / std::numbers::pi));
            EXPECT_NEAR_REL((pair_inductance(500_cm, radius, radius) * 0.5_km).value() * 1e3, value, 2e-4)
                << row.where();
        } else if (what.starts_with("inductance per phase")) {
            // per conductor of three: half of the loop of two
            EXPECT_NEAR_REL(0.5 * mh_per_km(pair_inductance(200_cm, 0.62_cm, 0.62_cm)), value, 1e-4) << row.where();
        } else if (what.starts_with("two parallel wires")) {
            EXPECT_NEAR((pair_inductance(0.5_m, 4_mm, 4_mm) * 1_m).value() * 1e6, value, 6e-5) << row.where();
        } else if (what.starts_with("straight round wire, low")) {
            EXPECT_NEAR_REL(straight_inductance(200_cm, 0.05_cm).value() * 1e6, value, 1e-4) << row.where();
        } else if (what.starts_with("straight round wire, high")) {
            EXPECT_NEAR_REL(straight_inductance(200_cm, 0.05_cm, external()).value() * 1e6, value, 1e-4) << row.where();
        } else if (what.starts_with("return circuit")) {
            const inductance both =
                2.0 * (straight_inductance(1000_cm, 0.5_cm) - mutual_inductance_parallel(1000_cm, 10_cm));
            EXPECT_NEAR_REL(both.value() * 1e6, value, 2e-4) << row.where();
        } else if (what.starts_with("mutual inductance")) {
            EXPECT_NEAR_REL(mutual_inductance_parallel(200_cm, 10_cm).value() * 1e6, value, 1e-4) << row.where();
        } else if (what.starts_with("geometric mean radius")) {
            // the internal inductance as a smaller radius without one
            const double radius =
                std::exp(-2.0 * std::numbers::pi * internal_inductance().value() / magnetic_constant.value());
            EXPECT_NEAR(radius, value, 6e-5) << row.where();
        } else {
            ADD_FAILURE() << row.where() << " is not checked";
        }
        ++rows;
    }
    EXPECT_EQ(rows, 12);
}

// independent program: Neumann's integral by quadrature in arbitrary precision, see the command in the file
TEST(Inductance, CoilAgainstQuadrature)
{
    for (const auto& row : reference_table("conductors-coil-independent.csv").rows()) {
        const lead_coil c{.turns = static_cast<int>(row.number("turns")),
                          .diameter = in_si<length>(row.number("mean_diameter_m")),
                          .pitch = in_si<length>(row.number("pitch_m")),
                          .layers = static_cast<int>(row.number("layers"))};
        EXPECT_NEAR_REL(coil_inductance(c, in_si<length>(row.number("wire_radius_m"))).value(),
                        row.number("inductance_H"), 1e-12)
            << row.where();
        if (c.turns == 1) continue;
        const double per_layer = std::ceil(static_cast<double>(c.turns) / c.layers);
        const length inner = 0.5 * c.diameter - 0.5 * (c.layers - 1.0) * c.pitch;
        ASSERT_GT(per_layer, 1);
        EXPECT_NEAR_REL(mutual_inductance_coaxial(inner, inner, c.pitch).value(), row.number("mutual_of_first_two_H"),
                        1e-12)
            << row.where();
    }
}

// The arithmetic-geometric mean against the textbook form, where that one keeps its digits
TEST(Inductance, CoaxialCirclesByEllipticIntegrals)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> unit(0.1, 1.0);
    for (int n = 0; n < 200; ++n) {
        const double r1 = unit(random), r2 = unit(random), z = unit(random);
        const double k = std::sqrt(4 * r1 * r2 / ((r1 + r2) * (r1 + r2) + z * z));
        const double m = magnetic_constant.value() * std::sqrt(r1 * r2) *
                         ((2 / k - k) * boost::math::ellint_1(k) - 2 / k * boost::math::ellint_2(k));
        EXPECT_NEAR_REL(mutual_inductance_coaxial(in_si<length>(r1), in_si<length>(r2), in_si<length>(-z)).value(), m,
                        1e-10);
    }
    // far apart: two dipoles, mu0 pi R1^2 R2^2/(2 z^3)
    EXPECT_NEAR_REL(mutual_inductance_coaxial(1_cm, 2_cm, 1000_m).value(),
                    magnetic_constant.value() * std::numbers::pi * 1e-4 * 4e-4 / 2e9, 1e-8);
    // nearly touching: ln(8 R/d) - 2
    EXPECT_NEAR_REL(mutual_inductance_coaxial(1_m, 1_m, in_si<length>(1e-9)).value(),
                    magnetic_constant.value() * (std::log(8e9) - 2), 1e-9);
}

// A turn whose conductor is replaced by a filament at its geometric mean distance, within (a/R)^2
TEST(Inductance, TurnIsACircleBesideItself)
{
    const length gmd = std::exp(-0.25) * 4_mm;
    EXPECT_NEAR_REL(turn_inductance(400_mm, 4_mm).value(), mutual_inductance_coaxial(400_mm, 400_mm, gmd).value(),
                    2e-4);
}

TEST(Inductance, LimitsOfTheRectangle)
{
    // a long rectangle is a pair of leads
    EXPECT_NEAR_REL(loop_inductance(200_m, 0.1_m, 5_mm).value(), (pair_inductance(0.1_m, 5_mm, 5_mm) * 200_m).value(),
                    3e-3);
    EXPECT_EQ(loop_inductance(3_m, 2_m, 5_mm), loop_inductance(2_m, 3_m, 5_mm));
    // closed form of the square: (2 mu0 l/pi) (ln(l/a) - 0.77401) without the internal part, less ends of order a/l
    const double square = 2 * magnetic_constant.value() / std::numbers::pi * (std::log(1.0 / 1e-5) - 0.774013);
    EXPECT_NEAR_REL(loop_inductance(1_m, 1_m, in_si<length>(1e-5), external()).value(), square, 1e-5);
}

TEST(Inductance, GrowsWithLengthSpacingAndTurns)
{
    std::mt19937 random(17);
    std::uniform_real_distribution<double> unit(0.05, 1.0);
    for (int n = 0; n < 100; ++n) {
        const length radius = in_si<length>(0.01 * unit(random)), apart = in_si<length>(0.02 + unit(random));
        const length extent = in_si<length>(0.1 + 20 * unit(random));
        EXPECT_GT(pair_inductance(1.1 * apart, radius, radius), pair_inductance(apart, radius, radius));
        EXPECT_GT(pair_inductance(apart, radius, radius), pair_inductance(apart, radius, 1.1 * radius));
        EXPECT_GT(straight_inductance(1.1 * extent, radius), straight_inductance(extent, radius));
        EXPECT_GT(mutual_inductance_parallel(extent, apart), mutual_inductance_parallel(extent, 1.1 * apart));
        EXPECT_LT(mutual_inductance_parallel(extent, apart), straight_inductance(extent, radius, external()));
        EXPECT_GT(loop_inductance(extent, apart, radius), 2.0 * internal_inductance() * extent);
    }
    inductance before{};
    for (int turns = 1; turns < 30; ++turns) {
        const inductance now = coil_inductance({.turns = turns, .diameter = 0.6_m, .pitch = 18_mm}, 6_mm);
        EXPECT_GT(now, before);
        before = now;
    }
    // tight turns: nearly the square of their count
    const double ten = coil_inductance({.turns = 10, .diameter = 0.6_m, .pitch = 18_mm, .layers = 3}, 6_mm).value();
    const double one = coil_inductance({.turns = 1, .diameter = 0.6_m, .pitch = 18_mm}, 6_mm).value();
    EXPECT_GT(ten, 50 * one);
    EXPECT_LT(ten, 100 * one);
    // far apart: each by itself
    EXPECT_NEAR_REL(coil_inductance({.turns = 3, .diameter = 0.3_m, .pitch = 1_km}, 6_mm).value(),
                    3 * coil_inductance({.turns = 1, .diameter = 0.3_m, .pitch = 1_km}, 6_mm).value(), 1e-9);
}

TEST(Inductance, RampVoltage)
{
    EXPECT_NEAR_REL(ramp_voltage(in_si<inductance>(20e-6), 250_A, 1_ms).value(), 5.0, 1e-14);
    EXPECT_NEAR_REL(ramp_voltage(in_si<inductance>(20e-6), -1.0 * 250_A, 1_ms).value(), -5.0, 1e-14);
    EXPECT_EQ(ramp_voltage(in_si<inductance>(0.0), 250_A, 1_ms).value(), 0.0);
}

TEST(Inductance, RefusesWhatCannotBe)
{
    const lead_coil coil{.turns = 5, .diameter = 0.6_m, .pitch = 18_mm};
    for (double bad : {nan_value, infinite}) {
        const length x = in_si<length>(bad);
        EXPECT_THROW((void)internal_inductance(bad), not_finite_error);
        EXPECT_THROW((void)mutual_inductance_parallel(x, 1_m), not_finite_error);
        EXPECT_THROW((void)mutual_inductance_parallel(1_m, x), not_finite_error);
        EXPECT_THROW((void)straight_inductance(x, 1_mm), not_finite_error);
        EXPECT_THROW((void)straight_inductance(1_m, x), not_finite_error);
        EXPECT_THROW((void)straight_inductance(1_m, 1_mm, in_si<inductance_per_length>(bad)), not_finite_error);
        EXPECT_THROW((void)pair_inductance(x, 1_mm, 1_mm), not_finite_error);
        EXPECT_THROW((void)pair_inductance(1_m, x, 1_mm), not_finite_error);
        EXPECT_THROW((void)pair_inductance(1_m, 1_mm, x), not_finite_error);
        EXPECT_THROW((void)pair_inductance(1_m, 1_mm, 1_mm, in_si<inductance_per_length>(bad)), not_finite_error);
        EXPECT_THROW((void)loop_inductance(x, 1_m, 1_mm), not_finite_error);
        EXPECT_THROW((void)loop_inductance(1_m, x, 1_mm), not_finite_error);
        EXPECT_THROW((void)loop_inductance(1_m, 1_m, x), not_finite_error);
        EXPECT_THROW((void)loop_inductance(1_m, 1_m, 1_mm, in_si<inductance_per_length>(bad)), not_finite_error);
        EXPECT_THROW((void)mutual_inductance_coaxial(x, 1_m, 1_m), not_finite_error);
        EXPECT_THROW((void)mutual_inductance_coaxial(1_m, x, 1_m), not_finite_error);
        EXPECT_THROW((void)mutual_inductance_coaxial(1_m, 1_m, x), not_finite_error);
        EXPECT_THROW((void)turn_inductance(x, 1_mm), not_finite_error);
        EXPECT_THROW((void)turn_inductance(1_m, x), not_finite_error);
        EXPECT_THROW((void)turn_inductance(1_m, 1_mm, in_si<inductance_per_length>(bad)), not_finite_error);
        EXPECT_THROW((void)coil_inductance({.turns = 5, .diameter = x, .pitch = 18_mm}, 6_mm), not_finite_error);
        EXPECT_THROW((void)coil_inductance({.turns = 5, .diameter = 1_m, .pitch = x}, 6_mm), not_finite_error);
        EXPECT_THROW((void)coil_inductance(coil, x), not_finite_error);
        EXPECT_THROW((void)ramp_voltage(in_si<inductance>(bad), 1_A, 1_s), not_finite_error);
        EXPECT_THROW((void)ramp_voltage(in_si<inductance>(1.0), in_si<current>(bad), 1_s), not_finite_error);
        EXPECT_THROW((void)ramp_voltage(in_si<inductance>(1.0), 1_A, in_si<duration>(bad)), not_finite_error);
    }
    EXPECT_THROW((void)internal_inductance(0), out_of_range_error);
    EXPECT_THROW((void)mutual_inductance_parallel(0_m, 1_m), out_of_range_error);
    EXPECT_THROW((void)mutual_inductance_parallel(1_m, 0_m), out_of_range_error);
    EXPECT_THROW((void)mutual_inductance_parallel(in_si<length>(1e306), in_si<length>(1e-300)), not_finite_error);
    EXPECT_THROW((void)straight_inductance(1_m, 0_m), out_of_range_error);
    EXPECT_THROW((void)pair_inductance(1.9_mm, 1_mm, 1_mm), out_of_range_error);
    EXPECT_THROW((void)pair_inductance(1_m, 0_mm, 1_mm), out_of_range_error);
    EXPECT_THROW((void)pair_inductance(1_m, 1_mm, 0_mm), out_of_range_error);
    EXPECT_THROW((void)loop_inductance(1_m, 1_mm, 1_mm), out_of_range_error);
    EXPECT_THROW((void)mutual_inductance_coaxial(1_m, 1_m, 0_m), out_of_range_error);
    EXPECT_THROW((void)mutual_inductance_coaxial(0_m, 1_m, 1_m), out_of_range_error);
    EXPECT_THROW((void)turn_inductance(1_m, 0.21_m), out_of_range_error);
    EXPECT_THROW((void)turn_inductance(1_m, 0_m), out_of_range_error);
    EXPECT_THROW((void)coil_inductance({.turns = 0, .diameter = 1_m, .pitch = 18_mm}, 6_mm), out_of_range_error);
    EXPECT_THROW((void)coil_inductance({.turns = 501, .diameter = 1_m, .pitch = 18_mm}, 6_mm), out_of_range_error);
    EXPECT_THROW((void)coil_inductance({.turns = 5, .diameter = 1_m, .pitch = 18_mm, .layers = 6}, 6_mm),
                 out_of_range_error);
    EXPECT_THROW((void)coil_inductance({.turns = 5, .diameter = 1_m, .pitch = 10_mm}, 6_mm), out_of_range_error);
    EXPECT_THROW((void)coil_inductance({.turns = 5, .diameter = 30_mm, .pitch = 18_mm, .layers = 3}, 6_mm),
                 out_of_range_error);
    EXPECT_THROW((void)ramp_voltage(in_si<inductance>(-1.0), 1_A, 1_s), out_of_range_error);
    EXPECT_THROW((void)ramp_voltage(in_si<inductance>(1.0), 1_A, 0_s), out_of_range_error);
}
