// Pictures of docs/pages/conductor_model.md.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/resistivity_table.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/material/metals.hpp>

#include "pages/page_chart.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using test::dot;
using test::error_words;
using test::page_chart;
using test::points;
using test::reference_table;

const std::string page = "conductor_model.md";

double error(double ours, double published)
{
    return 100.0 * (ours / published - 1.0);
}

// source: tests/reference/conductors-awg.csv (textbook tables of ASTM B258), conductors-nec-ch9-table8.csv
TEST(ConductorPictures, ResistanceOverSize)
{
    points solid, stranded;
    for (const auto& row : reference_table("conductors-awg.csv").rows()) {
        const std::string& gauge = row.text("awg");
        const conductor_size size =
            gauge.find('/') != std::string::npos ? aught(gauge[0] - '0') : awg(std::stoi(gauge));
        const double ours =
            number_in(conductor_resistance(annealed_copper, size.area(), 0.0, reference_temperature), "ohm/kft");
        solid.emplace_back(number_in(size.area(), "mm2"),
                           error(ours, row.number("resistance_20C_published_ohm_per_kft")));
    }
    for (const auto& row : reference_table("conductors-nec-ch9-table8.csv").rows()) {
        const area metal_area = row.quantity<area>("area_cmil", "cmil");
        const double increment = row.number("strand_count") > 1 ? 0.02 : 0.0;
        const double ours = number_in(
            conductor_resistance(annealed_copper, metal_area, increment, temperature::celsius(75)), "ohm/kft");
        stranded.emplace_back(number_in(metal_area, "mm2"),
                              error(ours, row.number("dc_resistance_75C_uncoated_ohm_per_kft")));
    }
    page_chart chart("Error of the resistance of copper over its area", {"area [mm2]", 0.004, 600.0, true},
                     {"calculated over published, less one [%]", -0.4, 0.4});
    chart.level(0.0, "")
        .dots(solid, dot::filled, "solid, 40 to 4/0 AWG, 20 degC")
        .dots(stranded, dot::ring, "NFPA 70 chapter 9 table 8, 75 degC");
    expect_on_page(page, "conductor_resistance.svg", chart,
                   "Resistance by gauge. Solid wire of " + std::to_string(solid.size()) +
                       " gauges at 20 degC against textbook tables of ASTM B258 printed to 3 or 4 digits: " +
                       error_words(solid).text() + ". NFPA 70 chapter 9 table 8, " + std::to_string(stranded.size()) +
                       " rows at 75 degC, printed to 3 digits: " + error_words(stranded).text() +
                       ". Half of the last digit of 3 is up to 0.5 %: most of what is seen is the printing.");
}

// source: Matula 1979 and the handbook table of aluminium (recalled beside 293 K), NBS Handbook 100 p. 4
TEST(ConductorPictures, LinearLawOverTemperature)
{
    const auto linear_error = [](const metal& m, double celsius) {
        const temperature t = temperature::celsius(celsius);
        return error(m.resistivity_at(t).value(), tabulated_resistivity_of(m, t).resistivity.value());
    };
    points copper, light, measured;
    for (double c = 0.0; c <= 1000.0; c += 20.0) copper.emplace_back(c, linear_error(annealed_copper, c));
    for (double c = 0.0; c <= 520.0; c += 20.0) light.emplace_back(c, linear_error(aluminium, c));
    for (const auto& row : reference_table("conductors-copper-resistance-ratio.csv").rows()) {
        const double c = row.number("temperature_C");
        const auto at = [](double celsius) { return annealed_copper.resistivity_at(temperature::celsius(celsius)); };
        measured.emplace_back(c, error((at(c) / at(0.0)).value(), row.number("R_t_over_R_0")));
    }
    page_chart chart("Error of the linear law of resistivity over temperature", {"conductor [degC]", -100.0, 1000.0},
                     {"linear law over table, less one [%]", -12.0, 4.0});
    chart.curve(copper, 0, "copper, over Matula's table")
        .curve(light, 1, "aluminium, over a handbook (most recalled)")
        .dots(measured, dot::filled, "copper, over ratios measured by NBS")
        .edge(300.0, "flagged beyond");
    const auto at = [](const points& p, double x) {
        for (const auto& one : p)
            if (one.first == x) return one.second;
        return std::nan("");
    };
    const auto worst_at = [](const points& p) {
        return std::max_element(p.begin(), p.end(),
                                [](const auto& a, const auto& b) { return std::fabs(a.second) < std::fabs(b.second); })
            ->first;
    };
    expect_on_page(
        page, "resistivity_error.svg", chart,
        "The linear law of resistivity. Copper (Matula 1979): " + number_text(at(copper, 100), 2) + " % at 100 degC, " +
            number_text(at(copper, 300), 2) + " % at 300 degC, from where results carry a flag, " +
            number_text(at(copper, 1000), 3) + " % at 1000 degC. Aluminium (handbook, recalled but for 20 degC): " +
            number_text(at(light, 500), 2) + " % at 500 degC. Ratios to 0 degC of NBS Handbook 100, " +
            number_text(measured.front().first, 3) + " to " + number_text(measured.back().first, 3) +
            " degC: " + error_words(measured).text() + " at " + number_text(worst_at(measured), 3) + " degC.");
}

