// The stud of a fixture with one, two or three lugs under its nut: torque, force, thread stress, and the joint cold and
// hot.
//     g++ -std=c++20 -O2 -I include examples/scripts/stud_torque.cpp
#include <cmath>
#include <iostream>

#include <weldloop/circuit/stud_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>

namespace wl = weldloop;
using namespace wl::literals;

static int apart = 0;  // figures that left their hand calculation
static void figure(const char* what, double found, double by_hand, double percent)
{
    if (!(std::fabs(found / by_hand - 1.0) <= percent / 100.0)) ++apart;
    std::cout << what << ": " << found << "; by hand " << by_hand << ", held to " << percent << " %\n";
}

int main()
{
    std::cout << "== stud_torque\n";
    std::cout.precision(4);
    const wl::length thread = 10_mm;
    const wl::torque torque = wl::electrical_bolt_torque(thread);
    std::cout << "M10, published torque " << wl::to_text(torque, "Nm") << '\n';
    const auto dry = wl::bolt_force(torque, wl::thread_state::dry, thread);
    // T/(K d), K 0.2 of a dry thread
    figure("dry thread, force [kN]", wl::number_in(dry.typical, "kN"), 40.0 / (0.2 * 0.010) / 1e3, 0.1);
    // ISO 898-1: stress area of M10 is 58.0 mm2
    const double stress =
        wl::number_in(dry.typical, "N") / wl::number_in(wl::metric_stress_area(thread, 1.5_mm), "mm2");
    figure("its thread bears [N/mm2]", stress, 20e3 / 58.0, 0.5);
    std::cout << "the force typically lies between " << wl::to_text(dry.low, "kN") << " and "
              << wl::to_text(dry.high, "kN") << ": one torque, different threads\n";

    wl::stud_terminal stud{.diameter = thread, .tightening = torque};
    for (const int lugs : {1, 2, 3}) {
        stud.lugs = lugs;
        const wl::joint_behaviour cold = wl::behaviour_of(stud, 300_A, 20_degC),
                                  hot = wl::behaviour_of(stud, 300_A, 90_degC);
        std::cout << lugs << " lug(s) at 300 A: " << wl::to_text(cold.drop.typical, "mV") << " cold, "
                  << wl::to_text(hot.drop.typical, "mV") << " at 90 degC, in a poor case "
                  << wl::to_text(hot.drop.high, "mV") << '\n';
    }
    stud.lugs = 1;
    // copper on brass K 370 to 380, m 0.6 of bolted faces, 20 kN: K/(0.102 F)^m
    const double ohms = std::sqrt(370.0 * 380.0) / std::pow(0.102 * 20e3, 0.6);
    const auto cold = wl::behaviour_of(stud, 1_A, 20_degC), hot = wl::behaviour_of(stud, 1_A, 90_degC);
    figure("one lug has typically, cold [uohm]", wl::number_in(cold.resistance.typical, "uohm"), ohms, 1.0);
    // half of a constriction is copper, 17.2 nohm m and 0.39 %/K, half brass, 62 nohm m and 0.17 %/K; 70 K
    const double warmer = (17.2 * (1.0 + 0.0039 * 70.0) + 62.0 * (1.0 + 0.0017 * 70.0)) / (17.2 + 62.0);
    figure("hot over cold", static_cast<double>(hot.resistance.typical / cold.resistance.typical), warmer, 1.0);
    stud.tightening = 8_Nm;
    std::cout << "left at 8 N m: " << wl::to_text(wl::behaviour_of(stud, 300_A, 90_degC).drop.typical, "mV") << '\n';
    return apart == 0 ? 0 : 1;
}
