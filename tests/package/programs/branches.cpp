// A gate on a table with the usual clamp, a second clamp on the gate itself, and a hoist chain that nobody meant to
// carry current.
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    wl::station bench{
        .name = "gate bench 3",
        .job = {.process = wl::process::gmaw, .current = 230_A, .duty = wl::duty_cycle::of(6_min, 10_min)},
        .where = {.air = 30_degC},
    };
    bench.path = {
        wl::welding_cable(wl::aught(1), 25_ft).named("feeder lead"),
        wl::wire_gun("gun", 12_ft),
        wl::arc{},
        wl::workpiece{.metal = wl::mild_steel, .mass = 30_kg, .thickness = 3_mm, .name = "gate"},
        wl::contact{.metals = {wl::mild_steel, wl::mild_steel},
                    .force = 180_N,
                    .surface = wl::surface_state::spatter_covered,
                    .name = "gate on table"},
        wl::work_connection{.clamp = wl::spring_clamp(300_A),
                            .onto = wl::mild_steel,
                            .surface = wl::surface_state::light_rust,
                            .name = "table clamp"},
        wl::welding_cable(wl::awg(1), 30_ft).named("work lead"),
        wl::junction{"return stud"},
        wl::crimped_lug("return lug", wl::awg(1)),
    };
    bench.ways = {
        {.name = "clamp on the gate",
         .from = "gate",
         .to = "return stud",
         .path = {wl::work_connection{.clamp = wl::screw_clamp(300_A), .onto = wl::mild_steel, .name = "gate clamp"},
                  wl::welding_cable(wl::awg(1), 30_ft).named("second work lead")}},
        {.name = "hoist chain",
         .from = "gate",
         .to = "return stud",
         .kind = wl::way_kind::stray,
         .path = {wl::measured_part{.name = "chain", .word = "chain", .drop = wl::exactly(2.0_V), .at = 20_A},
                  wl::welding_cable(wl::square_mm(10), 20_m).named("earth wire")}},
    };

    const wl::assessment found = wl::assess(bench);
    for (const wl::way_result& way : found.ways)
        std::cout << way.name << ": " << wl::to_text(way.current.typical, "A") << ", " << wl::to_text(way.share)
                  << (way.kind == wl::way_kind::stray ? ", a fault to be cured\n" : "\n");
    for (const wl::part_result& part : found.parts)
        std::cout << (part.way.empty() ? "" : part.way + ": ") << part.name << ": "
                  << wl::to_text(part.peak.typical, "degC") << ", " << wl::to_text(part.verdict) << '\n';
}
