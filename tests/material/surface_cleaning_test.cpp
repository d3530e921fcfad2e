#include <gtest/gtest.h>

#include <weldloop/material/surface_cleaning.hpp>

#include "support/reference_table.hpp"

namespace {

using namespace weldloop;

double median(surface_state s)
{
    const auto m = resistance_multiplier(s);
    return m ? m->typical : 1e30;
}

}  // namespace

// common practice, no source: no treatment makes a surface worse; the one exception is grinding zinc away
TEST(SurfaceCleaning, NeverMakesItWorse)
{
    for (const surface_state s : all_surface_states)
        for (const surface_treatment t : all_surface_treatments) {
            if (s == surface_state::galvanized && t == surface_treatment::ground_bright) continue;
            EXPECT_LE(median(surface_after(s, t)), median(s)) << to_text(s) << ", " << to_text(t);
        }
}

// common practice, no source: scratching bright helps everything; a brush does nothing to spatter, scale and paint;
// teeth make an open circuit of paint conduct
TEST(SurfaceCleaning, WhatEachTreatmentDoes)
{
    for (const surface_state s : all_surface_states)
        EXPECT_EQ(surface_after(s, surface_treatment::ground_bright), surface_state::clean);
    for (const surface_state s :
         {surface_state::spatter_covered, surface_state::mill_scale, surface_state::painted_unbroken})
        EXPECT_EQ(surface_after(s, surface_treatment::wire_brushed), s);
    EXPECT_EQ(surface_after(surface_state::painted_unbroken, surface_treatment::serrated_jaw),
              surface_state::painted_pierced);
    EXPECT_EQ(surface_after(surface_state::mill_scale, surface_treatment::serrated_jaw),
              surface_state::mill_scale_bitten);
    EXPECT_LT(median(surface_after(surface_state::light_rust, surface_treatment::wire_brushed)),
              median(surface_state::light_rust));
    EXPECT_EQ(surface_after(surface_state::greasy, surface_treatment::wiped), surface_state::clean);
    EXPECT_EQ(surface_after(surface_state::oxidized, surface_treatment::twisted), surface_state::clean);
    EXPECT_EQ(surface_treatment_judgement.kind, source_kind::judgement);
}

// source: tests/reference/contacts-films.csv, the two rows of effects on resistance (judgement)
TEST(SurfaceCleaning, EffectsOfTheTable)
{
    int checked = 0;
    for (const auto& row : test::reference_table("contacts-films.csv").rows()) {
        if (!row.text("quantity").starts_with("effect on resistance")) continue;
        const bool grease = row.text("film").starts_with("oil");
        const band<double> mine = grease ? *resistance_multiplier(surface_state::greasy) : abrasion_of_copper;
        EXPECT_EQ(mine.typical, row.number("typical"));
        EXPECT_EQ(mine.high, row.number("high"));
        // grease on steel carries the wider spread of clean steel below its median
        EXPECT_LE(mine.low, row.number("low"));
        ++checked;
    }
    EXPECT_EQ(checked, 2);
}
