// Bands, duty cycles, quantities, nearest words.
#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <string>
#include <string_view>
#include <type_traits>

#include <gtest/gtest.h>

#include <weldloop/core/band.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/nearest_word.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>

#include "core/every_quantity.hpp"
#include "support/near.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;

TEST(Quantities, CostNoMoreThanTheirNumber)
{
    weldloop::test::for_every_quantity([]<class Q>(Q, std::string_view name) {
        EXPECT_EQ(sizeof(Q), sizeof(double)) << name;
        EXPECT_EQ(wl::in_si<Q>(3.0).value(), 3.0) << name;
    });
}

TEST(Quantities, FitTogetherAsPhysicsHasThem)
{
    static_assert(std::is_same_v<decltype(1_V / 1_A), wl::resistance>);
    static_assert(std::is_same_v<decltype(1_V * 1_A), wl::power>);
    static_assert(std::is_same_v<decltype(1_W * 1_s), wl::energy>);
    static_assert(std::is_same_v<decltype(1_N / 1_m2), wl::pressure>);
    static_assert(std::is_same_v<decltype(1.0 / 1_ohm), wl::conductance>);
    static_assert(std::is_same_v<decltype(1_ohm * 1_m), wl::resistivity>);
    static_assert(std::is_same_v<decltype(wl::density{} * wl::specific_heat{}), wl::volumetric_heat>);
    static_assert(std::is_same_v<decltype(wl::thermal_conductivity{} * 1_m), wl::thermal_conductance>);
    static_assert(std::is_same_v<decltype(wl::heat_transfer_coefficient{} * 1_m2 * 1_K), wl::power>);
    static_assert(std::is_same_v<decltype(wl::mass{} * wl::specific_heat{}), wl::heat_capacity>);
    static_assert(!std::is_convertible_v<wl::voltage, wl::current>);
    static_assert(!std::is_convertible_v<double, wl::current>);
    EXPECT_NEAR_REL((240_A * 240_A * 1_mohm).value(), 57.6, 1e-14);
}

TEST(Band, MapsARisingFunctionInOrder)
{
    const wl::band<double> x{1.0, 2.0, 4.0};
    EXPECT_EQ(wl::mapped(x, [](double v) { return 3.0 * v; }), (wl::band<double>{3.0, 6.0, 12.0}));
    EXPECT_EQ(wl::exactly(5_A), (wl::band<wl::current>{5_A, 5_A, 5_A}));
}

TEST(Band, SwapsTheEndsOfAFallingFunction)
{
    const wl::band<wl::conductance> g{wl::in_si<wl::conductance>(1e3), wl::in_si<wl::conductance>(2e3),
                                      wl::in_si<wl::conductance>(4e3)};
    const wl::band<wl::resistance> r = wl::mapped(g, [](const wl::conductance& v) { return 1.0 / v; });
    EXPECT_NEAR_REL(r.low.value(), 0.25e-3, 1e-14);
    EXPECT_NEAR_REL(r.typical.value(), 0.5e-3, 1e-14);
    EXPECT_NEAR_REL(r.high.value(), 1e-3, 1e-14);
    static_assert(std::is_same_v<decltype(wl::mapped(g, [](const wl::conductance& v) { return 1.0 / v; })),
                                 wl::band<wl::resistance>>);
}

TEST(DutyCycle, IsAnOnTimeWithinAPeriod)
{
    const wl::duty_cycle d = wl::duty_cycle::of(6_min, 10_min);
    EXPECT_EQ(d.on(), 6_min);
    EXPECT_EQ(d.period(), 10_min);
    EXPECT_EQ(d.rest(), 4_min);
    EXPECT_NEAR_REL(static_cast<double>(d.share()), 0.6, 1e-15);
    EXPECT_FALSE(d.is_continuous());
    EXPECT_EQ(wl::to_text(d), "60 % of 10 min");
    EXPECT_EQ(wl::to_text(wl::duty_cycle::continuous()), "continuous");
    EXPECT_TRUE(wl::duty_cycle::continuous().is_continuous());
    EXPECT_EQ(wl::duty_cycle::of(0.6), d);
    EXPECT_EQ(wl::duty_cycle::of(1.0), wl::duty_cycle::continuous());
}

