// Whole loops beside programs on plain arrays that call nothing of the library, again and again, to be counted by
// bench/count.sh: counted_loops <what> <how many>; `check` compares what both answer and fails where they are apart.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <initializer_list>
#include <string_view>
#include <utility>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/literals.hpp>

#include "gate_bench.hpp"
#include "plain_loop.hpp"
#include "plain_loop_case.hpp"

namespace {

using namespace weldloop;
using namespace weldloop::literals;

// A clamp on its work with its cable, current all the time.
station clamp_and_cable()
{
    station s{.name = "clamp and cable",
              .job = {.process = process::gmaw, .current = 240_A, .duty = duty_cycle::continuous()},
              .where = {.air = 30_degC}};
    s.path = {
        crimped_lug("output lug", square_mm(70)), arc{},
        work_connection{
            .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::oxidized, .name = "clamp"},
        welding_cable(square_mm(70), 10_m).named("work lead")};
    return s;
}

// A station, and the numbers its twin is given.
struct twinned {
    station described;
    plain::loop_numbers numbers;

    explicit twinned(const station& s) : described(s)
    {
        detail::loop_network net(s, checked_arc_index(s));
        net.set(scatter::typical);
        numbers = plain::numbers_of(net);
    }
    [[nodiscard]] plain::loop_period plain_period() const
    {
        plain::loop twin(numbers);
        const duty_cycle& duty = described.job.duty;
        return duty.is_continuous() ? twin.steady() : twin.settled(duty.on().value(), duty.rest().value());
    }
    // Whether both answer the same; the hottest place to 0.01 K, the drop to a millionth.
    [[nodiscard]] bool agree() const
    {
        constexpr double by_kelvin = 0.01, by_share = 1e-6;
        const loop_state ours = solve_loop(described);
        const plain::loop_period twins = plain_period();
        double volts = 0, hottest = 0;
        for (const part_state& p : ours.parts) {
            volts += (p.drop - p.tip_drop - p.extension_drop).value();
            hottest = std::max(hottest, p.peak.in_kelvin());
        }
        const double twins_volts = twins.watts / described.job.current.value(),
                     twins_hottest = numbers.air + *std::max_element(twins.peak.begin(), twins.peak.end());
        const bool same =
            std::fabs(volts / twins_volts - 1) <= by_share && std::fabs(hottest - twins_hottest) <= by_kelvin;
        if (!same)
            std::printf("%s: %.9g V and %.6f K, its twin %.9g V and %.6f K\n", described.name.c_str(), volts, hottest,
                        twins_volts, twins_hottest);
        return same;
    }
};

template <class F>
double least_seconds(int rounds, const F& f)
{
    double least = 1e9;
    for (int k = 0; k < rounds; ++k) {
        const auto start = std::chrono::steady_clock::now();
        f();
        least = std::min(least, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    }
    return least;
}

// name, microseconds of the library, of the twin; and of marches, with the hottest rise they find [K]
void print_times(const twinned& clamp, const twinned& steady, const twinned& loop)
{
    constexpr double micro = 1e6;
    volatile double sink = 0;
    const auto hottest = [](const plain::loop_period& p) { return *std::max_element(p.peak.begin(), p.peak.end()); };
    for (const auto& [name, t] : {std::pair{"clamp", &clamp}, std::pair{"steady", &steady}, std::pair{"loop", &loop}}) {
        double ours = 1e9, twins = 1e9;
        for (int k = 0; k < 20; ++k) {  // by turns
            ours = std::min(ours, least_seconds(1, [&, t = t] { sink = solve_loop(t->described).total_drop.value(); }));
            twins = std::min(twins, least_seconds(1, [&, t = t] { sink = t->plain_period().watts; }));
        }
        std::printf("%s %.1f %.1f %.3f\n", name, micro * ours, micro * twins, hottest(t->plain_period()));
    }
    const duty_cycle& duty = loop.described.job.duty;
    for (const double length : {10.0, 2.0, 0.5}) {
        plain::loop_period found;
        const double took = least_seconds(
            3, [&] { found = plain::loop(loop.numbers).marched(duty.on().value(), duty.rest().value(), length); });
        std::printf("marched_%g_s %.1f - %.3f\n", length, micro * took, hottest(found));
    }
}

// The numbers of a loop for solvers of another make, one JSON object: bench/by_ode_suite.py reads it. Drops of contacts
// are points 4 K apart, by the rise of the metal and, where that counts, of what grips.
void print_numbers(const twinned& t)
{
    const plain::loop_numbers& n = t.numbers;
    plain::loop law(n);
    const char* comma = "";
    const auto begin = [&comma](const char* name) {
        std::printf("%s\"%s\": [", comma, name);
        comma = "";
    };
    const auto end = [&comma] {
        std::printf("]\n");
        comma = ", ";
    };
    const auto row = [&comma](std::initializer_list<double> numbers) {
        std::printf("%s[", comma);
        comma = "";
        for (const double x : numbers) {
            std::printf("%s%.17g", comma, x);
            comma = ", ";
        }
        std::printf("]");
    };
    const duty_cycle& duty = t.described.job.duty;
    std::printf("{\"air\": %.17g, \"on\": %.17g, \"rest\": %.17g", n.air, duty.on().value(), duty.rest().value());
    comma = ", ";
    begin("capacity");
    for (const double c : n.capacity) row({c});
    end();
    begin("links");
    for (const auto& l : n.links) row({static_cast<double>(l.a), static_cast<double>(l.b), l.g});
    end();
    begin("sinks");
    for (const auto& s : n.sinks) row({static_cast<double>(s.a), s.g, s.far, s.while_on ? 1.0 : 0.0});
    end();
    begin("surfaces");
    for (const auto& s : n.surfaces) row({static_cast<double>(s.a), s.size, static_cast<double>(s.table)});
    end();
    begin("losses");  // loss over rise at rises (i/2)^2, table after table
    for (const auto& table : n.tables)
        for (std::size_t i = 1; i < 66; ++i) row({table[i]});
    end();
    begin("lines");
    for (const auto& l : n.lines) row({static_cast<double>(l.a), l.at_zero, l.slope});
    for (const auto& f : n.fixed_heats) row({static_cast<double>(f.a), f.watts, 0});
    end();
    begin("contacts");
    for (const auto& c : n.contacts)
        row({static_cast<double>(c.in), static_cast<double>(c.with), static_cast<double>(c.follows),
             static_cast<double>(c.to), static_cast<double>(c.also_to), c.share, c.also_share, c.amps,
             static_cast<double>(c.alike)});
    end();
    begin("drops");  // 40 by 40 points of every contact
    for (std::size_t k = 0; k < n.contacts.size(); ++k)
        for (int i = 0; i < 40; ++i)
            for (int j = 0; j < 40; ++j) row({law.drop_at(k, 4.0 * i, 4.0 * j)});
    end();
    begin("crossings");
    for (const auto& l : n.crossings)
        row({static_cast<double>(l.a), static_cast<double>(l.b), l.weight, static_cast<double>(l.of), l.faces});
    end();
    begin("layers");
    for (const auto& l : n.layers)
        row({static_cast<double>(l.a), static_cast<double>(l.b), l.by_mean[0], l.by_mean[8]});
    end();
    std::printf("}\n");
}

}  // namespace

int main(int argc, char** argv)
{
    const std::string_view what = argc > 1 ? argv[1] : "";
    station steady_gate = bench::gate_bench();
    steady_gate.job.duty = duty_cycle::continuous();
    const twinned clamp(clamp_and_cable()), steady(steady_gate), loop(bench::gate_bench());
    if (what == "check") {
        const bool same[] = {clamp.agree(), steady.agree(), loop.agree()};
        return same[0] && same[1] && same[2] ? 0 : 1;
    }
    if (what == "numbers") return print_numbers(loop), 0;
    if (what == "times") return print_times(clamp, steady, loop), 0;
    const bool is_plain = what.starts_with("plain_");
    const std::string_view name = is_plain ? what.substr(6) : what;
    const twinned* const asked = name == "clamp"    ? &clamp
                                 : name == "steady" ? &steady
                                 : name == "loop"   ? &loop
                                                    : nullptr;
    if (argc != 3 || asked == nullptr) {
        std::fputs("counted_loops check|times|numbers, or counted_loops [plain_]clamp|steady|loop <how many>\n",
                   stderr);
        return 2;
    }
    const auto count = std::strtoul(argv[2], nullptr, 10);
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i)
        sum += is_plain ? asked->plain_period().watts : solve_loop(asked->described).total_drop.value();
    std::printf("%.14g\n", sum);
    return 0;
}
