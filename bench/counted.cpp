// What is asked of whole loops, again and again, to be counted by bench/count.sh: counted <what> <how many>.
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <variant>
#include <vector>

#include <weldloop/core/literals.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/life/grip_map.hpp>
#include <weldloop/life/joint_drift.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>

#include "gate_bench.hpp"

namespace {

using namespace weldloop;
using namespace weldloop::literals;

template <class F>
double sum_of(std::size_t count, const F& rating)
{
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i) sum += rating(i);
    return sum;
}

work_connection clamp_on_steel(surface_state state)
{
    return {.clamp = spring_clamp(300_A), .onto = mild_steel, .surface = state};
}

}  // namespace

int main(int argc, char** argv)
{
    if (argc != 3) {
        std::fputs("counted judged|assessed|remedies|page|march|map|drift|fault "
                   "<how many>\n",
                   stderr);
        return 2;
    }
    const std::string_view what = argv[1];
    const auto count = static_cast<std::size_t>(std::strtoul(argv[2], nullptr, 10));
    const station gate = bench::gate_bench();
    const cable clamped = welding_cable(square_mm(70), 10_m);
    const load on_and_off{.current = 300_A, .duty = duty_cycle::of(6_min, 10_min)};
    double sum = 0;
    if (what == "judged")
        sum = sum_of(count, [&](std::size_t) {
            return detail::judged(detail::solved_station(gate)).total_drop.typical.value();
        });
    else if (what == "assessed")
        sum = sum_of(count, [&](std::size_t) { return assess(gate).total_drop.typical.value(); });
    else if (what == "march")
        sum = sum_of(count, [&](std::size_t) {
            return static_cast<double>(
                grip_over_time(clamp_on_steel(surface_state::oxidized), clamped, on_and_off, {.air = 30_degC}, 2000_h)
                    .grip_left);
        });
    else if (what == "drift")
        sum = sum_of(count,
                     [&](std::size_t) { return joints_over_time(gate, 2000_h).joints.front().poor.resistance_ratio; });
    else if (what == "map") {
        std::vector<current> currents;
        std::vector<double> factors;
        for (int i = 0; i < 20; ++i) currents.push_back((0.4 + 1.3 * i / 19.0) * 300_A);
        for (int i = 0; i < 12; ++i) factors.push_back(0.5 * std::pow(200.0, i / 11.0));
        const clamp_place asked{clamp_on_steel(surface_state::clean), clamped, on_and_off.duty, {.air = 30_degC}};
        sum = sum_of(count, [&](std::size_t) {
            return static_cast<double>(grip_map_of(asked, currents, factors, 2000_h).cells.size());
        });
    } else if (what == "fault") {
        const loop_state state = solve_loop(gate);
        std::vector<observation> nine;
        for (std::size_t i = 0; i < gate.path.size(); ++i)
            if (!std::holds_alternative<arc>(gate.path[i]))
                nine.push_back(
                    reading{.across = name_of(gate, i),
                            .volts = state.parts[i].drop - state.parts[i].tip_drop - state.parts[i].extension_drop,
                            .current = gate.job.current});
        sum = sum_of(count, [&](std::size_t) { return static_cast<double>(locate_fault(gate, nine).none); });
    } else if (what == "remedies")
        sum = sum_of(count, [&](std::size_t) { return static_cast<double>(remedies_for(gate).size()); });
    else if (what == "page") {
        const assessment found = assess(gate);
        const std::vector<remedy> fixes = remedies_for(gate);
        sum = sum_of(count, [&](std::size_t) { return static_cast<double>(report_page(gate, found, fixes).size()); });
    } else
        return 2;
    std::printf("%.14g\n", sum);
    return 0;
}
