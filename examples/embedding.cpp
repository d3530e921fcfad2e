// A check inside a program that lets no exception through: three benches at once, one of them described wrongly.
//! [embedding]
#include <future>
#include <iostream>
#include <string>
#include <vector>

#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

namespace {

wl::station bench_of(const std::string& name, double amps, int feet)
{
    wl::station bench{
        .name = name,
        .job = {.process = wl::process::smaw, .current = amps * 1_A, .duty = wl::duty_cycle::of(3_min, 10_min)}};
    bench.path = {wl::welding_cable(wl::awg(1), feet * 1_ft).named("electrode lead"),
                  wl::electrode_holder("holder", 200_A),
                  wl::arc{},
                  wl::work_connection{.clamp = wl::screw_clamp(200_A), .onto = wl::mild_steel, .name = "work clamp"},
                  wl::crimped_lug("clamp lug", wl::awg(1)),
                  wl::welding_cable(wl::awg(1), feet * 1_ft).named("work lead")};
    return bench;
}

struct request {
    std::string name;
    double amps;
    int feet;
};

}  // namespace

int main()
{
    const std::vector<request> requests{{"hinges", 120.0, 30}, {"gate frames", 170.0, 50}, {"posts", 140.0, 0}};

    // nothing of the library is shared between calls, so every bench may have a thread of its own
    std::vector<std::future<wl::outcome<wl::assessment>>> asked;
    for (const request& r : requests)
        asked.push_back(std::async(std::launch::async, [r] {
            return wl::attempt([&] { return wl::assess(bench_of(r.name, r.amps, r.feet)); });
        }));

    for (std::size_t i = 0; i < requests.size(); ++i) {
        const wl::outcome<wl::assessment> found = asked[i].get();
        std::cout << requests[i].name << ": ";
        if (found)
            std::cout << wl::to_text(found->total_drop.typical, "V") << " lost, weakest part: " << found->weakest().name
                      << '\n';
        else
            std::cout << "not assessed; " << found.failure()->argument << " is " << found.failure()->value
                      << ", allowed: " << found.failure()->allowed << '\n';
    }
}
//! [embedding]
