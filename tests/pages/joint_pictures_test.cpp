// Pictures of docs/pages/joint_model.md.
#include <cmath>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/finite_body.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/metals.hpp>

#include "law/oracle_joints.hpp"
#include "pages/page_chart.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using test::dot;
using test::error_words;
using test::page_chart;
using test::points;
using test::reference_table;

const std::string page = "joint_model.md";

// source: tests/reference/contacts-voltage-temperature.csv (Holm, Slade; copper, gold, tin and tungsten by two sources)
TEST(JointPictures, SpotTemperatureOverDrop)
{
    points law, softens, melts, off_softening, off_melting;
    for (double v = 0.0; v < 1.245; v += 0.02)
        law.emplace_back(v, hot_spot_temperature(in_si<voltage>(v), reference_temperature).in_celsius());
    for (const auto& row : reference_table("contacts-voltage-temperature.csv").rows())
        for (const bool melting : {false, true}) {
            const std::string kind = melting ? "melting" : "softening";
            if (!row.has(kind + "_voltage_handbook_V")) continue;
            const double volts = row.number(kind + "_voltage_handbook_V"), degC = row.number(kind + "_temp_C");
            (melting ? melts : softens).emplace_back(volts, degC);
            const double ours = drop_for_spot_temperature(temperature::celsius(degC), reference_temperature).value();
            (melting ? off_melting : off_softening).emplace_back(volts, 100.0 * (ours / volts - 1.0));
        }
    page_chart chart("Hottest spot by the drop of a contact", {"drop [V], bodies at 20 degC", 0.0, 1.2},
                     {"hottest spot [degC]", 0.0, 3600.0});
    chart.curve(law, 0, "voltage-temperature law")
        .dots(softens, dot::ring, "softening, handbook rows")
        .dots(melts, dot::filled, "melting, handbook rows");
    expect_on_page(
        page, "spot_temperature.svg", chart,
        "The law has no constant of a metal in it, and the metals lie on it. Handbook drops of Holm and Slade (copper, "
        "gold, tin "
        "and tungsten by two sources, the rest recalled) against the law at their temperatures: softening of " +
            std::to_string(softens.size()) + " metals " + error_words(off_softening).text() + ", melting of " +
            std::to_string(melts.size()) + " metals " + error_words(off_melting).text() + " (nickel).");
}

// source: tests/reference/contacts-steel-sheet.csv, rows at 2500 N (orders of magnitude, recalled)
TEST(JointPictures, ResistanceOverForce)
{
    const auto microohm = [](surface_state s, double newton, const auto& point) {
        const contact c{.metals = {mild_steel, mild_steel}, .force = in_si<force>(newton), .surface = s};
        return 1e6 / point(contact_conductance_of(c)).value();
    };
    const auto low = [](const band<conductance>& g) { return g.high; };
    const auto typical = [](const band<conductance>& g) { return g.typical; };
    const auto high = [](const band<conductance>& g) { return g.low; };
    points best, middle, worst, scale;
    for (double decade = 1.0; decade < 4.01; decade += 0.1) {
        const double n = std::pow(10.0, decade);
        best.emplace_back(n, microohm(surface_state::clean, n, low));
        middle.emplace_back(n, microohm(surface_state::clean, n, typical));
        worst.emplace_back(n, microohm(surface_state::clean, n, high));
        scale.emplace_back(n, microohm(surface_state::mill_scale, n, typical));
    }
    page_chart chart("Resistance of a contact by its force", {"force [N]", 5.0, 20000.0, true},
                     {"resistance cold [micro-ohm]", 3.0, 2e6, true});
    points centres;
    for (const auto& row : reference_table("contacts-steel-sheet.csv").rows()) {
        const std::string& what = row.text("material_state");
        if (!what.starts_with("cold-rolled") && !what.starts_with("hot-rolled")) continue;
        const double n = row.number("force_N") * (what.starts_with("hot") ? 1.12 : 1.0);  // beside each other
        chart.whisker(n, row.number("resistance_low_microohm"), row.number("resistance_high_microohm"));
        centres.emplace_back(n, row.number("resistance_typical_microohm"));
    }
    chart.between(best, worst, "steel on steel, clean: 5 to 95 %")
        .curve(middle, 0, "median, force law")
        .curve(scale, 1, "median under mill scale (judgement)")
        .dots(centres, dot::filled, "sheets at 2.5 kN: clean, scaled (recalled)")
        .level(378.0, "new clamp on clean plate, IEC 60974-13")
        .edge(10.0, "10 N")
        .edge(10000.0, "10 kN", true);
    const double ours = microohm(surface_state::clean, 2500.0, typical);
    expect_on_page(page, "force_law.svg", chart,
                   "Resistance falls as a power of force, and scatters more than force moves it. At 2.5 kN clean steel "
                   "on steel comes "
                   "out at " +
                       number_text(ours, 2) +
                       " micro-ohm in the median, where resistance welding (recalled, orders of magnitude) has " +
                       number_text(centres.front().second, 3) + "; under mill scale " +
                       number_text(microohm(surface_state::mill_scale, 2500.0, typical), 2) + " and " +
                       number_text(centres.back().second, 3) +
                       ". Upright lines end the law's range; the factor of the scale is judgement.");
}

