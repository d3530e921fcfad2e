// Small published tables of contacts that belong to no single law.
#include <cstddef>
#include <map>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/metals.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
}

// source: tests/reference/contacts-constants.csv: the Lorenz number of theory from the exact constants, the value
// contact practice writes, and 0.102 for one over the standard gravity
TEST(ContactTables, Constants)
{
    constexpr double boltzmann = 1.380649e-23, charge = 1.602176634e-19;  // exact, SI 2019
    const double theory = std::numbers::pi * std::numbers::pi / 3.0 * (boltzmann / charge) * (boltzmann / charge);
    int checked = 0;
    for (const auto& row : test::reference_table("contacts-constants.csv").rows()) {
        const std::string what = row.text("constant");
        if (what.starts_with("Lorenz number, Sommerfeld")) {
            EXPECT_NEAR_REL(theory, row.number("value"), 1e-4);
            EXPECT_NEAR_REL(lorenz_number, row.number("value"), 0.002);
            ++checked;
        } else if (what.starts_with("Lorenz number used")) {
            EXPECT_GE(lorenz_number, 2.4e-8);
            EXPECT_LE(lorenz_number, 2.45e-8);
            ++checked;
        } else if (what == "kgf per newton") {
            EXPECT_NEAR(detail::kgf_per_newton, row.number("value"), 0.5e-3);
            ++checked;
        }
    }
    EXPECT_EQ(checked, 3);
}

// source: tests/reference/contacts-metal-properties.csv. Copper and aluminium: IEC 60028 and IEC 60287-1-1, two
// sources; the hardness of all and the rest of the rows are recalled from Holm and only compared: the library takes
// resistivities of brass and steel from material data that were read (conductors-resistivity.csv), within the ranges of
// the notes. The tin of the coat gives its hardness, the copper under it the resistivity. Iron, silver, zinc, nickel
// and tungsten are no metals of the library; the rows serve the checks of force_law_test.cpp and
// voltage_temperature_test.cpp.
TEST(ContactTables, MetalProperties)
{
    const std::map<std::string, const metal*> known{{"copper (IACS annealed)", &annealed_copper},
                                                    {"aluminium EC", &aluminium},
                                                    {"mild structural steel", &mild_steel},
                                                    {"brass CuZn37", &brass},
                                                    {"tin", &tinned_copper}};
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("contacts-metal-properties.csv").rows()) {
        const auto at = known.find(row.text("metal"));
        if (at == known.end()) continue;
        const metal& m = *at->second;
        EXPECT_NEAR_REL(m.hardness_low.value(), row.number("indentation_hardness_low_Pa"), 1e-12) << m.name;
        EXPECT_NEAR_REL(m.hardness_high.value(), row.number("indentation_hardness_high_Pa"), 1e-12) << m.name;
        EXPECT_GT(m.hardness, m.hardness_low) << m.name;
        EXPECT_LT(m.hardness, m.hardness_high) << m.name;
        if (row.text("verified") == "two-sources") {
            EXPECT_NEAR_REL(m.resistivity.value(), row.number("resistivity_20C_ohm_m"), 5e-5) << m.name;  // printed
            EXPECT_NEAR_REL(m.temperature_coefficient.value(), row.number("temp_coeff_20C_per_K"), 1e-12) << m.name;
        } else if (m != tinned_copper) {
            EXPECT_NEAR_REL(m.resistivity.value(), row.number("resistivity_20C_ohm_m"), 0.05) << m.name;
        }
        ++checked;
    }
    EXPECT_EQ(checked, known.size());
}

// source: tests/reference/contacts-steel-sheet.csv: the four rows computed from K. The recalled rows at 2500 N are
// orders of magnitude: the law's band of the same surface must overlap theirs. Two rows tell a trend and have no
// number.
TEST(ContactTables, SteelSheet)
{
    std::size_t computed = 0, recalled = 0;
    for (const auto& row : test::reference_table("contacts-steel-sheet.csv").rows()) {
        const std::string what = row.text("material_state");
        if (what.starts_with("K-law")) {
            const metal& other = what.find("copper") != std::string::npos ? annealed_copper : mild_steel;
            const double m = std::stod(what.substr(what.find("m=") + 2));
            const resistance r = force_law_resistance(force_law_constant(mild_steel, other).constant.typical, m,
                                                      in_si<force>(row.number("force_N")));
            EXPECT_NEAR(r.value() * 1e6, row.number("resistance_typical_microohm"), 0.5) << what;
            ++computed;
        } else if (row.has("resistance_typical_microohm")) {
            const surface_state s = what.starts_with("zinc")         ? surface_state::galvanized
                                    : what.starts_with("hot-rolled") ? surface_state::mill_scale
                                                                     : surface_state::clean;
            const double ohms = force_law_resistance(7600, 0.7, in_si<force>(row.number("force_N"))).value() * 1e6;
            const band<double> multiplier = *resistance_multiplier(s);
            EXPECT_LT(ohms * multiplier.low, row.number("resistance_high_microohm")) << what;
            EXPECT_GT(ohms * multiplier.high, row.number("resistance_low_microohm")) << what;
            ++recalled;
        }
    }
    EXPECT_EQ(computed, 4U);
    EXPECT_EQ(recalled, 3U);
}
