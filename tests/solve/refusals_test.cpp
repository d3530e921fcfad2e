// What the builders of networks, grids and sums refuse where it is given, so that no search meets it.
#include <cmath>
#include <limits>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/solve/bessel.hpp>
#include <weldloop/solve/current_network.hpp>
#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/least_squares.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/span_sums.hpp>
#include <weldloop/solve/steady_state.hpp>

#include "law/contact_fixture.hpp"

using namespace weldloop::solve;
using weldloop::error;
using weldloop::not_finite_error;
using weldloop::out_of_range_error;

namespace {
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double far_from_any = std::numeric_limits<double>::max();

// One node with a sink.
heat_network cooled(double conductance = 1.0)
{
    heat_network out;
    out.add_node(10.0);
    out.sink(0, conductance, 0.0);
    out.constant(0, 5.0);
    out.close();
    return out;
}
}  // namespace

TEST(SolveRefusals, ElementsOfAHeatNetwork)
{
    heat_network n;
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(n.add_node(x));
    EXPECT_THROW((void)n.add_node(1.0, no_number), not_finite_error);
    EXPECT_THROW((void)n.add_node(1.0, -infinite), not_finite_error);
    EXPECT_EQ(n.size(), 0U);
    n.add_node(1.0);
    n.add_node(1.0, heat_network::unbounded);
    const curve_table table([](double) { return 1.0; });
    for (const double x : {no_number, infinite, -infinite}) {
        EXPECT_THROW(n.link(0, 1, x), not_finite_error) << x;
        EXPECT_THROW(n.sink(0, x, 0.0), not_finite_error) << x;
        EXPECT_THROW(n.sink(0, 1.0, x), not_finite_error) << x;
        EXPECT_THROW(n.surface(0, x, table), not_finite_error) << x;
        EXPECT_THROW(n.constant(0, x), not_finite_error) << x;
        EXPECT_THROW(n.linear_source(0, x, 1.0), not_finite_error) << x;
        EXPECT_THROW(n.linear_source(0, 1.0, x), not_finite_error) << x;
        EXPECT_THROW(n.add_source({.in = 0, .to = 0, .share = x}), error) << x;
        EXPECT_THROW(n.add_source({.in = 0, .to = 0, .also_share = x}), error) << x;
    }
}