// source: independent field solution, tests/oracle/joints/outputs.csv
TEST(JointPictures, FiniteBodies)
{
    const auto rho = in_si<resistivity>(1.0);
    const auto radius = in_si<length>(1.0);
    points sheets, bars;
    for (const auto& solved : test::field_solutions("sheet"))
        sheets.emplace_back(
            solved.at("H"),
            100.0 *
                (sheet_resistance(rho, radius, in_si<length>(solved.at("H")), in_si<length>(solved.at("B"))).value() /
                     solved.resistance -
                 1.0));
    for (const auto& solved : test::field_solutions("bar")) {
        const double b = solved.at("B"), body = solved.at("H") / (std::numbers::pi * b * b);
        const double whole = body + bar_end_resistance(rho, radius, in_si<length>(b)).value();
        bars.emplace_back(b, 100.0 * (whole / solved.resistance - 1.0));
    }
    page_chart chart("Error of spots on bodies that are not wide",
                     {"thickness or radius of the body, in spot radii", 1.0, 40.0, true},
                     {"formula over field solution, less one [%]", -1.0, 1.0});
    chart.level(0.0, "")
        .dots(sheets, dot::filled, "spot on a sheet")
        .dots(bars, dot::ring, "spot on the end of a bar")
        .edge(1.25, "bars")
        .edge(2.0, "sheets");
    expect_on_page(page, "finite_bodies.svg", chart,
                   "Formulas against finite elements, whole resistance: sheets of 2 to 30 spot radii " +
                       error_words(sheets).text() + "; bars of 1.25 to 30 " + error_words(bars).text() +
                       ". Smaller bodies are refused.");
}

// source: tests/reference/contacts-measured-dirty.csv: two painted steel bars and a star washer, 0.605 V over two faces
// at 55 A
TEST(JointPictures, DropOverCurrent)
{
    const metal_pair steel{mild_steel, mild_steel};
    const joint_limits limits = joint_limits_of(steel, reference_temperature);
    const band<conductance> g =
        contact_conductance_of({.metals = steel, .force = 1_kN, .surface = surface_state::painted_pierced});
    points low, typical, high, ohmic;
    for (double a = 0.0; a < 402.0; a += 4.0) {
        const current amps = in_si<current>(a);
        low.emplace_back(a, joint_drop(amps, g.high, limits).value());
        typical.emplace_back(a, joint_drop(amps, g.typical, limits).value());
        high.emplace_back(a, joint_drop(amps, g.low, limits).value());
        ohmic.emplace_back(a, (amps / g.typical).value());
    }
    double measured = 0.0;
    for (const auto& row : reference_table("contacts-measured-dirty.csv").rows())
        if (row.text("quantity") == "voltage across the joint, derived") measured = 0.5 * row.number("value");
    page_chart chart("Drop of a contact by its current", {"current [A]", 0.0, 400.0}, {"drop [V]", 0.0, 0.65});
    chart.between(low, high, "painted steel, pierced, 1 kN: 5 to 95 %")
        .curve(typical, 0, "median")
        .curve(ohmic, 3, "the same if it stayed a cold resistance")
        .level(limits.softening.value(), "")
        .level(limits.melting.value(), "softening (lower) and melting drop of steel")
        .dots({{55.0, measured}}, dot::filled, "measured: a face under a star washer");
    expect_on_page(page, "joint_drop.svg", chart,
                   "A joint is a characteristic: above the softening drop its spots yield and the drop levels off "
                   "below the melting drop, " +
                       number_text(limits.softening.value(), 2) + " and " + number_text(limits.melting.value(), 2) +
                       " V for steel at 20 degC. The one dirty joint with a published measurement dropped " +
                       number_text(measured, 2) +
                       " V a face at 55 A (shipbuilding report, quoted; its force is not stated, 1 kN is ours).");
}

}  // namespace
