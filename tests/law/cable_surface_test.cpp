#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <random>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/covering_heat.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>

#include "support/first_principles.hpp"
#include "support/near.hpp"
#include "support/published_ratings.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::lone_cylinder;
using weldloop::test::reference_table;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

using namespace weldloop::test::published;

struct measured {
    const char* table;
    errors by_model[3];
};

std::vector<measured> all_tables()
{
    const auto by_all = [](auto f) {
        return [f](const char* name) {
            return measured{name,
                            {f(surface_model::churchill_chu), f(surface_model::morgan), f(surface_model::iec_60287)}};
        };
    };
    return {by_all(welding_leads)("welding lead, 100 %"),
            by_all([](surface_model m) { return fixed_wiring_table(m, "G_spaced_horizontal", lay::spaced); })(
                "method G, spaced, level"),
            by_all([](surface_model m) { return fixed_wiring_table(m, "F_two_touching", lay::touching_pair); })(
                "method F, two touching"),
            by_all([](surface_model m) { return fixed_wiring_table(m, "F_three_flat_touching", lay::three_flat); })(
                "method F, three flat"),
            by_all([](surface_model m) { return fixed_wiring_table(m, "F_three_trefoil", lay::trefoil); })(
                "method F, trefoil"),
            by_all([](surface_model m) { return fixed_wiring_table(m, "G_spaced_vertical", lay::spaced_vertical); })(
                "method G, one above the other"),
            by_all(flexible_pairs)("60 degC rubber, pair")};
}

/// The default model as its comment states it.
double default_law(double d, double air, double surface, double wind, double pressure, double emissivity)
{
    constexpr double base = 303.15, sigma = 5.670374419e-8;
    const double rise = surface - air, sign = rise > 0 ? 1 : -1;
    if (rise == 0) return 0;
    const auto convection = [&](double v, double p) { return lone_cylinder(d, air, surface, v, p, 0); };
    const auto radiation = [&](double eps) { return pi * d * eps * sigma * (std::pow(surface, 4) - std::pow(air, 4)); };
    const double standard = sign * pi * d * (0.21 / std::pow(d, 0.6) + 3.94) * std::pow(std::fabs(rise), 1.25);
    const double left = standard - pi * d * 0.9 * sigma * (std::pow(base + rise, 4) - std::pow(base, 4));
    const double at_sea = sign * std::max(sign * left, sign * convection(0, 101325));
    const double by_convection = at_sea * convection(0, pressure) / convection(0, 101325);
    const double by_both = (at_sea + radiation(0.9)) / (convection(0, 101325) + radiation(0.9)) *
                               (convection(0, pressure) + radiation(emissivity)) -
                           radiation(emissivity);
    double still = sign * std::min(sign * by_convection, sign * by_both);
    if (pressure == 101325 && emissivity == 0.9) still = at_sea;
    if (wind > 0) {
        // the formula of the mixed flow undone: its two powers of four
        const double mixed = std::pow(convection(wind, pressure), 4) - std::pow(convection(0, pressure), 4);
        still = sign * std::pow(std::pow(still, 4) + mixed, 0.25);
    }
    return still + radiation(emissivity);
}

/// Calls f with a surface and a surface temperature [K] for a grid of all that the law depends on.
template <class F>
void over_the_grid(const F& f)
{
    for (const double air : {-40.0, -10.0, 25.0, 60.0})
        for (const double rise : {0.0, 0.01, 1.0, 5.0, 9.0, 14.0, 20.0, 30.0, 60.0, 120.0, 200.0, 300.0, -3.0, -40.0})
            for (const double mm : {5.0, 12.0, 20.0, 35.0, 60.0})
                for (const double wind : {0.0, 0.3, 10.0})
                    for (const double altitude : {0.0, 3000.0})
                        for (const double emissivity : {0.9, 0.7}) {
                            const cable_surface s{.diameter = in_si<length>(mm * 1e-3),
                                                  .air = temperature::celsius(air),
                                                  .wind = in_si<speed>(wind),
                                                  .altitude = in_si<length>(altitude),
                                                  .emissivity = emissivity};
                            f(s, s.air.in_kelvin() + rise);
                        }
}

}  // namespace

