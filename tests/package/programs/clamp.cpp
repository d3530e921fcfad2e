// A work connection on a spatter-covered bench: which kind of clamp keeps its grip, and for how long?
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    const wl::cable lead = wl::welding_cable(wl::aught(1), 20_ft);
    const wl::surroundings shop{.air = 30_degC};
    const wl::load work{.current = 240_A, .duty = wl::duty_cycle::of(6_min, 10_min)};

    for (const wl::work_clamp& clamp :
         {wl::spring_clamp(300_A), wl::screw_clamp(300_A), wl::bolted_work_lug(wl::aught(1))}) {
        const wl::work_connection joint{
            .clamp = clamp, .onto = wl::mild_steel, .surface = wl::surface_state::spatter_covered};

        const wl::grip_forecast life =
            wl::grip_over_time(joint, lead, work, shop, 2000_h);  // arc-station hours of shift
        const wl::grip_point& last = life.points.back();          // {at, force, resistance, peak_temperature}
        std::cout << clamp.name << ": grip left " << wl::to_text(life.grip_left) << ", joint "
                  << wl::to_text(last.resistance, "uohm") << ", " << wl::to_text(last.peak_temperature, "degC");
        if (life.inspect_by) std::cout << ", inspect within " << wl::to_text(*life.inspect_by, "h");
        if (life.runs_away) std::cout << ", does not settle";
        std::cout << '\n';
    }
}
