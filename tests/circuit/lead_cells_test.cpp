// Cells of a lead: however long it is, and however little of it its ends are felt in, there are not many.
#include <numeric>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/lead_cells.hpp>

using namespace weldloop;

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

}  // namespace
