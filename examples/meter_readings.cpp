// Millivolts read across the parts of a gate bench under load: which part, what is wrong with it, what cures it?
//! [meter readings]
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    wl::station bench{.name = "gate bench",
                      .job = {.process = wl::process::smaw, .current = 160_A, .duty = wl::duty_cycle::of(35 / 100.0)}};
    bench.path = {wl::welding_cable(wl::square_mm(50), 15_m).named("electrode lead"),
                  wl::electrode_holder("holder", 300_A),
                  wl::arc{},
                  wl::work_connection{.clamp = wl::spring_clamp(200_A), .onto = wl::mild_steel, .name = "work clamp"},
                  wl::crimped_lug("clamp lug", wl::square_mm(50)),
                  wl::welding_cable(wl::square_mm(50), 15_m).named("work lead")};

    const std::vector<wl::reading> meter{{.across = "work clamp", .volts = 0.31_V, .current = 158_A},
                                         {.across = "clamp lug", .volts = 0.019_V, .current = 158_A}};
    for (const wl::finding& f : wl::diagnose(bench, meter)) {
        std::cout << f.part << " has " << wl::to_text(f.measured, "uohm") << " where "
                  << wl::to_text(f.expected.low, "uohm") << " to " << wl::to_text(f.expected.high, "uohm")
                  << " are expected\n";
        for (const wl::explanation& e : f.considered)
            if (e.likelihood > 0.05)
                std::cout << "  " << wl::to_text(e.likelihood, 2) << " " << e.condition << ": " << e.remedy.what
                          << '\n';
    }
}
//! [meter readings]
