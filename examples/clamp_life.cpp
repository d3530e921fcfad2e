// Which clamp keeps its grip on a bench where 300 A flow six minutes in ten, and what a cleaner seat is worth.
//! [clamp life]
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    const wl::load work{.current = 300_A, .duty = wl::duty_cycle::of(6_min, 10_min)};
    for (const wl::surface_state seat :
         {wl::surface_state::clean, wl::surface_state::light_rust, wl::surface_state::spatter_covered})
        for (const wl::work_clamp& clamp : {wl::spring_clamp(300_A), wl::spring_clamp(500_A), wl::screw_clamp(300_A)}) {
            const wl::grip_forecast life =
                wl::grip_over_time({.clamp = clamp, .onto = wl::mild_steel, .surface = seat},
                                   wl::welding_cable(wl::aught(2), 30_ft), work, {.air = 30_degC}, 2000_h);
            std::cout << clamp.name << ", " << wl::to_text(seat) << ": " << wl::to_text(life.grip_left)
                      << " of the grip left after 2000 h of shift, at worst " << wl::to_text(life.grip_left_low);
            if (life.quarter_lost)
                std::cout << ", a quarter gone after " << wl::to_text(life.quarter_lost->low, "h") << " to "
                          << (life.quarter_lost->high < life.horizon ? wl::to_text(life.quarter_lost->high, "h")
                                                                     : "beyond that");
            std::cout << '\n';
        }
}
//! [clamp life]
