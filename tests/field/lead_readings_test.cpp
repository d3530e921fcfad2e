// Readings of leads: surface temperature by contact and by radiation, and four-wire resistance.
#include <weldloop/core/literals.hpp>
#include <weldloop/field/resistance_reading.hpp>
#include <weldloop/field/surface_reading.hpp>

#include <cmath>
#include <limits>
#include <random>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using weldloop::test::reference_table;

temperature_difference kelvins(double k)
{
    return in_si<temperature_difference>(k);
}

// source: grey-body balance worked out beforehand by another program (tests/reference/field-radiation-readings.csv):
// what a thermometer set to 0.95 shows of a surface of 100 degC in surroundings of 20 degC. Rows below 0.5 are refused.
TEST(SurfaceReading, RadiationIsTurnedBack)
{
    int used = 0, refused = 0;
    for (const auto& row : reference_table("field-radiation-readings.csv").rows()) {
        radiation_reading r{.shown = {temperature::celsius(row.number("shown_C")), kelvins(2)},
                            .set = row.number("set_emissivity"),
                            .reflected = temperature::celsius(row.number("surroundings_C")),
                            .surface = {row.number("surface_emissivity"), 0.05}};
        if (row.number("surface_emissivity") < least_readable_emissivity) {
            EXPECT_THROW((void)surface_temperature_of(r), out_of_range_error);
            ++refused;
            continue;
        }
        EXPECT_NEAR(surface_temperature_of(r).value.in_celsius(), row.number("surface_C"), 1e-3) << row.where();
        ++used;
    }
    EXPECT_EQ(used, 1);
    EXPECT_EQ(refused, 3);
}

// Drawn surfaces: what the thermometer shows, by the balance of radiation itself (radiated()), turned back.
TEST(SurfaceReading, RadiationByTheLawOfGreySurfaces)
{
    std::mt19937_64 random(3);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int n = 0; n < 500; ++n) {
        const double eps = 0.5 + 0.5 * unit(random), set = 0.5 + 0.5 * unit(random);
        const temperature surface = temperature::celsius(250 * unit(random)),
                          walls = temperature::celsius(40 * unit(random));
        // the excess over what the walls send: eps sigma (Ts^4 - Tw^4) = set sigma (Tm^4 - Tw^4)
        const double excess = radiated(eps, surface, walls).value() / (set * stefan_boltzmann);
        const double shown = std::pow(std::pow(walls.in_kelvin(), 4) + excess, 0.25);
        const radiation_reading r{
            .shown = {temperature::kelvin(shown), kelvins(1)}, .set = set, .reflected = walls, .surface = {eps, 0.02}};
        const auto found = surface_temperature_of(r);
        EXPECT_NEAR((found.value - surface).value(), 0.0, 1e-6);
        EXPECT_GT(found.uncertainty.value(), 0.0);
    }
}

// A lead heated by a known current, its surface by the forward calculation: conductor and current come back, and stay
// inside the uncertainty when reading and air are off.
TEST(SurfaceReading, ConductorAndCurrentComeBack)
{
    for (const double mm2 : {16.0, 50.0, 120.0})
        for (const lay lies : {lay::alone, lay::on_floor, lay::touching_pair})
            for (const double share : {0.5, 0.8, 1.0}) {
                const cable lead = welding_cable(square_mm(mm2), 20_m);
                const surroundings where{.air = 30_degC, .lay = lies};
                const temperature conductor = 30_degC + share * kelvins(55);
                const temperature surface = steady_surface_of(lead, where, conductor);
                const double amps = std::sqrt(steady_loss_of(lead, where, conductor).value() /
                                              resistance_per_length_of(lead, conductor).value());
                const lead_from_surface exact = conductor_from_surface(lead, where, {surface, kelvins(1)});
                EXPECT_NEAR((exact.conductor.value - conductor).value(), 0.0, 1e-4);
                EXPECT_NEAR_REL(exact.effective.value.value(), amps, 1e-5);
                EXPECT_TRUE(exact.basis.has(source_kind::judgement));
                for (const double off : {-1.0, 1.0}) {
                    surroundings thought = where;
                    thought.air = where.air + 0.7 * off * kelvins(1);
                    const lead_from_surface read =
                        conductor_from_surface(lead, thought, {surface - 0.7 * off * kelvins(1), kelvins(1)});
                    EXPECT_NEAR(read.effective.value.value(), amps, read.effective.uncertainty.value());
                    EXPECT_NEAR((read.conductor.value - conductor).value(), 0.0, read.conductor.uncertainty.value());
                }
            }
}