TEST(SolveRefusals, WhatAStateIsSoughtFrom)
{
    const heat_network n = cooled();
    const std::vector<double> cold{0.0}, two{0.0, 0.0}, none{no_number};
    EXPECT_EQ(steady_state_of(n, 1.0, cold).what, outcome::solved);
    EXPECT_THROW((void)steady_state_of(n, no_number, cold), not_finite_error);
    EXPECT_THROW((void)steady_state_of(n, 1.1, cold), out_of_range_error);
    EXPECT_THROW((void)steady_state_of(n, 1.0, two), out_of_range_error);
    EXPECT_THROW((void)steady_state_of(n, 1.0, none), not_finite_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(periodic_state_of(n, {.on = x, .rest = 1.0}, cold));
    EXPECT_REFUSES_BAD_NUMBERS(periodic_state_of(n, {.on = 1.0, .rest = x}, cold));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(periodic_state_of(n, {.on = 1.0, .rest = 1.0}, cold, {.settled = x}));
    EXPECT_THROW((void)periodic_state_of(n, {.on = 1.0, .rest = 1.0}, two), out_of_range_error);
}

TEST(SolveRefusals, BranchesOfACurrentNetwork)
{
    EXPECT_REFUSES_BAD_NUMBERS(plain_resistance(x));
    const plain_resistance lead(1.0);
    current_network n(2);
    for (const double x : {no_number, infinite, -infinite}) {
        EXPECT_THROW((void)n.add_branch(0, 1, lead, x), not_finite_error) << x;
        EXPECT_THROW(n.inject(0, 1, x), not_finite_error) << x;
    }
    EXPECT_EQ(n.branches(), 0U);
}

TEST(SolveRefusals, CellsAndSums)
{
    sum_grid grid;
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(grid.cells(x, 1.0));
    EXPECT_THROW((void)grid.cells(0.1, no_number), not_finite_error);
    EXPECT_THROW((void)grid.cells_by_octave(11), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(grid.cell(x));
    const distribution good{{1.0, 0.5}, {2.0, 0.5}}, nowhere{{no_number, 1.0}}, below{{-1.0, 1.0}},
        weightless{{1.0, no_number}}, most{{far_from_any, 1.0}};
    for (const distribution& bad : {nowhere, below, weightless}) {
        EXPECT_THROW((void)shortened(bad, grid), error);
        EXPECT_THROW((void)sum_of(good, bad, grid), error);
        EXPECT_THROW((void)sum_of(bad, good, grid), error);
        EXPECT_THROW((void)span_tree({good, bad}, {{.first = 0, .last = 1, .likelihood = {.read = 1.0}}}, 8), error);
    }
    EXPECT_THROW((void)sum_of(most, most, sum_grid(0)), error);
    const auto tree = [&](const span_reading& r) { return span_tree({good, good}, {r}, 8); };
    EXPECT_THROW((void)tree({.first = 1, .last = 0}), out_of_range_error);
    EXPECT_THROW((void)tree({.first = 0, .last = 2}), out_of_range_error);
    EXPECT_THROW((void)tree({.first = 0, .last = 1, .likelihood = {.read = infinite}}), not_finite_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(tree({.first = 0, .last = 1, .likelihood = {.spread = x}}));
    EXPECT_REFUSES_BAD_NUMBERS(tree({.first = 0, .last = 1, .likelihood = {.right = x}}));
    EXPECT_REFUSES_BAD_NUMBERS(tree({.first = 0, .last = 1, .likelihood = {.level = x}}));
}

// Without cells of its own a grid counts by doublings from 1 on.
TEST(SolveRefusals, AGridWithoutCells)
{
    const sum_grid grid(0);
    EXPECT_EQ(grid.cell(0.0), grid.cell(1.0));
    EXPECT_LT(grid.cell(1.0), grid.cell(2.0));
    const distribution halves{{0.5, 0.5}, {4.0, 0.5}};
    EXPECT_EQ(shortened(halves, grid).size(), 2U);
}

TEST(SolveRefusals, LinesOfReadings)
{
    const std::vector<line_reading> good{{{1.0, 0.0}, 1.0}, {{1.0, 1.0}, 2.0}, {{1.0, 2.0}, 3.1}};
    ASSERT_TRUE(fit_line(good, 2));
    for (const double x : {no_number, infinite}) {
        std::vector<line_reading> bad = good;
        bad[1].y = x;
        EXPECT_THROW((void)fit_line(bad, 2), not_finite_error);
        bad = good;
        bad[1].x[1] = x;
        EXPECT_THROW((void)fit_line(bad, 2), not_finite_error);
        EXPECT_TRUE(fit_line(bad, 1)) << "a factor of no unknown that is sought";
    }
    const std::vector<line_reading> wide{{{1.0}, far_from_any}, {{1.0}, -far_from_any}, {{1.0}, far_from_any}};
    EXPECT_FALSE(fit_line(wide, 1));
}

TEST(SolveRefusals, BesselFunctions)
{
    EXPECT_REFUSES_BAD_NUMBERS(bessel_j(0.0, x));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(bessel_k(1.0, x));
    for (const double order : {0.5, -1.0, 2.0}) {
        EXPECT_THROW((void)bessel_j(order, 1.0), out_of_range_error) << order;
        EXPECT_THROW((void)bessel_k(order, 1.0), out_of_range_error) << order;
    }
    EXPECT_THROW((void)bessel_k(0.0, 1e-310), out_of_range_error);
    EXPECT_THROW((void)bessel_k(0.0, 701.0), out_of_range_error);
    EXPECT_THROW((void)bessel_j(0.0, 1e5), out_of_range_error);
    EXPECT_EQ(bessel_j(0.0, std::numeric_limits<double>::denorm_min()), 1.0);
    EXPECT_EQ(bessel_j(1.0, 3e-200), 1.5e-200);
    EXPECT_TRUE(std::isfinite(bessel_k(1.0, 1e-300)));
}
