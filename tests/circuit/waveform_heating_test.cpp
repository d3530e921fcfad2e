// Leads under alternating and pulsed current, against effective values by hand and the cable standard's skin effect.
#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/circuit/waveform_heating.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

const surroundings shop{.air = 25_degC};
const cable lead = welding_cable(square_mm(70), 10_m);

}  // namespace

TEST(WaveformHeating, DirectCurrentIsItself)
{
    EXPECT_EQ(waveform_ratio_of(lead, waveform::dc(200_A)), 1.0);
    const cable_heating a = heating_of(lead, shop, waveform::dc(200_A), duty_cycle::of(6_min, 10_min)),
                        b = heating_of(lead, shop, {.current = 200_A, .duty = duty_cycle::of(6_min, 10_min)});
    EXPECT_EQ(a.conductor_peak, b.conductor_peak);
}

// by hand: 80 A for 6 ms and 350 A for 4 ms have the effective value sqrt(0.6 80^2 + 0.4 350^2) = 229.8 A, their mean
// is 188 A; a lead sized for the mean would be sized for two thirds of the heat. On top comes the skin effect of their
// harmonics, 2 dI/(n pi) sin(0.4 n pi) at n 100 Hz, each with the factor of IEC 60287-1-1:2006, 2.1.2 (its upper ranges
// recalled)
TEST(WaveformHeating, PulsesHeatByTheirEffectiveValue)
{
    const waveform pulses = waveform::pulse(
        {.base = 80_A, .peak = 350_A, .base_time = in_si<duration>(6e-3), .peak_time = in_si<duration>(4e-3)});
    const double effective = std::sqrt(0.6 * 80.0 * 80.0 + 0.4 * 350.0 * 350.0);
    const double heating = heating_current_of(lead, pulses).value();
    constexpr double pi = 3.14159265358979;
    const double dc = resistance_per_length_of(lead, 20_degC).value();
    double heat = effective * effective;
    for (int n = 1; n <= 20000; ++n) {
        const double amplitude = 2.0 * 270.0 / (n * pi) * std::sin(0.4 * n * pi);
        const double xs = std::sqrt(8.0 * pi * 100.0 * n * 1e-7 / dc), xs4 = xs * xs * xs * xs;
        const double ys = xs <= 2.8   ? xs4 / (192.0 + 0.8 * xs4)
                          : xs <= 3.8 ? -0.136 - 0.0177 * xs + 0.0563 * xs * xs
                                      : 0.354 * xs - 0.733;
        heat += 0.5 * amplitude * amplitude * ys;
    }
    EXPECT_NEAR_REL(heating, std::sqrt(heat), 1e-3);
    EXPECT_GT(heating, 1.01 * effective);
    const cable_heating is = heating_of(lead, shop, pulses, duty_cycle::continuous());
    EXPECT_EQ(is.conductor_peak, heating_of(lead, shop, {.current = in_si<current>(heating)}).conductor_peak);
    EXPECT_GT(is.conductor_peak, heating_of(lead, shop, {.current = 188_A}).conductor_peak);
}

// IEC 60287-1-1:2006, 2.1.2: ys = xs^4/(192 + 0.8 xs^4), xs^2 = 8 pi f 1e-7/R', for a sine of 50 Hz
TEST(WaveformHeating, ASineHasTheSkinEffectOfTheCableStandard)
{
    for (const double mm2 : {70.0, 120.0, 185.0}) {
        const cable thick = welding_cable(square_mm(mm2), 10_m);
        const double dc = resistance_per_length_of(thick, 20_degC).value();
        const double xs4 = std::pow(8.0 * 3.14159265358979 * 50.0 * 1e-7 / dc, 2.0);
        EXPECT_NEAR(waveform_ratio_of(thick, waveform::sine(300_A, in_si<frequency>(50.0))),
                    1.0 + xs4 / (192.0 + 0.8 * xs4), 2e-3)
            << mm2;
    }
}