TEST(SurfaceReading, ASmallRiseSaysLittleAndTooSmallANone)
{
    const cable lead = welding_cable(square_mm(50), 20_m);
    const surroundings where{.air = 30_degC};
    const auto share = [&](double rise) {
        const auto found = conductor_from_surface(lead, where, {30_degC + kelvins(rise), kelvins(1)}).effective;
        return (found.uncertainty / found.value).value();
    };
    EXPECT_GT(share(3.0), 2.0 * share(30.0));
    EXPECT_THROW((void)share(1.0), no_solution_error);
    EXPECT_THROW((void)share(-5.0), no_solution_error);
    // sun alone makes it as warm
    surroundings sunny = where;
    sunny.sun = in_si<heat_flux>(900);
    EXPECT_THROW((void)conductor_from_surface(lead, sunny, {35_degC, kelvins(1)}), no_solution_error);
    EXPECT_NO_THROW((void)conductor_from_surface(lead, sunny, {70_degC, kelvins(1)}));
}

TEST(SurfaceReading, RefusesWhatHasNoSurfaceOfItsOwn)
{
    cable lead = welding_cable(square_mm(50), 20_m);
    for (const lay lies : {lay::coiled, lay::bundled})
        EXPECT_THROW((void)conductor_from_surface(lead, {.lay = lies}, {60_degC, kelvins(1)}), out_of_range_error);
    EXPECT_THROW((void)conductor_from_surface(lead, {}, {60_degC, kelvins(-1)}), out_of_range_error);
    EXPECT_THROW((void)conductor_from_surface(lead, {}, {60_degC, kelvins(std::nan(""))}), not_finite_error);
    lead.missing_strands = 0.2;
    lead.damaged_length = 1_m;
    EXPECT_THROW((void)conductor_from_surface(lead, {}, {60_degC, kelvins(1)}), out_of_range_error);
    radiation_reading r{.shown = {30_degC, kelvins(1)}, .reflected = 900_degC, .surface = {0.5, 0.0}};
    EXPECT_THROW((void)surface_temperature_of(r), no_solution_error);
}

// source: IEC 60034-1, resistance method, k = 235 for copper (from memory); ours is 1/0.00393 - 20 = 234.5: 0.1 K at
// 100 K
TEST(ResistanceReading, IsTheResistanceMethod)
{
    const resistance_reading cold{{in_si<resistance>(0.010), in_si<resistance>(0.0)}, {22_degC, kelvins(0)}};
    for (const double ratio : {1.0, 1.1, 1.25, 1.4}) {
        const auto mean = mean_temperature_of(annealed_copper, cold, {ratio * cold.ohms.value, resistance{}});
        EXPECT_NEAR(mean.value.in_celsius(), ratio * (235 + 22) - 235, 0.25) << ratio;
        EXPECT_EQ(mean.uncertainty.value(), 0.0);
    }
}

// source: IEC 60228 annex B, R20 = Rt kt (one source but at 0 degC): a resistance at t and the table's factor give t
// back. The exact formula, 254.5/(234.5 + t), meets our coefficient to its printed digits; the tabulated factors follow
// 0.004 per kelvin, which stretches the rise by 0.004/0.00393.
TEST(ResistanceReading, FactorsOfTheCableStandard)
{
    int rows = 0;
    for (const auto& row : reference_table("conductors-iec60228-temp-factors.csv").rows()) {
        const resistance_reading at20{{in_si<resistance>(1e-3), resistance{}}, {20_degC, kelvins(0)}};
        const auto by = [&](const char* column) {
            return mean_temperature_of(annealed_copper, at20, {at20.ohms.value / row.number(column), resistance{}})
                .value.in_celsius();
        };
        const double t = row.number("temperature_C"), tabulated = row.number("k_t_tabulated");
        // half of the last printed digit, as a temperature
        const auto rounding = [](double digit, double factor) { return 0.5 * digit / (factor * factor * 0.00393); };
        EXPECT_NEAR(by("k_t_copper_exact_254.5_over_234.5_plus_t"), t, rounding(1e-4, tabulated) + 0.05) << row.where();
        EXPECT_NEAR(by("k_t_tabulated"), 20.0 + (t - 20.0) * 0.004 / 0.00393, rounding(1e-3, tabulated) + 0.01)
            << row.where();
        ++rows;
    }
    EXPECT_GE(rows, 5);
}

