// Worked examples of the welding tables: the supply of a welder, duties, a feeder, a short circuit, areas by gage.
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/short_circuit.hpp>
#include <weldloop/rating/lead/code_rating.hpp>
#include <weldloop/rating/lead/supply_conductor.hpp>

#include "support/near.hpp"
#include "support/printed_formula.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::printed_value;
using weldloop::test::reference_table;
using weldloop::test::text_between;

// source: code columns of a trade journal, notes of NFPA 70 630.31 (two sources), a public design note, a public course
// note on IEC 60949, a trade-journal article (one source each). Tolerances: half of the last printed digit.
TEST(WeldingWorkedExamples, AsPublished)
{
    int used = 0;
    for (const auto& row : reference_table("welding-worked-examples.csv").rows()) {
        const std::string& example = row.text("example");
        const std::string& working = row.text("working");
        const std::string& answer = row.text("published_answer");
        ++used;
        if (example == "NEC arc welder, single") {
            const double amps = supply_current_of(supplied_welder::arc_welder, 40_A, 0.5).amps.value();
            EXPECT_NEAR(amps, row.number("published_answer"), 0.05) << row.where();
            EXPECT_NEAR_REL(amps, printed_value(working), 1e-12) << row.where();
        } else if (example == "Spot welder duty cycle") {
            const duration cycle = 1.0 / 60_Hz;
            const duty_cycle duty = duty_cycle::of(15.0 * cycle, 1_h / 400.0);
            EXPECT_NEAR(100 * static_cast<double>(duty.share()), row.number("published_answer"), 0.051) << row.where();
            EXPECT_NEAR_REL(static_cast<double>(duty.share()), printed_value(working), 1e-12) << row.where();
        } else if (example == "Seam welder duty cycle") {
            const duration cycle = 1.0 / 60_Hz;
            const duty_cycle duty = duty_cycle::of(2.0 * cycle, 4.0 * cycle);
            EXPECT_NEAR(100 * static_cast<double>(duty.share()), row.number("published_answer"), 1e-9) << row.where();
            EXPECT_NEAR_REL(static_cast<double>(duty.share()), printed_value(working), 1e-12) << row.where();
        } else if (example == "Free-air feeder, NEC 310.17") {
            // 4 AWG is chosen because it carries, in air of 40 degC, 1.25 times the 72.17 A of the transformer, and 6
            // AWG does not; the printed 0.88 is the square root of 7/9, rounded
            const current load = 1.25 * 72.17 * 1_A;
            const auto four = code_ampacity_of(code_table::nfpa_70_310_17, awg(4), 75_degC, 40_degC),
                       six = code_ampacity_of(code_table::nfpa_70_310_17, awg(6), 75_degC, 40_degC);
            ASSERT_TRUE(four && six);
            EXPECT_GT(four->amps, load);
            EXPECT_LT(six->amps, load);
            EXPECT_EQ(four->in_table.value(), std::stod(text_between(answer, "4 AWG (", " A)"))) << row.where();
            EXPECT_EQ(six->in_table.value(), std::stod(text_between(answer, "6 AWG is ", " A"))) << row.where();
            EXPECT_NEAR(four->air_factor, 0.88, 0.0051) << row.where();
            EXPECT_NEAR(load.value() / four->air_factor, std::stod(answer), 0.05 + 102.5 * 0.005 / 0.88) << row.where();
            EXPECT_NEAR(printed_value(working), std::stod(answer), 0.05) << row.where();
        } else if (example == "Adiabatic short circuit, Cu") {
            const double amps = short_circuit_current({iec_copper, 95_mm2}, 1_s, {90_degC, 250_degC}).value();
            EXPECT_NEAR(amps / 1e3, std::stod(answer), 0.05) << row.where();
            EXPECT_NEAR_REL(amps, printed_value(working, {{"K", 225.669}, {"S", 95.0}}), 0.002)  // K here: 226
                << row.where();
        } else if (example == "Non-adiabatic short circuit, Cu/XLPE") {
            const double gain = simplified_nonadiabatic_factor(copper_in_xlpe, 95_mm2, 1_s).factor;
            EXPECT_NEAR(gain, std::stod(text_between(answer, "eps ", ")")), 0.0005) << row.where();
            EXPECT_NEAR_REL(gain, printed_value(text_between(working, "eps=", ";")), 1e-9) << row.where();
            const current through = short_circuit_current({iec_copper, 95_mm2, gain}, 1_s, {90_degC, 250_degC});
            EXPECT_NEAR(number_in(through, "kA"), std::stod(answer), 0.05) << row.where();
        } else {
            EXPECT_EQ(example, "AWG geometry") << row.where();
            const double printed[] = {std::stod(answer), std::stod(text_between(answer, "; ", ";")),
                                      std::stod(text_between(text_between(answer, "; ", ""), "; ", ""))};
            const conductor_size sizes[] = {awg(6), awg(3), aught(1)};
            for (std::size_t i = 0; i < std::size(sizes); ++i)
                EXPECT_NEAR(number_in(sizes[i].area(), "in2"), printed[i], 0.000051) << row.where();
        }
    }
    EXPECT_EQ(used, 7);
}
