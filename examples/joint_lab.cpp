// A laboratory sheet: the force law, the film-free bound of the hottest spot, and where a joint stops being ohmic.
//! [joint lab]
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    std::cout << "brass jaw on bright mild steel, bulk at 40 degC\n";
    for (const wl::force& force : {50_N, 100_N, 200_N, 400_N, 800_N}) {
        const wl::contact jaw{.metals = {wl::brass, wl::mild_steel}, .force = force};
        std::cout << wl::to_text(force, "N") << ": " << wl::to_text(wl::contact_resistance_of(jaw).typical, "uohm")
                  << " cold";
        for (const wl::current& amps : {50_A, 200_A, 800_A}) {
            const wl::joint_behaviour now = wl::behaviour_of(jaw, amps, 40_degC);
            std::cout << "; at " << wl::to_text(amps, "A") << " " << wl::to_text(now.drop.typical, "mV") << ", spot "
                      << wl::to_text(now.hottest_spot.typical, "degC");
        }
        std::cout << '\n';
    }
    std::cout << "copper spot of 0.1 mm radius: "
              << wl::to_text(wl::constriction_resistance(wl::annealed_copper.resistivity_at(20_degC), 0.1_mm), "uohm")
              << "; 0.1 V across a film-free joint at 20 degC heats its spots to at most "
              << wl::to_text(wl::hot_spot_temperature(0.1_V, 20_degC), "degC") << '\n';
}
//! [joint lab]
