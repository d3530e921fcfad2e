#include <cmath>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/metals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

constexpr double printed_digit = 0.5e-3;  // the computed columns are printed to the millivolt

double drop_to(double celsius)
{
    return drop_for_spot_temperature(temperature::celsius(celsius), 20_degC).value();
}

}  // namespace

// source: tests/reference/contacts-voltage-temperature.csv, columns "computed" (L = 2.44e-8, bulk 20 degC)
TEST(VoltageTemperature, ComputedDropsOfTheTable)
{
    for (const auto& row : test::reference_table("contacts-voltage-temperature.csv").rows()) {
        EXPECT_NEAR(drop_to(row.number("melting_temp_C")), row.number("melting_voltage_computed_V"), printed_digit)
            << row.where();
        if (row.has("softening_temp_C")) {
            EXPECT_NEAR(drop_to(row.number("softening_temp_C")), row.number("softening_voltage_computed_V"),
                        printed_digit)
                << row.where();
        }
    }
}

// source: same table, handbook columns (Holm, Slade); rows seen in a second text: copper, gold, tin, tungsten. The
// others are recalled. Melting drops agree within 8 %, but for nickel (-18 %) and zinc (+15 %), which depart from the
// law.
TEST(VoltageTemperature, HandbookMeltingDrops)
{
    const std::map<std::string, double> departing{{"nickel", 0.19}, {"zinc", 0.16}};
    int seen = 0;
    for (const auto& row : test::reference_table("contacts-voltage-temperature.csv").rows()) {
        if (!row.has("melting_voltage_handbook_V")) continue;
        const auto known = departing.find(row.text("metal"));
        EXPECT_NEAR_REL(drop_to(row.number("melting_temp_C")), row.number("melting_voltage_handbook_V"),
                        known == departing.end() ? 0.08 : known->second)
            << row.where();
        if (row.text("verified") == "two-sources") ++seen;
    }
    EXPECT_EQ(seen, 4);
}

// source: same table, handbook softening drops: within 10 %, but for silver, whose 0.09 V is that of 140 degC, not of
// the 180 degC beside it (the table's note)
TEST(VoltageTemperature, HandbookSofteningDrops)
{
    int seen = 0;
    for (const auto& row : test::reference_table("contacts-voltage-temperature.csv").rows()) {
        if (!row.has("softening_voltage_handbook_V")) continue;
        const bool silver = row.text("metal") == "silver";
        EXPECT_NEAR_REL(drop_to(silver ? 140.0 : row.number("softening_temp_C")),
                        row.number("softening_voltage_handbook_V"), 0.10)
            << row.where();
        ++seen;
    }
    EXPECT_EQ(seen, 9);
}

// source: same table, temperatures of the metals this library knows
TEST(VoltageTemperature, MetalsCarryTheTablesTemperatures)
{
    std::map<std::string, test::reference_table::row> rows;
    for (const auto& row : test::reference_table("contacts-voltage-temperature.csv").rows())
        rows.emplace(row.text("metal"), row);
    EXPECT_NEAR(annealed_copper.softening.in_celsius(), rows.at("copper").number("softening_temp_C"), 1e-9);
    EXPECT_NEAR(annealed_copper.melting.in_celsius(), rows.at("copper").number("melting_temp_C"), 1e-9);
    EXPECT_NEAR(tinned_copper.softening.in_celsius(), rows.at("tin").number("softening_temp_C"), 1e-9);
    EXPECT_NEAR(tinned_copper.melting.in_celsius(), rows.at("tin").number("melting_temp_C"), 1e-9);
    EXPECT_NEAR(aluminium.softening.in_celsius(), rows.at("aluminium").number("softening_temp_C"), 1e-9);
    // the table has CuZn37; brass is CuZn30 here, which begins to melt 13 K above it
    // (conductors-material-properties.csv)
    EXPECT_NEAR(brass.melting.in_celsius(), rows.at("brass CuZn37").number("melting_temp_C") + 13.0, 1e-9);
    EXPECT_NEAR(mild_steel.softening.in_celsius(), rows.at("iron / mild steel").number("softening_temp_C"), 1e-9);
    // solidus of the alloy, below the melting point of the pure metal in the table
    EXPECT_LT(mild_steel.melting.in_celsius(), rows.at("iron / mild steel").number("melting_temp_C"));
    EXPECT_LT(aluminium.melting.in_celsius(), rows.at("aluminium").number("melting_temp_C"));
    EXPECT_NEAR(melting_drop(mild_steel, 20_degC).value(), 0.54, 0.005);  // the table's note on the solidus
}

// property: the inverse inverts, also close to the bulk temperature
TEST(VoltageTemperature, DropAndTemperatureAreInverse)
{
    random_numbers random(6);
    for (int i = 0; i < random_cases; ++i) {
        const temperature bulk = temperature::kelvin(random.between(200, 1000));
        const voltage drop = in_si<voltage>(random.log_between(1e-3, 2.0));
        const temperature hot = hot_spot_temperature(drop, bulk);
        EXPECT_GE(hot, bulk);
        EXPECT_NEAR_REL(drop_for_spot_temperature(hot, bulk).value(), drop.value(), 1e-6);
        EXPECT_GT(hot_spot_temperature(1.1 * drop, bulk), hot);
    }
    EXPECT_EQ(hot_spot_temperature(0_V, 77_degC), 77_degC);
    EXPECT_EQ(drop_for_spot_temperature(77_degC, 77_degC).value(), 0.0);
}

TEST(VoltageTemperature, ThePairHasTheLowerDrop)
{
    for (const metal& a : all_metals)
        for (const metal& b : all_metals) {
            EXPECT_EQ(softening_drop(metal_pair{a, b}, 20_degC),
                      std::min(softening_drop(a, 20_degC), softening_drop(b, 20_degC)));
            EXPECT_EQ(melting_drop(metal_pair{a, b}, 20_degC),
                      std::min(melting_drop(a, 20_degC), melting_drop(b, 20_degC)));
            EXPECT_LT(softening_drop(metal_pair{a, b}, 20_degC), melting_drop(metal_pair{a, b}, 20_degC));
        }
}

// limiting case: a bulk beyond softening or melting leaves nothing to go
TEST(VoltageTemperature, HotBulkHasNoDropLeft)
{
    EXPECT_EQ(softening_drop(annealed_copper, 190_degC).value(), 0.0);
    EXPECT_EQ(softening_drop(annealed_copper, 500_degC).value(), 0.0);
    EXPECT_GT(melting_drop(annealed_copper, 500_degC).value(), 0.0);
    EXPECT_EQ(melting_drop(annealed_copper, 1084_degC).value(), 0.0);
    EXPECT_EQ(melting_drop(metal_pair{tinned_copper, mild_steel}, 300_degC).value(), 0.0);
}

TEST(VoltageTemperature, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(hot_spot_temperature(in_si<voltage>(x), 20_degC));
    EXPECT_THROW((void)drop_for_spot_temperature(19_degC, 20_degC), out_of_range_error);
}
