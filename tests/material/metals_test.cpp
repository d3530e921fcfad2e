#include <cmath>
#include <map>
#include <set>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include <weldloop/material/metals.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using weldloop::test::reference_table;

namespace {

const metal& clad_of(double percent)
{
    return percent == 10 ? copper_clad_aluminium_10 : copper_clad_aluminium_15;
}

}  // namespace

// source: standards and data pages by row (see the file); only rows that a metal of the table was taken from
TEST(Metals, ResistivityIsThePublishedOne)
{
    int rows = 0, skipped = 0;
    for (const auto& row : reference_table("conductors-resistivity.csv").rows()) {
        const std::string& name = row.text("material");
        const metal* m = name == "copper annealed (IACS)"               ? &annealed_copper
                         : name == "aluminium hard drawn (IEC 60889)"   ? &aluminium
                         : name == "brass C26000 annealed"              ? &brass
                         : name == "steel SAE 1010"                     ? &mild_steel
                         : name.starts_with("copper-clad aluminium 10") ? &copper_clad_aluminium_10
                         : name.starts_with("copper-clad aluminium 15") ? &copper_clad_aluminium_15
                                                                        : nullptr;
        if (name == "stainless 304" && row.text("condition") == "20 C") m = &stainless_steel;
        if (m == nullptr) {
            ++skipped;
            continue;
        }
        EXPECT_NEAR_REL(m->resistivity.value() * 1e9, row.number("resistivity_20C_nohm_m"), 3e-5) << row.where();
        EXPECT_NEAR_REL(100 * annealed_copper.resistivity.value() / m->resistivity.value(),
                        row.number("conductivity_pct_IACS"), 3e-3)
            << row.where();
        if (row.has("alpha_20C_per_K")) {
            EXPECT_NEAR_REL(m->temperature_coefficient.value(), row.number("alpha_20C_per_K"), 1e-12) << row.where();
        }
        ++rows;
    }
    EXPECT_EQ(rows, 7);
    EXPECT_EQ(skipped, 25);  // alloys, tempers, temperatures and pure metals that no metal of the library is
}

// source: standards and data pages by row (see the file; one or two sources), the rows that a metal of the table was
// taken from. Skipped: the other alloys and tempers, expansion and hardness of whole objects (contact hardness has its
// own table), and the clad wires, which the next test has. One figure is not that of the page: copper melts at 1084
// degC by the temperature scale of 1990, where the page has 1083 of the older scale.
TEST(Metals, BulkPropertiesAreThePublishedOnes)
{
    const std::map<std::string, const metal*> sheets{
        {"copper (IACS standard)", &annealed_copper}, {"copper (bus, IACS)", &annealed_copper},
        {"aluminium 1350-H14", &aluminium},           {"brass C26000", &brass},
        {"phosphor bronze C51000", &bronze},          {"steel SAE 1010", &mild_steel},
        {"stainless 304 annealed", &stainless_steel}};
    constexpr double scale_of_1990 = 1.0;  // K
    int used = 0, skipped = 0;
    for (const auto& row : reference_table("conductors-material-properties.csv").rows()) {
        const std::string& name = row.text("material");
        const bool is_copper_sheet = name == "copper wrought, typical" && row.has("thermal_conductivity_W_mK");
        const auto found = sheets.find(name);
        const bool is_other_bronze =
            name == "phosphor bronze C51000" && row.number("thermal_conductivity_W_mK") != 77;  // 15 and 20 % IACS
        if ((found == sheets.end() && !is_copper_sheet) || is_other_bronze) {
            ++skipped;
            continue;
        }
        const metal& m = is_copper_sheet ? annealed_copper : *found->second;
        if (!is_copper_sheet) {  // 8.92 there is wrought metal; the standard's 8.89 stands in two rows of its own
            EXPECT_NEAR(m.density.value() / 1000, row.number("density_g_cm3"), 1e-9) << row.where();
        }
        if (row.has("specific_heat_J_kgK")) {
            EXPECT_NEAR(m.specific_heat.value(), row.number("specific_heat_J_kgK"), 1e-9) << row.where();
        }
        if (row.has("thermal_conductivity_W_mK")) {
            EXPECT_NEAR(m.thermal_conductivity.value(), row.number("thermal_conductivity_W_mK"), 1e-9) << row.where();
        }
        if (row.has("solidus_C")) {
            EXPECT_NEAR(m.melting.in_celsius(), row.number("solidus_C"), 0.1 + 1e-9) << row.where();
            EXPECT_LE(m.melting.in_celsius(), row.number("solidus_C") + 1e-9) << row.where();
        } else if (is_copper_sheet) {
            EXPECT_NEAR(m.melting.in_celsius(), row.number("liquidus_or_melting_C"), scale_of_1990 + 1e-9)
                << row.where();
        }
        ++used;
    }
    EXPECT_EQ(used, 8);
    EXPECT_EQ(skipped, 18);
}

