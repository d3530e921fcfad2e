// The unit table, text output and the literals.
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/core/unit_text.hpp>

#include "core/every_quantity.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

// GNU Units, see the head of the table: every row of the unit table, and no row too many.
TEST(UnitTable, AgreesWithAnIndependentProgram)
{
    std::set<std::pair<std::string, std::string>> checked;
    const reference_table table("unit-factors.csv");
    for (const auto& row : table.rows()) {
        const std::string& kind = row.text("kind");
        bool known = false;
        weldloop::test::for_every_quantity([&]<class Q>(Q, std::string_view name) {
            if (name != kind) return;
            known = true;
            EXPECT_NEAR_REL(wl::unit_of<Q>::at_run_time(row.text("unit")).in_si(), row.number("factor"), 1e-14)
                << row.where();
        });
        EXPECT_TRUE(known) << row.where();
        checked.emplace(kind, row.text("unit"));
    }
    EXPECT_EQ(checked.size(), wl::detail::unit_table.size());
}

TEST(UnitTable, BeginsEveryKindWithItsCoherentUnit)
{
    weldloop::test::for_every_quantity([]<class Q>(Q, std::string_view name) {
        const wl::detail::unit_row* const first = wl::detail::coherent_unit(wl::detail::kind_of<Q>);
        ASSERT_NE(first, nullptr) << name;
        EXPECT_EQ(first->in_si, 1.0) << name;
        EXPECT_EQ(wl::si_text(wl::in_si<Q>(2.5)), "2.5 " + std::string(first->name));
    });
}

TEST(UnitTable, HasNoNameTwiceWithinAKind)
{
    std::set<std::pair<int, std::string_view>> seen;
    for (const wl::detail::unit_row& row : wl::detail::unit_table) {
        EXPECT_TRUE(seen.emplace(static_cast<int>(row.kind), row.name).second) << row.name;
        EXPECT_NE(row.kind, wl::quantity_kind::other);
    }
}

TEST(Text, IsInTheUnitAskedFor)
{
    EXPECT_EQ(wl::to_text(1.9449_V, "V"), "1.94 V");
    EXPECT_EQ(wl::to_text(1.9449_V, "mV"), "1945 mV");
    EXPECT_EQ(wl::to_text(50_ft, "m"), "15.2 m");
    EXPECT_EQ(wl::to_text(50_ft, "m", 4), "15.24 m");
    EXPECT_EQ(wl::to_text(378.4e-6 * 1_ohm, "uohm"), "378 uohm");
    EXPECT_EQ(wl::to_text(2_h, "min"), "120 min");
    EXPECT_EQ(wl::to_text(85_degC, "degC"), "85 degC");
    EXPECT_EQ(wl::to_text(85_degC, "degF"), "185 degF");
    EXPECT_EQ(wl::to_text(85_degC, "K", 5), "358.15 K");
    EXPECT_EQ(wl::to_text(wl::temperature::celsius(-10), "degC"), "-10 degC");
    EXPECT_NEAR_REL(wl::number_in(1_lbf_ft, "Nm"), 1.3558179483314004, 1e-15);
    EXPECT_EQ(wl::to_text(0.0 * -1_V, "V"), "0 V");
}

TEST(Text, RefusesAUnitOfAnotherQuantityAtRunTime)
{
    EXPECT_EQ(wl::unit_of<wl::voltage>::at_run_time("mV").name(), "mV");
    EXPECT_THROW((void)wl::unit_of<wl::voltage>::at_run_time("A"), wl::out_of_range_error);
    EXPECT_THROW((void)wl::unit_of<wl::voltage>::at_run_time(""), wl::out_of_range_error);
    EXPECT_EQ(wl::temperature_scale::at_run_time("degF").name(), "degF");
    EXPECT_THROW((void)wl::temperature_scale::at_run_time("C"), wl::out_of_range_error);
    try {
        (void)wl::unit_of<wl::duration>::at_run_time("hours");
        ADD_FAILURE();
    } catch (const wl::error& e) {
        EXPECT_EQ(e.value(), "hours");
        EXPECT_EQ(e.allowed(), "s, ms, min, h");
    }
}

TEST(Literals, AreTheTablesUnits)
{
    EXPECT_EQ(240_A, wl::in_si<wl::current>(240.0));
    EXPECT_EQ(2.5_kA, wl::in_si<wl::current>(2500.0));
    EXPECT_NEAR_REL((50_ft).value(), 15.24, 1e-15);
    EXPECT_NEAR_REL((2_in).value(), 0.0508, 1e-15);
    EXPECT_NEAR_REL((1_mil).value(), 25.4e-6, 1e-15);
    EXPECT_NEAR_REL((250_kcmil).value(), 126.67686977437e-6, 1e-12);
    EXPECT_NEAR_REL((10_Nm).value(), 10.0, 1e-15);
    EXPECT_NEAR_REL((30_lbf_ft).value(), 30.0 * 1.3558179483314004, 1e-15);
    EXPECT_NEAR_REL((12_lbf_in).value(), (1_lbf_ft).value(), 1e-15);
    EXPECT_NEAR_REL((6_min).value(), 360.0, 1e-15);
    EXPECT_NEAR_REL((95_degF).in_celsius(), 35.0, 1e-14);
    EXPECT_NEAR_REL((1_lb).value(), 0.45359237, 1e-15);
    EXPECT_NEAR_REL((1_lbf).value(), 4.4482216152605, 1e-14);
    EXPECT_EQ(5_K, wl::in_si<wl::temperature_difference>(5.0));
    EXPECT_NEAR_REL((3_cm2).value(), 3e-4, 1e-15);
    EXPECT_NEAR_REL((4_mm2).value(), 4e-6, 1e-15);
    static_assert(240_A == 0.24_kA);
    static_assert(1_MPa == 1e6 * 1_Pa);
}
