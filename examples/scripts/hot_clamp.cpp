// My clamp is hot: what do I look at first? A bench sound and in four poor states, and the millivolts that tell them
// apart.
//     g++ -std=c++20 -O2 -I include examples/scripts/hot_clamp.cpp
#include <cmath>
#include <iostream>

#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

static int apart = 0;  // figures that left their hand calculation
static void figure(const char* what, double found, double by_hand, double percent)
{
    if (!(std::fabs(found / by_hand - 1.0) <= percent / 100.0)) ++apart;
    std::cout << what << ": " << found << "; by hand " << by_hand << ", held to " << percent << " %\n";
}

static void judge(const char* state, const wl::work_connection& clamp, const wl::lug& lug)
{
    wl::station bench{
        .name = "gate bench",
        .job = {.process = wl::process::gmaw, .current = 250_A, .duty = wl::duty_cycle::of(6_min, 10_min)}};
    bench.path = {clamp, lug, wl::welding_cable(wl::aught(1), 30_ft).named("work lead")};
    bench.path.insert(bench.path.begin(),
                      {wl::welding_cable(wl::aught(1), 30_ft), wl::wire_gun("gun", 10_ft), wl::arc{}});
    const wl::assessment found = wl::assess(bench);
    const wl::part_result &at_clamp = found.parts[2], &at_lug = found.parts[3];
    std::cout << state << ": clamp " << wl::to_text(at_clamp.drop.typical, "mV") << ", jaws "
              << wl::to_text(at_clamp.places.front().peak.typical, "degC") << "; lug "
              << wl::to_text(at_lug.drop.typical, "mV") << ", "
              << wl::to_text(at_lug.places.front().peak.typical, "degC") << '\n';
}

int main()
{
    std::cout << "== hot_clamp\n";
    std::cout.precision(4);
    const wl::work_connection sound{.clamp = wl::spring_clamp(300_A), .onto = wl::mild_steel};
    const wl::lug lug = wl::crimped_lug("clamp lug", wl::aught(1));
    wl::work_connection rusty = sound, weak = sound, on_hot_work = sound;
    rusty.surface = wl::surface_state::light_rust;
    weak.grip_lost = 0.7;
    on_hot_work.preheat = 150_degC;
    judge("sound", sound, lug);
    judge("light rust under the jaws", rusty, lug);
    judge("7 tenths of the grip gone", weak, lug);
    judge("6 of 10 strands of the lug missing", sound, lug.with_missing_strands(0.6));
    judge("work kept at 150 degC", on_hot_work, lug);

    // brass on steel K 3000, m 0.7, under its force; light rust has typically five times that
    const wl::contact jaw{{sound.clamp.jaw, wl::mild_steel}, sound.clamp.force, wl::surface_state::light_rust};
    const double newton = wl::number_in(jaw.force, "N");
    figure("a jaw on light rust has typically [uohm]", wl::number_in(wl::contact_resistance_of(jaw).typical, "uohm"),
           5.0 * 3000.0 / std::pow(0.102 * newton, 0.7), 0.5);
    return apart == 0 ? 0 : 1;
}
