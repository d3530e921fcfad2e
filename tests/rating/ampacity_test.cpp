#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

double amps_of(const cable& lead, const surroundings& where, const duty_cycle& duty = duty_cycle::continuous())
{
    return ampacity_of(lead, where, duty).amps.value();
}

struct spread {
    double median, worst, low, high;
};

spread spread_of(std::vector<double> ratios)
{
    std::sort(ratios.begin(), ratios.end());
    std::vector<double> errors;
    for (double r : ratios) errors.push_back(std::fabs(r - 1));
    std::sort(errors.begin(), errors.end());
    return {errors.at(errors.size() / 2), errors.back(), ratios.front(), ratios.back()};
}

}  // namespace

// source: BS 638-4 guide ratings of 85 degC leads in air at 25 degC (recalled; corroborated by IEC 60364-5-52 method G,
// which has the same rise of 60 K and is checked in tests/law/cable_surface_test.cpp)
TEST(Ampacity, ContinuousRatingsOfWeldingLeads)
{
    std::vector<double> ratios;
    for (const auto& row : reference_table("welding-cable-duty-ratings-85C.csv").rows())
        if (row.number("duty_cycle_percent") == 100)
            ratios.push_back(
                amps_of(welding_cable(square_mm(row.number("cross_section_mm2")), 20_m), {.air = 25_degC}) /
                row.number("current_A"));
    ASSERT_EQ(ratios.size(), 8U);
    EXPECT_LE(spread_of(ratios).median, 0.01);
    EXPECT_LE(spread_of(ratios).worst, 0.021);
}

// source: IEC 60364-5-52 method G and F, 90 degC and 30 degC in air: fixed wiring with the same conductor areas. A
// welding lead has more covering and a longer lay; it carries within 5 % of the same current.
TEST(Ampacity, NearTheRatingsOfFixedWiring)
{
    const std::map<std::string, lay> lays{{"G_spaced_horizontal", lay::spaced},
                                          {"F_two_touching", lay::touching_pair},
                                          {"F_three_trefoil", lay::trefoil},
                                          {"F_three_flat_touching", lay::three_flat}};
    std::vector<double> ratios;
    for (const auto& row : reference_table("ampacity-iec60364-free-air.csv").rows()) {
        const auto arrangement = lays.find(row.text("method"));
        if (arrangement == lays.end() || row.text("insulation") != "XLPE_EPR" || row.number("cross_section_mm2") > 240)
            continue;
        cable lead = welding_cable(square_mm(row.number("cross_section_mm2")), 20_m);
        lead.limit = 90_degC;
        ratios.push_back(amps_of(lead, {.air = 30_degC, .lay = arrangement->second}) / row.number("current_A"));
    }
    EXPECT_EQ(ratios.size(), 24U);
    EXPECT_LE(spread_of(ratios).median, 0.03);
    EXPECT_LE(spread_of(ratios).worst, 0.06);
}

// source: NFPA 70 tables 400.5(A)(2) (two sources at 90 degC) and 310.17 (75 degC at 4 and 6 AWG one source, the rest
// from memory). They are older and more cautious than free-air theory: the printed currents lie below the calculated
// ones. The code's own resistances (chapter 9 table 8) are nominal: so are the leads here.
TEST(Ampacity, CodeTablesAreMoreCautious)
{
    std::map<int, std::vector<double>> shares;
    for (const auto& row : reference_table("ampacity-nec-400-5-type-w.csv").rows()) {
        cable lead =
            welding_cable(parse<conductor_size>(row.text("size_awg") + " AWG"), 20_m, resistance_choice::nominal);
        lead.limit = temperature::celsius(row.number("conductor_max_C"));
        shares[static_cast<int>(row.number("conductor_max_C"))].push_back(row.number("current_A") /
                                                                          amps_of(lead, {.air = 30_degC}));
    }
    ASSERT_EQ(shares.size(), 3U);
    for (const auto& [limit, share] : shares) {
        EXPECT_GT(spread_of(share).low, 0.82) << limit;
        EXPECT_LT(spread_of(share).high, 0.92) << limit;
    }
    std::vector<double> single;
    for (const auto& row : reference_table("ampacity-nec-310-17.csv").rows()) {
        cable lead = welding_cable(parse<conductor_size>(row.text("size") + " " + row.text("size_unit")), 20_m,
                                   resistance_choice::nominal);
        lead.limit = temperature::celsius(row.number("conductor_max_C"));
        single.push_back(row.number("current_A") / amps_of(lead, {.air = 30_degC}));
    }
    EXPECT_GT(spread_of(single).low, 0.82);
    EXPECT_LT(spread_of(single).high, 0.93);
}

