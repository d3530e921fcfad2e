// Two work leads on a trailer frame, one at either end: how they share 400 A, and how hot each is with the other and
// alone.
//     g++ -std=c++20 -O2 -I include examples/scripts/two_returns.cpp
#include <array>
#include <cmath>
#include <cstddef>
#include <iostream>

#include <weldloop/circuit/parallel_leads.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
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
    std::cout << "== two_returns\n";
    std::cout.precision(4);
    const wl::load work{.current = 400_A, .duty = wl::duty_cycle::of(6_min, 10_min)};
    const wl::surroundings hall{.air = 30_degC};
    const wl::cable near = wl::welding_cable(wl::square_mm(70), 8_m), far = wl::welding_cable(wl::square_mm(50), 15_m);
    // ends: a lug, a clamp, together
    const std::array both{wl::parallel_lead{near, 250_uohm}, wl::parallel_lead{far, 250_uohm}};
    const wl::lead_sharing shared = wl::sharing_of(both, hall, work);

    // IEC 60228 allows 0.272 and 0.386 ohm/km at 20 degC; the copper is at some 55 and 38 degC
    const double first = 8e-3 * 0.272 * (1.0 + 0.00393 * 35.0) + 250e-6;
    const double second = 15e-3 * 0.386 * (1.0 + 0.00393 * 18.0) + 250e-6;
    figure("the near lead carries [A]", wl::number_in(shared.leads[0].current, "A"), 400.0 * second / (first + second),
           1.0);
    figure("the far lead carries [A]", wl::number_in(shared.leads[1].current, "A"), 400.0 * first / (first + second),
           1.0);
    figure("both drop [V]", wl::number_in(shared.drop, "V"), 400.0 * first * second / (first + second), 1.0);

    for (std::size_t k = 0; k < both.size(); ++k) {
        const wl::cable& lead = both[k].lead;
        const wl::cable_heating alone = wl::heating_of(lead, hall, work);
        std::cout << wl::to_text(lead.size) << ": " << wl::to_text(shared.leads[k].heating.conductor_peak, "degC")
                  << " with the other, alone "
                  << (alone.over_limit ? "over its limit" : wl::to_text(alone.conductor_peak, "degC")) << "; may carry "
                  << wl::to_text(wl::ampacity_of(lead, hall, work.duty).amps, "A") << '\n';
    }
    std::cout << "a return that came off is typically hardly seen at the arc: clamp an ammeter round each lead\n";
    return apart == 0 ? 0 : 1;
}
