#include <cmath>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/material/metals.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

const joint_limits steel = joint_limits_of({mild_steel, mild_steel}, 20_degC);

joint_limits random_limits(random_numbers& random)
{
    const voltage melting = in_si<voltage>(random.log_between(0.05, 1.0));
    return {random.between(0.0, 1.0) * melting, melting};
}

}  // namespace

// relations, over random joints: the root solves its equation; ohmic below softening; between the two drops above it
TEST(JointCharacteristic, SolvesItsEquation)
{
    random_numbers random(7);
    for (int i = 0; i < random_cases; ++i) {
        const joint_limits limits = random_limits(random);
        const conductance g = in_si<conductance>(random.log_between(1, 1e6));
        const current amps = in_si<current>(random.log_between(0.1, 1e4));
        const double x = (amps / g).value(), v = joint_drop(amps, g, limits).value(), s = limits.softening.value(),
                     m = limits.melting.value();
        if (x <= s) {
            EXPECT_EQ(v, x);
        } else {
            EXPECT_GE(v, s * (1 - 1e-14));
            EXPECT_LE(v, m);
            EXPECT_LE(v, x);
            EXPECT_NEAR(v * v * (m - s) + x * x * (v - m), 0.0, 1e-13 * (x * x * m + m * m * m));
        }
    }
}

// properties: drop rises with current and falls with conductance; resistance falls once spots yield
TEST(JointCharacteristic, IsMonotone)
{
    random_numbers random(8);
    for (int i = 0; i < random_cases; ++i) {
        const joint_limits limits = random_limits(random);
        const conductance g = in_si<conductance>(random.log_between(1, 1e6));
        const current amps = in_si<current>(random.log_between(0.1, 1e4));
        const voltage v = joint_drop(amps, g, limits);
        EXPECT_LE(v, joint_drop(1.01 * amps, g, limits));
        EXPECT_GE(v, joint_drop(amps, 1.01 * g, limits));
        EXPECT_GE((v / amps).value(), (joint_drop(1.01 * amps, g, limits) / (1.01 * amps)).value() * (1 - 1e-12));
    }
}

TEST(JointCharacteristic, IsContinuousAtSoftening)
{
    const conductance g = 1.0 / 300_uohm;
    const current edge = steel.softening * g;
    EXPECT_NEAR_REL(joint_drop((1.0 + 1e-9) * edge, g, steel).value(),
                    joint_drop((1.0 - 1e-9) * edge, g, steel).value(), 1e-8);
}

// limiting cases: towards the melting drop for a huge current or hardly any conductance, and no further
TEST(JointCharacteristic, TendsToTheMeltingDrop)
{
    EXPECT_EQ(joint_drop(0_A, in_si<conductance>(1e3), steel).value(), 0.0);
    voltage last = 0_V;
    for (double amps = 1.0; amps < 1e7; amps *= 3.0) {
        const voltage v = joint_drop(in_si<current>(amps), in_si<conductance>(1e3), steel);
        EXPECT_LT(v, steel.melting);
        EXPECT_GE(v, last);
        last = v;
    }
    EXPECT_NEAR_REL(last.value(), steel.melting.value(), 1e-6);
    EXPECT_LE(joint_drop(in_si<current>(1e300), in_si<conductance>(1e-300), steel), steel.melting);
    EXPECT_LE(joint_drop(200_A, in_si<conductance>(5e-324), steel), steel.melting);
    // a bulk at the melting point: wetted, no drop
    EXPECT_EQ(joint_drop(200_A, in_si<conductance>(1e3), joint_limits_of({tinned_copper, brass}, 240_degC)).value(),
              0.0);
    // a bulk past softening: levelling from the first ampere on
    EXPECT_LT(joint_drop(200_A, in_si<conductance>(1e3), joint_limits_of({annealed_copper, annealed_copper}, 300_degC))
                  .value(),
              0.2);
}

// source: "Improved Bonding and Grounding Methods", 2012: 11 milliohm at 55 A over two pierced painted steel faces,
// 0.30 V each (tests/reference/contacts-measured-dirty.csv). It lies where the law lets a steel joint level off.
TEST(JointCharacteristic, PiercedPaintLiesBetweenSofteningAndMelting)
{
    const voltage measured = 0.5 * 55_A * 11_mohm;
    EXPECT_GT(measured, steel.softening);
    EXPECT_LT(measured, steel.melting);
    // the cold resistance that the law needs to give that drop is 2.2 milliohm: the spots have since grown hot
    const conductance cold = conductance_for_drop(55_A, measured, steel);
    EXPECT_NEAR_REL(1.0 / cold.value(), 2.2e-3, 0.02);
    EXPECT_NEAR_REL(joint_drop(55_A, cold, steel).value(), measured.value(), 1e-12);
}