TEST(CableSurface, DefaultModelMeetsThePublishedRatings)
{
    errors together, seen;
    for (const measured& m : all_tables()) {
        const errors& e = m.by_model[static_cast<std::size_t>(default_surface_model)];
        EXPECT_LE(e.median(), 0.03) << m.table;
        EXPECT_LE(e.worst(), 0.045) << m.table;
        RecordProperty(m.table, std::to_string(100 * e.median()) + " " + std::to_string(100 * e.worst()));
        together.add(e);
        if (std::string(m.table) != "welding lead, 100 %") seen.add(e);  // those currents are recalled
    }
    EXPECT_EQ(together.count(), 49U);
    EXPECT_LE(together.median(), 0.015);
    EXPECT_LE(seen.median(), 0.015);
}

TEST(CableSurface, DefaultModelIsTheOneWithTheSmallestError)
{
    errors by_model[3];
    for (const measured& m : all_tables())
        for (std::size_t i = 0; i < 3; ++i) by_model[i].add(m.by_model[i]);
    for (std::size_t i = 0; i < 3; ++i) {
        EXPECT_LE(by_model[static_cast<std::size_t>(default_surface_model)].median(), by_model[i].median());
        EXPECT_LE(by_model[i].median(), 0.05);
        EXPECT_LE(by_model[i].worst(), 0.065);
    }
}

// The table in the doc comment of surface_model.
TEST(CableSurface, DocumentedErrors)
{
    struct row {
        const char* table;
        double iec[2], morgan[2], churchill_chu[2];
    };
    const row documented[] = {{"welding lead, 100 %", {0.5, 1.4}, {1.8, 2.6}, {4.5, 4.8}},
                              {"method G, spaced, level", {0.5, 2.0}, {1.8, 3.6}, {4.1, 5.6}},
                              {"method F, two touching", {1.1, 2.9}, {2.7, 4.0}, {5.1, 6.1}},
                              {"method F, three flat", {1.2, 2.6}, {2.1, 3.3}, {4.5, 5.5}},
                              {"method F, trefoil", {2.5, 4.0}, {1.7, 3.7}, {3.2, 4.6}},
                              {"method G, one above the other", {0.7, 2.3}, {2.0, 3.6}, {4.1, 5.7}},
                              {"60 degC rubber, pair", {1.0, 1.8}, {1.5, 2.5}, {2.5, 5.1}}};
    const std::vector<measured> tables = all_tables();
    ASSERT_EQ(tables.size(), std::size(documented));
    for (std::size_t i = 0; i < tables.size(); ++i) {
        const double* const by_model[] = {documented[i].churchill_chu, documented[i].morgan, documented[i].iec};
        for (std::size_t m = 0; m < 3; ++m) {
            EXPECT_NEAR(100 * tables[i].by_model[m].median(), by_model[m][0], 0.06) << documented[i].table << m;
            EXPECT_NEAR(100 * tables[i].by_model[m].worst(), by_model[m][1], 0.06) << documented[i].table << m;
        }
    }
}

// source: constants of IEC 60287-2-1 (rows 1 and 2 confirmed by ratings, the others from memory). Skipped: rows that no
// lay of the library takes (all from memory): touching one above another, two spaced so, and on walls.
TEST(CableSurface, RowsOfTheStandard)
{
    const std::map<int, const free_air_row*> ours{{1, &free_air_alone},
                                                  {2, &free_air_touching_pair},
                                                  {3, &free_air_trefoil},
                                                  {4, &free_air_three_flat},
                                                  {8, &free_air_three_vertical}};
    std::size_t taken = 0;
    for (const auto& row : reference_table("heat-iec60287-free-air.csv").rows()) {
        const auto found = ours.find(static_cast<int>(row.number("row")));
        if (found == ours.end()) {
            EXPECT_EQ(row.text("verified"), "memory") << row.where();
            continue;
        }
        EXPECT_EQ(found->second->z, row.number("Z")) << row.where();
        EXPECT_EQ(found->second->e, row.number("E")) << row.where();
        EXPECT_EQ(found->second->g, row.number("g")) << row.where();
        EXPECT_EQ(found->second->source->kind == source_kind::memory, row.text("verified") == "memory") << row.where();
        ++taken;
    }
    EXPECT_EQ(taken, ours.size());
}

