#include <array>
#include <cstddef>
#include <functional>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/joint_ageing.hpp>
#include <weldloop/part/work_clamp_standard.hpp>
#include <weldloop/rating/joint/connector_limit.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {

using namespace weldloop;
using row = test::reference_table::row;

double rise(std::size_t at)
{
    return connector_rise_limits.at(at).highest.value();
}

// item of the table -> the number the library has for it, in the unit of the row, and its source
struct held {
    std::function<double()> value;
    const source* from;
};
const std::map<std::string, held> numbers{
    {"resistance factor ratio lambda max", {[] { return worn_ratio; }, &worn_joint_ratio}},
    {"design temperature copper-copper",
     {[] { return copper_connector_design.in_celsius(); }, &connector_design_temperature}},
    {"design temperature with aluminium",
     {[] { return aluminium_connector_design.in_celsius(); }, &connector_design_temperature}},
    {"resistance stability", {[] { return 100.0 * steady_reading_margin; }, &connector_current_cycles}},
    {"static heating rise limit", {[] { return rise(0); }, connector_rise_limits[0].from}},
    {"heat-cycling rise limit", {[] { return rise(1); }, connector_rise_limits[1].from}},
    {"power connector rise", {[] { return rise(2); }, connector_rise_limits[2].from}},
    {"terminal temperature rise", {[] { return rise(3); }, connector_rise_limits[3].from}},
    {"initial voltage drop at clamping unit",
     {[] { return 1e3 * new_clamping_unit_drop.value(); }, &clamping_unit_drop}},
    {"voltage drop after cycling", {[] { return 1e3 * cycled_clamping_unit_drop.value(); }, &clamping_unit_drop}},
    {"bond resistance class R", {[] { return 1e3 * bond_limit.value(); }, &bond_class_r}},
    {"crimp tensile where no table value",
     {[] { return 100.0 * wire_share_acceptance_of(1_kN, 1_kN, wire_share_claim::crimp_without_table).used; },
      &crimp_pull_by_wire}},
    {"wire-to-terminal joint strength",
     {[] { return 100.0 * wire_share_acceptance_of(1_kN, 1_kN, wire_share_claim::aircraft_terminal).used; },
      &terminal_pull_by_wire}},
    {"clamp voltage drop", {[] { return (clamp_pair_limit * 100_A).value(); }, &work_clamp_drop_test}},
};

// limits that the library does not hold, and why
const std::map<std::string, std::string> left_out{
    {"initial scatter delta max", "compares six like connectors of one type test; named in connector_type_test"},
    {"mean scatter beta max", "the same"},
    {"change in resistance factor D max", "the same"},
    {"connector temperature max", "no number: that of the conductor beside it"},
    {"current cycles, class A", "how long the test lasts"},
    {"temperature difference stability", "of the test, named in connector_current_cycles"},
    {"tensile classes full / partial / minimum", "shares of a rated strength that cables here do not have"},
    {"heat-cycling stability factor S", "of the test"},
    {"contact pull 24 AWG / 22 AWG grounding lead", "of signal contacts"},
    {"coupling limits", "not found by whoever gathered the table"},
    {"tensile load copper", "checked in words below"},
    {"tensile load aluminium", "checked in words below"},
    {"stud terminal voltage drop", "termination_acceptance_test.cpp"},
};

}  // namespace

// source: tests/reference/contacts-terminal-limits.csv, every row: the number and whether it was read or recalled, or
// why it is left out
TEST(ConnectorLimit, EveryRowOfTheTable)
{
    std::size_t checked = 0;
    for (const row& r : test::reference_table("contacts-terminal-limits.csv").rows()) {
        const std::string item = r.text("item");
        if (const auto at = numbers.find(item); at != numbers.end()) {
            EXPECT_NEAR_REL(at->second.value(), r.number("value"), 1e-12) << item;
            EXPECT_EQ(at->second.from->kind == source_kind::memory, r.text("verified") == "memory") << item;
            ++checked;
        } else {
            EXPECT_TRUE(left_out.contains(item)) << r.where() << ": no check for " << item;
        }
    }
    EXPECT_EQ(checked, numbers.size());
}

// source: the same table, the rows in words: 60 (40) x area in mm2, at most 20000 N
TEST(ConnectorLimit, PullBySection)
{
    int rows = 0;
    for (const row& r : test::reference_table("contacts-terminal-limits.csv").rows()) {
        if (!r.text("item").starts_with("tensile load")) continue;
        const connected_metal made_of =
            r.text("item").ends_with("aluminium") ? connected_metal::of_aluminium : connected_metal::of_copper;
        const std::string words = r.text("value");
        const double per_mm2 = std::stod(words), most = std::stod(words.substr(words.find("max ") + 4));
        EXPECT_NEAR_REL(connector_pull_of(70_mm2, made_of).value(), 70.0 * per_mm2, 1e-12);
        EXPECT_NEAR_REL(connector_pull_of(1000_mm2, made_of).value(), most, 1e-12);
        EXPECT_TRUE(connector_pull_acceptance_of(70_mm2, made_of, in_si<force>(70.0 * per_mm2)).accepted);
        EXPECT_FALSE(connector_pull_acceptance_of(70_mm2, made_of, in_si<force>(69.9 * per_mm2)).accepted);
        EXPECT_TRUE(connector_pull_acceptance_of(70_mm2, made_of, 50_kN).limit_recalled);
        ++rows;
    }
    EXPECT_EQ(rows, 2);
    EXPECT_FALSE(connector_pull_acceptance_of(70_mm2, connected_metal::of_copper, 0_N).accepted);
}

