#include <array>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/elastic_contact.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;
using test::random_cases;
using test::random_numbers;

constexpr std::array with_constants{annealed_copper, tinned_copper, aluminium,      brass,
                                    bronze,          mild_steel,    stainless_steel};

}  // namespace

// source: Timoshenko and Goodier, Theory of Elasticity, two spheres of one metal with nu = 0.3 (from memory), here one
// of them flat: a = 1.109 (F r/E)^(1/3), highest pressure 0.388 (F E^2/r^2)^(1/3), which is 1.5 times the mean one
TEST(ElasticContact, CoefficientsOfTheTextbook)
{
    const elastic_metal m{"any", 200_GPa, 0.3, &hertz_contact};
    const pressure e = contact_modulus(m, m);
    for (const double newtons : {1.0, 30.0, 400.0}) {
        const double r = 5e-3, a = elastic_spot_radius(in_si<force>(newtons), in_si<length>(r), e).value();
        EXPECT_NEAR_REL(a, 1.109 * std::cbrt(newtons * r / 200e9), 5e-4);
        EXPECT_NEAR_REL(1.5 * newtons / (std::numbers::pi * a * a), 0.388 * std::cbrt(newtons * 4e22 / (r * r)), 1e-3);
    }
}

// independent: the pressure p0 sqrt(1 - s^2/a^2) on an elastic half space, its sinking by the Boussinesq integral
// (1/(pi E*)) of p over distance, summed in rings and rays about the point. Centre and edge of the spot must sink by as
// much less as the sphere rises between them, a^2/(2 r).
TEST(ElasticContact, FitsTheSphereInTheHalfSpace)
{
    const double force_n = 100.0, r = 8e-3, e = 7e10;
    const double a = elastic_spot_radius(in_si<force>(force_n), in_si<length>(r), in_si<pressure>(e)).value();
    const double p0 = 1.5 * force_n / (std::numbers::pi * a * a);
    const auto pressure_at = [&](double from_centre_squared) {
        const double left = 1.0 - from_centre_squared / (a * a);
        return left > 0.0 ? p0 * std::sqrt(left) : 0.0;
    };
    // rays from a point at a distance x from the centre: dA/distance = d(ray) d(angle)
    const auto sinks = [&](double x) {
        constexpr int angles = 800, steps = 800;
        double sum = 0.0;
        for (int i = 0; i < angles; ++i) {
            const double angle = 2.0 * std::numbers::pi * (i + 0.5) / angles, towards = x * std::cos(angle);
            const double inside = towards * towards + a * a - x * x;
            if (inside <= 0.0) continue;
            // the ray leaves the spot at `end`; steps close up towards it, where the pressure falls as a root
            const double end = towards + std::sqrt(inside);
            if (end <= 0.0) continue;
            for (int k = 0; k < steps; ++k) {
                const double u = (k + 0.5) / steps, ray = end * u * (2.0 - u), width = end * 2.0 * (1.0 - u) / steps;
                sum += pressure_at(x * x + ray * ray - 2.0 * ray * towards) * width;
            }
        }
        return sum * 2.0 * std::numbers::pi / angles / (std::numbers::pi * e);
    };
    EXPECT_NEAR_REL(sinks(0.0) - sinks(a), a * a / (2.0 * r), 1e-3);
    EXPECT_NEAR_REL(sinks(0.0) - sinks(0.5 * a), 0.25 * a * a / (2.0 * r), 2e-3);
}

