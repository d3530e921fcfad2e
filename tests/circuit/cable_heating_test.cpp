#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <random>
#include <string>
#include <utility>

#include <gtest/gtest.h>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

cable lead_of(double mm2)
{
    return welding_cable(square_mm(mm2), 20_m);
}

double joule(const cable& lead, current i, temperature t)
{
    return (i * i * resistance_per_length_of(lead, t)).value();
}

}  // namespace

TEST(SteadyLoss, CoveringAndSurfaceInSeries)
{
    const cable lead = lead_of(50);
    const surroundings where{.air = 25_degC};
    for (double t : {26.0, 40.0, 85.0, 200.0, 1000.0}) {
        const temperature conductor = temperature::celsius(t);
        const temperature surface = steady_surface_of(lead, where, conductor);
        const double through =
            covering_conductance(lead.covering.thermal_conductivity, lead.conductor_diameter, lead.overall_diameter)
                .value() *
            (conductor - surface).value();
        EXPECT_NEAR_REL(steady_loss_of(lead, where, conductor).value(), through, 1e-9);
        EXPECT_NEAR_REL(surface_loss({.diameter = lead.overall_diameter, .air = 25_degC}, surface).value(), through,
                        1e-9);
        EXPECT_GT(surface, where.air);
        EXPECT_LT(surface, conductor);
    }
    EXPECT_EQ(steady_loss_of(lead, where, 25_degC).value(), 0.0);
    EXPECT_LT(steady_loss_of(lead, where, 10_degC).value(), 0.0);
    EXPECT_EQ(steady_surface_of(lead, where, 25_degC), 25_degC);
}

TEST(SteadyLoss, IsTheHeatThatHoldsTheConductor)
{
    std::mt19937 random(3);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 100; ++n) {
        const cable lead = lead_of(10 + 230 * unit(random));
        surroundings where{.air = temperature::celsius(-20 + 60 * unit(random)),
                           .wind = in_si<speed>(n % 3 ? 0.0 : 4 * unit(random)),
                           .lay = all_lays[static_cast<std::size_t>(n) % all_lays.size()],
                           .altitude = in_si<length>(n % 4 ? 0.0 : 2500.0),
                           .sun = in_si<heat_flux>(n % 5 ? 0.0 : 700 * unit(random))};
        const cable_heating hot = heating_of(lead, where, {.current = in_si<current>(3.0 * lead.size.number())});
        if (hot.melts) continue;
        EXPECT_NEAR_REL(steady_loss_of(lead, where, hot.conductor_peak).value(),
                        joule(lead, in_si<current>(3.0 * lead.size.number()), hot.conductor_peak), 1e-8);
        EXPECT_NEAR((steady_surface_of(lead, where, hot.conductor_peak) - hot.surface_peak).value(), 0.0, 1e-7);
    }
}

TEST(SteadyLoss, SunHeatsALeadWithoutCurrent)
{
    const cable lead = lead_of(50);
    surroundings sunny{.air = 30_degC, .sun = in_si<heat_flux>(900)};
    EXPECT_LT(steady_loss_of(lead, sunny, 30_degC).value(), 0.0);
    EXPECT_GT(steady_surface_of(lead, sunny, 30_degC), 30_degC);
    const cable_heating idle = heating_of(lead, sunny, {.current = 0_A});
    EXPECT_NEAR(steady_loss_of(lead, sunny, idle.conductor_peak).value(), 0.0, 1e-7);
    EXPECT_GT(idle.conductor_peak, 38_degC);
    EXPECT_LT(idle.conductor_peak, 60_degC);
}

TEST(SteadyLoss, RisesWithTemperatureWindAndRoom)
{
    std::mt19937 random(4);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 60; ++n) {
        const cable lead = lead_of(10 + 230 * unit(random));
        surroundings where{.air = temperature::celsius(-20 + 60 * unit(random))};
        double last = -1e9;
        for (double t = -30; t < 2000; t += 37) {
            const double q = steady_loss_of(lead, where, temperature::celsius(t)).value();
            EXPECT_GT(q, last);
            last = q;
        }
        const double still = steady_loss_of(lead, where, 85_degC).value();
        where.wind = 1_m_per_s;
        EXPECT_GT(steady_loss_of(lead, where, 85_degC).value(), still);
        where.wind = {};
        where.lay = lay::touching_pair;
        EXPECT_LT(steady_loss_of(lead, where, 85_degC).value(), still);
    }
}

