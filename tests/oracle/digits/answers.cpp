// Whole answers, printed with all digits: one line each for variants.sh to compare between compilers. A small shop that
// welds farm gates and tanks.
#include <cstdio>
#include <string>
#include <vector>

#include <weldloop/weldloop.hpp>

namespace {

namespace wl = weldloop;
using namespace wl::literals;

void put(const std::string& what, double value)
{
    std::printf("%s 1 %.17g 0\n", what.c_str(), value);
}
template <class Quantity>
void put(const std::string& what, const wl::band<Quantity>& b)
{
    put(what + "_low", b.low.value());
    put(what, b.typical.value());
    put(what + "_high", b.high.value());
}

// Stainless tanks by tungsten arc: a torch on a coupling, a screw clamp.
wl::station tank_bench()
{
    wl::station out{.name = "tank bench",
                    .job = {.process = wl::process::gtaw, .current = 180_A, .duty = wl::duty_cycle::of(3_min, 5_min)},
                    .where = {.air = 20_degC}};
    out.path = {wl::welding_cable(wl::square_mm(25), 6_m).named("torch lead"),
                wl::coupling("coupling", wl::square_mm(25)),
                wl::tig_torch("torch", 4_m),
                wl::arc{},
                wl::work_connection{.clamp = wl::screw_clamp(200_A),
                                    .onto = wl::stainless_steel,
                                    .surface = wl::surface_state::oxidized,
                                    .name = "clamp"},
                wl::crimped_lug("lug", wl::square_mm(35)),
                wl::welding_cable(wl::square_mm(35), 8_m).named("work lead")};
    return out;
}

// The gate's clamp and a second one on its table share the current.
wl::station gate_bench()
{
    wl::station out{.name = "gate bench",
                    .job = {.process = wl::process::smaw, .current = 160_A, .duty = wl::duty_cycle::of(35 / 100.0)},
                    .where = {.air = 25_degC}};
    const auto clamp = [](const char* name, wl::surface_state seat) {
        return wl::work_connection{
            .clamp = wl::spring_clamp(200_A), .onto = wl::mild_steel, .surface = seat, .name = name};
    };
    out.path = {wl::welding_cable(wl::square_mm(50), 15_m).named("electrode lead"),
                wl::electrode_holder("holder", 300_A),
                wl::arc{},
                wl::workpiece{.metal = wl::mild_steel, .mass = 30_kg, .thickness = 3_mm, .name = "gate"},
                clamp("gate clamp", wl::surface_state::light_rust),
                wl::junction{.name = "stud"},
                wl::welding_cable(wl::square_mm(50), 15_m).named("work lead")};
    out.ways = {{.name = "second clamp",
                 .from = "gate",
                 .to = "stud",
                 .path = {clamp("table clamp", wl::surface_state::spatter_covered),
                          wl::welding_cable(wl::square_mm(35), 4_m).named("jumper")}}};
    return out;
}

void put_assessment(const std::string& what, const wl::station& s)
{
    const wl::assessment found = wl::assess(s);
    put(what + "_drop", found.total_drop);
    for (const wl::part_result& p : found.parts) {
        const std::string part = what + "_" + std::to_string(p.place);
        put(part + "_drop", p.drop);
        put(part + "_current", p.current);
        put(part + "_peak", p.peak.typical.in_kelvin());
        put(part + "_peak_poor", p.peak.high.in_kelvin());
        put(part + "_exceeds", static_cast<double>(p.exceeds));
    }
}

}  // namespace

int main()
{
    const wl::cable lead = wl::welding_cable(wl::square_mm(50), 20_m);
    for (const double share : {0.001, 0.35, 0.6, 0.999, 1.0}) {
        const wl::ampacity rated = wl::ampacity_of(lead, {.air = 30_degC}, wl::duty_cycle::of(share));
        put("ampacity_" + std::to_string(share), rated.amps.value());
        put("surface_" + std::to_string(share), rated.surface_peak.in_kelvin());
    }
    put_assessment("tank", tank_bench());
    put_assessment("gate", gate_bench());

    const wl::grip_forecast life = wl::grip_over_time(
        {.clamp = wl::spring_clamp(300_A), .onto = wl::mild_steel}, wl::welding_cable(wl::aught(2), 30_ft),
        {.current = 300_A, .duty = wl::duty_cycle::of(6_min, 10_min)}, {.air = 30_degC}, 2000_h);
    put("grip_left", static_cast<double>(life.grip_left));
    put("grip_left_low", static_cast<double>(life.grip_left_low));

    const wl::fault_search search =
        wl::locate_fault(tank_bench(), {wl::reading{.across = "clamp", .volts = 0.4_V, .current = 178_A},
                                        wl::reading{.across = "lug", .volts = 0.02_V, .current = 178_A}});
    put("fault_none", static_cast<double>(search.none));
    for (const wl::suspected_part& p : search.parts) {
        std::string name = "fault_" + p.name;
        for (char& c : name)
            if (c == ' ') c = '_';
        put(name, static_cast<double>(p.probability));
    }
}
