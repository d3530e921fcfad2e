#include <weldloop/core/literals.hpp>
#include <weldloop/field/diagnose_body.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <utility>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station bench()
{
    station s{.name = "frame jig",
              .job = {.process = process::smaw, .current = 180_A, .duty = duty_cycle::of(4_min, 10_min)},
              .where = {.air = 25_degC}};
    s.path = {welding_cable(awg(1), 15_m), arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("lug", awg(1)), welding_cable(awg(1), 15_m).named("work lead")};
    return s;
}

finding one(const std::string& across, voltage volts, current amps = 180_A)
{
    return diagnose(bench(), {{.across = across, .volts = volts, .current = amps}}).front();
}

TEST(Diagnose, AGoodPartIsAsDescribed)
{
    const loop_state state = solve_loop(bench());
    for (const char* name : {"clamp", "lug", "work lead"}) {
        const voltage typical = state.parts[index_of(bench().path, name)].drop;
        const finding f = one(name, typical);
        EXPECT_TRUE(f.within_expected) << name;
        EXPECT_TRUE(f.most_likely.starts_with("as described")) << name << ": " << f.most_likely;
        EXPECT_NEAR_REL(f.measured.value(), (typical / 180_A).value(), 1e-12);
    }
}

TEST(Diagnose, TenfoldDropsAreBlamed)
{
    const finding clamp = one("clamp", 0.41_V, 178_A);
    EXPECT_FALSE(clamp.within_expected);
    EXPECT_FALSE(clamp.most_likely.starts_with("as described"));
    EXPECT_GT(clamp.remedy.volts_regained.value(), 0.2);
    const finding lug = one("lug", 0.060_V);
    EXPECT_FALSE(lug.most_likely.starts_with("as described"));
    EXPECT_EQ(lug.remedy.part, "lug");
    const finding lead = one("work lead", 1.62_V);
    EXPECT_FALSE(lead.within_expected);
    EXPECT_FALSE(lead.most_likely.starts_with("as described")) << lead.most_likely;
}

TEST(Diagnose, AColdLeadReadsLower)
{
    // a lead at the air's temperature: 15 m of 1 AWG at 25 degC
    const resistance cold = resistance_of(welding_cable(awg(1), 15_m), 25_degC);
    EXPECT_TRUE(one("work lead", cold * 180_A).within_expected);
}

TEST(Diagnose, LikelihoodsAddUpToOne)
{
    for (const double volts : {0.0, 0.001, 0.03, 0.4, 5.0}) {
        const finding f = one("clamp", in_si<voltage>(volts));
        double sum = 0.0;
        for (const explanation& e : f.considered) sum += static_cast<double>(e.likelihood);
        EXPECT_NEAR(sum, 1.0, 1e-9) << volts;
        EXPECT_EQ(f.most_likely, f.considered.front().condition);
    }
}

TEST(Diagnose, RefusesReadingsThatCannotBe)
{
    const auto read = [](const std::string& across, voltage v, current i) {
        return diagnose(bench(), {{.across = across, .volts = v, .current = i}});
    };
    EXPECT_THROW(read("clamp", -0.1_V, 100_A), out_of_range_error);
    EXPECT_THROW(read("clamp", 0.1_V, 0_A), out_of_range_error);
    EXPECT_THROW(read("clamp", in_si<voltage>(std::numeric_limits<double>::quiet_NaN()), 10_A), not_finite_error);
    EXPECT_THROW(read("no such part", 0.1_V, 100_A), bad_station_error);
    EXPECT_THROW(read("arc", 20_V, 100_A), bad_station_error);
    EXPECT_TRUE(diagnose(bench(), {}).empty());
}

// The density of a reading has its own spread on either side of the median and the same weight whatever they are: the
// integral over the logarithm is sqrt(2 pi).
TEST(Diagnose, DensityOfAReadingWeighsTheSameForAnyBand)
{
    const auto ohms = [](double x) { return in_si<resistance>(x); };
    for (const auto& [low, high] : {std::pair{0.9, 1.1}, std::pair{0.3, 1.2}, std::pair{0.95, 8.0}}) {
        const band<resistance> b{ohms(low * 1e-3), ohms(1e-3), ohms(high * 1e-3)};
        double sum = 0.0;
        constexpr double step = 1e-3;
        for (double u = -12.0; u < 12.0; u += step)
            sum += step * detail::density(in_si<resistance>(1e-3 * std::exp(u)), b);
        EXPECT_NEAR_REL(sum, std::sqrt(2.0 * std::numbers::pi), 1e-3) << low << ", " << high;
        // farther out on the wide side than on the narrow one for the same density
        if (high > 2.0) {
            EXPECT_GT(detail::density(in_si<resistance>(2e-3), b),
                      10.0 * detail::density(in_si<resistance>(0.5e-3), b));
        }
    }
}

}  // namespace
