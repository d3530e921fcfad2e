#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/material/surface_state.hpp>

#include "support/reference_table.hpp"

namespace {

using namespace weldloop;

double typical(surface_state s)
{
    return resistance_multiplier(s)->typical;
}

}  // namespace

// source: tests/reference/contacts-surface-condition.csv; judgement throughout, only the pierced paint row has a
// measurement
TEST(SurfaceState, MultipliersAreThoseOfTheTable)
{
    const std::map<std::string, surface_state> states{
        {"clean bright steel, ground or filed", surface_state::clean},
        {"greasy or oily, otherwise clean", surface_state::greasy},
        {"light oxide or handling tarnish", surface_state::oxidized},
        {"galvanised or zinc-plated", surface_state::galvanized},
        {"mill scale, intact, smooth jaw", surface_state::mill_scale},
        {"mill scale, serrated jaw that bites", surface_state::mill_scale_bitten},
        {"light rust", surface_state::light_rust},
        {"heavy rust", surface_state::heavy_rust},
        {"spatter-covered", surface_state::spatter_covered},
        {"painted, pierced by jaw teeth or star washer", surface_state::painted_pierced},
        {"painted, film unbroken", surface_state::painted_unbroken}};
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("contacts-surface-condition.csv").rows()) {
        const std::optional<band<double>> mine = resistance_multiplier(states.at(row.text("surface_condition")));
        if (row.text("multiplier_typical_p50") == "open circuit") {
            EXPECT_FALSE(mine.has_value()) << row.where();
        } else {
            ASSERT_TRUE(mine.has_value()) << row.where();
            EXPECT_EQ(mine->low, row.number("multiplier_low_p05")) << row.where();
            EXPECT_EQ(mine->typical, row.number("multiplier_typical_p50")) << row.where();
            EXPECT_EQ(mine->high, row.number("multiplier_high_p95")) << row.where();
        }
        ++checked;
    }
    EXPECT_EQ(checked, all_surface_states.size());
    EXPECT_EQ(surface_state_judgement.kind, source_kind::judgement);
}

// common practice, no source: what every welder will say of these surfaces, by the medians
TEST(SurfaceState, OrderOfTheMedians)
{
    EXPECT_LT(typical(surface_state::clean), typical(surface_state::oxidized));
    EXPECT_LT(typical(surface_state::oxidized), typical(surface_state::spatter_covered));
    EXPECT_LT(typical(surface_state::spatter_covered), typical(surface_state::light_rust));
    EXPECT_LT(typical(surface_state::light_rust), typical(surface_state::painted_pierced));
    EXPECT_LT(typical(surface_state::painted_pierced), typical(surface_state::heavy_rust));
    EXPECT_FALSE(resistance_multiplier(surface_state::painted_unbroken).has_value());
}
