// The same copper jaw on the same steel bar, with every kind of surface between them, at 200 A.
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    for (const wl::surface_state state : wl::all_surface_states) {
        const wl::contact jaw{.metals = {wl::annealed_copper, wl::mild_steel}, .force = 250_N, .surface = state};

        const wl::joint_behaviour now = wl::behaviour_of(jaw, 200_A, 40_degC);  // low, typical, high: contacts scatter
        std::cout << wl::to_text(state) << ": ";
        if (!now.conducts) {
            std::cout << "open circuit\n";
            continue;
        }
        std::cout << wl::to_text(now.resistance.low, "uohm") << " .. " << wl::to_text(now.resistance.typical, "uohm")
                  << " .. " << wl::to_text(now.resistance.high, "uohm") << ", drop "
                  << wl::to_text(now.drop.typical, "mV") << ", hottest spot "
                  << wl::to_text(now.hottest_spot.typical, "degC")
                  << (now.spots_melt ? ", spots melting: may weld or burn" : "") << '\n';
    }

    // the laws alone, for a textbook exercise
    const wl::resistance cold =
        wl::contact_resistance_of({.metals = {wl::annealed_copper, wl::mild_steel}, .force = 500_N}).typical;
    const wl::resistance spot = wl::constriction_resistance(wl::annealed_copper.resistivity_at(20_degC), 0.1_mm);
    const wl::temperature hot = wl::hot_spot_temperature(0.1_V, 20_degC);  // film-free upper bound
    const wl::force screw = wl::screw_force(10_Nm, {.diameter = 16_mm, .pitch = 4_mm});
    std::cout << wl::to_text(cold, "uohm") << ", " << wl::to_text(spot, "uohm") << ", " << wl::to_text(hot, "degC")
              << ", " << wl::to_text(screw, "kN") << '\n';
}
