// Lab 3, worked: contact resistance by force, the law fitted with its scatter, and what the current does to the spots.
#include <algorithm>
#include <array>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/reading_fit.hpp>
#include <weldloop/law/unloading.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    constexpr std::array newtons{50.0, 100.0, 200.0, 400.0, 800.0};
    const auto jaw = [](double n) { return wl::contact{.metals = {wl::brass, wl::mild_steel}, .force = n * 1_N}; };
    const auto microohm = [](const wl::resistance& r) { return wl::number_in(r, "uohm"); };
    lab::heading("prediction");
    std::cout << "brass jaw on clean mild steel [uohm]\n";
    lab::row({"force [N]", "5 %", "typical", "95 %"}, 14);
    lab::points law, low, high;
    for (const double n : newtons) {
        const wl::band<wl::resistance> r = wl::contact_resistance_of(jaw(n));
        lab::row({fixed(n, 0), fixed(microohm(r.low), 0), fixed(microohm(r.typical), 0), fixed(microohm(r.high), 0)},
                 14);
        law.emplace_back(n, microohm(r.typical));
        low.emplace_back(n, microohm(r.low));
        high.emplace_back(n, microohm(r.high));
    }

    lab::heading("by hand");
    const double kgf = lab::step("0.102 x 200 N [kgf]", 0.102 * 200.0, 1);
    const double power = lab::step("to the power 0.7", std::pow(kgf, 0.7), 4);
    lab::by_hand("3000 uohm over that, 200 N [uohm]", 3000.0 / power, law[2].second, 1, 0.001);

    // this synthetic pair has K = 3300, m = 0.74 and 12 % scatter from seating to seating; the meter has 1 %
    lab::synthetic world(303);
    constexpr double constant = 3300.0, exponent = 0.74, seating = 0.12, meter = 0.01;
    lab::heading("data sheet (SYNTHETIC, seed 303): four seatings at each force, 20 A [uohm]");
    lab::row({"force [N]", "first", "second", "third", "fourth"}, 14);
    std::vector<wl::contact_reading> readings;
    std::vector<std::vector<std::string>> rows;
    lab::points dots;
    for (const double n : newtons) {
        std::vector<std::string> cells{fixed(n, 0)};
        const double truth = microohm(wl::force_law_resistance(constant, exponent, n * 1_N));
        for (int seat = 0; seat < 4; ++seat) {
            const double read = world.reading(truth * std::exp(seating * world.normal()), meter * truth, 1.0);
            readings.push_back({n * 1_N, read * 1_uohm, meter});
            rows.push_back({fixed(n, 0), fixed(read, 0), fixed(meter, 2)});
            dots.emplace_back(n, read);
            cells.push_back(fixed(read, 0));
        }
        lab::row(cells, 14);
    }
    const wl::force_law_fit fit = wl::fit_force_law(readings);
    lab::heading("fit of R = K/(0.102 F)^m");
    const auto told = [](std::string_view what, const wl::fitted_number& n, int decimals) {
        std::cout << what << ": "
                  << (n.value ? fixed(*n.value, decimals) + ", standard error " + fixed(n.standard_error, decimals)
                              : std::string(wl::to_text(n.gap)))
                  << '\n';
    };
    told("m", fit.exponent, 3);
    told("K [uohm kgf^m]", fit.constant, 0);
    told("spread of ln R from seating to seating", fit.spread, 3);

    std::cout << "put in: m " << fixed(exponent, 2) << ", K " << fixed(constant, 0) << ", spread " << fixed(seating, 2)
              << '\n';

    lab::heading("uncertainty budget of one reading at 200 N");
    lab::budget("resistance [uohm]", 1,
                {{"drop at 20 A [mV]", 7.1, 0.02},
                 {"current [A]", 20.0, 0.06},
                 {"force [N]", 200.0, 4.0},
                 {"seating, factor", 1.0, fit.spread.value.value_or(0.0)}},
                [&](const std::vector<double>& x) {
                    return 1e3 * x[0] / x[1] * std::pow(x[2] / 200.0, fit.exponent_used) * x[3];
                });

    lab::heading("answers");
    double worst = 0.0;
    for (const auto& [n, ohms] : dots) worst = std::max(worst, ohms);
    const wl::voltage drop = 20_A * (worst * 1_uohm);
    std::cout << "the worst reading drops " << wl::to_text(drop, "mV") << ": its hottest spot is at most "
              << fixed(wl::number_in(wl::hot_spot_temperature(drop, 22_degC) - 22_degC, "K"), 1)
              << " K over the bodies\n"
              << "to halve the resistance the force must grow " << fixed(std::pow(2.0, 1.0 / fit.exponent_used), 2)
              << " times\n"
              << "let down from 800 to 400 N and not moved it stays at "
              << fixed(wl::untouched_resistance_factor(0.5, 0.7), 2) << " times its resistance; down to 100 N, "
              << fixed(wl::untouched_resistance_factor(0.125, 0.7), 2) << " times\n";
    const wl::force_law_fit few = wl::fit_force_law(std::span(readings).subspan(8, 4));
    std::cout << "from the four readings at 200 N alone, m: " << wl::to_text(few.exponent.gap) << '\n';

    lab::points fitted;
    for (const double n : newtons)
        fitted.emplace_back(n,
                            microohm(wl::force_law_resistance(fit.constant.value.value(), fit.exponent_used, n * 1_N)));
    lab::picture picture("Contact resistance by force", {"force [N]", 40, 1000, true},
                         {"resistance [uohm]", 30, 3000, true}, 4);
    picture.between(low, high, "prediction, 5 to 95 % of clean joints");
    picture.curve(law, 0, "prediction, typical");
    picture.curve(fitted, 1, "law fitted to the readings");
    picture.dots(dots, "synthetic readings");
    return {picture.finished(), lab::table("03_force_and_contact", "force_N,resistance_uohm,meter_share", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
