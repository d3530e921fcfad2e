#pragma once
/// @file
/// Stations whose ways share the current, beside a circuit simulator: tests/oracle/ways_circuit.

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/reference_table.hpp"

namespace weldloop::test {

/// Where decks and outputs lie.
inline std::filesystem::path ways_folder()
{
    return std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "ways_circuit";
}
/// A file of them.
inline reference_table kept_ways(const std::string& name)
{
    std::ifstream in(ways_folder() / name, std::ios::binary);
    return {name, std::string{std::istreambuf_iterator<char>(in), {}}};
}

/// A part of plain resistance.
inline measured_part ohmic(const std::string& name, double milliohms)
{
    return {.name = name, .drop = exactly(in_si<voltage>(0.1 * milliohms)), .at = 100_A};
}

/// A way beside the path.
inline way over(const std::string& name, const std::string& from, const std::string& to, std::vector<path_part> path)
{
    return {.name = name, .from = from, .to = to, .path = std::move(path)};
}

/// A gate on a table, clamped at the table, a second clamp on the gate, a hoist chain still hooked.
inline station gate_station(const std::string& name, double amps, surface_state surface)
{
    station s{.name = name,
              .job = {.process = process::gmaw, .current = in_si<current>(amps), .duty = duty_cycle::continuous()},
              .where = {.air = 30_degC}};
    s.path = {
        welding_cable(aught(1), 8_m, resistance_choice::nominal).named("feeder lead"),
        arc{},
        workpiece{.metal = mild_steel, .mass = 30_kg, .thickness = 3_mm, .name = "gate"},
        contact{.metals = {mild_steel, mild_steel}, .force = 180_N, .surface = surface, .name = "gate on table"},
        work_connection{.clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface, .name = "table clamp"},
        welding_cable(awg(1), 9_m, resistance_choice::nominal).named("work lead"),
        junction{"return stud"},
        crimped_lug("return lug", awg(1))};
    s.ways = {over("clamp on the gate", "gate", "return stud",
                   {work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "gate clamp"},
                    welding_cable(awg(1), 9_m, resistance_choice::nominal).named("second work lead")}),
              over("hoist chain", "gate", "return stud",
                   {ohmic("chain", 100.0), welding_cable(square_mm(10), 20_m).named("earth wire")})};
    s.ways[1].kind = way_kind::stray;
    return s;
}

}  // namespace weldloop::test