// source: ASTM B566 density (one source, read): 3.32 and 3.63; the mixture rule gives it
TEST(Metals, CladDensityIsThePublishedOne)
{
    int rows = 0;
    for (const auto& row : reference_table("conductors-material-properties.csv").rows()) {
        const std::string& name = row.text("material");
        if (!name.starts_with("copper-clad aluminium")) continue;
        const metal& m = clad_of(name.find("10 vol") != std::string::npos ? 10 : 15);
        EXPECT_NEAR(m.density.value() / 1000, row.number("density_g_cm3"), 0.006) << row.where();
        ++rows;
    }
    EXPECT_EQ(rows, 2);
}

// The limit of the standard lies above the mixture of soft copper and aluminium, by some 4 %
TEST(Metals, CladLiesBetweenItsParts)
{
    for (const double percent : {10.0, 15.0}) {
        const metal& m = clad_of(percent);
        const double share = percent / 100;
        const double mixture =
            1.0 / (share / annealed_copper.resistivity.value() + (1 - share) / aluminium.resistivity.value());
        EXPECT_GT(m.resistivity.value(), mixture);
        EXPECT_LT(m.resistivity.value(), 1.045 * mixture);
        EXPECT_GT(m.temperature_coefficient, annealed_copper.temperature_coefficient);
        EXPECT_LT(m.temperature_coefficient, aluminium.temperature_coefficient);
        EXPECT_GT(m.thermal_conductivity, aluminium.thermal_conductivity);
        EXPECT_LT(m.thermal_conductivity, annealed_copper.thermal_conductivity);
        EXPECT_NEAR_REL(m.heat_per_volume().value(),
                        share * annealed_copper.heat_per_volume().value() +
                            (1 - share) * aluminium.heat_per_volume().value(),
                        1e-14);
        EXPECT_EQ(m.hardness, annealed_copper.hardness);
        EXPECT_EQ(m.softening, annealed_copper.softening);
        EXPECT_EQ(m.melting, aluminium.melting);
    }
    // rule of mixtures as the reference states it, in % IACS
    const double percent_iacs = 100 * (0.10 + 0.90 * (annealed_copper.resistivity / aluminium.resistivity).value());
    EXPECT_NEAR(percent_iacs, 64.9, 0.05);
}

TEST(Metals, EveryMetalIsWholeAndItsOwn)
{
    std::set<std::string_view> names;
    for (const metal& m : all_metals) {
        EXPECT_TRUE(names.insert(m.name).second) << m.name;
        for (const double v : {m.resistivity.value(), m.temperature_coefficient.value(), m.density.value(),
                               m.specific_heat.value(), m.thermal_conductivity.value(), m.hardness_low.value()})
            EXPECT_TRUE(std::isfinite(v) && v > 0.0) << m.name;
        EXPECT_LE(m.hardness_low, m.hardness);
        EXPECT_LE(m.hardness, m.hardness_high);
        EXPECT_LT(m.softening, m.melting) << m.name;
        EXPECT_NE(m.electrical_source, nullptr);
        EXPECT_NE(m.thermal_source, nullptr);
        EXPECT_NE(m.contact_source, nullptr);
    }
    EXPECT_EQ(names.size(), 9U);
}
