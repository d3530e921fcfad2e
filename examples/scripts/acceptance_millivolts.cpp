// A list for the inspector: what each joint of a fixture may read at 200 A, and three readings held against it.
//     g++ -std=c++20 -O2 -I include examples/scripts/acceptance_millivolts.cpp
#include <array>
#include <cmath>
#include <iostream>
#include <string_view>

#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/work_clamp_standard.hpp>
#include <weldloop/rating/joint/termination_acceptance.hpp>

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
    std::cout << "== acceptance_millivolts\n";
    std::cout.precision(4);
    const wl::current test = 200_A;
    std::cout << "at most, at " << wl::to_text(test, "A") << " and room temperature\n";
    for (const wl::conductor_size size : {wl::awg(4), wl::awg(2), wl::aught(1), wl::aught(2), wl::aught(4)}) {
        const wl::crimp_acceptance good = wl::crimp_acceptance_of(size, 0_mV, test);
        std::cout << "  crimp " << wl::to_text(size) << ": " << wl::to_text(wl::voltage(good.limit * test), "mV")
                  << (good.limit_recalled ? " (recalled: it condemns, it passes nothing)" : "") << '\n';
    }
    std::cout << "  new work clamp: " << wl::to_text(wl::voltage(wl::new_clamp_limit * test), "mV") << '\n';
    // IEC 60974-13: a pair with its plate 80 mV at 100 A; 378 uohm are left for one clamp, times 200 A
    figure("new clamp [mV]", 1e3 * wl::number_in(wl::voltage(wl::new_clamp_limit * test), "V"), 378e-6 * 200.0 * 1e3,
           0.5);
    const wl::termination_acceptance stud = wl::stud_acceptance_of(10_mm, 8_mV, test);
    // 7.5 mV at 43 A on 1/4 inch, the largest row: 174 uohm; 8 mV at 200 A are 40 uohm
    figure("a stud reads 8 mV: share of its limit", stud.used, 8e-3 / 200.0 / (7.5e-3 / 43.0), 0.5);

    const std::array lugs{11.0_mV, 12.0_mV, 19.0_mV};
    for (const wl::voltage& mv : lugs) {
        const auto held = wl::similar_joint_acceptance_of(mv / test, lugs.front() / test);
        std::cout << "lug of " << wl::to_text(mv, "mV") << ": "
                  << (held.accepted ? "as its like" : "worse than its like") << '\n';
    }
    // 19 mV against one and a half times the best, 11 mV
    figure("the worst of them: share of its limit",
           wl::similar_joint_acceptance_of(lugs[2] / test, lugs[0] / test).used, 19.0 / (1.5 * 11.0), 0.1);
    return apart == 0 ? 0 : 1;
}
