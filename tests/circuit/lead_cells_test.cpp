// Cells of a lead: however long it is, and however little of it its ends are felt in, there are not many.
#include <numeric>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/lead_cells.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;

namespace {

// source: a cell grows by 1.7 from a quarter of the decay length to forty of them, ten steps at each end and one middle
TEST(LeadCells, AreFewAndFillTheLead)
{
    for (const double whole : {1e-6, 0.3, 20.0, 1e6, 1e16, 1e20, 1e300})
        for (const double decay : {1e-12, 1e-3, 0.5, 1e6}) {
            const std::vector<double> cells = detail::graded_cells(whole, decay);
            EXPECT_LT(cells.size(), 60u) << whole << " m, " << decay << " m";
            EXPECT_NEAR(std::accumulate(cells.begin(), cells.end(), 0.0) / whole, 1.0, 1e-12);
        }
}

// source: no temperature is below zero: what a solver's trial asks there is the law's coefficient at half the air's, a
// finite number whatever the lay
TEST(LeadCells, ATrialBelowAbsoluteZeroLosesAsAtHalfTheAirs)
{
    const cable lead = welding_cable(aught(1), 5_m);
    for (const lay how : all_lays) {
        const auto law = detail::lead_surface_law(lead, {.air = temperature::kelvin(250), .lay = how});
        EXPECT_GT(law(-125.0), 0.0);
        EXPECT_EQ(law(-125.0), law(-2000.0));
        EXPECT_NE(law(-124.0), law(-125.0));
    }
}

}  // namespace