TEST(DutyCycle, RefusesWhatCannotBe)
{
    EXPECT_THROW((void)wl::duty_cycle::of(0_min, 10_min), wl::out_of_range_error);
    EXPECT_THROW((void)wl::duty_cycle::of(11_min, 10_min), wl::out_of_range_error);
    EXPECT_THROW((void)wl::duty_cycle::of(-1.0 * 1_min, 10_min), wl::out_of_range_error);
    EXPECT_THROW((void)wl::duty_cycle::of(1_min, 0_min), wl::out_of_range_error);
    EXPECT_THROW((void)wl::duty_cycle::of(wl::in_si<wl::duration>(std::numeric_limits<double>::quiet_NaN()), 10_min),
                 wl::not_finite_error);
    EXPECT_THROW((void)wl::duty_cycle::of(1_min, wl::in_si<wl::duration>(std::numeric_limits<double>::infinity())),
                 wl::not_finite_error);
    EXPECT_THROW((void)wl::duty_cycle::of(60.0), wl::out_of_range_error);
    EXPECT_THROW((void)wl::duty_cycle::of(0.0), wl::out_of_range_error);
}

TEST(Require, RefusesPlainNumbersThatAreNone)
{
    using limits = std::numeric_limits<double>;
    for (const double x : {0.0, -1.0, limits::max(), limits::lowest(), limits::denorm_min()})
        EXPECT_EQ(weldloop::require_finite(x, "number"), x);
    for (const double x : {limits::infinity(), -limits::infinity(), limits::quiet_NaN()})
        EXPECT_THROW((void)weldloop::require_finite(x, "number"), weldloop::not_finite_error) << x;
}

TEST(NearestWord, CountsSlipsOfTyping)
{
    EXPECT_EQ(wl::typing_distance("clamp", "clamp"), 0U);
    EXPECT_EQ(wl::typing_distance("calmp", "clamp"), 1U);   // two neighbours swapped
    EXPECT_EQ(wl::typing_distance("clam", "clamp"), 1U);    // one missing
    EXPECT_EQ(wl::typing_distance("clammp", "clamp"), 1U);  // one too many
    EXPECT_EQ(wl::typing_distance("cramp", "clamp"), 1U);   // one replaced
    EXPECT_EQ(wl::typing_distance("", "clamp"), 5U);
    EXPECT_EQ(wl::typing_distance("kitten", "sitting"), 3U);
    std::mt19937 random(2);
    std::uniform_int_distribution<int> letter('a', 'd'), size(0, 8);
    for (int i = 0; i < 500; ++i) {
        std::string a(static_cast<std::size_t>(size(random)), 'a'), b(static_cast<std::size_t>(size(random)), 'a');
        for (char& c : a) c = static_cast<char>(letter(random));
        for (char& c : b) c = static_cast<char>(letter(random));
        EXPECT_EQ(wl::typing_distance(a, b), wl::typing_distance(b, a));
        EXPECT_EQ(wl::typing_distance(a, b) == 0U, a == b);
        EXPECT_LE(wl::typing_distance(a, b), std::max(a.size(), b.size()));
    }
}

TEST(NearestWord, PicksTheNearest)
{
    constexpr std::array<std::string_view, 4> words{"clean", "oxidized", "light rust", "heavy rust"};
    EXPECT_EQ(wl::nearest_word("oxidised", words), "oxidized");
    EXPECT_EQ(wl::nearest_word("rust", words), "clean");  // five letters either way: the earlier word
    EXPECT_EQ(wl::nearest_word("hevy rust", words), "heavy rust");
    EXPECT_EQ(wl::nearest_word("", words), "clean");
    EXPECT_EQ(wl::nearest_word("x", {}), "");
    EXPECT_FALSE(wl::nearest_word(std::string(100000, 'q'), words).empty());  // bounded work for any text
    constexpr std::array<std::string_view, 3> scales{"degC", "degF", "K"};
    EXPECT_EQ(wl::nearest_word("degf", scales), "degF");
    EXPECT_EQ(wl::nearest_word("k", scales), "K");
    EXPECT_EQ(wl::near_word("hevy rust", words), "heavy rust");
    EXPECT_EQ(wl::near_word("HEAVY RUST", words), "heavy rust");
    EXPECT_EQ(wl::near_word("bright", words), "clean");  // by meaning, not by letters
    EXPECT_EQ(wl::near_word("mouse", words), "");
    EXPECT_EQ(wl::near_word("", words), "");
    EXPECT_EQ(wl::near_word("x", {}), "");
    EXPECT_EQ(wl::near_word("degX", scales), "");  // degC and degF are equally near
    EXPECT_TRUE(wl::is_near("mim", "min"));
    EXPECT_FALSE(wl::is_near("mm", "min"));
    EXPECT_FALSE(wl::is_near("V", "A"));
    EXPECT_EQ(wl::trade_meaning("mig", words), "");  // known, but none of these
}