// A covering that stands less lowers the rating. source: IEC 60364-5-52 table 52.1 for the limits; the rating grows
// with the root of the rise and falls with the root of the resistance, so that 70 degC under the same surface must lie
// between the root of the rises alone, and that times the root of the resistances.
TEST(Ampacity, FollowsTheLimitOfTheCovering)
{
    const surroundings air25{.air = 25_degC};
    for (const double mm2 : {16.0, 50.0, 120.0}) {
        const cable rubber = welding_cable(square_mm(mm2), 10_m);
        cable plastic = rubber;
        plastic.covering = pvc;  // conducts heat as rubber does
        const ampacity at85 = ampacity_of(rubber, air25), at70 = ampacity_of(plastic, air25);
        EXPECT_EQ(at70.limit, 70_degC);
        const double ratio = (at70.amps / at85.amps).value(), roots = std::sqrt(45.0 / 60.0);
        EXPECT_LT(ratio, roots * std::sqrt((1.0 + 0.00393 * 65) / (1.0 + 0.00393 * 50))) << mm2;
        EXPECT_GT(ratio, 0.95 * roots) << mm2;  // less heat goes by convection and radiation per kelvin when cooler
        plastic.limit = 85_degC;
        EXPECT_NEAR_REL(ampacity_of(plastic, air25).amps.value(), at85.amps.value(), 1e-12);
        EXPECT_TRUE(ampacity_of(plastic, air25).basis.has(range_flag::limit_above_covering));
        EXPECT_FALSE(at70.basis.has(range_flag::limit_above_covering));
    }
}

// source: published factors for other air temperatures: welding lead 85 degC on a 25 degC base (one source), wiring and
// ship rules (one source and memory). The rule meets them, and so does the model: printed to two digits, and up to 0.01
// below, as its surface gives off less than in proportion at a small rise.
TEST(Ampacity, AmbientFactors)
{
    int rule_rows = 0, model_rows = 0;
    double lowest = 0.0;
    for (const auto& row : reference_table("ampacity-ambient-factors.csv").rows()) {
        const temperature limit = temperature::celsius(row.number("conductor_max_C")),
                          base = temperature::celsius(row.number("base_ambient_C")),
                          air = temperature::celsius(row.number("ambient_C"));
        if (row.text("family") == "rubber 85 C fixed wiring" && air < base)
            continue;  // that table limits the credit of cool air
        EXPECT_NEAR(ambient_factor(limit, base, air), row.number("factor"), 0.012) << row.where();
        ++rule_rows;
        if (row.text("family") != "welding cable 85 C") continue;
        cable lead = welding_cable(square_mm(50), 20_m);
        lead.limit = limit;
        const double factor = amps_of(lead, {.air = air}) / amps_of(lead, {.air = base});
        EXPECT_LT(factor, row.number("factor") + 0.005) << row.where();
        lowest = std::min(lowest, factor - row.number("factor"));
        ++model_rows;
    }
    EXPECT_EQ(rule_rows, 133);
    EXPECT_EQ(model_rows, 4);
    EXPECT_GT(lowest, -0.015);
    EXPECT_DOUBLE_EQ(ambient_factor(85_degC, 25_degC, 25_degC), 1.0);
    EXPECT_THROW((void)ambient_factor(85_degC, 25_degC, 85_degC), out_of_range_error);
    EXPECT_THROW((void)ambient_factor(85_degC, 85_degC, 25_degC), out_of_range_error);
}

