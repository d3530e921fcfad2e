// Lab 1, worked: the resistance of a lead by four wires, what the library expects, and how sure the reading is.
#include <array>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/resistance_reading.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/solve/least_squares.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    const wl::cable lead = wl::welding_cable(wl::square_mm(35), 5_m, wl::resistance_choice::nominal);
    const wl::temperature air = 22_degC;
    const double expected = wl::number_in(wl::resistance_of(lead, air), "mohm");
    const double allowed = wl::number_in(wl::resistance_of(wl::welding_cable(wl::square_mm(35), 5_m), air), "mohm");
    lab::heading("prediction");
    std::cout << "lead of 35 mm2, 5 m between the probes, copper at 22 degC\n"
              << "expected " << fixed(expected, 3) << " mohm; the standard allows " << fixed(allowed, 3) << " mohm\n";

    lab::heading("by hand");
    const double metre =
        lab::step("resistivity of copper over the section, 17.241 nohm m/35 mm2 [mohm/m]", 17.241 / 35.0, 5);
    const double laid = lab::step("with 5 % for the lay of the strands [mohm/m]", 1.05 * metre, 5);
    const double warm_by = lab::step("1 + 0.00393/K (22 - 20) K", 1.0 + 0.00393 * 2.0, 5);
    lab::by_hand("resistance of 5 m at 22 degC [mohm]", 5.0 * laid * warm_by, expected, 4, 0.0005);

    // what the synthetic lead really is: 1.5 % above nominal; the probes' joints make 20 uV of thermal voltage
    lab::synthetic world(101);
    constexpr double truth = 1.015, thermal_mv = 0.02, scatter_mv = 0.02, digit_mv = 0.01;
    constexpr std::array amps{10.0, 20.0, 30.0, 40.0, 50.0, 60.0};
    lab::heading("data sheet (SYNTHETIC, seed 101)");
    lab::row({"current [A]", "forward [mV]", "reverse [mV]", "half [mV]"}, 14, 14);
    std::vector<wl::solve::line_reading> lines;
    std::vector<std::vector<std::string>> rows;
    lab::points dots;
    for (const double a : amps) {
        const double forward = world.reading(a * expected * truth + thermal_mv, scatter_mv, digit_mv);
        const double reverse = world.reading(-a * expected * truth + thermal_mv, scatter_mv, digit_mv);
        const double half = 0.5 * (forward - reverse);
        lab::row({fixed(a, 0), fixed(forward, 2), fixed(reverse, 2), fixed(half, 3)}, 14, 14);
        rows.push_back({fixed(a, 0), fixed(forward, 2)});
        rows.push_back({fixed(-a, 0), fixed(reverse, 2)});
        lines.push_back({{a, 0.0, 0.0}, half});
        dots.emplace_back(a, half);
    }
    const auto line = wl::solve::fit_line(lines, 1);
    if (!line) throw std::runtime_error("no line through these readings");
    const double slope = line->a[0];

    lab::heading("uncertainty budget, 5 m of lead at 20 degC");
    const double alpha = 0.00393;
    const lab::result found = lab::budget(
        "R20 per metre [mohm/m]", 4,
        {{"slope of the line [mohm]", slope, line->error[0]},
         {"volts, gain of the meter", 1.0, 0.0006},
         {"current, shunt and its meter", 1.0, 0.0029},
         {"length between probes [m]", 5.0, 0.0029},
         {"copper temperature [degC]", 22.0, 0.58}},
        [&](const std::vector<double>& x) { return x[0] * x[1] / x[2] / x[3] / (1.0 + alpha * (x[4] - 20.0)); });

    lab::heading("answers");
    const wl::cable bought = wl::welding_cable(wl::square_mm(35), 5_m);
    const wl::resistance_reading read{{slope * 1_mohm, 2.0 * std::hypot(line->error[0], slope * 0.003) * 1_mohm},
                                      {air, wl::in_si<wl::temperature_difference>(1.2)}};
    const wl::missing_copper gone = wl::missing_copper_of(bought, read, 1_m);
    const double highest = wl::number_in(wl::resistance_per_length_of(bought, 20_degC), "ohm/km");
    std::cout << "over nominal " << fixed(100.0 * (slope / expected - 1.0), 1) << " %; the standard allows "
              << fixed(highest, 4) << " mohm/m, which is "
              << fixed((highest - found.value) / found.standard_uncertainty, 0) << " standard uncertainties away\n"
              << "copper missing over a suspected metre: at least " << fixed(100.0 * gone.least, 1) << " %, at most "
              << fixed(100.0 * gone.most, 1) << " %\n";
    const wl::measured<wl::temperature> warm =
        wl::mean_temperature_of(bought.metal, read, {1.25 * slope * 1_mohm, 2.0 * 1.25 * slope * 0.003 * 1_mohm});
    std::cout << "the same lead with 1.25 times the resistance is at " << wl::to_text(warm.value, "degC", 2)
              << ", give or take " << wl::to_text(warm.uncertainty, "K", 2) << '\n'
              << "two wires and clips of 5 mohm would have read " << fixed(slope + 5.0, 2) << " mohm\n";

    lab::picture picture("Drop across 5 m of lead by current", {"current [A]", 0, 65},
                         {"half of the reversed drop [mV]", 0, 180}, 3);
    picture.curve({{0, 0}, {65, 65 * expected}}, 0, "prediction, nominal copper");
    picture.curve({{0, 0}, {65, 65 * allowed}}, 3, "highest the standard allows");
    picture.dots(dots, "synthetic readings, mean of both directions");
    return {picture.finished(), lab::table("01_lead_resistance", "current_A,drop_mV", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
