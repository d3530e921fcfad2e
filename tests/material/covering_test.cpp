// Coverings against the published thermal resistivities and volumetric heats.
#include <algorithm>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>

#include "support/near.hpp"
#include "support/printed_formula.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using weldloop::test::reference_table;

// source: IEC 60287-2-1 table 1 (two sources); printed to two digits, taken as they are. Skipped: insulations and
// coverings of cables above 3 kV and 35 kV, jute and paper, which no welding lead has; chlorosulphonated polyethylene,
// which the standard does not list and the table only has by analogy (from memory).
TEST(Covering, ThermalResistivities)
{
    const std::map<std::string, const covering*> ours{{"XLPE", &xlpe},
                                                      {"PE", &xlpe},
                                                      {"rubber", &flexible_rubber},
                                                      {"butyl rubber", &flexible_rubber},
                                                      {"EPR", &ethylene_propylene},
                                                      {"polychloroprene", &polychloroprene},
                                                      {"PVC", &pvc}};
    int used = 0, skipped = 0;
    for (const auto& row : reference_table("heat-cable-thermal-resistivity.csv").rows()) {
        const std::string& use = row.text("use");
        const bool for_high_voltage = use.find("above") != std::string::npos;
        const auto found = ours.find(row.text("material"));
        if (found == ours.end() || for_high_voltage || row.text("verified") == "memory") {
            ++skipped;
            continue;
        }
        EXPECT_NEAR_REL(1.0 / found->second->thermal_conductivity.value(), row.number("rho_T_Km_per_W"), 1e-12)
            << row.where();
        ++used;
    }
    EXPECT_EQ(used, 8);
    EXPECT_EQ(skipped, 6);
    EXPECT_EQ(iec_60287_2_1_table_1.kind, source_kind::standard);
}

// source: IEC 60853-2, annex (the whole table from memory), beside density times specific heat of handbooks. The other
// checks are the densities and specific heats of metals_test.cpp; for coverings there is none, and the source of theirs
// says so. Metals: the library has density times specific heat, which must lie between the two columns, give or take
// the printed digits and the 0.5 % by which published densities of copper differ (8890 kg/m3 of the annealed standard,
// which the library has, and 8933 behind the table; copper comes out 0.1 % below both columns for that reason).
// Skipped: lead and impregnated paper, which no welding circuit has.
TEST(Covering, HeatPerVolume)
{
    const std::map<std::string, const metal*> metals{
        {"copper", &annealed_copper}, {"aluminium", &aluminium}, {"steel", &mild_steel}, {"brass/bronze", &brass}};
    const std::map<std::string, const covering*> coverings{
        {"XLPE, PE", &xlpe}, {"PVC", &pvc}, {"EPR, rubber", &flexible_rubber}};
    int metal_rows = 0, covering_rows = 0, skipped = 0;
    for (const auto& row : reference_table("heat-volumetric-heat-capacity.csv").rows()) {
        const double standard = row.number("volumetric_heat_capacity_J_per_m3K");
        if (const auto m = metals.find(row.text("material")); m != metals.end()) {
            const std::string& column = row.text("check_from_rho_times_cp_J_per_m3K");
            const double handbook = std::stod(column);
            // "3.44e6" or "3.5e6": half of the last digit of the coarser column
            const double rounding =
                row.text("volumetric_heat_capacity_J_per_m3K").size() == 6 && column.find("e6") == 4 ? 0.005e6 : 0.05e6;
            const double here = m->second->heat_per_volume().value();
            constexpr double spread_of_densities = 8933.0 / 8890.0 - 1.0;
            EXPECT_GE(here, std::min(standard, handbook) * (1.0 - spread_of_densities) - rounding) << row.where();
            EXPECT_LE(here, std::max(standard, handbook) * (1.0 + spread_of_densities) + rounding) << row.where();
            ++metal_rows;
        } else if (const auto c = coverings.find(row.text("material")); c != coverings.end()) {
            EXPECT_EQ(c->second->heat_per_volume.value(), standard) << row.where();
            if (c->second == &flexible_rubber) {
                EXPECT_EQ(ethylene_propylene.heat_per_volume.value(), standard) << row.where();
                EXPECT_EQ(polychloroprene.heat_per_volume.value(), standard) << row.where();
            }
            ++covering_rows;
        } else {
            ++skipped;
        }
    }
    EXPECT_EQ(metal_rows, 4);
    EXPECT_EQ(covering_rows, 3);
    EXPECT_EQ(skipped, 2);
    EXPECT_EQ(iec_60853_heat.kind, source_kind::memory);
}
