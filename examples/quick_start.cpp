// A trailer-frame bench: is the work lead big enough, what does the clamp do, what is to be changed?
//! [quick start]
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    wl::station bench{
        .name = "trailer frame bench",
        .job = {.process = wl::process::gmaw, .current = 220_A, .duty = wl::duty_cycle::of(6_min, 10_min)},
        .where = {.air = 30_degC}};
    bench.path = {wl::welding_cable(wl::aught(1), 40_ft).named("feeder lead"),
                  wl::wire_gun("gun", 10_ft),
                  wl::arc{},
                  wl::work_connection{.clamp = wl::spring_clamp(300_A),
                                      .onto = wl::mild_steel,
                                      .surface = wl::surface_state::light_rust,
                                      .name = "work clamp"},
                  wl::crimped_lug("clamp lug", wl::awg(2)),
                  wl::welding_cable(wl::awg(2), 40_ft).named("work lead")};

    const wl::assessment found = wl::assess(bench);
    for (const wl::part_result& part : found.parts)
        std::cout << part.name << ": " << wl::to_text(part.verdict) << ", " << part.reason << '\n';
    for (const wl::remedy& fix : wl::remedies_for(bench))
        std::cout << fix.what << ": regains " << wl::to_text(fix.volts_regained, "V") << '\n';
}
//! [quick start]
