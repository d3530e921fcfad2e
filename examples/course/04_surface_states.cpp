// Lab 4, worked: what lies between two bodies. Medians of few readings, their interval, and how surely two states
// differ.
#include <algorithm>
#include <array>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/csv.hpp>
#include <weldloop/law/scatter.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    using enum wl::surface_state;
    constexpr std::array states{clean, oxidized, light_rust, mill_scale_bitten, painted_pierced};
    const wl::contact bright{.metals = {wl::brass, wl::mild_steel}, .force = 200_N};
    const auto microohm = [](const wl::resistance& r) { return wl::number_in(r, "uohm"); };
    const double clean_typical = microohm(wl::contact_resistance_of(bright).typical);
    lab::heading("prediction, brass jaw on mild steel, 200 N (bands are judgement)");
    lab::row({"surface", "5 % [uohm]", "typical", "95 %"}, 30);
    lab::picture picture("Contact resistance by surface, 200 N", {"", 0.5, 5.5},
                         {"resistance [uohm]", 50, 200000, true}, 2);
    double place = 0.0, worst = 0.0;
    lab::points dots, medians;
    for (const wl::surface_state s : states) {
        wl::contact jaw = bright;
        jaw.surface = s;
        const wl::band<wl::resistance> r = wl::contact_resistance_of(jaw);
        lab::row({std::string(wl::to_text(s)), fixed(microohm(r.low), 0), fixed(microohm(r.typical), 0),
                  fixed(microohm(r.high), 0)},
                 30);
        place += 1.0;
        picture.whisker(place, microohm(r.low), microohm(r.high));
        picture.note(place, 1.25 * microohm(r.high), wl::to_text(s));
        medians.emplace_back(place - 0.12, microohm(r.typical));
        medians.emplace_back(place + 0.12, microohm(r.typical));
        picture.curve(medians, 0, s == clean ? "typical, with the band from 5 to 95 % of such joints" : "");
        medians.clear();
    }
    std::cout << "painted, unbroken: " << (wl::resistance_multiplier(painted_unbroken) ? "conducts" : "open") << '\n';

    lab::synthetic world(404);
    constexpr int seats = 8;
    constexpr double t_95 = 2.365;  // Student, 7 degrees of freedom, two-sided 95 %
    lab::heading("data sheet (SYNTHETIC, seed 404, drawn from the judged bands): eight places each, 1 A");
    lab::row({"surface", "least", "median*", "most", "s of ln R", "median from", "to [uohm]"}, 30, 12);
    std::vector<std::vector<std::string>> rows;
    double clean_mean = 0.0, clean_s = 0.0, rust_mean = 0.0, rust_s = 0.0;
    place = 0.0;
    for (const wl::surface_state s : states) {
        const wl::band<double> factor = *wl::resistance_multiplier(s);
        std::vector<double> logs;
        place += 1.0;
        for (int i = 0; i < seats; ++i) {
            const double z = world.normal(), end = z < 0.0 ? factor.low : factor.high;
            const double truth = clean_typical * factor.typical * std::pow(end / factor.typical, std::fabs(z) / 1.645);
            const double read = std::max(1.0, world.reading(truth, 0.01 * truth, 1.0));
            logs.push_back(std::log(read));
            worst = std::max(worst, read);
            rows.push_back({wl::csv_field(wl::to_text(s)), fixed(read, 0)});
            dots.emplace_back(place + 0.25, read);
        }
        double mean = 0.0, squares = 0.0;
        for (const double l : logs) mean += l / seats;
        for (const double l : logs) squares += (l - mean) * (l - mean) / (seats - 1);
        const double spread = std::sqrt(squares), half = t_95 * spread / std::sqrt(1.0 * seats);
        lab::row({std::string(wl::to_text(s)), fixed(std::exp(*std::min_element(logs.begin(), logs.end())), 0),
                  fixed(std::exp(mean), 0), fixed(std::exp(*std::max_element(logs.begin(), logs.end())), 0),
                  fixed(spread, 2), fixed(std::exp(mean - half), 0), fixed(std::exp(mean + half), 0)},
                 30, 12);
        if (s == clean) {
            clean_mean = mean;
            clean_s = spread;
        }
        if (s == light_rust) {
            rust_mean = mean;
            rust_s = spread;
        }
    }
    std::cout << "* geometric mean, the median of a log-normal surface; t " << fixed(t_95, 3) << '\n';

    lab::heading("uncertainty budget: how many times clean is light rust");
    const double root = std::sqrt(1.0 * seats);
    const lab::result ratio = lab::budget("ln of the ratio", 2,
                                          {{"mean ln R, light rust", rust_mean, rust_s / root},
                                           {"mean ln R, clean", clean_mean, clean_s / root},
                                           {"force between the two, ln", 0.0, 0.02},
                                           {"current between the two, ln", 0.0, 0.004}},
                                          [](const std::vector<double>& x) { return x[0] - x[1] - 0.7 * x[2] - x[3]; });
    const auto fourth = [&](double spread) { return std::pow(spread / root, 4) / (seats - 1); };
    const double freedom = std::pow(ratio.standard_uncertainty, 4) / (fourth(rust_s) + fourth(clean_s));
    constexpr double whole = 9.0, t_whole = 2.262;  // Student, 9 degrees of freedom, two-sided 95 %
    if (std::floor(freedom) != whole) throw std::runtime_error("another t belongs to these degrees of freedom");
    std::cout << "effective degrees of freedom " << fixed(freedom, 1) << ", t " << fixed(t_whole, 3) << ": ratio "
              << fixed(std::exp(ratio.value), 1) << ", from "
              << fixed(std::exp(ratio.value - t_whole * ratio.standard_uncertainty), 1) << " to "
              << fixed(std::exp(ratio.value + t_whole * ratio.standard_uncertainty), 1) << '\n';

    lab::heading("answers");
    const double distance = lab::step("ln 5, between the medians", std::log(5.0), 4);
    const double above = lab::step("s of clean above its median, ln 2/1.645", std::log(2.0) / 1.645, 4);
    const double below = lab::step("s of light rust below its median, ln 5/1.645", std::log(5.0) / 1.645, 4);
    const double z = lab::step("distance over the root of the sum of squares", distance / std::hypot(above, below), 4);
    lab::by_hand("normal probability below that", 0.5 * std::erfc(-z / std::numbers::sqrt2),
                 static_cast<double>(wl::probability_better(clean, light_rust)), 3, 0.015);
    std::cout << "clean against light oxide " << fixed(static_cast<double>(wl::probability_better(clean, oxidized)), 2)
              << ", bitten scale against light rust "
              << fixed(static_cast<double>(wl::probability_better(mill_scale_bitten, light_rust)), 2) << '\n';
    const double apart = std::log(2.0);
    std::cout << "to see a factor of 2 between two states of s = " << fixed(rust_s, 2) << " takes "
              << fixed(std::ceil(2.0 * std::pow(2.0 * rust_s / apart, 2)), 0) << " readings of each (k = 2)\n";

    const wl::joint_limits limits = wl::joint_limits_of(bright.metals, 22_degC);
    std::cout << "at 20 A the worst reading would ask for " << fixed(0.02 * worst, 0) << " mV; brass yields from "
              << fixed(wl::number_in(limits.softening, "mV"), 0) << " mV on and melts at "
              << fixed(wl::number_in(limits.melting, "mV"), 0) << " mV; at 1 A it drops " << fixed(1e-3 * worst, 0)
              << " mV\n";
    picture.dots(dots, "synthetic readings, eight places each");
    return {picture.finished(), lab::table("04_surface_states", "surface,resistance_uohm", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