// source: heat of a fin, m^2 = UP/(kA): Incropera, section 3.6; by hand for 50 mm2 at 60 degC
TEST(DecayLength, OfAFin)
{
    const cable lead = lead_of(50);
    const surroundings where{.air = 25_degC};
    const double up = steady_loss_of(lead, where, 60_degC).value() / 35;
    const double expected = std::sqrt(394 * 50e-6 / up);
    EXPECT_NEAR_REL(decay_length_of(lead, where, 60_degC).value(), expected, 1e-12);
    const double gain = 200 * 200 * resistance_per_length_of(lead, 20_degC).value() * 0.00393;
    EXPECT_NEAR_REL(decay_length_of(lead, where, 60_degC, 200_A).value(), std::sqrt(394 * 50e-6 / (up - gain)), 1e-12);
}

// common practice: the burnt end of a lead is cut back by 6 to 10 inches; so are the decay lengths of the usual leads
TEST(DecayLength, IsWhatTheTradeCutsBack)
{
    for (const conductor_size& size : {awg(2), awg(1), aught(1), aught(2), aught(4)}) {
        const length decay = decay_length_of(welding_cable(size, 20_m), {.air = 25_degC}, 85_degC);
        EXPECT_GT(decay, 0.9 * 6_in) << to_text(size);
        EXPECT_LT(decay, 1.1 * 10_in) << to_text(size);
    }
}

TEST(DecayLength, GrowsWithCurrentUntilNothingDecays)
{
    const cable lead = lead_of(50);
    const surroundings where{.air = 25_degC};
    length last{};
    for (double i = 0; i < 500; i += 50) {
        EXPECT_GT(decay_length_of(lead, where, 85_degC, in_si<current>(i)), last);
        last = decay_length_of(lead, where, 85_degC, in_si<current>(i));
    }
    EXPECT_THROW((void)decay_length_of(lead, where, 85_degC, 2_kA), no_solution_error);
    // at the air's own temperature the limit is taken, from either side
    const double at = decay_length_of(lead, where, 25_degC).value();
    EXPECT_NEAR_REL(decay_length_of(lead, where, 25.02 * (26_degC - 25_degC) + 0_degC).value(), at, 0.02);
    EXPECT_NEAR_REL(decay_length_of(lead, where, 24_degC).value(), at, 0.10);
    // sunlight does not change it
    EXPECT_EQ(decay_length_of(lead, {.air = 25_degC, .sun = in_si<heat_flux>(900)}, 85_degC),
              decay_length_of(lead, where, 85_degC));
}

TEST(CableHeating, OrderOfTheTemperatures)
{
    const cable lead = lead_of(70);
    for (const duty_cycle& duty :
         {duty_cycle::continuous(), duty_cycle::of(6_min, 10_min), duty_cycle::of(1_min, 5_min)}) {
        const cable_heating h = heating_of(lead, {.air = 30_degC}, {.current = 400_A, .duty = duty});
        EXPECT_GE(h.conductor_peak, h.conductor_mean);
        EXPECT_GE(h.conductor_mean, h.conductor_period_mean);
        EXPECT_GT(h.conductor_peak, h.surface_peak);
        EXPECT_EQ(h.ripple_up, h.conductor_peak - h.conductor_period_mean);
        EXPECT_EQ(h.over_limit, h.conductor_peak > limit_of(lead));
        EXPECT_FALSE(h.melts);
        EXPECT_FALSE(h.basis.has(range_flag::resistivity_range));
        EXPECT_FALSE(h.basis.has(range_flag::convection_range));
    }
    const cable_heating steady = heating_of(lead, {.air = 30_degC}, {.current = 400_A});
    EXPECT_NEAR(steady.ripple_up.value(), 0.0, 1e-9);
    EXPECT_NEAR((steady.conductor_peak - steady.conductor_mean).value(), 0.0, 1e-9);
}

