#include <algorithm>
#include <cstddef>
#include <optional>
#include <random>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/ampacities.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

std::vector<cable> drawn_leads(std::size_t count, unsigned seed)
{
    std::mt19937_64 engine(seed);
    std::uniform_real_distribution<double> mm2(10, 240), share(0, 1);
    std::vector<cable> out;
    for (std::size_t i = 0; i < count; ++i) {
        cable lead = welding_cable(square_mm(mm2(engine)), 20_m);
        if (share(engine) < 0.3) lead.limit = temperature::celsius(55 + 60 * share(engine));
        if (share(engine) < 0.3) lead.lay = all_lays[engine() % all_lays.size()];
        if (share(engine) < 0.1) lead.covering.emissivity = 0.5;
        if (share(engine) < 0.1) {
            lead.missing_strands = 0.2;
            lead.damaged_length = 0.5_m;
        }
        out.push_back(lead);
    }
    return out;
}

void expect_as_one_by_one(const std::vector<cable>& leads, const surroundings& where,
                          duty_cycle duty = duty_cycle::continuous())
{
    const std::vector<current> together = ampacities_of(leads, where, duty);
    ASSERT_EQ(together.size(), leads.size());
    for (std::size_t i = 0; i < leads.size(); ++i)
        EXPECT_NEAR_REL(together[i].value(), ampacity_of(leads[i], where, duty).amps.value(), 1e-12) << i;
}

}  // namespace

// source: BS 638-4 guide ratings of 85 degC leads in air at 25 degC (recalled; ampacity_test.cpp corroborates them)
TEST(Ampacities, ContinuousRatingsOfWeldingLeads)
{
    std::vector<cable> leads;
    std::vector<double> published;
    for (const auto& row : reference_table("welding-cable-duty-ratings-85C.csv").rows())
        if (row.number("duty_cycle_percent") == 100) {
            leads.push_back(welding_cable(square_mm(row.number("cross_section_mm2")), 20_m));
            published.push_back(row.number("current_A"));
        }
    ASSERT_EQ(leads.size(), 8U);
    const std::vector<current> rated = ampacities_of(leads, {.air = 25_degC});
    for (std::size_t i = 0; i < leads.size(); ++i) EXPECT_NEAR_REL(rated[i].value(), published[i], 0.015);
}

TEST(Ampacities, SameDigitsAsOneByOne)
{
    // more than one turn of the lanes, and a last one that is not full
    for (const double air : {-60.0, -20.0, 5.0, 25.0, 30.0, 42.0})
        expect_as_one_by_one(drawn_leads(150, 7), {.air = temperature::celsius(air)});
    expect_as_one_by_one(drawn_leads(80, 8), {.air = 30_degC, .sun = in_si<heat_flux>(700.0)});
    expect_as_one_by_one(drawn_leads(80, 8), {.air = 30_degC, .lay = lay::on_floor});
    expect_as_one_by_one(drawn_leads(20, 9), {.air = 30_degC, .wind = in_si<speed>(2.0)});
    expect_as_one_by_one(drawn_leads(20, 9), {.air = 30_degC, .altitude = 2000_m});
    expect_as_one_by_one(drawn_leads(5, 10), {}, duty_cycle::of(6_min, 10_min));
}

// a limit a thousandth of a kelvin above the air, where first principles count
TEST(Ampacities, LimitJustAboveTheAir)
{
    cable lead = welding_cable(square_mm(50), 20_m);
    lead.limit = temperature::kelvin(300.001);
    expect_as_one_by_one({lead}, {.air = temperature::kelvin(300.0)});
}

// The drop across a covering a ten-millionth of the conductor thick is so little beside both temperatures that the last
// digits of the two ways part by 1e-8 in some leads and agree by chance in most: hence so many of them.
TEST(Ampacities, NextToBare)
{
    std::vector<cable> leads;
    for (const double mm2 : {16.0, 35.0, 50.0, 70.0, 95.0})
        for (const double thickness : {0.0101, 0.0099, 1e-5, 1e-7}) {
            leads.push_back(welding_cable(square_mm(mm2), 20_m));
            leads.back().overall_diameter = (1.0 + thickness) * leads.back().conductor_diameter;
        }
    for (const double air : {20.0, 25.0, 30.0}) expect_as_one_by_one(leads, {.air = temperature::celsius(air)});
}

TEST(Ampacities, NoneForNone)
{
    EXPECT_TRUE(ampacities_of({}, {}).empty());
}

TEST(Ampacities, RefusesWhatOneByOneIsRefused)
{
    std::vector<cable> leads = drawn_leads(3, 11);
    leads[1].lay = std::nullopt;
    leads[1].limit = 60_degC;
    EXPECT_THROW((void)ampacities_of(leads, {.air = 70_degC}), out_of_range_error);
    leads[1].limit = temperature::celsius(1200.0);
    EXPECT_THROW((void)ampacities_of(leads, {}), out_of_range_error);
    leads[1].limit = {};
    leads[1].overall_diameter = {};
    EXPECT_THROW((void)ampacities_of(leads, {}), missing_data_error);
    EXPECT_THROW((void)ampacities_of(drawn_leads(2, 1), {.air = 600_degC}), out_of_range_error);
    leads = {welding_cable(square_mm(50), 20_m)};
    EXPECT_THROW((void)ampacities_of(leads, {.coil_turns = 0}), out_of_range_error);
    leads[0].lay = lay::spaced;
    leads[0].coil_turns = 0;
    EXPECT_THROW((void)ampacities_of(leads, {}), out_of_range_error);
    EXPECT_THROW((void)ampacities_of(drawn_leads(2, 1), {.sun = in_si<heat_flux>(1e5)}), no_solution_error);
}
