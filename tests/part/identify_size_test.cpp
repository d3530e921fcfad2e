#include <algorithm>
#include <limits>
#include <random>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/identify_size.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

bool holds(const std::vector<size_candidate>& found, const conductor_size& size)
{
    return std::any_of(found.begin(), found.end(), [&](const size_candidate& c) { return c.size == size; });
}

}  // namespace

TEST(IdentifySize, EveryRowFindsItselfFirst)
{
    for (const strand_class c : {strand_class::rope_k, strand_class::rope_m})
        for (const rope_lay_row& row : c == strand_class::rope_k ? class_k_conductors : class_m_conductors) {
            const conductor_build build = conductor_build_of(row.size, c);
            const auto found = identify_size({.conductor_diameter = build.conductor_diameter,
                                              .strands = build.strands,
                                              .strand_diameter = build.strand});
            EXPECT_EQ(found.front().size, row.size);
            EXPECT_EQ(found.front().stranding, c);
            EXPECT_NEAR(found.front().misfit, 0.0, 1e-9);
            EXPECT_TRUE(holds(identify_size({.strands = build.strands}), row.size));
        }
    for (const lead_row& row : lead_table) {
        const auto found = identify_size({.conductor_diameter = in_si<length>(row.conductor_mm * 1e-3)});
        EXPECT_TRUE(holds(found, square_mm(row.area_mm2)));
        EXPECT_NEAR(found.front().misfit, 0.0, 0.15);  // a class K conductor may be as thick
    }
}

// 2107 strands are 4/0 of class K or 1 AWG of class M: the strand decides
TEST(IdentifySize, StrandDecidesBetweenTheClasses)
{
    EXPECT_EQ(identify_size({.strands = 2107}).size(), 2U);
    EXPECT_EQ(identify_size({.strands = 2107, .strand_diameter = 0.25_mm}).front().size, aught(4));
    EXPECT_EQ(identify_size({.strands = 2107, .strand_diameter = 0.16_mm}).front().size, awg(1));
}

// 396 strands of 0.40 mm are the usual make of 50 mm2 class 5 (public stranding tables)
TEST(IdentifySize, MetricByStrands)
{
    const auto found = identify_size({.strands = 396, .strand_diameter = 0.40_mm});
    EXPECT_EQ(found.front().size, square_mm(50));
    EXPECT_EQ(found.front().stranding, strand_class::class_5);
    EXPECT_NEAR(found.front().area_error.value(), -0.005, 0.001);
    EXPECT_EQ(identify_size({.strands = 1590, .strand_diameter = 0.20_mm}).front().stranding, strand_class::class_6);
}

TEST(IdentifySize, DiameterAloneMayFitAnAmericanAndAMetricSize)
{
    const auto found = identify_size({.conductor_diameter = 12_mm});
    EXPECT_TRUE(holds(found, square_mm(70)));
    EXPECT_TRUE(holds(found, aught(2)));
    EXPECT_TRUE(
        std::is_sorted(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.misfit < b.misfit; }));
    for (const size_candidate& c : found) {
        EXPECT_LE(c.misfit, 1.0);
        EXPECT_NEAR(std::fabs(c.diameter_error.value()), c.misfit * diameter_tolerance, 1e-12);
        EXPECT_FALSE(c.area_error);
    }
}

TEST(IdentifySize, ReadingsWithinTheirToleranceFindTheirSize)
{
    std::mt19937 random(31);
    std::uniform_real_distribution<double> error(-0.9, 0.9);
    for (int n = 0; n < 200; ++n)
        for (const rope_lay_row& row : class_k_conductors) {
            const conductor_reading r{
                .conductor_diameter = (row.diameter_in * (1 + diameter_tolerance * error(random))) * 1_in,
                .strands = row.strands + static_cast<int>(error(random)),
                .strand_diameter = class_k_strand * (1 + strand_diameter_tolerance * error(random))};
            EXPECT_TRUE(holds(identify_size(r), row.size));
        }
}

TEST(IdentifySize, SaysWhenNothingFits)
{
    EXPECT_THROW((void)identify_size({}), missing_data_error);
    EXPECT_THROW((void)identify_size({.strand_diameter = 0.25_mm}), missing_data_error);
    EXPECT_THROW((void)identify_size({.conductor_diameter = 3_mm}), missing_data_error);
    EXPECT_THROW((void)identify_size({.conductor_diameter = 60_mm}), missing_data_error);
    EXPECT_THROW((void)identify_size({.strands = 19}), missing_data_error);
    EXPECT_THROW((void)identify_size({.conductor_diameter = 12_mm, .strands = 1323, .strand_diameter = 0.5_mm}),
                 missing_data_error);
    try {
        (void)identify_size({.conductor_diameter = 60_mm, .strands = 7, .strand_diameter = 2_mm});
        FAIL();
    } catch (const missing_data_error& e) {
        EXPECT_EQ(e.value(), "60 mm over the strands, 7 strands of 2 mm");
    }
}

TEST(IdentifySize, RefusesWhatCannotBe)
{
    for (double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        EXPECT_THROW((void)identify_size({.conductor_diameter = in_si<length>(bad)}), not_finite_error);
        EXPECT_THROW((void)identify_size({.strands = 1323, .strand_diameter = in_si<length>(bad)}), not_finite_error);
    }
    EXPECT_THROW((void)identify_size({.conductor_diameter = -1.0 * 1_mm}), out_of_range_error);
    EXPECT_THROW((void)identify_size({.conductor_diameter = 0_mm}), out_of_range_error);
    EXPECT_THROW((void)identify_size({.strands = 0}), out_of_range_error);
    EXPECT_THROW((void)identify_size({.strands = -1}), out_of_range_error);
    EXPECT_THROW((void)identify_size({.strands = 1323, .strand_diameter = -1.0 * 1_mm}), out_of_range_error);
}
