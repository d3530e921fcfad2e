// Ten minutes with a voltmeter and a clamp-on meter: which part is at fault, how sure is that, and what should be read
// next?
#include <iostream>
#include <vector>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

int main()
{
    wl::station bench{
        .name = "frame jig 2",
        .job = {.process = wl::process::smaw, .current = 180_A, .duty = wl::duty_cycle::of(4_min, 10_min)},
        .where = {.air = 25_degC},
    };
    bench.path = {
        wl::crimped_lug("output lug", wl::awg(1)),
        wl::welding_cable(wl::awg(1), 15_m).named("electrode lead"),
        wl::electrode_holder("holder", 300_A),
        wl::arc{},
        wl::work_connection{.clamp = wl::screw_clamp(400_A), .onto = wl::mild_steel, .name = "work clamp"},
        wl::crimped_lug("clamp lug", wl::awg(1)),
        wl::welding_cable(wl::awg(1), 15_m).named("work lead"),
        wl::crimped_lug("return lug", wl::awg(1)),
    };

    const std::vector<wl::observation> meter{
        wl::reading{
            .across = "work clamp", .volts = 1.72_V, .current = 178_A, .to = "return lug"},  // the whole way back
        wl::reading{.across = "output lug",
                    .volts = 1.28_V,
                    .current = 181_A,
                    .to = "electrode lead",
                    .error = 20_mV},  // supply to holder
    };  // the way back takes about 0.47 V more than a sound one: the answer names its parts, the other side is sound

    const wl::fault_search found = wl::locate_fault(bench, meter);
    for (const auto& part : found.parts)
        std::cout << part.name << ": " << wl::to_text(part.probability) << ", " << part.condition
                  << ", do: " << part.remedy.what << '\n';
    std::cout << "nothing measured is at fault: " << wl::to_text(found.none) << '\n';
    if (found.next) std::cout << "read next: across " << found.next->across << '\n';
}
