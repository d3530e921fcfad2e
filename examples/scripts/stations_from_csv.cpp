// Many stations from one table: name, amperes, minutes in ten, metres one way, size, surface under the clamp.
//     g++ -std=c++20 -O2 -I include examples/scripts/stations_from_csv.cpp
#include <algorithm>
#include <cmath>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include <weldloop/core/parse.hpp>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

static int apart = 0;  // figures that left their hand calculation
static void figure(const char* what, double found, double by_hand, double percent)
{
    if (!(std::fabs(found / by_hand - 1.0) <= percent / 100.0)) ++apart;
    std::cout << what << ": " << found << "; by hand " << by_hand << ", held to " << percent << " %\n";
}

int main(int count, char** words)
{
    std::cout << "== stations_from_csv\n";
    std::cout.precision(4);
    std::ifstream table(count > 1 ? words[1] : "examples/scripts/stations.csv");
    std::string line, cell;
    if (!std::getline(table, line)) throw wl::bad_text_error("", 0, "a table with a heading, from the project's root");
    double first_lead = 0.0;
    for (int row = 0; std::getline(table, line); ++row) {
        std::vector<std::string> cells;
        for (std::istringstream in(line); std::getline(in, cell, ',');) cells.push_back(cell);
        if (cells.size() != 6) throw wl::bad_text_error(line, 0, "six cells");
        const auto* const seat = std::find_if(wl::all_surface_states.begin(), wl::all_surface_states.end(),
                                              [&](wl::surface_state s) { return wl::to_text(s) == cells[5]; });
        if (seat == wl::all_surface_states.end()) throw wl::bad_text_error(line, 0, "a known surface at the end");
        wl::station s{.name = cells[0],
                      .job = {.process = wl::process::gmaw,
                              .current = wl::parse<wl::current>(cells[1]),
                              .duty = wl::duty_cycle::of(wl::parse<wl::duration>(cells[2]), 10_min)}};
        const wl::cable lead =
            wl::welding_cable(wl::parse<wl::conductor_size>(cells[4]), wl::parse<wl::length>(cells[3]));
        s.path = {lead.named("feeder lead"), wl::wire_gun("gun", 3_m), wl::arc{},
                  wl::work_connection{
                      .clamp = wl::spring_clamp(300_A), .onto = wl::mild_steel, .surface = *seat, .name = "clamp"},
                  lead.named("work lead")};
        const wl::assessment found = wl::assess(s);
        std::cout << s.name << ": ";
        if (found.conducts) std::cout << wl::to_text(found.total_drop.typical, "V") << ", ";
        std::cout << "weakest " << found.weakest().name << ", " << wl::to_text(found.weakest().verdict) << '\n';
        if (row == 0) first_lead = wl::number_in(found.parts.front().drop.typical, "V");
    }
    // the first row by hand: 180 A, 10 m of 50 mm2 at 0.386 ohm/km, copper at about 45 degC
    figure("feeder lead of the first [V]", first_lead, 180.0 * 10e-3 * 0.386 * (1.0 + 0.00393 * 25.0), 3.0);
    return apart == 0 ? 0 : 1;
}