// Uncertainties against drawn readings: 95 of 100 lie within what is said.
TEST(ResistanceReading, UncertaintyIsThatOfDrawnReadings)
{
    const measured<resistance> cold{in_si<resistance>(8e-3), in_si<resistance>(4e-5)},
        hot{in_si<resistance>(10e-3), in_si<resistance>(5e-5)};
    const measured<temperature> at{22_degC, kelvins(1.0)};
    const auto said = mean_temperature_of(annealed_copper, {cold, at}, hot);
    std::mt19937_64 random(5);
    std::normal_distribution<double> normal(0.0, 1.0 / 1.96);
    int within = 0;
    constexpr int draws = 4000;
    for (int n = 0; n < draws; ++n) {
        const measured<resistance> c{cold.value + normal(random) * cold.uncertainty, {}},
            h{hot.value + normal(random) * hot.uncertainty, {}};
        const auto drawn =
            mean_temperature_of(annealed_copper, {c, {at.value + normal(random) * at.uncertainty, kelvins(0)}}, h);
        within += std::fabs((drawn.value - said.value).value()) <= said.uncertainty.value() ? 1 : 0;
    }
    EXPECT_NEAR(within / static_cast<double>(draws), 0.95, 0.012);
}

TEST(ResistanceReading, MissingCopperIsBracketed)
{
    for (const bool american : {false, true}) {
        const cable lead = welding_cable(american ? aught(1) : square_mm(50), 20_m);
        for (const double gone : {0.0, 0.1, 0.3, 0.5})
            for (const resistance_choice made : {resistance_choice::nominal, resistance_choice::standard_maximum}) {
                cable real = welding_cable(lead.size, 20_m, made);
                real.missing_strands = gone;
                real.damaged_length = 2_m;
                const resistance_reading read{{resistance_of(real, 25_degC), in_si<resistance>(1e-6)},
                                              {25_degC, kelvins(1)}};
                const missing_copper found = missing_copper_of(lead, read, 2_m);
                EXPECT_LE(found.least, gone + 1e-9) << gone;
                EXPECT_GE(found.most, gone - 1e-9) << gone;
                if (gone == 0.0) {
                    EXPECT_EQ(found.least, 0.0);
                }
            }
    }
    // the lead's own resistance when it was new says more than the standards
    cable known = welding_cable(square_mm(50), 20_m);
    known.stranding_increment = 0.07;
    cable real = known;
    real.missing_strands = 0.3;
    real.damaged_length = 5_m;
    const missing_copper found = missing_copper_of(
        known, {{resistance_of(real, 20_degC), in_si<resistance>(1e-6)}, {20_degC, kelvins(0.5)}}, 5_m);
    EXPECT_NEAR(found.least, 0.3, 0.02);
    EXPECT_NEAR(found.most, 0.3, 0.02);
    EXPECT_LT(found.most - found.least, 0.03);
}

TEST(ResistanceReading, RefusesWhatCannotBe)
{
    const cable lead = welding_cable(square_mm(50), 20_m);
    const auto reading = [](double ohms) {
        return resistance_reading{{in_si<resistance>(ohms), resistance{}}, {20_degC, kelvins(0)}};
    };
    EXPECT_THROW((void)missing_copper_of(lead, reading(1e-3), 2_m), no_solution_error)
        << "half of what whole strands have";
    EXPECT_THROW((void)missing_copper_of(lead, reading(0.0), 2_m), out_of_range_error);
    EXPECT_THROW((void)missing_copper_of(lead, reading(9e-3), 21_m), out_of_range_error);
    EXPECT_THROW((void)missing_copper_of(lead, reading(9e-3), 0_m), out_of_range_error);
    EXPECT_THROW((void)mean_temperature_of(annealed_copper, reading(1e-3), {in_si<resistance>(5e-3), resistance{}}),
                 out_of_range_error);
    EXPECT_THROW((void)mean_temperature_of(annealed_copper, reading(1e-3), {in_si<resistance>(-1e-3), resistance{}}),
                 out_of_range_error);
    EXPECT_THROW((void)mean_temperature_of(annealed_copper, reading(std::numeric_limits<double>::quiet_NaN()),
                                           {in_si<resistance>(1e-3), resistance{}}),
                 not_finite_error);
}

}  // namespace
