// Millivolt readings taken across the parts of a loop under load: which part is at fault, and what cures it?
#include <iostream>
#include <vector>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    wl::station bench{
        .name = "frame jig 1",
        .job = {.process = wl::process::smaw, .current = 180_A, .duty = wl::duty_cycle::of(4_min, 10_min)},
        .where = {.air = 25_degC},
    };
    bench.path = {
        wl::welding_cable(wl::awg(1), 15_m),
        wl::arc{},
        wl::work_connection{.clamp = wl::screw_clamp(400_A),
                            .onto = wl::mild_steel,
                            .surface = wl::surface_state::clean,
                            .name = "work clamp"},
        wl::crimped_lug("clamp lug", wl::awg(1)),
        wl::welding_cable(wl::awg(1), 15_m).named("work lead"),
    };

    const std::vector<wl::reading> meter{
        {.across = "work clamp", .volts = 0.41_V, .current = 178_A},
        {.across = "clamp lug", .volts = 0.006_V, .current = 178_A},
        {.across = "work lead", .volts = 1.15_V, .current = 180_A},
    };

    for (const wl::finding& f : wl::diagnose(bench, meter))
        std::cout << f.part << ": " << wl::to_text(f.measured, "uohm") << " against "
                  << wl::to_text(f.expected.low, "uohm") << " .. " << wl::to_text(f.expected.high, "uohm")
                  << ", most likely " << f.most_likely << " (" << wl::to_text(f.likelihood)
                  << "), do: " << f.remedy.what << '\n';
}
