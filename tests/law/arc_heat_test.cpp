// Heat of the arc in the work: shares, heat input, temperature beside a weld, against published and worked rows.
#include <weldloop/law/arc_heat.hpp>
#include <weldloop/law/weld_temperature.hpp>

#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

#include <cmath>
#include <limits>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include "law/worked_example.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::inputs_of;
using weldloop::test::reference_table;

// The value to meet: as printed where the source prints one, else its arithmetic; within the printed tolerance.
double value_of(const reference_table::row& row)
{
    return row.number(row.has("published_value") ? "published_value" : "recomputed_value");
}
void meets(const reference_table::row& row, double value)
{
    constexpr double percent = 0.01;
    EXPECT_NEAR_REL(value, value_of(row), percent * row.number("tolerance_pct")) << row.where();
}
heat_per_weld_length joules_per_mm(double value)
{
    return in_si<heat_per_weld_length>(1e3 * value);
}
volumetric_heat per_cubic_mm(double value)
{
    return in_si<volumetric_heat>(1e9 * value);
}
length millimetres(double value)
{
    return in_si<length>(1e-3 * value);
}

// source: arc-heat-input-examples.csv
TEST(ArcHeat, WorkedHeatInputs)
{
    int met = 0;
    for (const reference_table::row& row : reference_table("arc-heat-input-examples.csv").rows()) {
        const std::string id = row.text("id");
        if (id == "HI-05") continue;  // of the wire that melts
        std::map<std::string, double> in = inputs_of(row.text("inputs"));
        const auto heat = [&](double metres_per_second, double share) {
            return heat_input(share, in_si<voltage>(in.at("U")), in_si<current>(in.at("I")),
                              in_si<speed>(metres_per_second))
                .value();
        };
        ++met;
        if (id == "HI-02")
            meets(row, heat(in.at("v") / 6000.0, in.at("k")) * 1e-5);  // cm/min; kJ/cm
        else if (id == "HI-04")
            meets(row, in.at("f2") * heat(in.at("v") * 1e-3, in.at("k")) * 1e-3 / in.at("u"));  // mm2 of J/mm3
        else if (id == "HI-08" || id == "HI-09")  // net power of a volt and as many amperes
            meets(row,
                  heat_input(1.0, 1_V, in_si<current>(in.at("q")), in_si<speed>(in.at("v") * 1e-3)).value() * 1e-3);
        else if (id == "HI-16")
            meets(row, heat(in.at("v") * 0.0254 / 60.0, 1.0) * 0.0254);  // in/min; J/in
        else if (id == "HI-17") {
            const auto at = [&](double volts) {
                return heat_input(1.0, in_si<voltage>(volts), in_si<current>(in.at("I")), in_si<speed>(5e-3)).value();
            };
            meets(row, at(in.at("Us") - in.at("drop")) / at(in.at("Us")));
        } else if (id == "HI-18") {
            const auto at = [&](double volts) {
                return heat_input(1.0, in_si<voltage>(volts), 100_A, 1_m_per_s).value();
            };
            meets(row, 100.0 * (1.0 - at(in.at("Ua") - in.at("dU")) / at(in.at("Ua"))));
        } else if (id == "HI-10" || id == "HI-13" || id == "HI-14" || id == "HI-15")
            meets(row, heat(in.at("v") * 1e-3, in.at("k")) * 1e-6);  // mm/s; kJ/mm
        else {
            --met;
            ADD_FAILURE() << row.where() << ": not checked";
        }
    }
    EXPECT_EQ(met, 11);
}