// relations: at the limit good, beyond it not; the smaller of both limits of a cycled clamping unit counts
TEST(ConnectorLimit, JustAtAndJustBeyond)
{
    for (const connector_rise_limit& limit : connector_rise_limits) {
        EXPECT_TRUE(connector_rise_acceptance_of(limit.highest, limit).accepted) << limit.what;
        EXPECT_FALSE(connector_rise_acceptance_of(1.001 * limit.highest, limit).accepted) << limit.what;
        EXPECT_EQ(connector_rise_acceptance_of(0_K, limit).used, 0.0);
    }
    EXPECT_TRUE(clamping_unit_acceptance_of(15_mV).accepted);
    EXPECT_FALSE(clamping_unit_acceptance_of(15.1_mV).accepted);
    EXPECT_TRUE(clamping_unit_acceptance_of(22.4_mV, 15_mV).accepted);
    EXPECT_FALSE(clamping_unit_acceptance_of(22.6_mV, 20_mV).accepted);
    EXPECT_FALSE(clamping_unit_acceptance_of(16_mV, 10_mV).accepted);  // half as much again as at its 24th cycle
    EXPECT_TRUE(bond_acceptance_of(2.5_mohm).accepted);
    EXPECT_FALSE(bond_acceptance_of(2.51_mohm).accepted);
    EXPECT_FALSE(wire_share_acceptance_of(0.99_kN, 1_kN, wire_share_claim::aircraft_terminal).accepted);
    EXPECT_TRUE(wire_share_acceptance_of(0.61_kN, 1_kN, wire_share_claim::crimp_without_table).accepted);
    EXPECT_FALSE(wire_share_acceptance_of(0.59_kN, 1_kN, wire_share_claim::crimp_without_table).accepted);
}

// relation, by hand: 10.0, 10.4, 9.9 micro-ohm have the mean 10.1; 10.4 lies 2.97 % above it, 10.9 would lie 6 % above
// its mean of 10.27
TEST(ConnectorLimit, SteadyReadings)
{
    const std::array steady{10_uohm, 10.4_uohm, 9.9_uohm}, drifting{10_uohm, 10.9_uohm, 9.9_uohm},
        one{3_uohm, 3_uohm, 3_uohm};
    EXPECT_NEAR_REL(steady_connector_acceptance_of(steady).used, 0.3 / 10.1 / 0.05, 1e-9);
    EXPECT_TRUE(steady_connector_acceptance_of(steady).accepted);
    EXPECT_FALSE(steady_connector_acceptance_of(drifting).accepted);
    EXPECT_NEAR(steady_connector_acceptance_of(one).used, 0.0, 1e-12);
    const std::array huge{in_si<resistance>(1e308), in_si<resistance>(1.7e308)};
    EXPECT_FALSE(steady_connector_acceptance_of(huge).accepted);
    EXPECT_THROW((void)steady_connector_acceptance_of({}), out_of_range_error);
    const auto with = [](double x) {
        const std::array readings{1_uohm, in_si<resistance>(x)};
        return steady_connector_acceptance_of(readings);
    };
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(with(x));
}

TEST(ConnectorLimit, RefusesWhatCannotBe)
{
    EXPECT_REFUSES_BAD_NUMBERS(
        connector_rise_acceptance_of(in_si<temperature_difference>(x), connector_rise_limits.front()));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(
        connector_rise_acceptance_of(1_K, {"", in_si<temperature_difference>(x), &bond_class_r}));
    EXPECT_REFUSES_BAD_NUMBERS(clamping_unit_acceptance_of(in_si<voltage>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(clamping_unit_acceptance_of(1_mV, in_si<voltage>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(bond_acceptance_of(in_si<resistance>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(connector_pull_of(in_si<area>(x), connected_metal::of_copper));
    EXPECT_REFUSES_BAD_NUMBERS(connector_pull_acceptance_of(70_mm2, connected_metal::of_aluminium, in_si<force>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(wire_share_acceptance_of(in_si<force>(x), 1_N, wire_share_claim::crimp_without_table));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(
        wire_share_acceptance_of(1_N, in_si<force>(x), wire_share_claim::aircraft_terminal));
}
