// Programmes of many welds: a fixture that makes a dozen of them, each with its own current and rest.
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;

namespace {

const cable lead = welding_cable(square_mm(35), 10_m);
const surroundings shop{.air = 25_degC};

std::vector<heating_segment> dozen()
{
    std::vector<heating_segment> out;
    for (int weld = 0; weld < 12; ++weld) {
        out.push_back({in_si<current>(180.0 + 15.0 * weld), in_si<duration>(20.0 + 3.0 * weld)});
        out.push_back({current{}, in_si<duration>(70.0 - 4.0 * weld)});
    }
    return out;
}

}  // namespace

// relation: one weld and its rest said twelve, or sixty, times over is the same programme
TEST(LongProgramme, RepeatedIsTheSame)
{
    const std::vector<heating_segment> once{{300_A, 40_s}, {current{}, 80_s}};
    const cable_heating a = heating_of_programme(lead, shop, once);
    for (const int times : {12, 60}) {
        std::vector<heating_segment> many;
        for (int i = 0; i < times; ++i) many.insert(many.end(), once.begin(), once.end());
        const cable_heating b = heating_of_programme(lead, shop, many);
        EXPECT_NEAR(a.conductor_peak.in_kelvin(), b.conductor_peak.in_kelvin(), 0.02) << times;
        EXPECT_NEAR(a.conductor_mean.in_kelvin(), b.conductor_mean.in_kelvin(), 0.02) << times;
        EXPECT_NEAR(a.surface_peak.in_kelvin(), b.surface_peak.in_kelvin(), 0.02) << times;
    }
}

// against the lead followed in time from cold by lead_transient, which finds no period: twelve welds round and round
// until they repeat
TEST(LongProgramme, ADozenWeldsAgreeWithFollowingThem)
{
    const std::vector<heating_segment> programme = dozen();
    const cable_heating settled = heating_of_programme(lead, shop, programme);
    temperature peak = shop.air;
    conductor_profile now = lead_at_rest(lead, shop);
    for (int round = 0; round < 12; ++round) {
        peak = shop.air;
        for (const heating_segment& s : programme) {
            now = temperature_after(lead, shop, {s.current, s.duration}, now);
            peak = std::max(peak, now.conductor);
        }
    }
    EXPECT_NEAR(settled.conductor_peak.in_kelvin(), peak.in_kelvin(), 0.1);
}

// the same with forty segments that swing by a hundred kelvin and more: each is still cut finely enough
TEST(LongProgramme, ManyHardWeldsAgreeWithFollowingThem)
{
    std::vector<heating_segment> programme;
    for (int weld = 0; weld < 20; ++weld) {
        programme.push_back({in_si<current>(380.0 + 10.0 * (weld % 7)), in_si<duration>(240.0 + 10.0 * (weld % 5))});
        programme.push_back({current{}, in_si<duration>(500.0 - 20.0 * (weld % 3))});
    }
    const cable_heating settled = heating_of_programme(lead, shop, programme);
    temperature peak = shop.air, lowest = temperature::celsius(1000);
    conductor_profile now = lead_at_rest(lead, shop);
    for (int round = 0; round < 2; ++round) {
        peak = shop.air;
        for (const heating_segment& s : programme) {
            now = temperature_after(lead, shop, {s.current, s.duration}, now);
            peak = std::max(peak, now.conductor);
            lowest = std::min(lowest, now.conductor);
        }
    }
    ASSERT_GT((peak - lowest).value(), 100.0);
    EXPECT_NEAR(settled.conductor_peak.in_kelvin(), peak.in_kelvin(), 0.005 * (peak - shop.air).value());
}

TEST(LongProgramme, RefusesNone)
{
    EXPECT_THROW((void)heating_of_programme(lead, shop, {}), out_of_range_error);
}
