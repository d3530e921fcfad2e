// The weld got worse: millivolts read across the parts of a trailer bench while it welds, and the part at fault.
//     g++ -std=c++20 -O2 -I include examples/scripts/worse_weld.cpp
#include <cmath>
#include <iostream>
#include <vector>

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
    std::cout << "== worse_weld\n";
    std::cout.precision(4);
    wl::station bench{
        .name = "trailer bench",
        .job = {.process = wl::process::gmaw, .current = 220_A, .duty = wl::duty_cycle::of(6_min, 10_min)}};
    bench.path = {wl::welding_cable(wl::aught(1), 40_ft).named("feeder lead"),
                  wl::wire_gun("gun", 10_ft),
                  wl::arc{},
                  wl::work_connection{.clamp = wl::screw_clamp(300_A), .onto = wl::mild_steel, .name = "work clamp"},
                  wl::crimped_lug("clamp lug", wl::aught(1)),
                  wl::welding_cable(wl::aught(1), 40_ft).named("work lead")};
    const std::vector<wl::reading> read{wl::reading{.across = "feeder lead", .volts = 1.05_V, .current = 218_A},
                                        wl::reading{.across = "work clamp", .volts = 0.022_V, .current = 218_A},
                                        wl::reading{.across = "clamp lug", .volts = 0.06_V, .current = 218_A},
                                        wl::reading{.across = "work lead", .volts = 1.06_V, .current = 218_A}};
    const wl::fault_search answer = wl::locate_fault(bench, {read.begin(), read.end()});
    for (const wl::suspected_part& part : answer.parts)
        if (part.probability > 0.05)
            std::cout << part.name << ": at fault with " << wl::to_text(part.probability) << ", likeliest "
                      << part.condition << "\n  cure: " << part.remedy.what << '\n';
    if (answer.next)
        std::cout << "read next: " << wl::to_text(answer.next->quantity) << " of " << answer.next->across << '\n';

    // 60 mV/218 A
    const wl::finding lug = wl::diagnose(bench, {read[2]}).front();
    std::cout << "a sound lug here has " << wl::to_text(lug.expected.low, "uohm") << " to "
              << wl::to_text(lug.expected.high, "uohm") << '\n';
    figure("this one has [uohm]", wl::number_in(lug.measured, "uohm"), 0.06 / 218.0 * 1e6, 0.1);
    // 40 ft of 1/0 (53.5 mm2), 5 % lay, 2 % of the standard, copper at 50 degC: 218 A rho L/A
    const double lead = 218.0 * 17.241e-9 * 12.19 * 1.05 * 1.02 * (1.0 + 0.00393 * 30.0) / 53.5e-6;
    figure("a sound lead takes [V]",
           wl::number_in(wl::drop_of(wl::welding_cable(wl::aught(1), 40_ft), 218_A, 50_degC), "V"), lead, 0.5);
    return apart == 0 ? 0 : 1;
}