// source: the method of IEC 60287-2-1 worked by hand (our own numbers, no published ones exist): 16 mm lead, 85 degC in
// 25 degC. The method knows the rise alone, and is the default's in air at 30 degC: 90 degC there, with that resistance
TEST(CableSurface, WorkedIterationOfTheStandard)
{
    std::map<std::string, double> expected;
    for (const auto& row : reference_table("heat-iec60287-iteration.csv").rows())
        if (row.has("value")) expected[row.text("quantity")] = row.number("value");
    const double t1 = 1.0 / covering_conductance(flexible_rubber.thermal_conductivity, 10_mm, 16_mm).value();
    EXPECT_NEAR_REL(t1, expected.at("T1"), 2e-5);
    EXPECT_NEAR_REL(free_air_coefficient(free_air_alone, 16_mm), expected.at("h"), 2e-6);
    const cable_surface surface{.diameter = 16_mm, .air = free_air_base};
    const auto copper = [](temperature t) { return annealed_copper.resistivity_at(t); };
    const double less = std::sqrt((copper(85_degC) / copper(90_degC)).value());
    EXPECT_NEAR_REL(rated_current({10, 16, t1, 0.386}, surface, 90), expected.at("I") * less, 5e-5);
    const double rise = expected.at("dtheta_s");
    const power_per_length q = surface_loss(surface, free_air_base + in_si<temperature_difference>(rise));
    EXPECT_NEAR_REL(q.value(), expected.at("loss"), 5e-5);
    EXPECT_NEAR_REL(rise / q.value(), expected.at("T4"), 5e-5);
}

// source: our own evaluation of the correlations in air at 25 degC, emissivity 0.9; the spread is the uncertainty of
// the physics: 18 % of the coefficient, 9 % of current
TEST(CableSurface, ModelsAgreeWithinTheScatterOfThePhysics)
{
    for (double mm : {10.0, 20.0, 30.0, 50.0})
        for (double rise : {10.0, 20.0, 40.0, 60.0}) {
            cable_surface s{.diameter = in_si<length>(mm * 1e-3), .air = 25_degC};
            const temperature hot = 25_degC + in_si<temperature_difference>(rise);
            const double standard = surface_loss(s, hot).value();
            for (surface_model m : {surface_model::churchill_chu, surface_model::morgan}) {
                s.model = m;
                EXPECT_NEAR_REL(surface_loss(s, hot).value(), standard, 0.18) << mm << " mm, " << rise << " K";
            }
        }
    // printed digits of the same comparison: IEC, Churchill-Chu + radiation, Morgan + radiation at 20 mm and 60 K
    const auto coefficient = [&](surface_model m, temperature air) {
        const cable_surface s{.diameter = 20_mm, .air = air, .model = m};
        return surface_loss(s, air + 60_K).value() / (pi * 0.020 * 60);
    };
    EXPECT_NEAR(coefficient(surface_model::iec_60287, free_air_base), 17.1, 0.06);
    EXPECT_NEAR(coefficient(surface_model::churchill_chu, 25_degC), 15.4, 0.06);
    EXPECT_NEAR(coefficient(surface_model::morgan, 25_degC), 16.2, 0.06);
}

TEST(CableSurface, FirstPrinciplesAreConvectionPlusRadiation)
{
    const cable_surface s{.diameter = 17_mm, .air = 20_degC, .model = surface_model::churchill_chu};
    const air_properties film = air_at(45_degC);
    const double nu = nusselt_horizontal_cylinder(rayleigh_number(17_mm, 70_degC, 20_degC, film), film.prandtl());
    const double by_hand =
        pi * nu * film.thermal_conductivity.value() * 50 + pi * 0.017 * radiated(0.9, 70_degC, 20_degC).value();
    EXPECT_NEAR_REL(surface_loss(s, 70_degC).value(), by_hand, 1e-12);

    cable_surface windy = s;
    windy.wind = 2_m_per_s;
    const double both = nusselt_mixed(nu, nusselt_cross_flow(reynolds_number(2_m_per_s, 17_mm, film), film.prandtl()));
    const double in_wind =
        pi * both * film.thermal_conductivity.value() * 50 + pi * 0.017 * radiated(0.9, 70_degC, 20_degC).value();
    EXPECT_NEAR_REL(surface_loss(windy, 70_degC).value(), in_wind, 1e-12);
    // the default's own still convection counts with the wind, so that a gale leaves nothing of the difference
    cable_surface windy_default{.diameter = 17_mm, .air = 20_degC, .wind = 2_m_per_s};
    EXPECT_GT(surface_loss(windy_default, 70_degC).value(), in_wind);
    EXPECT_NEAR_REL(surface_loss(windy_default, 70_degC).value(), in_wind, 0.01);
}