// source: arc-heat-examples.csv; rows whose answer is recalled are met beside computed ones of the same formula
TEST(ArcHeat, WorkedTemperaturesBesideAWeld)
{
    std::map<std::string, int> met;
    for (const reference_table::row& row : reference_table("arc-heat-examples.csv").rows()) {
        const std::string id = row.text("id"), topic = row.text("topic");
        if (topic != "thin plate peak temperature" && topic != "thick plate peak temperature") continue;
        std::map<std::string, double> in = inputs_of(row.text("inputs"));
        ++met[topic];
        if (id == "AH-01") {
            const welded_plate plate{.heat = heat_input(in.at("k"), in_si<voltage>(in.at("U")),
                                                        in_si<current>(in.at("I")), in_si<speed>(in.at("v") * 1e-3)),
                                     .stored = per_cubic_mm(in.at("rho c")),
                                     .thickness = millimetres(in.at("t")),
                                     .start = temperature::celsius(in.at("T0")),
                                     .melting = temperature::celsius(in.at("Tm"))};
            const temperature peak = plate.start + thin_plate_peak_beyond_fusion(plate, millimetres(in.at("Y")));
            // recomputed there with 4.13 where the constant is 4.13273
            EXPECT_NEAR_REL(peak.in_celsius(), row.number("recomputed_value"), 4.13273 / 4.13 - 1.0) << row.where();
            meets(row, peak.in_celsius());
        } else if (id.starts_with("AH-06")) {
            const welded_plate plate{.heat = joules_per_mm(in.at("q") / in.at("v")),
                                     .stored = per_cubic_mm(in.at("rho") * in.at("c")),
                                     .thickness = millimetres(in.at("t")),
                                     .start = temperature::kelvin(in.at("T0")),
                                     .melting = temperature::kelvin(in.at("Tm"))};
            meets(row, (plate.start + thin_plate_peak_beyond_fusion(plate, millimetres(in.at("x")))).in_kelvin());
        } else if (id.starts_with("AH-11")) {
            const welded_plate half_space{
                .heat = joules_per_mm(in.at("H")), .stored = per_cubic_mm(in.at("rho c")), .thickness = 1_m};
            meets(row, thick_plate_peak_rise(half_space, millimetres(in.at("r"))).value());
        } else if (id.starts_with("AH-12")) {
            const welded_plate plate{.heat = joules_per_mm(in.at("H")),
                                     .stored = per_cubic_mm(in.at("rho c")),
                                     .thickness = millimetres(in.at("d"))};
            meets(row, thin_plate_peak_rise(plate, millimetres(in.at("y"))).value());
        } else
            ADD_FAILURE() << row.where() << ": not checked";
    }
    EXPECT_EQ(met["thin plate peak temperature"], 10);
    EXPECT_EQ(met["thick plate peak temperature"], 2);
}

// source: the same table; two forms, each by its name
TEST(ArcHeat, WorkedCoolingTimes)
{
    int conduction = 0, rule = 0;
    for (const reference_table::row& row : reference_table("arc-heat-examples.csv").rows()) {
        const std::string id = row.text("id");
        if (id == "AH-07" || id == "AH-08") {
            std::map<std::string, double> in = inputs_of(row.text("inputs"));
            meets(row,
                  thick_plate_cooling_time(joules_per_mm(1e3 * in.at("q")), in_si<thermal_conductivity>(in.at("k")),
                                           temperature::celsius(in.at("T0")))
                      .value());
            ++conduction;
        } else if (id.starts_with("AH-09")) {
            std::map<std::string, double> in = inputs_of(row.text("inputs"));
            meets(row, steel_cooling_time(joules_per_mm(1e3 * in.at("Q")), millimetres(in.at("d")),
                                          temperature::celsius(in.at("T0")))
                           .value());
            ++rule;
        } else if (id == "AH-10") {
            std::map<std::string, double> in = inputs_of(row.text("inputs"));
            const temperature start = temperature::celsius(in.at("T0"));
            const heat_per_weld_length heat = joules_per_mm(1e3 * in.at("Q"));
            meets(row, (steel_cooling_time(heat, 1_m, start) /
                        thick_plate_cooling_time(heat, in_si<thermal_conductivity>(in.at("k")), start))
                           .value());
        }
    }
    EXPECT_EQ(conduction, 2);
    EXPECT_EQ(rule, 5);
}

