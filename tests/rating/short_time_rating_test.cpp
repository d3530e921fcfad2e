// What a lead stands in a short circuit.
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/short_time_rating.hpp>

#include <cmath>
#include <limits>
#include <map>
#include <string>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using weldloop::test::reference_table;

// source: IEC 60364-4-43 table 43A, k of copper by insulation, printed to a whole number: I = k S/sqrt(t) from the
// limit to the short-time limit of the covering.
TEST(ShortTimeRating, HasTheStandardsFactor)
{
    const std::map<std::string, const covering*> coverings{{"70 C thermoplastic (PVC) <=300 mm2", &pvc},
                                                           {"90 C thermosetting (XLPE/EPR)", &ethylene_propylene},
                                                           {"85 C rubber (thermosetting)", &flexible_rubber}};
    int checked = 0;
    for (const auto& row : reference_table("conductors-k-factors.csv").rows()) {
        const auto found = coverings.find(row.text("insulation"));
        if (row.text("use") != "line conductor" || row.text("material") != "copper" || found == coverings.end())
            continue;
        cable lead = welding_cable(square_mm(50), 10_m);
        lead.covering = *found->second;
        for (const double seconds : {0.2, 1.0, 5.0}) {
            const short_time_rating r = short_time_rating_of(lead, in_si<duration>(seconds));
            EXPECT_NEAR(r.amps.value() * std::sqrt(seconds) / 50.0, row.number("k_A_sqrt_s_per_mm2"), 0.7)
                << row.where();
            EXPECT_EQ(r.basis.has(source_kind::memory), true) << "the longest duration is recalled";
        }
        ++checked;
    }
    EXPECT_EQ(checked, 3);
}

TEST(ShortTimeRating, AColdLeadAndWholeStrandsStandMore)
{
    cable lead = welding_cable(aught(1), 10_m);
    const current hot = short_time_rating_of(lead, 1_s).amps;
    EXPECT_GT(short_time_rating_of(lead, 1_s, 20_degC).amps, hot);
    lead.missing_strands = 0.25;
    lead.damaged_length = 1_m;
    EXPECT_NEAR_REL(short_time_rating_of(lead, 1_s).amps.value(), 0.75 * hot.value(), 1e-12);
}

// Under a covering that stands 250 degC the tin of the strands is what gives way first.
TEST(ShortTimeRating, TinMeltsBeforeAGoodCoveringGivesWay)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    lead.covering = ethylene_propylene;
    EXPECT_EQ(short_time_rating_of(lead, 1_s).end, 250_degC);
    lead.metal = tinned_copper;
    EXPECT_EQ(short_time_rating_of(lead, 1_s).end, 232_degC);
    lead.covering = pvc;
    EXPECT_EQ(short_time_rating_of(lead, 1_s).end, 160_degC);
}

TEST(ShortTimeRating, RefusesWhatCannotBe)
{
    cable lead = welding_cable(square_mm(50), 10_m);
    EXPECT_THROW((void)short_time_rating_of(lead, 6_s), out_of_range_error);
    EXPECT_THROW((void)short_time_rating_of(lead, 0_s), out_of_range_error);
    EXPECT_THROW((void)short_time_rating_of(lead, in_si<duration>(std::numeric_limits<double>::quiet_NaN())),
                 not_finite_error);
    EXPECT_THROW((void)short_time_rating_of(lead, 1_s, 220_degC), out_of_range_error);
    lead.covering.short_time = {};
    EXPECT_THROW((void)short_time_rating_of(lead, 1_s), missing_data_error);
}

}  // namespace