namespace {

joint_limits with_growth(random_numbers& random)
{
    joint_limits out = random_limits(random);
    out.hot_growth = random.between(0.0, 1.0);
    out.hot_scale = in_si<voltage>(random.log_between(0.03, 0.3));
    return out;
}

// f of the equation
double hot(const joint_limits& l, double v)
{
    return 1.0 + l.hot_growth * (std::hypot(1.0, v / l.hot_scale.value()) - 1.0);
}

}  // namespace

// relations, over random joints whose spots' resistance grows with heat: the root solves its equation, lies above that
// without growth, and both inverses agree
TEST(JointCharacteristic, SolvesItsEquationWithHotSpots)
{
    random_numbers random(17);
    for (int i = 0; i < random_cases; ++i) {
        const joint_limits limits = with_growth(random);
        const conductance g = in_si<conductance>(random.log_between(1, 1e6));
        const current amps = in_si<current>(random.log_between(0.1, 1e4));
        const double x = (amps / g).value(), v = joint_drop(amps, g, limits).value(), s = limits.softening.value(),
                     m = limits.melting.value(), y = x * hot(limits, v);
        EXPECT_LE(v, m);
        EXPECT_GE(joint_drop(1.01 * amps, g, limits).value(), v);
        EXPECT_LE(joint_drop(amps, 1.01 * g, limits).value(), v);
        EXPECT_GE(v * (1 + 1e-14), joint_drop(amps, g, {limits.softening, limits.melting}).value());
        if (v < s) {
            EXPECT_NEAR_REL(v, y, 1e-11);
        } else {
            EXPECT_NEAR(v * v * (m - s) + y * y * (v - m), 0.0, 1e-12 * (y * y * m + m * m * m));
        }
        if (v < 0.999 * m && v > 0.0) {
            EXPECT_NEAR_REL(conductance_for_drop(amps, in_si<voltage>(v), limits).value(), g.value(), 1e-9);
        }
    }
}

// limiting cases of the growth: none for a cold joint, continuous where the spots begin to yield
TEST(JointCharacteristic, HotSpotsAreContinuous)
{
    for (const metal& m : all_metals) {
        const joint_limits limits = joint_limits_of({m, m}, 20_degC);
        const double edge = limits.softening.value() / hot(limits, limits.softening.value());
        const auto at = [&](double x) { return joint_drop(in_si<current>(x), in_si<conductance>(1), limits).value(); };
        EXPECT_NEAR_REL(at(edge * (1 + 1e-10)), at(edge * (1 - 1e-10)), 1e-9);
        EXPECT_NEAR_REL(at(edge), limits.softening.value(), 1e-12);
        EXPECT_NEAR_REL(at(1e-6), 1e-6, 1e-9);
    }
}

// derivation, independent of the law's form: with T^2 = T0^2 + phi (V - phi)/L and a linear law of resistivity, a spot
// that keeps its size has I R_cold = integral of d phi/(1 + alpha (T - T0)). The factor 1 + (2/3) alpha (Tm - T0) is
// right for small drops and within 2 % of it at the softening drop of every metal here.
TEST(JointCharacteristic, HotFactorAgainstTheExactIntegral)
{
    const auto exact = [](const metal& m, double v, double t0) {
        constexpr int steps = 2000;  // Simpson
        const double alpha = m.temperature_coefficient.value();
        double sum = 0.0;
        for (int i = 0; i <= steps; ++i) {
            const double phi = v * i / steps;
            const double t = std::sqrt(t0 * t0 + phi * (v - phi) / lorenz_number);
            sum += (i == 0 || i == steps ? 1.0 : i % 2 == 1 ? 4.0 : 2.0) / (1.0 + alpha * (t - t0));
        }
        return v / (sum * v / steps / 3.0);  // drop over that of cold spots
    };
    for (const metal& m : {annealed_copper, aluminium, brass, mild_steel, stainless_steel}) {
        const joint_limits limits = joint_limits_of({m, m}, 20_degC);
        for (const double share : {0.05, 0.3, 0.6, 1.0}) {
            const double v = share * limits.softening.value();
            const double error = hot(limits, v) / exact(m, v, reference_temperature.in_kelvin()) - 1.0;
            EXPECT_NEAR(error, 0.0, share < 0.1 ? 1e-4 : 0.02) << m.name;
        }
    }
    // what leaving it out would understate where the spots begin to yield: two fifths for copper, six fifths for steel
    EXPECT_NEAR(exact(annealed_copper, softening_drop(annealed_copper, 20_degC).value(), 293.15), 1.44, 0.005);
    EXPECT_NEAR(exact(mild_steel, softening_drop(mild_steel, 20_degC).value(), 293.15), 2.21, 0.005);
}

