// The drops of settled series loops against a circuit simulator at the same resistances: tests/oracle/loop_circuit.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using weldloop::test::reference_table;

std::filesystem::path folder()
{
    return std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "loop_circuit";
}

reference_table kept(const std::string& name)
{
    std::ifstream in(folder() / name, std::ios::binary);
    return {name, std::string{std::istreambuf_iterator<char>(in), {}}};
}

// American leads have nominal resistance: the kept output was simulated with it.
std::vector<station> loops()
{
    station gates{.name = "gates",
                  .job = {.process = process::gmaw, .current = 230_A, .duty = duty_cycle::of(6_min, 10_min)},
                  .where = {.air = 34_degC}};
    gates.path = {
        crimped_lug("output lug", aught(1)),
        welding_cable(aught(1), 8_m, resistance_choice::nominal).named("feeder"),
        wire_gun("gun", 4_m),
        arc{},
        contact{.metals = {mild_steel, mild_steel},
                .force = 180_N,
                .surface = surface_state::oxidized,
                .name = "gate on table"},
        plate{.metal = mild_steel, .length = 1.5_m, .width = 0.8_m, .thickness = 10_mm, .name = "table"},
        work_connection{
            .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::light_rust, .name = "clamp"},
        crimped_lug("clamp lug", awg(1)).with_missing_strands(0.3),
        welding_cable(awg(1), 12_m, resistance_choice::nominal).named("work lead"),
        crimped_lug("return lug", awg(1))};
    station frames{.name = "frames",
                   .job = {.process = process::smaw, .current = 125_A, .duty = duty_cycle::of(0.35)},
                   .where = {.air = 22_degC}};
    frames.path = {crimped_lug("terminal", square_mm(50)),
                   welding_cable(square_mm(50), 10_m).named("electrode lead"),
                   electrode_holder("holder", 300_A),
                   arc{},
                   work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
                   welding_cable(square_mm(50), 10_m).named("work lead")};
    station pipes{.name = "pipes", .job = {.process = process::gtaw, .current = 160_A}, .where = {.air = 18_degC}};
    pipes.path = {tig_torch("torch", 4_m, torch_cooling::water),
                  arc{},
                  work_connection{.clamp = bolted_work_lug(square_mm(35)), .onto = mild_steel, .name = "lug"},
                  welding_cable(square_mm(35), 6_m).named("first lead"),
                  coupling("coupling", square_mm(35)),
                  welding_cable(square_mm(35), 6_m).named("second lead")};
    return {gates, frames, pipes};
}

TEST(LoopCircuit, DropsAreThoseOfOneSeriesCircuit)
{
    if (std::getenv("WELDLOOP_WRITE_LOOPS") != nullptr) {
        std::ofstream out(folder() / "resistances.csv");
        out << "# written by tests/circuit/loop_circuit_test.cpp with WELDLOOP_WRITE_LOOPS=1\nloop,amps,part,ohm\n";
        for (const station& s : loops()) {
            const loop_state state = solve_loop(s);
            for (std::size_t i = 0; i < s.path.size(); ++i)
                out << s.name << ',' << number_text(s.job.current.value(), 17) << ',' << i << ','
                    << (std::holds_alternative<arc>(s.path[i])
                            ? std::string("arc")
                            : number_text((state.parts[i].drop / s.job.current).value(), 17))
                    << '\n';
        }
    }
    const reference_table resistances = kept("resistances.csv"), outputs = kept("outputs.csv");
    ASSERT_EQ(resistances.rows().size(), outputs.rows().size());
    std::size_t row = 0;
    for (const station& s : loops()) {
        const loop_state state = solve_loop(s);
        ASSERT_EQ(state.outcome, loop_outcome::solved);
        double simulated_total = 0.0;
        for (std::size_t i = 0; i < s.path.size(); ++i, ++row) {
            const auto& simulated = outputs.rows().at(row);
            ASSERT_EQ(simulated.text("loop"), s.name);
            if (std::holds_alternative<arc>(s.path[i])) continue;
            EXPECT_NEAR(state.parts[i].drop.value(), simulated.number("drop_V"), 1e-6) << simulated.where();
            simulated_total += simulated.number("drop_V");
        }
        EXPECT_NEAR(state.total_drop.value(), simulated_total, 1e-6) << s.name;
    }
    EXPECT_EQ(row, outputs.rows().size());
}

}  // namespace
