// The whole loop of one welding station, checked inside somebody else's program.
#include <iostream>
#include <string>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    const wl::cable electrode_lead = wl::welding_cable(wl::aught(2), 50_ft).named("feeder lead");
    const wl::cable work_lead = wl::welding_cable(wl::awg(1), 30_ft).named("work lead");

    wl::station bench{
        .name = "gate bench 2",
        .job = {.process = wl::process::gmaw, .current = 240_A, .duty = wl::duty_cycle::of(6_min, 10_min)},
        .where = {.air = 32_degC},
    };
    bench.path = {
        wl::crimped_lug("output lug", wl::aught(2)),
        electrode_lead,
        wl::wire_gun("gun", 10_ft),
        wl::arc{},
        wl::contact{.metals = {wl::mild_steel, wl::mild_steel},
                    .force = 120_N,
                    .surface = wl::surface_state::spatter_covered,
                    .name = "gate on table"},
        wl::plate{.metal = wl::mild_steel, .length = 4_ft, .width = 3_ft, .thickness = 0.5_in, .name = "table"},
        wl::work_connection{.clamp = wl::spring_clamp(300_A),
                            .onto = wl::mild_steel,
                            .surface = wl::surface_state::oxidized,
                            .name = "work clamp"},
        wl::crimped_lug("clamp lug", wl::awg(1)).with_missing_strands(0.20),
        work_lead,
        wl::crimped_lug("return lug", wl::awg(1)),
    };

    const wl::assessment found = wl::assess(bench);

    for (const wl::part_result& part : found.parts)
        std::cout << part.name << ": " << wl::to_text(part.drop.typical, "V") << ", "
                  << wl::to_text(part.peak_temperature, "degC") << ", " << wl::to_text(part.verdict) << '\n';

    std::cout << "loop takes " << wl::to_text(found.total_drop.typical, "V") << ", arc gets "
              << wl::to_text(found.arc_voltage.typical, "V") << ", weakest: " << found.weakest().name << '\n';
    for (const wl::remedy& fix : wl::remedies_for(bench))
        std::cout << fix.what << ": gains " << wl::to_text(fix.volts_regained, "V") << ", cools "
                  << wl::to_text(fix.cooled_by, "K") << '\n';
    for (const std::string& caution : found.cautions) std::cout << "! " << caution << '\n';
}