// relation: the factor is 1 + alpha (T - 20 degC) with alpha the mean of both metals weighted by resistivity
TEST(JointCharacteristic, ConductanceFollowsTheMetals)
{
    const metal_pair pair{annealed_copper, mild_steel};
    const double alpha = ((pair.first.resistivity * pair.first.temperature_coefficient +
                           pair.second.resistivity * pair.second.temperature_coefficient) /
                          (pair.first.resistivity + pair.second.resistivity))
                             .value();
    for (const double celsius : {-20.0, 20.0, 60.0, 120.0}) {
        const conductance g = conductance_at(in_si<conductance>(5000), pair, temperature::celsius(celsius));
        EXPECT_NEAR_REL(5000 / g.value(), 1.0 + alpha * (celsius - 20.0), 1e-12);
    }
    EXPECT_EQ(conductance_at(in_si<conductance>(0), pair, 80_degC).value(), 0.0);
}

// The slopes a network takes against differences of joint_drop(), below and above the softening drop.
TEST(PairCharacteristic, IsTheDropWithItsSlopes)
{
    for (const metal_pair& pair : {metal_pair{annealed_copper, mild_steel}, metal_pair{mild_steel, mild_steel},
                                   metal_pair{annealed_copper, annealed_copper}}) {
        const detail::pair_characteristic law(pair);
        for (const double kelvin : {280.0, 350.0, 420.0})
            for (const double x : {0.01, 0.05, 0.15, 0.6}) {
                const auto drop = [&](double x20, double t) {
                    const temperature bulk = temperature::kelvin(t);
                    const double growth = detail::resistivity_growth(pair, bulk);
                    return joint_drop(1_A, in_si<conductance>(1.0 / (x20 * growth)), joint_limits_of(pair, bulk))
                        .value();
                };
                const detail::pair_characteristic::drop_at found = law.sloped(law.volts_at(x, kelvin), kelvin);
                EXPECT_NEAR_REL(found.volts, drop(x, kelvin), 1e-13);
                const double by_log = (drop(x * 1.0001, kelvin) - drop(x / 1.0001, kelvin)) / (2.0 * std::log(1.0001));
                EXPECT_NEAR(found.by_log, by_log, 1e-6 * found.volts) << x << " V, " << kelvin << " K";
                const double by_kelvin = (drop(x, kelvin + 0.01) - drop(x, kelvin - 0.01)) / 0.02;
                EXPECT_NEAR(found.by_kelvin, by_kelvin, 1e-7 * found.volts) << x << " V, " << kelvin << " K";
            }
    }
}

// source: the difference of the drop itself, on both sides of softening and up to near melting
TEST(SpotCharacteristic, ItsSlopeIsThatOfItsDrop)
{
    for (const metal_pair& metals : {metal_pair{annealed_copper, brass}, metal_pair{mild_steel, mild_steel}})
        for (const temperature bulk : {0_degC, 60_degC, 140_degC}) {
            const detail::spot_characteristic law(joint_limits_of(metals, bulk));
            for (double x = 1e-4; x < 10.0; x *= 1.7) {
                const double step = 1e-5 * x;
                const double by_difference = (law.drop(x + step) - law.drop(x - step)) / (2.0 * step);
                EXPECT_NEAR(law.slope(x, law.drop(x)), by_difference, 1e-5 * by_difference + 1e-10) << x;
            }
        }
    const detail::spot_characteristic melted(joint_limits_of({mild_steel, mild_steel}, mild_steel.melting));
    EXPECT_EQ(melted.slope(0.1, melted.drop(0.1)), 0.0);
}

TEST(JointCharacteristic, RefusesWhatCannotBe)
{
    const conductance g = in_si<conductance>(1e3);
    EXPECT_REFUSES_BAD_NUMBERS(joint_drop(in_si<current>(x), g, steel));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(joint_drop(1_A, in_si<conductance>(x), steel));
    EXPECT_REFUSES_BAD_NUMBERS(joint_drop(1_A, g, {in_si<voltage>(x), 1_V}));
    EXPECT_REFUSES_BAD_NUMBERS(joint_drop(1_A, g, {0_V, in_si<voltage>(x)}));
    EXPECT_THROW((void)joint_drop(1_A, g, {0.3_V, 0.2_V}), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(joint_drop(1_A, g, {0.2_V, 0.3_V, x, 0.1_V}));
    EXPECT_THROW((void)joint_drop(1_A, g, {0.2_V, 0.3_V, 1.1, 0.1_V}), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(joint_drop(1_A, g, {0.2_V, 0.3_V, 0.5, in_si<voltage>(x)}));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(conductance_for_drop(in_si<current>(x), 0.1_V, steel));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(conductance_for_drop(1_A, in_si<voltage>(x), steel));
    EXPECT_THROW((void)conductance_for_drop(1_A, steel.melting, steel), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(conductance_at(in_si<conductance>(x), {brass, brass}, 20_degC));
    metal nothing = brass;
    nothing.resistivity = in_si<resistivity>(0);
    EXPECT_THROW((void)conductance_at(g, {brass, nothing}, 20_degC), out_of_range_error);
}
