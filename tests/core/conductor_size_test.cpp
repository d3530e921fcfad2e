// Sizes of conductors.
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/core/text.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using weldloop::test::reference_table;

// The definition to its printed digits; published diameters and circular mils to theirs.
TEST(ConductorSize, HasThePublishedGaugeAreas)
{
    const reference_table table("conductors-awg.csv");
    for (const auto& row : table.rows()) {
        const wl::conductor_size size = wl::parse<wl::conductor_size>(row.text("awg") + " AWG");
        EXPECT_NEAR(wl::number_in(size.area(), "mm2"), row.number("area_exact_mm2"), 0.501e-6) << row.where();
        EXPECT_NEAR(wl::number_in(size.area(), "cmil"), row.number("area_exact_cmil"), 0.501e-4) << row.where();
        // published circular mils: within two units of their last digit, thin wire to three digits
        if (row.has("area_published_cmil")) {
            EXPECT_NEAR_REL(wl::number_in(size.area(), "cmil"), row.number("area_published_cmil"),
                            size < wl::awg(15) ? 1e-3 : 2e-4)
                << row.where();
        }
    }
}

TEST(ConductorSize, ThirtyNineStepsSpanANinetyTwofoldDiameter)
{
    const double ratio = std::sqrt((wl::aught(4).area() / wl::awg(36).area()).value());
    EXPECT_NEAR_REL(ratio, 92.0, 1e-13);
    EXPECT_NEAR_REL(wl::number_in(wl::aught(4).area(), "cmil"), 460.0 * 460.0, 1e-12);
    EXPECT_NEAR_REL(wl::number_in(wl::awg(36).area(), "cmil"), 25.0, 1e-12);
}

TEST(ConductorSize, OrdersByArea)
{
    const std::vector<wl::conductor_size> rising{
        wl::awg(40),       wl::awg(4),         wl::square_mm(25), wl::awg(2),         wl::awg(1),
        wl::square_mm(50), wl::aught(1),       wl::aught(2),      wl::square_mm(70),  wl::aught(3),
        wl::aught(4),      wl::square_mm(120), wl::kcmil(250),    wl::square_mm(150), wl::kcmil(500)};
    for (std::size_t i = 1; i < rising.size(); ++i) EXPECT_LT(rising[i - 1], rising[i]) << wl::to_text(rising[i]);
    EXPECT_EQ(wl::awg(2), wl::awg(2));
    EXPECT_FALSE(wl::awg(2) == wl::awg(1));
    static_assert(wl::aught(2) > wl::awg(1));
    static_assert(wl::square_mm(70).area().value() > 69e-6);
}

TEST(ConductorSize, RemembersHowItWasWritten)
{
    for (const std::string text :
         {"4 AWG", "1 AWG", "1/0 AWG", "4/0 AWG", "250 kcmil", "70 mm2", "2.5 mm2", "313.1 kcmil"})
        EXPECT_EQ(wl::to_text(wl::parse<wl::conductor_size>(text)), text);
    EXPECT_EQ(wl::aught(2).scale(), wl::size_scale::aught);
    EXPECT_EQ(wl::aught(2).number(), 2.0);
}

TEST(ConductorSize, RefusesWhatAScaleDoesNotHave)
{
    const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
    EXPECT_THROW((void)wl::awg(0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::awg(41), wl::out_of_range_error);
    EXPECT_THROW((void)wl::awg(-1), wl::out_of_range_error);
    EXPECT_THROW((void)wl::aught(0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::aught(5), wl::out_of_range_error);
    EXPECT_THROW((void)wl::conductor_size(wl::size_scale::awg, 2.5), wl::out_of_range_error);
    EXPECT_THROW((void)wl::conductor_size(wl::size_scale::aught, 1.5), wl::out_of_range_error);
    EXPECT_THROW((void)wl::kcmil(0.5), wl::out_of_range_error);
    EXPECT_THROW((void)wl::kcmil(5001), wl::out_of_range_error);
    EXPECT_THROW((void)wl::square_mm(0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::square_mm(-70), wl::out_of_range_error);
    EXPECT_THROW((void)wl::square_mm(2501), wl::out_of_range_error);
    for (const double bad : {nan, inf, -inf}) {
        EXPECT_THROW((void)wl::kcmil(bad), wl::not_finite_error);
        EXPECT_THROW((void)wl::square_mm(bad), wl::not_finite_error);
        EXPECT_THROW((void)wl::conductor_size(wl::size_scale::awg, bad), wl::not_finite_error);
    }
    EXPECT_THROW((void)wl::conductor_size(wl::size_scale::awg, 1e300), wl::out_of_range_error);
}
