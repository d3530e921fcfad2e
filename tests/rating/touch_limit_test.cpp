#include <cstddef>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/rating/touch_limit.hpp>

#include "law/contact_fixture.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;

temperature metal_at(double seconds)
{
    return burn_threshold_of(in_si<duration>(seconds), touched_surface::bare_metal).lowest;
}

}  // namespace

// source: tests/reference/heat-touch-temperature.csv, the rows of ISO 13732-1: 1 s on bare metal was read, the others
// are recalled
TEST(TouchLimit, RowsOfTheStandard)
{
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("heat-touch-temperature.csv").rows()) {
        if (!row.text("source").starts_with("ISO 13732-1")) continue;
        const std::string what = row.text("material");
        const bool metal = what.starts_with("bare") || what == "any material";
        if (!metal && !what.starts_with("plastics")) continue;
        const burn_threshold found = burn_threshold_of(in_si<duration>(row.number("contact_time_s")),
                                                       metal ? touched_surface::bare_metal : touched_surface::plastic);
        EXPECT_NEAR(found.lowest.in_celsius(), row.number("temperature_low_C"), 1e-9) << row.where();
        EXPECT_EQ(found.basis.has(source_kind::memory), row.text("verified") == "memory") << row.where();
        ++checked;
    }
    EXPECT_GE(checked, 7U);
}

// source: same table, "time to serious burn" on metal (Shriners table, read): a serious burn needs at least the
// threshold of this law, at every tabulated time
TEST(TouchLimit, StaysBelowSeriousBurns)
{
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("heat-touch-temperature.csv").rows()) {
        if (row.text("limit") != "time to serious burn" || row.text("material") != "metal") continue;
        EXPECT_LE(metal_at(row.number("contact_time_s")).in_celsius(), row.number("temperature_high_C")) << row.where();
        ++checked;
    }
    EXPECT_EQ(checked, 8U);
}

// properties: the longer, the cooler; plastics may be hotter than metal, and no cooler
TEST(TouchLimit, FallsWithTime)
{
    double last = 1e3;
    for (double seconds = 1.0; seconds < 2e5; seconds *= 1.3) {
        const double now = metal_at(seconds).in_celsius();
        EXPECT_LE(now, last);
        EXPECT_GE(burn_threshold_of(in_si<duration>(seconds), touched_surface::plastic).lowest.in_celsius(),
                  now - 1e-9);
        last = now;
    }
    EXPECT_EQ(last, temperature::celsius(43).in_celsius());
    EXPECT_TRUE(may_burn(80_degC, 1_s, touched_surface::bare_metal));
    EXPECT_FALSE(may_burn(80_degC, 1_s, touched_surface::plastic));
    EXPECT_FALSE(may_burn(40_degC, 10_h, touched_surface::bare_metal));
}

TEST(TouchLimit, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(burn_threshold_of(in_si<duration>(x), touched_surface::plastic));
    EXPECT_THROW((void)burn_threshold_of(0.5_s, touched_surface::bare_metal), out_of_range_error);
}