// source: the formulas printed at the top of this file, evaluated in the plainest way
TEST(CableSurface, IsThePlainFormula)
{
    over_the_grid([](const cable_surface& s, double surface) {
        const double plain = default_law(s.diameter.value(), s.air.in_kelvin(), surface, s.wind.value(),
                                         pressure_at_altitude(s.altitude).value(), static_cast<double>(s.emissivity));
        // a rise of a hundredth of a kelvin keeps 4 digits less of the fourth powers
        const double digits = std::fabs(surface - s.air.in_kelvin()) < 0.1 ? 1e-9 : 1e-11;
        EXPECT_NEAR_REL(surface_loss(s, temperature::kelvin(surface)).value(), plain, digits)
            << s.diameter.value() << " m, " << surface << " K, " << s.wind.value() << " m/s";
    });
}

TEST(CableSurface, StandardOrFirstPrinciplesWhicheverIsMoreAndNoStepBetween)
{
    // in the air the standard's law stands for. Both crossings: a small rise, and a rise of hundreds of kelvin where
    // radiation overtakes
    for (const double mm : {5.0, 20.0, 60.0}) {
        const double d = mm * 1e-3, air = 303.15;
        const cable_surface s{.diameter = in_si<length>(d), .air = 30_degC};
        bool was_standard = false;
        int changes = 0;
        for (double rise = 0.5; rise < 600; rise *= 1.01) {
            const double standard = pi * d * (0.21 / std::pow(d, 0.6) + 3.94) * std::pow(rise, 1.25);
            const double floor = lone_cylinder(d, air, air + rise, 0, 101325, 0.9);
            EXPECT_NEAR_REL(surface_loss(s, temperature::kelvin(air + rise)).value(), std::max(standard, floor), 1e-11);
            changes += (standard > floor) != was_standard ? 1 : 0;
            was_standard = standard > floor;
        }
        EXPECT_EQ(changes, 2) << mm;
    }
}

TEST(CableSurface, TangentIsThatOfTheLaw)
{
    over_the_grid([](cable_surface s, double surface) {
        for (const surface_model model : all_surface_models) {
            s.model = model;
            const detail::surface_kernel kernel(s);
            const detail::value_and_slope at = kernel.loss_and_slope(surface);
            EXPECT_EQ(at.value, kernel.loss(surface));
            // differences over h and 2h: the error of the fourth order is below 1e-7 of the slope unless the law
            // changes in between, where the tangent lies between the slopes to both sides
            const double rise = std::fabs(surface - s.air.in_kelvin()), h = 1e-3 * (rise > 0.0 ? rise : 1.0);
            const auto q = [&](double t) { return kernel.loss(t); };
            const double wide = (q(surface + 2 * h) - q(surface - 2 * h)) / (4 * h);
            const double narrow = (q(surface + h) - q(surface - h)) / (2 * h);
            const double left = (q(surface) - q(surface - h)) / h, right = (q(surface + h) - q(surface)) / h;
            if (rise == 0.0)  // Ra^(1/6) is steep here: the tangent lies below the secants, without wind far below
                EXPECT_TRUE(at.slope > 0.2 * right && at.slope < 1.000001 * right) << at.slope << " " << right;
            else if (std::fabs(narrow / wide - 1) < 1e-5)
                EXPECT_NEAR_REL(at.slope, (4 * narrow - wide) / 3, 1e-7) << surface;
            else
                EXPECT_TRUE(at.slope >= 0.9 * std::min(left, right) && at.slope <= 1.1 * std::max(left, right))
                    << at.slope << " of " << left << " and " << right;
        }
    });
}