// source: arc-efficiency.csv: the convention, and what was measured and read lies in the band of its process
TEST(ArcHeat, SharesAgainstThePublishedOnes)
{
    const std::map<std::string, process> of_number{{"111", process::smaw},
                                                   {"135", process::gmaw},
                                                   {"136", process::fcaw},
                                                   {"141", process::gtaw},
                                                   {"121", process::saw}};
    int convention = 0, measured = 0;
    double farthest = 0.0;
    for (const reference_table::row& row : reference_table("arc-efficiency.csv").rows()) {
        const auto known = of_number.find(row.text("process_iso4063"));
        if (known == of_number.end()) continue;
        const band<double> share = arc_efficiency(known->second);
        if (row.text("quantity").starts_with("thermal efficiency factor")) {
            EXPECT_EQ(heat_input_factor(known->second), row.number("typical")) << row.where();
            ++convention;
        } else if ((row.text("quantity") == "arc efficiency" || row.text("quantity") == "process efficiency" ||
                    row.text("quantity") == "arc efficiency, 95 % confidence") &&
                   row.text("verified") != "memory" && row.text("typical").starts_with("0")) {
            // DuPont and Marder's 0.67 of a tungsten arc lies below the later review, whose digits are used
            if (known->second == process::gtaw && row.number("typical") == 0.67) continue;
            EXPECT_GE(row.number("typical"), share.low) << row.where();
            EXPECT_LE(row.number("typical"), share.high) << row.where();
            farthest = std::max(farthest, std::fabs(row.number("typical") / share.typical - 1.0));
            ++measured;
        }
    }
    EXPECT_EQ(convention, 5);
    EXPECT_EQ(measured, 4);
    EXPECT_LT(farthest, 0.09);  // of submerged arc, the middle of two measurements that disagree
    for (const process p : all_processes) {
        const band<double> share = arc_efficiency(p);
        EXPECT_LT(share.low, share.typical);
        EXPECT_LT(share.typical, share.high);
        EXPECT_LT(share.high, 1.0);
        const basis from = arc_efficiency_basis(p);
        EXPECT_FALSE(from.sources().empty());
    }
}

// relations: thin and thick meet where the plate is neither; the peak falls with the distance
TEST(ArcHeat, RangesOfThinAndThick)
{
    const welded_plate plate{.heat = 600_J / 1_mm, .stored = per_cubic_mm(0.0044), .thickness = 10_mm};
    EXPECT_THROW(static_cast<void>(thin_plate_peak_rise(plate, 2_mm)), out_of_range_error);    // thick there
    EXPECT_THROW(static_cast<void>(thick_plate_peak_rise(plate, 40_mm)), out_of_range_error);  // thin there
    EXPECT_GT(thin_plate_peak_rise(plate, 20_mm), thin_plate_peak_rise(plate, 40_mm));
    const welded_plate sheet{.heat = 600_J / 1_mm, .stored = per_cubic_mm(0.0044), .thickness = 2_mm};
    EXPECT_THROW(static_cast<void>(thin_plate_peak_rise(sheet, 3_mm)), out_of_range_error);  // molten
    // at the fusion line it is that of the melt, from there the two forms agree far away
    EXPECT_NEAR_REL(thin_plate_peak_beyond_fusion(sheet, 0_mm).value(), 1480.0, 1e-12);
    const double fusion = 600e3 / (4.4e6 * 2e-3 * 1480.0 * std::sqrt(2.0 * M_PI * M_E));
    EXPECT_NEAR_REL(thin_plate_peak_beyond_fusion(sheet, 50_mm).value(),
                    thin_plate_peak_rise(sheet, 50_mm + in_si<length>(fusion)).value(), 1e-12);
}

TEST(ArcHeat, RefusesWhatCannotBe)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_THROW(static_cast<void>(heat_input(1.1, 20_V, 100_A, 1_m_per_s)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(heat_input(0.8, 0_V, 100_A, 1_m_per_s)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(heat_input(0.8, 20_V, in_si<current>(none), 1_m_per_s)), not_finite_error);
    EXPECT_THROW(static_cast<void>(heat_input(0.8, 20_V, 100_A, 0_m_per_s)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(arc_power_in_work(process::gmaw, 20_V, 0_A)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(steel_cooling_time(600_J / 1_mm, 10_mm, 300_degC)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(thick_plate_cooling_time(600_J / 1_mm, mild_steel.thermal_conductivity, 500_degC)),
                 out_of_range_error);
    welded_plate cold{.heat = 600_J / 1_mm, .stored = per_cubic_mm(0.0044), .thickness = 0_mm};
    EXPECT_THROW(static_cast<void>(thin_plate_peak_rise(cold, 20_mm)), out_of_range_error);
    cold.thickness = 2_mm;
    cold.start = 1600_degC;
    EXPECT_THROW(static_cast<void>(thin_plate_peak_rise(cold, 20_mm)), out_of_range_error);
}

}  // namespace