points circular_table(const std::string& column)
{
    points out;
    for (const auto& row : reference_table("conductors-skin-effect.csv").rows())
        if (row.number("x") <= 6.0) out.emplace_back(row.number("x"), row.number(column));
    return out;
}

// source: NBS Circular 74 (recalled; four digits), IEC 60287-1-1, 2.1.2 (the ranges above 2.8 from memory)
TEST(ConductorPictures, SkinEffect)
{
    const points published = circular_table("R_ratio_published");
    points exact, iec, over_iec, over_circular;
    for (double x = 0.1; x < 6.05; x += 0.05) {
        exact.emplace_back(x, skin_effect_at(x / std::numbers::sqrt2).resistance_ratio);
        iec.emplace_back(x, 1.0 + iec_skin_factor_at(x).increase);
    }
    // evenly in the logarithm, and every range at both sides of its edge, where the formulas leap
    const double lowest = 0.1, highest = iec_skin_high.up_to, across = 1e-6;
    std::vector<double> asked;
    for (double x = lowest; x < highest; x *= 1.02) asked.push_back(x);
    for (const double edge : {iec_skin_low.up_to, iec_skin_middle.up_to})
        asked.insert(asked.end(), {edge - across, edge + across});
    asked.push_back(highest);
    std::sort(asked.begin(), asked.end());
    for (const double x : asked)
        over_iec.emplace_back(
            x, error(1.0 + iec_skin_factor_at(x).increase, skin_effect_at(x / std::numbers::sqrt2).resistance_ratio));
    for (const auto& [x, ratio] : published)
        over_circular.emplace_back(x, error(ratio, skin_effect_at(x / std::numbers::sqrt2).resistance_ratio));
    page_chart ratio("Skin effect: resistance over that of direct current", {"xs", 0.0, 6.0},
                     {"R over R of direct current", 1.0, 2.6});
    ratio.curve(exact, 0, "Bessel functions, as the library")
        .curve(iec, 1, "IEC 60287-1-1")
        .dots(published, dot::ring, "NBS Circular 74 (recalled)")
        .edge(2.8, "2.8")
        .edge(3.8, "3.8");
    expect_on_page(
        page, "skin_effect.svg", ratio,
        "Resistance of a round conductor by \\f$x_s = \\sqrt2\\,a/\\delta\\f$. " + std::to_string(published.size()) +
            " rows of NBS Circular 74 (recalled, four digits) over the library: " + error_words(over_circular).text() +
            ". A 70 mm2 lead of copper at 20 degC has " + "\\f$x_s\\f$ = " +
            number_text(
                iec_skin_argument(conductor_resistance(annealed_copper, in_si<area>(70e-6), 0.0, reference_temperature),
                                  in_si<frequency>(60.0)),
                2) +
            " at 60 Hz.");
    page_chart off("Error of the formulas of IEC 60287 for the skin effect", {"xs", 1.0, highest, true},
                   {"IEC 60287-1-1 over Bessel, less one [%]", -0.6, 0.6});
    off.level(0.0, "").curve(over_iec, 0, "the standard's three formulas").edge(2.8, "2.8").edge(3.8, "3.8");
    expect_on_page(page, "skin_effect_error.svg", off,
                   "The standard's formulas against the exact quotient, each up to its edge, the third to " +
                       number_text(highest) + ": worst " + number_text(error_words(over_iec).worst, 2) +
                       " %, just above 3.8. The ranges above 2.8 are from memory.");
}

}  // namespace
