#pragma once
// A station with every kind of thing in its loop, for the benchmarks of whole loops.
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace bench {

using namespace weldloop;

inline station gate_bench()
{
    station s{.name = "gate bench",
              .job = {.process = process::gmaw, .current = 240_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 32_degC}};
    s.path = {
        crimped_lug("output lug", aught(2)),
        welding_cable(aught(2), 50_ft).named("feeder"),
        wire_gun("gun", 10_ft),
        arc{},
        contact{.metals = {mild_steel, mild_steel},
                .force = 120_N,
                .surface = surface_state::spatter_covered,
                .name = "gate on table"},
        plate{.metal = mild_steel, .length = 4_ft, .width = 3_ft, .thickness = 0.5_in, .name = "table"},
        work_connection{
            .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::oxidized, .name = "clamp"},
        crimped_lug("clamp lug", awg(1)).with_missing_strands(0.2),
        welding_cable(awg(1), 30_ft).named("work lead"),
        crimped_lug("return lug", awg(1))};
    return s;
}

}  // namespace bench
