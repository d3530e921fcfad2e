// How far a course of swings is walked when next to nothing conducts any more, as where a film has eaten the spots.
#include <cmath>
#include <cstddef>
#include <memory>

#include <gtest/gtest.h>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_swing.hpp>
#include <weldloop/circuit/clamp_swing_course.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using detail::clamp_settled;
using detail::clamp_solver;
using detail::swing_course;

namespace {

// A settled period of jaws whose swing is not in proportion to the contact's heat.
clamp_settled period_with(double heat)
{
    solve::periodic_state found;
    found.what = solve::outcome::solved;
    clamp_settled out{.found = std::make_shared<const solve::periodic_state>(found), .contact_heat = heat};
    out.swing.peak_over_mean[detail::jaw_place] = 0.2 * heat + 1e-3 * heat * heat;
    return out;
}

struct walked {
    double peak;  // K, of the jaws beyond the swing grown by the heat
    int periods;  // looked for
};
template <class Heat>
walked walk(double x, const Heat& heat)
{
    int periods = 0;
    const swing_course course(period_with(heat(0.0)));
    const auto found = course.beyond(x, heat(x), [&](double at, const auto*, const auto*) {
        ++periods;
        return period_with(heat(at));
    });
    return {found.peak_over_mean[detail::jaw_place], periods};
}

}  // namespace

// A drop that levels off: no further than where it has, and there the swing is that of the level.
TEST(SwingCourse, EndsWhereTheDropLevelsOff)
{
    const auto levels_off = [](double x) { return 100.0 / (1.0 + std::exp(2.0 * x)); };
    const auto departs = [](double heat, double own) { return 1e-3 * heat * (heat - own); };
    for (const double x : {-0.1, -1.0, -3.0}) {
        const walked near = walk(x, levels_off);
        EXPECT_NEAR(near.peak, departs(levels_off(x), levels_off(0.0)), 0.03) << x;
        EXPECT_LE(near.periods, 4 + static_cast<int>(-x / 0.125)) << x;
    }
    for (const double x : {-20.0, -700.0}) {
        const walked far = walk(x, levels_off);
        EXPECT_NEAR(far.peak, departs(100.0, levels_off(0.0)), 0.03) << x;
        EXPECT_LE(far.periods, 34) << x;  // 1/(1 + exp(2 x)) moves by less than 1e-4 in an eighth from -4.0 on
    }
}

// One that does not: a hundred periods and the one behind the last.
TEST(SwingCourse, EndsAfterAHundredPeriods)
{
    const auto grows = [](double x) { return 10.0 * std::exp(-0.1 * x); };
    const walked far = walk(-700.0, grows), further = walk(-1e5, grows);
    EXPECT_TRUE(std::isfinite(far.peak));
    EXPECT_EQ(far.periods, 101);
    EXPECT_EQ(further.periods, far.periods);
}

// Jaws that conduct a hundredth of what they did, and next to nothing: their swing is that of their own period.
TEST(SwingCourse, OfEatenSpotsIsThatOfTheirOwnPeriod)
{
    for (const double path : {0.0, 1.5e-4}) {
        clamp_network n = clamp_network_of(
            {.clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::clean}, {.air = 30_degC});
        n.spring_path = in_si<resistance>(path);
        const load work{.current = 60_A, .duty = duty_cycle::of(6_min, 10_min)};
        const clamp_outside lead{in_si<thermal_conductance>(0.1), 35_degC};
        clamp_solver solver(n, lead, work, scatter::typical);
        static_cast<void>(detail::let_swing(solver, {}, work.duty));
        for (const double factor : {1e2, 1e4, 1e13}) {
            const clamp_condition eaten{1.0, factor};
            const clamp_solver::state told = solver.solve(eaten);
            const clamp_solver alone(n, lead, work, scatter::typical);
            const solve::periodic_state own = alone.settled_period(eaten, work.duty);
            ASSERT_EQ(own.what, solve::outcome::solved) << factor;
            ASSERT_EQ(told.bound, clamp_bound::none) << factor;
            for (const std::size_t place : {detail::jaw_place, detail::spring_place}) {
                const std::size_t node = solver.nodes()[place];
                EXPECT_NEAR(told.rise[place], own.mean[node], 0.1) << factor << ' ' << place;
                EXPECT_NEAR(solver.peak_of(told, place), own.peak[node], 0.2) << factor << ' ' << place;
            }
        }
    }
}
