// Lab 8, worked: a work clamp on a hot plate. What comes back when it cools, what does not, and what a reading can
// tell.
#include <array>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/hot_modulus.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/law/unloading.hpp>
#include <weldloop/solve/least_squares.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    const wl::metal_pair pair{wl::brass, wl::mild_steel};
    const wl::contact jaw{.metals = pair, .force = 150_N};
    const auto microohm = [](const wl::resistance& r) { return wl::number_in(r, "uohm"); };
    const double at_20 = microohm(wl::contact_resistance_of(jaw).typical);
    const auto growth = [&](wl::temperature t) {
        return 1.0 / wl::number_in(wl::conductance_at(1.0 / 1_ohm, pair, t), "S");
    };
    const auto left = [](wl::temperature t, wl::duration time) {
        return 1.0 - static_cast<double>(wl::stress_relaxation(wl::music_wire, 0.6, t, time));
    };
    constexpr double exponent = 0.7;
    lab::heading("prediction, brass jaw on clean mild steel, 150 N, spring of music wire at 0.60 of strength");
    lab::row({"plate [degC]", "hot, untouched", "force while hot", "lost in 1 h", "cold, untouched", "gripped anew"},
             14, 17);
    for (const wl::temperature t : {20_degC, 60_degC, 100_degC, 140_degC}) {
        const double kept = left(t, 1_h);
        lab::row({fixed(t.in_celsius(), 0), fixed(at_20 * growth(t), 0) + " uohm",
                  fixed(100.0 * wl::hot_force_ratio(t), 1) + " %", fixed(100.0 * (1.0 - kept), 1) + " %",
                  fixed(at_20 * wl::untouched_resistance_factor(kept, exponent), 0) + " uohm",
                  fixed(at_20 * std::pow(kept, -exponent), 0) + " uohm"},
                 14, 17);
    }
    std::cout << "gripped anew by the force left to the power -" << fixed(exponent, 1) << '\n';
    lab::heading("by hand");
    const double brass_hot = lab::step("brass, 61.6 (1 + 0.0017 x 120) [nohm m]", 61.6 * (1.0 + 0.0017 * 120.0), 2);
    const double steel_hot = lab::step("steel, 143 (1 + 0.0039 x 120) [nohm m]", 143.0 * (1.0 + 0.0039 * 120.0), 2);
    lab::by_hand("their sum over 204.6, R at 140 degC over R at 20 degC", (brass_hot + steel_hot) / 204.6,
                 growth(140_degC), 4, 0.0005);

    // this synthetic joint has 0.85 of the typical resistance; a grip anew scatters by 10 %
    lab::synthetic world(808);
    constexpr double truth = 0.85, meter = 0.004, seating = 0.10;
    lab::heading("data sheet (SYNTHETIC, seed 808): drop at 30 A, plate warmed in steps, clamp not touched");
    lab::row({"plate [degC]", "drop [mV]", "resistance [uohm]"}, 14, 20);
    std::vector<wl::solve::line_reading> lines;
    std::vector<std::vector<std::string>> rows;
    lab::points dots;
    for (const double celsius : {22.0, 40.0, 60.0, 80.0, 100.0, 120.0, 140.0}) {
        const double ohms = truth * at_20 * growth(wl::temperature::celsius(celsius));
        const double volts = world.reading(0.03 * ohms, 0.03 * ohms * meter, 0.01), read = volts / 0.03;
        lab::row({fixed(celsius, 0), fixed(volts, 2), fixed(read, 0)}, 14, 20);
        rows.push_back({fixed(celsius, 0), fixed(read, 1)});
        dots.emplace_back(celsius, read);
        lines.push_back({{1.0, celsius - 20.0, 0.0}, read});
    }
    const auto line = wl::solve::fit_line(lines, 2);
    if (!line) throw std::runtime_error("no line through these readings");
    std::cout << "line: " << fixed(line->a[0], 1) << " uohm at 20 degC, coefficient "
              << fixed(1e3 * line->a[1] / line->a[0], 2) << " in 1000 per K, standard error "
              << fixed(1e3 * line->error[1] / line->a[0], 2) << "; predicted "
              << fixed(1e3 * (growth(120_degC) - 1.0) / 100.0, 2) << '\n';
    const double back = world.reading(truth * at_20, truth * at_20 * meter, 1.0);
    std::cout << "after 1 h at 140 degC and cooled to 20 degC, not touched: " << fixed(back, 0) << " uohm\n";
    double mean = 0.0, squares = 0.0;
    constexpr int grips = 5;
    constexpr double student = 2.776;  // 4 degrees of freedom, two-sided 95 %
    std::vector<double> logs;
    std::cout << "gripped anew five times [uohm]:";
    for (int i = 0; i < grips; ++i) {
        const double read = world.reading(
            truth * at_20 * std::pow(left(140_degC, 1_h), -exponent) * std::exp(seating * world.normal()), 1.0, 1.0);
        logs.push_back(std::log(read));
        mean += logs.back() / grips;
        std::cout << ' ' << fixed(read, 0);
    }
    for (const double l : logs) squares += (l - mean) * (l - mean) / (grips - 1);
    const double error = std::sqrt(squares / grips);
    std::cout << "\nmean of ln R over the cold reading " << fixed(mean - std::log(back), 3) << ", standard error "
              << fixed(error, 3) << "; Student's t for 95 % is " << fixed(student, 2) << ": a loss of grip is "
              << (mean - std::log(back) > student * error ? "shown" : "not shown") << " by these resistances\n"
              << "the force gauge, before and after [N]: " << fixed(world.reading(150.0, 0.5, 0.5), 1) << ' '
              << fixed(world.reading(150.0 * left(140_degC, 1_h), 0.5, 0.5), 1) << '\n';

    lab::heading("uncertainty budget of the ratio hot to cold, 140 degC");
    lab::budget(
        "ratio", 3,
        {{"drop hot [mV]", 0.03 * truth * at_20 * growth(140_degC), 0.03 * truth * at_20 * growth(140_degC) * meter},
         {"drop cold [mV]", 0.03 * truth * at_20, 0.03 * truth * at_20 * meter},
         {"thermal voltage, hot [mV]", 0.0, 0.05},
         {"joint below the plate [K]", 0.0, 4.0}},
        [](const std::vector<double>& x) { return (x[0] - x[2]) / x[1] + 0.00324 * x[3]; });

    lab::heading("answers");
    const wl::conductance spots = 1.0 / (at_20 * 1_uohm);
    std::cout << "heat through the spots " << wl::to_text(wl::spot_heat_conductance(spots, 100_degC), "W/K")
              << ", through 1 cm2 of air gap of 0.1 mm "
              << wl::to_text(wl::gap_heat_conductance(wl::in_si<wl::thermal_conductivity>(0.031), 1_cm2,
                                                      wl::pressed_gap_height),
                             "W/K")
              << '\n';
    std::cout << "a shift of 8 h at 140 degC takes " << fixed(100.0 * (1.0 - left(140_degC, 8_h)), 0)
              << " % of the force; at 100 degC " << fixed(100.0 * (1.0 - left(100_degC, 8_h)), 0) << " %\n"
              << "to show a loss of 9 % by resistance with 10 % from grip to grip takes "
              << fixed(std::ceil(std::pow(2.0 * seating / (exponent * -std::log(0.91)), 2)), 0) << " grips (k = 2)\n";

    lab::points law;
    for (double c = 20.0; c <= 145.0; c += 5.0)
        law.emplace_back(c, truth * at_20 * growth(wl::temperature::celsius(c)));
    lab::picture picture("A joint of brass on steel by its temperature", {"plate [degC]", 0, 150},
                         {"resistance [uohm]", 0, 600}, 3);
    picture.curve(law, 0, "prediction through the cold reading, clamp not touched");
    picture.level(truth * at_20 * std::pow(left(140_degC, 1_h), -exponent),
                  "prediction cold, gripped anew after 1 h at 140 degC");
    picture.dots(dots, "synthetic readings, plate warmed in steps");
    return {picture.finished(), lab::table("08_clamp_on_hot_work", "temperature_degC,resistance_uohm", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
