// How effort grows with the size of what is asked: growth <what> <size> asks once and prints seconds of the processor
// and the most memory it held [MB]. bench/tables.sh runs it over sizes; counted by callgrind it also gives
// instructions. growth sweep <stations> assesses a plant's stations on one thread and on two and prints how many times
// as fast two are: by the clock on the wall, and in equal processor time.
#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include <sys/resource.h>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/lead/ampacities.hpp>
#include <weldloop/rating/remedies.hpp>

#include "gate_bench.hpp"

namespace {

using namespace weldloop;
using namespace weldloop::literals;

// Lead after lead, coupled: `parts` of them with the gun, the arc and the clamp.
station long_loop(std::size_t parts)
{
    station s{.name = "long loop",
              .job = {.process = process::gmaw, .current = 200_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 30_degC}};
    const auto couple = [&s](std::size_t until) {
        for (std::size_t i = s.path.size(); i < until; ++i) {
            const std::string name = std::to_string(i);
            if (i % 2 == 0)
                s.path.push_back(coupling("coupling " + name, aught(2)));
            else
                s.path.push_back(welding_cable(aught(2), 20_ft).named("lead " + name));
        }
    };
    couple(parts / 2);
    s.path.push_back(wire_gun("gun", 10_ft));
    s.path.push_back(arc{});
    s.path.push_back(work_connection{
        .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::light_rust, .name = "clamp"});
    couple(parts);
    return s;
}

// The same as the text of a station file.
std::string long_file(std::size_t parts)
{
    std::string out = "name = \"long loop\"\n[job]\nprocess = \"gmaw\"\ncurrent = \"200 A\"\nduty = \"60 %\"\n"
                      "[surroundings]\nair = \"30 degC\"\n";
    const auto couple = [&out](std::size_t from, std::size_t until) {
        for (std::size_t i = from; i < until; ++i) {
            const std::string name = std::to_string(i);
            out += i % 2 == 0 ? "[[path]]\npart = \"coupling\"\nname = \"coupling " + name + "\"\nsize = \"2/0 AWG\"\n"
                              : "[[path]]\npart = \"cable\"\nname = \"lead " + name +
                                    "\"\nsize = \"2/0 AWG\"\nlength = \"20 ft\"\n";
        }
    };
    couple(0, parts / 2);
    out += "[[path]]\npart = \"gun\"\nname = \"gun\"\nlength = \"10 ft\"\n[[path]]\npart = \"arc\"\n"
           "[[path]]\npart = \"work clamp\"\nname = \"clamp\"\nclamp = \"spring clamp\"\nrated = \"300 A\"\n"
           "onto = \"mild steel\"\nsurface = \"light rust\"\n";
    couple(parts / 2 + 3, parts);
    return out;
}

// Characters of the reports on a station file: text, JSON and page; with remedies and forecasts as the program writes
// them, or of the assessment alone.
double reported(const std::string& file, bool with_answers)
{
    const described_station d = described_station_from_toml(file, "long.toml");
    const assessment found = assess(d.station, d.service);
    std::vector<remedy> remedies;
    report_request asked{.detail = report_detail::whole, .units = d.units};
    if (with_answers) {
        remedies = remedies_for(d.station);
        asked.answers = answers_of(d.station, found, d.observations);
    }
    const std::string text = report_text(d.station, found, remedies, asked),
                      json = report_json(d.station, found, remedies, asked),
                      page = report_page(d.station, found, remedies, asked);
    return static_cast<double>(text.size() + json.size() + page.size());
}

// A table with several clamps and cables back to one stud.
station many_ways(std::size_t ways)
{
    station s{.name = "many ways",
              .job = {.process = process::gmaw, .current = 200_A, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 30_degC}};
    const auto clamp = [](const std::string& name) {
        return work_connection{
            .clamp = spring_clamp(300_A), .onto = mild_steel, .surface = surface_state::light_rust, .name = name};
    };
    s.path = {
        wire_gun("gun", 10_ft),
        arc{},
        workpiece{.metal = mild_steel, .mass = in_si<mass>(40.0), .thickness = in_si<length>(0.005), .name = "gate"},
        clamp("clamp"),
        welding_cable(aught(1), 20_ft).named("lead"),
        junction{.name = "stud"}};
    for (std::size_t w = 0; w < ways; ++w) {
        const std::string name = std::to_string(w + 1);
        s.ways.push_back(
            {.name = "way " + name,
             .from = "gate",
             .to = "stud",
             .path = {clamp("clamp " + name),
                      welding_cable(aught(1), in_si<length>(5.0 + static_cast<double>(w))).named("lead " + name)}});
    }
    return s;
}

double answer_to(std::string_view what, std::size_t size)
{
    if (what == "parts") return assess(long_loop(size)).total_drop.typical.value();
    if (what == "reported_parts") return reported(long_file(size), false);
    if (what == "answered_parts") return reported(long_file(size), true);
    if (what == "solved_parts") return solve_loop(long_loop(size)).total_drop.value();
    if (what == "ways") return assess(many_ways(size)).total_drop.typical.value();
    if (what == "stations") {
        double sum = 0;
        station s = bench::gate_bench();
        for (std::size_t i = 0; i < size; ++i) {
            s.job.current = in_si<current>(180.0 + static_cast<double>(i % 60));
            sum += assess(s).total_drop.typical.value();
        }
        return sum;
    }
    if (what == "segments") {  // of a programme of a lead's currents
        std::vector<heating_segment> programme;
        for (std::size_t i = 0; i < size; ++i)
            programme.push_back({in_si<current>(i % 2 == 0 ? 200.0 + static_cast<double>(i % 7) : 0.0),
                                 in_si<duration>(60.0 + static_cast<double>(i % 5))});
        return heating_of_programme(welding_cable(aught(2), 20_ft), {}, programme).conductor_peak.in_kelvin();
    }
    if (what == "leads") {
        std::vector<cable> leads;
        for (std::size_t i = 0; i < size; ++i)
            leads.push_back(welding_cable(square_mm(10.0 + static_cast<double>(i % 170)), 20_m));
        return ampacities_of(leads, {}).back().value();
    }
    if (what == "nothing") return 0;  // what starting the program takes
    std::fputs(
        "growth sweep|nothing|parts|reported_parts|answered_parts|solved_parts|ways|stations|segments|leads <size>\n",
        stderr);
    std::exit(2);
}

// Seconds by the clock and of the processor.
struct taken {
    double clock, processor;
};

// A plant's stations assessed by so many threads, each of which takes the next that nobody has.
taken swept(std::size_t stations, std::size_t threads)
{
    std::atomic<std::size_t> next = 0;
    std::vector<double> drops(stations);
    const auto work = [&] {
        station s = bench::gate_bench();
        for (std::size_t i = next++; i < stations; i = next++) {
            s.job.current = in_si<current>(180.0 + static_cast<double>(i % 60));
            drops[i] = assess(s).total_drop.typical.value();
        }
    };
    const std::clock_t processor = std::clock();
    const auto clock = std::chrono::steady_clock::now();
    std::vector<std::thread> others;
    for (std::size_t t = 1; t < threads; ++t) others.emplace_back(work);
    work();
    for (std::thread& t : others) t.join();
    return {std::chrono::duration<double>(std::chrono::steady_clock::now() - clock).count(),
            static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC};
}

void print_sweep(std::size_t stations)
{
    constexpr int rounds = 3;
    taken one{1e9, 1e9}, two{1e9, 1e9};
    for (int k = 0; k < rounds; ++k)  // by turns
        for (const std::size_t threads : {1u, 2u}) {
            const taken now = swept(stations, threads);
            taken& least = threads == 1 ? one : two;
            least = {std::min(least.clock, now.clock), std::min(least.processor, now.processor)};
        }
    std::printf("%.2f %.2f\n", one.clock / two.clock, 2.0 * one.processor / two.processor);
}

}  // namespace

int main(int argc, char** argv)
{
    const std::string_view what = argc == 3 ? argv[1] : "";
    if (what == "sweep") return print_sweep(std::strtoul(argv[2], nullptr, 10)), 0;
    const std::clock_t start = std::clock();
    const double answer = answer_to(what, argc == 3 ? std::strtoul(argv[2], nullptr, 10) : 0);
    const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    rusage used{};
    getrusage(RUSAGE_SELF, &used);
    std::printf("%.4f %.1f %.10g\n", seconds, static_cast<double>(used.ru_maxrss) / 1024, answer);
    return 0;
}
