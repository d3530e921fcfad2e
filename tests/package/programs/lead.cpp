// Is 75 ft of 2/0 lead enough for 260 A, six minutes in every ten, in a hot shop?
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    const wl::cable lead = wl::welding_cable(wl::aught(2), 75_ft);
    const wl::surroundings shop{.air = 95_degF};
    const wl::duty_cycle shift = wl::duty_cycle::of(6_min, 10_min);

    const wl::ampacity rated = wl::ampacity_of(lead, shop, shift);
    const wl::cable_heating hot = wl::heating_of(lead, shop, {.current = 260_A, .duty = shift});
    const wl::voltage drop = wl::drop_of(lead, 260_A, hot.conductor_mean);

    std::cout << "size          " << wl::to_text(lead.size) << '\n'
              << "rated         " << wl::to_text(rated.amps, "A") << '\n'
              << "copper peak   " << wl::to_text(hot.conductor_peak, "degC") << '\n'
              << "jacket peak   " << wl::to_text(hot.surface_peak, "degF") << '\n'
              << "drop          " << wl::to_text(drop, "V") << '\n';

    // the other way round: the smallest lead that stays inside both limits
    const wl::lead_choice pick = wl::smallest_lead({.length = 75_ft,  // one lead; the drop is this lead's
                                                    .current = 260_A,
                                                    .duty = shift,
                                                    .where = shop,
                                                    .allowed_drop = 2_V});
    std::cout << "smallest lead " << wl::to_text(pick.cable.size) << ", governed by " << wl::to_text(pick.governed_by)
              << '\n';

    // unit mistakes do not compile:   wl::drop_of(lead, 260_V, hot.conductor_mean);   lead.length = 12_s;
    static_assert(wl::aught(4).area() > wl::square_mm(95).area());
}
