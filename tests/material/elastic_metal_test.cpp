#include <gtest/gtest.h>

#include <weldloop/material/elastic_metal.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
}

// source: tests/reference/springs-moduli.csv, wire of phosphor bronze (B159) and of 18-8 stainless (A313): another
// table than the one the moduli were recalled from. Wire and bar of one metal differ by up to 8 %. The other metals
// have no row there: they rest on memory alone, and say so.
TEST(ElasticMetal, AgreesWithTheMetalsOfSprings)
{
    int checked = 0;
    for (const auto& row : test::reference_table("springs-moduli.csv").rows()) {
        const metal* m = row.text("wire") == "phosphor bronze B159" ? &bronze
                         : row.text("wire") == "302 stainless A313" ? &stainless_steel
                                                                    : nullptr;
        if (m == nullptr) continue;
        EXPECT_NEAR_REL(elasticity_of(*m).youngs.value(), row.number("E_GPa") * 1e9, 0.08) << row.where();
        ++checked;
    }
    EXPECT_EQ(checked, 2);
}

TEST(ElasticMetal, EveryRowCanBe)
{
    for (const elastic_metal& m : elastic_metals) {
        EXPECT_GT(m.youngs.value(), 50e9) << m.name;
        EXPECT_LT(m.youngs.value(), 250e9) << m.name;
        EXPECT_GT(m.poisson, 0.25) << m.name;
        EXPECT_LT(m.poisson, 0.40) << m.name;
        EXPECT_EQ(m.from->kind, source_kind::memory) << m.name;
    }
    EXPECT_THROW((void)elasticity_of(copper_clad_aluminium_15), missing_data_error);
    EXPECT_EQ(elasticity_of(tinned_copper).youngs, elasticity_of(annealed_copper).youngs);
}