TEST(CableHeating, MonotoneInCurrentAreaAirWindAndDuty)
{
    std::mt19937 random(5);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 80; ++n) {
        const double mm2 = 10 + 200 * unit(random);
        const cable lead = lead_of(mm2);
        const surroundings where{.air = temperature::celsius(-10 + 50 * unit(random)),
                                 .wind = in_si<speed>(n % 2 ? 0.0 : 3 * unit(random))};
        const load work{.current = in_si<current>(mm2 * (1 + 5 * unit(random))),
                        .duty = duty_cycle::of(in_si<duration>(30 + 200 * unit(random)), 300_s)};
        const temperature here = heating_of(lead, where, work).conductor_peak;
        EXPECT_GT(heating_of(lead, where, {.current = 1.01 * work.current, .duty = work.duty}).conductor_peak, here);
        EXPECT_GT(
            heating_of(lead, where, {.current = work.current, .duty = duty_cycle::of(work.duty.on() + 10_s, 300_s)})
                .conductor_peak,
            here);
        EXPECT_LT(heating_of(lead_of(mm2 * 1.1), where, work).conductor_peak, here);
        surroundings other = where;
        other.air = where.air + 5_K;
        EXPECT_GT(heating_of(lead, other, work).conductor_peak, here);
        other = where;
        other.wind = where.wind + 1_m_per_s;
        EXPECT_LT(heating_of(lead, other, work).conductor_peak, here);
        // longer periods at the same share peak higher
        EXPECT_GT(
            heating_of(lead, where, {.current = work.current, .duty = duty_cycle::of(2.0 * work.duty.on(), 600_s)})
                .conductor_peak,
            here);
    }
}

TEST(CableHeating, DutyOneIsContinuous)
{
    const cable lead = lead_of(35);
    const cable_heating a = heating_of(lead, {}, {.current = 200_A});
    const cable_heating b = heating_of(lead, {}, {.current = 200_A, .duty = duty_cycle::of(3_min, 3_min)});
    EXPECT_NEAR((a.conductor_peak - b.conductor_peak).value(), 0.0, 1e-8);
    EXPECT_NEAR((a.surface_peak - b.surface_peak).value(), 0.0, 1e-8);
    const cable_heating c = heating_of(lead, {}, {.current = 200_A, .duty = duty_cycle::of(599.999 * 1_s, 600_s)});
    EXPECT_NEAR((a.conductor_peak - c.conductor_peak).value(), 0.0, 1e-3);
}

TEST(CableHeating, DamageIsAHotPlace)
{
    const load work{.current = 300_A, .duty = duty_cycle::of(6_min, 10_min)};
    const cable sound = lead_of(50);
    const cable_heating whole = heating_of(sound, {}, work);
    cable lead = sound;
    lead.missing_strands = 0.4;
    temperature last = whole.conductor_peak, last_mean = whole.conductor_mean;
    EXPECT_EQ(heating_of(lead, {}, work).conductor_peak, last);  // over no length
    for (double ld : {0.01, 0.1, 0.3, 1.0, 5.0}) {
        lead.damaged_length = in_si<length>(ld);
        const cable_heating h = heating_of(lead, {}, work);
        EXPECT_GE(h.conductor_peak, last);  // no more than that of a lead damaged all along
        EXPECT_GT(h.conductor_peak, whole.conductor_peak);
        EXPECT_GT(h.conductor_mean, last_mean);
        EXPECT_EQ(h.conductor_period_mean, whole.conductor_period_mean);
        last = h.conductor_peak;
        last_mean = h.conductor_mean;
    }
    // a lead that is damaged all along is one of fewer strands with the same covering
    lead.damaged_length = lead.length;
    const cable_heating all = heating_of(lead, {}, work);
    const periodic_heating thin =
        periodic_heating_of(covered_conductor_of({annealed_copper, 30_mm2, lead.stranding_increment},
                                                 {lead.covering, lead.conductor_diameter, lead.overall_diameter}),
                            {.diameter = lead.overall_diameter}, {300_A, 360_s, 600_s});
    EXPECT_NEAR((all.conductor_peak - thin.conductor_peak).value(), 0.0, 1e-6);
    EXPECT_NEAR((all.conductor_mean - thin.conductor_on_mean).value(), 0.0, 1e-9);
    EXPECT_TRUE(all.over_limit);  // far from molten
    EXPECT_FALSE(all.melts);
}

