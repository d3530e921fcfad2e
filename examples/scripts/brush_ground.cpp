// The brushes of a rotary fixture for trailer axles: how many, what they take and how warm the ring gets.
//     g++ -std=c++20 -O2 -I include examples/scripts/brush_ground.cpp
#include <cmath>
#include <iostream>

#include <weldloop/circuit/rotary_ground_behaviour.hpp>
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
    std::cout << "== brush_ground\n";
    std::cout.precision(4);
    const wl::current welding = 400_A;
    const double duty = 0.6;
    wl::rotary_ground ground{.count = 3, .face = 4_cm2};
    while (wl::brushes_overloaded(ground, welding)) ++ground.count;
    // metal-graphite bears 20 A/cm2: 400 A/(20 A/cm2 4 cm2)
    figure("brushes of 4 cm2 needed", ground.count, 400.0 / (20.0 * 4.0), 0.1);

    const wl::joint_behaviour typical = wl::behaviour_of(ground, welding, 60_degC);
    // half of the 0.5 V that handbooks give a pair; level above 5 A/cm2
    figure("one brush drops, and so do all beside it [V]", wl::number_in(typical.drop.typical, "V"), 0.5 / 2.0, 0.1);
    std::cout << "in a poor case it drops " << wl::to_text(typical.drop.high, "V") << '\n';
    figure("heat while welding [W]", wl::number_in(typical.loss.typical, "W"), 0.25 * 400.0, 0.1);

    // settled: the mean heat leaves a body of so much surface
    const wl::thermal_body body = wl::body_of(ground);
    const wl::surroundings hall{.air = 30_degC};
    const wl::power mean = duty * typical.loss.typical;
    wl::temperature ring = hall.air;
    while (wl::body_loss(body, ring, hall) < mean) ring = ring + wl::in_si<wl::temperature_difference>(0.1);
    // eight times the track, which is ten times the brushes, loses about 9 W/(m2 K): still air and dull metal
    const double square_metres = 8.0 * 10.0 * 5.0 * 4e-4;
    figure("the ring gets warmer than the air by [K]", wl::number_in(ring - hall.air, "K"),
           duty * 100.0 / (square_metres * 9.0), 15.0);
    return apart == 0 ? 0 : 1;
}
