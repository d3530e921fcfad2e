// Rise where a clamp grips a piece that is welded, against finite elements: tests/oracle/work_heat.
#include <algorithm>
#include <cmath>
#include <iostream>

#include <gtest/gtest.h>

#include "circuit/work_heat_cases.hpp"

namespace {
using namespace weldloop;

// source: tests/oracle/work_heat/outputs.csv: a 10 mm plate and a 3 mm tube, welds that repeat, a clamp on them
TEST(WorkHeatOracle, RiseWhereAClampGrips)
{
    double worst_mean = 0.0, worst_peak = 0.0, end_mean = 0.0, end_peak = 0.0;
    int cases = 0;
    for (const test::reference_table::row& row : test::kept_work_heat().rows()) {
        const test::grip_rise f = test::rise_at_grip(row);
        const double mean = f.mean / row.number("mean_K") - 1.0, peak = f.peak / row.number("peak_K") - 1.0;
        std::cout << row.text("deck") << ' ' << row.text("away_mm") << " mm, stay " << row.text("stay_s")
                  << " s, clamp " << row.text("grip_W_K") << " W/K: mean " << f.mean << " K (elements "
                  << row.text("mean_K") << ", " << 100.0 * mean << " %), peak " << f.peak << " (" << row.text("peak_K")
                  << ", " << 100.0 * peak << " %)\n";
        EXPECT_LT(std::fabs(row.number("energy")), 1e-3) << row.where();
        ++cases;
        if (test::beyond_the_picture(row)) {
            end_mean = std::max(end_mean, std::fabs(mean));
            end_peak = std::max(end_peak, std::fabs(peak));
            continue;
        }
        worst_mean = std::max(worst_mean, std::fabs(mean));
        worst_peak = std::max(worst_peak, std::fabs(peak));
    }
    EXPECT_EQ(cases, 24);
    EXPECT_LT(worst_mean, 0.10);
    EXPECT_LT(worst_peak, 0.10);
    // measured there
    EXPECT_LT(end_mean, 0.16);
    EXPECT_LT(end_peak, 0.14);
}

}  // namespace
