// A magnetic work connection on gate tube: what heat and a skin of scale or paint take from its pull, and what that
// does to its pad.
//     g++ -std=c++20 -O2 -I include examples/scripts/magnet_base.cpp
#include <cmath>
#include <iostream>
#include <optional>

#include <weldloop/circuit/magnet_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>

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
    std::cout << "== magnet_base\n";
    std::cout.precision(4);
    wl::work_magnet base{.rated = 600_N};
    std::cout << "pull and pad at 150 A, " << base.grade.name << " rated " << wl::to_text(base.rated, "N") << '\n';
    for (const wl::length& skin : {0.0_mm, 0.1_mm, 0.3_mm})
        for (const wl::temperature at : {20_degC, 80_degC, 150_degC}) {
            base.gap = skin;
            base.magnet = at;
            const wl::joint_behaviour pad = wl::behaviour_of(base, 150_A, at);
            std::cout << "  skin " << wl::to_text(skin, "mm") << ", " << wl::to_text(at, "degC") << ": "
                      << wl::to_text(wl::pull_of(base).force, "N") << ", typically "
                      << wl::to_text(pad.drop.typical, "mV") << ", in a poor case " << wl::to_text(pad.drop.high, "mV")
                      << '\n';
        }
    base.gap = 0.1_mm;
    base.magnet = 80_degC;
    // ferrite loses 0.2 % of its remanence a kelvin; the pull goes as its square, and over a gap as 1/(1 + g/0.5 mm)^2
    const double pull = 600.0 * std::pow((1.0 - 0.002 * 60.0) / (1.0 + 0.1 / 0.5), 2);
    figure("at 80 degC over 0.1 mm it pulls [N]", wl::number_in(wl::pull_of(base).force, "N"), pull, 0.1);
    // a third of it on two points of brass on steel: K 3000, m 0.7
    const double ohms = 3000.0 / (2.0 * std::pow(0.102 * pull / 3.0 / 2.0, 0.7));
    const auto pad = wl::contact_resistance_of(wl::pad_contact_of(base));
    figure("its clean pad has typically, cold [uohm]", wl::number_in(pad.typical, "uohm"), ohms, 0.5);
    base.work = wl::stainless_steel;
    std::cout << "on stainless rail it pulls " << wl::to_text(wl::pull_of(base).force, "N") << '\n';
    return apart == 0 ? 0 : 1;
}
