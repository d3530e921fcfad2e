// Lab 5, worked: the temperature of a spot nobody can see, by the drop across the contact, and what softening leaves.
#include <array>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    const wl::contact crossed{.metals = {wl::annealed_copper, wl::mild_steel}, .force = 10_N};
    const wl::temperature room = 22_degC;
    const auto millivolt = [](const wl::voltage& v) { return wl::number_in(v, "mV"); };
    const wl::joint_limits limits = wl::joint_limits_of(crossed.metals, room);
    const wl::conductance cold = wl::conductance_at(wl::contact_conductance_of(crossed).typical, crossed.metals, room);
    lab::heading("prediction, copper rod across a steel rod, 10 N");
    std::cout << "cold " << fixed(wl::number_in(wl::resistance(1.0 / cold), "mohm"), 2)
              << " mohm; the copper softens from " << fixed(millivolt(limits.softening), 1) << " mV on, melts at "
              << fixed(millivolt(limits.melting), 0) << " mV\n";
    lab::heading("by hand");
    const double soft = lab::step("190 degC squared [1000 K2]", 463.15 * 463.15 * 1e-3, 2);
    const double bodies = lab::step("22 degC squared [1000 K2]", 295.15 * 295.15 * 1e-3, 2);
    const double volts2 =
        lab::step("4 x 2.44e-8 V2/K2 x the difference [1000 mV2]", 4.0 * 2.44e-8 * 1e6 * (soft - bodies), 3);
    lab::by_hand("drop that softens copper at 22 degC [mV]", std::sqrt(1e3 * volts2), millivolt(limits.softening), 1,
                 0.001);
    lab::heading("against the handbook");
    lab::row({"metal, bodies at 20 degC", "softens [mV]", "handbook", "melts [mV]", "handbook"}, 26, 14);
    struct handbook {
        const wl::metal* of;
        double softens, melts;
    };
    // Holm and Slade as in tests/reference/contacts-voltage-temperature.csv: copper by two sources, the others recalled
    for (const handbook& h : {handbook{&wl::annealed_copper, 120, 430}, handbook{&wl::aluminium, 100, 300},
                              handbook{&wl::mild_steel, 210, 600}})
        lab::row({std::string(h.of->name), fixed(millivolt(wl::softening_drop(*h.of, 20_degC)), 0), fixed(h.softens, 0),
                  fixed(millivolt(wl::melting_drop(*h.of, 20_degC)), 0), fixed(h.melts, 0)},
                 26, 14);

    // the synthetic contact has 0.9 of the predicted resistance; a spot that has grown stays grown
    lab::synthetic world(505);
    constexpr double truth = 0.9, scatter_mv = 0.15, digit_mv = 0.1, probe_a = 2.0;
    constexpr std::array amps{5.0, 10.0, 15.0, 20.0, 24.0, 26.0, 28.0, 30.0, 32.0, 34.0, 36.0, 38.0, 40.0};
    lab::heading("data sheet (SYNTHETIC, seed 505): drop at a current, then cold resistance at 2 A");
    lab::row({"current [A]", "drop [mV]", "at 2 A [mV]", "cold [mohm]", "spot at most [degC]"}, 12, 20);
    lab::points dots, law;
    std::vector<std::vector<std::string>> rows;
    double first_cold = 0.0, softened_from = 0.0, softened_drop = 0.0, last_drop = 0.0, last_cold = 0.0;
    for (const double a : amps) {
        const double v = millivolt(wl::joint_drop(a * 1_A, cold / truth, limits));
        const double grown =
            v > millivolt(limits.softening)
                ? std::sqrt((millivolt(limits.melting) - millivolt(limits.softening)) / (millivolt(limits.melting) - v))
                : 1.0;
        const double cold_mv = probe_a * truth * wl::number_in(wl::resistance(1.0 / cold), "mohm") / grown;
        const double read = world.reading(v, scatter_mv, digit_mv), low = world.reading(cold_mv, 0.01, 0.01);
        last_cold = low / probe_a;
        last_drop = read;
        if (first_cold == 0.0) first_cold = last_cold;
        if (softened_from == 0.0 && last_cold < 0.98 * first_cold) {
            softened_from = a;
            softened_drop = read;
        }
        lab::row({fixed(a, 0), fixed(read, 1), fixed(low, 2), fixed(last_cold, 3),
                  fixed(wl::hot_spot_temperature(read * 1_mV, room).in_celsius(), 0)},
                 12, 20);
        rows.push_back({fixed(a, 0), fixed(read, 1)});
        dots.emplace_back(a, read);
    }
    std::cout << "the cold resistance has fallen by more than 2 % after " << fixed(softened_from, 0) << " A, at "
              << fixed(softened_drop, 1) << " mV\n";

    lab::heading("uncertainty budget of a spot at 100 mV");
    lab::budget("hottest spot [degC]", 1,
                {{"drop [mV]", 100.0, 0.3},
                 {"bodies near the contact [degC]", 26.0, 2.0},
                 {"Lorenz number [1e-8 V2/K2]", 2.44, 0.10}},
                [](const std::vector<double>& x) {
                    const double t0 = x[1] + 273.15;
                    return std::sqrt(t0 * t0 + x[0] * x[0] * 1e-6 / (4e-8 * x[2])) - 273.15;
                });

    lab::heading("answers");
    std::cout << "at 10 mV a spot is " << fixed(wl::number_in(wl::hot_spot_temperature(10_mV, room) - room, "K"), 1)
              << " K over the bodies, at 50 mV "
              << fixed(wl::number_in(wl::hot_spot_temperature(50_mV, room) - room, "K"), 0) << " K\n"
              << "after " << fixed(amps.back(), 0) << " A the cold resistance is " << fixed(last_cold / first_cold, 2)
              << " of the first; by the judged law of falling hardness "
              << fixed(std::sqrt((millivolt(limits.melting) - last_drop) /
                                 (millivolt(limits.melting) - millivolt(limits.softening))),
                       2)
              << '\n'
              << "its spots make " << fixed(last_drop * amps.back() / 1000.0, 1) << " W at the last current\n"
              << "the lab stops at 200 mV; a spot then is at most at "
              << fixed(wl::hot_spot_temperature(200_mV, room).in_celsius(), 0) << " degC, and copper melts at "
              << fixed(millivolt(limits.melting), 0) << " mV\n";

    for (double a = 0.0; a <= 44.0; a += 1.0) law.emplace_back(a, millivolt(wl::joint_drop(a * 1_A, cold, limits)));
    lab::picture picture("Drop of a crossed-rod contact by current", {"current [A]", 0, 45}, {"drop [mV]", 0, 260}, 4);
    picture.curve(law, 0, "prediction, typical joint");
    picture.curve({{0, 0}, {45, 45 * wl::number_in(wl::resistance(1.0 / cold), "mohm")}}, 3,
                  "the same with a resistance that stays cold");
    picture.level(millivolt(limits.softening), "copper softens");
    picture.dots(dots, "synthetic readings, current rising");
    return {picture.finished(), lab::table("05_hottest_spot", "current_A,drop_mV", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
