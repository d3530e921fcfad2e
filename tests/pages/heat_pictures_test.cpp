// Pictures of docs/pages/heat_model.md.
#include <cmath>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "pages/page_chart.hpp"
#include "support/printed_formula.hpp"
#include "support/published_ratings.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using test::dot;
using test::error_words;
using test::page_chart;
using test::points;
using test::reference_table;

const std::string page = "heat_model.md";

points by_size(const test::published::errors& e)
{
    points out;
    for (std::size_t i = 0; i < e.count(); ++i) out.emplace_back(e.sizes_mm2()[i], 100.0 * e.all()[i]);
    return out;
}

// source: BS 638-4 ratings (recalled) and dimensions; IEC 60364-5-52 table B.52.12; BS 7671 table 4F1A
TEST(HeatPictures, RatingsOverSize)
{
    const surface_model model = default_surface_model;
    const points leads = by_size(test::published::welding_leads(model)),
                 spaced = by_size(test::published::fixed_wiring_table(model, "G_spaced_horizontal", lay::spaced)),
                 touching = by_size(test::published::fixed_wiring_table(model, "F_two_touching", lay::touching_pair)),
                 pairs = by_size(test::published::flexible_pairs(model));
    page_chart chart("Error of calculated ratings over the size of the lead", {"conductor [mm2]", 14.0, 350.0, true},
                     {"calculated over published current, less one [%]", -4.0, 4.0});
    chart.level(0.0, "")
        .dots(leads, dot::filled, "welding leads, 85 degC, air 25 (recalled)")
        .dots(spaced, dot::ring, "IEC 60364-5-52 method G, spaced")
        .dots(touching, dot::square, "IEC 60364-5-52 method F, two touching")
        .dots(pairs, dot::cross, "BS 7671 flexible pair, 60 degC")
        .edge(16.0, "leads from 16")
        .edge(185.0, "to 185", true);
    expect_on_page(page, "lead_ratings.svg", chart,
                   "Current at the limit of the covering, calculated over published, nothing fitted. Welding leads "
                   "(ratings recalled): " +
                       error_words(leads).text() + "; method G: " + error_words(spaced).text() +
                       "; method F, two touching: " + error_words(touching).text() +
                       "; flexible pairs: " + error_words(pairs).text() +
                       ". Diameters of the wiring cables are assumed. Upright lines end the sizes whose rating as a "
                       "welding lead was found.");
}

// The three laws of the surface beside each other, in air of 25 degC, 40 K over it.
TEST(HeatPictures, SurfaceLawsOverDiameter)
{
    const auto coefficient = [](surface_model m, double mm) {
        const cable_surface s{.diameter = in_si<length>(mm * 1e-3), .model = m};
        return surface_loss(s, 65_degC).value() / (std::numbers::pi * mm * 1e-3 * 40.0);
    };
    points iec, morgan, churchill;
    double apart = 0.0;
    for (double mm = 5.0; mm < 50.5; mm += 1.0) {
        iec.emplace_back(mm, coefficient(surface_model::iec_60287, mm));
        morgan.emplace_back(mm, coefficient(surface_model::morgan, mm));
        churchill.emplace_back(mm, coefficient(surface_model::churchill_chu, mm));
        if (mm < 8.0 || mm > 30.0) continue;
        for (const double other : {morgan.back().second, churchill.back().second})
            apart = std::max(apart, 100.0 * std::fabs(other / iec.back().second - 1.0));
    }
    page_chart chart("Heat given off by a lead in still air over its diameter",
                     {"diameter over the covering [mm]", 5.0, 50.0},
                     {"W per m2 and K at 40 K over air of 25 degC", 8.0, 22.0});
    chart.curve(iec, 0, "iec_60287, the default")
        .curve(morgan, 1, "morgan")
        .curve(churchill, 2, "churchill_chu")
        .edge(8.0, "welding leads")
        .edge(30.0, "");
    expect_on_page(page, "surface_laws.svg", chart,
                   "Three laws of the surface, convection and radiation together. Between the upright lines, the "
                   "diameters of welding leads, "
                   "they part by up to " +
                       number_text(apart, 2) +
                       " % of the heat, half of which is in the current. Which one meets published ratings best stands "
                       "in the table above.");
}

