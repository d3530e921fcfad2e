#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/material/metals.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

conductor_size gauge(int n)
{
    return n > 0 ? awg(n) : aught(1 - n);
}

}  // namespace

// source: ASTM B258 progression and the resistance of standard copper; published columns of an open textbook and a
// university table (two sources). Printed digits: 4 to 5.
TEST(ConductorResistance, GaugeTable)
{
    for (const auto& row : reference_table("conductors-awg.csv").rows()) {
        const conductor_size size = gauge(static_cast<int>(row.number("n")));
        EXPECT_NEAR_REL(number_in(size.area(), "mm2"), row.number("area_exact_mm2"), 1e-4) << row.where();
        EXPECT_NEAR_REL(number_in(size.area(), "cmil"), row.number("area_published_cmil"), 3e-4) << row.where();
        const resistance_per_length r = conductor_resistance(annealed_copper, size.area(), 0.0, 20_degC);
        EXPECT_NEAR_REL(number_in(r, "ohm/kft"), row.number("resistance_20C_published_ohm_per_kft"), 1e-3)
            << row.where();
        EXPECT_NEAR_REL(number_in(r, "ohm/kft"), row.number("resistance_20C_exact_ohm_per_kft"), 1e-4) << row.where();
    }
}

// source: NFPA 70 chapter 9 table 8 (two sources): concentric strands, 2 %; one row is solid. Printed digits: 3.
TEST(ConductorResistance, CodeTableAt75Degrees)
{
    for (const auto& row : reference_table("conductors-nec-ch9-table8.csv").rows()) {
        const double increment = row.number("strand_count") == 1 ? 0.0 : 0.02;
        const resistance_per_length r = conductor_resistance(
            annealed_copper, in_si<area>(row.number("area_cmil") * number_in(1_kcmil, "m2") / 1e3), increment, 75_degC);
        EXPECT_NEAR_REL(number_in(r, "ohm/kft"), row.number("dc_resistance_75C_uncoated_ohm_per_kft"), 0.004)
            << row.where();
    }
}

// source: Matula 1979, table 2 (two sources): pure copper, so relative to its own value at 293 K. The coefficient of
// standard copper (0.00393) against that of pure copper (0.00404) is part of the difference.
TEST(ConductorResistance, TemperatureLawAgainstPureCopper)
{
    const double pure_at_293 = 1.678;
    const double at_20 = annealed_copper.resistivity.value();
    int rows = 0;
    for (const auto& row : reference_table("conductors-resistivity-vs-temperature.csv").rows()) {
        if (row.text("material") != "copper" || !row.text("variant").starts_with("total (")) continue;
        const double t = row.number("temperature_K");
        const double ours = annealed_copper.resistivity_at(temperature::kelvin(t)).value() / at_20;
        const double theirs = row.number("resistivity_1e-8_ohm_m") / pure_at_293;
        EXPECT_NEAR_REL(ours, theirs, t <= 400 ? 0.015 : t <= 600 ? 0.03 : t <= 1000 ? 0.08 : 0.16) << row.where();
        ++rows;
    }
    EXPECT_GE(rows, 14);
}

// source: NBS Handbook 100, p. 4, measured resistance ratio of copper (one source)
TEST(ConductorResistance, MeasuredRatioOfCopper)
{
    const double at_zero = annealed_copper.resistivity_at(0_degC).value();
    for (const auto& row : reference_table("conductors-copper-resistance-ratio.csv").rows()) {
        const double t = row.number("temperature_C");
        const double ours = annealed_copper.resistivity_at(temperature::celsius(t)).value() / at_zero;
        EXPECT_NEAR_REL(ours, row.number("R_t_over_R_0"), t < 0 ? 0.032 : t <= 300 ? 0.010 : 0.026) << row.where();
    }
}

TEST(ConductorResistance, MissingStrandsAddOnlyWhereTheyAreMissing)
{
    const resistance_per_length sound = conductor_resistance(annealed_copper, 70_mm2, 0.06, 20_degC);
    EXPECT_EQ(conductor_resistance(sound, 10_m, 0.0, 0_m), sound * 10_m);
    EXPECT_NEAR_REL(conductor_resistance(sound, 10_m, 0.5, 1_m).value(), (sound * 11_m).value(), 1e-14);
    EXPECT_NEAR_REL(conductor_resistance(sound, 10_m, 0.5, 10_m).value(), (sound * 20_m).value(), 1e-14);
    EXPECT_EQ(conductor_resistance(sound, 10_m, 0.5, 0_m), sound * 10_m);
}

TEST(ConductorResistance, RefusesWhatCannotBe)
{
    for (double bad : {nan_value, infinite}) {
        EXPECT_THROW((void)conductor_resistance(annealed_copper, in_si<area>(bad), 0.0, 20_degC), not_finite_error);
        EXPECT_THROW((void)conductor_resistance(annealed_copper, 70_mm2, bad, 20_degC), not_finite_error);
        EXPECT_THROW((void)conductor_resistance(in_si<resistance_per_length>(bad), 10_m, 0.1, 1_m), not_finite_error);
        EXPECT_THROW((void)conductor_resistance(in_si<resistance_per_length>(1e-3), in_si<length>(bad), 0.1, 1_m),
                     not_finite_error);
        EXPECT_THROW((void)conductor_resistance(in_si<resistance_per_length>(1e-3), 10_m, 0.1, in_si<length>(bad)),
                     not_finite_error);
        EXPECT_THROW((void)conductor_resistance(in_si<resistance_per_length>(1e-3), 10_m, bad, 1_m), not_finite_error);
    }
    const resistance_per_length r = in_si<resistance_per_length>(1e-3);
    EXPECT_THROW((void)conductor_resistance(annealed_copper, 0_mm2, 0.0, 20_degC), out_of_range_error);
    EXPECT_THROW((void)conductor_resistance(annealed_copper, 70_mm2, -0.01, 20_degC), out_of_range_error);
    EXPECT_THROW((void)conductor_resistance(annealed_copper, 70_mm2, 6.0, 20_degC), out_of_range_error);
    EXPECT_THROW((void)conductor_resistance(r, 0_m, 0.1, 0_m), out_of_range_error);
    EXPECT_THROW((void)conductor_resistance(r, 1_m, 0.1, 2_m), out_of_range_error);
    EXPECT_THROW((void)conductor_resistance(r, 1_m, 1.0, 1_m), out_of_range_error);
    EXPECT_THROW((void)conductor_resistance(0.0 * r, 1_m, 0.1, 1_m), out_of_range_error);
}
