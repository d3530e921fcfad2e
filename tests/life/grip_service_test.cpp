#include <cmath>
#include <limits>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/life/grip_service.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

const surroundings shop{.air = 30_degC};

grip_forecast served(const grip_service& service, work_clamp clamp = spring_clamp(300_A), current amps = 400_A)
{
    return grip_over_time({.clamp = std::move(clamp), .onto = mild_steel, .surface = surface_state::oxidized},
                          welding_cable(square_mm(70), 10_m), {.current = amps, .duty = duty_cycle::of(6_min, 10_min)},
                          shop, 2000_h, service);
}

double end_resistance(const grip_forecast& f)
{
    return f.points.back().resistance.value();
}

}  // namespace

TEST(GripService, NamesItsHours)
{
    EXPECT_NEAR_REL(clock_hours(100_h, {.shift = 8_h, .rest = 16_h}).value(), (300_h).value(), 1e-15);
    EXPECT_EQ(clock_hours(100_h, {}).value(), (100_h).value());
    const duty_cycle duty = duty_cycle::of(6_min, 10_min);
    EXPECT_NEAR_REL(arc_hours(100_h, duty).value(), (60_h).value(), 1e-15);
    EXPECT_NEAR_REL(shift_hours_of_arc(arc_hours(100_h, duty), duty).value(), (100_h).value(), 1e-15);
    EXPECT_THROW(static_cast<void>(clock_hours(-1.0 * 1_h, {})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(clock_hours(1_h, {.shift = 0_h})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(arc_hours(in_si<duration>(std::numeric_limits<double>::infinity()), duty)),
                 not_finite_error);
    EXPECT_THROW(static_cast<void>(shift_hours_of_arc(-1.0 * 1_h, duty)), out_of_range_error);
}

// What the judgement says comes out: a knock adds 2 %, an opening takes two millionths of the force and the film with
// it.
TEST(GripService, KnocksAddToTheResistanceUntilTheClampIsOpened)
{
    const work_clamp clamp = spring_clamp(300_A);
    const auto jaws = [&](const grip_service& s) {
        // at a current that heats nothing the jaws' resistance is what the factors make of it
        const grip_forecast f = served(s, clamp, 1_A);
        return (end_resistance(f) - 1.0 / clamp.termination.typical.value() * 1.0);
    };
    grip_service calm;
    calm.film = false;
    grip_service knocked = calm;
    knocked.knocks = 0.1;  // 2000 h are 250 shifts: 25 knocks
    EXPECT_NEAR_REL(jaws(knocked) / jaws(calm), 1.5, 0.01);
    knocked.openings = 1.0;  // one knock in ten stands before the next opening
    EXPECT_NEAR_REL(jaws(knocked) / jaws(calm), 1.002 * std::pow(1.0 - 2e-6 * 250, -0.7), 1e-3);
}

TEST(GripService, OpeningsRenewTheSpotsAndWearTheGrip)
{
    const grip_forecast closed = served({}), opened = served({.openings = 100.0});
    EXPECT_LT(opened.points.back().film, closed.points.back().film);
    EXPECT_LT(opened.grip_left, closed.grip_left);
    EXPECT_NEAR_REL(static_cast<double>(opened.grip_left) / static_cast<double>(closed.grip_left),
                    std::exp(-wear_of_an_opening * 100.0 * 250.0), 5e-3);
}

TEST(GripService, CleaningTakesTheFilmOff)
{
    const grip_forecast never = served({}, screw_clamp(200_A), 600_A),
                        monthly = served({.clean_every = 160_h}, screw_clamp(200_A), 600_A);
    EXPECT_LT(monthly.points.back().film, never.points.back().film);
    EXPECT_LT(end_resistance(monthly), end_resistance(never));
    // the film grows as it did after the first cleaning
    EXPECT_LT(monthly.points.back().film.value(), 1.05 * never.points.back().film.value() * std::sqrt(160.0 / 2000.0));
    bool cleaned = false;
    for (std::size_t i = 1; i < monthly.points.size(); ++i)
        cleaned = cleaned || monthly.points[i].film < monthly.points[i - 1].film;
    EXPECT_TRUE(cleaned);
}

TEST(GripService, TighteningRestoresAScrewAndNotASpring)
{
    const grip_service weekly{.tighten_every = 40_h};
    EXPECT_GT(served(weekly, screw_clamp(300_A)).grip_left, served({}, screw_clamp(300_A)).grip_left);
    // fifty fresh starts of the steps, each within the march's 2e-5
    EXPECT_NEAR(static_cast<double>(served(weekly).grip_left), static_cast<double>(served({}).grip_left), 5e-5);
}

TEST(GripService, HotWorkAgesTheClamp)
{
    grip_service hot;
    hot.interpass = 180_degC;
    const grip_forecast cold = served({}), warm = served(hot);
    EXPECT_GT(warm.points.back().peak_temperature, cold.points.back().peak_temperature);
    EXPECT_LT(warm.grip_left, cold.grip_left);
    // the same work described as preheated
    const grip_forecast preheated = grip_over_time(
        {.clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::oxidized, .preheat = 180_degC},
        welding_cable(square_mm(70), 10_m), {.current = 400_A, .duty = duty_cycle::of(6_min, 10_min)}, shop, 2000_h);
    EXPECT_EQ(static_cast<double>(preheated.grip_left), static_cast<double>(warm.grip_left));
}

TEST(GripService, JawsThatGetTooHotAreReported)
{
    EXPECT_FALSE(served({}).jaws_soften);
    EXPECT_TRUE(served({}, spring_clamp(100_A), 1500_A).jaws_soften);
}
