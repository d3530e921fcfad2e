#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/bolt.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
}

// source: tests/reference/contacts-bolt-stress-area.csv (ISO 898-1; ASME B1.1 and PCC-1; the small inch rows are
// recalled, 1/2 and 5/8 and all metric rows are not). Printed to three digits.
TEST(Bolt, StressAreas)
{
    for (const auto& row : test::reference_table("contacts-bolt-stress-area.csv").rows()) {
        const length d = row.number("major_diameter_mm") * 1_mm, p = row.number("pitch_mm") * 1_mm;
        const bool inch = row.has("stress_area_in2");
        const area found = inch ? inch_stress_area(d, p) : metric_stress_area(d, p);
        EXPECT_NEAR_REL(found.value() * 1e6, row.number("stress_area_mm2"), 4e-3) << row.where();
        if (inch) {
            EXPECT_NEAR(found.value() / (0.0254 * 0.0254), row.number("stress_area_in2"), 1e-4) << row.where();
        }
    }
}

// source: tests/reference/contacts-nut-factor.csv; dry, zinc and oiled typical values are read
TEST(Bolt, NutFactors)
{
    const std::map<std::string, thread_state> states{{"clean dry or as-received plain steel", thread_state::dry},
                                                     {"zinc plated", thread_state::zinc_plated},
                                                     {"lubricated (oil or wax)", thread_state::oiled},
                                                     {"anti-seize or molybdenum disulphide", thread_state::anti_seize},
                                                     {"rusty or damaged", thread_state::rusty}};
    std::size_t checked = 0;
    for (const auto& row : test::reference_table("contacts-nut-factor.csv").rows()) {
        const auto state = states.find(row.text("condition"));
        if (state == states.end()) continue;
        const band<double> k = nut_factor(state->second).factor;
        EXPECT_EQ(k.low, row.number("K_low")) << row.where();
        EXPECT_EQ(k.typical, row.number("K_typical")) << row.where();
        EXPECT_EQ(k.high, row.number("K_high")) << row.where();
        ++checked;
    }
    EXPECT_EQ(checked, all_thread_states.size());
}

// source: torque-tension article of 2020-11-15: 3/8-16, 4940 lbf at 30 lbf ft dry (0.20) and 23 lbf ft oiled (0.15),
// rounded
TEST(Bolt, ForceFromTheArticle)
{
    EXPECT_NEAR_REL(bolt_force(30_lbf_ft, 0.20, 0.375_in).value(), (4940_lbf).value(), 0.03);
    EXPECT_NEAR_REL(bolt_force(23_lbf_ft, 0.15, 0.375_in).value(), (4940_lbf).value(), 0.03);
}

// source: tests/reference/contacts-bolt-torque-electrical.csv, rows of DIN 43673, torque and force at K = 0.20
TEST(Bolt, ElectricalTorques)
{
    int checked = 0;
    for (const auto& row : test::reference_table("contacts-bolt-torque-electrical.csv").rows()) {
        if (row.text("verified") == "memory") continue;
        const length d = std::stod(row.text("thread").substr(1)) * 1_mm;
        EXPECT_EQ(electrical_bolt_torque(d).value(), row.number("torque_Nm")) << row.where();
        EXPECT_NEAR(bolt_force(electrical_bolt_torque(d), 0.20, d).value(), row.number("implied_preload_N_at_K_0_20"),
                    0.5)
            << row.where();
        ++checked;
    }
    EXPECT_EQ(checked, 5);
}

// source: the same table, every row, also those of inch threads and the recalled ones: torque and preload belong
// together at K = 0.20, printed to the newton of torques printed to 0.1 N m. The recalled torques are no reference for
// anything else: they differ from those of DIN 43673 by up to 40 %.
TEST(Bolt, PreloadsOfEveryRow)
{
    int rows = 0;
    for (const auto& row : test::reference_table("contacts-bolt-torque-electrical.csv").rows()) {
        const std::string thread = row.text("thread");
        const std::size_t slash = thread.find('/');
        const length d = slash == std::string::npos ? std::stod(thread.substr(1)) * 1_mm
                                                    : std::stod(thread) / std::stod(thread.substr(slash + 1)) * 1_in;
        EXPECT_NEAR_REL(bolt_force(in_si<torque>(row.number("torque_Nm")), 0.20, d).value(),
                        row.number("implied_preload_N_at_K_0_20"), 0.05 / row.number("torque_Nm") + 2e-3)
            << row.where();
        ++rows;
    }
    EXPECT_EQ(rows, 28);
}

// source: tests/reference/contacts-nut-factor.csv, last row: preload scatters by 30 % either way at a set torque. The
// bands of the single conditions are 5 and 95 % points and must lie inside those extremes, but for dry threads, whose
// published high end of 0.30 alone is beyond them, and for rust, which the article does not mean.
TEST(Bolt, ScatterIsThatOfTheArticle)
{
    constexpr double extreme = 0.30;
    for (const thread_state s : {thread_state::zinc_plated, thread_state::oiled}) {
        const band<force> f = bolt_force(40_Nm, s, 10_mm);
        EXPECT_GT(f.low / f.typical, 1.0 - extreme);
        EXPECT_LT(f.high / f.typical, 1.0 + extreme);
        EXPECT_GT(f.high / f.low, 1.3);  // and is no pretence of knowing it
    }
    const band<force> dry = bolt_force(40_Nm, thread_state::dry, 10_mm);
    EXPECT_NEAR_REL((dry.high / dry.low).value(), (1.0 + extreme) / (1.0 - extreme), 0.06);
}

TEST(Bolt, ScatterOfTheFactorIsScatterOfTheForce)
{
    for (const thread_state s : all_thread_states) {
        const band<double> k = nut_factor(s).factor;
        const band<force> f = bolt_force(40_Nm, s, 10_mm);
        EXPECT_EQ(f.low, bolt_force(40_Nm, k.high, 10_mm));
        EXPECT_EQ(f.typical, bolt_force(40_Nm, k.typical, 10_mm));
        EXPECT_EQ(f.high, bolt_force(40_Nm, k.low, 10_mm));
    }
    EXPECT_EQ(bolt_force(0_Nm, 0.2, 10_mm).value(), 0.0);
}

TEST(Bolt, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(bolt_force(in_si<torque>(x), 0.2, 10_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(bolt_force(1_Nm, x, 10_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(bolt_force(1_Nm, 0.2, in_si<length>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(bolt_force(in_si<torque>(x), thread_state::dry, 10_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(metric_stress_area(in_si<length>(x), 1_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(metric_stress_area(10_mm, in_si<length>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(inch_stress_area(in_si<length>(x), 1_mm));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(inch_stress_area(10_mm, in_si<length>(x)));
    EXPECT_THROW((void)metric_stress_area(1_mm, 1_mm), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(electrical_bolt_torque(in_si<length>(x)));
    EXPECT_THROW((void)electrical_bolt_torque(9_mm), missing_data_error);
}