TEST(CableHeating, OverloadsGetAnAnswer)
{
    for (double mm2 : {10.0, 50.0, 240.0})
        for (double amps : {1e3, 5e3, 1e4, 1e5}) {
            const cable_heating h =
                heating_of(lead_of(mm2), {}, {.current = in_si<current>(amps), .duty = duty_cycle::of(4_min, 10_min)});
            EXPECT_TRUE(std::isfinite(h.conductor_peak.in_kelvin()));
            EXPECT_TRUE(std::isfinite(h.surface_peak.in_kelvin()));
            EXPECT_TRUE(std::isfinite(h.ripple_up.value()));
            if (h.melts) {
                EXPECT_TRUE(h.over_limit);
                EXPECT_TRUE(h.basis.has(range_flag::resistivity_range));
            }
        }
    EXPECT_TRUE(heating_of(lead_of(10), {}, {.current = 10_kA}).melts);
}

// Above the melting point of its tin a lead goes on as copper does, and says that the tin has run.
TEST(CableHeating, TinnedStrandsGoOnAsCopper)
{
    cable plain = welding_cable(square_mm(25), 10_m), tinned = plain;
    plain.limit = tinned.limit = 85_degC;
    tinned.metal = tinned_copper;
    for (const double amps : {200.0, 330.0, 400.0, 500.0}) {
        const load work{.current = in_si<current>(amps)};
        const cable_heating p = heating_of(plain, {}, work), t = heating_of(tinned, {}, work);
        EXPECT_EQ(t.melts, p.melts) << amps;
        EXPECT_EQ(t.conductor_peak > 232_degC, amps > 300.0) << amps;
        // 2 % more heat: at most 2 % more rise where the resistance is even, 5 % where it runs away with it
        EXPECT_NEAR_REL((t.conductor_peak - 20_degC).value(), (p.conductor_peak - 20_degC).value(), 0.05) << amps;
        EXPECT_EQ(t.basis.has(range_flag::strand_coat_melts), t.conductor_peak > 232_degC) << amps;
        EXPECT_FALSE(p.basis.has(range_flag::strand_coat_melts));
    }
}

TEST(CableHeating, BasisNamesSourcesAndRanges)
{
    EXPECT_TRUE(heating_of(welding_cable(aught(2), 20_m), {}, {.current = 200_A})
                    .basis.has(range_flag::dimension_interpolated));
    EXPECT_TRUE(heating_of(welding_cable(kcmil(500), 20_m), {}, {.current = 200_A})
                    .basis.has(range_flag::dimension_extrapolated));
    EXPECT_TRUE(
        heating_of(lead_of(50), {.lay = lay::coiled}, {.current = 100_A}).basis.has(range_flag::arrangement_judgement));
    const basis b = heating_of(lead_of(50), {}, {.current = 100_A, .duty = duty_cycle::of(0.6)}).basis;
    const auto names = b.sources();
    EXPECT_NE(std::find(names.begin(), names.end(), &iec_60287_free_air), names.end());
    EXPECT_NE(std::find(names.begin(), names.end(), &covering_points_model), names.end());
    EXPECT_TRUE(b.flags().empty());
}

TEST(CableHeating, RefusesWhatCannotBe)
{
    const cable good = lead_of(50);
    for (double bad : {nan_value, infinite, -1.0}) {
        EXPECT_THROW((void)heating_of(good, {}, {.current = in_si<current>(bad)}), error);
        EXPECT_THROW((void)decay_length_of(good, {}, 60_degC, in_si<current>(bad)), error);
        surroundings where;
        where.wind = in_si<speed>(bad);
        EXPECT_THROW((void)heating_of(good, where, {.current = 100_A}), error);
        EXPECT_THROW((void)steady_loss_of(good, where, 60_degC), error);
        EXPECT_THROW((void)steady_surface_of(good, where, 60_degC), error);
        EXPECT_THROW((void)decay_length_of(good, where, 60_degC), error);
        cable lead = good;
        lead.overall_diameter = in_si<length>(bad);
        EXPECT_THROW((void)heating_of(lead, {}, {.current = 100_A}), error);
        EXPECT_THROW((void)steady_loss_of(lead, {}, 60_degC), error);
        lead = good;
        lead.conductor_diameter = in_si<length>(bad);
        EXPECT_THROW((void)heating_of(lead, {}, {.current = 100_A}), error);
        lead = good;
        lead.length = in_si<length>(bad);
        EXPECT_THROW((void)heating_of(lead, {}, {.current = 100_A}), error);
        lead = good;
        lead.damaged_length = in_si<length>(bad);
        EXPECT_THROW((void)heating_of(lead, {}, {.current = 100_A}), error);
        lead = good;
        lead.stranding_increment = bad;
        EXPECT_THROW((void)heating_of(lead, {}, {.current = 100_A}), error);
    }
    cable bare = good;
    bare.overall_diameter = bare.conductor_diameter;
    EXPECT_THROW((void)heating_of(bare, {}, {.current = 100_A}), out_of_range_error);
    cable unknown = good;
    unknown.overall_diameter = {};
    EXPECT_THROW((void)heating_of(unknown, {}, {.current = 100_A}), missing_data_error);
    EXPECT_THROW((void)steady_loss_of(unknown, {}, 60_degC), missing_data_error);
    EXPECT_THROW((void)steady_surface_of(unknown, {}, 60_degC), missing_data_error);
    EXPECT_THROW((void)decay_length_of(unknown, {}, 60_degC), missing_data_error);
    cable slim = good;
    slim.conductor_diameter = 7_mm;  // a solid 50 mm2 conductor has 8.0 mm
    EXPECT_THROW((void)heating_of(slim, {}, {.current = 100_A}), out_of_range_error);
}

