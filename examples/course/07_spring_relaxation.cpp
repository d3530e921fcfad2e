// Lab 7, worked: the force a spring loses for good in an oven, by the law of time and temperature, and the law fitted.
#include <algorithm>
#include <array>
#include <optional>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/hot_modulus.hpp>
#include <weldloop/law/reading_fit.hpp>
#include <weldloop/law/relaxation_heat.hpp>
#include <weldloop/law/stress_relaxation.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    const auto percent = [](wl::fraction f) { return 100.0 * static_cast<double>(f); };
    const auto lost = [](double stress, wl::temperature at, wl::duration time) {
        return wl::stress_relaxation(wl::music_wire, stress, at, time);
    };
    lab::heading("prediction, music wire, share of the force lost [%]");
    lab::row({"stress over strength, oven", "1 h", "10 h", "100 h"});
    for (const double stress : {0.6, 0.7})
        for (const wl::temperature oven : {60_degC, 100_degC})
            lab::row({fixed(stress, 2) + ", " + wl::to_text(oven, "degC"), fixed(percent(lost(stress, oven, 1_h)), 1),
                      fixed(percent(lost(stress, oven, 10_h)), 1), fixed(percent(lost(stress, oven, 100_h)), 1)});
    lab::heading("by hand");
    const double reached = lab::step("P = 373.15 K (20 + log10 100) [K]", 373.15 * 22.0, 1);
    const double start = lab::step("P0 = 293.15 K (20 + log10 1000) [K]", 293.15 * 23.0, 1);
    const double grown = lab::step("exp(0.00087/K (P - P0))", std::exp(8.7e-4 * (reached - start)), 4);
    const double exponent = lab::step("r = 0.04966 x that", 0.04966 * grown, 4);
    lab::by_hand("0.70, 100 degC, 100 h, 1 - exp(-r) [%]", -100.0 * std::expm1(-exponent),
                 percent(lost(0.7, 100_degC, 100_h)), 2, 0.001);
    lab::heading("against a code");
    const wl::relaxation long_run = wl::relaxation_of(wl::music_wire, 0.7, 100_degC, 1000_h);
    std::cout
        << "0.70, 100 degC, 1000 h: " << fixed(percent(long_run.lost), 1) << " %; by the code's rule of T/20 on 5 %: "
        << fixed(5.0 * wl::relaxation_clock(wl::relaxation_heat_rule::linear).advance(100_degC, 1000_h).loss_factor(),
                 1)
        << " % (stated for 20 to 60 degC)\n";

    // this synthetic batch of wire loses 1.15 times in the exponent, with 6 % scatter from spring to spring
    lab::synthetic world(707);
    constexpr double truth = 1.15, scatter = 0.06, gauge = 0.002;
    constexpr std::array stresses{0.6, 0.7};
    constexpr std::array hours{1.0, 10.0, 100.0};
    constexpr std::array ovens{wl::temperature::celsius(60), wl::temperature::celsius(100)};
    lab::heading("data sheet (SYNTHETIC, seed 707): force left over force at first, three springs each");
    lab::row({"stress, oven, time", "first", "second", "third"});
    std::vector<wl::relaxation_reading> readings;
    std::vector<std::vector<std::string>> rows;
    lab::points hot_dots, warm_dots;
    for (const double stress : stresses)
        for (const wl::temperature oven : ovens)
            for (const double h : hours) {
                std::vector<std::string> cells{fixed(stress, 2) + ", " + wl::to_text(oven, "degC") + ", " +
                                               fixed(h, 0) + " h"};
                const double expected = -std::log1p(-static_cast<double>(lost(stress, oven, h * 1_h)));
                for (int i = 0; i < 3; ++i) {
                    const double left = std::exp(-truth * expected * std::exp(scatter * world.normal()));
                    const double read = std::min(0.999, world.reading(left, gauge, 0.001));
                    cells.push_back(fixed(read, 3));
                    readings.push_back({stress, oven, h * 1_h, 1.0 - read});
                    rows.push_back(
                        {fixed(stress, 2), fixed(oven.in_celsius(), 0), fixed(h, 0), fixed(100.0 * (1.0 - read), 1)});
                    if (stress == stresses.back())
                        (oven == ovens.back() ? hot_dots : warm_dots).emplace_back(h, 100.0 * (1.0 - read));
                }
                lab::row(cells);
            }
    const wl::relaxation_reading_fit fit = wl::fit_relaxation(readings);
    lab::heading("fit of r = r0 exp(b (mu - 0.7)) exp(c (P - P0)), share lost 1 - exp(-r)");
    const auto told = [](std::string_view what, const wl::fitted_number& n, double kept, int decimals) {
        std::cout << what << ": "
                  << (n.value ? fixed(*n.value, decimals) + ", standard error " + fixed(n.standard_error, decimals)
                              : std::string(wl::to_text(n.gap)))
                  << "; the library has " << fixed(kept, decimals) << '\n';
    };
    told("r0", fit.reference_exponent, wl::normal_relaxation.reference_exponent, 4);
    told("b", fit.stress_slope, wl::normal_relaxation.stress_slope, 2);
    told("c [1/1000 K]",
         {fit.parameter_slope.value ? std::optional(1e3 * *fit.parameter_slope.value) : std::nullopt,
          1e3 * fit.parameter_slope.standard_error, fit.parameter_slope.gap},
         1e3 * wl::number_in(wl::normal_relaxation.parameter_slope, "1/K"), 3);
    std::cout << "spread of ln r: " << fixed(fit.spread.value.value_or(0.0), 3) << '\n';

    std::cout << "put in: " << fixed(truth, 2) << " times r, spread " << fixed(scatter, 2) << '\n';

    lab::heading("uncertainty budget: 0.70, 100 degC, 100 h by the law");
    lab::budget("force lost [%]", 2,
                {{"force left over force at first", 1.0, 0.0028},
                 {"stress over strength", 0.70, 0.015},
                 {"oven [degC]", 100.0, 1.2},
                 {"time [h]", 100.0, 0.2}},
                [&](const std::vector<double>& x) {
                    return 100.0 - x[0] * (100.0 - percent(lost(x[1], wl::temperature::celsius(x[2]), x[3] * 1_h)));
                });

    lab::heading("answers");
    std::cout << "read while hot at 100 degC an unrelaxed spring shows "
              << fixed(100.0 * (1.0 - wl::hot_force_ratio(100_degC)), 1)
              << " % less force (2 % per 55 K), which comes back\n";
    const double at_room = percent(lost(0.7, 20_degC, 1000_h)), parameter = (100.0 + 273.15) * 22.0;
    std::cout
        << "1000 h at 20 degC take " << fixed(at_room, 1) << " %; 100 h at 100 degC have P = " << fixed(parameter, 0)
        << " K, which 20 degC would reach after 10^" << fixed(parameter / 293.15 - 20.0, 1) << " h\n"
        << "half an hour at 120 degC before use, then 100 h at 100 degC: "
        << fixed(
               percent(
                   wl::relaxation_state(wl::music_wire, 0.7).advance(120_degC, 0.5_h).advance(100_degC, 100_h).lost()),
               1)
        << " % in all, not the sum of " << fixed(percent(lost(0.7, 120_degC, 0.5_h)), 1) << " and "
        << fixed(percent(lost(0.7, 100_degC, 100_h)), 1) << " %\n";

    lab::points hot, warm;
    for (double h = 0.5; h <= 250.0; h *= 1.2) {
        hot.emplace_back(h, percent(lost(0.7, 100_degC, h * 1_h)));
        warm.emplace_back(h, percent(lost(0.7, 60_degC, h * 1_h)));
    }
    lab::picture picture("Force lost by a spring at constant deflection", {"time [h]", 0.5, 250, true},
                         {"force lost [%]", 0, 25}, 3);
    picture.curve(hot, 0, "prediction, 0.70 of strength, 100 degC");
    picture.curve(warm, 1, "prediction, 60 degC");
    hot_dots.insert(hot_dots.end(), warm_dots.begin(), warm_dots.end());
    picture.dots(hot_dots, "synthetic readings at 0.70");
    return {picture.finished(), lab::table("07_spring_relaxation", "stress_share,oven_degC,time_h,lost_percent", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
