// What sets the limit of a lead's conductor.
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/welding_cable.hpp>

#include <map>
#include <string>

#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using weldloop::test::reference_table;

// source: IEC 60364-4-43 table 43A (same in BS 7671 table 43.1): start and end of a short circuit by insulation; the
// start is the highest conductor temperature of IEC 60364-5-52 table 52.1. The row of 85 degC rubber is from memory;
// the limit of the usual covering is read in BS 638-4.
TEST(ConductorLimit, CoveringsStandWhatTheStandardsSay)
{
    struct stands {
        const covering* of;
        bool is_read;
    };
    const std::multimap<std::string, stands> coverings{{"70 C thermoplastic (PVC) <=300 mm2", {&pvc, true}},
                                                       {"90 C thermosetting (XLPE/EPR)", {&xlpe, true}},
                                                       {"90 C thermosetting (XLPE/EPR)", {&ethylene_propylene, true}},
                                                       {"85 C rubber (thermosetting)", {&flexible_rubber, false}},
                                                       {"85 C rubber (thermosetting)", {&polychloroprene, false}}};
    int checked = 0;
    for (const auto& row : reference_table("conductors-k-factors.csv").rows()) {
        if (row.text("use") != "line conductor" || row.text("material") != "copper") continue;
        const auto [begin, end] = coverings.equal_range(row.text("insulation"));
        for (auto c = begin; c != end; ++c) {
            EXPECT_EQ(c->second.is_read, row.text("verified") != "memory") << row.where();
            EXPECT_EQ(c->second.is_read, c->second.of->short_time_source->kind != source_kind::memory) << row.where();
            EXPECT_DOUBLE_EQ(c->second.of->highest.value().in_celsius(), row.number("initial_temperature_C"))
                << row.where();
            EXPECT_DOUBLE_EQ(c->second.of->short_time.value().in_celsius(), row.number("final_temperature_C"))
                << row.where();
            ++checked;
        }
    }
    EXPECT_EQ(checked, static_cast<int>(all_coverings.size()));
    for (const covering& c : all_coverings) EXPECT_LT(c.highest.value(), c.short_time.value()) << c.name;
    EXPECT_EQ(flexible_rubber.highest_source->kind, source_kind::standard);
    EXPECT_EQ(polychloroprene.highest_source->kind, source_kind::memory);
}

TEST(ConductorLimit, IsThatOfTheCovering)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    EXPECT_EQ(limit_of(lead), 85_degC);
    EXPECT_EQ(conductor_limit_of(lead).from, &cable_class_85);
    lead.covering = pvc;
    EXPECT_EQ(limit_of(lead), 70_degC);
    EXPECT_EQ(conductor_limit_of(lead).set_by, limit_setter::covering);
    EXPECT_EQ(conductor_limit_of(lead).from, &iec_60364_conductor_limits);
    lead.covering = ethylene_propylene;
    EXPECT_EQ(limit_of(lead), 90_degC);
}

TEST(ConductorLimit, AStatedOneTakesItsPlaceAndSaysWhereItLies)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    lead.limit = 75_degC;
    EXPECT_EQ(limit_of(lead), 75_degC);
    EXPECT_EQ(conductor_limit_of(lead).set_by, limit_setter::stated);
    EXPECT_EQ(conductor_limit_of(lead).from, &lead_limit_of_user);
    EXPECT_FALSE(is_limit_above_lead(lead));
    lead.limit = 85_degC;
    EXPECT_FALSE(is_limit_above_lead(lead));
    lead.limit = 90_degC;
    EXPECT_EQ(limit_of(lead), 90_degC);
    EXPECT_TRUE(is_limit_above_lead(lead));
    EXPECT_EQ(conductor_limit_of(lead).of_lead, 85_degC);
}

TEST(ConductorLimit, TinnedStrandsUnderACoveringThatStandsMore)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    lead.metal = tinned_copper;
    EXPECT_EQ(conductor_limit_of(lead).set_by, limit_setter::covering);
    lead.covering.name = "silicone rubber";
    lead.covering.highest = 180_degC;
    EXPECT_EQ(limit_of(lead), highest_of_tinned_strands);
    EXPECT_EQ(conductor_limit_of(lead).set_by, limit_setter::strands);
    EXPECT_EQ(conductor_limit_of(lead).from->kind, source_kind::memory);
    lead.metal = annealed_copper;
    EXPECT_EQ(limit_of(lead), 180_degC);
}

TEST(ConductorLimit, OfAnUnknownCoveringMustBeStated)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    lead.covering.highest = {};
    EXPECT_THROW((void)limit_of(lead), missing_data_error);
    EXPECT_FALSE(is_limit_above_lead(lead));
    lead.limit = 60_degC;
    EXPECT_EQ(limit_of(lead), 60_degC);
    EXPECT_EQ(conductor_limit_of(lead).set_by, limit_setter::stated_for_unknown);
    EXPECT_FALSE(conductor_limit_of(lead).of_lead);
}

TEST(ConductorLimit, EverySetterHasItsWords)
{
    for (const limit_setter s : {limit_setter::covering, limit_setter::strands, limit_setter::stated,
                                 limit_setter::stated_above_lead, limit_setter::stated_for_unknown})
        EXPECT_EQ(to_text(s).find("conductor limit "), 0U);
}

}  // namespace