// source: guide ratings at 5 min (recalled) follow the plain square root; the thermal model allows less at low duty.
// How far they lie apart is the finding.
TEST(Ampacity, GuideTablesFollowTheSquareRootTheModelAllowsLess)
{
    int rows = 0;
    for (const auto& row : reference_table("welding-cable-duty-ratings-85C.csv").rows()) {
        const double duty = row.number("duty_cycle_percent") / 100;
        if (duty == 1) continue;
        const duration period = row.number("duty_period_min") * 1_min;
        const cable lead = welding_cable(square_mm(row.number("cross_section_mm2")), 20_m);
        const ampacity a = ampacity_of(lead, {.air = 25_degC}, duty_cycle::of(duty * period, period));
        EXPECT_NEAR_REL(a.by_square_root.value(), row.number("current_A"), 0.035) << row.where();
        EXPECT_LT(a.amps, a.by_square_root) << row.where();
        EXPECT_GT(a.amps, a.continuous) << row.where();
        // the documented shares: 16 mm2 lowest, 185 mm2 highest
        const double share = (a.amps / a.by_square_root).value();
        if (duty == 0.6) {
            EXPECT_GT(share, 0.905) << row.where();
            EXPECT_LT(share, 0.975) << row.where();
        }
        if (duty == 0.2) {
            EXPECT_GT(share, 0.79) << row.where();
            EXPECT_LT(share, 0.94) << row.where();
        }
        ++rows;
    }
    EXPECT_EQ(rows, 32);  // and 8 of 100 %
}

// source: first-order estimate with one time constant: 16 mm2 (about 5 min) at 20 % of 5 min factor 1.87, 95 mm2 (about
// 12 min) 2.06, against 2.24 by the square root; the time constants are estimates, and one constant lets the covering
// follow at once, so that the factors are too high by a few per cent
TEST(Ampacity, DutyFactorNearTheFirstOrderEstimate)
{
    const duty_cycle duty = duty_cycle::of(1_min, 5_min);
    for (const auto& [mm2, factor] : {std::pair{16.0, 1.87}, std::pair{95.0, 2.06}}) {
        const ampacity a = ampacity_of(welding_cable(square_mm(mm2), 20_m), {.air = 25_degC}, duty);
        EXPECT_NEAR_REL((a.amps / a.continuous).value(), factor, 0.05) << mm2;
        EXPECT_LT((a.amps / a.continuous).value(), std::sqrt(5.0)) << mm2;
    }
}

TEST(Ampacity, BringsThePeakToTheLimit)
{
    std::mt19937 random(21);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 150; ++n) {
        cable lead = welding_cable(square_mm(10 + 230 * unit(random)), 20_m);
        lead.limit = temperature::celsius(60 + 60 * unit(random));
        if (n % 3 == 0) {
            lead.missing_strands = 0.6 * unit(random);
            lead.damaged_length = in_si<length>(3 * unit(random));
        }
        const surroundings where{.air = temperature::celsius(-20 + 60 * unit(random)),
                                 .wind = in_si<speed>(n % 4 ? 0.0 : 5 * unit(random)),
                                 .lay = all_lays[static_cast<std::size_t>(n) % all_lays.size()],
                                 .sun = in_si<heat_flux>(n % 7 ? 0.0 : 400 * unit(random))};
        const duration period = in_si<duration>(std::pow(10.0, 1 + 2 * unit(random)));
        const duty_cycle duty =
            n % 5 == 0 ? duty_cycle::continuous() : duty_cycle::of((0.05 + 0.9 * unit(random)) * period, period);
        const ampacity a = ampacity_of(lead, where, duty);
        const cable_heating hot = heating_of(lead, where, {.current = a.amps, .duty = duty});
        EXPECT_NEAR((hot.conductor_peak - limit_of(lead)).value(), 0.0, 1e-6) << n;
        EXPECT_EQ(a.limit, lead.limit);
        EXPECT_NEAR((a.surface_peak - hot.surface_peak).value(), 0.0, 1e-8);
        EXPECT_LE(a.continuous, a.amps * (1 + 1e-9));
        EXPECT_LE(a.amps, a.by_square_root * (1 + 1e-9));
    }
}