TEST(CableSurface, SteadySurfaceBalancesItsHeat)
{
    over_the_grid([](cable_surface s, double conductor) {
        for (const double sun : {0.0, 800.0})
            for (const double conductance : {0.3, 2.0, 20.0}) {
                s.sun = in_si<heat_flux>(sun);
                const detail::surface_kernel kernel(s);
                const double surface = kernel.steady_surface(conductance, conductor);
                const double through = conductance * (conductor - surface);
                // a surface temperature has 14 digits
                const double rounding = 1e-13 * surface * (conductance + kernel.loss_and_slope(surface).slope);
                EXPECT_NEAR(kernel.loss(surface) - kernel.sun_per_length(), through, rounding) << conductor;
            }
    });
}

TEST(CableSurface, Properties)
{
    std::mt19937 random(20260);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int n = 0; n < 400; ++n) {
        cable_surface s{.diameter = in_si<length>(0.006 + 0.04 * unit(random)),
                        .air = temperature::celsius(-30 + 80 * unit(random)),
                        .wind = in_si<speed>(n % 3 == 0 ? 0.0 : 10 * unit(random)),
                        .lay = all_lays[static_cast<std::size_t>(n) % all_lays.size()],
                        .altitude = in_si<length>(n % 2 == 0 ? 0.0 : 4000 * unit(random)),
                        .model = all_surface_models[static_cast<std::size_t>(n) % 3]};
        EXPECT_EQ(surface_loss(s, s.air).value(), 0.0);
        double last = 0.0;
        for (double rise = 0.01; rise < 2000; rise *= 1.6) {
            const double q = surface_loss(s, s.air + in_si<temperature_difference>(rise)).value();
            EXPECT_GT(q, last);
            EXPECT_TRUE(std::isfinite(q));
            last = q;
        }
        const temperature hot = s.air + 50_K;
        EXPECT_LT(surface_loss(s, s.air - 5_K).value(), 0.0);
        const double here = surface_loss(s, hot).value();
        cable_surface other = s;
        other.wind = s.wind + 1_m_per_s;
        EXPECT_GT(surface_loss(other, hot).value(), here);
        other = s;
        other.altitude = s.altitude + 1000_m;
        EXPECT_LT(surface_loss(other, hot).value(), here);
        other = s;
        other.emissivity = 0.5;
        EXPECT_LT(surface_loss(other, hot).value(), here);
        other = s;
        other.diameter = s.diameter * 1.2;
        EXPECT_GT(surface_loss(other, hot).value(), here);
    }
}

TEST(CableSurface, CrowdedLeadsGiveOffLess)
{
    for (double mm : {8.0, 15.0, 30.0}) {
        const length d = in_si<length>(mm * 1e-3);
        EXPECT_EQ(lay_ratio(lay::alone, d), 1.0);
        EXPECT_EQ(lay_ratio(lay::spaced, d), 1.0);
        EXPECT_LT(lay_ratio(lay::touching_pair, d), 0.80);
        EXPECT_LT(lay_ratio(lay::three_flat, d), lay_ratio(lay::touching_pair, d));
        EXPECT_LT(lay_ratio(lay::trefoil, d), lay_ratio(lay::three_flat, d));
        EXPECT_EQ(lay_ratio(lay::bundled, d), 1.0);  // bodies of their own, tests/law/lead_bundle_test.cpp
        EXPECT_EQ(lay_ratio(lay::coiled, d), 1.0);
    }
}

