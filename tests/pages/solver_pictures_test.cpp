// Pictures of docs/pages/solver.md: a body whose settled period has a closed form.
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/periodic_state.hpp>

#include "pages/page_chart.hpp"

namespace {
using namespace weldloop;
using test::dot;
using test::error_words;
using test::page_chart;
using test::points;

const std::string page = "solver.md";

// A body of 1 W/K that tends to a rise of 80 K while current flows: peak of its settled period, by hand
// T_peak = 80 K (1 - exp(-on/tau))/(1 - exp(-P/tau)).
TEST(SolverPictures, PeakOfOneBodyOverItsTimeConstant)
{
    constexpr double full = 80.0, period = 600.0;
    points often, seldom;
    int most_sweeps = 0, most_steps = 0;
    for (const double share : {0.6, 0.1})
        for (double decade = -2.0; decade < 2.01; decade += 0.25) {
            const double tau = period / std::pow(10.0, decade), on = share * period;
            solve::heat_network net;
            net.sink(net.add_node(tau), 1.0, 0.0);
            net.linear_source(0, full, 0.0);
            net.close();
            const auto state = solve::periodic_state_of(net, {on, period - on}, std::vector<double>(1, 0.0), {});
            ASSERT_EQ(state.what, solve::outcome::solved);
            const double exact = full * std::expm1(-on / tau) / std::expm1(-period / tau);
            (share == 0.6 ? often : seldom).emplace_back(period / tau, state.peak[0] - exact);
            most_sweeps = std::max(most_sweeps, state.sweeps);
            most_steps = std::max(most_steps, state.steps);
        }
    page_chart chart("Error of the settled peak of one body",
                     {"period over the body's time constant", 0.01, 100.0, true},
                     {"peak less its closed form [K], of 80 K", -0.1, 0.1});
    chart.level(0.0, "")
        .dots(often, dot::filled, "current for 6 min of 10")
        .dots(seldom, dot::ring, "current for 1 min of 10");
    expect_on_page(page, "period_error.svg", chart,
                   "The march against a closed form, a body that tends to 80 K above the air: \\f$T_{peak} = "
                   "80\\,\\mathrm K\\,(1 - "
                   "e^{-t_{on}/\\tau})/(1 - e^{-P/\\tau})\\f$. " +
                       std::to_string(often.size() + seldom.size()) + " cases: " + error_words(often).text("K") +
                       " at 6 min of 10, " + error_words(seldom).text("K") + " at 1 min of 10, in at most " +
                       std::to_string(most_sweeps) + " sweeps of at most " + std::to_string(most_steps) + " steps.");
}

// The rational stand-in for 1/(1 - exp(-z)), as the page prints it, over every mode there can be.
TEST(SolverPictures, CorrectionOfThePeriod)
{
    points off;
    for (double decade = -2.0; decade < 3.01; decade += 0.05) {
        const double z = std::pow(10.0, decade), p = z + 7.04;
        off.emplace_back(z, 100.0 * ((1.0 / z + 1.0 - 0.3554 / p - 24.27 / (p * p)) * -std::expm1(-z) - 1.0));
    }
    page_chart chart("Error of the correction between two sweeps",
                     {"z, period times a mode's rate", 0.01, 1000.0, true},
                     {"stand-in over 1/(1 - exp(-z)), less one [%]", -1.0, 1.0});
    chart.level(0.0, "").curve(off, 0, "one over z + 1 - a/(z + p) - b/(z + p)^2");
    const error_words worst(off);
    EXPECT_LT(std::fabs(worst.worst), 0.66);
    expect_on_page(page, "period_correction.svg", chart,
                   "What is left of a mode's defect after one corrected sweep: " + worst.text() +
                       ". Marching alone would leave \\f$e^{-z}\\f$ of it.");
}

}  // namespace
