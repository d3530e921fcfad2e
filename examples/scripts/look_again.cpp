// When do I look at the clamp again, and which kind would last: the kinds side by side on one bench, and the clamp of
// today looked at closely. Of stamped clamps trust the order of kinds, not the hours.
//     g++ -std=c++20 -O2 -I include examples/scripts/look_again.cpp
#include <array>
#include <cmath>
#include <iostream>
#include <optional>
#include <string>

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
    std::cout << "== look_again\n";
    std::cout.precision(4);
    const wl::clamp_use use{.joint = {.clamp = wl::stamped_spring_clamp(300_A), .onto = wl::mild_steel},
                            .lead = wl::welding_cable(wl::square_mm(70), 10_m),
                            .load = {.current = 250_A, .duty = wl::duty_cycle::of(6_min, 10_min)},
                            .where = {.air = 30_degC},
                            .service = {.openings = 20.0}};
    const auto hours = [](const std::optional<wl::duration>& t) {
        return t ? wl::to_text(*t, "h", 2) : std::string("beyond 2000 h");
    };
    const std::array kinds{wl::stamped_spring_clamp(300_A), wl::spring_clamp(300_A), wl::screw_clamp(300_A),
                           wl::bolted_work_lug(wl::square_mm(70))};
    std::cout << "250 A at 60 % on bright steel, opened 20 times a shift; a quarter of the grip gone after\n";
    for (const wl::clamp_life_row& row : wl::compare_clamp_lives(kinds, use))
        std::cout << "  " << row.name << ": typically " << hours(row.quarter_lost.typical) << ", in a poor case "
                  << hours(row.quarter_lost.poor) << '\n';
    const wl::clamp_life life = wl::clamp_life_of(use);
    std::cout << life.name << ": look again after " << hours(life.look_again)
              << " of shift; to buy: " << (life.buy.empty() ? "none listed" : life.buy) << '\n';
    for (const wl::clamp_cure& cure : life.cures)
        std::cout << "  " << wl::to_text(cure.kind) << (cure.clamp.empty() ? "" : ": " + cure.clamp)
                  << (cure.amps ? ": " + wl::to_text(*cure.amps, "A") : "") << ", leaves "
                  << wl::to_text(cure.grip_left) << " of the grip\n";
    // it must hold 5 m of its lead (830 kg/km) and a coupling of 0.4 kg by friction 0.15 at two faces: m g/(2 mu)
    if (!life.cable_needs) return 1;
    figure("to hold its lead a jaw needs [N]", wl::number_in(*life.cable_needs, "N"),
           (5.0 * 0.830 + 0.4) * 9.81 / (2.0 * 0.15), 0.5);
    return apart == 0 ? 0 : 1;
}
