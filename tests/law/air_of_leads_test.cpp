// The default surface law in air from -40 to 60 degC, at altitude and for bright or white coverings, against first
// principles that are scaled so that they equal it at 25 degC, sea level and an emissivity of 0.9.
#include <algorithm>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/material/air.hpp>

#include "support/first_principles.hpp"
#include "support/published_ratings.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using namespace weldloop::test::published;
using weldloop::test::lone_cylinder;

namespace {

struct size {
    double conductor_mm, overall_mm, ohm_per_km;
};
// diameters and resistances of welding leads of 10 to 185 mm2, as in tests/law/periodic_heating_test.cpp
constexpr size sizes[] = {{4.6, 8.7, 1.91}, {5.9, 10.15, 1.21}, {12.45, 17.25, 0.272}, {19.6, 26.0, 0.106}};

struct place {
    double air_degC = 25.0, altitude_m = 0.0, emissivity = 0.9;
};

/// Rated current of first principles, their heat scaled, the surface found by halving.
double first_principles_current(const construction& c, const place& p, double limit_degC, double scale)
{
    const double pressure = pressure_at_altitude(in_si<length>(p.altitude_m)).value(), air = p.air_degC + 273.15;
    double low = p.air_degC, high = limit_degC;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        const double given =
            scale * lone_cylinder(c.overall_mm * 1e-3, air, middle + 273.15, 0.0, pressure, p.emissivity);
        (given < (limit_degC - middle) / c.covering_resistance ? low : high) = middle;
    }
    const double r = c.ohm_per_km * 1e-3 * (1.0 + 0.00393 * (limit_degC - 20.0));
    return std::sqrt((limit_degC - low) / c.covering_resistance / r);
}

double default_current(const construction& c, const place& p, double limit_degC)
{
    return rated_current(c,
                         {.diameter = {},
                          .air = temperature::celsius(p.air_degC),
                          .altitude = in_si<length>(p.altitude_m),
                          .emissivity = p.emissivity},
                         limit_degC);
}

/// The factor on first principles with which both rate alike at 25 degC, by halving.
double tie(const construction& c, double limit_degC)
{
    const double wanted = default_current(c, {}, limit_degC);
    double low = 0.5, high = 2.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (first_principles_current(c, {}, limit_degC, middle) < wanted ? low : high) = middle;
    }
    return low;
}

struct spread {
    double least = 0.0, most = 0.0;
};

/// Errors over all sizes; allowed unsafe and low as shares of the current.
spread over(const std::vector<place>& places, const std::vector<double>& limits, double unsafe, double low)
{
    spread out;
    for (const size& s : sizes)
        for (const double limit : limits) {
            const construction c = lead(s.conductor_mm, s.overall_mm, s.ohm_per_km);
            const double scale = tie(c, limit);
            for (const place& p : places) {
                if (p.air_degC > limit - 10.0) continue;
                const double error = default_current(c, p, limit) / first_principles_current(c, p, limit, scale) - 1.0;
                EXPECT_LE(error, unsafe) << s.overall_mm << " mm, " << limit << " degC, air " << p.air_degC << ", "
                                         << p.altitude_m << " m, emissivity " << p.emissivity;
                EXPECT_GE(error, -low) << s.overall_mm << " mm, " << limit << " degC, air " << p.air_degC << ", "
                                       << p.altitude_m << " m, emissivity " << p.emissivity;
                out.least = std::min(out.least, error);
                out.most = std::max(out.most, error);
            }
        }
    return out;
}

void record(const spread& s)
{
    testing::Test::RecordProperty("least_percent", std::to_string(100 * s.least));
    testing::Test::RecordProperty("most_percent", std::to_string(100 * s.most));
}

std::vector<place> all_air()
{
    std::vector<place> out;
    for (double air = -40.0; air <= 60.0; air += 5.0) out.push_back({.air_degC = air});
    return out;
}

const std::vector<double> usual_limits{85.0, 105.0};

}  // namespace

TEST(AirOfLeads, ColdAndHotAirFollowFirstPrinciples)
{
    record(over(all_air(), usual_limits, 0.01, 0.03));
}

// A covering of 60 degC is tied where its surface is 27 K above the air: there the standard's law lies 4 to 14 % above
// first principles, at 80 K 6 to 17 %, at 10 K no more than they. That difference over the rise is the standard's own,
// and is no matter of the air: it stays, and is all that is left here.
TEST(AirOfLeads, LowLimitsKeepTheStandardsGrowthWithTheRise)
{
    record(over(all_air(), {60.0}, 0.02, 0.05));
}

TEST(AirOfLeads, NeitherAltitudeNorEmissivityIsUnsafe)
{
    std::vector<place> places;
    for (const double air : {-40.0, 0.0, 25.0, 45.0})
        for (const double altitude : {0.0, 1500.0, 4000.0})
            for (const double emissivity : {0.1, 0.3, 0.6, 0.9, 0.95})
                places.push_back({.air_degC = air, .altitude_m = altitude, .emissivity = emissivity});
    record(over(places, usual_limits, 0.01, 0.035));
}