// properties over random summits: area rises with force, never faster than the force; the pressure never passes the
// hardness; elastic spots grow as F^(1/3), plastic ones as F^(1/2); regimes follow each other with the force
TEST(ElasticContact, FromElasticToPlastic)
{
    random_numbers random(71);
    int seen[3] = {};
    for (int i = 0; i < random_cases; ++i) {
        const auto any = [&] { return with_constants[static_cast<std::size_t>(random.count(0, 6))]; };
        const metal_pair metals{any(), any()};
        const length summit = in_si<length>(random.log_between(1e-5, 1.0));
        const force f = in_si<force>(random.log_between(1e-4, 1e4));
        const summit_bearing at = summit_bearing_of(f, summit, metals),
                             more = summit_bearing_of(8.0 * f, summit, metals);
        const pressure hardness = std::min(metals.first.hardness, metals.second.hardness);
        EXPECT_GT(more.bearing, at.bearing);
        EXPECT_LE(more.bearing.value(), 8.0 * at.bearing.value() * (1 + 1e-12));
        EXPECT_LE(at.mean_pressure.value(), hardness.value() * (1 + 1e-12));
        EXPECT_GE(static_cast<int>(more.regime), static_cast<int>(at.regime));
        EXPECT_NEAR_REL((at.mean_pressure * at.bearing).value(), f.value(), 1e-12);
        if (more.regime != bearing_regime::plastic) {
            EXPECT_NEAR_REL((more.radius / at.radius).value(), 2.0, 1e-12);
        }
        if (at.regime == bearing_regime::plastic) {
            EXPECT_NEAR_REL((more.radius / at.radius).value(), std::sqrt(8.0), 1e-12);
            EXPECT_EQ(at.radius, spot_radius(f, hardness));
        }
        EXPECT_LE(at.regime == bearing_regime::plastic ? 0.0 : (at.radius / summit).value(), 1.0 / 3.0);
        ++seen[static_cast<int>(at.regime)];
    }
    for (const int n : seen) EXPECT_GT(n, random_cases / 50);
}

// limiting cases, by hand: a jaw tooth rounded to 0.1 mm under 100 N of a clamp has yielded, a polished dome of 0.5 m
// under 1 N has not; no force, no spot
TEST(ElasticContact, TeethYieldAndDomesDoNot)
{
    const metal_pair brass_on_steel{brass, mild_steel};
    EXPECT_EQ(summit_bearing_of(100_N, 0.1_mm, brass_on_steel).regime, bearing_regime::plastic);
    EXPECT_EQ(summit_bearing_of(1_N, 0.5_m, brass_on_steel).regime, bearing_regime::elastic);
    const summit_bearing none = summit_bearing_of(0_N, 1_mm, brass_on_steel);
    EXPECT_EQ(none.radius.value(), 0.0);
    EXPECT_EQ(none.mean_pressure.value(), 0.0);
    EXPECT_EQ(none.regime, bearing_regime::elastic);
}

TEST(ElasticContact, RefusesWhatCannotBe)
{
    const elastic_metal fine{"any", 200_GPa, 0.3, &hertz_contact};
    const auto stiff = [](double x) { return elastic_metal{"any", in_si<pressure>(x), 0.3, &hertz_contact}; };
    const auto squeezed = [](double x) { return elastic_metal{"any", 200_GPa, x, &hertz_contact}; };
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(contact_modulus(stiff(x), fine));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(contact_modulus(fine, stiff(x)));
    EXPECT_REFUSES_BAD_NUMBERS(contact_modulus(squeezed(x), fine));
    EXPECT_THROW((void)contact_modulus(fine, squeezed(0.51)), out_of_range_error);
    EXPECT_REFUSES_BAD_NUMBERS(elastic_spot_radius(in_si<force>(x), 1_mm, 100_GPa));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(elastic_spot_radius(1_N, in_si<length>(x), 100_GPa));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(elastic_spot_radius(1_N, 1_mm, in_si<pressure>(x)));
    EXPECT_REFUSES_BAD_NUMBERS(summit_bearing_of(in_si<force>(x), 1_mm, {brass, mild_steel}));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(summit_bearing_of(1_N, in_si<length>(x), {brass, mild_steel}));
    EXPECT_THROW((void)summit_bearing_of(1_N, 1_mm, {brass, copper_clad_aluminium_10}), missing_data_error);
    metal soft = brass;
    soft.hardness = in_si<pressure>(0);
    EXPECT_THROW((void)summit_bearing_of(1_N, 1_mm, {soft, brass}), out_of_range_error);
}
