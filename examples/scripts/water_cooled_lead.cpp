// A gun with a water-cooled lead on a long trailer seam: heat for the water, and how long the copper lasts when the
// water stops.
//     g++ -std=c++20 -O2 -I include examples/scripts/water_cooled_lead.cpp
#include <cmath>
#include <iostream>

#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/short_circuit.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

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
    std::cout << "== water_cooled_lead\n";
    std::cout.precision(4);
    const wl::wire_gun gun("gun", 4_m, wl::torch_cooling::water);
    const wl::current welding = 400_A;
    const wl::temperature water = 35_degC;
    const wl::resistance ohms = wl::resistance_of(gun.lead, water);
    // IEC 60228 allows 25 mm2 flexible 0.780 ohm/km at 20 degC; 4 m, 15 K warmer
    const double hand = 4e-3 * 0.780 * (1.0 + 0.00393 * 15.0);
    std::cout << "the lead inside is " << wl::to_text(gun.lead.size) << '\n';
    figure("it has [mohm]", wl::number_in(ohms, "mohm"), 1e3 * hand, 0.5);
    const wl::power heat = welding * welding * ohms;
    figure("heat for the water [W]", wl::number_in(heat, "W"), 400.0 * 400.0 * hand, 0.5);
    // 1.5 litres a minute carry 1.5/60 kg/s 4186 J/(kg K) = 105 W for each kelvin
    std::cout << "1.5 l/min get warmer by " << wl::number_in(heat, "W") / (1.5 / 60.0 * 4186.0) << " K\n";

    const wl::surroundings hall{.air = water};
    std::cout << "without water it would carry " << wl::to_text(wl::ampacity_of(gun.lead, hall).amps, "A")
              << " for ever\n";
    // no heat leaves the copper: (k S/I)^2 with k by IEC 60949
    const auto root = wl::k_factor_of(wl::iec_copper, {water, 85_degC}) * gun.lead.size.area() / welding;
    const wl::duration lasts = root * root;
    // d c dT/(rho j^2): 8900 kg/m3, 385 J/(kg K), copper at the middle, 60 degC
    const double rho = 17.241e-9 * (1.0 + 0.00393 * 40.0), density = 400.0 / 25e-6;
    figure("the water stops: bare copper is at 85 degC after [s]", wl::number_in(lasts, "s"),
           8900.0 * 385.0 * 50.0 / (rho * density * density), 3.0);
    if (const auto covered = wl::time_to_limit(gun.lead, hall, welding))
        std::cout << "in rubber, which takes up heat too, it would be " << wl::to_text(*covered, "s", 2) << '\n';
    std::cout << "a flow switch must stop the supply sooner than that\n";
    return apart == 0 ? 0 : 1;
}
