// A gantry over the frame bench: the two leads run in a cable chain, touching and in a crowd. Size, length, volts.
//     g++ -std=c++20 -O2 -I include examples/scripts/cable_chain.cpp
#include <cmath>
#include <iostream>
#include <numbers>
#include <utility>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/lead/sizing.hpp>

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
    std::cout << "== cable_chain\n";
    std::cout.precision(4);
    // half of the 12 m of travel, the bend of 200 mm radius, and 1.5 m to each end
    const wl::length along = 0.5 * 12_m + std::numbers::pi * 200_mm + 2.0 * 1.5_m;
    figure("one lead is [m]", wl::number_in(along, "m"), 6.0 + 0.63 + 3.0, 0.1);

    wl::lead_request ask{.length = along,
                         .current = 320_A,
                         .duty = wl::duty_cycle::of(8_min, 10_min),
                         .where = {.air = 40_degC},
                         .both_leads = true,
                         .family = wl::size_family::metric};
    for (const auto& [words, lay] :
         {std::pair("alone in still air", wl::lay::alone), std::pair("out and back touching", wl::lay::touching_pair),
          std::pair("six leads in one crowd", wl::lay::bundled)}) {
        ask.where.lay = lay;
        const wl::lead_choice found = wl::smallest_lead(ask);
        std::cout << words << ": " << wl::to_text(found.cable.size) << " by " << wl::to_text(found.governed_by)
                  << ", conductor at most " << wl::to_text(found.heating.conductor_peak, "degC") << '\n';
    }
    const wl::lead_choice in_chain = wl::smallest_lead(ask);
    // IEC 60228 allows flexible 185 mm2 0.106 ohm/km at 20 degC; 0.393 %/K; two leads
    const double warm = 1.0 + 0.00393 * (in_chain.heating.conductor_mean.in_celsius() - 20.0);
    figure("both take, hot [V]", wl::number_in(in_chain.drop, "V"), 2.0 * 320.0 * 9.63e-3 * 0.106 * warm, 0.5);
    // a lead that is slow against the period heats by I sqrt(duty)
    const wl::ampacity steady = wl::ampacity_of(in_chain.cable, ask.where);
    std::cout << "for ever it would carry " << wl::to_text(steady.amps, "A") << ", at 80 % "
              << wl::to_text(in_chain.rated.amps, "A") << '\n';
    figure("80 % over for ever", static_cast<double>(in_chain.rated.amps / steady.amps), 1.0 / std::sqrt(0.8), 5.0);
    return apart == 0 ? 0 : 1;
}