TEST(Ampacity, Monotone)
{
    std::mt19937 random(22);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 60; ++n) {
        const double mm2 = 10 + 200 * unit(random);
        cable lead = welding_cable(square_mm(mm2), 20_m);
        surroundings where{.air = temperature::celsius(-10 + 50 * unit(random))};
        const duration on = in_si<duration>(30 + 200 * unit(random));
        const duty_cycle duty = duty_cycle::of(on, 300_s);
        const double here = amps_of(lead, where, duty);
        EXPECT_GT(amps_of(welding_cable(square_mm(mm2 * 1.1), 20_m), where, duty), here);
        EXPECT_LT(amps_of(lead, where, duty_cycle::of(on + 20_s, 300_s)), here);
        EXPECT_LT(amps_of(lead, where, duty_cycle::of(2.0 * on, 600_s)), here);
        cable other = lead;
        other.limit = 95_degC;
        EXPECT_GT(amps_of(other, where, duty), here);
        other = lead;
        other.missing_strands = 0.2;
        other.damaged_length = 1_m;
        EXPECT_LT(amps_of(other, where, duty), here);
        surroundings hotter = where;
        hotter.air = where.air + 5_K;
        EXPECT_LT(amps_of(lead, hotter, duty), here);
        surroundings windy = where;
        windy.wind = 2_m_per_s;
        EXPECT_GT(amps_of(lead, windy, duty), here);
        surroundings sunny = where;
        sunny.sun = in_si<heat_flux>(500);
        EXPECT_LT(amps_of(lead, sunny, duty), here);
        surroundings high = where;
        high.altitude = 3_km;
        EXPECT_LT(amps_of(lead, high, duty), here);
    }
    double last = 0;
    for (const lay l :
         {lay::coiled, lay::bundled, lay::trefoil, lay::three_flat, lay::touching_pair, lay::on_floor, lay::alone}) {
        EXPECT_GT(amps_of(welding_cable(aught(2), 20_m), {.lay = l}), last) << to_text(l);
        last = amps_of(welding_cable(aught(2), 20_m), {.lay = l});
    }
}

TEST(Ampacity, LimitsOfDuty)
{
    const cable lead = welding_cable(square_mm(50), 20_m);
    const ampacity continuous = ampacity_of(lead, {});
    EXPECT_NEAR_REL(ampacity_of(lead, {}, duty_cycle::of(7_min, 7_min)).amps.value(), continuous.amps.value(), 1e-9);
    EXPECT_EQ(continuous.amps, continuous.continuous);
    EXPECT_EQ(continuous.amps, continuous.by_square_root);
    const ampacity pulsed =
        ampacity_of(lead, {}, duty_cycle::of(3_ms, 10_ms));  // the conductor feels the mean square only
    EXPECT_NEAR_REL(pulsed.amps.value(), pulsed.by_square_root.value(), 1e-5);
}

// A lead that has long been warm when the current stops carries the continuous current; a short burst in a long rest is
// heating without loss.
TEST(Ampacity, LongPeriods)
{
    for (double mm2 : {10.0, 50.0, 185.0}) {
        const cable lead = welding_cable(square_mm(mm2), 20_m);
        const ampacity day = ampacity_of(lead, {}, duty_cycle::of(10_h, 24_h));
        EXPECT_NEAR_REL(day.amps.value(), day.continuous.value(), 1e-3) << mm2;
        const ampacity burst = ampacity_of(lead, {}, duty_cycle::of(2_s, 10_h));
        // the metal alone without loss is the upper bound of rise per current; the covering takes a little
        const double metal = annealed_copper.heat_per_volume().value() * mm2 * 1e-6;
        const double adiabatic = std::sqrt(metal * 60 / (2 * resistance_per_length_of(lead, 55_degC).value()));
        EXPECT_GT(burst.amps.value(), adiabatic) << mm2;
        EXPECT_LT(burst.amps.value(), 1.35 * adiabatic) << mm2;
    }
}

// An on-time of two hundred time constants within a rest of months: the peak is that of steady current, though the mean
// surface is as cool as the air.
TEST(Ampacity, LongOnTimeInALongerRest)
{
    const cable lead = welding_cable(square_mm(10.75), 20_m);
    const surroundings arctic{.air = temperature::kelvin(181.5)};
    const duty_cycle rare = duty_cycle::of(in_si<duration>(7.1e4), in_si<duration>(6.1e6));
    EXPECT_NEAR_REL(amps_of(lead, arctic, rare), amps_of(lead, arctic), 1e-9);
}

// common practice: altitude takes a few percent, wind gives a lot, sunlight takes some
TEST(Ampacity, Outdoors)
{
    const cable lead = welding_cable(aught(2), 20_m);
    const double indoors = amps_of(lead, {.air = 30_degC});
    EXPECT_NEAR(amps_of(lead, {.air = 30_degC, .altitude = 3_km}) / indoors, 0.95, 0.03);
    EXPECT_GT(amps_of(lead, {.air = 30_degC, .wind = 2_m_per_s}) / indoors, 1.2);
    EXPECT_LT(amps_of(lead, {.air = 30_degC, .sun = in_si<heat_flux>(1000)}) / indoors, 0.93);
}