TEST(CableSurface, BasisSaysWhatWasUsed)
{
    cable_surface s{.diameter = 17_mm};
    EXPECT_FALSE(surface_basis(s, 70_degC).has(range_flag::arrangement_judgement));
    EXPECT_FALSE(surface_basis(s, 70_degC).has(range_flag::convection_range));
    EXPECT_FALSE(surface_basis(s, 70_degC).has(source_kind::memory));
    for (lay l : {lay::on_floor, lay::bundled, lay::coiled}) {
        s.lay = l;
        EXPECT_TRUE(surface_basis(s, 70_degC).has(range_flag::arrangement_judgement));
        EXPECT_TRUE(surface_basis(s, 70_degC).has(source_kind::judgement));
    }
    s.lay = lay::trefoil;
    EXPECT_TRUE(surface_basis(s, 70_degC).has(source_kind::memory));
    EXPECT_TRUE(surface_basis({.diameter = 0.16 * 1_m}, 70_degC).has(range_flag::cable_diameter_range));
    EXPECT_TRUE(surface_basis({.diameter = 17_mm}, temperature::celsius(5000)).has(range_flag::convection_range));
    // what spares the small their Rayleigh number: it lies below 7.3e8 per cubic metre and kelvin from 200 K on
    double last = 7.3e8;
    for (double t = 200.0; t < 1900.0; t += 10.0) {
        const air_properties film = air_at(temperature::kelvin(t), pressure_at_altitude(lowest_altitude));
        const double per_kelvin = rayleigh_number(1_m, temperature::kelvin(t + 1.0), temperature::kelvin(t), film);
        EXPECT_LT(per_kelvin, last) << t;
        last = per_kelvin;
    }
    EXPECT_LT(7.3e8 * 1e3, cylinder_highest_rayleigh);
    const cable_surface thick{.diameter = 15_m};
    EXPECT_TRUE(surface_basis(thick, 85_degC).has(range_flag::convection_range));
    EXPECT_FALSE(surface_basis({.diameter = 2.9 * 1_m}, 85_degC).has(range_flag::convection_range));
    const basis outdoors = surface_basis({.diameter = 17_mm, .wind = 3_m_per_s, .sun = in_si<heat_flux>(800)}, 70_degC);
    EXPECT_GE(outdoors.sources().size(), 4U);
}

TEST(CableSurface, SunIsTakenUpOnTheOutline)
{
    EXPECT_NEAR_REL(absorbed_sun({.diameter = 20_mm, .sun = in_si<heat_flux>(1000)}).value(), 16.0, 1e-12);
    EXPECT_EQ(absorbed_sun({.diameter = 20_mm}).value(), 0.0);
}

TEST(CableSurface, NamesOfModels)
{
    EXPECT_EQ(to_text(surface_model::iec_60287), "iec 60287");
    EXPECT_EQ(to_text(surface_model::morgan), "morgan");
    EXPECT_EQ(to_text(surface_model::churchill_chu), "churchill chu");
}

TEST(CableSurface, RefusesWhatCannotBe)
{
    const temperature hot = 60_degC;
    for (double bad : {nan_value, infinite, -infinite}) {
        EXPECT_THROW((void)surface_loss({.diameter = in_si<length>(bad)}, hot), not_finite_error);
        EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .wind = in_si<speed>(bad)}, hot), not_finite_error);
        EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .altitude = in_si<length>(bad)}, hot), not_finite_error);
        EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .sun = in_si<heat_flux>(bad)}, hot), not_finite_error);
        EXPECT_THROW((void)absorbed_sun({.diameter = 17_mm, .sun = in_si<heat_flux>(bad)}), not_finite_error);
        EXPECT_THROW((void)surface_basis({.diameter = in_si<length>(bad)}, hot), not_finite_error);
        EXPECT_THROW((void)free_air_coefficient(free_air_alone, in_si<length>(bad)), not_finite_error);
        EXPECT_THROW((void)lay_ratio(lay::alone, in_si<length>(bad)), not_finite_error);
    }
    EXPECT_THROW((void)surface_loss({.diameter = 0_mm}, hot), out_of_range_error);
    EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .wind = in_si<speed>(-1)}, hot), out_of_range_error);
    EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .altitude = 12_km}, hot), out_of_range_error);
    EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .sun = in_si<heat_flux>(-1)}, hot), out_of_range_error);
    EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .air = temperature::celsius(-150)}, hot), out_of_range_error);
    EXPECT_THROW((void)surface_loss({.diameter = 17_mm, .air = 600_degC}, hot), out_of_range_error);
    EXPECT_THROW((void)free_air_coefficient(free_air_alone, 0_mm), out_of_range_error);
    EXPECT_THROW((void)lay_ratio(lay::trefoil, -1.0 * 1_mm), out_of_range_error);
}
