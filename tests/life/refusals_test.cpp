// What questions of time refuse: answers beyond the numbers there are, and wires that cannot be.
#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/life/covering_ageing.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/life/grip_service.hpp>
#include <weldloop/life/grip_threshold.hpp>
#include <weldloop/life/grip_time.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr double huge = 1.7e308;

grip_forecast forecast_of(const work_connection& w)
{
    return grip_over_time(w, welding_cable(square_mm(50), 10_m), {.current = 150_A, .duty = duty_cycle::of(0.3)}, {},
                          100_h);
}
}  // namespace

TEST(LifeRefusals, HoursBeyondTheNumbersThereAre)
{
    EXPECT_THROW((void)clock_hours(in_si<duration>(huge), {.rest = 16_h}), error);
    EXPECT_THROW((void)shift_hours_of_arc(in_si<duration>(huge), duty_cycle::of(0.5)), error);
    EXPECT_THROW((void)covering_age_at(flexible_rubber, temperature::kelvin(1e300), in_si<duration>(huge)), error);
}

TEST(LifeRefusals, AWireWhoseRelaxationCannotBe)
{
    work_connection w{.clamp = spring_clamp(300_A), .onto = mild_steel};
    w.clamp.spring->wire.rise_scale = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW((void)forecast_of(w), not_finite_error);
    w.clamp = spring_clamp(300_A);
    w.clamp.spring->wire.preset.parameter_slope = per_kelvin{};
    EXPECT_THROW((void)forecast_of(w), out_of_range_error);
    // grip that was lost before by a wire that loses none
    w.clamp = spring_clamp(300_A);
    w.clamp.spring->wire.normal.reference_exponent = w.clamp.spring->wire.preset.reference_exponent = 0.0;
    w.grip_lost = 0.1;
    EXPECT_THROW((void)forecast_of(w), out_of_range_error);
}

// The least number there is, halved, is none: the march of a screw had no first moment and no end.
TEST(LifeRefusals, TheShortestForecastEnds)
{
    const duration least = in_si<duration>(std::numeric_limits<double>::denorm_min());
    for (const work_clamp& c : {screw_clamp(300_A), spring_clamp(300_A), bolted_work_lug(square_mm(50))}) {
        const clamp_place at{.joint = {.clamp = c, .onto = mild_steel},
                             .lead = welding_cable(square_mm(50), 10_m),
                             .duty = duty_cycle::continuous()};
        EXPECT_GT(largest_clamp_current(at, least), 100_A) << c.name;
    }
}

// The rate of relaxation at its first moment passes what a double holds: a moment so short is told by the law's closed
// form alone. A nanosecond loses a little less than two do.
TEST(LifeRefusals, TheShortestForecastHasNumbers)
{
    const auto after = [](double seconds) {
        return grip_over_time({.clamp = spring_clamp(300_A), .onto = mild_steel}, welding_cable(square_mm(50), 10_m),
                              {.current = 150_A, .duty = duty_cycle::continuous()}, {}, in_si<duration>(seconds), {});
    };
    for (const double seconds : {std::numeric_limits<double>::denorm_min(), 2.22507e-308, 1e-200, 1e-9}) {
        const grip_forecast f = after(seconds);
        EXPECT_GT(static_cast<double>(f.grip_left_low), 0.99) << seconds;
        for (const auto* points : {&f.points, &f.poor_points, &f.kind_points}) {
            EXPECT_EQ(points->back().at.value(), seconds);
            for (const grip_point& p : *points) {
                EXPECT_TRUE(std::isfinite(p.at.value())) << seconds;
                EXPECT_GT(p.force, 300_N) << seconds;
                EXPECT_GT(p.resistance.value(), 0.0) << seconds;
                EXPECT_GT(p.peak_temperature, 25_degC) << seconds;
            }
        }
    }
    EXPECT_GE(static_cast<double>(after(1e-9).grip_left), static_cast<double>(after(1.001e-9).grip_left));
    EXPECT_NEAR(after(1e-9).points.back().peak_temperature.in_kelvin(),
                after(1.001e-9).points.back().peak_temperature.in_kelvin(), 1e-3);
}

// A wire whose rise counts a hundred times is, at 10 degC, below absolute zero as its law takes it: it keeps its force.
TEST(LifeRefusals, AWireBelowAbsoluteZeroOfItsLawEnds)
{
    work_clamp c = spring_clamp(300_A);
    c.spring->wire.rise_scale = 100.0;
    const clamp_place at{.joint = {.clamp = c, .onto = mild_steel},
                         .lead = welding_cable(square_mm(50), 10_m),
                         .duty = duty_cycle::of(0.3),
                         .where = {.air = temperature::celsius(10.0)}};
    const band<duration> found = hours_to_loss(at, 2_A, 0.25);
    EXPECT_EQ(found.low, longest_forecast);
    EXPECT_EQ(found.high, longest_forecast);
}
