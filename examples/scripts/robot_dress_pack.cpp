// A robot that welds gate frames: its lead runs in the dress pack among hoses and other leads. Size, and the duty that
// a given lead bears there.
//     g++ -std=c++20 -O2 -I include examples/scripts/robot_dress_pack.cpp
#include <cmath>
#include <iostream>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/lead/lead_limits.hpp>
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
    std::cout << "== robot_dress_pack\n";
    std::cout.precision(4);
    wl::surroundings pack{.air = 45_degC, .lay = wl::lay::bundled, .bundled_leads = 3};
    const wl::load work{.current = 350_A, .duty = wl::duty_cycle::of(45_s, 60_s)};
    const wl::lead_choice found = wl::smallest_lead({.length = 6_m,
                                                     .current = work.current,
                                                     .duty = work.duty,
                                                     .where = pack,
                                                     .allowed_drop = 1.5_V,
                                                     .family = wl::size_family::metric});
    std::cout << "three loaded leads together at 45 degC: " << wl::to_text(found.cable.size) << " by "
              << wl::to_text(found.governed_by) << ", " << wl::to_text(found.heating.conductor_peak, "degC")
              << " at most\n";
    // IEC 60228 allows flexible 150 mm2 0.129 ohm/km at 20 degC; 0.393 %/K
    const double warm = 1.0 + 0.00393 * (found.heating.conductor_mean.in_celsius() - 20.0);
    figure("it takes, hot [V]", wl::number_in(found.drop, "V"), 350.0 * 6e-3 * 0.129 * warm, 0.5);
    const wl::cable fitted = wl::welding_cable(wl::square_mm(70), 6_m);
    for (const int leads : {2, 3, 6}) {
        pack.bundled_leads = leads;
        std::cout << "70 mm2 among " << leads << ": duty up to "
                  << wl::to_text(wl::largest_duty(fitted, pack, work.current, 60_s).duty.share()) << '\n';
    }
    pack.bundled_leads = 3;
    // a minute is short to a lead, so the square of what it carries for ever over what is asked
    const double forever = wl::number_in(wl::ampacity_of(fitted, pack).amps, "A");
    figure("duty among 3 [%]",
           100.0 * static_cast<double>(wl::largest_duty(fitted, pack, work.current, 60_s).duty.share()),
           100.0 * forever * forever / (350.0 * 350.0), 3.0);
    return apart == 0 ? 0 : 1;
}
