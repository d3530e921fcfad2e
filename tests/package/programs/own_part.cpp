// A robot cell whose positioner carries the current over a slip ring that is known only by its maker's test: 0.15 to
// 0.30 V at 300 A.
#include <iostream>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    wl::station cell{
        .name = "trailer axle cell",
        .job = {.process = wl::process::gmaw, .current = 300_A, .duty = wl::duty_cycle::of(8_min, 10_min)},
        .where = {.air = 35_degC},
    };
    cell.path = {
        wl::welding_cable(wl::square_mm(95), 8_m).named("feeder lead"),
        wl::wire_gun("gun", 4_m),
        wl::arc{},
        wl::workpiece{.metal = wl::mild_steel,
                      .mass = 12_kg,
                      .thickness = 8_mm,
                      .name = "axle",
                      .stays = 4_min,
                      .pieces_per_hour = 12},
        wl::measured_part{.name = "slip ring",
                          .word = "slip ring",
                          .drop = wl::band<wl::voltage>{0.15_V, 0.20_V, 0.30_V},
                          .at = 300_A,
                          .law = wl::drop_law::constant,
                          .limit = 90_degC,
                          .mass = 2_kg,
                          .cooling_area = 0.03_m2},
        wl::welding_cable(wl::square_mm(95), 10_m).named("work lead"),
    };
    for (const wl::part_result& part : wl::assess(cell).parts)
        std::cout << part.name << ": " << wl::to_text(part.drop.typical, "V") << ", "
                  << wl::to_text(part.peak.typical, "degC") << ", " << wl::to_text(part.verdict) << '\n';
}
