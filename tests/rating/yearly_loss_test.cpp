#include <weldloop/core/literals.hpp>
#include <weldloop/rating/yearly_loss.hpp>

#include <limits>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

// by hand: 1.2 kW over 800 h are 960 kWh; a tenth slower takes a ninth longer
TEST(YearlyLoss, EnergyAndTime)
{
    const yearly_loss y =
        yearly_loss_of({.lost = 1.2_kW, .arc_time = 800_h, .slower = 0.1, .tariff = 0.25, .hour_cost = 45.0});
    EXPECT_NEAR_REL(y.lost.value(), 960.0 * 3.6e6, 1e-12);
    EXPECT_NEAR_REL(*y.energy_cost, 240.0, 1e-12);
    EXPECT_NEAR_REL(y.arc_time.value(), 800.0 / 9.0 * 3600.0, 1e-12);
    EXPECT_NEAR_REL(*y.time_cost, 45.0 * 800.0 / 9.0, 1e-12);
}

TEST(YearlyLoss, NoMoneyWithoutItsPrice)
{
    const yearly_loss y = yearly_loss_of({.lost = 1.2_kW, .arc_time = 800_h});
    EXPECT_FALSE(y.energy_cost);
    EXPECT_FALSE(y.time_cost);
    EXPECT_EQ(y.arc_time, 0_s);
    EXPECT_EQ(*yearly_loss_of({.lost = 0_W, .arc_time = 1_h, .tariff = 0.3}).energy_cost, 0.0);
}

TEST(YearlyLoss, RefusesWhatCannotBe)
{
    EXPECT_THROW(static_cast<void>(yearly_loss_of({.lost = in_si<power>(-1.0), .arc_time = 1_h})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(yearly_loss_of({.lost = 1_W, .arc_time = 9000_h})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(yearly_loss_of({.lost = 1_W, .arc_time = 1_h, .slower = 1.0})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(yearly_loss_of({.lost = 1_W, .arc_time = 1_h, .tariff = -0.1})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(yearly_loss_of(
                     {.lost = 1_W, .arc_time = 1_h, .hour_cost = std::numeric_limits<double>::quiet_NaN()})),
                 not_finite_error);
}

}  // namespace
