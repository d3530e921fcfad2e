// Which lead for 250 A at 60 % over 100 ft in all (50 ft out, 50 ft back), where it may take 4 V and the air is at 104
// degF.
//     g++ -std=c++20 -O2 -I include examples/scripts/lead_for_a_length.cpp
#include <cmath>
#include <iostream>
#include <optional>

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
    std::cout << "== lead_for_a_length\n";
    std::cout.precision(4);
    wl::lead_request ask{.length = 50_ft,
                         .current = 250_A,
                         .duty = wl::duty_cycle::of(6_min, 10_min),
                         .where = {.air = 104_degF},
                         .both_leads = true};
    const wl::lead_choice found = wl::smallest_lead(ask);
    std::cout << "250 A at 60 %, 50 ft out and 50 ft back: " << wl::to_text(found.cable.size) << ", decided by "
              << wl::to_text(found.governed_by) << '\n'
              << "it takes " << wl::to_text(found.drop, "V") << " in all of 4 V, its copper gets to "
              << wl::to_text(found.heating.conductor_peak, "degF") << " of 185 degF, and it may carry "
              << wl::to_text(found.rated.amps, "A") << '\n';
    ask.allowed_drop = 100_V;
    const wl::lead_choice cool = wl::smallest_lead(ask);
    std::cout << "heat alone would be content with " << wl::to_text(cool.cable.size) << ", which takes "
              << wl::to_text(cool.drop, "V") << '\n';
    ask.allowed_drop = 4_V;
    for (const wl::length& each : {25_ft, 50_ft, 75_ft, 100_ft}) {
        ask.length = each;
        const wl::lead_choice now = wl::smallest_lead(ask);
        std::cout << "  " << wl::to_text(2.0 * each, "ft") << " in all: " << wl::to_text(now.cable.size) << ", by "
                  << wl::to_text(now.governed_by) << ", " << wl::to_text(now.drop, "V") << '\n';
    }
    // rho L I/U: 17.241 nohm m, 30.48 m, 250 A in 4 V; 6 % lay, 2 % of the standard, copper at its mean under the arc
    const double warm = 1.0 + 0.00393 * (found.heating.conductor_mean.in_celsius() - 20.0);
    const double section = 17.241e-9 * 30.48 * 250.0 * 1.06 * 1.02 * warm / wl::number_in(found.drop, "V");
    figure("copper for that drop [mm2]", wl::number_in(found.cable.size.area(), "mm2"), 1e6 * section, 1.5);
    return apart == 0 ? 0 : 1;
}
