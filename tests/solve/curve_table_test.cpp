// Tables of losses against the laws they stand for.
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/solve/curve_table.hpp>

using weldloop::solve::curve_table;
using weldloop::solve::sloped;

namespace {

// Radiation and natural convection of a horizontal cylinder in shape: a constant, a part that grows with the rise, and
// one with its fourth root above a floor (the conduction through still air).
double coefficient(double x)
{
    return 6.0 + 0.03 * x + 3.0 * std::pow(0.02 + std::fabs(x), 0.25);
}
double loss(double x)
{
    return coefficient(x) * x;
}

}  // namespace

TEST(CurveTable, FollowsTheLawAndItsSlope)
{
    const curve_table table(coefficient);
    for (double x = 4.0; x < 1023.0; x *= 1.013) {
        const sloped q = table.at(x);
        const double step = 1e-3 * x, slope = (loss(x + step) - loss(x - step)) / (2.0 * step);
        // Cubics with slopes from neighbours are off by u (1 - u) (1 - 2 u) h^3 c/6 between points h = 0.5 apart in
        // the root r of x; c the third derivative, 3 * 0.375 r^-2.5, taken at the point farthest to the left, where it
        // is largest.
        const double root = std::sqrt(x), third = 3.0 * 0.375 * std::pow(root - 1.0, -2.5);
        const double value_off = 0.09623 * 0.125 / 6.0 * third, slope_off = 0.25 / 6.0 * third;
        EXPECT_NEAR(q.value, loss(x), value_off * x) << x;
        EXPECT_NEAR(q.slope, slope, value_off + 0.5 * root * slope_off + 1e-6 * slope) << x;
    }
}

TEST(CurveTable, SlopeIsThatOfItsOwnValues)
{
    const curve_table table(coefficient);
    for (double x = 0.6; x < 1000.0; x *= 1.17) {
        const double step = 1e-5 * x, slope = (table.at(x + step).value - table.at(x - step).value) / (2.0 * step);
        EXPECT_NEAR(table.at(x).slope, slope, 1e-4 * slope) << x;  // a knot between the two bends the slope by less
    }
}

TEST(CurveTable, ExactAtItsPoints)
{
    const curve_table table(coefficient);
    for (int i = 1; i < 64; ++i) {
        const double x = 0.25 * i * i;
        EXPECT_NEAR(table.at(x).value, loss(x), 1e-12 * loss(x)) << x;
    }
}

TEST(CurveTable, LawItselfOutside)
{
    const curve_table table(coefficient);
    for (const double x : {-16.0, -80.0, 1024.0, 3000.0}) {
        EXPECT_DOUBLE_EQ(table.at(x).value, loss(x));
        const double by_difference = (loss(1.001 * x) - loss(0.999 * x)) / (0.002 * x);
        EXPECT_NEAR(table.at(x).slope, by_difference, 0.01 * by_difference) << x;
    }
    EXPECT_EQ(table.at(0.0).value, 0.0);
    EXPECT_NEAR(table.at(0.0).slope, coefficient(1e-6), 1e-9);
}

// Below zero by points of its own, where the law is another: exact at them, between them as good as above zero.
TEST(CurveTable, BelowZeroUpToSixteen)
{
    constexpr double less = 0.7;
    int asked = 0;
    const curve_table table([&](double x) {
        if (x < 0.0) ++asked;
        return x < 0.0 ? less * coefficient(-x) : coefficient(x);
    });
    for (double x = 1e-12; x < 15.9; x *= 1.1) {
        const sloped below = table.at(-x), above = table.at(x);
        EXPECT_NEAR(below.value, -less * above.value, 1e-12 * above.value) << x;
        EXPECT_NEAR(below.slope, less * above.slope, 1e-12 * above.slope) << x;
        EXPECT_EQ(table.value_at(-x), below.value) << x;
    }
    EXPECT_EQ(asked, 11);  // 8 cells and the points beyond their ends
    for (int i = 1; i < 8; ++i) {
        const double x = 0.25 * i * i;
        EXPECT_NEAR(table.at(-x).value, -less * loss(x), 1e-12 * loss(x)) << x;
    }
    // a root that rounds to the end of the last cell
    const double end = std::nextafter(16.0, 0.0), far_end = std::nextafter(1024.0, 0.0);
    EXPECT_DOUBLE_EQ(table.at(-end).value, -less * loss(end));
    EXPECT_DOUBLE_EQ(table.at(far_end).value, loss(far_end));
}

TEST(CurveTable, AsksTheLawOncePerPoint)
{
    int asked = 0;
    const curve_table table([&asked](double x) {
        ++asked;
        return coefficient(x);
    });
    static_cast<void>(table.at(30.0));
    EXPECT_EQ(asked, 4);
    for (int round = 0; round < 2; ++round)
        for (double x = 0.0; x < 1024.0; x += 0.5) static_cast<void>(table.at(x));
    EXPECT_EQ(asked, 67);  // 64 cells and the points beyond their ends
}

TEST(CurveTable, OrderOfAskingDoesNotMatter)
{
    const curve_table up(coefficient), down(coefficient);
    std::vector<double> rising;
    for (double x = 0.0; x < 1024.0; x += 3.7) rising.push_back(up.at(x).value);
    for (std::size_t i = rising.size(); i-- > 0;)
        EXPECT_EQ(down.at(3.7 * static_cast<double>(i)).value, up.at(3.7 * static_cast<double>(i)).value);
}

TEST(CurveTable, ACopyKnowsWhatTheOtherKnows)
{
    int asked = 0;
    const curve_table table([&asked](double x) {
        ++asked;
        return coefficient(x);
    });
    const double before = table.at(30.0).value;
    const curve_table copy = table;
    EXPECT_EQ(copy.at(30.0).value, before);
    EXPECT_EQ(asked, 4);
    EXPECT_EQ(copy.at(500.0).value, table.at(500.0).value);
    EXPECT_EQ(asked, 12);  // four points each
}
