// A basis names what was used and nothing else.
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/lead_basis.hpp>

#include <algorithm>
#include <vector>

namespace {
using namespace weldloop;

using sources = std::vector<const source*>;

sources named_for(const cable& lead)
{
    const basis b = detail::basis_of(lead);
    return {b.sources().begin(), b.sources().end()};
}

bool names(const cable& lead, const source& s)
{
    const sources all = named_for(lead);
    return std::find(all.begin(), all.end(), &s) != all.end();
}

TEST(LeadBasis, OfTheTableIsTheTables)
{
    EXPECT_EQ(named_for(welding_cable(square_mm(50), 10_m)),
              (sources{&iec_60028, &iec_60228_classes, &bs_638_4_diameters, &en_50525_2_81_diameters,
                       &iec_60287_2_1_table_1}));
    EXPECT_EQ(named_for(welding_cable(aught(2), 10_m)),
              (sources{&iec_60028, &astm_b172, &astm_resistance_limit, &bs_638_4_diameters, &en_50525_2_81_diameters,
                       &iec_60287_2_1_table_1}));
    EXPECT_FALSE(names(welding_cable(aught(2), 10_m, resistance_choice::nominal), astm_resistance_limit));
    const cable nominal = welding_cable(square_mm(50), 10_m, resistance_choice::nominal);
    EXPECT_TRUE(names(nominal, iec_lay_judgement));
    EXPECT_FALSE(names(nominal, iec_60228_classes));
}

TEST(LeadBasis, OfTheUsersIsTheUsers)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    lead.overall_diameter = 16_mm;
    EXPECT_FALSE(names(lead, bs_638_4_diameters));
    EXPECT_TRUE(names(lead, en_50525_2_81_diameters)) << "the conductor is still the table's";
    EXPECT_TRUE(names(lead, lead_dimensions_of_user));
    lead.conductor_diameter = 10_mm;
    EXPECT_FALSE(names(lead, en_50525_2_81_diameters));
    lead.stranding_increment = 0.03;
    EXPECT_FALSE(names(lead, iec_60228_classes));
    EXPECT_TRUE(names(lead, lead_increment_of_user));
    lead.covering.thermal_conductivity *= 1.3;
    EXPECT_FALSE(names(lead, iec_60287_2_1_table_1));
    EXPECT_TRUE(names(lead, lead_covering_of_user));

    const cable own{.size = square_mm(50), .length = 10_m, .conductor_diameter = 10_mm, .overall_diameter = 15_mm};
    EXPECT_EQ(named_for(own),
              (sources{&iec_60028, &lead_increment_of_user, &lead_dimensions_of_user, &iec_60287_2_1_table_1}));
}

TEST(LeadBasis, SaysALimitAboveTheCoverings)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    EXPECT_FALSE(detail::basis_of(lead).has(range_flag::limit_above_covering));
    lead.limit = 105_degC;
    EXPECT_TRUE(detail::basis_of(lead).has(range_flag::limit_above_covering));
}

}  // namespace