// A lead with strands missing all along, on for hours between rests of weeks: its surface swings by hundreds of kelvin,
// and a search that begins at its mean, a kelvin above the air, used to end without an answer.
TEST(Ampacity, DamagedWithHoursBetweenRestsOfWeeks)
{
    for (const double mm2 : {16.0, 70.0, 185.0})
        for (const lay lies : {lay::alone, lay::coiled, lay::bundled})
            for (const double on : {2e4, 3e5}) {
                cable lead = welding_cable(square_mm(mm2), 10_m), sound = lead;
                lead.limit = sound.limit = 250_degC;
                lead.missing_strands = 0.25;
                lead.damaged_length = 10_m;
                const surroundings where{.air = 25_degC, .lay = lies};
                const duty_cycle duty = duty_cycle::of(in_si<duration>(on), in_si<duration>(on + 6.5e6));
                const ampacity found = ampacity_of(lead, where, duty);
                const load work{.current = found.amps, .duty = duty};
                EXPECT_NEAR(heating_of(lead, where, work).conductor_peak.in_celsius(), 250.0, 1e-6) << mm2 << " " << on;
                EXPECT_GE(found.amps, found.continuous) << mm2 << " " << on;
                EXPECT_LE(found.amps, ampacity_of(sound, where, duty).amps) << mm2 << " " << on;
            }
}

// G (Tc - Ts) = q(Ts) - sun with q by surface_loss(), which no search for the surface has a part in
TEST(Ampacity, SurfaceOfALeadByItselfBalances)
{
    for (const lead_row& row : lead_table)
        for (const double air : {-100.0, -20.0, 25.0, 60.0})
            for (const double above : {0.5, 20.0, 60.0, 120.0, 240.0})
                for (const double sun : {0.0, 600.0})
                    for (const lay lies : {lay::alone, lay::touching_pair, lay::on_floor}) {
                        cable lead = welding_cable(square_mm(row.area_mm2), 10_m);
                        lead.limit = temperature::celsius(air + above);
                        const surroundings where{
                            .air = temperature::celsius(air), .lay = lies, .sun = in_si<heat_flux>(sun)};
                        if (sun > 0.0 && above < 60.0) continue;  // the sun alone may bring it there
                        const ampacity found = ampacity_of(lead, where);
                        const cable_surface around{
                            .diameter = lead.overall_diameter, .air = where.air, .lay = lies, .sun = where.sun};
                        const double through = covering_conductance(lead.covering.thermal_conductivity,
                                                                    lead.conductor_diameter, lead.overall_diameter)
                                                   .value() *
                                               (*lead.limit - found.surface_peak).value();
                        const double leaves = (surface_loss(around, found.surface_peak) - absorbed_sun(around)).value();
                        EXPECT_NEAR(leaves / through, 1.0, 1e-10) << row.area_mm2 << " " << air << " " << above;
                    }
}

TEST(Ampacity, RefusesWhatCannotBe)
{
    const cable good = welding_cable(aught(2), 20_m);
    EXPECT_THROW((void)ampacity_of(good, {.air = 85_degC}), out_of_range_error);
    EXPECT_THROW((void)ampacity_of(good, {.air = 90_degC}), out_of_range_error);
    EXPECT_THROW((void)ampacity_of(good, {.air = 84_degC, .sun = in_si<heat_flux>(1000)}), no_solution_error);
    cable lead = good;
    lead.limit = 1200_degC;
    EXPECT_THROW((void)ampacity_of(lead, {}), out_of_range_error);
    lead = good;
    lead.overall_diameter = {};
    EXPECT_THROW((void)ampacity_of(lead, {}), missing_data_error);
    for (double bad : {nan_value, infinite, -1.0}) {
        surroundings where;
        where.wind = in_si<speed>(bad);
        EXPECT_THROW((void)ampacity_of(good, where), error);
        where = {};
        where.sun = in_si<heat_flux>(bad);
        EXPECT_THROW((void)ampacity_of(good, where), error);
        lead = good;
        lead.conductor_diameter = in_si<length>(bad);
        EXPECT_THROW((void)ampacity_of(lead, {}), error);
        lead = good;
        lead.stranding_increment = bad;
        EXPECT_THROW((void)ampacity_of(lead, {}), error);
    }
}
