// Columns of the conductor tables beside their resistances: strands, diameters, nominal gages, tinned copper.
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/part/conductor_class.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

// source: IEC 60228, largest strand (class 5 to 6 mm2 one source; class 6 and above from memory) and largest diameter
// over the strands (to 1.5 mm2 one source, above from memory). The usual strand is 0.01 mm thinner, which public tables
// confirm to 50 mm2. GOST 22483-77 has the same largest diameters (one source) but for 2.5 and 4 mm2.
TEST(ConductorColumns, StrandsAndDiametersOfTheMetricClasses)
{
    int class_5 = 0, class_6 = 0, other_standard = 0;
    for (const auto& row : reference_table("conductors-iec60228.csv").rows()) {
        const conductor_size size = square_mm(row.number("nominal_area_mm2"));
        const conductor_build five = conductor_build_of(size, strand_class::class_5);
        EXPECT_NEAR(number_in(five.strand, "mm"), row.number("class5_max_wire_diameter_mm") - 0.01, 1e-9)
            << row.where();
        EXPECT_NEAR(number_in(five.conductor_diameter.value(), "mm"),
                    row.number("class5_6_max_conductor_diameter_iec_mm"), 1e-9)
            << row.where();
        ++class_5;
        if (row.has("class6_max_wire_diameter_mm")) {
            const conductor_build six = conductor_build_of(size, strand_class::class_6);
            EXPECT_NEAR(number_in(six.strand, "mm"), row.number("class6_max_wire_diameter_mm") - 0.01, 1e-9)
                << row.where();
            EXPECT_EQ(six.conductor_diameter, five.conductor_diameter) << row.where();
            ++class_6;
        }
        const double mm2 = row.number("nominal_area_mm2");
        if (row.has("class5_6_max_conductor_diameter_gost22483_77_mm") && mm2 != 2.5 && mm2 != 4) {
            EXPECT_NEAR(number_in(five.conductor_diameter.value(), "mm"),
                        row.number("class5_6_max_conductor_diameter_gost22483_77_mm"), 1e-9)
                << row.where();
            ++other_standard;
        }
    }
    EXPECT_EQ(class_5, 22);
    EXPECT_EQ(class_6, 19);
    EXPECT_EQ(other_standard, 14);
}

// source: open textbook and university table (two sources): diameter by gage, four digits (half a
// unit in 1000 at worst); ASTM B258, nominal diameters
// rounded to 0.1 mil (two sources), and NBS Handbook 100, resistance of the rounded wire at 20 degC (from memory, equal
// to 10.371/d^2 by the two-source diameters); printed digits, four at most, three where the wire is thin
TEST(ConductorColumns, GageDiametersAndRoundedWires)
{
    int rows = 0, handbook = 0;
    for (const auto& row : reference_table("conductors-awg.csv").rows()) {
        const int n = static_cast<int>(row.number("n"));
        const conductor_size size = n > 0 ? awg(n) : aught(1 - n);
        const double mils = std::sqrt(number_in(size.area(), "cmil"));
        EXPECT_NEAR_REL(mils / 1e3, row.number("diameter_published_in"), 5e-4) << row.where();
        const double nominal = row.number("b258_nominal_diameter_mil");
        EXPECT_NEAR(mils, nominal, n > 0 ? 0.051 : 0.5) << row.where();
        const area rounded = in_si<area>(nominal * nominal * number_in(1_kcmil, "m2") / 1e3);
        const double ohms = number_in(conductor_resistance(annealed_copper, rounded, 0.0, 20_degC), "ohm/kft");
        EXPECT_NEAR_REL(ohms, row.number("resistance_20C_from_nominal_ohm_per_kft"), 2e-4) << row.where();
        if (row.has("hb100_resistance_20C_ohm_per_kft")) {
            EXPECT_NEAR_REL(ohms, row.number("hb100_resistance_20C_ohm_per_kft"), 0.005) << row.where();
            ++handbook;
        }
        ++rows;
    }
    EXPECT_EQ(rows, 44);
    EXPECT_EQ(handbook, 44);
}

// source: NFPA 70 chapter 9 table 8, coated copper at 75 degC (two sources), printed to three digits: at worst half a
// unit in 101. The table gives coated strands the temperature coefficient of plain ones; by its lower conductivity a
// tinned strand has less, and comes out 0.3 to 0.7 % below the table at 75 degC.
TEST(ConductorColumns, CoatedConductorsOfTheCode)
{
    int rows = 0;
    for (const auto& row : reference_table("conductors-nec-ch9-table8.csv").rows()) {
        const bool is_solid = row.number("strand_count") == 1;
        const double strand_in = is_solid ? std::sqrt(row.number("area_cmil")) / 1e3 : row.number("strand_diameter_in");
        const area section = in_si<area>(row.number("area_cmil") * number_in(1_kcmil, "m2") / 1e3);
        const resistance_per_length plain =
            conductor_resistance(annealed_copper, section, is_solid ? 0.0 : concentric_increment, 75_degC);
        const double share = tinned_conductivity(strand_in * 1_in);
        EXPECT_NEAR_REL(number_in(plain, "ohm/kft") / share, row.number("dc_resistance_75C_coated_ohm_per_kft"), 0.005)
            << row.where();
        const resistance_per_length tinned = conductor_resistance(detail::copper_conducting(share), section,
                                                                  is_solid ? 0.0 : concentric_increment, 75_degC);
        EXPECT_LT(tinned, plain / share) << row.where();
        EXPECT_GT(tinned.value(), 0.993 * plain.value() / share) << row.where();
        ++rows;
    }
    EXPECT_EQ(rows, 22);
}

// source: ASTM B33 table 2 (one source, the standard itself), mass resistivity of tinned wire, five digits
TEST(ConductorColumns, MassResistivityOfTinnedWire)
{
    int rows = 0;
    for (const auto& row : reference_table("conductors-tinned-increment.csv").rows()) {
        const double share = tinned_conductivity(row.number("wire_diameter_in_upto") * 1_in);
        const double ohm_g_per_m2 = annealed_copper.resistivity.value() / share * annealed_copper.density.value() * 1e3;
        // the conductivity is printed to four digits
        EXPECT_NEAR_REL(ohm_g_per_m2, row.number("max_mass_resistivity_ohm_g_per_m2"), 1e-4) << row.where();
        ++rows;
    }
    EXPECT_EQ(rows, 5);
}

// source: EN 50525-2-81 as recalled: its resistances are those of IEC 60228, plain and tinned (two sources there)
TEST(ConductorColumns, ResistanceOfTheHarmonisedLead)
{
    int rows = 0;
    for (const auto& row : reference_table("conductors-welding-cable-en50525-2-81.csv").rows()) {
        const conductor_size size = square_mm(row.number("nominal_area_mm2"));
        const auto highest = [&](strand_finish f) {
            return number_in(
                conductor_resistance_of(size, {strand_class::class_5, f, resistance_choice::standard_maximum}, 20_degC),
                "ohm/km");
        };
        EXPECT_NEAR_REL(highest(strand_finish::plain), row.number("Rmax_20C_plain_ohm_per_km"), 1e-12) << row.where();
        EXPECT_NEAR_REL(highest(strand_finish::tinned), row.number("Rmax_20C_tinned_ohm_per_km"), 1e-12) << row.where();
        ++rows;
    }
    EXPECT_EQ(rows, 20);
}
