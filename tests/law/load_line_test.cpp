#include <weldloop/core/literals.hpp>
#include <weldloop/law/load_line.hpp>

#include <limits>

namespace {
using namespace weldloop;

// source: IEC 60974-1, 11.2, as quoted in a welding handbook p. 341: U2 = 20 + 0.04 I (covered electrode), 10 + 0.04 I
// (tungsten), 14 + 0.05 I (wire); the 600 A end of the lines (44, 34 and 44 V) is from memory
TEST(ConventionalLoad, FollowsTheTypeTestLines)
{
    EXPECT_NEAR(conventional_load_voltage(process::smaw, 180_A).value(), 27.2, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::gtaw, 150_A).value(), 16.0, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::gmaw, 240_A).value(), 26.0, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::fcaw, 300_A).value(), 29.0, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::smaw, 600_A).value(), 44.0, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::smaw, 900_A).value(), 44.0, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::gtaw, 700_A).value(), 34.0, 1e-12);
    EXPECT_NEAR(conventional_load_voltage(process::gmaw, 601_A).value(), 44.0, 1e-12);
}

TEST(ConventionalLoad, RefusesWhatCannotBe)
{
    EXPECT_THROW(static_cast<void>(conventional_load_voltage(process::smaw, 0_A)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(conventional_load_voltage(process::smaw,
                                                             in_si<current>(std::numeric_limits<double>::quiet_NaN()))),
                 not_finite_error);
}

TEST(ConventionalLoad, NamesItsSource)
{
    EXPECT_EQ(load_line_source(process::saw).kind, source_kind::memory);
    EXPECT_EQ(load_line_source(process::gmaw).kind, source_kind::standard);
}

}  // namespace