// source: tests/reference/heat-forced-convection.csv: Hilpert's power laws (two of five read, the rest recalled)
TEST(HeatPictures, CrossFlow)
{
    constexpr double prandtl = 0.71;
    points off;
    page_chart chart("Two laws of wind across a cylinder", {"Reynolds number", 0.4, 4e5, true},
                     {"library over Hilpert, less one [%]", -30.0, 30.0});
    for (const auto& row : reference_table("heat-forced-convection.csv").rows()) {
        if (!row.text("id").starts_with("FC-HIL")) continue;
        points piece;
        const std::string formula = row.text("equation").substr(std::string("Nu = ").size());
        const double least = row.number("Re_min"), most = row.number("Re_max");
        constexpr int pieces = 12;
        for (int k = 0; k <= pieces; ++k) {
            const double re = least * std::pow(most / least, static_cast<double>(k) / pieces);
            const double hilpert = test::printed_value(formula, {{"Re", re}, {"Pr", prandtl}});
            piece.emplace_back(re, 100.0 * (nusselt_cross_flow(re, prandtl) / hilpert - 1.0));
        }
        off.insert(off.end(), piece.begin(), piece.end());
        chart.curve(piece, 0, off.size() == piece.size() ? "Churchill and Bernstein over Hilpert" : "");
    }
    // air at 40 degC, 1.7e-5 m2/s: 10 mm at 1 m/s and 30 mm at 10 m/s
    chart.level(0.0, "").edge(590.0, "leads in wind").edge(17600.0, "");
    points of_leads;
    for (const auto& p : off)
        if (p.first > 590.0 && p.first < 17600.0) of_leads.push_back(p);
    expect_on_page(page, "cross_flow.svg", chart,
                   "Wind: the formula used against the power laws of another author (two of five ranges read, the rest "
                   "recalled), each in its "
                   "range. Over all: " +
                       error_words(off).text() + "; between the upright lines, leads of 10 to 30 mm in 1 to 10 m/s: " +
                       error_words(of_leads).text() + ".");
}

// source: tests/oracle/lead_transient/outputs.csv, a covering of 200 rings marched by an ODE suite
TEST(HeatPictures, RiseInTime)
{
    constexpr double air_degC = 25.0;
    points once, settled;
    for (const auto& row : reference_table("../oracle/lead_transient/outputs.csv").rows()) {
        const cable lead = welding_cable(square_mm(row.number("size_mm2")), 10_m);
        const heating_segment programme[] = {
            {in_si<current>(row.number("amps_1")), in_si<duration>(row.number("seconds_1"))},
            {in_si<current>(row.number("amps_2")), in_si<duration>(row.number("seconds_2"))}};
        const double theirs = row.number("conductor_degC");
        if (row.text("kind") == "once") {
            conductor_profile at = lead_at_rest(lead, {});
            for (const heating_segment& s : programme) at = temperature_after(lead, {}, {s.current, s.duration}, at);
            once.emplace_back(theirs - air_degC, at.conductor.in_celsius() - theirs);
        } else
            settled.emplace_back(theirs - air_degC,
                                 heating_of_programme(lead, {}, programme).conductor_peak.in_celsius() - theirs);
    }
    page_chart chart("Error of a lead's temperature in time", {"rise over the air, 200 rings [K]", 0.0, 120.0},
                     {"conductor less that of 200 rings [K]", -0.12, 0.12});
    chart.level(0.0, "")
        .dots(once, dot::filled, "one load, or a load and a rest")
        .dots(settled, dot::ring, "peak of a settled duty");
    expect_on_page(page, "rise_in_time.svg", chart,
                   "A metre of lead of 16, 70 and 185 mm2 against a covering of 200 rings marched by an ODE suite. " +
                       std::to_string(once.size()) + " loads from 10 s to 10 h: " + error_words(once).text("K") + "; " +
                       std::to_string(settled.size()) +
                       " settled duties from 2 s of 1 min to 6 of 10 min: " + error_words(settled).text("K") + ".");
}

}  // namespace
