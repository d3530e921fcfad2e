// my_program.cpp
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    const wl::cable lead = wl::welding_cable(wl::awg(2), 40_ft);
    const wl::ampacity may = wl::ampacity_of(lead, {.air = 30_degC}, wl::duty_cycle::of(6_min, 10_min));
    std::cout << "a lead of 2 AWG carries " << wl::to_text(may.amps, "A") << '\n';
}
