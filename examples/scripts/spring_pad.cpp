// A spring-loaded copper pad closes on a frame rail of mild steel: the spring behind it, the contact it makes, and the
// force that 250 A would want.
//     g++ -std=c++20 -O2 -I include examples/scripts/spring_pad.cpp
#include <array>
#include <cmath>
#include <iostream>

#include <weldloop/circuit/force_for.hpp>
#include <weldloop/circuit/spring_pad_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/compression_spring.hpp>

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
    std::cout << "== spring_pad\n";
    std::cout.precision(4);
    // a wire of 4 mm wound to 28 mm, 8 turns squared and ground, pressed from 60 to 45 mm
    const auto ends = wl::coil_ends::squared_ground;
    const wl::spring_rate rate =
        wl::compression_rate(wl::shear_modulus(wl::hard_drawn_wire, 4_mm), 4_mm, 28_mm, wl::active_turns(8.0, ends));
    const wl::force pressing = wl::compression_force(rate, 60_mm, wl::solid_length(4_mm, 8.0, ends), 45_mm);
    // G d^4/(8 D^3 N) 15 mm, G 79 GPa: 19.2 N/mm
    const double newton = 79e3 * std::pow(4.0, 4) / (8.0 * std::pow(28.0, 3) * 6.0) * 15.0;
    figure("the spring presses with [N]", wl::number_in(pressing, "N"), newton, 1.0);

    const wl::spring_pad pad{.pressing = pressing, .across = 40_mm};
    const auto ohms = wl::contact_resistance_of(wl::pad_contact_of(pad));
    // n points: K/(n (0.102 F/n)^m), copper on steel K 3100, domes m 0.6
    const double hand = 3100.0 / (3.0 * std::pow(0.102 * newton / 3.0, 0.6));
    figure("the clean pad has typically [uohm]", wl::number_in(ohms.typical, "uohm"), hand, 1.0);
    std::cout << "5 to 95 of 100 such pads: " << wl::to_text(ohms.low, "uohm") << " to "
              << wl::to_text(ohms.high, "uohm") << '\n';
    std::cout << "drop at 250 A, pad at 60 degC:";
    for (const wl::surface_state rail : {wl::surface_state::clean, wl::surface_state::light_rust,
                                         wl::surface_state::mill_scale, wl::surface_state::painted_unbroken}) {
        wl::spring_pad on = pad;
        on.surface = rail;
        const wl::joint_behaviour b = wl::behaviour_of(on, 250_A, 60_degC);
        std::cout << ' ' << wl::to_text(rail) << ' ' << (b.conducts ? wl::to_text(b.drop.typical, "mV") : "open")
                  << ';';
    }
    const wl::band<wl::force> wanted = wl::force_for_resistance(wl::pad_contact_of(pad), 200_uohm);
    // the law turned round: 3/0.102 (3100/(3 200))^(1/0.6)
    std::cout << '\n';
    figure("force for 200 uohm, typically [N]", wl::number_in(wanted.typical, "N"),
           3.0 / 0.102 * std::pow(3100.0 / 600.0, 1.0 / 0.6), 0.5);
    return apart == 0 ? 0 : 1;
}
