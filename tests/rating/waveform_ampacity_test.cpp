// What a lead may carry of an alternating or pulsed current.
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/waveform_ampacity.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

// relation: at its rating, whatever the course, the lead is at its limit
TEST(WaveformAmpacity, BringsTheLeadToItsLimit)
{
    const surroundings shop{.air = 30_degC};
    const duty_cycle duty = duty_cycle::of(6_min, 10_min);
    for (const double mm2 : {35.0, 120.0}) {
        const cable lead = welding_cable(square_mm(mm2), 10_m);
        const ampacity dc = ampacity_of(lead, shop, duty);
        EXPECT_EQ(ampacity_of(lead, shop, duty, waveform::dc(1_A)).amps, dc.amps);
        const ampacity ac = ampacity_of(lead, shop, duty, waveform::sine(100_A, in_si<frequency>(400.0)));
        EXPECT_LT(ac.amps, dc.amps);
        const waveform at = waveform::sine(ac.amps, in_si<frequency>(400.0));
        EXPECT_NEAR(heating_of(lead, shop, at, duty).conductor_peak.in_kelvin(), dc.limit.in_kelvin(), 0.01) << mm2;
    }
}
