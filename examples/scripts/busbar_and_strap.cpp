// A rotary fixture for gates: a copper bar runs along its frame, a braid lets the head turn. What the bar and a bolted
// joint take, and the smallest braid.
//     g++ -std=c++20 -O2 -I include examples/scripts/busbar_and_strap.cpp
#include <cmath>
#include <iostream>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/lead/strap_sizing.hpp>

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
    std::cout << "== busbar_and_strap\n";
    std::cout.precision(4);
    const wl::load work{.current = 300_A, .duty = wl::duty_cycle::of(6_min, 10_min)};
    const wl::strap bar{.length = 800_mm,
                        .section = 150_mm2,  // 30 mm by 5 mm
                        .make = wl::strap_make::solid,
                        .onto = wl::annealed_copper};
    // rho l/A times 300 A, copper of 17.241 nohm m: 92 uohm
    const double metal = 17.241e-9 * 0.8 / 150e-6 * 300.0;
    figure("the bar takes, cold [mV]", 1e3 * wl::number_in(wl::body_resistance_of(bar, 20_degC) * work.current, "V"),
           1e3 * metal, 0.1);
    // T/(K d), K 0.17 of a plated thread
    const double newton = 40.0 / (0.17 * 0.010);
    figure("an M10 at 40 N m presses with [kN]",
           wl::number_in(wl::bolt_force(bar.tightening, bar.thread, bar.bolt_diameter).typical, "kN"), newton / 1e3,
           0.1);
    // K/(0.102 F)^m: copper on copper K 80 to 140, geometric mean; m 0.6 of bolted bars
    const double joint = std::sqrt(80.0 * 140.0) / std::pow(0.102 * newton, 0.6);
    const auto end = wl::bolted_face_conductance_of(wl::end_of(bar));
    figure("a clean bolted end has typically [uohm]", wl::number_in(wl::resistance(1.0 / end.typical), "uohm"), joint,
           1.0);

    const wl::strap_choice braid = wl::smallest_strap(
        {.like = {.length = 300_mm, .onto = wl::annealed_copper}, .work = work, .where = {.air = 35_degC}});
    std::cout << "smallest braid of 300 mm: " << wl::to_text(braid.strap.section, "mm2") << ", at most "
              << wl::to_text(braid.heating.peak, "degC") << '\n';
    // wires a tenth longer than the braid, copper as warm as it is under the arc; its ends add less than 8 %
    const double warm = 1.0 + 0.00393 * (braid.heating.mean_under_arc.in_celsius() - 20.0);
    const double wires = 1.1 * 17.241e-9 * warm * 0.3 / (wl::number_in(braid.strap.section, "mm2") * 1e-6);
    figure("it takes, hot [mV]", wl::number_in(braid.heating.drop, "mV"), 300e3 * wires, 8.0);
    return apart == 0 ? 0 : 1;
}
