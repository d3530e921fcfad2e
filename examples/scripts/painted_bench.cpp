// Why does a painted bench fail: the same work clamp on paint, on paint its teeth have pierced, on bright steel.
//     g++ -std=c++20 -O2 -I include examples/scripts/painted_bench.cpp
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

int main()
{
    std::cout << "== painted_bench\n";
    std::cout.precision(4);
    wl::station bench{
        .name = "gate bench",
        .job = {.process = wl::process::gmaw, .current = 200_A, .duty = wl::duty_cycle::of(6_min, 10_min)}};
    const wl::work_clamp clamp = wl::spring_clamp(300_A);
    for (const wl::surface_state seat :
         {wl::surface_state::painted_unbroken, wl::surface_state::painted_pierced, wl::surface_state::clean}) {
        bench.path = {
            wl::welding_cable(wl::aught(1), 30_ft).named("feeder lead"), wl::wire_gun("gun", 10_ft), wl::arc{},
            wl::work_connection{.clamp = clamp, .onto = wl::mild_steel, .surface = seat, .name = "work clamp"},
            wl::welding_cable(wl::aught(1), 30_ft).named("work lead")};
        const wl::assessment found = wl::assess(bench);
        std::cout << wl::to_text(seat) << ": ";
        for (const wl::part_result& part : found.parts) {
            if (part.kind != wl::part_kind::work_connection) continue;
            std::cout << wl::to_text(part.verdict) << '\n';
            if (!found.conducts) continue;
            std::cout << "  clamp takes " << wl::to_text(part.drop.typical, "V") << ", in a poor case "
                      << wl::to_text(part.drop.high, "V") << "; its spots get to "
                      << wl::to_text(part.hottest_spot->typical, "degC") << "; exceeds a limit in "
                      << wl::to_text(part.exceeds) << " of cases\n";
        }
        for (const wl::loop_finding& f : found.findings) std::cout << "  " << f.text << '\n';
    }
    // clean, cold: brass on steel K 3000, m 0.7, under its force, both jaws side by side
    const wl::contact jaw{.metals = {clamp.jaw, wl::mild_steel}, .force = clamp.force};
    const double newton = wl::number_in(clamp.force, "N");
    figure("one clean jaw has typically [uohm]", wl::number_in(wl::contact_resistance_of(jaw).typical, "uohm"),
           3000.0 / std::pow(0.102 * newton, 0.7), 0.5);
    return apart == 0 ? 0 : 1;
}
