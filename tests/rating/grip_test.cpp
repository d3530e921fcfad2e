#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/rating/grip.hpp>

#include <cmath>
#include <limits>

#include "support/near.hpp"

namespace {
using namespace weldloop;

work_connection on_steel(work_clamp clamp, surface_state state = surface_state::clean)
{
    return {.clamp = std::move(clamp), .onto = mild_steel, .surface = state, .name = "clamp"};
}

const surroundings shop{.air = 30_degC};

grip_forecast forecast(const work_connection& w, current amps, duty_cycle duty = duty_cycle::of(6_min, 10_min),
                       duration hours = 2000_h)
{
    return grip_over_time(w, welding_cable(w.clamp.largest_cable, 10_m), {.current = amps, .duty = duty}, shop, hours);
}

TEST(Grip, FallsWithTimeAndEndsAtTheHorizon)
{
    const grip_forecast f = forecast(on_steel(spring_clamp(300_A), surface_state::oxidized), 300_A);
    ASSERT_GE(f.points.size(), 10U);
    EXPECT_EQ(f.points.front().at.value(), 0.0);
    EXPECT_NEAR_REL(f.points.back().at.value(), (2000_h).value(), 1e-12);
    for (std::size_t i = 1; i < f.points.size(); ++i) {
        EXPECT_GT(f.points[i].at, f.points[i - 1].at);
        EXPECT_LE(f.points[i].force.value(), f.points[i - 1].force.value() * (1 + 1e-12));
        EXPECT_GE(f.points[i].resistance.value(), f.points[i - 1].resistance.value() * (1 - 1e-9));
    }
    EXPECT_LE(f.grip_left_low, f.grip_left);
}

// The force follows the relaxation law: with a clamp that stays at one temperature the march is the law itself.
TEST(Grip, AtOneTemperatureTheMarchIsTheRelaxationLaw)
{
    const work_connection w = on_steel(spring_clamp(300_A));
    const grip_forecast f =
        forecast(w, in_si<current>(1e-3));  // no heat to speak of: the clamp stays at the air's 30 degC
    const relaxation law = relaxation_of(w.clamp.spring->wire, w.clamp.spring->stress, 30_degC, 2000_h);
    EXPECT_NEAR(static_cast<double>(f.grip_left), 1.0 - static_cast<double>(law.bracket.typical), 1e-9);
    EXPECT_NEAR(static_cast<double>(f.grip_left_low), 1.0 - static_cast<double>(law.bracket.high), 1e-9);
}

// Force, resistance, temperature and relaxation marched with small fixed steps, the same laws without step control.
TEST(Grip, StepControlDoesNotMoveTheResult)
{
    const work_connection w = on_steel(spring_clamp(300_A), surface_state::spatter_covered);
    const cable lead = welding_cable(w.clamp.largest_cable, 10_m);
    const load work{.current = 340_A, .duty = duty_cycle::of(6_min, 10_min)};
    const grip_forecast f = grip_over_time(w, lead, work, shop, 500_h);

    detail::clamp_stretch stretch{
        {element_of(w, shop, work.current, false), element_of(lead, shop, work.current, false)}, 0, w, shop, work};
    relaxation_state spring(w.clamp.spring->wire, w.clamp.spring->stress);
    double time = 0.0, step = 10.0, left = 1.0;
    temperature mean = stretch.at(0.0, scatter::typical).mean, peak = mean;
    while (time < (500_h).value()) {
        const double dt = std::min(step, (500_h).value() - time);
        spring.advance(mean, in_si<duration>(dt));
        left = 1.0 - static_cast<double>(spring.result().bracket.typical);
        const double warm = (modulus_at(1_Pa, peak) / 1_Pa).value();
        const auto now = stretch.at(1.0 - left * warm, scatter::typical);
        mean = now.mean;
        peak = now.peak;
        time += dt;
        step = std::min(step * 1.05, 3600.0);
    }
    EXPECT_NEAR(static_cast<double>(f.grip_left), left, 0.003);
    EXPECT_NEAR(f.points.back().peak_temperature.in_celsius(), peak.in_celsius(), 0.5);
}

// common practice, no source: for long at its rated current a spring clamp degrades faster than a screw clamp, a lug
// outlasts both; oversizing keeps grip; spatter under the jaw shortens life
TEST(Grip, TradeFactsComeOut)
{
    const double spring =
        static_cast<double>(forecast(on_steel(spring_clamp(300_A), surface_state::oxidized), 300_A).grip_left);
    const double screw =
        static_cast<double>(forecast(on_steel(screw_clamp(300_A), surface_state::oxidized), 300_A).grip_left);
    const double lug = static_cast<double>(
        forecast(on_steel(bolted_work_lug(square_mm(70)), surface_state::oxidized), 300_A).grip_left);
    EXPECT_LT(spring, screw);
    EXPECT_LT(screw, lug);
    const double bigger =
        static_cast<double>(forecast(on_steel(spring_clamp(500_A), surface_state::oxidized), 300_A).grip_left);
    EXPECT_GT(bigger, spring);
    const double spatter =
        static_cast<double>(forecast(on_steel(spring_clamp(300_A), surface_state::spatter_covered), 300_A).grip_left);
    EXPECT_LT(spatter, spring);
}

TEST(Grip, AnAbusedClampRunsAway)
{
    const grip_forecast f =
        forecast(on_steel(spring_clamp(100_A), surface_state::heavy_rust), 900_A, duty_cycle::continuous());
    EXPECT_TRUE(f.runs_away);
    EXPECT_TRUE(f.spring_destroyed);
    EXPECT_TRUE(f.basis.has(range_flag::spring_destroyed));
    ASSERT_TRUE(f.inspect_by && f.quarter_lost);
    EXPECT_LE(f.quarter_lost->low, f.quarter_lost->typical);
    EXPECT_LE(f.quarter_lost->typical, f.quarter_lost->high);
    for (const grip_point& p : f.points)
        EXPECT_TRUE(std::isfinite(p.force.value()) && std::isfinite(p.resistance.value()));
}

TEST(Grip, RefusesWhatCannotBe)
{
    const work_connection w = on_steel(spring_clamp(300_A));
    const cable lead = welding_cable(square_mm(70), 10_m);
    EXPECT_THROW(static_cast<void>(grip_over_time(w, lead, {.current = 0_A}, shop, 10_h)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(grip_over_time(w, lead, {.current = 100_A}, shop, 0_h)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(grip_over_time(w, lead, {.current = 100_A}, shop,
                                                  in_si<duration>(std::numeric_limits<double>::quiet_NaN()))),
                 not_finite_error);
    EXPECT_THROW(static_cast<void>(grip_over_time(w, lead, {.current = 100_A}, shop, 1e9_h)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(grip_over_time(on_steel(spring_clamp(300_A), surface_state::painted_unbroken), lead,
                                                  {.current = 100_A}, shop, 10_h)),
                 bad_station_error);
}

}  // namespace
