// Worked examples of voltage drop from open and engineering textbooks.
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/rating/lead/drop.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

/// A plain lead of a metal with the resistivity and coefficient of an example.
cable lead_of(double ohm_metre, double per_k, const conductor_size& size, length one_way)
{
    cable out{.size = size, .length = one_way};
    out.metal.resistivity = in_si<resistivity>(ohm_metre);
    out.metal.temperature_coefficient = per_kelvin::from_value(per_k);
    return out;
}

constexpr double standard_coefficient = 0.00393;

/// 0.01 ohm per 1000 m and conductor, copper by the annealed copper standard.
double distributor_drop(double amps, double metres)
{
    const double ohm_metre = 1e-3 / 58e3;
    const cable one =
        lead_of(ohm_metre, standard_coefficient, square_mm(ohm_metre / 1e-5 * 1e6), in_si<length>(metres));
    return 2.0 * drop_of(one, in_si<current>(amps), 20_degC).value();  // out and back
}

/// Pure copper, 10.09 ohm circular mil per foot, as that textbook has it (standard copper has 10.37).
double feeder_resistivity()
{
    return 10.09 * number_in(1_ft, "m") * number_in(1_kcmil, "m2") / 1e3 /
           (number_in(1_ft, "m") * number_in(1_ft, "m"));
}

}  // namespace

// source: Mehta and Mehta, example 13.1 (one source); Lessons in Electric Circuits, vol. I, wire resistance and
// temperature coefficient (one source; the bar's value stands in a figure there, so that its digits are of our own
// evaluation). Tolerances: half of the last printed digit.
TEST(DropExamples, AsPublished)
{
    int used = 0;
    for (const auto& row : reference_table("conductors-voltage-drop-examples.csv").rows()) {
        const std::string& example = row.text("example");
        const std::string& what = row.text("quantity");
        const double value = row.number("value");
        ++used;
        if (example == "dc distributor 1") {
            // 500 A flow in the first 500 m, then 400 A in 400 m, 250 A in 600 m, 50 A in 400 m
            double volts = 300.0 - distributor_drop(500, 500);
            if (what != "V at C") volts -= distributor_drop(400, 400);
            if (what == "V at E" || what == "V at B") volts -= distributor_drop(250, 600);
            if (what == "V at B") volts -= distributor_drop(50, 400);
            EXPECT_NEAR(volts, value, 0.051) << row.where();
        } else if (what == "minimum area") {
            const double mm2 = value * number_in(1_kcmil, "mm2") / 1e3;
            const auto drop = [&](const conductor_size& size) {
                return 2.0 * drop_of(lead_of(feeder_resistivity(), standard_coefficient, size, 2300_ft), 25_A, 20_degC)
                                 .value();
            };
            EXPECT_NEAR_REL(drop(square_mm(mm2)), 10.0, 5e-6) << row.where();
            // the size the example ends with is the first that suffices
            EXPECT_LT(drop(aught(2)), 10.0);
            EXPECT_GT(drop(aught(1)), 10.0);
        } else if (example == "long feeder, 14 AWG") {
            // the book works with 4107 circular mils; the gage itself is 4106.7
            EXPECT_NEAR(number_in(awg(14).area(), "cmil"), 4107.0, 0.5);
            const double mm2 = 4.107 * number_in(1_kcmil, "mm2");
            const cable one = lead_of(feeder_resistivity(), standard_coefficient, square_mm(mm2), 2300_ft);
            const double ohms = drop_of(one, 1_A, 20_degC).value();
            if (what.starts_with("resistance of 2300 ft"))
                EXPECT_NEAR(ohms, value, 0.0006) << row.where();
            else if (what == "two conductors")
                EXPECT_NEAR(2.0 * ohms, value, 0.0006) << row.where();
            else
                EXPECT_NEAR(230.0 / (2.0 * ohms), value, 0.0006) << row.where();
        } else if (example == "aluminium busbar") {
            metal bar = aluminium;
            bar.resistivity = in_si<resistivity>(2.65e-8);
            EXPECT_NEAR((conductor_resistance(bar, 4_cm * 3_cm, 0.0, 20_degC) * 125_cm).value() * 1e6, value, 0.0006)
                << row.where();
        } else {
            EXPECT_EQ(example, "temperature example") << row.where();
            // 15 ohm at 20 degC, whatever the wire is: 1 km of standard copper
            const double ohm_metre = 1e-3 / 58e3;
            const cable wire = lead_of(ohm_metre, 0.004041, square_mm(ohm_metre * 1000 / 15 * 1e6), 1_km);
            const temperature at = what.ends_with("35 C") ? 35_degC : 20_degC;
            const double ohms = drop_of(wire, 1_A, at).value(), amps = 14.0 / (250.0 + 2.0 * ohms);
            const double drop = drop_of(wire, in_si<current>(amps), at).value();
            EXPECT_NEAR(what.starts_with("wire drop") ? drop : 14.0 - 2.0 * drop, value, 0.0051) << row.where();
        }
    }
    EXPECT_EQ(used, 12);
}
