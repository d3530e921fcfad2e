// From a thermal picture to a verdict: the covering of a work lead shows 56 degC on the camera. How hot is its copper,
// what does it carry, may it go on?
//     g++ -std=c++20 -O2 -I include examples/scripts/thermal_picture.cpp
#include <cmath>
#include <iostream>
#include <optional>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/surface_reading.hpp>
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
    std::cout << "== thermal_picture\n";
    std::cout.precision(4);
    const auto give = [](double kelvin) { return wl::in_si<wl::temperature_difference>(kelvin); };
    // set to 0.95; dusty rubber has about 0.9; walls at 20 degC
    const wl::measured<wl::temperature> seen = wl::surface_temperature_of({.shown = {56_degC, give(2.0)}, .set = 0.95});
    // the camera sees e Ts^4 + (1 - e) Tr^4: the same radiation by 0.95 and 56 degC as by 0.9 and Ts
    const double shown = 329.15, walls = 293.15;
    const double fourth = (0.95 * std::pow(shown, 4) + (0.05 - 0.10) * std::pow(walls, 4)) / 0.90;
    figure("the covering is at [degC]", seen.value.in_celsius(), std::pow(fourth, 0.25) - 273.15, 0.1);

    const wl::cable lead = wl::welding_cable(wl::square_mm(50), 10_m);
    const wl::surroundings hall{.air = 25_degC};
    const wl::lead_from_surface inside = wl::conductor_from_surface(lead, hall, seen);
    std::cout << "copper at " << wl::to_text(inside.conductor.value, "degC") << ", give or take "
              << wl::to_text(inside.conductor.uncertainty, "K", 2) << "; it carries "
              << wl::to_text(inside.effective.value, "A") << ", give or take "
              << wl::to_text(inside.effective.uncertainty, "A", 2) << ", as an effective value\n";
    // I^2 R' through the covering, ln(D/d)/(2 pi k): 15.0 over 10.45 mm, k 1/5 W/(m K) of IEC 60287, 0.386 ohm/km at 20
    // degC
    const double amps = wl::number_in(inside.effective.value, "A");
    const double heat = amps * amps * 0.386e-3 * (1.0 + 0.00393 * (inside.conductor.value.in_celsius() - 20.0));
    figure("copper over covering [K]", wl::number_in(inside.conductor.value - seen.value, "K"),
           heat * std::log(15.0 / 10.45) / (2.0 * 3.14159 * 0.2), 1.0);

    const wl::temperature limit = wl::limit_of(lead);
    const wl::temperature worst = inside.conductor.value + inside.conductor.uncertainty;
    std::cout << "limit " << wl::to_text(limit, "degC") << ", steady rating "
              << wl::to_text(wl::ampacity_of(lead, hall).amps, "A") << ": "
              << (worst <= limit ? "within limit under these conditions" : "reduce current or duty") << '\n'
              << "a place hotter than the rest of its lead is typically damage, whatever this says\n";
    return apart == 0 ? 0 : 1;
}