// A short lead cannot lie in thirty turns: 4 m make no more than five of 0.3 m. What lies in a coil with the other
// leads of a circuit is not known to it.
TEST(CoilOfItsOwn, HasNoMoreTurnsThanItsLengthMakes)
{
    const load work{.current = 150_A, .duty = duty_cycle::continuous()};
    const auto coiled = [&](weldloop::length of, std::optional<int> turns) {
        cable lead = welding_cable(square_mm(35), of);
        lead.lay = lay::coiled;
        lead.coil_turns = turns;
        return heating_of(lead, {.air = 25_degC}, work);
    };
    const std::array<std::pair<weldloop::length, int>, 4> most{
        {{0.5_m, 1}, {4_m, 5}, {9.4_m, 10}, {45_m, assumed_coil_turns}}};
    for (const auto& [of, turns] : most) {
        const cable_heating open = coiled(of, std::nullopt), stated = coiled(of, turns);
        EXPECT_EQ(open.conductor_peak, stated.conductor_peak) << si_text(of);
        EXPECT_TRUE(open.basis.has(range_flag::crowd_assumed));
        EXPECT_FALSE(stated.basis.has(range_flag::crowd_assumed));
    }
    const cable lead = welding_cable(square_mm(35), 4_m);
    const surroundings with_the_others{.air = 25_degC, .lay = lay::coiled};
    EXPECT_GT(heating_of(lead, with_the_others, work).conductor_peak, coiled(4_m, std::nullopt).conductor_peak);
    EXPECT_THROW(static_cast<void>(assumed_turns_of(0_m)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(lead_bundle_of({.diameter = 15_mm, .lay = lay::coiled, .assumed_turns = 0})),
                 out_of_range_error);
}

// against the lead followed in time from cold: an on-time of hours between rests of weeks begins cold and ends steady,
// however far its surface swings; what a mean near the air's temperature says of the law is far too little then
TEST(CableHeating, HoursBetweenRestsOfWeeksEndWhereFollowingThemDoes)
{
    for (const double mm2 : {16.0, 70.0, 185.0})
        for (const double limit : {85.0, 250.0, 350.0})
            for (const double on : {2e4, 3.5e4, 3e5}) {
                cable lead = lead_of(mm2);
                lead.limit = temperature::celsius(limit);
                const surroundings where{.air = 25_degC};
                // the heat that holds the conductor at its limit
                const current amps = in_si<current>(std::sqrt(
                    (steady_loss_of(lead, where, *lead.limit) / resistance_per_length_of(lead, *lead.limit)).value()));
                const duty_cycle duty = duty_cycle::of(in_si<duration>(on), in_si<duration>(on + 6.5e6));
                const temperature peak = heating_of(lead, where, {.current = amps, .duty = duty}).conductor_peak;
                const temperature followed =
                    temperature_after(lead, where, {amps, in_si<duration>(on)}, lead_at_rest(lead, where)).conductor;
                EXPECT_NEAR(peak.in_celsius(), followed.in_celsius(), 0.001 * (limit - 25.0)) << mm2 << " " << on;
            }
}
